/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cases of the demo day: the bag that follows from them, what each line survives, and what to
 * drop first. */
#include "ff-test.h"

#include <string.h>

#include "ff-day.h"
#include "ff-demo.h"
#include "ff-records.h"

static char *folder;
static FfStore *store;
static FfDay *day;
static FfDayPlan *plan;

static gboolean
has (const GPtrArray *texts, const char *text)
{
  return g_ptr_array_find_with_equal_func ((GPtrArray *) texts, text, g_str_equal, NULL);
}

/* Clear is the forecast: thin, overcast, dark; 15 and 30 minutes. */
static void
test_each_case_by_itself (void **state)
{
  const GPtrArray *cases = plan->cases->cases;
  guint skies = 0, delays = 0;

  for (guint i = 0; i < cases->len; i++)
    {
      const FfCase *one = g_ptr_array_index (cases, i);

      assert_true (one->other_sky != (one->late_minutes > 0));
      assert_false (one->other_sky && one->sky == plan->sky);
      skies += one->other_sky;
      delays += one->late_minutes > 0;
    }
  assert_int_equal (skies, 3);
  assert_int_equal (delays, 2);
}

/* A case planned again by the plain way must say the same. */
static void
test_cases_are_what_the_planner_says (void **state)
{
  for (guint i = 0; i < plan->cases->cases->len; i++)
    {
      const FfCase *one = g_ptr_array_index (plan->cases->cases, i);
      const FfDayChange change = { .other_sky = one->other_sky, .sky = one->sky,
                                   .late_minutes = one->late_minutes };
      g_autoptr (GError) error = NULL;
      g_autoptr (FfDayPlan) again = ff_day_plan (day, &change, &error);

      assert_no_error (error);
      assert_int_equal (one->sorties, again->lines->len);
      assert_int_equal (one->lost->len, again->missed->len);
      assert_int_equal (one->filters->len, again->bag_needed->len);
    }
}

/* Whatever the sky and the clock do within the cases, the filters are in the bag. */
static void
test_bag_serves_every_case (void **state)
{
  const FfBag *bag = plan->cases->bag;

  for (guint i = 0; i < plan->cases->cases->len; i++)
    {
      const FfCase *one = g_ptr_array_index (plan->cases->cases, i);

      for (guint j = 0; j < one->filters->len; j++)
        {
          const char *label = g_ptr_array_index (one->filters, j);

          assert_true (ff_bag_find (bag->needed, label) != NULL
                       || ff_bag_find (bag->in_case, label) != NULL);
        }
    }
  for (guint i = 0; i < bag->in_case->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (bag->in_case, i);

      assert_null (ff_bag_find (bag->needed, item->label));
      assert_true (item->item_id[0] != '\0' && item->why[0] != '\0');
    }
}

static void
test_bag_holds_batteries_and_charger (void **state)
{
  const FfBagItem *battery = ff_bag_find (plan->cases->bag->needed, "b1");
  gboolean charger = FALSE;

  assert_non_null (battery);
  assert_int_equal (battery->kind, FF_KIND_BATTERY);
  assert_string_equal (battery->why, "the plan: A, H");
  for (guint i = 0; i < plan->cases->bag->needed->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (plan->cases->bag->needed, i);

      charger = charger || item->kind == FF_KIND_CHARGER;
    }
  assert_true (charger);
  assert_false (has (plan->bag_needed, "b1")); /* filters alone, as the console promises */
}

static const FfLineSlip *
slip_of_line (int line)
{
  return g_ptr_array_index (plan->cases->slips, line - 1);
}

static gboolean
says (const GPtrArray *sentences, const char *part)
{
  for (guint i = 0; i < sentences->len; i++)
    if (strstr (g_ptr_array_index (sentences, i), part) != NULL)
      return TRUE;
  return FALSE;
}

/* The ferry leaves line 2 three minutes; A has all the time, and light to spare. */
static void
test_slip (void **state)
{
  const FfLineSlip *first = slip_of_line (1), *ferry = slip_of_line (2);

  assert_int_equal (plan->cases->slips->len, plan->lines->len);
  assert_true (ff_line_slip_survives (first));
  assert_true (first->room_minutes >= FF_SLIP_MINUTES);
  assert_false (ff_line_slip_survives (ferry));
  assert_int_equal (ferry->room_minutes, 3);
  assert_string_equal (ferry->tightest, "B");
  assert_true (says (ferry->why, "3 min late at most"));
}

/* In the last light a quarter of an hour is more than two stops, which no ISO up to 400 makes good;
 * an hour before it nothing happens. */
static void
test_light_of_the_last_line_does_not_wait (void **state)
{
  assert_true (slip_of_line (1)->light_holds_late);
  assert_true (slip_of_line (4)->light_holds_late);
  assert_false (slip_of_line (6)->light_holds_late);
}

static void
test_drop_order_is_resolved (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) drops = ff_day_drop_first (day, NULL, plan, NULL, NULL, &error);
  g_autofree char *words = NULL;

  assert_no_error (error);
  assert_int_equal (drops->len, 8);
  for (guint i = 0; i < drops->len; i++)
    {
      const FfDrop *drop = g_ptr_array_index (drops, i);
      const char *const dropped[] = { drop->shot, NULL };
      const FfDayChange change = { .drop = dropped };
      g_autoptr (FfDayPlan) without = ff_day_plan (day, &change, &error);
      double weight = g_str_equal (drop->shot, "G") ? 240 : 120;

      assert_no_error (error);
      assert_close (drop->price, weight + without->cost - plan->cost, 1e-9);
      if (i > 0)
        assert_true (((const FfDrop *) g_ptr_array_index (drops, i - 1))->price <= drop->price);
    }
  /* The most wanted shot goes last. */
  assert_string_equal (((const FfDrop *) g_ptr_array_index (drops, 7))->shot, "G");
  words = ff_drop_words (drops);
  assert_true (g_str_has_prefix (words, "Drop first: ") && g_str_has_suffix (words, "; G last."));
}

static gboolean
never (gpointer data)
{
  return FALSE;
}

static void
test_drop_order_can_be_stopped (void **state)
{
  g_autoptr (GError) error = NULL;

  assert_null (ff_day_drop_first (day, NULL, plan, never, NULL, &error));
  assert_no_error (error);
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (store, &error));
  day = ff_day_load (store, "Skarrowick", &error);
  assert_no_error (error);
  plan = ff_day_plan (day, NULL, &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  ff_day_plan_free (plan);
  ff_day_free (day);
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_each_case_by_itself),
    cmocka_unit_test (test_cases_are_what_the_planner_says),
    cmocka_unit_test (test_bag_serves_every_case),
    cmocka_unit_test (test_bag_holds_batteries_and_charger),
    cmocka_unit_test (test_slip),
    cmocka_unit_test (test_light_of_the_last_line_does_not_wait),
    cmocka_unit_test (test_drop_order_is_resolved),
    cmocka_unit_test (test_drop_order_can_be_stopped),
  };

  return cmocka_run_group_tests_name ("cases", tests, set_up, tear_down);
}
