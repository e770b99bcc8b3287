/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `freeze` and `amend` as a script sees them: a letter, numbered amendments, who has read them, and
 * the same on another laptop. */
#include "ff-console-run.h"

#include <string.h>

#define DARKER "reading add Skarrowick --at 2027-09-18T16:42:00+01:00 --shown 1/1600 --target 1/50"

static char *folder;

static char *
line_of (const char *store, const char *rest)
{
  return g_strdup_printf ("--data-dir %s/%s %s", folder, store, rest);
}

static FfRun *
answer (const char *rest, int status)
{
  g_autofree char *line = line_of ("data", rest);

  return ff_run_json (line, status);
}

static void
done (const char *rest, int status)
{
  g_autoptr (FfRun) run = answer (rest, status);

  assert_non_null (run->json);
}

static void
refused (const char *rest, const char *part)
{
  g_autofree char *line = line_of ("data", rest);

  ff_run_refused (line, part);
}

static void
test_a_letter_and_its_amendments (void **state)
{
  g_autoptr (FfRun) frozen = NULL, tried = NULL, added = NULL, list = NULL, plan = NULL;
  JsonObject *first, *camera = NULL;
  JsonArray *sentences;

  refused ("amend try Skarrowick", "no version is frozen yet");
  frozen = answer ("freeze Skarrowick --by MO", 0);
  assert_string_equal (ff_run_text (frozen, "version"), "A");
  assert_string_equal (ff_run_text (frozen, "by"), "MO");
  refused ("freeze Skarrowick --by MO", "version A is frozen and stays as it is");
  done ("amend try Skarrowick", 0); /* nothing to amend */
  done (DARKER, 0);
  tried = answer ("amend try Skarrowick", 1);
  added = answer ("amend add Skarrowick --by MO", 0);
  assert_close (ff_run_number (added, "amendment.number"), 1, 0);
  sentences = ff_run_array (added, "amendment.sentences");
  assert_int_equal (json_array_get_length (sentences),
                    json_array_get_length (ff_run_array (tried, "amendment.sentences")));
  for (guint i = 0; i < json_array_get_length (sentences); i++)
    if (g_str_equal (json_object_get_string_member (json_array_get_object_element (sentences, i),
                                                    "role"),
                     "camera"))
      camera = json_array_get_object_element (sentences, i);
  assert_non_null (strstr (json_object_get_string_member (camera, "text"), "Camera: line "));
  done ("amend try Skarrowick", 0);
  list = answer ("amend list Skarrowick", 1);
  first = json_array_get_object_element (ff_run_array (list, "amendments"), 0);
  assert_close ((double) json_object_get_int_member (first, "open"),
                json_array_get_length (sentences), 0);
  plan = answer ("plan Skarrowick", 0);
  assert_string_equal (ff_run_text (plan, "version"), "A");
  assert_string_equal (ff_run_text (plan, "standing"), "A, amendment 1");
}

static void
test_a_flight_is_of_a_line (void **state)
{
  g_autoptr (FfRun) plan = answer ("plan Skarrowick", 0), log = NULL;
  JsonObject *second = json_array_get_object_element (ff_run_array (plan, "sorties"), 1);
  JsonArray *flights;

  log = answer ("log add Skarrowick --line 2 --off 2027-09-18T17:08:00+01:00 "
                "--down 2027-09-18T17:22:00+01:00 --battery b2 --filters ND32 --by JV", 0);
  flights = ff_run_array (log, "flights");
  assert_string_equal (
      json_object_get_string_member (
          json_array_get_object_element (flights, json_array_get_length (flights) - 1), "line_id"),
      json_object_get_string_member (second, "id"));
}

static void
test_who_has_read_it (void **state)
{
  static const char *const who[][2]
      = { { "lead", "MO" }, { "pilot", "JV" }, { "camera", "IC" }, { "observer", "PR" } };

  done ("freeze Skarrowick", 0);
  done (DARKER, 0);
  done ("amend add Skarrowick", 0);
  refused ("amend read Skarrowick 2 --role pilot --initials JV", "there is no amendment 2");
  refused ("amend read Skarrowick 1 --role cook --initials JV", "cook");
  refused ("amend read Skarrowick 1 --role pilot --initials ZZ", "ZZ");
  refused ("amend read Skarrowick 1 --role pilot", "--initials");
  for (guint i = 0; i < G_N_ELEMENTS (who); i++)
    {
      g_autofree char *rest = g_strdup_printf ("amend read Skarrowick 1 --role %s --initials %s",
                                               who[i][0], who[i][1]);
      g_autofree char *line = line_of ("data", rest);
      g_autoptr (FfRun) run = ff_run (line);

      /* One whom it does not concern is told so; the list is closed when all others have read it. */
      assert_true (run->status == 0 || run->status == 1
                   || strstr (run->err, "does not concern") != NULL);
    }
  done ("amend list Skarrowick", 0);
}

static void
test_a_new_letter (void **state)
{
  g_autoptr (FfRun) frozen = NULL;

  done ("freeze Skarrowick", 0);
  frozen = answer ("freeze Skarrowick --why 'the sheets are wet'", 0);
  assert_string_equal (ff_run_text (frozen, "version"), "B");
  assert_string_equal (ff_run_text (frozen, "why"), "the sheets are wet");
}

static void
test_another_laptop (void **state)
{
  g_autofree char *file = g_build_filename (folder, "job.json", NULL);
  g_autofree char *out = g_strdup_printf ("job export Skarrowick %s", file);
  g_autofree char *rest = g_strdup_printf ("job import %s", file);
  g_autofree char *in = line_of ("other", rest);
  g_autofree char *look = line_of ("other", "amend list Skarrowick");
  g_autofree char *text = NULL, *broken = NULL;
  g_autoptr (FfRun) read = NULL, list = NULL;
  const char *copy;

  done ("freeze Skarrowick --by MO", 0);
  done (DARKER, 0);
  done ("amend add Skarrowick", 0);
  done (out, 0);
  read = ff_run_json (in, 0);
  list = ff_run_json (look, 1);
  assert_int_equal (json_array_get_length (ff_run_array (list, "amendments")), 1);

  /* A copy that is no plan is refused before anything is stored. */
  assert_true (g_file_get_contents (file, &text, NULL, NULL));
  copy = strstr (text, "\\\"lines\\\"");
  assert_non_null (copy);
  broken = g_strdup_printf ("%.*s\\\"limes\\\"%s", (int) (copy - text), text, copy + 9);
  assert_true (g_file_set_contents (file, broken, -1, NULL));
  g_free (in);
  in = line_of ("third", rest);
  ff_run_refused (in, "lines");
}

static void
test_who_was_briefed (void **state)
{
  g_autoptr (FfRun) before = answer ("briefed Skarrowick", 1), after = NULL, ferry = NULL;
  JsonObject *observer;

  assert_int_equal (json_array_get_length (ff_run_array (before, "briefed")), 4);
  refused ("briefed Skarrowick --said XY", "XY");
  refused ("briefed Skarrowick --by MO", "--said");
  done ("freeze Skarrowick --by MO", 0);
  after = answer ("briefed Skarrowick --said pr --by MO", 1);
  observer = json_array_get_object_element (ff_run_array (after, "briefed"), 3);
  assert_string_equal (json_object_get_string_member (observer, "initials"), "PR");
  assert_string_equal (json_object_get_string_member (observer, "state"), "done");
  assert_string_equal (json_object_get_string_member (observer, "version"), "A");
  assert_string_equal (json_object_get_string_member (observer, "by"), "MO");
  assert_close (ff_run_number (after, "open"), 3, 0);
  ferry = answer ("briefed Skarrowick --said SF --name Skipper", 1);
  assert_int_equal (json_array_get_length (ff_run_array (ferry, "briefed")), 5);
}

static void
test_text_reads_well (void **state)
{
  g_autofree char *freeze = line_of ("data", "freeze Skarrowick --by MO");
  g_autofree char *add = line_of ("data", "amend add Skarrowick --by MO");

  ff_run_reads_well (freeze);
  done (DARKER, 0);
  ff_run_reads_well (add);
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

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_a_letter_and_its_amendments),
    CASE (test_a_flight_is_of_a_line),
    CASE (test_who_has_read_it),
    CASE (test_a_new_letter),
    CASE (test_another_laptop),
    CASE (test_who_was_briefed),
    CASE (test_text_reads_well),
  };

  return cmocka_run_group_tests_name ("versions", tests, NULL, NULL);
}
