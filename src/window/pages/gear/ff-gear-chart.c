/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-looks.h"
#include "ff-number.h"

#define MARGIN 22.0
#define DOT 3.5

typedef struct {
  GArray *times, *values;
  double low, high;
  char *words;
} Series;

static void
series_free (gpointer data)
{
  Series *series = data;

  g_array_unref (series->times);
  g_array_unref (series->values);
  g_free (series->words);
  g_free (series);
}

static void
place_of (const Series *series, guint i, int width, int height, double *x, double *y)
{
  gint64 first = g_array_index (series->times, gint64, 0);
  gint64 last = g_array_index (series->times, gint64, series->times->len - 1);
  double along = last > first ? (double) (g_array_index (series->times, gint64, i) - first)
                                    / (double) (last - first)
                              : 0.5;
  double up = series->high > series->low
                  ? (g_array_index (series->values, double, i) - series->low)
                        / (series->high - series->low)
                  : 0.5;

  *x = MARGIN + along * (width - 2 * MARGIN);
  *y = height - MARGIN - up * (height - 2 * MARGIN);
}

static void
draw_number (GtkWidget *chart, cairo_t *cr, double value, double y)
{
  g_autofree char *text = ff_number_format (value, 1);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (chart, text);
  int text_height;

  pango_layout_get_pixel_size (layout, NULL, &text_height);
  cairo_move_to (cr, 0, y - text_height / 2.0);
  pango_cairo_show_layout (cr, layout);
}

static void
draw (GtkDrawingArea *chart, cairo_t *cr, int width, int height, gpointer data)
{
  const Series *series = data;
  GdkRGBA ink;
  double x, y;

  ink = ff_looks_hue (FF_HUE_INK);
  gdk_cairo_set_source_rgba (cr, &ink);
  cairo_set_line_width (cr, 2);
  for (guint i = 0; i < series->values->len; i++)
    {
      place_of (series, i, width, height, &x, &y);
      cairo_line_to (cr, x + MARGIN / 2, y);
    }
  cairo_stroke (cr);
  for (guint i = 0; i < series->values->len; i++)
    {
      place_of (series, i, width, height, &x, &y);
      cairo_arc (cr, x + MARGIN / 2, y, DOT, 0, 2 * G_PI);
      cairo_fill (cr);
    }
  draw_number (GTK_WIDGET (chart), cr, series->low, height - MARGIN);
  draw_number (GTK_WIDGET (chart), cr, series->high, MARGIN);
}

GtkWidget *
ff_gear_chart_new (void)
{
  GtkWidget *chart = gtk_drawing_area_new ();

  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (chart), 110);
  gtk_widget_set_visible (chart, FALSE);
  return chart;
}

void
ff_gear_chart_set (GtkWidget *chart, GArray *times, GArray *values, const char *words)
{
  Series *series;
  g_autofree char *spoken = NULL;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  gtk_widget_set_visible (chart, values->len >= 3);
  if (values->len < 3)
    return;
  series = g_new0 (Series, 1);
  series->times = g_array_ref (times);
  series->values = g_array_ref (values);
  series->words = g_strdup (words);
  series->low = G_MAXDOUBLE;
  series->high = -G_MAXDOUBLE;
  for (guint i = 0; i < values->len; i++)
    {
      series->low = fmin (series->low, g_array_index (values, double, i));
      series->high = fmax (series->high, g_array_index (values, double, i));
    }
  low = ff_number_format (series->low, 1);
  high = ff_number_format (series->high, 1);
  /* Translators: a chart said in words: what it shows, how many values, lowest and highest. */
  spoken = g_strdup_printf (_ ("%s: %u values from %s to %s"), words, values->len, low, high);
  gtk_accessible_update_property (GTK_ACCESSIBLE (chart), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_set_tooltip_text (chart, spoken);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (chart), draw, series, series_free);
}
