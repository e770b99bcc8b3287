/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A light reading of the open job, by keys alone: time, how it was taken, the value, the filter that
 * was fitted; what it means is said with every keystroke. Enter adds it, Escape leaves. Below stand
 * the readings of the day, each of which can be set aside with a reason. */
#pragma once

#include <adwaita.h>

#include "ff-keeper.h"

#define FF_TYPE_READING_DIALOG (ff_reading_dialog_get_type ())
G_DECLARE_FINAL_TYPE (FfReadingDialog, ff_reading_dialog, FF, READING_DIALOG, AdwWindow)

/* Opens it over the window that `parent` is in. `shot_id` is the shot that is looked at: NULL for
 * none. With no job open nothing happens and NULL is returned. */
FfReadingDialog *ff_reading_dialog_present (GtkWidget *parent,
                                            FfKeeper *keeper,
                                            const char *shot_id);

/* Reads a test picture as if it had been picked; comes back before it is read. */
void ff_reading_dialog_take_picture (FfReadingDialog *self, const char *path);
