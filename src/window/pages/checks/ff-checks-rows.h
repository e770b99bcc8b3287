/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One list of the day as a row: shape, title, where its run stands. */
#pragma once

#include "ff-run-words.h"

#include <gtk/gtk.h>

GtkWidget *ff_checks_row_new (const FfDayCheck *check, GTimeZone *zone);

/* "held since 16:42 at Filter · 2 of 7 · 1 deferred". */
char *ff_checks_row_words (const FfDayCheck *check,
                           GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;
