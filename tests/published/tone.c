/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tone curves and speed against published values. Sources, named again at each case: IEC
 * 61966-2-1:1999 as implemented and tested by the library Colour (srgb.py: eotf_inverse (0.18) is
 * 0.461356129500442); ITU-R BT.709 (formula from memory); ISO 12232:2019 (constants 10 and 78 from
 * memory, confirmed by Lagarde and de Rousiers, SIGGRAPH 2014 course, where the brightest
 * luminance is 1.2 x 2^EV); encyclopedia article "Zebra patterning" (109 per cent is 120 per cent
 * reflectance). What has no source is computed. */
#include "ff-test.h"

#include <math.h>

#include "ff-exposure.h"
#include "ff-tone.h"

static void
test_srgb_grey (void **state)
{
  assert_close (ff_tone_srgb_value (FF_TONE_GREY), 0.461356129500442, 1e-15);
  assert_close (255 * ff_tone_srgb_value (FF_TONE_GREY), 117.646, 5e-4);
}

static void
test_codes_of_stops (void **state)
{
  static const struct {
    double stops, code;
  } cases[] = {
    { 0, 255.00 }, { -1, 187.52 }, { -2, 136.96 }, { -2.474, 117.65 }, { -2.974, 99.94 },
    { -3, 99.09 }, { -4, 70.71 },  { -5, 49.46 },  { -6, 33.53 },      { -7, 21.60 },
    { -8, 12.67 }, { -9, 6.43 },   { -10, 3.22 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_close (255 * ff_tone_srgb_value (exp2 (cases[i].stops)), cases[i].code, 0.011);
}

static void
test_stops_of_codes (void **state)
{
  static const struct {
    double code, light, of_clip, of_grey;
  } cases[] = {
    { 254, 0.991102, -0.013, 2.461 },  { 250, 0.955973, -0.065, 2.409 },
    { 240, 0.871367, -0.199, 2.275 },  { 220, 0.715694, -0.483, 1.991 },
    { 200, 0.577580, -0.792, 1.682 },  { 188, 0.502886, -0.992, 1.482 },
    { 128, 0.215861, -2.212, 0.262 },  { 118, 0.181164, -2.465, 0.009 },
    { 117, 0.177888, -2.491, -0.017 }, { 100, 0.127438, -2.972, -0.498 },
    { 64, 0.051269, -4.286, -1.812 },  { 32, 0.014444, -6.113, -3.639 },
    { 16, 0.005182, -7.592, -5.118 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double light = ff_tone_srgb_light (cases[i].code / 255);

      assert_close (light, cases[i].light, 5e-7);
      assert_close (ff_tone_stops_of_clip (light), cases[i].of_clip, 6e-4);
      assert_close (ff_tone_stops_of_grey (light), cases[i].of_grey, 6e-4);
    }
}

/* The two halves of each curve meet within the rounding of their printed constants, and going
 * there and back changes nothing. */
static void
test_there_and_back (void **state)
{
  FfTestRandom random = { 709 };

  for (int i = 0; i < 10000; i++)
    {
      const double light = ff_test_random (&random, 0, 1);

      assert_close (ff_tone_srgb_light (ff_tone_srgb_value (light)), light, 1e-7);
      assert_close (ff_tone_video_light (ff_tone_video_level (light)), light, 5e-5);
    }
  assert_close (ff_tone_srgb_value (0), 0, 0);
  assert_close (ff_tone_srgb_value (1), 1, 1e-15);
  assert_close (ff_tone_srgb_value (0.0031308), ff_tone_srgb_value (0.0031309), 2e-6);
  assert_close (ff_tone_video_level (0.0179999), ff_tone_video_level (0.018), 0.03);
}

static void
test_zebra_levels (void **state)
{
  assert_close (ff_tone_video_level (0.18), 40.9, 0.05);
  assert_close (ff_tone_video_level (0.90), 94.9, 0.05);
  assert_close (ff_tone_video_level (1), 100, 1e-12);
  assert_close (ff_tone_video_light (109), 1.191, 0.0011);
  assert_close (ff_tone_video_light (109), 1.20, 0.01); /* "Zebra patterning" */
}

static void
test_zebra_light (void **state)
{
  static const struct {
    double level, light, of_grey;
  } cases[] = {
    { 50, 0.2596, 0.53 }, { 60, 0.3658, 1.02 }, { 65, 0.4265, 1.24 },
    { 70, 0.4924, 1.45 }, { 75, 0.5635, 1.65 }, { 80, 0.6399, 1.83 },
    { 90, 0.8090, 2.17 }, { 95, 0.9017, 2.32 }, { 100, 1.0, 2.47 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double light = ff_tone_video_light (cases[i].level);

      assert_close (light, cases[i].light, 6e-5);
      assert_close (ff_tone_stops_of_grey (light), cases[i].of_grey, 0.006);
    }
  assert_close (ff_tone_stops_of_clip (ff_tone_video_light (70)), -1.02, 0.005);
}

/* ISO 12232: at ISO 100 the meter's mid-tone gets 0.1 lx s and the sensor is full at 0.78; the
 * ratio is 7.8, 2.963 stops, and the mid-tone at 12.82 per cent. */
static void
test_speed (void **state)
{
  assert_close (ff_tone_metered_lxs (100), 0.100, 1e-12);
  assert_close (ff_tone_saturation_lxs (100), 0.780, 1e-12);
  assert_close (log2 (ff_tone_saturation_lxs (100) / ff_tone_metered_lxs (100)), 2.963, 5e-4);
  assert_close (ff_tone_metered_lxs (400) / ff_tone_saturation_lxs (400), 0.1282, 5e-5);
}

/* Headroom of half a stop above a white of 100 per cent puts grey at 12.73 per cent, 2.974 stops
 * below the clip; without headroom it is 2.474. */
static void
test_headroom (void **state)
{
  assert_close (FF_TONE_GREY / sqrt (2), 0.127279, 5e-7);
  assert_close (ff_tone_stops_of_clip (FF_TONE_GREY / sqrt (2)), -2.974, 5e-4);
  assert_close (ff_tone_stops_of_clip (FF_TONE_GREY), -2.474, 5e-4);
}

/* The brightest luminance recorded, 78 / (100 x 0.65) = 1.2 times 2^EV with the lens factor 0.65 of
 * ISO 12232: 39 321.6 cd/m2 at EV 15. */
static void
test_brightest (void **state)
{
  assert_close (ff_tone_saturation_lxs (100) / 0.65 * exp2 (15), 39321.6, 1e-6);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_srgb_grey),      cmocka_unit_test (test_codes_of_stops),
    cmocka_unit_test (test_stops_of_codes), cmocka_unit_test (test_there_and_back),
    cmocka_unit_test (test_zebra_levels),   cmocka_unit_test (test_zebra_light),
    cmocka_unit_test (test_speed),          cmocka_unit_test (test_headroom),
    cmocka_unit_test (test_brightest),
  };

  return cmocka_run_group_tests_name ("published tone", tests, NULL, NULL);
}
