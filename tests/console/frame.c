/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `frame` as a script sees it, on pictures made here. */
#include "ff-console-run.h"

#include <math.h>
#include <string.h>

#include "ff-test-picture.h"

static char *folder;

static char *
line_for (const char *name, const char *options)
{
  return g_strdup_printf ("frame %s/%s %s", folder, name, options);
}

static void
write_grey (const char *name, FfTestFormat format, guint8 code, const FfTestExif *exif)
{
  const FfTestPicture picture = { 120, 80, FF_TEST_FLAT, .a = code };
  g_autofree char *path = g_build_filename (folder, name, NULL);

  ff_test_picture_write (path, format, &picture);
  if (exif != NULL)
    ff_test_exif_write (path, exif);
}

static const FfTestExif sunny = {
  .aperture = { 16, 1 },
  .shutter = { 1, 100 },
  .iso = 100,
  .taken = "2027:09:18 17:40:12",
};

/* Grey at f/16, 1/100 s, ISO 100 is EV 14.644 (data file of GNU units); two stops of filter hide
 * two more. */
static void
test_keys (void **state)
{
  g_autofree char *line = NULL, *bare_line = NULL;

  write_grey ("grey.jpg", FF_TEST_JPEG, 118, &sunny);
  line = line_for ("grey.jpg", "--nd 2 --tz Europe/London");
  bare_line = line_for ("grey.jpg", "");
  {
    g_autoptr (FfRun) run = ff_run_json (line, 0);
    g_autoptr (FfRun) bare = ff_run_json (bare_line, 0);

    assert_close (ff_run_number (run, "aperture"), 16, 1e-12);
    assert_close (ff_run_number (run, "shutter_s"), 0.01, 1e-12);
    assert_close (ff_run_number (run, "iso"), 100, 0);
    assert_string_equal (ff_run_text (run, "taken_at"), "2027-09-18T17:40:12+01:00");
    assert_string_equal (ff_run_text (bare, "taken_at"), "2027-09-18T17:40:12+00:00");
    assert_close (ff_run_number (run, "histogram.clipped_low"), 0, 0);
    assert_close (ff_run_number (run, "histogram.clipped_high"), 0, 0);
    assert_close (ff_run_number (run, "histogram.middle_stops"), 0.009, 0.001);
    assert_close (ff_run_number (run, "ev100"), 16.644, 0.011);
    assert_close (ff_run_number (bare, "ev100"), 14.644, 0.011);
    assert_close (ff_run_number (run, "error_stops"), 0.009, 0.001);
    assert_true (ff_run_number (run, "spread_stops") > 0.2);
    assert_string_equal (ff_run_text (run, "advice"), "The middle is right: keep these settings.");
  }
}

static void
test_no_settings (void **state)
{
  g_autofree char *line = NULL;

  write_grey ("bare.png", FF_TEST_PNG, 88, NULL);
  line = line_for ("bare.png", "");
  {
    g_autoptr (FfRun) run = ff_run_json (line, 0);

    assert_true (ff_run_is_null (run, "aperture"));
    assert_true (ff_run_is_null (run, "shutter_s"));
    assert_true (ff_run_is_null (run, "iso"));
    assert_true (ff_run_is_null (run, "taken_at"));
    assert_true (ff_run_is_null (run, "ev100"));
    assert_close (ff_run_number (run, "histogram.middle_stops"), -0.883, 0.001);
    assert_string_equal (ff_run_text (run, "advice"), "One stop under: open up 1 stop.");
  }
  ff_run_reads_well (line);
}

static void
test_raw (void **state)
{
  g_autofree char *line = NULL;

  write_grey ("raw.dng", FF_TEST_DNG, 118, &sunny);
  line = line_for ("raw.dng", "");
  {
    g_autoptr (FfRun) run = ff_run_json (line, 0);

    assert_close (ff_run_number (run, "ev100"), 14.644, 0.011);
    assert_true (json_object_get_boolean_member (run->json, "is_preview"));
  }
  ff_run_reads_well (line);
}

static void
test_refusals (void **state)
{
  static const struct {
    const char *name, *options, *part;
  } cases[] = {
    { "missing.jpg", "", "missing.jpg: No such file" },
    { "grey.jpg", "--nd -1", "--nd" },
    { "grey.jpg", "--tz Nowhere/Land", "--tz" },
    { "grey.jpg", "second.jpg", "second.jpg" },
    { "text.jpg", "", "accepted: JPEG, PNG, TIFF or DNG" },
    { "", "", "not a file" },
  };
  g_autofree char *text = g_build_filename (folder, "text.jpg", NULL);

  assert_true (g_file_set_contents (text, "Meet at the slipway at three.\n", -1, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *line = line_for (cases[i].name, cases[i].options);

      ff_run_refused (line, cases[i].part);
    }
  ff_run_refused ("frame", "FILE");
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
    cmocka_unit_test (test_keys),
    cmocka_unit_test (test_no_settings),
    cmocka_unit_test (test_raw),
    cmocka_unit_test (test_refusals),
  };

  return cmocka_run_group_tests_name ("console frame", tests, set_up, tear_down);
}
