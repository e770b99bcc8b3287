/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists and checks as a script sees them. */
#include "ff-console-run.h"

#include <string.h>

static char *folder;
static char *data_dir;

static char *
on_store (const char *command)
{
  return g_strdup_printf ("--data-dir '%s' %s", data_dir, command);
}

static FfRun *
answer (const char *command, int status)
{
  g_autofree char *line = on_store (command);

  return ff_run_json (line, status);
}

static void
refused (const char *command, const char *part)
{
  g_autofree char *line = on_store (command);

  ff_run_refused (line, part);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  data_dir = g_build_filename (folder, "data", NULL);
  ff_run_free (answer ("demo", 0));
  return 0;
}

static int
tear_down (void **state)
{
  g_clear_pointer (&data_dir, g_free);
  ff_test_folder_remove (g_steal_pointer (&folder));
  return 0;
}

static char *
write_list (const char *name, const char *text)
{
  char *path = g_build_filename (folder, name, NULL);

  assert_true (g_file_set_contents (path, text, -1, NULL));
  return path;
}

static guint
n_lists (void)
{
  g_autoptr (FfRun) listed = answer ("lists", 0);

  return json_array_get_length (ff_run_array (listed, "lists"));
}

static void
test_a_list_goes_in_and_comes_out_the_same (void **state)
{
  const char *text = "# Sea wall\n\n- Place in the day: any time\n- When: water\n\n## A\n\n"
                     "* [ ]  __Line__:   marked   \n";
  g_autofree char *in = write_list ("in.md", text);
  g_autofree char *out = g_build_filename (folder, "out.md", NULL);
  g_autofree char *import = g_strdup_printf ("lists import '%s'", in);
  g_autofree char *export = g_strdup_printf ("lists export 'sea w' '%s'", out);
  g_autofree char *back = NULL;
  guint before = n_lists ();
  g_autoptr (FfRun) imported = answer (import, 0);
  g_autoptr (FfRun) exported = answer (export, 0);

  assert_int_equal (n_lists (), before + 1);
  assert_true (g_file_get_contents (out, &back, NULL, NULL));
  assert_string_equal (back, text);
  refused (export, "exists");
}

static void
test_a_wrong_list_is_refused_with_its_place (void **state)
{
  g_autofree char *in = write_list ("in.md", "# T\n\n## A\n\n- [ ] A: b *soon*\n");
  g_autofree char *import = g_strdup_printf ("lists import '%s'", in);
  guint before = n_lists ();

  refused (import, "in.md: line 5, column 12");
  assert_int_equal (n_lists (), before);
  refused ("lists export nothing out.md", "no list is called");
}

static JsonObject *
run_of (FfRun *run, const char *list)
{
  JsonArray *runs = ff_run_array (run, "runs");

  for (guint i = 0; i < json_array_get_length (runs); i++)
    {
      JsonObject *object = json_array_get_object_element (runs, i);

      if (g_str_equal (json_object_get_string_member (object, "list"), list))
        return object;
    }
  fail_msg ("no run of %s", list);
  return NULL;
}

#define TURN_ROUND "Turn-round: fit to lift again? · line 2"

static void
want (FfRun *taken, const char *state, const char *at)
{
  g_autoptr (FfRun) run = taken;
  JsonObject *object = run_of (run, TURN_ROUND);

  assert_string_equal (json_object_get_string_member (object, "state"), state);
  assert_string_equal (json_object_get_string_member (object, "at"), at);
}

/* A filter that differs, a value out of bounds, a hold, paper, a failure: and never "ready". */
static void
test_a_turn_round (void **state)
{
  g_autoptr (FfRun) log = NULL;

  want (answer ("checks Skarrowick --start turn-round --line 2 --by JV --other IC", 1), "running",
        "Motors");
  want (answer ("checks Skarrowick --do done --by JV", 1), "running", "Propellers");
  want (answer ("checks Skarrowick --do done --by JV", 1), "running", "Filter");
  want (answer ("checks Skarrowick --do say --said 4 --by IC", 1), "running", "Filter");
  refused ("checks Skarrowick --do accept --why 'it is clouding over' --by IC", "second person");
  want (answer ("checks Skarrowick --do say --said ND32 --by IC", 1), "running", "Card");
  want (answer ("checks Skarrowick --do hold --why client --by JV", 1), "held", "Card");
  refused ("checks Skarrowick --do say --said 38 --by IC", "held");
  want (answer ("checks Skarrowick --do resume --by JV", 1), "running", "Filter");
  want (answer ("checks Skarrowick --do say --said 5 --by IC --paper --at "
                "2027-09-18T16:55:00+01:00", 1),
        "running", "Card");
  want (answer ("checks Skarrowick --do say --said 38 --by IC", 1), "running",
        "completion of the section");
  want (answer ("checks Skarrowick --do done --by JV", 1), "running", "Battery fitted");
  want (answer ("checks Skarrowick --do fail --why 'latch cracked' --subject b2 --by JV", 1),
        "running", "Battery voltage");
  refused ("checks Skarrowick --do frown --by JV", "--do");
  log = answer ("log Skarrowick", 0);
  assert_int_equal (json_array_get_length (ff_run_array (log, "facts")), 4);
  assert_int_equal (json_array_get_length (ff_run_array (log, "defects")), 1);
  assert_null (strstr (log->out, "ready"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_a_list_goes_in_and_comes_out_the_same, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_a_wrong_list_is_refused_with_its_place, set_up,
                                     tear_down),
    cmocka_unit_test_setup_teardown (test_a_turn_round, set_up, tear_down),
  };

  return cmocka_run_group_tests_name ("console lists", tests, NULL, NULL);
}
