/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Air, wind and cold against published tables; the source stands beside each. */
#include "ff-test.h"

#include <math.h>

#include "ff-air.h"

#define FOOT 0.3048
#define INCH_OF_MERCURY 33.86389

/* Manual of the ICAO Standard Atmosphere, Doc 7488: table values at geopotential heights. */
static void
test_standard_atmosphere (void **state)
{
  static const struct
  {
    double height_m, kelvin, hpa, kgm3;
  } rows[] = {
    { 0, 288.15, 1013.25, 1.2250 },  { 500, 284.90, 954.61, 1.1673 },
    { 1000, 281.65, 898.75, 1.1116 }, { 2000, 275.15, 794.95, 1.0065 },
    { 3000, 268.65, 701.09, 0.9091 }, { 5000, 255.65, 540.20, 0.7361 },
  };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double celsius = ff_air_standard_c (rows[i].height_m);
      const double hpa = ff_air_standard_hpa (rows[i].height_m);

      assert_close (celsius + 273.15, rows[i].kelvin, 1e-9);
      assert_close (hpa, rows[i].hpa, 0.01);
      assert_close (ff_air_density_kgm3 (hpa, celsius, NAN), rows[i].kgm3, 0.0001);
      assert_close (ff_air_density_altitude_m (rows[i].kgm3), rows[i].height_m, 1.0);
    }
  /* The same in feet, 1976 US Standard Atmosphere: 84 322.9 Pa at 5000 ft, rounded tables ±20 Pa. */
  assert_close (ff_air_standard_hpa (5000 * FOOT), 843.07, 0.2);
  assert_close (ff_air_standard_hpa (10000 * FOOT), 696.82, 0.2);
  assert_close (ff_air_standard_c (1000 * FOOT), 13.02, 0.005);
}

/* Pilot's Handbook of Aeronautical Knowledge (FAA-H-8083-25), figure 10-3: at 29.70 inHg add 205 ft
 * to the elevation. */
static void
test_pressure_altitude (void **state)
{
  assert_close (ff_air_pressure_altitude_m (29.70 * INCH_OF_MERCURY, 0) / FOOT, 205, 0.5);
  assert_close (ff_air_pressure_altitude_m (1013.25, 300), 300, 1e-9);
  /* Worked with the NWS form. */
  assert_close (ff_air_pressure_altitude_m (1003, 1500), 1585.7, 0.1);
}

/* Worked from Doc 7488 and the moist-air equation; the common rule of 118.8 ft a degree gives 2376,
 * 7861, 7861 and 9572 ft. */
static void
test_density_altitude (void **state)
{
  static const struct
  {
    double elevation_m, qnh_hpa, temperature_c, dew_point_c, hpa, feet, kgm3, power;
  } rows[] = {
    { 0, 1013.25, 35, NAN, 1013.25, 2275, 1.1455, 1.034 },
    { 1500, 1013.25, 30, NAN, 845.56, 7705, 0.9717, 1.123 },
    { 1500, 1013.25, 30, 15, 845.56, 7952, 0.9643, 1.127 },
    { 2000, 1005, 25, 10, 788.17, 9619, 0.9155, 1.157 },
  };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double hpa = ff_air_station_hpa (rows[i].qnh_hpa, rows[i].elevation_m);
      const double density
          = ff_air_density_kgm3 (hpa, rows[i].temperature_c, rows[i].dew_point_c);

      assert_close (hpa, rows[i].hpa, 0.01);
      assert_close (density, rows[i].kgm3, 0.0001);
      assert_close (ff_air_density_altitude_m (density) / FOOT, rows[i].feet, 2);
      assert_close (ff_air_hover_power_ratio (density), rows[i].power, 0.0005);
    }
}

/* WMO-No. 8, annex 4.B: the formula; the values worked from it. */
static void
test_dew_point (void **state)
{
  assert_close (ff_air_dew_point_c (20, 50), 9.255, 0.001);
  assert_close (ff_air_dew_point_c (25, 60), 16.693, 0.001);
  assert_close (ff_air_dew_point_c (30, 80), 26.169, 0.001);
  assert_close (ff_air_dew_point_c (0, 90), -1.445, 0.001);
  assert_close (ff_air_dew_point_c (-5, 95), -5.677, 0.001);
  assert_close (ff_air_dew_point_c (10, 100), 10.0, 1e-9);
  assert_close (ff_air_saturation_hpa (0), 6.112, 1e-9);
}

/* FAA-H-8083-25B, chapter 12: 85 °F and 71 °F give 3180 ft with the divisor 4.4 °F; 2.5 °C is 4.5
 * °F, hence the tolerance. METAR 02/M01: 1200 ft. */
static void
test_cloud_base (void **state)
{
  assert_close (ff_air_cloud_base_m ((85 - 32) / 1.8, (71 - 32) / 1.8) / FOOT, 3180, 75);
  assert_close (ff_air_cloud_base_m (2, -1) / FOOT, 1200, 1e-6);
  assert_close (ff_air_cloud_base_m (5, 5), 0, 0);
}

/* Environment Canada, wind chill chart (°C and km/h at 10 m), printed in whole degrees. */
static void
test_wind_chill_chart (void **state)
{
  static const struct
  {
    double temperature_c, kmh, chill_c;
  } cells[] = { { -20, 30, -33 }, { -25, 20, -37 }, { -10, 20, -18 },
                { 0, 55, -8 },    { 5, 5, 4 },      { -50, 80, -81 } };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (cells); i++)
    assert_close (round (ff_air_wind_chill_c (cells[i].temperature_c, cells[i].kmh / 3.6)),
                  cells[i].chill_c, 0);
  /* US National Weather Service chart: 0 °F at 15 mph is −19.4 °F, 25 °F at 20 mph 10.8 °F. */
  assert_close (ff_air_wind_chill_c (-160.0 / 9.0, 15 * 0.44704) * 1.8 + 32, -19.4, 0.1);
  assert_close (ff_air_wind_chill_c (-35.0 / 9.0, 20 * 0.44704) * 1.8 + 32, 10.8, 0.1);
  assert_true (isnan (ff_air_wind_chill_c (15, 10)));
  assert_true (isnan (ff_air_wind_chill_c (0, 1)));
}

/* The power law with 1/7, worked for 5 m/s at 10 m. */
static void
test_wind_with_height (void **state)
{
  static const double rows[][2]
      = { { 20, 5.520 }, { 30, 5.850 }, { 50, 6.292 }, { 80, 6.730 }, { 100, 6.947 }, { 120, 7.131 } };
  double low, high;
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_close (ff_air_wind_at_m (5, 10, rows[i][0], NULL, NULL), rows[i][1], 0.0006);
  ff_air_wind_at_m (5, 10, 120, &low, &high);
  assert_close (low, 6.572, 0.0006);
  assert_close (high, 9.306, 0.0006);
  /* Below the sensor it blows less, and the range keeps its order. */
  assert_true (ff_air_wind_at_m (5, 10, 2, &low, &high) < 5 && low < high);
}

/* WMO-No. 306, section E: the columns in knots, m/s and km/h disagree at whole knots. */
static void
test_beaufort_in_its_own_unit (void **state)
{
  static const struct
  {
    int knots, by_knots, by_ms;
  } rows[] = { { 0, 0, 0 },  { 1, 1, 1 },   { 3, 1, 1 },   { 10, 3, 3 }, { 16, 4, 5 },
               { 21, 5, 6 }, { 27, 6, 7 },  { 33, 7, 7 },  { 40, 8, 8 }, { 47, 9, 9 },
               { 55, 10, 10 }, { 63, 11, 11 }, { 64, 12, 12 } };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      assert_int_equal (ff_air_beaufort (rows[i].knots, FF_BEAUFORT_KNOTS), rows[i].by_knots);
      assert_int_equal (ff_air_beaufort (rows[i].knots * 1852.0 / 3600.0, FF_BEAUFORT_MS),
                        rows[i].by_ms);
    }
  assert_int_equal (ff_air_beaufort (88, FF_BEAUFORT_KMH), 9);
  assert_int_equal (ff_air_beaufort (89, FF_BEAUFORT_KMH), 10);
  assert_string_equal (ff_air_beaufort_text (3), "gentle breeze");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_standard_atmosphere), cmocka_unit_test (test_pressure_altitude),
    cmocka_unit_test (test_density_altitude),    cmocka_unit_test (test_dew_point),
    cmocka_unit_test (test_cloud_base),          cmocka_unit_test (test_wind_chill_chart),
    cmocka_unit_test (test_wind_with_height),    cmocka_unit_test (test_beaufort_in_its_own_unit),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
