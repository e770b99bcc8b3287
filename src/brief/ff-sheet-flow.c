/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sheet-flow.h"

#include <math.h>

#include "ff-neutral-block.h"

#define LEAST_LINES 2 /* of a split block, on either side of the cut */
#define LEAST_FORM_ROWS 8 /* of a form that goes down to the foot of the page */
#define NOISE 1e-6

struct _FfSheetFlow {
  const FfSheet *sheet;
  GPtrArray *measured; /* FfMeasured of each block */
  GArray *pieces;      /* FfPiece in order */
  double width, height;
  /* While it is paginated: the page that is being filled, how far down it is, and a block that has
   * to be split because with its heading it is longer than a page. */
  guint page;
  double y;
  guint forced;
};

static const FfSheetBlock *
block_at (const FfSheetFlow *flow, guint i)
{
  return g_ptr_array_index (flow->sheet->blocks, i);
}

const FfMeasured *
ff_sheet_flow_measured (const FfSheetFlow *flow, guint block)
{
  return g_ptr_array_index (flow->measured, block);
}

static double
space_above (const FfSheetFlow *flow, guint i, double y)
{
  return y > 0 ? block_at (flow, i)->space_above : 0;
}

/* What a block takes; a form that goes down to the foot takes at least a few rows. */
static double
block_height (const FfSheetFlow *flow, guint i)
{
  const FfSheetBlock *block = block_at (flow, i);
  int rows = block->n_rows > 0 ? block->n_rows : LEAST_FORM_ROWS;

  if (block->kind == FF_BLOCK_FORM)
    return ff_sheet_flow_measured (flow, i)->height + rows * block->row_height;
  return ff_sheet_flow_measured (flow, i)->height;
}

static gboolean
can_split (const FfSheetFlow *flow, guint i)
{
  const FfSheetBlock *block = block_at (flow, i);

  return block->kind == FF_BLOCK_ROW
         && (block->may_split || i == flow->forced || block_height (flow, i) > flow->height);
}

/* The lower end of a block's drawing, which is never parted. */
static double
drawing_end (const FfSheetBlock *block)
{
  if (block->drawing.draw == NULL)
    return 0;
  return block->drawing.height + (block->rule_above > 0 ? block->rule_above + 2 : 0);
}

/* The lower end of the n-th line beyond `after`, lines taken from above; of the last line when it
 * has no more. */
static double
end_of_line (const FfSheetFlow *flow, guint i, double after, int n)
{
  const GArray *lines = ff_sheet_flow_measured (flow, i)->lines;

  for (; n > 0; n--)
    {
      double next = INFINITY;

      for (guint l = 0; l < lines->len; l++)
        {
          double bottom = g_array_index (lines, FfMeasuredLine, l).bottom;

          if (bottom > after + NOISE)
            next = MIN (next, bottom);
        }
      if (isinf (next))
        break;
      after = next;
    }
  return after;
}

/* The least a block needs on a page. */
static double
least_height (const FfSheetFlow *flow, guint i)
{
  if (can_split (flow, i))
    return MIN (MAX (end_of_line (flow, i, 0, LEAST_LINES), drawing_end (block_at (flow, i))),
                flow->height);
  return block_height (flow, i);
}

/* What the blocks [from, to) need on a page that is filled to `y`. */
static double
chain_height (const FfSheetFlow *flow, guint from, guint to, double y)
{
  const double start = y;

  for (guint i = from; i < to; i++)
    {
      y += space_above (flow, i, y);
      y += i + 1 < to ? block_height (flow, i) : least_height (flow, i);
    }
  return y - start;
}

static guint
chain_end (const FfSheetFlow *flow, guint from)
{
  const guint n = flow->sheet->blocks->len;
  guint end = from + 1;

  while (end < n && block_at (flow, end - 1)->keep_next
         && block_at (flow, end)->kind != FF_BLOCK_BREAK)
    end++;
  return end;
}

/* Of a chain that no page can hold, as much as one page holds, not ending with a heading; where
 * only headings fit, what they head is split. */
static guint
longest_fit (FfSheetFlow *flow, guint from, guint end)
{
  guint fit = end, to;

  while (fit > from + 1 && chain_height (flow, from, fit, 0) > flow->height + NOISE)
    fit--;
  for (to = fit; to > from && fit < end && block_at (flow, to - 1)->heading;)
    to--;
  if (to > from)
    return to;
  flow->forced = fit;
  return fit + 1;
}

static void
new_page (FfSheetFlow *flow)
{
  flow->page++;
  flow->y = 0;
}

static void
add_piece (FfSheetFlow *flow, guint i, double after, double upto, double origin, double height)
{
  const FfPiece piece = { i, flow->page, flow->y, height, after, upto, origin };

  g_array_append_val (flow->pieces, piece);
  flow->y += height;
}

/* Where a block whose lines up to `after` are placed begins on the next page. */
static double
top_of_rest (const FfSheetFlow *flow, guint i, double after)
{
  const GArray *lines = ff_sheet_flow_measured (flow, i)->lines;
  double top = INFINITY;

  for (guint l = 0; l < lines->len; l++)
    {
      const FfMeasuredLine *line = &g_array_index (lines, FfMeasuredLine, l);

      if (line->bottom > after + NOISE)
        top = MIN (top, line->top);
    }
  return isinf (top) ? after : top;
}

/* The lowest cut between lines that leaves no more than `room` above it; one line higher where a
 * last line would stand alone on the next page. */
static double
find_cut (const FfSheetFlow *flow, guint i, double after, double origin, double room)
{
  double before = after, cut = end_of_line (flow, i, after, 1);
  double next = end_of_line (flow, i, cut, 1);

  while (next > cut + NOISE && next - origin <= room + NOISE)
    {
      before = cut;
      cut = next;
      next = end_of_line (flow, i, cut, 1);
    }
  if (end_of_line (flow, i, next, 1) <= next + NOISE
      && before >= end_of_line (flow, i, after, LEAST_LINES) - NOISE)
    cut = before;
  return cut;
}

static void
place_split (FfSheetFlow *flow, guint i)
{
  const double end = block_height (flow, i);
  double after = 0, origin = 0;

  while (end - origin > flow->height - flow->y + NOISE)
    {
      double cut = find_cut (flow, i, after, origin, flow->height - flow->y);

      if (end_of_line (flow, i, cut, 1) <= cut + NOISE)
        break;
      add_piece (flow, i, after, cut, origin, cut - origin);
      after = cut;
      origin = top_of_rest (flow, i, cut);
      new_page (flow);
    }
  add_piece (flow, i, after, end, origin, end - origin);
}

static void
place_block (FfSheetFlow *flow, guint i)
{
  const FfSheetBlock *block = block_at (flow, i);
  double height = block_height (flow, i);

  flow->y += space_above (flow, i, flow->y);
  if (block->kind == FF_BLOCK_FORM && block->n_rows == 0)
    height += floor ((flow->height - flow->y - height) / block->row_height + NOISE)
              * block->row_height;
  if (can_split (flow, i) && flow->y + height > flow->height + NOISE)
    place_split (flow, i);
  else
    add_piece (flow, i, 0, height, 0, height);
}

static void
paginate (FfSheetFlow *flow)
{
  const guint n = flow->sheet->blocks->len;
  guint i = 0;

  while (i < n)
    {
      guint end = chain_end (flow, i);

      if (block_at (flow, i)->kind == FF_BLOCK_BREAK)
        {
          if (flow->y > 0 && flow->page + 1 < flow->sheet->allowance)
            new_page (flow);
          i++;
          continue;
        }
      if (chain_height (flow, i, end, flow->y) > flow->height - flow->y + NOISE)
        {
          if (flow->y > 0)
            new_page (flow);
          end = longest_fit (flow, i, end);
        }
      for (; i < end; i++)
        place_block (flow, i);
    }
}

FfSheetFlow *
ff_sheet_flow_new (const FfSheet *sheet, PangoContext *context, double width, double height)
{
  FfSheetFlow *flow = g_new0 (FfSheetFlow, 1);

  flow->sheet = sheet;
  flow->width = width;
  flow->height = height;
  flow->forced = G_MAXUINT;
  flow->measured = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_measured_free);
  flow->pieces = g_array_new (FALSE, FALSE, sizeof (FfPiece));
  for (guint i = 0; i < sheet->blocks->len; i++)
    g_ptr_array_add (flow->measured, ff_measure_block (block_at (flow, i), context, width));
  paginate (flow);
  return flow;
}

void
ff_sheet_flow_free (FfSheetFlow *flow)
{
  if (flow == NULL)
    return;
  g_ptr_array_unref (flow->measured);
  g_array_unref (flow->pieces);
  g_free (flow);
}

guint
ff_sheet_flow_n_pages (const FfSheetFlow *flow)
{
  if (flow->pieces->len == 0)
    return 1;
  return g_array_index (flow->pieces, FfPiece, flow->pieces->len - 1).page + 1;
}

gboolean
ff_sheet_flow_is_cut (const FfSheetFlow *flow)
{
  for (guint i = 0; i < flow->measured->len; i++)
    if (ff_sheet_flow_measured (flow, i)->cut)
      return TRUE;
  return FALSE;
}

int
ff_sheet_flow_n_unknown (const FfSheetFlow *flow)
{
  int n = 0;

  for (guint i = 0; i < flow->measured->len; i++)
    n += ff_sheet_flow_measured (flow, i)->n_unknown;
  return n;
}

double
ff_sheet_flow_depth (const FfSheetFlow *flow, guint page)
{
  double depth = 0;

  for (guint i = 0; i < flow->pieces->len; i++)
    {
      const FfPiece *piece = &g_array_index (flow->pieces, FfPiece, i);

      if (piece->page == page)
        depth = MAX (depth, piece->y + piece->height);
    }
  return depth;
}

const GArray *
ff_sheet_flow_pieces (const FfSheetFlow *flow)
{
  return flow->pieces;
}

GPtrArray *
ff_sheet_flow_past_allowance (const FfSheetFlow *flow)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < flow->pieces->len; i++)
    {
      const FfPiece *piece = &g_array_index (flow->pieces, FfPiece, i);
      const char *part = block_at (flow, piece->block)->part;

      if (piece->page >= flow->sheet->allowance
          && !g_ptr_array_find_with_equal_func (parts, part, g_str_equal, NULL))
        g_ptr_array_add (parts, g_strdup (part));
    }
  return parts;
}

static void
draw_rule (cairo_t *cr, double stroke, double x0, double y0, double x1, double y1)
{
  cairo_set_line_width (cr, stroke);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
}

/* What surrounds a block: the rule above it, the bar beside it, the box around it. */
static void
draw_frame (const FfSheetFlow *flow, cairo_t *cr, const FfPiece *piece)
{
  const FfSheetBlock *block = block_at (flow, piece->block);
  const double x = block->inset;

  /* At the top of a page the rule of the page stands there already. */
  if (block->rule_above > 0 && piece->after <= 0 && piece->y > 0)
    draw_rule (cr, block->rule_above, x, piece->y + block->rule_above / 2, flow->width,
               piece->y + block->rule_above / 2);
  if (block->bar > 0)
    draw_rule (cr, block->bar, x + block->bar / 2, piece->y + 1, x + block->bar / 2,
               piece->y + piece->height - 1);
  if (block->box > 0)
    {
      cairo_set_line_width (cr, block->box);
      cairo_rectangle (cr, x + block->box / 2, piece->y + block->box / 2,
                       flow->width - x - block->box, piece->height - block->box);
      cairo_stroke (cr);
    }
}

/* Squares to tick, as large as the row allows. */
static void
draw_ticks (cairo_t *cr, double left, double right, double y, double row_height)
{
  const double side = row_height - 10;

  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, (left + right - side) / 2, y + (row_height - side) / 2, side, side);
  cairo_stroke (cr);
}

static void
draw_form (const FfSheetFlow *flow, cairo_t *cr, const FfPiece *piece)
{
  const FfSheetBlock *block = block_at (flow, piece->block);
  const FfMeasured *measured = ff_sheet_flow_measured (flow, piece->block);
  const int n_rows = (int) lround ((piece->height - measured->height) / block->row_height);
  const double top = piece->y, bottom = piece->y + piece->height;

  draw_rule (cr, FF_STROKE_THIN, 0, top, flow->width, top);
  for (int row = 0; row <= n_rows; row++)
    {
      double y = top + measured->height + row * block->row_height;

      draw_rule (cr, row == 0 ? FF_STROKE_THICK : FF_STROKE_THIN, 0, y, flow->width, y);
      for (guint i = 0; row < n_rows && i < block->cells->len; i++)
        if (((const FfCell *) g_ptr_array_index (block->cells, i))->tick)
          draw_ticks (cr, g_array_index (measured->columns, double, i),
                      g_array_index (measured->columns, double, i + 1) - block->gap, y,
                      block->row_height);
    }
  for (guint i = 0; i <= block->cells->len; i++)
    {
      double x = g_array_index (measured->columns, double, i) - block->gap / 2;

      x = i == block->cells->len ? flow->width : MAX (x, 0);
      draw_rule (cr, FF_STROKE_THIN, x, top, x, bottom);
    }
}

static void
draw_drawing (const FfSheetFlow *flow, cairo_t *cr, const FfPiece *piece)
{
  const FfSheetBlock *block = block_at (flow, piece->block);
  const FfDrawing *drawing = &block->drawing;

  cairo_save (cr);
  cairo_translate (cr, block->inset, piece->y + (block->rule_above > 0 ? block->rule_above + 2 : 0));
  drawing->draw (cr, drawing->data, drawing->width, drawing->height);
  cairo_restore (cr);
}

static void
draw_box (cairo_t *cr, const FfMeasuredLine *line, double y)
{
  cairo_set_line_width (cr, FF_STROKE_THICK);
  cairo_rectangle (cr, line->x - 5, y + 2, line->right - line->x + 10,
                   line->bottom - line->top - 4);
  cairo_stroke (cr);
}

static void
draw_lines (const FfSheetFlow *flow, cairo_t *cr, const FfPiece *piece)
{
  const FfMeasured *measured = ff_sheet_flow_measured (flow, piece->block);

  for (guint i = 0; i < measured->lines->len; i++)
    {
      const FfMeasuredLine *line = &g_array_index (measured->lines, FfMeasuredLine, i);

      if (line->bottom <= piece->after + NOISE || line->bottom > piece->upto + NOISE)
        continue;
      cairo_move_to (cr, line->x, piece->y + line->baseline - piece->origin);
      pango_cairo_show_layout_line (cr, line->line);
      if (line->boxed)
        draw_box (cr, line, piece->y + line->top - piece->origin);
    }
}

static void
draw_marks (const FfSheetFlow *flow, cairo_t *cr, const FfPiece *piece)
{
  const FfMeasured *measured = ff_sheet_flow_measured (flow, piece->block);

  for (guint i = 0; i < measured->rules->len; i++)
    {
      const FfMeasuredRule *rule = &g_array_index (measured->rules, FfMeasuredRule, i);
      double y = piece->y + rule->y - piece->origin;

      if (rule->y > piece->after && rule->y <= piece->upto)
        draw_rule (cr, FF_STROKE_THIN, rule->x0, y, rule->x1, y);
    }
  for (guint i = 0; piece->after <= 0 && i < measured->marks->len; i++)
    {
      const FfMeasuredMark *mark = &g_array_index (measured->marks, FfMeasuredMark, i);
      const cairo_rectangle_t box = { mark->x, piece->y + mark->y, mark->side, mark->side };

      ff_neutral_block_draw (cr, &ff_palette_paper, &box, mark->stops, NULL);
      cairo_set_source_rgb (cr, 0, 0, 0);
    }
}

void
ff_sheet_flow_draw (const FfSheetFlow *flow, cairo_t *cr, guint page)
{
  cairo_set_source_rgb (cr, 0, 0, 0);
  for (guint i = 0; i < flow->pieces->len; i++)
    {
      const FfPiece *piece = &g_array_index (flow->pieces, FfPiece, i);

      if (piece->page != page)
        continue;
      draw_frame (flow, cr, piece);
      if (block_at (flow, piece->block)->kind == FF_BLOCK_FORM)
        draw_form (flow, cr, piece);
      if (block_at (flow, piece->block)->drawing.draw != NULL && piece->after <= 0)
        draw_drawing (flow, cr, piece);
      draw_lines (flow, cr, piece);
      draw_marks (flow, cr, piece);
    }
}
