/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Texts of a drawing that never overlap and never leave it: each is measured when it asks for its
 * place, and is told when it can't have it. */
#pragma once

#include <cairo.h>
#include <glib.h>
#include <pango/pango.h>

#include "ff-palette.h"

typedef enum { FF_TEXT_BODY, FF_TEXT_SMALL, FF_TEXT_STRONG } FfTextStyle;

/* A label that asks for a place. */
typedef struct {
  const char *text;
  FfTextStyle style;
  FfColour colour;
  double size;      /* in em; 0: the style's own */
  double x, y;      /* y: the middle of the (first line's) figures */
  double align;     /* 0: begins at x, 0.5: centred on it, 1: ends there */
  double max_width; /* 0: as long as it is; else shortened with an ellipsis */
  int max_lines;    /* more than 1: wrapped at max_width first */
  double pad;       /* kept free at its left and right, for a shape around it */
  double plate;     /* wipes what was drawn under it, so far around it; in em; 0: nothing */
} FfLabel;

typedef struct _FfLabels FfLabels;

/* No label leaves the bounds. The font's size is the em; NULL is 11 units of the palette's font. */
FfLabels *ff_labels_new (const FfPalette *palette,
                         const PangoFontDescription *font,
                         double scale,
                         const cairo_rectangle_t *bounds) G_GNUC_WARN_UNUSED_RESULT;
void ff_labels_free (FfLabels *labels);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfLabels, ff_labels_free)

double ff_labels_em (const FfLabels *labels);

/* Width of a label's text in full. */
double ff_labels_width (FfLabels *labels, const FfLabel *label);

/* Lines a label takes when wrapped and shortened as it asks. */
int ff_labels_lines (FfLabels *labels, const FfLabel *label);

/* Gives the label its place if its ink, with the pad, meets no other and no obstacle. Nothing is
 * left behind on refusal. ret_box may be NULL: what it keeps free. */
gboolean ff_labels_place (FfLabels *labels, const FfLabel *label, cairo_rectangle_t *ret_box);

/* The same among labels already placed, without placing it. */
gboolean ff_labels_is_free (const FfLabels *labels, const cairo_rectangle_t *box);

/* Keeps labels off a box from now on. */
void ff_labels_keep_off (FfLabels *labels, const cairo_rectangle_t *box);

void ff_labels_draw (const FfLabels *labels, cairo_t *cr);

/* For tests: what was placed, and the rectangle of its ink. */
guint ff_labels_count (const FfLabels *labels);
const char *ff_labels_text (const FfLabels *labels, guint index);
void ff_labels_ink (const FfLabels *labels, guint index, cairo_rectangle_t *ret_ink);
