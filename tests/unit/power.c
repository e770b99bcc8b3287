/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include <math.h>

#include "ff-battery.h"

static void
test_print_differs_past_two_percent (void **state)
{
  assert_false (ff_battery_print_differs (69.6, ff_battery_energy_wh (14.8, 4700)));
  assert_false (ff_battery_print_differs (102.0, 100.0));
  assert_true (ff_battery_print_differs (102.1, 100.0));
  assert_true (ff_battery_print_differs (97.9, 100.0));
}

static void
test_bands_of_temperature (void **state)
{
  assert_int_equal (ff_battery_band (-0.1), FF_BAND_BELOW_0);
  assert_int_equal (ff_battery_band (0), FF_BAND_0_TO_10);
  assert_int_equal (ff_battery_band (10), FF_BAND_10_TO_20);
  assert_int_equal (ff_battery_band (29.9), FF_BAND_20_TO_30);
  assert_int_equal (ff_battery_band (30), FF_BAND_ABOVE_30);
}

static void
test_minutes_to_the_reserve (void **state)
{
  assert_close (ff_battery_minutes (15, 100, 40, 30), 17.5, 1e-12);
  assert_close (ff_battery_minutes (5, 100, 75, 0), 20, 1e-12);
  assert_true (isnan (ff_battery_minutes (5, 100, 76, 30)));
  assert_true (isnan (ff_battery_minutes (5, NAN, 40, 30)));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_print_differs_past_two_percent),
    cmocka_unit_test (test_bands_of_temperature),
    cmocka_unit_test (test_minutes_to_the_reserve),
  };

  return cmocka_run_group_tests_name ("power", tests, NULL, NULL);
}
