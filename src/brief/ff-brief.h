/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheets of a brief on paper. Content is gathered once, measured and paginated once; after
 * that any page can be drawn on any Cairo context. */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "ff-names.h"
#include "ff-sheet-facts.h"

typedef struct _FfBrief FfBrief;

/* The sheets for one reader, or for all that have one. The facts and the plan are read now and not
 * kept. Error: FF_ERROR_INPUT for a reader without a sheet yet, FF_ERROR_OUTPUT when no font is
 * installed. */
FfBrief *ff_brief_new (const FfSheetFacts *facts,
                       const FfDayPlan *plan,
                       FfReader reader,
                       FfPaper paper,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_brief_free (FfBrief *brief);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfBrief, ff_brief_free)

guint ff_brief_n_pages (const FfBrief *brief);

/* Paper size in points. */
void ff_brief_page_size (const FfBrief *brief, double *ret_width, double *ret_height);

/* Draws page 0 … n-1; one unit is a point. */
void ff_brief_draw_page (const FfBrief *brief, cairo_t *cr, guint page);

/* What did not fit its sheet's page count, as sentences; borrowed. */
GPtrArray *ff_brief_did_not_fit (const FfBrief *brief);

/* Writes a PDF: to a temporary file beside it, checked, synced, then renamed. Errors:
 * FF_ERROR_OUTPUT; nothing half-written is left. */
gboolean ff_brief_write_pdf (const FfBrief *brief, const char *path, GError **error);
