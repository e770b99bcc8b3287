/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The four answers, over seeded random rows and facts. */
#include "ff-test.h"

#include <math.h>

#include "ff-limit-kind.h"
#include "ff-limits.h"

#define N 20000

static FfTestRandom dice = { 20270918 };

static FfLimitRow
random_row (const char *kind)
{
  static const FfCompare compares[]
      = { FF_COMPARE_AT_MOST, FF_COMPARE_AT_LEAST, FF_COMPARE_BELOW, FF_COMPARE_ABOVE,
          FF_COMPARE_BETWEEN };
  FfLimitRow row = { .kind = kind,
                     .compare = compares[ff_test_random_int (&dice, 0, 4)],
                     .value = ff_test_random_int (&dice, 0, 8),
                     .value_to = NAN };

  if (row.compare == FF_COMPARE_BETWEEN)
    row.value_to = row.value + ff_test_random_int (&dice, 0, 5);
  return row;
}

static FfLimitFact
random_fact (const char *kind)
{
  FfLimitFact fact = { .kind = kind, .is = FF_FACT_VALUE };

  fact.low = ff_test_random_int (&dice, 0, 10);
  fact.high = fact.low + ff_test_random_int (&dice, 0, 3);
  if (fact.high > fact.low)
    {
      fact.low_open = ff_test_random_int (&dice, 0, 1);
      fact.high_open = ff_test_random_int (&dice, 0, 1);
    }
  return fact;
}

static gboolean
keeps (const FfLimitRow *row, double value)
{
  if (row->compare == FF_COMPARE_AT_MOST)
    return value <= row->value;
  if (row->compare == FF_COMPARE_AT_LEAST)
    return value >= row->value;
  if (row->compare == FF_COMPARE_BELOW)
    return value < row->value;
  if (row->compare == FF_COMPARE_ABOVE)
    return value > row->value;
  return value >= row->value && value <= row->value_to;
}

/* Within: every value that the fact may have keeps the limit. Outside: none does. Limits and facts
 * stand on whole numbers, so that quarters find each side of every end. */
static void
test_answers_hold_for_every_value (void **state)
{
  guint seen[4] = { 0 };
  int i;

  for (i = 0; i < N; i++)
    {
      FfLimitRow row = random_row ("height");
      FfLimitFact fact = random_fact ("height");
      FfLimitAnswer answer = ff_limits_answer (&row, &fact);
      gboolean all = TRUE, none = TRUE;
      double value;

      for (value = fact.low + (fact.low_open ? 0.25 : 0); value <= fact.high; value += 0.25)
        {
          if (value == fact.high && fact.high_open)
            break;
          all = all && keeps (&row, value);
          none = none && !keeps (&row, value);
        }
      assert_int_equal (answer == FF_LIMIT_WITHIN, all);
      assert_int_equal (answer == FF_LIMIT_OUTSIDE, none && !all);
      seen[answer]++;
    }
  assert_true (seen[FF_LIMIT_WITHIN] > 1000 && seen[FF_LIMIT_OUTSIDE] > 1000
               && seen[FF_LIMIT_NOT_ASSESSED] > 1000);
}

static void
test_another_row_never_helps (void **state)
{
  static const char *const kinds[] = { "height", "distance", "gust" };
  int i, k;

  for (i = 0; i < N / 10; i++)
    {
      FfLimitRow rows[7];
      FfLimitFact facts[3];
      FfLimitAnswer fewer[7], more[7], before, after;

      for (k = 0; k < 7; k++)
        rows[k] = random_row (kinds[ff_test_random_int (&dice, 0, 2)]);
      for (k = 0; k < 3; k++)
        facts[k] = random_fact (kinds[k]);
      before = ff_limits_assess (rows, 6, facts, 3, fewer, NULL);
      after = ff_limits_assess (rows, 7, facts, 3, more, NULL);
      assert_true (after >= before);
      for (k = 0; k < 6; k++)
        assert_int_equal (fewer[k], more[k]);
    }
}

/* The row that binds is never kept while another of its kind and sense is not. */
static void
test_the_strictest_binds (void **state)
{
  int i, k, m;

  for (i = 0; i < N / 10; i++)
    {
      FfLimitRow rows[5];
      FfLimitFact fact = random_fact ("height");
      FfLimitAnswer answers[5];
      gboolean binds[5];

      for (k = 0; k < 5; k++)
        {
          rows[k] = random_row ("height");
          if (rows[k].compare == FF_COMPARE_BETWEEN)
            rows[k].compare = FF_COMPARE_AT_MOST;
        }
      ff_limits_assess (rows, 5, &fact, 1, answers, binds);
      for (k = 0; k < 5; k++)
        for (m = 0; m < 5; m++)
          {
            gboolean up = rows[k].compare == FF_COMPARE_AT_MOST
                          || rows[k].compare == FF_COMPARE_BELOW;
            gboolean other_up = rows[m].compare == FF_COMPARE_AT_MOST
                                || rows[m].compare == FF_COMPARE_BELOW;

            if (binds[k] && up == other_up)
              assert_true (answers[k] >= answers[m]);
          }
    }
}

/* Typed in another unit, a limit and a fact that do not meet give the same answer. */
static void
test_units_change_no_answer (void **state)
{
  const FfUnit *metre = ff_unit_find (FF_DIMENSION_LENGTH, "m");
  int i;

  for (i = 0; i < N; i++)
    {
      FfLimitRow row = random_row ("height"), again = row;
      FfLimitFact fact = random_fact ("height");
      const FfUnit *unit = ff_unit_at (FF_DIMENSION_LENGTH, (guint) ff_test_random_int (&dice, 0, 4));

      fact.low += 0.3;
      fact.high += 0.3;
      again.value = ff_unit_to_si (unit, ff_unit_from_si (unit, ff_unit_to_si (metre, row.value)));
      again.value_to = ff_unit_to_si (unit, ff_unit_from_si (unit, row.value_to));
      assert_int_equal (ff_limits_answer (&row, &fact), ff_limits_answer (&again, &fact));
    }
}

/* 14 CFR 107.51: 400 feet above ground is 121.92 m, neither 122 nor 120 m. */
static void
test_feet_are_not_rounded (void **state)
{
  const FfUnit *foot = ff_unit_find (FF_DIMENSION_LENGTH, "ft");
  const FfLimitRow row = { "height", FF_COMPARE_AT_MOST, ff_unit_to_si (foot, 400), NAN };
  const FfLimitFact at = { .kind = "height", .is = FF_FACT_VALUE, .low = 121.92, .high = 121.92 };
  const FfLimitFact over = { .kind = "height", .is = FF_FACT_VALUE, .low = 122, .high = 122 };

  assert_close (row.value, 121.92, 1e-12);
  assert_int_equal (ff_limits_answer (&row, &at), FF_LIMIT_WITHIN);
  assert_int_equal (ff_limits_answer (&row, &over), FF_LIMIT_OUTSIDE);
}

static void
test_flags_windows_and_what_is_unknown (void **state)
{
  const FfLimitFact yes = { .kind = "rain", .is = FF_FACT_FLAG, .low = 1, .high = 1 };
  const FfLimitFact no = { .kind = "rain", .is = FF_FACT_FLAG };
  const FfLimitFact none = { .kind = "rain", .is = FF_FACT_NOT_APPLICABLE };
  const FfLimitFact evening
      = { .kind = "flying-time", .is = FF_FACT_VALUE, .low = 16 * 60 + 30, .high = 19 * 60 + 50 };
  FfLimitRow row = { "rain", FF_COMPARE_PROHIBITED, NAN, NAN };

  assert_int_equal (ff_limits_answer (&row, &yes), FF_LIMIT_OUTSIDE);
  assert_int_equal (ff_limits_answer (&row, &no), FF_LIMIT_WITHIN);
  assert_int_equal (ff_limits_answer (&row, &none), FF_LIMIT_NOT_APPLICABLE);
  assert_int_equal (ff_limits_answer (&row, NULL), FF_LIMIT_NOT_ASSESSED);
  row.compare = FF_COMPARE_REQUIRED;
  assert_int_equal (ff_limits_answer (&row, &yes), FF_LIMIT_WITHIN);
  assert_int_equal (ff_limits_answer (&row, &no), FF_LIMIT_OUTSIDE);
  row.compare = FF_COMPARE_INFORMATION;
  assert_int_equal (ff_limits_answer (&row, &yes), FF_LIMIT_NOT_APPLICABLE);

  row = (FfLimitRow){ "flying-time", FF_COMPARE_WINDOW, 6 * 60, 19 * 60 + 57 };
  assert_int_equal (ff_limits_answer (&row, &evening), FF_LIMIT_WITHIN);
  row.value_to = 19 * 60;
  assert_int_equal (ff_limits_answer (&row, &evening), FF_LIMIT_NOT_ASSESSED);
  row.value_to = 16 * 60;
  assert_int_equal (ff_limits_answer (&row, &evening), FF_LIMIT_OUTSIDE);
  /* Over midnight: 16:00 to 02:00. */
  row = (FfLimitRow){ "flying-time", FF_COMPARE_WINDOW, 16 * 60, 2 * 60 };
  assert_int_equal (ff_limits_answer (&row, &evening), FF_LIMIT_WITHIN);
}

static void
test_every_kind_has_its_unit (void **state)
{
  const FfLimitKind *kind;
  guint i, n = 0;

  for (i = 0; (kind = ff_limit_kind_at (i)) != NULL; i++, n++)
    {
      assert_ptr_equal (ff_limit_kind_find (kind->token), kind);
      assert_non_null (ff_unit_at (kind->dimension, 0));
      /* The first unit of a dimension is the one that is reckoned in, but for shares. */
      if (kind->dimension != FF_DIMENSION_SHARE)
        assert_close (ff_unit_to_si (ff_unit_at (kind->dimension, 0), 7), 7, 0);
    }
  assert_true (n >= 43);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_answers_hold_for_every_value),
    cmocka_unit_test (test_another_row_never_helps),
    cmocka_unit_test (test_the_strictest_binds),
    cmocka_unit_test (test_units_change_no_answer),
    cmocka_unit_test (test_feet_are_not_rounded),
    cmocka_unit_test (test_flags_windows_and_what_is_unknown),
    cmocka_unit_test (test_every_kind_has_its_unit),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
