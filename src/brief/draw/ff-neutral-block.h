/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The neutral block: how strong a filter is, as a mark. On screen the stronger is the darker; where
 * greys would not survive it is hatched with as many lines as the filter has stops. The stops are
 * always written in it. */
#pragma once

#include <cairo.h>
#include <glib.h>
#include <pango/pango.h>

#include "ff-palette.h"

/* What is written in it: "5", "2.7"; "0" without a filter. */
char *ff_neutral_block_text (double stops) G_GNUC_WARN_UNUSED_RESULT;

/* The lines that stand for so many stops in hatching. */
int ff_neutral_block_lines (double stops);

/* Level lines over a box, as many as given, evenly apart. */
void ff_neutral_block_hatch (cairo_t *cr,
                             const FfPalette *palette,
                             const cairo_rectangle_t *box,
                             int lines);

/* The block without its number, for one who places the number. `em` scales its lines. */
void ff_neutral_block_field (cairo_t *cr,
                             const FfPalette *palette,
                             const cairo_rectangle_t *box,
                             double stops,
                             double em);

/* The whole mark, its number as large as the box allows. `font`: NULL for the palette's. */
void ff_neutral_block_draw (cairo_t *cr,
                            const FfPalette *palette,
                            const cairo_rectangle_t *box,
                            double stops,
                            const PangoFontDescription *font);
