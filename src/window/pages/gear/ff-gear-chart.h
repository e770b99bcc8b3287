/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small chart of one figure over time: dots joined by a line, the lowest and highest written. It is
 * also said as words. Below three values there is none. */
#pragma once

#include <gtk/gtk.h>

GtkWidget *ff_gear_chart_new (void);

/* `times` (gint64) and `values` (double), as many of each; `words` names the figure and its unit. */
void ff_gear_chart_set (GtkWidget *chart, GArray *times, GArray *values, const char *words);
