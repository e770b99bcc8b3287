/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What holds for sun and moon whatever the place and day. Places and days are random, seeded. */
#include "ff-test.h"

#include <math.h>

#include "ff-events.h"

#define DAY        86400
#define SUN_UP_DEG (-50.0 / 60)

static const gint64 first_day = 1577836800; /* 2020-01-01 */

static FfSite
random_site (FfTestRandom *random, double low_latitude, double high_latitude)
{
  const double latitude = ff_test_random (random, low_latitude, high_latitude);

  return (FfSite) { ff_test_random (random, 0, 1) < 0.5 ? latitude : -latitude,
                   ff_test_random (random, -180, 180), ff_test_random (random, 0, 3000) };
}

static gint64
random_midnight (FfTestRandom *random)
{
  return first_day + (gint64) ff_test_random_int (random, 0, 7300) * DAY
         + ff_test_random_int (random, 0, 24 * 60) * 60;
}

static double
sun_altitude_deg (double instant, const FfSite *site)
{
  FfDirection sun;

  ff_sun_direction (instant, site, &sun);
  return sun.altitude_deg;
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
separation_deg (const FfDirection *a, const FfDirection *b)
{
  const double turn = (a->azimuth_deg - b->azimuth_deg) * G_PI / 180;
  const double middle = (a->altitude_deg + b->altitude_deg) / 2 * G_PI / 180;
  const double across = 2 * sin (turn / 2) * cos (middle) * 180 / G_PI;

  return hypot (across, a->altitude_deg - b->altitude_deg);
}

static void
test_track_keeps_its_promise (void **state)
{
  FfTestRandom random = { 11 };

  for (int i = 0; i < 60; i++)
    {
      const FfSite site = random_site (&random, 0, 90);
      const double from = (double) random_midnight (&random);
      const double to = from + ff_test_random (&random, 1, 2 * DAY);
      FfSunTrack track;

      ff_sun_track_init (&track, from, to, &site);
      for (int j = 0; j < 20; j++)
        {
          const double instant = ff_test_random (&random, from, to);
          FfDirection held, full;

          ff_sun_track_direction (&track, instant, &held);
          ff_sun_direction (instant, &site, &full);
          assert_close (separation_deg (&held, &full), 0, 0.001);
          assert_close (ff_sun_track_altitude_deg (&track, instant), full.altitude_deg, 0.001);
        }
    }
}

static void
test_track_of_no_length (void **state)
{
  const FfSite site = { 57.2, -4, 12 };
  const double instant = (double) first_day + DAY / 2;
  FfSunTrack track;
  FfDirection held, full;

  ff_sun_track_init (&track, instant, instant, &site);
  ff_sun_track_direction (&track, instant, &held);
  ff_sun_direction (instant, &site, &full);
  assert_close (separation_deg (&held, &full), 0, 0.001);
}

static void
test_directions_stay_in_range (void **state)
{
  static const FfSite sites[] = {
    { 90, 0, 0 }, { -90, 77, 2800 }, { 0, 180, 0 }, { 0, -180, 0 }, { 57.2, -4, 12 },
  };
  FfTestRandom random = { 12 };

  for (guint i = 0; i < 500; i++)
    {
      const FfSite *site = &sites[i % G_N_ELEMENTS (sites)];
      const double instant = (double) random_midnight (&random);
      FfDirection sun, moon;
      double illuminated;

      ff_sun_direction (instant, site, &sun);
      ff_moon_direction (instant, site, &moon, &illuminated);
      assert_true (sun.altitude_deg >= -90 && sun.apparent_altitude_deg <= 90);
      assert_true (sun.azimuth_deg >= 0 && sun.azimuth_deg <= 360);
      assert_true (moon.altitude_deg >= -90 && moon.apparent_altitude_deg <= 90);
      assert_true (moon.azimuth_deg >= 0 && moon.azimuth_deg <= 360);
      assert_true (illuminated >= 0 && illuminated <= 1);
    }
}

static void
test_refraction_lifts_what_is_near_the_horizon (void **state)
{
  double before = ff_refraction_deg (-1);

  assert_close (ff_refraction_deg (-1.001), 0, 0);
  assert_close (ff_refraction_deg (-45), 0, 0);
  assert_true (before > 0.5);
  for (double altitude = -0.9; altitude <= 90; altitude += 0.1)
    {
      const double next = ff_refraction_deg (altitude);

      assert_true (next < before);
      before = next;
    }
  assert_close (ff_refraction_deg (90), 0, 1e-6);
}

/* The altitude at which the event happens, NAN when altitude doesn't make it. */
static double
level_of (FfEvent event)
{
  switch (event)
    {
    case FF_EVENT_SUNRISE:
    case FF_EVENT_SUNSET:
      return SUN_UP_DEG;
    case FF_EVENT_CIVIL_DAWN:
    case FF_EVENT_CIVIL_DUSK:
      return -6;
    case FF_EVENT_NAUTICAL_DAWN:
    case FF_EVENT_NAUTICAL_DUSK:
      return -12;
    case FF_EVENT_SOLAR_NOON:
    case FF_EVENT_MOONRISE:
    case FF_EVENT_MOONSET:
    default:
      return NAN;
    }
}

static gboolean
goes_up (FfEvent event)
{
  return event == FF_EVENT_SUNRISE || event == FF_EVENT_CIVIL_DAWN
         || event == FF_EVENT_NAUTICAL_DAWN || event == FF_EVENT_MOONRISE;
}

static double
moon_limb_deg (double instant, const FfSite *site)
{
  FfDirection moon;
  double illuminated;

  ff_moon_direction (instant, site, &moon, &illuminated);
  return moon.altitude_deg + ff_moon_semidiameter_deg (instant, site);
}

/* What the event says is so by the full position: the altitude then, and its way. */
static void
assert_event_is_so (const FfSkyEvent *event, const FfSite *site)
{
  const double level = level_of (event->event);
  double before, after;

  if (event->event == FF_EVENT_SOLAR_NOON)
    return;
  if (isnan (level))
    {
      assert_close (moon_limb_deg (event->instant, site), -34.0 / 60, 0.001);
      before = moon_limb_deg (event->instant - 30, site);
      after = moon_limb_deg (event->instant + 30, site);
    }
  else
    {
      assert_close (sun_altitude_deg (event->instant, site), level, 0.001);
      before = sun_altitude_deg (event->instant - 30, site);
      after = sun_altitude_deg (event->instant + 30, site);
    }
  assert_true ((after > before) == goes_up (event->event));
}

static void
test_events_are_so_and_in_order (void **state)
{
  FfTestRandom random = { 13 };

  for (int i = 0; i < 40; i++)
    {
      const FfSite site = random_site (&random, 0, 62);
      const gint64 from = random_midnight (&random);
      const gint64 to = from + DAY;
      g_autoptr (GArray) events = ff_sky_events (from, to, &site, NULL);
      double last = (double) from;

      for (guint j = 0; j < events->len; j++)
        {
          const FfSkyEvent *event = &g_array_index (events, FfSkyEvent, j);

          assert_true (event->instant >= last && event->instant < (double) to);
          last = event->instant;
          assert_event_is_so (event, &site);
        }
    }
}

/* Where the sun skims the horizon, against a plain count of every ten seconds. */
static void
test_no_crossing_is_missed_in_the_far_north_and_south (void **state)
{
  FfTestRandom random = { 14 };

  for (int i = 0; i < 150; i++)
    {
      const FfSite site = random_site (&random, 60, 90);
      const gint64 from = random_midnight (&random);
      g_autoptr (GArray) events = ff_sky_events (from, from + DAY, &site, NULL);
      FfSunTrack track;
      guint rises = 0, sets = 0;
      gboolean up;

      ff_sun_track_init (&track, (double) from, (double) from + DAY, &site);
      up = ff_sun_track_altitude_deg (&track, (double) from) >= SUN_UP_DEG;
      for (gint64 t = from + 10; t <= from + DAY; t += 10)
        {
          gboolean now_up = ff_sun_track_altitude_deg (&track, (double) t) >= SUN_UP_DEG;

          rises += now_up && !up;
          sets += up && !now_up;
          up = now_up;
        }
      assert_int_equal (count (events, FF_EVENT_SUNRISE), rises);
      assert_int_equal (count (events, FF_EVENT_SUNSET), sets);
    }
}

static double
lowest_altitude_deg (const FfSite *site, gint64 from)
{
  double lowest = 90;
  FfSunTrack track;

  ff_sun_track_init (&track, (double) from, (double) from + DAY, site);
  for (gint64 t = from; t < from + DAY; t += 5)
    lowest = fmin (lowest, ff_sun_track_altitude_deg (&track, (double) t));
  return lowest;
}

/* The latitude at which the midnight sun dips below the horizon by half a thousandth of a degree:
 * it is gone for some three minutes, less than lies between two samples. */
static void
test_a_dip_between_two_samples_is_found (void **state)
{
  const gint64 from = 1782043200; /* 2026-06-21T12:00Z: the dip is in the middle */
  FfSite site = { 66, 10, 0 };
  g_autoptr (GArray) events = NULL;
  const FfSkyEvent *set, *rise;
  double low = 64, high = 68;
  FfPolar polar;

  for (int i = 0; i < 30; i++)
    {
      site.latitude_deg = (low + high) / 2;
      if (lowest_altitude_deg (&site, from) < SUN_UP_DEG - 0.0005)
        low = site.latitude_deg;
      else
        high = site.latitude_deg;
    }
  events = ff_sky_events (from, from + DAY, &site, &polar);
  set = ff_sky_events_find (events, FF_EVENT_SUNSET);
  rise = ff_sky_events_find (events, FF_EVENT_SUNRISE);
  assert_non_null (set);
  assert_non_null (rise);
  assert_true (rise->instant - set->instant > 60 && rise->instant - set->instant < 290);
  assert_int_equal (polar, FF_POLAR_NONE);
}

/* Cutting a span in two loses and doubles nothing. */
static void
test_spans_join (void **state)
{
  FfTestRandom random = { 15 };

  for (int i = 0; i < 30; i++)
    {
      const FfSite site = random_site (&random, 0, 75);
      const gint64 from = random_midnight (&random);
      const gint64 cut = from + ff_test_random_int (&random, 1, DAY - 1);
      g_autoptr (GArray) whole = ff_sky_events (from, from + DAY, &site, NULL);
      g_autoptr (GArray) parts = ff_sky_events (from, cut, &site, NULL);
      g_autoptr (GArray) second = ff_sky_events (cut, from + DAY, &site, NULL);

      g_array_append_vals (parts, second->data, second->len);
      assert_int_equal (parts->len, whole->len);
      for (guint j = 0; j < whole->len; j++)
        {
          const FfSkyEvent *one = &g_array_index (whole, FfSkyEvent, j);
          const FfSkyEvent *other = &g_array_index (parts, FfSkyEvent, j);

          assert_int_equal (one->event, other->event);
          assert_close (one->instant, other->instant, 0.5);
        }
    }
}

static gboolean
sets_in (gint64 from, gint64 to, const FfSite *site)
{
  g_autoptr (GArray) events = ff_sky_events (from, to, site, NULL);

  return ff_sky_events_find (events, FF_EVENT_SUNSET) != NULL;
}

static void
test_span_is_as_short_as_one_likes (void **state)
{
  const FfSite site = { 57.2, -4, 12 };
  const gint64 midnight = 1821222000; /* 2027-09-18 in Britain */
  g_autoptr (GArray) day = ff_sky_events (midnight, midnight + DAY, &site, NULL);
  const FfSkyEvent *sunset = ff_sky_events_find (day, FF_EVENT_SUNSET);
  gint64 second;

  assert_non_null (sunset);
  second = (gint64) floor (sunset->instant);
  assert_false (sets_in (midnight, second, &site));
  assert_true (sets_in (second, second + 1, &site));
  assert_false (sets_in (second + 1, midnight + DAY, &site));
}

static void
test_polar_day_and_night (void **state)
{
  static const struct {
    FfSite site;
    gint64 from;
    FfPolar polar;
  } cases[] = {
    { { 70, 25, 0 }, 1782000000, FF_POLAR_DAY },   /* June */
    { { 70, 25, 0 }, 1797811200, FF_POLAR_NIGHT }, /* December */
    { { -70, 25, 0 }, 1782000000, FF_POLAR_NIGHT }, { { -70, 25, 0 }, 1797811200, FF_POLAR_DAY },
    { { 50, 25, 0 }, 1782000000, FF_POLAR_NONE },   { { 0, 25, 0 }, 1797811200, FF_POLAR_NONE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      FfPolar polar;
      g_autoptr (GArray) events
          = ff_sky_events (cases[i].from, cases[i].from + DAY, &cases[i].site, &polar);

      assert_int_equal (polar, cases[i].polar);
      assert_int_equal (count (events, FF_EVENT_SOLAR_NOON), 1);
      assert_int_equal (count (events, FF_EVENT_SUNRISE), polar == FF_POLAR_NONE ? 1 : 0);
    }
}

/* South of the tropics the noon sun stands in the north and December has the long days. */
static void
test_southern_hemisphere (void **state)
{
  const FfSite site = { -43.5, 172.6, 0 };
  const gint64 december = 1797811200 - 12 * 3600, june = 1782000000 - 12 * 3600;
  g_autoptr (GArray) summer = ff_sky_events (december, december + DAY, &site, NULL);
  g_autoptr (GArray) winter = ff_sky_events (june, june + DAY, &site, NULL);
  const FfSkyEvent *noon = ff_sky_events_find (summer, FF_EVENT_SOLAR_NOON);
  FfDirection sun;

  ff_sun_direction (noon->instant, &site, &sun);
  assert_close (fabs (sun.azimuth_deg - 180), 180, 0.01);
  assert_close (sun.altitude_deg, 90 - 43.5 + 23.43, 0.05);
  assert_true (ff_sky_events_find (summer, FF_EVENT_SUNSET)->instant
                   - ff_sky_events_find (summer, FF_EVENT_SUNRISE)->instant
               > 15 * 3600);
  assert_true (ff_sky_events_find (winter, FF_EVENT_SUNSET)->instant
                   - ff_sky_events_find (winter, FF_EVENT_SUNRISE)->instant
               < 9.2 * 3600);
}

static void
test_noon_is_on_the_meridian (void **state)
{
  FfTestRandom random = { 16 };

  for (int i = 0; i < 30; i++)
    {
      const FfSite site = random_site (&random, 0, 85);
      const gint64 from = random_midnight (&random);
      g_autoptr (GArray) events = ff_sky_events (from, from + DAY - 60, &site, NULL);
      const FfSkyEvent *noon = ff_sky_events_find (events, FF_EVENT_SOLAR_NOON);
      FfDirection sun;
      FfSunTrack track;

      if (noon == NULL)
        continue;
      ff_sun_track_init (&track, (double) from, (double) from + DAY, &site);
      assert_close (ff_sun_track_hour_angle_deg (&track, noon->instant), 0, 0.001);
      assert_close (ff_sun_track_hour_angle_deg (&track, noon->instant + 3600), 15, 0.02);
      ff_sun_direction (noon->instant, &site, &sun);
      assert_true (sun.altitude_deg > sun_altitude_deg (noon->instant + DAY / 2, &site));
    }
}

/* East and west of the date line is the same sun: 0.02 degree is five seconds. */
static void
test_date_line (void **state)
{
  const FfSite west = { -16.8, 179.99, 0 }, east = { -16.8, -179.99, 0 };
  const FfSite one = { -16.8, 180, 0 }, other = { -16.8, -180, 0 };
  const gint64 from = first_day + 5 * 365 * DAY;
  g_autoptr (GArray) before = ff_sky_events (from, from + DAY, &west, NULL);
  g_autoptr (GArray) after = ff_sky_events (from, from + DAY, &east, NULL);
  FfDirection a, b;

  assert_int_equal (before->len, after->len);
  assert_close (ff_sky_events_find (before, FF_EVENT_SUNRISE)->instant
                    - ff_sky_events_find (after, FF_EVENT_SUNRISE)->instant,
                4.8, 0.2);
  ff_sun_direction ((double) from, &one, &a);
  ff_sun_direction ((double) from, &other, &b);
  assert_close (separation_deg (&a, &b), 0, 1e-9);
}

/* A moonrise comes some fifty minutes later each day, so that now and then a day has none. */
static void
test_a_month_of_moonrises (void **state)
{
  const FfSite site = { 57.2, -4, 12 };
  guint days = 0, rises = 0, without = 0;
  double last = 0;

  for (gint64 from = first_day; days < 59; from += DAY, days++)
    {
      g_autoptr (GArray) events = ff_sky_events (from, from + DAY, &site, NULL);
      const FfSkyEvent *rise = ff_sky_events_find (events, FF_EVENT_MOONRISE);

      if (rise == NULL)
        {
          without++;
          continue;
        }
      rises++;
      if (last > 0)
        assert_true (rise->instant - last > DAY && rise->instant - last < DAY + 2 * 3600);
      last = rise->instant;
    }
  assert_int_equal (without, 2);
  assert_int_equal (rises, 57);
}

static void
test_moon_is_a_quarter_degree_wide_from_its_middle (void **state)
{
  FfTestRandom random = { 17 };
  const FfSite site = { 57.2, -4, 12 };
  double smallest = 1, largest = 0;

  for (int i = 0; i < 2000; i++)
    {
      double semidiameter_deg
          = ff_moon_semidiameter_deg ((double) random_midnight (&random), &site);

      smallest = fmin (smallest, semidiameter_deg);
      largest = fmax (largest, semidiameter_deg);
    }
  /* From 14.7 arcminutes at the farthest below the horizon to 17 near and overhead. */
  assert_true (smallest > 14.4 / 60 && smallest < 14.9 / 60);
  assert_true (largest > 16.7 / 60 && largest < 17.1 / 60);
}

static void
test_event_names (void **state)
{
  g_autoptr (GError) error = NULL;
  int event = -1;

  assert_string_equal (ff_name_token (&ff_names_event, FF_EVENT_NAUTICAL_DAWN), "nautical_dawn");
  assert_string_equal (ff_name_token (&ff_names_event, FF_EVENT_MOONSET), "moonset");
  assert_true (ff_name_parse (&ff_names_event, "solar_noon", &event, &error));
  assert_int_equal (event, FF_EVENT_SOLAR_NOON);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_track_keeps_its_promise),
    cmocka_unit_test (test_track_of_no_length),
    cmocka_unit_test (test_directions_stay_in_range),
    cmocka_unit_test (test_refraction_lifts_what_is_near_the_horizon),
    cmocka_unit_test (test_events_are_so_and_in_order),
    cmocka_unit_test (test_no_crossing_is_missed_in_the_far_north_and_south),
    cmocka_unit_test (test_a_dip_between_two_samples_is_found),
    cmocka_unit_test (test_spans_join),
    cmocka_unit_test (test_span_is_as_short_as_one_likes),
    cmocka_unit_test (test_polar_day_and_night),
    cmocka_unit_test (test_southern_hemisphere),
    cmocka_unit_test (test_noon_is_on_the_meridian),
    cmocka_unit_test (test_date_line),
    cmocka_unit_test (test_a_month_of_moonrises),
    cmocka_unit_test (test_moon_is_a_quarter_degree_wide_from_its_middle),
    cmocka_unit_test (test_event_names),
  };

  return cmocka_run_group_tests_name ("sky", tests, NULL, NULL);
}
