/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-hours.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-labels.h"
#include "ff-neutral-block.h"
#include "ff-shapes.h"
#include "ff-time-axis.h"

/* In em. */
#define GUTTER_EM 2.6
#define CURVE_EM 9.0
#define TIMES_EM 1.7
#define BAR_EM 1.7
#define BETWEEN_EM 0.5
#define SUN_DOWN_DEG (-0.8333)
#define LOW_SUN_DEG 8.0
#define STEP_S (5 * FF_MINUTE)

typedef struct {
  cairo_t *cr;
  const FfPalette *palette;
  const FfLightStudy *study;
  FfLabels *labels;
  double em;
  FfTimeAxis axis;
  double low, high; /* stops at the foot and the top of the curve */
  gboolean need;    /* the curve is the need; else the light, of stills */
  double bottom;    /* of the whole */
} Hours;

double
ff_light_hours_height (const FfLightStudy *study, double em)
{
  return (CURVE_EM + TIMES_EM + (BAR_EM + BETWEEN_EM) * study->hours->len + BETWEEN_EM) * em;
}

static FfTimeAxis
axis_of (const FfLightStudy *study, double em, double width)
{
  return (FfTimeAxis) { study->from, study->to, GUTTER_EM * em, width - 0.8 * em,
                        ff_day_zone (study->query.day) };
}

gint64
ff_light_hours_at (const FfLightStudy *study, double em, double width, double x)
{
  FfTimeAxis axis = axis_of (study, em, width);
  double share = CLAMP ((x - axis.left) / (axis.right - axis.left), 0, 1);

  return (axis.from + (gint64) (share * (double) (axis.to - axis.from))) / STEP_S * STEP_S;
}

/* The ground: twilight and low sun */

static FfColour
ground_of (const Hours *hours, double altitude_deg)
{
  if (altitude_deg < SUN_DOWN_DEG)
    return hours->palette->twilight;
  return altitude_deg < LOW_SUN_DEG ? hours->palette->low_sun : hours->palette->paper;
}

static void
draw_ground (const Hours *hours)
{
  const FfLightStudy *study = hours->study;

  for (guint i = 0; i + 1 < study->n_samples; i++)
    {
      double left = ff_time_axis_x (&hours->axis, (double) (study->from + (gint64) i * STEP_S));
      double right
          = ff_time_axis_x (&hours->axis, (double) (study->from + (gint64) (i + 1) * STEP_S));

      ff_colour_set (hours->cr, ground_of (hours, study->sun_altitude_deg[i]));
      cairo_rectangle (hours->cr, left, 0, right - left + 0.5, CURVE_EM * hours->em);
      cairo_fill (hours->cr);
    }
}

/* What the ground means, in words where there is room for them; where greys would not survive the
 * low sun is slanted as well. */
static void
name_ground (Hours *hours, guint from, guint to, const char *text)
{
  double left = ff_time_axis_x (&hours->axis, (double) (hours->study->from + (gint64) from * STEP_S));
  double right = ff_time_axis_x (&hours->axis, (double) (hours->study->from + (gint64) to * STEP_S));
  cairo_rectangle_t band = { left, 0, right - left, CURVE_EM * hours->em };
  FfLabel label = { .text = text, .style = FF_TEXT_SMALL, .colour = hours->palette->soft,
                    .align = 0.5, .x = (left + right) / 2, .y = 0.8 * hours->em, .plate = 0.1 };

  if (hours->palette->hatched)
    {
      ff_shape_slants (hours->cr, &band, 0.9 * hours->em);
      ff_colour_set (hours->cr, hours->palette->ink);
      cairo_set_line_width (hours->cr, hours->palette->hair * hours->em);
      cairo_stroke (hours->cr);
    }
  if (ff_labels_width (hours->labels, &label) < band.width)
    ff_labels_place (hours->labels, &label, NULL);
}

static void
name_grounds (Hours *hours)
{
  const double *altitudes = hours->study->sun_altitude_deg;
  guint from = 0;

  for (guint i = 1; i <= hours->study->n_samples; i++)
    {
      gboolean low = altitudes[from] >= SUN_DOWN_DEG && altitudes[from] < LOW_SUN_DEG;
      gboolean ends = i == hours->study->n_samples
                      || (altitudes[i] >= SUN_DOWN_DEG && altitudes[i] < LOW_SUN_DEG) != low;

      if (ends && low)
        /* Translators: short name of a band in a drawing: the sun is less than 8° high. */
        name_ground (hours, from, MIN (i, hours->study->n_samples - 1), _ ("low sun"));
      if (ends)
        from = MIN (i, hours->study->n_samples - 1);
    }
}

/* The curve */

static const double *
curve_of (const Hours *hours)
{
  return hours->need ? hours->study->need_stops : hours->study->ev100;
}

static double
y_of (const Hours *hours, double stops)
{
  double share = CLAMP ((stops - hours->low) / (hours->high - hours->low), 0, 1);

  return (CURVE_EM - 0.5 - share * (CURVE_EM - 1.0)) * hours->em;
}

static void
measure (Hours *hours)
{
  const double *curve;

  hours->need = hours->study->n_samples > 0 && isfinite (hours->study->need_stops[0]);
  curve = curve_of (hours);
  hours->high = -INFINITY;
  for (guint i = 0; i < hours->study->n_samples; i++)
    hours->high = MAX (hours->high, curve[i]);
  hours->high = ceil (hours->high + 0.3);
  hours->low = hours->need ? MIN (-1, hours->high - 4) : MAX (0, hours->high - 10);
}

static void
draw_levels (Hours *hours)
{
  for (int stops = (int) ceil (hours->low); stops <= (int) hours->high; stops++)
    {
      double y = y_of (hours, stops);
      g_autofree char *text = g_strdup_printf (stops < 0 ? "−%d" : "%d", ABS (stops));
      FfLabel label = { .text = text, .style = FF_TEXT_SMALL, .colour = hours->palette->soft,
                        .align = 1, .x = hours->axis.left - 0.4 * hours->em, .y = y };

      /* Thick black lines would cross out what they lead to. */
      ff_shape_line (hours->cr, hours->axis.left, y,
                     hours->palette->hatched ? hours->axis.left + 0.5 * hours->em
                                             : hours->axis.right,
                     y);
      ff_labels_place (hours->labels, &label, NULL);
    }
  ff_colour_set (hours->cr, hours->palette->guide);
  cairo_set_line_width (hours->cr, hours->palette->hair * hours->em);
  cairo_stroke (hours->cr);
}

static void
draw_curve (const Hours *hours)
{
  const double *curve = curve_of (hours);

  for (guint i = 0; i < hours->study->n_samples; i++)
    {
      double x = ff_time_axis_x (&hours->axis,
                                 (double) (hours->study->from + (gint64) i * STEP_S));

      if (curve[i] < hours->low)
        cairo_new_sub_path (hours->cr);
      else
        cairo_line_to (hours->cr, x, y_of (hours, curve[i]));
    }
  ff_colour_set (hours->cr, hours->palette->ink);
  cairo_set_line_width (hours->cr, 1.8 * hours->palette->line * hours->em);
  cairo_set_line_join (hours->cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (hours->cr);
}

static void
draw_times (Hours *hours)
{
  int step = ff_time_axis_step (&hours->axis, 4 * hours->em);
  gint64 at = hours->axis.from;
  double foot = CURVE_EM * hours->em;

  while ((at = ff_time_axis_next (&hours->axis, at, step)) != G_MAXINT64)
    {
      g_autofree char *text = ff_instant_clock ((double) at, hours->axis.zone);
      FfLabel label = { .text = text, .style = FF_TEXT_SMALL, .colour = hours->palette->ink,
                        .align = 0.5, .x = ff_time_axis_x (&hours->axis, (double) at),
                        .y = foot + 0.85 * hours->em };

      ff_shape_line (hours->cr, label.x, foot, label.x, foot + 0.3 * hours->em);
      ff_labels_place (hours->labels, &label, NULL);
      at += FF_MINUTE;
    }
  ff_shape_line (hours->cr, hours->axis.left, foot, hours->axis.right, foot);
  ff_colour_set (hours->cr, hours->palette->ink);
  cairo_set_line_width (hours->cr, hours->palette->line * hours->em);
  cairo_stroke (hours->cr);
}

/* The bars */

static cairo_rectangle_t
box_of (const Hours *hours, const FfStudySpan *span, double y)
{
  double left = ff_time_axis_x (&hours->axis, (double) span->from);
  double right = ff_time_axis_x (&hours->axis, (double) span->to);

  return (cairo_rectangle_t) { left, y, MAX (right - left, 2), BAR_EM * hours->em };
}

static void
draw_holds (const Hours *hours, const FfStudyHours *filter, double y)
{
  for (guint i = 0; i < filter->holds->len; i++)
    {
      cairo_rectangle_t box
          = box_of (hours, &g_array_index (filter->holds, FfStudySpan, i), y);

      box.y += 0.35 * hours->em;
      box.height -= 0.7 * hours->em;
      ff_shape_rounded (hours->cr, &box, 0.2 * hours->em);
      ff_colour_set (hours->cr, hours->palette->ink);
      cairo_set_line_width (hours->cr, hours->palette->line * hours->em);
      cairo_stroke (hours->cr);
    }
}

static void
draw_best (Hours *hours, const FfStudyHours *filter, double y)
{
  const FfPalette *palette = hours->palette;
  g_autofree char *text = ff_neutral_block_text (filter->stops);

  for (guint i = 0; i < filter->best->len; i++)
    {
      cairo_rectangle_t box = box_of (hours, &g_array_index (filter->best, FfStudySpan, i), y);
      FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .align = 0.5,
                        .x = box.x + box.width / 2, .y = y + BAR_EM / 2 * hours->em,
                        .plate = palette->hatched ? 0.2 : 0 };

      label.colour = palette->hatched
                         ? palette->ink
                         : ff_palette_ink_on (palette, ff_palette_shade (palette, filter->stops));
      ff_neutral_block_field (hours->cr, palette, &box, filter->stops, hours->em);
      if (box.width > ff_labels_width (hours->labels, &label) + 0.3 * hours->em)
        ff_labels_place (hours->labels, &label, NULL);
    }
}

static void
draw_bars (Hours *hours)
{
  double y = (CURVE_EM + TIMES_EM) * hours->em;

  for (guint i = 0; i < hours->study->hours->len; i++)
    {
      const FfStudyHours *filter = g_ptr_array_index (hours->study->hours, i);
      g_autofree char *text = ff_neutral_block_text (filter->stops);
      FfLabel label = { .text = text, .style = FF_TEXT_STRONG, .colour = hours->palette->ink,
                        .align = 1, .x = hours->axis.left - 0.5 * hours->em,
                        .y = y + BAR_EM / 2 * hours->em };

      ff_labels_place (hours->labels, &label, NULL);
      draw_holds (hours, filter, y);
      draw_best (hours, filter, y);
      y += (BAR_EM + BETWEEN_EM) * hours->em;
    }
}

static void
draw_now (const Hours *hours, gint64 at)
{
  double x = ff_time_axis_x (&hours->axis, (double) at);
  guint i = (guint) CLAMP ((at - hours->study->from) / STEP_S, 0,
                           (gint64) hours->study->n_samples - 1);

  if (!ff_time_axis_holds (&hours->axis, at))
    return;
  ff_colour_set (hours->cr, hours->palette->accent);
  ff_shape_line (hours->cr, x, 0, x, hours->bottom);
  cairo_set_line_width (hours->cr, 2 * hours->palette->line * hours->em);
  cairo_stroke (hours->cr);
  ff_shape_disc (hours->cr, x, y_of (hours, curve_of (hours)[i]), 0.4 * hours->em);
  cairo_fill (hours->cr);
}

void
ff_light_hours_draw (cairo_t *cr,
                     const FfPalette *palette,
                     const PangoFontDescription *font,
                     double width,
                     const FfLightStudy *study,
                     gint64 at)
{
  Hours hours = { .cr = cr, .palette = palette, .study = study };
  cairo_rectangle_t bounds = { 0, 0, width, 0 };

  hours.em = (double) pango_font_description_get_size (font) / PANGO_SCALE;
  hours.bottom = bounds.height = ff_light_hours_height (study, hours.em);
  hours.axis = axis_of (study, hours.em, width);
  hours.labels = ff_labels_new (palette, font, 1, &bounds);
  measure (&hours);
  draw_ground (&hours);
  name_grounds (&hours);
  draw_levels (&hours);
  draw_times (&hours);
  draw_bars (&hours);
  draw_now (&hours, at);
  draw_curve (&hours);
  ff_labels_draw (hours.labels, cr);
  ff_labels_free (hours.labels);
}
