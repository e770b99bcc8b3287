/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sun-arc.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-looks.h"
#include "ff-sun.h"

#define N_POINTS  97 /* a quarter of an hour apart */
#define HEIGHT    132
#define FOOT      22 /* for the hours, at ordinary size of text */
#define BAR       7  /* the hours in the air */
#define DAY_MIN   (24 * 60)
#define DEPTH_DEG 14.0 /* how much of the night is shown */
#define THIN      2.0  /* no line is thinner: the screen may stand in the sun */

struct _FfSunArc {
  GtkWidget parent_instance;

  double altitude_deg[N_POINTS];
  int first_off, all_down;
};

G_DEFINE_FINAL_TYPE (FfSunArc, ff_sun_arc, GTK_TYPE_WIDGET)

/* Where things stand in the picture. */
typedef struct {
  const FfSunArc *arc;
  cairo_t *cr;
  double width, height; /* of the sky, without the foot */
  double top_deg;
  gboolean rtl;
} Sky;

static double
x_of (const Sky *sky, double minutes)
{
  return sky->width * minutes / DAY_MIN;
}

static double
y_of (const Sky *sky, double degrees)
{
  const double shown = CLAMP (degrees, -DEPTH_DEG, sky->top_deg);

  return sky->height * (sky->top_deg - shown) / (sky->top_deg + DEPTH_DEG);
}

static void
set_colour (cairo_t *cr, FfHue colour, double alpha)
{
  GdkRGBA rgba = ff_looks_hue (colour);

  cairo_set_source_rgba (cr, rgba.red, rgba.green, rgba.blue, alpha);
}

/* ---- Layers ---- */

static void
path_of_sun (const Sky *sky)
{
  for (int i = 0; i < N_POINTS; i++)
    cairo_line_to (sky->cr, x_of (sky, i * DAY_MIN / (double) (N_POINTS - 1)),
                   y_of (sky, sky->arc->altitude_deg[i]));
}

static void
clip_between (const Sky *sky, double high_deg, double low_deg)
{
  cairo_rectangle (sky->cr, 0, y_of (sky, high_deg), sky->width,
                   y_of (sky, low_deg) - y_of (sky, high_deg));
  cairo_clip (sky->cr);
}

/* The day under the sun's way, and in it the low sun. */
static void
fill_day (const Sky *sky)
{
  cairo_save (sky->cr);
  clip_between (sky, sky->top_deg, 0);
  cairo_move_to (sky->cr, 0, sky->height);
  path_of_sun (sky);
  cairo_line_to (sky->cr, sky->width, sky->height);
  cairo_close_path (sky->cr);
  set_colour (sky->cr, FF_HUE_OCHRE_WASH, 1);
  cairo_fill (sky->cr);
  cairo_restore (sky->cr);
}

static void
stroke_part (const Sky *sky, double high_deg, double low_deg, FfHue colour, double width)
{
  cairo_save (sky->cr);
  clip_between (sky, high_deg, low_deg);
  path_of_sun (sky);
  set_colour (sky->cr, colour, 1);
  cairo_set_line_width (sky->cr, width);
  cairo_stroke (sky->cr);
  cairo_restore (sky->cr);
}

static void
draw_horizon (const Sky *sky)
{
  const double y = floor (y_of (sky, 0)) + 0.5;

  set_colour (sky->cr, FF_HUE_SLATE, 1);
  cairo_set_line_width (sky->cr, THIN);
  cairo_move_to (sky->cr, 0, y);
  cairo_line_to (sky->cr, sky->width, y);
  cairo_stroke (sky->cr);
}

static void
draw_hours_in_air (const Sky *sky)
{
  const FfSunArc *arc = sky->arc;
  double from, to;

  if (arc->first_off < 0 || arc->all_down <= arc->first_off || arc->first_off >= DAY_MIN)
    return;
  from = x_of (sky, arc->first_off);
  to = x_of (sky, MIN (arc->all_down, DAY_MIN));
  set_colour (sky->cr, FF_HUE_CHESTNUT, 1);
  cairo_rectangle (sky->cr, from, sky->height - BAR, to - from, BAR);
  cairo_fill (sky->cr);
}

/* What the bar is, on the side of it where there is room. */
static void
name_bar (GtkWidget *widget, const Sky *sky)
{
  const FfSunArc *arc = sky->arc;
  /* Translators: beside a bar from the first take-off to the last landing of the day. */
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, _ ("in the air"));
  double left, right;
  int width, height;

  if (arc->first_off < 0 || arc->all_down <= arc->first_off || arc->first_off >= DAY_MIN)
    return;
  pango_layout_get_pixel_size (layout, &width, &height);
  left = x_of (sky, sky->rtl ? DAY_MIN - MIN (arc->all_down, DAY_MIN) : arc->first_off);
  right = x_of (sky, sky->rtl ? DAY_MIN - arc->first_off : MIN (arc->all_down, DAY_MIN));
  cairo_move_to (sky->cr, left > width + 6 ? left - width - 6 : right + 6,
                 sky->height - BAR / 2.0 - height / 2.0);
  set_colour (sky->cr, FF_HUE_CHESTNUT_INK, 1);
  pango_cairo_show_layout (sky->cr, layout);
}

/* Words are not mirrored: where the picture is, they are put at the mirrored place. */
static void
draw_hours (GtkWidget *widget, const Sky *sky)
{
  for (int hour = 0; hour <= 24; hour += 6)
    {
      g_autofree char *text = g_strdup_printf ("%02d", hour);
      g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, text);
      const double x = sky->rtl ? sky->width - x_of (sky, hour * 60) : x_of (sky, hour * 60);
      int width;

      pango_layout_get_pixel_size (layout, &width, NULL);
      cairo_move_to (sky->cr, CLAMP (x - width / 2.0, 0, sky->width - width), sky->height + 3);
      set_colour (sky->cr, FF_HUE_SOFT, 1);
      pango_cairo_show_layout (sky->cr, layout);
    }
}

/* ---- Overrides ---- */

static double
highest (const FfSunArc *self)
{
  double top = 20;

  for (int i = 0; i < N_POINTS; i++)
    top = MAX (top, self->altitude_deg[i]);
  return top + 4;
}

static int
foot_height (GtkWidget *widget)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, "24");
  int height;

  pango_layout_get_pixel_size (layout, NULL, &height);
  return MAX (height + 4, FOOT);
}

static void
ff_sun_arc_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FfSunArc *self = FF_SUN_ARC (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  Sky sky = { self,           NULL,
              width,          height - foot_height (widget),
              highest (self), gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL };

  sky.cr = gtk_snapshot_append_cairo (snapshot,
                                      &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  cairo_save (sky.cr);
  if (sky.rtl)
    {
      cairo_translate (sky.cr, width, 0);
      cairo_scale (sky.cr, -1, 1);
    }
  cairo_set_line_join (sky.cr, CAIRO_LINE_JOIN_ROUND);
  fill_day (&sky);
  stroke_part (&sky, sky.top_deg, FF_LOW_SUN_DEG, FF_HUE_OCHRE, 3);
  stroke_part (&sky, FF_LOW_SUN_DEG, 0, FF_HUE_OCHRE, 6);
  stroke_part (&sky, 0, -DEPTH_DEG + 0.1, FF_HUE_SLATE, THIN);
  draw_horizon (&sky);
  draw_hours_in_air (&sky);
  cairo_restore (sky.cr);
  draw_hours (widget, &sky);
  name_bar (widget, &sky);
  cairo_destroy (sky.cr);
}

static void
ff_sun_arc_measure (GtkWidget *widget,
                    GtkOrientation orientation,
                    int for_size,
                    int *minimum,
                    int *natural,
                    int *minimum_baseline,
                    int *natural_baseline)
{
  if (orientation == GTK_ORIENTATION_VERTICAL)
    *minimum = *natural = HEIGHT + foot_height (widget) - FOOT;
  else
    {
      *minimum = 120;
      *natural = 280;
    }
}

static void
ff_sun_arc_class_init (FfSunArcClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = ff_sun_arc_snapshot;
  widget_class->measure = ff_sun_arc_measure;
  gtk_widget_class_set_css_name (widget_class, "sunarc");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ff_sun_arc_init (FfSunArc *self)
{
  self->first_off = self->all_down = FF_NO_CLOCK;
  ff_looks_redraw (GTK_WIDGET (self));
}

/* ---- Public ---- */

void
ff_sun_arc_show (
    FfSunArc *self, const FfDayWordsQuery *query, int first_off, int all_down, const char *spoken)
{
  FfSunTrack track;
  gint64 from, to;

  g_return_if_fail (FF_IS_SUN_ARC (self));
  ff_day_bounds (query->date, query->zone, &from, &to);
  /* On a day of 23 or 25 hours the clock of the picture is that of its first hours. */
  ff_sun_track_init (&track, (double) from, (double) from + 86400, &query->site);
  for (int i = 0; i < N_POINTS; i++)
    self->altitude_deg[i]
        = ff_sun_track_altitude_deg (&track, (double) from + i * 86400.0 / (N_POINTS - 1));
  self->first_off = first_off;
  self->all_down = all_down;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
