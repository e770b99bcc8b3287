/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page of one item: its label as written on it, its figures, its state, who uses it, its fields.
 * What can be done with it are actions of the page: "gear.duplicate", "gear.delete", "gear.use". */
#pragma once

#include <adwaita.h>

#include "ff-keeper.h"

#define FF_TYPE_GEAR_ITEM (ff_gear_item_get_type ())
G_DECLARE_FINAL_TYPE (FfGearItem, ff_gear_item, FF, GEAR_ITEM, AdwBin)

void ff_gear_item_set_keeper (FfGearItem *self, FfKeeper *keeper);

/* The item as it is now. */
void ff_gear_item_show (FfGearItem *self, const FfItem *item);

/* The focus goes to its first field, or to what happened to it. */
void ff_gear_item_edit (FfGearItem *self);
void ff_gear_item_change_state (FfGearItem *self);
