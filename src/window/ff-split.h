/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two sides, side by side where there is room. Below `collapse-width`, or where the sides don't
 * fit, either only the content with a bar under it (when it has a bar), or one side at a time (then
 * `show-content` says which). "collapsed" is notified from an idle, never inside an allocation. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_SPLIT (ff_split_get_type ())
G_DECLARE_FINAL_TYPE (FfSplit, ff_split, FF, SPLIT, GtkWidget)

GtkWidget *ff_split_new (void);
gboolean ff_split_get_collapsed (FfSplit *self);
gboolean ff_split_get_show_content (FfSplit *self);
void ff_split_set_show_content (FfSplit *self, gboolean show_content);
