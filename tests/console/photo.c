/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The photographic commands as a script sees them: keys, units, statuses, refusals. The values are
 * those of tests/published/, which names their sources. */
#include "ff-console-run.h"

#include <math.h>
#include <string.h>

static void
test_bracket (void **state)
{
  g_autoptr (FfRun) run = ff_run_json ("bracket --range 16 --camera-range 12 --base 1/200", 0);
  g_autoptr (FfRun) even
      = ff_run_json ("bracket --range 20 --camera-range 12 --step 3 --base 0.5", 0);
  JsonArray *times = ff_run_array (run, "exposures_s");

  assert_close (ff_run_number (run, "frames"), 3, 0);
  assert_close (ff_run_number (run, "step_stops"), 2, 0);
  assert_int_equal (json_array_get_length (times), 3);
  assert_close (json_array_get_double_element (times, 0), 1 / 800.0, 1e-12);
  assert_close (json_array_get_double_element (times, 1), 1 / 200.0, 1e-12);
  assert_close (json_array_get_double_element (times, 2), 1 / 50.0, 1e-12);
  assert_close (ff_run_number (even, "frames"), 4, 0);
  assert_close (ff_run_number (even, "camera_frames"), 5, 0);
}

static void
test_motion (void **state)
{
  g_autoptr (FfRun) travel = ff_run_json ("motion --height 100 --focal 8.8 --pitch 2.41 --speed 15"
                                          " --shutter 1/1000 --max-blur 0.5",
                                          0);
  g_autoptr (FfRun) overlap = ff_run_json ("motion --height 120 --focal 24 --pitch 6 --speed 10"
                                           " --shutter 1/1000 --pixels 4000 --overlap 0.75",
                                           0);
  g_autoptr (FfRun) yaw
      = ff_run_json ("motion --height 50 --focal 24 --pitch 6 --yaw 10 --shutter 1/50", 0);
  g_autoptr (FfRun) still = ff_run_json (
      "motion --height 50 --focal 24 --pitch 6 --speed 0 --shutter 1/50 --max-blur 1", 0);

  assert_close (ff_run_number (travel, "gsd_m"), 0.027386, 5e-7);
  assert_close (ff_run_number (travel, "blur_px"), 0.5477, 5e-5);
  assert_close (ff_run_number (travel, "longest_shutter_s"), 0.5 * 0.0273864 / 15, 1e-8);
  assert_true (ff_run_is_null (travel, "interval_s"));
  assert_close (ff_run_number (overlap, "interval_s"), 3, 1e-9);
  assert_true (ff_run_is_null (overlap, "longest_shutter_s"));
  assert_close (ff_run_number (yaw, "blur_px"), 13.963, 5e-4);
  assert_close (ff_run_number (still, "blur_px"), 0, 0);
  assert_true (ff_run_is_null (still, "longest_shutter_s"));
}

static void
test_depth (void **state)
{
  g_autoptr (FfRun) near = ff_run_json ("depth --focal 24 --aperture 8 --coc 30 --distance 2", 0);
  g_autoptr (FfRun) far
      = ff_run_json ("depth --focal 24 --aperture 5.6 --coc 30 --distance 10 --pitch 3", 0);

  assert_close (ff_run_number (near, "hyperfocal_m"), 2.4240, 1e-4);
  assert_close (ff_run_number (near, "near_m"), 1.0969, 1e-4);
  assert_close (ff_run_number (near, "far_m"), 11.3208, 1e-4);
  assert_close (ff_run_number (near, "airy_disk_um"), 10.736, 5e-4);
  assert_close (ff_run_number (far, "hyperfocal_m"), 3.4526, 1e-4); /* f/5.6 as written */
  assert_true (ff_run_is_null (far, "far_m"));
  assert_close (ff_run_number (far, "airy_disk_px"), 7.515 / 3, 5e-4);
}

static void
test_media (void **state)
{
  g_autoptr (FfRun) run = ff_run_json ("media --bitrate 100 --capacity 128", 0);
  g_autoptr (FfRun) fast = ff_run_json ("media --bitrate 800 --capacity 512", 0);

  assert_close (ff_run_number (run, "minutes"), 170.667, 5e-4);
  assert_close (ff_run_number (run, "write_mbs"), 12.5, 0);
  assert_string_equal (ff_run_text (run, "speed_class"), "V30");
  assert_true (ff_run_is_null (fast, "speed_class"));
}

static void
test_flicker (void **state)
{
  g_autoptr (FfRun) run = ff_run_json ("flicker --mains 50 --fps 24", 0);
  g_autoptr (FfRun) none = ff_run_json ("flicker --mains 60 --fps 240", 1);
  JsonArray *angles = ff_run_array (run, "angles_deg");
  JsonArray *shutters = ff_run_array (run, "shutters_s");

  assert_int_equal (json_array_get_length (angles), 4);
  assert_int_equal (json_array_get_length (shutters), 4);
  assert_close (json_array_get_double_element (angles, 1), 172.8, 1e-6);
  assert_close (json_array_get_double_element (shutters, 1), 0.02, 1e-12);
  assert_int_equal (json_array_get_length (ff_run_array (none, "angles_deg")), 0);
}

static void
test_balance (void **state)
{
  g_autoptr (FfRun) run = ff_run_json ("balance --from 3200 --to 5500", 0);
  g_autoptr (FfRun) list = ff_run_json ("balance --list", 0);

  assert_close (ff_run_number (run, "mired_from"), 312.5, 0);
  assert_close (ff_run_number (run, "mired_to"), 181.82, 0.005);
  assert_close (ff_run_number (run, "shift_mired"), -130.68, 0.005);
  assert_true (json_array_get_length (ff_run_array (list, "daylight")) > 10);
}

static void
test_battery (void **state)
{
  static const struct {
    const char *line;
    double wh;
    const char *carry;
  } cases[] = {
    { "battery --volts 14.8 --mah 4700", 69.56, "up_to_100" },
    { "battery --volts 22.2 --mah 7200", 159.84, "over_100_to_160" },
    { "battery --volts 22.2 --mah 7300", 162.06, "over_160" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FfRun) run = ff_run_json (cases[i].line, 0);

      assert_close (ff_run_number (run, "energy_wh"), cases[i].wh, 1e-9);
      assert_string_equal (ff_run_text (run, "carry"), cases[i].carry);
      assert_non_null (strstr (ff_run_text (run, "caution"), "carrier"));
    }
}

/* Options may stand before the command, and with an equals sign. */
static void
test_habits (void **state)
{
  g_autoptr (FfRun) run = ff_run ("--json --mains=60 flicker --fps=25");

  assert_int_equal (run->status, 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "angles_deg")), 4);
}

static void
test_refusals (void **state)
{
  static const struct {
    const char *line, *part;
  } cases[] = {
    { "bracket --camera-range 12 --base 1/200", "--range" },
    { "bracket --range 16 --camera-range 12", "--base" },
    { "bracket --range 16 --camera-range 12 --base never", "--base" },
    { "bracket --range 16 --camera-range 1 --base 1/50", "--step" },
    { "bracket --range 16 --camera-range 12 --base 1/200 --step 0", "--step" },
    { "bracket --range nan --camera-range 12 --base 1/200", "--range" },
    { "motion --height 100 --focal 24 --pitch 6 --shutter 1/50", "--yaw" },
    { "motion --height 100 --focal 24 --pitch 6 --shutter 1/50 --speed 1 --yaw 1", "--yaw" },
    { "motion --height 0 --focal 24 --pitch 6 --shutter 1/50 --speed 1", "--height" },
    { "motion --height 9 --focal 24 --pitch 6 --shutter 1/50 --speed 1 --overlap 0.5", "--pixels" },
    { "motion --height 9 --focal 24 --pitch 6 --shutter 1/50 --speed 1 --pixels 9 --overlap 1",
      "--overlap" },
    { "depth --focal 24 --aperture 8 --coc 30", "--distance" },
    { "depth --focal 24 --aperture 8 --coc 30 --distance 0.024", "focal length" },
    { "depth --focal 24 --aperture 0 --coc 30 --distance 2", "--aperture" },
    { "media --bitrate 100", "--capacity" },
    { "media --bitrate 1e999 --capacity 128", "--bitrate" },
    { "flicker --mains 55 --fps 25", "50 or 60" },
    { "flicker --mains 50 --fps 0", "--fps" },
    { "balance --from 3200", "--to" },
    { "balance --from 0 --to 5500", "--from" },
    { "balance --list --to 5500", "--list" },
    { "battery --volts 14.8", "--mah" },
    { "battery --volts -1 --mah 4700", "--volts" },
    { "battery stray --volts 14.8 --mah 4700", "stray" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    ff_run_refused (cases[i].line, cases[i].part);
}

static void
test_text_and_help (void **state)
{
  static const char *const lines[] = {
    "bracket --range 24 --camera-range 14 --base 1/200",
    "motion --height 60 --focal 11 --pitch 3 --speed 6 --shutter 1/9 --pixels 48 --overlap 0.7",
    "motion --height 60 --focal 11 --pitch 3 --yaw 9 --shutter 1/50 --pixels 4800",
    "depth --focal 11 --aperture 11 --coc 6 --distance 10 --pitch 3",
    "media --bitrate 2000 --capacity 128",
    "flicker --mains 60 --fps 24",
    "balance --from 3200 --to 5500",
    "balance --list",
    "battery --volts 14.8 --mah 4700",
  };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autofree char *name = g_strndup (lines[i], strcspn (lines[i], " "));
      g_autofree char *help_line = g_strconcat (name, " --help", NULL);
      g_autoptr (FfRun) help = ff_run (help_line);

      ff_run_reads_well (lines[i]);
      assert_int_equal (help->status, 0);
      assert_non_null (strstr (help->out, "Example:"));
    }
}

/* The seven steps, in order, with text, formula, source and values that add up. */
static void
test_advise_explains (void **state)
{
  static const char *const names[]
      = { "sun", "light", "level", "need", "filter", "left", "pays" };
  g_autoptr (FfRun) run
      = ff_run_json ("advise --ev100 13.6 --apertures 2.8 --iso 100:6400 --shutters 1/8000:8 "
                     "--intent video --fps 25 --filters ND8,ND16,ND32 --explain",
                     0);
  JsonArray *steps = ff_run_array (run, "explain");
  double stops[G_N_ELEMENTS (names)] = { 0 };

  assert_int_equal (json_array_get_length (steps), G_N_ELEMENTS (names));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      JsonObject *step = json_array_get_object_element (steps, i);
      JsonObject *values = json_object_get_object_member (step, "values");

      assert_string_equal (json_object_get_string_member (step, "step"), names[i]);
      assert_true (json_object_get_string_member (step, "text")[0] != '\0');
      assert_true (json_object_has_member (step, "formula"));
      assert_true (json_object_has_member (step, "source"));
      if (i == 4)
        stops[i] = json_object_get_double_member (values, "filter_stops");
      if (i == 3)
        stops[i] = json_object_get_double_member (values, "need_stops");
      if (i == 5)
        stops[i] = json_object_get_double_member (values, "left_stops");
    }
  assert_close (stops[3], 13.6 - log2 (8 * 50), 1e-6);
  assert_close (stops[3] - stops[4], stops[5], 1e-6);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_bracket),
    cmocka_unit_test (test_advise_explains),  cmocka_unit_test (test_motion),
    cmocka_unit_test (test_depth),    cmocka_unit_test (test_media),
    cmocka_unit_test (test_flicker),  cmocka_unit_test (test_balance),
    cmocka_unit_test (test_battery),  cmocka_unit_test (test_habits),
    cmocka_unit_test (test_refusals), cmocka_unit_test (test_text_and_help),
  };

  return cmocka_run_group_tests_name ("console photo", tests, NULL, NULL);
}
