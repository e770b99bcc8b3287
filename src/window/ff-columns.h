/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Fields beside each other, in as many columns as there is room for: each at least so many
 * characters wide, so that larger letters or a narrow window give fewer columns and nothing is
 * cut. Rows are as high as their highest field. One more column may make a row higher, so that it
 * belongs into something that scrolls, not directly into a GtkStack, which looks for the least
 * width at a given height and may look for ever. */
#pragma once

#include "ff-entry.h"

#define FF_TYPE_COLUMNS (ff_columns_get_type ())
G_DECLARE_FINAL_TYPE (FfColumns, ff_columns, FF, COLUMNS, GtkWidget)

/* At most `most` columns of at least `chars` characters. */
GtkWidget *ff_columns_new (int chars, int most);

/* `wide`: it takes a row of its own. */
void ff_columns_append (FfColumns *self, GtkWidget *child, gboolean wide);

/* A new field at the end; `entered` (GObject *owner) comes with the Enter key, as long as the owner
 * lives. Borrowed. */
FfEntry *ff_columns_append_entry (FfColumns *self,
                                  const char *label,
                                  const char *unit,
                                  gboolean wide,
                                  GCallback entered,
                                  gpointer owner);
