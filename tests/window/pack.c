/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page "Pack" on the demo day: a crew lead's evening and the count back, by keys alone. */
#include "ff-stage.h"

#include <string.h>

#include "ff-pack-evening.h"
#include "ff-pack-notes.h"
#include "ff-pack-page.h"
#include "ff-pack-row.h"

static FfPackPage *
page_of (FfStage *stage)
{
  return FF_PACK_PAGE (ff_window_get_page (stage->window));
}

static gboolean
has_list (gpointer stage)
{
  return ff_pack_page_list (page_of (stage)) != NULL;
}

static FfStage *
stage_on_pack (int width, int height)
{
  FfStage *stage = ff_stage_new (TRUE, width, height);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "pack");
  assert_true (ff_stage_wait (has_list, stage));
  ff_stage_settle ();
  return stage;
}

static GtkWidget *
find (FfStage *stage, GType type, const char *text)
{
  return ff_stage_find (GTK_WIDGET (page_of (stage)), type, text);
}

static gboolean
label_with (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root) || !gtk_widget_get_child_visible (root))
    return FALSE;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (label_with (child, part))
      return TRUE;
  return FALSE;
}

typedef struct {
  FfStage *stage;
  const char *part;
} Wanted;

static gboolean
says_now (gpointer data)
{
  const Wanted *wanted = data;

  return label_with (GTK_WIDGET (page_of (wanted->stage)), wanted->part);
}

static gboolean
says (FfStage *stage, const char *part)
{
  Wanted wanted = { stage, part };

  return ff_stage_wait (says_now, &wanted);
}

static FfPackRow *
row_of (FfStage *stage, const char *label)
{
  GtkWidget *list = gtk_widget_get_ancestor (find (stage, FF_TYPE_PACK_ROW, NULL),
                                             GTK_TYPE_LIST_BOX);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), i)) != NULL; i++)
    {
      const FfItem *item = ff_keeper_find_item (stage->keeper, ff_pack_row_item (FF_PACK_ROW (row)));

      if (item != NULL && strcmp (item->label, label) == 0)
        return FF_PACK_ROW (row);
    }
  return NULL;
}

static FfPackEntry *
entry_of (FfStage *stage, const char *label)
{
  FfPackRow *row = row_of (stage, label);

  return row != NULL ? ff_pack_list_find (ff_pack_page_list (page_of (stage)),
                                          ff_pack_row_item (row)) : NULL;
}

/* Space on the row that has the focus. */
static void
space (FfStage *stage)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (stage->window));

  assert_true (FF_IS_PACK_ROW (focus));
  gtk_widget_activate (focus);
  ff_stage_settle ();
}

static void
focus_on (FfStage *stage, const char *label)
{
  assert_non_null (row_of (stage, label));
  gtk_widget_grab_focus (GTK_WIDGET (row_of (stage, label)));
}

static void
key (FfStage *stage, const char *action, int stage_number)
{
  if (stage_number >= 0)
    gtk_widget_activate_action (GTK_WIDGET (page_of (stage)), action, "u", (guint) stage_number);
  else
    gtk_widget_activate_action (GTK_WIDGET (page_of (stage)), action, NULL);
  ff_stage_settle ();
}

static const char *
id_of (FfStage *stage, const char *label)
{
  GPtrArray *items = ff_keeper_items (stage->keeper);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (strcmp (item->label, label) == 0)
        return item->id;
    }
  return NULL;
}

/* ---- The tests ---- */

static void
test_the_list_stands_by_case (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);

  assert_int_equal (ff_pack_page_list (page_of (stage))->n_lines, 36);
  assert_true (says (stage, "0 of 36 out"));
  assert_true (says (stage, "Case 2 · 0 of 8 out · at least 2.1 kg · 348 Wh"));
  assert_true (says (stage, "Nothing is short"));
  assert_true (says (stage, "5 batteries, 1 slot: 5 h."));
  assert_true (says (stage, "out 5 (ND32), into slot 5; in 4 (ND16)"));
  ff_stage_free (stage);
}

static void
test_space_counts_and_goes_on (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);
  g_autoptr (GError) error = NULL;

  focus_on (stage, "b1");
  space (stage);
  assert_int_equal (entry_of (stage, "b1")->marks[FF_PACK_OUT], FF_PACK_DONE);
  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (stage->window)), row_of (stage, "b2"));
  space (stage);
  assert_true (says (stage, "2 of 36 out"));
  assert_true (ff_keeper_undo (stage->keeper, &error));
  assert_true (says (stage, "1 of 36 out"));
  assert_int_equal (entry_of (stage, "b2")->marks[FF_PACK_OUT], FF_PACK_OPEN);
  ff_stage_free (stage);
}

static void
test_not_taken_wants_a_reason (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);
  GtkWidget *reason;

  focus_on (stage, "tablet");
  key (stage, "pack.not-taken", -1);
  reason = find (stage, FF_TYPE_ENTRY, NULL);
  assert_non_null (reason);
  g_signal_emit_by_name (reason, "entered");
  assert_int_equal (entry_of (stage, "tablet")->marks[FF_PACK_OUT], FF_PACK_OPEN);
  ff_entry_set_text (FF_ENTRY (reason), "screen cracked");
  g_signal_emit_by_name (reason, "entered");
  ff_stage_settle ();
  assert_int_equal (entry_of (stage, "tablet")->marks[FF_PACK_OUT], FF_PACK_NOT_TAKEN);
  assert_true (says (stage, "1 not taken"));
  assert_true (says (stage, "screen cracked"));
  assert_ptr_equal (gtk_window_get_focus (GTK_WINDOW (stage->window)), row_of (stage, "tablet"));
  ff_stage_free (stage);
}

/* Marked out with the other job: plan, list and what is open change at once, and say so. */
static void
test_a_lent_filter_is_short (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);
  g_autoptr (GError) error = NULL;

  assert_non_null (row_of (stage, "ND16"));
  ff_keeper_set_item_state (stage->keeper, id_of (stage, "ND16"), FF_STATE_OUT, "lent",
                            "Brackenholt", "2027-09-19", &error);
  assert_no_error (error);
  assert_true (says (stage, "ND16: out with Brackenholt, back Sun 19 Sep: lent."));
  assert_null (row_of (stage, "ND16"));
  ff_stage_wait_for_plan (stage);
  for (guint i = 0; i < ff_keeper_plan (stage->keeper)->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (ff_keeper_plan (stage->keeper)->lines, i);

      assert_string_not_equal (line->engraving, "ND16");
    }
  ff_stage_free (stage);
}

static void
test_a_quarantined_battery_leaves_no_spare (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);
  g_autoptr (GError) error = NULL;

  ff_keeper_set_initials (stage->keeper, "JV");
  ff_keeper_set_item_state (stage->keeper, id_of (stage, "b3"), FF_STATE_QUARANTINED, "swollen", "",
                            "", &error);
  assert_no_error (error);
  assert_true (says (stage, "no spare left"));
  assert_null (row_of (stage, "b3"));
  ff_stage_free (stage);
}

/* Out, then in but for one filter: its last place is named. */
static void
test_what_is_not_in_is_named (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);
  const FfPackList *list;
  g_autoptr (GError) error = NULL;

  ff_keeper_set_initials (stage->keeper, "MO");
  for (const char *const *label = (const char *const[]) { "ND32", "b1", "C1", NULL };
       *label != NULL; label++)
    {
      focus_on (stage, *label);
      space (stage);
    }
  key (stage, "pack.stage", FF_PACK_GROUND);
  focus_on (stage, "b1");
  space (stage);
  focus_on (stage, "C1");
  space (stage);
  assert_true (says (stage, "ND32: not counted in on the ground; last counted out"));
  focus_on (stage, "ND32");
  key (stage, "pack.not-taken", -1);
  assert_true (says (stage, "ND32: missing; last counted out"));
  focus_on (stage, "ND32");
  space (stage);
  assert_true (says (stage, "Everything that was out is in."));
  list = ff_pack_page_list (page_of (stage));
  assert_int_equal (list->n_marked[FF_PACK_GROUND], 3);
  ff_stage_free (stage);
}

static void
test_a_charge_nobody_attends_is_not_planned (void **state)
{
  FfStage *stage = stage_on_pack (1200, 800);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  GtkWidget *evening = find (stage, FF_TYPE_PACK_EVENING, NULL);
  g_autoptr (GError) error = NULL;

  assert_true (ff_keeper_save_watches (stage->keeper, none, &error));
  g_signal_emit_by_name (evening, "changed");
  assert_true (says (stage, "Nobody is entered to attend the charger"));
  gtk_widget_activate (ff_stage_find (evening, GTK_TYPE_BUTTON, "Enter this watch"));
  assert_true (says (stage, "18:00–19:00  b1, charger slot 1, attended by"));
  /* Two changes of one thing in a moment are taken back as one. */
  assert_true (ff_keeper_undo (stage->keeper, &error));
  assert_true (says (stage, "Begun at 17:00"));
  ff_stage_free (stage);
}

/* Nothing on it is wider than a narrow window. */
static void
test_it_fits_a_narrow_window (void **state)
{
  FfStage *stage = stage_on_pack (360, 800);
  int least = 0;

  gtk_widget_measure (GTK_WIDGET (page_of (stage)), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                      NULL, NULL);
  if (least > 340)
    fail_msg ("the page is %d px wide at least", least);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_list_stands_by_case),
    cmocka_unit_test (test_space_counts_and_goes_on),
    cmocka_unit_test (test_not_taken_wants_a_reason),
    cmocka_unit_test (test_a_lent_filter_is_short),
    cmocka_unit_test (test_a_quarantined_battery_leaves_no_spare),
    cmocka_unit_test (test_what_is_not_in_is_named),
    cmocka_unit_test (test_a_charge_nobody_attends_is_not_planned),
    cmocka_unit_test (test_it_fits_a_narrow_window),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("pack", tests, NULL, NULL);
}
