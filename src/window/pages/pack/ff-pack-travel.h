/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The air travel sheet: whose rule, who carries what, what stays and why, what to ask the carrier
 * for, cautions; and a form in which a carrier's rule is entered. */
#pragma once

#include <gtk/gtk.h>

#include "ff-keeper.h"
#include "ff-travel-sheet.h"

#define FF_TYPE_PACK_TRAVEL (ff_pack_travel_get_type ())
G_DECLARE_FINAL_TYPE (FfPackTravel, ff_pack_travel, FF, PACK_TRAVEL, GtkBox)

/* Shows a sheet, or why there is none. Signal "changed" when a rule was entered or another one was
 * picked: then the sheet is to be worked out anew. */
void ff_pack_travel_show (FfPackTravel *self,
                          FfKeeper *keeper,
                          const FfTravelSheet *sheet,
                          const char *why);

/* Name of the carrier that was picked; NULL: none. */
const char *ff_pack_travel_carrier (FfPackTravel *self);
