/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weather call from the console: measured, reported, decided, printed; the crew's rule for thin
 * air; and what a flight in the log keeps of it all. */
#include "ff-console-run.h"

#include <string.h>

static char *folder;

static FfRun *
answer (const char *command, int status)
{
  g_autofree char *line = g_strdup_printf ("--data-dir '%s/data' %s", folder, command);

  return ff_run_json (line, status);
}

static void
done (const char *command, int status)
{
  g_autoptr (FfRun) run = answer (command, status);

  assert_non_null (run->json);
}

static JsonObject *
row_of (FfRun *run, const char *kind)
{
  JsonArray *rows = ff_run_array (run, "rows");

  for (guint i = 0; i < json_array_get_length (rows); i++)
    if (g_str_equal (json_object_get_string_member (json_array_get_object_element (rows, i), "kind"),
                     kind))
      return json_array_get_object_element (rows, i);
  fail_msg ("no row of %s", kind);
  return NULL;
}

static gboolean
any_has (JsonArray *texts, const char *part)
{
  for (guint i = 0; i < json_array_get_length (texts); i++)
    if (strstr (json_array_get_string_element (texts, i), part) != NULL)
      return TRUE;
  return FALSE;
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  done ("demo", 0);
  return 0;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  return 0;
}

static void
test_a_measured_gust (void **state)
{
  g_autoptr (FfRun) run = answer ("limits measure Skarrowick gust 21 kt --height 2 --by JV"
                                  " --at 2027-09-18T16:40+01:00",
                                  1);
  JsonObject *gust = row_of (run, "gust");

  assert_string_equal (json_object_get_string_member (gust, "answer"), "outside");
  assert_string_equal (json_object_get_string_member (gust, "unit"), "m/s");
  assert_close (json_object_get_double_member (gust, "value_low"), 21 * 1852.0 / 3600, 1e-4);
  assert_int_equal (json_array_get_length (ff_run_array (run, "outside")), 1);
}

/* Known at take-off, and kept with the flight; what is measured afterwards changes nothing of it. */
static void
test_a_flight_keeps_it (void **state)
{
  g_autoptr (FfRun) run = NULL;
  g_autofree char *csv = g_build_filename (folder, "log.csv", NULL);
  g_autofree char *command = g_strdup_printf ("log Skarrowick --csv '%s'", csv);
  g_autofree char *text = NULL;
  JsonObject *flight;

  done ("limits measure Skarrowick gust 21 kt --height 2 --by JV --at 2027-09-18T16:40+01:00", 1);
  done ("log add Skarrowick --line 0 --off 2027-09-18T16:45:00+01:00"
        " --down 2027-09-18T16:55:00+01:00 --battery b1 --by JV",
        0);
  done ("limits measure Skarrowick gust 3 m/s --by JV --at 2027-09-18T17:00+01:00", 1);
  run = answer (command, 0);
  flight = json_array_get_object_element (ff_run_array (run, "flights"), 0);
  assert_true (any_has (json_object_get_array_member (flight, "conditions"), "gust 21 kt"));
  assert_true (any_has (json_object_get_array_member (flight, "limits"), "outside: gust"));
  assert_false (any_has (json_object_get_array_member (flight, "conditions"), "3 m/s"));
  assert_true (g_file_get_contents (csv, &text, NULL, NULL));
  assert_non_null (strstr (text, "outside: gust at flying height"));
}

static void
test_thin_air (void **state)
{
  g_autoptr (FfRun) run = answer ("limits thin-air 0.5", 0);
  g_autofree char *wrong
      = g_strdup_printf ("--data-dir '%s/data' limits thin-air sometimes", folder);
  g_autoptr (FfRun) shown = NULL;

  assert_close (ff_run_number (run, "thin_air"), 0.5, 0);
  shown = answer ("limits Skarrowick", 1);
  assert_close (ff_run_number (shown, "thin_air"), 0.5, 0);
  done ("limits thin-air off", 0);
  ff_run_refused (wrong, "on, off or a number");
}

static void
test_the_page (void **state)
{
  g_autofree char *pdf = g_build_filename (folder, "call.pdf", NULL);
  g_autofree char *command = g_strdup_printf ("limits Skarrowick -o '%s'", pdf);
  g_autoptr (FfRun) run = NULL;

  done ("limits call Skarrowick --decision stand-by --why gusts --by JV"
        " --at 2027-09-18T16:52+01:00 --until 2027-09-18T17:20+01:00",
        1);
  run = answer (command, 1);
  assert_close (ff_run_number (run, "pages"), 1, 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "did_not_fit")), 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "calls")), 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_a_measured_gust, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_a_flight_keeps_it, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_thin_air, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_the_page, set_up, tear_down),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
