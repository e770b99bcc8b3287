/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shapes.h"

#include <math.h>

void
ff_shape_rounded (cairo_t *cr, const cairo_rectangle_t *box, double radius)
{
  double r = MIN (radius, MIN (box->width, box->height) / 2);
  double right = box->x + box->width, bottom = box->y + box->height;

  cairo_new_sub_path (cr);
  cairo_arc (cr, right - r, box->y + r, r, -G_PI_2, 0);
  cairo_arc (cr, right - r, bottom - r, r, 0, G_PI_2);
  cairo_arc (cr, box->x + r, bottom - r, r, G_PI_2, G_PI);
  cairo_arc (cr, box->x + r, box->y + r, r, G_PI, 3 * G_PI_2);
  cairo_close_path (cr);
}

void
ff_shape_battery (cairo_t *cr, const cairo_rectangle_t *box)
{
  double pole = box->height * 0.16;
  cairo_rectangle_t body = { box->x, box->y, box->width - pole, box->height };

  ff_shape_rounded (cr, &body, box->height * 0.2);
  cairo_rectangle (cr, body.x + body.width, box->y + box->height * 0.3, pole, box->height * 0.4);
}

void
ff_shape_disc (cairo_t *cr, double x, double y, double radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
  cairo_close_path (cr);
}

void
ff_shape_half_sun (cairo_t *cr, double x, double y, double radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, radius, G_PI, 2 * G_PI);
  cairo_close_path (cr);
}

void
ff_shape_slants (cairo_t *cr, const cairo_rectangle_t *box, double gap)
{
  double right = box->x + box->width, bottom = box->y + box->height;

  /* Each line leaves the bottom edge at `foot` and rises one to one to the right. */
  for (double foot = box->x - box->height + gap / 2; foot < right; foot += gap)
    {
      double cut = MAX (0, box->x - foot);
      double rise = MIN (box->height, right - foot);

      if (rise > cut)
        ff_shape_line (cr, foot + cut, bottom - cut, foot + rise, bottom - rise);
    }
}

void
ff_shape_line (cairo_t *cr, double x1, double y1, double x2, double y2)
{
  cairo_move_to (cr, x1, y1);
  cairo_line_to (cr, x2, y2);
}

void
ff_shape_triangle (cairo_t *cr, double x, double y, double size)
{
  cairo_move_to (cr, x - size / 2, y);
  cairo_line_to (cr, x + size / 2, y);
  cairo_line_to (cr, x, y - size);
  cairo_close_path (cr);
}

void
ff_shape_padlock_body (cairo_t *cr, double x, double y, double size)
{
  cairo_rectangle_t body = { x - 0.4 * size, y - 0.05 * size, 0.8 * size, 0.55 * size };

  ff_shape_rounded (cr, &body, 0.08 * size);
}

void
ff_shape_padlock_bow (cairo_t *cr, double x, double y, double size)
{
  double radius = 0.23 * size, top = y - 0.2 * size;

  cairo_move_to (cr, x - radius, y);
  cairo_line_to (cr, x - radius, top);
  cairo_arc (cr, x, top, radius, G_PI, 2 * G_PI);
  cairo_line_to (cr, x + radius, y);
}

gboolean
ff_boxes_overlap (const cairo_rectangle_t *a, const cairo_rectangle_t *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height
         && b->y < a->y + a->height;
}
