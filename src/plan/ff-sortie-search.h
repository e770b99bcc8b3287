/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only. The exact search of one order: see ff-sortie-search.c. */
#pragma once

#include "ff-order.h"
#include "ff-sortie-node.h"
#include "ff-take-price.h"

typedef struct {
  const FfSortieWatch *watch; /* or NULL */
  guint nodes_at_most;
  double to_beat; /* a cost that is had already; INFINITY */
} FfSearchLimits;

/* The cheapest plan of this order; NULL where none is cheaper than `to_beat`. `ret_bound`: no plan
 * of this order is cheaper. */
FfSortiePlan *ff_sortie_search (const FfTakePrices *prices,
                                const FfOrder *order,
                                const FfSearchLimits *limits,
                                double *ret_bound) G_GNUC_WARN_UNUSED_RESULT;
