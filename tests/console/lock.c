/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew has decided, what has flown and how batteries are today, as the plan keeps them. */
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
done (const char *command)
{
  g_autoptr (FfRun) run = answer (command, 0);

  assert_non_null (run->json);
}

static void
refused (const char *command, const char *part)
{
  g_autofree char *line = g_strdup_printf ("--data-dir '%s/data' %s", folder, command);

  ff_run_refused (line, part);
}

/* The line that flies a shot, or NULL. */
static JsonObject *
line_of (FfRun *plan, const char *shot)
{
  JsonArray *lines = ff_run_array (plan, "sorties");

  for (guint i = 0; i < json_array_get_length (lines); i++)
    {
      JsonObject *line = json_array_get_object_element (lines, i);
      JsonArray *takes = json_object_get_array_member (line, "shots");

      for (guint j = 0; j < json_array_get_length (takes); j++)
        if (g_str_equal (json_object_get_string_member (json_array_get_object_element (takes, j),
                                                        "shot"), shot))
          return line;
    }
  return NULL;
}

static const char *
text_of (JsonObject *line, const char *name)
{
  return json_object_get_string_member (line, name);
}

/* Whether one of the sentences holds all of the part. */
static gboolean
says (JsonArray *texts, const char *part)
{
  for (guint i = 0; i < json_array_get_length (texts); i++)
    if (strstr (json_array_get_string_element (texts, i), part) != NULL)
      return TRUE;
  return FALSE;
}

static void
test_a_battery_and_a_time_are_kept (void **state)
{
  g_autoptr (FfRun) before = answer ("plan Skarrowick", 0), after = NULL, open = NULL;

  assert_string_not_equal (text_of (line_of (before, "F"), "battery"), "b3");
  done ("lock Skarrowick F --battery b3 --off 18:35");
  done ("lock Skarrowick A --filter ND16");
  after = answer ("plan Skarrowick", 0);
  assert_string_equal (text_of (line_of (after, "F"), "battery"), "b3");
  assert_non_null (strstr (text_of (line_of (after, "F"), "off_by"), "T18:35:00"));
  assert_non_null (strstr (text_of (line_of (after, "F"), "why"), "F is locked: b3, off by 18:35."));
  assert_string_equal (json_array_get_string_element (
                           json_object_get_array_member (line_of (after, "A"), "filters"), 0),
                       "ND16");
  assert_true (ff_run_number (after, "cost") > ff_run_number (before, "cost"));
  done ("lock Skarrowick F --open");
  done ("lock Skarrowick A --open");
  open = answer ("plan Skarrowick", 0);
  assert_close (ff_run_number (open, "cost"), ff_run_number (before, "cost"), 1e-9);
}

/* A lock that can't be kept is said, never broken in silence. */
static void
test_what_breaks_a_lock_is_said (void **state)
{
  g_autoptr (FfRun) late = NULL, missing = NULL;
  JsonObject *missed;

  done ("lock Skarrowick F --off 16:40");
  late = answer ("plan Skarrowick", 1);
  assert_null (line_of (late, "F"));
  missed = json_array_get_object_element (ff_run_array (late, "not_flown"), 0);
  assert_string_equal (text_of (missed, "shot"), "F");
  assert_non_null (strstr (text_of (missed, "reason"), "locked"));
  done ("lock Skarrowick F --open");
  done ("lock Skarrowick F --battery b3");
  missing = answer ("plan Skarrowick --without b3", 0);
  assert_non_null (line_of (missing, "F"));
  assert_true (says (ff_run_array (missing, "clashes"), "F is locked to b3, which is not at hand"));
  done ("lock Skarrowick F --open");
}

static void
test_a_flown_line_stays (void **state)
{
  g_autoptr (FfRun) plan = NULL;

  done ("log add Skarrowick --line 1 --battery b4 --off 2027-09-18T16:33:20+01:00"
        " --down 2027-09-18T16:44:00+01:00 --filters ND16 --by JV");
  plan = answer ("plan Skarrowick", 0);
  assert_string_equal (text_of (line_of (plan, "A"), "battery"), "b4");
  assert_non_null (strstr (text_of (line_of (plan, "A"), "off_by"), "T16:33:00"));
  assert_non_null (strstr (text_of (line_of (plan, "A"), "why"), "A has flown on b4, off at 16:33."));
}

static void
test_refusals (void **state)
{
  refused ("lock Skarrowick Z --battery b1", "no shot “Z”");
  refused ("lock Skarrowick F --battery ND8", "--battery");
  refused ("lock Skarrowick F", "accepted: --battery");
  refused ("lock Skarrowick F --open --battery b1", "accepted: --battery");
  refused ("lock Skarrowick F --off 26:99", "26:99");
}

static void
test_the_list (void **state)
{
  g_autoptr (FfRun) list = NULL;
  g_autofree char *line = g_strdup_printf ("--data-dir '%s/data' lock Skarrowick", folder);
  JsonObject *lock;

  done ("lock Skarrowick C --filter none");
  list = answer ("lock Skarrowick C --off 17:15", 0); /* what is not said stays */
  lock = json_array_get_object_element (ff_run_array (list, "locks"), 0);
  assert_string_equal (text_of (lock, "shot"), "C");
  assert_string_equal (text_of (lock, "filter"), "none");
  assert_string_equal (text_of (lock, "off_by"), "17:15");
  assert_true (json_object_get_null_member (lock, "battery"));
  ff_run_reads_well (line);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  done ("demo");
  return 0;
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
    CASE (test_a_battery_and_a_time_are_kept),
    CASE (test_what_breaks_a_lock_is_said),
    CASE (test_a_flown_line_stays),
    CASE (test_refusals),
    CASE (test_the_list),
  };

  return cmocka_run_group_tests_name ("lock", tests, NULL, NULL);
}
