/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sun-rose.h"

#include <math.h>

#include "ff-looks.h"

#define SIZE 92
#define RADIUS 34.0
#define SUN_RADIUS 7.0
#define HALF_VIEW_DEG 35.0 /* of the wedge; a sign for the direction, not the lens */
#define RADIANS(degrees) ((degrees) * (G_PI / 180.0))

struct _FfSunRose {
  GtkWidget parent_instance;

  double camera_deg, azimuth_deg, altitude_deg;
};

G_DEFINE_FINAL_TYPE (FfSunRose, ff_sun_rose, GTK_TYPE_WIDGET)

/* Drawing. Angles of Cairo run clockwise from the east, bearings from the north. */

static void
draw_ring (cairo_t *cr, double line)
{
  GdkRGBA slate = ff_looks_hue (FF_HUE_SLATE);

  gdk_cairo_set_source_rgba (cr, &slate);
  cairo_set_line_width (cr, line);
  cairo_arc (cr, 0, 0, RADIUS, 0, 2 * G_PI);
  cairo_stroke (cr);
  /* North: a longer mark, and none of the others needs a name. */
  for (int i = 0; i < 4; i++)
    {
      double from = i == 0 ? RADIUS - 9 : RADIUS - 4;

      cairo_move_to (cr, from * sin (i * G_PI / 2), -from * cos (i * G_PI / 2));
      cairo_line_to (cr, (RADIUS + 3) * sin (i * G_PI / 2), -(RADIUS + 3) * cos (i * G_PI / 2));
      cairo_set_line_width (cr, i == 0 ? line + 2 : line);
      cairo_stroke (cr);
    }
}

static void
draw_view (cairo_t *cr, double camera_deg)
{
  GdkRGBA fill = ff_looks_hue (FF_HUE_SLATE);
  double middle = RADIANS (camera_deg - 90);

  if (isnan (camera_deg))
    return;
  fill.alpha = ff_looks_now () == FF_LOOK_DAYLIGHT ? 1 : 0.45f;
  gdk_cairo_set_source_rgba (cr, &fill);
  cairo_move_to (cr, 0, 0);
  cairo_arc (cr, 0, 0, RADIUS - 5, middle - RADIANS (HALF_VIEW_DEG),
             middle + RADIANS (HALF_VIEW_DEG));
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_sun (cairo_t *cr, double azimuth_deg, double altitude_deg, double line)
{
  GdkRGBA ochre = ff_looks_hue (FF_HUE_OCHRE), sheet = ff_looks_hue (FF_HUE_SHEET);
  double away = altitude_deg > 0 ? RADIUS * cos (RADIANS (altitude_deg)) : RADIUS + 1;
  double x = away * sin (RADIANS (azimuth_deg)), y = -away * cos (RADIANS (azimuth_deg));

  cairo_arc (cr, x, y, SUN_RADIUS, 0, 2 * G_PI);
  gdk_cairo_set_source_rgba (cr, altitude_deg > 0 ? &ochre : &sheet);
  cairo_fill_preserve (cr);
  gdk_cairo_set_source_rgba (cr, altitude_deg > 0 ? &sheet : &ochre);
  cairo_set_line_width (cr, line);
  cairo_stroke (cr);
}

/* Overrides */

static void
ff_sun_rose_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfSunRose *self = FF_SUN_ROSE (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  double line = ff_looks_now () == FF_LOOK_DAYLIGHT ? 3 : 1.5;

  cairo_translate (cr, (double) width / 2, (double) height / 2);
  draw_view (cr, self->camera_deg);
  draw_ring (cr, line);
  draw_sun (cr, self->azimuth_deg, self->altitude_deg, MAX (line, 2));
  cairo_destroy (cr);
}

static void
ff_sun_rose_measure (GtkWidget *widget,
                     GtkOrientation orientation,
                     int for_size,
                     int *ret_minimum,
                     int *ret_natural,
                     int *ret_minimum_baseline,
                     int *ret_natural_baseline)
{
  *ret_minimum = *ret_natural = SIZE;
  *ret_minimum_baseline = *ret_natural_baseline = -1;
}

static void
ff_sun_rose_class_init (FfSunRoseClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = ff_sun_rose_snapshot;
  widget_class->measure = ff_sun_rose_measure;
  gtk_widget_class_set_css_name (widget_class, "sunrose");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_sun_rose_init (FfSunRose *self)
{
  self->camera_deg = NAN;
  ff_looks_redraw (GTK_WIDGET (self));
}

/* Public */

void
ff_sun_rose_show (FfSunRose *self,
                  double camera_deg,
                  double sun_azimuth_deg,
                  double sun_altitude_deg,
                  const char *words)
{
  g_return_if_fail (FF_IS_SUN_ROSE (self));
  self->camera_deg = camera_deg;
  self->azimuth_deg = sun_azimuth_deg;
  self->altitude_deg = sun_altitude_deg;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
