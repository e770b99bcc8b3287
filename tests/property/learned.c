/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of the learned offset whatever the readings: its rules are those of our own
 * judgement that stand in ff-learned.h. */
#include "ff-test.h"

#include <math.h>

#include "ff-learned.h"

#define ROUNDS 4000
#define MOST 6

typedef struct {
  FfLearnedReading readings[MOST];
  guint n;
  FfSky sky;
  double model; /* spread */
} Case;

static Case
random_case (FfTestRandom *dice)
{
  Case made = { .n = (guint) ff_test_random_int (dice, 1, MOST) };
  double at = 0;

  made.sky = (FfSky) ff_test_random_int (dice, 0, FF_SKY_DARK);
  made.model = ff_test_random (dice, 0.3, 1.6);
  for (guint i = 0; i < made.n; i++)
    {
      at += ff_test_random (dice, 0, 4000);
      made.readings[i] = (FfLearnedReading){
        at, ff_test_random (dice, -4, 4), ff_test_random (dice, 0.05, 2),
        (FfSky) ff_test_random_int (dice, 0, FF_SKY_DARK), ff_test_random_int (dice, 0, 1) == 1
      };
    }
  return made;
}

static FfLearned
learn (const Case *made, double at)
{
  FfLearned learned;

  ff_learned_at (made->readings, made->n, at, made->sky, made->model, &learned);
  return learned;
}

static void
test_never_before_the_reading (void **state)
{
  FfTestRandom dice = { 11 };

  for (int i = 0; i < ROUNDS; i++)
    {
      Case made = random_case (&dice);
      FfLearned learned = learn (&made, made.readings[0].at - ff_test_random (&dice, 1e-3, 9000));

      assert_int_equal (learned.index, -1);
      assert_close (learned.offset_stops, 0, 0);
      assert_close (learned.spread_stops, made.model, 0);
    }
}

/* What an earlier reading said makes no difference once there is a later one. */
static void
test_the_newest_counts_alone (void **state)
{
  FfTestRandom dice = { 12 };

  for (int i = 0; i < ROUNDS; i++)
    {
      Case made = random_case (&dice), alone = made;
      double at = made.readings[made.n - 1].at + ff_test_random (&dice, 0, 9000);
      FfLearned all = learn (&made, at), last;

      alone.readings[0] = made.readings[made.n - 1];
      alone.n = 1;
      last = learn (&alone, at);
      assert_close (all.offset_stops, last.offset_stops, 0);
      assert_close (all.spread_stops, last.spread_stops, 0);
      assert_true (all.index == -1 || all.index == (int) made.n - 1);
    }
}

static void
test_it_is_exact_where_it_was_taken (void **state)
{
  FfTestRandom dice = { 13 };

  for (int i = 0; i < ROUNDS; i++)
    {
      Case made = random_case (&dice);
      const FfLearnedReading *reading = &made.readings[made.n - 1];
      FfLearned learned = learn (&made, reading->at);

      assert_close (learned.offset_stops, reading->offset_stops, 0);
      assert_close (learned.spread_stops, reading->spread_stops, 1e-12);
    }
}

static void
test_it_holds_or_fades (void **state)
{
  FfTestRandom dice = { 14 };

  for (int i = 0; i < ROUNDS; i++)
    {
      Case made = random_case (&dice);
      const FfLearnedReading *reading = &made.readings[made.n - 1];
      double age = ff_test_random (&dice, 0, 5400);
      FfLearned learned = learn (&made, reading->at + age);
      gboolean fades = reading->cloud_moves || reading->sky != made.sky;
      double left = fades ? MAX (1 - age / 1800, 0) : 1;

      assert_close (learned.weight, left, 1e-12);
      assert_close (learned.offset_stops, left * reading->offset_stops, 1e-12);
      assert_int_equal (learned.fades, fades);
    }
}

/* The correction never grows as time goes by, neither jumps; its spread stays between the
 * reading's own and the model's. */
static void
test_it_ages_evenly (void **state)
{
  FfTestRandom dice = { 15 };

  for (int i = 0; i < ROUNDS / 20; i++)
    {
      Case made = random_case (&dice);
      const FfLearnedReading *reading = &made.readings[made.n - 1];
      FfLearned before = learn (&made, reading->at);
      double low = MIN (reading->spread_stops, made.model) - 1e-9;
      double high = MAX (reading->spread_stops, made.model) + 1e-9;

      for (double age = 60; age < 10000; age += 60)
        {
          FfLearned now = learn (&made, reading->at + age);

          assert_true (fabs (now.offset_stops) <= fabs (before.offset_stops) + 1e-12);
          assert_true (fabs (now.offset_stops - before.offset_stops) < 0.14);
          assert_true (now.spread_stops >= low && now.spread_stops <= high);
          before = now;
        }
      assert_close (before.spread_stops,
                    before.fades ? made.model : MAX (made.model, reading->spread_stops), 1e-9);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_never_before_the_reading),
    cmocka_unit_test (test_the_newest_counts_alone),
    cmocka_unit_test (test_it_is_exact_where_it_was_taken),
    cmocka_unit_test (test_it_holds_or_fades),
    cmocka_unit_test (test_it_ages_evenly),
  };

  return cmocka_run_group_tests_name ("learned", tests, NULL, NULL);
}
