/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The third-stop series of aperture, shutter time and sensitivity: what is engraved or shown
 * (label), what the label reads as a number (written), and what it stands for (exact). */
#pragma once

#include <glib.h>

typedef enum { FF_SCALE_APERTURE, FF_SCALE_SHUTTER, FF_SCALE_ISO } FfScale;

/* Steps run from 0: apertures f/1 to f/32 (f/1 first), shutter times 1/32000 to 30 s (fastest
 * first), ISO 25 to 102400. A step up is a third of a stop. */
guint ff_scale_size (FfScale scale);
const char *ff_scale_label (FfScale scale, guint step); /* "2.8", "1/50", "0.5", "8", "100" */
double ff_scale_written (FfScale scale, guint step);    /* 2.8, 0.02, 100 */
double ff_scale_exact (FfScale scale, guint step);      /* 2^(k/6), 2^(k/3) s, 100 2^(k/3) */

/* The step whose label this is ("f/2.8" and "8 s" are read too), or -1. */
int ff_scale_find (FfScale scale, const char *label);

/* The step whose exact value lies nearest in stops. */
guint ff_scale_nearest (FfScale scale, double value);

/* Aperture as typed: a label of the series stands for its exact value, any other number from 0.5
 * to 64 for itself. Error: FF_ERROR_INPUT. */
gboolean ff_aperture_parse (const char *what,
                            const char *text,
                            double *ret_written,
                            double *ret_exact,
                            GError **error);

/* Shutter time as typed, seconds: "1/50", "0.5", "8"; 1/100000 to 3600 s. With `thirds` a label of
 * the series is exact: 1/60 is 1/64 s. Error: FF_ERROR_INPUT. */
gboolean ff_shutter_parse (const char *what,
                           const char *text,
                           gboolean thirds,
                           double *ret_seconds,
                           GError **error);

/* A shutter time for people: the label where it is within 2 % of one, else "1/442" or "2.3". */
char *ff_shutter_format (double seconds) G_GNUC_WARN_UNUSED_RESULT;
