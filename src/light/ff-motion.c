/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-motion.h"

#include <math.h>

#define RADIANS(degrees) ((degrees) * (G_PI / 180.0))
#define DEGREES(radians) ((radians) * (180.0 / G_PI))

double
ff_motion_gsd_m (double height_m, double focal_mm, double pitch_um)
{
  return height_m * pitch_um / (focal_mm * 1000.0);
}

double
ff_motion_travel_rate (double speed_ms, double gsd_m)
{
  return speed_ms / gsd_m;
}

double
ff_motion_yaw_rate (double yaw_deg_s, double focal_mm, double pitch_um)
{
  return RADIANS (yaw_deg_s) * focal_mm * 1000.0 / pitch_um;
}

double
ff_motion_blur_px (double rate, double seconds)
{
  return rate * seconds;
}

double
ff_motion_longest_s (double max_blur_px, double rate)
{
  return rate > 0.0 ? max_blur_px / rate : INFINITY;
}

double
ff_motion_field_deg (double extent_mm, double focal_mm)
{
  return DEGREES (2.0 * atan (extent_mm / (2.0 * focal_mm)));
}

double
ff_motion_footprint_m (double height_m, double focal_mm, double extent_mm)
{
  return height_m * extent_mm / focal_mm;
}

double
ff_motion_base_m (double footprint_m, double overlap)
{
  return footprint_m * (1.0 - overlap);
}

double
ff_motion_interval_s (double base_m, double speed_ms)
{
  return speed_ms > 0.0 ? base_m / speed_ms : INFINITY;
}
