/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-words.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"

char *
ff_words_date (const char *date)
{
  FfDate day;

  if (date[0] == '\0' || !ff_date_parse (date, &day, NULL))
    return g_strdup (_ ("no date yet"));
  return ff_date_format_short (day);
}

static void
add_first_off (GPtrArray *parts, int minutes)
{
  g_autofree char *clock = NULL;

  if (minutes < 0)
    return;
  clock = ff_clock_format (minutes);
  /* Translators: the first take-off of the day. */
  g_ptr_array_add (parts, g_strdup_printf (_ ("first off %s"), clock));
}

static void
add_sunset (GPtrArray *parts, const FfChartFacts *chart)
{
  g_autofree char *clock = NULL;

  if (chart == NULL || chart->sunset == 0)
    return;
  clock = ff_instant_clock ((double) chart->sunset, chart->zone);
  g_ptr_array_add (parts, g_strdup_printf (_ ("sunset %s"), clock));
}

char *
ff_words_facts (FfKeeper *keeper)
{
  const FfJob *job = ff_keeper_job (keeper);
  const FfPlace *place = ff_keeper_place (keeper);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (job == NULL)
    return g_strdup ("");
  if (place != NULL && !g_str_equal (place->name, job->title))
    g_ptr_array_add (parts, g_strdup (place->name));
  g_ptr_array_add (parts, ff_words_date (job->date));
  add_first_off (parts, job->first_off);
  add_sunset (parts, ff_keeper_chart (keeper));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (" · ", (char **) parts->pdata);
}

static char *
plan_words (const FfDayPlan *plan)
{
  guint n = plan->missed->len + plan->clashes->len;
  g_autofree char *first = NULL;

  if (n == 0)
    return g_strdup (_ ("■ Nothing entered here is open. The pilot decides."));
  if (plan->missed->len > 0)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, 0);

      /* Translators: a shot that the plan can't fly, and why: "F is not flown: no battery …". */
      first = g_strdup_printf (_ ("%s is not flown: %s"), miss->shot, miss->reason);
    }
  else
    first = g_strdup (g_ptr_array_index (plan->clashes, 0));
  if (n == 1)
    return g_strdup_printf ("□ %s", first);
  /* Translators: how many things are open, and the first of them. */
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "□ %u open: %s", "□ %u open: %s", n), n, first);
}

char *
ff_words_open (FfKeeper *keeper)
{
  const FfDayPlan *plan = ff_keeper_plan (keeper);
  const char *why = ff_keeper_why (keeper);

  if (ff_keeper_job (keeper) == NULL)
    return NULL;
  if (plan != NULL)
    return plan_words (plan);
  /* Translators: why the day can't be planned yet: what is to be entered. */
  return why != NULL ? g_strdup_printf (_ ("□ Not planned yet: %s"), why) : NULL;
}
