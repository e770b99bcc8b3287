/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The least that the rest of a day can cost, by how many batteries there still are to fly: exact
 * but for when each of them is ready, so never more than the truth. */
#pragma once

#include "ff-leg.h"

#define FF_BOUND_FLIGHTS 12 /* so many flights left or more count as any number */

typedef struct {
  double *least;  /* [shot][flights][minute][filter + 1], after a landing */
  double *first;  /* [shot][flights], before the first take-off */
  guint n_filters;
  int n_minutes;
  int n_flights;  /* the most that is told apart */
  gboolean endless; /* n_flights stands for any number, as many as there are shots */
} FfSortieBound;

void ff_sortie_bound_init (FfSortieBound *self, const FfTakePrices *prices, const FfLegTable *legs);
void ff_sortie_bound_clear (FfSortieBound *self);

/* From shot `next` on, on the ground since `minute` with `filter` fitted. */
double ff_sortie_bound_get (const FfSortieBound *self,
                            guint next,
                            int flights,
                            int minute,
                            int filter);

/* The most flights that batteries and charger allow from now on, whenever they are ready. */
int ff_sortie_flights_left (const FfSortieProblem *problem, const FfGround *ground, int minute);

/* The first minute on which an aircraft that came down at `down` can be off again. */
int ff_sortie_turned_round (const FfSortieProblem *problem, int down, int fitted, int filter);
