/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-compass-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-events.h"
#include "ff-number.h"

#define STEP (30 * FF_MINUTE)
#define LOW_SUN_DEG 15.0   /* below it the sun stands in the eyes of one who watches the sky */
#define GLARE_SIDE_DEG 30.0 /* so far to either side; common practice, no source */

static void
sun_free (gpointer data)
{
  FfCompassSun *sun = data;

  g_free (sun->clock);
  g_free (sun);
}

static void
spot_free (gpointer data)
{
  FfCompassSpot *spot = data;

  g_free (spot->mark);
  g_free (spot->name);
  g_free (spot->glare);
  g_free (spot);
}

static void
shot_free (gpointer data)
{
  FfCompassShot *shot = data;

  g_free (shot->shot);
  g_free (shot);
}

void
ff_compass_facts_free (FfCompassFacts *facts)
{
  if (facts == NULL)
    return;
  g_ptr_array_unref (facts->suns);
  g_ptr_array_unref (facts->spots);
  g_ptr_array_unref (facts->shots);
  g_free (facts->wind);
  g_free (facts);
}

/* The hours on which the sun matters: first off to all down, as far as they are given. */
static gboolean
flying_hours (const FfDay *day, gint64 *ret_from, gint64 *ret_to)
{
  return day->place != NULL && day->has_date && day->job->first_off != FF_NO_CLOCK
         && day->job->all_down != FF_NO_CLOCK
         && ff_day_instant (day, day->job->first_off, "", ret_from, NULL)
         && ff_day_instant (day, day->job->all_down, "", ret_to, NULL) && *ret_from < *ret_to;
}

static void
add_sun (FfCompassFacts *facts, const FfDay *day, gint64 at)
{
  FfCompassSun *sun;
  FfDirection direction;

  ff_sun_track_direction (&day->sun, (double) at, &direction);
  /* Up while its upper limb is, as sunset is reckoned. */
  if (direction.altitude_deg < -0.8333)
    return;
  sun = g_new0 (FfCompassSun, 1);
  sun->at = at;
  sun->clock = ff_instant_clock ((double) at, day->zone);
  sun->azimuth_deg = direction.azimuth_deg;
  sun->altitude_deg = MAX (direction.apparent_altitude_deg, 0.0);
  g_ptr_array_add (facts->suns, sun);
}

static void
add_suns (FfCompassFacts *facts, const FfDay *day)
{
  g_autoptr (GArray) events = NULL;
  const FfSkyEvent *sunset;
  FfSite site;
  gint64 from, to, at;

  if (!flying_hours (day, &from, &to))
    return;
  for (at = from - from % STEP; at <= to; at += STEP)
    if (at >= from)
      add_sun (facts, day, at);
  site = (FfSite){ day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  events = ff_sky_events (from, to, &site, NULL);
  sunset = ff_sky_events_find (events, FF_EVENT_SUNSET);
  if (sunset != NULL)
    add_sun (facts, day, (gint64) floor (sunset->instant));
}

static double
apart_deg (double a, double b)
{
  return fabs (remainder (a - b, 360.0));
}

/* From the first to the last minute in which a low sun stands near where the post faces. */
static void
find_glare (FfCompassSpot *spot, const FfDay *day)
{
  gint64 from, to, at, first = 0, last = 0;

  spot->glare_from_deg = spot->glare_to_deg = NAN;
  if (isnan (spot->faces_deg) || !flying_hours (day, &from, &to))
    return;
  for (at = from; at <= to; at += FF_MINUTE)
    {
      FfDirection sun;

      ff_sun_track_direction (&day->sun, (double) at, &sun);
      if (sun.apparent_altitude_deg < 0.0 || sun.apparent_altitude_deg > LOW_SUN_DEG
          || apart_deg (sun.azimuth_deg, spot->faces_deg) > GLARE_SIDE_DEG)
        continue;
      if (first == 0)
        {
          first = at;
          spot->glare_from_deg = sun.azimuth_deg;
        }
      last = at;
      spot->glare_to_deg = sun.azimuth_deg;
    }
  if (first != 0)
    {
      g_autofree char *begins = ff_instant_clock ((double) first, day->zone);
      g_autofree char *ends = ff_instant_clock ((double) last, day->zone);

      g_free (spot->glare);
      /* TRANSLATORS: to an observer; two times, then two bearings. */
      spot->glare = g_strdup_printf (_ ("sun low in your eyes %s to %s, %03.0f° to %03.0f°"), begins,
                                     ends, spot->glare_from_deg, spot->glare_to_deg);
    }
}

static void
add_spot (FfCompassFacts *facts,
          const FfDay *day,
          const char *mark,
          const char *name,
          double bearing_deg,
          double distance_m)
{
  FfCompassSpot *spot;

  if (*name == '\0')
    return;
  spot = g_new0 (FfCompassSpot, 1);
  spot->mark = g_strdup (mark);
  spot->name = g_strdup (name);
  spot->bearing_deg = bearing_deg;
  spot->distance_m = distance_m;
  spot->faces_deg = NAN;
  spot->glare = g_strdup ("");
  find_glare (spot, day);
  g_ptr_array_add (facts->spots, spot);
}

static void
add_post (FfCompassFacts *facts,
          const FfDay *day,
          const char *mark,
          const char *name,
          double bearing_deg,
          double distance_m,
          double faces_deg)
{
  FfCompassSpot *spot;

  if (*name == '\0')
    return;
  add_spot (facts, day, mark, name, bearing_deg, distance_m);
  spot = g_ptr_array_index (facts->spots, facts->spots->len - 1);
  spot->post = TRUE;
  spot->faces_deg = faces_deg;
  find_glare (spot, day);
}

static void
add_spots (FfCompassFacts *facts, const FfDay *day)
{
  const FfPlace *place = day->place;

  if (place == NULL)
    return;
  /* TRANSLATORS: on a sketch: second landing spot, first and second observer post. */
  add_spot (facts, day, _ ("L2"), place->second_spot, place->second_spot_bearing_deg,
            place->second_spot_distance_m);
  add_post (facts, day, _ ("P1"), place->observer_post, place->post_bearing_deg,
            place->post_distance_m, place->post_faces_deg);
  add_post (facts, day, _ ("P2"), place->second_post, place->second_post_bearing_deg,
            place->second_post_distance_m, place->second_post_faces_deg);
}

static void
add_shots (FfCompassFacts *facts, const FfDay *day)
{
  guint i;

  for (i = 0; i < day->shots->len; i++)
    {
      const FfShot *record = g_ptr_array_index (day->shots, i);
      FfCompassShot *shot;

      if (isnan (record->bearing_deg))
        continue;
      shot = g_new0 (FfCompassShot, 1);
      shot->shot = g_strdup (record->label);
      shot->bearing_deg = record->bearing_deg;
      g_ptr_array_add (facts->shots, shot);
    }
}

static char *
wind_words (const FfJob *job)
{
  g_autofree char *speed = NULL, *gust = NULL;

  if (isnan (job->wind_from_deg) || isnan (job->wind_ms))
    return g_strdup ("");
  speed = ff_number_format (job->wind_ms, 1);
  if (isnan (job->gust_ms))
    return g_strdup_printf (_ ("wind %03.0f° %s m/s"), job->wind_from_deg, speed);
  gust = ff_number_format (job->gust_ms, 1);
  return g_strdup_printf (_ ("wind %03.0f° %s m/s, gusts %s"), job->wind_from_deg, speed, gust);
}

FfCompassFacts *
ff_compass_facts (const FfDay *day)
{
  FfCompassFacts *facts = g_new0 (FfCompassFacts, 1);

  facts->suns = g_ptr_array_new_with_free_func (sun_free);
  facts->spots = g_ptr_array_new_with_free_func (spot_free);
  facts->shots = g_ptr_array_new_with_free_func (shot_free);
  facts->wind_from_deg = day->job->wind_from_deg;
  facts->wind = wind_words (day->job);
  add_suns (facts, day);
  add_spots (facts, day);
  add_shots (facts, day);
  return facts;
}
