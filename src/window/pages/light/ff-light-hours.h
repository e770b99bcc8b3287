/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the need runs over a day, with the low sun and twilight behind it, and under it on the same
 * axis the hours of each filter: filled where it is the one to fit, framed where it would do. */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "ff-light-study.h"
#include "ff-palette.h"

/* The height it wants, in the units of the font. */
double ff_light_hours_height (const FfLightStudy *study, double em);

/* Draws into (0, 0) to (width, its height); `at` is marked. */
void ff_light_hours_draw (cairo_t *cr,
                          const FfPalette *palette,
                          const PangoFontDescription *font,
                          double width,
                          const FfLightStudy *study,
                          gint64 at);

/* The moment at a place of the drawing, to five minutes. */
gint64 ff_light_hours_at (const FfLightStudy *study, double em, double width, double x);
