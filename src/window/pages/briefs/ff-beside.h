/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two widgets, the first of a width of its own beside the second where there is room for both, else
 * over it. Widths are in em, so that larger text stacks them sooner. "stacked" is notified from an
 * idle, never inside an allocation. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_BESIDE (ff_beside_get_type ())
G_DECLARE_FINAL_TYPE (FfBeside, ff_beside, FF, BESIDE, GtkWidget)

gboolean ff_beside_get_stacked (FfBeside *self);
