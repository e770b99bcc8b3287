/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One line of the pack list, large: its mark at the stage that is counted, as shape and word; what
 * it is; why it is on the list; what is due. */
#pragma once

#include <gtk/gtk.h>

#include "ff-pack-list.h"

#define FF_TYPE_PACK_ROW (ff_pack_row_get_type ())
G_DECLARE_FINAL_TYPE (FfPackRow, ff_pack_row, FF, PACK_ROW, GtkListBoxRow)

GtkWidget *ff_pack_row_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* `stops` of a filter; NAN: it is none. Copies what it needs. */
void ff_pack_row_show (FfPackRow *self,
                       const FfPackEntry *entry,
                       FfPackStage stage,
                       double stops);

const char *ff_pack_row_item (FfPackRow *self); /* id */
const char *ff_pack_row_case (FfPackRow *self);

/* "open", "out", "in", "not taken: screen cracked" */
char *ff_pack_row_word (const FfPackEntry *entry, FfPackStage stage) G_GNUC_WARN_UNUSED_RESULT;
