/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The items of one section of a run as rows: warnings, shape, challenge, answer. */
#pragma once

#include "ff-run-words.h"

#include <gtk/gtk.h>

/* Fills a box anew with the section of the current item; the current row is returned, or NULL. */
GtkWidget *ff_run_rows_fill (GtkBox *box, FfKeeper *keeper, const FfDayRun *run);
