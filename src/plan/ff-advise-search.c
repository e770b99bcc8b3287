/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-advise-search.h"

#include <math.h>

/* Costs and stops that differ by less are equal: rounding must not decide between choices. */
#define GRAIN 1e-9

static int
compare_grains (double a, double b)
{
  double difference = floor (a / GRAIN + 0.5) - floor (b / GRAIN + 0.5);

  return (difference > 0) - (difference < 0);
}

static int
compare_numbers (guint a, guint b)
{
  return (a > b) - (a < b);
}

/* Fewer filters before more, weaker before stronger. */
static int
compare_strength (const FfFilterCombo *a, const FfFilterCombo *b)
{
  int order = compare_numbers (a->n_filters, b->n_filters);

  return order != 0 ? order : compare_grains (a->stops, b->stops);
}

/* Of combos that are equally strong: the filter asked about first, then its weaker setting. */
static int
compare_filters (const FfFilterCombo *a, const FfFilterCombo *b)
{
  int order = 0;

  for (guint i = 0; order == 0 && i < a->n_filters; i++)
    {
      order = compare_numbers (a->filters[i], b->filters[i]);
      if (order == 0)
        order = compare_grains (a->set_to[i], b->set_to[i]);
    }
  return order;
}

/* The order of choices: cost, fewer filters, weaker ones, lower ISO, the wider aperture, the
 * faster shutter. Only equal settings behind equal filters compare equal. */
static int
compare_found (const FfAdviseTable *table, const FfFound *a, const FfFound *b)
{
  int order = compare_grains (a->cost, b->cost);
  double wider;

  if (order == 0)
    order = compare_strength (a->combo, b->combo);
  if (order == 0)
    order = compare_numbers (a->iso, b->iso);
  wider = table->apertures[a->aperture].av - table->apertures[b->aperture].av;
  if (order == 0)
    order = (wider > 0) - (wider < 0);
  if (order == 0)
    order = compare_numbers (a->shutter, b->shutter);
  return order != 0 ? order : compare_filters (a->combo, b->combo);
}

static void
offer (FfBest *best, const FfFound *found)
{
  guint place = best->n_found;

  while (place > 0 && compare_found (best->table, found, &best->found[place - 1]) < 0)
    place--;
  if (place >= best->most)
    return;
  if (best->n_found < best->most)
    best->n_found++;
  for (guint i = best->n_found - 1; i > place; i--)
    best->found[i] = best->found[i - 1];
  best->found[place] = *found;
}

/* What a newcomer may cost at most; ties are let in, to be decided by their order. */
static double
limit (const FfBest *best)
{
  if (best->n_found < best->most)
    return INFINITY;
  return best->found[best->n_found - 1].cost + 2 * GRAIN;
}

/* The first shutter that is not faster than exposes right. */
static guint
first_not_dark (const FfAdviseTable *table, double log_right)
{
  guint low = 0, high = table->n_shutters;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (table->shutters[middle].log_s < log_right)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Offers the shutter unless its error alone already costs too much: then FALSE. */
static gboolean
try_shutter (FfBest *best, FfFound *found, double log_right, double base)
{
  const FfShutterOption *shutter = &best->table->shutters[found->shutter];
  double cost;

  found->error_stops = shutter->log_s - log_right;
  cost = base + ff_price_error (best->prices, found->error_stops);
  if (cost > limit (best))
    return FALSE;
  found->cost = cost + shutter->price;
  if (found->cost <= limit (best))
    offer (best, found);
  return TRUE;
}

/* From the shutter that exposes right outward. The price of an error never falls with its size
 * and that of a shutter is never negative, so the first one too dear for its error alone ends
 * its side. */
static void
search_shutters (FfBest *best, FfFound *found, double log_right, double base)
{
  guint middle = first_not_dark (best->table, log_right);

  for (found->shutter = middle; found->shutter < best->table->n_shutters; found->shutter++)
    if (!try_shutter (best, found, log_right, base))
      break;
  for (guint i = middle; i > 0; i--)
    {
      found->shutter = i - 1;
      if (!try_shutter (best, found, log_right, base))
        break;
    }
}

void
ff_best_search (FfBest *best, double ev100, const FfFilterCombo *combo, double combo_price)
{
  const FfAdviseTable *table = best->table;
  FfFound found = { .combo = combo };

  for (found.aperture = 0; found.aperture < table->n_apertures; found.aperture++)
    for (found.iso = 0; found.iso < table->n_isos; found.iso++)
      {
        const FfApertureOption *aperture = &table->apertures[found.aperture];
        const FfIsoOption *iso = &table->isos[found.iso];
        double base = combo_price + aperture->price + iso->price;
        double log_right = aperture->av - iso->stops - (ev100 - combo->stops);

        if (base <= limit (best))
          search_shutters (best, &found, log_right, base);
      }
}

double
ff_advise_least_error (const FfAdviseTable *table, double ev100, double stops)
{
  double least = INFINITY;

  for (guint a = 0; a < table->n_apertures; a++)
    for (guint i = 0; i < table->n_isos; i++)
      {
        double log_right = table->apertures[a].av - table->isos[i].stops - (ev100 - stops);
        guint middle = first_not_dark (table, log_right);

        for (guint s = middle > 0 ? middle - 1 : 0; s < table->n_shutters && s <= middle; s++)
          if (fabs (table->shutters[s].log_s - log_right) < fabs (least))
            least = table->shutters[s].log_s - log_right;
      }
  return least;
}
