/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which look is chosen and which is on the screen. One object for the whole program: widgets that
 * draw themselves watch its "now". */
#pragma once

#include "ff-hues.h"
#include "ff-palette.h"

#define FF_TYPE_LOOKS (ff_looks_get_type ())
G_DECLARE_FINAL_TYPE (FfLooks, ff_looks, FF, LOOKS, GObject)

/* The one object, made at the first call, which needs a display. Borrowed. */
FfLooks *ff_looks_get (void);

/* The look on the screen: "follow" is resolved. Property "now". */
FfLook ff_looks_now (void);

/* What was chosen: "follow", "light", "dark", "daylight" or "night". Property "chosen". */
const char *ff_looks_chosen (FfLooks *self);
void ff_looks_choose (FfLooks *self, const char *chosen);

/* Takes this look, or goes back to the one before when it is already on. */
void ff_looks_toggle (FfLooks *self, const char *chosen);

/* A colour of the look on the screen. */
GdkRGBA ff_looks_hue (FfHue hue);

/* The palette for drawings (day chart, neutral blocks) in the look on the screen, on the ground of a
 * sheet. Borrowed until the look changes. */
const FfPalette *ff_looks_palette (void);

/* Lets a widget draw itself anew whenever the look changes. */
void ff_looks_redraw (GtkWidget *widget);
