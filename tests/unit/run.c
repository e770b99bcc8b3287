/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The wind against each shot's track, and the words about landing. */
#include "ff-test.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-demo.h"
#include "ff-plan-private.h"
#include "ff-records.h"

static char *folder;
static FfStore *store;

static void
test_bearing_in_a_track (void **state)
{
  assert_close (ff_run_track_deg ("out along 060°"), 60, 0);
  assert_close (ff_run_track_deg ("360°"), 360, 0);
  assert_close (ff_run_track_deg ("turn 90°, then along 125°"), 125, 0);
  assert_true (isnan (ff_run_track_deg ("over the basin")));
  assert_true (isnan (ff_run_track_deg ("60°")));
  assert_true (isnan (ff_run_track_deg ("along 361°")));
  assert_true (isnan (ff_run_track_deg ("along 1060°")));
  assert_true (isnan (ff_run_track_deg ("°")));
  assert_true (isnan (ff_run_track_deg ("")));
  assert_true (isnan (ff_run_track_deg (NULL)));
}

static FfDay *
load (void)
{
  g_autoptr (GError) error = NULL;
  FfDay *day = ff_day_load (store, "Skarrowick", &error);

  assert_no_error (error);
  if (day == NULL)
    abort (); /* not reached; the compiler does not know */
  return day;
}

/* The plan's take of D, whose track is out along 060°; borrowed from the plan. */
static const FfPlanTake *
headland (const FfDay *day, FfDayPlan **ret_plan)
{
  g_autoptr (GError) error = NULL;
  const FfPlanLine *line;

  *ret_plan = ff_day_plan (day, NULL, &error);
  assert_no_error (error);
  line = ff_plan_line_of (*ret_plan, "D");
  for (guint i = 0; i < line->takes->len; i++)
    if (g_str_equal (((const FfPlanTake *) g_ptr_array_index (line->takes, i))->shot, "D"))
      return g_ptr_array_index (line->takes, i);
  fail_msg ("D is not flown");
  abort (); /* not reached */
}

/* 4 m/s at 10 m are 4.9 at 40 m, all of it from behind; home at 10 m/s through the air. */
static void
test_demo_day_runs_out_downwind (void **state)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) plan = NULL;
  const FfPlanTake *take = headland (day, &plan);

  assert_close (take->track_deg, 60, 0);
  assert_close (take->wind_ms, 4 * pow (4, 1.0 / 7), 1e-9);
  assert_close (take->tail_ms, take->wind_ms, 1e-9);
  assert_true (take->turn_back_by > take->from && take->turn_back_by <= take->to);
  assert_non_null (strstr (take->run, "downwind along 060°"));
}

static void
test_upwind_is_not_said (void **state)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) plan = NULL;
  const FfPlanTake *take;

  day->job->wind_from_deg = 60;
  take = headland (day, &plan);
  assert_null (take->run);
  assert_true (take->tail_ms < 0);
  assert_int_equal (take->turn_back_by, 0);
}

/* With a fast run out and a slow way home the time to turn back comes long before the take ends:
 * 12 m/s out, 10 - 9.75 m/s home. */
static void
test_strong_wind_turns_back_early (void **state)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) plan = NULL;
  const FfPlanTake *take;
  FfShot *shot = g_ptr_array_index (day->shots, 3);

  assert_string_equal (shot->label, "D");
  shot->speed_ms = 12;
  day->job->wind_ms = 8;
  take = headland (day, &plan);
  assert_int_equal (take->turn_back_by, take->from);
  day->job->wind_ms = 9;
  ff_day_plan_free (g_steal_pointer (&plan));
  take = headland (day, &plan);
  assert_int_equal (take->turn_back_by, 0);
  assert_non_null (strstr (take->run, "no way home"));
}

static void
test_what_is_not_known_is_said (void **state)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) plan = NULL;
  const FfPlanTake *take;

  ff_day_aircraft (day)->wind_limit_ms = NAN;
  take = headland (day, &plan);
  assert_int_equal (take->turn_back_by, 0);
  assert_non_null (strstr (take->run, "not entered"));
  day->job->wind_ms = NAN;
  ff_day_plan_free (g_steal_pointer (&plan));
  take = headland (day, &plan);
  assert_null (take->run);
  assert_true (isnan (take->wind_ms));
}

/* The sentence on every line; the charge counts from it, never from a hoped-for earlier landing. */
static void
test_land_by (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) plan = ff_day_plan (day, NULL, &error);
  const FfPlanLine *third;

  assert_no_error (error);
  third = g_ptr_array_index (plan->lines, 2);
  assert_string_equal (third->land_rule,
                       "Land by 17:56, or off + 18 min, or the reserve: whichever comes first; the "
                       "aircraft's own reading wins.");
  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);
      gboolean from_land_by = FALSE;

      for (guint j = 0; j < plan->lines->len; j++)
        {
          const FfPlanLine *line = g_ptr_array_index (plan->lines, j);

          from_land_by = from_land_by || (g_str_equal (line->battery, charge->battery)
                                          && line->land_by == charge->cool_from);
        }
      assert_true (from_land_by);
    }
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (store, &error));
  return 0;
}

static int
tear_down (void **state)
{
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_bearing_in_a_track),
    cmocka_unit_test (test_demo_day_runs_out_downwind),
    cmocka_unit_test (test_upwind_is_not_said),
    cmocka_unit_test (test_strong_wind_turns_back_early),
    cmocka_unit_test (test_what_is_not_known_is_said),
    cmocka_unit_test (test_land_by),
  };

  return cmocka_run_group_tests_name ("run", tests, set_up, tear_down);
}
