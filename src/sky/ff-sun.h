/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sun and moon over a place, after the IAU models in ERFA.
 * Instants are UTC seconds since 1970; UT1 is taken as UTC (at most 0.9 s, 0.23 arcminute). */
#pragma once

#include <glib.h>

typedef struct {
  double latitude_deg;  /* geodetic, WGS84, north positive */
  double longitude_deg; /* east positive */
  double elevation_m;
} FfSite;

/* Where a body stands. Topocentric; altitude is geometric (airless), apparent altitude adds
 * refraction in standard air (Saemundsson, from -1 degree up; below that none is added).
 * Azimuth runs from true north through east, 0 to 360. */
typedef struct {
  double altitude_deg;
  double apparent_altitude_deg;
  double azimuth_deg;
} FfDirection;

void ff_sun_direction (double instant, const FfSite *site, FfDirection *ret_direction);

/* Illuminated share of the disk, 0 to 1 (Meeus, Astronomical Algorithms, chapter 48). */
void ff_moon_direction (double instant,
                        const FfSite *site,
                        FfDirection *ret_direction,
                        double *ret_illuminated);

/* The moon's topocentric semidiameter in degrees, for rising and setting. */
double ff_moon_semidiameter_deg (double instant, const FfSite *site);

/* Refraction to add to a geometric altitude, degrees; 1010 hPa, 10 degrees Celsius. */
double ff_refraction_deg (double altitude_deg);

/* The sun's vector held over a span of at most two days, so that a position costs a few
 * microseconds: quadratic through three nodes. Error against ff_sun_direction() below 0.001
 * degree over the span. Plain value: no allocation, copy at will. */
typedef struct {
  FfSite site;
  double from, to;       /* instants of the first and last node */
  double node[3][3];     /* true equator and equinox of date, au */
  double sidereal_rad;   /* Greenwich apparent sidereal time at `from` */
  double observer[3];    /* Earth-fixed place of the observer, au */
} FfSunTrack;

void ff_sun_track_init (FfSunTrack *track, double from, double to, const FfSite *site);
void ff_sun_track_direction (const FfSunTrack *track, double instant, FfDirection *ret_direction);

/* The sun's local hour angle in degrees, -180 to 180; zero at solar noon. */
double ff_sun_track_hour_angle_deg (const FfSunTrack *track, double instant);
