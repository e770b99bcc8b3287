/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ground sample distance, blur, overlap and panning against published worked examples. Sources,
 * named again at each case: Aber, Marzolff and Ries, "Small-Format Aerial Photography"; US Navy,
 * NAVEDTRA 14208; H. E. Ives, "Airplane Photography" (1920), chapter on mapping; a volume of a
 * congress of photogrammetry digitised by TIB (viewer 1662434278, page 126); Penn State, GEOG 892,
 * "Designing a Flight Route". What has no source is computed from the stated formula. */
#include "ff-test.h"

#include <math.h>

#include "ff-motion.h"

#define FOOT 0.3048
#define INCH 25.4 /* mm */
#define MILE 1609.344

/* Aber et al.: sensor 22.2 x 14.8 mm, lens of 20 mm, 120 m of ground on the short side: scale
 * 1:8108 from 162.16 m, long side 180 m, ground pixel 5.2 cm (6.4 um, computed 5.19). */
static void
test_small_format (void **state)
{
  const double height = 120 / ff_motion_footprint_m (1, 20, 14.8);

  assert_close (height, 162.16, 0.005);
  assert_close (height / 0.020, 8108, 0.5);
  assert_close (ff_motion_footprint_m (height, 20, 22.2), 180, 1e-9);
  assert_close (ff_motion_gsd_m (height, 20, 6.4), 0.052, 0.0005);
  assert_close (ff_motion_gsd_m (height, 20, 6.4), 0.0519, 0.00005);
}

/* NAVEDTRA 14208: 10 in lens from 5000 ft is 1:6000; 9000 ft of coverage with 40 per cent sidelap
 * leaves 5400 ft between lines; a line of 64 800 in at 1:20 000 is 3.24 in on the print; time
 * between pictures is ground gained by ground speed, 125 kt being 212.5 ft/s with the handbook's
 * 1.7, 210.98 exactly. */
static void
test_navy (void **state)
{
  const double scale = ff_motion_gsd_m (5000 * FOOT, 10 * INCH, 1) / 1e-6;
  const double knots_125 = 125 * 1852 / 3600.0 / FOOT;
  const double at_20000 = ff_motion_gsd_m (2000, 100, 1) / 1e-6;

  assert_close (scale, 6000, 1e-9);
  assert_close (ff_motion_base_m (9000, 0.40), 5400, 1e-9);
  assert_close (64800 / at_20000, 3.24, 1e-12);
  assert_close (5400 / ff_motion_interval_s (5400, knots_125), 210.98, 0.005);
  assert_close (ff_motion_interval_s (5400, 212.5), ff_motion_interval_s (5400, knots_125), 0.2);
  assert_close (ff_motion_footprint_m (5000 * FOOT, 10 * INCH, 9 * INCH) / FOOT, 4500, 1e-9);
}

/* Ives: from 2000 m, plate of 18 cm, lens of 50 cm, a fifth of overlap, 200 km/h: 10.3 s (computed
 * 10.368). */
static void
test_airplane_photography (void **state)
{
  const double footprint = ff_motion_footprint_m (2000, 500, 180);
  const double interval = ff_motion_interval_s (ff_motion_base_m (footprint, 0.2), 200 / 3.6);

  assert_close (interval, 10.368, 1e-9);
  assert_close (interval, 10.3, 0.1);
}

/* TIB congress volume: the picture of a scale 1:15 840 at 125 mph runs 3527.8 um/s; with 20 lines
 * a millimetre 300/R and 400/R um are tolerable: printed 1/240 and 1/180 s, exactly 1/235.2 and
 * 1/176.4. One pixel of 1 um stands for a micrometre of the plate. */
static void
test_image_speed (void **state)
{
  const double rate = ff_motion_travel_rate (125 * MILE / 3600, 15840e-6);

  assert_close (rate, 3527.8, 0.05);
  assert_close (1 / ff_motion_longest_s (300.0 / 20, rate), 235.2, 0.05);
  assert_close (1 / ff_motion_longest_s (400.0 / 20, rate), 176.4, 0.05);
  assert_close (1 / ff_motion_longest_s (300.0 / 20, rate), 240, 0.025 * 240);
  assert_close (1 / ff_motion_longest_s (400.0 / 20, rate), 180, 0.025 * 180);
}

/* Smear was historically kept to 25 um (abstract, Journal of Sepehr): on the plate above that is
 * 1/141 s. */
static void
test_smear (void **state)
{
  const double rate = ff_motion_travel_rate (125 * MILE / 3600, 15840e-6);

  assert_close (ff_motion_blur_px (rate, 1 / 141.1), 25, 0.01);
}

static void
test_blur (void **state)
{
  static const struct {
    double speed, denominator, gsd, px;
  } cases[] = {
    { 5, 1000, 0.01, 0.500 },  { 10, 500, 0.02, 1.000 }, { 15, 1000, 0.0274, 0.547 },
    { 20, 2000, 0.03, 0.333 }, { 8, 60, 0.02, 6.667 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double rate = ff_motion_travel_rate (cases[i].speed, cases[i].gsd);
      const double px = ff_motion_blur_px (rate, 1 / cases[i].denominator);

      assert_close (px, cases[i].px, 5e-4);
      assert_close (ff_motion_longest_s (px, rate), 1 / cases[i].denominator, 1e-12);
    }
  assert_true (isinf (ff_motion_longest_s (1, 0)));
}

/* 10 degrees a second, 1/50 s, 24 mm lens, 6000 pixels over 36 mm. */
static void
test_yaw (void **state)
{
  assert_close (ff_motion_blur_px (ff_motion_yaw_rate (10, 24, 36000.0 / 6000), 0.02), 13.963,
                5e-4);
}

static void
test_interval (void **state)
{
  static const struct {
    double height, focal, extent, overlap, speed, footprint, base, interval;
  } cases[] = {
    { 100, 8.8, 8.8, 0.80, 5, 100, 20, 4 },
    { 120, 24, 24, 0.75, 10, 120, 30, 3 },
    { 100, 35, 24, 0.70, 8, 68.571, 20.571, 2.571 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double footprint
          = ff_motion_footprint_m (cases[i].height, cases[i].focal, cases[i].extent);
      const double base = ff_motion_base_m (footprint, cases[i].overlap);

      assert_close (footprint, cases[i].footprint, 5e-4);
      assert_close (base, cases[i].base, 5e-4);
      assert_close (ff_motion_interval_s (base, cases[i].speed), cases[i].interval, 5e-4);
    }
  assert_true (isinf (ff_motion_interval_s (20, 0)));
}

static void
test_gsd (void **state)
{
  assert_close (ff_motion_gsd_m (100, 8.8, 2.41), 0.027386, 5e-7);
  assert_close (ff_motion_gsd_m (100, 35, 36000.0 / 6000), 0.017143, 5e-7);
}

/* A full picture width in seven seconds (an article of a camera maker on panning speed, 24 frames,
 * 180 degrees); the rates are computed for a sensor 36 mm wide. */
static void
test_panning (void **state)
{
  static const struct {
    double focal, field, rate;
  } cases[] = {
    { 24, 73.74, 10.53 },
    { 35, 54.43, 7.78 },
    { 50, 39.60, 5.66 },
    { 85, 23.91, 3.42 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double field = ff_motion_field_deg (36, cases[i].focal);

      assert_close (field, cases[i].field, 0.005);
      assert_close (field / FF_MOTION_PAN_S, cases[i].rate, 0.005);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_small_format),
    cmocka_unit_test (test_navy),
    cmocka_unit_test (test_airplane_photography),
    cmocka_unit_test (test_image_speed),
    cmocka_unit_test (test_smear),
    cmocka_unit_test (test_blur),
    cmocka_unit_test (test_yaw),
    cmocka_unit_test (test_interval),
    cmocka_unit_test (test_gsd),
    cmocka_unit_test (test_panning),
  };

  return cmocka_run_group_tests_name ("published motion", tests, NULL, NULL);
}
