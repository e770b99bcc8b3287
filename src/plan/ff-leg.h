/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Legs: every way to fly some shots in a row on one battery behind one filter, with the cheapest
 * start of each take; and what stands on the ground between legs. Minutes count from the
 * problem's `from`. */
#pragma once

#include "ff-take-price.h"

#define FF_LEG_SHOTS 10
#define FF_LEG_SLOTS 4
#define FF_UNFITTED (-2)      /* before the first take-off any filter can be fitted for nothing */
#define FF_NEVER (1 << 20)    /* a minute that does not come */

typedef struct {
  double cost;  /* of the takes, and of shots left out between them */
  gint16 off, down;
  guint8 next;  /* first shot after the leg */
  guint8 n_shots;
  guint8 shots[FF_LEG_SHOTS];
  gint16 starts[FF_LEG_SHOTS];
} FfLeg;

/* All legs of a day, for each first shot and filter in order of the minute they are off. */
typedef struct {
  GArray **legs; /* [shot][filter + 1]: FfLeg */
  guint n_filters;
  guint n_lists;
} FfLegTable;

void ff_leg_table_init (FfLegTable *self, const FfTakePrices *prices);
void ff_leg_table_clear (FfLegTable *self);
GArray *ff_leg_table_get (const FfLegTable *self, guint shot, int filter);

/* ---- On the ground ---- */

/* When each battery may fly and each charger slot is free. */
typedef struct {
  int ready[FF_SORTIE_MAX_BATTERIES];
  int slot_free[FF_LEG_SLOTS];
} FfGround;

void ff_ground_init (FfGround *self, const FfSortieProblem *problem);

/* The battery has flown and must be down by `land_by`: it cools, then takes the slot that is free
 * first. Promises count from land-by. Gives the minutes; FF_NEVER where no charge is planned. */
void ff_ground_queue (FfGround *self,
                      const FfSortieProblem *problem,
                      guint battery,
                      int land_by,
                      int *ret_charge_from,
                      int *ret_ready_at);
