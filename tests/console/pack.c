/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `pack` as a script sees it, on the demo day: an evening of the crew lead. */
#include "ff-console-run.h"

#include <glib/gstdio.h>
#include <string.h>

#define NIGHT " --by MO --at 2027-09-17T22:10:00+01:00"
#define DUSK " --by PR --at 2027-09-18T20:05:00+01:00"

static char *folder;

static FfRun *
ask (const char *rest, int status)
{
  g_autofree char *line = g_strdup_printf ("--data-dir %s/data %s", folder, rest);

  return ff_run_json (line, status);
}

static void
refused (const char *rest, const char *part)
{
  g_autofree char *line = g_strdup_printf ("--data-dir %s/data %s", folder, rest);

  ff_run_refused (line, part);
}

/* The line of an item and the case it stands in, or NULL. */
static JsonObject *
line_of (FfRun *run, const char *label, const char **ret_case)
{
  JsonArray *cases = ff_run_array (run, "cases");

  for (guint i = 0; i < json_array_get_length (cases); i++)
    {
      JsonObject *box = json_array_get_object_element (cases, i);
      JsonArray *lines = json_object_get_array_member (box, "lines");

      for (guint j = 0; j < json_array_get_length (lines); j++)
        {
          JsonObject *line = json_array_get_object_element (lines, j);

          if (strcmp (json_object_get_string_member (line, "item"), label) != 0)
            continue;
          if (ret_case != NULL)
            *ret_case = json_object_get_string_member_with_default (box, "case", "");
          return line;
        }
    }
  return NULL;
}

/* The reason why something is short, or NULL. */
static const char *
short_of (FfRun *run, const char *label)
{
  JsonArray *shorts = ff_run_array (run, "short");

  for (guint i = 0; i < json_array_get_length (shorts); i++)
    {
      JsonObject *one = json_array_get_object_element (shorts, i);

      if (strcmp (json_object_get_string_member (one, "item"), label) == 0)
        return json_object_get_string_member (one, "reason");
    }
  return NULL;
}

static void
stands (FfRun *run, const char *label, const char *need, const char *box)
{
  const char *where = NULL;
  JsonObject *line = line_of (run, label, &where);

  assert_non_null (line);
  assert_string_equal (json_object_get_string_member (line, "need"), need);
  assert_string_equal (json_object_get_string_member (line, "state"), "serviceable");
  assert_string_equal (where, box);
}

/* ---- The tests ---- */

static void
test_the_plan_is_packed (void **state)
{
  g_autoptr (FfRun) run = ask ("pack Skarrowick", 0);

  stands (run, "aircraft 1", "needed", "1");
  stands (run, "P1", "goes_with", "1");
  stands (run, "camera 1", "goes_with", "1");
  stands (run, "b1", "needed", "2");
  stands (run, "b5", "needed", "2");
  stands (run, "charger", "needed", "2");
  stands (run, "P2", "spare", "2");
  stands (run, "ND32", "needed", "3");
  stands (run, "ND16", "needed", "3");
  stands (run, "ND8", "in_case", "3");
  stands (run, "C1", "needed", "3");
  stands (run, "C2", "spare", "3");
  stands (run, "insurance", "document", "");
  stands (run, "extinguisher", "needed", "");
  assert_null (line_of (run, "C3", NULL));
  assert_null (line_of (run, "ND64", NULL));
  assert_int_equal (json_array_get_length (ff_run_array (run, "short")), 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "due")), 3);
  assert_int_equal (json_array_get_length (ff_run_array (run, "turn_rounds")), 3);
  assert_string_equal (json_array_get_string_element (ff_run_array (run, "turn_rounds"), 0),
                       "After sortie 3: out 5 (ND32), into slot 5; in 4 (ND16)");
}

static void
test_one_slot_five_batteries (void **state)
{
  g_autoptr (FfRun) run = ask ("pack Skarrowick", 0);
  g_autoptr (FfRun) nobody = ask ("pack Skarrowick --watch none", 0);
  g_autoptr (FfRun) brief = ask ("pack Skarrowick --watch 2027-09-17,20:00-23:30,JV", 0);

  assert_close (ff_run_number (run, "charge_evening.busy_minutes"), 300, 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "charge_evening.turns")), 5);
  assert_string_equal (ff_run_text (run, "charge_evening.first_by"), "2027-09-17T18:00:00+01:00");
  assert_string_equal (ff_run_text (run, "charge_evening.done_at"), "2027-09-17T22:00:00+01:00");
  assert_int_equal (json_array_get_length (ff_run_array (nobody, "charge_evening.turns")), 0);
  assert_non_null (strstr (ff_run_text (nobody, "charge_evening.trouble"), "Nobody"));
  assert_int_equal (json_array_get_length (ff_run_array (brief, "charge_evening.turns")), 3);
  assert_int_equal (json_array_get_length (ff_run_array (brief, "charge_evening.not_charged")), 2);
}

static void
test_an_evening_and_the_count_back (void **state)
{
  g_autoptr (FfRun) out = ask ("pack Skarrowick --all-out" NIGHT, 0);
  g_autoptr (FfRun) left
      = ask ("pack Skarrowick --not-taken tablet --why 'screen cracked'" NIGHT, 0);
  g_autoptr (FfRun) flown
      = ask ("log add Skarrowick --line 3 --off 2027-09-18T17:38:00+01:00"
             " --down 2027-09-18T17:54:00+01:00 --battery b3 --filters ND32", 0);
  g_autoptr (FfRun) begun = ask ("pack Skarrowick --in b1 --in ND16" DUSK, 1);
  g_autoptr (FfRun) gone = ask ("pack Skarrowick --missing ND32" DUSK, 1);
  g_autoptr (FfRun) found = ask ("pack Skarrowick --in ND32" DUSK, 1);

  assert_non_null (flown->json);
  assert_close (ff_run_number (out, "counted.out"), ff_run_number (out, "counted.lines"), 0);
  assert_string_equal (
      json_object_get_string_member (line_of (left, "tablet", NULL), "not_taken"),
      "screen cracked");
  assert_true (json_object_get_boolean_member (line_of (begun, "b1", NULL), "in"));
  assert_false (json_object_get_boolean_member (line_of (begun, "b2", NULL), "in"));
  assert_null (short_of (begun, "tablet"));
  assert_string_equal (short_of (gone, "ND32"), "missing; last fitted 17:38, battery b3");
  assert_non_null (strstr (short_of (gone, "C1"), "last counted out 22:10, case 3, MO"));
  assert_null (short_of (found, "ND32"));
}

static void
test_counting_is_refused_whole (void **state)
{
  g_autoptr (FfRun) run = NULL;

  refused ("pack Skarrowick --out b1 --out spoon", "--out");
  refused ("pack Skarrowick --not-taken b1", "--why");
  refused ("pack Skarrowick --undo b1", "not counted");
  refused ("pack Skarrowick --out b1 --by XX", "--by");
  refused ("pack Skarrowick --watch tonight", "--watch");
  refused ("pack Skarrowick --spare spoon=1", "--spare");
  refused ("pack Skarrowick --spare camera=1", "batteries");
  refused ("pack Nowhere", "Nowhere");
  run = ask ("pack Skarrowick", 0);
  assert_close (ff_run_number (run, "counted.out"), 0, 0);
}

static void
test_two_cases_are_said (void **state)
{
  g_autoptr (FfRun) run = ask ("pack Skarrowick --out ND32 --in-case 2", 0);
  g_autoptr (FfRun) back = ask ("pack Skarrowick --undo ND32", 0);

  assert_int_equal (json_array_get_length (ff_run_array (run, "clashes")), 1);
  assert_non_null (strstr (
      json_array_get_string_element (ff_run_array (run, "clashes"), 0), "In two cases: ND32"));
  assert_int_equal (json_array_get_length (ff_run_array (back, "clashes")), 0);
  assert_false (json_object_get_boolean_member (line_of (back, "ND32", NULL), "out"));
}

static void
test_the_rule_of_spares_is_the_crews (void **state)
{
  g_autoptr (FfRun) run = ask ("pack Skarrowick --spare card=3 --spare propellers=0", 0);
  g_autoptr (FfRun) more = ask ("pack Skarrowick --spare propellers=2", 1);

  stands (run, "C4", "spare", "3");
  assert_null (line_of (run, "P2", NULL));
  assert_non_null (strstr (short_of (more, "propeller set"), "no spare left"));
}

static void
test_it_reads_well (void **state)
{
  g_autofree char *line = g_strdup_printf ("--data-dir %s/data pack Skarrowick", folder);

  ff_run_reads_well (line);
}

static int
set_up (void **state)
{
  g_autoptr (FfRun) demo = NULL;

  folder = ff_test_folder_new ();
  demo = ask ("demo", 0);
  return demo->json == NULL;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_the_plan_is_packed),
    CASE (test_one_slot_five_batteries),
    CASE (test_an_evening_and_the_count_back),
    CASE (test_counting_is_refused_whole),
    CASE (test_two_cases_are_said),
    CASE (test_the_rule_of_spares_is_the_crews),
    CASE (test_it_reads_well),
  };

  return cmocka_run_group_tests_name ("console pack", tests, NULL, NULL);
}
