/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Colour temperature: mired arithmetic and what has been published about daylight. There is no
 * published table or formula of colour temperature by the sun's altitude, so there is none here. */
#pragma once

#include <glib.h>

/* Micro reciprocal degrees, 10^6 / T; the same turns mired back into kelvin. */
double ff_balance_mired (double kelvin);

/* What a filter must shift to turn one light into another: 10^6 / to - 10^6 / from. Positive makes
 * it warmer (amber), negative cooler (blue). American Cinematographer Manual, "The MIRED System".
 */
double ff_balance_shift_mired (double from_kelvin, double to_kelvin);

/* Kelvin after such a shift; infinite when it goes past the bluest light there is. */
double ff_balance_shifted_kelvin (double kelvin, double shift_mired);

/* Chromaticity of a phase of daylight, CIE 1931 x and y, 4000 to 25000 K: CIE 15, D series (as in
 * Wyszecki and Stiles, "Color Science"). FALSE and nothing written outside that range. */
gboolean ff_balance_daylight_xy (double kelvin, double *ret_x, double *ret_y);

/* A phase of daylight and the range that some source gives it. */
typedef struct {
  const char *text;               /* marked for translation */
  double low_kelvin, high_kelvin; /* equal for one value; high infinite where left open */
  const char *source;
} FfDaylightRange;

guint ff_daylight_range_count (void);
const FfDaylightRange *ff_daylight_range (guint index);
