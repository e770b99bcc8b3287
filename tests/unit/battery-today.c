/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The state that the crew has said batteries are in today, as the plan of the demo day keeps it. */
#include "ff-test.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-battery-log.h"
#include "ff-day.h"
#include "ff-demo.h"
#include "ff-pack-list.h"
#include "ff-records.h"

#define AT_1500 1821276000 /* 2027-09-18 15:00 in Skarrowick */
#define HOUR 3600

static char *folder;
static FfStore *store;

static void
say (const char *label, FfBatteryDayState state, gint64 at, gint64 until, double percent)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, label, &error);
  FfBatteryDay said = { at, state, until, percent, NAN, (char *) "JV" };

  assert_no_error (error);
  assert_true (ff_battery_day_add (store, id, &said, &error));
}

static FfDayPlan *
plan_now (int legs)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = ff_day_load (store, "Skarrowick", &error);
  FfDayChange change = { .legs_per_battery = legs };
  FfDayPlan *plan;

  assert_no_error (error);
  plan = ff_day_plan (day, &change, &error);
  assert_no_error (error);
  if (plan == NULL)
    abort (); /* not reached; the compiler does not know */
  return plan;
}

static gint64
first_off (const FfDayPlan *plan, const char *battery)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (g_str_equal (line->battery, battery))
        return line->off_by;
    }
  return G_MAXINT64;
}

static gboolean
says (GPtrArray *texts, const char *part)
{
  for (guint i = 0; i < texts->len; i++)
    if (strstr (g_ptr_array_index (texts, i), part) != NULL)
      return TRUE;
  return FALSE;
}

static void
test_charging_until (void **state)
{
  for (int i = 1; i <= 5; i++)
    {
      g_autofree char *label = g_strdup_printf ("b%d", i);

      say (label, FF_BATTERY_DAY_CHARGING, AT_1500, AT_1500 + (i > 1 ? 2 : 3) * HOUR, NAN);
    }
  {
    g_autoptr (FfDayPlan) plan = plan_now (0);

    assert_true (plan->missed->len > 0); /* A and B are before 17:00 … 17:30 */
    for (guint i = 0; i < plan->lines->len; i++)
      assert_true (((FfPlanLine *) g_ptr_array_index (plan->lines, i))->off_by
                   >= AT_1500 + 2 * HOUR);
    assert_true (first_off (plan, "b1") >= AT_1500 + 3 * HOUR);
    assert_true (says (plan->clashes, "b1: charging at 15:00, and planned so."));
  }
}

/* Charged first where the rule allows one leg: no line is on it before the charger has had it. */
static void
test_part_used_is_charged_first (void **state)
{
  g_autoptr (FfDayPlan) before = plan_now (0), after = NULL;

  assert_true (first_off (before, "b1") < AT_1500 + 2 * HOUR);
  say ("b1", FF_BATTERY_DAY_PART_USED, AT_1500, 0, 60);
  after = plan_now (0);
  assert_int_equal (after->missed->len, before->missed->len);
  /* One slot from 16:30: an hour, after it has cooled. */
  assert_true (first_off (after, "b1") >= AT_1500 + 2 * HOUR + HOUR / 2);
  assert_true (first_off (after, "b1") < G_MAXINT64);
}

/* Two in storage and one slot: a shot is lost, and none of the others is on an empty battery. */
static void
test_storage_is_charged_first (void **state)
{
  g_autoptr (FfDayPlan) plan = NULL;

  say ("b1", FF_BATTERY_DAY_STORAGE, AT_1500, 0, NAN);
  say ("b2", FF_BATTERY_DAY_STORAGE, AT_1500, 0, NAN);
  plan = plan_now (0);
  assert_int_equal (plan->missed->len, 1);
  assert_true (first_off (plan, "b1") >= AT_1500 + 2 * HOUR + HOUR / 2);
  assert_true (first_off (plan, "b2") >= AT_1500 + 2 * HOUR + HOUR / 2);
}

/* ---- The charge evening before ---- */

#define AT_EVE_1900 (AT_1500 - 20 * HOUR) /* 19:00 the evening before */

static FfPackList *
pack_now (void)
{
  g_autoptr (GError) error = NULL;
  FfPackList *list = ff_pack_list_load (store, "Skarrowick", &error);

  assert_no_error (error);
  if (list == NULL)
    abort (); /* not reached; the compiler does not know */
  return list;
}

static const FfChargeTurn *
turn_of (const FfPackList *list, const char *battery)
{
  for (guint i = 0; i < list->evening->turns->len; i++)
    {
      const FfChargeTurn *turn = g_ptr_array_index (list->evening->turns, i);

      if (g_str_equal (turn->battery, battery))
        return turn;
    }
  return NULL;
}

/* One slot, attended 17:00 to 23:00: a full one goes on no charger, a hot one cools for 20 minutes,
 * the one that charges until 20:30 keeps the slot until then. */
static void
test_the_evening_takes_them_as_they_are (void **state)
{
  g_autoptr (FfPackList) before = pack_now (), after = NULL;

  assert_int_equal (before->evening->turns->len, 5);
  say ("b1", FF_BATTERY_DAY_FULL, AT_EVE_1900, 0, NAN);
  say ("b2", FF_BATTERY_DAY_CHARGING, AT_EVE_1900, AT_EVE_1900 + 3 * HOUR / 2, NAN);
  say ("b3", FF_BATTERY_DAY_HOT, AT_EVE_1900, 0, NAN);
  after = pack_now ();
  assert_int_equal (after->evening->turns->len, 2);
  assert_null (turn_of (after, "b1"));
  assert_null (turn_of (after, "b2"));
  for (guint i = 0; i < 2; i++)
    assert_true (((FfChargeTurn *) g_ptr_array_index (after->evening->turns, i))->from
                 >= AT_EVE_1900 + 3 * HOUR / 2);
  assert_int_equal (after->evening->not_charged->len, 1); /* 20:30 to 23:00 holds two */
  assert_true (says (after->evening->remarks, "b1: full at 19:00"));
  assert_true (says (after->evening->remarks, "b2 charges until 20:30"));
  assert_true (says (after->evening->remarks, "b3: hot at 19:00"));
}

static void
test_a_charge_to_its_end_is_attended (void **state)
{
  g_autoptr (FfPackList) list = NULL;

  say ("b2", FF_BATTERY_DAY_CHARGING, AT_EVE_1900, AT_EVE_1900 + 5 * HOUR, NAN);
  list = pack_now ();
  assert_true (says (list->evening->remarks, "nobody is entered to be there"));
}

/* A week ago it was full: nobody knows what it is now. */
static void
test_old_words_count_no_more (void **state)
{
  g_autoptr (FfPackList) list = NULL;

  say ("b1", FF_BATTERY_DAY_FULL, AT_1500 - 7 * 24 * HOUR, 0, NAN);
  list = pack_now ();
  assert_non_null (turn_of (list, "b1"));
  assert_int_equal (list->evening->remarks->len, 0);
}

static void
test_what_says_nothing_new (void **state)
{
  g_autoptr (FfDayPlan) before = plan_now (0), after = NULL;

  say ("b1", FF_BATTERY_DAY_FULL, AT_1500, 0, 100);
  say ("b2", FF_BATTERY_DAY_PART_USED, AT_1500 - 48 * HOUR, 0, 40); /* another day */
  after = plan_now (0);
  assert_close (after->cost, before->cost, 1e-9);
  assert_int_equal (after->clashes->len, before->clashes->len);
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (store, &error));
  return 0;
}

static int
tear_down (void **state)
{
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_charging_until),
    CASE (test_part_used_is_charged_first),
    CASE (test_storage_is_charged_first),
    CASE (test_what_says_nothing_new),
    CASE (test_the_evening_takes_them_as_they_are),
    CASE (test_a_charge_to_its_end_is_attended),
    CASE (test_old_words_count_no_more),
  };

  return cmocka_run_group_tests_name ("battery today", tests, NULL, NULL);
}
