/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A place on the Earth and the directions seen from it. */
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

/* The horizon plane of a place: where it lies and how it is turned, in the Earth-fixed frame. */
typedef struct {
  double place[3];   /* au */
  double axes[3][3]; /* unit vectors to the east, to the north and up */
} FfHorizon;

void ff_horizon_init (FfHorizon *horizon, const FfSite *site);

/* A body's geocentric Earth-fixed vector (au) as seen from the place: east, north, up (au). */
void ff_horizon_local (const FfHorizon *horizon, const double earth_fixed[3], double ret_local[3]);

/* Altitude in degrees of a vector east, north, up. */
double ff_horizon_altitude_deg (const double local[3]);

/* The whole direction of a vector east, north, up. */
void ff_horizon_direction (const double local[3], FfDirection *ret_direction);

/* Refraction to add to a geometric altitude, degrees; 1010 hPa, 10 degrees Celsius (Saemundsson's
 * formula: Meeus, Astronomical Algorithms, 2nd edition, 16.4). None below -1 degree. */
double ff_refraction_deg (double altitude_deg);
