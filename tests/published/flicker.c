/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Flicker-free shutters under 50 and 60 Hz. Source: cinematographers' answers and tables of safe
 * frame rates and angles (for 60 Hz the rates 120, 60, 40, 30, 24, 20, 15, 12, 10, 8, 6; for 25
 * frames under 60 Hz the angles 75, 150, 225, 300); the other angles are computed from
 * t = n / (2 mains). */
#include "ff-test.h"

#include <math.h>

#include "ff-exposure.h"
#include "ff-flicker.h"

#define NTSC(fps) ((fps) *1000.0 / 1001.0)

static void
test_angles (void **state)
{
  static const struct {
    double mains, fps;
    double angles[6]; /* up to the first 0 */
  } cases[] = {
    { 50, NTSC (24), { 86.31, 172.63, 258.94, 345.25 } },
    { 60, NTSC (24), { 71.93, 143.86, 215.78, 287.71, 359.64 } },
    { 50, 24, { 86.4, 172.8, 259.2, 345.6 } },
    { 60, 24, { 72, 144, 216, 288, 360 } },
    { 50, 25, { 90, 180, 270, 360 } },
    { 60, 25, { 75, 150, 225, 300 } },
    { 50, NTSC (30), { 107.89, 215.78, 323.68 } },
    { 60, NTSC (30), { 89.91, 179.82, 269.73, 359.64 } },
    { 50, 30, { 108, 216, 324 } },
    { 60, 30, { 90, 180, 270, 360 } },
    { 50, 50, { 180, 360 } },
    { 60, 50, { 150, 300 } },
    { 50, 60, { 216 } },
    { 60, 60, { 180, 360 } },
    { 50, 100, { 360 } },
    { 60, 120, { 360 } },
    { 50, 120, { 0 } },
    { 60, 240, { 0 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const guint count = ff_flicker_count (cases[i].mains, cases[i].fps);

      for (guint n = 1; n <= count; n++)
        {
          const double seconds = ff_flicker_shutter_s (cases[i].mains, n);

          assert_in_range (n, 1, G_N_ELEMENTS (cases[i].angles));
          assert_close (ff_shutter_angle_deg (seconds, cases[i].fps), cases[i].angles[n - 1],
                        0.005);
        }
      assert_close (cases[i].angles[count], 0, 0);
    }
}

/* 50 Hz: 1/100, 1/50, 1/33.3, 1/25; 60 Hz: 1/120, 1/60, 1/40, 1/30. */
static void
test_shutters (void **state)
{
  static const double at_50[] = { 100, 50, 33.333, 25 }, at_60[] = { 120, 60, 40, 30 };

  for (guint n = 1; n <= 4; n++)
    {
      assert_close (1 / ff_flicker_shutter_s (50, n), at_50[n - 1], 5e-4);
      assert_close (1 / ff_flicker_shutter_s (60, n), at_60[n - 1], 5e-4);
    }
}

static void
test_safe_frame_rates (void **state)
{
  static const double safe_60[] = { 120, 60, 40, 30, 24, 20, 15, 12, 10, 8, 6 };
  static const double safe_50[] = { 100, 50, 25, 20, 10 };
  static const double unsafe_60[] = { 25, 50, 48, NTSC (24), NTSC (30), 240 };

  for (guint i = 0; i < G_N_ELEMENTS (safe_60); i++)
    assert_true (ff_flicker_any_angle (60, safe_60[i]));
  for (guint i = 0; i < G_N_ELEMENTS (safe_50); i++)
    assert_true (ff_flicker_any_angle (50, safe_50[i]));
  for (guint i = 0; i < G_N_ELEMENTS (unsafe_60); i++)
    assert_false (ff_flicker_any_angle (60, unsafe_60[i]));
  assert_false (ff_flicker_any_angle (50, 24));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_angles),
    cmocka_unit_test (test_shutters),
    cmocka_unit_test (test_safe_frame_rates),
  };

  return cmocka_run_group_tests_name ("published flicker", tests, NULL, NULL);
}
