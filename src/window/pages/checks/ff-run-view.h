/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list as it is run, by the keyboard alone: one key an item, the warnings before the item they
 * guard, what is done and open by shape and word, no clock. Every answer is on the disk before the
 * next item comes up.
 *
 * Signals: "left" when the person goes back to all lists. */
#pragma once

#include "ff-keeper-lists.h"

#include <gtk/gtk.h>

#define FF_TYPE_RUN_VIEW (ff_run_view_get_type ())
G_DECLARE_FINAL_TYPE (FfRunView, ff_run_view, FF, RUN_VIEW, GtkBox)

GtkWidget *ff_run_view_new (FfKeeper *keeper);

/* Takes the run over; NULL: none. */
void ff_run_view_take (FfRunView *self, FfDayRun *run);
FfDayRun *ff_run_view_get (FfRunView *self);

/* Nobody has touched a key since `idle_s` seconds: the run holds itself. For the tests as well. */
void ff_run_view_idle (FfRunView *self);
