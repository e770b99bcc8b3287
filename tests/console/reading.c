/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `reading` as a script sees it, on the demo day. */
#include "ff-console-run.h"

#include <math.h>
#include <string.h>

#include "ff-test-picture.h"

#define AT "--at 2027-09-18T16:42:00+01:00"

static char *folder;

static char *
line_of (const char *rest)
{
  return g_strdup_printf ("--data-dir %s/data %s", folder, rest);
}

static FfRun *
ask (const char *rest)
{
  g_autofree char *line = line_of (rest);

  return ff_run_json (line, 0);
}

static void
refused (const char *rest, const char *part)
{
  g_autofree char *line = line_of (rest);

  ff_run_refused (line, part);
}

static double
filter_of_last_sortie (FfRun *run)
{
  JsonArray *sorties = ff_run_array (run, "sorties");
  JsonObject *last = json_array_get_object_element (sorties, json_array_get_length (sorties) - 1);

  return json_object_get_double_member (last, "filter_stops");
}

/* Shown 1/1600 where f/2.8, 1/50 and ISO 100 are wanted is a need of 5 stops: EV 3 + log2 1600. */
static void
test_a_reading_moves_the_later_sorties (void **state)
{
  g_autoptr (FfRun) before = ask ("plan Skarrowick");
  g_autoptr (FfRun) added = ask ("reading add Skarrowick " AT " --shown 1/1600 --target 1/50");
  g_autoptr (FfRun) after = ask ("plan Skarrowick");
  g_autoptr (FfRun) list = ask ("reading list Skarrowick");
  double offset = ff_run_number (added, "learned_offset_stops");

  assert_close (ff_run_number (added, "ev100"), 3 + log2 (1600), 1e-5);
  assert_close (ff_run_number (added, "need_stops"), 5, 1e-5);
  assert_close (ff_run_number (added, "offset_stops"), offset, 1e-9);
  assert_true (offset < -0.7 && offset > -1.3);
  assert_true (json_array_get_length (ff_run_array (added, "changes")) > 0);
  assert_close (ff_run_number (before, "learned_offset_stops"), 0, 0);
  assert_close (ff_run_number (after, "learned_offset_stops"), offset, 1e-3);
  assert_true (filter_of_last_sortie (after) < filter_of_last_sortie (before));
  assert_int_equal (json_array_get_length (ff_run_array (list, "readings")), 1);
  assert_close (ff_run_number (list, "learned_offset_stops"), offset, 1e-9);
}

static void
test_one_is_set_aside_with_a_reason (void **state)
{
  g_autoptr (FfRun) added = ask ("reading add Skarrowick " AT " --ev100 13.2 --by IC");
  g_autofree char *id = g_strndup (ff_run_text (added, "id"), 8);
  g_autofree char *without = g_strdup_printf ("reading drop Skarrowick %s", id);
  g_autofree char *drop = g_strconcat (without, " --why 'a cloud passed' --by IC", NULL);
  JsonObject *reading;

  assert_string_equal (ff_run_text (added, "by"), "IC");
  refused (without, "--why");
  refused ("reading drop Skarrowick zz --why x", "no reading begins with");
  {
    g_autoptr (FfRun) dropped = ask (drop);

    assert_close (ff_run_number (dropped, "learned_offset_stops"), 0, 0);
    reading = json_array_get_object_element (ff_run_array (dropped, "readings"), 0);
    assert_string_equal (
        json_object_get_string_member (json_object_get_object_member (reading, "dropped"), "why"),
        "a cloud passed");
  }
  refused (drop, "set aside already");
}

/* Grey at f/2.8 (2^1.5), 1/3200 s, ISO 100 through two stops: EV 3 + log2 3200 + 2. */
static void
test_a_picture (void **state)
{
  const FfTestPicture picture = { 60, 40, FF_TEST_FLAT, .a = 118 };
  const FfTestExif exif = { .aperture = { 28, 10 }, .shutter = { 1, 3200 }, .iso = 100,
                            .taken = "2027:09:18 16:42:00" };
  g_autofree char *path = g_build_filename (folder, "grey.jpg", NULL);
  g_autofree char *bare = g_build_filename (folder, "bare.jpg", NULL);
  g_autofree char *line = g_strdup_printf ("reading add Skarrowick --frame %s --nd 2", path);
  g_autofree char *dark = g_strdup_printf ("reading add Skarrowick --frame %s " AT, bare);

  ff_test_picture_write (path, FF_TEST_JPEG, &picture);
  ff_test_exif_write (path, &exif);
  ff_test_picture_write (bare, FF_TEST_JPEG, &picture);
  {
    g_autoptr (FfRun) run = ask (line);

    assert_string_equal (ff_run_text (run, "at"), "2027-09-18T16:42:00+01:00");
    assert_string_equal (ff_run_text (run, "source"), "grey.jpg");
    assert_close (ff_run_number (run, "ev100"), 3 + log2 (3200) + 2, 0.011);
    assert_true (ff_run_number (run, "spread_stops") > 0.3);
  }
  refused (dark, "a picture with its settings");
}

static void
write_grey (const char *name, int per_second)
{
  const FfTestPicture picture = { 60, 40, FF_TEST_FLAT, .a = 118 };
  const FfTestExif exif = { .aperture = { 28, 10 }, .shutter = { 1, per_second }, .iso = 100 };
  g_autofree char *path = g_build_filename (folder, name, NULL);

  ff_test_picture_write (path, FF_TEST_JPEG, &picture);
  ff_test_exif_write (path, &exif);
}

/* Grey at 1/3200 s without it and at 1/100 s with it: five stops, which are the plan's from then
 * on. It is written ND16 on it, four. */
static void
test_a_filter_is_measured (void **state)
{
  g_autofree char *pictures
      = g_strdup_printf ("--without %s/bare.jpg --with %s/fitted.jpg", folder, folder);
  g_autofree char *line = g_strconcat ("filter measure ND16 ", pictures, NULL);
  g_autofree char *wrong = g_strconcat ("filter measure b1 ", pictures, NULL);
  g_autofree char *labels = g_strconcat ("filter ND16 ", pictures, NULL);

  write_grey ("bare.jpg", 3200);
  write_grey ("fitted.jpg", 100);
  {
    g_autoptr (FfRun) run = ask (line);
    g_autoptr (FfRun) plan = ask ("plan Skarrowick");

    assert_close (ff_run_number (run, "stops"), 4, 0);
    assert_close (ff_run_number (run, "measured_stops"), 5, 0.01);
    assert_true (ff_run_number (run, "spread_stops") < 0.2);
    assert_true (ff_run_is_null (run, "measured_before_stops"));
    /* No line is planned with four stops any more. */
    assert_null (strstr (plan->out, "\"filter_stops\": 4"));
  }
  refused (wrong, "no filter of one strength");
  refused ("filter measure ND16", "--without is missing");
  refused (labels, "filter measure ITEM");
}

static void
test_what_is_refused (void **state)
{
  refused ("reading add Skarrowick --ev100 13", "--at is missing");
  refused ("reading add Skarrowick " AT, "one of --shown");
  refused ("reading add Skarrowick " AT " --ev100 13 --lux 3", "one of --shown");
  refused ("reading add Skarrowick " AT " --shown 1/50", "--target is missing");
  refused ("reading add Skarrowick " AT " --ev100 13 --target 1/50", "--target");
  refused ("reading add Skarrowick " AT " --ev100 nan", "--ev100");
  refused ("reading add Skarrowick " AT " --ev100 13 --cloud maybe", "still, moves");
  refused ("reading add Skarrowick " AT " --ev100 13 --shot Z", "--shot");
  refused ("reading add Skarrowick " AT " --ev100 13 --by ZZ", "nobody has the initials");
  refused ("reading add Skarrowick --at 2027-09-17T16:42:00+01:00 --ev100 13", "2027-09-18");
  refused ("reading add Nowhere " AT " --ev100 13", "Nowhere");
  refused ("reading take Skarrowick", "add, list, drop");
}

static void
test_text_reads_well (void **state)
{
  g_autofree char *add = line_of ("reading add Skarrowick " AT " --lux 30000 --cloud moves");
  g_autofree char *list = line_of ("reading list Skarrowick");

  ff_run_reads_well (add);
  ff_run_reads_well (list);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  {
    g_autoptr (FfRun) run = ask ("demo");

    return run->status;
  }
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_a_reading_moves_the_later_sorties),
    CASE (test_one_is_set_aside_with_a_reason),
    CASE (test_a_picture),
    CASE (test_a_filter_is_measured),
    CASE (test_what_is_refused),
    CASE (test_text_reads_well),
  };

  return cmocka_run_group_tests_name ("reading", tests, NULL, NULL);
}
