/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-stop-ruler.h"

#include <math.h>

#include "ff-labels.h"
#include "ff-neutral-block.h"
#include "ff-shapes.h"

/* From top to bottom, in em. */
#define SCALE_EM 1.3
#define ROW_EM 2.5
#define BETWEEN_EM 0.35
#define FOOT_EM 0.4
#define LEAST_GAP 0.05    /* stops; less than this reads as nothing */
#define LEAST_NUMBER 0.15 /* a gap that nobody would correct needs no number */

typedef struct {
  cairo_t *cr;
  const FfPalette *palette;
  const FfStopRulerFacts *facts;
  FfLabels *labels;
  double em, width;
  double from, to;          /* stops at the two ends */
  double light_y, eats_y;   /* tops of the rows */
  double light_end, eats_end;
} Ruler;

double
ff_stop_ruler_height (double em)
{
  return (SCALE_EM + 2 * ROW_EM + BETWEEN_EM + FOOT_EM) * em;
}

static double
x_of (const Ruler *ruler, double stops)
{
  double pad = 0.3 * ruler->em;

  return pad + (stops - ruler->from) / (ruler->to - ruler->from) * (ruler->width - 2 * pad);
}

static void
measure (Ruler *ruler)
{
  const FfStopRulerFacts *facts = ruler->facts;

  ruler->light_end = facts->ev100;
  ruler->eats_end = 0;
  for (int i = 0; i < FF_N_PIECES; i++)
    if (facts->eats[i] < 0)
      ruler->light_end -= facts->eats[i];
    else
      ruler->eats_end += facts->eats[i];
  ruler->from = MIN (0, floor (facts->ev100));
  ruler->to = MAX (MAX (ruler->light_end, ruler->eats_end) + 0.6, facts->high_ev100 + 0.3);
  ruler->to = MAX (ruler->to, ruler->from + 4);
  ruler->light_y = SCALE_EM * ruler->em;
  ruler->eats_y = ruler->light_y + (ROW_EM + BETWEEN_EM) * ruler->em;
}

static cairo_rectangle_t
box_of (const Ruler *ruler, double from, double to, double y)
{
  double left = x_of (ruler, MIN (from, to)), right = x_of (ruler, MAX (from, to));

  return (cairo_rectangle_t) { left, y, right - left, ROW_EM * ruler->em };
}

static void
write_in (Ruler *ruler, const cairo_rectangle_t *box, const char *text, FfColour colour,
          FfTextStyle style)
{
  FfLabel label = { .text = text, .style = style, .colour = colour, .align = 0.5,
                    .x = box->x + box->width / 2, .y = box->y + box->height / 2,
                    .plate = ruler->palette->hatched ? 0.2 : 0 };

  if (text[0] != '\0' && ff_labels_width (ruler->labels, &label) < box->width - 0.2 * ruler->em)
    ff_labels_place (ruler->labels, &label, NULL);
}

/* The scale */

static void
draw_scale (Ruler *ruler)
{
  double one = x_of (ruler, ruler->from + 1) - x_of (ruler, ruler->from);
  int every = one > 1.6 * ruler->em ? 1 : one > 0.8 * ruler->em ? 2 : 5;

  ff_colour_set (ruler->cr, ruler->palette->guide);
  cairo_set_line_width (ruler->cr, ruler->palette->hair * ruler->em);
  for (int stop = (int) ceil (ruler->from); stop <= (int) floor (ruler->to); stop++)
    {
      g_autofree char *text = g_strdup_printf (stop < 0 ? "−%d" : "%d", ABS (stop));
      FfLabel label = { .text = text, .style = FF_TEXT_SMALL, .colour = ruler->palette->soft,
                        .align = 0.5, .x = x_of (ruler, stop), .y = 0.55 * ruler->em };

      ff_shape_line (ruler->cr, label.x, SCALE_EM * 0.86 * ruler->em, label.x,
                     ruler->eats_y + ROW_EM * ruler->em + 0.2 * ruler->em);
      if (stop % every == 0)
        ff_labels_place (ruler->labels, &label, NULL);
    }
  cairo_stroke (ruler->cr);
}

/* The upper row */

static void
outline (Ruler *ruler, const cairo_rectangle_t *box, FfColour colour, double width)
{
  ff_shape_rounded (ruler->cr, box, 0.2 * ruler->em);
  ff_colour_set (ruler->cr, colour);
  cairo_set_line_width (ruler->cr, width);
  cairo_stroke (ruler->cr);
}

/* How sure the light is: a bar with ends across the edge of the light. */
static void
draw_spread (Ruler *ruler)
{
  double shift = ruler->light_end - ruler->facts->ev100;
  double low = x_of (ruler, ruler->facts->low_ev100 + shift);
  double high = x_of (ruler, MIN (ruler->facts->high_ev100 + shift, ruler->to));
  double y = ruler->light_y + ROW_EM * ruler->em - 0.35 * ruler->em, tip = 0.22 * ruler->em;

  if (high - low < 1)
    return;
  ff_shape_line (ruler->cr, low, y, high, y);
  ff_shape_line (ruler->cr, low, y - tip, low, y + tip);
  ff_shape_line (ruler->cr, high, y - tip, high, y + tip);
  ff_colour_set (ruler->cr, ruler->palette->ink);
  cairo_set_line_width (ruler->cr, ruler->palette->line * ruler->em);
  cairo_stroke (ruler->cr);
}

static void
draw_light (Ruler *ruler)
{
  const FfPalette *palette = ruler->palette;
  cairo_rectangle_t box
      = box_of (ruler, ruler->from, ruler->facts->ev100, ruler->light_y);
  double at = ruler->facts->ev100;

  ff_shape_rounded (ruler->cr, &box, 0.2 * ruler->em);
  ff_colour_set (ruler->cr, palette->sun);
  cairo_fill (ruler->cr);
  outline (ruler, &box, palette->ink, palette->hair * ruler->em);
  write_in (ruler, &box, ruler->facts->light, palette->ink, FF_TEXT_STRONG);
  for (int i = 0; i < FF_N_PIECES; i++)
    if (ruler->facts->eats[i] < 0)
      {
        cairo_rectangle_t gift = box_of (ruler, at, at - ruler->facts->eats[i], ruler->light_y);
        gboolean chosen = i == (int) ruler->facts->chosen;

        at -= ruler->facts->eats[i];
        ff_shape_slants (ruler->cr, &gift, 0.5 * ruler->em);
        ff_colour_set (ruler->cr, palette->guide);
        cairo_set_line_width (ruler->cr, palette->hair * ruler->em);
        cairo_stroke (ruler->cr);
        outline (ruler, &gift, chosen ? palette->accent : palette->ink,
                 (chosen ? 2.5 : 1) * palette->line * ruler->em);
        write_in (ruler, &gift, ruler->facts->values[i], palette->ink, FF_TEXT_BODY);
      }
  draw_spread (ruler);
}

/* The lower row */

/* A piece that is held has a bar at each of its ends, like the clamps of a vice. */
static void
draw_clamps (Ruler *ruler, const cairo_rectangle_t *box)
{
  double inset = MIN (0.28 * ruler->em, box->width / 3);

  for (int side = 0; side < 2; side++)
    {
      double x = side == 0 ? box->x + inset : box->x + box->width - inset;

      ff_shape_line (ruler->cr, x, box->y + 0.45 * ruler->em, x,
                     box->y + box->height - 0.45 * ruler->em);
    }
  ff_colour_set (ruler->cr, ruler->palette->accent);
  cairo_set_line_width (ruler->cr, 0.2 * ruler->em);
  cairo_stroke (ruler->cr);
}

static void
draw_piece (Ruler *ruler, int piece, double from)
{
  const FfPalette *palette = ruler->palette;
  const FfStopRulerFacts *facts = ruler->facts;
  double eats = MAX (facts->eats[piece], 0);
  cairo_rectangle_t box = box_of (ruler, from, from + eats, ruler->eats_y);
  gboolean chosen = piece == (int) facts->chosen, filter = piece == FF_PIECE_FILTER;

  if (box.width < 1)
    {
      /* Of no length: a mark where it stands. */
      box.x -= 1.5;
      box.width = 3;
    }
  if (filter && eats > 0)
    ff_neutral_block_field (ruler->cr, palette, &box, eats, ruler->em);
  else
    {
      ff_shape_rounded (ruler->cr, &box, 0.2 * ruler->em);
      ff_colour_set (ruler->cr, palette->paper);
      cairo_fill (ruler->cr);
    }
  if (facts->fixed[piece])
    draw_clamps (ruler, &box);
  outline (ruler, &box, chosen ? palette->accent : palette->ink,
           (chosen ? 2.5 : 1) * palette->line * ruler->em);
  write_in (ruler, &box, facts->values[piece],
            filter && eats > 0 && !palette->hatched
                ? ff_palette_ink_on (palette, ff_palette_shade (palette, eats))
                : palette->ink,
            chosen ? FF_TEXT_STRONG : FF_TEXT_BODY);
}

static void
draw_eats (Ruler *ruler)
{
  double at[FF_N_PIECES], end = 0;

  for (int i = 0; i < FF_N_PIECES; i++)
    {
      at[i] = end;
      end += MAX (ruler->facts->eats[i], 0);
    }
  for (int i = 0; i < FF_N_PIECES; i++)
    if (i != (int) ruler->facts->chosen)
      draw_piece (ruler, i, at[i]);
  /* Last, so that its frame lies on top. */
  if (ruler->facts->eats[ruler->facts->chosen] >= 0)
    draw_piece (ruler, (int) ruler->facts->chosen, at[ruler->facts->chosen]);
}

/* What is missing in the shorter row, slanted, with its stops. */
static void
draw_gap (Ruler *ruler)
{
  const FfPalette *palette = ruler->palette;
  FfColour colour = palette->hatched ? palette->ink : palette->attention;
  double gap = ruler->light_end - ruler->eats_end;
  cairo_rectangle_t box = box_of (ruler, ruler->light_end, ruler->eats_end,
                                  gap > 0 ? ruler->eats_y : ruler->light_y);
  FfLabel label = { .text = ruler->facts->gap, .style = FF_TEXT_STRONG,
                    .colour = ruler->palette->ink, .align = 0.5, .plate = 0.15,
                    .x = box.x + box.width / 2, .y = box.y + box.height / 2 };

  if (fabs (gap) < LEAST_GAP)
    return;
  ff_shape_slants (ruler->cr, &box, 0.35 * ruler->em);
  ff_colour_set (ruler->cr, colour);
  cairo_set_line_width (ruler->cr, palette->line * ruler->em);
  cairo_stroke (ruler->cr);
  outline (ruler, &box, colour, 1.5 * palette->line * ruler->em);
  if (fabs (gap) >= LEAST_NUMBER)
    ff_labels_place (ruler->labels, &label, NULL);
}

void
ff_stop_ruler_draw (cairo_t *cr,
                    const FfPalette *palette,
                    const PangoFontDescription *font,
                    double width,
                    const FfStopRulerFacts *facts)
{
  cairo_rectangle_t bounds = { 0, 0, width, 0 };
  Ruler ruler = { .cr = cr, .palette = palette, .facts = facts, .width = width };

  ruler.em = (double) pango_font_description_get_size (font) / PANGO_SCALE;
  bounds.height = ff_stop_ruler_height (ruler.em);
  ruler.labels = ff_labels_new (palette, font, 1, &bounds);
  measure (&ruler);
  draw_scale (&ruler);
  draw_light (&ruler);
  draw_eats (&ruler);
  draw_gap (&ruler);
  ff_labels_draw (ruler.labels, cr);
  ff_labels_free (ruler.labels);
}
