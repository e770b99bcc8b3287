/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One item of the list: its label as it is written on it, what it is, its state by word and shape,
 * its case; a filter with its neutral block. */
#pragma once

#include <gtk/gtk.h>

#include "ff-item.h"

#define FF_TYPE_GEAR_ROW (ff_gear_row_get_type ())
G_DECLARE_FINAL_TYPE (FfGearRow, ff_gear_row, FF, GEAR_ROW, GtkListBoxRow)

GtkWidget *ff_gear_row_new (const FfItem *item) G_GNUC_WARN_UNUSED_RESULT;

/* The item as it is now. */
void ff_gear_row_show (FfGearRow *self, const FfItem *item);

const char *ff_gear_row_get_id (FfGearRow *self);
FfKind ff_gear_row_get_kind (FfGearRow *self);
