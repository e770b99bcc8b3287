/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-answer.h"

#include "ff-records.h"

#define CHART_STEP_S 120

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

static FfDayPlan *
plan_of (const FfDay *day, const FfTry *tried, GError **error)
{
  const char *without[] = { tried->without, NULL };
  const FfDayChange change = { .other_sky = tried->sky != FF_TRY_SAME_SKY,
                               .sky = (FfSky) MAX (tried->sky, 0),
                               .late_minutes = tried->late_minutes,
                               .without = tried->without != NULL ? without : NULL };
  g_autoptr (FfDayPlan) plan = ff_day_plan (day, &change, error);

  if (plan == NULL || ff_try_is_none (tried))
    return g_steal_pointer (&plan);
  if (!ff_day_price_change (day, NULL, &change, plan, NULL, NULL, error))
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
ff_answer_new (const char *data_dir, const char *job_id, const FfTry *tried)
{
  const FfTry none = FF_TRY_INIT;
  const FfTry *wanted = tried != NULL ? tried : &none;
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = ff_records_open (data_dir, FF_RECORDS_READ, &error);
  FfAnswer *self = g_atomic_rc_box_new0 (FfAnswer);

  if (store != NULL)
    self->day = ff_day_load (store, job_id, &error);
  if (self->day != NULL)
    self->plan = plan_of (self->day, wanted, &error);
  if (self->plan != NULL)
    self->chart = chart_of (self->day, wanted);
  if (error != NULL)
    self->why = g_strdup (error->message);
  return self;
}

static void
clear (gpointer data)
{
  FfAnswer *self = data;

  g_clear_pointer (&self->chart, ff_chart_facts_free);
  g_clear_pointer (&self->plan, ff_day_plan_free);
  g_clear_pointer (&self->day, ff_day_free);
  g_clear_pointer (&self->why, g_free);
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
