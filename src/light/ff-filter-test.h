/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A filter measured with the camera itself: two pictures of one scene, without and with it. What the
 * scene seems to be darker through the filter is what the filter takes. */
#pragma once

#include <glib.h>

#include "ff-histogram.h"
#include "ff-meter.h"

typedef struct {
  FfTones tones;
  double f_number, seconds, iso; /* exact; the filter is not counted */
} FfFilterPicture;

typedef struct {
  double stops;
  double spread_stops; /* how far off that may be, to either side */
} FfFilterTest;

/* The stops are the difference of the two scenes' EV, each as ff_meter_picture() has it. The spread
 * is a reckoning of our own, no source, in quadrature: a tenth of a stop for what shutters and
 * apertures are really; a third of a stop for each stop that the means lie apart, up to one,
 * because the picture profile is then met at another place; and a quarter of what the shapes of the
 * tones differ by.
 *
 * Refused (FF_ERROR_INPUT, with what to do): settings not known, a picture that is clipped, tones
 * that are not those of one scene, a result below nothing or beyond any filter. */
gboolean ff_filter_test (const FfFilterPicture *without,
                         const FfFilterPicture *with,
                         FfFilterTest *ret_test,
                         GError **error);
