/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The style of a drawing as a value: colours, line widths, the weight and size of text. Shapes and
 * words carry every meaning; colour only helps. */
#pragma once

#include <cairo.h>
#include <glib.h>
#include <pango/pango.h>

typedef struct {
  double red, green, blue;
} FfColour;

typedef struct {
  const char *font; /* family list, used where the caller gives no font */
  FfColour paper, ink;
  FfColour soft;  /* text that names things */
  FfColour guide; /* hairlines that only lead the eye */
  FfColour accent, attention;
  FfColour sun, sun_line, low_sun, twilight, night; /* the sky's bands */
  FfColour spread, light;                           /* light in EV and how sure it is */
  FfColour shade_weak, shade_strong;                /* neutral blocks of 0 and FF_SHADE_STOPS */
  FfColour on_pale, on_deep;                        /* what is written in them */
  gboolean hatched;  /* no greys: shades become lines that can be counted */
  double hair, line; /* widths, in em */
  double small;      /* size of small text, in em */
  PangoWeight weight, strong;
} FfPalette;

#define FF_SHADE_STOPS 8.0 /* a filter as strong as this has the darkest shade */

extern const FfPalette ff_palette_light;
extern const FfPalette ff_palette_dark;
extern const FfPalette ff_palette_daylight; /* black on white and thick, for a screen in the sun */
extern const FfPalette ff_palette_night;    /* warm and dim on black, for dark-adapted eyes */
extern const FfPalette ff_palette_paper;    /* for a cheap printer and a photocopy of it */

/* The shade of a filter: the stronger, the darker; held at both ends. */
FfColour ff_palette_shade (const FfPalette *palette, double stops);

/* What reads on a shade: whichever of the palette's two stands off more. */
FfColour ff_palette_ink_on (const FfPalette *palette, FfColour shade);

/* Contrast ratio of two colours, 1 to 21 (W3C, Web Content Accessibility Guidelines 2.1, "contrast
 * ratio" and "relative luminance"). */
double ff_colour_contrast (FfColour a, FfColour b);

void ff_colour_set (cairo_t *cr, FfColour colour);
void ff_colour_set_alpha (cairo_t *cr, FfColour colour, double alpha);
