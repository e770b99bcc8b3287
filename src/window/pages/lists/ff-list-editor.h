/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The text of a list, kept as it is typed as soon as it can be read; below it what can't be read, with
 * line and column, or the advice on what can.
 *
 * Signals: "kept" when a text was kept. */
#pragma once

#include "ff-keeper-lists.h"

#include <gtk/gtk.h>

#define FF_TYPE_LIST_EDITOR (ff_list_editor_get_type ())
G_DECLARE_FINAL_TYPE (FfListEditor, ff_list_editor, FF, LIST_EDITOR, GtkBox)

GtkWidget *ff_list_editor_new (FfKeeper *keeper);
void ff_list_editor_set (FfListEditor *self, const FfListEntry *entry);
