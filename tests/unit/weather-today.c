/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weather call in words: the standby clock, what hot thin air costs, and the example sheets. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-brief.h"
#include "ff-civil.h"
#include "ff-day-air.h"
#include "ff-day-records.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-limit-examples.h"
#include "ff-weather-today.h"

#define CASES 12

static char *folder;
static FfStore *store;
static gint64 noon;

static int
open_demo (void **state)
{
  GError *error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  ff_demo_fill (store, &error);
  assert_no_error (error);
  ff_instant_parse ("2027-09-18T12:00+01:00", &noon, &error);
  return 0;
}

static int
close_demo (void **state)
{
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

static FfDay *
load (void)
{
  GError *error = NULL;
  FfDay *day = ff_day_load (store, "Skarrowick", &error);

  assert_no_error (error);
  return day;
}

static void
report (const char *text, int minutes)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfWeatherReport) made = ff_weather_report_new (ff_day_job (day)->id);
  GError *error = NULL;

  ff_set_text (&made->text, text);
  made->at = noon + minutes * 60;
  ff_weather_report_append (store, made, &error);
  assert_no_error (error);
}

static void
add_call (GPtrArray *calls, FfCall decision, int at, int until)
{
  FfWeatherCall *call = ff_weather_call_new ("job");

  call->decision = decision;
  call->at = noon + at * 60;
  call->until = until > 0 ? noon + until * 60 : 0;
  g_ptr_array_add (calls, call);
}

static void
assert_standby (const GPtrArray *calls, int minutes, const char *expected)
{
  g_autoptr (FfDay) day = load ();
  g_autofree char *words = ff_weather_standby (calls, ff_day_zone (day), noon + minutes * 60);

  if (expected == NULL)
    assert_null (words);
  else
    assert_string_equal (words, expected);
}

/* It counts from the first stand-by of an unbroken row of them, and to the latest end. */
static void
test_standby_clock (void **state)
{
  g_autoptr (GPtrArray) calls
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_weather_call_free);

  assert_standby (calls, 0, NULL);
  add_call (calls, FF_CALL_GO, 0, 0);
  assert_standby (calls, 5, NULL);
  add_call (calls, FF_CALL_STAND_BY, 10, 0);
  assert_standby (calls, 33, "Standing by since 12:10: 23 min.");
  add_call (calls, FF_CALL_STAND_BY, 40, 70);
  assert_standby (calls, 50, "Standing by since 12:10: 40 min. Until 13:10: 20 min left.");
  assert_standby (calls, 75,
                  "Standing by since 12:10: 65 min. Until 13:10: over since 5 min. Decide anew.");
  add_call (calls, FF_CALL_NO_GO, 80, 0);
  assert_standby (calls, 81, NULL);
}

static void
test_summary_never_says_ready (void **state)
{
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfLimitsToday) today = ff_limits_today (day, NULL, noon);
  g_autofree char *summary = ff_limits_summary (today);

  assert_non_null (strstr (summary, "The pilot decides."));
  assert_null (strstr (summary, "ready"));
}

static double
minutes_flown (const FfDayPlan *plan)
{
  double most = 0;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      most = MAX (most, (double) (line->land_by - line->off_by) / 60.0);
    }
  return most;
}

static FfDayPlan *
plan_of (const FfDay *day)
{
  GError *error = NULL;
  FfDayPlan *plan = ff_day_plan (day, NULL, &error);

  assert_no_error (error);
  return plan;
}

/* Nothing seen, nothing changed: a typed forecast alone does not touch the batteries. */
static void
test_a_forecast_costs_nothing (void **state)
{
  g_autoptr (FfDay) day = load ();

  assert_close (ff_day_air_cost (day), 1.0, 0.0);
}

/* 35 °C at 970 hPa: density 1.09 kg/m³, √(1.225/1.09) = 1.06. */
static void
test_hot_thin_air_shortens (void **state)
{
  g_autoptr (FfDay) before = load ();
  g_autoptr (FfDayPlan) planned = plan_of (before);
  g_autoptr (FfDay) after = NULL;
  g_autoptr (FfDayPlan) again = NULL;

  report ("EGXX 181120Z 24008KT CAVOK 35/08 Q0970", 25);
  after = load ();
  again = plan_of (after);
  assert_close (ff_day_air_cost (after), 1.06, 0.01);
  assert_true (minutes_flown (again) < minutes_flown (planned));
}

/* The crew may count half of it, or nothing; the estimate itself stays what it is. */
static void
test_thin_air_is_adjustable (void **state)
{
  static const double shares[] = { 1.0, 0.5, 0.0, 2.0 };
  GError *error = NULL;

  report ("EGXX 181120Z 24008KT CAVOK 35/08 Q0970", 25);
  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      const FfAirRules rules = { 1, shares[i] };
      g_autoptr (FfDay) day = NULL;

      ff_air_rules_save (store, &rules, &error);
      assert_no_error (error);
      day = load ();
      assert_close (ff_day_air_cost (day), 1.06, 0.01);
      assert_close (ff_day_air_counts (day), 1 + shares[i] * (ff_day_air_cost (day) - 1), 1e-12);
      assert_int_equal (ff_day_air_minutes (day, &(FfUsable){ .minutes = 18 }),
                        shares[i] == 0.0 ? 18 : shares[i] == 2.0 ? 16 : shares[i] == 1.0 ? 16 : 17);
    }
  assert_false (ff_air_rules_save (store, &(FfAirRules){ 1, -0.1 }, &error));
  assert_error (error, FF_ERROR_INPUT, "thin air");
}

/* Whatever the air, no battery is planned for longer than was typed. */
static void
test_no_air_lengthens (void **state)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20270918);
  FfUsable usable = { .minutes = 18 };

  for (int i = 0; i < CASES; i++)
    {
      const int celsius = g_rand_int_range (rand, -20, 46);
      g_autofree char *text = g_strdup_printf (
          "EGXX 1812%02dZ 24008KT CAVOK %s%02d/%s Q%04d", i, celsius < 0 ? "M" : "",
          ABS (celsius), "M20", g_rand_int_range (rand, 930, 1060));
      g_autoptr (FfDay) day = NULL;

      report (text, 60 + i);
      day = load ();
      assert_true (ff_day_air_cost (day) >= 1.0);
      assert_true (ff_day_air_minutes (day, &usable) <= 18);
    }
}

static void
test_one_page_holds_it (void **state)
{
  g_autoptr (GPtrArray) calls
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_weather_call_free);
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfWeatherToday) today = NULL;
  g_autoptr (FfSheetFacts) facts = ff_sheet_facts (day, NULL, noon);
  g_autoptr (FfBrief) brief = NULL;
  GError *error = NULL;

  add_call (calls, FF_CALL_STAND_BY, 10, 40);
  report ("EGXX 181120Z 24008KT 9999 FEW030 15/08 Q1015", 25);
  today = ff_weather_today (day, NULL, calls, noon + 1800);
  brief = ff_brief_new_weather (facts, today, FF_PAPER_A4, &error);
  assert_no_error (error);
  assert_int_equal (ff_brief_n_pages (brief), 1);
  assert_int_equal (ff_brief_did_not_fit (brief)->len, 0);
}

/* Each row of each example is one that the store takes, says what it is, and where it was read. */
static void
test_examples_are_marked_and_right (void **state)
{
  guint sheet;

  for (sheet = 0; ff_limit_example_name (sheet) != NULL; sheet++)
    {
      g_autoptr (GPtrArray) rows = ff_limit_example_rows (sheet);

      assert_true (rows->len >= 10);
      assert_non_null (strstr (ff_limit_example_name (sheet), "EXAMPLE"));
      for (guint i = 0; i < rows->len; i++)
        {
          const FfLimit *limit = g_ptr_array_index (rows, i);
          GError *error = NULL;

          ff_limit_check (limit, &error);
          assert_no_error (error);
          assert_true (limit->example);
          assert_string_equal (limit->checked_on, "");
          assert_true (limit->rule == FF_RULE_OWN || *limit->source != '\0');
        }
    }
  assert_int_equal (sheet, 3);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_standby_clock, open_demo, close_demo),
    cmocka_unit_test_setup_teardown (test_summary_never_says_ready, open_demo, close_demo),
    cmocka_unit_test_setup_teardown (test_a_forecast_costs_nothing, open_demo, close_demo),
    cmocka_unit_test_setup_teardown (test_hot_thin_air_shortens, open_demo, close_demo),
    cmocka_unit_test_setup_teardown (test_thin_air_is_adjustable, open_demo, close_demo),
    cmocka_unit_test_setup_teardown (test_no_air_lengthens, open_demo, close_demo),
    cmocka_unit_test_setup_teardown (test_one_page_holds_it, open_demo, close_demo),
    cmocka_unit_test (test_examples_are_marked_and_right),
  };

  return cmocka_run_group_tests_name ("weather-today", tests, NULL, NULL);
}
