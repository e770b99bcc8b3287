/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day in one strip: the hours, the sunset, and a neutral block for each sortie, as long as it
 * is in the air and as dark as its filter. It stands over every part of a job, so that an edit
 * anywhere shows at once what it does to the plan. */
#pragma once

#include "ff-keeper.h"

#include <gtk/gtk.h>

#define FF_TYPE_STRIP (ff_strip_get_type ())
G_DECLARE_FINAL_TYPE (FfStrip, ff_strip, FF, STRIP, GtkWidget)

void ff_strip_set_keeper (FfStrip *self, FfKeeper *keeper);

/* Whether it is wanted where it stands; it shows itself only when there is a plan as well. */
void ff_strip_set_wanted (FfStrip *self, gboolean wanted);
