/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pixels.h"

int
ff_least_width (GtkWidget *child)
{
  int least;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  return least;
}

double
ff_em_in_pixels (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = pango_font_description_get_size (font);

  if (!pango_font_description_get_size_is_absolute (font))
    size *= pango_cairo_context_get_resolution (context) / 72;
  return size / PANGO_SCALE;
}

PangoFontDescription *
ff_font_in_pixels (GtkWidget *widget, double *ret_em)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontDescription *font
      = pango_font_description_copy (pango_context_get_font_description (context));

  *ret_em = ff_em_in_pixels (widget);
  pango_font_description_set_absolute_size (font, *ret_em * PANGO_SCALE);
  return font;
}
