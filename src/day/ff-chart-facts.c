/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-chart-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-reading.h"
#include "ff-daylight.h"
#include "ff-events.h"
#include "ff-plan-private.h"

#define MARGIN_S 600 /* shown before first off and after all down */

static void
event_free (gpointer data)
{
  FfChartEvent *event = data;

  g_free (event->text);
  g_free (event->detail);
  g_free (event);
}

static gint64
instant_of (GArray *events, FfEvent event, gint64 from, gint64 to)
{
  const FfSkyEvent *found = ff_sky_events_find (events, event);

  return found != NULL && found->instant >= (double) from && found->instant <= (double) to
             ? (gint64) floor (found->instant + 0.5)
             : 0;
}

static void
add_sky_events (FfChartFacts *facts, const FfDay *day)
{
  FfSite site = { day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  g_autoptr (GArray) events = NULL;
  gint64 from, to;

  ff_day_bounds (day->date, day->zone, &from, &to);
  events = ff_sky_events (from, to, &site, NULL);
  facts->sunrise = instant_of (events, FF_EVENT_SUNRISE, facts->from, facts->to);
  facts->sunset = instant_of (events, FF_EVENT_SUNSET, facts->from, facts->to);
  facts->civil_dawn = instant_of (events, FF_EVENT_CIVIL_DAWN, facts->from, facts->to);
  facts->civil_dusk = instant_of (events, FF_EVENT_CIVIL_DUSK, facts->from, facts->to);
}

static void
add_typed_events (FfChartFacts *facts, const FfDay *day)
{
  for (guint i = 0; i < day->job->events->len; i++)
    {
      const FfDayEvent *typed = g_ptr_array_index (day->job->events, i);
      FfChartEvent *event;
      gint64 at;

      if (!ff_day_instant (day, typed->clock, typed->text, &at, NULL))
        continue;
      event = g_new0 (FfChartEvent, 1);
      event->at = at;
      event->text = g_strdup (typed->text);
      g_ptr_array_add (facts->events, event);
    }
}

static int
compare_events (gconstpointer a, gconstpointer b)
{
  const FfChartEvent *first = *(FfChartEvent *const *) a, *second = *(FfChartEvent *const *) b;

  return first->at < second->at ? -1 : first->at > second->at;
}

/* Those that count; and how long each lasts, for who reads the chart as a table. */
static void
add_readings (FfChartFacts *facts, const FfDay *day, FfSky sky)
{
  for (guint i = 0; i < day->learned_from->len; i++)
    {
      const FfReading *reading = g_ptr_array_index (day->learned_from, i);
      g_autofree char *off = ff_signed_stops (ff_day_reading_offset (day, reading));
      FfChartEvent *event = g_new0 (FfChartEvent, 1);

      event->at = reading->at;
      event->is_reading = TRUE;
      /* Translators: a light reading, and how far it is from the estimate: "+0.4 stops". */
      event->text = g_strdup_printf (_ ("reading %s"), off);
      event->detail = ff_day_reading_lasts (day, reading, sky);
      g_ptr_array_add (facts->events, event);
    }
  g_ptr_array_sort (facts->events, compare_events);
}

/* What plain video at the delivery rate would want: the level that most shots compare with. */
static FfWant
plain_want (const FfDay *day)
{
  double fps = day->job->delivery_fps;

  return (FfWant) { .intent = FF_INTENT_VIDEO, .fps = fps > 0 ? fps : 25, .angle_deg = 180,
                    .angle_from_deg = 144, .angle_to_deg = 216 };
}

static void
add_samples (FfChartFacts *facts, const FfDay *day, const FfDayProblem *problem)
{
  FfWant want = plain_want (day);

  for (guint i = 0; i < facts->n_samples; i++)
    {
      FfDaylightQuery query = { .sky = problem->sky, .from_sun_deg = 180 };
      FfDaylight light;
      FfDirection sun;

      ff_sun_track_direction (&day->sun, (double) facts->from + (double) i * facts->step_s, &sun);
      query.sun_altitude_deg = sun.altitude_deg;
      ff_daylight (&query, &light);
      ff_day_correct_light (day, problem->sky,
                            (double) facts->from + (double) i * facts->step_s, &light);
      facts->sun_altitude_deg[i] = sun.altitude_deg;
      facts->ev100[i] = light.ev100;
      facts->low_ev100[i] = light.low_ev100;
      facts->high_ev100[i] = light.high_ev100;
      facts->need_stops[i] = ff_advise_need (light.ev100, &problem->camera, &want,
                                             problem->camera.apertures[0].exact);
    }
}

FfChartFacts *
ff_chart_facts (const FfDay *day, int step_s, gint64 now)
{
  static const FfDayChange no_change;

  return ff_chart_facts_changed (day, &no_change, step_s, now);
}

FfChartFacts *
ff_chart_facts_changed (const FfDay *day, const FfDayChange *change, int step_s, gint64 now)
{
  g_autoptr (FfDayProblem) problem = ff_day_problem_new (day, change, NULL);
  FfChartFacts *facts;

  if (problem == NULL)
    return NULL;
  facts = g_new0 (FfChartFacts, 1);
  facts->zone = g_time_zone_ref (day->zone);
  facts->from = problem->problem.from - MARGIN_S;
  facts->to = problem->problem.to + MARGIN_S;
  facts->step_s = step_s;
  facts->now = now >= facts->from && now <= facts->to ? now : 0;
  facts->n_samples = (guint) ((facts->to - facts->from) / step_s) + 1;
  facts->sun_altitude_deg = g_new (double, facts->n_samples);
  facts->ev100 = g_new (double, facts->n_samples);
  facts->low_ev100 = g_new (double, facts->n_samples);
  facts->high_ev100 = g_new (double, facts->n_samples);
  facts->need_stops = g_new (double, facts->n_samples);
  facts->events = g_ptr_array_new_with_free_func (event_free);
  add_samples (facts, day, problem);
  add_sky_events (facts, day);
  add_typed_events (facts, day);
  add_readings (facts, day, problem->sky);
  return facts;
}

void
ff_chart_facts_free (FfChartFacts *facts)
{
  if (facts == NULL)
    return;
  g_time_zone_unref (facts->zone);
  g_free (facts->sun_altitude_deg);
  g_free (facts->ev100);
  g_free (facts->low_ev100);
  g_free (facts->high_ev100);
  g_free (facts->need_stops);
  g_ptr_array_unref (facts->events);
  g_free (facts);
}
