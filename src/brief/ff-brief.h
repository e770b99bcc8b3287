/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheets of a brief on paper. Content is gathered once, measured and paginated once; after
 * that any page can be drawn on any Cairo context. */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "ff-names.h"
#include "ff-sheet-facts.h"
#include "ff-weather-today.h"

typedef struct _FfBrief FfBrief;

/* The sheets for one reader, or for all that have one. The facts and the plan are read now and not
 * kept. Error: FF_ERROR_INPUT for a reader without a sheet yet, FF_ERROR_OUTPUT when no font is
 * installed. */
FfBrief *ff_brief_new (const FfSheetFacts *facts,
                       const FfDayPlan *plan,
                       FfReader reader,
                       FfPaper paper,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same in two steps. The first reads facts and plan; the second, which takes longer, reads the
 * facts alone and may be done in another thread, which hands the brief back when it is done. */
FfBrief *ff_brief_gather (const FfSheetFacts *facts,
                          const FfDayPlan *plan,
                          FfReader reader,
                          FfPaper paper,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Between the two: room at the side that is bound, from the edge of the paper, at most
 * FF_BRIEF_MOST_MARGIN_MM; less than the common margin is that margin. The left side, and on the
 * back of a sheet of two sides the right one. */
#define FF_BRIEF_MOST_MARGIN_MM 20.0
void ff_brief_bind (FfBrief *brief, double margin_mm);

/* The second step. */
gboolean ff_brief_lay_out (FfBrief *brief, const FfSheetFacts *facts, GError **error);

/* The weather call, one page, laid out at once. */
FfBrief *ff_brief_new_weather (const FfSheetFacts *facts,
                               const FfWeatherToday *today,
                               FfPaper paper,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Checklists alone, laid out at once: the facts need hold no more than them, and may be blank. */
FfBrief *ff_brief_new_lists (const FfSheetFacts *facts,
                             FfPaper paper,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is printed besides the sheets of the readers. Lists and pack list need facts that hold them:
 * ff_sheet_facts_read_lists(), ff_sheet_facts_read_pack(). */
typedef enum {
  FF_BRIEF_ALONE = 0,
  FF_BRIEF_SLIPS = 1 << 0, /* a turn-round slip for each landing */
  FF_BRIEF_LISTS = 1 << 1, /* every checklist the day calls for, on paper */
  FF_BRIEF_PACK = 1 << 2,  /* the pack list by case */
  FF_BRIEF_SPOKEN = 1 << 3, /* the spoken brief, and the day chart */
  FF_BRIEF_AMENDMENTS = 1 << 4, /* the amendments as they are read out, with lines for more */
  FF_BRIEF_ONLY = 1 << 8,   /* no sheet of a reader: only what else is named here */
} FfBriefMore;

/* ff_brief_gather() with more behind the sheets of the readers. */
FfBrief *ff_brief_gather_with (const FfSheetFacts *facts,
                               const FfDayPlan *plan,
                               FfReader reader,
                               FfPaper paper,
                               FfBriefMore more,
                               GError **error);

/* Between the two steps: the weather call behind the sheets. */
void ff_brief_add_weather (FfBrief *brief, const FfWeatherToday *today);

void ff_brief_free (FfBrief *brief);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfBrief, ff_brief_free)

/* Whether there is a sheet for this reader (for "all" there is). */
gboolean ff_brief_has_sheet (FfReader reader);

/* Title of the document: job and version. */
const char *ff_brief_title (const FfBrief *brief);

guint ff_brief_n_pages (const FfBrief *brief);

/* Paper size in points. */
void ff_brief_page_size (const FfBrief *brief, double *ret_width, double *ret_height);

/* Where a page of the brief stands: whose sheet it is of, and which page of that sheet. */
typedef struct {
  const char *sheet;     /* "Pilot"; borrowed */
  guint number, n_pages; /* from 1 */
} FfBriefPage;

void ff_brief_page (const FfBrief *brief, guint page, FfBriefPage *ret_page);

/* Names of the parts that stand on a page, from top to bottom; the strings are borrowed. */
GPtrArray *ff_brief_page_parts (const FfBrief *brief, guint page) G_GNUC_WARN_UNUSED_RESULT;

/* Draws page 0 … n-1; one unit is a point. */
void ff_brief_draw_page (const FfBrief *brief, cairo_t *cr, guint page);

/* What did not fit its sheet's page count, as sentences; borrowed. */
GPtrArray *ff_brief_did_not_fit (const FfBrief *brief);

/* Writes a PDF: to a temporary file beside it, checked, synced, then renamed. Errors:
 * FF_ERROR_OUTPUT; nothing half-written is left. */
gboolean ff_brief_write_pdf (const FfBrief *brief, const char *path, GError **error);
