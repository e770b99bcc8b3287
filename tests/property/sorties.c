/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of every plan, over seeded random days. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-minute-price.h"
#include "ff-scale.h"
#include "ff-sorties.h"

#define MINUTE 60
#define N_MINUTES 241
#define N_DAYS 2000

typedef struct {
  FfSortieProblem problem;
  FfCameraRange camera;
  FfSortieShot shots[8];
  FfSortieFilter filters[6];
  FfSortieBattery batteries[5];
  double light[8][N_MINUTES];
} Day;

static guint
step (FfScale scale, const char *label)
{
  return (guint) ff_scale_find (scale, label);
}

static void
random_shot (FfTestRandom *random, Day *day, guint index, int *at)
{
  static const char *const labels[] = { "A", "B", "C", "D", "E", "F", "G", "H" };
  int minutes = ff_test_random_int (random, 3, 12);
  int from = *at + ff_test_random_int (random, 0, 25);
  int to = from + minutes + ff_test_random_int (random, 0, 30);
  double start = ff_test_random (random, 9, 15), slope = ff_test_random (random, -0.03, 0.005);

  for (guint i = 0; i < N_MINUTES; i++)
    day->light[index][i] = start + slope * i;
  day->shots[index] = (FfSortieShot) {
    .label = labels[index], .window_from = from * MINUTE, .window_to = to * MINUTE,
    .minutes = minutes, .own_from_angle_deg = 45, .ev100 = day->light[index],
    .weight = ff_test_random_int (random, 0, 1) * ff_test_random (random, 20, 300),
    .want = { .intent = (FfIntent) ff_test_random_int (random, FF_INTENT_VIDEO,
                                                       FF_INTENT_TIMELAPSE),
              .fps = 25, .angle_deg = 180, .angle_from_deg = 144, .angle_to_deg = 216,
              .frames = 3, .step_stops = 2, .interval_s = 2, .max_iso = 400 },
  };
  *at = from;
}

static void
random_day (FfTestRandom *random, Day *day)
{
  static const char *const labels[] = { "b1", "b2", "b3", "b4", "b5" };
  static const char *const names[] = { "1", "2", "3", "4", "5", "6" };
  int at = 0;

  memset (day, 0, sizeof *day);
  day->camera = (FfCameraRange) {
    .apertures = { { 2.8, pow (2, 1.5) } }, .n_apertures = 1,
    .iso_low = step (FF_SCALE_ISO, "100"), .iso_high = step (FF_SCALE_ISO, "6400"),
    .base_iso = { step (FF_SCALE_ISO, "100") }, .n_bases = 1,
    .shutter_fast = step (FF_SCALE_SHUTTER, "1/8000"), .shutter_slow = step (FF_SCALE_SHUTTER, "8"),
  };
  day->problem = (FfSortieProblem) {
    .to = (N_MINUTES - 1) * MINUTE, .out_minutes = ff_test_random_int (random, 1, 3),
    .back_minutes = 2, .battery_change_minutes = 4, .filter_change_minutes = 2,
    .charger_slots = (guint) ff_test_random_int (random, 0, 2), .cool_minutes = 20,
    .charge_minutes = ff_test_random_int (random, 20, 70), .charger_attended = TRUE,
    .shots = day->shots, .n_shots = (guint) ff_test_random_int (random, 1, 7),
    .filters = day->filters, .n_filters = (guint) ff_test_random_int (random, 0, 5),
    .batteries = day->batteries, .n_batteries = (guint) ff_test_random_int (random, 1, 4),
    .camera = &day->camera,
  };
  for (guint i = 0; i < day->problem.n_shots; i++)
    random_shot (random, day, i, &at);
  for (guint i = 0; i < day->problem.n_filters + 1; i++)
    day->filters[i] = (FfSortieFilter) { names[i], ff_test_random_int (random, 1, 7) };
  for (guint i = 0; i < day->problem.n_batteries + 1; i++)
    day->batteries[i] = (FfSortieBattery) {
      labels[i], ff_test_random_int (random, 10, 22), ff_test_random_int (random, 0, 60) * MINUTE
    };
}

/* ---- What must hold ---- */

static void
check_takes (const Day *day, const FfSortiePlan *plan, const FfSortieLine *line)
{
  gint64 at = line->off_by + day->problem.out_minutes * MINUTE;

  for (guint i = 0; i < line->n_takes; i++)
    {
      const FfSortieTake *take = &g_array_index (plan->takes, FfSortieTake, line->first_take + i);
      const FfSortieShot *shot = &day->shots[take->shot];

      assert_true (take->from >= at);
      assert_true (take->from >= shot->window_from && take->to <= shot->window_to);
      assert_int_equal (take->to - take->from, shot->minutes * MINUTE);
      at = take->to;
    }
  assert_int_equal (line->down, at + day->problem.back_minutes * MINUTE);
}

static void
check_lines (const Day *day, const FfSortiePlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);
      gint64 usable = day->batteries[line->battery].usable_minutes * MINUTE;

      assert_true (line->down - line->off_by <= usable);
      assert_int_equal (line->land_by, line->off_by + usable);
      assert_true (line->off_by >= day->problem.from && line->down <= day->problem.to);
      assert_true (line->filter < (int) day->problem.n_filters);
      check_takes (day, plan, line);
      if (i > 0)
        {
          const FfSortieLine *before = &g_array_index (plan->lines, FfSortieLine, i - 1);
          int turn_round = day->problem.battery_change_minutes
                           + (line->filter != before->filter ? day->problem.filter_change_minutes
                                                             : 0);

          assert_true (line->off_by - before->down >= turn_round * MINUTE);
        }
    }
}

/* Replays the batteries: ready when the day says so, then when the charger's queue is done. */
static void
check_batteries (const Day *day, const FfSortiePlan *plan)
{
  gint64 ready[5], slots[2] = { 0 };

  for (guint i = 0; i < 5; i++)
    ready[i] = day->batteries[i].ready_at;
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);
      guint slot = day->problem.charger_slots == 2 && slots[1] < slots[0] ? 1 : 0;

      assert_true (line->off_by >= ready[line->battery]);
      ready[line->battery] = G_MAXINT64;
      if (day->problem.charger_slots == 0)
        continue;
      slots[slot] = MAX (line->land_by + day->problem.cool_minutes * MINUTE, slots[slot])
                    + day->problem.charge_minutes * MINUTE;
      ready[line->battery] = slots[slot];
    }
}

static void
check_every_shot_once (const Day *day, const FfSortiePlan *plan)
{
  int seen[8] = { 0 };

  for (guint i = 0; i < plan->takes->len; i++)
    seen[g_array_index (plan->takes, FfSortieTake, i).shot]++;
  for (guint i = 0; i < plan->missed->len; i++)
    seen[g_array_index (plan->missed, FfSortieMiss, i).shot]++;
  for (guint i = 0; i < day->problem.n_shots; i++)
    assert_int_equal (seen[i], 1);
}

static void
test_every_plan_can_be_flown (void **state)
{
  FfTestRandom random = { 20270918 };

  for (guint i = 0; i < N_DAYS; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      Day day;

      random_day (&random, &day);
      plan = ff_sorties_plan (&day.problem);
      check_lines (&day, plan);
      check_batteries (&day, plan);
      check_every_shot_once (&day, plan);
      assert_close (ff_price_sum (plan->parts), plan->cost, 1e-6);
    }
}

static void
test_one_more_filter_never_costs_more (void **state)
{
  FfTestRandom random = { 5 };

  for (guint i = 0; i < N_DAYS; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      g_autoptr (FfSortiePlan) richer = NULL;
      Day day;

      random_day (&random, &day);
      plan = ff_sorties_plan (&day.problem);
      day.problem.n_filters++;
      richer = ff_sorties_plan (&day.problem);
      assert_true (richer->cost <= plan->cost + 1e-6);
    }
}

static void
test_same_day_same_plan (void **state)
{
  FfTestRandom random = { 77 };

  for (guint i = 0; i < 200; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      g_autoptr (FfSortiePlan) again = NULL;
      Day day;

      random_day (&random, &day);
      plan = ff_sorties_plan (&day.problem);
      again = ff_sorties_plan (&day.problem);
      assert_int_equal (plan->lines->len, again->lines->len);
      for (guint j = 0; j < plan->lines->len; j++)
        {
          const FfSortieLine *one = &g_array_index (plan->lines, FfSortieLine, j);
          const FfSortieLine *two = &g_array_index (again->lines, FfSortieLine, j);

          assert_int_equal (one->off_by, two->off_by);
          assert_int_equal (one->battery, two->battery);
          assert_int_equal (one->filter, two->filter);
        }
    }
}

/* ---- Against a search without a thought ---- */

/* Everything that can be tried on a tiny day: each subset of shots in order, cut into legs in every
 * way, each leg behind every filter on every battery, each take on every minute. */
typedef struct {
  const Day *day;
  const FfPrices *prices;
  double best;
} Plain;

typedef struct {
  int clock, filter;    /* minute of the last landing, -1 before; filter -2: none fitted yet */
  int ready[5], slot;
  double cost;
} Ground;

static void plain_from (Plain *self, const Ground *ground, guint shot);

static double
weight_of (const Day *day, guint shot)
{
  return day->shots[shot].weight > 0 ? day->shots[shot].weight : ff_prices_default.not_flown;
}

static void
plain_land (Plain *self, const Ground *before, int off, int down, int filter, double cost, guint next)
{
  const FfSortieProblem *problem = &self->day->problem;
  int soonest = before->clock < 0 ? 0
                                  : before->clock + problem->battery_change_minutes
                                        + (filter != before->filter
                                               ? problem->filter_change_minutes
                                               : 0);

  for (guint b = 0; b < problem->n_batteries; b++)
    {
      int usable = problem->batteries[b].usable_minutes;
      Ground after = *before;

      if (off < soonest || off < before->ready[b] || down - off > usable
          || down > (int) (problem->to / MINUTE))
        continue;
      after.cost += cost + self->prices->new_battery;
      if (before->filter != -2 && before->filter != filter)
        after.cost += self->prices->filter_swap;
      after.clock = down;
      after.filter = filter;
      after.ready[b] = 1 << 20;
      if (problem->charger_slots > 0)
        after.ready[b] = after.slot = MAX (off + usable + problem->cool_minutes, before->slot)
                                      + problem->charge_minutes;
      plain_from (self, &after, next);
    }
}

static void
plain_take (Plain *self, const Ground *ground, int off, int at, int filter, double cost, guint shot,
            gboolean first)
{
  const FfSortieProblem *problem = &self->day->problem;
  const FfSortieShot *wanted = &self->day->shots[shot];
  int opens = (int) (wanted->window_from / MINUTE), closes = (int) (wanted->window_to / MINUTE);

  for (int start = MAX (opens, at); start + wanted->minutes <= closes && start < N_MINUTES - 20;
       start++)
    {
      int own_off = first ? start - problem->out_minutes : off;
      double price = cost + self->prices->late_minute * (start - opens);
      double stops = filter >= 0 ? problem->filters[filter].stops : 0;
      int end = start + wanted->minutes;

      if (own_off < 0)
        continue;
      if (!first)
        price += self->prices->air_minute * (start - at);
      for (int minute = start; minute < end; minute++)
        price += ff_minute_price (self->prices, problem->camera, &wanted->want,
                                  wanted->own_from_angle_deg, wanted->ev100[minute], stops, NULL);
      if (end + problem->back_minutes - own_off > 22)
        continue;
      plain_land (self, ground, own_off, end + problem->back_minutes, filter, price, shot + 1);
      for (guint next = shot + 1; next < problem->n_shots; next++)
        {
          double left_out = 0;

          for (guint between = shot + 1; between < next; between++)
            left_out += weight_of (self->day, between);
          plain_take (self, ground, own_off, end, filter, price + left_out, next, FALSE);
        }
    }
}

static void
plain_from (Plain *self, const Ground *ground, guint shot)
{
  Ground without = *ground;

  if (ground->cost >= self->best)
    return;
  if (shot == self->day->problem.n_shots)
    {
      self->best = ground->cost;
      return;
    }
  for (int filter = FF_NO_FILTER; filter < (int) self->day->problem.n_filters; filter++)
    plain_take (self, ground, 0, 0, filter, 0, shot, TRUE);
  without.cost += weight_of (self->day, shot);
  plain_from (self, &without, shot + 1);
}

/* A day small enough for that: few shots, narrow windows, one charger slot at the most. */
static void
tiny_day (FfTestRandom *random, Day *day)
{
  random_day (random, day);
  day->problem.n_shots = MIN (day->problem.n_shots, 4);
  day->problem.n_filters = MIN (day->problem.n_filters, 2);
  day->problem.n_batteries = MIN (day->problem.n_batteries, 2);
  day->problem.charger_slots = MIN (day->problem.charger_slots, 1);
  for (guint i = 0; i < day->problem.n_shots; i++)
    {
      FfSortieShot *shot = &day->shots[i];
      gint64 narrow = shot->window_from
                      + (shot->minutes + ff_test_random_int (random, 0, 4)) * MINUTE;

      shot->window_to = MIN (shot->window_to, narrow);
    }
  for (guint i = 0; i < 2; i++)
    day->batteries[i].ready_at = ff_test_random_int (random, 0, 10) * MINUTE;
}

static void
test_no_plan_is_cheaper_than_the_one_given (void **state)
{
  FfTestRandom random = { 4711 };

  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      Ground ground = { .clock = -1, .filter = -2 };
      Plain plain = { .prices = &ff_prices_default, .best = 1e9 };
      Day day;

      tiny_day (&random, &day);
      plain.day = &day;
      for (guint b = 0; b < 5; b++)
        ground.ready[b] = (int) (day.batteries[b].ready_at / MINUTE);
      plain_from (&plain, &ground, 0);
      plan = ff_sorties_plan (&day.problem);
      assert_true (plan->optimal);
      assert_close (plan->cost, plain.best, 1e-6);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_plan_can_be_flown),
    cmocka_unit_test (test_one_more_filter_never_costs_more),
    cmocka_unit_test (test_same_day_same_plan),
    cmocka_unit_test (test_no_plan_is_cheaper_than_the_one_given),
  };

  return cmocka_run_group_tests_name ("sorties property", tests, NULL, NULL);
}
