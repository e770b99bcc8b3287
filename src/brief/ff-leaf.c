/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-leaf.h"

#include <glib/gi18n-lib.h>

#include "ff-sheet-flow.h"
#include "ff-sheet.h"

#define ENDLESS 1e6   /* a frame is measured as if on a page without end */
#define TO_WRITE 14.0 /* size of a blank that makes room for a pencil */
#define CLEAR 5.0     /* between the frame and what it frames */

struct _FfLeaf {
  double width;
  FfSheet *head, *foot;
  FfSheetFlow *head_flow, *foot_flow;
};

static FfCell *
add_right (FfSheetBlock *row, double width, double size, gboolean bold, const char *text)
{
  FfCell *cell = ff_sheet_block_cell (row, width);

  cell->to_right = TRUE;
  ff_cell_text (cell, size, bold, text)->max_lines = 1;
  return cell;
}

/* Whose sheet it is; and the letter that tells it from the one printed before, boxed. */
static void
add_title (FfSheet *head, const FfSheetFacts *facts, guint number, guint n_pages)
{
  /* Translators: page number and number of pages of a sheet. */
  g_autofree char *pages = g_strdup_printf (_ ("page %u of %u"), number, n_pages);
  FfSheetBlock *row = ff_sheet_row (head);

  ff_cell_text (ff_sheet_block_cell (row, -1), FF_SIZE_LAND_BY, TRUE, head->title)->max_lines = 1;
  add_right (row, 106, FF_SIZE_LABEL, FALSE, facts->printed);
  add_right (row, 110, FF_SIZE_CAMERA, TRUE, pages);
  /* Translators: the letter of a printed plan follows: "version A". */
  add_right (row, 48, FF_SIZE_LABEL, FALSE, _ ("version"));
  add_right (row, 26, FF_SIZE_LAND_BY, TRUE, *facts->version != '\0' ? facts->version : "–")->boxed
      = TRUE;
  row->on_baseline = TRUE;
}

static void
add_part (FfCell *cell, gboolean bold, const char *text)
{
  if (*text == '\0')
    return;
  if (cell->texts->len == 0)
    {
      ff_cell_text (cell, FF_SIZE_BODY, bold, text)->max_lines = 3;
      return;
    }
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ·  ");
  ff_cell_more (cell, FF_SIZE_BODY, bold, text);
}

static FfSheet *
make_head (const FfSheetFacts *facts, const char *role, guint number, guint n_pages)
{
  FfSheet *head = ff_sheet_new (FF_READER_ALL, role, 1);
  FfSheetBlock *row;
  FfCell *cell;

  add_title (head, facts, number, n_pages);
  row = ff_sheet_row (head);
  cell = ff_sheet_block_cell (row, -1);
  add_part (cell, TRUE, facts->job);
  add_part (cell, FALSE, facts->place);
  add_part (cell, FALSE, facts->date);
  if (facts->beside != NULL && *facts->beside != '\0')
    ff_cell_text (ff_sheet_block_cell (ff_sheet_row (head), -1), FF_SIZE_BODY, TRUE,
                  facts->beside)->max_lines = 2;
  if (facts->example)
    {
      row = ff_sheet_row (head);
      ff_cell_text (ff_sheet_block_cell (row, -1), FF_SIZE_CAMERA, TRUE,
                    _ ("EXAMPLE, not a place to fly"));
      row->rule_above = FF_STROKE_THICK;
    }
  return head;
}

/* A fact of the foot; where nobody has entered it, a line to write it on that says so. */
static FfCell *
add_emergency (FfSheetBlock *row, double width, const char *label, const char *value, double size)
{
  FfCell *cell = ff_sheet_block_cell (row, width);

  ff_cell_text (cell, FF_SIZE_BODY, FALSE, label);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  if (*value != '\0')
    ff_cell_more (cell, size, TRUE, value);
  else
    {
      /* Translators: stands where a fact is missing that must be written in by hand. */
      ff_cell_more (cell, FF_SIZE_BODY, TRUE, _ ("FILL IN"));
      ff_cell_more (cell, TO_WRITE, FALSE, " ");
      cell->write_on = 60;
    }
  return cell;
}

static FfSheet *
make_foot (const FfSheetFacts *facts)
{
  FfSheet *foot = ff_sheet_new (FF_READER_ALL, "", 1);
  FfSheetBlock *row = ff_sheet_row (foot);
  FfCell *cell;

  row->on_baseline = TRUE;
  /* Translators: the one word that stops everything follows. */
  cell = add_emergency (row, -1, _ ("Abort word"), facts->abort_word, FF_SIZE_LAND_BY);
  ((FfText *) g_ptr_array_index (cell->texts, 0))->max_lines = 2;
  cell = add_emergency (row, -1, _ ("Emergency, call"), facts->emergency_phone, FF_SIZE_LAND_BY);
  ((FfText *) g_ptr_array_index (cell->texts, 0))->max_lines = 2;
  row = ff_sheet_row (foot);
  /* Translators: what to read out to an ambulance follows: how to find the place. */
  cell = add_emergency (row, -1, _ ("Say where"), facts->emergency_location, FF_SIZE_BODY);
  if (*facts->position != '\0' && *facts->emergency_location != '\0')
    {
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ·  ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, facts->position);
    }
  ((FfText *) g_ptr_array_index (cell->texts, 0))->max_lines = 4;
  return foot;
}

FfLeaf *
ff_leaf_new (const FfSheetFacts *facts,
             const char *role,
             PangoContext *context,
             double width,
             guint number,
             guint n_pages)
{
  FfLeaf *page = g_new0 (FfLeaf, 1);
  const double inner = width - 2 * FF_LEAF_MARGIN;

  page->width = width;
  page->head = make_head (facts, role, number, n_pages);
  page->foot = make_foot (facts);
  page->head_flow = ff_sheet_flow_new (page->head, context, inner, ENDLESS);
  page->foot_flow = ff_sheet_flow_new (page->foot, context, inner, ENDLESS);
  return page;
}

void
ff_leaf_free (FfLeaf *page)
{
  if (page == NULL)
    return;
  ff_sheet_flow_free (page->head_flow);
  ff_sheet_flow_free (page->foot_flow);
  ff_sheet_free (page->head);
  ff_sheet_free (page->foot);
  g_free (page);
}

/* Head and foot each end in a rule, then a clear strip. */
double
ff_leaf_head (const FfLeaf *page)
{
  return FF_LEAF_MARGIN + ff_sheet_flow_depth (page->head_flow, 0) + FF_STROKE_THICK + CLEAR;
}

double
ff_leaf_foot (const FfLeaf *page)
{
  return FF_LEAF_MARGIN + ff_sheet_flow_depth (page->foot_flow, 0) + FF_STROKE_THICK + CLEAR;
}

gboolean
ff_leaf_is_cut (const FfLeaf *page)
{
  return ff_sheet_flow_is_cut (page->foot_flow);
}

int
ff_leaf_n_unknown (const FfLeaf *page)
{
  return ff_sheet_flow_n_unknown (page->head_flow) + ff_sheet_flow_n_unknown (page->foot_flow);
}

static void
draw_rule (const FfLeaf *page, cairo_t *cr, double y)
{
  cairo_set_line_width (cr, FF_STROKE_THICK);
  cairo_move_to (cr, FF_LEAF_MARGIN, y);
  cairo_line_to (cr, page->width - FF_LEAF_MARGIN, y);
  cairo_stroke (cr);
}

static void
draw_flow (const FfSheetFlow *flow, cairo_t *cr, double y)
{
  cairo_save (cr);
  cairo_translate (cr, FF_LEAF_MARGIN, y);
  ff_sheet_flow_draw (flow, cr, 0);
  cairo_restore (cr);
}

void
ff_leaf_draw (const FfLeaf *page, cairo_t *cr, double height)
{
  const double foot = height - FF_LEAF_MARGIN - ff_sheet_flow_depth (page->foot_flow, 0);

  draw_flow (page->head_flow, cr, FF_LEAF_MARGIN);
  draw_rule (page, cr, ff_leaf_head (page) - CLEAR - FF_STROKE_THICK / 2);
  draw_rule (page, cr, foot - FF_STROKE_THICK / 2);
  draw_flow (page->foot_flow, cr, foot);
}
