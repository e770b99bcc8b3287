/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart on the screen. Left and Right choose a sortie, Home and End the first and last,
 * Enter opens it; so does a tap. The last picture stays until the next is laid out, and then the
 * two are swapped at once.
 *
 * Plus shows half as much of the day around the chosen sortie, Minus twice as much, 0 all of it; the
 * part moves along with what is chosen. The table is always of the whole day.
 *
 * Alt with Left or Right asks for the chosen sortie five minutes earlier or later.
 *
 * Signals: "chosen" (int line) when a person chooses another sortie, "opened" (int line) when it is
 * to be shown in full, "moved" (int minutes) when the chosen one is wanted at another time. */
#pragma once

#include <gtk/gtk.h>

#include "ff-answer.h"

#define FF_TYPE_CHART (ff_chart_get_type ())
G_DECLARE_FINAL_TYPE (FfChart, ff_chart, FF, CHART, GtkWidget)

/* Shows this answer's chart and keeps a reference. One without a plan changes nothing: what stood
 * there stays. */
void ff_chart_show (FfChart *self, FfAnswer *answer);

/* The chosen line, 0: none. Setting it emits nothing; one that is not there chooses none. */
int ff_chart_get_line (FfChart *self);
void ff_chart_set_line (FfChart *self, int line);

/* As the keys do: 1 closer, -1 further, 0 the whole day. How often the day is halved, 0: all of it is
 * shown. */
void ff_chart_zoom (FfChart *self, int by);
int ff_chart_get_zoom (FfChart *self);

/* The same as a table: FfChartRow, borrowed until it is drawn again; NULL before an answer. */
GPtrArray *ff_chart_table (FfChart *self);
