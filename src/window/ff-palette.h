/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The colours of the four looks: slate for structure, chestnut as the one accent, ochre for
 * attention. One table, from which the style sheet and the drawings both read. */
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
  FF_COLOUR_PAPER,     /* what everything stands on */
  FF_COLOUR_SHEET,     /* fields and cards on the paper */
  FF_COLOUR_INK,       /* words */
  FF_COLOUR_SOFT,      /* words of second rank */
  FF_COLOUR_LINE,      /* rules between things */
  FF_COLOUR_SIDE,      /* the slate side where the places stand */
  FF_COLOUR_SIDE_INK,  /* words on it */
  FF_COLOUR_SIDE_SOFT, /* words of second rank on it */
  FF_COLOUR_SIDE_HERE, /* the place where one is */
  FF_COLOUR_SLATE,     /* structure in drawings: axes, frames */
  FF_COLOUR_CHESTNUT,  /* the accent: what can be pressed, what is chosen */
  FF_COLOUR_ON_CHESTNUT,
  FF_COLOUR_CHESTNUT_INK, /* the accent as words on paper */
  FF_COLOUR_OCHRE,        /* attention */
  FF_COLOUR_OCHRE_WASH,   /* attention as a ground */
  FF_COLOUR_OCHRE_INK,    /* attention as words */
  FF_N_COLOURS,
} FfColour;

GdkRGBA ff_palette_colour (FfLook look, FfColour colour);

/* The fill of a neutral block of so many stops, and the colour that can be read on it. */
GdkRGBA ff_palette_block (FfLook look, double stops);
GdkRGBA ff_palette_on_block (FfLook look, double stops);

/* Whether words on a block stand on a patch of their own (the colour of a sheet): between the lines
 * of daylight, and at night, where no two dim colours are far enough apart. */
gboolean ff_palette_block_has_patch (FfLook look);

/* The table as named colours of a style sheet: ff_paper, ff_ink … and libadwaita's own names. */
char *ff_palette_css (FfLook look) G_GNUC_WARN_UNUSED_RESULT;
