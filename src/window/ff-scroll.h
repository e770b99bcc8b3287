/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Brings a widget into view of the scrolled window around it, as soon as it has its place: one that
 * has just been shown or has grown gets it in the next frame. Without one around it nothing
 * happens. */
void ff_scroll_to (GtkWidget *widget);
