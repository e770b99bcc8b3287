/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: the search through filters, apertures, ISO and shutters for the cheapest
 * combinations, exact: what it skips is proven to cost more than what it keeps. */
#pragma once

#include "ff-advise-table.h"
#include "ff-filter-combos.h"

typedef struct {
  const FfFilterCombo *combo;
  guint aperture, iso, shutter; /* indices into the table */
  double error_stops;
  double cost;
} FfFound;

/* The best so far, best first; the caller gives the room for them. */
typedef struct {
  FfFound *found;
  guint n_found, most;
  const FfAdviseTable *table;
  const FfPrices *prices;
} FfBest;

/* Adds what the table allows behind a combo of filters that itself costs `combo_price`. */
void ff_best_search (FfBest *best, double ev100, const FfFilterCombo *combo, double combo_price);

/* The error of least size that the table allows there. */
double ff_advise_least_error (const FfAdviseTable *table, double ev100, double stops);
