/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-study.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-error.h"
#include "ff-events.h"
#include "ff-hold.h"
#include "ff-light-words.h"
#include "ff-scale.h"

#define STEP_S (5 * FF_MINUTE)
#define MARGIN_S (10 * FF_MINUTE)
#define CLEAR_STOPS 0.05 /* glass that takes less is a clear one */
#define HOLD_ISO_STOPS 1    /* so much ISO above its base still counts as holding */

/* A day without a job */

FfDay *
ff_day_anywhere (double latitude_deg,
                 double longitude_deg,
                 FfDate date,
                 GTimeZone *zone,
                 GPtrArray *items)
{
  FfDay *day = g_new0 (FfDay, 1);
  const FfSite site = { latitude_deg, longitude_deg, 0 };
  gint64 from, to;

  day->job = ff_job_new ();
  day->place = ff_place_new ();
  day->place->latitude_deg = latitude_deg;
  day->place->longitude_deg = longitude_deg;
  day->place->elevation_m = 0;
  day->zone = g_time_zone_ref (zone);
  day->date = date;
  day->has_date = TRUE;
  day->shots = g_ptr_array_new ();
  day->crew = g_ptr_array_new ();
  day->items = g_ptr_array_ref (items);
  day->limits = g_ptr_array_new ();
  day->measurements = g_ptr_array_new ();
  day->reports = g_ptr_array_new ();
  day->readings = g_ptr_array_new ();
  ff_day_bounds (date, zone, &from, &to);
  ff_sun_track_init (&day->sun, (double) from, (double) from + 2 * 86400, &site);
  ff_day_learn (day);
  return day;
}

gboolean
ff_day_noon (const FfDay *day, gint64 *ret_at)
{
  return day->has_date && ff_day_instant (day, 12 * 60, "", ret_at, NULL);
}

/* The glass at hand */

typedef struct {
  FfAdviseFilter filter;
  const char *name;
} Glass;

static gint
compare_glass (gconstpointer a, gconstpointer b)
{
  const Glass *one = a, *other = b;

  if (one->filter.stops != other->filter.stops)
    return one->filter.stops < other->filter.stops ? -1 : 1;
  return g_strcmp0 (one->name, other->name);
}

static void
add_glass (GArray *all, const FfItem *item)
{
  gboolean variable = item->stops_to > item->stops + CLEAR_STOPS;
  double stops = isfinite (item->measured_stops) && !variable ? item->measured_stops : item->stops;
  const Glass glass = { { item->label, stops, variable ? item->stops_to : stops },
                        item->engraving[0] != '\0' ? item->engraving : item->label };

  if (variable || stops >= CLEAR_STOPS)
    g_array_append_val (all, glass);
}

static void
gather_filters (FfLightStudy *study)
{
  const FfDay *day = study->query.day;
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Glass));

  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind == FF_KIND_FILTER && item->state == FF_STATE_SERVICEABLE
          && ff_day_uses (day, item))
        add_glass (all, item);
    }
  g_array_sort (all, compare_glass);
  for (guint i = 0; i < all->len; i++)
    {
      Glass *glass = &g_array_index (all, Glass, i);
      char *name = g_strdup (glass->name);

      g_ptr_array_add (study->filter_names, name);
      glass->filter.label = name;
      g_array_append_val (study->filters, glass->filter);
    }
}

/* The light of the day */

static double
condition_ev100 (const FfCondition *condition)
{
  return (condition->low_ev100 + condition->high_ev100) / 2;
}

static void
set_span (FfLightStudy *study)
{
  const FfDay *day = study->query.day;
  const FfSite site
      = { day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  g_autoptr (GArray) events = NULL;
  const FfSkyEvent *dawn, *dusk;

  ff_day_bounds (day->date, day->zone, &study->from, &study->to);
  events = ff_sky_events (study->from, study->to, &site, NULL);
  dawn = ff_sky_events_find (events, FF_EVENT_CIVIL_DAWN);
  dusk = ff_sky_events_find (events, FF_EVENT_CIVIL_DUSK);
  if (dawn == NULL || dusk == NULL || dusk->instant <= dawn->instant)
    return;
  study->from = MAX (study->from, (gint64) floor (dawn->instant) - MARGIN_S);
  study->to = MIN (study->to, (gint64) ceil (dusk->instant) + MARGIN_S);
  study->from -= study->from % STEP_S;
}

static void
sample (FfLightStudy *study)
{
  const FfLightStudyQuery *query = &study->query;
  double f_number = study->want.hold_aperture > 0 ? study->want.hold_aperture
                                                  : study->camera.apertures[0].exact;

  study->step_s = STEP_S;
  study->n_samples = (guint) ((study->to - study->from) / STEP_S) + 1;
  study->sun_altitude_deg = g_new (double, study->n_samples);
  study->ev100 = g_new (double, study->n_samples);
  study->need_stops = g_new (double, study->n_samples);
  for (guint i = 0; i < study->n_samples; i++)
    {
      FfDirection sun;
      FfDaylight light;

      ff_day_light_at (query->day, query->shot, query->sky,
                       (double) study->from + (double) i * STEP_S, &sun, &light);
      study->sun_altitude_deg[i] = sun.altitude_deg;
      study->ev100[i] = query->condition != NULL ? condition_ev100 (query->condition) : light.ev100;
      study->need_stops[i]
          = ff_advise_need (study->ev100[i], &study->camera, &study->want, f_number);
    }
}

/* The hours of a filter */

static void
hours_free (gpointer data)
{
  FfStudyHours *hours = data;

  g_free (hours->name);
  g_free (hours->words);
  g_array_unref (hours->best);
  g_array_unref (hours->holds);
  g_free (hours);
}

/* Runs of samples as spans of time. */
static GArray *
spans_of (const FfLightStudy *study, GArray *runs)
{
  GArray *spans = g_array_new (FALSE, FALSE, sizeof (FfStudySpan));

  for (guint i = 0; i < runs->len; i++)
    {
      const FfHold *run = &g_array_index (runs, FfHold, i);
      const FfStudySpan span = { study->from + (gint64) run->from * study->step_s,
                                 study->from + (gint64) run->to * study->step_s };

      g_array_append_val (spans, span);
    }
  g_array_unref (runs);
  return spans;
}

/* What the shot wants, with the ISO held near its base. */
static FfWant
calm_want (const FfLightStudy *study)
{
  const FfCameraRange *camera = &study->camera;
  guint base = camera->n_bases > 0 ? camera->base_iso[0] : camera->iso_low;
  double iso = ff_scale_written (FF_SCALE_ISO, base) * exp2 (HOLD_ISO_STOPS);
  FfWant want = study->want;

  want.max_iso = want.max_iso > 0 ? fmin (want.max_iso, iso) : iso;
  return want;
}

static GArray *
holds_of (const FfLightStudy *study, double weakest, double strongest)
{
  FfWant want = calm_want (study);
  FfAdviseQuery query = ff_light_study_advise (study, 10);
  FfChoice weak, strong;

  query.want = &want;
  ff_advise_settings (&query, weakest, &weak);
  ff_advise_settings (&query, strongest, &strong);
  return spans_of (study, ff_hold_within (study->ev100, study->n_samples, weak.good_from_ev100,
                                          strong.good_to_ev100));
}

static void
add_hours (FfLightStudy *study, const int *best, int filter)
{
  const FfAdviseFilter *glass
      = filter >= 0 ? &g_array_index (study->filters, FfAdviseFilter, filter) : NULL;
  FfStudyHours *hours = g_new0 (FfStudyHours, 1);

  hours->filter = filter;
  hours->stops = glass != NULL ? glass->stops : 0;
  hours->best = spans_of (study, ff_hold_runs (best, study->n_samples, filter));
  hours->holds = holds_of (study, hours->stops, glass != NULL ? glass->stops_to : 0);
  hours->name = ff_light_words_glass (study, filter);
  hours->words = ff_light_words_hours (study, hours);
  g_ptr_array_add (study->hours, hours);
}

static void
fill_hours (FfLightStudy *study)
{
  FfAdviseQuery query = ff_light_study_advise (study, 0);
  g_autofree int *best = NULL;

  if (study->query.condition != NULL)
    return;
  best = ff_hold_best (&query, study->ev100, study->n_samples);
  for (int i = (int) study->filters->len - 1; i >= -1; i--)
    add_hours (study, best, i);
}

/* The whole */

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return FALSE;
}

static gboolean
read_day (FfLightStudy *study, GError **error)
{
  const FfDay *day = study->query.day;
  const FfItem *camera = ff_day_camera (day);

  if (!day->has_date)
    return refuse (error, _ ("The job has no date; enter the day of the shoot."));
  if (day->place == NULL)
    return refuse (error, _ ("The job has no place; enter where it is flown."));
  if (camera == NULL)
    return refuse (error, ff_day_aircraft (day) == NULL
                              ? _ ("No serviceable aircraft; enter one in the gear.")
                              : _ ("The aircraft has no camera; enter what it carries."));
  return ff_day_camera_range (camera, &study->camera, error)
         && ff_day_want (study->query.shot, &study->want, error)
         && ff_advise_check (&study->camera, &study->want, error);
}

FfLightStudy *
ff_light_study_new (const FfLightStudyQuery *query, GError **error)
{
  g_autoptr (FfLightStudy) study = g_new0 (FfLightStudy, 1);

  study->query = *query;
  study->filters = g_array_new (FALSE, FALSE, sizeof (FfAdviseFilter));
  study->filter_names = g_ptr_array_new_with_free_func (g_free);
  study->hours = g_ptr_array_new_with_free_func (hours_free);
  if (!read_day (study, error))
    return NULL;
  gather_filters (study);
  set_span (study);
  sample (study);
  fill_hours (study);
  return g_steal_pointer (&study);
}

void
ff_light_study_free (FfLightStudy *study)
{
  if (study == NULL)
    return;
  g_array_unref (study->filters);
  g_ptr_array_unref (study->filter_names);
  g_ptr_array_unref (study->hours);
  g_free (study->sun_altitude_deg);
  g_free (study->ev100);
  g_free (study->need_stops);
  g_free (study);
}

/* Asking it */

void
ff_light_study_light (const FfLightStudy *study, gint64 at, FfExplainQuery *ret_query)
{
  const FfCondition *condition = study->query.condition;

  ff_day_explain_light (study->query.day, study->query.shot, study->query.sky, at, ret_query);
  if (condition != NULL)
    {
      ret_query->from = FF_EXPLAIN_TABLE;
      ret_query->source = condition->source;
      ret_query->ev100 = condition_ev100 (condition);
      ret_query->low_ev100 = condition->low_ev100;
      ret_query->high_ev100 = condition->high_ev100;
    }
  ret_query->camera = &study->camera;
  ret_query->want = &study->want;
}

FfAdviseQuery
ff_light_study_advise (const FfLightStudy *study, double ev100)
{
  return (FfAdviseQuery) {
    .ev100 = ev100,
    .camera = &study->camera,
    .want = &study->want,
    .filters = (const FfAdviseFilter *) (const void *) study->filters->data,
    .n_filters = study->filters->len,
    .max_stack = 1,
  };
}

gint64
ff_light_study_until (const FfLightStudy *study, gint64 at, double low, double high)
{
  g_autofree double *ev100 = NULL;
  double minute;

  if (study->query.condition != NULL || at >= study->to)
    return 0;
  ev100 = ff_day_light (study->query.day, study->query.shot, study->query.sky, at, study->to);
  minute = ff_hold_until (ev100, (guint) ((study->to - at) / FF_MINUTE) + 1, 0, low, high);
  return isnan (minute) ? 0 : at + (gint64) floor (minute) * FF_MINUTE;
}

const char *
ff_light_study_filter (const FfLightStudy *study, int filter)
{
  return filter < 0 ? "" : g_ptr_array_index (study->filter_names, (guint) filter);
}
