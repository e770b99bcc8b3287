/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawing of the upper half: bands, sun, light. */
#include <math.h>

#include "ff-day-chart-private.h"
#include "ff-shapes.h"

static void
add_curve (cairo_t *cr, GArray *curve)
{
  gboolean down = FALSE;

  for (guint i = 0; i < curve->len; i++)
    {
      const FfChartPoint *point = &g_array_index (curve, FfChartPoint, i);

      if (!isfinite (point->y))
        down = FALSE;
      else if (down)
        cairo_line_to (cr, point->x, point->y);
      else
        cairo_move_to (cr, point->x, point->y);
      down = isfinite (point->y);
    }
}

static void
stroke_curve (const FfDayChart *chart, cairo_t *cr, GArray *curve, FfColour colour, double width)
{
  add_curve (cr, curve);
  ff_colour_set (cr, colour);
  cairo_set_line_width (cr, width * chart->em);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

static FfColour
phase_colour (const FfPalette *palette, FfSunPhase phase)
{
  switch (phase)
    {
    case FF_PHASE_LOW:
      return palette->low_sun;
    case FF_PHASE_TWILIGHT:
      return palette->twilight;
    case FF_PHASE_NIGHT:
      return palette->night;
    case FF_PHASE_DAY:
    default:
      return palette->paper;
    }
}

/* On screen the bands are tints behind sun and light alike. */
static void
draw_tints (const FfDayChart *chart, cairo_t *cr)
{
  for (guint i = 0; i < chart->phases->len; i++)
    {
      const FfChartPhase *phase = &g_array_index (chart->phases, FfChartPhase, i);

      cairo_rectangle (cr, phase->left, chart->sky.y, phase->right - phase->left,
                       chart->sky.height);
      ff_colour_set (cr, phase_colour (&chart->palette, phase->phase));
      cairo_fill (cr);
    }
}

/* Without greys each band is bounded by dotted verticals and lies as a strip of slanting lines
 * under the horizon, closer the darker it is; night is solid. */
static void
draw_strips (const FfDayChart *chart, cairo_t *cr)
{
  const double dots[] = { chart->palette.hair * chart->em, 2.5 * chart->palette.hair * chart->em };
  double em = chart->em;

  cairo_save (cr);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, chart->palette.hair * em);
  for (guint i = 0; i < chart->phases->len; i++)
    {
      const FfChartPhase *phase = &g_array_index (chart->phases, FfChartPhase, i);
      cairo_rectangle_t strip = { phase->left, chart->sun.y + chart->sun.height - 0.45 * em,
                                  phase->right - phase->left, 0.45 * em };

      if (phase->phase == FF_PHASE_LOW || phase->phase == FF_PHASE_TWILIGHT)
        ff_shape_slants (cr, &strip, (phase->phase == FF_PHASE_LOW ? 0.6 : 0.25) * em);
      cairo_stroke (cr);
      if (phase->phase == FF_PHASE_NIGHT)
        cairo_rectangle (cr, strip.x, strip.y, strip.width, strip.height);
      cairo_fill (cr);
    }
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  for (guint i = 1; i < chart->phases->len; i++)
    {
      double x = g_array_index (chart->phases, FfChartPhase, i).left;

      ff_shape_line (cr, x, chart->sky.y, x, chart->sky.y + chart->sky.height);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The area between curve and horizon, as engravers do where there is no tint. */
static void
fill_sun (const FfDayChart *chart, cairo_t *cr)
{
  GArray *curve = chart->sun_curve;
  const FfChartPoint *first = &g_array_index (curve, FfChartPoint, 0);
  const FfChartPoint *last = &g_array_index (curve, FfChartPoint, curve->len - 1);

  cairo_save (cr);
  cairo_rectangle (cr, chart->sun.x, chart->sun.y, chart->sun.width,
                   MAX (chart->horizon - chart->sun.y, 0));
  cairo_clip (cr);
  add_curve (cr, curve);
  cairo_line_to (cr, last->x, chart->sun.y + chart->sun.height);
  cairo_line_to (cr, first->x, chart->sun.y + chart->sun.height);
  cairo_close_path (cr);
  if (chart->palette.hatched)
    {
      cairo_clip (cr);
      for (double x = chart->sun.x; x < chart->sun.x + chart->sun.width; x += 0.5 * chart->em)
        ff_shape_line (cr, x, chart->sun.y, x, chart->horizon);
      ff_colour_set (cr, chart->palette.ink);
      cairo_set_line_width (cr, chart->palette.hair * chart->em);
      cairo_stroke (cr);
    }
  ff_colour_set (cr, chart->palette.sun);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
draw_suns (const FfDayChart *chart, cairo_t *cr)
{
  for (guint i = 0; i < chart->suns->len; i++)
    {
      const FfChartPoint *sun = &g_array_index (chart->suns, FfChartPoint, i);

      if (sun->y >= chart->horizon)
        ff_shape_half_sun (cr, sun->x, sun->y, chart->sun_radius);
      else
        ff_shape_disc (cr, sun->x, sun->y, 0.8 * chart->sun_radius);
    }
  ff_colour_set (cr, chart->palette.sun_line);
  cairo_fill (cr);
}

static void
draw_sun (const FfDayChart *chart, cairo_t *cr)
{
  if (chart->sun_curve->len < 2)
    return;
  fill_sun (chart, cr);
  stroke_curve (chart, cr, chart->sun_curve, chart->palette.sun_line, chart->palette.line);
  ff_shape_line (cr, chart->axis.left, chart->horizon, chart->axis.right, chart->horizon);
  ff_colour_set (cr, chart->palette.soft);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
  draw_suns (chart, cr);
}

/* There along the high edge and back along the low one. */
static void
fill_spread (const FfDayChart *chart, cairo_t *cr)
{
  add_curve (cr, chart->high_curve);
  for (guint i = chart->low_curve->len; i > 0; i--)
    {
      const FfChartPoint *point = &g_array_index (chart->low_curve, FfChartPoint, i - 1);

      if (isfinite (point->y))
        cairo_line_to (cr, point->x, point->y);
    }
  cairo_close_path (cr);
  ff_colour_set_alpha (cr, chart->palette.spread, 0.75);
  cairo_fill (cr);
}

static void
draw_spread (const FfDayChart *chart, cairo_t *cr)
{
  const double dots[] = { 0.16 * chart->em, 0.2 * chart->em };

  if (!chart->palette.hatched)
    {
      fill_spread (chart, cr);
      return;
    }
  cairo_save (cr);
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  stroke_curve (chart, cr, chart->high_curve, chart->palette.spread, chart->palette.hair);
  stroke_curve (chart, cr, chart->low_curve, chart->palette.spread, chart->palette.hair);
  cairo_restore (cr);
}

static void
draw_dots (const FfDayChart *chart, cairo_t *cr)
{
  for (guint i = 0; i < chart->dots->len; i++)
    {
      const FfChartPoint *dot = &g_array_index (chart->dots, FfChartPoint, i);

      ff_shape_disc (cr, dot->x, dot->y, 0.24 * chart->em);
    }
  ff_colour_set (cr, chart->palette.paper);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.light);
  cairo_set_line_width (cr, chart->palette.line * chart->em);
  cairo_stroke (cr);
}

/* A lozenge, so that it is not taken for a round value. */
static void
draw_readings (const FfDayChart *chart, cairo_t *cr)
{
  double half = 0.5 * chart->em;

  for (guint i = 0; i < chart->readings->len; i++)
    {
      const FfChartPoint *mark = &g_array_index (chart->readings, FfChartPoint, i);

      cairo_move_to (cr, mark->x, mark->y - half);
      cairo_line_to (cr, mark->x + half, mark->y);
      cairo_line_to (cr, mark->x, mark->y + half);
      cairo_line_to (cr, mark->x - half, mark->y);
      cairo_close_path (cr);
    }
  ff_colour_set (cr, chart->palette.light);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.paper);
  cairo_set_line_width (cr, chart->palette.line * chart->em);
  cairo_stroke (cr);
}

void
ff_chart_draw_sky (const FfDayChart *chart, cairo_t *cr)
{
  if (!chart->palette.hatched)
    draw_tints (chart, cr);
  draw_sun (chart, cr);
  if (chart->palette.hatched)
    draw_strips (chart, cr);
  if (chart->light_curve->len < 2)
    return;
  draw_spread (chart, cr);
  stroke_curve (chart, cr, chart->light_curve, chart->palette.light, 1.4 * chart->palette.line);
  draw_dots (chart, cr);
  draw_readings (chart, cr);
}
