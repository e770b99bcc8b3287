/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-call-times.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-events.h"

static void
call_time_free (gpointer data)
{
  FfCallTime *time = data;

  g_free (time->key);
  g_free (time->text);
  g_free (time);
}

static void
add (GPtrArray *times, char *key, const char *text, gint64 at, gint64 to)
{
  FfCallTime *time = g_new0 (FfCallTime, 1);

  time->key = key;
  time->text = g_strdup (text);
  time->at = at;
  time->to = MAX (at, to);
  g_ptr_array_add (times, time);
}

/* A span from one clock to another, or a moment where the other is not given. */
static void
add_span (GPtrArray *times, const FfDay *day, const char *key, const char *text, int from, int to)
{
  gint64 at, end;

  if (from == FF_NO_CLOCK || !ff_day_instant (day, from, text, &at, NULL))
    return;
  if (to == FF_NO_CLOCK || !ff_day_instant (day, to, text, &end, NULL))
    end = at;
  add (times, g_strdup (key), text, at, end);
}

static void
add_last_light (GPtrArray *times, const FfDay *day)
{
  g_autoptr (GArray) events = NULL;
  const FfSkyEvent *dusk;
  FfSite site;
  gint64 from, to;

  if (day->place == NULL)
    return;
  site = (FfSite){ day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  ff_day_bounds (day->date, day->zone, &from, &to);
  events = ff_sky_events (from, to, &site, NULL);
  dusk = ff_sky_events_find (events, FF_EVENT_CIVIL_DUSK);
  if (dusk != NULL)
    /* TRANSLATORS: the end of civil twilight in the evening. */
    add (times, g_strdup ("last-light"), _ ("Last light"), (gint64) floor (dusk->instant),
         (gint64) floor (dusk->instant));
}

static int
by_time (gconstpointer a, gconstpointer b)
{
  const FfCallTime *first = *(const FfCallTime *const *) a;
  const FfCallTime *second = *(const FfCallTime *const *) b;

  return (first->at > second->at) - (first->at < second->at);
}

GPtrArray *
ff_call_times (const FfDay *day)
{
  GPtrArray *times = g_ptr_array_new_with_free_func (call_time_free);
  const FfJob *job = day->job;
  guint i;

  if (!day->has_date)
    return times;
  add_span (times, day, "on-site", _ ("On site"), job->on_site, job->off_site);
  add_span (times, day, "first-off", _ ("Flying: first off to all down"), job->first_off,
            job->all_down);
  add_span (times, day, "off-site", _ ("Off site"), job->off_site, FF_NO_CLOCK);
  add_last_light (times, day);
  for (i = 0; i < job->events->len; i++)
    {
      const FfDayEvent *event = g_ptr_array_index (job->events, i);
      gint64 at;

      if (ff_day_instant (day, event->clock, event->text, &at, NULL))
        add (times, g_strdup_printf ("event-%u", i + 1), event->text, at, at);
    }
  g_ptr_array_sort (times, by_time);
  return times;
}
