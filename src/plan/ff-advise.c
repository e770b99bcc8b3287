/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-advise.h"

#include <math.h>

#include "ff-advise-search.h"
#include "ff-advise-table.h"
#include "ff-exposure.h"
#include "ff-filter-combos.h"
#include "ff-remark.h"
#include "ff-scale.h"

static const FfPrices *
prices_of (const FfAdviseQuery *query)
{
  return query->prices != NULL ? query->prices : &ff_prices_default;
}

static gboolean
wants_shutter (const FfWant *want)
{
  return want->intent != FF_INTENT_STILL && want->intent != FF_INTENT_BRACKET;
}

static gboolean
has_frame_rate (const FfWant *want)
{
  return want->intent == FF_INTENT_VIDEO || want->intent == FF_INTENT_SLOW;
}

/* Extra glass: each filter of a stack beyond the first, and any before a shot that needs none. */
static double
price_of_combo (const FfAdviseQuery *query, const FfFilterCombo *combo)
{
  const FfPrices *prices = prices_of (query);
  double price = combo->n_filters > 1 ? prices->stacked * (combo->n_filters - 1) : 0;

  if (combo->n_filters > 0 && !wants_shutter (query->want))
    price += prices->still_filter;
  return price;
}

/* The light at the two ends of what this filter and aperture can follow: all at their brightest
 * and all at their darkest, and a third of a stop beyond. */
static void
fill_good_span (FfChoice *choice, const FfAdviseTable *table, double av)
{
  double darkest = av - table->shutters[table->n_shutters - 1].log_s
                   - table->isos[table->n_isos - 1].stops;
  double brightest = av - table->shutters[0].log_s - table->isos[0].stops;

  choice->good_from_ev100 = choice->filter_stops + darkest - FF_REACH_STOPS;
  choice->good_to_ev100 = choice->filter_stops + brightest + FF_REACH_STOPS;
}

static void
fill_filters (FfChoice *choice, const FfFilterCombo *combo)
{
  choice->n_filters = combo->n_filters;
  choice->filter_stops = combo->stops;
  for (guint i = 0; i < combo->n_filters; i++)
    {
      choice->filters[i] = combo->filters[i];
      choice->set_to[i] = combo->set_to[i];
    }
}

static void
fill_choice (FfChoice *choice,
             const FfAdviseQuery *query,
             const FfAdviseTable *table,
             const FfFound *found)
{
  const FfShutterOption *shutter = &table->shutters[found->shutter];
  const FfApertureOption *aperture = &table->apertures[found->aperture];
  const FfIsoOption *iso = &table->isos[found->iso];

  fill_filters (choice, found->combo);
  choice->settings = (FfSettings) {
    .aperture = aperture->aperture,
    .shutter = shutter->step,
    .shutter_s = shutter->seconds,
    .shutter_angle_deg = has_frame_rate (query->want)
                             ? ff_shutter_angle_deg (shutter->seconds, query->want->fps)
                             : NAN,
    .iso = iso->step,
    .error_stops = found->error_stops,
  };
  choice->parts[FF_PART_SHUTTER] = shutter->price;
  choice->parts[FF_PART_ISO] = iso->price;
  choice->parts[FF_PART_APERTURE] = aperture->price;
  choice->parts[FF_PART_STACK] = price_of_combo (query, found->combo);
  choice->parts[FF_PART_ERROR] = ff_price_error (prices_of (query), found->error_stops);
  choice->cost = ff_price_sum (choice->parts);
  fill_good_span (choice, table, aperture->av);
  ff_remarks_fill (choice, query, table);
}

static void
fill_reach (FfReach *reach,
            const FfAdviseQuery *query,
            const FfAdviseTable *table,
            const FfFound *first,
            const GArray *combos)
{
  double least = first->error_stops;

  *reach = (FfReach) { .ok = fabs (first->error_stops) <= FF_REACH_STOPS + 1e-9 };
  if (reach->ok)
    return;
  for (guint i = 0; i < combos->len; i++)
    {
      const FfFilterCombo *combo = &g_array_index (combos, FfFilterCombo, i);
      double error = ff_advise_least_error (table, query->ev100, combo->stops);

      if (fabs (error) < fabs (least))
        least = error;
    }
  reach->shortfall_stops = least;
}

GArray *
ff_advise (const FfAdviseQuery *query, guint top, FfReach *ret_reach)
{
  g_autoptr (GArray) combos
      = ff_filter_combos (query->filters, query->n_filters, query->max_stack);
  g_autofree FfFound *found = g_new (FfFound, MAX (top, 1));
  FfAdviseTable table;
  FfBest best = { .found = found, .most = MAX (top, 1), .table = &table };
  GArray *choices = g_array_new (FALSE, TRUE, sizeof (FfChoice));

  best.prices = prices_of (query);
  ff_advise_table_fill (&table, query->camera, query->want, best.prices);
  for (guint i = 0; i < combos->len; i++)
    {
      const FfFilterCombo *combo = &g_array_index (combos, FfFilterCombo, i);

      ff_best_search (&best, query->ev100, combo, price_of_combo (query, combo));
    }
  g_array_set_size (choices, best.n_found);
  for (guint i = 0; i < best.n_found; i++)
    fill_choice (&g_array_index (choices, FfChoice, i), query, &table, &found[i]);
  if (ret_reach != NULL)
    fill_reach (ret_reach, query, &table, &found[0], combos);
  return choices;
}

void
ff_advise_settings (const FfAdviseQuery *query, double filter_stops, FfChoice *ret_choice)
{
  const FfFilterCombo fitted = { .stops = filter_stops };
  FfAdviseTable table;
  FfFound found;
  FfBest best = { .found = &found, .most = 1, .table = &table };

  best.prices = prices_of (query);
  ff_advise_table_fill (&table, query->camera, query->want, best.prices);
  ff_best_search (&best, query->ev100, &fitted, 0);
  *ret_choice = (FfChoice) { 0 };
  fill_choice (ret_choice, query, &table, &found);
}

double
ff_advise_need (double ev100,
                const FfCameraRange *camera,
                const FfWant *want,
                double f_number)
{
  guint base = camera->n_bases > 0 ? camera->base_iso[0] : camera->iso_low;
  double iso = ff_scale_written (FF_SCALE_ISO, base);

  return ev100 - ff_exposure_ev100 (f_number, ff_advise_wanted_s (want), iso);
}
