/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tones of a picture counted as light: the sRGB curve undone, the three colours weighed to
 * luminance (IEC 61966-2-1:1999, primaries of ITU-R BT.709). Positions don't matter: rows may come
 * in any order. Pure; the caller owns tables and counts. */
#pragma once

#include <glib.h>

#define FF_HISTOGRAM_BINS 4096

/* The light of each code of a picture of 8 or 16 bits. A quarter of a megabyte: not for the
 * stack. */
typedef struct {
  guint32 light[65536]; /* 0 to 2^24 */
  guint32 low, high;    /* codes up to and from which a tone counts as lost */
} FfLightTable;

/* One 8-bit code at each end counts as lost with the end itself: compression moves codes by that
 * much. */
void ff_light_table_fill (FfLightTable *table, guint bits);

typedef struct {
  guint64 bins[FF_HISTOGRAM_BINS]; /* pixels by luminance, evenly from none to the clip */
  guint64 pixels;
  guint64 clipped_low;  /* all colours at the lower end */
  guint64 clipped_high; /* any colour at the upper end */
  guint64 light;        /* sum of luminance, 2^24 a pixel at the clip */
} FfHistogram;

/* Adds a row of pixels of so many samples each: the first three are red, green and blue, or with
 * fewer the first is grey; others (opacity) are passed over. */
void ff_histogram_add_8 (FfHistogram *histogram,
                         const FfLightTable *table,
                         const guint8 *samples,
                         gsize pixels,
                         guint samples_per_pixel);
void ff_histogram_add_16 (FfHistogram *histogram,
                          const FfLightTable *table,
                          const guint16 *samples,
                          gsize pixels,
                          guint samples_per_pixel);

/* What the counts say. Light is 0 to 1 at the clip. */
typedef struct {
  double clipped_low, clipped_high; /* shares of the pixels */
  double mean, median;              /* light */
  double middle_stops;              /* the mean against 18 per cent; -infinity when all is black */
} FfTones;

/* Of at least one pixel. */
void ff_histogram_measure (const FfHistogram *histogram, FfTones *ret_tones);
