/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-paper.h"

#include <glib/gi18n-lib.h>

#include "ff-job.h"
#include "ff-standing.h"

static char *
letter_words (const FfStanding *standing)
{
  const char *letter = standing->version->letter;
  int first = 0, last = 0;

  for (guint i = 0; i < standing->amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (standing->amendments, i);

      if (!g_str_equal (amendment->letter, letter))
        continue;
      first = first > 0 ? first : amendment->number;
      last = amendment->number;
    }
  if (first == 0)
    return g_strdup (letter);
  if (first == last)
    /* Translators: the letter of a printed plan, the number of what was changed since. */
    return g_strdup_printf (_ ("%s, amendment %d"), letter, first);
  /* Translators: the same with the first and the last number. */
  return g_strdup_printf (_ ("%s, amendments %d–%d"), letter, first, last);
}

char *
ff_paper_letter (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (FfStanding) standing = ff_standing_load (store, job_id, error);
  g_autoptr (FfJob) job = NULL;

  if (standing == NULL)
    return NULL;
  if (standing->version != NULL)
    return letter_words (standing);
  job = ff_job_load (store, job_id, error);
  return job != NULL ? g_strdup (job->version) : NULL;
}

static const char *
id_of_number (const FfDayPlan *plan, int number)
{
  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (line->line == number)
        return line->id;
    }
  return NULL;
}

/* A line that an amendment dropped was on paper, and may have flown before that was read. */
static char *
frozen_line (const FfStanding *standing, int number)
{
  const char *id = id_of_number (standing->plan, number);

  if (id == NULL)
    id = id_of_number (standing->frozen, number);
  return g_strdup (id != NULL ? id : "");
}

char *
ff_paper_line_id (FfStore *store, const char *job_id, int number, GError **error)
{
  g_autoptr (FfStanding) standing = ff_standing_load (store, job_id, error);
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  const char *id;

  if (standing == NULL)
    return NULL;
  if (number < 1)
    return g_strdup ("");
  if (standing->version != NULL)
    return frozen_line (standing, number);
  day = ff_day_load (store, job_id, NULL);
  plan = day != NULL ? ff_day_plan (day, NULL, NULL) : NULL;
  id = id_of_number (plan, number);
  return g_strdup (id != NULL ? id : "");
}
