/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Positions and events of sun and moon: the day chart asks for hundreds, the planner for more. */
#include <glib.h>
#include <stdio.h>

#include "ff-events.h"

#define DAY 86400.0

static const FfSite site = { 57.2, -4, 12 };
static const double midnight = 1821222000; /* 2027-09-18 in Britain */

/* Kept, so that the work can't be left out. */
static volatile double kept;

static void
full_positions (int n)
{
  for (int i = 0; i < n; i++)
    {
      FfDirection sun;

      ff_sun_direction (midnight + DAY * i / n, &site, &sun);
      kept = sun.altitude_deg;
    }
}

static void
moon_positions (int n)
{
  for (int i = 0; i < n; i++)
    {
      FfDirection moon;
      double illuminated;

      ff_moon_direction (midnight + DAY * i / n, &site, &moon, &illuminated);
      kept = moon.altitude_deg;
    }
}

static void
track_positions (int n)
{
  FfSunTrack track;

  ff_sun_track_init (&track, midnight, midnight + DAY, &site);
  for (int i = 0; i < n; i++)
    {
      FfDirection sun;

      ff_sun_track_direction (&track, midnight + DAY * i / n, &sun);
      kept = sun.altitude_deg;
    }
}

static void
days_of_events (int n)
{
  for (int i = 0; i < n; i++)
    {
      const gint64 from = (gint64) (midnight + DAY * i);
      g_autoptr (GArray) events = ff_sky_events (from, from + (gint64) DAY, &site, NULL);

      kept = events->len;
    }
}

/* Microseconds for one, the best of five. */
static void
measure (const char *what, void (*work) (int n), int n, double granted)
{
  double best = G_MAXDOUBLE;

  for (int i = 0; i < 5; i++)
    {
      const gint64 start = g_get_monotonic_time ();

      work (n);
      best = MIN (best, (double) (g_get_monotonic_time () - start) / n);
    }
  printf ("%-24s %9.2f us  (granted %g us)\n", what, best, granted);
}

int
main (void)
{
  measure ("sun, full position", full_positions, 2000, 50);
  measure ("sun, position of a track", track_positions, 100000, 10);
  measure ("moon, full position", moon_positions, 2000, 100);
  measure ("events of a day", days_of_events, 60, 5000);
  return 0;
}
