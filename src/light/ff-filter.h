/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Neutral-density filters: one strength under three names. Stops n, factor 2^n, density
 * n log10 2, transmittance 2^-n (ISO 5-1 notation). */
#pragma once

#include <glib.h>

typedef enum {
  FF_FILTER_BY_FACTOR,
  FF_FILTER_BY_DENSITY,
  FF_FILTER_BY_STOPS,
  FF_FILTER_VARIABLE,
} FfFilterNaming;

typedef struct {
  FfFilterNaming naming;
  double stops;    /* of a variable filter: its weakest setting */
  double stops_to; /* its strongest setting; equal to stops for a fixed one */
} FfFilterStrength;

/* Reads a filter's label: "ND8" a factor, a number below 10 with a decimal point or "ND0.9" a
 * density, "3 stops", "2-5 stops variable". Anything else is refused. Error: FF_ERROR_INPUT. */
gboolean ff_filter_parse (const char *label, FfFilterStrength *ret_strength, GError **error);

/* What was read, said back: "factor 8, 3 stops". */
char *ff_filter_describe (const FfFilterStrength *strength) G_GNUC_WARN_UNUSED_RESULT;

double ff_filter_factor (double stops);
double ff_filter_density (double stops);
double ff_filter_transmittance (double stops);
