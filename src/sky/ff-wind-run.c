/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-wind-run.h"

#include <math.h>

#define DEG (G_PI / 180)

double
ff_wind_along_ms (double track_deg, double wind_from_deg, double wind_ms)
{
  return -wind_ms * cos ((wind_from_deg - track_deg) * DEG);
}

gboolean
ff_wind_triangle (double airspeed_ms,
                  double track_deg,
                  double wind_from_deg,
                  double wind_ms,
                  double *ret_correction_deg,
                  double *ret_ground_ms)
{
  double across = wind_ms * sin ((wind_from_deg - track_deg) * DEG);
  double ground;

  if (!(airspeed_ms > 0) || fabs (across) > airspeed_ms)
    return FALSE;
  ground = sqrt (airspeed_ms * airspeed_ms - across * across)
           + ff_wind_along_ms (track_deg, wind_from_deg, wind_ms);
  if (!(ground > 0))
    return FALSE;
  *ret_correction_deg = asin (across / airspeed_ms) / DEG;
  *ret_ground_ms = ground;
  return TRUE;
}

void
ff_wind_no_return (double endurance_s,
                   double out_ms,
                   double home_ms,
                   double *ret_time_s,
                   double *ret_distance_m)
{
  *ret_time_s = endurance_s * home_ms / (out_ms + home_ms);
  *ret_distance_m = *ret_time_s * out_ms;
}
