/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Neutral-density filters against printed tables. D = -log10 T (ISO 5-1:2009 notation), factor
 * 10^D, stops log2 of the factor. Sources, named again at each case: the optical trade's table of
 * factor, density, stops and per cent (as printed by makers of optical glass and in the
 * encyclopedia article "Neutral-density filter"); textbook "Photographic Lighting: Essential
 * Skills", table of filter factors. The exact figures are computed from the definitions in double
 * precision. */
#include "ff-test.h"

#include <math.h>

#include "ff-exposure.h"
#include "ff-filter.h"

static double
stops_of (const char *label)
{
  g_autoptr (GError) error = NULL;
  FfFilterStrength strength = { FF_FILTER_BY_STOPS, NAN, NAN };

  ff_filter_parse (label, &strength, &error);
  assert_no_error (error);
  assert_close (strength.stops_to, strength.stops, 0);
  return strength.stops;
}

/* Factors as labelled: the exact figures beside what the trade prints. */
static void
test_factor_labels (void **state)
{
  static const struct {
    const char *label;
    double density, stops, per_cent, printed_stops;
  } cases[] = {
    { "ND2", 0.3010, 1.0000, 50, 1 },
    { "ND4", 0.6021, 2.0000, 25, 2 },
    { "ND8", 0.9031, 3.0000, 12.5, 3 },
    { "ND16", 1.2041, 4.0000, 6.25, 4 },
    { "ND32", 1.5051, 5.0000, 3.125, 5 },
    { "ND64", 1.8062, 6.0000, 1.5625, 6 },
    { "ND100", 2.0000, 6.6439, 1.0, 6 + 2. / 3 },
    { "ND128", 2.1072, 7.0000, 0.78125, 7 },
    { "ND256", 2.4082, 8.0000, 0.390625, 8 },
    { "ND400", 2.6021, 8.6439, 0.25, 8 + 2. / 3 },
    { "ND500", 2.6990, 8.9658, 0.20, 9 },
    { "ND512", 2.7093, 9.0000, 0.1953125, 9 },
    { "ND1000", 3.0000, 9.9658, 0.1, 10 },
    { "ND1024", 3.0103, 10.0000, 0.09765625, 10 },
    { "ND2000", 3.3010, 10.9658, 0.05, 11 },
    { "ND10000", 4.0000, 13.2877, 0.01, 13 + 1. / 3 },
    { "ND100000", 5.0000, 16.6096, 0.001, 16 + 2. / 3 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double stops = stops_of (cases[i].label);

      assert_close (stops, cases[i].stops, 5e-5);
      assert_close (ff_filter_density (stops), cases[i].density, 5e-5);
      assert_close (100 * ff_filter_transmittance (stops) / cases[i].per_cent, 1, 1e-9);

      /* The printed row rounds: up to 0.06 stop away, ND100000 being the worst. */
      assert_close (stops, cases[i].printed_stops, 0.06);
    }
}

static void
test_density_labels (void **state)
{
  static const struct {
    const char *label;
    double factor, stops, per_cent;
  } cases[] = {
    { "0.1", 1.2589, 0.3322, 79.433 },  { "0.2", 1.5849, 0.6644, 63.096 },
    { "0.3", 1.9953, 0.9966, 50.119 },  { "0.6", 3.9811, 1.9932, 25.119 },
    { "0.9", 7.9433, 2.9897, 12.589 },  { "1.0", 10, 3.3219, 10 },
    { "1.2", 15.849, 3.9863, 6.3096 },  { "1.5", 31.623, 4.9829, 3.1623 },
    { "1.8", 63.096, 5.9795, 1.5849 },  { "2.1", 125.89, 6.9760, 0.79433 },
    { "2.4", 251.19, 7.9726, 0.39811 }, { "2.7", 501.19, 8.9692, 0.19953 },
    { "3.0", 1000, 9.9658, 0.1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double stops = stops_of (cases[i].label);

      assert_close (stops, cases[i].stops, 5e-5);
      assert_close (ff_filter_factor (stops) / cases[i].factor, 1, 5e-5);
      assert_close (100 * ff_filter_transmittance (stops) / cases[i].per_cent, 1, 5e-5);
    }
}

/* "Photographic Lighting: Essential Skills", filter factors by third stops; it rounds to a third
 * and to a tenth of density. (Its last row, factor 20 for density 2.0, is a misprint: 100.) */
static void
test_textbook_thirds (void **state)
{
  static const struct {
    double factor, thirds, density;
  } cases[] = {
    { 1.25, 1, 0.1 }, { 1.5, 2, 0.2 }, { 2, 3, 0.3 }, { 2.5, 4, 0.4 }, { 3, 5, 0.5 },
    { 4, 6, 0.6 },    { 5, 7, 0.7 },   { 6, 8, 0.8 }, { 8, 9, 0.9 },   { 10, 10, 1.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      assert_close (log2 (cases[i].factor), cases[i].thirds / 3, 0.09);
      assert_close (ff_filter_density (cases[i].thirds / 3), cases[i].density, 0.005);
      assert_close (ff_filter_factor (cases[i].thirds / 3) / cases[i].factor, 1, 0.06);
    }
}

/* Factor 4 on factor 4 is 16, "not 8" (the same textbook); the rest from the definitions. */
static void
test_stacks (void **state)
{
  assert_close (ff_filter_factor (stops_of ("ND4") + stops_of ("ND4")), 16, 1e-12);
  assert_close (ff_filter_factor (stops_of ("ND8") + stops_of ("ND64")), 512, 1e-9);
  assert_close (ff_filter_density (stops_of ("0.3") + stops_of ("0.6") + stops_of ("0.9")), 1.8,
                1e-12);
  assert_close (stops_of ("0.3") + stops_of ("0.6") + stops_of ("0.9"), 5.979, 5e-4);
  assert_close (stops_of ("ND64") + stops_of ("ND1000"), 15.966, 5e-4);
}

/* A polariser "reduces light about 2.5 times", a printed range is 2.3 to 2.8 (US Army subcourse SS0512,
 * paragraph 11; a printed listing); filter factor 1 1/2 is "about 2/3 stop", factor 8 is 3 stops (US
 * Army subcourse SS0508; "Filter factor" as reprinted). */
static void
test_factors_of_other_glass (void **state)
{
  static const struct {
    double factor, stops, tolerance;
  } cases[] = {
    { 2.5, 1.322, 5e-4 }, { 2.3, 1.202, 5e-4 },     { 2.8, 1.485, 5e-4 },
    { 1.5, 0.585, 5e-4 }, { 1.5, 2.0 / 3, 0.0825 }, { 8, 3, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double least = ff_filter_factor (cases[i].stops - cases[i].tolerance - 1e-12);
      double most = ff_filter_factor (cases[i].stops + cases[i].tolerance + 1e-12);

      assert_true (least <= cases[i].factor && cases[i].factor <= most);
    }
  assert_close (stops_of ("ND8"), 3, 0);
}

/* What ten stops make of a shutter time. ND1000 is not ten stops. */
static void
test_times_behind_filters (void **state)
{
  assert_close (1.0 / 128 * ff_filter_factor (10), 8, 1e-12);
  assert_close (1.0 / 125 * ff_filter_factor (stops_of ("ND1000")), 8, 1e-9);
  assert_close (1.0 / 128 * ff_filter_factor (stops_of ("ND1000")), 7.8125, 1e-9);
  assert_close (1.0 / 60 * ff_filter_factor (stops_of ("ND1000")), 16.667, 5e-4);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_factor_labels),        cmocka_unit_test (test_density_labels),
    cmocka_unit_test (test_textbook_thirds),      cmocka_unit_test (test_stacks),
    cmocka_unit_test (test_times_behind_filters), cmocka_unit_test (test_factors_of_other_glass),
  };

  return cmocka_run_group_tests_name ("published filters", tests, NULL, NULL);
}
