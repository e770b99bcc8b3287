/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sorties as neutral blocks: in one row with the text under them, or, where that is too narrow,
 * as a cascade of lanes with the text beside. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-day-chart-private.h"
#include "ff-neutral-block.h"
#include "ff-shapes.h"

#define OFF_ROW 1.3
#define UNDER_ROW 1.5
#define LANE_GAP 0.5
#define NUMBER_MOST 2.3 /* em */
#define NUMBER_LEAST 0.75
#define CELL_PAD 0.5
#define LEAST_WIDTH 2.0 /* units: a flight is never a hair */

static const FfPlanLine *
line_at (const FfDayPlan *plan, guint index)
{
  return g_ptr_array_index (plan->lines, index);
}

static FfLabel
shots_label (const FfDayChart *chart, const char *shots)
{
  return (FfLabel) { .text = shots, .style = FF_TEXT_STRONG, .colour = chart->palette.ink,
                     .plate = FF_CHART_PLATE };
}

double
ff_chart_cell_width (FfDayChart *chart, const char *battery)
{
  FfLabel label = { .text = battery, .style = FF_TEXT_SMALL };

  return ff_labels_width (chart->labels, &label) + 2 * CELL_PAD * chart->em;
}

gboolean
ff_chart_place_cell (FfDayChart *chart,
                     const char *battery,
                     double x,
                     double y,
                     double align,
                     double max_width,
                     cairo_rectangle_t *ret_box)
{
  double pad = CELL_PAD * chart->em, em = chart->em;
  FfLabel label = { .text = battery, .style = FF_TEXT_SMALL, .colour = chart->palette.ink,
                    .x = x + (1 - 2 * align) * pad, .y = y, .align = align, .pad = pad };
  cairo_rectangle_t kept, cell;

  if (max_width > 0)
    label.max_width = MAX (max_width - 2 * pad, 0.1);
  if (!ff_labels_place (chart->labels, &label, &kept))
    return FALSE;
  cell = (cairo_rectangle_t) { kept.x + 0.2 * em, y - 0.62 * em, kept.width - 0.3 * em, 1.24 * em };
  g_array_append_val (chart->cells, cell);
  if (ret_box != NULL)
    *ret_box = kept;
  return TRUE;
}

static double
text_width (FfDayChart *chart, const FfPlanLine *line)
{
  g_autofree char *shots = ff_chart_shots (line, " ");
  FfLabel label = shots_label (chart, shots);

  return MAX (ff_labels_width (chart->labels, &label), ff_chart_cell_width (chart, line->battery));
}

static double
middle_of (const FfDayChart *chart, const FfPlanLine *line)
{
  return (ff_time_axis_x (&chart->axis, (double) line->off_by)
          + ff_time_axis_x (&chart->axis, (double) line->down))
         / 2;
}

gboolean
ff_chart_sorties_fit_one_row (FfDayChart *chart, const FfDayPlan *plan)
{
  double end = -INFINITY;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = line_at (plan, i);
      double half = text_width (chart, line) / 2, middle = middle_of (chart, line);

      if (middle - half < end)
        return FALSE;
      end = middle + half + 0.5 * chart->em;
    }
  return TRUE;
}

static double
lane_top (const FfDayChart *chart, guint index)
{
  const FfChartShare *share = &chart->share;
  double pitch = chart->lanes.height / share->lanes;

  if (share->lanes > 1)
    return chart->lanes.y + (index % (guint) share->lanes) * pitch + LANE_GAP / 2 * chart->em;
  return chart->lanes.y + (share->off_times ? OFF_ROW * chart->em : 0);
}

static void
add_block (FfDayChart *chart, const FfPlanLine *line, guint index)
{
  double left = floor (ff_time_axis_x (&chart->axis, (double) line->off_by)) + 0.5;
  double right = floor (ff_time_axis_x (&chart->axis, (double) line->down)) + 0.5;
  FfChartBlock block = { .line = line->line, .stops = line->filter_stops,
                         .land_x = ff_time_axis_x (&chart->axis, (double) line->land_by),
                         .holds = ff_chart_line_holds (line) };

  left = MIN (left, chart->axis.right - LEAST_WIDTH);
  block.block = (cairo_rectangle_t) { left, lane_top (chart, index),
                                      MAX (right - left, LEAST_WIDTH),
                                      chart->share.block * chart->em };
  block.land_x = MAX (block.land_x, block.block.x + block.block.width);
  block.text_x = block.land_x;
  block.target = block.block;
  block.target.width = block.land_x - left;
  if (chart->share.lanes == 1)
    block.target.height = chart->lanes.y + chart->lanes.height - block.target.y;
  g_array_append_val (chart->blocks, block);
}

static FfChartBlock *
block_at (const FfDayChart *chart, guint index)
{
  return &g_array_index (chart->blocks, FfChartBlock, index);
}

/* The size, in em, in which a block's stops fill it. */
static double
number_size (FfDayChart *chart, const FfChartBlock *block)
{
  g_autofree char *text = ff_neutral_block_text (block->stops);
  FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .size = 1 };
  double width = ff_labels_width (chart->labels, &label) / chart->em;
  double fits = (block->block.width / chart->em - 0.45) / width;

  return MIN (MIN (NUMBER_MOST, chart->share.block * 0.68), fits);
}

static gboolean
write_number (FfDayChart *chart, const FfChartBlock *block, double size)
{
  g_autofree char *text = ff_neutral_block_text (block->stops);
  FfColour shade = ff_palette_shade (&chart->palette, block->stops);
  FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .size = size, .align = 0.5,
                    .colour = ff_palette_ink_on (&chart->palette, shade),
                    .x = block->block.x + block->block.width / 2,
                    .y = block->block.y + block->block.height / 2,
                    .plate = chart->palette.hatched ? MIN (0.3, 0.2 * size) : 0 };

  return size >= NUMBER_LEAST && ff_labels_place (chart->labels, &label, NULL);
}

/* A block too narrow for its number has it above, or in a cascade beside, where all else that is
 * written begins after it. */
static void
write_number_outside (FfDayChart *chart, FfChartBlock *block)
{
  g_autofree char *text = ff_neutral_block_text (block->stops);
  gboolean above = chart->share.lanes == 1;
  FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .size = 0.85, .align = above ? 0.5 : 0,
                    .colour = chart->palette.ink, .plate = FF_CHART_PLATE,
                    .x = block->block.x + block->block.width / 2,
                    .y = block->block.y - 0.6 * chart->em };
  cairo_rectangle_t box;

  if (!above)
    {
      label.x = block->land_x + 0.35 * chart->em;
      label.y = block->block.y + block->block.height / 2;
    }
  if (ff_labels_place (chart->labels, &label, &box) && !above)
    block->text_x = box.x + box.width;
}

/* One size for all numbers that are large reads calmer than each as large as it can be. */
static void
write_numbers (FfDayChart *chart)
{
  double common = NUMBER_MOST;

  for (guint i = 0; i < chart->blocks->len; i++)
    {
      double size = number_size (chart, block_at (chart, i));

      if (size >= 1.1)
        common = MIN (common, size);
    }
  for (guint i = 0; i < chart->blocks->len; i++)
    {
      FfChartBlock *block = block_at (chart, i);

      if (!write_number (chart, block, MIN (number_size (chart, block), common)))
        write_number_outside (chart, block);
    }
}

/* Where a text of this width goes under a block, and how much it may take: half the way to the
 * neighbours' middles. At the ends of the axis it moves inwards. */
static double
place_under (const FfDayChart *chart,
             const FfDayPlan *plan,
             guint index,
             double width,
             double *ret_most)
{
  double middle = middle_of (chart, line_at (plan, index));
  double left = chart->axis.left - chart->pad, right = chart->width, half;

  if (index > 0)
    left = (middle_of (chart, line_at (plan, index - 1)) + middle) / 2;
  if (index + 1 < plan->lines->len)
    right = (middle_of (chart, line_at (plan, index + 1)) + middle) / 2;
  *ret_most = MAX (right - left - 0.4 * chart->em, 0.1);
  half = MIN (width, *ret_most) / 2 + 0.2 * chart->em;
  return CLAMP (middle, left + half, MAX (right - half, left + half));
}

/* The words, with a triangle before them. */
static void
write_caution (FfDayChart *chart, double x, double y, double align)
{
  double em = chart->em, pad = em;
  FfLabel label = { .text = _ ("no filter holds"), .style = FF_TEXT_STRONG,
                    .size = chart->palette.small, .colour = chart->palette.ink,
                    .x = x + (1 - 2 * align) * pad, .y = y, .align = align, .pad = pad,
                    .plate = FF_CHART_PLATE };
  cairo_rectangle_t kept;
  FfChartPoint foot;

  if (!ff_labels_place (chart->labels, &label, &kept))
    return;
  foot = (FfChartPoint) { kept.x + 0.5 * em, y + 0.38 * em };
  g_array_append_val (chart->cautions, foot);
}

static void
write_under (FfDayChart *chart, const FfDayPlan *plan, guint index)
{
  const FfPlanLine *line = line_at (plan, index);
  const FfChartBlock *block = block_at (chart, index);
  g_autofree char *shots = ff_chart_shots (line, " ");
  FfLabel label = shots_label (chart, shots);
  double most, x, row = UNDER_ROW * chart->em;

  label.x = place_under (chart, plan, index, ff_labels_width (chart->labels, &label), &most);
  label.y = block->block.y + block->block.height + 0.85 * chart->em;
  label.align = 0.5;
  label.max_width = most;
  ff_labels_place (chart->labels, &label, NULL);
  x = place_under (chart, plan, index, ff_chart_cell_width (chart, line->battery), &most);
  if (chart->share.under_rows > 1)
    ff_chart_place_cell (chart, line->battery, x, label.y + row, 0.5, most, NULL);
  if (chart->share.under_rows > 2 && !block->holds)
    write_caution (chart, middle_of (chart, line), label.y + 2 * row, 0.5);
}

/* Off-by times stand above the left edges, all or none. */
static void
write_off_times (FfDayChart *chart, const FfDayPlan *plan)
{
  FfLabel label = { .text = "00:00", .style = FF_TEXT_SMALL, .colour = chart->palette.soft,
                    .plate = FF_CHART_PLATE };
  double needs = ff_labels_width (chart->labels, &label) + 0.6 * chart->em;

  for (guint i = 0; i + 1 < chart->blocks->len; i++)
    if (block_at (chart, i + 1)->block.x - block_at (chart, i)->block.x < needs)
      return;
  for (guint i = 0; i < chart->blocks->len; i++)
    {
      g_autofree char *clock
          = ff_instant_clock ((double) line_at (plan, i)->off_by, chart->zone);

      label.text = clock;
      label.x = block_at (chart, i)->block.x;
      label.y = block_at (chart, i)->block.y - 0.65 * chart->em;
      ff_labels_place (chart->labels, &label, NULL);
    }
}

/* The labels beside a block, outwards from it. `way` is 1 to the right, -1 to the left. */
static gboolean
write_beside (FfDayChart *chart, const FfPlanLine *line, const FfChartBlock *block, int way)
{
  g_autofree char *shots = ff_chart_shots (line, " ");
  g_autofree char *off = ff_instant_clock ((double) line->off_by, chart->zone);
  FfLabel label = shots_label (chart, shots);
  double gap = 0.5 * chart->em * way;
  double y = block->block.y + block->block.height / 2;
  double x = (way > 0 ? block->text_x : block->block.x) + gap;
  cairo_rectangle_t box;

  label.x = x;
  label.y = y;
  label.align = way > 0 ? 0 : 1;
  label.max_width = 7 * chart->em;
  if (!ff_labels_place (chart->labels, &label, &box))
    return FALSE;
  x = way > 0 ? box.x + box.width + gap : box.x + gap;
  if (ff_chart_place_cell (chart, line->battery, x, y, label.align, 7 * chart->em, &box))
    x = way > 0 ? box.x + box.width + gap : box.x + gap;
  if (!block->holds)
    {
      write_caution (chart, x, y, label.align);
      return TRUE;
    }
  label = (FfLabel) { .text = off, .style = FF_TEXT_SMALL, .colour = chart->palette.soft, .x = x,
                      .y = y, .align = label.align, .plate = FF_CHART_PLATE };
  ff_labels_place (chart->labels, &label, NULL);
  return TRUE;
}

static void
write_cascade (FfDayChart *chart, const FfDayPlan *plan)
{
  for (guint i = 0; i < chart->blocks->len; i++)
    {
      const FfChartBlock *block = block_at (chart, i);
      double middle = block->block.x + block->block.width / 2;
      int way = middle > chart->width * 0.55 ? -1 : 1;

      if (!write_beside (chart, line_at (plan, i), block, way))
        write_beside (chart, line_at (plan, i), block, -way);
    }
}

static char *
minutes_text (int minutes)
{
  /* Translators: time on the ground between two sorties, short. */
  return minutes < 100 ? g_strdup_printf (_ ("%d min"), minutes)
                       : g_strdup_printf (_ ("%d h %02d min"), minutes / 60, minutes % 60);
}

static void
write_turn (FfDayChart *chart, const FfChartTurn *turn, int minutes, gboolean other_filter)
{
  g_autofree char *text = minutes_text (minutes);
  double room = turn->to_x - turn->from_x - 0.5 * chart->em;
  FfLabel label = { .text = text, .style = FF_TEXT_SMALL, .colour = chart->palette.soft,
                    .x = (turn->from_x + turn->to_x) / 2, .y = turn->y - 0.7 * chart->em,
                    .align = 0.5, .plate = FF_CHART_PLATE };

  if (ff_labels_width (chart->labels, &label) <= room)
    ff_labels_place (chart->labels, &label, NULL);
  /* Translators: under a turn-round: the filter is changed then. */
  label.text = _ ("filter");
  label.y = turn->y + 0.75 * chart->em;
  if (other_filter && ff_labels_width (chart->labels, &label) <= room)
    ff_labels_place (chart->labels, &label, NULL);
}

/* In a row a turn-round runs from block to block; in a cascade along the lane's lower edge. */
static void
add_turn (FfDayChart *chart, const FfDayPlan *plan, guint index)
{
  const FfChartBlock *from = block_at (chart, index), *to = block_at (chart, index + 1);
  const FfPlanLine *landed = line_at (plan, index), *next = line_at (plan, index + 1);
  double foot = from->block.y + from->block.height;
  FfChartTurn turn = { from->land_x, to->block.x, foot - from->block.height / 2, 0 };

  if (chart->share.lanes > 1)
    turn.y = foot + LANE_GAP / 2 * chart->em;
  turn.end_y = chart->share.lanes > 1 && to->block.y > turn.y ? to->block.y : turn.y;
  if (to->block.x <= from->land_x || (chart->share.lanes > 1 && to->block.y < turn.y))
    return;
  g_array_append_val (chart->turns, turn);
  if (chart->share.lanes == 1)
    write_turn (chart, &turn, (int) ((next->off_by - landed->down) / FF_MINUTE),
                landed->filter_stops != next->filter_stops);
}

static void
say_there_are_none (FfDayChart *chart)
{
  FfLabel label = { .text = _ ("No sorties planned"), .colour = chart->palette.soft,
                    .x = chart->axis.left + 0.4 * chart->em,
                    .y = chart->lanes.y + chart->lanes.height / 2,
                    .max_width = chart->axis.right - chart->axis.left };

  ff_labels_place (chart->labels, &label, NULL);
}

void
ff_chart_layout_sorties (FfDayChart *chart, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    add_block (chart, line_at (plan, i), i);
  write_numbers (chart);
  for (guint i = 0; i < chart->blocks->len; i++)
    {
      cairo_rectangle_t box = block_at (chart, i)->block;

      box.width = block_at (chart, i)->land_x - box.x;
      ff_labels_keep_off (chart->labels, &box);
    }
  for (guint i = 0; i < chart->blocks->len && chart->share.lanes == 1; i++)
    write_under (chart, plan, i);
  if (chart->share.lanes > 1)
    write_cascade (chart, plan);
  else if (chart->share.off_times)
    write_off_times (chart, plan);
  for (guint i = 0; i + 1 < chart->blocks->len; i++)
    add_turn (chart, plan, i);
  if (plan->lines->len == 0)
    say_there_are_none (chart);
}

static void
draw_turns (const FfDayChart *chart, cairo_t *cr)
{
  for (guint i = 0; i < chart->turns->len; i++)
    {
      const FfChartTurn *turn = &g_array_index (chart->turns, FfChartTurn, i);

      cairo_move_to (cr, turn->from_x, turn->y);
      cairo_line_to (cr, turn->to_x, turn->y);
      cairo_line_to (cr, turn->to_x, turn->end_y);
    }
  ff_colour_set (cr, chart->palette.soft);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
}

/* Down to land by: a thin bar that ends in a stop. */
static void
draw_landing (const FfDayChart *chart, cairo_t *cr, const FfChartBlock *block)
{
  double right = block->block.x + block->block.width, middle = block->block.height / 2;
  double y = block->block.y + middle, tick = 0.4 * chart->em;

  if (block->land_x - right < 0.5)
    return;
  ff_shape_line (cr, right, y, block->land_x, y);
  ff_shape_line (cr, block->land_x, y - tick, block->land_x, y + tick);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, 1.5 * chart->palette.line * chart->em);
  cairo_stroke (cr);
}

/* On the lower right corner of a block, on a plate of paper, so that it is seen on every shade and
 * stands in the way of no text; within the picture where the block is at its edge. */
static void
draw_padlock (const FfDayChart *chart, cairo_t *cr, const FfChartBlock *block)
{
  double size = 1.05 * chart->em, plate = 0.78 * chart->em;
  double x = MIN (block->block.x + block->block.width, chart->width - plate - 1);
  double y = block->block.y + block->block.height - 0.35 * chart->em;

  ff_shape_disc (cr, x, y, plate);
  ff_colour_set (cr, chart->palette.paper);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
  ff_shape_padlock_bow (cr, x, y, size);
  cairo_set_line_width (cr, 0.13 * chart->em);
  cairo_stroke (cr);
  ff_shape_padlock_body (cr, x, y, size);
  cairo_fill (cr);
}

/* A block that its filter does not hold is outlined in dashes as well as said to be so. */
static void
draw_block (const FfDayChart *chart, cairo_t *cr, const FfChartBlock *block)
{
  const double dash[] = { 0.35 * chart->em, 0.25 * chart->em };

  draw_landing (chart, cr, block);
  ff_neutral_block_field (cr, &chart->palette, &block->block, block->stops, chart->em);
  if (block->holds)
    return;
  cairo_save (cr);
  cairo_set_dash (cr, dash, G_N_ELEMENTS (dash), 0);
  ff_shape_rounded (cr, &block->block, 0.22 * chart->em);
  ff_colour_set (cr, chart->palette.hatched ? chart->palette.paper : chart->palette.attention);
  cairo_set_line_width (cr, 1.6 * chart->palette.line * chart->em);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
ff_chart_draw_sorties (const FfDayChart *chart, cairo_t *cr)
{
  draw_turns (chart, cr);
  for (guint i = 0; i < chart->blocks->len; i++)
    draw_block (chart, cr, block_at (chart, i));
  for (guint i = 0; i < chart->blocks->len; i++)
    if (block_at (chart, i)->locked)
      draw_padlock (chart, cr, block_at (chart, i));
}
