/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of the gear: search as one types, all items by kind, one of them chosen. Signals: "chosen"
 * when a person chose another one (also by what the search leaves), "opened" when a row was
 * activated. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"

#define FF_TYPE_GEAR_INDEX (ff_gear_index_get_type ())
G_DECLARE_FINAL_TYPE (FfGearIndex, ff_gear_index, FF, GEAR_INDEX, GtkWidget)

void ff_gear_index_set_keeper (FfGearIndex *self, FfKeeper *keeper);

/* What there is now. An item that is gone gives its choice to the one in its place. */
void ff_gear_index_refresh (FfGearIndex *self);

/* The chosen item; NULL: there was none yet. Choosing one that is not there yet chooses it as soon as
 * it comes. */
const char *ff_gear_index_get_id (FfGearIndex *self);
void ff_gear_index_choose (FfGearIndex *self, const char *id);

void ff_gear_index_find (FfGearIndex *self);
void ff_gear_index_add (FfGearIndex *self);

/* New items, one line a kind: action "gear.new" with its token. */
GMenuModel *ff_gear_kinds_menu (void) G_GNUC_WARN_UNUSED_RESULT;
