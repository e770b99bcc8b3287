/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-depth.h"

#include <math.h>

#define AIRY       2.44
#define WAVELENGTH 0.55 /* micrometres */

double
ff_depth_hyperfocal_m (double focal_mm, double f_number, double coc_um)
{
  /* Millimetres squared over micrometres are metres. */
  return focal_mm * focal_mm / (f_number * coc_um) + focal_mm * 1e-3;
}

double
ff_depth_near_m (double distance_m, double focal_mm, double hyperfocal_m)
{
  const double f = focal_mm * 1e-3;

  return distance_m * (hyperfocal_m - f) / (hyperfocal_m + distance_m - 2.0 * f);
}

double
ff_depth_far_m (double distance_m, double focal_mm, double hyperfocal_m)
{
  if (distance_m >= hyperfocal_m)
    return INFINITY;
  return distance_m * (hyperfocal_m - focal_mm * 1e-3) / (hyperfocal_m - distance_m);
}

double
ff_depth_focus_m (double near_m, double far_m)
{
  return isinf (far_m) ? 2.0 * near_m : 2.0 * far_m * near_m / (far_m + near_m);
}

double
ff_depth_airy_um (double f_number)
{
  return AIRY * WAVELENGTH * f_number;
}

double
ff_depth_sharp_to (double pitch_um)
{
  return 2.0 * pitch_um / (AIRY * WAVELENGTH);
}
