/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What happened to an item: the new state, why, and for one that is out with whom and until when.
 * It stands in the page, is entered as a whole and then kept: events are never changed. Enter
 * anywhere in it enters; Escape leaves. Signal "done" when either happened. */
#pragma once

#include <gtk/gtk.h>

#include "ff-item.h"
#include "ff-keeper.h"

#define FF_TYPE_GEAR_STATE (ff_gear_state_get_type ())
G_DECLARE_FINAL_TYPE (FfGearState, ff_gear_state, FF, GEAR_STATE, GtkWidget)

void ff_gear_state_set_keeper (FfGearState *self, FfKeeper *keeper);

/* Begins anew for an item, on the state that it most likely takes next. */
void ff_gear_state_begin (FfGearState *self, const FfItem *item);
