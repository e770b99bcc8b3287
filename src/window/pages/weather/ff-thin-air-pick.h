/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The choice how far thin air shortens the minutes that are planned with. */
#pragma once

#include "ff-keeper.h"
#include "ff-pick.h"

/* An FfPick; on trouble it stays as it is stored. `get_keeper` is asked when a person picks. */
GtkWidget *ff_thin_air_pick_new (FfKeeper *(*get_keeper) (gpointer owner), gpointer owner);

/* Shows what is stored; one that was set elsewhere to another share is shown as it is. */
void ff_thin_air_pick_show (FfPick *pick, double share);
