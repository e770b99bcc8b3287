/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The planner on small days whose answer can be seen by eye. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-scale.h"
#include "ff-sorties.h"

#define MINUTE 60
#define N_MINUTES 301
#define MAX_SHOTS 12

typedef struct {
  FfSortieProblem problem;
  FfCameraRange camera;
  FfSortieShot shots[MAX_SHOTS];
  FfSortieFilter filters[8];
  FfSortieBattery batteries[6];
  double light[N_MINUTES];
} Day;

static guint
step (FfScale scale, const char *label)
{
  int found = ff_scale_find (scale, label);

  assert_true (found >= 0);
  return (guint) found;
}

/* Five hours from instant 0 in steady light, a fixed f/2.8, filters of 1 to 6 stops, and one
 * charger that somebody attends. */
static void
day_init (Day *day, double ev100)
{
  static const char *const names[] = { "1", "2", "3", "4", "5", "6" };
  static const char *const labels[] = { "b1", "b2", "b3", "b4", "b5", "b6" };

  memset (day, 0, sizeof *day);
  day->camera = (FfCameraRange) {
    .apertures = { { 2.8, pow (2, 1.5) } }, .n_apertures = 1,
    .iso_low = step (FF_SCALE_ISO, "100"), .iso_high = step (FF_SCALE_ISO, "6400"),
    .base_iso = { step (FF_SCALE_ISO, "100") }, .n_bases = 1,
    .shutter_fast = step (FF_SCALE_SHUTTER, "1/8000"), .shutter_slow = step (FF_SCALE_SHUTTER, "8"),
    .pitch_um = 3,
  };
  for (guint i = 0; i < N_MINUTES; i++)
    day->light[i] = ev100;
  for (guint i = 0; i < 6; i++)
    {
      day->filters[i] = (FfSortieFilter) { names[i], i + 1.0 };
      day->batteries[i] = (FfSortieBattery) { labels[i], 18, 0 };
    }
  day->problem = (FfSortieProblem) {
    .from = 0, .to = (N_MINUTES - 1) * MINUTE,
    .out_minutes = 2, .back_minutes = 2, .battery_change_minutes = 4, .filter_change_minutes = 2,
    .charger_slots = 1, .cool_minutes = 20, .charge_minutes = 60, .charger_attended = TRUE,
    .shots = day->shots, .filters = day->filters, .n_filters = 6,
    .batteries = day->batteries, .n_batteries = 6, .camera = &day->camera,
  };
}

static void
add_shot (Day *day, const char *label, int from, int to, int minutes)
{
  day->shots[day->problem.n_shots++] = (FfSortieShot) {
    .label = label, .window_from = from * MINUTE, .window_to = to * MINUTE, .minutes = minutes,
    .want = { .intent = FF_INTENT_VIDEO, .fps = 25, .angle_deg = 180, .angle_from_deg = 144,
              .angle_to_deg = 216 },
    .own_from_angle_deg = 45, .ev100 = day->light,
  };
}

static FfSortieLine *
line_at (FfSortiePlan *plan, guint index)
{
  assert_true (index < plan->lines->len);
  return &g_array_index (plan->lines, FfSortieLine, index);
}

static void
test_neighbours_share_a_battery (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6); /* five stops over f/2.8, 1/50, ISO 100 */
  add_shot (&day, "A", 10, 40, 6);
  add_shot (&day, "B", 10, 40, 6);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len, 1);
  assert_int_equal (line_at (plan, 0)->n_takes, 2);
  assert_close (line_at (plan, 0)->filter_stops, 5, 0);
  assert_int_equal (line_at (plan, 0)->down - line_at (plan, 0)->off_by, 16 * MINUTE);
  assert_int_equal (line_at (plan, 0)->land_by - line_at (plan, 0)->off_by, 18 * MINUTE);
}

static void
test_what_does_not_fit_one_battery_is_split (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 60, 8);
  add_shot (&day, "B", 10, 60, 8);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len, 2);
  assert_int_equal (line_at (plan, 1)->off_by - line_at (plan, 0)->down, 4 * MINUTE);
  assert_int_not_equal (line_at (plan, 0)->battery, line_at (plan, 1)->battery);
}

/* A leg whose shots lie apart is flown as late as may be, so that nobody waits in the air. */
static void
test_no_minute_is_waited_in_the_air (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 40, 5);
  add_shot (&day, "B", 35, 45, 5);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len, 1);
  assert_int_equal (line_at (plan, 0)->off_by, 28 * MINUTE);
  assert_int_equal (line_at (plan, 0)->down, 42 * MINUTE);
}

static void
test_a_battery_comes_back_from_the_charger (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  const FfSortieCharge *charge;
  Day day;

  day_init (&day, 13.6);
  day.problem.n_batteries = 1;
  add_shot (&day, "A", 10, 30, 10);
  add_shot (&day, "B", 120, 150, 10);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len, 2);
  charge = &g_array_index (plan->charges, FfSortieCharge, 0);
  assert_int_equal (charge->cool_from, line_at (plan, 0)->land_by);
  assert_int_equal (charge->charge_from, line_at (plan, 0)->land_by + 20 * MINUTE);
  assert_int_equal (charge->ready_at, line_at (plan, 0)->land_by + 80 * MINUTE);
  assert_true (line_at (plan, 1)->off_by >= charge->ready_at);
}

static void
test_a_charge_nobody_attends_is_not_planned (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  day.problem.n_batteries = 1;
  day.problem.charger_attended = FALSE;
  add_shot (&day, "A", 10, 30, 10);
  add_shot (&day, "B", 120, 150, 10);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len, 1);
  assert_int_equal (plan->charges->len, 0);
  assert_int_equal (plan->missed->len, 1);
  assert_int_equal (g_array_index (plan->missed, FfSortieMiss, 0).why, FF_WHY_BATTERY);
}

static void
test_why_a_shot_is_not_flown (void **state)
{
  static const struct {
    int from, to, minutes;
    FfWhyNot why;
  } cases[] = {
    { 10, 60, 15, FF_WHY_TOO_LONG },
    { 295, 330, 10, FF_WHY_DAYLIGHT },
    { 0, 11, 10, FF_WHY_DAYLIGHT }, /* out takes two minutes from first off */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      Day day;

      day_init (&day, 13.6);
      add_shot (&day, "A", cases[i].from, cases[i].to, cases[i].minutes);
      plan = ff_sorties_plan (&day.problem);
      assert_int_equal (plan->lines->len, 0);
      assert_int_equal (g_array_index (plan->missed, FfSortieMiss, 0).why, cases[i].why);
      assert_close (plan->cost, 120, 1e-9);
    }
}

static void
test_light_out_of_reach_is_said (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 18);
  day.problem.n_filters = 0;
  add_shot (&day, "A", 10, 60, 6);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->missed->len, 1);
  assert_int_equal (g_array_index (plan->missed, FfSortieMiss, 0).why, FF_WHY_LIGHT);
}

static void
test_filter_follows_the_light (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  for (guint i = 100; i < N_MINUTES; i++)
    day.light[i] = 10.6; /* two stops over */
  add_shot (&day, "A", 10, 40, 10);
  add_shot (&day, "B", 150, 200, 10);
  plan = ff_sorties_plan (&day.problem);
  assert_close (line_at (plan, 0)->filter_stops, 5, 0);
  assert_close (line_at (plan, 1)->filter_stops, 2, 0);
  assert_close (plan->parts[FF_PART_SWAP], 1, 0);
  assert_close (plan->parts[FF_PART_BATTERY], 12, 0);
  assert_close (ff_price_sum (plan->parts), plan->cost, 1e-9);
}

static void
test_empty_day (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len + plan->missed->len, 0);
  assert_close (plan->cost, 0, 0);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_neighbours_share_a_battery),
    cmocka_unit_test (test_what_does_not_fit_one_battery_is_split),
    cmocka_unit_test (test_no_minute_is_waited_in_the_air),
    cmocka_unit_test (test_a_battery_comes_back_from_the_charger),
    cmocka_unit_test (test_a_charge_nobody_attends_is_not_planned),
    cmocka_unit_test (test_why_a_shot_is_not_flown),
    cmocka_unit_test (test_light_out_of_reach_is_said),
    cmocka_unit_test (test_filter_follows_the_light),
    cmocka_unit_test (test_empty_day),
  };

  return cmocka_run_group_tests_name ("sorties", tests, NULL, NULL);
}
