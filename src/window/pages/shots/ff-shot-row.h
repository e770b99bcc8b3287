/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One shot of the list: its label large, what and when, what it needs as a neutral block, and where
 * it stands in the plan. Rows are filled anew, never made anew, so that the list does not blink. */
#pragma once

#include <gtk/gtk.h>

#include "ff-shot.h"

#define FF_TYPE_SHOT_ROW (ff_shot_row_get_type ())
G_DECLARE_FINAL_TYPE (FfShotRow, ff_shot_row, FF, SHOT_ROW, GtkListBoxRow)

GtkWidget *ff_shot_row_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* `need_stops` NAN: not known; `place`: its words of the plan; `missed`: it is not flown. */
void ff_shot_row_show (FfShotRow *self,
                       const FfShot *shot,
                       double need_stops,
                       const char *place,
                       gboolean missed);
const char *ff_shot_row_get_id (FfShotRow *self);
