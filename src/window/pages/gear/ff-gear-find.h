/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which items have the words that are typed: those of the index of the store, and what only the
 * window says: kinds, states and cases in the language of its people. */
#pragma once

#include "ff-item.h"

typedef struct {
  GPtrArray *items; /* FfItem, borrowed, in the order of the list */
  guint counts[FF_KIND_OTHER + 1][FF_STATE_RETIRED + 1];
} FfGearFound;

/* Every word must be in the item. No words: all items. `store` NULL: only what the window says. */
FfGearFound *ff_gear_find (FfStore *store,
                           GPtrArray *items,
                           const char *wanted) G_GNUC_WARN_UNUSED_RESULT;
void ff_gear_found_free (FfGearFound *found);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfGearFound, ff_gear_found_free)

/* "5", or with what is not serviceable: "5 · 1 ✕ defect open". */
char *ff_gear_found_counts (const FfGearFound *found, FfKind kind) G_GNUC_WARN_UNUSED_RESULT;
