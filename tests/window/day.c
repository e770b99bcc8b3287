/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page of the day: what is typed is stored, a wrong value is said beside its field and the old
 * one stays, everything can be taken back, all of it by keys. */
#include "ff-stage.h"

#include <string.h>

#include "ff-crew-list.h"
#include "ff-crew-row.h"
#include "ff-day-page.h"
#include "ff-gap-list.h"
#include "ff-pair-list.h"
#include "ff-pick.h"

static FfStage *
stage_on_demo (int width)
{
  FfStage *stage = ff_stage_new (TRUE, width, 800);

  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "day");
  ff_stage_settle ();
  return stage;
}

static FfStage *
stage_on_new_job (void)
{
  FfStage *stage = ff_stage_new (FALSE, 1200, 800);
  g_autofree char *id = ff_keeper_new_job (stage->keeper, NULL);

  ff_keeper_open_job (stage->keeper, id);
  ff_window_show_page (stage->window, "day");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  return stage;
}

static GtkWidget *
page_of (FfStage *stage)
{
  return GTK_WIDGET (ff_window_get_page (stage->window));
}

static GtkWidget *
part (FfStage *stage, const char *name)
{
  GObject *widget = gtk_widget_get_template_child (page_of (stage), FF_TYPE_DAY_PAGE, name);

  assert_non_null (widget);
  return GTK_WIDGET (widget);
}

static FfEntry *
field (FfStage *stage, const char *name)
{
  return FF_ENTRY (part (stage, name));
}

static GtkWidget *
inner (GtkWidget *entry)
{
  GtkWidget *found = ff_stage_find (entry, GTK_TYPE_ENTRY, NULL);

  assert_non_null (found);
  return found;
}

static void
type_into (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (inner (entry)), text);
}

static void
press_enter (GtkWidget *entry)
{
  g_signal_emit_by_name (inner (entry), "activate");
}

static void
type (FfStage *stage, const char *name, const char *text)
{
  type_into (part (stage, name), text);
  press_enter (part (stage, name));
}

static void
undo (FfStage *stage)
{
  GError *error = NULL;

  assert_true (ff_keeper_undo (stage->keeper, &error));
  assert_no_error (error);
}

static const FfJob *
job_of (FfStage *stage)
{
  return ff_keeper_job (stage->keeper);
}

static const FfPlace *
place_of (FfStage *stage)
{
  return ff_keeper_place (stage->keeper);
}

/* ---- Fields ---- */

static void
test_the_demo_day_is_shown (void **state)
{
  static const struct {
    const char *name, *want;
  } cases[] = {
    { "title", "Skarrowick tidal mill" },
    { "client", "Skarrowick Harbour Trust" },
    { "date", "2027-09-18" },
    { "first_off", "16:30" },
    { "all_down", "19:50" },
    { "position", "57.20000° N, 4.00000° W" },
    { "name", "Skarrowick Head" },
    { "zone", "Europe/London" },
    { "visibility_m", "20" },
    { "gust_ms", "6" },
    { "battery_change_minutes", "4" },
    { "emergency_phone", "" },
  };
  FfStage *stage = stage_on_demo (1200);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    if (!g_str_equal (ff_entry_get_text (field (stage, cases[i].name)), cases[i].want))
      fail_msg ("%s: %s", cases[i].name, ff_entry_get_text (field (stage, cases[i].name)));
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "57°12′00.0″ N, 4°00′00.0″ W"));
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "Saturday 18 September 2027"));
  assert_non_null (
      ff_stage_find (page_of (stage), GTK_TYPE_LABEL,
                     "□ Blank: it must be filled in. Every sheet says so until it is."));
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL,
                                  "Sun up 06:52, down 19:27; civil dawn 06:13, dusk 20:06."));
  assert_non_null (
      ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "Clock of Europe/London: UTC+1."));
  ff_stage_free (stage);
}

static void
test_each_keystroke_is_stored_and_all_are_undone (void **state)
{
  FfStage *stage = stage_on_demo (1200);

  type_into (part (stage, "client"), "S");
  assert_string_equal (job_of (stage)->client, "S");
  type_into (part (stage, "client"), "Sk");
  assert_string_equal (job_of (stage)->client, "Sk");
  type (stage, "emergency_phone", "000");
  assert_string_equal (place_of (stage)->emergency_phone, "000");
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "Emergency telephone changed");
  undo (stage);
  undo (stage);
  assert_string_equal (place_of (stage)->emergency_phone, "");
  assert_string_equal (job_of (stage)->client, "Skarrowick Harbour Trust");
  assert_string_equal (ff_entry_get_text (field (stage, "client")), "Skarrowick Harbour Trust");
  ff_stage_free (stage);
}

static void
refused (FfStage *stage, const char *name, const char *text, const char *why)
{
  g_autofree char *before = g_strdup (ff_entry_get_text (field (stage, name)));

  type (stage, name, text);
  if (ff_entry_get_complaint (field (stage, name)) == NULL
      || strstr (ff_entry_get_complaint (field (stage, name)), why) == NULL)
    fail_msg ("%s “%s”: %s", name, text, ff_entry_get_complaint (field (stage, name)));
  assert_string_equal (ff_entry_get_text (field (stage, name)), text);
  type (stage, name, before);
  assert_null (ff_entry_get_complaint (field (stage, name)));
}

static void
test_a_wrong_value_is_said_and_the_old_one_stays (void **state)
{
  FfStage *stage = stage_on_demo (1200);

  refused (stage, "position", "95 N 4 W", "latitude 95 is out of range");
  refused (stage, "position", "120 30", "say which is which");
  refused (stage, "date", "2027-09-31", "does not exist");
  refused (stage, "first_off", "half past four", "not a clock time");
  refused (stage, "all_down", "16:00", "“all down” is earlier than “first off”");
  refused (stage, "gust_ms", "3", "the gust is less than the wind");
  refused (stage, "zone", "Europe/Atlantis", "unknown time zone");
  refused (stage, "title", "", "it is missing");
  refused (stage, "elevation_m", "12000", "accepted: -450 to 9000");
  assert_close (place_of (stage)->latitude_deg, 57.2, 1e-9);
  assert_int_equal (job_of (stage)->all_down, 19 * 60 + 50);
  ff_stage_free (stage);
}

static void
test_what_is_typed_comes_back_normalised (void **state)
{
  FfStage *stage = stage_on_demo (1200);

  type (stage, "date", "19.9.2027");
  assert_string_equal (ff_entry_get_text (field (stage, "date")), "2027-09-19");
  type (stage, "off_site", "2045");
  assert_string_equal (ff_entry_get_text (field (stage, "off_site")), "20:45");
  type (stage, "position", "57d13'N 4d1'W");
  assert_string_equal (ff_entry_get_text (field (stage, "position")), "57.21667° N, 4.01667° W");
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "57°13′00.0″ N, 4°01′00.0″ W"));
  ff_stage_free (stage);
}

/* What was refused belongs to the job that it was typed into. */
static void
test_another_job_starts_clean (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  g_autofree char *id = NULL;

  type (stage, "date", "never");
  assert_non_null (ff_entry_get_complaint (field (stage, "date")));
  id = ff_keeper_duplicate_job (stage->keeper, job_of (stage)->id, NULL);
  ff_keeper_open_job (stage->keeper, id);
  ff_stage_settle ();
  assert_null (ff_entry_get_complaint (field (stage, "date")));
  assert_string_equal (ff_entry_get_text (field (stage, "date")), "");
  /* The copy is at the same place, and that is said. */
  assert_non_null (ff_stage_find (
      page_of (stage), GTK_TYPE_LABEL,
      "Also the place of “Skarrowick tidal mill”: what changes here changes there."));
  ff_stage_free (stage);
}

static void
test_a_day_of_the_calendar (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  GtkWidget *calendar = part (stage, "calendar");
  g_autoptr (GDateTime) day = g_date_time_new_utc (2027, 9, 25, 12, 0, 0);

  gtk_menu_button_popup (GTK_MENU_BUTTON (part (stage, "calendar_button")));
  ff_stage_settle ();
  /* Opening it changes nothing. */
  assert_string_equal (job_of (stage)->date, "2027-09-18");
  gtk_calendar_select_day (GTK_CALENDAR (calendar), day);
  assert_string_equal (job_of (stage)->date, "2027-09-25");
  gtk_menu_button_popdown (GTK_MENU_BUTTON (part (stage, "calendar_button")));
  ff_stage_settle ();
  ff_stage_free (stage);
}

/* ---- The place ---- */

static void
test_a_position_makes_a_place (void **state)
{
  FfStage *stage = stage_on_new_job ();
  GtkWidget *zone;

  assert_null (place_of (stage));
  assert_false (gtk_widget_get_visible (part (stage, "place_record")));
  type (stage, "title", "Mill");
  type (stage, "position", "geo:57.2,-4.0");
  assert_non_null (place_of (stage));
  assert_string_equal (place_of (stage)->name, "Mill");
  assert_string_equal (place_of (stage)->zone, "UTC");
  assert_true (gtk_widget_get_visible (part (stage, "place_record")));
  /* The zone is offered, not taken. */
  assert_true (gtk_widget_get_visible (part (stage, "zone_offer")));
  zone = ff_stage_find (part (stage, "zone_choices"), GTK_TYPE_BUTTON, NULL);
  assert_non_null (zone);
  g_signal_emit_by_name (zone, "clicked");
  assert_string_not_equal (place_of (stage)->zone, "UTC");
  ff_stage_settle ();
  assert_false (gtk_widget_get_visible (part (stage, "zone_offer")));
  undo (stage);
  assert_string_equal (place_of (stage)->zone, "UTC");
  undo (stage);
  assert_null (place_of (stage));
  assert_string_equal (ff_entry_get_text (field (stage, "position")), "");
  ff_stage_free (stage);
}

static void
test_a_known_place_is_chosen (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  g_autofree char *id = ff_keeper_new_job (stage->keeper, NULL);
  GtkWidget *choice = part (stage, "place");

  ff_keeper_open_job (stage->keeper, id);
  ff_stage_settle ();
  assert_null (place_of (stage));
  g_signal_emit_by_name (choice, "picked", 0);
  assert_string_equal (place_of (stage)->name, "Skarrowick Head");
  assert_int_equal (ff_pick_get_value (FF_PICK (choice)), 0);
  /* The last choice is a new place. */
  g_signal_emit_by_name (choice, "picked", 1);
  assert_null (place_of (stage));
  undo (stage);
  assert_string_equal (place_of (stage)->name, "Skarrowick Head");
  ff_stage_free (stage);
}

/* ---- Lists ---- */

static GtkWidget *
list_entry (FfStage *stage, const char *list, const char *text)
{
  GtkWidget *found = ff_stage_find (part (stage, list), GTK_TYPE_ENTRY, text);

  if (found == NULL)
    fail_msg ("%s does not show “%s”", list, text);
  return found;
}

static void
add_line (FfStage *stage, const char *list, const char *text)
{
  GtkWidget *line = gtk_widget_get_last_child (part (stage, list));

  gtk_editable_set_text (GTK_EDITABLE (ff_stage_find (line, GTK_TYPE_ENTRY, NULL)), text);
  g_signal_emit_by_name (ff_stage_find (line, GTK_TYPE_BUTTON, "Add"), "clicked");
}

static const FfDayEvent *
event (FfStage *stage, guint i)
{
  assert_true (i < job_of (stage)->events->len);
  return g_ptr_array_index (job_of (stage)->events, i);
}

static void
test_events_stand_by_their_time (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  GtkWidget *clock;

  add_line (stage, "events", "1745 school bus");
  assert_int_equal (job_of (stage)->events->len, 4);
  assert_string_equal (event (stage, 1)->text, "school bus");
  /* The row that moves keeps what is typed in it, and the cursor. */
  clock = list_entry (stage, "events", "17:45");
  gtk_widget_grab_focus (clock);
  gtk_editable_set_text (GTK_EDITABLE (clock), "20:15");
  assert_string_equal (event (stage, 3)->text, "school bus");
  assert_ptr_equal (list_entry (stage, "events", "20:15"), clock);
  assert_non_null (gtk_widget_get_focus_child (part (stage, "events")));
  gtk_editable_set_text (GTK_EDITABLE (list_entry (stage, "events", "school bus")), "bus");
  assert_string_equal (event (stage, 3)->text, "bus");
  assert_string_equal (event (stage, 0)->text, "ferry passes");
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "Event at 20:15 changed");
  undo (stage);
  undo (stage);
  assert_int_equal (event (stage, 1)->clock, 17 * 60 + 45);
  undo (stage);
  assert_int_equal (job_of (stage)->events->len, 3);
  ff_stage_free (stage);
}

static void
test_events_refuse_and_are_deleted (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  GtkWidget *clock = list_entry (stage, "events", "17:14");
  GtkWidget *row = gtk_widget_get_ancestor (clock, GTK_TYPE_BOX);

  add_line (stage, "events", "ferry again");
  assert_int_equal (job_of (stage)->events->len, 3);
  assert_non_null (list_entry (stage, "events", "ferry again"));
  gtk_editable_set_text (GTK_EDITABLE (clock), "17:99");
  assert_int_equal (event (stage, 0)->clock, 17 * 60 + 14);
  while (ff_stage_find (row, GTK_TYPE_BUTTON, NULL) == NULL)
    row = gtk_widget_get_parent (row);
  g_signal_emit_by_name (ff_stage_find (row, GTK_TYPE_BUTTON, NULL), "clicked");
  assert_int_equal (job_of (stage)->events->len, 2);
  assert_string_equal (ff_keeper_undo_text (stage->keeper), "Event “ferry passes” deleted");
  undo (stage);
  assert_string_equal (event (stage, 0)->text, "ferry passes");
  ff_stage_free (stage);
}

static void
test_hazards_and_their_measures (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  const guint before = place_of (stage)->hazards->len;
  const FfHazard *hazard;
  GtkWidget *focus;

  add_line (stage, "hazards", "crane");
  assert_int_equal (place_of (stage)->hazards->len, before + 1);
  /* The cursor waits where the measure goes. */
  focus = gtk_root_get_focus (GTK_ROOT (stage->window));
  assert_non_null (focus);
  gtk_editable_set_text (GTK_EDITABLE (gtk_widget_get_ancestor (focus, GTK_TYPE_ENTRY)), "lowered");
  hazard = g_ptr_array_index (place_of (stage)->hazards, before);
  assert_string_equal (hazard->what, "crane");
  assert_string_equal (hazard->measure, "lowered");
  undo (stage);
  undo (stage);
  assert_int_equal (place_of (stage)->hazards->len, before);
  ff_stage_free (stage);
}

/* ---- Crew ---- */

static FfCrewRow *
crew_row (FfStage *stage, const char *name)
{
  GtkWidget *label = ff_stage_find (part (stage, "crew"), GTK_TYPE_LABEL, name);

  if (label == NULL)
    fail_msg ("%s is not shown", name);
  return FF_CREW_ROW (gtk_widget_get_ancestor (label, FF_TYPE_CREW_ROW));
}

static const FfMember *
crew (FfStage *stage, guint i)
{
  assert_true (i < ff_keeper_crew (stage->keeper)->len);
  return g_ptr_array_index (ff_keeper_crew (stage->keeper), i);
}

static void
test_someone_new_takes_a_role (void **state)
{
  FfStage *stage = stage_on_new_job ();
  GtkWidget *line = gtk_widget_get_last_child (part (stage, "crew"));
  GtkWidget *name = ff_stage_find (line, GTK_TYPE_ENTRY, NULL);

  gtk_editable_set_text (GTK_EDITABLE (name), "Ada Quill");
  g_signal_emit_by_name (name, "activate");
  assert_int_equal (ff_keeper_crew (stage->keeper)->len, 1);
  assert_string_equal (crew (stage, 0)->initials, "AQ");
  assert_int_equal (crew (stage, 0)->role, FF_ROLE_LEAD);
  g_signal_emit_by_name (crew_row (stage, "Ada Quill"), "typed", "phone", "555");
  g_signal_emit_by_name (crew_row (stage, "Ada Quill"), "typed", "certificate_expiry",
                         "31.12.2027");
  assert_string_equal (crew (stage, 0)->phone, "555");
  assert_string_equal (crew (stage, 0)->certificate_expiry, "2027-12-31");
  g_signal_emit_by_name (crew_row (stage, "Ada Quill"), "role-picked", FF_ROLE_PILOT);
  assert_int_equal (crew (stage, 0)->role, FF_ROLE_PILOT);
  undo (stage);
  assert_int_equal (crew (stage, 0)->role, FF_ROLE_LEAD);
  undo (stage);
  undo (stage);
  assert_int_equal (ff_keeper_crew (stage->keeper)->len, 0);
  assert_int_equal (ff_keeper_members (stage->keeper)->len, 0);
  ff_stage_free (stage);
}

static void
test_a_member_leaves_and_comes_back (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  FfCrewRow *row = crew_row (stage, "Pell Rasmussen");

  g_signal_emit_by_name (ff_stage_find (GTK_WIDGET (row), GTK_TYPE_BUTTON, NULL), "clicked");
  ff_stage_settle ();
  g_signal_emit_by_name (row, "removed");
  assert_int_equal (ff_keeper_crew (stage->keeper)->len, 3);
  assert_non_null (
      ff_stage_find (page_of (stage), GTK_TYPE_LABEL, "No observer yet: say who watches."));
  /* Who holds no role is the first choice. */
  g_signal_emit_by_name (
      ff_stage_find (gtk_widget_get_last_child (part (stage, "crew")), GTK_TYPE_BUTTON, "Add"),
      "clicked");
  assert_int_equal (ff_keeper_crew (stage->keeper)->len, 4);
  assert_string_equal (crew (stage, 3)->name, "Pell Rasmussen");
  assert_int_equal (crew (stage, 3)->role, FF_ROLE_OBSERVER);
  undo (stage);
  undo (stage);
  assert_int_equal (ff_keeper_crew (stage->keeper)->len, 4);
  ff_stage_free (stage);
}

static void
test_initials_that_are_taken_are_refused (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  FfCrewRow *row = crew_row (stage, "Jonah Velk");

  g_signal_emit_by_name (row, "typed", "initials", "MO");
  assert_string_equal (crew (stage, 1)->initials, "JV");
  g_signal_emit_by_name (row, "typed", "initials", "J7");
  assert_string_equal (crew (stage, 1)->initials, "JV");
  ff_stage_free (stage);
}

/* ---- What is missing ---- */

static void
test_what_is_missing_leads_there (void **state)
{
  FfStage *stage = stage_on_new_job ();

  assert_true (gtk_widget_get_visible (part (stage, "first_gap")));
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL,
                                  "□ No date yet: enter the day of the shoot."));
  g_signal_emit_by_name (ff_stage_find (part (stage, "first_gap"), GTK_TYPE_BUTTON, NULL),
                         "clicked");
  assert_non_null (gtk_widget_get_focus_child (part (stage, "date")));
  type (stage, "date", "2027-09-18");
  ff_stage_wait_for_plan (stage);
  ff_stage_settle ();
  assert_non_null (ff_stage_find (page_of (stage), GTK_TYPE_LABEL,
                                  "□ No place yet: type its position, or choose one you know."));
  ff_stage_free (stage);
}

static void
test_nothing_for_a_plan_is_missing_on_the_demo_day (void **state)
{
  FfStage *stage = stage_on_demo (1200);

  assert_false (gtk_widget_get_visible (part (stage, "first_gap")));
  g_signal_emit_by_name (ff_stage_find (part (stage, "gaps"), GTK_TYPE_BUTTON, NULL), "clicked");
  assert_non_null (gtk_widget_get_focus_child (part (stage, "emergency_location")));
  ff_stage_free (stage);
}

/* ---- Keys, sizes ---- */

static void
test_tab_reaches_every_field (void **state)
{
  static const char *const wanted[]
      = { "title",   "date", "calendar_button", "position", "zone",   "emergency_phone",
          "hazards", "sky",  "gust_ms",         "crew",     "events", "filter_change_minutes",
          "gaps" };
  FfStage *stage = stage_on_demo (1200);
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  guint n = 0;

  gtk_widget_grab_focus (part (stage, "title"));
  do
    {
      for (GtkWidget *at = gtk_root_get_focus (GTK_ROOT (stage->window)); at != NULL;
           at = gtk_widget_get_parent (at))
        g_hash_table_add (seen, at);
      assert_true (n++ < 200);
  } while (gtk_widget_child_focus (page_of (stage), GTK_DIR_TAB_FORWARD));
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (!g_hash_table_contains (seen, part (stage, wanted[i])))
      fail_msg ("Tab does not reach %s", wanted[i]);
  ff_stage_free (stage);
}

static int
least_width (FfStage *stage)
{
  int least;

  gtk_widget_measure (page_of (stage), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  return least;
}

/* Long names, large letters, right to left: it stays within the narrow window. */
static void
test_it_fits_when_narrow (void **state)
{
  GtkSettings *settings = gtk_settings_get_default ();
  FfStage *stage = stage_on_demo (400);
  int dpi;

  type (stage, "name", "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch harbour light");
  add_line (stage, "hazards", "Donaudampfschifffahrtselektrizitätenhauptbetriebswerk on the quay");
  add_line (stage, "events", "18:10 a very long event that says in many words what is going on");
  ff_stage_settle ();
  if (least_width (stage) > 400)
    fail_msg ("it needs %d", least_width (stage));
  g_object_get (settings, "gtk-xft-dpi", &dpi, NULL);
  g_object_set (settings, "gtk-xft-dpi", 2 * 96 * 1024, NULL);
  ff_stage_settle ();
  if (least_width (stage) > 400)
    fail_msg ("at twice the size it needs %d", least_width (stage));
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  ff_stage_settle ();
  assert_true (least_width (stage) <= 400);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
  g_object_set (settings, "gtk-xft-dpi", dpi, NULL);
  ff_stage_free (stage);
}

/* Wide, sun and moon stand beside the form and stay there; narrow, below it. */
static void
test_two_columns_when_wide (void **state)
{
  FfStage *stage = stage_on_demo (1200);
  graphene_rect_t title, sun;

  assert_true (gtk_widget_compute_bounds (part (stage, "title"), page_of (stage), &title));
  assert_true (gtk_widget_compute_bounds (part (stage, "sun_heading"), page_of (stage), &sun));
  assert_true (sun.origin.x > title.origin.x + title.size.width);
  gtk_widget_grab_focus (part (stage, "filter_change_minutes"));
  ff_stage_settle ();
  ff_stage_settle ();
  assert_true (gtk_widget_compute_bounds (part (stage, "gaps"), page_of (stage), &sun));
  assert_true (sun.origin.y >= 0);
  ff_stage_free (stage);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_demo_day_is_shown),
    cmocka_unit_test (test_each_keystroke_is_stored_and_all_are_undone),
    cmocka_unit_test (test_a_wrong_value_is_said_and_the_old_one_stays),
    cmocka_unit_test (test_what_is_typed_comes_back_normalised),
    cmocka_unit_test (test_another_job_starts_clean),
    cmocka_unit_test (test_a_day_of_the_calendar),
    cmocka_unit_test (test_a_position_makes_a_place),
    cmocka_unit_test (test_a_known_place_is_chosen),
    cmocka_unit_test (test_events_stand_by_their_time),
    cmocka_unit_test (test_events_refuse_and_are_deleted),
    cmocka_unit_test (test_hazards_and_their_measures),
    cmocka_unit_test (test_someone_new_takes_a_role),
    cmocka_unit_test (test_a_member_leaves_and_comes_back),
    cmocka_unit_test (test_initials_that_are_taken_are_refused),
    cmocka_unit_test (test_what_is_missing_leads_there),
    cmocka_unit_test (test_nothing_for_a_plan_is_missing_on_the_demo_day),
    cmocka_unit_test (test_tab_reaches_every_field),
    cmocka_unit_test (test_it_fits_when_narrow),
    cmocka_unit_test (test_two_columns_when_wide),
  };

  if (!ff_stage_start ())
    return 77;
  return cmocka_run_group_tests_name ("day", tests, NULL, NULL);
}
