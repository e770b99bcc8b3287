/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The stop ruler on the screen, which is read out as the chosen piece, the light and the gap. It
 * shows, and tells what a person asks for; what comes of it is the page's.
 *
 * Signals: "by" (int which way among the pieces), "move" (int steps of the chosen one), "fix",
 * "fit" (int stops of a filter), "letter" (int: any other letter, a capital with Shift). Keys: Left
 * and Right, Up and Down, F, digits. */
#pragma once

#include <gtk/gtk.h>

#include "ff-light-words.h"

#define FF_TYPE_RULER_VIEW (ff_ruler_view_get_type ())
G_DECLARE_FINAL_TYPE (FfRulerView, ff_ruler_view, FF, RULER_VIEW, GtkWidget)

/* Copies what it shows. NULL: nothing. */
void ff_ruler_view_show (FfRulerView *self,
                         const FfLightStudy *study,
                         const FfRuler *ruler,
                         const FfExplainQuery *light);

/* What is read out of it. */
const char *ff_ruler_view_spoken (FfRulerView *self);
