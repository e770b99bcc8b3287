/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only. The least that the rest of a day can cost, by how many batteries there still
 * are to fly: exact but for when each of them is ready, for the minutes left before a relaunch and
 * for shots that must match; so never more than the truth. */
#pragma once

#include "ff-ground.h"
#include "ff-leg.h"

typedef struct {
  const FfTakePrices *prices;
  const FfLegTable *legs;
  double *least;    /* [stage][flights][relaunches][minute][filter + 1], after a landing */
  double *first;    /* [stage][flights], before the first take-off */
  guint n_filters;
  int n_minutes;
  int n_flights;    /* the most that is told apart */
  gboolean endless; /* n_flights stands for any number, as many as there are shots */
  int n_relaunches; /* legs of one battery after its first */
  int shortest_leg; /* minutes */
} FfSortieBound;

void ff_sortie_bound_init (FfSortieBound *self,
                           const FfTakePrices *prices,
                           const FfLegTable *legs,
                           const FfBatteries *batteries,
                           int flights);
void ff_sortie_bound_clear (FfSortieBound *self);

/* At a stage, on the ground since `minute` with `filter` fitted. `relaunches` that the battery in
 * the aircraft may still fly. */
double ff_sortie_bound_get (const FfSortieBound *self,
                            guint stage,
                            int flights,
                            int relaunches,
                            int minute,
                            int filter);

/* Relaunches left to a battery that may fly `legs` more and has `left` minutes. */
int ff_sortie_bound_relaunches (const FfSortieBound *self, int legs, int left);

/* The first minute on which an aircraft that came down at `down` can be off again: on another
 * battery, or on the one that is in. */
int ff_sortie_turned_round (const FfSortieProblem *problem, int down, int fitted, int filter);
int ff_sortie_relaunched (const FfSortieProblem *problem, int down, int fitted, int filter);
double ff_sortie_relaunch_price (const FfPrices *prices, int fitted, int filter);
