/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-conditions.h"
#include "ff-daylight.h"
#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-filter.h"
#include "ff-scale.h"

static void
assert_filter (const char *label, FfFilterNaming naming, double stops, double stops_to)
{
  g_autoptr (GError) error = NULL;
  FfFilterStrength strength = { 0 };

  if (!ff_filter_parse (label, &strength, &error))
    fail_msg ("“%s” refused: %s", label, error->message);
  assert_int_equal (strength.naming, naming);
  assert_close (strength.stops, stops, 1e-12);
  assert_close (strength.stops_to, stops_to, 1e-12);
}

static void
assert_filter_refused (const char *label, const char *part)
{
  g_autoptr (GError) error = NULL;
  FfFilterStrength strength = { FF_FILTER_BY_STOPS, 99, 99 };

  if (ff_filter_parse (label, &strength, &error))
    fail_msg ("“%s” was taken as %g stops", label, strength.stops);
  assert_error (error, FF_ERROR_INPUT, part);
  assert_close (strength.stops, 99, 0);
}

static void
test_filter_labels (void **state)
{
  assert_filter ("ND8", FF_FILTER_BY_FACTOR, 3, 3);
  assert_filter ("nd 64", FF_FILTER_BY_FACTOR, 6, 6);
  assert_filter (" ND1000 ", FF_FILTER_BY_FACTOR, log2 (1000), log2 (1000));
  assert_filter ("ND1", FF_FILTER_BY_FACTOR, 0, 0);
  assert_filter ("0.9", FF_FILTER_BY_DENSITY, 0.9 / log10 (2), 0.9 / log10 (2));
  assert_filter (".9", FF_FILTER_BY_DENSITY, 0.9 / log10 (2), 0.9 / log10 (2));
  assert_filter ("ND0.9", FF_FILTER_BY_DENSITY, 0.9 / log10 (2), 0.9 / log10 (2));
  assert_filter ("3 stops", FF_FILTER_BY_STOPS, 3, 3);
  assert_filter ("1 stop", FF_FILTER_BY_STOPS, 1, 1);
  assert_filter ("3.1 Stops", FF_FILTER_BY_STOPS, 3.1, 3.1);
  assert_filter ("0 stops", FF_FILTER_BY_STOPS, 0, 0);
  assert_filter ("2-5 stops variable", FF_FILTER_VARIABLE, 2, 5);
  assert_filter ("1.5 – 6 stops variable", FF_FILTER_VARIABLE, 1.5, 6);
}

/* The same engraving means three things in the trade; the decimal point decides. */
static void
test_two_point_nought_is_a_density (void **state)
{
  assert_filter ("ND2", FF_FILTER_BY_FACTOR, 1, 1);
  assert_filter ("ND2.0", FF_FILTER_BY_DENSITY, 2 / log10 (2), 2 / log10 (2));
  assert_filter ("2.0", FF_FILTER_BY_DENSITY, 2 / log10 (2), 2 / log10 (2));
  assert_filter ("2 stops", FF_FILTER_BY_STOPS, 2, 2);
}

static void
test_ambiguous_filters_are_refused (void **state)
{
  assert_filter_refused ("8", "a number alone");
  assert_filter_refused ("64", "accepted: ND8");
  assert_filter_refused ("ND103", "a code for stops");
  assert_filter_refused ("10.0", "a density is below 10");
  assert_filter_refused ("ND16.0", "a density is below 10");
  assert_filter_refused ("2-5 stops", "variable filter");
}

static void
test_bad_filters_are_refused (void **state)
{
  static const char *const labels[] = {
    "",
    " ",
    "ND",
    "ND-8",
    "-3 stops",
    "3 stops 2",
    "stops",
    "clear",
    "1e3",
    "ND1e3",
    "nan",
    "inf",
    "ND0x10",
    "0,9",
    "0.9.1",
    "2-5",
    "3stop!",
    "ND8 stops",
    "ND0",
    ".",
    "\xff\xfe",
    "٣ stops",
    "34 stops",
    "2-34 stops variable",
    "2- stops variable",
    "-5 stops variable",
    "2-5 stops variables",
    "ND99999999999999999999",
    "ND8\tx",
  };

  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    assert_filter_refused (labels[i], "accepted");
}

static void
test_ranges_upside_down_are_refused (void **state)
{
  assert_filter_refused ("5-2 stops variable", "from the weaker to the stronger");
  assert_filter_refused ("3-3 stops variable", "from the weaker to the stronger");
}

static void
assert_described (const char *label, const char *want)
{
  FfFilterStrength strength = { 0 };
  g_autofree char *said = NULL;

  assert_true (ff_filter_parse (label, &strength, NULL));
  said = ff_filter_describe (&strength);
  assert_string_equal (said, want);
}

static void
test_filters_are_said_back (void **state)
{
  assert_described ("ND8", "factor 8, 3 stops");
  assert_described ("ND2", "factor 2, 1 stop");
  assert_described ("ND1000", "factor 1000, 9.966 stops");
  assert_described ("ND0.9", "density 0.9, 2.99 stops");
  assert_described ("3.1 stops", "3.1 stops");
  assert_described ("2-5 stops variable", "variable, 2 to 5 stops");
}

static void
test_aperture_labels_are_exact (void **state)
{
  static const struct {
    const char *text;
    double written, exact;
  } cases[] = {
    { "5.6", 5.6, 5.656854249492381 },
    { "f/11", 11, 11.313708498984761 },
    { "F/2.8", 2.8, 2.8284271247461903 },
    { "4.0", 4, 4 },
    { "1.7", 1.7, 1.7 },
    { "0.95", 0.95, 0.95 },
    { "64", 64, 64 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double written, exact;

      ff_aperture_parse ("--aperture", cases[i].text, &written, &exact, &error);
      assert_no_error (error);
      assert_close (written, cases[i].written, 0);
      assert_close (exact, cases[i].exact, 1e-12);
    }
}

static void
test_bad_apertures_are_refused (void **state)
{
  static const char *const texts[]
      = { "", "f/", "f/f/2", "2,8", "0", "-4", "0.49", "64.1", "nan", "1/4", "4 f", "0x4" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      double written = 7, exact = 7;

      assert_false (ff_aperture_parse ("--aperture", texts[i], &written, &exact, &error));
      assert_error (error, FF_ERROR_INPUT, "--aperture");
      assert_close (written + exact, 14, 0);
    }
}

static void
assert_shutter (const char *text, gboolean thirds, double want)
{
  g_autoptr (GError) error = NULL;
  double seconds = NAN;

  ff_shutter_parse ("--shutter", text, thirds, &seconds, &error);
  assert_no_error (error);
  assert_close (seconds / want, 1, 1e-12);
}

static void
test_shutter_as_written_or_in_thirds (void **state)
{
  assert_shutter ("1/60", FALSE, 1.0 / 60);
  assert_shutter ("1/60", TRUE, 1.0 / 64);
  assert_shutter ("30", FALSE, 30);
  assert_shutter ("30 s", TRUE, 32);
  assert_shutter ("8s", TRUE, 8);
  assert_shutter ("1/50 s", FALSE, 0.02);
  assert_shutter ("0.3", TRUE, cbrt (1.0 / 32));
  assert_shutter ("1/442", TRUE, 1.0 / 442);
  assert_shutter ("1/100000", FALSE, 1e-5);
  assert_shutter ("3600", FALSE, 3600);
}

static void
test_bad_shutters_are_refused (void **state)
{
  static const char *const texts[]
      = { "",        "s",    "1/",       "1/0",    "/50",    "2/50",   "1/-50",
          "0",       "-1",   "nan",      "1/50/2", "1/50 m", "1 50",   "0,5",
          "1/1e400", "3601", "1/100001", "1/ 50",  "0x1",    "1/50 ss" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      double seconds = 7;

      if (ff_shutter_parse ("--shutter", texts[i], FALSE, &seconds, &error))
        fail_msg ("“%s” was taken as %g s", texts[i], seconds);
      assert_error (error, FF_ERROR_INPUT, "accepted: seconds as 1/50");
      assert_close (seconds, 7, 0);
    }
}

static void
test_shutter_for_people (void **state)
{
  static const struct {
    double seconds;
    const char *want;
  } cases[] = {
    { 0.02, "1/50" },
    { 1.0 / 50.797, "1/50" },
    { 1.0 / 51, "1/50" },
    { 1.0 / 64, "1/64" },
    { 1.0 / 442, "1/442" },
    { 0.5, "0.5" },
    { 0.45, "0.45" },
    { 2.3, "2.3" },
    { 32, "32" },
    { 30, "30" },
    { 1800, "1800" },
    { 1.0 / 9, "1/9" },
    { 1.0 / 3.55, "0.28" },
    { 1.0 / 70000, "1/70000" },
    { 0, "–" },
    { NAN, "–" },
    { INFINITY, "–" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *said = ff_shutter_format (cases[i].seconds);

      assert_string_equal (said, cases[i].want);
    }
}

static void
test_scale_ends (void **state)
{
  assert_int_equal (ff_scale_size (FF_SCALE_APERTURE), 31);
  assert_int_equal (ff_scale_size (FF_SCALE_SHUTTER), 61);
  assert_int_equal (ff_scale_size (FF_SCALE_ISO), 37);
  assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, 0), "1/32000");
  assert_string_equal (ff_scale_label (FF_SCALE_SHUTTER, 60), "30");
  assert_close (ff_scale_exact (FF_SCALE_SHUTTER, 0), 1.0 / 32768, 0);
  assert_close (ff_scale_exact (FF_SCALE_SHUTTER, 60), 32, 0);
  assert_close (ff_scale_exact (FF_SCALE_ISO, 0), 25, 0);
  assert_close (ff_scale_exact (FF_SCALE_ISO, 36), 102400, 0);
  assert_int_equal (ff_scale_nearest (FF_SCALE_ISO, 1), 0);
  assert_int_equal (ff_scale_nearest (FF_SCALE_ISO, 1e9), 36);
  assert_int_equal (ff_scale_nearest (FF_SCALE_SHUTTER, 1e-9), 0);
}

static void
test_scale_find (void **state)
{
  assert_int_equal (ff_scale_find (FF_SCALE_APERTURE, "f/2.8"), 9);
  assert_int_equal (ff_scale_find (FF_SCALE_APERTURE, "5.0"), 14);
  assert_int_equal (ff_scale_find (FF_SCALE_SHUTTER, "8 s"), 54);
  assert_int_equal (ff_scale_find (FF_SCALE_SHUTTER, "1/50 s"), 28);
  assert_int_equal (ff_scale_find (FF_SCALE_SHUTTER, "1/2"), 42);
  assert_int_equal (ff_scale_find (FF_SCALE_ISO, "100"), 6);
  assert_int_equal (ff_scale_find (FF_SCALE_ISO, "110"), -1);
  assert_int_equal (ff_scale_find (FF_SCALE_APERTURE, "2.9"), -1);
  assert_int_equal (ff_scale_find (FF_SCALE_APERTURE, "wide open"), -1);
  assert_int_equal (ff_scale_find (FF_SCALE_ISO, "f/100"), -1);
  assert_int_equal (ff_scale_find (FF_SCALE_SHUTTER, ""), -1);
}

static void
test_lit_words (void **state)
{
  assert_int_equal (ff_lit_of_angle (180), FF_LIT_FRONT);
  assert_int_equal (ff_lit_of_angle (135), FF_LIT_FRONT);
  assert_int_equal (ff_lit_of_angle (134.9), FF_LIT_SIDE);
  assert_int_equal (ff_lit_of_angle (45), FF_LIT_SIDE);
  assert_int_equal (ff_lit_of_angle (44.9), FF_LIT_BACK);
  assert_int_equal (ff_lit_of_angle (0), FF_LIT_BACK);
  for (int lit = FF_LIT_FRONT; lit <= FF_LIT_BACK; lit++)
    assert_int_equal (ff_lit_of_angle (ff_lit_from_sun_deg ((FfLit) lit)), lit);
}

static void
test_bearing_difference (void **state)
{
  assert_close (ff_bearing_difference_deg (350, 10), 20, 1e-12);
  assert_close (ff_bearing_difference_deg (10, 350), 20, 1e-12);
  assert_close (ff_bearing_difference_deg (0, 180), 180, 1e-12);
  assert_close (ff_bearing_difference_deg (360, 0), 0, 1e-12);
  assert_close (ff_bearing_difference_deg (60, 240), 180, 1e-12);
  assert_close (ff_bearing_difference_deg (90, 271), 179, 1e-12);
}

/* The knots of our own model; side and back light from the ANSI guides at full strength. */
static void
test_view_gain (void **state)
{
  static const struct {
    double altitude_deg, front, side, back;
  } cases[] = {
    { 90, 0, -1, -2 },
    { 60, 0.2, -0.8, -1.8 },
    { 30, 0.8, -0.2, -1.2 },
    { 15, 1.2, 0.2, -0.8 },
    { 10, 1.3, 1.3 - 2. / 3, 1.3 - 4. / 3 },
    { 5, 1.4, 1.4 - 1. / 3, 1.4 - 2. / 3 },
    { 2.5, 0.6, 0.6 - 1. / 6, 0.6 - 1. / 3 },
    { 0, 0, 0, 0 },
    { -5, 0, 0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double h = cases[i].altitude_deg;

      for (int sky = FF_SKY_CLEAR; sky <= FF_SKY_PARTLY; sky++)
        {
          const FfView view = FF_VIEW_OBLIQUE;

          assert_close (ff_daylight_view_gain (h, (FfSky) sky, view, 180), cases[i].front, 1e-12);
          assert_close (ff_daylight_view_gain (h, (FfSky) sky, view, 90), cases[i].side, 1e-12);
          assert_close (ff_daylight_view_gain (h, (FfSky) sky, view, 0), cases[i].back, 1e-12);
        }
      assert_close (ff_daylight_view_gain (h, FF_SKY_CLEAR, FF_VIEW_DOWN, 0), 0, 0);
      assert_close (ff_daylight_view_gain (h, FF_SKY_OVERCAST, FF_VIEW_OBLIQUE, 180), 0, 0);
      assert_close (ff_daylight_view_gain (h, FF_SKY_DARK, FF_VIEW_OBLIQUE, 0), 0, 0);
    }
}

static FfDaylight
daylight_at (double altitude_deg, FfSky sky, double offset_stops)
{
  const FfDaylightQuery query = { altitude_deg, sky, FF_VIEW_DOWN, 180, offset_stops };
  FfDaylight there;

  ff_daylight (&query, &there);
  return there;
}

static void
test_spread (void **state)
{
  static const struct {
    double altitude_deg;
    FfSky sky;
    double model, log10_error;
  } cases[] = {
    { 30, FF_SKY_CLEAR, 0.5, 0.02 },  { 8, FF_SKY_CLEAR, 0.5, 0.02 },
    { 7.9, FF_SKY_CLEAR, 1.0, 0.02 }, { 30, FF_SKY_PARTLY, 1.0, 0.02 },
    { 4, FF_SKY_PARTLY, 1.5, 0.02 },  { 30, FF_SKY_OVERCAST, 0.5, 0.02 },
    { -7, FF_SKY_DARK, 1.0, 0.01 },   { -30, FF_SKY_CLEAR, 1.0, 0.01 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      FfDaylight there = daylight_at (cases[i].altitude_deg, cases[i].sky, 0);
      double stated = cases[i].log10_error / log10 (2);
      double want = sqrt (cases[i].model * cases[i].model + stated * stated);

      assert_close (there.high_ev100 - there.ev100, want, 1e-9);
      assert_close (there.ev100 - there.low_ev100, want, 1e-9);
    }
}

static void
test_offset_moves_the_level_not_the_lux (void **state)
{
  FfDaylight plain = daylight_at (20, FF_SKY_CLEAR, 0);
  FfDaylight snow = daylight_at (20, FF_SKY_CLEAR, 1);

  assert_close (snow.ev100 - plain.ev100, 1, 1e-12);
  assert_close (snow.low_ev100 - plain.low_ev100, 1, 1e-12);
  assert_close (snow.illuminance_lx, plain.illuminance_lx, 0);
  assert_close (plain.ev100, ff_exposure_ev100_of_lux (plain.illuminance_lx), 1e-12);
}

static void
test_guide_only_below_four_degrees (void **state)
{
  assert_false (daylight_at (-4, FF_SKY_CLEAR, 0).guide_only);
  assert_true (daylight_at (-4.01, FF_SKY_CLEAR, 0).guide_only);
  assert_false (daylight_at (30, FF_SKY_DARK, 0).guide_only);
}

static void
test_night_is_held (void **state)
{
  assert_close (ff_daylight_clear_lx (-90), ff_daylight_clear_lx (-18), 0);
  assert_close (ff_daylight_clear_lx (-18.5), ff_daylight_clear_lx (-18), 0);
}

static void
test_conditions (void **state)
{
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < ff_conditions_count (); i++)
    {
      const FfCondition *condition = ff_condition (i);

      assert_ptr_equal (ff_condition_find (condition->name, &error), condition);
      assert_true (condition->low_ev100 <= condition->high_ev100);
      assert_true (*condition->text != '\0');
      assert_non_null (strstr (condition->source, "PH2.7"));
    }
  assert_ptr_equal (ff_condition_find ("Open-SHADE", &error),
                    ff_condition_find ("open-shade", NULL));
  assert_non_null (
      strstr (ff_condition_find ("full-sun", NULL)->note, "side 1 stop less, back 2 less"));
  assert_null (ff_condition_find ("open-shade", NULL)->note);
  assert_null (ff_condition_find ("noon", &error));
  assert_error (error, FF_ERROR_INPUT, "light --list");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_filter_labels),
    cmocka_unit_test (test_two_point_nought_is_a_density),
    cmocka_unit_test (test_ambiguous_filters_are_refused),
    cmocka_unit_test (test_bad_filters_are_refused),
    cmocka_unit_test (test_ranges_upside_down_are_refused),
    cmocka_unit_test (test_filters_are_said_back),
    cmocka_unit_test (test_aperture_labels_are_exact),
    cmocka_unit_test (test_bad_apertures_are_refused),
    cmocka_unit_test (test_shutter_as_written_or_in_thirds),
    cmocka_unit_test (test_bad_shutters_are_refused),
    cmocka_unit_test (test_shutter_for_people),
    cmocka_unit_test (test_scale_ends),
    cmocka_unit_test (test_scale_find),
    cmocka_unit_test (test_lit_words),
    cmocka_unit_test (test_bearing_difference),
    cmocka_unit_test (test_view_gain),
    cmocka_unit_test (test_spread),
    cmocka_unit_test (test_offset_moves_the_level_not_the_lux),
    cmocka_unit_test (test_guide_only_below_four_degrees),
    cmocka_unit_test (test_night_is_held),
    cmocka_unit_test (test_conditions),
  };

  return cmocka_run_group_tests_name ("light", tests, NULL, NULL);
}
