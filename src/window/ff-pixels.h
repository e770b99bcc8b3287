/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What widgets that draw or lay out for themselves ask of the toolkit. */
#pragma once

#include <gtk/gtk.h>

/* The least width of a child, in pixels. */
int ff_least_width (GtkWidget *child);

/* The widget's own font with its size in pixels, as a drawing takes it, so that it follows the size
 * of text that people have set; `ret_em` is that size. Owned. */
PangoFontDescription *ff_font_in_pixels (GtkWidget *widget,
                                         double *ret_em) G_GNUC_WARN_UNUSED_RESULT;

/* That size alone. */
double ff_em_in_pixels (GtkWidget *widget);
