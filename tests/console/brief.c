/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `brief` from outside: what it writes, what it answers, what it refuses. */
#include "ff-console-run.h"

#include <glib/gstdio.h>
#include <string.h>

static char *folder;

/* "--data-dir FOLDER/data brief Skarrowick REST" */
static char *
call (const char *rest)
{
  return g_strdup_printf ("--data-dir %s/data brief Skarrowick %s", folder, rest);
}

static char *
file_in_folder (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
assert_pages (const char *rest, int pages)
{
  g_autofree char *path = file_in_folder ("brief.pdf");
  g_autofree char *with_file = g_strdup_printf ("-o %s %s", path, rest);
  g_autofree char *line = call (with_file);
  g_autoptr (FfRun) run = ff_run_json (line, 0);

  assert_close (ff_run_number (run, "pages"), pages, 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "did_not_fit")), 0);
  assert_string_equal (ff_run_text (run, "file"), path);
  assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
  assert_int_equal (g_remove (path), 0);
}

static void
test_demo_day_fits (void **state)
{
  assert_pages ("", 8);
  assert_pages ("--paper letter", 8);
  assert_pages ("--margin 20 --for lead", 2);
  assert_pages ("--margin 20 --for observer", 1);
  assert_pages ("--margin 20 --for client", 1);
  assert_pages ("--margin 20 --for camera", 2);
  assert_pages ("--for lead", 2);
  assert_pages ("--for observer", 1);
  assert_pages ("--for client", 1);
  assert_pages ("--for pilot", 2);
  assert_pages ("--for camera --paper letter", 2);
  assert_pages ("--for pilot --slips", 4);
  assert_pages ("--for pilot --slips --paper letter", 4);
  assert_pages ("--for pilot --pack", 4);
  assert_pages ("--for pilot --spoken", 4);
  assert_pages ("--for pilot --amendments", 3);
}

/* A sheet for each list the day calls for: night and water among them, cold not. */
static void
test_lists_on_paper (void **state)
{
  g_autofree char *path = file_in_folder ("lists.pdf");
  g_autofree char *with_file = g_strdup_printf ("-o %s --for client --lists", path);
  g_autofree char *line = call (with_file);
  g_autoptr (FfRun) run = ff_run_json (line, 0);

  assert_in_range ((int) ff_run_number (run, "pages"), 18, 40);
  assert_int_equal (json_array_get_length (ff_run_array (run, "did_not_fit")), 0);
}

/* The demo day leaves the emergency facts blank, and its sheets say so. */
static void
test_missing_facts_are_named (void **state)
{
  g_autofree char *path = file_in_folder ("brief.pdf");
  g_autofree char *with_file = g_strdup_printf ("-o %s", path);
  g_autofree char *line = call (with_file);
  g_autoptr (FfRun) run = ff_run_json (line, 0);
  JsonArray *missing = ff_run_array (run, "missing");

  assert_true (json_array_get_length (missing) >= 2);
  ff_run_reads_well (line);
}

static void
assert_refused (const char *rest, const char *part)
{
  g_autofree char *line = call (rest);

  ff_run_refused (line, part);
}

static void
test_wrong_requests (void **state)
{
  assert_refused ("", "-o FILE.pdf is missing");
  assert_refused ("-o /tmp/none/brief.pdf --for nobody", "--for");
  assert_refused ("-o /tmp/none/brief.pdf --paper a3", "--paper");
  assert_refused ("-o /tmp/none/brief.pdf --margin 50", "--margin");
  assert_refused ("too many -o /tmp/none/brief.pdf", "one word too many");
}

static void
test_a_full_disk_is_status_3 (void **state)
{
  g_autofree char *line = call ("-o /dev/full --json");
  g_autoptr (FfRun) run = ff_run (line);

  assert_int_equal (run->status, 3);
  assert_string_equal (run->out, "");
  assert_non_null (strstr (run->err, "/dev/full"));
}

static int
set_up (void **state)
{
  g_autofree char *line = NULL;
  g_autoptr (FfRun) run = NULL;

  folder = ff_test_folder_new ();
  line = g_strdup_printf ("--data-dir %s/data demo", folder);
  run = ff_run (line);
  return run->status;
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
    cmocka_unit_test (test_demo_day_fits),
    cmocka_unit_test (test_lists_on_paper),
    cmocka_unit_test (test_missing_facts_are_named),
    cmocka_unit_test (test_wrong_requests),
    cmocka_unit_test (test_a_full_disk_is_status_3),
  };

  return cmocka_run_group_tests_name ("console brief", tests, set_up, tear_down);
}
