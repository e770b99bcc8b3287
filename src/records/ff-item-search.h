/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The search through the gear: words as they are typed, each a beginning, accents and case folded.
 * The index is SQLite's FTS5 with its tokenizer unicode61. */
#pragma once

#include "ff-item.h"

/* The ids of the items in which every one of the words begins some word of the label, title, kind,
 * case, serial number, note, or of what their kind adds. Nothing typed finds nothing. A set of
 * char * that frees itself. */
GHashTable *ff_items_search (FfStore *store,
                             const char *words,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* For ff_item_save() and ff_item_delete() alone: keep the index in step. */
gboolean ff_item_index (FfStore *store, const FfItem *item, GError **error);
gboolean ff_item_unindex (FfStore *store, const char *id, GError **error);
