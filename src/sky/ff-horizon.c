/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-horizon.h"

#include <erfa.h>
#include <erfam.h>
#include <math.h>

static const double lowest_refracted_deg = -1.0;

void
ff_horizon_init (FfHorizon *horizon, const FfSite *site)
{
  const double latitude = site->latitude_deg * ERFA_DD2R;
  const double longitude = site->longitude_deg * ERFA_DD2R;
  const double sin_lat = sin (latitude), cos_lat = cos (latitude);
  const double sin_lon = sin (longitude), cos_lon = cos (longitude);
  double metres[3];

  eraGd2gc (ERFA_WGS84, longitude, latitude, site->elevation_m, metres);
  *horizon = (FfHorizon) {
    .place = { metres[0] / ERFA_DAU, metres[1] / ERFA_DAU, metres[2] / ERFA_DAU },
    .axes = {
      { -sin_lon, cos_lon, 0 },
      { -sin_lat * cos_lon, -sin_lat * sin_lon, cos_lat },
      { cos_lat * cos_lon, cos_lat * sin_lon, sin_lat },
    },
  };
}

void
ff_horizon_local (const FfHorizon *horizon, const double earth_fixed[3], double ret_local[3])
{
  double from_place[3];

  for (int i = 0; i < 3; i++)
    from_place[i] = earth_fixed[i] - horizon->place[i];
  for (int i = 0; i < 3; i++)
    ret_local[i] = horizon->axes[i][0] * from_place[0] + horizon->axes[i][1] * from_place[1]
                   + horizon->axes[i][2] * from_place[2];
}

double
ff_horizon_altitude_deg (const double local[3])
{
  return atan2 (local[2], hypot (local[0], local[1])) * ERFA_DR2D;
}

void
ff_horizon_direction (const double local[3], FfDirection *ret_direction)
{
  const double altitude_deg = ff_horizon_altitude_deg (local);
  double azimuth_deg = atan2 (local[0], local[1]) * ERFA_DR2D;

  if (azimuth_deg < 0)
    azimuth_deg += 360;
  *ret_direction = (FfDirection) {
    .altitude_deg = altitude_deg,
    .apparent_altitude_deg = altitude_deg + ff_refraction_deg (altitude_deg),
    .azimuth_deg = azimuth_deg,
  };
}

double
ff_refraction_deg (double altitude_deg)
{
  double argument_deg, arcminutes;

  if (altitude_deg < lowest_refracted_deg)
    return 0;
  argument_deg = altitude_deg + 10.3 / (altitude_deg + 5.11);
  arcminutes = 1.02 / tan (argument_deg * ERFA_DD2R) + 0.0019279; /* so that the zenith has none */
  return arcminutes / 60;
}
