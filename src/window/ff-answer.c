/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-answer.h"

#include "ff-day-reading.h"
#include "ff-records.h"

#define CHART_STEP_S 120

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

static gboolean
goes_on (gpointer cancellable)
{
  return !g_cancellable_is_cancelled (cancellable);
}

static FfDayPlan *
plan_of (const FfDay *day, const FfTry *tried, GCancellable *cancellable, GError **error)
{
  g_auto (FfTryChange) made = { 0 };
  g_autoptr (FfDayPlan) plan = NULL;

  ff_try_change (tried, day, &made);
  plan = ff_day_plan (day, &made.change, error);
  if (plan == NULL || ff_try_is_none (tried))
    return g_steal_pointer (&plan);
  if (!ff_day_price_change (day, NULL, &made.change, plan, goes_on, cancellable, error))
    return NULL;
  return g_steal_pointer (&plan);
}

/* The light under the sky that is tried, on the axis of the day as stored, so that the eye sees
 * what has moved. */
static FfChartFacts *
chart_of (const FfDay *day, const FfTry *tried)
{
  const FfDayChange sky
      = { .other_sky = tried->sky != FF_TRY_SAME_SKY, .sky = (FfSky) MAX (tried->sky, 0) };

  return ff_chart_facts_changed (day, &sky, CHART_STEP_S, now ());
}

FfAnswer *
ff_answer_new (const char *data_dir,
               const char *job_id,
               const FfTry *tried,
               GCancellable *cancellable)
{
  const FfTry none = FF_TRY_INIT;
  const FfTry *wanted = tried != NULL ? tried : &none;
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = ff_records_open (data_dir, FF_RECORDS_READ, &error);
  FfAnswer *self = g_atomic_rc_box_new0 (FfAnswer);

  self->tried = none;
  ff_try_set (&self->tried, wanted);
  if (store != NULL)
    self->day = ff_day_load (store, job_id, &error);
  if (self->day != NULL)
    self->locks = ff_locks_load (store, ff_day_job (self->day)->id, &error);
  if (self->locks != NULL)
    self->plan = plan_of (self->day, wanted, cancellable, &error);
  if (self->plan != NULL)
    {
      self->chart = chart_of (self->day, wanted);
      self->limits = ff_limits_today (self->day, self->plan, now ());
    }
  if (self->plan != NULL && ff_try_is_none (wanted))
    self->standing = ff_standing_load (store, ff_day_job (self->day)->id, &error);
  if (error != NULL)
    self->why = g_strdup (error->message);
  return self;
}

FfChangePrice *
ff_answer_price_since (const FfAnswer *self, const FfAnswer *before, GCancellable *cancellable)
{
  if (self->plan == NULL || before->plan == NULL)
    return NULL;
  return ff_day_edit_price (before->plan, self->day, self->plan, goes_on, cancellable);
}

GPtrArray *
ff_answer_drop_first (const FfAnswer *self, GCancellable *cancellable)
{
  g_auto (FfTryChange) made = { 0 };

  if (self->plan == NULL)
    return NULL;
  ff_try_change (&self->tried, self->day, &made);
  return ff_day_drop_first (self->day, &made.change, self->plan, goes_on, cancellable, NULL);
}

static void
clear (gpointer data)
{
  FfAnswer *self = data;

  g_clear_pointer (&self->chart, ff_chart_facts_free);
  g_clear_pointer (&self->limits, ff_limits_today_free);
  g_clear_pointer (&self->standing, ff_standing_free);
  g_clear_pointer (&self->plan, ff_day_plan_free);
  g_clear_pointer (&self->locks, g_ptr_array_unref);
  g_clear_pointer (&self->day, ff_day_free);
  g_clear_pointer (&self->why, g_free);
  ff_try_clear (&self->tried);
}

FfAnswer *
ff_answer_ref (FfAnswer *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
ff_answer_unref (FfAnswer *self)
{
  g_atomic_rc_box_release_full (self, clear);
}
