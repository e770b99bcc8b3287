/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-histogram.h"

#include <math.h>

#include "ff-tone.h"

#define LIGHT_BITS 24
#define LIGHT_FULL (1u << LIGHT_BITS)
#define BIN_SHIFT  12 /* 2^24 over 4096 bins */

/* 0.2126, 0.7152 and 0.0722 in units of 2^-16; they add up to one. */
#define WEIGHT_RED   13933u
#define WEIGHT_GREEN 46871u
#define WEIGHT_BLUE  4732u

void
ff_light_table_fill (FfLightTable *table, guint bits)
{
  const guint top = bits == 16 ? 65535 : 255;
  const guint code = top / 255;

  for (guint i = 0; i <= top; i++)
    table->light[i] = (guint32) lround (ff_tone_srgb_light ((double) i / top) * LIGHT_FULL);
  table->low = code;
  table->high = top - code;
}

/* The two samples of one picture differ only in width; both end here. */
static inline void
add_pixel (FfHistogram *histogram, const FfLightTable *table, guint32 r, guint32 g, guint32 b)
{
  const guint64 light
      = ((guint64) WEIGHT_RED * table->light[r] + (guint64) WEIGHT_GREEN * table->light[g]
         + (guint64) WEIGHT_BLUE * table->light[b])
        >> 16;

  histogram->bins[MIN (light >> BIN_SHIFT, FF_HISTOGRAM_BINS - 1)]++;
  histogram->light += light;
  histogram->clipped_low += MAX (MAX (r, g), b) <= table->low;
  histogram->clipped_high += MAX (MAX (r, g), b) >= table->high;
}

void
ff_histogram_add_8 (FfHistogram *histogram,
                    const FfLightTable *table,
                    const guint8 *samples,
                    gsize pixels,
                    guint samples_per_pixel)
{
  const guint green = samples_per_pixel < 3 ? 0 : 1, blue = 2 * green;

  for (gsize i = 0; i < pixels; i++, samples += samples_per_pixel)
    add_pixel (histogram, table, samples[0], samples[green], samples[blue]);
  histogram->pixels += pixels;
}

void
ff_histogram_add_16 (FfHistogram *histogram,
                     const FfLightTable *table,
                     const guint16 *samples,
                     gsize pixels,
                     guint samples_per_pixel)
{
  const guint green = samples_per_pixel < 3 ? 0 : 1, blue = 2 * green;

  for (gsize i = 0; i < pixels; i++, samples += samples_per_pixel)
    add_pixel (histogram, table, samples[0], samples[green], samples[blue]);
  histogram->pixels += pixels;
}

/* The light that half of the pixels stay below, read within its bin as if they were spread
 * evenly. */
static double
median_light (const FfHistogram *histogram)
{
  const double half = (double) histogram->pixels / 2.0;
  double below = 0.0;

  for (guint i = 0; i < FF_HISTOGRAM_BINS; i++)
    {
      const double here = (double) histogram->bins[i];

      if (here > 0.0 && below + here >= half)
        return (i + (half - below) / here) / FF_HISTOGRAM_BINS;
      below += here;
    }
  return NAN;
}

void
ff_histogram_measure (const FfHistogram *histogram, FfTones *ret_tones)
{
  const double pixels = (double) histogram->pixels;
  const double mean = (double) histogram->light / pixels / LIGHT_FULL;

  *ret_tones = (FfTones){
    .clipped_low = (double) histogram->clipped_low / pixels,
    .clipped_high = (double) histogram->clipped_high / pixels,
    .mean = mean,
    .median = median_light (histogram),
    .middle_stops = ff_tone_stops_of_grey (mean),
  };
}
