/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is measured at a battery and decided about it: usable minutes and what stands behind them, cells
 * measured, the three ways after swelling, a drop or water, with the caution before them, a chart. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"

#define FF_TYPE_GEAR_BATTERY (ff_gear_battery_get_type ())
G_DECLARE_FINAL_TYPE (FfGearBattery, ff_gear_battery, FF, GEAR_BATTERY, GtkWidget)

void ff_gear_battery_show (FfGearBattery *self, FfKeeper *keeper, const FfItem *item);
