/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The row that asks what would be: under another sky, late, without an item, with a shot
 * at another time. Signal "changed" when
 * a person has picked something else. */
#pragma once

#include <gtk/gtk.h>

#include "ff-try.h"

#define FF_TYPE_WHAT_IF (ff_what_if_get_type ())
G_DECLARE_FINAL_TYPE (FfWhatIf, ff_what_if, FF, WHAT_IF, GtkWidget)

/* The sky as stored, what may be missing (FfItem) and the shots (FfShot). What is picked stays where
 * it still can. */
void ff_what_if_set_day (FfWhatIf *self,
                         FfSky sky,
                         const GPtrArray *items,
                         const GPtrArray *shots);

/* On time, 5, 10, 15 minutes late, and on time again; emits nothing. */
void ff_what_if_next_late (FfWhatIf *self);

/* What is picked; `ret_try` must have been initialised. */
void ff_what_if_get (FfWhatIf *self, FfTry *ret_try);

/* Back to the day as stored; emits nothing. */
void ff_what_if_reset (FfWhatIf *self);
