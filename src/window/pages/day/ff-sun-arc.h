/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sun's way through one day, from midnight to midnight: the horizon, the low sun in ochre, and
 * under it the hours in which the crew flies. The words beside it say the same. */
#pragma once

#include <gtk/gtk.h>

#include "ff-day-words.h"

#define FF_TYPE_SUN_ARC (ff_sun_arc_get_type ())
G_DECLARE_FINAL_TYPE (FfSunArc, ff_sun_arc, FF, SUN_ARC, GtkWidget)

/* Hours as minutes after midnight, or FF_NO_CLOCK; `spoken` stands for the picture. */
void ff_sun_arc_show (FfSunArc *self,
                      const FfDayWordsQuery *query,
                      int first_off,
                      int all_down,
                      const char *spoken);
