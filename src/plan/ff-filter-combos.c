/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-filter-combos.h"

#include <math.h>

static gboolean
alike (const FfAdviseFilter *a, const FfAdviseFilter *b)
{
  return a->stops == b->stops && a->stops_to == b->stops_to && g_strcmp0 (a->label, b->label) == 0;
}

static gboolean
holds (const FfFilterCombo *combo, guint filter)
{
  for (guint i = 0; i < combo->n_filters; i++)
    if (combo->filters[i] == filter)
      return TRUE;
  return FALSE;
}

/* Whether an equal filter that comes earlier is still in the case: then that one is taken. */
static gboolean
has_free_twin (const FfAdviseFilter *filters, const FfFilterCombo *combo, guint filter)
{
  for (guint i = 0; i < filter; i++)
    if (alike (&filters[i], &filters[filter]) && !holds (combo, i))
      return TRUE;
  return FALSE;
}

static void
add_with (GArray *combos, const FfFilterCombo *below, guint filter, double set_to)
{
  FfFilterCombo combo = *below;

  combo.filters[combo.n_filters] = filter;
  combo.set_to[combo.n_filters] = set_to;
  combo.n_filters++;
  combo.stops += set_to;
  g_array_append_val (combos, combo);
}

/* The combo with one more filter on top, in each of its settings. */
static void
add_settings (GArray *combos, const FfFilterCombo *below, guint index, const FfAdviseFilter *filter)
{
  const double noise = 1e-9;
  double set_to = filter->stops;

  for (guint third = 1; set_to < filter->stops_to - noise; third++)
    {
      add_with (combos, below, index, set_to);
      set_to = filter->stops + third / 3.0;
    }
  add_with (combos, below, index, fmax (filter->stops, filter->stops_to));
}

/* Grows each combo of [from, to) by each filter after its last one. */
static void
add_layer (GArray *combos, guint from, guint to, const FfAdviseFilter *filters, guint n_filters)
{
  for (guint i = from; i < to; i++)
    {
      FfFilterCombo below = g_array_index (combos, FfFilterCombo, i);
      guint next = below.n_filters > 0 ? below.filters[below.n_filters - 1] + 1 : 0;

      for (; next < n_filters; next++)
        if (!has_free_twin (filters, &below, next))
          add_settings (combos, &below, next, &filters[next]);
    }
}

GArray *
ff_filter_combos (const FfAdviseFilter *filters, guint n_filters, guint max_stack)
{
  GArray *combos = g_array_new (FALSE, FALSE, sizeof (FfFilterCombo));
  FfFilterCombo none = { 0 };
  guint from = 0;

  g_array_append_val (combos, none);
  for (guint layer = 0; layer < MIN (max_stack, FF_MAX_STACK); layer++)
    {
      guint to = combos->len;

      add_layer (combos, from, to, filters, n_filters);
      from = to;
    }
  return combos;
}
