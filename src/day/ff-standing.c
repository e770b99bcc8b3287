/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-standing.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-plan-change.h"
#include "ff-plan-copy.h"
#include "ff-plan-private.h"

/* ---- Loaded ---- */

static gboolean
stands_beside (const FfStanding *standing, const FfAmendment *amendment)
{
  return standing->version != NULL && strcmp (amendment->letter, standing->version->letter) == 0;
}

static gboolean
read_copies (FfStanding *standing, GError **error)
{
  if (standing->version == NULL)
    return TRUE;
  standing->frozen = ff_plan_copy_read (standing->version->copy, error);
  standing->plan = standing->frozen != NULL ? ff_plan_copy_read (standing->version->copy, error)
                                            : NULL;
  if (standing->plan == NULL)
    g_prefix_error (error, _ ("version %s: "), standing->version->letter);
  return standing->plan != NULL;
}

static gboolean
apply (const FfAmendment *amendment, FfDayPlan *plan, GError **error)
{
  g_autoptr (FfPlanChange) change = NULL;

  /* Of the first releases: a sentence without a change. */
  if (*amendment->change == '\0')
    return TRUE;
  change = ff_plan_change_read (amendment->change, error);
  if (change != NULL && ff_plan_change_apply (change, plan, error))
    return TRUE;
  g_prefix_error (error, _ ("amendment %d: "), amendment->number);
  return FALSE;
}

static gboolean
apply_all (FfStanding *standing, GError **error)
{
  for (guint i = 0; i < standing->amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (standing->amendments, i);

      if (stands_beside (standing, amendment) && !apply (amendment, standing->plan, error))
        return FALSE;
    }
  return TRUE;
}

FfStanding *
ff_standing_load (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (FfStanding) standing = g_new0 (FfStanding, 1);

  standing->versions = ff_plan_versions_load (store, job_id, error);
  if (standing->versions == NULL)
    return NULL;
  standing->amendments = ff_amendments_load (store, job_id, error);
  standing->briefed = standing->amendments != NULL ? ff_briefed_load (store, job_id, error) : NULL;
  if (standing->briefed == NULL)
    return NULL;
  if (standing->versions->len > 0)
    standing->version = g_ptr_array_index (standing->versions, standing->versions->len - 1);
  if (!read_copies (standing, error) || !apply_all (standing, error))
    return NULL;
  return g_steal_pointer (&standing);
}

void
ff_standing_free (FfStanding *standing)
{
  if (standing == NULL)
    return;
  ff_day_plan_free (standing->frozen);
  ff_day_plan_free (standing->plan);
  g_clear_pointer (&standing->versions, g_ptr_array_unref);
  g_clear_pointer (&standing->amendments, g_ptr_array_unref);
  g_clear_pointer (&standing->briefed, g_ptr_array_unref);
  g_free (standing);
}

gboolean
ff_standing_check (GPtrArray *versions, GPtrArray *amendments, GError **error)
{
  for (guint i = 0; i < versions->len; i++)
    {
      const FfPlanVersion *version = g_ptr_array_index (versions, i);
      g_autoptr (FfDayPlan) plan = ff_plan_copy_read (version->copy, error);

      if (plan != NULL)
        continue;
      g_prefix_error (error, _ ("version %s: "), version->letter);
      return FALSE;
    }
  for (guint i = 0; i < amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (amendments, i);
      g_autoptr (FfPlanChange) change
          = *amendment->change != '\0' ? ff_plan_change_read (amendment->change, error) : NULL;

      if (change != NULL || *amendment->change == '\0')
        continue;
      g_prefix_error (error, _ ("amendment %d: "), amendment->number);
      return FALSE;
    }
  return TRUE;
}

/* ---- In words ---- */

/* Numbers of those that stand beside the sheets: first, last, how many. */
static guint
range (const FfStanding *standing, int *ret_first, int *ret_last)
{
  guint n = 0;

  for (guint i = 0; i < standing->amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (standing->amendments, i);

      if (!stands_beside (standing, amendment))
        continue;
      if (n++ == 0)
        *ret_first = amendment->number;
      *ret_last = amendment->number;
    }
  return n;
}

guint
ff_standing_n_amendments (const FfStanding *standing)
{
  int first, last;

  return range (standing, &first, &last);
}

guint
ff_standing_n_open (const FfStanding *standing)
{
  guint n = 0;

  for (guint i = 0; i < standing->amendments->len; i++)
    if (stands_beside (standing, g_ptr_array_index (standing->amendments, i)))
      n += ff_amendment_n_open (g_ptr_array_index (standing->amendments, i));
  return n;
}

char *
ff_standing_beside (const FfStanding *standing)
{
  int first, last;
  guint n = range (standing, &first, &last);

  if (n == 0)
    return g_strdup ("");
  if (n == 1)
    return g_strdup_printf (_ ("amendment %d stands beside this sheet"), first);
  /* Translators: the first and the last number. */
  return g_strdup_printf (_ ("amendments %d–%d stand beside this sheet"), first, last);
}

char *
ff_standing_words (const FfStanding *standing, const FfDay *day)
{
  g_autoptr (GDateTime) utc = NULL;
  g_autoptr (GDateTime) local = NULL;
  g_autofree char *when = NULL;
  int first, last;
  guint n;

  if (standing->version == NULL)
    return g_strdup_printf (_ ("Version %s, not frozen"), day->job->version);
  utc = g_date_time_new_from_unix_utc (standing->version->frozen_at);
  local = g_date_time_to_timezone (utc, day->zone);
  /* Translators: when a plan was frozen, in strftime's letters: "17:32 Sat 18 Sep". */
  when = g_date_time_format (local, _ ("%H:%M %a %e %b"));
  n = range (standing, &first, &last);
  if (n == 0)
    return g_strdup_printf (_ ("Version %s, frozen %s"), standing->version->letter, when);
  if (n == 1)
    return g_strdup_printf (_ ("Version %s, frozen %s, with amendment %d"),
                            standing->version->letter, when, first);
  return g_strdup_printf (_ ("Version %s, frozen %s, with amendments %d–%d"),
                          standing->version->letter, when, first, last);
}

/* ---- Decided ---- */

static int
last_number (const FfStanding *standing)
{
  int last = 0;

  for (guint i = 0; i < standing->amendments->len; i++)
    last = MAX (last, ((FfAmendment *) g_ptr_array_index (standing->amendments, i))->number);
  return last;
}

static int
highest_line (const GPtrArray *lines, int highest)
{
  for (guint i = 0; i < lines->len; i++)
    highest = MAX (highest, ((FfPlanLine *) g_ptr_array_index (lines, i))->line);
  return highest;
}

/* A number that was on paper once is not given to another line, even when its own is gone. */
static int
last_line (const FfStanding *standing)
{
  int highest = highest_line (standing->frozen->lines, 0);

  for (guint i = 0; i < standing->amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (standing->amendments, i);
      g_autoptr (FfPlanChange) change = NULL;

      if (!stands_beside (standing, amendment) || *amendment->change == '\0')
        continue;
      change = ff_plan_change_read (amendment->change, NULL);
      if (change != NULL)
        highest = highest_line (change->lines, highest);
    }
  return highest;
}

FfAmendment *
ff_standing_propose (const FfStanding *standing,
                     const FfDay *day,
                     const FfDayPlan *plan,
                     const char *by,
                     gint64 at)
{
  g_autoptr (FfPlanChange) change = NULL;
  FfAmendment *amendment;

  if (standing->version == NULL || ff_plan_same (standing->plan, plan))
    return NULL;
  change = ff_plan_change_new (standing->plan, plan, last_line (standing));
  amendment = ff_amendment_new (day->job->id);
  amendment->number = last_number (standing) + 1;
  ff_set_text (&amendment->letter, standing->version->letter);
  amendment->at = at;
  ff_set_text (&amendment->by, by);
  g_free (amendment->change);
  amendment->change = ff_plan_change_write (change);
  ff_plan_change_say (change, standing->plan, day->zone, amendment);
  return amendment;
}

/* The letter after one: B after A, AA after Z. */
static char *
next_letter (const char *letter)
{
  GString *next = g_string_new (letter);
  gsize i = next->len;

  while (i > 0 && next->str[i - 1] == 'Z')
    next->str[--i] = 'A';
  if (i > 0)
    next->str[i - 1]++;
  else
    g_string_prepend_c (next, 'A');
  return g_string_free (next, FALSE);
}

static char *
letter_for (FfStore *store, const FfDay *day, const char *why, GError **error)
{
  g_autoptr (GPtrArray) versions = ff_plan_versions_load (store, day->job->id, error);
  const FfPlanVersion *last;

  if (versions == NULL)
    return NULL;
  if (versions->len == 0)
    return g_strdup (day->job->version);
  last = g_ptr_array_index (versions, versions->len - 1);
  if (why != NULL && *why != '\0')
    return next_letter (last->letter);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("version %s is frozen and stays as it is; amend it, or decide on a new letter and "
                  "say why"),
               last->letter);
  return NULL;
}

/* The copy carries the letter, and the job says which one stands. */
static gboolean
store_version (FfStore *store, FfPlanVersion *version, const FfDayPlan *plan, GError **error)
{
  g_autoptr (FfJob) job = ff_job_load (store, version->job_id, error);
  FfDayPlan lettered = *plan;

  if (job == NULL)
    return FALSE;
  lettered.version = version->letter;
  g_free (version->copy);
  version->copy = ff_plan_copy_write (&lettered);
  ff_set_text (&job->version, version->letter);
  return ff_plan_version_append (store, version, error) && ff_job_save (store, job, error);
}

char *
ff_plan_freeze (FfStore *store,
                const FfDay *day,
                const FfDayPlan *plan,
                const char *by,
                const char *why,
                gint64 at,
                GError **error)
{
  g_autoptr (FfPlanVersion) version = ff_plan_version_new (day->job->id);
  g_autofree char *letter = NULL;

  if (!ff_records_begin (store, error))
    return NULL;
  letter = letter_for (store, day, why, error);
  if (letter != NULL)
    {
      ff_set_text (&version->letter, letter);
      version->frozen_at = at;
      ff_set_text (&version->by, by);
      ff_set_text (&version->why, why);
      if (store_version (store, version, plan, error))
        return ff_records_commit (store, error) ? g_steal_pointer (&letter) : NULL;
    }
  ff_records_rollback (store);
  return NULL;
}

static char *
line_id_in (const FfDayPlan *plan, int number)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (line->line == number)
        return g_strdup (line->id);
    }
  return g_strdup ("");
}

char *
ff_standing_line_id (const FfStanding *standing, const FfDay *day, int number)
{
  static const FfDayChange no_change;
  g_autoptr (FfDayPlan) now = NULL;

  if (standing->plan != NULL)
    return line_id_in (standing->plan, number);
  now = number > 0 ? ff_day_plan_bare (day, &no_change, NULL) : NULL;
  return now != NULL ? line_id_in (now, number) : g_strdup ("");
}
