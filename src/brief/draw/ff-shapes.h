/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Small paths that several drawings share. Each adds to the current path and paints nothing. */
#pragma once

#include <cairo.h>
#include <glib.h>

/* A box with rounded corners; a radius that does not fit is cut to half the short side. */
void ff_shape_rounded (cairo_t *cr, const cairo_rectangle_t *box, double radius);

/* A battery lying down, its pole at the right within the box. */
void ff_shape_battery (cairo_t *cr, const cairo_rectangle_t *box);

void ff_shape_disc (cairo_t *cr, double x, double y, double radius);

/* The upper half of the sun on a horizon at y. */
void ff_shape_half_sun (cairo_t *cr, double x, double y, double radius);

/* Slanting lines over a box, `gap` apart, cut at its edges. */
void ff_shape_slants (cairo_t *cr, const cairo_rectangle_t *box, double gap);

/* A line between two points. */
void ff_shape_line (cairo_t *cr, double x1, double y1, double x2, double y2);

/* A warning's triangle, standing on y and as wide as high. */
void ff_shape_triangle (cairo_t *cr, double x, double y, double size);

/* A closed padlock in the middle of (x, y) and `size` high: its body as a path to fill, its bow as
 * one to stroke. */
void ff_shape_padlock_body (cairo_t *cr, double x, double y, double size);
void ff_shape_padlock_bow (cairo_t *cr, double x, double y, double size);

gboolean ff_boxes_overlap (const cairo_rectangle_t *a, const cairo_rectangle_t *b);
