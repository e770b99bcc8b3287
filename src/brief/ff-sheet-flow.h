/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sheet flowed into pages: measured and paginated once; any page can then be drawn, in any order.
 * Nothing is made smaller and nothing is left out: what goes past the pages a sheet may have stands
 * on further pages and is named. */
#pragma once

#include <cairo.h>

#include "ff-measure.h"
#include "ff-sheet.h"

typedef struct _FfSheetFlow FfSheetFlow;

/* Of a block, what lies on one page: the lines whose lower ends are below `after` and not below
 * `upto`, drawn so that `origin` comes to `y`. A whole block has `after` 0, `upto` its height. */
typedef struct {
  guint block, page;
  double y, height;
  double after, upto, origin;
} FfPiece;

/* The sheet must outlive the flow. */
FfSheetFlow *ff_sheet_flow_new (const FfSheet *sheet,
                                PangoContext *context,
                                double width,
                                double height) G_GNUC_WARN_UNUSED_RESULT;
void ff_sheet_flow_free (FfSheetFlow *flow);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfSheetFlow, ff_sheet_flow_free)

guint ff_sheet_flow_n_pages (const FfSheetFlow *flow);

/* Whether a text was longer than the lines it may have. */
gboolean ff_sheet_flow_is_cut (const FfSheetFlow *flow);

/* Letters that no installed font has. */
int ff_sheet_flow_n_unknown (const FfSheetFlow *flow);

/* Lower end of the last piece of a page. */
double ff_sheet_flow_depth (const FfSheetFlow *flow, guint page);

/* The record of the pages: an array of FfPiece, borrowed; and what a block measured. */
const GArray *ff_sheet_flow_pieces (const FfSheetFlow *flow);
const FfMeasured *ff_sheet_flow_measured (const FfSheetFlow *flow, guint block);

/* Names of the parts that begin past the pages the sheet may have; an array of strings. */
GPtrArray *ff_sheet_flow_past_allowance (const FfSheetFlow *flow) G_GNUC_WARN_UNUSED_RESULT;

/* Draws the page with its top left corner at the origin of the context. */
void ff_sheet_flow_draw (const FfSheetFlow *flow, cairo_t *cr, guint page);
