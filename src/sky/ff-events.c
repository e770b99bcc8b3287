/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-events.h"

#include <glib/gi18n-lib.h>

#include "ff-curve.h"
#include "ff-ephemeris.h"

static const FfName event_names[] = {
  /* Translators: the sun rises through 12 degrees below the horizon. */
  [FF_EVENT_NAUTICAL_DAWN] = { "nautical_dawn", N_ ("nautical dawn") },
  /* Translators: the sun rises through 6 degrees below the horizon. */
  [FF_EVENT_CIVIL_DAWN] = { "civil_dawn", N_ ("civil dawn") },
  [FF_EVENT_SUNRISE] = { "sunrise", N_ ("sunrise") },
  /* Translators: the sun crosses the meridian; not twelve o'clock. */
  [FF_EVENT_SOLAR_NOON] = { "solar_noon", N_ ("solar noon") },
  [FF_EVENT_SUNSET] = { "sunset", N_ ("sunset") },
  /* Translators: the sun sinks through 6 degrees below the horizon. */
  [FF_EVENT_CIVIL_DUSK] = { "civil_dusk", N_ ("civil dusk") },
  /* Translators: the sun sinks through 12 degrees below the horizon. */
  [FF_EVENT_NAUTICAL_DUSK] = { "nautical_dusk", N_ ("nautical dusk") },
  [FF_EVENT_MOONRISE] = { "moonrise", N_ ("moonrise") },
  [FF_EVENT_MOONSET] = { "moonset", N_ ("moonset") },
};
const FfNames ff_names_event = { "event", event_names, G_N_ELEMENTS (event_names) };

#define DAY     86400.0
#define STEP    300.0     /* between samples, seconds */
#define LONGEST (2 * DAY) /* what one track of the sun holds */

/* A level that a body crosses, and what it is called on the way up and on the way down. */
typedef struct {
  double level_deg;
  FfEvent rising, falling;
} Level;

/* The sun's centre (US Naval Observatory, Rise, Set, and Twilight Definitions): 34 arcminutes of
 * refraction and 16 of semidiameter; civil and nautical twilight. */
static const Level sun_levels[] = {
  { -50.0 / 60, FF_EVENT_SUNRISE, FF_EVENT_SUNSET },
  { -6, FF_EVENT_CIVIL_DAWN, FF_EVENT_CIVIL_DUSK },
  { -12, FF_EVENT_NAUTICAL_DAWN, FF_EVENT_NAUTICAL_DUSK },
};

/* The moon's upper limb: 34 arcminutes of refraction, its own semidiameter of the moment. */
static const Level moon_level = { -34.0 / 60, FF_EVENT_MOONRISE, FF_EVENT_MOONSET };

typedef struct {
  FfHorizon horizon;
  FfSpin spin;
} MoonDay;

static double
sun_altitude_deg (double instant, gconstpointer track)
{
  return ff_sun_track_altitude_deg (track, instant);
}

static double
moon_upper_limb_deg (double instant, gconstpointer data)
{
  const MoonDay *day = data;
  double moon[3], earth_fixed[3], local[3];

  ff_ephemeris_moon (instant, moon);
  ff_spin_earth_fixed (&day->spin, instant, moon, earth_fixed);
  ff_horizon_local (&day->horizon, earth_fixed, local);
  return ff_horizon_altitude_deg (local) + ff_ephemeris_moon_semidiameter_deg (local);
}

static void
add_event (GArray *events, FfEvent event, double instant, double from, double to)
{
  const FfSkyEvent added = { event, instant };

  if (instant >= from && instant < to)
    g_array_append_val (events, added);
}

static void
add_crossings (GArray *events,
               FfCurve curve,
               gconstpointer data,
               GArray *points,
               const Level *level,
               double from,
               double to)
{
  for (guint i = 1; i < points->len; i++)
    {
      const FfCurvePoint *before = &g_array_index (points, FfCurvePoint, i - 1);
      const FfCurvePoint *after = &g_array_index (points, FfCurvePoint, i);
      const gboolean rises = before->value < level->level_deg;

      if (rises != (after->value < level->level_deg))
        add_event (events, rises ? level->rising : level->falling,
                   ff_curve_crossing (curve, data, before, after, level->level_deg), from, to);
    }
}

/* The hour angle grows by nearly 360 degrees a day, so that each step of the correction leaves
 * less than a thousandth of the error before. */
static void
add_noons (GArray *events, const FfSunTrack *track, double from, double to)
{
  double noon = from - ff_sun_track_hour_angle_deg (track, from) * (DAY / 360);

  for (; noon < to + STEP; noon += DAY)
    {
      for (int i = 0; i < 4; i++)
        noon -= ff_sun_track_hour_angle_deg (track, noon) * (DAY / 360);
      add_event (events, FF_EVENT_SOLAR_NOON, noon, from, to);
    }
}

static void
add_sun (GArray *events, const FfSunTrack *track, double from, double to)
{
  g_autoptr (GArray) points = ff_curve_points (sun_altitude_deg, track, from, to, STEP);

  for (guint i = 0; i < G_N_ELEMENTS (sun_levels); i++)
    add_crossings (events, sun_altitude_deg, track, points, &sun_levels[i], from, to);
  add_noons (events, track, from, to);
}

static void
add_moon (GArray *events, const FfSite *site, double from, double to)
{
  g_autoptr (GArray) points = NULL;
  MoonDay day;

  ff_horizon_init (&day.horizon, site);
  ff_spin_init (&day.spin, from + (to - from) / 2);
  points = ff_curve_points (moon_upper_limb_deg, &day, from, to, STEP);
  add_crossings (events, moon_upper_limb_deg, &day, points, &moon_level, from, to);
}

static int
compare_events (gconstpointer a, gconstpointer b)
{
  const FfSkyEvent *one = a, *other = b;

  if (one->instant != other->instant)
    return one->instant < other->instant ? -1 : 1;
  return (int) one->event - (int) other->event;
}

/* Without a crossing the sun stays where it is at the start. */
static FfPolar
polar_state (GArray *events, const FfSunTrack *track, double from)
{
  if (ff_sky_events_find (events, FF_EVENT_SUNRISE) != NULL
      || ff_sky_events_find (events, FF_EVENT_SUNSET) != NULL)
    return FF_POLAR_NONE;
  return ff_sun_track_altitude_deg (track, from) < sun_levels[0].level_deg ? FF_POLAR_NIGHT
                                                                           : FF_POLAR_DAY;
}

GArray *
ff_sky_events (gint64 from, gint64 to, const FfSite *site, FfPolar *ret_polar)
{
  g_autoptr (GArray) events = g_array_new (FALSE, FALSE, sizeof (FfSkyEvent));
  const double start = (double) from, end = (double) to;
  FfSunTrack track;

  g_return_val_if_fail (end > start && end - start <= LONGEST, NULL);

  ff_sun_track_init (&track, start, end, site);
  add_sun (events, &track, start, end);
  add_moon (events, site, start, end);
  g_array_sort (events, compare_events);
  if (ret_polar != NULL)
    *ret_polar = polar_state (events, &track, start);
  return g_steal_pointer (&events);
}

const FfSkyEvent *
ff_sky_events_find (GArray *events, FfEvent event)
{
  for (guint i = 0; i < events->len; i++)
    {
      const FfSkyEvent *each = &g_array_index (events, FfSkyEvent, i);

      if (each->event == event)
        return each;
    }
  return NULL;
}
