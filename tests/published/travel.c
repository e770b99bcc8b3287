/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Size bands of spare lithium-ion batteries of passengers and crew, up to 100 Wh and over 100 to
 * 160 Wh with approval, two each: IATA Dangerous Goods Regulations, 67th edition (2026), as
 * reported; ICAO Technical Instructions, part 8, chapter 1. Edges as computed from volts times
 * ampere-hours of common packs. */
#include "ff-test.h"

#include <math.h>

#include "ff-travel.h"

static const FfTravelBand bands[] = { { 100, 20, FALSE }, { 160, 2, TRUE } };
static const FfTravelRule rule = { bands, 2, FF_TRAVEL_NO_LIMIT, NAN };

static void
test_edges_are_not_rounded (void **state)
{
  static const struct {
    double energy_wh;
    guint band;
  } edges[] = {
    { 19.24, 0 }, { 74.0, 0 }, { 22.2 * 4.5, 0 }, { 99.90, 0 }, { 100.0, 0 }, { 100.1, 1 },
    { 111.0, 1 }, { 22.2 * 7.2, 1 }, { 159.84, 1 }, { 160.0, 1 }, { 160.1, 2 }, { 162.06, 2 },
    { 222.0, 2 }, { 256.0, 2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (edges); i++)
    assert_int_equal (ff_travel_band (&rule, edges[i].energy_wh), edges[i].band);
  assert_int_equal (ff_travel_band (&rule, NAN), 2);
}

/* "Over 100 to 160 Wh: approval, two spares each; over 160 Wh: not as baggage." */
static void
test_two_each_with_approval (void **state)
{
  FfTravelBattery batteries[6];
  g_autoptr (FfTravelPlan) plan = NULL;

  for (guint i = 0; i < 6; i++)
    batteries[i] = (FfTravelBattery) { i < 5 ? 111 : 162.06, 0.6, TRUE, TRUE };
  plan = ff_travel_share (&rule, batteries, 6, 2);
  assert_int_equal (plan->goes, 4);
  assert_true (g_array_index (plan->shares, FfTravelShare, 0).approval);
  assert_int_equal (g_array_index (plan->shares, FfTravelShare, 5).answer, FF_TRAVEL_TOO_LARGE);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_edges_are_not_rounded),
    cmocka_unit_test (test_two_each_with_approval),
  };

  return cmocka_run_group_tests_name ("travel", tests, NULL, NULL);
}
