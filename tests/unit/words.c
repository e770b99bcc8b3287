/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include <locale.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-names.h"
#include "ff-number.h"

static void
test_every_table_has_every_name (void **state)
{
  static const FfNames *const tables[] = {
    &ff_names_sky,   &ff_names_view,      &ff_names_lit,   &ff_names_intent, &ff_names_role,
    &ff_names_kind,  &ff_names_state,     &ff_names_polar, &ff_names_paper,  &ff_names_reader,
    &ff_names_rule,  &ff_names_job_state, &ff_names_compare,
  };

  for (guint t = 0; t < G_N_ELEMENTS (tables); t++)
    for (guint i = 0; i < tables[t]->n_names; i++)
      {
        g_autoptr (GError) error = NULL;
        int value = -1;

        assert_non_null (tables[t]->names[i].token);
        assert_non_null (tables[t]->names[i].text);
        assert_true (ff_name_parse (tables[t], tables[t]->names[i].token, &value, &error));
        assert_int_equal (value, i);
      }
}

static void
test_unknown_name_lists_the_accepted (void **state)
{
  GError *error = NULL;
  int value = 77;

  assert_false (ff_name_parse (&ff_names_sky, "blue", &value, &error));
  assert_int_equal (value, 77);
  assert_error (error, FF_ERROR_INPUT, "clear, thin, partly, overcast, dark");
}

static void
test_numbers_are_whole_or_refused (void **state)
{
  static const char *const bad[]
      = { "", " ", "1 ", "1,5", "0x10", "inf", "nan", "1e999", "--1", "five", "1.2.3", "+-1" };
  GError *error = NULL;
  double value = 7;
  int whole;

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      assert_false (ff_number_parse ("--lat", bad[i], -1e300, 1e300, &value, &error));
      assert_close (value, 7, 0);
      assert_error (error, FF_ERROR_INPUT, "--lat");
    }
  assert_true (ff_number_parse ("--lat", "-57.20", -90, 90, &value, &error));
  assert_close (value, -57.2, 1e-12);
  assert_false (ff_number_parse ("--lat", "95", -90, 90, &value, &error));
  assert_error (error, FF_ERROR_INPUT, "accepted: -90 to 90");
  assert_false (ff_integer_parse ("--frames", "2.5", 1, 9, &whole, &error));
  assert_error (error, FF_ERROR_INPUT, "whole");
}

static void
test_numbers_do_not_follow_the_locale (void **state)
{
  g_autofree char *text = NULL;
  double value;

  if (setlocale (LC_ALL, "de_DE.UTF-8") == NULL)
    print_message ("# no locale with a decimal comma here; the C locale is tested\n");
  assert_true (ff_number_parse ("x", "2.8", 0, 10, &value, NULL));
  assert_close (value, 2.8, 0);
  text = ff_number_format (2.80, 2);
  assert_string_equal (text, "2.8");
  setlocale (LC_ALL, "C.UTF-8");
}

static void
test_number_format (void **state)
{
  static const struct {
    double value;
    int decimals;
    const char *want;
  } cases[] = { { 12, 1, "12" }, { 0.25, 1, "0.2" }, { -0.001, 2, "0" }, { 100, 0, "100" },
                { 5.274, 2, "5.27" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = ff_number_format (cases[i].value, cases[i].decimals);

      assert_string_equal (text, cases[i].want);
    }
}

static void
test_stops_have_a_singular (void **state)
{
  g_autofree char *one = ff_stops_format (1.02);
  g_autofree char *some = ff_stops_format (3.1);

  assert_string_equal (one, "1 stop");
  assert_string_equal (some, "3.1 stops");
}

static void
test_dates (void **state)
{
  static const char *const bad[] = { "2027-02-29", "2027-13-01", "2027-9-18", "18.09.2027",
                                     "2027-09-31", "1899-12-31", "",          "2027-09-18T" };
  GError *error = NULL;
  FfDate date = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      assert_false (ff_date_parse (bad[i], &date, &error));
      assert_error (error, FF_ERROR_INPUT, "accepted");
    }
  assert_true (ff_date_parse ("2028-02-29", &date, &error));
  assert_int_equal (ff_date_day_of_year (date), 60);
}

static void
test_zones_by_name_only (void **state)
{
  static const char *const bad[] = { "Mars/Base", "UTC+02:00", "+02:00", "EST5", "", "../etc/passwd",
                                     "Nowhere" };
  GError *error = NULL;
  GTimeZone *zone;

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      assert_null (ff_zone_new (bad[i], &error));
      assert_error (error, FF_ERROR_INPUT, "unknown time zone");
    }
  zone = ff_zone_new ("America/Argentina/Buenos_Aires", &error);
  assert_non_null (zone);
  g_time_zone_unref (zone);
}

static void
test_instants_need_an_offset (void **state)
{
  g_autofree char *text = NULL;
  GError *error = NULL;
  gint64 instant, other;

  assert_false (ff_instant_parse ("2027-09-18T16:30:00", &instant, &error));
  assert_error (error, FF_ERROR_INPUT, "offset");
  assert_false (ff_instant_parse ("2027-02-30T16:30:00Z", &instant, &error));
  assert_error (error, FF_ERROR_INPUT, "not a time");
  assert_true (ff_instant_parse ("2027-09-18T16:30:00+01:00", &instant, &error));
  text = ff_instant_format ((double) instant, NULL);
  assert_string_equal (text, "2027-09-18T15:30:00+00:00");
  /* Seconds may be left out; an offset may not. */
  assert_true (ff_instant_parse ("2027-09-18T16:30+01:00", &other, &error));
  assert_int_equal (other, instant);
  assert_true (ff_instant_parse ("2027-09-18T15:30Z", &other, &error));
  assert_int_equal (other, instant);
  assert_false (ff_instant_parse ("2027-09-18T16:30", &other, &error));
  assert_error (error, FF_ERROR_INPUT, "offset");
}

/* Clock changes of Paris 2025 as the time zone database has them. */
static void
test_clock_changes (void **state)
{
  g_autoptr (GTimeZone) paris = ff_zone_new ("Europe/Paris", NULL);
  GError *error = NULL;
  gint64 from, to, instant;

  ff_day_bounds ((FfDate) { 2025, 3, 30 }, paris, &from, &to);
  assert_int_equal (to - from, 23 * 3600);
  ff_day_bounds ((FfDate) { 2025, 10, 26 }, paris, &from, &to);
  assert_int_equal (to - from, 25 * 3600);
  assert_false (ff_instant_from_clock ((FfDate) { 2025, 3, 30 }, 150, paris, &instant, &error));
  assert_error (error, FF_ERROR_INPUT, "does not exist");
  assert_true (ff_instant_from_clock ((FfDate) { 2025, 10, 26 }, 150, paris, &instant, &error));
  assert_int_equal (instant, 1761438600);
  assert_true (ff_instant_from_clock ((FfDate) { 2025, 3, 29 }, 24 * 60 + 240, paris, &instant,
                                      &error));
  assert_int_equal (instant, 1743300000);
}

static void
test_clock_of_an_instant_rounds_to_the_minute (void **state)
{
  g_autoptr (GTimeZone) london = ff_zone_new ("Europe/London", NULL);
  g_autofree char *clock = ff_instant_clock (1821292199.6, london);

  assert_string_equal (clock, "19:30");
}

static void
test_clocks (void **state)
{
  static const char *const bad[] = { "9:30", "24:01", "12:60", "1230", "", "ab:cd" };
  GError *error = NULL;
  int minutes;

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      assert_false (ff_clock_parse (bad[i], &minutes, &error));
      assert_error (error, FF_ERROR_INPUT, "HH:MM");
    }
  assert_true (ff_clock_parse ("24:00", &minutes, &error));
  assert_int_equal (minutes, 1440);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_table_has_every_name),
    cmocka_unit_test (test_unknown_name_lists_the_accepted),
    cmocka_unit_test (test_numbers_are_whole_or_refused),
    cmocka_unit_test (test_numbers_do_not_follow_the_locale),
    cmocka_unit_test (test_number_format),
    cmocka_unit_test (test_stops_have_a_singular),
    cmocka_unit_test (test_dates),
    cmocka_unit_test (test_zones_by_name_only),
    cmocka_unit_test (test_instants_need_an_offset),
    cmocka_unit_test (test_clock_changes),
    cmocka_unit_test (test_clock_of_an_instant_rounds_to_the_minute),
    cmocka_unit_test (test_clocks),
  };

  return cmocka_run_group_tests_name ("words", tests, NULL, NULL);
}
