/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-jobs-list.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"

FfJobsGroup
ff_jobs_group (const FfJob *job, const char *today)
{
  if (job->state == FF_JOB_PUT_AWAY)
    return FF_JOBS_AWAY;
  if (job->date[0] == '\0')
    return job->state == FF_JOB_FLOWN ? FF_JOBS_PAST : FF_JOBS_COMING;
  /* What is flown today is still of today. Dates in this form compare as text. */
  return strcmp (job->date, today) >= 0 ? FF_JOBS_COMING : FF_JOBS_PAST;
}

static int
compare_dates (const FfJob *a, const FfJob *b, FfJobsGroup group)
{
  gboolean dated_a = a->date[0] != '\0', dated_b = b->date[0] != '\0';

  if (dated_a != dated_b)
    return dated_a ? -1 : 1;
  return group == FF_JOBS_COMING ? strcmp (a->date, b->date) : strcmp (b->date, a->date);
}

static int
compare_jobs (gconstpointer first, gconstpointer second, gpointer today)
{
  const FfJob *a = *(FfJob *const *) first;
  const FfJob *b = *(FfJob *const *) second;
  FfJobsGroup group_a = ff_jobs_group (a, today), group_b = ff_jobs_group (b, today);
  int order;

  if (group_a != group_b)
    return group_a < group_b ? -1 : 1;
  order = compare_dates (a, b, group_a);
  return order != 0 ? order : g_utf8_collate (a->title, b->title);
}

void
ff_jobs_sort (GPtrArray *jobs, const char *today)
{
  g_ptr_array_sort_with_data (jobs, compare_jobs, (gpointer) today);
}

static gboolean
to_gdate (const char *text, GDate *ret_date)
{
  FfDate date;

  if (!ff_date_parse (text, &date, NULL))
    return FALSE;
  g_date_clear (ret_date, 1);
  g_date_set_dmy (ret_date, (GDateDay) date.day, (GDateMonth) date.month, (GDateYear) date.year);
  return TRUE;
}

char *
ff_jobs_when (const char *date, const char *today)
{
  GDate day, now;
  int n;

  if (date[0] == '\0' || !to_gdate (date, &day) || !to_gdate (today, &now))
    return NULL;
  n = g_date_days_between (&now, &day);
  if (n < 0)
    return NULL;
  if (n == 0)
    return g_strdup (_ ("today"));
  if (n == 1)
    return g_strdup (_ ("tomorrow"));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "in %d day", "in %d days", (gulong) n), n);
}

static gboolean
stands_in (const char *word, const char *const *texts)
{
  for (; *texts != NULL; texts++)
    {
      g_autofree char *folded = g_utf8_casefold (*texts, -1);

      if (strstr (folded, word) != NULL)
        return TRUE;
    }
  return FALSE;
}

gboolean
ff_jobs_match (const char *wanted, const char *const *texts)
{
  g_autofree char *folded = g_utf8_casefold (wanted, -1);
  g_auto (GStrv) words = g_strsplit (folded, " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0' && !stands_in (words[i], texts))
      return FALSE;
  return TRUE;
}
