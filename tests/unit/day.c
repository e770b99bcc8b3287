/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The joins on days that lack something, and on changes that are only tried. */
#include "ff-test.h"

#include <stdlib.h>
#include <string.h>

#include "ff-chart-facts.h"
#include "ff-day.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-sheet-facts.h"
#include "ff-shot.h"

typedef struct {
  char *folder;
  FfStore *store;
} Crew;

/* Plans the demo job as it stands in the store now. */
static FfDayPlan *
plan_now (Crew *crew, const FfDayChange *change, GError **error)
{
  g_autoptr (FfDay) day = ff_day_load (crew->store, "Skarrowick", error);

  return day != NULL ? ff_day_plan (day, change, error) : NULL;
}

/* The same where it must succeed. */
static FfDayPlan *
good_plan (Crew *crew, const FfDayChange *change)
{
  g_autoptr (GError) error = NULL;
  FfDayPlan *plan = plan_now (crew, change, &error);

  assert_no_error (error);
  if (plan == NULL)
    abort (); /* not reached; the compiler does not know */
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
quarantine (Crew *crew, FfKind kind)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) items = ff_items_load (crew->store, &error);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == kind)
        ff_item_set_state (crew->store, item->id, FF_STATE_QUARANTINED, "dropped", NULL, NULL, "MO",
                           1821200000, &error);
    }
  assert_no_error (error);
}

static void
take_date (FfJob *job)
{
  g_free (job->date);
  job->date = g_strdup ("");
}

static void
take_place (FfJob *job)
{
  g_free (job->place_id);
  job->place_id = g_strdup ("");
}

static void
test_what_is_missing_is_said (void **state)
{
  Crew *crew = *state;
  GError *error = NULL;

  quarantine (crew, FF_KIND_BATTERY);
  assert_null (plan_now (crew, NULL, &error));
  assert_error (error, FF_ERROR_INPUT, "no serviceable battery");
  change_job (crew, take_place);
  assert_null (plan_now (crew, NULL, &error));
  assert_error (error, FF_ERROR_INPUT, "has no place");
  change_job (crew, take_date);
  assert_null (plan_now (crew, NULL, &error));
  assert_error (error, FF_ERROR_INPUT, "has no date");
}

static void
test_no_shots (void **state)
{
  Crew *crew = *state;
  g_autoptr (FfDay) day = NULL;
  GError *error = NULL;

  day = ff_day_load (crew->store, "Brackenholt, first", &error);
  assert_no_error (error);
  assert_null (ff_day_plan (day, NULL, &error));
  assert_non_null (error);
  assert_int_equal (error->code, FF_ERROR_INPUT);
  g_clear_error (&error);
}

static void
test_without_filters_it_says_so_and_plans_what_it_can (void **state)
{
  Crew *crew = *state;
  g_autoptr (FfDayPlan) plan = NULL;

  quarantine (crew, FF_KIND_FILTER);
  plan = good_plan (crew, NULL);
  assert_true (plan->missed->len > 0);
  assert_non_null (strstr (g_ptr_array_index (plan->clashes, plan->clashes->len - 1),
                           "No neutral-density filter"));
  for (guint i = 0; i < plan->lines->len; i++)
    assert_close (((FfPlanLine *) g_ptr_array_index (plan->lines, i))->filter_stops, 0, 0);
}

static void
test_a_tried_change_must_make_sense (void **state)
{
  Crew *crew = *state;
  const char *const unknown[] = { "b9", NULL };
  const char *const no_shot[] = { "Z=18:20", NULL };
  const char *const no_clock[] = { "D=25:99", NULL };
  const char *const no_equals[] = { "D", NULL };
  const FfDayChange changes[] = {
    { .without = unknown }, { .moves = no_shot }, { .moves = no_clock }, { .moves = no_equals },
  };

  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      GError *error = NULL;

      assert_null (plan_now (crew, &changes[i], &error));
      assert_non_null (error);
      assert_int_equal (error->code, FF_ERROR_INPUT);
      g_clear_error (&error);
    }
}

static void
test_a_moved_shot_flies_then (void **state)
{
  Crew *crew = *state;
  const char *const moves[] = { "D=18:20", NULL };
  const FfDayChange change = { .moves = moves };
  g_autoptr (FfDayPlan) plan = good_plan (crew, &change);
  gboolean seen = FALSE;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);

          if (!g_str_equal (take->shot, "D"))
            continue;
          assert_true (take->from >= 1821288000); /* 2027-09-18 18:20 BST */
          seen = TRUE;
        }
    }
  assert_true (seen);
  assert_true (plan->changes->len > 0);
}

static void
test_a_darker_sky_takes_weaker_filters (void **state)
{
  Crew *crew = *state;
  const FfDayChange change = { .other_sky = TRUE, .sky = FF_SKY_OVERCAST };
  g_autoptr (FfDayPlan) clear = good_plan (crew, NULL);
  g_autoptr (FfDayPlan) overcast = good_plan (crew, &change);

  assert_int_equal (overcast->sky, FF_SKY_OVERCAST);
  for (guint i = 0; i < MIN (clear->lines->len, overcast->lines->len); i++)
    {
      const FfPlanLine *bright = g_ptr_array_index (clear->lines, i);
      const FfPlanLine *dull = g_ptr_array_index (overcast->lines, i);

      assert_true (dull->filter_stops < bright->filter_stops);
    }
}

static void
test_facts_of_sheets_and_chart (void **state)
{
  Crew *crew = *state;
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = ff_day_load (crew->store, "Skarrowick", &error);
  g_autoptr (FfDayPlan) plan = ff_day_plan (day, NULL, &error);
  g_autoptr (FfSheetFacts) facts = ff_sheet_facts (day, plan, 1821200000);
  g_autoptr (FfChartFacts) chart = ff_chart_facts (day, 60, 0);

  assert_no_error (error);
  assert_string_equal (facts->place, "Skarrowick Head");
  assert_true (facts->example);
  assert_int_equal (facts->shots->len, 8);
  assert_int_equal (facts->crew->len, 4);
  assert_int_equal (facts->events->len, 3);
  assert_non_null (strstr (facts->sun_times, "sunset 19:27"));
  assert_true (facts->missing->len >= 2); /* emergency text and telephone are blank */
  assert_true (chart->sunset > chart->from && chart->sunset < chart->to);
  for (guint i = 1; i < chart->n_samples; i++)
    {
      assert_true (chart->ev100[i] < chart->ev100[i - 1]); /* an afternoon only darkens */
      assert_true (chart->low_ev100[i] < chart->ev100[i] && chart->ev100[i] < chart->high_ev100[i]);
    }
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

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_what_is_missing_is_said, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_no_shots, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_without_filters_it_says_so_and_plans_what_it_can, set_up,
                                     tear_down),
    cmocka_unit_test_setup_teardown (test_a_tried_change_must_make_sense, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_a_moved_shot_flies_then, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_a_darker_sky_takes_weaker_filters, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_facts_of_sheets_and_chart, set_up, tear_down),
  };

  return cmocka_run_group_tests_name ("day", tests, NULL, NULL);
}
