/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The charger's queue, and the sentences below everything. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-day-chart-private.h"
#include "ff-shapes.h"

#define CHARGE_ROW 1.8
#define BAR 1.3 /* height of a bar, em */
#define WORD_ROW 1.5

static double
lane_middle (const FfDayChart *chart, int lane)
{
  return chart->charger.y + (lane + 0.5) * CHARGE_ROW * chart->em;
}

static cairo_rectangle_t
bar_box (const FfDayChart *chart, const FfChartCharge *charge)
{
  return (cairo_rectangle_t) { charge->from_x, charge->y - BAR / 2 * chart->em,
                               MAX (charge->ready_x - charge->from_x, 1), BAR * chart->em };
}

/* What is said at the right of the bar, from the whole to nothing. */
static char *
ready_text (const FfDayChart *chart, const FfPlanCharge *charge, int form)
{
  g_autofree char *clock = ff_instant_clock ((double) charge->ready_at, chart->zone);

  if (form == 0 && charge->attended_by != NULL && charge->attended_by[0] != '\0')
    /* Translators: a battery is charged by this time, and who watches the charger. */
    return g_strdup_printf (_ ("ready %s, attended by %s"), clock, charge->attended_by);
  if (form <= 1)
    /* Translators: a battery is charged by this time. */
    return g_strdup_printf (_ ("ready %s"), clock);
  if (form > 2) /* it is ready later than the part of the day that is shown */
    return g_strdup ("");
  return g_steal_pointer (&clock);
}

static void
write_within (FfDayChart *chart, const char *text, double left, double right, double y, FfColour on)
{
  FfLabel label = { .text = text, .style = FF_TEXT_SMALL, .colour = on, .x = (left + right) / 2,
                    .y = y, .align = 0.5 };

  if (ff_labels_width (chart->labels, &label) + 0.5 * chart->em <= right - left)
    ff_labels_place (chart->labels, &label, NULL);
}

/* Battery, bar and words on one lane, or nothing. */
static gboolean
try_lane (FfDayChart *chart, const FfPlanCharge *plan, FfChartCharge *charge, int lane, int form)
{
  g_autofree char *ready = ready_text (chart, plan, form);
  double em = chart->em, cell = ff_chart_cell_width (chart, plan->battery) + 0.6 * em;
  FfLabel label = { .text = ready, .style = FF_TEXT_SMALL, .colour = chart->palette.ink,
                    .x = charge->ready_x + 0.5 * em, .plate = FF_CHART_PLATE };
  cairo_rectangle_t bar, whole;

  charge->y = label.y = lane_middle (chart, lane);
  bar = bar_box (chart, charge);
  whole = bar;
  whole.x -= cell;
  whole.width += cell + 0.8 * em + ff_labels_width (chart->labels, &label);
  if (whole.x + whole.width > chart->width - 1 || whole.x < 1
      || !ff_labels_is_free (chart->labels, &whole))
    return FALSE;
  if (*ready != '\0')
    ff_labels_place (chart->labels, &label, NULL);
  ff_chart_place_cell (chart, plan->battery, bar.x - 0.3 * em, charge->y, 1, 0, NULL);
  write_within (chart, _ ("cools"), charge->from_x, charge->charge_x, charge->y,
                chart->palette.ink);
  write_within (chart, _ ("charges"), charge->charge_x, charge->ready_x, charge->y,
                chart->palette.ink);
  ff_labels_keep_off (chart->labels, &bar);
  g_array_append_val (chart->charges, *charge);
  return TRUE;
}

static void
add_charge (FfDayChart *chart, const FfPlanCharge *plan)
{
  FfChartCharge charge = { ff_time_axis_x (&chart->axis, (double) plan->cool_from),
                           ff_time_axis_x (&chart->axis, (double) plan->charge_from),
                           ff_time_axis_x (&chart->axis, (double) plan->ready_at), 0 };

  int forms = ff_time_axis_holds (&chart->axis, plan->ready_at) ? 3 : 4;

  for (int form = 0; form < forms; form++)
    for (int lane = 0; lane < chart->share.charge_lanes; lane++)
      if (try_lane (chart, plan, &charge, lane, form))
        return;
}

void
ff_chart_layout_charger (FfDayChart *chart, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->charges->len; i++)
    add_charge (chart, g_ptr_array_index (plan->charges, i));
}

/* Cooling is an empty outline, charging a full bar, ready an upright at its end. */
static void
draw_charge (const FfDayChart *chart, cairo_t *cr, const FfChartCharge *charge)
{
  const double dots[] = { 0.2 * chart->em, 0.2 * chart->em };
  cairo_rectangle_t bar = bar_box (chart, charge);
  double right = bar.x + bar.width;

  cairo_save (cr);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  cairo_rectangle (cr, bar.x, bar.y, charge->charge_x - bar.x, bar.height);
  ff_colour_set (cr, chart->palette.paper);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.soft);
  cairo_stroke (cr);
  cairo_restore (cr);
  cairo_rectangle (cr, charge->charge_x, bar.y, right - charge->charge_x, bar.height);
  ff_colour_set (cr, chart->palette.hatched ? chart->palette.paper : chart->palette.spread);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.soft);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
  ff_shape_line (cr, right, bar.y, right, bar.y + bar.height);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, 1.5 * chart->palette.line * chart->em);
  cairo_stroke (cr);
}

void
ff_chart_draw_charger (const FfDayChart *chart, cairo_t *cr)
{
  for (guint i = 0; i < chart->charges->len; i++)
    draw_charge (chart, cr, &g_array_index (chart->charges, FfChartCharge, i));
  for (guint i = 0; i < chart->cells->len; i++)
    ff_shape_battery (cr, &g_array_index (chart->cells, cairo_rectangle_t, i));
  ff_colour_set (cr, chart->palette.paper);
  cairo_fill_preserve (cr);
  ff_colour_set (cr, chart->palette.ink);
  cairo_set_line_width (cr, chart->palette.hair * chart->em);
  cairo_stroke (cr);
}

/* Places one sentence behind a caution's triangle and returns how many lines it took; 0: there was
 * no space. */
static int
write_sentence (FfDayChart *chart, const char *text, int line, int lines_left)
{
  double em = chart->em, indent = 1.2 * em;
  double y = chart->words.y + (line + 0.5) * WORD_ROW * em;
  FfLabel label = { .text = text, .colour = chart->palette.ink, .x = chart->axis.left + indent,
                    .y = y, .max_width = MAX (chart->axis.right - chart->axis.left - indent, em),
                    .max_lines = MIN (lines_left, 2) };
  FfChartPoint foot = { chart->axis.left + 0.45 * em, y + 0.38 * em };
  int lines = ff_labels_lines (chart->labels, &label);

  if (!ff_labels_place (chart->labels, &label, NULL))
    return 0;
  g_array_append_val (chart->cautions, foot);
  return lines;
}

void
ff_chart_layout_words (FfDayChart *chart, const FfDayPlan *plan)
{
  g_autoptr (GPtrArray) sentences = ff_chart_sentences (plan);
  int line = 0, lines = chart->share.word_lines;

  for (guint i = 0; i < sentences->len && line < lines; i++)
    {
      guint left = sentences->len - i;
      g_autofree char *more = g_strdup_printf (
          /* Translators: there was no space for these cautions; the number is above 1. */
          ngettext ("%u more caution in the table", "%u more cautions in the table", left), left);
      gboolean last = line == lines - 1 && left > 1;

      line += write_sentence (chart, last ? more : g_ptr_array_index (sentences, i), line,
                              left > 1 ? MAX (lines - line - 1, 1) : lines - line);
      if (last)
        break;
    }
}
