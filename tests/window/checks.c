/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists run in the window by keys alone: the demo day's pre-flight and turn-round with a hold, an
 * interruption, a failed item, a value out of bounds, a bound fact that differs, a power cut; cards
 * from anywhere; the lists themselves read and written. */
#include "ff-stage.h"

#include <glib/gstdio.h>
#include <string.h>

#include "ff-checks-page.h"
#include "ff-list-editor.h"
#include "ff-list-print.h"
#include "ff-lists-page.h"
#include "ff-run-view.h"

static FfStage *stage;

static void
begin (int width, const char *page)
{
  stage = ff_stage_new (TRUE, width, 800);
  ff_stage_open_demo_job (stage);
  ff_keeper_set_initials (stage->keeper, "MO");
  ff_window_show_page (stage->window, page);
  ff_stage_settle ();
}

static void
end (void)
{
  ff_stage_free (g_steal_pointer (&stage));
}

static GtkWidget *
page (void)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

static FfRunView *
view (void)
{
  return FF_RUN_VIEW (ff_stage_find (page (), FF_TYPE_RUN_VIEW, NULL));
}

static const FfListRun *
run (void)
{
  return ff_day_run_run (ff_run_view_get (view ()));
}

/* One key, as the widget's own controller gets it. */
static gboolean
press_on (GtkWidget *widget, guint key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  gboolean taken = FALSE;

  for (guint i = 0; !taken && i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller)
          && gtk_event_controller_get_propagation_phase (controller) == GTK_PHASE_CAPTURE)
        g_signal_emit_by_name (controller, "key-pressed", key, 0, 0, &taken);
    }
  ff_stage_settle ();
  return taken;
}

static void
press (guint key)
{
  assert_true (press_on (GTK_WIDGET (view ()), key));
}

static void
type (const char *text)
{
  GtkWidget *entry = ff_stage_find (GTK_WIDGET (view ()), GTK_TYPE_ENTRY, NULL);

  assert_non_null (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  press (GDK_KEY_Return);
}

static const char *
item_now (void)
{
  const FfRunItem *item = ff_list_run_item (run (), ff_list_run_current (run ()));

  return item->item != NULL ? item->item->challenge : "completion";
}

static gboolean
shown (const char *words)
{
  return ff_stage_find (GTK_WIDGET (view ()), GTK_TYPE_LABEL, words) != NULL;
}

static void
start (const char *title)
{
  GtkListBox *list = GTK_LIST_BOX (ff_stage_find (page (), GTK_TYPE_LIST_BOX, NULL));
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)) != NULL; i++)
    if (ff_stage_find (GTK_WIDGET (row), GTK_TYPE_LABEL, title) != NULL)
      break;
  assert_non_null (row);
  g_signal_emit_by_name (list, "row-activated", row);
  ff_stage_settle ();
  assert_non_null (view ());
}

static gboolean
is_planned (gpointer data)
{
  return ff_keeper_plan (stage->keeper) != NULL;
}

static void
begin_turn_round (int width)
{
  begin (width, "checks");
  assert_true (ff_stage_wait (is_planned, NULL));
  ff_stage_settle ();
  start ("Turn-round: fit to lift again? · line 2");
}

static void
test_a_turn_round_by_keys (void **state)
{
  gint64 since;

  begin_turn_round (1200);
  assert_string_equal (item_now (), "Motors");
  press (GDK_KEY_space);
  press (GDK_KEY_space);
  assert_string_equal (item_now (), "Filter");
  /* The plan is not seen before the person has said theirs. */
  assert_true (shown ("read from the ring · the plan: shown after you say it"));
  type ("4");
  assert_string_equal (item_now (), "Filter");
  assert_true (shown ("read from the ring · the plan: 5 stops"));
  type ("5");
  assert_string_equal (item_now (), "Card");
  press (GDK_KEY_h);
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_HELD);
  /* The reason comes when there is time for it, and moves nothing. */
  since = ff_list_run_held_since (run ());
  press (GDK_KEY_2);
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_HELD);
  assert_string_equal (ff_list_run_held_why (run ()), "weather");
  assert_int_equal (ff_list_run_held_since (run ()), since);
  press (GDK_KEY_space);
  assert_string_equal (item_now (), "Filter");
  type ("ND32");
  press (GDK_KEY_d);
  /* Deferred, and the last one: it comes again before the section can be complete. */
  assert_string_equal (item_now (), "Card");
  assert_true (shown ("Card · deferred"));
  type ("38");
  assert_string_equal (item_now (), "completion");
  press (GDK_KEY_space);
  assert_string_equal (item_now (), "Battery fitted");
  type ("2");
  assert_string_equal (item_now (), "Battery voltage");
  type ("16.1");
  assert_string_equal (item_now (), "Battery voltage");
  press (GDK_KEY_k);
  type ("warm air, pilot says so");
  assert_string_equal (item_now (), "Pad and people");
  press (GDK_KEY_space);
  press (GDK_KEY_space);
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_COMPLETE);
  press (GDK_KEY_space);
  assert_null (ff_stage_find (page (), FF_TYPE_RUN_VIEW, NULL));
  end ();
}

static const FfItem *
item (const char *label)
{
  GPtrArray *items = ff_keeper_items (stage->keeper);

  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (((const FfItem *) g_ptr_array_index (items, i))->label, label))
      return g_ptr_array_index (items, i);
  g_error ("no item %s", label); /* never comes back, for the compiler's sake */
}

static void
test_a_pre_flight_fails (void **state)
{
  begin (400, "checks");
  start ("Pre-flight: fit for the first flight of the day?");
  assert_string_equal (item_now (), "Propellers");
  press (GDK_KEY_f);
  type ("");
  assert_true (shown ("A reason is needed."));
  type ("nick in a blade");
  press (GDK_KEY_2);
  assert_int_equal (item ("P1")->state, FF_STATE_DEFECT);
  assert_string_equal (item_now (), "Arms and latches");
  /* The second person is another one. */
  press (GDK_KEY_space);
  type ("MO");
  assert_string_equal (item_now (), "Arms and latches");
  type ("JV");
  assert_string_equal (item_now (), "Body and undercarriage");
  press (GDK_KEY_n);
  type ("looked at in the van");
  press (GDK_KEY_u);
  assert_string_equal (item_now (), "Body and undercarriage");
  /* With no subject a failure holds the flight. */
  press (GDK_KEY_f);
  type ("crack");
  press (GDK_KEY_0);
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_HELD);
  end ();
}

static void
test_idle_holds (void **state)
{
  begin_turn_round (1200);
  press (GDK_KEY_space);
  ff_run_view_idle (view ());
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_HELD);
  press (GDK_KEY_Escape);
  start ("Turn-round: fit to lift again? · line 2");
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_HELD);
  press (GDK_KEY_b);
  press (GDK_KEY_space);
  assert_string_equal (item_now (), "Motors");
  end ();
}

/* Left while it goes, as when the lid falls: opened again it is held, at the same item. */
static void
test_left_and_opened_again (void **state)
{
  begin_turn_round (1200);
  press (GDK_KEY_space);
  press (GDK_KEY_space);
  press (GDK_KEY_Escape);
  start ("Turn-round: fit to lift again? · line 2");
  assert_int_equal (ff_list_run_state (run ()), FF_RUN_HELD);
  assert_string_equal (item_now (), "Filter");
  press (GDK_KEY_space);
  assert_string_equal (item_now (), "Propellers");
  end ();
}

static GtkWindow *
cards (void)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);

      if (g_strcmp0 (gtk_window_get_title (window), "Emergency cards") == 0)
        return window;
    }
  return NULL;
}

static void
test_cards_from_anywhere (void **state)
{
  static const char *const pages[] = { "sorties", "jobs", "checks" };

  begin (1200, "sorties");
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      ff_window_show_page (stage->window, pages[i]);
      ff_stage_settle ();
      assert_true (press_on (GTK_WIDGET (stage->window), GDK_KEY_e));
      assert_non_null (cards ());
      assert_true (press_on (GTK_WIDGET (cards ()), GDK_KEY_7));
      assert_non_null (ff_stage_find (GTK_WIDGET (cards ()), GTK_TYPE_LABEL, "Battery fire"));
      press_on (GTK_WIDGET (cards ()), GDK_KEY_Escape);
      press_on (GTK_WIDGET (cards ()), GDK_KEY_Escape);
      assert_null (cards ());
    }
  end ();
}

static void
test_a_list_is_written (void **state)
{
  GtkTextBuffer *buffer;
  g_autofree char *path = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GFile) file = NULL;

  begin (1200, "lists");
  gtk_widget_activate_action (page (), "lists.write", NULL);
  ff_stage_settle ();
  buffer = gtk_text_view_get_buffer (
      GTK_TEXT_VIEW (ff_stage_find (page (), GTK_TYPE_TEXT_VIEW, NULL)));
  gtk_text_buffer_set_text (buffer, "# Van pack\n\n## A\n", -1);
  ff_stage_settle ();
  assert_non_null (ff_stage_find (page (), GTK_TYPE_LABEL,
                                  "Not kept yet. line 3, column 1: the section “A” has no item; "
                                  "accepted: “- [ ] Challenge: response” below it"));
  gtk_text_buffer_set_text (buffer, "# Van pack\n\n## A\n\n- [ ] Keys: checked\n", -1);
  ff_stage_settle ();
  assert_non_null (ff_stage_find (page (), GTK_TYPE_LABEL,
                                  "Line 5. “checked” can be answered without looking. Say the state "
                                  "or the value that is wanted."));
  path = g_build_filename (stage->folder, "out.md", NULL);
  file = g_file_new_for_path (path);
  ff_lists_page_export (FF_LISTS_PAGE (page ()), file);
  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  assert_string_equal (text, "# Van pack\n\n## A\n\n- [ ] Keys: checked\n");
  end ();
}

static void
test_a_list_prints (void **state)
{
  g_autoptr (GPtrArray) book = NULL;
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autofree char *path = NULL;
  GStatBuf size;

  begin (400, "lists");
  book = ff_list_book_load (ff_keeper_store (stage->keeper), NULL);
  operation = ff_list_print_new (ff_list_book_find (book, "pre-flight", NULL)->list, NULL);
  path = g_build_filename (stage->folder, "list.pdf", NULL);
  gtk_print_operation_set_export_filename (operation, path);
  assert_int_equal (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL,
                                             NULL),
                    GTK_PRINT_OPERATION_RESULT_APPLY);
  assert_int_equal (g_stat (path, &size), 0);
  assert_true (size.st_size > 1000);
  end ();
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_a_turn_round_by_keys),
    cmocka_unit_test (test_a_pre_flight_fails),
    cmocka_unit_test (test_idle_holds),
    cmocka_unit_test (test_left_and_opened_again),
    cmocka_unit_test (test_cards_from_anywhere),
    cmocka_unit_test (test_a_list_is_written),
    cmocka_unit_test (test_a_list_prints),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("lists in the window", tests, NULL, NULL);
}
