/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The readings of a day, newest first, each with the way to set it aside: a button, a reason, Enter.
 * Those set aside stay, with their reason. */
#pragma once

#include <gtk/gtk.h>

#include "ff-day-reading.h"
#include "ff-keeper.h"

#define FF_TYPE_READING_LIST (ff_reading_list_get_type ())
G_DECLARE_FINAL_TYPE (FfReadingList, ff_reading_list, FF, READING_LIST, GtkBox)

/* Shows what the day holds and keeps neither. */
void ff_reading_list_show (FfReadingList *self, FfKeeper *keeper, const FfDay *day);
