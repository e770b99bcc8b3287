/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-ephemeris.h"

#include <erfa.h>
#include <erfam.h>
#include <math.h>

static const double unix_epoch_jd = 2440587.5;

/* Earth's rotation against the stars, turns per day of UT1 (Capitaine et al. 2000). */
static const double turns_per_day = 1.00273781191135448;

/* The moon's radius: 0.272481 of the Earth's equatorial one (Meeus, Astronomical Algorithms, 2nd
 * edition, chapter 55). */
static const double moon_radius_au = 0.272481 * 6378137.0 / ERFA_DAU;

/* TAI - UTC of a day. Outside the table of leap seconds ERFA answers with its nearest value and a
 * warning ("dubious year"), which is what we want; only a negative status means no answer. */
static double
leap_seconds (double days)
{
  int year, month, day;
  double fraction, seconds = 0;

  if (eraJd2cal (unix_epoch_jd, days, &year, &month, &day, &fraction) < 0
      || eraDat (year, month, day, fraction, &seconds) < 0)
    return 0;
  return seconds;
}

/* Days of Terrestrial Time to add to unix_epoch_jd. */
static double
terrestrial_days (double instant)
{
  const double days = instant / ERFA_DAYSEC;

  return days + (leap_seconds (days) + ERFA_TTMTAI) / ERFA_DAYSEC;
}

void
ff_spin_init (FfSpin *spin, double instant)
{
  spin->at = instant;
  eraPnm00b (unix_epoch_jd, terrestrial_days (instant), spin->to_true);
  spin->sidereal_rad = eraGst00b (unix_epoch_jd, instant / ERFA_DAYSEC);
}

void
ff_spin_true (const FfSpin *spin, const double gcrs[3], double ret_true[3])
{
  for (int i = 0; i < 3; i++)
    ret_true[i] = spin->to_true[i][0] * gcrs[0] + spin->to_true[i][1] * gcrs[1]
                  + spin->to_true[i][2] * gcrs[2];
}

void
ff_spin_earth_fixed (const FfSpin *spin,
                     double instant,
                     const double gcrs[3],
                     double ret_earth_fixed[3])
{
  double equinox[3];

  ff_spin_true (spin, gcrs, equinox);
  ff_spin_turn (spin->sidereal_rad + ff_spin_angle_rad (instant - spin->at), equinox,
                ret_earth_fixed);
}

void
ff_spin_turn (double angle_rad, const double equinox[3], double ret_earth_fixed[3])
{
  const double s = sin (angle_rad), c = cos (angle_rad);

  ret_earth_fixed[0] = c * equinox[0] + s * equinox[1];
  ret_earth_fixed[1] = c * equinox[1] - s * equinox[0];
  ret_earth_fixed[2] = equinox[2];
}

double
ff_spin_angle_rad (double seconds)
{
  return seconds / ERFA_DAYSEC * turns_per_day * ERFA_D2PI;
}

void
ff_ephemeris_sun (double instant, double ret_gcrs[3])
{
  double heliocentric[2][3], barycentric[2][3]; /* of the Earth: au, au per day */
  double true_sun[3], toward[3], apparent[3], velocity[3];
  double distance;

  /* The status only warns of dates outside 1900 to 2100. */
  (void) eraEpv00 (unix_epoch_jd, terrestrial_days (instant), heliocentric, barycentric);
  eraSxp (-1, heliocentric[0], true_sun);
  eraPn (true_sun, &distance, toward);
  eraSxp (ERFA_AULT / ERFA_DAYSEC, barycentric[1], velocity); /* in units of light's */
  eraAb (toward, velocity, distance, sqrt (1 - eraPdp (velocity, velocity)), apparent);
  eraSxp (distance, apparent, ret_gcrs);
}

void
ff_ephemeris_moon (double instant, double ret_gcrs[3])
{
  double moon[2][3];

  eraMoon98 (unix_epoch_jd, terrestrial_days (instant), moon);
  eraCp (moon[0], ret_gcrs);
}

double
ff_ephemeris_moon_semidiameter_deg (const double vector[3])
{
  const double distance
      = sqrt (vector[0] * vector[0] + vector[1] * vector[1] + vector[2] * vector[2]);

  return asin (moon_radius_au / distance) * ERFA_DR2D;
}
