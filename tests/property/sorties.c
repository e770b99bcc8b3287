/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of every plan, over seeded random days. */
#include "ff-random-day.h"

#define MINUTE 60
#define N_DAYS 2000

/* ---- What must hold ---- */

static void
check_takes (const FfRandomDay *day, const FfSortiePlan *plan, const FfSortieLine *line)
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
check_lines (const FfRandomDay *day, const FfSortiePlan *plan)
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
check_batteries (const FfRandomDay *day, const FfSortiePlan *plan)
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

static void
test_every_plan_can_be_flown (void **state)
{
  FfTestRandom random = { 20270918 };

  for (guint i = 0; i < N_DAYS; i++)
    {
      g_autoptr (FfSortiePlan) plan = NULL;
      FfRandomDay day;

      ff_random_day (&random, 0, &day);
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
      FfRandomDay day;

      ff_random_day (&random, 0, &day);
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
      FfRandomDay day;

      ff_random_day (&random, 0, &day);
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
    cmocka_unit_test (test_one_more_filter_never_costs_more),
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
