/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of every plan, over seeded random days. */
#include "ff-random-day.h"

#define MINUTE 60
#define N_DAYS 10000
#define NONE (-1)

/* ---- What must hold ---- */

static void
check_takes (const FfRandomDay *day, const FfSortiePlan *plan, const FfSortieLine *line)
{
  gint64 at = line->off_by + day->problem.out_minutes * MINUTE;

  for (guint i = 0; i < line->n_takes; i++)
    {
      const FfSortieTake *take = &g_array_index (plan->takes, FfSortieTake, line->first_take + i);
      const FfSortieShot *shot = &day->shots[take->shot];

      assert_true (i > 0 ? take->from >= at : take->from == at);
      assert_true (take->from >= shot->window_from && take->to <= shot->window_to);
      assert_int_equal (take->to - take->from, shot->minutes * MINUTE);
      at = take->to;
    }
  assert_int_equal (line->down, at + day->problem.back_minutes * MINUTE);
}

/* A lock holds for the shots that are flown; nothing is in the air during a pause; shots that are
 * not of free order keep theirs. */
static void
check_wishes (const FfRandomDay *day, const FfSortiePlan *plan)
{
  int last = NONE;

  for (guint i = 0; i < plan->takes->len; i++)
    {
      guint shot = g_array_index (plan->takes, FfSortieTake, i).shot;

      if (day->shots[shot].free_order)
        continue;
      assert_true ((int) shot > last);
      last = (int) shot;
    }
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);

      for (guint j = 0; j < day->problem.n_pauses; j++)
        assert_true (line->down <= day->pauses[j].from || line->off_by >= day->pauses[j].to);
      for (guint j = 0; j < day->problem.n_locks; j++)
        for (guint k = 0; k < line->n_takes; k++)
          {
            const FfSortieLock *lock = &day->locks[j];

            if (g_array_index (plan->takes, FfSortieTake, line->first_take + k).shot != lock->shot)
              continue;
            assert_true (lock->battery == FF_ANY_BATTERY || lock->battery == (int) line->battery);
            assert_true (lock->filter == FF_ANY_FILTER || lock->filter == line->filter);
            assert_true (lock->off_by == FF_ANY_TIME || lock->off_by == line->off_by);
          }
    }
}

/* The batteries of a plan played through: what each has left, when it is ready, and the charger. */
typedef struct {
  const FfRandomDay *day;
  gint64 ready[FF_RANDOM_DAY_BATTERIES], slots[2];
  int left[FF_RANDOM_DAY_BATTERIES]; /* minutes */
  guint legs[FF_RANDOM_DAY_BATTERIES];
  int fitted;
} Replay;

static guint
legs_allowed (const FfRandomDay *day, guint battery)
{
  return MAX (day->batteries[battery].legs_at_most, 1);
}

/* Out of the aircraft, or part-used beyond the crew's rule: it cools and queues. */
static void
charge (Replay *self, guint battery, gint64 from)
{
  const FfSortieProblem *problem = &self->day->problem;
  guint slot = problem->charger_slots == 2 && self->slots[1] < self->slots[0] ? 1 : 0;

  self->ready[battery] = G_MAXINT64;
  if (problem->charger_slots == 0)
    return;
  self->slots[slot] = MAX (from + problem->cool_minutes * MINUTE, self->slots[slot])
                      + problem->charge_minutes * MINUTE;
  self->ready[battery] = self->slots[slot];
  self->left[battery] = self->day->batteries[battery].usable_minutes;
  self->legs[battery] = 0;
}

static void
replay_init (Replay *self, const FfRandomDay *day)
{
  gint64 last = -1;

  *self = (Replay) { .day = day, .fitted = NONE };
  for (guint i = 0; i < day->problem.n_batteries; i++)
    {
      self->ready[i] = day->batteries[i].ready_at;
      self->left[i] = day->batteries[i].usable_minutes - day->batteries[i].minutes_flown;
      self->legs[i] = day->batteries[i].legs_flown;
    }
  /* Those that may not fly queue at once, in the order of their instants. */
  for (int at = 0; at <= 60; at++)
    for (guint i = 0; i < day->problem.n_batteries; i++)
      if (day->batteries[i].ready_at == at * MINUTE && self->legs[i] >= legs_allowed (day, i))
        {
          assert_true (at >= last);
          last = at;
          charge (self, i, at * MINUTE);
        }
}

static void
replay_line (Replay *self, const FfSortieLine *line, const FfSortieLine *before)
{
  const FfSortieProblem *problem = &self->day->problem;
  gboolean swap = before != NULL && before->filter != line->filter;
  int turn = line->relaunch ? (swap ? problem->filter_landing_minutes : problem->relaunch_minutes)
                            : problem->battery_change_minutes
                                  + (swap ? problem->filter_change_minutes : 0);

  if (line->relaunch)
    assert_int_equal (self->fitted, line->battery);
  else if (before != NULL)
    charge (self, (guint) self->fitted, before->land_by);
  if (before != NULL)
    assert_true (line->off_by - before->down >= turn * MINUTE);
  if (!line->relaunch)
    assert_true (line->off_by >= self->ready[line->battery]);
  assert_true (line->filter_landing == (line->relaunch && swap));
  assert_int_equal (line->land_by - line->off_by, self->left[line->battery] * MINUTE);
  self->left[line->battery] -= (int) ((line->down - line->off_by) / MINUTE);
  assert_true (self->left[line->battery] >= 0);
  assert_int_equal (line->leg, ++self->legs[line->battery]);
  assert_true (line->leg <= legs_allowed (self->day, line->battery));
  self->fitted = (int) line->battery;
}

static void
check_lines (const FfRandomDay *day, const FfSortiePlan *plan)
{
  const FfSortieLine *before = NULL;
  Replay replay;

  replay_init (&replay, day);
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);

      assert_true (line->battery < day->problem.n_batteries);
      assert_true (line->off_by >= day->problem.from && line->down <= day->problem.to);
      assert_true (line->filter < (int) day->problem.n_filters);
      check_takes (day, plan, line);
      replay_line (&replay, line, before);
      before = line;
    }
}

static void
check_every_shot_once (const FfRandomDay *day, const FfSortiePlan *plan)
{
  int seen[8] = { 0 };

  for (guint i = 0; i < plan->takes->len; i++)
    seen[g_array_index (plan->takes, FfSortieTake, i).shot]++;
  for (guint i = 0; i < plan->missed->len; i++)
    seen[g_array_index (plan->missed, FfSortieMiss, i).shot]++;
  for (guint i = 0; i < day->problem.n_shots; i++)
    assert_int_equal (seen[i], 1);
}

/* A day with everything, small enough for ten thousand of them. */
static void
small_day (FfTestRandom *random, FfRandomDay *day)
{
  ff_random_day (random, (FfRandomDayParts) ff_test_random_int (random, 0, FF_RANDOM_ALL), day);
  day->problem.n_shots = MIN (day->problem.n_shots, 5);
  day->problem.to = 150 * MINUTE;
  for (guint i = 0; i < day->problem.n_locks; i++)
    if (day->locks[i].shot >= day->problem.n_shots)
      day->problem.n_locks = i;
}

/* One thing more than the day has: a filter, a battery or a slot of the charger. */
static void
add_one (FfTestRandom *random, FfSortieProblem *problem)
{
  switch (ff_test_random_int (random, 0, 2))
    {
    case 0:
      problem->n_filters++;
      break;
    case 1:
      problem->n_batteries++;
      break;
    default:
      problem->charger_slots++;
      break;
    }
}

static void
test_every_plan_can_be_flown (void **state)
{
  FfTestRandom random = { 20270918 };

  for (guint i = 0; i < N_DAYS; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      g_autoptr (FfSortiePlan) richer = NULL;
      FfRandomDay day;

      small_day (&random, &day);
      plan = ff_sorties_plan (&day.problem);
      check_lines (&day, plan);
      check_wishes (&day, plan);
      check_every_shot_once (&day, plan);
      assert_close (ff_price_sum (plan->parts), plan->cost, 1e-6);
      assert_true (plan->bound <= plan->cost + 1e-6);
      add_one (&random, &day.problem);
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
      FfRandomDay day;

      ff_random_day (&random, FF_RANDOM_ALL, &day);
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

/* ---- Against trying everything ---- */

/* `shows`: a price that some of the plans pay, so that the days are known to put the question. */
static void
check_cheapest (guint64 seed, FfRandomDayParts parts, guint n_days, FfPart shows)
{
  FfTestRandom random = { seed };
  guint n_shown = 0;

  for (guint i = 0; i < n_days; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      FfRandomDay day;

      ff_random_day_tiny (&random, parts, &day);
      plan = ff_sorties_plan (&day.problem);
      assert_true (plan->optimal);
      assert_close (plan->bound, plan->cost, 1e-6);
      assert_close (plan->cost, ff_random_day_cheapest (&day), 1e-6);
      assert_close (ff_price_sum (plan->parts), plan->cost, 1e-6);
      n_shown += plan->parts[shows] > 0;
    }
  assert_true (n_shown >= n_days / 50);
}

static void
test_no_plan_is_cheaper_than_the_one_given (void **state)
{
  check_cheapest (4711, 0, 300, FF_PART_SWAP);
}

static void
test_nor_where_batteries_are_relaunched (void **state)
{
  check_cheapest (4712, FF_RANDOM_RELAUNCH, 150, FF_PART_RELAUNCH);
}

static void
test_nor_where_shots_must_match (void **state)
{
  check_cheapest (4713, FF_RANDOM_MATCH, 300, FF_PART_MATCH);
}

static void
test_nor_round_locks_and_pauses (void **state)
{
  check_cheapest (4714, FF_RANDOM_LOCKS, 300, FF_PART_NOT_FLOWN);
}

static void
test_nor_in_another_order (void **state)
{
  check_cheapest (4715, FF_RANDOM_FREE, 150, FF_PART_SWAP);
}

static void
test_nor_with_all_of_it (void **state)
{
  check_cheapest (4716, FF_RANDOM_ALL, 150, FF_PART_FILTER_LANDING);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_plan_can_be_flown),
    cmocka_unit_test (test_same_day_same_plan),
    cmocka_unit_test (test_no_plan_is_cheaper_than_the_one_given),
    cmocka_unit_test (test_nor_where_batteries_are_relaunched),
    cmocka_unit_test (test_nor_where_shots_must_match),
    cmocka_unit_test (test_nor_round_locks_and_pauses),
    cmocka_unit_test (test_nor_in_another_order),
    cmocka_unit_test (test_nor_with_all_of_it),
  };

  return cmocka_run_group_tests_name ("sorties property", tests, NULL, NULL);
}
