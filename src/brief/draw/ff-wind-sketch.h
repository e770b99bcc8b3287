/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Wind and sun at a glance: north up, an arrow that flies with the wind, the sun where it stands at
 * the first (open) and at the last (full) of the flying hours. */
#pragma once

#include <cairo.h>

#include "ff-compass-facts.h"
#include "ff-palette.h"

/* Draws into (0, 0) to (width, height), in the palette's font at 11. */
void ff_wind_sketch_draw (cairo_t *cr,
                          const FfCompassFacts *facts,
                          const FfPalette *palette,
                          double width,
                          double height);
