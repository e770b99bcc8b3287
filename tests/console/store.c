/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The commands on the store as a script sees them: statuses, keys, files that go out and come in. */
#include "ff-console-run.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

static char *folder;
static char *data_dir;

/* A command line on the test's own store. */
static char *
on_store (const char *format, const char *argument)
{
  g_auto (GStrv) parts = g_strsplit (format, "%s", -1);
  g_autofree char *filled = g_strjoinv (argument, parts);

  return g_strdup_printf ("--data-dir '%s' %s", data_dir, filled);
}

static FfRun *
answer (const char *command, int status)
{
  g_autofree char *line = on_store (command, "");

  return ff_run_json (line, status);
}

static void
refused (const char *command, const char *part)
{
  g_autofree char *line = on_store (command, "");

  ff_run_refused (line, part);
}

/* Status 3: nothing on standard output, one line on standard error. */
static void
store_fails (const char *command, const char *part)
{
  g_autofree char *line = on_store (command, "");
  g_autoptr (FfRun) run = ff_run (line);

  assert_int_equal (run->status, 3);
  assert_string_equal (run->out, "");
  assert_non_null (strstr (run->err, part));
  assert_ptr_equal (strchr (run->err, '\n'), run->err + strlen (run->err) - 1);
}

static void
fill (void)
{
  g_autoptr (FfRun) run = answer ("demo", 0);

  assert_int_equal (json_array_get_length (ff_run_array (run, "jobs")), 3);
}

static void
test_no_store_yet (void **state)
{
  store_fails ("jobs", "does not exist");
  store_fails ("store info", "fieldfare.db");
  store_fails ("job skarrowick", "does not exist");
  assert_false (g_file_test (data_dir, G_FILE_TEST_EXISTS));
}

static void
test_demo_fills_once (void **state)
{
  fill ();
  refused ("demo", "empty");
  refused ("demo more", "more");
}

static void
test_jobs (void **state)
{
  g_autoptr (FfRun) run = NULL;
  JsonObject *job;

  fill ();
  run = answer ("jobs", 0);
  job = json_array_get_object_element (ff_run_array (run, "jobs"), 1);
  assert_int_equal (strlen (json_object_get_string_member (job, "id")), 36);
  assert_string_equal (json_object_get_string_member (job, "date"), "2027-09-18");
  assert_string_equal (json_object_get_string_member (job, "place"), "Skarrowick Head");
  assert_string_equal (json_object_get_string_member (job, "state"), "planned");
  assert_string_equal (json_object_get_string_member (job, "version"), "A");
  job = json_array_get_object_element (ff_run_array (run, "jobs"), 0);
  assert_true (json_object_get_null_member (job, "place"));
}

static void
test_job (void **state)
{
  g_autoptr (FfRun) run = NULL;
  g_autofree char *text = NULL;

  fill ();
  run = answer ("job SKARROWICK", 0);
  assert_string_equal (ff_run_text (run, "job.on_site"), "15:00");
  assert_close (ff_run_number (run, "place.latitude_deg"), 57.2, 0);
  assert_true (ff_run_is_null (run, "place.emergency_phone"));
  assert_int_equal (json_array_get_length (ff_run_array (run, "shots")), 8);
  text = on_store ("job skarrowick", "");
  ff_run_reads_well (text);
  refused ("job brackenholt", "could be any of: Brackenholt, first day");
  refused ("job nowhere", "there is: Brackenholt, first day");
  refused ("job", "JOB");
  refused ("job skarrowick twice", "twice");
}

/* A version for each file of the source; there is no other place that knows how many. */
static int
count_migrations (void)
{
  g_autofree char *path
      = g_build_filename (g_getenv ("FF_TEST_SOURCE_DIR"), "src", "store", "migrations", NULL);
  g_autoptr (GDir) migrations = g_dir_open (path, 0, NULL);
  const char *name;
  int n = 0;

  assert_non_null (migrations);
  while ((name = g_dir_read_name (migrations)) != NULL)
    n += g_str_has_suffix (name, ".sql");
  return n;
}

static void
test_store_info_check_backup (void **state)
{
  g_autofree char *copy = g_build_filename (folder, "copy.db", NULL);
  g_autofree char *backup = NULL;
  g_autoptr (FfRun) info = NULL;
  g_autoptr (FfRun) check = NULL;
  g_autoptr (FfRun) made = NULL;

  fill ();
  info = answer ("store info", 0);
  assert_close (ff_run_number (info, "schema_version"), count_migrations (), 0);
  assert_close (ff_run_number (info, "counts.shots"), 8, 0);
  check = answer ("store check", 0);
  assert_true (json_object_get_boolean_member (check->json, "sound"));
  assert_int_equal (json_array_get_length (ff_run_array (check, "faults")), 0);
  backup = on_store ("store backup '%s'", copy);
  made = ff_run_json (backup, 0);
  assert_true (g_file_test (copy, G_FILE_TEST_EXISTS));
  ff_run_refused (backup, "exists already");
  refused ("store", "info, check, backup");
  refused ("store polish", "info, check, backup");
  refused ("store backup", "FILE");
}

static void
test_a_damaged_store_is_named (void **state)
{
  g_autofree char *path = g_build_filename (data_dir, "fieldfare.db", NULL);

  fill ();
  assert_true (g_file_set_contents (path, "shopping list", -1, NULL));
  store_fails ("jobs", "not a store");
  store_fails ("demo", "not a store");
  store_fails ("store check", path);
}

static void
test_a_job_goes_to_the_other_laptop (void **state)
{
  g_autofree char *file = g_build_filename (folder, "job.json", NULL);
  g_autofree char *export = on_store ("job export skarrowick '%s'", file);
  g_autofree char *import = NULL;
  g_autofree char *again = NULL;
  g_autofree char *back = g_build_filename (folder, "back.json", NULL);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  fill ();
  ff_run_free (ff_run_json (export, 0));
  ff_run_refused (export, "exists already");
  import = on_store ("job import '%s'", file);
  ff_run_refused (import, "in the store already");

  g_free (data_dir);
  data_dir = g_build_filename (folder, "other", NULL);
  g_free (import);
  import = on_store ("job import '%s'", file);
  ff_run_free (ff_run_json (import, 0));
  again = on_store ("job export skarrowick '%s'", back);
  ff_run_free (ff_run_json (again, 0));
  assert_true (g_file_get_contents (file, &first, NULL, NULL));
  assert_true (g_file_get_contents (back, &second, NULL, NULL));
  assert_string_equal (first, second);
}

static void
test_a_bad_job_file_is_refused_before_the_store_is_made (void **state)
{
  g_autofree char *file = g_build_filename (folder, "bad.json", NULL);
  g_autofree char *import = on_store ("job import '%s'", file);

  ff_run_refused (import, "bad.json");
  assert_true (g_file_set_contents (file, "{\n  \"format\" 1\n}", -1, NULL));
  ff_run_refused (import, "bad.json: line 2, column 12: found “1”");
  assert_true (g_file_set_contents (file, "{\"format\": \"x\"}", -1, NULL));
  ff_run_refused (import, "format");
  assert_false (g_file_test (data_dir, G_FILE_TEST_EXISTS));
}

#define FLIGHT                                                                                     \
  "log add skarrowick --line 1 --off 2027-09-18T16:30:00+01:00 --down 2027-09-18T16:46:00+01:00 "

static void
test_log (void **state)
{
  g_autofree char *csv = g_build_filename (folder, "log.csv", NULL);
  g_autofree char *export = on_store ("log skarrowick --csv '%s'", csv);
  g_autofree char *text = NULL;
  g_autoptr (FfRun) empty = NULL;
  g_autoptr (FfRun) run = NULL;
  JsonObject *flight;

  fill ();
  empty = answer ("log skarrowick", 0);
  assert_int_equal (json_array_get_length (ff_run_array (empty, "flights")), 0);
  assert_int_equal (json_array_get_length (ff_run_array (empty, "defects")), 0);
  ff_run_free (answer (FLIGHT "--battery b1 --filters ND32,clear --by jv --note '=SUM(1)'", 0));
  run = answer ("log skarrowick", 0);
  flight = json_array_get_object_element (ff_run_array (run, "flights"), 0);
  assert_int_equal (json_object_get_int_member (flight, "line"), 1);
  assert_string_equal (json_object_get_string_member (flight, "off"), "2027-09-18T16:30:00+01:00");
  assert_string_equal (json_object_get_string_member (flight, "battery"), "b1");
  assert_string_equal (json_object_get_string_member (flight, "by"), "JV");
  assert_string_equal (
      json_array_get_string_element (json_object_get_array_member (flight, "filters"), 1), "clear");
  ff_run_free (ff_run_json (export, 0));
  assert_true (g_file_get_contents (csv, &text, NULL, NULL));
  assert_non_null (strstr (text, "A,1,2027-09-18T16:30:00+01:00,2027-09-18T16:46:00+01:00,16,b1,"
                                 "ND32 + clear,JV,'=SUM(1),,,,"
                                 "\"forecast typed with the job: wind 4.0 m/s"));
  ff_run_refused (export, "exists already");
}

static void
test_log_refusals (void **state)
{
  fill ();
  refused (FLIGHT, "--battery");
  refused (FLIGHT "--battery b9", "--battery: no item “b9”");
  refused (FLIGHT "--battery ND8", "accepted: a battery");
  refused (FLIGHT "--battery b1 --filters b1", "accepted: a filter");
  refused (FLIGHT "--battery b1 --filters ND8,", "empty part");
  refused (FLIGHT "--battery b1 --by XX", "accepted: IC, JV, MO, PR");
  refused ("log add skarrowick --line 1 --off 2027-09-18T16:30:00 --down 2027-09-18T16:46:00Z"
           " --battery b1",
           "--off");
  refused ("log add skarrowick --line 1 --off 2027-09-18T16:30:00Z --down 2027-09-18T16:20:00Z"
           " --battery b1",
           "down before it is off");
  refused ("log add skarrowick --line 1 --off 2027-09-18T16:30:00Z --down 2027-09-18T20:31:00Z"
           " --battery b1",
           "four hours");
  refused ("log add skarrowick --line x --off 2027-09-18T16:30:00Z --down 2027-09-18T16:40:00Z"
           " --battery b1",
           "--line");
  ff_run_free (answer (FLIGHT "--battery b1", 0));
  refused (FLIGHT "--battery b1", "in the air at that time");
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
  g_free (data_dir);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_no_store_yet),
    CASE (test_demo_fills_once),
    CASE (test_jobs),
    CASE (test_job),
    CASE (test_store_info_check_backup),
    CASE (test_a_damaged_store_is_named),
    CASE (test_a_job_goes_to_the_other_laptop),
    CASE (test_a_bad_job_file_is_refused_before_the_store_is_made),
    CASE (test_log),
    CASE (test_log_refusals),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("store", tests, NULL, NULL);
}
