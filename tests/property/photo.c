/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of the photographic kernels whatever the numbers: 10 000 seeded cases each. */
#include "ff-test.h"

#include <math.h>

#include "ff-balance.h"
#include "ff-depth.h"
#include "ff-exposure.h"
#include "ff-flicker.h"
#include "ff-media.h"
#include "ff-meter.h"
#include "ff-motion.h"
#include "ff-tone.h"

#define CASES 10000

static FfTestRandom seed = { 20270918 };

static double
number (double low, double high)
{
  return ff_test_random (&seed, low, high);
}

/* What is in focus is sharp; stopping down never takes sharpness away; the circle at the two limits
 * is the one that was asked for (similar triangles behind the lens). */
static void
test_depth (void **state)
{
  for (int i = 0; i < CASES; i++)
    {
      const double focal = number (3, 300), f_number = number (1, 22), coc = number (2, 50);
      const double distance = number (focal * 1.1e-3, 200), f = focal * 1e-3;
      const double h = ff_depth_hyperfocal_m (focal, f_number, coc);
      const double stopped = ff_depth_hyperfocal_m (focal, f_number * 1.1, coc);
      const double near = ff_depth_near_m (distance, focal, h);
      const double far = ff_depth_far_m (distance, focal, h);
      const double pupil = f / f_number, image = distance * f / (distance - f);
      const double image_near = near * f / (near - f);

      assert_true (near <= distance && distance <= far);
      assert_true (ff_depth_near_m (distance, focal, stopped) <= near);
      assert_true (ff_depth_far_m (distance, focal, stopped) >= far);
      assert_close (pupil * (image_near - image) / image_near, coc * 1e-6, coc * 1e-9);
      if (isfinite (far))
        assert_close (pupil * (image - far * f / (far - f)) / (far * f / (far - f)), coc * 1e-6,
                      coc * 1e-9);
    }
}

/* The longest shutter blurs exactly the limit; a footprint holds its pixels. */
static void
test_motion (void **state)
{
  for (int i = 0; i < CASES; i++)
    {
      const double height = number (1, 500), focal = number (3, 200), pitch = number (1, 10);
      const double limit = number (0.1, 20), gsd = ff_motion_gsd_m (height, focal, pitch);
      const double rate = i % 2 == 0 ? ff_motion_travel_rate (number (0.1, 30), gsd)
                                     : ff_motion_yaw_rate (number (0.1, 90), focal, pitch);
      const int pixels = ff_test_random_int (&seed, 1, 10000);
      const double extent = pixels * pitch * 1e-3;

      assert_close (ff_motion_blur_px (rate, ff_motion_longest_s (limit, rate)), limit, 1e-9);
      assert_close (ff_motion_footprint_m (height, focal, extent) / gsd, pixels, 1e-6);
      assert_true (ff_motion_field_deg (extent, focal) < 180);
    }
}

/* Each safe shutter holds whole pulses and fits into its frame; the next would not. */
static void
test_flicker (void **state)
{
  for (int i = 0; i < CASES; i++)
    {
      const double mains = i % 2 == 0 ? 50 : 60, fps = number (1, 240);
      const guint count = ff_flicker_count (mains, fps);

      assert_true (ff_flicker_shutter_s (mains, count + 1) > 1 / fps);
      if (count > 0)
        assert_true (ff_flicker_shutter_s (mains, count) <= (1 + 1e-8) / fps);
      for (guint n = 1; n <= count; n++)
        assert_close (remainder (ff_flicker_shutter_s (mains, n) * 2 * mains, 1), 0, 1e-9);
    }
}

static void
test_balance_and_media (void **state)
{
  for (int i = 0; i < CASES; i++)
    {
      const double a = number (2000, 15000), b = number (2000, 15000), c = number (2000, 15000);
      const double bitrate = number (1, 4000), capacity = number (1, 2000);
      const FfCardClass *found = ff_card_class_for (FF_CARD_VIDEO, ff_media_write_mbs (bitrate));

      assert_close (ff_balance_shift_mired (a, b) + ff_balance_shift_mired (b, c),
                    ff_balance_shift_mired (a, c), 1e-9);
      assert_true ((ff_balance_shift_mired (a, b) > 0) == (b < a));
      assert_close (ff_media_minutes (capacity, bitrate) / 60 * ff_media_gb_per_hour (bitrate),
                    capacity, 1e-9);
      assert_true (found == NULL ? bitrate > 720 : found->mbs * 8 >= bitrate);
    }
}

/* One scene photographed at any settings that hold it gives one light; each stop of exposure is a
 * stop of error. */
static void
test_meter_reads_the_scene (void **state)
{
  g_autofree FfLightTable *table = g_new (FfLightTable, 1);
  g_autofree FfHistogram *histogram = g_new (FfHistogram, 1);

  ff_light_table_fill (table, 16);
  for (int i = 0; i < CASES / 10; i++)
    {
      const double scene_ev100 = number (0, 16), error = number (-5, 2), nd = number (0, 6);
      const double level = scene_ev100 - nd - error;
      const double seconds = ff_exposure_seconds_for (level, 2.8, 100);
      const double light = FF_TONE_GREY * exp2 (error);
      const guint16 code = (guint16) lround (65535 * ff_tone_srgb_value (light));
      const guint16 row[] = { code, code, code, code, code, code };
      const FfMeterSettings settings = { 2.8, seconds, 100, 0, nd };
      FfMeterReading reading;
      FfTones tones;

      *histogram = (FfHistogram){ 0 };
      ff_histogram_add_16 (histogram, table, row, 2, 3);
      ff_histogram_measure (histogram, &tones);
      ff_meter_picture (&tones, &settings, &reading);
      assert_close (reading.ev100, scene_ev100, 0.002);
      assert_close (reading.error_stops, error, 0.002);
      assert_true (reading.spread_stops >= 1.0 / 3);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_depth),
    cmocka_unit_test (test_motion),
    cmocka_unit_test (test_flicker),
    cmocka_unit_test (test_balance_and_media),
    cmocka_unit_test (test_meter_reads_the_scene),
  };

  return cmocka_run_group_tests_name ("property photo", tests, NULL, NULL);
}
