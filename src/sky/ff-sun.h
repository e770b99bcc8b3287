/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sun and moon over a place, after the IAU models in ERFA.
 * Instants are UTC seconds since 1970; UT1 is taken as UTC (at most 0.9 s, 0.23 arcminute).
 * The models are made for 1900 to 2100 and lose little for a century on either side. */
#pragma once

#include <glib.h>

#include "ff-horizon.h"

void ff_sun_direction (double instant, const FfSite *site, FfDirection *ret_direction);

/* Illuminated share of the disk, 0 to 1 (Meeus, Astronomical Algorithms, chapter 48). */
void ff_moon_direction (double instant,
                        const FfSite *site,
                        FfDirection *ret_direction,
                        double *ret_illuminated);

/* The moon's topocentric semidiameter in degrees, for rising and setting. */
double ff_moon_semidiameter_deg (double instant, const FfSite *site);

/* The sun's vector held over a span of at most two days, so that a position costs a microsecond
 * or less: quadratic through three nodes. Error against ff_sun_direction() below 0.001 degree over
 * the span. Plain value: no allocation, copy at will. */
typedef struct {
  FfHorizon horizon;
  double from, to;     /* instants of the first and last node */
  double node[3][3];   /* geocentric, true equator and equinox of the middle of the span, au */
  double sidereal_rad; /* Greenwich apparent sidereal time at the middle of the span */
} FfSunTrack;

void ff_sun_track_init (FfSunTrack *track, double from, double to, const FfSite *site);
void ff_sun_track_direction (const FfSunTrack *track, double instant, FfDirection *ret_direction);

/* The geometric altitude alone. */
double ff_sun_track_altitude_deg (const FfSunTrack *track, double instant);

/* The sun's local hour angle in degrees, -180 to 180; zero at solar noon. */
double ff_sun_track_hour_angle_deg (const FfSunTrack *track, double instant);
