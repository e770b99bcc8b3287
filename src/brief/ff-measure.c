/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"

/* A face drawn for cockpit displays, with figures of one width and a zero unlike its O; behind it
 * one that has most of the world's letters. */
#define FAMILIES "B612, DejaVu Sans"
#define BOX_PAD 5.0 /* between a boxed letter and its box */
#define PAD 6.0 /* between a frame, bar or neutral block and text */

static gboolean
is_our_family (const char *name)
{
  return g_ascii_strcasecmp (name, "B612") == 0 || g_ascii_strcasecmp (name, "DejaVu Sans") == 0;
}

static gboolean
has_font (PangoFontMap *map)
{
  g_autofree PangoFontFamily **families = NULL;
  int n_families = 0;

  pango_font_map_list_families (map, &families, &n_families);
  for (int i = 0; i < n_families; i++)
    if (is_our_family (pango_font_family_get_name (families[i])))
      return TRUE;
  return FALSE;
}

PangoContext *
ff_measure_context_new (GError **error)
{
  /* A font map of its own: what is measured in one thread is drawn in another. */
  g_autoptr (PangoFontMap) map = pango_cairo_font_map_new ();
  PangoFontDescription *font;
  cairo_font_options_t *options;
  PangoContext *context;

  /* Without a font Cairo would finish with success and a document without a word in it. */
  if (!has_font (map))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_OUTPUT,
                   _ ("no font to print with: neither B612 nor DejaVu Sans is installed; install "
                      "the packages fonts-b612 and fonts-dejavu-core"));
      return NULL;
    }
  context = pango_font_map_create_context (map);
  pango_cairo_context_set_resolution (context, 72);
  pango_context_set_round_glyph_positions (context, FALSE);
  options = cairo_font_options_create ();
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  font = pango_font_description_from_string (FAMILIES);
  pango_context_set_font_description (context, font);
  pango_font_description_free (font);
  return context;
}

static void
line_clear (gpointer data)
{
  pango_layout_line_unref (((FfMeasuredLine *) data)->line);
}

static FfMeasured *
measured_new (double width)
{
  FfMeasured *measured = g_new0 (FfMeasured, 1);

  measured->width = width;
  measured->lines = g_array_new (FALSE, FALSE, sizeof (FfMeasuredLine));
  g_array_set_clear_func (measured->lines, line_clear);
  measured->layouts = g_ptr_array_new_with_free_func (g_object_unref);
  measured->marks = g_array_new (FALSE, FALSE, sizeof (FfMeasuredMark));
  measured->rules = g_array_new (FALSE, FALSE, sizeof (FfMeasuredRule));
  measured->columns = g_array_new (FALSE, FALSE, sizeof (double));
  return measured;
}

void
ff_measured_free (FfMeasured *measured)
{
  if (measured == NULL)
    return;
  g_array_unref (measured->lines);
  g_ptr_array_unref (measured->layouts);
  g_array_unref (measured->marks);
  g_array_unref (measured->rules);
  g_array_unref (measured->columns);
  g_free (measured);
}

/* Runs become attributes; returns the largest size among them. */
static double
style_layout (PangoLayout *layout, const FfText *text)
{
  PangoAttrList *attributes = pango_attr_list_new ();
  double largest = 0;
  guint at = 0;

  for (guint i = 0; i < text->runs->len; i++)
    {
      const FfRun *run = &g_array_index (text->runs, FfRun, i);
      PangoAttribute *size = pango_attr_size_new ((int) lround (run->size * PANGO_SCALE));
      PangoAttribute *weight
          = pango_attr_weight_new (run->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);

      size->start_index = weight->start_index = at;
      size->end_index = weight->end_index = at + run->bytes;
      /* The end of the last run reaches past the text, so that an empty one has a height too. */
      if (i + 1 == text->runs->len)
        size->end_index = PANGO_ATTR_INDEX_TO_TEXT_END;
      pango_attr_list_insert (attributes, size);
      pango_attr_list_insert (attributes, weight);
      at += run->bytes;
      largest = MAX (largest, run->size);
    }
  /* A hyphen that nobody wrote does not belong into a label. */
  pango_attr_list_insert (attributes, pango_attr_insert_hyphens_new (FALSE));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  return largest;
}

static PangoLayout *
layout_text (const FfText *text,
             const FfCell *cell,
             PangoContext *context,
             double width,
             double *ret_largest)
{
  PangoLayout *layout = pango_layout_new (context);

  pango_layout_set_auto_dir (layout, FALSE);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, (int) (MAX (width, 1) * PANGO_SCALE));
  pango_layout_set_alignment (layout, cell->to_right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
  if (text->max_lines > 0)
    {
      pango_layout_set_height (layout, -text->max_lines);
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }
  pango_layout_set_text (layout, text->text->str, (int) text->text->len);
  *ret_largest = style_layout (layout, text);
  return layout;
}

/* Adds the lines of a text from `y` down; returns where the next text begins. */
static double
measure_text (FfMeasured *measured, PangoLayout *layout, double largest, double x, double y)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);

  do
    {
      PangoRectangle logical;
      FfMeasuredLine line = { 0 };
      double ascent, height, pitch;

      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      height = (double) logical.height / PANGO_SCALE;
      ascent = (double) (pango_layout_iter_get_baseline (iter) - logical.y) / PANGO_SCALE;
      pitch = MAX (FF_LINE_PITCH * largest, height);
      line.line = pango_layout_line_ref (pango_layout_iter_get_line_readonly (iter));
      line.x = x + (double) logical.x / PANGO_SCALE;
      line.top = y;
      line.baseline = y + (pitch - height) / 2 + ascent;
      line.bottom = y + pitch;
      line.right = line.x + (double) logical.width / PANGO_SCALE;
      g_array_append_val (measured->lines, line);
      y += pitch;
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
  measured->n_unknown += pango_layout_get_unknown_glyphs_count (layout);
  measured->cut = measured->cut || pango_layout_is_ellipsized (layout);
  return y;
}

/* The line to write on: after the last words, or under them where too little room is left. */
static double
measure_write_on (FfMeasured *measured, const FfCell *cell, double x, double right, double y)
{
  const FfMeasuredLine *last
      = &g_array_index (measured->lines, FfMeasuredLine, measured->lines->len - 1);
  FfMeasuredRule rule = { last->right + PAD, right, last->baseline + 2 };

  if (rule.x1 - rule.x0 < cell->write_on)
    {
      y += FF_ROW_TO_WRITE;
      rule.x0 = x;
      rule.y = y - 4;
    }
  g_array_append_val (measured->rules, rule);
  return y;
}

static double
measure_rule_above (FfMeasured *measured, double left, double right, double y)
{
  const FfMeasuredRule rule = { left, right, y + FF_STROKE_THIN / 2 };

  g_array_append_val (measured->rules, rule);
  return y + FF_STROKE_THIN;
}

/* Adds a cell between two verticals, from `y` down; returns the lower end of its texts. The texts
 * beside a neutral block stand in from it, those below do not. */
static double
measure_cell (FfMeasured *measured,
              const FfCell *cell,
              PangoContext *context,
              double left,
              double right,
              double y)
{
  const FfMeasuredMark mark = { left, y, cell->block_side, cell->stops };
  const double below = isnan (cell->stops) ? y : y + cell->block_side;
  double x = left;

  if (!isnan (cell->stops))
    g_array_append_val (measured->marks, mark);
  if (cell->boxed)
    right -= BOX_PAD + FF_STROKE_THICK / 2;
  for (guint i = 0; i < cell->texts->len; i++)
    {
      const FfText *text = g_ptr_array_index (cell->texts, i);
      PangoLayout *layout;
      double largest;

      y += text->space_above;
      if (text->rule_above)
        y = measure_rule_above (measured, left, right, y);
      x = y < below ? left + cell->block_side + PAD : left;
      layout = layout_text (text, cell, context, right - x, &largest);
      y = measure_text (measured, layout, largest, x, y);
      g_ptr_array_add (measured->layouts, layout);
    }
  if (cell->write_on > 0 && cell->texts->len > 0)
    y = measure_write_on (measured, cell, x, right, y);
  if (cell->boxed && cell->texts->len > 0)
    g_array_index (measured->lines, FfMeasuredLine, measured->lines->len - 1).boxed = TRUE;
  return y;
}

/* Left and right sides: fixed widths first, the rest by shares. */
static void
measure_columns (FfMeasured *measured, const FfSheetBlock *block, double left, double right)
{
  double rest = right - left + block->gap, shares = 0;

  for (guint i = 0; i < block->cells->len; i++)
    {
      const FfCell *cell = g_ptr_array_index (block->cells, i);

      rest -= MAX (cell->width, 0) + block->gap;
      shares += MAX (-cell->width, 0);
    }
  for (guint i = 0; i < block->cells->len; i++)
    {
      const FfCell *cell = g_ptr_array_index (block->cells, i);
      double width = cell->width >= 0 ? cell->width : -cell->width / shares * MAX (rest, 0);

      g_array_append_val (measured->columns, left);
      left += width + block->gap;
    }
  left -= block->gap;
  g_array_append_val (measured->columns, left);
}

static double
column_right (const FfMeasured *measured, const FfSheetBlock *block, guint i)
{
  double next = g_array_index (measured->columns, double, i + 1);

  return i + 1 < block->cells->len ? next - block->gap : next;
}

/* Where what a cell added begins, and its lower end. */
typedef struct {
  guint line, rule;
  double end;
} Span;

/* The first baseline of a cell; 0 when it has no line. */
static double
first_baseline (const FfMeasured *measured, const Span *span, const Span *next)
{
  if (span->line == next->line)
    return 0;
  return g_array_index (measured->lines, FfMeasuredLine, span->line).baseline;
}

/* Moves what a cell added down by `by`. */
static void
shift_cell (FfMeasured *measured, const Span *span, const Span *next, double by)
{
  for (guint i = span->line; i < next->line; i++)
    {
      FfMeasuredLine *line = &g_array_index (measured->lines, FfMeasuredLine, i);

      line->top += by;
      line->baseline += by;
      line->bottom += by;
    }
  for (guint i = span->rule; i < next->rule; i++)
    g_array_index (measured->rules, FfMeasuredRule, i).y += by;
}

/* Brings the first lines of all cells to the lowest of their baselines. Returns the lower end. */
static double
share_baseline (FfMeasured *measured, const Span *spans, guint n_cells)
{
  double lowest = 0, bottom = 0;

  for (guint i = 0; i < n_cells; i++)
    lowest = MAX (lowest, first_baseline (measured, &spans[i], &spans[i + 1]));
  for (guint i = 0; i < n_cells; i++)
    {
      double by = lowest - first_baseline (measured, &spans[i], &spans[i + 1]);

      if (spans[i].line < spans[i + 1].line)
        shift_cell (measured, &spans[i], &spans[i + 1], by);
      bottom = MAX (bottom, spans[i].end + (spans[i].line < spans[i + 1].line ? by : 0));
    }
  return bottom;
}

static double
measure_cells (FfMeasured *measured, const FfSheetBlock *block, PangoContext *context, double top)
{
  const guint n = block->cells->len;
  g_autofree Span *spans = g_new0 (Span, n + 1);
  double bottom = top;

  for (guint i = 0; i < n; i++)
    {
      spans[i].line = measured->lines->len;
      spans[i].rule = measured->rules->len;
      spans[i].end = measure_cell (measured, g_ptr_array_index (block->cells, i), context,
                                   g_array_index (measured->columns, double, i),
                                   column_right (measured, block, i), top);
      bottom = MAX (bottom, spans[i].end);
    }
  spans[n].line = measured->lines->len;
  spans[n].rule = measured->rules->len;
  return block->on_baseline && n > 0 ? share_baseline (measured, spans, n) : bottom;
}

/* Neutral blocks stand in the middle of a line that shares a baseline. Returns the lower end. */
static double
place_marks (FfMeasured *measured, const FfSheetBlock *block, double top, double bottom)
{
  for (guint i = 0; i < measured->marks->len; i++)
    {
      FfMeasuredMark *mark = &g_array_index (measured->marks, FfMeasuredMark, i);

      if (block->on_baseline)
        mark->y = top + MAX ((bottom - top - mark->side) / 2, 0);
      bottom = MAX (bottom, mark->y + mark->side);
    }
  return bottom;
}

FfMeasured *
ff_measure_block (const FfSheetBlock *block, PangoContext *context, double width)
{
  FfMeasured *measured = measured_new (width);
  const double side = block->box > 0 ? block->box + PAD : 0;
  const double pad = block->kind == FF_BLOCK_FORM ? block->gap / 2 : 0;
  const double picture = block->drawing.draw != NULL ? block->drawing.width + block->gap : 0;
  const double left = block->inset + side + pad + (block->bar > 0 ? block->bar + PAD : 0) + picture;
  const double top = side + pad + (block->rule_above > 0 ? block->rule_above + 2 : 0);
  double bottom;

  measure_columns (measured, block, left, width - side - pad);
  bottom = measure_cells (measured, block, context, top);
  bottom = place_marks (measured, block, top, bottom);
  if (block->drawing.draw != NULL)
    bottom = MAX (bottom, top + block->drawing.height);
  measured->height = bottom + side + pad;
  return measured;
}
