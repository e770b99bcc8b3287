/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every take of a day costs behind every filter from every minute, worked out once. Minutes
 * here count from the problem's `from`. */
#pragma once

#include "ff-sorties.h"

#define FF_UNFITTED (-2) /* before the first take-off any filter can be fitted for nothing */

typedef struct {
  const FfSortieProblem *problem;
  const FfPrices *prices;
  int n_minutes;  /* last minute on which an aircraft may be in the air */
  double *weights; /* of each shot */
  double *summed; /* [shot][filter + 1][minute]: prices of the minutes before it */
} FfTakePrices;

void ff_take_prices_init (FfTakePrices *self, const FfSortieProblem *problem);
void ff_take_prices_clear (FfTakePrices *self);

/* Exposure over the take and its lateness in the window. */
double ff_take_price (const FfTakePrices *self, guint shot, int filter, int start);

/* What it costs at the best start in its window behind the best filter; infinite without one. */
double ff_take_cheapest (const FfTakePrices *self, guint shot);

/* Its lateness alone. */
double ff_take_late_price (const FfTakePrices *self, guint shot, int start);

/* First and last minute on which the take may start; none when first > last. */
int ff_take_first_start (const FfTakePrices *self, guint shot);
int ff_take_last_start (const FfTakePrices *self, guint shot);

/* What it costs to leave the shot out. */
double ff_take_weight (const FfTakePrices *self, guint shot);

/* The shot's lock, or NULL. */
const FfSortieLock *ff_take_lock (const FfSortieProblem *problem, guint shot);

/* The price of having this filter in front for one take. */
double ff_take_filter_price (const FfSortieProblem *problem, int filter);

/* A shot of a group behind `filter` after one behind `before` (FF_UNFITTED: none yet). */
double ff_take_match_price (const FfTakePrices *self, int before, int filter);

double ff_take_filter_stops (const FfSortieProblem *problem, int filter);
