/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `travel` as a script sees it: a carrier's rule in the crew's own entry, the batteries
 * of the demo day shared by it. */
#include "ff-console-run.h"

#include <string.h>

#define ADD "travel add 'Northern Air' --source 'their page' --read-on 2027-09-01 "

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

static guint
length (FfRun *run, const char *name)
{
  return json_array_get_length (ff_run_array (run, name));
}

static guint
count_going (FfRun *run)
{
  JsonArray *batteries = ff_run_array (run, "batteries");
  guint n = 0;

  for (guint i = 0; i < json_array_get_length (batteries); i++)
    n += json_object_get_boolean_member (json_array_get_object_element (batteries, i), "goes");
  return n;
}

static void
test_the_examples_say_that_they_are (void **state)
{
  g_autoptr (FfRun) rules = ask ("travel rules", 0);
  g_autoptr (FfRun) sheet = ask ("travel Skarrowick", 0);
  JsonObject *rule = json_array_get_object_element (ff_run_array (rules, "carriers"), 0);

  assert_true (json_object_get_boolean_member (rule, "example"));
  assert_true (*json_object_get_string_member (rule, "source") != '\0');
  assert_true (*json_object_get_string_member (rule, "read_on") != '\0');
  assert_int_equal (count_going (sheet), 5);
  assert_int_equal (length (sheet, "people"), 4);
  assert_int_equal (length (sheet, "approval_letter"), 0);
  assert_true (length (sheet, "cautions") >= 4);
}

static void
test_the_crews_own_rule_comes_first (void **state)
{
  g_autoptr (FfRun) rules = ask (ADD "--band 60:20 --band 160:1:approval", 0);
  g_autoptr (FfRun) sheet = ask ("travel Skarrowick", 1);
  g_autoptr (FfRun) example = ask ("travel Skarrowick --carrier 'Example: gen'", 0);
  g_autoptr (FfRun) again = ask (ADD "--band 100:3", 0);
  g_autoptr (FfRun) two = ask ("travel Skarrowick --people 2", 0);
  g_autoptr (FfRun) one = ask ("travel Skarrowick --people 1", 1);

  assert_int_equal (length (rules, "carriers"), length (again, "carriers"));
  assert_string_equal (ff_run_text (sheet, "carrier"), "Northern Air");
  assert_int_equal (count_going (sheet), 4);
  assert_int_equal (length (sheet, "approval_letter"), 4);
  assert_int_equal (count_going (example), 5);
  assert_int_equal (count_going (two), 5);
  assert_int_equal (count_going (one), 3);
}

/* Five of 0.42 kg: a kilogram each is two each. */
static void
test_the_cabin_weight_may_come_first (void **state)
{
  g_autoptr (FfRun) rules = ask (ADD "--band 100:20 --cabin-kg 1", 0);
  g_autoptr (FfRun) two = ask ("travel Skarrowick --people 2", 1);

  assert_non_null (rules->json);
  assert_int_equal (count_going (two), 4);
}

static void
test_a_rule_needs_its_source (void **state)
{
  refused ("travel add X --band 100:20", "--source");
  refused ("travel add X --source y", "--read-on");
  refused ("travel add X --source y --read-on tomorrow", "date");
  refused ("travel add X --source y --read-on 2027-09-01", "size band");
  refused ("travel add X --source y --read-on 2027-09-01 --band 100", "--band");
  refused ("travel add X --source y --read-on 2027-09-01 --band 160:2 --band 100:2", "higher");
  refused ("travel remove Nobody", "Nobody");
  refused ("travel Skarrowick --carrier Nobody", "Nobody");
  refused ("travel Skarrowick --people 0", "--people");
}

static void
test_it_reads_well (void **state)
{
  g_autofree char *line = g_strdup_printf ("--data-dir %s/data travel Skarrowick", folder);
  g_autofree char *rules = g_strdup_printf ("--data-dir %s/data travel rules", folder);

  ff_run_reads_well (line);
  ff_run_reads_well (rules);
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
    CASE (test_the_examples_say_that_they_are),
    CASE (test_the_crews_own_rule_comes_first),
    CASE (test_the_cabin_weight_may_come_first),
    CASE (test_a_rule_needs_its_source),
    CASE (test_it_reads_well),
  };

  return cmocka_run_group_tests_name ("console travel", tests, NULL, NULL);
}
