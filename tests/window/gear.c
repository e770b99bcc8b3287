/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The gear: its list and search, an item typed and refused beside its field, states that are kept,
 * new ones, copies, deletion and undo, by keys and in a narrow window. */
#include "ff-stage.h"

#include <math.h>
#include <string.h>

#include "ff-block.h"
#include "ff-gear-files.h"
#include "ff-gear-form.h"
#include "ff-gear-item.h"
#include "ff-gear-row.h"
#include "ff-gear-state.h"
#include "ff-pick.h"
#include "ff-split.h"

static FfStage *stage;

static void
begin (int width)
{
  stage = ff_stage_new (TRUE, width, 800);
  ff_stage_open_demo_job (stage);
  ff_keeper_set_initials (stage->keeper, "JV");
  ff_window_show_page (stage->window, "gear");
  ff_stage_settle ();
}

static GtkWidget *
page (void)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

static GtkWidget *
in_page (GType type, const char *text)
{
  return ff_stage_find (page (), type, text);
}

static const FfItem *
item (const char *label)
{
  GPtrArray *items = ff_keeper_items (stage->keeper);

  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (((const FfItem *) g_ptr_array_index (items, i))->label, label))
      return g_ptr_array_index (items, i);
  return NULL;
}

/* Whether the item on the screen says so. */
static gboolean
says (const char *words)
{
  return ff_stage_find (in_page (FF_TYPE_GEAR_ITEM, NULL), GTK_TYPE_LABEL, words) != NULL;
}

static gboolean
is_said (gpointer words)
{
  return says (words);
}

/* Shows one item by typing into the search, and takes the search away again. */
static void
show (const char *label)
{
  GtkEditable *search = GTK_EDITABLE (in_page (GTK_TYPE_SEARCH_ENTRY, NULL));

  gtk_editable_set_text (search, label);
  assert_true (ff_stage_wait (is_said, (gpointer) label));
  gtk_editable_set_text (search, "");
  ff_stage_settle ();
}

/* The field with this name, of the item on the screen. */
static FfEntry *
entry (const char *name)
{
  GtkWidget *label = ff_stage_find (in_page (FF_TYPE_GEAR_ITEM, NULL), GTK_TYPE_LABEL, name);
  GtkWidget *found = label != NULL ? gtk_widget_get_ancestor (label, FF_TYPE_ENTRY) : NULL;

  if (found == NULL)
    fail_msg ("no field %s", name);
  return FF_ENTRY (found);
}

static void
type (const char *name, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (ff_stage_find (GTK_WIDGET (entry (name)), GTK_TYPE_ENTRY,
                                                      NULL)),
                         text);
}

static void
act (const char *action)
{
  gtk_widget_activate_action (page (), action, NULL);
  ff_stage_settle ();
}

static void
undo (void)
{
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.undo", NULL);
  ff_stage_settle ();
}

static guint
shown_rows (void)
{
  GtkListBox *list = GTK_LIST_BOX (in_page (GTK_TYPE_LIST_BOX, NULL));
  GtkListBoxRow *row;
  guint n = 0;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)) != NULL; i++)
    n += gtk_widget_get_child_visible (GTK_WIDGET (row));
  return n;
}

static gboolean
only_one (gpointer nothing)
{
  return shown_rows () == 1;
}

static void
test_the_list (void **state)
{
  GtkWidget *search;

  begin (1200);
  assert_int_equal (shown_rows (), ff_keeper_items (stage->keeper)->len);
  assert_non_null (in_page (GTK_TYPE_LABEL, "Filters"));
  assert_non_null (in_page (GTK_TYPE_LABEL, "7"));
  /* Seven filters in the list have a block each. */
  assert_int_equal (ff_stage_count (in_page (GTK_TYPE_LIST_BOX, NULL), FF_TYPE_BLOCK),
                    ff_keeper_items (stage->keeper)->len);
  search = in_page (GTK_TYPE_SEARCH_ENTRY, NULL);
  gtk_editable_set_text (GTK_EDITABLE (search), "nd32");
  assert_true (ff_stage_wait (only_one, NULL));
  assert_true (says ("5-stop filter"));
  gtk_editable_set_text (GTK_EDITABLE (search), "no such thing");
  ff_stage_settle ();
  ff_stage_settle ();
  assert_non_null (
      in_page (GTK_TYPE_LABEL, "No item has these words. Write fewer, or press Escape for all."));
  ff_stage_free (stage);
}

static void
test_every_kind_has_its_page (void **state)
{
  begin (1200);
  for (guint i = 0; i < ff_names_kind.n_names; i++)
    {
      gtk_widget_activate_action (page (), "gear.new", "s", ff_name_token (&ff_names_kind, (int) i));
      ff_stage_settle ();
      assert_non_null (in_page (FF_TYPE_GEAR_FORM, NULL));
      assert_string_equal (ff_entry_get_text (entry ("Note")), "");
    }
  ff_stage_free (stage);
}

static void
test_accessible_names (void **state)
{
  GtkWidget *row, *typed;

  begin (1200);
  show ("ND8");
  row = GTK_WIDGET (
      gtk_list_box_get_selected_row (GTK_LIST_BOX (in_page (GTK_TYPE_LIST_BOX, NULL))));
  assert_true (gtk_test_accessible_has_role (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_ROLE_LIST_ITEM));
  gtk_test_accessible_assert_property (
      GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
      "ND8, 3-stop filter, ■\u00a0serviceable, 3 stops · factor 8 · density 0.9");
  typed = ff_stage_find (GTK_WIDGET (entry ("Strength")), GTK_TYPE_ENTRY, NULL);
  assert_true (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (typed),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  ff_stage_free (stage);
}

static void
test_what_is_typed_is_stored (void **state)
{
  begin (1200);
  show ("ND32");
  type ("Strength", "1.8");
  assert_close (item ("ND32")->stops, 1.8 / log10 (2), 1e-9);
  assert_true (says ("6 stops · factor 63.1 · density 1.8"));
  type ("Strength", "2-5 stops variable");
  assert_close (item ("ND32")->stops_to, 5, 0);
  type ("Set", "moor");
  assert_string_equal (item ("ND32")->set_name, "moor");
  undo ();
  assert_string_equal (item ("ND32")->set_name, "coast");
  assert_string_equal (ff_entry_get_text (entry ("Set")), "coast");
  /* Both keystrokes of the strength were one change. */
  undo ();
  assert_close (item ("ND32")->stops, 5, 1e-9);
  assert_string_equal (ff_entry_get_text (entry ("Strength")), "5 stops");
  ff_stage_free (stage);
}

static gboolean
has_complaint (gpointer name)
{
  return ff_entry_get_complaint (entry (name)) != NULL;
}

static void
test_a_wrong_value_is_said_beside_its_field (void **state)
{
  GtkWidget *typed;

  begin (1200);
  show ("b1");
  type ("Usable minutes after the reserve", "999");
  assert_int_equal (item ("b1")->usable_minutes, 18);
  assert_true (ff_stage_wait (has_complaint, (gpointer) "Usable minutes after the reserve"));
  assert_non_null (
      strstr (ff_entry_get_complaint (entry ("Usable minutes after the reserve")), "1 to 240"));
  typed = ff_stage_find (GTK_WIDGET (entry ("Usable minutes after the reserve")), GTK_TYPE_ENTRY,
                         NULL);
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (typed), GTK_ACCESSIBLE_STATE_INVALID,
                                    GTK_ACCESSIBLE_INVALID_TRUE);
  /* It belongs to this battery alone: the next one shows its own value and no complaint. */
  show ("b2");
  assert_string_equal (ff_entry_get_text (entry ("Usable minutes after the reserve")), "18");
  assert_null (ff_entry_get_complaint (entry ("Usable minutes after the reserve")));
  type ("Label on it", "b3");
  assert_non_null (item ("b2"));
  ff_stage_free (stage);
}

static void
test_what_one_value_says_to_another (void **state)
{
  GtkWidget *message;

  begin (1200);
  show ("b1");
  type ("Energy, as printed on it", "77");
  message = ff_stage_find (
      GTK_WIDGET (entry ("Energy, as printed on it")), GTK_TYPE_LABEL,
      "□ 14.8 V × 4.7 Ah = 69.6 Wh, 11 % away from what is printed: which of the three is misread?");
  assert_non_null (message);
  assert_true (gtk_widget_has_css_class (GTK_WIDGET (entry ("Energy, as printed on it")), "asking"));
  ff_stage_free (stage);
}

static void
test_picks_and_checks (void **state)
{
  GtkWidget *check, *pick;

  begin (1200);
  check = in_page (GTK_TYPE_CHECK_BUTTON, NULL);
  assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  assert_false (item ("aircraft 1")->light_fitted);
  undo ();
  assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  pick = ff_stage_find (in_page (FF_TYPE_GEAR_FORM, NULL), FF_TYPE_PICK, NULL);
  assert_int_equal (ff_pick_get_value (FF_PICK (pick)), 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ff_stage_find (pick, GTK_TYPE_DROP_DOWN, NULL)), 0);
  assert_string_equal (item ("aircraft 1")->camera_id, "");
  assert_true (says ("□ No camera is chosen: a plan needs to know what it can be set to"));
  ff_stage_free (stage);
}

static GtkWidget *
event_pick (void)
{
  return ff_stage_find (in_page (FF_TYPE_GEAR_STATE, NULL), GTK_TYPE_DROP_DOWN, NULL);
}

static void
enter_event (void)
{
  GtkWidget *button
      = ff_stage_find (in_page (FF_TYPE_GEAR_STATE, NULL), GTK_TYPE_BUTTON, "_Enter it");

  g_signal_emit_by_name (button, "clicked");
  ff_stage_settle ();
}

static void
test_a_state_needs_a_reason_and_is_kept (void **state)
{
  begin (1200);
  show ("b4");
  act ("gear.state");
  assert_int_equal (gtk_drop_down_get_selected (GTK_DROP_DOWN (event_pick ())), FF_STATE_DEFECT);
  enter_event ();
  assert_true (ff_stage_wait (has_complaint, (gpointer) "Why"));
  assert_int_equal (item ("b4")->state, FF_STATE_SERVICEABLE);
  type ("Why", "swollen");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (event_pick ()), FF_STATE_QUARANTINED);
  enter_event ();
  assert_null (in_page (FF_TYPE_GEAR_STATE, NULL));
  assert_int_equal (item ("b4")->state, FF_STATE_QUARANTINED);
  assert_true (says ("‖\u00a0quarantined"));
  assert_true (says ("swollen"));
  assert_non_null (in_page (GTK_TYPE_LABEL, "5 · 1 ‖\u00a0quarantined"));
  /* Undo adds the state before; with a history the item is no longer deleted. */
  undo ();
  assert_int_equal (item ("b4")->state, FF_STATE_SERVICEABLE);
  act ("gear.delete");
  assert_non_null (item ("b4"));
  assert_non_null (ff_stage_find (GTK_WIDGET (stage->window), GTK_TYPE_LABEL,
                                  "this item has a history, and what happened is kept; retire it "
                                  "instead"));
  ff_stage_free (stage);
}

static void
test_out_with_whom_until_when (void **state)
{
  begin (1200);
  show ("ND16");
  act ("gear.state");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (event_pick ()), FF_STATE_OUT);
  type ("Why", "lent");
  type ("With whom, or which job", "Brackenholt");
  type ("Back on", "Sunday");
  enter_event ();
  assert_int_equal (item ("ND16")->state, FF_STATE_SERVICEABLE);
  type ("Back on", "2027-09-19");
  enter_event ();
  assert_int_equal (item ("ND16")->state, FF_STATE_OUT);
  assert_true (says ("with Brackenholt, back Sun 19 Sep: lent"));
  ff_stage_free (stage);
}

static void
test_new_duplicate_delete_and_undo (void **state)
{
  guint n;

  begin (1200);
  n = ff_keeper_items (stage->keeper)->len;
  gtk_widget_activate_action (page (), "gear.new", "s", "battery");
  ff_stage_settle ();
  assert_non_null (item ("b6"));
  assert_true (says ("b6"));
  /* The label has the focus, to be written over. */
  assert_ptr_equal (gtk_widget_get_ancestor (
                        gtk_root_get_focus (GTK_ROOT (stage->window)), FF_TYPE_ENTRY),
                    entry ("Label on it"));
  act ("gear.duplicate");
  assert_non_null (item ("b7"));
  act ("gear.delete");
  assert_null (item ("b7"));
  undo ();
  assert_non_null (item ("b7"));
  undo ();
  undo ();
  assert_int_equal (ff_keeper_items (stage->keeper)->len, n);
  ff_stage_free (stage);
}

static void
test_used_by_a_job (void **state)
{
  begin (1200);
  show ("b1");
  assert_true (says ("Used by: Skarrowick tidal mill"));
  act ("gear.spare");
  assert_false (says ("Used by: Skarrowick tidal mill"));
  assert_true (says ("Use it in “Skarrowick tidal mill”"));
  act ("gear.use");
  assert_true (says ("Used by: Skarrowick tidal mill"));
  undo ();
  undo ();
  assert_true (says ("Used by: Skarrowick tidal mill"));
  ff_stage_free (stage);
}

static gboolean
is_collapsed (gpointer nothing)
{
  return ff_split_get_collapsed (FF_SPLIT (in_page (FF_TYPE_SPLIT, NULL)));
}

static void
test_narrow_is_the_list_then_the_item (void **state)
{
  GtkWidget *list;

  begin (400);
  assert_true (ff_stage_wait (is_collapsed, NULL));
  list = in_page (GTK_TYPE_LIST_BOX, NULL);
  assert_non_null (list);
  assert_null (in_page (FF_TYPE_GEAR_ITEM, NULL));
  gtk_widget_activate (GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 3)));
  ff_stage_settle ();
  ff_stage_settle ();
  assert_non_null (in_page (FF_TYPE_GEAR_ITEM, NULL));
  assert_null (in_page (GTK_TYPE_LIST_BOX, NULL));
  assert_true (says ("ND4"));
  act ("gear.back");
  assert_non_null (in_page (GTK_TYPE_LIST_BOX, NULL));
  assert_true (FF_IS_GEAR_ROW (gtk_root_get_focus (GTK_ROOT (stage->window))));
  ff_stage_free (stage);
}

/* Types into a field and presses Enter in it. */
static void
enter (const char *name, const char *text)
{
  type (name, text);
  g_signal_emit_by_name (entry (name), "entered");
  ff_stage_settle ();
}

static gboolean
complains_of (gpointer name)
{
  return ff_entry_get_complaint (entry (name)) != NULL;
}

static void
test_goes_with_is_entered_once (void **state)
{
  begin (1200);
  show ("aircraft 1");
  enter ("Add an item by its label, then Enter", "p2");
  assert_true (ff_item_goes_with (item ("aircraft 1"), item ("P2")->id));
  enter ("Add an item by its label, then Enter", "nothing");
  assert_true (ff_stage_wait (complains_of, (gpointer) "Add an item by its label, then Enter"));
  undo ();
  assert_false (ff_item_goes_with (item ("aircraft 1"), item ("P2")->id));
  g_signal_emit_by_name (in_page (GTK_TYPE_BUTTON, "P1  ✕"), "clicked");
  ff_stage_settle ();
  assert_false (ff_item_goes_with (item ("aircraft 1"), item ("P1")->id));
  ff_stage_free (stage);
}

static gboolean
is_quarantined (gpointer label)
{
  return item (label)->state == FF_STATE_QUARANTINED;
}

static void
test_a_swollen_battery_is_decided_about (void **state)
{
  GtkWidget *keep;

  begin (1200);
  show ("b3");
  keep = in_page (GTK_TYPE_BUTTON, "■ _Keep it in use");
  assert_false (gtk_widget_get_sensitive (keep));
  gtk_widget_activate (in_page (GTK_TYPE_BUTTON, "‖ _Quarantine it"));
  ff_stage_settle ();
  assert_int_equal (item ("b3")->state, FF_STATE_SERVICEABLE);
  type ("What was found", "bulges at the latch");
  gtk_widget_activate (in_page (GTK_TYPE_BUTTON, "‖ _Quarantine it"));
  assert_true (ff_stage_wait (is_quarantined, (gpointer) "b3"));
  assert_true (says ("‖\u00a0quarantined: swelling: bulges at the latch"));
  enter ("Cells, one number each, then Enter", "3 3.1");
  assert_true (ff_stage_wait (complains_of, (gpointer) "Cells, one number each, then Enter"));
  enter ("Cells, one number each, then Enter", "3 3.1 3 3.2");
  assert_true (says ("Worst cell 3.2 mΩ, 0 % above new"));
  ff_stage_free (stage);
}

static void
test_a_file_is_said_before_it_is_read (void **state)
{
  g_autofree char *path = NULL;

  begin (1200);
  path = g_build_filename (stage->folder, "gear.csv", NULL);
  assert_true (g_file_set_contents (path, "label,kind\nb9,bat\n", -1, NULL));
  assert_false (ff_gear_files_preview (FF_PAGE (page ()), path));
  assert_true (g_file_set_contents (path, "label,kind,volts\nb9,battery,14.8\n", -1, NULL));
  assert_true (ff_gear_files_preview (FF_PAGE (page ()), path));
  ff_stage_settle ();
  assert_null (item ("b9"));
  ff_stage_free (stage);
}

static void
test_nothing_yet (void **state)
{
  stage = ff_stage_new (FALSE, 1200, 800);
  ff_window_show_page (stage->window, "gear");
  ff_stage_settle ();
  assert_non_null (in_page (GTK_TYPE_LABEL, "No gear yet"));
  gtk_widget_activate_action (page (), "gear.new", "s", "camera");
  ff_stage_settle ();
  assert_true (says ("K1"));
  undo ();
  assert_non_null (in_page (GTK_TYPE_LABEL, "No gear yet"));
  ff_stage_free (stage);
}

static GtkWidget *
focus (void)
{
  return gtk_root_get_focus (GTK_ROOT (stage->window));
}

static gboolean
field_has_focus (const char *name)
{
  return gtk_widget_get_ancestor (focus (), FF_TYPE_ENTRY) == GTK_WIDGET (entry (name));
}

/* From the list to a field, and back, by keys alone: Enter and Escape; Tab passes what can be done
 * with the item. */
static void
test_by_keys (void **state)
{
  begin (1200);
  assert_true (FF_IS_GEAR_ROW (focus ()));
  act ("gear.edit");
  assert_true (field_has_focus ("Label on it"));
  act ("gear.back");
  assert_true (FF_IS_GEAR_ROW (focus ()));
  act ("gear.item");
  assert_null (gtk_widget_get_ancestor (focus (), GTK_TYPE_LIST_BOX));
  for (guint i = 0; i < 4 && !GTK_IS_EDITABLE (focus ()); i++)
    gtk_widget_child_focus (GTK_WIDGET (stage->window), GTK_DIR_TAB_FORWARD);
  assert_true (field_has_focus ("Label on it"));
  gtk_widget_activate_action (GTK_WIDGET (stage->window), "win.find", NULL);
  assert_non_null (gtk_widget_get_ancestor (focus (), GTK_TYPE_SEARCH_ENTRY));
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_list),
    cmocka_unit_test (test_every_kind_has_its_page),
    cmocka_unit_test (test_accessible_names),
    cmocka_unit_test (test_what_is_typed_is_stored),
    cmocka_unit_test (test_a_wrong_value_is_said_beside_its_field),
    cmocka_unit_test (test_what_one_value_says_to_another),
    cmocka_unit_test (test_picks_and_checks),
    cmocka_unit_test (test_a_state_needs_a_reason_and_is_kept),
    cmocka_unit_test (test_out_with_whom_until_when),
    cmocka_unit_test (test_new_duplicate_delete_and_undo),
    cmocka_unit_test (test_used_by_a_job),
    cmocka_unit_test (test_narrow_is_the_list_then_the_item),
    cmocka_unit_test (test_goes_with_is_entered_once),
    cmocka_unit_test (test_a_swollen_battery_is_decided_about),
    cmocka_unit_test (test_a_file_is_said_before_it_is_read),
    cmocka_unit_test (test_nothing_yet),
    cmocka_unit_test (test_by_keys),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("gear", tests, NULL, NULL);
}
