/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-exposure.h"

#include <math.h>

/* The speed constant of Exif 2.3 (CIPA DC-008-2010): the one that makes Sv 5 exactly at ISO 100. */
#define SPEED_AT_SV_0 3.125

double
ff_exposure_av (double f_number)
{
  return 2.0 * log2 (f_number);
}

double
ff_exposure_tv (double seconds)
{
  return -log2 (seconds);
}

double
ff_exposure_sv (double iso)
{
  return log2 (iso / SPEED_AT_SV_0);
}

double
ff_exposure_ev (double f_number, double seconds)
{
  return log2 (f_number * f_number / seconds);
}

double
ff_exposure_ev100 (double f_number, double seconds, double iso)
{
  return log2 (f_number * f_number / seconds * 100.0 / iso);
}

/* Both from 2^EV = L S / K = E S / C at S = 100. */
double
ff_exposure_luminance (double ev100)
{
  return exp2 (ev100) * FF_METER_K / 100.0;
}

double
ff_exposure_illuminance (double ev100)
{
  return exp2 (ev100) * FF_METER_C / 100.0;
}

double
ff_exposure_ev100_of_lux (double lux)
{
  return log2 (lux * 100.0 / FF_METER_C);
}

/* The three below turn N^2 / t = 2^EV100 S / 100 round. */
double
ff_exposure_seconds_for (double ev100, double f_number, double iso)
{
  return f_number * f_number * 100.0 / (iso * exp2 (ev100));
}

double
ff_exposure_aperture_for (double ev100, double seconds, double iso)
{
  return sqrt (exp2 (ev100) * seconds * iso / 100.0);
}

double
ff_exposure_iso_for (double ev100, double f_number, double seconds)
{
  return f_number * f_number * 100.0 / (seconds * exp2 (ev100));
}

double
ff_shutter_angle_deg (double seconds, double fps)
{
  return 360.0 * fps * seconds;
}

double
ff_shutter_seconds (double angle_deg, double fps)
{
  return angle_deg / (360.0 * fps);
}
