/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The fields of one kind of item. What is typed is read, stored and, where it can't be, answered
 * beside its field. */
#pragma once

#include <gtk/gtk.h>

#include "ff-gear-words.h"
#include "ff-keeper.h"

#define FF_TYPE_GEAR_FORM (ff_gear_form_get_type ())
G_DECLARE_FINAL_TYPE (FfGearForm, ff_gear_form, FF, GEAR_FORM, GtkWidget)

GtkWidget *ff_gear_form_new (FfKind kind, FfKeeper *keeper) G_GNUC_WARN_UNUSED_RESULT;

/* Shows an item of its kind: the one it shows already, or another. */
void ff_gear_form_show (FfGearForm *self, const FfItem *item);
