/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The upper half of the day chart: the sun's altitude over its bands, and the light in EV. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-day-chart-private.h"
#include "ff-shapes.h"

#define LOW_SUN_DEG 8.0
#define SUNSET_DEG (-0.8333) /* upper limb on the horizon, with refraction */
#define CIVIL_DEG (-6.0)
#define SUN_RADIUS 0.55 /* em */
#define DARKEST_EV (-4.0) /* below it a light is only guessed; the line stays at the bottom */

static const double bounds_deg[] = { LOW_SUN_DEG, SUNSET_DEG, CIVIL_DEG };

static FfSunPhase
phase_at (double altitude_deg)
{
  int phase = FF_PHASE_DAY;

  while (phase < FF_PHASE_NIGHT && altitude_deg < bounds_deg[phase])
    phase++;
  return (FfSunPhase) phase;
}

static double
sample_x (const FfDayChart *chart, const FfChartFacts *facts, double index)
{
  return ff_time_axis_x (&chart->axis, (double) facts->from + index * facts->step_s);
}

/* Where the altitude crosses from one phase to the next between two samples. */
static double
crossing (const double *altitude, guint i, FfSunPhase from, FfSunPhase to)
{
  double bound = bounds_deg[MIN (from, to)];
  double rise = altitude[i + 1] - altitude[i];

  return i + (rise != 0 ? CLAMP ((bound - altitude[i]) / rise, 0, 1) : 0.5);
}

static void
find_phases (FfDayChart *chart, const FfChartFacts *facts)
{
  const double *altitude = facts->sun_altitude_deg;
  FfChartPhase phase = { phase_at (altitude[0]), sample_x (chart, facts, 0), 0 };

  for (guint i = 0; i + 1 < facts->n_samples; i++)
    {
      FfSunPhase next = phase_at (altitude[i + 1]);

      if (next == phase.phase)
        continue;
      phase.right = sample_x (chart, facts, crossing (altitude, i, phase.phase, next));
      g_array_append_val (chart->phases, phase);
      phase = (FfChartPhase) { next, phase.right, 0 };
    }
  phase.right = sample_x (chart, facts, facts->n_samples - 1);
  g_array_append_val (chart->phases, phase);
}

/* A curve whose values low to high take the box from its bottom to its top. */
static void
trace (const FfDayChart *chart,
       const FfChartFacts *facts,
       const double *values,
       const cairo_rectangle_t *box,
       double low,
       double high,
       GArray *curve)
{
  for (guint i = 0; i < facts->n_samples; i++)
    {
      double part = CLAMP ((values[i] - low) / (high - low), 0, 1);
      FfChartPoint point = { sample_x (chart, facts, i),
                             isfinite (values[i]) ? box->y + box->height * (1 - part) : NAN };

      g_array_append_val (curve, point);
    }
}

static void
span_of (const double *values, guint n, double *low, double *high)
{
  for (guint i = 0; i < n; i++)
    if (isfinite (values[i]))
      {
        *low = MIN (*low, values[i]);
        *high = MAX (*high, values[i]);
      }
}

/* Where greys are lines a text needs a plate to be read on them. */
static double
plate_of (const FfDayChart *chart)
{
  return chart->palette.hatched ? 2 * FF_CHART_PLATE : 0;
}

static FfLabel
small_label (const FfDayChart *chart, const char *text, double x, double y)
{
  return (FfLabel) { .text = text, .style = FF_TEXT_SMALL, .colour = chart->palette.soft, .x = x,
                     .y = y, .plate = plate_of (chart) };
}

/* The highest (least) and lowest (largest) y of a curve between two x. */
static void
extremes (const GArray *curve, double left, double right, double *ret_least, double *ret_largest)
{
  *ret_least = INFINITY;
  *ret_largest = -INFINITY;
  for (guint i = 0; i < curve->len; i++)
    {
      const FfChartPoint *point = &g_array_index (curve, FfChartPoint, i);

      if (point->x < left || point->x > right || !isfinite (point->y))
        continue;
      *ret_least = MIN (*ret_least, point->y);
      *ret_largest = MAX (*ret_largest, point->y);
    }
}

/* On the side where the sun is down the text stands on the horizon, else above the curve. */
static gboolean
write_sun (FfDayChart *chart, const FfChartPoint *sun, const char *text, int side, gboolean dark)
{
  FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .colour = chart->palette.ink,
                    .size = chart->palette.small, .y = sun->y - 0.75 * chart->em,
                    .x = sun->x + side * (chart->sun_radius + 0.3 * chart->em),
                    .align = side > 0 ? 0 : 1, .plate = plate_of (chart) };
  double far = label.x + side * ff_labels_width (chart->labels, &label), least, largest;

  if (!dark)
    {
      extremes (chart->sun_curve, MIN (label.x, far), MAX (label.x, far), &least, &largest);
      label.y = MIN (label.y, least - 0.8 * chart->em);
    }
  return label.y - 0.5 * chart->em > chart->sun.y
         && ff_labels_place (chart->labels, &label, NULL);
}

/* Rise or set: half a sun on the horizon with its time, at the side where there is space. */
static void
add_sun (FfDayChart *chart, gint64 at, const char *name, int dark_side)
{
  g_autofree char *clock = ff_instant_clock ((double) at, chart->zone);
  g_autofree char *whole = g_strdup_printf ("%s %s", name, clock);
  FfChartPoint sun = { ff_time_axis_x (&chart->axis, (double) at), chart->horizon };

  if (at == 0 || !ff_time_axis_holds (&chart->axis, at))
    return;
  g_array_append_val (chart->suns, sun);
  if (!write_sun (chart, &sun, whole, dark_side, TRUE)
      && !write_sun (chart, &sun, clock, dark_side, TRUE)
      && !write_sun (chart, &sun, whole, -dark_side, FALSE))
    write_sun (chart, &sun, clock, -dark_side, FALSE);
}

/* The first of the names that fits its band. */
static void
name_phase (FfDayChart *chart, const FfChartPhase *phase, const char *const *names)
{
  double y = chart->sun.y + 0.85 * chart->em;

  for (; *names != NULL; names++)
    {
      FfLabel label = { .text = *names, .style = FF_TEXT_SMALL, .colour = chart->palette.soft,
                        .x = phase->left + 0.5 * chart->em, .y = y, .plate = plate_of (chart) };

      if (ff_labels_width (chart->labels, &label) + chart->em <= phase->right - phase->left
          && ff_labels_place (chart->labels, &label, NULL))
        return;
    }
}

static void
name_phases (FfDayChart *chart)
{
  const char *const low[] = { _ ("Low sun, below 8°"), _ ("Low sun"), NULL };
  const char *const twilight[] = { _ ("Civil twilight"), _ ("Twilight"), NULL };
  const char *const night[] = { _ ("Night"), NULL };

  for (guint i = 0; i < chart->phases->len; i++)
    {
      const FfChartPhase *phase = &g_array_index (chart->phases, FfChartPhase, i);

      if (phase->phase == FF_PHASE_LOW)
        name_phase (chart, phase, low);
      else if (phase->phase == FF_PHASE_TWILIGHT)
        name_phase (chart, phase, twilight);
      else if (phase->phase == FF_PHASE_NIGHT)
        name_phase (chart, phase, night);
    }
}

/* The altitude is written under the curve at the left, where the day begins. */
static void
write_altitude (FfDayChart *chart, const FfChartFacts *facts)
{
  /* Translators: the sun's altitude in degrees; first beside the name "Sun", then without it. */
  g_autofree char *text = g_strdup_printf (
      chart->has_gutter ? _ ("%.0f° high") : _ ("Sun %.0f° high"), facts->sun_altitude_deg[0]);
  FfLabel label = small_label (chart, text, chart->axis.left + 0.4 * chart->em, 0);
  double right = label.x + ff_labels_width (chart->labels, &label), least, lowest;

  extremes (chart->sun_curve, chart->axis.left, right, &least, &lowest);
  label.y = lowest + 0.8 * chart->em;
  if (label.y + 0.6 * chart->em < chart->horizon)
    ff_labels_place (chart->labels, &label, NULL);
}

/* The sun where it stands now. */
static void
add_sun_now (FfDayChart *chart,
             const FfChartFacts *facts,
             double low,
             double high,
             const cairo_rectangle_t *box)
{
  double altitude = ff_chart_sample (facts, facts->sun_altitude_deg, facts->now);
  double part = (altitude - low) / (high - low);
  FfChartPoint sun = { ff_time_axis_x (&chart->axis, (double) facts->now),
                       box->y + box->height * (1 - part) };

  if (facts->now != 0 && altitude > 0)
    g_array_append_val (chart->suns, sun);
}

static void
layout_sun (FfDayChart *chart, const FfChartFacts *facts)
{
  double low = 0, high = 10;
  cairo_rectangle_t box = chart->sun;

  span_of (facts->sun_altitude_deg, facts->n_samples, &low, &high);
  low = MAX (low, -7);
  box.y += 0.5 * chart->em;
  box.height -= 0.8 * chart->em;
  trace (chart, facts, facts->sun_altitude_deg, &box, low, high, chart->sun_curve);
  chart->sun_radius = MIN (SUN_RADIUS * chart->em, chart->pad);
  chart->horizon = floor (box.y + box.height * (1 - (0 - low) / (high - low))) + 0.5;
  add_sun (chart, facts->sunset, _ ("Sunset"), 1);
  add_sun (chart, facts->sunrise, _ ("Sunrise"), -1);
  name_phases (chart);
  write_altitude (chart, facts);
  add_sun_now (chart, facts, low, high, &box);
}

/* Where the light passes a round value, going up or down. */
typedef struct {
  FfChartPoint point;
  int level;
  gboolean rising;
} Passing;

static void
find_passings (const FfDayChart *chart, const FfChartFacts *facts, int round, GArray *passings)
{
  const double *ev = facts->ev100;

  for (guint i = 0; i + 1 < facts->n_samples; i++)
    {
      double low = MIN (ev[i], ev[i + 1]), high = MAX (ev[i], ev[i + 1]);
      double level = ceil (low / round) * round, part = (level - ev[i]) / (ev[i + 1] - ev[i]);
      const FfChartPoint *at = &g_array_index (chart->light_curve, FfChartPoint, i);
      Passing passing = { .level = (int) level, .rising = ev[i + 1] > ev[i] };

      if (!isfinite (low) || !isfinite (high) || level >= high || level <= DARKEST_EV)
        continue;
      passing.point.x = at[0].x + part * (at[1].x - at[0].x);
      passing.point.y = at[0].y + part * (at[1].y - at[0].y);
      g_array_append_val (passings, passing);
    }
}

static gboolean
stand_clear (const GArray *passings, double distance)
{
  for (guint i = 0; i + 1 < passings->len; i++)
    if (g_array_index (passings, Passing, i + 1).point.x
        < g_array_index (passings, Passing, i).point.x + distance)
      return FALSE;
  return TRUE;
}

/* The value stands on the side of the line where there is no line. */
static void
write_passing (FfDayChart *chart, const Passing *passing)
{
  g_autofree char *text
      = g_strdup_printf ("%s%d", passing->level < 0 ? "−" : "", ABS (passing->level));
  FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .colour = chart->palette.ink,
                    .x = passing->point.x + (passing->rising ? -0.35 : 0.35) * chart->em,
                    .y = passing->point.y - 0.75 * chart->em,
                    .align = passing->rising ? 1 : 0, .plate = plate_of (chart) / 2 };

  if (ff_labels_place (chart->labels, &label, NULL))
    g_array_append_val (chart->dots, passing->point);
}

/* Every round value, or by the next coarser rounding where a fast light would crowd them. */
static void
write_values (FfDayChart *chart, const FfChartFacts *facts)
{
  static const int rounds[] = { 1, 2, 3, 5 };
  g_autoptr (GArray) passings = g_array_new (FALSE, FALSE, sizeof (Passing));

  for (guint r = 0; r < G_N_ELEMENTS (rounds); r++)
    {
      g_array_set_size (passings, 0);
      find_passings (chart, facts, rounds[r], passings);
      if (stand_clear (passings, 1.6 * chart->em))
        break;
    }
  for (guint i = 0; i < passings->len; i++)
    write_passing (chart, &g_array_index (passings, Passing, i));
}

/* How sure the light is, in words, once, where the day begins; without space its name alone. */
static void
write_spread (FfDayChart *chart, const FfChartFacts *facts)
{
  double spread = (facts->high_ev100[0] - facts->low_ev100[0]) / 2, right, least, lowest;
  g_autofree char *value = ff_chart_one_decimal (facts->ev100[0]);
  g_autofree char *by = ff_chart_one_decimal (spread);
  /* Translators: light in exposure values and how far it may be off; first beside the name
   * "Light", then without it. */
  g_autofree char *text = g_strdup_printf (
      chart->has_gutter ? _ ("EV %s ± %s") : _ ("Light EV %s ± %s"), value, by);
  FfLabel label = small_label (chart, text, chart->axis.left + 0.4 * chart->em, 0);

  if (!isfinite (spread))
    return;
  right = label.x + ff_labels_width (chart->labels, &label);
  extremes (chart->low_curve, chart->axis.left, right, &least, &lowest);
  label.y = lowest + 0.8 * chart->em;
  if (label.y + 0.6 * chart->em > chart->light.y + chart->light.height)
    label.y = g_array_index (chart->high_curve, FfChartPoint, 0).y - 0.9 * chart->em;
  if (ff_labels_place (chart->labels, &label, NULL) || chart->has_gutter)
    return;
  label.text = _ ("Light, EV");
  ff_labels_place (chart->labels, &label, NULL);
}

/* Drawn as lines, edges that run close beside the light itself would only thicken it. */
static void
lift_close_edges (const FfDayChart *chart, GArray *edge)
{
  double least = 1.9 * chart->palette.line * chart->em;

  for (guint i = 0; i < edge->len; i++)
    {
      FfChartPoint *point = &g_array_index (edge, FfChartPoint, i);

      if (fabs (point->y - g_array_index (chart->light_curve, FfChartPoint, i).y) < least)
        point->y = NAN;
    }
}

/* A mark on the light where it was measured; its time and offset hang on the pole above. */
static void
add_readings (FfDayChart *chart, const FfChartFacts *facts)
{
  for (guint i = 0; i < facts->events->len; i++)
    {
      const FfChartEvent *event = g_ptr_array_index (facts->events, i);
      guint sample = (guint) MAX ((event->at - facts->from + facts->step_s - 1) / facts->step_s, 0);
      FfChartPoint mark = { ff_time_axis_x (&chart->axis, (double) event->at), NAN };

      if (!event->is_reading || !ff_time_axis_holds (&chart->axis, event->at)
          || sample >= chart->light_curve->len)
        continue;
      /* The first sample that knows of it. */
      mark.y = g_array_index (chart->light_curve, FfChartPoint, sample).y;
      if (isfinite (mark.y))
        g_array_append_val (chart->readings, mark);
    }
}

static void
layout_light (FfDayChart *chart, const FfChartFacts *facts)
{
  double low = INFINITY, high = -INFINITY;
  cairo_rectangle_t box = chart->light;

  span_of (facts->low_ev100, facts->n_samples, &low, &high);
  span_of (facts->high_ev100, facts->n_samples, &low, &high);
  span_of (facts->ev100, facts->n_samples, &low, &high);
  low = MAX (low, DARKEST_EV);
  high = MAX (high, low + 1);
  if (high - low < 4)
    low = high - 4;
  box.y += 0.9 * chart->em;
  box.height -= 1.3 * chart->em;
  trace (chart, facts, facts->ev100, &box, low, high, chart->light_curve);
  trace (chart, facts, facts->low_ev100, &box, low, high, chart->low_curve);
  trace (chart, facts, facts->high_ev100, &box, low, high, chart->high_curve);
  add_readings (chart, facts);
  write_spread (chart, facts);
  write_values (chart, facts);
  if (chart->palette.hatched)
    {
      lift_close_edges (chart, chart->low_curve);
      lift_close_edges (chart, chart->high_curve);
    }
}

/* Event flags were hung before; their poles run through here and texts keep off them. */
static void
keep_off_poles (FfDayChart *chart)
{
  for (guint i = 0; i < chart->poles->len; i++)
    {
      const FfChartPole *pole = &g_array_index (chart->poles, FfChartPole, i);
      cairo_rectangle_t box = { pole->x - 0.1 * chart->em, chart->sky.y, 0.2 * chart->em,
                                chart->sky.height };

      ff_labels_keep_off (chart->labels, &box);
    }
}

/* Without a gutter sun and light are named where they are written; the ribbon just above. */
static void
write_caption (FfDayChart *chart)
{
  FfLabel label = small_label (chart, _ ("Need, stops"), chart->axis.left + 0.4 * chart->em,
                               chart->need.y - 0.7 * chart->em);

  if (!chart->has_gutter && chart->share.need)
    ff_labels_place (chart->labels, &label, NULL);
}

void
ff_chart_layout_sky (FfDayChart *chart, const FfChartFacts *facts)
{
  keep_off_poles (chart);
  if (chart->share.sun)
    {
      find_phases (chart, facts);
      layout_sun (chart, facts);
    }
  if (chart->share.light)
    layout_light (chart, facts);
  write_caption (chart);
}
