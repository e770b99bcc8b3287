/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Exposure arithmetic: APEX with the speed constant of Exif 2.3, EV at ISO 100, meter constants
 * K = 12.5 (reflected) and C = 250 (incident, flat receptor). Source: ISO 2720 ranges, Exif 2.3
 * annex C, CIPA DC-008. Apertures are f-numbers, times seconds, levels stops. */
#pragma once

#include <glib.h>

#define FF_METER_K 12.5  /* cd/m2 */
#define FF_METER_C 250.0 /* lx */

double ff_exposure_av (double f_number);   /* log2 N2 */
double ff_exposure_tv (double seconds);    /* log2 1/t */
double ff_exposure_sv (double iso);        /* log2 S/3.125: 5 at ISO 100 */
double ff_exposure_ev (double f_number, double seconds);

/* The EV at ISO 100 that these settings expose right, without a filter. */
double ff_exposure_ev100 (double f_number, double seconds, double iso);

double ff_exposure_luminance (double ev100);        /* cd/m2 */
double ff_exposure_illuminance (double ev100);      /* lx */
double ff_exposure_ev100_of_lux (double lux);       /* lux above 0 */

/* Time, aperture or sensitivity that exposes `ev100` right, the others given. */
double ff_exposure_seconds_for (double ev100, double f_number, double iso);
double ff_exposure_aperture_for (double ev100, double seconds, double iso);
double ff_exposure_iso_for (double ev100, double f_number, double seconds);

/* Shutter angle in degrees and back: t = angle / (360 fps). */
double ff_shutter_angle_deg (double seconds, double fps);
double ff_shutter_seconds (double angle_deg, double fps);
