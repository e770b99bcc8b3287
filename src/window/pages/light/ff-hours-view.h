/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The need over the day and the hours of each filter, on the screen. Left and Right go through the
 * day by five minutes, Page Up and Page Down by an hour; so does a tap. Signal "picked" (gint64 at).
 */
#pragma once

#include <gtk/gtk.h>

#include "ff-light-study.h"

#define FF_TYPE_HOURS_VIEW (ff_hours_view_get_type ())
G_DECLARE_FINAL_TYPE (FfHoursView, ff_hours_view, FF, HOURS_VIEW, GtkWidget)

/* Borrows the study, which has to stay until the next call; NULL: nothing is shown. */
void ff_hours_view_show (FfHoursView *self, const FfLightStudy *study, gint64 at);
