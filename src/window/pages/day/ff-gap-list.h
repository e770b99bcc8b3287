/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is still missing, each line a button that leads to where it is mended. Signal "go" (const
 * char *goal, gboolean is_page). */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_GAP_LIST (ff_gap_list_get_type ())
G_DECLARE_FINAL_TYPE (FfGapList, ff_gap_list, FF, GAP_LIST, GtkWidget)

/* An array of FfDayGap. */
void ff_gap_list_show (FfGapList *self, GPtrArray *gaps);
