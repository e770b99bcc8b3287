/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sun and moon of a day in sentences: the demo day, polar days and nights, bright nights, days on
 * which clocks change. The times themselves are held to published tables in published/sky. */
#include "ff-test.h"

#include <string.h>

#include "ff-day-words.h"

static FfDayWords *
words_for (double latitude, double longitude, const char *zone, const char *date, int check_clock)
{
  FfDayWordsQuery query = { .site = { latitude, longitude, 0 }, .check_clock = check_clock };
  g_autoptr (GTimeZone) at = ff_zone_new (zone, NULL);

  assert_non_null (at);
  query.zone = at;
  assert_true (ff_date_parse (date, &query.date, NULL));
  return ff_day_words (&query);
}

/* The times are held to the demo day's, within two minutes, by its own tests; here the words. */
static void
test_the_demo_day (void **state)
{
  g_autoptr (FfDayWords) words = words_for (57.2, -4, "Europe/London", "2027-09-18", 16 * 60 + 30);

  assert_string_equal (words->sun, "Sun up 06:52, down 19:27; civil dawn 06:13, dusk 20:06.");
  assert_string_equal (words->low_sun, "Low sun, under 8°, until 07:58 and from 18:22.");
  assert_string_equal (words->moon, "Moon sets 10:13, rises 19:22; 92\u00a0% lit.");
  assert_string_equal (words->check,
                       "At 16:30 the sun stands at 236°, 22° high: check clock and zone by it.");
  assert_string_equal (words->clock, "Clock of Europe/London: UTC+1.");
}

static void
test_polar_day (void **state)
{
  g_autoptr (FfDayWords) words = words_for (69.65, 18.96, "Europe/Oslo", "2027-06-21", FF_NO_CLOCK);

  assert_string_equal (words->sun, "The sun does not set: it stands from 3° to 44° high.");
  assert_string_equal (words->low_sun, "Low sun, under 8°, until 03:37 and from 21:54.");
  assert_string_equal (words->moon, "The moon stays down all day.");
}

static void
test_polar_night (void **state)
{
  g_autoptr (FfDayWords) twilight
      = words_for (69.65, 18.96, "Europe/Oslo", "2027-12-21", FF_NO_CLOCK);
  g_autoptr (FfDayWords) dark
      = words_for (-77.85, 166.67, "Antarctica/McMurdo", "2027-06-21", FF_NO_CLOCK);

  assert_string_equal (twilight->sun, "The sun does not rise; civil dawn 09:31, dusk 13:53.");
  assert_null (twilight->low_sun);
  assert_null (twilight->check);
  assert_string_equal (dark->sun, "The sun does not rise; no civil twilight.");
  assert_string_equal (dark->moon, "The moon is up all day; 96\u00a0% lit.");
}

/* What comes first in the day stands first. */
static void
test_bright_nights (void **state)
{
  g_autoptr (FfDayWords) short_night
      = words_for (69.65, 18.96, "Europe/Oslo", "2027-05-18", FF_NO_CLOCK);
  g_autoptr (FfDayWords) dusk_past_midnight
      = words_for (60.17, 24.94, "Europe/Helsinki", "2027-06-21", FF_NO_CLOCK);

  assert_string_equal (short_night->sun,
                       "Sun down 00:19, up 01:01; it gets no darker than civil twilight.");
  assert_string_equal (dusk_past_midnight->sun,
                       "Sun up 03:54, down 22:50; civil dusk 00:42, dawn 02:02.");
}

static void
test_equator_and_south (void **state)
{
  g_autoptr (FfDayWords) equator = words_for (0, 0, "Etc/GMT", "2027-03-20", FF_NO_CLOCK);
  g_autoptr (FfDayWords) south
      = words_for (-33.8568, 151.2153, "Australia/Sydney", "2027-12-21", FF_NO_CLOCK);

  assert_true (g_str_has_prefix (equator->sun, "Sun up 06:0"));
  /* The noon sun of the south stands in the north. */
  assert_non_null (strstr (south->check, "At 12:00 the sun stands at "));
  assert_null (strstr (south->check, "at 1"));
}

static void
test_clocks_that_change (void **state)
{
  g_autoptr (FfDayWords) spring = words_for (51.5, 0, "Europe/London", "2021-03-28", FF_NO_CLOCK);
  g_autoptr (FfDayWords) quarters
      = words_for (27.7, 85.3, "Asia/Kathmandu", "2021-01-01", FF_NO_CLOCK);
  g_autoptr (FfDayWords) west
      = words_for (23.1, -82.4, "America/Havana", "2020-01-10", FF_NO_CLOCK);

  assert_string_equal (spring->clock,
                       "Clock of Europe/London: it changes on this day, from UTC to UTC+1.");
  assert_string_equal (quarters->clock, "Clock of Asia/Kathmandu: UTC+5:45.");
  assert_string_equal (west->clock, "Clock of America/Havana: UTC−5.");
}

/* The calendar of Apia leaves out 30 December 2011: no time of it can be checked, nothing breaks.
 */
static void
test_a_day_that_is_left_out (void **state)
{
  g_autoptr (FfDayWords) words = words_for (-13.8, -171.8, "Pacific/Apia", "2011-12-30", 16 * 60);

  assert_null (words->check);
  assert_non_null (words->sun);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_demo_day),
    cmocka_unit_test (test_polar_day),
    cmocka_unit_test (test_polar_night),
    cmocka_unit_test (test_bright_nights),
    cmocka_unit_test (test_equator_and_south),
    cmocka_unit_test (test_clocks_that_change),
    cmocka_unit_test (test_a_day_that_is_left_out),
  };

  return cmocka_run_group_tests_name ("day-words", tests, NULL, NULL);
}
