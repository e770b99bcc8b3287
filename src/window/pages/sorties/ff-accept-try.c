/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-accept-try.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"

gboolean
ff_accept_try_can (const FfTry *tried)
{
  return !ff_try_is_none (tried) && tried->without == NULL && !tried->drop;
}

/* Where no first off is typed it is what the first window says. */
static int
first_off (FfKeeper *keeper, const FfJob *job)
{
  GPtrArray *shots = ff_keeper_shots (keeper);
  int first = FF_NO_CLOCK;

  if (job->first_off != FF_NO_CLOCK)
    return job->first_off;
  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);
      int off = MAX (shot->window_from - job->out_minutes, 0);

      if (first == FF_NO_CLOCK || off < first)
        first = off;
    }
  return MAX (first, 0);
}

static gboolean
accept_job (FfKeeper *keeper, const FfTry *tried, GError **error)
{
  g_autoptr (FfJob) job = NULL;
  g_autofree char *what = NULL;

  if (tried->sky == FF_TRY_SAME_SKY && tried->late_minutes == 0)
    return TRUE;
  job = ff_keeper_dup_job (keeper, ff_keeper_job (keeper)->id);
  if (tried->sky != FF_TRY_SAME_SKY)
    job->sky = (FfSky) tried->sky;
  if (tried->late_minutes > 0)
    job->first_off = first_off (keeper, job) + tried->late_minutes;
  /* Translators: names a step that can be undone; the take-off is so many minutes late. */
  what = tried->late_minutes > 0
             ? g_strdup_printf (_ ("First off %d min later"), tried->late_minutes)
             : g_strdup (_ ("Sky changed"));
  return ff_keeper_save_job (keeper, job, what, error);
}

static gboolean
accept_shot (FfKeeper *keeper, const FfTry *tried, GError **error)
{
  GPtrArray *shots = ff_keeper_shots (keeper);

  for (guint i = 0; tried->shot != NULL && i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);
      g_autoptr (FfShot) copy = NULL;
      g_autofree char *what = NULL;
      int by;

      if (!g_str_equal (shot->label, tried->shot))
        continue;
      copy = ff_keeper_dup_shot (keeper, shot->id);
      by = CLAMP (tried->move_minutes, -copy->window_from, 24 * 60 - copy->window_to);
      copy->window_from += by;
      copy->window_to += by;
      /* Translators: names a step that can be undone; label of a shot. */
      what = g_strdup_printf (_ ("Window of shot %s moved"), copy->label);
      return ff_keeper_save_shot (keeper, copy, what, error);
    }
  return TRUE;
}

gboolean
ff_accept_try (FfKeeper *keeper, const FfTry *tried, GError **error)
{
  return accept_job (keeper, tried, error) && accept_shot (keeper, tried, error);
}
