/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-advice-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-scale.h"

#define CLEAR_STOPS 0.05 /* glass that takes less is a clear one */
#define N_PROBES 16      /* how often the window is looked at for another filter */

/* The day as it stands */

static gboolean
has_light (const FfDay *day, GError **error)
{
  const char *sentence = NULL;

  if (!day->has_date)
    sentence = _ ("the job has no date; enter the day of the shoot");
  else if (day->place == NULL)
    sentence = _ ("the job has no place; enter where it is flown");
  if (sentence != NULL)
    g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return sentence == NULL;
}

static gboolean
read_camera (const FfDay *day, FfCameraRange *ret_camera, GError **error)
{
  const FfItem *camera = ff_day_camera (day);

  if (camera != NULL)
    return ff_day_camera_range (camera, ret_camera, error);
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                       ff_day_aircraft (day) == NULL
                           ? _ ("no serviceable aircraft; enter one in the gear")
                           : _ ("the aircraft has no camera; enter what it carries"));
  return FALSE;
}

gboolean
ff_day_shot_window (const FfDay *day,
                    const FfShot *shot,
                    gint64 *ret_from,
                    gint64 *ret_to,
                    GError **error)
{
  if (shot->window_from == FF_NO_CLOCK || shot->window_to == FF_NO_CLOCK)
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           _ ("the shot has no window; enter from when to when"));
      return FALSE;
    }
  return has_light (day, error)
         && ff_day_instant (day, shot->window_from, shot->label, ret_from, error)
         && ff_day_instant (day, shot->window_to, shot->label, ret_to, error);
}

/* The light, and the need of a camera; no camera, no need. */
static void
look (const FfDay *day,
      const FfShot *shot,
      const FfCameraRange *camera,
      const FfWant *want,
      gint64 at,
      FfShotMoment *ret_moment)
{
  FfDirection sun;
  FfDaylight light;

  ff_day_light_at (day, shot, day->job->sky, (double) at, &sun, &light);
  *ret_moment = (FfShotMoment) {
    .at = at,
    .sun_altitude_deg = sun.altitude_deg,
    .sun_azimuth_deg = sun.azimuth_deg,
    .ev100 = light.ev100,
    .low_ev100 = light.low_ev100,
    .high_ev100 = light.high_ev100,
    .guide_only = light.guide_only,
    .need_stops = NAN,
  };
  if (camera != NULL && camera->n_apertures > 0)
    ret_moment->need_stops
        = ff_advise_need (light.ev100, camera, want,
                          want->hold_aperture > 0 ? want->hold_aperture
                                                  : camera->apertures[0].exact);
}

void
ff_day_shot_moment (const FfDay *day, const FfShot *shot, gint64 at, FfShotMoment *ret_moment)
{
  FfCameraRange camera;
  FfWant want;
  gboolean known = read_camera (day, &camera, NULL) && ff_day_want (shot, &want, NULL);

  if (known)
    ff_day_fit_want (ff_day_camera (day), &want);
  look (day, shot, known ? &camera : NULL, &want, at, ret_moment);
}

/* The glass at hand */

static void
add_filter (FfShotQuestion *question, FfItem *item)
{
  gboolean is_variable = item->stops_to > item->stops + CLEAR_STOPS;
  double stops = isfinite (item->measured_stops) && !is_variable ? item->measured_stops
                                                                 : item->stops;
  FfAdviseFilter filter = { item->label, stops, is_variable ? item->stops_to : stops };

  if (!is_variable && stops < CLEAR_STOPS)
    return;
  g_array_append_val (question->filters, filter);
  g_ptr_array_add (question->items, item);
}

static void
gather_filters (FfShotQuestion *question)
{
  for (guint i = 0; i < question->day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (question->day->items, i);

      if (item->kind == FF_KIND_FILTER && item->state == FF_STATE_SERVICEABLE
          && ff_day_uses (question->day, item))
        add_filter (question, item);
    }
}

/* The choice */

static FfAdviseQuery
query_at (const FfShotQuestion *question, double at)
{
  FfDirection sun;
  FfDaylight light;

  ff_day_light_at (question->day, question->shot, question->day->job->sky, at, &sun, &light);
  return (FfAdviseQuery) {
    .ev100 = light.ev100,
    .camera = &question->camera,
    .want = &question->want,
    .filters = (const FfAdviseFilter *) (gpointer) question->filters->data,
    .n_filters = question->filters->len,
    .max_stack = 1,
  };
}

/* The best glass for a take that starts then: what suits the middle of it. */
static FfChoice
choose (const FfShotQuestion *question, gint64 start, FfReach *ret_reach)
{
  double middle = (double) start + question->shot->minutes * FF_MINUTE / 2.0;
  FfAdviseQuery query = query_at (question, MIN (middle, (double) question->to));
  FfReach reach;
  g_autoptr (GArray) choices = ff_advise (&query, 1, &reach);

  if (ret_reach != NULL)
    *ret_reach = reach;
  return g_array_index (choices, FfChoice, 0);
}

/* The last start at which the whole take still lies in the window. */
static gint64
last_start (const FfShotQuestion *question)
{
  return MAX (question->at, question->to - question->shot->minutes * FF_MINUTE);
}

static gboolean
is_other (const FfShotQuestion *question, gint64 start, double stops)
{
  return fabs (choose (question, start, NULL).filter_stops - stops) > CLEAR_STOPS;
}

/* The first minute between `good` and `other` from which another filter is better. */
static gint64
narrow_down (const FfShotQuestion *question, gint64 good, gint64 other, double stops)
{
  while (other - good > FF_MINUTE)
    {
      gint64 middle = good + (other - good) / 2 / FF_MINUTE * FF_MINUTE;

      if (middle == good)
        break;
      if (is_other (question, middle, stops))
        other = middle;
      else
        good = middle;
    }
  return other;
}

/* 0: these stops suit every start in the rest of the window. */
static gint64
other_filter_from (const FfShotQuestion *question, double stops)
{
  gint64 last = last_start (question), good = question->at;

  for (int i = 1; i <= N_PROBES; i++)
    {
      gint64 start = question->at
                     + (last - question->at) * i / N_PROBES / FF_MINUTE * FF_MINUTE;

      if (start > good && is_other (question, start, stops))
        return narrow_down (question, good, start, stops);
      good = MAX (good, start);
    }
  return 0;
}

static void
read_settings (const FfChoice *choice, FfPlanSettings *ret_settings)
{
  const FfSettings *settings = &choice->settings;

  *ret_settings = (FfPlanSettings) {
    .aperture = settings->aperture.written,
    .shutter = g_strdup (ff_scale_label (FF_SCALE_SHUTTER, settings->shutter)),
    .shutter_s = settings->shutter_s,
    .shutter_angle_deg = settings->shutter_angle_deg,
    .iso = (int) ff_scale_written (FF_SCALE_ISO, settings->iso),
    .error_stops = settings->error_stops,
  };
}

static void
add_remarks (FfShotAdvice *advice, const FfChoice *choice)
{
  for (guint i = 0; i < choice->n_remarks; i++)
    g_ptr_array_add (advice->remarks, ff_remark_text (&choice->remarks[i]));
}

/* Behind the glass of the whole take, the settings at its first moment. */
static void
advise (FfShotAdvice *advice, const FfShotQuestion *question)
{
  FfReach reach;
  FfChoice choice = choose (question, question->at, &reach);
  FfAdviseQuery query = query_at (question, (double) question->at);
  FfChoice start;
  gint64 until;

  ff_advise_settings (&query, choice.filter_stops, &start);
  choice.settings = start.settings;
  advice->has_choice = TRUE;
  advice->in_reach = reach.ok;
  advice->filter_stops = choice.filter_stops;
  read_settings (&choice, &advice->settings);
  add_remarks (advice, &start);
  g_clear_pointer (&advice->best, g_free);
  advice->best = ff_shot_words_best (&choice);
  g_clear_pointer (&advice->glass, g_free);
  advice->glass = ff_shot_words_glass (question, &choice);
  if (!reach.ok)
    {
      g_ptr_array_unref (advice->helps);
      advice->helps = ff_advise_would_help (&query, &reach);
      return;
    }
  until = other_filter_from (question, choice.filter_stops);
  g_free (advice->lasts);
  advice->lasts = ff_shot_words_lasts (
      question, until, until != 0 ? choose (question, until, NULL).filter_stops : NAN);
}

/* The whole */

static void
add_caution (FfShotAdvice *advice, const FfShot *shot)
{
  FfDirection sun = { .altitude_deg = advice->now.sun_altitude_deg,
                      .azimuth_deg = advice->now.sun_azimuth_deg };
  g_autofree char *caution = ff_day_sun_caution (shot, &sun);

  if (caution[0] != '\0')
    g_ptr_array_add (advice->remarks, g_steal_pointer (&caution));
}

static void
add_rate_caution (FfShotAdvice *advice, const FfDay *day, const FfShot *shot)
{
  g_autofree char *caution = ff_day_rate_caution (day, shot);

  if (caution[0] != '\0')
    g_ptr_array_add (advice->remarks, g_steal_pointer (&caution));
}

static void
look_over (FfShotAdvice *advice, const FfShotQuestion *question, const FfCameraRange *camera)
{
  const FfShotQuestion *q = question;

  look (q->day, q->shot, camera, &q->want, q->from, &advice->start);
  look (q->day, q->shot, camera, &q->want, (q->from + q->to) / 2 / FF_MINUTE * FF_MINUTE,
        &advice->middle);
  look (q->day, q->shot, camera, &q->want, q->to, &advice->end);
  look (q->day, q->shot, camera, &q->want, q->at, &advice->now);
  advice->sun = ff_shot_words_sun (q, &advice->now);
  advice->light = ff_shot_words_light (q, advice);
  advice->need = ff_shot_words_need (q, advice);
  add_caution (advice, q->shot);
  add_rate_caution (advice, q->day, q->shot);
}

static FfShotAdvice *
advice_new (void)
{
  FfShotAdvice *advice = g_new0 (FfShotAdvice, 1);

  advice->best = g_strdup ("");
  advice->glass = g_strdup ("");
  advice->lasts = g_strdup ("");
  advice->remarks = g_ptr_array_new_with_free_func (g_free);
  advice->helps = g_ptr_array_new_with_free_func (g_free);
  return advice;
}

FfShotAdvice *
ff_day_shot_advice (const FfDay *day, const FfShot *shot, gint64 at, GError **error)
{
  FfShotQuestion question = { .day = day, .shot = shot };
  g_autoptr (GError) problem = NULL;
  gboolean known;
  FfShotAdvice *advice;

  if (!ff_day_shot_window (day, shot, &question.from, &question.to, error))
    return NULL;
  question.at = at >= question.from && at <= question.to ? at : question.from;
  known = read_camera (day, &question.camera, &problem)
          && ff_day_want (shot, &question.want, &problem);
  if (known)
    {
      ff_day_fit_want (ff_day_camera (day), &question.want);
      known = ff_advise_check (&question.camera, &question.want, &problem);
    }
  advice = advice_new ();
  question.filters = g_array_new (FALSE, FALSE, sizeof (FfAdviseFilter));
  question.items = g_ptr_array_new ();
  look_over (advice, &question, known ? &question.camera : NULL);
  if (known)
    {
      gather_filters (&question);
      advise (advice, &question);
    }
  else
    ff_set_text (&advice->best, problem->message);
  g_array_unref (question.filters);
  g_ptr_array_unref (question.items);
  return advice;
}

void
ff_shot_advice_free (FfShotAdvice *advice)
{
  if (advice == NULL)
    return;
  g_free (advice->settings.shutter);
  g_free (advice->best);
  g_free (advice->glass);
  g_free (advice->lasts);
  g_free (advice->need);
  g_free (advice->sun);
  g_free (advice->light);
  g_ptr_array_unref (advice->remarks);
  g_ptr_array_unref (advice->helps);
  g_free (advice);
}
