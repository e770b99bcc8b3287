/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An item of the gear as the console says it. */
#pragma once

#include "ff-command.h"
#include "ff-item.h"

/* One element of the array that is open, and one line. */
void ff_print_item_line (FfConsole *console, const FfItem *item);

/* The whole item, into the object that is open: its fields, what it goes with, its use, and what
 * happened to it. */
gboolean ff_print_item (FfConsole *console, FfStore *store, const FfItem *item, GError **error);
