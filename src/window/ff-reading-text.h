/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is typed of a light reading, as values. */
#pragma once

#include <glib.h>

#include "ff-day-reading.h"
#include "ff-frame.h"

/* "16:42" on the day of the job. Error: FF_ERROR_INPUT. */
gboolean ff_reading_text_time (const FfDay *day,
                               const char *text,
                               gint64 *ret_at,
                               GError **error);

/* The clock of the day for an instant; empty on another day, where it would mislead. */
char *ff_reading_text_clock (const FfDay *day, gint64 at) G_GNUC_WARN_UNUSED_RESULT;

/* The filter that was fitted: nothing, the label of one of the items (as measured, where it was),
 * a number of stops, or what filters are called (ND8). `ret_said` is what was understood. Error:
 * FF_ERROR_INPUT. */
gboolean ff_reading_text_filter (GPtrArray *items,
                                 const char *text,
                                 double *ret_stops,
                                 char **ret_said,
                                 GError **error);

/* A test picture as the light it saw, through so many stops of filter. */
void ff_reading_text_frame (const FfFrame *frame, FfReadingEntry *entry);

/* "EV 14.3: −0.3 stop against the estimate; holds while the sky stays the same (clear)." */
char *ff_reading_text_says (const FfDay *day, const FfReading *reading) G_GNUC_WARN_UNUSED_RESULT;
