/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Usable minutes: from enough flights in this temperature, else as typed. */
#include "ff-test.h"

#include <math.h>

#include "ff-flight.h"
#include "ff-usable.h"

static FfItem *battery;
static GPtrArray *flights;

static void
add_flight (double minutes, double percent_off, double percent_down, double temperature_c)
{
  FfBatteryFlight *flight = g_new0 (FfBatteryFlight, 1);

  flight->battery_id = battery->id;
  flight->minutes = minutes;
  flight->percent_off = percent_off;
  flight->percent_down = percent_down;
  flight->temperature_c = temperature_c;
  g_ptr_array_add (flights, flight);
}

static FfUsable
usable_at (double temperature_c, double reserve)
{
  FfUsable usable;

  ff_usable (battery, flights, temperature_c, reserve, &usable);
  return usable;
}

static void
test_three_flights_of_this_temperature_are_believed (void **state)
{
  FfUsable usable = usable_at (15, 30);

  assert_false (usable.from_log);
  assert_int_equal (usable.minutes, 18);
  /* 15 minutes took 60 per cent: 70 per cent take 17.5. */
  add_flight (15, 100, 40, 12);
  add_flight (16, 100, 40, 19);
  assert_false (usable_at (15, 30).from_log);
  add_flight (14, 95, 35, 10);
  usable = usable_at (15, 30);
  assert_true (usable.from_log);
  assert_int_equal (usable.flights, 3);
  assert_close (usable.worst, 14 * 70.0 / 60, 1e-9);
  assert_close (usable.mean, 17.5, 1e-9);
  assert_int_equal (usable.minutes, 16);
  /* Another temperature, an unknown one, no reserve entered: as typed. */
  assert_int_equal (usable_at (9.9, 30).minutes, 18);
  assert_int_equal (usable_at (NAN, 30).minutes, 18);
  assert_int_equal (usable_at (15, NAN).minutes, 18);
}

static void
test_what_says_too_little_does_not_count (void **state)
{
  g_ptr_array_set_size (flights, 0);
  for (int i = 0; i < 5; i++)
    add_flight (5, 100, 76, 15);
  for (int i = 0; i < 5; i++)
    add_flight (5, NAN, NAN, 15);
  for (int i = 0; i < 5; i++)
    add_flight (5, 100, 40, NAN);
  assert_int_equal (usable_at (15, 30).flights, 0);
}

static void
test_the_last_ten_count (void **state)
{
  g_ptr_array_set_size (flights, 0);
  add_flight (6, 100, 40, 15);
  for (int i = 0; i < 10; i++)
    add_flight (12, 100, 40, 15);
  assert_int_equal (usable_at (15, 30).flights, 10);
  assert_int_equal (usable_at (15, 30).minutes, 14);
}

static void
test_in_words (void **state)
{
  FfUsable usable = usable_at (15, 30);
  FfUsable typed = usable_at (-3, 30);
  g_autofree char *words = ff_usable_words (&usable);
  g_autofree char *typed_words = ff_usable_words (&typed);

  assert_string_equal (words, "worst of 10 flights at 10 to 20 °C; mean 14 min");
  assert_string_equal (typed_words, "as typed; no flight in the log yet at under 0 °C");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_three_flights_of_this_temperature_are_believed),
    cmocka_unit_test (test_what_says_too_little_does_not_count),
    cmocka_unit_test (test_the_last_ten_count),
    cmocka_unit_test (test_in_words),
  };
  int failed;

  battery = ff_item_new (FF_KIND_BATTERY);
  battery->usable_minutes = 18;
  flights = g_ptr_array_new_with_free_func (g_free);
  failed = cmocka_run_group_tests_name ("usable", tests, NULL, NULL);
  g_ptr_array_unref (flights);
  ff_item_free (battery);
  return failed;
}
