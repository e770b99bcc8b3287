/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sun.h"

#include <math.h>

#include "ff-ephemeris.h"

void
ff_sun_direction (double instant, const FfSite *site, FfDirection *ret_direction)
{
  FfSpin spin;
  FfHorizon horizon;
  double sun[3], earth_fixed[3], local[3];

  ff_spin_init (&spin, instant);
  ff_horizon_init (&horizon, site);
  ff_ephemeris_sun (instant, sun);
  ff_spin_earth_fixed (&spin, instant, sun, earth_fixed);
  ff_horizon_local (&horizon, earth_fixed, local);
  ff_horizon_direction (local, ret_direction);
}

/* The moon as seen from a place: east, north, up (au). */
static void
moon_local (double instant, const FfSite *site, const double moon[3], double ret_local[3])
{
  FfSpin spin;
  FfHorizon horizon;
  double earth_fixed[3];

  ff_spin_init (&spin, instant);
  ff_horizon_init (&horizon, site);
  ff_spin_earth_fixed (&spin, instant, moon, earth_fixed);
  ff_horizon_local (&horizon, earth_fixed, ret_local);
}

/* k = (1 + cos i) / 2, where i is the angle at the moon between sun and Earth. */
static double
illuminated_share (const double sun[3], const double moon[3])
{
  double along = 0, to_sun_squared = 0, to_earth_squared = 0;

  for (int i = 0; i < 3; i++)
    {
      const double to_sun = sun[i] - moon[i], to_earth = -moon[i];

      along += to_sun * to_earth;
      to_sun_squared += to_sun * to_sun;
      to_earth_squared += to_earth * to_earth;
    }
  return (1 + along / sqrt (to_sun_squared * to_earth_squared)) / 2;
}

void
ff_moon_direction (double instant,
                   const FfSite *site,
                   FfDirection *ret_direction,
                   double *ret_illuminated)
{
  double sun[3], moon[3], local[3];

  ff_ephemeris_sun (instant, sun);
  ff_ephemeris_moon (instant, moon);
  moon_local (instant, site, moon, local);
  ff_horizon_direction (local, ret_direction);
  *ret_illuminated = illuminated_share (sun, moon);
}

double
ff_moon_semidiameter_deg (double instant, const FfSite *site)
{
  double moon[3], local[3];

  ff_ephemeris_moon (instant, moon);
  moon_local (instant, site, moon, local);
  return ff_ephemeris_moon_semidiameter_deg (local);
}
