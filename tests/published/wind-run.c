/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The wind triangle and the point of no return. Values: textbook examples of the point of no return
 * as pilots' forums quote them (10 h at 100 kt with 50 kt on the nose one way: 375 NM; 6 h 30 min,
 * 240 kt out, 210 kt home: 182 min, 728 NM); the others worked by hand from the triangle. */
#include "ff-test.h"

#include <math.h>

#include "ff-wind-run.h"

static void
test_triangle (void **state)
{
  double correction, ground;

  /* 100 through the air on 090, 20 from 360. */
  assert_true (ff_wind_triangle (100, 90, 360, 20, &correction, &ground));
  assert_close (correction, -11.537, 0.0005);
  assert_close (ground, 97.980, 0.0005);
  /* 15 m/s on 000 and home on 180, 8 from 060. */
  assert_true (ff_wind_triangle (15, 0, 60, 8, &correction, &ground));
  assert_close (correction, 27.509, 0.0005);
  assert_close (ground, 9.304, 0.0005);
  assert_true (ff_wind_triangle (15, 180, 60, 8, &correction, &ground));
  assert_close (correction, -27.509, 0.0005);
  assert_close (ground, 17.304, 0.0005);
}

static void
test_no_way_home (void **state)
{
  double correction = 7, ground = 7;

  assert_false (ff_wind_triangle (10, 240, 240, 10, &correction, &ground));
  assert_false (ff_wind_triangle (10, 330, 240, 11, &correction, &ground));
  assert_false (ff_wind_triangle (0, 330, 240, 0, &correction, &ground));
  assert_false (ff_wind_triangle (NAN, 330, 240, 1, &correction, &ground));
  assert_close (correction, 7, 0);
  assert_close (ground, 7, 0);
}

static void
test_along (void **state)
{
  assert_close (ff_wind_along_ms (60, 240, 4), 4, 1e-12);
  assert_close (ff_wind_along_ms (240, 240, 4), -4, 1e-12);
  assert_close (ff_wind_along_ms (330, 240, 4), 0, 1e-12);
}

static void
test_no_return (void **state)
{
  double time, distance;

  ff_wind_no_return (10 * 3600, 50, 150, &time, &distance);
  assert_close (distance / 3600, 375, 1e-9);
  ff_wind_no_return (10 * 3600, 150, 50, &time, &distance);
  assert_close (distance / 3600, 375, 1e-9);
  ff_wind_no_return (10 * 3600, 100, 100, &time, &distance);
  assert_close (distance / 3600, 500, 1e-9);
  ff_wind_no_return (6.5 * 3600, 240, 210, &time, &distance);
  assert_close (time / 60, 182, 0.5);
  assert_close (distance / 3600, 728, 0.5);
}

/* A battery: 25 min less a fifth is 1200 s at 15 m/s, the wind on the nose going out; and 960 s in
 * the wind from 060. */
static void
test_radius_of_a_battery (void **state)
{
  static const double cases[][2] = { { 0, 9000 }, { 4, 8360 }, { 8, 6440 }, { 10, 5000 },
                                     { 12, 3240 } };
  double time, distance;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double out, home, correction;

      assert_true (ff_wind_triangle (15, 0, 0, cases[i][0], &correction, &out));
      assert_true (ff_wind_triangle (15, 180, 0, cases[i][0], &correction, &home));
      ff_wind_no_return (1200, out, home, &time, &distance);
      assert_close (distance, cases[i][1], 0.5);
    }
  ff_wind_no_return (960, 9.304, 17.304, &time, &distance);
  assert_close (time, 624.3, 0.1);
  assert_close (distance, 5808.7, 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_triangle),
    cmocka_unit_test (test_no_way_home),
    cmocka_unit_test (test_along),
    cmocka_unit_test (test_no_return),
    cmocka_unit_test (test_radius_of_a_battery),
  };

  return cmocka_run_group_tests_name ("wind run", tests, NULL, NULL);
}
