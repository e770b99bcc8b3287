/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A form and what follows from it. Where there is room they stand side by side, and the aside keeps
 * its place while the form scrolls under the fingers; where there is not, the aside stands over the
 * form and scrolls with it. It stands directly in a scrolled window. */
#pragma once

#include <gtk/gtk.h>

#define FF_TYPE_SHOT_BESIDE (ff_shot_beside_get_type ())
G_DECLARE_FINAL_TYPE (FfShotBeside, ff_shot_beside, FF, SHOT_BESIDE, GtkWidget)

/* Whether they stand side by side at this width. */
gboolean ff_shot_beside_is_wide (FfShotBeside *self);
