/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define DAY_MINUTES (24 * 60)

static const FfName answer_names[] = {
  /* TRANSLATORS: the four answers a limit can have. Never "you may fly". */
  [FF_LIMIT_NOT_APPLICABLE] = { "not_applicable", N_ ("not applicable") },
  [FF_LIMIT_WITHIN] = { "within", N_ ("within") },
  [FF_LIMIT_NOT_ASSESSED] = { "not_assessed", N_ ("not assessed") },
  [FF_LIMIT_OUTSIDE] = { "outside", N_ ("outside") },
};
const FfNames ff_names_limit_answer = { "answer", answer_names, G_N_ELEMENTS (answer_names) };

/* all: the whole of the fact keeps the limit. none: no part of it does. */
static FfLimitAnswer
bound (gboolean all, gboolean none)
{
  if (all)
    return FF_LIMIT_WITHIN;
  return none ? FF_LIMIT_OUTSIDE : FF_LIMIT_NOT_ASSESSED;
}

/* `strict`: the limit itself is already outside. */
static FfLimitAnswer
answer_at_most (const FfLimitFact *fact, double limit, gboolean strict)
{
  const gboolean all
      = strict ? fact->high < limit || (fact->high == limit && fact->high_open) : fact->high <= limit;
  const gboolean none
      = strict ? fact->low >= limit : fact->low > limit || (fact->low == limit && fact->low_open);

  return bound (all, none);
}

static FfLimitAnswer
answer_at_least (const FfLimitFact *fact, double limit, gboolean strict)
{
  const FfLimitFact mirrored = { .low = -fact->high,
                                 .high = -fact->low,
                                 .low_open = fact->high_open,
                                 .high_open = fact->low_open };

  return answer_at_most (&mirrored, -limit, strict);
}

static FfLimitAnswer
answer_between (const FfLimitFact *fact, double from, double to)
{
  const FfLimitAnswer below = answer_at_least (fact, from, FALSE), above = answer_at_most (fact, to, FALSE);

  return MAX (below, above);
}

/* Minutes of the clock: a window that passes midnight is two days' worth of the same. */
static FfLimitAnswer
answer_window (const FfLimitFact *fact, double from, double to)
{
  const double end = to < from ? to + DAY_MINUTES : to;
  gboolean all = FALSE, none = TRUE;
  int day;

  for (day = -1; day <= 2; day++)
    {
      const double shift = day * DAY_MINUTES;

      all = all || (fact->low >= from + shift && fact->high <= end + shift);
      none = none && (fact->high < from + shift || fact->low > end + shift);
    }
  return bound (all, none);
}

FfLimitAnswer
ff_limits_answer (const FfLimitRow *row, const FfLimitFact *fact)
{
  if (row->compare == FF_COMPARE_INFORMATION
      || (fact != NULL && fact->is == FF_FACT_NOT_APPLICABLE))
    return FF_LIMIT_NOT_APPLICABLE;
  if (fact == NULL || fact->is == FF_FACT_UNKNOWN || isnan (fact->low) || isnan (fact->high))
    return FF_LIMIT_NOT_ASSESSED;
  switch (row->compare)
    {
    case FF_COMPARE_AT_MOST:
    case FF_COMPARE_BY_TIME:
      return answer_at_most (fact, row->value, FALSE);
    case FF_COMPARE_BELOW:
      return answer_at_most (fact, row->value, TRUE);
    case FF_COMPARE_AT_LEAST:
      return answer_at_least (fact, row->value, FALSE);
    case FF_COMPARE_ABOVE:
      return answer_at_least (fact, row->value, TRUE);
    case FF_COMPARE_BETWEEN:
      return answer_between (fact, row->value, row->value_to);
    case FF_COMPARE_WINDOW:
      return answer_window (fact, row->value, row->value_to);
    case FF_COMPARE_REQUIRED:
      return bound (fact->low > 0.0, fact->high <= 0.0);
    case FF_COMPARE_PROHIBITED:
      return bound (fact->high <= 0.0, fact->low > 0.0);
    case FF_COMPARE_INFORMATION:
      break;
    }
  return FF_LIMIT_NOT_APPLICABLE;
}

static const FfLimitFact *
fact_of (const FfLimitFact *facts, guint n, const char *kind)
{
  guint i;

  for (i = 0; i < n; i++)
    if (strcmp (facts[i].kind, kind) == 0)
      return &facts[i];
  return NULL;
}

/* How much room a row leaves below its limit, or above: less binds. Rows of different sense are not
 * compared. */
static gboolean
is_stricter (const FfLimitRow *a, const FfLimitRow *b)
{
  switch (a->compare)
    {
    case FF_COMPARE_AT_MOST:
    case FF_COMPARE_BY_TIME:
    case FF_COMPARE_BELOW:
      return a->value < b->value
             || (a->value == b->value && a->compare == FF_COMPARE_BELOW
                 && b->compare != FF_COMPARE_BELOW);
    case FF_COMPARE_AT_LEAST:
    case FF_COMPARE_ABOVE:
      return a->value > b->value
             || (a->value == b->value && a->compare == FF_COMPARE_ABOVE
                 && b->compare != FF_COMPARE_ABOVE);
    case FF_COMPARE_BETWEEN:
    case FF_COMPARE_WINDOW:
    case FF_COMPARE_REQUIRED:
    case FF_COMPARE_PROHIBITED:
    case FF_COMPARE_INFORMATION:
      break;
    }
  return FALSE;
}

static int
sense (FfCompare compare)
{
  switch (compare)
    {
    case FF_COMPARE_AT_MOST:
    case FF_COMPARE_BY_TIME:
    case FF_COMPARE_BELOW:
      return 1;
    case FF_COMPARE_AT_LEAST:
    case FF_COMPARE_ABOVE:
      return 2;
    case FF_COMPARE_BETWEEN:
    case FF_COMPARE_WINDOW:
    case FF_COMPARE_REQUIRED:
    case FF_COMPARE_PROHIBITED:
    case FF_COMPARE_INFORMATION:
      break;
    }
  return 3;
}

static gboolean
binds (const FfLimitRow *rows, guint n, guint i)
{
  guint j;

  if (rows[i].compare == FF_COMPARE_INFORMATION)
    return FALSE;
  for (j = 0; j < n; j++)
    {
      if (j == i || strcmp (rows[j].kind, rows[i].kind) != 0
          || sense (rows[j].compare) != sense (rows[i].compare))
        continue;
      if (is_stricter (&rows[j], &rows[i])
          || (j < i && sense (rows[i].compare) != 3 && !is_stricter (&rows[i], &rows[j])))
        return FALSE;
    }
  return TRUE;
}

FfLimitAnswer
ff_limits_assess (const FfLimitRow *rows,
                  guint n_rows,
                  const FfLimitFact *facts,
                  guint n_facts,
                  FfLimitAnswer *ret_answers,
                  gboolean *ret_binds)
{
  FfLimitAnswer worst = FF_LIMIT_NOT_APPLICABLE;
  guint i;

  for (i = 0; i < n_rows; i++)
    {
      ret_answers[i] = ff_limits_answer (&rows[i], fact_of (facts, n_facts, rows[i].kind));
      worst = MAX (worst, ret_answers[i]);
      if (ret_binds != NULL)
        ret_binds[i] = binds (rows, n_rows, i);
    }
  return worst;
}
