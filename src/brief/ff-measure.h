/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blocks measured with Pango, once; what is kept can be drawn on any Cairo context. Origin is the
 * top left corner of the block, y runs down, lengths are points. */
#pragma once

#include <pango/pangocairo.h>

#include "ff-sheet.h"

/* A context in which a point is a unit and nothing is rounded to pixels. Error: FF_ERROR_OUTPUT
 * when neither of the fonts is installed. */
PangoContext *ff_measure_context_new (GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct {
  PangoLayoutLine *line; /* owned */
  double x, right, top, baseline, bottom;
  gboolean boxed;
} FfMeasuredLine;

typedef struct {
  double x, y, side, stops;
} FfMeasuredMark;

typedef struct {
  double x0, x1, y;
} FfMeasuredRule;

typedef struct {
  double width, height; /* of a form: of the heads of its columns */
  GArray *lines;        /* FfMeasuredLine */
  GPtrArray *layouts;   /* PangoLayout: a line without its layout has lost its text */
  GArray *marks;        /* FfMeasuredMark: neutral blocks */
  GArray *rules;        /* FfMeasuredRule: lines to write on */
  GArray *columns;      /* double: left side of each cell, then the right side of the last */
  int n_unknown;        /* letters that no installed font has: they stand as boxes */
  gboolean cut;         /* a text was longer than its max_lines */
} FfMeasured;

FfMeasured *ff_measure_block (const FfSheetBlock *block,
                              PangoContext *context,
                              double width) G_GNUC_WARN_UNUSED_RESULT;
void ff_measured_free (FfMeasured *measured);
