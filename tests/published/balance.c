/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Colour temperature against published values. Sources, named again at each case: American
 * Cinematographer Manual, "The MIRED System"; ITWissen, glossary; an encyclopedic camera reference
 * guide; glossaries of the filter trade; CIE 15 as implemented and tested by the library Colour
 * (cie_d.py, test_cie_d.py), after Wyszecki and Stiles. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-balance.h"

static void
test_mired (void **state)
{
  static const struct {
    double kelvin, mired, tolerance;
  } cases[] = {
    { 5500, 181.82, 0.005 }, /* printed 182 */
    { 3600, 277.8, 0.05 },   /* ITWissen prints 278 */
    { 2000, 500, 0 },        /* from here on computed from the definition */
    { 3200, 312.5, 0 },      { 4000, 250, 0 }, { 6500, 153.85, 0.005 },
    { 10000, 100, 0 },       { 25000, 40, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_close (ff_balance_mired (cases[i].kelvin), cases[i].mired, cases[i].tolerance);
}

static void
test_shifts (void **state)
{
  static const struct {
    double from, to, mired, printed, printed_to;
  } cases[] = {
    { 5000, 6000, -33.33, -33, 0.5 },      /* American Cinematographer Manual: "only 33 mireds" */
    { 3000, 4000, -83.33, -83, 0.5 },      /* camera reference guide */
    { 6000, 7000, -23.81, -24, 0.5 },      /* camera reference guide */
    { 3200, 5500, -130.68, -131, 0.5 },    /* filter 80A; the -131 from memory */
    { 3400, 5500, -112.30, -112, 0.5 },    /* glossaries; filter 85 is the same, +112 */
    { 3092, 5600, -144.84, -144.8, 0.05 }, /* worked example of a trade article */
    { 6500, 5500, 27.97, 27.97, 0.005 },   /* computed */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double shift = ff_balance_shift_mired (cases[i].from, cases[i].to);

      assert_close (shift, cases[i].mired, 0.005);
      assert_close (shift, cases[i].printed, cases[i].printed_to);
      assert_close (ff_balance_shifted_kelvin (cases[i].from, shift), cases[i].to, 1e-6);
    }
}

/* Filters in front of each other add: 85C and 81C are +81 and +35, together +116 (American
 * Cinematographer Manual). */
static void
test_filters_add (void **state)
{
  const double once = ff_balance_shifted_kelvin (ff_balance_shifted_kelvin (6500, 81), 35);

  assert_close (ff_balance_shift_mired (6500, once), 116, 1e-9);
  assert_close (once, ff_balance_shifted_kelvin (6500, 116), 1e-9);
}

/* 5500 K is 182 mired: a filter of -182 has nothing left to shift to. */
static void
test_no_light_is_bluer_than_blue (void **state)
{
  assert_true (isinf (ff_balance_shifted_kelvin (5500, -182)));
  assert_close (ff_balance_shifted_kelvin (5500, -181), 1.222e6, 1e3);
}

static void
test_daylight_chromaticity (void **state)
{
  static const struct {
    double kelvin, x, y, tolerance;
  } cases[] = {
    { 4000, 0.382343625, 0.383766261, 1e-7 },   /* Colour, test_cie_d.py */
    { 6504.38938, 0.3127077, 0.3291128, 1e-7 }, /* Colour, docstring */
    { 7000, 0.305357431, 0.321646345, 1e-7 },   /* Colour, test_cie_d.py */
    { 25000, 0.249853670, 0.254799464, 1e-7 },  /* Colour, test_cie_d.py */
    { 5003, 0.345653, 0.358596, 1e-6 },         /* computed: D50 */
    { 5503, 0.332430, 0.347545, 1e-6 },         /* computed: D55 */
    { 10000, 0.278800, 0.291967, 1e-6 },        /* computed */
  };
  double x = NAN, y = NAN;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      assert_true (ff_balance_daylight_xy (cases[i].kelvin, &x, &y));
      assert_close (x, cases[i].x, cases[i].tolerance);
      assert_close (y, cases[i].y, cases[i].tolerance);
    }
  assert_false (ff_balance_daylight_xy (3999, &x, &y));
  assert_false (ff_balance_daylight_xy (25001, &x, &y));
  assert_false (ff_balance_daylight_xy (NAN, &x, &y));
}

/* The nominal illuminants moved when the radiation constant did (the reason from memory): D65 lies
 * at 6500 x 1.4388 / 1.4380 K. */
static void
test_nominal_illuminants (void **state)
{
  double x = NAN, y = NAN;

  assert_true (ff_balance_daylight_xy (6500 * 1.4388 / 1.4380, &x, &y));
  assert_close (x, 0.31272, 2e-5);
  assert_close (y, 0.32913, 2e-5);
}

/* What has been published about daylight stands as it was printed, each row with its source. */
static void
test_daylight_ranges (void **state)
{
  static const struct {
    const char *part;
    double low, high;
  } cases[] = {
    { "nominal", 5500, 5500 },
    { "direct sunlight", 5000, 5500 },
    { "blue sky without sun", 12000, 15000 },
    { "whole range", 5000, INFINITY },
    { "average daylight", 5500, 6000 },
    { "hazy sun", 5800, 5800 },
    { "overcast", 6700, 7000 },
    { "morning or afternoon", 5000, 5500 },
    { "sunrise or sunset", 2000, 3000 },
    { "noon sun", 5000, 5600 },
    { "hazy sky", 7500, 8400 },
    { "under a blue sky", 12000, 20000 },
    { "an hour after", 3500, 4000 },
    { "as measured", 5700, 5700 },
    { "patches", 3800, INFINITY },
  };

  assert_int_equal (ff_daylight_range_count (), G_N_ELEMENTS (cases));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const FfDaylightRange *found = NULL;

      for (guint j = 0; j < ff_daylight_range_count (); j++)
        if (strstr (ff_daylight_range (j)->text, cases[i].part) != NULL)
          found = ff_daylight_range (j);
      assert_non_null (found);
      assert_true (found->low_kelvin == cases[i].low && found->high_kelvin == cases[i].high);
      assert_true (strlen (found->source) > 10);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_mired),
    cmocka_unit_test (test_shifts),
    cmocka_unit_test (test_filters_add),
    cmocka_unit_test (test_no_light_is_bluer_than_blue),
    cmocka_unit_test (test_daylight_chromaticity),
    cmocka_unit_test (test_nominal_illuminants),
    cmocka_unit_test (test_daylight_ranges),
  };

  return cmocka_run_group_tests_name ("published balance", tests, NULL, NULL);
}
