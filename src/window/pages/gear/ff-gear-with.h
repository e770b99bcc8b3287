/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an item can't go without: entered once, on the page of the item that needs it. Labels with a
 * button that takes them away, and a field for one more. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"

#define FF_TYPE_GEAR_WITH (ff_gear_with_get_type ())
G_DECLARE_FINAL_TYPE (FfGearWith, ff_gear_with, FF, GEAR_WITH, GtkWidget)

void ff_gear_with_show (FfGearWith *self, FfKeeper *keeper, const FfItem *item);
