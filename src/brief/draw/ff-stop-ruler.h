/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The stop ruler: above, the light as long as it is in stops; below, end to end, what eats it. Where
 * one row ends before the other is the gap. What gives light (a high ISO, a long time) lengthens the
 * upper row. */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "ff-palette.h"
#include "ff-ruler.h"

typedef struct {
  double ev100, low_ev100, high_ev100;
  double eats[FF_N_PIECES];
  const char *values[FF_N_PIECES]; /* "f/2.8", "1/50" */
  gboolean fixed[FF_N_PIECES];
  FfRulerPiece chosen;
  const char *light; /* "EV 13.9" */
  const char *gap;   /* "+0.3"; empty: nothing to say */
} FfStopRulerFacts;

/* The height it wants, in the units of the font. */
double ff_stop_ruler_height (double em);

/* Draws into (0, 0) to (width, height). */
void ff_stop_ruler_draw (cairo_t *cr,
                         const FfPalette *palette,
                         const PangoFontDescription *font,
                         double width,
                         const FfStopRulerFacts *facts);
