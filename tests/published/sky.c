/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sun and moon against published values and, where none are printed, against a general-purpose
 * astronomy library. Every table names its source; every kind of value has its own tolerance. */
#include "ff-test.h"

#include <math.h>

#include "ff-civil.h"
#include "ff-ephemeris.h"
#include "ff-events.h"

#define RADIANS (G_PI / 180)

static double
instant_of (const char *text)
{
  g_autoptr (GError) error = NULL;
  gint64 instant = 0;

  assert_true (ff_instant_parse (text, &instant, &error));
  assert_no_error (error);
  return (double) instant;
}

/* Events of a local civil day, "2025-06-21" in "Europe/Oslo". */
static GArray *
events_of_day (const char *date_text, const char *zone_name, const FfSite *site, FfPolar *ret_polar)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GTimeZone) zone = ff_zone_new (zone_name, &error);
  FfDate date;
  gint64 from, to;

  assert_no_error (error);
  assert_true (ff_date_parse (date_text, &date, &error));
  ff_day_bounds (date, zone, &from, &to);
  return ff_sky_events (from, to, site, ret_polar);
}

/* The one event of its kind, within `tolerance` seconds of the instant. */
static void
assert_event (GArray *events, FfEvent event, const char *when, double tolerance)
{
  const FfSkyEvent *found = ff_sky_events_find (events, event);

  if (found == NULL)
    fail_msg ("no %s, want %s", ff_name_token (&ff_names_event, (int) event), when);
  assert_close (found->instant, instant_of (when), tolerance);
}

static guint
count (GArray *events, FfEvent event)
{
  guint n = 0;

  for (guint i = 0; i < events->len; i++)
    n += g_array_index (events, FfSkyEvent, i).event == event;
  return n;
}

/* Distance on the sky in degrees. */
static double
separation_deg (const FfDirection *got, double azimuth_deg, double altitude_deg)
{
  const double turn = (got->azimuth_deg - azimuth_deg) * RADIANS;
  const double a = got->altitude_deg * RADIANS, b = altitude_deg * RADIANS;
  const double across = cos ((a + b) / 2) * 2 * sin (turn / 2);

  return hypot (across, a - b) / RADIANS;
}

/* I. Reda and A. Andreas, Solar Position Algorithm for Solar Radiation Applications,
 * NREL/TP-560-34302, revised January 2008, appendix A.5. It takes TT - UT as 67 s where the table
 * of leap seconds has 64.184 s. */
static const FfSite nrel_site = { 39.742476, -105.1786, 1830.14 };

static void
test_nrel_sample (void **state)
{
  FfDirection sun;
  const double air = 820.0 / 1010 * 283 / (273 + 11); /* the sample's pressure and temperature */

  ff_sun_direction (instant_of ("2003-10-17T12:30:30-07:00"), &nrel_site, &sun);
  assert_close (sun.altitude_deg, 39.872046, 0.002);
  assert_close (sun.azimuth_deg, 194.340241, 0.002);
  assert_close (air * (sun.apparent_altitude_deg - sun.altitude_deg), 0.016332, 0.0001);
}

/* The sample's two events belong to one day of universal time: its sunset is that of the evening
 * before, by the clocks of the place. */
static void
test_nrel_events (void **state)
{
  g_autoptr (GArray) day = events_of_day ("2003-10-17", "America/Phoenix", &nrel_site, NULL);
  g_autoptr (GArray) eve = events_of_day ("2003-10-16", "America/Phoenix", &nrel_site, NULL);

  assert_event (day, FF_EVENT_SUNRISE, "2003-10-17T06:12:43-07:00", 2);
  assert_event (eve, FF_EVENT_SUNSET, "2003-10-16T17:20:19-07:00", 2);
}

/* A time scale of Meeus' examples: dynamical time as UTC seconds, by TT - UTC of 1992. */
static double
instant_of_jde_1992 (double jde)
{
  return (jde - 2440587.5) * 86400 - 59.184;
}

static void
to_right_ascension (const double v[3], double *ret_ra_deg, double *ret_dec_deg)
{
  const double angle = atan2 (v[1], v[0]) / RADIANS;

  *ret_ra_deg = angle < 0 ? angle + 360 : angle;
  *ret_dec_deg = atan2 (v[2], hypot (v[0], v[1])) / RADIANS;
}

/* J. Meeus, Astronomical Algorithms, 2nd edition, 1998: example 12.a, p. 88, apparent sidereal time
 * at Greenwich on 1987 April 10, 0h UT. */
static void
test_meeus_sidereal_time (void **state)
{
  FfSpin spin;

  ff_spin_init (&spin, instant_of ("1987-04-10T00:00:00Z"));
  assert_close (spin.sidereal_rad / RADIANS * 240, 13 * 3600 + 10 * 60 + 46.1351, 0.005);
}

/* Example 13.b, p. 95: Venus over Washington on 1987 April 10 at 19:21 UT. Meeus counts azimuth
 * from the south and longitude westwards. The example is geocentric, so the planet is put far
 * away. */
static void
test_meeus_horizon (void **state)
{
  const double ra = (23 + 9 / 60.0 + 16.641 / 3600) * 15 * RADIANS;
  const double dec = -(6 + 43 / 60.0 + 11.61 / 3600) * RADIANS;
  const double sidereal = (8 + 34 / 60.0 + 56.853 / 3600) * 15 * RADIANS;
  const double venus[3]
      = { 1e6 * cos (dec) * cos (ra), 1e6 * cos (dec) * sin (ra), 1e6 * sin (dec) };
  const FfSite site = { 38 + 55 / 60.0 + 17 / 3600.0, -(77 + 3 / 60.0 + 56 / 3600.0), 0 };
  FfHorizon horizon;
  FfDirection direction;
  double earth_fixed[3], local[3];

  ff_horizon_init (&horizon, &site);
  ff_spin_turn (sidereal, venus, earth_fixed);
  ff_horizon_local (&horizon, earth_fixed, local);
  ff_horizon_direction (local, &direction);
  assert_close (direction.azimuth_deg, 180 + 68.034, 0.001);
  assert_close (direction.altitude_deg, 15.125, 0.001);
}

/* Example 25.a, p. 165, 1992 October 13, 0h TD: 13h13m31.4s, -7d47'06". The book's method is good
 * to 0.01 degree. */
static void
test_meeus_sun (void **state)
{
  const double instant = instant_of_jde_1992 (2448908.5);
  FfSpin spin;
  double gcrs[3], sun[3], ra_deg, dec_deg;

  ff_spin_init (&spin, instant);
  ff_ephemeris_sun (instant, gcrs);
  ff_spin_true (&spin, gcrs, sun);
  to_right_ascension (sun, &ra_deg, &dec_deg);
  assert_close (ra_deg, (13 + 13 / 60.0 + 31.4 / 3600) * 15, 0.01);
  assert_close (dec_deg, -(7 + 47 / 60.0 + 6 / 3600.0), 0.01);
}

/* Example 47.a, p. 342, and 48.a, p. 347: the moon on 1992 April 12, 0h TD. Right ascension and
 * declination from memory. */
static void
test_meeus_moon (void **state)
{
  const double instant = instant_of_jde_1992 (2448724.5);
  const FfSite site = { 0 };
  FfSpin spin;
  FfDirection direction;
  double gcrs[3], moon[3], ra_deg, dec_deg, illuminated;

  ff_spin_init (&spin, instant);
  ff_ephemeris_moon (instant, gcrs);
  ff_spin_true (&spin, gcrs, moon);
  to_right_ascension (moon, &ra_deg, &dec_deg);
  assert_close (ra_deg, 134.688470, 0.002);
  assert_close (dec_deg, 13.768368, 0.002);
  assert_close (sqrt (moon[0] * moon[0] + moon[1] * moon[1] + moon[2] * moon[2]) * 149597870.7,
                368409.7, 1.0);
  ff_moon_direction (instant, &site, &direction, &illuminated);
  assert_close (illuminated, 0.6786, 0.0001);
}

/* Formula 16.4 (Saemundsson), p. 106, in standard air, worked by hand in arcminutes with the term
 * that makes it vanish at the zenith; the upper limb of example 16.a, p. 107, is without it. */
static void
test_refraction (void **state)
{
  static const struct {
    double altitude_deg, arcminutes;
  } lines[] = {
    { 0, 28.984 }, { 1, 21.746 }, { 2, 16.928 }, { 3, 13.663 },
    { 5, 9.676 },  { 10, 5.410 }, { 20, 2.743 }, { 40, 1.208 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    assert_close (ff_refraction_deg (lines[i].altitude_deg) * 60, lines[i].arcminutes, 0.001);
  assert_close (ff_refraction_deg (33.246 / 60) * 60, 24.618, 0.003);
}

/* Jet Propulsion Laboratory, Horizons system, DE431, airless azimuth and altitude. 0.1 arcminute
 * for the sun, 0.5 for the moon: UT1 - UTC and the shortened models. */
static void
test_horizons_sun (void **state)
{
  static const struct {
    const char *when;
    double azimuth_deg, altitude_deg;
  } lines[] = {
    { "2019-03-19T04:00:00Z", 90.8147, -31.9895 },  { "2019-03-19T06:00:00Z", 90.6584, -1.9863 },
    { "2019-03-19T07:00:00Z", 90.6585, 13.0158 },   { "2019-03-19T08:00:00Z", 90.7081, 28.0181 },
    { "2019-03-19T11:40:00Z", 94.6456, 83.0102 },   { "2019-03-19T12:00:00Z", 105.8835, 87.9562 },
    { "2019-03-19T20:00:00Z", 269.5156, -28.0603 }, { "2019-03-19T22:00:00Z", 269.2542, -58.0643 },
  };
  const FfSite site = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      FfDirection sun;

      ff_sun_direction (instant_of (lines[i].when), &site, &sun);
      assert_close (separation_deg (&sun, lines[i].azimuth_deg, lines[i].altitude_deg), 0,
                    0.1 / 60);
    }
}

static void
test_horizons_moon (void **state)
{
  static const struct {
    const char *when;
    double azimuth_deg, altitude_deg;
  } lines[] = {
    { "2019-01-07T00:00:00Z", 250.1056, -8.0045 }, { "2020-02-11T00:00:00Z", 71.7004, -11.9892 },
    { "2021-03-17T00:00:00Z", 264.2612, 31.8041 }, { "2022-04-21T00:00:00Z", 95.8758, -54.6803 },
    { "2023-05-26T00:00:00Z", 251.9291, 68.4015 }, { "2024-06-29T00:00:00Z", 15.2052, -57.2450 },
    { "2025-08-03T00:00:00Z", 176.9462, 36.0460 }, { "2026-09-07T00:00:00Z", 331.7022, -30.6548 },
  };
  const FfSite site = { 29, -81, 10 };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      FfDirection moon;
      double illuminated;

      ff_moon_direction (instant_of (lines[i].when), &site, &moon, &illuminated);
      assert_close (separation_deg (&moon, lines[i].azimuth_deg, lines[i].altitude_deg), 0,
                    0.5 / 60);
    }
}

/* US Naval Observatory, Astronomical Applications Department, tables of rising and setting in
 * universal time, printed to the minute. */
static void
test_usno_rise_and_set (void **state)
{
  static const struct {
    FfSite site;
    const char *date;
    FfEvent rising, setting;
    const char *rise, *set;
  } lines[] = {
    { { 60, 0, 0 }, "2019-03-20", FF_EVENT_SUNRISE, FF_EVENT_SUNSET, "06:03", "18:14" },
    { { 60, 0, 0 }, "2019-06-21", FF_EVENT_SUNRISE, FF_EVENT_SUNSET, "02:36", "21:28" },
    { { 60, 0, 0 }, "2019-12-22", FF_EVENT_SUNRISE, FF_EVENT_SUNSET, "09:02", "14:55" },
    { { 29, -81, 0 }, "2019-01-01", FF_EVENT_SUNRISE, FF_EVENT_SUNSET, "12:18", "22:38" },
    { { 29, -81, 0 }, "2019-06-21", FF_EVENT_SUNRISE, FF_EVENT_SUNSET, "10:26", "00:26" },
    { { -60, -150, 0 }, "2019-06-21", FF_EVENT_SUNRISE, FF_EVENT_SUNSET, "19:06", "00:58" },
    { { 29, -81, 0 }, "2019-01-20", FF_EVENT_MOONRISE, FF_EVENT_MOONSET, "22:31", "11:40" },
    { { 29, -81, 0 }, "2019-01-21", FF_EVENT_MOONRISE, FF_EVENT_MOONSET, "23:40", "12:39" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autoptr (GArray) events = events_of_day (lines[i].date, "UTC", &lines[i].site, NULL);
      g_autofree char *rise = g_strdup_printf ("%sT%s:00Z", lines[i].date, lines[i].rise);
      g_autofree char *set = g_strdup_printf ("%sT%s:00Z", lines[i].date, lines[i].set);

      assert_event (events, lines[i].rising, rise, 60);
      assert_event (events, lines[i].setting, set, 60);
    }
}

/* Astronomy Engine 2.1.19, a general-purpose library: its search for an altitude of the sun's
 * centre of -50 arcminutes, -6 and -12 degrees from local midnight on. Universal time; two seconds.
 * NULL: does not happen. */
typedef struct {
  const char *place;
  FfSite site;
  const char *date, *zone;
  FfPolar polar;
  const char *nautical_dawn, *civil_dawn, *sunrise, *sunset, *civil_dusk, *nautical_dusk;
} Day;

/* clang-format off */
static const Day days[] = {
  { "Golden", { 39.742476, -105.1786, 1830.14 }, "2003-10-17", "America/Denver", FF_POLAR_NONE,
    "2003-10-17T12:14:09Z", "2003-10-17T12:45:29Z", "2003-10-17T13:12:44Z",
    "2003-10-18T00:18:51Z", "2003-10-18T00:46:04Z", "2003-10-18T01:17:22Z" },
  { "Tromso, midnight sun", { 69.6492, 18.9553, 0 }, "2025-06-21", "Europe/Oslo", FF_POLAR_DAY,
    NULL, NULL, NULL, NULL, NULL, NULL },
  { "70 N, polar night", { 70, 25, 0 }, "2025-12-21", "Europe/Oslo", FF_POLAR_NIGHT,
    "2025-12-21T06:25:44Z", "2025-12-21T08:14:32Z", NULL,
    NULL, "2025-12-21T12:21:45Z", "2025-12-21T14:10:34Z" },
  { "70 N, equinox", { 70, 25, 0 }, "2025-03-20", "Europe/Oslo", FF_POLAR_NONE,
    "2025-03-20T01:59:22Z", "2025-03-20T03:17:24Z", "2025-03-20T04:18:35Z",
    "2025-03-20T16:38:24Z", "2025-03-20T17:40:05Z", "2025-03-20T18:59:16Z" },
  { "70 N, after the last sunset", { 70, 25, 0 }, "2025-05-17", "Europe/Oslo", FF_POLAR_DAY,
    NULL, NULL, NULL, NULL, NULL, NULL },
  { "78 N in spring", { 78.2232, 15.6267, 0 }, "2025-04-15", "Europe/Oslo", FF_POLAR_NONE,
    NULL, NULL, "2025-04-15T00:41:07Z", "2025-04-15T21:28:49Z", NULL, NULL },
  { "Quito", { -0.1807, -78.4678, 2850 }, "2025-03-20", "America/Guayaquil", FF_POLAR_NONE,
    "2025-03-20T10:33:16Z", "2025-03-20T10:57:15Z", "2025-03-20T11:17:55Z",
    "2025-03-20T23:24:25Z", "2025-03-20T23:45:04Z", "2025-03-21T00:09:04Z" },
  { "Sydney", { -33.8688, 151.2093, 0 }, "2025-12-22", "Australia/Sydney", FF_POLAR_NONE,
    "2025-12-21T17:36:11Z", "2025-12-21T18:12:05Z", "2025-12-21T18:41:15Z",
    "2025-12-22T09:06:01Z", "2025-12-22T09:35:11Z", "2025-12-22T10:11:05Z" },
  { "Ushuaia", { -54.8019, -68.3030, 0 }, "2025-06-21", "America/Argentina/Ushuaia", FF_POLAR_NONE,
    "2025-06-21T11:26:16Z", "2025-06-21T12:13:40Z", "2025-06-21T12:58:54Z",
    "2025-06-21T20:11:20Z", "2025-06-21T20:56:34Z", "2025-06-21T21:43:58Z" },
  { "78 S, polar night", { -77.8419, 166.6863, 0 }, "2025-06-21", "Antarctica/McMurdo",
    FF_POLAR_NIGHT,
    "2025-06-20T23:32:54Z", NULL, NULL, NULL, NULL, "2025-06-21T02:17:07Z" },
  { "Apia", { -13.8333, -171.7667, 0 }, "2025-08-01", "Pacific/Apia", FF_POLAR_NONE,
    "2025-07-31T17:00:10Z", "2025-07-31T17:25:56Z", "2025-07-31T17:48:17Z",
    "2025-08-01T05:18:45Z", "2025-08-01T05:41:06Z", "2025-08-01T06:06:52Z" },
  { "Kiritimati", { 1.8721, -157.4278, 0 }, "2025-03-20", "Pacific/Kiritimati", FF_POLAR_NONE,
    "2025-03-19T15:49:20Z", "2025-03-19T16:13:21Z", "2025-03-19T16:34:01Z",
    "2025-03-20T04:40:29Z", "2025-03-20T05:01:09Z", "2025-03-20T05:25:10Z" },
  { "Adak", { 51.88, -176.6581, 0 }, "2024-11-05", "America/Adak", FF_POLAR_NONE,
    "2024-11-05T17:33:36Z", "2024-11-05T18:13:50Z", "2024-11-05T18:49:58Z",
    "2024-11-06T04:09:51Z", "2024-11-06T04:45:57Z", "2024-11-06T05:26:08Z" },
  { "Paris, a day of 23 hours", { 48.8566, 2.3522, 0 }, "2025-03-30", "Europe/Paris", FF_POLAR_NONE,
    "2025-03-30T04:22:19Z", "2025-03-30T05:00:21Z", "2025-03-30T05:32:12Z",
    "2025-03-30T18:18:40Z", "2025-03-30T18:50:38Z", "2025-03-30T19:28:51Z" },
  { "New York, a day of 25 hours", { 40.7128, -74.0060, 0 }, "2025-11-02", "America/New_York",
    FF_POLAR_NONE,
    "2025-11-02T10:27:00Z", "2025-11-02T10:59:25Z", "2025-11-02T11:27:55Z",
    "2025-11-02T21:50:45Z", "2025-11-02T22:19:15Z", "2025-11-02T22:51:38Z" },
  { "London", { 51.5074, -0.1278, 0 }, "2026-06-24", "Europe/London", FF_POLAR_NONE,
    "2026-06-24T01:41:44Z", "2026-06-24T02:56:13Z", "2026-06-24T03:43:57Z",
    "2026-06-24T20:21:54Z", "2026-06-24T21:09:35Z", "2026-06-24T22:23:56Z" },
  { "St Petersburg, white night", { 59.9343, 30.3351, 0 }, "2025-06-21", "Europe/Moscow",
    FF_POLAR_NONE,
    NULL, "2025-06-20T22:50:28Z", "2025-06-21T00:35:12Z",
    "2025-06-21T19:25:47Z", "2025-06-20T21:10:18Z", NULL },
  { "Nairobi", { -1.2921, 36.8219, 0 }, "2026-01-01", "Africa/Nairobi", FF_POLAR_NONE,
    "2026-01-01T02:41:37Z", "2026-01-01T03:07:49Z", "2026-01-01T03:30:18Z",
    "2026-01-01T15:42:09Z", "2026-01-01T16:04:38Z", "2026-01-01T16:30:49Z" },
};
/* clang-format on */

static void
assert_event_or_none (const Day *day, GArray *events, FfEvent event, const char *when)
{
  if (count (events, event) != (when != NULL ? 1 : 0))
    fail_msg ("%s: %u of %s", day->place, count (events, event),
              ff_name_token (&ff_names_event, (int) event));
  if (when != NULL)
    assert_event (events, event, when, 2);
}

static void
test_reference_days (void **state)
{
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      const Day *day = &days[i];
      FfPolar polar;
      g_autoptr (GArray) events = events_of_day (day->date, day->zone, &day->site, &polar);

      assert_int_equal (polar, day->polar);
      assert_event_or_none (day, events, FF_EVENT_NAUTICAL_DAWN, day->nautical_dawn);
      assert_event_or_none (day, events, FF_EVENT_CIVIL_DAWN, day->civil_dawn);
      assert_event_or_none (day, events, FF_EVENT_SUNRISE, day->sunrise);
      assert_event_or_none (day, events, FF_EVENT_SUNSET, day->sunset);
      assert_event_or_none (day, events, FF_EVENT_CIVIL_DUSK, day->civil_dusk);
      assert_event_or_none (day, events, FF_EVENT_NAUTICAL_DUSK, day->nautical_dusk);
    }
}

/* Days at the edge of the polar day, computed with the same library: hours after local midnight. A
 * day may have one crossing of the horizon, or three. */
typedef struct {
  FfEvent event;
  double hours;
} Crossing;

static void
assert_horizon_crossings (GArray *events, gint64 midnight, const Crossing *want, guint n_want)
{
  guint n = 0;

  for (guint i = 0; i < events->len; i++)
    {
      const FfSkyEvent *event = &g_array_index (events, FfSkyEvent, i);

      if (event->event != FF_EVENT_SUNRISE && event->event != FF_EVENT_SUNSET)
        continue;
      assert_true (n < n_want);
      assert_int_equal (event->event, want[n].event);
      assert_close ((event->instant - (double) midnight) / 3600, want[n].hours, 0.006);
      n++;
    }
  assert_int_equal (n, n_want);
}

static void
test_edge_days (void **state)
{
  /* clang-format off */
  static const struct {
    FfSite site;
    const char *midnight;
    guint n;
    Crossing crossings[3];
  } lines[] = {
    { { 70, 25, 0 }, "2025-05-16T00:00:00+02:00", 1, { { FF_EVENT_SUNRISE, 0.61 } } },
    { { 70, 25, 0 }, "2025-07-27T00:00:00+02:00", 1, { { FF_EVENT_SUNSET, 23.91 } } },
    { { 78.2232, 15.6267, 0 }, "2025-04-17T00:00:00+02:00", 1, { { FF_EVENT_SUNRISE, 2.03 } } },
    { { 78.2232, 15.6267, 0 }, "2025-08-25T00:00:00+02:00", 3,
      { { FF_EVENT_SUNSET, 0.31 }, { FF_EVENT_SUNRISE, 1.71 }, { FF_EVENT_SUNSET, 23.83 } } },
    { { 66.5, 25.7, 0 }, "2025-07-16T00:00:00+03:00", 3,
      { { FF_EVENT_SUNSET, 0.05 }, { FF_EVENT_SUNRISE, 2.74 }, { FF_EVENT_SUNSET, 23.97 } } },
  };
  /* clang-format on */

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      const gint64 midnight = (gint64) instant_of (lines[i].midnight);
      FfPolar polar;
      g_autoptr (GArray) events
          = ff_sky_events (midnight, midnight + 86400, &lines[i].site, &polar);

      assert_horizon_crossings (events, midnight, lines[i].crossings, lines[i].n);
      assert_int_equal (polar, FF_POLAR_NONE);
    }
}

/* Illuminated share of the moon, computed with Astronomy Engine and PyEphem, which agree. */
static void
test_moon_illuminated (void **state)
{
  static const struct {
    const char *when;
    double share;
  } lines[] = {
    { "2025-06-21T22:45:00Z", 0.1677 }, { "2025-03-20T06:00:00Z", 0.7119 },
    { "2024-07-04T01:00:00Z", 0.0439 }, { "2026-09-23T12:00:00Z", 0.8913 },
    { "2025-11-02T11:30:00Z", 0.8674 }, { "2025-03-30T05:30:00Z", 0.0094 },
  };
  const FfSite site = { 50, 10, 0 };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      FfDirection moon;
      double illuminated;

      ff_moon_direction (instant_of (lines[i].when), &site, &moon, &illuminated);
      assert_close (illuminated, lines[i].share, 0.0003);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_nrel_sample),         cmocka_unit_test (test_nrel_events),
    cmocka_unit_test (test_meeus_sidereal_time), cmocka_unit_test (test_meeus_horizon),
    cmocka_unit_test (test_meeus_sun),           cmocka_unit_test (test_meeus_moon),
    cmocka_unit_test (test_refraction),          cmocka_unit_test (test_horizons_sun),
    cmocka_unit_test (test_horizons_moon),       cmocka_unit_test (test_usno_rise_and_set),
    cmocka_unit_test (test_reference_days),      cmocka_unit_test (test_edge_days),
    cmocka_unit_test (test_moon_illuminated),
  };

  return cmocka_run_group_tests_name ("published sky", tests, NULL, NULL);
}
