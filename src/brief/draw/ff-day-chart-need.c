/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ribbon of need: how many stops of filter the camera would want, as a shade that runs through
 * the day. A block below that has the ribbon's shade above it has the right filter. */
#include <math.h>

#include "ff-civil.h"
#include "ff-day-chart-private.h"
#include "ff-neutral-block.h"
#include "ff-shapes.h"

#define RIBBON_TOP 0.1 /* em */
#define RIBBON_BOTTOM 0.2
#define MOST_COLOUR_STOPS 96
#define DARKEST_NEED (-3.05) /* below it a number helps nobody */

static cairo_rectangle_t
ribbon_box (const FfDayChart *chart)
{
  cairo_rectangle_t box = chart->need;

  box.y += RIBBON_TOP * chart->em;
  box.height -= (RIBBON_TOP + RIBBON_BOTTOM) * chart->em;
  return box;
}

static void
write_value (FfDayChart *chart, const FfChartFacts *facts, gint64 at)
{
  double need = ff_chart_sample (facts, facts->need_stops, at);
  cairo_rectangle_t box = ribbon_box (chart);
  g_autofree char *text = ff_chart_one_decimal (need);
  FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .align = 0.5,
                    .x = ff_time_axis_x (&chart->axis, (double) at),
                    .y = box.y + box.height / 2, .plate = chart->palette.hatched ? 0.25 : 0 };
  double half = ff_labels_width (chart->labels, &label) / 2 + 0.3 * chart->em;

  if (!isfinite (need) || need < DARKEST_NEED)
    return;
  label.x = CLAMP (label.x, box.x + half, MAX (box.x + box.width - half, box.x + half));
  label.colour = ff_palette_ink_on (&chart->palette, ff_palette_shade (&chart->palette, need));
  ff_labels_place (chart->labels, &label, NULL);
}

void
ff_chart_layout_need (FfDayChart *chart, const FfChartFacts *facts)
{
  gint64 at = chart->axis.from;

  if (!chart->share.need)
    return;
  for (guint i = 0; i < facts->n_samples; i++)
    {
      FfChartPoint point
          = { ff_time_axis_x (&chart->axis, (double) (facts->from + (gint64) i * facts->step_s)),
              facts->need_stops[i] };

      g_array_append_val (chart->need_curve, point);
    }
  while ((at = ff_time_axis_next (&chart->axis, at, chart->label_minutes)) != G_MAXINT64)
    {
      write_value (chart, facts, at);
      at += FF_MINUTE;
    }
}

static const FfChartPoint *
point_at (const FfDayChart *chart, guint index)
{
  return &g_array_index (chart->need_curve, FfChartPoint, index);
}

static void
draw_shades (const FfDayChart *chart, cairo_t *cr, const cairo_rectangle_t *box)
{
  cairo_pattern_t *shades = cairo_pattern_create_linear (box->x, 0, box->x + box->width, 0);
  guint n = chart->need_curve->len, step = 1 + n / MOST_COLOUR_STOPS;

  for (guint i = 0; i < n; i += step)
    {
      const FfChartPoint *point = point_at (chart, i);
      FfColour shade = ff_palette_shade (&chart->palette, point->y);

      if (isfinite (point->y))
        cairo_pattern_add_color_stop_rgb (shades, (point->x - box->x) / box->width, shade.red,
                                          shade.green, shade.blue);
    }
  cairo_set_source (cr, shades);
  ff_shape_rounded (cr, box, 0.22 * chart->em);
  cairo_fill (cr);
  cairo_pattern_destroy (shades);
}

static int
lines_at (const FfDayChart *chart, guint index)
{
  double need = point_at (chart, index)->y;

  return isfinite (need) ? ff_neutral_block_lines (need) : 0;
}

/* Runs of one number of lines, each closed by an upright. */
static void
draw_lines (const FfDayChart *chart, cairo_t *cr, const cairo_rectangle_t *box)
{
  guint n = chart->need_curve->len, first = 0;

  for (guint i = 1; i <= n; i++)
    {
      cairo_rectangle_t run = *box;

      if (i < n && lines_at (chart, i) == lines_at (chart, first))
        continue;
      run.x = point_at (chart, first)->x;
      run.width = point_at (chart, MIN (i, n - 1))->x - run.x;
      ff_neutral_block_hatch (cr, &chart->palette, &run, lines_at (chart, first));
      if (i < n)
        ff_shape_line (cr, run.x + run.width, box->y, run.x + run.width, box->y + box->height);
      cairo_set_line_width (cr, chart->palette.hair * chart->em);
      cairo_stroke (cr);
      first = i;
    }
}

void
ff_chart_draw_need (const FfDayChart *chart, cairo_t *cr)
{
  cairo_rectangle_t box = ribbon_box (chart);

  if (chart->need_curve->len == 0)
    return;
  if (chart->palette.hatched)
    {
      cairo_rectangle (cr, box.x, box.y, box.width, box.height);
      ff_colour_set (cr, chart->palette.paper);
      cairo_fill (cr);
      draw_lines (chart, cr, &box);
    }
  else
    draw_shades (chart, cr, &box);
  ff_shape_rounded (cr, &box, 0.22 * chart->em);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
}
