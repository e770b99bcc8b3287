/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-scroll.h"

/* Ticks come before the layout of a frame: this one's, then one that sees what it has done. */
#define FRAMES 2

static void
bring_into_view (GtkWidget *widget)
{
  GtkWidget *scrolled = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *scroll;
  GtkWidget *body;
  graphene_rect_t box;

  if (scrolled == NULL)
    return;
  scroll = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled));
  body = gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (scrolled));
  if (GTK_IS_VIEWPORT (body))
    body = gtk_viewport_get_child (GTK_VIEWPORT (body));
  if (gtk_widget_compute_bounds (widget, body, &box))
    gtk_adjustment_clamp_page (scroll, box.origin.y, box.origin.y + box.size.height);
}

static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  int *left = data;

  if (--*left > 0)
    return G_SOURCE_CONTINUE;
  bring_into_view (widget);
  return G_SOURCE_REMOVE;
}

void
ff_scroll_to (GtkWidget *widget)
{
  int *left = g_new (int, 1);

  *left = FRAMES + 1;
  gtk_widget_add_tick_callback (widget, on_frame, left, g_free);
}
