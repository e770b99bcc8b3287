/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One choice of a record out of a table of names: its name above, the choice under it. The signal
 * "picked" (int value) comes only when a person picks. */
#pragma once

#include <gtk/gtk.h>

#include "ff-names.h"

#define FF_TYPE_PICK (ff_pick_get_type ())
G_DECLARE_FINAL_TYPE (FfPick, ff_pick, FF, PICK, GtkWidget)

GtkWidget *ff_pick_new (const char *label, const FfNames *names);

/* The choices: a table of names, whose values are those of its enum; or texts counted from 0. */
void ff_pick_set_names (FfPick *self, const FfNames *names);
void ff_pick_set_texts (FfPick *self, const char *const *texts);

/* -1: none of them. */
int ff_pick_get_value (FfPick *self);
void ff_pick_set_value (FfPick *self, int value);
