/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sheet-limits.h"

#include <glib/gi18n-lib.h>

#include "ff-day-private.h"
#include "ff-limit-words.h"
#include "ff-weather-today.h"

static char *
whose_text (const FfLimit *limit, const FfLimitToday *row)
{
  GString *text = g_string_new (ff_name_text (&ff_names_rule, limit->rule));

  if (*limit->checked_on != '\0')
    g_string_append_printf (text, _ (", checked %s %s"), limit->checked_on, limit->checked_by);
  else
    g_string_append (text, _ (", never checked"));
  if (row->overdue && *limit->checked_on != '\0')
    /* Translators: a rule has to be looked up again. */
    g_string_append (text, _ (", check overdue"));
  if (limit->example)
    g_string_append (text, _ ("; example: set your own"));
  return g_string_free (text, FALSE);
}

static void
add_row (FfSheetFacts *facts, const FfLimit *record, const FfLimitToday *row)
{
  FfSheetLimit *limit = g_new0 (FfSheetLimit, 1);

  limit->text = g_strdup (row->text);
  limit->bound = ff_limit_bound_words (record);
  limit->whose = whose_text (record, row);
  /* The word for it stands at the head of the sheet; there is no line to spare for it here. */
  limit->stands = g_strdup (row->answer == FF_LIMIT_OUTSIDE ? ff_limit_answer_shape (row->answer)
                                                            : "");
  g_ptr_array_add (facts->limits, limit);
}

/* Of several the strictest. */
static char *
distance_limit (const FfDay *day, const FfLimitsToday *today)
{
  for (guint i = 0; i < today->rows->len; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (today->rows, i);

      if (g_str_equal (row->kind, "distance") && row->binds)
        return ff_limit_bound_words (g_ptr_array_index (day->limits, i));
    }
  return g_strdup ("");
}

/* One sentence, as the summary elsewhere, but with no word that the sheet says by itself. */
static char *
stand_text (const FfLimitsToday *today)
{
  guint outside = 0, open = 0;

  for (guint i = 0; i < today->rows->len; i++)
    {
      const FfLimitAnswer answer
          = ((const FfLimitToday *) g_ptr_array_index (today->rows, i))->answer;

      outside += answer == FF_LIMIT_OUTSIDE;
      open += answer == FF_LIMIT_NOT_ASSESSED;
    }
  if (outside + open == 0)
    return g_strdup (_ ("Nothing entered here is open."));
  if (outside == 0)
    /* Translators: a number of limits that can't be answered. */
    return g_strdup_printf (_ ("□ %u limits not assessed."), open);
  /* Translators: numbers of limits that are not kept, and of those that can't be answered. */
  return g_strdup_printf (_ ("✕ %u outside, □ %u not assessed."), outside, open);
}

static void
add_missing (FfSheetFacts *facts, const FfLimitsToday *today)
{
  gboolean never = FALSE, overdue = FALSE;

  for (guint i = 0; i < today->rows->len; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (today->rows, i);

      never = never || *row->checked == '\0';
      overdue = overdue || (row->overdue && *row->checked != '\0');
    }
  if (today->rows->len == 0)
    ff_sheet_facts_take_missing (
        facts, "records",
        g_strdup (_ ("No limits are entered: the crew's own sheet is blank.")));
  if (never)
    ff_sheet_facts_take_missing (
        facts, "records",
        g_strdup (_ ("Limits were never checked against their source.")));
  if (overdue)
    ff_sheet_facts_take_missing (
        facts, "records",
        g_strdup (_ ("The check of limits against their source is overdue.")));
}

void
ff_sheet_facts_add_limits (FfSheetFacts *facts,
                           const FfDay *day,
                           const FfDayPlan *plan,
                           gint64 now)
{
  g_autoptr (FfLimitsToday) today = ff_limits_today (day, plan, now);

  for (guint i = 0; i < today->rows->len; i++)
    add_row (facts, g_ptr_array_index (day->limits, i), g_ptr_array_index (today->rows, i));
  facts->distance_limit = distance_limit (day, today);
  facts->limits_stand = stand_text (today);
  add_missing (facts, today);
}
