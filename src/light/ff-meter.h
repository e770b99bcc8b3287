/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The camera as an exposure meter: what a test picture, with the settings it was taken at, says of
 * the light and of the exposure. */
#pragma once

#include <glib.h>

#include "ff-histogram.h"

/* NAN where the picture does not say. */
typedef struct {
  double f_number; /* exact: 2.8284 where f/2.8 is engraved */
  double seconds;
  double iso;
  double bias_stops; /* exposure that was asked for beyond the meter's; 0 where not known */
  double nd_stops;   /* filter in front; 0: none */
} FfMeterSettings;

typedef struct {
  double ev100;        /* the light of the scene; NAN where the settings are not known */
  double error_stops;  /* positive: brighter than 18 per cent grey and the bias asked for */
  double spread_stops; /* how far off both may be, to either side */
} FfMeterReading;

/* The scene's EV at ISO 100 is that of the settings, plus the filter, plus how far the mean lies
 * from 18 per cent, which is where ISO 12232 puts metered grey in an sRGB picture. The spread is a
 * reckoning of our own, no source, in quadrature: a third of a stop for the curve that a picture
 * profile adds; a quarter of the gap between mean and median, which is nil in the average scene
 * that meters assume; and what lost highlights would add were they a stop brighter than recorded.
 */
void ff_meter_picture (const FfTones *tones,
                       const FfMeterSettings *settings,
                       FfMeterReading *ret_reading);

/* The reading as a sentence: "Two thirds of a stop under, 4 % lost in the shadows: open up 0.7
 * stop." Translated. */
char *ff_meter_advice (const FfTones *tones,
                       const FfMeterReading *reading) G_GNUC_WARN_UNUSED_RESULT;
