/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Units that a person may type beside a value. The unit typed is kept and shown again; reckoning is
 * in SI, so that 400 ft is 121.92 m and neither 122 nor 120. Factors: The International System of
 * Units (BIPM brochure, 9th edition) and its exact foot, mile, nautical mile, pound and inch. */
#pragma once

#include <glib.h>

typedef enum {
  FF_DIMENSION_NONE,        /* yes or no */
  FF_DIMENSION_LENGTH,      /* m */
  FF_DIMENSION_SPEED,       /* m/s */
  FF_DIMENSION_TEMPERATURE, /* °C, a point on the scale */
  FF_DIMENSION_MASS,        /* kg */
  FF_DIMENSION_ENERGY,      /* J */
  FF_DIMENSION_DURATION,    /* s */
  FF_DIMENSION_CLOCK,       /* minutes after midnight */
  FF_DIMENSION_SHARE,       /* 0 to 1 */
  FF_DIMENSION_RATE,        /* mm/h of rain */
  FF_DIMENSION_CONCENTRATION, /* g/dL */
  FF_DIMENSION_LEVEL,       /* dB */
  FF_DIMENSION_COUNT,       /* a plain number */
} FfDimension;

typedef struct {
  const char *label; /* "ft", as it is typed and shown */
  FfDimension dimension;
  double factor, offset; /* SI = value × factor + offset */
} FfUnit;

/* A unit of a dimension by its label; NULL if there is none. The empty label is the plain number,
 * and no unit at all for yes and no. */
const FfUnit *ff_unit_find (FfDimension dimension, const char *label);

/* The i-th unit of a dimension, its SI unit first; NULL past the last. */
const FfUnit *ff_unit_at (FfDimension dimension, guint i);

double ff_unit_to_si (const FfUnit *unit, double value);
double ff_unit_from_si (const FfUnit *unit, double si);

/* "m, ft, km": what is accepted, for messages. */
char *ff_unit_accepted (FfDimension dimension) G_GNUC_WARN_UNUSED_RESULT;
