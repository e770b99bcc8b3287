/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The charge evening: what goes into which slot when, and the watches at the charger, which can be
 * entered and taken away here. */
#pragma once

#include "ff-keeper.h"

#include <gtk/gtk.h>

#define FF_TYPE_PACK_EVENING (ff_pack_evening_get_type ())
G_DECLARE_FINAL_TYPE (FfPackEvening, ff_pack_evening, FF, PACK_EVENING, GtkBox)

/* Shows the evening of the keeper's open job. Signal "changed" when a watch was entered or taken
 * away, "trouble" (const char *sentence) when that was refused. */
void ff_pack_evening_show (FfPackEvening *self,
                           FfKeeper *keeper,
                           const FfChargeEvening *evening,
                           GTimeZone *zone);
