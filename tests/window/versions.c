/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Freezing, amending and acknowledging on the page of sorties, and a sortie that is wanted at another
 * time by keys: its price first, then accepted or not, then taken back. */
#include "ff-stage.h"

#include <string.h>

#include "ff-chart.h"
#include "ff-standing-card.h"

static GtkWidget *
page_of (FfStage *stage)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

/* A label that holds this, whatever shows it. */
static gboolean
holds (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root) || !gtk_widget_get_child_visible (root))
    return FALSE;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (holds (child, part))
      return TRUE;
  return FALSE;
}

typedef struct {
  FfStage *stage;
  const char *part;
} Wanted;

static gboolean
is_said (gpointer data)
{
  const Wanted *wanted = data;

  return holds (page_of (wanted->stage), wanted->part);
}

static void
wait_to_read (FfStage *stage, const char *part)
{
  Wanted wanted = { stage, part };

  if (!ff_stage_wait (is_said, &wanted))
    fail_msg ("never said: %s", part);
  ff_stage_settle ();
}

/* As Space on the button does. */
static void
push (FfStage *stage, const char *label)
{
  GtkWidget *button = ff_stage_find (page_of (stage), GTK_TYPE_BUTTON, label);

  assert_non_null (button);
  assert_true (gtk_widget_get_focusable (button));
  g_signal_emit_by_name (button, "clicked");
  ff_stage_settle ();
}

static void
press (FfStage *stage, guint key, GdkModifierType state)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (stage->window));
  GListModel *controllers = gtk_widget_observe_controllers (focus);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);
      gboolean taken = FALSE;

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller)
          && g_signal_handler_find (controller, G_SIGNAL_MATCH_ID,
                                    g_signal_lookup ("key-pressed", GTK_TYPE_EVENT_CONTROLLER_KEY),
                                    0, NULL, NULL, NULL)
                 != 0)
        g_signal_emit_by_name (controller, "key-pressed", key, 0, state, &taken);
    }
  g_object_unref (controllers);
}

static FfStage *
stage_on_sorties (void)
{
  FfStage *stage = ff_stage_new (TRUE, 1200, 800);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_settle ();
  return stage;
}

static int
window_from (FfStage *stage, const char *label)
{
  GPtrArray *shots = ff_keeper_shots (stage->keeper);

  for (guint i = 0; i < shots->len; i++)
    if (strcmp (((FfShot *) g_ptr_array_index (shots, i))->label, label) == 0)
      return ((FfShot *) g_ptr_array_index (shots, i))->window_from;
  return -1;
}

/* Line 3, whose first shot is D, later by so many presses. */
static void
move_line_3 (FfStage *stage, int presses)
{
  GtkWidget *chart = ff_stage_find (page_of (stage), FF_TYPE_CHART, NULL);

  gtk_widget_grab_focus (chart);
  press (stage, GDK_KEY_Home, 0);
  press (stage, GDK_KEY_Right, 0);
  press (stage, GDK_KEY_Right, 0);
  assert_int_equal (ff_chart_get_line (FF_CHART (chart)), 3);
  for (int i = 0; i < presses; i++)
    press (stage, GDK_KEY_Right, GDK_ALT_MASK);
}

static void
test_a_sortie_is_moved_by_keys (void **state)
{
  FfStage *stage = stage_on_sorties ();
  int before = window_from (stage, "D");

  move_line_3 (stage, 2);
  wait_to_read (stage, "Trying: shot D 10 min later. Nothing is stored.");
  assert_int_equal (window_from (stage, "D"), before);
  gtk_widget_activate_action (page_of (stage), "sorties.end-try", NULL);
  ff_stage_settle ();
  assert_false (holds (page_of (stage), "Nothing is stored."));
  move_line_3 (stage, 2);
  wait_to_read (stage, "Trying: shot D 10 min later.");
  gtk_widget_activate_action (page_of (stage), "sorties.accept", NULL);
  ff_stage_wait_for_plan (stage);
  assert_int_equal (window_from (stage, "D"), before + 10);
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  assert_int_equal (window_from (stage, "D"), before);
  ff_stage_free (stage);
}

static void
test_a_plan_is_frozen_and_amended (void **state)
{
  FfStage *stage = stage_on_sorties ();

  wait_to_read (stage, "Version A, not frozen");
  push (stage, "Freeze as version A");
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "The plan is as it stands on the sheets.");
  assert_null (ff_keeper_undo_text (stage->keeper));
  move_line_3 (stage, 4);
  wait_to_read (stage, "Trying: shot D 20 min later.");
  gtk_widget_activate_action (page_of (stage), "sorties.accept", NULL);
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "The plan is no longer what the sheets say:");
  assert_true (holds (page_of (stage), "Pilot: "));
  push (stage, "Make this amendment 1");
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "Amendment 1 to version A");
  push (stage, "□ JV has read it");
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "■ read, JV");
  assert_true (holds (page_of (stage), "□ MO has read it"));
  ff_stage_free (stage);
}

static void
test_a_new_letter_needs_a_reason (void **state)
{
  FfStage *stage = stage_on_sorties ();
  GtkWidget *why;

  push (stage, "Freeze as version A");
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "The plan is as it stands on the sheets.");
  push (stage, "Freeze under a new letter");
  assert_string_equal (ff_keeper_job (stage->keeper)->version, "A");
  why = ff_stage_find (ff_stage_find (page_of (stage), FF_TYPE_STANDING_CARD, NULL),
                       GTK_TYPE_ENTRY, NULL);
  gtk_editable_set_text (GTK_EDITABLE (why), "the sheets are wet");
  push (stage, "Freeze under a new letter");
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "Version B, frozen");
  assert_string_equal (ff_keeper_job (stage->keeper)->version, "B");
  ff_stage_free (stage);
}

static GtkWidget *
chart_with_line_1 (FfStage *stage)
{
  GtkWidget *chart = ff_stage_find (page_of (stage), FF_TYPE_CHART, NULL);

  gtk_widget_grab_focus (chart);
  press (stage, GDK_KEY_Home, 0);
  assert_int_equal (ff_chart_get_line (FF_CHART (chart)), 1);
  return chart;
}

static void
test_a_part_of_the_day_is_shown (void **state)
{
  FfStage *stage = stage_on_sorties ();
  GtkWidget *chart = chart_with_line_1 (stage);
  guint n_rows = ff_chart_table (FF_CHART (chart))->len;
  int height = gtk_widget_get_height (chart);

  press (stage, GDK_KEY_minus, 0);
  assert_int_equal (ff_chart_get_zoom (FF_CHART (chart)), 0);
  for (int i = 0; i < 9; i++)
    press (stage, GDK_KEY_plus, 0);
  assert_in_range (ff_chart_get_zoom (FF_CHART (chart)), 2, 5);
  for (int i = 0; i < 6; i++)
    {
      press (stage, GDK_KEY_Right, 0);
      ff_stage_settle ();
    }
  assert_int_equal (ff_chart_get_line (FF_CHART (chart)), 6);
  /* Whoever hears it, hears the whole day; and the page has not moved. */
  assert_int_equal (ff_chart_table (FF_CHART (chart))->len, n_rows);
  assert_int_equal (gtk_widget_get_height (chart), height);
  press (stage, GDK_KEY_0, 0);
  assert_int_equal (ff_chart_get_zoom (FF_CHART (chart)), 0);
  assert_int_equal (ff_chart_table (FF_CHART (chart))->len, n_rows);
  ff_stage_free (stage);
}

static void
test_a_sortie_is_locked_and_unlocked (void **state)
{
  FfStage *stage = stage_on_sorties ();
  g_autofree char *job = g_strdup (ff_keeper_job (stage->keeper)->id);
  g_autoptr (GPtrArray) locks = NULL;
  const FfLock *lock;

  chart_with_line_1 (stage);
  gtk_widget_activate_action (page_of (stage), "sorties.lock", NULL);
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "Unlock it");
  assert_true (holds (page_of (stage), "locked"));
  locks = ff_locks_load (ff_keeper_store (stage->keeper), job, NULL);
  assert_int_equal (locks->len, 1);
  lock = g_ptr_array_index (locks, 0);
  assert_int_equal (lock->off_by, 16 * 60 + 30);
  assert_true (lock->keep_filter);
  assert_string_equal (ff_keeper_find_item (stage->keeper, lock->battery_id)->label, "b1");
  assert_string_equal (ff_keeper_find_item (stage->keeper, lock->filter_id)->label, "ND32");
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "Sortie 1 locked");
  gtk_widget_activate_action (page_of (stage), "sorties.lock", NULL);
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "Lock it");
  assert_true (ff_keeper_undo (stage->keeper, NULL));
  ff_stage_wait_for_plan (stage);
  wait_to_read (stage, "Unlock it");
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_a_sortie_is_moved_by_keys),
    cmocka_unit_test (test_a_plan_is_frozen_and_amended),
    cmocka_unit_test (test_a_new_letter_needs_a_reason),
    cmocka_unit_test (test_a_part_of_the_day_is_shown),
    cmocka_unit_test (test_a_sortie_is_locked_and_unlocked),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("versions", tests, NULL, NULL);
}
