/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sun.h"

#include <math.h>

#include "ff-ephemeris.h"

static const double degrees_per_radian = 57.29577951308232;

static double
middle (const FfSunTrack *track)
{
  return track->from + (track->to - track->from) / 2;
}

void
ff_sun_track_init (FfSunTrack *track, double from, double to, const FfSite *site)
{
  FfSpin spin;

  /* Nodes that coincide could not carry a curve. */
  *track = (FfSunTrack) { .from = from, .to = fmax (to, from + 1) };
  ff_horizon_init (&track->horizon, site);
  ff_spin_init (&spin, middle (track));
  track->sidereal_rad = spin.sidereal_rad;
  for (int i = 0; i < 3; i++)
    {
      double sun[3];

      ff_ephemeris_sun (track->from + (track->to - track->from) * i / 2, sun);
      ff_spin_true (&spin, sun, track->node[i]);
    }
}

/* The parabola through the three nodes, turned with the Earth. */
static void
sun_earth_fixed (const FfSunTrack *track, double instant, double ret_earth_fixed[3])
{
  const double since_middle = instant - middle (track);
  const double x = since_middle / (track->to - track->from) * 2; /* -1 to 1 over the span */
  const double weight[3] = { x * (x - 1) / 2, 1 - x * x, x * (x + 1) / 2 };
  double sun[3];

  for (int i = 0; i < 3; i++)
    sun[i] = weight[0] * track->node[0][i] + weight[1] * track->node[1][i]
             + weight[2] * track->node[2][i];
  ff_spin_turn (track->sidereal_rad + ff_spin_angle_rad (since_middle), sun, ret_earth_fixed);
}

void
ff_sun_track_direction (const FfSunTrack *track, double instant, FfDirection *ret_direction)
{
  double earth_fixed[3], local[3];

  sun_earth_fixed (track, instant, earth_fixed);
  ff_horizon_local (&track->horizon, earth_fixed, local);
  ff_horizon_direction (local, ret_direction);
}

double
ff_sun_track_altitude_deg (const FfSunTrack *track, double instant)
{
  double earth_fixed[3], local[3];

  sun_earth_fixed (track, instant, earth_fixed);
  ff_horizon_local (&track->horizon, earth_fixed, local);
  return ff_horizon_altitude_deg (local);
}

/* From the meridian of the place to that of the sun, westwards: by the axis to the east, which is
 * there at the poles too. */
double
ff_sun_track_hour_angle_deg (const FfSunTrack *track, double instant)
{
  const double *east = track->horizon.axes[0];
  double sun[3];

  sun_earth_fixed (track, instant, sun);
  return atan2 (-(sun[0] * east[0] + sun[1] * east[1]), sun[0] * east[1] - sun[1] * east[0])
         * degrees_per_radian;
}
