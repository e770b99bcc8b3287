/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What would close a shortfall: one change at a time, and none is named before the search has been
 * run again with it. */
#include "ff-advise.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-advise-table.h"
#include "ff-exposure.h"
#include "ff-number.h"
#include "ff-scale.h"

#define STRONGEST_STOPS 16
#define LEAST_ANGLE_DEG 45.0 /* below it motion falls apart into pictures (common practice) */

/* Whether the query is within reach; what it would take then. */
static gboolean
reaches (const FfAdviseQuery *query, FfChoice *ret_choice)
{
  FfReach reach;
  g_autoptr (GArray) choices = ff_advise (query, 1, &reach);

  if (reach.ok && ret_choice != NULL)
    *ret_choice = g_array_index (choices, FfChoice, 0);
  return reach.ok;
}

/* The cost of the best choice with one more filter of so many stops; infinite where it does not
 * help. */
static double
cost_with_filter (const FfAdviseQuery *query, int stops)
{
  g_autofree FfAdviseFilter *filters = g_new (FfAdviseFilter, query->n_filters + 1);
  FfAdviseQuery changed = *query;
  FfChoice choice;

  for (guint i = 0; i < query->n_filters; i++)
    filters[i] = query->filters[i];
  filters[query->n_filters] = (FfAdviseFilter) { "", stops, stops };
  changed.filters = filters;
  changed.n_filters++;
  changed.max_stack = MAX (query->max_stack, 1);
  return reaches (&changed, &choice) ? choice.cost : INFINITY;
}

/* Of the whole strengths that help the one that costs least in settings. */
static void
help_filter (const FfAdviseQuery *query, GPtrArray *sentences)
{
  double least = INFINITY;
  int best = 0;

  for (int stops = 1; stops <= STRONGEST_STOPS; stops++)
    {
      double cost = cost_with_filter (query, stops);

      if (cost < least)
        {
          least = cost;
          best = stops;
        }
    }
  if (best > 0)
    g_ptr_array_add (sentences, g_strdup_printf (
        /* Translators: a neutral-density filter by its strength in stops. */
        g_dngettext (GETTEXT_PACKAGE, "A filter of %d stop", "A filter of %d stops", (gulong) best),
        best));
}

static void
help_stack (const FfAdviseQuery *query, GPtrArray *sentences)
{
  FfAdviseQuery changed = *query;
  guint most = MIN (query->n_filters, FF_MAX_STACK);

  for (changed.max_stack = query->max_stack + 1; changed.max_stack <= most; changed.max_stack++)
    if (reaches (&changed, NULL))
      {
        if (changed.max_stack == 1)
          g_ptr_array_add (sentences, g_strdup (_ ("Fitting a filter at all")));
        else
          g_ptr_array_add (sentences, g_strdup_printf (_ ("Stacking %u filters"),
                                                       changed.max_stack));
        return;
      }
}

static void
help_iso (const FfAdviseQuery *query, GPtrArray *sentences)
{
  FfWant want = *query->want;
  FfAdviseQuery changed = *query;

  if (!(want.max_iso > 0))
    return;
  changed.want = &want;
  for (guint step = 0; step <= query->camera->iso_high; step++)
    {
      want.max_iso = ff_scale_written (FF_SCALE_ISO, step);
      if (want.max_iso > query->want->max_iso && reaches (&changed, NULL))
        {
          g_ptr_array_add (sentences, g_strdup_printf (_ ("ISO up to %s"),
                                                       ff_scale_label (FF_SCALE_ISO, step)));
          return;
        }
    }
}

static void
help_aperture (const FfAdviseQuery *query, GPtrArray *sentences)
{
  FfWant want = *query->want;
  FfAdviseQuery changed = *query;
  FfChoice choice;
  g_autofree char *f_number = NULL;

  want.hold_aperture = 0;
  changed.want = &want;
  if (!(query->want->hold_aperture > 0) || !reaches (&changed, &choice))
    return;
  f_number = ff_number_format (choice.settings.aperture.written, 2);
  g_ptr_array_add (sentences, g_strdup_printf (_ ("An aperture of f/%s"), f_number));
}

/* Opens the span to the angle of this shutter. */
static gboolean
reaches_with_angle (const FfAdviseQuery *query, guint step)
{
  FfWant want = *query->want;
  FfAdviseQuery changed = *query;
  double angle = ff_shutter_angle_deg (ff_advise_shutter_s (query->camera, step), want.fps);

  changed.want = &want;
  want.angle_from_deg = fmin (want.angle_from_deg, angle);
  want.angle_to_deg = fmax (want.angle_to_deg, angle);
  return angle >= LEAST_ANGLE_DEG && angle <= 360 * (1 + 1e-9) && reaches (&changed, NULL);
}

static double
angle_of (const FfAdviseQuery *query, guint step)
{
  return ff_shutter_angle_deg (ff_advise_shutter_s (query->camera, step), query->want->fps);
}

/* From the small end of the span outward, the first shutter that helps. */
static void
help_smaller_angle (const FfAdviseQuery *query, GPtrArray *sentences)
{
  for (guint step = query->camera->shutter_slow + 1; step-- > query->camera->shutter_fast;)
    if (angle_of (query, step) < query->want->angle_from_deg && reaches_with_angle (query, step))
      {
        g_autofree char *angle = ff_number_format (angle_of (query, step), 0);

        g_ptr_array_add (sentences, g_strdup_printf (_ ("A shutter angle down to %s°"), angle));
        return;
      }
}

static void
help_larger_angle (const FfAdviseQuery *query, GPtrArray *sentences)
{
  for (guint step = query->camera->shutter_fast; step <= query->camera->shutter_slow; step++)
    if (angle_of (query, step) > query->want->angle_to_deg && reaches_with_angle (query, step))
      {
        g_autofree char *angle = ff_number_format (angle_of (query, step), 0);

        g_ptr_array_add (sentences, g_strdup_printf (_ ("A shutter angle up to %s°"), angle));
        return;
      }
}

static void
help_blur (const FfAdviseQuery *query, GPtrArray *sentences)
{
  FfWant want = *query->want;
  FfAdviseQuery changed = *query;
  double limit_s = ff_advise_blur_limit_s (query->camera, query->want);
  g_autofree char *text = NULL;
  FfChoice choice;
  double longest;

  want.max_blur_px = 0;
  changed.want = &want;
  if (!isfinite (limit_s) || !reaches (&changed, &choice))
    return;
  longest = choice.settings.shutter_s * exp2 (ff_advise_frames_stops (query->want));
  text = ff_number_format (ceil (query->want->max_blur_px * longest / limit_s * 10) / 10, 1);
  g_ptr_array_add (sentences, g_strdup_printf (_ ("A blur limit of %s pixels"), text));
}

/* The last resort of a shot that is too dark: another hour. */
static void
help_light (const FfAdviseQuery *query, const FfReach *reach, GPtrArray *sentences)
{
  FfAdviseQuery changed = *query;
  double tenths = ceil ((-reach->shortfall_stops - FF_REACH_STOPS) * 10);
  g_autofree char *text = ff_number_format (tenths / 10, 1);

  changed.ev100 += tenths / 10;
  if (sentences->len == 0 && reach->shortfall_stops < 0 && reaches (&changed, NULL))
    g_ptr_array_add (sentences, g_strdup_printf (_ ("%s stops more light"), text));
}

GPtrArray *
ff_advise_would_help (const FfAdviseQuery *query, const FfReach *reach)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);

  if (reach->ok)
    return sentences;
  help_filter (query, sentences);
  help_stack (query, sentences);
  help_iso (query, sentences);
  help_aperture (query, sentences);
  if (query->want->intent == FF_INTENT_VIDEO || query->want->intent == FF_INTENT_SLOW)
    {
      help_smaller_angle (query, sentences);
      help_larger_angle (query, sentences);
    }
  help_blur (query, sentences);
  help_light (query, reach, sentences);
  return sentences;
}
