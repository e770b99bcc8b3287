/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a change costs is derived: every claim behind its sentence is planned again by the plain way,
 * on the demo day and on days made at random, and must come out as claimed. */
#include "ff-test.h"

#include <stdlib.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-demo.h"
#include "ff-records.h"

static char *folder;
static FfStore *store;

static FfDay *
load (void)
{
  g_autoptr (GError) error = NULL;
  FfDay *day = ff_day_load (store, "Skarrowick", &error);

  assert_no_error (error);
  if (day == NULL)
    abort (); /* not reached; the compiler does not know */
  return day;
}

static FfDayPlan *
plan_of (const FfDay *day, const FfDayChange *change)
{
  g_autoptr (GError) error = NULL;
  FfDayPlan *plan = ff_day_plan (day, change, &error);

  assert_no_error (error);
  if (plan == NULL)
    abort (); /* not reached; the compiler does not know */
  return plan;
}

static gboolean
is_missed (const FfDayPlan *plan, const char *shot)
{
  for (guint i = 0; i < plan->missed->len; i++)
    if (g_str_equal (((const FfPlanMiss *) g_ptr_array_index (plan->missed, i))->shot, shot))
      return TRUE;
  return FALSE;
}

static gboolean
has (const GPtrArray *texts, const char *text)
{
  return g_ptr_array_find_with_equal_func ((GPtrArray *) texts, text, g_str_equal, NULL);
}

/* ---- The claims ---- */

/* All of `saves` are flown in `plan`, and nothing is lost that `after` flew, but for `dropped`. */
static void
assert_saves (const FfDayPlan *after,
              const FfDayPlan *plan,
              const GPtrArray *saves,
              const char *dropped)
{
  assert_true (saves->len > 0);
  for (guint i = 0; i < saves->len; i++)
    assert_false (is_missed (plan, g_ptr_array_index (saves, i)));
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      assert_true (is_missed (after, miss->shot) || g_strcmp0 (miss->shot, dropped) == 0);
    }
}

static void
assert_lost (const FfDay *day, const FfDayPlan *after)
{
  g_autoptr (FfDayPlan) before = plan_of (day, NULL);
  const FfChangePrice *price = after->price;

  assert_close (price->more_cost, after->cost - before->cost, 1e-9);
  for (guint i = 0; i < price->lost->len; i++)
    {
      const char *shot = g_ptr_array_index (price->lost, i);

      assert_true (is_missed (after, shot) && !is_missed (before, shot));
      assert_non_null (strstr (price->sentence, shot));
    }
  for (guint i = 0; i < after->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (after->missed, i);

      assert_true (is_missed (before, miss->shot) || has (price->lost, miss->shot));
    }
  for (guint i = 0; i < price->won->len; i++)
    assert_true (is_missed (before, g_ptr_array_index (price->won, i)));
}

static const FfShot *
shot_of (const FfDay *day, const char *label)
{
  for (guint i = 0; i < day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (day->shots, i);

      if (g_str_equal (shot->label, label))
        return shot;
    }
  fail_msg ("no shot %s", label);
  abort (); /* not reached */
}

/* The window of the record, opened by so many minutes: these tests move no shot that they widen. */
static char *
wider (const FfDay *day, const FfRemedy *remedy, int minutes)
{
  const FfShot *shot = shot_of (day, remedy->label);
  gboolean earlier = remedy->kind == FF_REMEDY_EARLIER;
  g_autofree char *from = ff_clock_format (shot->window_from - (earlier ? minutes : 0));
  g_autofree char *to = ff_clock_format (shot->window_to + (earlier ? 0 : minutes));

  assert_false (shot->fixed_time);
  return g_strdup_printf ("%s=%s-%s", shot->label, from, to);
}

/* The plan with the remedy, put together here from what the claim says alone. */
static FfDayPlan *
plan_with (const FfDay *day, const FfDayChange *change, const FfRemedy *remedy, int minutes)
{
  FfDayChange helped = *change;
  const char *with[] = { remedy->label, NULL };
  g_autofree char *move = NULL;
  const char *moves[3] = { NULL };
  guint n_moves = 0;

  if (change->moves != NULL)
    moves[n_moves++] = change->moves[0];
  if (remedy->kind == FF_REMEDY_ATTEND)
    helped.attended = TRUE;
  else if (remedy->kind == FF_REMEDY_FETCH)
    helped.with = with;
  else if (remedy->kind == FF_REMEDY_BATTERY)
    helped.more_batteries = remedy->count;
  else if (remedy->kind == FF_REMEDY_CHARGER)
    helped.more_charger_slots = 1;
  else if (remedy->kind == FF_REMEDY_FILTER)
    helped.more_filter_stops = remedy->stops;
  else
    {
      move = wider (day, remedy, minutes);
      moves[n_moves++] = move;
      helped.moves = moves;
    }
  return plan_of (day, &helped);
}

static void
assert_remedy (const FfDay *day, const FfDayChange *change, const FfDayPlan *after)
{
  const FfRemedy *remedy = &after->price->remedy;
  g_autoptr (FfDayPlan) helped = NULL;

  if (remedy->kind == FF_REMEDY_NONE)
    return;
  /* A window that the change itself has moved is widened from there, which the plain way above does
   * not know. */
  if (change->moves != NULL && remedy->label != NULL
      && g_str_has_prefix (change->moves[0], remedy->label))
    return;
  helped = plan_with (day, change, remedy, remedy->minutes);
  assert_saves (after, helped, remedy->saves, NULL);
  if (remedy->count > 1)
    {
      const FfRemedy less = { remedy->kind, .count = remedy->count - 1 };
      g_autoptr (FfDayPlan) short_of = plan_with (day, change, &less, 0);
      gboolean all = TRUE;

      for (guint i = 0; i < remedy->saves->len; i++)
        all = all && !is_missed (short_of, g_ptr_array_index (remedy->saves, i));
      assert_false (all); /* one battery less would not do */
    }
}

static void
assert_drop (const FfDay *day, const FfDayChange *change, const FfDayPlan *after)
{
  const FfChangePrice *price = after->price;
  const char *const drop[] = { price->drop, NULL };
  FfDayChange dropped = *change;
  g_autoptr (FfDayPlan) plan = NULL;

  if (price->drop == NULL)
    return;
  assert_false (is_missed (after, price->drop));
  dropped.drop = drop;
  plan = plan_of (day, &dropped);
  assert_saves (after, plan, price->drop_saves, price->drop);
}

/* Gives whether the change lost anything, so that a test can count. */
static gboolean
check_change (const FfDay *day, const FfDayChange *change)
{
  g_autoptr (FfDayPlan) after = plan_of (day, change);

  assert_non_null (after->price);
  assert_string_equal (g_ptr_array_index (after->changes, 0), after->price->sentence);
  assert_lost (day, after);
  assert_remedy (day, change, after);
  assert_drop (day, change, after);
  return after->price->lost->len > 0;
}

/* ---- The demo day ---- */

static void
test_headland_at_18_20 (void **state)
{
  static const char *const moves[] = { "D=18:20", NULL };
  const FfDayChange change = { .moves = moves };
  g_autoptr (FfDay) day = load ();

  check_change (day, &change);
}

static void
test_each_shot_through_the_evening (void **state)
{
  g_autoptr (FfDay) day = load ();
  guint lost = 0;

  for (char shot = 'A'; shot <= 'H'; shot++)
    for (int clock = 16 * 60 + 40; clock <= 19 * 60; clock += 35)
      {
        g_autofree char *move
            = g_strdup_printf ("%c=%02d:%02d", shot, clock / 60, clock % 60);
        const char *const moves[] = { move, NULL };

        lost += check_change (day, &(FfDayChange) { .moves = moves });
      }
  assert_true (lost > 0);
}

static void
test_without_each_thing (void **state)
{
  static const char *const things[][3] = {
    { "b1" }, { "b1", "b2" }, { "b4", "b5" }, { "ND32" }, { "ND4", "ND2" }, { "charger" },
    { "charger", "b3" },
  };
  g_autoptr (FfDay) day = load ();
  guint lost = 0;

  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    lost += check_change (day, &(FfDayChange) { .without = things[i] });
  assert_true (lost > 0);
}

static void
test_late (void **state)
{
  static const int late[] = { 5, 10, 15, 30, 45, 90 };
  g_autoptr (FfDay) day = load ();

  for (guint i = 0; i < G_N_ELEMENTS (late); i++)
    check_change (day, &(FfDayChange) { .late_minutes = late[i] });
}

/* With nobody at the charger the dusk shot has no battery; one more, or a person, would save it. */
static void
test_charger_unattended_is_what_it_would_take (void **state)
{
  static const char *const without[] = { "b5", NULL };
  const FfDayChange change = { .without = without };
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) after = NULL;

  for (guint i = 0; i < day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind == FF_KIND_CHARGER)
        {
          g_free (item->attended_by);
          item->attended_by = g_strdup ("");
        }
    }
  after = plan_of (day, &change);
  assert_true (after->price->lost->len > 0);
  assert_int_equal (after->price->remedy.kind, FF_REMEDY_ATTEND);
  assert_non_null (strstr (after->price->sentence, "somebody at the charger"));
  check_change (day, &change);
}

/* What is out with another job is the nearest help, and the sentence says where it is. */
static void
test_what_is_out_is_fetched (void **state)
{
  static const char *const without[] = { "b4", NULL };
  const FfDayChange change = { .without = without };
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) after = NULL;

  for (guint i = 0; i < day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (day->items, i);

      if (!g_str_equal (item->label, "b5"))
        continue;
      item->state = FF_STATE_OUT;
      g_free (item->out_with);
      item->out_with = g_strdup ("Brackenholt");
    }
  after = plan_of (day, &change);
  assert_true (after->price->lost->len > 0);
  assert_int_equal (after->price->remedy.kind, FF_REMEDY_FETCH);
  assert_string_equal (after->price->remedy.label, "b5");
  assert_non_null (strstr (after->price->sentence, "out with Brackenholt"));
  check_change (day, &change);
}

/* ---- Days at random ---- */

/* Three to six shots in tight windows, and as many batteries as leave it open. */
static void
make_random (FfDay *day, GRand *rand)
{
  guint n = (guint) g_rand_int_range (rand, 3, 7);
  int batteries = g_rand_int_range (rand, 1, 4);

  g_ptr_array_set_size (day->shots, (int) n);
  for (guint i = 0; i < n; i++)
    {
      FfShot *shot = g_ptr_array_index (day->shots, i);

      shot->minutes = g_rand_int_range (rand, 4, 11);
      shot->window_from = 16 * 60 + 40 + g_rand_int_range (rand, 0, 140);
      shot->window_to = shot->window_from + shot->minutes + g_rand_int_range (rand, 0, 25);
      shot->fixed_time = g_rand_int_range (rand, 0, 5) == 0;
      shot->most_wanted = g_rand_int_range (rand, 0, 4) == 0;
    }
  for (guint i = 0; i < day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind == FF_KIND_BATTERY && item->usable_minutes > 0 && batteries-- <= 0)
        item->state = g_rand_boolean (rand) ? FF_STATE_QUARANTINED : FF_STATE_OUT;
      else if (item->kind == FF_KIND_FILTER && g_rand_int_range (rand, 0, 3) == 0)
        item->state = FF_STATE_OUT;
    }
}

static gboolean
try_random_change (const FfDay *day, GRand *rand)
{
  const FfShot *shot = g_ptr_array_index (day->shots, g_rand_int_range (rand, 0, (int) day->shots->len));
  int clock = 16 * 60 + 40 + g_rand_int_range (rand, 0, 150);
  g_autofree char *move = g_strdup_printf ("%s=%02d:%02d", shot->label, clock / 60, clock % 60);
  const char *const moves[] = { move, NULL };
  const char *const without[] = { "b1", NULL };

  switch (g_rand_int_range (rand, 0, 3))
    {
    case 0:
      return check_change (day, &(FfDayChange) { .moves = moves });
    case 1:
      return check_change (day, &(FfDayChange) { .late_minutes = g_rand_int_range (rand, 5, 40) });
    default:
      /* The only battery gone is no plan at all. */
      return check_change (day, &(FfDayChange) { .without = without, .more_batteries = 1,
                                                 .late_minutes = 20 });
    }
}

static void
test_random_days (void **state)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20270918);
  guint lost = 0;

  for (int i = 0; i < 60; i++)
    {
      g_autoptr (FfDay) day = load ();

      make_random (day, rand);
      lost += try_random_change (day, rand);
    }
  assert_true (lost >= 10); /* else the days are too easy to show anything */
}

static gboolean
twice (gpointer data)
{
  return ++*(int *) data <= 2;
}

static void
test_a_price_nobody_waits_for_stops (void **state)
{
  static const char *const without[] = { "charger", NULL };
  const FfDayChange change = { .without = without };
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load ();
  g_autoptr (FfDayPlan) plan = plan_of (day, &change);
  int asked = 0;

  assert_false (ff_day_price_change (day, NULL, &change, plan, twice, &asked, &error));
  assert_no_error (error);
  assert_true (asked < 8);
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

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_headland_at_18_20),
    cmocka_unit_test (test_each_shot_through_the_evening),
    cmocka_unit_test (test_without_each_thing),
    cmocka_unit_test (test_late),
    cmocka_unit_test (test_charger_unattended_is_what_it_would_take),
    cmocka_unit_test (test_what_is_out_is_fetched),
    cmocka_unit_test (test_random_days),
    cmocka_unit_test (test_a_price_nobody_waits_for_stops),
  };

  return cmocka_run_group_tests_name ("change", tests, set_up, tear_down);
}
