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

/* A leg whose shots lie apart is flown late, so that nobody waits in the air. */
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

/* What is on the charger when the day begins holds its slot: the one that lands waits for it. */
static void
test_what_charges_holds_its_slot (void **state)
{
  g_autoptr (FfSortiePlan) before = NULL;
  g_autoptr (FfSortiePlan) after = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 30, 10);
  add_shot (&day, "B", 120, 170, 10);
  day.problem.n_batteries = 2;
  day.batteries[1].ready_at = 180 * MINUTE; /* too late for B, whoever charges it */
  before = ff_sorties_plan (&day.problem);
  assert_int_equal (before->lines->len, 2);
  assert_int_equal (line_at (before, 1)->battery, 0);
  day.batteries[1].on_charger = TRUE;
  after = ff_sorties_plan (&day.problem);
  assert_int_equal (after->lines->len, 1);
  assert_int_equal (g_array_index (after->missed, FfSortieMiss, 0).shot, 1);
  day.problem.charger_slots = 2;
  ff_sortie_plan_free (after);
  after = ff_sorties_plan (&day.problem);
  assert_int_equal (after->lines->len, 2);
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

/* ---- What the crew decides ---- */

/* Two shots of nine minutes an hour apart, one battery of 40 minutes and no charger. */
static void
part_used_day (Day *day)
{
  day_init (day, 13.6);
  day->problem.n_batteries = 1;
  day->problem.charger_slots = 0;
  day->problem.relaunch_minutes = 1;
  day->problem.filter_landing_minutes = 3;
  day->batteries[0].usable_minutes = 40;
  add_shot (day, "A", 10, 30, 9);
  add_shot (day, "B", 70, 90, 9);
}

static void
test_a_battery_is_relaunched_where_the_rule_allows (void **state)
{
  g_autoptr (FfSortiePlan) once = NULL;
  g_autoptr (FfSortiePlan) twice = NULL;
  Day day;

  part_used_day (&day);
  once = ff_sorties_plan (&day.problem);
  assert_int_equal (once->missed->len, 1);
  day.batteries[0].legs_at_most = 2;
  twice = ff_sorties_plan (&day.problem);
  assert_int_equal (twice->missed->len, 0);
  assert_int_equal (line_at (twice, 1)->leg, 2);
  assert_true (line_at (twice, 1)->relaunch);
  /* Land by what the first leg left of it. */
  assert_int_equal (line_at (twice, 1)->land_by - line_at (twice, 1)->off_by, (40 - 13) * MINUTE);
  assert_close (twice->parts[FF_PART_RELAUNCH], 3, 0);
  assert_close (twice->parts[FF_PART_BATTERY], 6, 0);
}

/* Three stops between them: only another filter serves both, and there is but one battery. */
static void
test_a_landing_for_a_filter_has_its_price (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  part_used_day (&day);
  day.batteries[0].legs_at_most = 2;
  day.shots[1].want.max_iso = 200;
  for (guint i = 50; i < N_MINUTES; i++)
    day.light[i] = 10.6;
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->lines->len, 2);
  assert_true (line_at (plan, 1)->filter_landing);
  assert_close (plan->parts[FF_PART_FILTER_LANDING], 14, 0);
  assert_close (plan->parts[FF_PART_SWAP] + plan->parts[FF_PART_RELAUNCH], 0, 0);
}

static void
test_a_part_used_battery_has_what_is_left (void **state)
{
  g_autoptr (FfSortiePlan) fits = NULL;
  g_autoptr (FfSortiePlan) forbidden = NULL;
  Day day;

  part_used_day (&day);
  day.problem.n_shots = 1;
  day.batteries[0].legs_flown = 1;
  day.batteries[0].minutes_flown = 20;
  forbidden = ff_sorties_plan (&day.problem);
  assert_int_equal (forbidden->lines->len, 0);
  day.batteries[0].legs_at_most = 2;
  fits = ff_sorties_plan (&day.problem);
  assert_int_equal (line_at (fits, 0)->land_by - line_at (fits, 0)->off_by, 20 * MINUTE);
  assert_int_equal (line_at (fits, 0)->leg, 2);
}

static void
test_shots_that_must_match_share_a_filter (void **state)
{
  g_autoptr (FfSortiePlan) apart = NULL;
  g_autoptr (FfSortiePlan) alike = NULL;
  Day day;

  day_init (&day, 13.6);
  for (guint i = 100; i < N_MINUTES; i++)
    day.light[i] = 12.6; /* four stops */
  add_shot (&day, "A", 10, 40, 10);
  add_shot (&day, "B", 150, 200, 10);
  apart = ff_sorties_plan (&day.problem);
  assert_int_not_equal (line_at (apart, 0)->filter, line_at (apart, 1)->filter);
  day.shots[0].match_group = day.shots[1].match_group = 1;
  alike = ff_sorties_plan (&day.problem);
  assert_int_equal (line_at (alike, 0)->filter, line_at (alike, 1)->filter);
  /* Where they can't, the step has its price, and two sets have a higher one. */
  for (guint i = 100; i < N_MINUTES; i++)
    day.light[i] = 10.6;
  for (guint i = 0; i < 6; i++)
    day.filters[i].set = i < 3 ? "coast" : "old";
  g_clear_pointer (&alike, ff_sortie_plan_free);
  alike = ff_sorties_plan (&day.problem);
  assert_close (alike->parts[FF_PART_MATCH], 8, 0);
}

static void
test_a_lock_is_kept_and_costed_round (void **state)
{
  const FfSortieLock lock = { 0, 3, 3, 20 * MINUTE };
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 60, 6);
  add_shot (&day, "B", 10, 120, 6);
  day.problem.locks = &lock;
  day.problem.n_locks = 1;
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (line_at (plan, 0)->battery, 3);
  assert_int_equal (line_at (plan, 0)->filter, 3);
  assert_int_equal (line_at (plan, 0)->off_by, 20 * MINUTE);
  assert_int_equal (plan->missed->len, 0);
}

static void
test_a_lock_that_cannot_be_kept_is_said (void **state)
{
  const FfSortieLock lock = { 0, FF_ANY_BATTERY, FF_ANY_FILTER, 100 * MINUTE };
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 60, 6);
  day.problem.locks = &lock;
  day.problem.n_locks = 1;
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->missed->len, 1);
  assert_int_equal (g_array_index (plan->missed, FfSortieMiss, 0).why, FF_WHY_LOCK);
}

/* One battery, two shots at one time: the one that must fly does, though it weighs less. */
static void
test_a_shot_that_must_fly_flies (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 20, 10);
  add_shot (&day, "B", 12, 22, 10);
  day.shots[0].weight = 20;
  day.shots[0].must_fly = TRUE;
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (g_array_index (plan->missed, FfSortieMiss, 0).shot, 1);
}

static void
test_nothing_flies_in_a_pause (void **state)
{
  const FfSortiePause pause = { 15 * MINUTE, 30 * MINUTE };
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 60, 6);
  day.problem.pauses = &pause;
  day.problem.n_pauses = 1;
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (line_at (plan, 0)->off_by, 30 * MINUTE);
}

/* ---- Order, ties and staying close ---- */

static void
test_a_free_order_is_used (void **state)
{
  g_autoptr (FfSortiePlan) listed = NULL;
  g_autoptr (FfSortiePlan) free_order = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 100, 120, 10);
  add_shot (&day, "B", 10, 30, 10);
  listed = ff_sorties_plan (&day.problem);
  assert_int_equal (listed->missed->len, 1);
  day.shots[1].free_order = TRUE;
  free_order = ff_sorties_plan (&day.problem);
  assert_true (free_order->optimal);
  assert_int_equal (free_order->missed->len, 0);
  assert_int_equal (g_array_index (free_order->takes, FfSortieTake, 0).shot, 1);
}

/* Ten in the wrong order: more than are searched at once. */
static void
test_many_free_shots_are_flown_and_not_called_proven (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  day.problem.charger_slots = 2;
  for (int i = 0; i < 10; i++)
    {
      add_shot (&day, "S", 10 + 28 * ((i * 7) % 10), 25 + 28 * ((i * 7) % 10), 8);
      day.shots[i].free_order = TRUE;
    }
  plan = ff_sorties_plan (&day.problem);
  assert_int_equal (plan->missed->len, 0);
  assert_true (plan->optimal == (plan->bound >= plan->cost - 1e-6));
}

static void
test_ties_go_to_batteries_not_yet_used (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  Day day;

  day_init (&day, 13.6);
  day.problem.n_batteries = 3;
  day.batteries[0].ready_at = 5 * MINUTE;
  add_shot (&day, "A", 10, 30, 10);
  add_shot (&day, "B", 140, 160, 10);
  add_shot (&day, "C", 240, 260, 10);
  plan = ff_sorties_plan (&day.problem);
  /* The earliest ready first, then those that have not flown, charged or not. */
  assert_int_equal (line_at (plan, 0)->battery, 1);
  assert_int_equal (line_at (plan, 1)->battery, 2);
  assert_int_equal (line_at (plan, 2)->battery, 0);
}

static void
test_the_plan_so_far_stays_within_the_margin (void **state)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  g_autoptr (FfSortiePlan) changed = NULL;
  g_autoptr (FfSortiePlan) kept = NULL;
  g_autoptr (FfSortiePlan) left = NULL;
  g_autoptr (GArray) locks = NULL;
  Day day;

  day_init (&day, 13.6);
  add_shot (&day, "A", 10, 40, 10);
  plan = ff_sorties_plan (&day.problem);
  locks = ff_sortie_plan_locks (plan);
  for (guint i = 0; i < N_MINUTES; i++)
    day.light[i] = 13.0; /* another is better now, by a little */
  changed = ff_sorties_plan (&day.problem);
  assert_int_not_equal (line_at (changed, 0)->filter, line_at (plan, 0)->filter);
  day.problem.plan_so_far = (const FfSortieLock *) (gpointer) locks->data;
  day.problem.n_so_far = locks->len;
  day.problem.stay_margin = 5;
  kept = ff_sorties_plan (&day.problem);
  assert_int_equal (line_at (kept, 0)->filter, line_at (plan, 0)->filter);
  assert_true (kept->kept && !kept->optimal);
  assert_close (kept->kept_price, kept->cost - changed->cost, 1e-9);
  day.problem.stay_margin = kept->kept_price / 2;
  left = ff_sorties_plan (&day.problem);
  assert_int_equal (line_at (left, 0)->filter, line_at (changed, 0)->filter);
}

/* ---- Watching ---- */

typedef struct {
  guint n_asked, n_better;
  double last;
} Seen;

static gboolean
stop_at_once (gpointer data)
{
  ((Seen *) data)->n_asked++;
  return TRUE;
}

static void
see_better (const FfSortiePlan *plan, gpointer data)
{
  Seen *seen = data;

  assert_true (plan->cost < seen->last);
  seen->last = plan->cost;
  seen->n_better++;
}

/* More shots than three batteries and a charger can serve, in windows that overlap. */
static void
tangled_day (Day *day)
{
  day_init (day, 13.6);
  day->problem.n_batteries = 3;
  for (guint i = 0; i < 3; i++)
    day->batteries[i].usable_minutes = 14 + (int) i * 2;
  for (int i = 0; i < 10; i++)
    add_shot (day, "S", 10 + i * 10, 90 + i * 18, 7 + i % 3);
}

static void
test_a_search_can_be_stopped_and_watched (void **state)
{
  g_autoptr (FfSortiePlan) best = NULL;
  g_autoptr (FfSortiePlan) stopped = NULL;
  Seen seen = { .last = INFINITY };
  const FfSortieWatch stop = { .stop = stop_at_once, .data = &seen };
  const FfSortieWatch see = { .better = see_better, .data = &seen };
  Day day;

  tangled_day (&day);
  best = ff_sorties_plan_watched (&day.problem, &see);
  assert_true (seen.n_better >= 1);
  assert_close (seen.last, best->cost, 1e-9);
  stopped = ff_sorties_plan_watched (&day.problem, &stop);
  assert_true (seen.n_asked > 0);
  assert_true (stopped->stopped);
  assert_true (stopped->bound <= best->cost + 1e-6 && stopped->cost >= best->cost - 1e-6);
}

static void
test_few_nodes_give_a_plan_and_its_bound (void **state)
{
  g_autoptr (FfSortiePlan) best = NULL;
  g_autoptr (FfSortiePlan) found = NULL;
  const FfSortieWatch watch = { .nodes_at_most = 20 };
  Day day;

  tangled_day (&day);
  best = ff_sorties_plan (&day.problem);
  found = ff_sorties_plan_watched (&day.problem, &watch);
  assert_true (best->optimal);
  assert_false (found->optimal);
  assert_true (found->bound <= best->cost + 1e-6 && found->cost >= best->cost - 1e-6);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_neighbours_share_a_battery),
    cmocka_unit_test (test_what_does_not_fit_one_battery_is_split),
    cmocka_unit_test (test_no_minute_is_waited_in_the_air),
    cmocka_unit_test (test_a_battery_comes_back_from_the_charger),
    cmocka_unit_test (test_what_charges_holds_its_slot),
    cmocka_unit_test (test_a_charge_nobody_attends_is_not_planned),
    cmocka_unit_test (test_why_a_shot_is_not_flown),
    cmocka_unit_test (test_light_out_of_reach_is_said),
    cmocka_unit_test (test_filter_follows_the_light),
    cmocka_unit_test (test_empty_day),
    cmocka_unit_test (test_a_battery_is_relaunched_where_the_rule_allows),
    cmocka_unit_test (test_a_landing_for_a_filter_has_its_price),
    cmocka_unit_test (test_a_part_used_battery_has_what_is_left),
    cmocka_unit_test (test_shots_that_must_match_share_a_filter),
    cmocka_unit_test (test_a_lock_is_kept_and_costed_round),
    cmocka_unit_test (test_a_lock_that_cannot_be_kept_is_said),
    cmocka_unit_test (test_a_shot_that_must_fly_flies),
    cmocka_unit_test (test_nothing_flies_in_a_pause),
    cmocka_unit_test (test_a_free_order_is_used),
    cmocka_unit_test (test_many_free_shots_are_flown_and_not_called_proven),
    cmocka_unit_test (test_ties_go_to_batteries_not_yet_used),
    cmocka_unit_test (test_the_plan_so_far_stays_within_the_margin),
    cmocka_unit_test (test_a_search_can_be_stopped_and_watched),
    cmocka_unit_test (test_few_nodes_give_a_plan_and_its_bound),
  };

  return cmocka_run_group_tests_name ("sorties", tests, NULL, NULL);
}
