/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

#include "ff-curve.h"
#include "ff-events.h"
#include "ff-sun.h"

#define STEP_S       300
#define CIVIL_DEG    (-6.0)
#define NOON         (12 * 60)
#define DAY_S        86400
#define SUN_EDGE_DEG (-50.0 / 60) /* the sun's centre when its upper limb is on the horizon */

/* The day as all sentences need it. */
typedef struct {
  const FfDayWordsQuery *query;
  gint64 from, to;
  FfSunTrack track;
  GArray *events;
  GArray *points; /* of the sun's altitude */
  FfPolar polar;
} Day;

static double
altitude_deg (double instant, gconstpointer track)
{
  return ff_sun_track_altitude_deg (track, instant);
}

static void
day_init (Day *day, const FfDayWordsQuery *query)
{
  day->query = query;
  ff_day_bounds (query->date, query->zone, &day->from, &day->to);
  /* A zone that moves across the date line leaves out a day: the 24 hours from there on. */
  if (day->to <= day->from)
    day->to = day->from + DAY_S;
  ff_sun_track_init (&day->track, (double) day->from, (double) day->to, &query->site);
  day->events = ff_sky_events (day->from, day->to, &query->site, &day->polar);
  day->points
      = ff_curve_points (altitude_deg, &day->track, (double) day->from, (double) day->to, STEP_S);
}

static void
day_clear (Day *day)
{
  g_array_unref (day->events);
  g_array_unref (day->points);
}

static char *
clock_of (const Day *day, double instant)
{
  return ff_instant_clock (instant, day->query->zone);
}

/* The lowest and highest sun of the day. */
static void
sun_range (const Day *day, double *ret_low_deg, double *ret_high_deg)
{
  *ret_low_deg = 90;
  *ret_high_deg = -90;
  for (guint i = 0; i < day->points->len; i++)
    {
      const FfCurvePoint *point = &g_array_index (day->points, FfCurvePoint, i);

      if (point->instant < (double) day->from || point->instant > (double) day->to)
        continue;
      *ret_low_deg = MIN (*ret_low_deg, point->value);
      *ret_high_deg = MAX (*ret_high_deg, point->value);
    }
}

/* ---- Sun ---- */

/* One of the two alone, on a day that begins or ends in the light of the other. */
static char *
half_twilight_words (const Day *day, const FfSkyEvent *dawn, const FfSkyEvent *dusk)
{
  g_autofree char *clock = clock_of (day, dawn != NULL ? dawn->instant : dusk->instant);

  if (dawn != NULL)
    return g_strdup_printf (_ ("civil dawn %s, no dusk on this day"), clock);
  return g_strdup_printf (_ ("civil dusk %s, no dawn on this day"), clock);
}

/* Far north in summer the dusk of the evening before comes first. */
static char *
twilight_words (const Day *day)
{
  const FfSkyEvent *dawn = ff_sky_events_find (day->events, FF_EVENT_CIVIL_DAWN);
  const FfSkyEvent *dusk = ff_sky_events_find (day->events, FF_EVENT_CIVIL_DUSK);
  double low_deg, high_deg;

  if (dawn != NULL && dusk != NULL)
    {
      g_autofree char *rise = clock_of (day, dawn->instant);
      g_autofree char *fall = clock_of (day, dusk->instant);

      /* Translators: two clock times, the sun 6 degrees below the horizon. */
      return dawn->instant < dusk->instant
                 ? g_strdup_printf (_ ("civil dawn %s, dusk %s"), rise, fall)
                 : g_strdup_printf (_ ("civil dusk %s, dawn %s"), fall, rise);
    }
  if (dawn != NULL || dusk != NULL)
    return half_twilight_words (day, dawn, dusk);
  sun_range (day, &low_deg, &high_deg);
  return g_strdup (low_deg >= CIVIL_DEG ? _ ("it gets no darker than civil twilight")
                                        : _ ("no civil twilight"));
}

static char *
polar_day_words (const Day *day)
{
  double low_deg, high_deg;

  sun_range (day, &low_deg, &high_deg);
  /* Translators: polar day: lowest and highest sun in whole degrees. */
  return g_strdup_printf (_ ("The sun does not set: it stands from %.0f° to %.0f° high."),
                          MAX (low_deg, 0.0), high_deg);
}

static char *
polar_night_words (const Day *day)
{
  g_autofree char *twilight = twilight_words (day);

  /* Translators: polar night, then what twilight there is. */
  return g_strdup_printf (_ ("The sun does not rise; %s."), twilight);
}

static char *
sun_words (const Day *day)
{
  GString *words = g_string_new (NULL);
  g_autofree char *twilight = NULL;
  g_autofree char *ups_and_downs = NULL;

  if (day->polar == FF_POLAR_DAY)
    return polar_day_words (day);
  if (day->polar == FF_POLAR_NIGHT)
    return polar_night_words (day);
  for (guint i = 0; i < day->events->len; i++)
    {
      const FfSkyEvent *each = &g_array_index (day->events, FfSkyEvent, i);
      g_autofree char *clock = clock_of (day, each->instant);

      if (each->event != FF_EVENT_SUNRISE && each->event != FF_EVENT_SUNSET)
        continue;
      g_string_append (words, words->len > 0 ? ", " : "");
      /* Translators: in a list after "Sun": rises, sets at a clock time. */
      g_string_append_printf (words, each->event == FF_EVENT_SUNRISE ? _ ("up %s") : _ ("down %s"),
                              clock);
    }
  twilight = twilight_words (day);
  ups_and_downs = g_string_free (words, FALSE);
  /* Translators: "Sun up 06:53, down 19:27; civil dawn 06:19, dusk 20:01." */
  return g_strdup_printf (_ ("Sun %s; %s."), ups_and_downs, twilight);
}

/* ---- Low sun ---- */

/* When the sun passes the low height, up or down, from the one end of the day to the other. */
static GArray *
low_crossings (const Day *day, gboolean *ret_starts_low)
{
  GArray *crossings = g_array_new (FALSE, FALSE, sizeof (double));

  *ret_starts_low = altitude_deg ((double) day->from, &day->track) < FF_LOW_SUN_DEG;
  for (guint i = 1; i < day->points->len; i++)
    {
      const FfCurvePoint *before = &g_array_index (day->points, FfCurvePoint, i - 1);
      const FfCurvePoint *after = &g_array_index (day->points, FfCurvePoint, i);
      double at;

      if ((before->value < FF_LOW_SUN_DEG) == (after->value < FF_LOW_SUN_DEG))
        continue;
      at = ff_curve_crossing (altitude_deg, &day->track, before, after, FF_LOW_SUN_DEG);
      if (at >= (double) day->from && at < (double) day->to)
        g_array_append_val (crossings, at);
    }
  return crossings;
}

static char *
low_sun_words (const Day *day)
{
  gboolean starts_low;
  g_autoptr (GArray) crossings = low_crossings (day, &starts_low);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  if (day->polar == FF_POLAR_NIGHT || (crossings->len == 0 && !starts_low))
    return NULL;
  if (crossings->len == 0)
    return g_strdup_printf (_ ("The sun stays low, under %.0f°, all day."), FF_LOW_SUN_DEG);
  first = clock_of (day, g_array_index (crossings, double, 0));
  if (crossings->len > 1)
    second = clock_of (day, g_array_index (crossings, double, 1));
  if (starts_low && second != NULL)
    /* Translators: low sun in the morning until a clock, in the evening from a clock. */
    return g_strdup_printf (_ ("Low sun, under %.0f°, until %s and from %s."), FF_LOW_SUN_DEG,
                            first, second);
  if (second != NULL)
    return g_strdup_printf (_ ("Low sun, under %.0f°, from %s to %s."), FF_LOW_SUN_DEG, first,
                            second);
  return g_strdup_printf (starts_low ? _ ("Low sun, under %.0f°, until %s.")
                                     : _ ("Low sun, under %.0f°, from %s."),
                          FF_LOW_SUN_DEG, first);
}

/* ---- Moon ---- */

static char *
moon_ups_and_downs (const Day *day)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < day->events->len; i++)
    {
      const FfSkyEvent *each = &g_array_index (day->events, FfSkyEvent, i);
      g_autofree char *clock = clock_of (day, each->instant);

      if (each->event != FF_EVENT_MOONRISE && each->event != FF_EVENT_MOONSET)
        continue;
      g_string_append (words, words->len > 0 ? ", " : "");
      g_string_append_printf (
          words, each->event == FF_EVENT_MOONRISE ? _ ("rises %s") : _ ("sets %s"), clock);
    }
  return g_string_free (words, FALSE);
}

/* A number and its percent sign stay on one line. */
static char *
keep_percent (char *taken)
{
  GString *words = g_string_new (taken);

  g_free (taken);
  g_string_replace (words, " %", "\u00a0%", 0);
  return g_string_free (words, FALSE);
}

static char *
moon_words (const Day *day)
{
  const FfSkyEvent *rise = ff_sky_events_find (day->events, FF_EVENT_MOONRISE);
  const double at = rise != NULL ? rise->instant : (double) (day->from + day->to) / 2;
  g_autofree char *ups_and_downs = moon_ups_and_downs (day);
  FfDirection moon;
  double lit;

  ff_moon_direction (at, &day->query->site, &moon, &lit);
  if (ups_and_downs[0] != '\0')
    /* Translators: "Moon sets 05:12, rises 19:50; 84 % lit." */
    return keep_percent (g_strdup_printf (_ ("Moon %s; %.0f %% lit."), ups_and_downs, lit * 100));
  if (moon.altitude_deg > 0)
    return keep_percent (g_strdup_printf (_ ("The moon is up all day; %.0f %% lit."), lit * 100));
  return g_strdup (_ ("The moon stays down all day."));
}

/* ---- Clock ---- */

static char *
check_words (const Day *day)
{
  const int minutes = day->query->check_clock >= 0 ? day->query->check_clock : NOON;
  g_autofree char *clock = NULL;
  FfDirection sun;
  gint64 at;

  if (!ff_instant_from_clock (day->query->date, minutes, day->query->zone, &at, NULL))
    return NULL;
  ff_sun_direction ((double) at, &day->query->site, &sun);
  if (sun.altitude_deg < SUN_EDGE_DEG)
    return NULL;
  clock = clock_of (day, (double) at);
  /* Translators: where the sun stands at a clock time: bearing and height in degrees. */
  return g_strdup_printf (
      _ ("At %s the sun stands at %.0f°, %.0f° high: check clock and zone by it."), clock,
      floor (fmod (sun.azimuth_deg + 0.5, 360)), MAX (sun.apparent_altitude_deg, 0.0));
}

static int
offset_minutes (const FfDayWordsQuery *query, gint64 instant)
{
  const int interval = g_time_zone_find_interval (query->zone, G_TIME_TYPE_UNIVERSAL, instant);

  return interval >= 0 ? g_time_zone_get_offset (query->zone, interval) / 60 : 0;
}

/* "UTC", "UTC+1", "UTC−3:30" */
static char *
offset_words (int minutes)
{
  const int hours = abs (minutes) / 60, rest = abs (minutes) % 60;
  const char *sign = minutes < 0 ? "−" : "+";

  if (minutes == 0)
    return g_strdup ("UTC");
  if (rest == 0)
    return g_strdup_printf ("UTC%s%d", sign, hours);
  return g_strdup_printf ("UTC%s%d:%02d", sign, hours, rest);
}

static char *
clock_words (const Day *day)
{
  const int first = offset_minutes (day->query, day->from);
  const int last = offset_minutes (day->query, day->to - 1);
  const char *zone = g_time_zone_get_identifier (day->query->zone);
  g_autofree char *first_words = offset_words (first);
  g_autofree char *last_words = offset_words (last);

  if (first == last)
    /* Translators: a zone ("Europe/London") and its difference from UTC on that day. */
    return g_strdup_printf (_ ("Clock of %s: %s."), zone, first_words);
  return g_strdup_printf (_ ("Clock of %s: it changes on this day, from %s to %s."), zone,
                          first_words, last_words);
}

/* ---- Public ---- */

FfDayWords *
ff_day_words (const FfDayWordsQuery *query)
{
  FfDayWords *words = g_new0 (FfDayWords, 1);
  Day day;

  day_init (&day, query);
  words->sun = sun_words (&day);
  words->low_sun = low_sun_words (&day);
  words->moon = moon_words (&day);
  words->check = check_words (&day);
  words->clock = clock_words (&day);
  day_clear (&day);
  return words;
}

void
ff_day_words_free (FfDayWords *words)
{
  if (words == NULL)
    return;
  g_free (words->sun);
  g_free (words->low_sun);
  g_free (words->moon);
  g_free (words->check);
  g_free (words->clock);
  g_free (words);
}
