/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The gear as a script sees it: lists, states, and files that go out and come in. */
#include "ff-console-run.h"

#include <string.h>

static char *folder;
static char *data_dir;

static FfRun *
answer (const char *command, int status)
{
  g_autofree char *line = g_strdup_printf ("--data-dir '%s' %s", data_dir, command);

  return ff_run_json (line, status);
}

static void
refused (const char *command, const char *part)
{
  g_autofree char *line = g_strdup_printf ("--data-dir '%s' %s", data_dir, command);

  ff_run_refused (line, part);
}

static void
fill (void)
{
  g_autoptr (FfRun) run = answer ("demo", 0);
}

static guint
count (const char *command, const char *array)
{
  g_autoptr (FfRun) run = answer (command, 0);

  return json_array_get_length (ff_run_array (run, array));
}

static void
test_list (void **state)
{
  g_autoptr (FfRun) run = NULL;
  g_autofree char *line = g_strdup_printf ("--data-dir '%s' gear list", data_dir);
  JsonObject *item;

  fill ();
  assert_int_equal (count ("gear list --kind battery", "items"), 5);
  assert_int_equal (count ("gear list --find 'stop 4'", "items"), 1);
  assert_int_equal (count ("gear list --find nothing", "items"), 0);
  assert_int_equal (count ("gear list --case 2 --kind propellers", "items"), 1);
  run = answer ("gear list --find ND16", 0);
  item = json_array_get_object_element (ff_run_array (run, "items"), 0);
  assert_string_equal (json_object_get_string_member (item, "label"), "ND16");
  assert_string_equal (json_object_get_string_member (item, "kind"), "filter");
  assert_string_equal (json_object_get_string_member (item, "state"), "serviceable");
  assert_string_equal (json_object_get_string_member (item, "case"), "3");
  ff_run_reads_well (line);
  refused ("gear list --kind spoon", "aircraft");
  refused ("gear", "list");
  refused ("gear list more", "more");
}

static void
test_a_story (void **state)
{
  g_autoptr (FfRun) out = NULL;
  g_autoptr (FfRun) show = NULL;
  JsonObject *event;

  fill ();
  out = answer ("gear set nd16 --state out --why lent --with Brackenholt --until 2027-09-19", 0);
  assert_string_equal (ff_run_text (out, "state"), "out");
  show = answer ("gear show ND16", 0);
  assert_string_equal (ff_run_text (show, "out_with"), "Brackenholt");
  assert_close (ff_run_number (show, "density"), 1.204, 0.001);
  assert_close (ff_run_number (show, "factor"), 16, 0.001);
  assert_int_equal (json_array_get_length (ff_run_array (show, "events")), 1);
  event = json_array_get_object_element (ff_run_array (show, "events"), 0);
  assert_string_equal (json_object_get_string_member (event, "until"), "2027-09-19");
  assert_string_not_equal (json_object_get_string_member (event, "by"), "");
  refused ("gear set ND16 --state out", "--why");
  refused ("gear set ND16 --why x", "--state");
  refused ("gear set ND16 --state lost --why x", "serviceable");
  refused ("gear set ND16 --state out --why x --until tomorrow", "tomorrow");
  refused ("gear set ND17 --state out --why x", "there is: aircraft 1");
  refused ("gear set ND16 --state out --why x --by XX", "MO");
}

/* Quarantined at one moment, gone from the plan at the next. */
static void
test_a_quarantined_battery_is_not_planned (void **state)
{
  g_autoptr (FfRun) before = NULL;
  g_autoptr (FfRun) set = NULL;
  g_autoptr (FfRun) after = NULL;
  g_autofree char *plan = g_strdup_printf ("--data-dir '%s' plan skarrowick --json", data_dir);

  fill ();
  before = answer ("plan skarrowick", 0);
  assert_non_null (strstr (before->out, "\"battery\": \"b3\""));
  set = answer ("gear decide b3 --sign swelling --decision quarantine --why bulges --by JV", 0);
  assert_string_equal (ff_run_text (set, "state"), "quarantined");
  after = ff_run (plan);
  assert_non_null (after->json);
  assert_null (strstr (after->out, "\"b3\""));
}

static void
test_batteries (void **state)
{
  g_autoptr (FfRun) run = NULL;

  fill ();
  run = answer ("gear measure b4 --cells '3.0 3.1 3.0 4.7' --temperature 20 --by JV", 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "resistances")), 1);
  refused ("gear measure b4 --cells '3.0 3.1'", "found 2 cells");
  refused ("gear measure ND16 --cells 3", "no battery");
  refused ("gear decide b4 --sign swelling --decision keep --why x", "not kept in use");
  refused ("gear decide b4 --sign wet --decision keep", "--why");
  g_clear_pointer (&run, ff_run_free);
  run = answer ("gear day b4 --is part-used --percent 62", 0);
  assert_string_equal (ff_run_text (run, "day_state"), "part-used");
  assert_string_equal (ff_run_text (run, "due"), "soon");
  assert_close (ff_run_number (run, "due_left"), 12, 0);
}

static void
test_out_and_in (void **state)
{
  g_autofree char *file = g_build_filename (folder, "gear.csv", NULL);
  g_autofree char *out = g_strdup_printf ("gear export '%s'", file);
  g_autofree char *dry = g_strdup_printf ("gear import '%s' --dry-run", file);
  g_autofree char *in = g_strdup_printf ("gear import '%s'", file);
  g_autoptr (FfRun) run = NULL;
  g_autofree char *text = NULL;
  g_autofree char *more = NULL;

  fill ();
  run = answer (out, 0);
  refused (out, "gear.csv");
  assert_true (g_file_get_contents (file, &text, NULL, NULL));
  more = g_strconcat (text, ",b6,battery\r\n", NULL);
  assert_true (g_file_set_contents (file, more, -1, NULL));
  assert_int_equal (count (dry, "added"), 1);
  assert_int_equal (count (dry, "changed"), 0);
  assert_int_equal (count ("gear list --kind battery", "items"), 5);
  assert_int_equal (count (in, "added"), 1);
  assert_int_equal (count ("gear list --kind battery", "items"), 6);
  assert_true (g_file_set_contents (file, "label,kind\nb7,battery\nb8,bat\n", -1, NULL));
  refused (in, "line 3, column 2 (kind): found “bat”");
  assert_int_equal (count ("gear list --kind battery", "items"), 6);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  data_dir = g_build_filename (folder, "data", NULL);
  return 0;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  g_free (data_dir);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

static FfRun *
log_flight (int minute, const char *rest)
{
  g_autofree char *command
      = g_strdup_printf ("log add Skarrowick --line 0 --off 2027-09-18T16:%02d:00+01:00"
                         " --down 2027-09-18T16:%02d:00+01:00 --battery b2 %s",
                         minute, minute + 10, rest);

  return answer (command, 0);
}

static const char *
usable_of_band (FfRun *run, guint band, int *ret_minutes)
{
  JsonObject *one = json_array_get_object_element (ff_run_array (run, "usable"), band);

  *ret_minutes = (int) json_object_get_int_member (one, "minutes");
  return json_object_get_string_member (one, "from");
}

/* 60 % in 10 min, of the 70 % down to the reserve of the limits: 11.7 min. Warmer, nothing is known. */
static void
test_minutes_come_from_the_log (void **state)
{
  static const char *const showed = "--percent-off 100 --percent-down 40 --battery-c 15";
  g_autoptr (FfRun) first = NULL;
  g_autoptr (FfRun) second = NULL;
  g_autoptr (FfRun) third = NULL;
  g_autoptr (FfRun) show = NULL;
  JsonObject *flight;
  int minutes;

  fill ();
  first = log_flight (0, showed);
  second = log_flight (15, showed);
  flight = json_array_get_object_element (ff_run_array (second, "flights"), 1);
  assert_close (json_object_get_double_member (flight, "percent_down"), 40, 0);
  assert_close (json_object_get_double_member (flight, "battery_c"), 15, 0);
  third = log_flight (30, showed);
  show = answer ("gear show b2", 0);
  assert_string_equal (usable_of_band (show, 2, &minutes), "log");
  assert_int_equal (minutes, 11);
  assert_string_equal (usable_of_band (show, 3, &minutes), "typed");
  assert_int_equal (minutes, 18);
  refused ("log add Skarrowick --line 0 --off 2027-09-18T17:00:00+01:00"
           " --down 2027-09-18T17:10:00+01:00 --battery b2 --percent-off 101",
           "--percent-off");
  refused ("log add Skarrowick --line 0 --off 2027-09-18T17:00:00+01:00"
           " --down 2027-09-18T17:10:00+01:00 --battery b2 --percent-off 30 --percent-down 60",
           "fuller");
}

static void
test_hours_follow_what_it_is_on (void **state)
{
  g_autoptr (FfRun) before = NULL;
  g_autoptr (FfRun) fitted = NULL;
  g_autoptr (FfRun) worn = NULL;
  g_autoptr (FfRun) off = NULL;

  fill ();
  before = answer ("gear show P2", 0);
  assert_true (json_object_get_null_member (before->json, "fitted_on"));
  fitted = answer ("gear fit P2 --on 'aircraft 1' --by MO --at 2027-09-18T12:00:00Z", 0);
  assert_string_equal (ff_run_text (fitted, "fitted_on"), "aircraft 1");
  ff_run_free (log_flight (0, ""));
  worn = answer ("gear show P2", 0);
  assert_close (ff_run_number (worn, "used_hours"), 10 / 60.0, 1e-6);
  off = answer ("gear fit P2 --on none --at 2027-09-18T22:00:00Z", 0);
  assert_true (json_object_get_null_member (off->json, "fitted_on"));
  refused ("gear fit P2", "--on");
  refused ("gear fit P2 --on b1", "accepted: propellers on an aircraft");
  refused ("gear fit b1 --on none", "neither");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_list),
    CASE (test_a_story),
    CASE (test_a_quarantined_battery_is_not_planned),
    CASE (test_batteries),
    CASE (test_out_and_in),
    CASE (test_minutes_come_from_the_log),
    CASE (test_hours_follow_what_it_is_on),
  };

  return cmocka_run_group_tests_name ("gear", tests, NULL, NULL);
}
