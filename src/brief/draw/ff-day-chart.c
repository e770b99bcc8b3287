/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-chart.h"

#include <math.h>

#include "ff-day-chart-private.h"
#include "ff-shapes.h"

static GArray *
array_of (gsize size)
{
  return g_array_new (FALSE, FALSE, (guint) size);
}

static void
make_arrays (FfDayChart *chart)
{
  chart->phases = array_of (sizeof (FfChartPhase));
  chart->sun_curve = array_of (sizeof (FfChartPoint));
  chart->light_curve = array_of (sizeof (FfChartPoint));
  chart->low_curve = array_of (sizeof (FfChartPoint));
  chart->high_curve = array_of (sizeof (FfChartPoint));
  chart->need_curve = array_of (sizeof (FfChartPoint));
  chart->dots = array_of (sizeof (FfChartPoint));
  chart->readings = array_of (sizeof (FfChartPoint));
  chart->suns = array_of (sizeof (FfChartPoint));
  chart->ticks = array_of (sizeof (double));
  chart->hours = array_of (sizeof (double));
  chart->poles = array_of (sizeof (FfChartPole));
  chart->blocks = array_of (sizeof (FfChartBlock));
  chart->turns = array_of (sizeof (FfChartTurn));
  chart->cells = array_of (sizeof (cairo_rectangle_t));
  chart->charges = array_of (sizeof (FfChartCharge));
  chart->cautions = array_of (sizeof (FfChartPoint));
}

static void
take_frame (FfDayChart *chart, const FfChartFacts *facts, const FfChartFrame *frame)
{
  const double edge = 1; /* of the picture, for the outlines of what touches it */
  cairo_rectangle_t bounds = { edge, edge, MAX (frame->width - 2 * edge, 1),
                               MAX (frame->height - 2 * edge, 1) };

  chart->palette = *frame->palette;
  chart->width = frame->width;
  chart->height = frame->height;
  chart->labels = ff_labels_new (frame->palette, frame->font, frame->scale, &bounds);
  chart->em = ff_labels_em (chart->labels);
  chart->zone = g_time_zone_ref (facts->zone);
  chart->axis.zone = chart->zone;
  chart->axis.from = facts->from;
  chart->axis.to = MAX (facts->to, facts->from + 60);
}

/* What must be seen asks for its place first. */
static void
lay_out (FfDayChart *chart, const FfChartFacts *facts, const FfDayPlan *plan)
{
  ff_chart_layout_bands (chart, facts, plan);
  if (plan != NULL)
    ff_chart_layout_sorties (chart, plan);
  ff_chart_layout_ruler (chart, facts);
  ff_chart_layout_flags (chart, facts);
  ff_chart_layout_words (chart, plan);
  ff_chart_layout_need (chart, facts);
  ff_chart_layout_sky (chart, facts);
  if (plan != NULL)
    ff_chart_layout_charger (chart, plan);
}

FfDayChart *
ff_day_chart_new (const FfChartFacts *facts, const FfDayPlan *plan, const FfChartFrame *frame)
{
  FfDayChart *chart = g_new0 (FfDayChart, 1);

  make_arrays (chart);
  take_frame (chart, facts, frame);
  lay_out (chart, facts, plan);
  chart->rows = ff_chart_rows (chart, facts, plan);
  return chart;
}

double
ff_day_chart_height (const FfChartFacts *facts, const FfDayPlan *plan, const FfChartFrame *frame)
{
  g_autoptr (FfDayChart) chart = g_new0 (FfDayChart, 1);

  make_arrays (chart);
  take_frame (chart, facts, frame);
  return ff_chart_wanted_height (chart, facts, plan);
}

void
ff_day_chart_free (FfDayChart *chart)
{
  GArray *arrays[] = { chart->phases,     chart->sun_curve, chart->light_curve, chart->low_curve,
                       chart->high_curve, chart->need_curve, chart->dots,       chart->suns,
                       chart->readings,
                       chart->ticks,      chart->hours,     chart->poles,       chart->blocks,
                       chart->turns,      chart->cells,     chart->charges,     chart->cautions };

  for (guint i = 0; i < G_N_ELEMENTS (arrays); i++)
    g_array_unref (arrays[i]);
  g_clear_pointer (&chart->rows, g_ptr_array_unref);
  ff_labels_free (chart->labels);
  g_time_zone_unref (chart->zone);
  g_free (chart);
}

/* Poles run behind all that is below the sky; what is written in their way has a plate. */
static void
draw_poles (const FfDayChart *chart, cairo_t *cr, gboolean now)
{
  const double dash[] = { 0.25 * chart->em, 0.25 * chart->em };
  double bottom = chart->lanes.y + chart->lanes.height;

  if (now)
    bottom = chart->charger.y + chart->charger.height;
  cairo_save (cr);
  for (guint i = 0; i < chart->poles->len; i++)
    {
      const FfChartPole *pole = &g_array_index (chart->poles, FfChartPole, i);

      if (pole->is_now == now)
        ff_shape_line (cr, pole->x, pole->top, pole->x, bottom);
    }
  if (!now)
    cairo_set_dash (cr, dash, G_N_ELEMENTS (dash), 0);
  ff_colour_set (cr, now ? chart->palette.accent : chart->palette.soft);
  cairo_set_line_width (cr, (now ? chart->palette.line : chart->palette.hair) * chart->em);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_cautions (const FfDayChart *chart, cairo_t *cr)
{
  for (guint i = 0; i < chart->cautions->len; i++)
    {
      const FfChartPoint *foot = &g_array_index (chart->cautions, FfChartPoint, i);

      ff_shape_triangle (cr, foot->x, foot->y, 0.8 * chart->em);
    }
  ff_colour_set (cr, chart->palette.attention);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
}

static void
draw_mark (const FfDayChart *chart, cairo_t *cr, int line)
{
  double width = MIN (1.4 * chart->palette.line * chart->em, 0.5 * chart->pad);
  double off = MIN (0.28 * chart->em, chart->pad - width);

  for (guint i = 0; i < chart->blocks->len; i++)
    {
      const FfChartBlock *block = &g_array_index (chart->blocks, FfChartBlock, i);
      cairo_rectangle_t ring = { block->block.x - off, block->block.y - off,
                                 block->block.width + 2 * off, block->block.height + 2 * off };

      if (block->line != line)
        continue;
      ff_shape_rounded (cr, &ring, 0.4 * chart->em);
      ff_colour_set (cr, chart->palette.accent);
      cairo_set_line_width (cr, width);
      cairo_stroke (cr);
    }
}

void
ff_day_chart_draw (const FfDayChart *chart, cairo_t *cr, int marked_line)
{
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, chart->width, chart->height);
  ff_colour_set (cr, chart->palette.paper);
  cairo_fill (cr);
  ff_chart_draw_sky (chart, cr);
  draw_poles (chart, cr, FALSE);
  draw_poles (chart, cr, TRUE);
  ff_chart_draw_need (chart, cr);
  ff_chart_draw_ruler (chart, cr);
  ff_chart_draw_sorties (chart, cr);
  ff_chart_draw_charger (chart, cr);
  draw_cautions (chart, cr);
  ff_labels_draw (chart->labels, cr);
  if (marked_line > 0)
    draw_mark (chart, cr, marked_line);
  cairo_restore (cr);
}

/* Squared distance of a point from a box; 0 inside. */
static double
distance_from (const cairo_rectangle_t *box, double x, double y)
{
  double dx = MAX (MAX (box->x - x, x - (box->x + box->width)), 0);
  double dy = MAX (MAX (box->y - y, y - (box->y + box->height)), 0);

  return dx * dx + dy * dy;
}

/* A hand in a glove misses by a little; of two boxes that hold the point the one whose middle is
 * nearer is meant. */
int
ff_day_chart_line_at (const FfDayChart *chart, double x, double y)
{
  double nearest = chart->em * chart->em, nearest_middle = INFINITY;
  int line = 0;

  for (guint i = 0; i < chart->blocks->len; i++)
    {
      const FfChartBlock *block = &g_array_index (chart->blocks, FfChartBlock, i);
      double distance = distance_from (&block->target, x, y);
      double middle = fabs (block->target.x + block->target.width / 2 - x);

      if (distance > nearest || (distance == nearest && middle >= nearest_middle))
        continue;
      nearest = distance;
      nearest_middle = middle;
      line = block->line;
    }
  return line;
}

gboolean
ff_day_chart_line_rect (const FfDayChart *chart, int line, cairo_rectangle_t *ret_box)
{
  for (guint i = 0; i < chart->blocks->len; i++)
    if (g_array_index (chart->blocks, FfChartBlock, i).line == line)
      {
        *ret_box = g_array_index (chart->blocks, FfChartBlock, i).target;
        return TRUE;
      }
  return FALSE;
}

void
ff_day_chart_lock (FfDayChart *chart, int line)
{
  for (guint i = 0; i < chart->blocks->len; i++)
    {
      FfChartBlock *block = &g_array_index (chart->blocks, FfChartBlock, i);

      if (block->line != line || block->locked)
        continue;
      block->locked = TRUE;
      ff_chart_rows_lock (chart->rows, line);
    }
}

GPtrArray *
ff_day_chart_rows (const FfDayChart *chart)
{
  return chart->rows;
}

const FfLabels *
ff_day_chart_labels (const FfDayChart *chart)
{
  return chart->labels;
}
