/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A step wedge: neutral blocks from none to seven stops, side by side. It stands under the name of
 * the program and says nothing but whose window this is. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_WEDGE (ff_wedge_get_type ())
G_DECLARE_FINAL_TYPE (FfWedge, ff_wedge, FF, WEDGE, GtkWidget)
