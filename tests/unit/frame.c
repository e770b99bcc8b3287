/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Test pictures of known light, of every format; and files that are broken, absurd or hostile. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-frame.h"
#include "ff-test-picture.h"
#include "ff-tone.h"

static char *folder;

static char *
path_of (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

/* Without waiting for the disk, which would take most of the time of these tests. */
static void
write_bytes (const char *path, const char *data, gsize length)
{
  g_autoptr (GError) error = NULL;

  g_file_set_contents_full (path, data, (gssize) length, G_FILE_SET_CONTENTS_NONE, 0600, &error);
  assert_no_error (error);
}

static FfFrame
read_frame (const char *path)
{
  g_autoptr (GError) error = NULL;
  FfFrame frame = { 0 };

  ff_frame_read (path, &frame, &error);
  assert_no_error (error);
  return frame;
}

/* Writes a picture and reads it. */
static FfFrame
frame_of (FfTestFormat format, const FfTestPicture *picture)
{
  g_autofree char *path = path_of ("picture");

  ff_test_picture_write (path, format, picture);
  return read_frame (path);
}

static double
stops_of_code (double code)
{
  return ff_tone_stops_of_grey (ff_tone_srgb_light (code / 255));
}

static void
test_grey_in_every_format (void **state)
{
  const FfTestPicture picture = { 150, 100, FF_TEST_FLAT, .a = 100 };

  for (int format = 0; format < FF_TEST_N_FORMATS; format++)
    {
      const FfFrame frame = frame_of ((FfTestFormat) format, &picture);

      if (fabs (frame.tones.middle_stops - stops_of_code (100)) > 0.001)
        fail_msg ("%s: %g stops", ff_test_format_name ((FfTestFormat) format),
                  frame.tones.middle_stops);
      assert_int_equal (frame.width, 150);
      assert_int_equal (frame.height, 100);
      assert_int_equal (frame.is_preview, format == FF_TEST_DNG);
      assert_close (frame.tones.clipped_low, 0, 0);
      assert_close (frame.tones.clipped_high, 0, 0);
      assert_true (isnan (frame.aperture) && isnan (frame.shutter_s) && isnan (frame.iso));
      assert_false (frame.has_taken);
    }
}

/* A tenth white, the rest dark grey: the mean is that of the light and not of the codes. */
static void
test_split_in_every_format (void **state)
{
  const FfTestPicture picture = { 96, 160, FF_TEST_SPLIT, .a = 255, .b = 64, .share = 0.1 };
  const double mean = 0.1 + 0.9 * ff_tone_srgb_light (64 / 255.0);

  for (int format = 0; format < FF_TEST_N_FORMATS; format++)
    {
      const FfFrame frame = frame_of ((FfTestFormat) format, &picture);

      assert_close (frame.tones.mean, mean, 0.001);
      assert_close (frame.tones.clipped_high, 0.1, 0.001);
      assert_close (frame.tones.median, ff_tone_srgb_light (64 / 255.0), 0.001);
    }
}

/* Every code equally often; the two codes at each end count as lost. */
static void
test_ramp (void **state)
{
  const FfTestPicture picture = { 512, 8, FF_TEST_RAMP };
  const FfFrame frame = frame_of (FF_TEST_PNG, &picture);
  double mean = 0;

  for (int code = 0; code < 256; code++)
    mean += ff_tone_srgb_light (code / 255.0) / 256;
  assert_close (frame.tones.mean, mean, 1e-6);
  assert_close (frame.tones.clipped_low, 2 / 256.0, 1e-9);
  assert_close (frame.tones.clipped_high, 2 / 256.0, 1e-9);
}

/* A colour at its end is a lost highlight though others are not there at all; it is no shadow. */
static void
test_one_colour_at_its_end (void **state)
{
  const FfTestPicture picture = { 64, 64, FF_TEST_RED, .a = 255 };
  const FfFrame frame = frame_of (FF_TEST_PNG, &picture);

  assert_close (frame.tones.mean, 0.2126, 1e-4);
  assert_close (frame.tones.clipped_high, 1, 0);
  assert_close (frame.tones.clipped_low, 0, 0);
}

static void
test_black_and_white (void **state)
{
  const FfTestPicture black = { 64, 64, FF_TEST_FLAT, .a = 0 };
  const FfTestPicture white = { 64, 64, FF_TEST_FLAT, .a = 255 };
  const FfFrame dark = frame_of (FF_TEST_JPEG, &black), bright = frame_of (FF_TEST_JPEG, &white);
  FfMeterReading reading;
  g_autofree char *dark_advice = NULL, *bright_advice = NULL;

  assert_true (isinf (dark.tones.middle_stops));
  ff_frame_meter (&dark, 0, &reading);
  dark_advice = ff_meter_advice (&dark.tones, &reading);
  assert_non_null (strstr (dark_advice, "shadows: open up"));
  assert_close (bright.tones.middle_stops, log2 (1 / 0.18), 1e-3);
  ff_frame_meter (&bright, 0, &reading);
  bright_advice = ff_meter_advice (&bright.tones, &reading);
  assert_non_null (strstr (bright_advice, "highlights: close down"));
  assert_true (reading.spread_stops >= 1);
}

/* Code 118 is 18 per cent grey within a hundredth of a stop, so that the scene is what the settings
 * expose right: f/2.8 is 2^1.5, 1/50 s, ISO 100. */
static void
test_settings_and_light (void **state)
{
  const FfTestPicture grey = { 64, 64, FF_TEST_FLAT, .a = 118 };
  const FfTestExif exif = {
    .aperture = { 28, 10 },
    .shutter = { 1, 50 },
    .bias = { 0, 3 },
    .iso = 100,
    .taken = "2027:09:18 17:40:12",
    .offset = "+01:00",
  };
  static const FfTestFormat formats[] = { FF_TEST_JPEG, FF_TEST_PNG, FF_TEST_TIFF, FF_TEST_DNG };
  g_autofree char *path = path_of ("grey");

  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autoptr (GError) error = NULL;
      FfMeterReading reading;
      gint64 instant;
      FfFrame frame;

      ff_test_picture_write (path, formats[i], &grey);
      ff_test_exif_write (path, &exif);
      frame = read_frame (path);
      assert_close (frame.aperture, 2.8, 1e-12);
      assert_close (frame.shutter_s, 0.02, 1e-12);
      assert_close (frame.iso, 100, 0);
      assert_close (frame.bias_stops, 0, 0);
      ff_frame_meter (&frame, 3, &reading);
      assert_close (reading.ev100, ff_exposure_ev100 (exp2 (1.5), 0.02, 100) + 3, 0.01);
      assert_close (reading.error_stops, 0.009, 0.001);
      assert_close (reading.spread_stops, 1 / 3.0, 0.001);
      assert_true (ff_frame_instant (&frame, NULL, &instant, &error));
      assert_int_equal (instant, 1821285612); /* 2027-09-18T16:40:12Z */
    }
}

/* Two stops under at what the meter said, of which one was asked for. */
static void
test_bias_is_no_error (void **state)
{
  const FfTestPicture dark = { 64, 64, FF_TEST_FLAT, .a = 61 }; /* two stops below 18 per cent */
  const FfTestExif exif
      = { .aperture = { 8, 1 }, .shutter = { 1, 250 }, .bias = { -1, 1 }, .iso = 200 };
  g_autofree char *path = path_of ("dark.jpg"), *advice = NULL;
  FfMeterReading reading;
  FfFrame frame;

  ff_test_picture_write (path, FF_TEST_JPEG, &dark);
  ff_test_exif_write (path, &exif);
  frame = read_frame (path);
  ff_frame_meter (&frame, 0, &reading);
  assert_close (reading.error_stops, stops_of_code (61) + 1, 1e-3);
  assert_close (reading.error_stops, -1, 0.06);
  assert_close (reading.ev100, ff_exposure_ev100 (8, 1 / 250.0, 200) + stops_of_code (61), 1e-3);
  advice = ff_meter_advice (&frame.tones, &reading);
  assert_string_equal (advice, "One stop under: open up 1 stop.");
}

static void
test_time (void **state)
{
  const FfTestPicture grey = { 16, 16, FF_TEST_FLAT, .a = 118 };
  FfTestExif exif = { .taken = "2027:09:18 17:40:12" };
  g_autoptr (GTimeZone) london = g_time_zone_new_identifier ("Europe/London");
  g_autoptr (GError) error = NULL;
  g_autofree char *path = path_of ("time.jpg");
  FfFrame frame;
  gint64 instant;

  ff_test_picture_write (path, FF_TEST_JPEG, &grey);
  ff_test_exif_write (path, &exif);
  frame = read_frame (path);
  assert_true (ff_frame_instant (&frame, london, &instant, &error));
  assert_int_equal (instant, 1821285612);
  assert_true (ff_frame_instant (&frame, NULL, &instant, &error));
  assert_int_equal (instant, 1821285612 + 3600);

  /* In 2027 London skips 01:00 to 02:00 on 28 March. */
  exif.taken = "2027:03:28 01:30:00";
  ff_test_exif_write (path, &exif);
  frame = read_frame (path);
  assert_false (ff_frame_instant (&frame, london, &instant, &error));
  g_clear_error (&error);

  exif.taken = "0000:00:00 00:00:00";
  ff_test_exif_write (path, &exif);
  frame = read_frame (path);
  assert_false (ff_frame_instant (&frame, london, &instant, &error));
  assert_error (error, FF_ERROR_INPUT, "when it was taken");
}

static void
test_advice (void **state)
{
  static const struct {
    double error, low, high;
    const char *advice;
  } cases[] = {
    { 0, 0, 0, "The middle is right: keep these settings." },
    { 0.1, 0.004, 0, "The middle is right: keep these settings." },
    { -0.65, 0.04, 0, "Two thirds of a stop under, 4 % lost in the shadows: open up 0.7 stop." },
    { 0.35, 0, 0, "A third of a stop over: close down 0.3 stop." },
    { 1, 0, 0.02, "One stop over, 2 % lost in the highlights: close down 1 stop." },
    { 1.7, 0, 0.2, "1.7 stops over, 20 % lost in the highlights: close down 1.7 stops." },
    { -1, 0, 0.02,
      "One stop under, 2 % lost in the highlights: bracket, opening up would lose more of the"
      " highlights." },
    { 1, 0.03, 0,
      "One stop over, 3 % lost in the shadows: bracket, closing down would lose more of the"
      " shadows." },
    { 0, 0.03, 0.02,
      "The middle is right, 3 % lost in the shadows and 2 % in the highlights: bracket, one picture"
      " can't hold both ends." },
    { 0, 0, 0.02,
      "The middle is right, 2 % lost in the highlights: bracket, or close down if the highlights"
      " matter." },
    { 0, 0.02, 0,
      "The middle is right, 2 % lost in the shadows: bracket, or open up if the shadows matter." },
    { -2, 0.7, 0, "Most of the picture is lost in the shadows: open up and take it again." },
    { 2, 0, 0.7, "Most of the picture is lost in the highlights: close down and take it again." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const FfTones tones = { .clipped_low = cases[i].low, .clipped_high = cases[i].high };
      const FfMeterReading reading = { .error_stops = cases[i].error };
      g_autofree char *advice = ff_meter_advice (&tones, &reading);

      assert_string_equal (advice, cases[i].advice);
    }
}

/* A scene that is not average, and one with lost highlights, are known less well. */
static void
test_spread (void **state)
{
  const FfTestPicture even = { 64, 64, FF_TEST_FLAT, .a = 118 };
  const FfTestPicture uneven = { 64, 64, FF_TEST_SPLIT, .a = 250, .b = 40, .share = 0.25 };
  const FfTestPicture lost = { 64, 64, FF_TEST_SPLIT, .a = 255, .b = 40, .share = 0.25 };
  FfMeterReading readings[3];
  const FfFrame frames[] = {
    frame_of (FF_TEST_PNG, &even),
    frame_of (FF_TEST_PNG, &uneven),
    frame_of (FF_TEST_PNG, &lost),
  };

  for (int i = 0; i < 3; i++)
    ff_frame_meter (&frames[i], 0, &readings[i]);
  assert_true (readings[0].spread_stops + 0.1 < readings[1].spread_stops);
  assert_true (readings[1].spread_stops + 0.1 < readings[2].spread_stops);
  assert_true (isnan (readings[0].ev100)); /* no settings */
}

/* Values that no camera has are left out, and none brings the reader down. */
static void
test_hostile_exif (void **state)
{
  static const FfTestExif hostile[] = {
    { .aperture = { 28, 0 }, .shutter = { 1, 0 }, .bias = { 1, 0 }, .iso = -5 },
    { .aperture = { 0, 1 }, .shutter = { 0, 7 }, .bias = { 2000, 1 }, .iso = 65535 },
    { .aperture = { -28, 10 }, .shutter = { -1, 50 }, .bias = { G_MININT, 1 } },
    { .aperture = { G_MAXINT, 1 }, .shutter = { G_MAXINT, 1 }, .bias = { G_MAXINT, 3 } },
    { .taken = "2027:02:30 17:40:12", .offset = "+99:00" },
    { .taken = "2027:09:18 25:61:61" },
    { .taken = "9999999999999999999", .offset = "now" },
    { .taken = "2027-09-18T17:40:12" },
  };
  const FfTestPicture grey = { 16, 16, FF_TEST_FLAT, .a = 118 };
  g_autofree char *path = path_of ("hostile.jpg");

  for (guint i = 0; i < G_N_ELEMENTS (hostile); i++)
    {
      FfFrame frame;

      ff_test_picture_write (path, FF_TEST_JPEG, &grey);
      ff_test_exif_write (path, &hostile[i]);
      frame = read_frame (path);
      assert_true (isnan (frame.aperture));
      assert_true (isnan (frame.shutter_s));
      assert_true (isnan (frame.iso));
      assert_true (isnan (frame.bias_stops));
      assert_false (frame.has_taken);
      assert_false (frame.has_offset);
    }
}

static void
assert_refused (const char *path, const char *part)
{
  g_autoptr (GError) error = NULL;
  FfFrame frame;

  assert_false (ff_frame_read (path, &frame, &error));
  assert_non_null (strstr (error->message, path));
  assert_error (error, FF_ERROR_INPUT, part);
}

static void
test_no_pictures (void **state)
{
  g_autofree char *missing = path_of ("missing.jpg"), *empty = path_of ("empty.jpg");
  g_autofree char *text = path_of ("text.jpg"), *fifo = path_of ("fifo");

  write_bytes (empty, "", 0);
  write_bytes (text, "not a picture at all", 20);
  assert_int_equal (mkfifo (fifo, 0600), 0);
  assert_refused (missing, "No such file");
  assert_refused (empty, "accepted: JPEG");
  assert_refused (text, "accepted: JPEG");
  assert_refused (folder, "not a file");
  assert_refused (fifo, "not a file");
}

/* What claims to be enormous is refused before anything is read of it. */
static void
test_absurd_sizes (void **state)
{
  const FfTestPicture small = { 16, 16, FF_TEST_FLAT, .a = 118 };
  static const guint8 big[] = { 0xff, 0x00 };
  g_autofree char *path = path_of ("absurd.jpg");
  g_autofree char *data = NULL;
  gsize length;
  char *frame_header;

  ff_test_picture_write (path, FF_TEST_JPEG, &small);
  assert_true (g_file_get_contents (path, &data, &length, NULL));
  frame_header = memmem (data, length, "\xff\xc0", 2);
  assert_non_null (frame_header);
  memcpy (frame_header + 5, big, 2);
  memcpy (frame_header + 7, big, 2);
  write_bytes (path, data, length);
  assert_refused (path, "megapixels");
}

/* Pieces of a PNG that claim nearly a gigabyte, of the pixels and of other things: refused without
 * making room for them. */
static void
test_absurd_pieces (void **state)
{
  static const char *const names[] = { "IDAT", "zTXt", "eXIf", "iCCP", "abCd" };
  const FfTestPicture small = { 48, 40, FF_TEST_NOISE };
  g_autofree char *path = path_of ("absurd.png");
  struct rusage usage;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *data = NULL;
      gsize length;
      char *piece;

      ff_test_picture_write (path, FF_TEST_PNG, &small);
      assert_true (g_file_get_contents (path, &data, &length, NULL));
      piece = memmem (data, length, "IDAT", 4);
      assert_non_null (piece);
      memcpy (piece - 4, "\x38\x00\x00\x00", 4);
      memcpy (piece, names[i], 4);
      write_bytes (path, data, length);
      assert_refused (path, "damaged");
    }
  assert_int_equal (getrusage (RUSAGE_SELF, &usage), 0);
  assert_true (usage.ru_maxrss < 400 * 1024);
}

/* Cut short anywhere: one sentence and no crash. Only what is behind the pixels may be missing. */
static void
test_truncations (void **state)
{
  const FfTestPicture picture = { 120, 90, FF_TEST_NOISE };
  g_autofree char *path = path_of ("whole"), *cut = path_of ("cut");

  for (int format = 0; format < FF_TEST_N_FORMATS; format++)
    {
      g_autofree char *data = NULL;
      gsize length;
      guint refused = 0, tried = 0;

      ff_test_picture_write (path, (FfTestFormat) format, &picture);
      assert_true (g_file_get_contents (path, &data, &length, NULL));
      for (gsize size = 0; size < length; size += 997)
        {
          g_autoptr (GError) error = NULL;
          FfFrame frame;

          write_bytes (cut, data, size);
          tried++;
          if (!ff_frame_read (cut, &frame, &error))
            {
              assert_true (g_error_matches (error, FF_ERROR, FF_ERROR_INPUT));
              refused++;
            }
        }
      if (refused < tried)
        fail_msg ("%s: %u of %u truncations passed", ff_test_format_name ((FfTestFormat) format),
                  tried - refused, tried);
    }
}

/* A few bytes changed: whatever comes of it, it is an answer. */
static void
test_flipped_bytes (void **state)
{
  const FfTestPicture picture = { 48, 40, FF_TEST_NOISE };
  const FfTestExif exif = { .aperture = { 28, 10 },
                            .shutter = { 1, 50 },
                            .bias = { 1, 3 },
                            .iso = 100,
                            .taken = "2027:09:18 17:40:12",
                            .offset = "+01:00" };
  g_autofree char *path = path_of ("sound"), *flipped = path_of ("flipped");
  FfTestRandom random = { 1664525 };

  for (int format = 0; format < FF_TEST_N_FORMATS; format++)
    {
      g_autofree char *data = NULL;
      gsize length;

      ff_test_picture_write (path, (FfTestFormat) format, &picture);
      ff_test_exif_write (path, &exif);
      assert_true (g_file_get_contents (path, &data, &length, NULL));
      for (int round = 0; round < 150; round++)
        {
          g_autofree char *copy = g_memdup2 (data, length);
          /* Half of the flips near the start, where sizes and tags are. */
          const int last = round % 2 == 0 ? (int) length - 1 : MIN ((int) length - 1, 600);
          g_autoptr (GError) error = NULL;
          FfFrame frame;

          for (int i = ff_test_random_int (&random, 1, 4); i > 0; i--)
            copy[ff_test_random_int (&random, 0, last)]
                = (char) ff_test_random_int (&random, 0, 255);
          write_bytes (flipped, copy, length);
          if (ff_frame_read (flipped, &frame, &error))
            assert_true (frame.tones.mean >= 0 && frame.tones.mean <= 1);
          else
            assert_true (g_error_matches (error, FF_ERROR, FF_ERROR_INPUT));
        }
    }
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
    cmocka_unit_test (test_grey_in_every_format),
    cmocka_unit_test (test_split_in_every_format),
    cmocka_unit_test (test_ramp),
    cmocka_unit_test (test_one_colour_at_its_end),
    cmocka_unit_test (test_black_and_white),
    cmocka_unit_test (test_settings_and_light),
    cmocka_unit_test (test_bias_is_no_error),
    cmocka_unit_test (test_time),
    cmocka_unit_test (test_advice),
    cmocka_unit_test (test_spread),
    cmocka_unit_test (test_hostile_exif),
    cmocka_unit_test (test_no_pictures),
    cmocka_unit_test (test_absurd_sizes),
    cmocka_unit_test (test_absurd_pieces),
    cmocka_unit_test (test_truncations),
    cmocka_unit_test (test_flipped_bytes),
  };

  return cmocka_run_group_tests_name ("unit frame", tests, set_up, tear_down);
}
