/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sun compass: a plan of the site in a graduated rim. On the rim the bearings and the times at
 * which the sun stands there; inside, north up, the take-off spot in the middle, the second spot and
 * the posts where they lie, what each post watches, hatched where a low sun stands in its eyes; the
 * sun's path, higher towards the middle; where the cameras look; the wind. */
#pragma once

#include <cairo.h>

#include "ff-compass-facts.h"
#include "ff-labels.h"
#include "ff-palette.h"

typedef struct {
  const FfPalette *palette;
  const PangoFontDescription *font; /* its size is the em; NULL: the palette's at 11 */
  double scale;
  double width, height;
} FfCompassFrame;

/* Draws into (0, 0) to (width, height). What there is no space to name is drawn without its name. */
void ff_sun_compass_draw (cairo_t *cr, const FfCompassFacts *facts, const FfCompassFrame *frame);

/* The same in words, a line each, for those who hear it: spots and posts, glare, sun, wind. */
GPtrArray *ff_sun_compass_words (const FfCompassFacts *facts) G_GNUC_WARN_UNUSED_RESULT;

/* For tests: the texts that found a place. */
FfLabels *ff_sun_compass_labels (const FfCompassFacts *facts,
                                 const FfCompassFrame *frame) G_GNUC_WARN_UNUSED_RESULT;
