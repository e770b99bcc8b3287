/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Watt-hours and baggage bands. Source: IATA Dangerous Goods Regulations 67th edition (2026) and
 * ICAO Technical Instructions, passenger provisions for lithium-ion batteries: up to 100 Wh, over
 * 100 to 160 Wh with approval, over 160 Wh not in baggage; Wh = nominal V x Ah. */
#include "ff-test.h"

#include "ff-battery.h"

static void
test_energy_and_band (void **state)
{
  static const struct {
    double volts, amp_hours, wh;
    FfCarry carry;
  } cases[] = {
    { 7.4, 2.6, 19.24, FF_CARRY_UP_TO_100 },
    { 15.2, 4.3, 65.36, FF_CARRY_UP_TO_100 },
    { 14.8, 5.0, 74.00, FF_CARRY_UP_TO_100 },
    { 22.2, 4.5, 99.90, FF_CARRY_UP_TO_100 },
    { 22.2, 5.0, 111.00, FF_CARRY_OVER_100_TO_160 },
    { 22.2, 7.2, 159.84, FF_CARRY_OVER_100_TO_160 },
    { 22.2, 7.3, 162.06, FF_CARRY_OVER_160 },
    { 22.2, 10.0, 222.0, FF_CARRY_OVER_160 },
    { 12.8, 20, 256.0, FF_CARRY_OVER_160 },
    { 44.4, 16, 710.4, FF_CARRY_OVER_160 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double wh = ff_battery_energy_wh (cases[i].volts, cases[i].amp_hours * 1000);

      assert_close (wh, cases[i].wh, 0.005);
      assert_int_equal (ff_battery_carry (wh), cases[i].carry);
    }
}

static void
test_edges_are_not_rounded (void **state)
{
  assert_int_equal (ff_battery_carry (100.0), FF_CARRY_UP_TO_100);
  assert_int_equal (ff_battery_carry (100.1), FF_CARRY_OVER_100_TO_160);
  assert_int_equal (ff_battery_carry (160.0), FF_CARRY_OVER_100_TO_160);
  assert_int_equal (ff_battery_carry (160.1), FF_CARRY_OVER_160);
}

/* Ohmic resistance at 200 % of new is the end of life by convention (widely reprinted, secondary
 * sources; from memory in IEC 62660-1); half of that rise is watched (own choice). */
static void
test_rise_of_resistance (void **state)
{
  assert_close (ff_battery_rise (4.5, 3.0), 0.5, 1e-12);
  assert_int_equal (ff_battery_rise_class (ff_battery_rise (4.49, 3.0)), FF_RISE_NONE);
  assert_int_equal (ff_battery_rise_class (ff_battery_rise (4.5, 3.0)), FF_RISE_WATCH);
  assert_int_equal (ff_battery_rise_class (ff_battery_rise (5.99, 3.0)), FF_RISE_WATCH);
  assert_int_equal (ff_battery_rise_class (ff_battery_rise (6.0, 3.0)), FF_RISE_END);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_energy_and_band),
    cmocka_unit_test (test_edges_are_not_rounded),
    cmocka_unit_test (test_rise_of_resistance),
  };

  return cmocka_run_group_tests_name ("published battery", tests, NULL, NULL);
}
