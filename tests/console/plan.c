/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command "plan" as a script sees it: every promised key, the cases, what a change costs. */
#include "ff-console-run.h"

#include <string.h>

static char *folder;
static char *data_dir;

static char *
line_of (const char *command)
{
  return g_strdup_printf ("--data-dir '%s' %s", data_dir, command);
}

static FfRun *
answer (const char *command, int status)
{
  g_autofree char *line = line_of (command);

  return ff_run_json (line, status);
}

static void
refused (const char *command, const char *part)
{
  g_autofree char *line = line_of (command);

  ff_run_refused (line, part);
}

static JsonObject *
element (JsonArray *array, guint index)
{
  return json_array_get_object_element (array, index);
}

static gboolean
holds (JsonArray *texts, const char *text)
{
  for (guint i = 0; i < json_array_get_length (texts); i++)
    if (g_str_equal (json_array_get_string_element (texts, i), text))
      return TRUE;
  return FALSE;
}

/* ---- Keys ---- */

static void
assert_has (JsonObject *object, const char *keys)
{
  g_auto (GStrv) names = g_strsplit (keys, " ", -1);

  for (guint i = 0; names[i] != NULL; i++)
    if (!json_object_has_member (object, names[i]))
      fail_msg ("no key %s", names[i]);
}

static void
test_promised_keys (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick", 0);
  JsonObject *sortie = element (ff_run_array (run, "sorties"), 1);
  JsonObject *shot = element (json_object_get_array_member (sortie, "shots"), 0);

  assert_has (run->json, "job version case learned_offset_stops sorties not_flown clashes swaps "
                         "landings_for_filter_alone batteries_used charge bag cost cost_parts "
                         "optimal changes");
  assert_has (run->json, "cases drop_first survives change");
  assert_has (sortie, "line off_by down land_by battery filters filter_stops shots why land_rule");
  assert_has (shot, "shot from to ev100_start ev100_end need_start_stops need_end_stops start end "
                    "remarks track_deg tail_wind_ms turn_back_by run");
  assert_has (json_object_get_object_member (shot, "start"),
              "aperture shutter shutter_s shutter_angle_deg iso error_stops");
  assert_has (element (ff_run_array (run, "charge"), 0),
              "battery cool_from charge_from ready_at attended_by");
  assert_int_equal (json_array_get_length (ff_run_array (run, "sorties")), 6);
  assert_true (json_object_get_null_member (sortie, "turn_round"));
  assert_string_equal (json_object_get_string_member (element (ff_run_array (run, "sorties"), 4),
                                                      "turn_round"),
                       "out 2 (ND4), into slot 2; in 4 (ND16)");
  assert_int_equal (json_array_get_length (ff_run_array (run, "not_flown")), 0);
  assert_int_equal (json_array_get_length (ff_run_array (run, "changes")), 0);
  assert_true (ff_run_is_null (run, "change"));
}

static void
test_parts_add_up (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick", 0);
  JsonObject *parts = json_object_get_object_member (run->json, "cost_parts");
  g_autoptr (GList) names = json_object_get_members (parts);
  double sum = 0;

  for (GList *name = names; name != NULL; name = name->next)
    sum += json_object_get_double_member (parts, name->data);
  assert_close (ff_run_number (run, "cost"), sum, 1e-3);
}

/* Other prices, orders and rules are tried and shown; none is taken on trust. */
static void
test_prices_orders_and_legs_are_tried (void **state)
{
  g_autoptr (FfRun) usual = answer ("plan skarrowick", 0);
  g_autoptr (FfRun) dear = answer ("plan skarrowick --price filter_swap=2.5", 0);
  g_autoptr (FfRun) any = answer ("plan skarrowick --any-order --legs 2", 0);

  assert_close (ff_run_number (usual, "prices.filter_swap"), 1, 0);
  assert_close (ff_run_number (dear, "prices.filter_swap"), 2.5, 0);
  assert_true (ff_run_number (dear, "cost") > ff_run_number (usual, "cost"));
  assert_true (ff_run_number (any, "cost") <= ff_run_number (usual, "cost"));
  assert_close (ff_run_number (usual, "bound"), ff_run_number (usual, "cost"), 1e-3);
}

/* ---- Cases ---- */

static void
test_bag_follows_from_the_cases (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick", 0);
  JsonArray *cases = ff_run_array (run, "cases");
  JsonArray *needed = ff_run_array (run, "bag.needed");
  JsonArray *in_case = ff_run_array (run, "bag.in_case");

  assert_int_equal (json_array_get_length (cases), 5);
  for (guint i = 0; i < json_array_get_length (cases); i++)
    {
      JsonArray *filters = json_object_get_array_member (element (cases, i), "filters");

      for (guint j = 0; j < json_array_get_length (filters); j++)
        {
          const char *label = json_array_get_string_element (filters, j);

          assert_true (holds (needed, label) != holds (in_case, label));
        }
    }
  assert_true (json_array_get_length (ff_run_array (run, "bag.items"))
               > json_array_get_length (needed) + json_array_get_length (in_case));
}

static void
test_what_survives_and_what_goes_first (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick", 0);
  JsonArray *drops = ff_run_array (run, "drop_first");
  JsonObject *ferry = element (ff_run_array (run, "survives"), 1);

  assert_int_equal (json_array_get_length (drops), 8);
  assert_string_equal (json_object_get_string_member (element (drops, 7), "shot"), "G");
  assert_false (json_object_get_boolean_member (ferry, "survives"));
  assert_int_equal (json_object_get_int_member (ferry, "room_min"), 3);
}

static void
test_another_sky (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick --case overcast", 0);

  assert_string_equal (ff_run_text (run, "case"), "overcast");
  assert_true (holds (ff_run_array (run, "bag.needed"), "ND8"));
  refused ("plan skarrowick --case foggy", "--case");
}

/* ---- Changes ---- */

static void
test_a_change_that_loses_nothing (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick --move D=18:20", 0);
  JsonArray *changes = ff_run_array (run, "changes");

  assert_true (g_str_has_prefix (json_array_get_string_element (changes, 0), "Nothing is lost"));
  assert_int_equal (json_array_get_length (ff_run_array (run, "change.lost")), 0);
  assert_true (ff_run_is_null (run, "change.would_take"));
}

static void
test_a_change_that_loses_a_shot (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick --without charger", 1);
  const char *first = json_array_get_string_element (ff_run_array (run, "changes"), 0);

  assert_true (holds (ff_run_array (run, "change.lost"), "H"));
  assert_string_equal (ff_run_text (run, "change.would_take.kind"), "batteries");
  assert_close (ff_run_number (run, "change.would_take.count"), 1, 0);
  assert_non_null (strstr (first, "H (dusk moving time-lapse) is lost"));
  assert_non_null (strstr (first, "1 more battery would save H"));
}

static void
test_late (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick --late 30", 1);

  assert_string_equal (
      json_object_get_string_member (element (ff_run_array (run, "not_flown"), 0), "shot"), "A");
  refused ("plan skarrowick --late soon", "--late");
  refused ("plan skarrowick --late -5", "--late");
}

static void
test_what_is_refused (void **state)
{
  refused ("plan skarrowick --without ND9", "ND9");
  refused ("plan skarrowick --move Q=18:20", "Q=18:20");
  refused ("plan skarrowick --move D=25:20", "25:20");
  refused ("plan skarrowick --move D", "SHOT=HH:MM");
  refused ("plan skarrowick --move D=18:20-18:22", "shorter than the shot");
  refused ("plan", "JOB");
}

static void
test_both_ends_of_a_window (void **state)
{
  g_autoptr (FfRun) run = answer ("plan skarrowick --move D=18:20-18:26", 0);
  JsonArray *sorties = ff_run_array (run, "sorties");
  gboolean found = FALSE;

  for (guint i = 0; i < json_array_get_length (sorties); i++)
    {
      JsonArray *shots = json_object_get_array_member (element (sorties, i), "shots");

      for (guint j = 0; j < json_array_get_length (shots); j++)
        if (g_str_equal (json_object_get_string_member (element (shots, j), "shot"), "D"))
          found = g_str_has_prefix (json_object_get_string_member (element (shots, j), "from"),
                                    "2027-09-18T18:20");
    }
  assert_true (found);
}

static void
test_text_reads_well (void **state)
{
  g_autofree char *plain = line_of ("plan skarrowick");
  g_autofree char *moved = line_of ("plan skarrowick --move D=18:20 --late 10");
  g_autofree char *explained = line_of ("plan skarrowick --explain");

  ff_run_reads_well (plain);
  ff_run_reads_well (moved);
  ff_run_reads_well (explained);
}

/* ---- How it is planned ---- */

/* Leaves the store as it was for the tests after it. */
static void
test_rules_and_prices_are_stored (void **state)
{
  g_autoptr (FfRun) set = answer ("planning Skarrowick --set legs_per_battery=2 --set any_order=1"
                                  " --set stay_margin=5 --set new_battery=7.5",
                                  0);
  g_autoptr (FfRun) plan = answer ("plan Skarrowick", 0);
  g_autoptr (FfRun) back = NULL;

  assert_close (ff_run_number (set, "legs_per_battery"), 2, 0);
  assert_close (ff_run_number (set, "stay_margin"), 5, 0);
  assert_close (ff_run_number (plan, "prices.new_battery"), 7.5, 0);
  assert_close (ff_run_number (plan, "prices_changed"), 1, 0);
  back = answer ("planning Skarrowick --reset --set legs_per_battery=1 --set any_order=0"
                 " --set stay_margin=0",
                 0);
  assert_close (ff_run_number (back, "filters_at_once"), 1, 0);
  refused ("planning Skarrowick --set legs_per_battery=9", "legs_per_battery");
  refused ("planning Skarrowick --set legs_per_battery=1.5", "whole number");
  refused ("planning Skarrowick --set of_yore=1", "of_yore");
  refused ("planning Skarrowick --set swap", "NAME=VALUE");
  {
    g_autofree char *line = line_of ("planning Skarrowick");

    ff_run_reads_well (line);
  }
}

static int
set_up (void **state)
{
  g_autofree char *line = NULL;
  g_autoptr (FfRun) run = NULL;

  folder = ff_test_folder_new ();
  data_dir = g_build_filename (folder, "data", NULL);
  line = line_of ("demo");
  run = ff_run_json (line, 0);
  return 0;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  g_free (data_dir);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_promised_keys),
    cmocka_unit_test (test_parts_add_up),
    cmocka_unit_test (test_prices_orders_and_legs_are_tried),
    cmocka_unit_test (test_bag_follows_from_the_cases),
    cmocka_unit_test (test_what_survives_and_what_goes_first),
    cmocka_unit_test (test_another_sky),
    cmocka_unit_test (test_a_change_that_loses_nothing),
    cmocka_unit_test (test_a_change_that_loses_a_shot),
    cmocka_unit_test (test_late),
    cmocka_unit_test (test_what_is_refused),
    cmocka_unit_test (test_both_ends_of_a_window),
    cmocka_unit_test (test_rules_and_prices_are_stored),
    cmocka_unit_test (test_text_reads_well),
  };

  return cmocka_run_group_tests_name ("plan", tests, set_up, tear_down);
}
