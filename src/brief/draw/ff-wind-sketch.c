/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-wind-sketch.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-labels.h"
#include "ff-shapes.h"

#define RADIANS (G_PI / 180.0)
#define SUN_RADIUS 5.0
#define STROKE 1.6
#define ARROW 3.2
#define HEAD 10.0
#define RIM_SHARE 0.88 /* of half the side: the sun stands on it */

typedef struct {
  double x, y, radius;
  FfLabels *labels;
  const FfPalette *palette;
} Sketch;

static void
at (const Sketch *sketch, double bearing_deg, double radius, double *ret_x, double *ret_y)
{
  *ret_x = sketch->x + radius * sin (bearing_deg * RADIANS);
  *ret_y = sketch->y - radius * cos (bearing_deg * RADIANS);
}

static void
place (const Sketch *sketch, const char *text, FfTextStyle style, double bearing, double radius)
{
  FfLabel label = { .text = text, .style = style, .colour = sketch->palette->ink, .align = 0.5 };

  label.size = 1.0;
  at (sketch, bearing, radius, &label.x, &label.y);
  ff_labels_place (sketch->labels, &label, NULL);
}

static void
draw_rim (cairo_t *cr, const Sketch *sketch)
{
  cairo_set_line_width (cr, STROKE);
  cairo_new_sub_path (cr);
  cairo_arc (cr, sketch->x, sketch->y, sketch->radius, 0, 2 * G_PI);
  cairo_stroke (cr);
  for (int bearing = 0; bearing < 360; bearing += 90)
    {
      double x1, y1, x2, y2;

      at (sketch, bearing, sketch->radius - 4, &x1, &y1);
      at (sketch, bearing, sketch->radius, &x2, &y2);
      ff_shape_line (cr, x1, y1, x2, y2);
    }
  cairo_stroke (cr);
  /* Translators: the letter of north on a sketch. */
  place (sketch, _ ("N"), FF_TEXT_STRONG, 0, sketch->radius - 10);
}

/* A thick shaft through the middle, its head where the wind goes. */
static void
draw_wind (cairo_t *cr, const Sketch *sketch, double from_deg)
{
  const double to = from_deg + 180, reach = sketch->radius * 0.66;
  double x1, y1, x2, y2;

  if (isnan (from_deg))
    return;
  at (sketch, from_deg, reach, &x1, &y1);
  at (sketch, to, reach - HEAD / 2, &x2, &y2);
  cairo_set_line_width (cr, ARROW);
  ff_shape_line (cr, x1, y1, x2, y2);
  cairo_stroke (cr);
  at (sketch, to, reach + 2, &x1, &y1);
  cairo_move_to (cr, x1, y1);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_line_to (cr, x1 - HEAD * sin ((to + side * 28) * RADIANS),
                     y1 + HEAD * cos ((to + side * 28) * RADIANS));
    }
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* Open where the hours begin, full where they end. */
static void
draw_sun (cairo_t *cr, const Sketch *sketch, const FfCompassSun *sun, gboolean full)
{
  double x, y;

  if (sun->altitude_deg < -1)
    return;
  at (sketch, sun->azimuth_deg, sketch->radius, &x, &y);
  ff_shape_disc (cr, x, y, SUN_RADIUS);
  ff_colour_set (cr, full ? sketch->palette->ink : sketch->palette->paper);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, sketch->palette->ink);
  cairo_set_line_width (cr, STROKE);
  cairo_stroke (cr);
}

void
ff_wind_sketch_draw (cairo_t *cr,
                     const FfCompassFacts *facts,
                     const FfPalette *palette,
                     double width,
                     double height)
{
  const cairo_rectangle_t bounds = { 0, 0, width, height };
  g_autoptr (FfLabels) labels = ff_labels_new (palette, NULL, 1.0, &bounds);
  const Sketch sketch = { width / 2, height / 2, MIN (width, height) / 2 * RIM_SHARE, labels,
                          palette };
  const FfCompassSun *last = NULL;

  cairo_save (cr);
  ff_colour_set (cr, palette->ink);
  draw_rim (cr, &sketch);
  draw_wind (cr, &sketch, facts->wind_from_deg);
  if (facts->suns->len > 0)
    draw_sun (cr, &sketch, g_ptr_array_index (facts->suns, 0), FALSE);
  for (guint i = 1; i < facts->suns->len; i++)
    if (((FfCompassSun *) g_ptr_array_index (facts->suns, i))->altitude_deg >= -1)
      last = g_ptr_array_index (facts->suns, i);
  if (last != NULL)
    draw_sun (cr, &sketch, last, TRUE);
  ff_labels_draw (labels, cr);
  cairo_restore (cr);
}
