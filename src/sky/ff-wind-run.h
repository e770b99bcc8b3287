/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A run out and home in the wind. Bearings in degrees clockwise from true north, the wind's the one
 * it comes from; m/s, s, m. */
#pragma once

#include <glib.h>

/* The part of the wind that pushes along a track: positive from behind. */
double ff_wind_along_ms (double track_deg, double wind_from_deg, double wind_ms);

/* The wind triangle: the angle that the nose points off the track to hold it, and the speed over
 * ground that is left of the airspeed. Correction asin (W / V sin (from - track)), ground speed
 * V cos correction - W cos (from - track); the plane trigonometry of any navigation text. FALSE, and
 * nothing returned: the wind is too strong to make that track at all. */
gboolean ff_wind_triangle (double airspeed_ms,
                           double track_deg,
                           double wind_from_deg,
                           double wind_ms,
                           double *ret_correction_deg,
                           double *ret_ground_ms);

/* The point of no return of a run that goes out and comes home within `endurance_s` with every
 * reserve untouched: time E H / (O + H) and distance E O H / (O + H), O and H the speeds over ground
 * out and home (standard in flight planning). All three positive. Power is taken as constant, which
 * an aircraft that hovers is not: an estimate, and to be shown as such. */
void ff_wind_no_return (double endurance_s,
                        double out_ms,
                        double home_ms,
                        double *ret_time_s,
                        double *ret_distance_m);
