/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Under the directions: where sun and moon are in the sky of the stars (GCRS) and how the Earth
 * is turned below them. Geocentric vectors in au; instants are UTC seconds since 1970. */
#pragma once

/* Earth's attitude at one instant. Held on to, it serves a day either side: precession and
 * nutation move by less than half an arcsecond while the turning is followed exactly. */
typedef struct {
  double at;            /* the instant */
  double to_true[3][3]; /* GCRS to true equator and equinox of that instant */
  double sidereal_rad;  /* Greenwich apparent sidereal time then */
} FfSpin;

void ff_spin_init (FfSpin *spin, double instant);

/* A vector of GCRS in the true equator and equinox of the spin's instant. */
void ff_spin_true (const FfSpin *spin, const double gcrs[3], double ret_true[3]);

/* A vector of GCRS, valid at `instant`, in the Earth-fixed frame of that time. */
void ff_spin_earth_fixed (const FfSpin *spin,
                          double instant,
                          const double gcrs[3],
                          double ret_earth_fixed[3]);

/* Turns a vector eastwards about the pole, from the equinox to Greenwich. */
void ff_spin_turn (double angle_rad, const double equinox[3], double ret_earth_fixed[3]);

/* How far the Earth turns against the stars in so many seconds, radians. */
double ff_spin_angle_rad (double seconds);

/* The apparent sun: with annual aberration. */
void ff_ephemeris_sun (double instant, double ret_gcrs[3]);

/* The moon. Without aberration: for a body that goes with the Earth its light time cancels it. */
void ff_ephemeris_moon (double instant, double ret_gcrs[3]);

/* The moon's semidiameter in degrees at a distance given by a vector (au). */
double ff_ephemeris_moon_semidiameter_deg (const double vector[3]);
