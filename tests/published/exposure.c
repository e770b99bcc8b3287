/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Exposure arithmetic and the third-stop series against published values. Sources, named again at
 * each case:
 *  - data file of GNU units (definitions.units), section "Photographic Exposure Value", which
 * quotes ASA PH2.5-1960, ASA PH2.12-1961, ANSI PH3.49-1971, Exif 2.3 and the IES Lighting Handbook,
 *    8th edition 1993;
 *  - US Navy, NAVEDTRA 14209, Photography (Basic), page 4-21: the f/16 rule;
 *  - B. Brown, Cinematography: Theory and Practice, table 10.6: shutter angles;
 *  - ANSI exposure guides PH2.7-1973 and PH2.7-1986, as reprinted in encyclopedias. */
#include "ff-test.h"

#include <math.h>

#include "ff-conditions.h"
#include "ff-exposure.h"
#include "ff-scale.h"

/* GNU units: f/16 at 1/100 s, 3200 cd/m2 at ISO 100 with K 12.5; one minute is Tv -5.9068906. */
static void
test_gnu_units (void **state)
{
  assert_close (ff_exposure_ev (16, 1.0 / 100), 14.643856, 1e-6);
  assert_close (ff_exposure_luminance (ff_exposure_ev100 (16, 1.0 / 100, 100)), 3200, 1e-9);
  assert_close (ff_exposure_tv (60), -5.9068906, 1e-7);
  assert_close (ff_exposure_ev (1, 1), 0, 0);
}

/* The last column is what meters with K = 14 take for the same EV: outside of the range that ISO 2720
 * recommends, 10.6 to 13.4, so that K is stated with every luminance.
 * L = 2^(EV - 3) cd/m2 and E = 2.5 2^EV lx are exact powers of two; encyclopedia article "Exposure
 * value", "EV as a measure of luminance and illuminance". */
static void
test_luminance_and_illuminance (void **state)
{
  static const struct {
    double ev100, cdm2, lux, cdm2_14;
  } cases[] = {
    { -6, 0.001953125, 0.0390625, 0.0021875 },
    { -4, 0.0078125, 0.15625, 0.00875 },
    { -2, 0.03125, 0.625, 0.035 },
    { 0, 0.125, 2.5, 0.14 },
    { 2, 0.5, 10, 0.56 },
    { 4, 2, 40, 2.24 },
    { 5, 4, 80, 4.48 },
    { 7, 16, 320, 17.92 },
    { 8, 32, 640, 35.84 },
    { 9, 64, 1280, 71.68 },
    { 10, 128, 2560, 143.36 },
    { 11, 256, 5120, 286.72 },
    { 12, 512, 10240, 573.44 },
    { 13, 1024, 20480, 1146.88 },
    { 14, 2048, 40960, 2293.76 },
    { 15, 4096, 81920, 4587.52 },
    { 16, 8192, 163840, 9175.04 },
    { 18, 32768, 655360, 36700.16 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      assert_close (ff_exposure_luminance (cases[i].ev100), cases[i].cdm2, 0);
      assert_close (ff_exposure_luminance (cases[i].ev100) / cases[i].cdm2_14 * 14, FF_METER_K,
                    1e-12);
      assert_close (ff_exposure_illuminance (cases[i].ev100), cases[i].lux, 0);
      assert_close (ff_exposure_ev100_of_lux (cases[i].lux), cases[i].ev100, 0);
    }
}

/* Moon disc 2500, average clear and overcast sky 8000 and 2000 cd/m2: IES Lighting Handbook 1993,
 * quoted by GNU units; EV from L = K 2^EV / 100. */
static void
test_ev_of_luminance (void **state)
{
  assert_close (ff_exposure_luminance (14.2877) / 2500, 1, 1e-4);
  assert_close (ff_exposure_luminance (15.9658) / 8000, 1, 1e-4);
  assert_close (ff_exposure_luminance (13.9658) / 2000, 1, 1e-4);
}

/* Solar noon by the IES model (J. IES 13(4), 1984): klx worked from its equations for five days and
 * places under its three skies, and their EV at ISO 100. */
static void
test_ev_of_ies_noons (void **state)
{
  static const struct {
    double klx, ev100;
  } cases[] = {
    { 110.886, 15.437 }, { 94.722, 15.209 }, { 20.430, 12.996 }, { 88.588, 15.113 },
    { 68.790, 14.748 },  { 16.292, 12.670 }, { 47.999, 14.229 }, { 30.268, 13.564 },
    { 9.691, 11.920 },   { 100.577, 15.296 }, { 83.377, 15.025 }, { 18.746, 12.872 },
    { 22.941, 13.164 },  { 12.990, 12.343 }, { 5.580, 11.124 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_close (ff_exposure_ev100_of_lux (cases[i].klx * 1e3), cases[i].ev100, 1e-3);
}

/* Clear-sky sun 100 klx and overcast 10 klx: IES Lighting Handbook 1993, quoted by GNU units. */
static void
test_ev_of_lux (void **state)
{
  assert_close (ff_exposure_ev100_of_lux (100e3), 15.2877, 1e-4);
  assert_close (ff_exposure_ev100_of_lux (10e3), 11.9658, 1e-4);
}

/* Sv is 5 at ISO 100 with the constant 1/3.125 of Exif 2.3 (CIPA DC-008-2010); GNU units. The other
 * speeds follow from it and agree with Exif annex C, which is quoted from memory. */
static void
test_sv (void **state)
{
  static const struct {
    double iso, sv, tolerance;
  } cases[] = {
    { 100, 5, 0 },        { 3.125, 0, 0 },       { 25, 3, 0 },          { 50, 4, 0 },
    { 200, 6, 0 },        { 400, 7, 0 },         { 800, 8, 0 },         { 1600, 9, 0 },
    { 64, 4.3561, 5e-5 }, { 125, 5.3219, 5e-5 }, { 160, 5.6781, 5e-5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_close (ff_exposure_sv (cases[i].iso), cases[i].sv, cases[i].tolerance);
}

/* Numbers taken as written are not whole stops: that is why labels stand for exact values. */
static void
test_written_numbers_are_not_whole_stops (void **state)
{
  static const struct {
    double f_number, av;
  } apertures[]
      = { { 1.4, 0.9709 }, { 2.8, 2.9709 }, { 5.6, 4.9709 }, { 11, 6.9189 }, { 22, 8.9189 } };
  static const struct {
    double seconds, tv;
  } times[] = { { 1.0 / 60, 5.9069 }, { 1.0 / 125, 6.9658 }, { 1.0 / 1000, 9.9658 } };

  for (guint i = 0; i < G_N_ELEMENTS (apertures); i++)
    assert_close (ff_exposure_av (apertures[i].f_number), apertures[i].av, 5e-5);
  for (guint i = 0; i < G_N_ELEMENTS (times); i++)
    assert_close (ff_exposure_tv (times[i].seconds), times[i].tv, 5e-5);
  assert_close (ff_exposure_ev (5.6, 1.0 / 60), 10.877744, 1e-6);
  assert_close (ff_exposure_ev (ff_scale_exact (FF_SCALE_APERTURE, 15), 1.0 / 64), 11, 1e-12);
}

/* EV at ISO 100 of the f/16 rule: NAVEDTRA 14209 page 4-21, its f-stops at t = 1 / ISO taken as
 * exact stops; f/4 at sunset is a variant in common practice, no source. */
static void
test_f16_rule (void **state)
{
  static const struct {
    const char *aperture;
    double ev100;
  } cases[] = { { "22", 15.644 }, { "16", 14.644 },  { "11", 13.644 },
                { "8", 12.644 },  { "5.6", 11.644 }, { "4", 10.644 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      int step = ff_scale_find (FF_SCALE_APERTURE, cases[i].aperture);
      double f_number = ff_scale_exact (FF_SCALE_APERTURE, (guint) step);

      assert_true (step >= 0);
      assert_close (ff_exposure_ev100 (f_number, 1.0 / 100, 100), cases[i].ev100, 5e-4);
      assert_close (ff_exposure_ev100 (f_number, 1.0 / 400, 400), cases[i].ev100, 5e-4);
    }
  /* The same with the numbers as engraved: less by what rounding the label loses. */
  assert_close (ff_exposure_ev100 (22, 1.0 / 100, 100), 15.563, 5e-4);
  assert_close (ff_exposure_ev100 (11, 1.0 / 100, 100), 13.563, 5e-4);
  assert_close (ff_exposure_ev100 (8, 1.0 / 100, 100), 12.644, 5e-4);
  assert_close (ff_exposure_ev100 (5.6, 1.0 / 100, 100), 11.615, 5e-4);
  assert_close (ff_exposure_ev100 (4, 1.0 / 100, 100), 10.644, 5e-4);
  assert_close (ff_exposure_ev100 (16, 1.0 / 125, 100), 14.966, 5e-4);
  assert_close (ff_exposure_ev100 (16, 1.0 / 128, 100), 15, 1e-12);
}

/* The row of equal exposures printed with the f/16 rule: f/16 1/125, f/11 1/250, f/8 1/500, f/5.6
 * 1/1000, f/22 1/60. Taken as exact thirds it is equal to the last digit. */
static void
test_equal_exposures (void **state)
{
  static const struct {
    const char *aperture, *shutter;
  } row[] = {
    { "16", "1/125" }, { "11", "1/250" }, { "8", "1/500" }, { "5.6", "1/1000" }, { "22", "1/60" }
  };

  for (guint i = 0; i < G_N_ELEMENTS (row); i++)
    {
      g_autoptr (GError) error = NULL;
      double written, f_number, seconds;

      ff_aperture_parse ("aperture", row[i].aperture, &written, &f_number, &error);
      assert_no_error (error);
      ff_shutter_parse ("shutter", row[i].shutter, TRUE, &seconds, &error);
      assert_no_error (error);
      assert_close (ff_exposure_ev100 (f_number, seconds, 100), 15, 1e-12);
      assert_close (ff_exposure_seconds_for (15, f_number, 100), seconds, 1e-12);
    }
}

/* Brown, table 10.6, 24 frames per second. */
static void
test_shutter_angles_at_24 (void **state)
{
  static const struct {
    double denominator, angle;
  } cases[] = { { 32, 270 }, { 48, 180 }, { 50, 172.8 }, { 60, 144 }, { 96, 90 }, { 120, 72 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      assert_close (ff_shutter_angle_deg (1 / cases[i].denominator, 24), cases[i].angle, 1e-9);
      assert_close (1 / ff_shutter_seconds (cases[i].angle, 24), cases[i].denominator, 1e-9);
    }
}

/* The same formula at other frame rates, computed in double precision from it. */
static void
test_shutter_angles_at_other_rates (void **state)
{
  static const struct {
    double fps, at_180, at_90, at_172_8;
  } cases[] = {
    { 24000.0 / 1001, 47.9520, 95.904, 49.950 },
    { 25, 50, 100, 52.083 },
    { 30000.0 / 1001, 59.9401, 119.880, 62.438 },
    { 30, 60, 120, 62.500 },
    { 48, 96, 192, 100 },
    { 50, 100, 200, 104.167 },
    { 60000.0 / 1001, 119.8801, 239.760, 124.875 },
    { 60, 120, 240, 125 },
    { 100, 200, 400, 208.333 },
    { 120000.0 / 1001, 239.7602, 479.520, 249.750 },
    { 120, 240, 480, 250 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      assert_close (1 / ff_shutter_seconds (180, cases[i].fps), cases[i].at_180, 1e-4);
      assert_close (1 / ff_shutter_seconds (90, cases[i].fps), cases[i].at_90, 1e-3);
      assert_close (1 / ff_shutter_seconds (172.8, cases[i].fps), cases[i].at_172_8, 1e-3);
    }
}

typedef struct {
  const char *label;
  double exact;
} Step;

static void
assert_steps (FfScale scale, const Step *steps, guint n, double relative)
{
  for (guint i = 0; i < n; i++)
    {
      int step = ff_scale_find (scale, steps[i].label);

      if (step < 0)
        fail_msg ("no step “%s”", steps[i].label);
      assert_string_equal (ff_scale_label (scale, (guint) step), steps[i].label);
      assert_close (ff_scale_exact (scale, (guint) step) / steps[i].exact, 1, relative);
    }
}

/* Exact N = 2^(k/6). Labels 2.8 to 8 as printed in the encyclopedia article "F-number", the others
 * from memory of lenses. US Army subcourse SS0508: "11 is a rounding of 11.313708". */
static void
test_aperture_series (void **state)
{
  static const Step steps[] = {
    { "1", 1.0000 },   { "1.1", 1.1225 },   { "1.2", 1.2599 }, { "1.4", 1.4142 }, { "1.6", 1.5874 },
    { "1.8", 1.7818 }, { "2", 2.0000 },     { "2.2", 2.2449 }, { "2.5", 2.5198 }, { "2.8", 2.8284 },
    { "3.2", 3.1748 }, { "3.5", 3.5636 },   { "4", 4.0000 },   { "4.5", 4.4898 }, { "5", 5.0397 },
    { "5.6", 5.6569 }, { "6.3", 6.3496 },   { "7.1", 7.1272 }, { "8", 8.0000 },   { "9", 8.9797 },
    { "10", 10.0794 }, { "11", 11.313708 }, { "13", 12.6992 }, { "14", 14.2544 }, { "16", 16.0000 },
    { "18", 17.9594 }, { "20", 20.1587 },   { "22", 22.6274 }, { "25", 25.3984 }, { "29", 28.5088 },
    { "32", 32.0000 },
  };

  assert_int_equal (ff_scale_size (FF_SCALE_APERTURE), G_N_ELEMENTS (steps));
  assert_steps (FF_SCALE_APERTURE, steps, G_N_ELEMENTS (steps), 5e-5);
}

/* Exact t = 2^(k/3) s; labels from memory of cameras, the pairs 1/15 and 1/16, 1/30 and 1/32, 1/60
 * and 1/64, 1/125 and 1/128, 30 s and 32 s seen in print. */
static void
test_shutter_series (void **state)
{
  static const Step steps[] = {
    { "30", 32 },
    { "25", 25.398 },
    { "20", 20.159 },
    { "15", 16 },
    { "13", 12.699 },
    { "10", 10.079 },
    { "6", 6.3496 },
    { "5", 5.0397 },
    { "0.3", 0.31498 },
    { "1/6", 1 / 6.3496 },
    { "1/8", 1 / 8.0 },
    { "1/10", 1 / 10.079 },
    { "1/13", 1 / 12.699 },
    { "1/15", 1 / 16.0 },
    { "1/20", 1 / 20.159 },
    { "1/25", 1 / 25.398 },
    { "1/30", 1 / 32.0 },
    { "1/40", 1 / 40.317 },
    { "1/50", 1 / 50.797 },
    { "1/60", 1 / 64.0 },
    { "1/80", 1 / 80.63 },
    { "1/100", 1 / 101.59 },
    { "1/125", 1 / 128.0 },
    { "1/160", 1 / 161.27 },
    { "1/200", 1 / 203.19 },
    { "1/250", 1 / 256.0 },
    { "1/320", 1 / 322.54 },
    { "1/400", 1 / 406.37 },
    { "1/500", 1 / 512.0 },
    { "1/640", 1 / 645.08 },
    { "1/800", 1 / 812.75 },
    { "1/1000", 1 / 1024.0 },
    { "1/1250", 1 / 1290.2 },
    { "1/1600", 1 / 1625.5 },
    { "1/2000", 1 / 2048.0 },
    { "1/3200", 1 / 3251.0 },
    { "1/4000", 1 / 4096.0 },
    { "1/8000", 1 / 8192.0 },
  };

  assert_steps (FF_SCALE_SHUTTER, steps, G_N_ELEMENTS (steps), 1e-4);
}

/* Exact S = 100 2^(k/3) beside the labels of ISO 5800 and ISO 12232: 320, 640, 1250, 2500 break the
 * doubling (D. Kerr, "Film speed: arithmetic and logarithmic"). */
static void
test_iso_series (void **state)
{
  static const Step steps[] = {
    { "50", 50 },      { "64", 63.00 },     { "80", 79.37 },   { "100", 100 },
    { "125", 125.99 }, { "160", 158.74 },   { "200", 200 },    { "250", 251.98 },
    { "320", 317.48 }, { "400", 400 },      { "500", 503.97 }, { "640", 634.96 },
    { "800", 800 },    { "1250", 1269.92 }, { "1600", 1600 },  { "3200", 3200 },
    { "6400", 6400 },  { "12800", 12800 },
  };

  assert_steps (FF_SCALE_ISO, steps, G_N_ELEMENTS (steps), 1e-4);
}

/* ANSI PH2.7-1973 and PH2.7-1986 as reprinted (table of lighting conditions, EV at ISO 100). */
static void
test_conditions (void **state)
{
  static const struct {
    const char *name;
    double low, high;
  } cases[] = {
    { "snow-sun", 16, 16 },
    { "full-sun", 15, 15 },
    { "hazy-sun", 14, 14 },
    { "cloudy-bright", 13, 13 },
    { "heavy-overcast", 12, 12 },
    { "open-shade", 12, 12 },
    { "rainbow-clear", 15, 15 },
    { "rainbow-cloudy", 14, 14 },
    { "before-sunset", 12, 14 },
    { "at-sunset", 12, 12 },
    { "after-sunset", 9, 11 },
    { "moon-full", 15, 15 },
    { "moon-gibbous", 14, 14 },
    { "moon-quarter", 13, 13 },
    { "moon-crescent", 12, 12 },
    { "moonlit-full", -3, -2 },
    { "moonlit-gibbous", -4, -4 },
    { "moonlit-quarter", -6, -6 },
    { "aurora-bright", -4, -3 },
    { "aurora-medium", -6, -5 },
    { "neon-signs", 9, 10 },
    { "night-sports", 9, 9 },
    { "fires", 9, 9 },
    { "bright-street", 8, 8 },
    { "night-street", 7, 8 },
    { "fairs", 7, 7 },
    { "night-traffic", 5, 5 },
    { "tree-lights", 4, 5 },
    { "floodlit", 3, 5 },
    { "distant-lights", 2, 2 },
    { "galleries", 8, 11 },
    { "stage-shows", 8, 9 },
    { "circus", 8, 8 },
    { "ice-show", 9, 9 },
    { "office", 7, 8 },
    { "home", 5, 7 },
  };

  assert_int_equal (ff_conditions_count (), G_N_ELEMENTS (cases));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      const FfCondition *condition = ff_condition_find (cases[i].name, &error);

      assert_no_error (error);
      assert_close (condition->low_ev100, cases[i].low, 0);
      assert_close (condition->high_ev100, cases[i].high, 0);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_gnu_units),
    cmocka_unit_test (test_luminance_and_illuminance),
    cmocka_unit_test (test_ev_of_lux),
    cmocka_unit_test (test_ev_of_luminance),
    cmocka_unit_test (test_ev_of_ies_noons),
    cmocka_unit_test (test_sv),
    cmocka_unit_test (test_written_numbers_are_not_whole_stops),
    cmocka_unit_test (test_f16_rule),
    cmocka_unit_test (test_equal_exposures),
    cmocka_unit_test (test_shutter_angles_at_24),
    cmocka_unit_test (test_shutter_angles_at_other_rates),
    cmocka_unit_test (test_aperture_series),
    cmocka_unit_test (test_shutter_series),
    cmocka_unit_test (test_iso_series),
    cmocka_unit_test (test_conditions),
  };

  return cmocka_run_group_tests_name ("published exposure", tests, NULL, NULL);
}
