/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sheet flowed into pages: measured and paginated once; any page can then be drawn, in any order.
 * Nothing is made smaller and nothing is left out: what goes past the pages a sheet may have stands
 * on further pages and is named. */
#pragma once

#include <cairo.h>

#include "ff-measure.h"
#include "ff-sheet.h"

typedef struct _FfFlow FfFlow;

/* Of a block, what lies on one page: the lines whose lower ends are below `after` and not below
 * `upto`, drawn so that `origin` comes to `y`. A whole block has `after` 0, `upto` its height. */
typedef struct {
  guint block, page;
  double y, height;
  double after, upto, origin;
} FfPiece;

/* The sheet must outlive the flow. */
FfFlow *ff_flow_new (const FfSheet *sheet,
                     PangoContext *context,
                     double width,
                     double height) G_GNUC_WARN_UNUSED_RESULT;
void ff_flow_free (FfFlow *flow);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfFlow, ff_flow_free)

guint ff_flow_n_pages (const FfFlow *flow);

/* Whether a text was longer than the lines it may have. */
gboolean ff_flow_is_cut (const FfFlow *flow);

/* Lower end of the last piece of a page. */
double ff_flow_depth (const FfFlow *flow, guint page);

/* The record of the pages: an array of FfPiece, borrowed; and what a block measured. */
const GArray *ff_flow_pieces (const FfFlow *flow);
const FfMeasured *ff_flow_measured (const FfFlow *flow, guint block);

/* Names of the parts that begin past the pages the sheet may have; an array of strings. */
GPtrArray *ff_flow_past_allowance (const FfFlow *flow) G_GNUC_WARN_UNUSED_RESULT;

/* Draws the page with its top left corner at the origin of the context. */
void ff_flow_draw (const FfFlow *flow, cairo_t *cr, guint page);
