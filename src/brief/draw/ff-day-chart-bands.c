/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who gets how much of the chart's height. Where there is little, parts are given up one by one,
 * the least needed first; where there is much, curves and blocks grow up to what reads well. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-chart-private.h"

/* Heights in em. */
#define SUN_LEAST 2.6
#define SUN_GOOD 3.6
#define SUN_MOST 8.5
#define LIGHT_LEAST 3.0
#define LIGHT_GOOD 5.0
#define LIGHT_MOST 14.0
#define NEED_HEIGHT 1.9
#define RULER_HEIGHT 1.9
#define OFF_ROW 1.3
#define UNDER_ROW 1.5
#define BLOCK_LEAST 1.6
#define BLOCK_HEIGHT 3.2
#define BLOCK_MOST 4.4
#define LANE_HEIGHT 2.5
#define LANE_MOST 3.4
#define LANE_GAP 0.5
#define CHARGE_ROW 1.8
#define WORD_ROW 1.5
#define GAP 0.7
#define GUTTER 6.6 /* at least; as wide as its names need, */
#define GUTTER_MOST 10.0
#define WIDE 46.0 /* from here on names stand in a gutter */

#define MOST_LANES 12
#define N_LEVELS 10

static gboolean
any_finite (const double *values, guint n)
{
  for (guint i = 0; values != NULL && i < n; i++)
    if (isfinite (values[i]))
      return TRUE;
  return FALSE;
}

static gboolean
any_does_not_hold (const FfDayPlan *plan)
{
  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    if (!ff_chart_line_holds (g_ptr_array_index (plan->lines, i)))
      return TRUE;
  return FALSE;
}

/* A cascade where the text does not fit under the blocks. */
static int
wanted_lanes (FfDayChart *chart, const FfDayPlan *plan)
{
  if (plan == NULL || ff_chart_sorties_fit_one_row (chart, plan))
    return 1;
  return (int) MIN (plan->lines->len, MOST_LANES);
}

/* One caution is one line, or two where the chart is narrow. */
static int
wanted_word_lines (const FfDayChart *chart, const FfDayPlan *plan)
{
  g_autoptr (GPtrArray) sentences = ff_chart_sentences (plan);

  return (int) MIN (sentences->len, 4) * (chart->has_gutter ? 1 : 2);
}

static FfChartShare
everything (FfDayChart *chart, const FfChartFacts *facts, const FfDayPlan *plan)
{
  FfChartShare share = { .off_times = TRUE, .under_rows = 2, .block = BLOCK_HEIGHT };

  share.flag_rows = ff_chart_flag_rows (chart, facts);
  share.sun = any_finite (facts->sun_altitude_deg, facts->n_samples);
  share.light = any_finite (facts->ev100, facts->n_samples);
  share.need = any_finite (facts->need_stops, facts->n_samples);
  share.lanes = wanted_lanes (chart, plan);
  if (any_does_not_hold (plan))
    share.under_rows = 3;
  if (plan != NULL)
    share.charge_lanes = (int) MIN (plan->charges->len, 3);
  share.word_lines = wanted_word_lines (chart, plan);
  return share;
}

/* Gives up one thing more at each level; the table keeps them all. */
static void
give_up (FfChartShare *share, int level)
{
  switch (level)
    {
    case 1:
      share->charge_lanes = MIN (share->charge_lanes, 2);
      share->word_lines = MIN (share->word_lines, 2);
      break;
    case 2:
      share->flag_rows = MIN (share->flag_rows, 2);
      share->off_times = FALSE;
      break;
    case 3:
      share->lanes = share->lanes > 4 ? 4 : share->lanes;
      break;
    case 4:
      share->charge_lanes = MIN (share->charge_lanes, 1);
      share->flag_rows = MIN (share->flag_rows, 1);
      share->lanes = 1;
      break;
    case 5:
      share->sun = FALSE;
      break;
    case 6:
      share->word_lines = MIN (share->word_lines, 1);
      share->block = 2.2;
      break;
    case 7:
      share->light = FALSE;
      break;
    case 8:
      share->charge_lanes = 0;
      share->flag_rows = 0;
      break;
    case 9:
      share->under_rows = MIN (share->under_rows, 1);
      share->block = BLOCK_LEAST;
      break;
    default:
      break;
    }
}

static double
lanes_height (const FfChartShare *share)
{
  if (share->lanes > 1)
    return share->lanes * LANE_HEIGHT;
  return (share->off_times ? OFF_ROW : 0) + share->block + share->under_rows * UNDER_ROW;
}

static double
least_height (const FfChartShare *share)
{
  return share->flag_rows * FF_CHART_FLAG_ROW + (share->sun ? SUN_LEAST : 0)
         + (share->light ? LIGHT_LEAST : 0) + (share->need ? NEED_HEIGHT : 0) + RULER_HEIGHT + GAP
         + lanes_height (share) + share->charge_lanes * CHARGE_ROW
         + (share->charge_lanes > 0 ? GAP : 0) + share->word_lines * WORD_ROW
         + (share->word_lines > 0 ? GAP / 2 : 0);
}

static cairo_rectangle_t
band (const FfDayChart *chart, double *y, double height_em)
{
  cairo_rectangle_t box = { chart->axis.left, *y, chart->axis.right - chart->axis.left,
                            height_em * chart->em };

  *y += box.height;
  return box;
}

/* Hands out what is left over: first to the curves, then to the blocks. */
static void
grow (const FfDayChart *chart,
      double spare,
      double *ret_sun,
      double *ret_light,
      double *ret_lanes)
{
  const FfChartShare *share = &chart->share;
  double sun_most = share->sun ? SUN_MOST - SUN_LEAST : 0;
  double light_most = share->light ? LIGHT_MOST - LIGHT_LEAST : 0;
  double block_most = share->lanes > 1 ? share->lanes * (LANE_MOST - LANE_HEIGHT)
                                       : BLOCK_MOST - share->block;
  double part = share->light ? 0.4 : 1;

  *ret_sun = MIN (spare * part, sun_most);
  *ret_light = MIN (spare - *ret_sun, light_most);
  *ret_sun = MIN (spare - *ret_light, sun_most);
  *ret_lanes = CLAMP (spare - *ret_sun - *ret_light, 0, block_most);
}

static void
divide (FfDayChart *chart, double free_em)
{
  FfChartShare *share = &chart->share;
  double sun, light, lanes, y = chart->pad, spare = MAX (free_em - least_height (share), 0);

  grow (chart, spare, &sun, &light, &lanes);
  spare -= sun + light + lanes;
  y += spare / 2 * chart->em;
  chart->flags = band (chart, &y, share->flag_rows * FF_CHART_FLAG_ROW);
  chart->sun = band (chart, &y, share->sun ? SUN_LEAST + sun : 0);
  chart->light = band (chart, &y, share->light ? LIGHT_LEAST + light : 0);
  chart->need = band (chart, &y, share->need ? NEED_HEIGHT : 0);
  chart->ruler = band (chart, &y, RULER_HEIGHT);
  band (chart, &y, GAP);
  chart->lanes = band (chart, &y, lanes_height (share) + lanes);
  if (share->lanes == 1)
    share->block += lanes;
  else
    share->block = chart->lanes.height / chart->em / share->lanes - LANE_GAP;
  band (chart, &y, share->charge_lanes > 0 ? GAP : 0);
  chart->charger = band (chart, &y, share->charge_lanes * CHARGE_ROW);
  band (chart, &y, share->word_lines > 0 ? GAP / 2 : 0);
  chart->words = band (chart, &y, share->word_lines * WORD_ROW);
  chart->sky = chart->sun;
  chart->sky.height += chart->light.height;
}

static void
write_name (FfDayChart *chart, const cairo_rectangle_t *part, const char *name, double y)
{
  FfLabel label = { .text = name, .style = FF_TEXT_SMALL, .colour = chart->palette.soft,
                    .x = chart->pad, .y = y,
                    .max_width = chart->axis.left - chart->pad - 0.6 * chart->em };

  if (part->height > 0)
    ff_labels_place (chart->labels, &label, NULL);
}

static double
middle_of (const cairo_rectangle_t *box)
{
  return box->y + box->height / 2;
}

static void
write_names (FfDayChart *chart, const FfDayPlan *plan)
{
  cairo_rectangle_t gutter = { 0, chart->lanes.y, chart->axis.left - chart->pad,
                               chart->charger.y + chart->charger.height - chart->lanes.y };
  const FfChartShare *share = &chart->share;
  double block_top = chart->lanes.y;

  if (share->lanes == 1 && share->off_times)
    block_top += OFF_ROW * chart->em;
  write_name (chart, &chart->sun, _ ("Sun"), middle_of (&chart->sun));
  /* Translators: light in exposure values at ISO 100. */
  write_name (chart, &chart->light, _ ("Light, EV"), middle_of (&chart->light));
  /* Translators: how many stops of filter the camera would need. */
  write_name (chart, &chart->need, _ ("Need, stops"), middle_of (&chart->need));
  if (plan != NULL)
    {
      write_name (chart, &chart->lanes, _ ("Sorties"), block_top + share->block / 2 * chart->em);
      write_name (chart, &chart->charger, _ ("Charger"),
                  chart->charger.y + CHARGE_ROW / 2 * chart->em);
    }
  ff_labels_keep_off (chart->labels, &gutter);
}

static double
gutter_width (FfDayChart *chart)
{
  const char *const names[] = { _ ("Sun"), _ ("Light, EV"), _ ("Need, stops"), _ ("Sorties"),
                                _ ("Charger") };
  double width = GUTTER * chart->em;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      FfLabel label = { .text = names[i], .style = FF_TEXT_SMALL };

      width = MAX (width, ff_labels_width (chart->labels, &label) + 0.8 * chart->em);
    }
  return MIN (width, GUTTER_MOST * chart->em);
}

static void
set_sides (FfDayChart *chart)
{
  chart->pad = MIN (1.0 * chart->em, chart->width / 40);
  chart->has_gutter = chart->width >= WIDE * chart->em;
  chart->axis.left = chart->pad + (chart->has_gutter ? gutter_width (chart) : 0);
  chart->axis.right = MAX (chart->width - chart->pad, chart->axis.left + 1);
}

double
ff_chart_wanted_height (FfDayChart *chart, const FfChartFacts *facts, const FfDayPlan *plan)
{
  FfChartShare share;
  double more = 0;

  set_sides (chart);
  share = everything (chart, facts, plan);
  more += share.sun ? SUN_GOOD - SUN_LEAST : 0;
  more += share.light ? LIGHT_GOOD - LIGHT_LEAST : 0;
  return ceil ((least_height (&share) + more) * chart->em + 2 * chart->pad);
}

void
ff_chart_layout_bands (FfDayChart *chart, const FfChartFacts *facts, const FfDayPlan *plan)
{
  double free_em;

  set_sides (chart);
  free_em = (chart->height - 2 * chart->pad) / chart->em;
  chart->share = everything (chart, facts, plan);
  for (int level = 1; level < N_LEVELS && least_height (&chart->share) > free_em; level++)
    give_up (&chart->share, level);
  divide (chart, free_em);
  if (chart->has_gutter)
    write_names (chart, plan);
}
