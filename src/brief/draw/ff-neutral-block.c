/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-neutral-block.h"

#include <math.h>
#include <pango/pangocairo.h>

#include "ff-number.h"
#include "ff-shapes.h"

/* Lines may cover this part of their pitch before they close up on a photocopy. */
#define MOST_COVERED 0.4

char *
ff_neutral_block_text (double stops)
{
  return ff_number_format (stops, 1);
}

int
ff_neutral_block_lines (double stops)
{
  return (int) CLAMP (floor (stops + 0.5), 0, 20);
}

void
ff_neutral_block_hatch (cairo_t *cr,
                        const FfPalette *palette,
                        const cairo_rectangle_t *box,
                        int lines)
{
  double pitch = box->height / (lines + 1);

  for (int i = 0; i < lines; i++)
    {
      double y = box->y + (i + 1) * pitch;

      ff_shape_line (cr, box->x, y, box->x + box->width, y);
    }
  ff_colour_set (cr, palette->ink);
  cairo_set_line_width (cr, MIN (box->height / 18, pitch * MOST_COVERED));
  cairo_stroke (cr);
}

void
ff_neutral_block_field (cairo_t *cr,
                        const FfPalette *palette,
                        const cairo_rectangle_t *box,
                        double stops,
                        double em)
{
  double radius = 0.22 * em;

  ff_shape_rounded (cr, box, radius);
  ff_colour_set (cr, palette->hatched ? palette->paper : ff_palette_shade (palette, stops));
  cairo_fill (cr);
  if (palette->hatched)
    ff_neutral_block_hatch (cr, palette, box, ff_neutral_block_lines (stops));
  ff_shape_rounded (cr, box, radius);
  ff_colour_set (cr, palette->ink);
  cairo_set_line_width (cr, palette->hatched ? palette->line * em : palette->hair * em);
  cairo_stroke (cr);
}

/* Sets the number in three fifths of the box's height, or smaller where its width asks for it;
 * hatching must be seen on both sides of it. */
static PangoLayout *
fitted_number (cairo_t *cr,
               const FfPalette *palette,
               const cairo_rectangle_t *box,
               double stops,
               const PangoFontDescription *font)
{
  g_autofree char *text = ff_neutral_block_text (stops);
  g_autoptr (PangoFontDescription) sized = font != NULL
                                               ? pango_font_description_copy (font)
                                               : pango_font_description_from_string (palette->font);
  PangoLayout *layout = pango_cairo_create_layout (cr);
  double size = box->height * 0.6, widest = box->width * (palette->hatched ? 0.6 : 0.8);
  int width;

  pango_layout_set_text (layout, text, -1);
  pango_font_description_set_weight (sized, palette->strong);
  pango_font_description_set_absolute_size (sized, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, sized);
  pango_layout_get_size (layout, &width, NULL);
  if (width > widest * PANGO_SCALE)
    {
      size *= widest * PANGO_SCALE / width;
      pango_font_description_set_absolute_size (sized, size * PANGO_SCALE);
      pango_layout_set_font_description (layout, sized);
    }
  return layout;
}

void
ff_neutral_block_draw (cairo_t *cr,
                       const FfPalette *palette,
                       const cairo_rectangle_t *box,
                       double stops,
                       const PangoFontDescription *font)
{
  g_autoptr (PangoLayout) layout = fitted_number (cr, palette, box, stops, font);
  PangoRectangle ink;
  double x, y, width, height;

  ff_neutral_block_field (cr, palette, box, stops, box->height / 3);
  pango_layout_get_extents (layout, &ink, NULL);
  width = (double) ink.width / PANGO_SCALE;
  height = (double) ink.height / PANGO_SCALE;
  x = box->x + (box->width - width) / 2;
  y = box->y + (box->height - height) / 2;
  if (palette->hatched)
    {
      double pad = MIN (height * 0.2, (box->width - width) / 2);
      cairo_rectangle_t plate = { x - pad, y - pad, width + 2 * pad, height + 2 * pad };

      ff_shape_rounded (cr, &plate, pad);
      ff_colour_set (cr, palette->paper);
      cairo_fill (cr);
    }
  ff_colour_set (cr, ff_palette_ink_on (palette, ff_palette_shade (palette, stops)));
  cairo_move_to (cr, x - (double) ink.x / PANGO_SCALE, y - (double) ink.y / PANGO_SCALE);
  pango_cairo_show_layout (cr, layout);
}
