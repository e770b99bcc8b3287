/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A filter measured with two pictures: tones made by hand, then pictures made here, whose true
 * strength is known because the light is. */
#include "ff-test.h"

#include <math.h>

#include "ff-error.h"
#include "ff-frame-filter.h"
#include "ff-test-picture.h"
#include "ff-tone.h"

#define ROUNDS 2000

static char *folder;

/* Tones of a scene whose mean is this many times 18 per cent. */
static FfTones
tones_of (double times, double skew)
{
  double mean = FF_TONE_GREY * times;

  return (FfTones) { .mean = mean, .median = mean / exp2 (skew), .middle_stops = log2 (times) };
}

static FfFilterPicture
picture_of (double times, double seconds)
{
  return (FfFilterPicture) { tones_of (times, 0.3), exp2 (1.5), seconds, 100 };
}

/* The same exposure after k stops more of time is a filter of k stops, whatever k. */
static void
test_time_makes_up_for_it (void **state)
{
  FfTestRandom dice = { 21 };

  for (int i = 0; i < ROUNDS; i++)
    {
      g_autoptr (GError) error = NULL;
      double stops = ff_test_random (&dice, 0, 10), off = ff_test_random (&dice, -0.9, 0.9);
      FfFilterPicture bare = picture_of (1, 1.0 / 2000);
      FfFilterPicture fitted = picture_of (exp2 (off), exp2 (stops + off) / 2000);
      FfFilterTest test;

      assert_true (ff_filter_test (&bare, &fitted, &test, &error));
      assert_close (test.stops, stops, 1e-9);
      assert_true (test.spread_stops >= 0.1 && test.spread_stops < 0.35);
    }
}

/* Two pictures that are exposed alike say it more surely. */
static void
test_exposed_alike_is_surer (void **state)
{
  g_autoptr (GError) error = NULL;
  FfFilterPicture bare = picture_of (1, 1.0 / 2000), alike = picture_of (1, 1.0 / 250);
  FfFilterPicture darker = picture_of (0.5, 1.0 / 500);
  FfFilterTest sure, unsure;

  assert_true (ff_filter_test (&bare, &alike, &sure, &error));
  assert_true (ff_filter_test (&bare, &darker, &unsure, &error));
  assert_close (sure.stops, 3, 1e-9);
  assert_close (unsure.stops, 3, 1e-9);
  assert_true (sure.spread_stops < unsure.spread_stops);
}

static void
refused (FfFilterPicture without, FfFilterPicture with, const char *part)
{
  g_autoptr (GError) error = NULL;
  FfFilterTest test;

  assert_false (ff_filter_test (&without, &with, &test, &error));
  assert_error (error, FF_ERROR_INPUT, part);
}

static void
test_what_is_refused (void **state)
{
  FfFilterPicture bare = picture_of (1, 1.0 / 2000), fitted = picture_of (1, 1.0 / 250);
  FfFilterPicture other = fitted, burnt = bare, black = fitted, blind = bare;

  other.tones = tones_of (1, 1.2);
  burnt.tones.clipped_high = 0.02;
  black.tones.clipped_low = 0.3;
  blind.iso = NAN;
  refused (bare, other, "same scene");
  refused (burnt, fitted, "without the filter has lost highlights");
  refused (bare, black, "with the filter has lost shadows");
  refused (blind, fitted, "without the filter does not say");
  refused (fitted, bare, "swapped");
  refused (picture_of (1, 1e-5), picture_of (1, 30), "more than any filter");
}

/* ---- Pictures ---- */

static char *
write_picture (const char *name, guint width, guint8 code, int per_second, const char *taken)
{
  const FfTestPicture picture = { width, 40, FF_TEST_SPLIT, .a = code, .b = (guint8) (code / 2),
                                  .share = 0.5 };
  const FfTestExif exif = { .aperture = { 28, 10 }, .shutter = { 1, per_second }, .iso = 100,
                            .taken = taken };
  char *path = g_build_filename (folder, name, NULL);

  ff_test_picture_write (path, FF_TEST_PNG, &picture);
  ff_test_exif_write (path, &exif);
  return path;
}

static void
compare (const char *without, const char *with, const char *refusal, double stops)
{
  g_autoptr (GError) error = NULL;
  FfFilterTest test;
  gboolean done = ff_frame_filter_test (without, with, &test, &error);

  if (refusal != NULL)
    {
      assert_false (done);
      assert_error (error, FF_ERROR_INPUT, refusal);
      return;
    }
  assert_no_error (error);
  assert_true (done);
  assert_close (test.stops, stops, 0.01);
}

/* A tone of sRGB code 118 at 1/2000 s and at 1/250 s is three stops; of code 90 at 1/250 s a stop
 * more or less by the sRGB curve (IEC 61966-2-1:1999). */
static void
test_pictures (void **state)
{
  g_autofree char *bare
      = write_picture ("bare.png", 60, 118, 2000, "2027:09:18 12:00:00");
  g_autofree char *fitted = write_picture ("fitted.png", 60, 118, 250, "2027:09:18 12:01:00");
  g_autofree char *small = write_picture ("small.png", 50, 118, 250, "2027:09:18 12:01:00");
  g_autofree char *late = write_picture ("late.png", 60, 118, 250, "2027:09:18 12:20:00");
  g_autofree char *dark = write_picture ("dark.png", 60, 90, 250, "2027:09:18 12:01:00");
  g_autofree char *none = g_build_filename (folder, "none.png", NULL);
  double darker = log2 ((ff_tone_srgb_light (118 / 255.0) + ff_tone_srgb_light (59 / 255.0))
                        / (ff_tone_srgb_light (90 / 255.0) + ff_tone_srgb_light (45 / 255.0)));

  compare (bare, fitted, NULL, 3);
  compare (bare, dark, NULL, 3 + darker);
  compare (bare, small, "different size", 0);
  compare (bare, late, "10 minutes apart", 0);
  compare (bare, none, "none.png", 0);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  return 0;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_time_makes_up_for_it),
    cmocka_unit_test (test_exposed_alike_is_surer),
    cmocka_unit_test (test_what_is_refused),
    cmocka_unit_test (test_pictures),
  };

  return cmocka_run_group_tests_name ("filter-test", tests, set_up, tear_down);
}
