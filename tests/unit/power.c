/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include "ff-battery.h"

static void
test_print_differs_past_two_percent (void **state)
{
  assert_false (ff_battery_print_differs (69.6, ff_battery_energy_wh (14.8, 4700)));
  assert_false (ff_battery_print_differs (102.0, 100.0));
  assert_true (ff_battery_print_differs (102.1, 100.0));
  assert_true (ff_battery_print_differs (97.9, 100.0));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_print_differs_past_two_percent),
  };

  return cmocka_run_group_tests_name ("power", tests, NULL, NULL);
}
