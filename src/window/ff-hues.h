/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The colours of the four looks: slate for structure, chestnut as the one accent, ochre for
 * attention. One table, from which the style sheet and the widgets that draw themselves both read.
 * Pictures that are also printed have palettes of their own (ff-palette.h); on the screen they take
 * the ground they stand on from here: ff_looks_palette(). */
#pragma once

#include <gtk/gtk.h>

typedef enum {
  FF_LOOK_LIGHT,
  FF_LOOK_DARK,
  FF_LOOK_DAYLIGHT, /* black on white, no greys, no thin lines */
  FF_LOOK_NIGHT,    /* dim and warm on black */
  FF_N_LOOKS,
} FfLook;

typedef enum {
  FF_HUE_PAPER,     /* what everything stands on */
  FF_HUE_SHEET,     /* fields and cards on the paper */
  FF_HUE_INK,       /* words */
  FF_HUE_SOFT,      /* words of second rank */
  FF_HUE_LINE,      /* rules between things */
  FF_HUE_SIDE,      /* the slate side where the places stand */
  FF_HUE_SIDE_INK,  /* words on it */
  FF_HUE_SIDE_SOFT, /* words of second rank on it */
  FF_HUE_SIDE_HERE, /* the place where one is */
  FF_HUE_SLATE,     /* structure: frames and axes */
  FF_HUE_CHESTNUT,  /* the accent: what can be pressed, what is chosen */
  FF_HUE_ON_CHESTNUT,
  FF_HUE_CHESTNUT_INK, /* the accent as words on paper */
  FF_HUE_OCHRE,        /* attention */
  FF_HUE_OCHRE_WASH,   /* attention as a ground */
  FF_HUE_OCHRE_INK,    /* attention as words */
  FF_N_HUES,
} FfHue;

GdkRGBA ff_hue (FfLook look, FfHue hue);

/* The table as named colours of a style sheet: ff_paper, ff_ink … and libadwaita's own names. */
char *ff_hues_css (FfLook look) G_GNUC_WARN_UNUSED_RESULT;
