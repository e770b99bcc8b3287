/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a crew asks of the plan, stored with shot and job or in its own price table: must fly, the sun
 * that leaves, auto ISO, any order, legs, stacks, a margin for the plan that stands. On the demo day. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-day.h"
#include "ff-day-prices.h"
#include "ff-day-records.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-shot.h"
#include "ff-standing.h"
#include "ff-store.h"

typedef struct {
  char *folder;
  FfStore *store;
} Crew;

static FfDay *
load (Crew *crew)
{
  g_autoptr (GError) error = NULL;
  FfDay *day = ff_day_load (crew->store, "Skarrowick", &error);

  assert_no_error (error);
  g_assert (day != NULL);
  return day;
}

static FfDayPlan *
plan_under (Crew *crew, const FfDayChange *change)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load (crew);
  FfDayPlan *plan = ff_day_plan (day, change, &error);

  assert_no_error (error);
  g_assert (plan != NULL);
  return plan;
}

static void
change_job (Crew *crew, void (*change) (FfJob *job))
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_job_find (crew->store, "Skarrowick", &error);
  g_autoptr (FfJob) job = ff_job_load (crew->store, id, &error);

  assert_no_error (error);
  change (job);
  ff_job_save (crew->store, job, &error);
  assert_no_error (error);
}

static void
change_shot (Crew *crew, const char *label, void (*change) (FfShot *shot))
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_job_find (crew->store, "Skarrowick", &error);
  g_autoptr (GPtrArray) shots = ff_shots_load (crew->store, id, &error);

  assert_no_error (error);
  for (guint i = 0; i < shots->len; i++)
    {
      FfShot *shot = g_ptr_array_index (shots, i);

      if (!g_str_equal (shot->label, label))
        continue;
      change (shot);
      ff_shot_save (crew->store, shot, &error);
      assert_no_error (error);
    }
}

static const FfPlanLine *
line_of (const FfDayPlan *plan, const char *label, const FfPlanTake **ret_take)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);

          if (!g_str_equal (take->shot, label))
            continue;
          if (ret_take != NULL)
            *ret_take = take;
          return line;
        }
    }
  return NULL;
}

static gboolean
says (const GPtrArray *texts, const char *words)
{
  for (guint i = 0; i < texts->len; i++)
    if (strstr (g_ptr_array_index (texts, i), words) != NULL)
      return TRUE;
  return FALSE;
}

/* ---- Must fly ---- */

static void
must_fly (FfShot *shot)
{
  shot->must_fly = TRUE;
}

/* With one battery of the five and no charger somebody loses; who must fly does not. */
static const char *const but_one[] = { "b2", "b3", "b4", "b5", "charger", NULL };

static void
test_what_must_fly_flies_before_all_others (void **state)
{
  Crew *crew = *state;
  const FfDayChange change = { .without = but_one };
  g_autoptr (FfDayPlan) before = plan_under (crew, &change);
  g_autoptr (FfDayPlan) after = NULL;
  g_autofree char *lost = NULL;

  assert_true (before->missed->len > 0);
  lost = g_strdup (((FfPlanMiss *) g_ptr_array_index (before->missed, 0))->shot);
  change_shot (crew, lost, must_fly);
  after = plan_under (crew, &change);
  assert_null (line_of (before, lost, NULL));
  assert_non_null (line_of (after, lost, NULL));
  assert_true (after->missed->len > 0);
}

static void
test_what_must_fly_and_is_lost_is_said_first (void **state)
{
  Crew *crew = *state;
  const char *const moves[] = { "D=23:00", NULL };
  const FfDayChange change = { .without = but_one, .moves = moves };
  g_autoptr (FfDayPlan) plan = NULL;
  const FfPlanMiss *first;

  change_shot (crew, "D", must_fly);
  plan = plan_under (crew, &change);
  assert_true (plan->missed->len > 1);
  first = g_ptr_array_index (plan->missed, 0);
  assert_string_equal (first->shot, "D");
  assert_non_null (strstr (first->reason, "it must fly, and can't: "));
  assert_true (plan->parts[FF_PART_NOT_FLOWN] >= ff_prices_default.must_fly);
}

static void
test_all_that_must_fly_is_planned_and_priced (void **state)
{
  Crew *crew = *state;
  static const char *const labels[] = { "A", "B", "C", "D", "E", "F", "G", "H" };
  g_autoptr (FfDayPlan) before = plan_under (crew, NULL);
  g_autoptr (FfDayPlan) after = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (GPtrArray) drops = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    change_shot (crew, labels[i], must_fly);
  after = plan_under (crew, NULL);
  assert_int_equal (after->missed->len, 0);
  assert_close (after->cost, before->cost, 1e-9);
  day = load (crew);
  drops = ff_day_drop_first (day, NULL, after, NULL, NULL, &error);
  assert_no_error (error);
  assert_int_equal (drops->len, 8);
  assert_true (((FfDrop *) g_ptr_array_index (drops, 0))->price > ff_prices_default.must_fly / 2);
}

/* ---- The sun leaves; auto ISO ---- */

static void
sun_leaves_soon (FfShot *shot)
{
  shot->sun_leaves = shot->window_from + shot->minutes;
}

static void
test_the_window_ends_when_the_sun_leaves (void **state)
{
  Crew *crew = *state;
  const char *const moves[] = { "F=19:00", NULL };
  const FfDayChange late = { .moves = moves };
  const FfPlanTake *take = NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  g_autoptr (FfDayPlan) moved = NULL;
  int from = 0, to = 0;
  g_autoptr (FfDay) day = NULL;

  change_shot (crew, "F", sun_leaves_soon);
  plan = plan_under (crew, NULL);
  day = load (crew);
  assert_true (ff_day_shot_clocks (day, "F", &from, &to));
  assert_non_null (line_of (plan, "F", &take));
  g_assert (take != NULL);
  assert_true (to > from + (take->to - take->from) / 60);
  {
    g_autofree char *clock = ff_clock_format (from);
    g_autofree char *flown = ff_instant_clock ((double) take->from, ff_day_zone (day));

    assert_string_equal (flown, clock); /* there is no other minute for it */
  }
  assert_true (says (take->remarks, "The sun leaves the subject at "));
  moved = plan_under (crew, &late);
  assert_null (line_of (moved, "F", NULL));
  assert_non_null (strstr (((FfPlanMiss *) g_ptr_array_index (moved->missed, 0))->reason,
                           "the sun leaves its subject at "));
}

static void
test_a_sun_that_leaves_too_soon_is_refused (void **state)
{
  g_autoptr (FfShot) shot = ff_shot_new ("5c1f0d2a-8a14-4b8f-9d6b-0c4f6a0b7e11");
  GError *error = NULL;

  (void) state;
  ff_set_text (&shot->label, "A");
  shot->minutes = 6;
  shot->window_from = 17 * 60;
  shot->window_to = 18 * 60;
  shot->sun_leaves = 17 * 60 + 6;
  assert_true (ff_shot_check (shot, &error));
  assert_int_equal (ff_shot_closes (shot), 17 * 60 + 6);
  shot->sun_leaves--;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "17:05");
}

static void
auto_iso (FfShot *shot)
{
  shot->auto_iso = TRUE;
}

static void
test_auto_iso_replaces_the_trim_and_warns (void **state)
{
  Crew *crew = *state;
  g_autoptr (FfDayPlan) plan = NULL;
  const FfPlanTake *take = NULL;
  const FfPlanLine *line;

  change_shot (crew, "F", auto_iso);
  plan = plan_under (crew, NULL);
  line = line_of (plan, "F", &take);
  g_assert (line != NULL && take != NULL);
  assert_true (says (take->remarks, "Lock it before the take"));
  assert_int_equal (line->takes->len, 1);
  assert_non_null (strstr (line->trim, "lock it before each take"));
}

/* ---- Order, legs, prices ---- */

static void
free_the_order (FfJob *job)
{
  job->any_order = TRUE;
}

/* Near enough for two shots on one charge. */
static void
near (FfJob *job)
{
  job->out_minutes = job->back_minutes = 1;
}

static void
two_legs (FfJob *job)
{
  job->legs_per_battery = 2;
}

/* What is stored is what was tried, to the last digit. With two batteries of the five a second leg
 * is worth having. */
static const char *const but_two[] = { "b3", "b4", "b5", NULL };

static void
test_stored_legs_are_what_was_tried (void **state)
{
  Crew *crew = *state;
  const FfDayChange few = { .without = but_two };
  const FfDayChange two = { .without = but_two, .legs_per_battery = 2 };
  const FfDayChange one = { .without = but_two, .legs_per_battery = 1 };
  g_autoptr (FfDayPlan) plain = NULL;
  g_autoptr (FfDayPlan) tried = NULL;
  g_autoptr (FfDayPlan) stored = NULL;
  g_autoptr (FfDayPlan) back = NULL;
  g_autoptr (FfDayPlan) quiet = NULL;

  change_job (crew, near);
  plain = plan_under (crew, &few);
  tried = plan_under (crew, &two);
  change_job (crew, two_legs);
  stored = plan_under (crew, &few);
  back = plan_under (crew, &one);
  quiet = plan_under (crew, NULL);
  assert_true (tried->cost < plain->cost);
  assert_close (stored->cost, tried->cost, 1e-9);
  assert_close (back->cost, plain->cost, 1e-9);
  assert_null (quiet->price); /* nothing is tried */
}

static void
test_a_stored_order_is_what_was_tried (void **state)
{
  Crew *crew = *state;
  const FfDayChange order = { .without = but_two, .any_order = TRUE };
  const FfDayChange few = { .without = but_two };
  g_autoptr (FfDayPlan) tried = plan_under (crew, &order);
  g_autoptr (FfDayPlan) stored = NULL;

  change_job (crew, free_the_order);
  stored = plan_under (crew, &few);
  assert_close (stored->cost, tried->cost, 1e-9);
  assert_int_equal (stored->lines->len, tried->lines->len);
}

static void
test_the_crews_prices_are_kept_and_obeyed (void **state)
{
  Crew *crew = *state;
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDayPlan) before = plan_under (crew, NULL);
  g_autoptr (FfDayPlan) after = NULL;
  FfPrices prices, kept;

  assert_true (ff_crew_prices_load (crew->store, &prices, &error));
  assert_int_equal (ff_prices_n_changed (&prices), 0);
  assert_true (ff_price_set (&prices, "new_battery", 7.5, &error));
  assert_true (ff_crew_prices_save (crew->store, &prices, &error));
  assert_true (ff_crew_prices_load (crew->store, &kept, &error));
  assert_int_equal (ff_prices_n_changed (&kept), 1);
  assert_close (kept.new_battery, 7.5, 0);
  after = plan_under (crew, NULL);
  assert_close (after->parts[FF_PART_BATTERY] / (double) after->lines->len, 7.5, 1e-9);
  assert_close (before->parts[FF_PART_BATTERY] / (double) before->lines->len, 6, 1e-9);
  assert_true (ff_crew_prices_save (crew->store, &ff_prices_default, &error));
  assert_true (ff_crew_prices_load (crew->store, &kept, &error));
  assert_int_equal (ff_prices_n_changed (&kept), 0);
  assert_no_error (error);
}

static void
test_a_price_that_is_none_is_refused_or_passed_over (void **state)
{
  Crew *crew = *state;
  FfPrices prices = ff_prices_default;
  GError *error = NULL;

  prices.not_flown = -1;
  assert_false (ff_crew_prices_save (crew->store, &prices, &error));
  assert_error (error, FF_ERROR_INPUT, "accepted: 0.1 to 9999");
  assert_true (ff_store_exec (crew->store,
                              "INSERT INTO price (name, value) VALUES ('of_yore', 3),"
                              " ('not_flown', 0), ('relaunch', 4)",
                              &error));
  assert_true (ff_crew_prices_load (crew->store, &prices, &error));
  assert_close (prices.not_flown, 120, 0);
  assert_close (prices.relaunch, 4, 0);
}

/* ---- Stacks ---- */

static void
two_filters (FfJob *job)
{
  job->filters_at_once = 2;
}

static void
test_two_filters_stand_in_for_the_one_that_is_missing (void **state)
{
  Crew *crew = *state;
  /* Left are 2 and 3 stops; the 5 that the afternoon wants can only be both. */
  g_autoptr (GPtrArray) without = g_ptr_array_new ();
  g_autoptr (FfDayPlan) one = NULL;
  g_autoptr (FfDayPlan) two = NULL;
  FfDayChange change = { 0 };
  const FfPlanLine *line = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) items = ff_items_load (crew->store, &error);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == FF_KIND_FILTER && item->stops > 3.5)
        g_ptr_array_add (without, item->label);
    }
  g_ptr_array_add (without, NULL);
  change.without = (const char *const *) without->pdata;
  one = plan_under (crew, &change);
  change_job (crew, two_filters);
  two = plan_under (crew, &change);
  assert_true (two->cost < one->cost);
  for (guint i = 0; i < two->lines->len && line == NULL; i++)
    if (((FfPlanLine *) g_ptr_array_index (two->lines, i))->filters->len == 2)
      line = g_ptr_array_index (two->lines, i);
  g_assert (line != NULL);
  assert_true (line->filter_stops > 3.5);
  assert_non_null (strstr (line->engraving, " + "));
  assert_true (two->parts[FF_PART_STACK] >= ff_prices_default.stacked);
  for (guint i = 0; i < 2; i++)
    assert_true (says (two->bag_needed, g_ptr_array_index (line->filters, i)));
}

/* ---- The plan that stands ---- */

static void
wide_margin (FfJob *job)
{
  job->stay_margin = 30;
}

static void
no_margin (FfJob *job)
{
  job->stay_margin = NAN;
}

static void
test_the_plan_that_stands_stays_within_its_margin (void **state)
{
  Crew *crew = *state;
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfDayPlan) frozen = NULL;
  g_autoptr (FfDayPlan) kept = NULL;
  g_autoptr (FfDayPlan) freed = NULL;
  g_autofree char *letter = NULL;
  FfPrices dear = ff_prices_default;

  day = load (crew);
  frozen = plan_under (crew, NULL);
  letter = ff_plan_freeze (crew->store, day, frozen, "MO", "", 1821200000, &error);
  assert_no_error (error);
  assert_string_equal (letter, "A");
  /* Swaps at 6 would pay for another plan, by less than the margin. */
  dear.filter_swap = 6;
  assert_true (ff_crew_prices_save (crew->store, &dear, &error));
  change_job (crew, no_margin);
  freed = plan_under (crew, NULL);
  change_job (crew, wide_margin);
  kept = plan_under (crew, NULL);
  assert_false (freed->kept);
  assert_true (freed->swaps < frozen->swaps);
  assert_true (kept->kept);
  assert_int_equal (kept->swaps, frozen->swaps);
  assert_true (kept->cost > freed->cost && kept->cost <= freed->cost + 30);
  assert_true (says (kept->clashes, "The plan that stands is kept: another would save "));
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;
  Crew *crew = g_new0 (Crew, 1);

  crew->folder = ff_test_folder_new ();
  crew->store = ff_records_open (crew->folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (crew->store, &error));
  *state = crew;
  return 0;
}

static int
tear_down (void **state)
{
  Crew *crew = *state;

  ff_records_close (crew->store);
  ff_test_folder_remove (crew->folder);
  g_free (crew);
  return 0;
}

#define DAY_TEST(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    DAY_TEST (test_what_must_fly_flies_before_all_others),
    DAY_TEST (test_what_must_fly_and_is_lost_is_said_first),
    DAY_TEST (test_all_that_must_fly_is_planned_and_priced),
    DAY_TEST (test_the_window_ends_when_the_sun_leaves),
    cmocka_unit_test (test_a_sun_that_leaves_too_soon_is_refused),
    DAY_TEST (test_auto_iso_replaces_the_trim_and_warns),
    DAY_TEST (test_stored_legs_are_what_was_tried),
    DAY_TEST (test_a_stored_order_is_what_was_tried),
    DAY_TEST (test_the_crews_prices_are_kept_and_obeyed),
    DAY_TEST (test_a_price_that_is_none_is_refused_or_passed_over),
    DAY_TEST (test_two_filters_stand_in_for_the_one_that_is_missing),
    DAY_TEST (test_the_plan_that_stands_stays_within_its_margin),
  };

  return cmocka_run_group_tests_name ("wishes", tests, NULL, NULL);
}
