/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-palette.h"

#include <math.h>

#define RGB(hex)                                                                                   \
  { (((hex) >> 16) & 0xff) / 255.0, (((hex) >> 8) & 0xff) / 255.0, ((hex) & 0xff) / 255.0 }
#define BLACK RGB (0x000000)
#define WHITE RGB (0xffffff)
#define FONT "B612, DejaVu Sans"

/* Slate for structure, chestnut as the one accent, ochre for attention. */
const FfPalette ff_palette_light = {
  .font = FONT,
  .paper = RGB (0xfaf9f5),
  .ink = RGB (0x1f2d38),
  .soft = RGB (0x55646f),
  .guide = RGB (0xd5d9d8),
  .accent = RGB (0x93391b),
  .attention = RGB (0xe3a72f),
  .sun = RGB (0xf0dca6),
  .sun_line = RGB (0xb88a2e),
  .low_sun = RGB (0xf8ecd4),
  .twilight = RGB (0xdfe6eb),
  .night = RGB (0xc3ced7),
  .spread = RGB (0xb9c8d3),
  .light = RGB (0x2f4a5e),
  .shade_weak = RGB (0xf1f2f2),
  .shade_strong = RGB (0x18222a),
  .on_pale = BLACK,
  .on_deep = WHITE,
  .hair = 0.075,
  .line = 0.14,
  .small = 0.88,
  .weight = PANGO_WEIGHT_NORMAL,
  .strong = PANGO_WEIGHT_BOLD,
};

const FfPalette ff_palette_dark = {
  .font = FONT,
  .paper = RGB (0x1a2128),
  .ink = RGB (0xe8ecee),
  .soft = RGB (0xa2b0ba),
  .guide = RGB (0x36414b),
  .accent = RGB (0xe8916a),
  .attention = RGB (0xe2aa3c),
  .sun = RGB (0x5e4f2b),
  .sun_line = RGB (0xd8b25c),
  .low_sun = RGB (0x2f2c26),
  .twilight = RGB (0x232f3b),
  .night = RGB (0x11171d),
  .spread = RGB (0x41566a),
  .light = RGB (0xb9d0e2),
  .shade_weak = RGB (0xcbd3d9),
  .shade_strong = RGB (0x080b0e),
  .on_pale = BLACK,
  .on_deep = WHITE,
  .hair = 0.075,
  .line = 0.14,
  .small = 0.88,
  .weight = PANGO_WEIGHT_NORMAL,
  .strong = PANGO_WEIGHT_BOLD,
};

const FfPalette ff_palette_daylight = {
  .font = FONT,
  .paper = WHITE,
  .ink = BLACK,
  .soft = BLACK,
  .guide = BLACK,
  .accent = BLACK,
  .attention = WHITE,
  .sun = WHITE,
  .sun_line = BLACK,
  .low_sun = WHITE,
  .twilight = WHITE,
  .night = WHITE,
  .spread = BLACK,
  .light = BLACK,
  .shade_weak = WHITE,
  .shade_strong = WHITE,
  .on_pale = BLACK,
  .on_deep = BLACK,
  .hatched = TRUE,
  .hair = 0.14,
  .line = 0.24,
  .small = 1.0,
  .weight = PANGO_WEIGHT_SEMIBOLD,
  .strong = PANGO_WEIGHT_HEAVY,
};

const FfPalette ff_palette_night = {
  .font = FONT,
  .paper = BLACK,
  .ink = RGB (0xd98f58),
  .soft = RGB (0xa8683c),
  .guide = RGB (0x33200f),
  .accent = RGB (0xf0743c),
  .attention = RGB (0xd98f58),
  .sun = RGB (0x3a220f),
  .sun_line = RGB (0xb06f38),
  .low_sun = RGB (0x150c05),
  .twilight = RGB (0x0f0805),
  .night = BLACK,
  .spread = RGB (0x41260f),
  .light = RGB (0xd0854e),
  .shade_weak = RGB (0xb87a4a),
  .shade_strong = RGB (0x0e0703),
  .on_pale = BLACK,
  .on_deep = RGB (0xf0b382),
  .hair = 0.075,
  .line = 0.14,
  .small = 0.88,
  .weight = PANGO_WEIGHT_NORMAL,
  .strong = PANGO_WEIGHT_BOLD,
};

const FfPalette ff_palette_paper = {
  .font = FONT,
  .paper = WHITE,
  .ink = BLACK,
  .soft = BLACK,
  .guide = BLACK,
  .accent = BLACK,
  .attention = WHITE,
  .sun = WHITE,
  .sun_line = BLACK,
  .low_sun = WHITE,
  .twilight = WHITE,
  .night = WHITE,
  .spread = BLACK,
  .light = BLACK,
  .shade_weak = WHITE,
  .shade_strong = WHITE,
  .on_pale = BLACK,
  .on_deep = BLACK,
  .hatched = TRUE,
  .hair = 0.06,
  .line = 0.14,
  .small = 1.0,
  .weight = PANGO_WEIGHT_NORMAL,
  .strong = PANGO_WEIGHT_BOLD,
};

/* Mixed as sRGB numbers, which the eye sees as roughly even steps. */
FfColour
ff_palette_shade (const FfPalette *palette, double stops)
{
  double part = CLAMP (stops / FF_SHADE_STOPS, 0, 1);
  FfColour weak = palette->shade_weak, strong = palette->shade_strong;

  return (FfColour) { weak.red + part * (strong.red - weak.red),
                      weak.green + part * (strong.green - weak.green),
                      weak.blue + part * (strong.blue - weak.blue) };
}

FfColour
ff_palette_ink_on (const FfPalette *palette, FfColour shade)
{
  gboolean pale = ff_colour_contrast (palette->on_pale, shade)
                  >= ff_colour_contrast (palette->on_deep, shade);

  return pale ? palette->on_pale : palette->on_deep;
}

static double
linear (double part)
{
  return part <= 0.03928 ? part / 12.92 : pow ((part + 0.055) / 1.055, 2.4);
}

static double
luminance (FfColour c)
{
  return 0.2126 * linear (c.red) + 0.7152 * linear (c.green) + 0.0722 * linear (c.blue);
}

double
ff_colour_contrast (FfColour a, FfColour b)
{
  double first = luminance (a) + 0.05, second = luminance (b) + 0.05;

  return first > second ? first / second : second / first;
}

void
ff_colour_set (cairo_t *cr, FfColour colour)
{
  cairo_set_source_rgb (cr, colour.red, colour.green, colour.blue);
}

void
ff_colour_set_alpha (cairo_t *cr, FfColour colour, double alpha)
{
  cairo_set_source_rgba (cr, colour.red, colour.green, colour.blue, alpha);
}
