/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is measured at batteries, what happened to them, and hours and cycles that follow the log. */
#include "ff-test.h"

#include <math.h>

#include "ff-battery-log.h"
#include "ff-error.h"
#include "ff-flight.h"
#include "ff-item-event.h"
#include "ff-job.h"
#include "ff-wear.h"

static char *folder;
static FfStore *store;

static FfItem *
save_item (FfKind kind, const char *label)
{
  FfItem *item = ff_item_new (kind);
  GError *error = NULL;

  ff_set_text (&item->label, label);
  ff_item_save (store, item, &error);
  assert_no_error (error);
  return item;
}

/* ---- Resistance ---- */

static void
test_cells_as_they_are_typed (void **state)
{
  g_autoptr (FfResistance) resistance = ff_resistance_new ();
  g_autoptr (GError) error = NULL;

  assert_true (ff_resistance_parse (resistance, "3.1 3.2  3 3.4", 4, &error));
  assert_close (g_array_index (resistance->milliohms, double, 2), 3, 0);
  assert_close (ff_resistance_worst (resistance), 3.4, 0);
  assert_true (ff_resistance_parse (resistance, "3,1 3,2 3,0 3,4", 4, &error));
  assert_close (g_array_index (resistance->milliohms, double, 1), 3.2, 0);
  assert_true (ff_resistance_parse (resistance, "3.1,3.2", 0, &error));
  assert_int_equal (resistance->milliohms->len, 2);
  assert_true (ff_resistance_parse (resistance, "3.1, 3.2", 2, &error));
  assert_false (ff_resistance_parse (resistance, "3.1 3.2 3.3", 4, &error));
  assert_error (error, FF_ERROR_INPUT, "found 3 cells");
  assert_false (ff_resistance_parse (resistance, "", 0, &error));
  assert_error (error, FF_ERROR_INPUT, "found 0 cells");
  assert_false (ff_resistance_parse (resistance, "3.1 x", 2, &error));
  assert_error (error, FF_ERROR_INPUT, "x");
}

static void
test_resistances_come_back_by_time (void **state)
{
  g_autoptr (FfItem) battery = save_item (FF_KIND_BATTERY, "b4");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) measured = NULL;
  const FfResistance *last;

  for (int i = 0; i < 3; i++)
    {
      g_autoptr (FfResistance) one = ff_resistance_new ();

      one->at = 1000 - i;
      one->temperature_c = 20 + i;
      assert_true (ff_resistance_parse (one, i == 0 ? "4 6" : "3 3.5", 2, &error));
      assert_true (ff_resistance_add (store, battery->id, one, &error));
    }
  measured = ff_resistances_load (store, battery->id, &error);
  assert_no_error (error);
  assert_int_equal (measured->len, 3);
  last = g_ptr_array_index (measured, 2);
  assert_int_equal (last->at, 1000);
  assert_int_equal (last->milliohms->len, 2);
  assert_close (ff_resistance_worst (last), 6, 0);
  /* New is what was typed, or the first measured. */
  assert_close (ff_resistance_new_cell (battery, measured), 3.5, 0);
  battery->new_milliohms = 3;
  assert_close (ff_resistance_new_cell (battery, measured), 3, 0);
  assert_false (ff_item_delete (store, battery->id, &error));
  assert_error (error, FF_ERROR_INPUT, "history");
}

/* ---- The day, and decisions ---- */

static void
test_the_last_state_of_the_day_counts (void **state)
{
  g_autoptr (FfItem) battery = save_item (FF_KIND_BATTERY, "b1");
  g_autoptr (GError) error = NULL;
  g_autoptr (GHashTable) days = NULL;
  FfBatteryDay full = { 5, FF_BATTERY_DAY_FULL, 0, 100, NAN, (char *) "MO" };
  FfBatteryDay charging = { 9, FF_BATTERY_DAY_CHARGING, 3600, NAN, 31, (char *) "MO" };
  const FfBatteryDay *day;

  assert_true (ff_battery_day_add (store, battery->id, &full, &error));
  assert_true (ff_battery_day_add (store, battery->id, &charging, &error));
  days = ff_battery_days_load (store, &error);
  assert_no_error (error);
  day = g_hash_table_lookup (days, battery->id);
  assert_int_equal (day->state, FF_BATTERY_DAY_CHARGING);
  assert_int_equal (day->until, 3600);
  assert_true (isnan (day->percent));
  assert_close (day->temperature_c, 31, 0);
}

static void
test_a_decision_sets_the_state (void **state)
{
  g_autoptr (FfItem) battery = save_item (FF_KIND_BATTERY, "b1");
  g_autoptr (FfItem) after = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) incidents = NULL;
  FfIncident incident = { 7, FF_SIGN_SWELLING, FF_DECISION_KEEP, (char *) "bulges", (char *) "JV" };

  assert_false (ff_incident_add (store, battery->id, &incident, &error));
  assert_error (error, FF_ERROR_INPUT, "swollen battery is not kept");
  incident.decision = FF_DECISION_QUARANTINE;
  incident.by = (char *) "";
  assert_false (ff_incident_add (store, battery->id, &incident, &error));
  assert_error (error, FF_ERROR_INPUT, "name");
  incident.by = (char *) "JV";
  assert_true (ff_incident_add (store, battery->id, &incident, &error));
  after = ff_item_load (store, battery->id, &error);
  assert_int_equal (after->state, FF_STATE_QUARANTINED);
  assert_string_equal (after->state_why, "swelling: bulges");
  incident.sign = FF_SIGN_DROP;
  incident.decision = FF_DECISION_KEEP;
  assert_true (ff_incident_add (store, battery->id, &incident, &error));
  incidents = ff_incidents_load (store, battery->id, &error);
  assert_int_equal (incidents->len, 2);
  assert_int_equal (((FfIncident *) g_ptr_array_index (incidents, 0))->sign, FF_SIGN_DROP);
}

/* ---- Hours and cycles ---- */

static void
fly (const FfJob *job, const FfItem *battery, gint64 off, int minutes)
{
  g_autoptr (FfFlight) flight = ff_flight_new (job->id);
  g_autoptr (GError) error = NULL;

  flight->off = off;
  flight->down = off + minutes * 60;
  ff_set_text (&flight->battery_id, battery->id);
  ff_flight_append (store, flight, &error);
  assert_no_error (error);
}

static double
total (const FfItem *item)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GHashTable) one = ff_wear_load (store, item->id, &error);
  g_autoptr (GHashTable) all = ff_wear_load (store, NULL, &error);
  double used = ff_wear_total (item, all);

  assert_no_error (error);
  assert_true (isnan (used) || fabs (used - ff_wear_total (item, one)) < 1e-9);
  return used;
}

static void
test_hours_and_cycles_follow_the_log (void **state)
{
  g_autoptr (FfItem) aircraft = save_item (FF_KIND_AIRCRAFT, "A1");
  g_autoptr (FfItem) first = save_item (FF_KIND_PROPELLERS, "P1");
  g_autoptr (FfItem) second = save_item (FF_KIND_PROPELLERS, "P2");
  g_autoptr (FfItem) battery = save_item (FF_KIND_BATTERY, "b1");
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *on = NULL;

  ff_item_add_with (aircraft, first->id);
  aircraft->used = 10;
  aircraft->used_as_of = 50;
  assert_true (ff_item_save (store, aircraft, &error));
  ff_set_text (&job->title, "Skarrowick");
  ff_set_text (&job->aircraft_id, aircraft->id);
  assert_true (ff_job_save (store, job, &error));
  assert_true (isnan (total (battery)));
  fly (job, battery, 0, 30); /* before the ten hours were read */
  fly (job, battery, 10000, 15);
  assert_close (total (aircraft), 10.25, 1e-9);
  assert_close (total (first), 0.75, 1e-9);
  assert_true (isnan (total (second)));
  assert_close (total (battery), 2, 0);

  /* The spare goes on: from then on the hours are its own. */
  assert_true (ff_fitting_add (store, first->id, aircraft->id, 0, "JV", &error));
  assert_true (ff_fitting_add (store, first->id, NULL, 20000, "JV", &error));
  assert_true (ff_fitting_add (store, second->id, aircraft->id, 20000, "JV", &error));
  fly (job, battery, 30000, 60);
  assert_close (total (first), 0.75, 1e-9);
  assert_close (total (second), 1, 1e-9);
  assert_true (ff_fitting_now (store, first->id, &on, &error));
  assert_string_equal (on, "");
}

static void
want_due (FfItem *item, FfDueAnswer answer, const char *words)
{
  g_autofree char *said = NULL;
  FfDue due;

  ff_due (item, NULL, "2027-09-18", &due);
  said = ff_due_words (&due);
  assert_int_equal (due.answer, answer);
  if (words == NULL)
    assert_null (said);
  else
    assert_string_equal (said, words);
}

static void
test_due_before_it_is_over (void **state)
{
  g_autoptr (FfItem) propellers = ff_item_new (FF_KIND_PROPELLERS);
  g_autoptr (FfItem) battery = ff_item_new (FF_KIND_BATTERY);
  g_autoptr (FfItem) paper = ff_item_new (FF_KIND_DOCUMENT);

  want_due (propellers, FF_DUE_NOT, NULL);
  propellers->due_at = 30;
  want_due (propellers, FF_DUE_NOT, "30 h left");
  propellers->used = 25;
  want_due (propellers, FF_DUE_NOT, "5 h left");
  propellers->used = 25.5;
  want_due (propellers, FF_DUE_SOON, "4.5 h left");
  propellers->used = 30;
  want_due (propellers, FF_DUE_NOW, "due, 0 h over");
  battery->due_at = 100;
  battery->used = 99;
  want_due (battery, FF_DUE_SOON, "1 cycle left");
  ff_set_text (&paper->valid_until, "2027-09-18");
  want_due (paper, FF_DUE_SOON, "valid 0 days more");
  ff_set_text (&paper->valid_until, "2027-09-17");
  want_due (paper, FF_DUE_NOW, "ran out 1 day ago");
  ff_set_text (&paper->valid_until, "2027-10-19");
  want_due (paper, FF_DUE_NOT, "valid 31 days more");
  /* The more pressing of the two. */
  ff_set_text (&battery->valid_until, "2027-09-01");
  want_due (battery, FF_DUE_NOW, "ran out 17 days ago");
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_cells_as_they_are_typed),
    CASE (test_resistances_come_back_by_time),
    CASE (test_the_last_state_of_the_day_counts),
    CASE (test_a_decision_sets_the_state),
    CASE (test_hours_and_cycles_follow_the_log),
    CASE (test_due_before_it_is_over),
  };

  return cmocka_run_group_tests_name ("battery-log", tests, NULL, NULL);
}
