/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One leg, and what stands on the ground between legs: when it can fly, on which battery, and what
 * the charger does with the battery afterwards. */
#pragma once

#include "ff-sorties.h"

#define FF_LEG_SHOTS 8
#define FF_LEG_SLOTS 4
#define FF_UNFITTED (-2) /* before the first take-off any filter can be fitted for nothing */
#define FF_NEVER G_MAXINT64

/* One leg: which shots, when each starts, and what flies it. */
typedef struct {
  guint n_shots;
  guint shots[FF_LEG_SHOTS];
  gint64 starts[FF_LEG_SHOTS];
  gint64 off, down;
  int battery;
  int filter;
} FfLeg;

/* What two labels must have in common to be one. Compared as bytes: no holes left unset. */
typedef struct {
  gint64 clock; /* last landing; 0 before the first */
  gint64 ready[FF_SORTIE_MAX_BATTERIES];
  gint64 slot_free[FF_LEG_SLOTS];
  gint64 used; /* bit per battery that has flown */
  gint64 filter;
} FfGround;

/* Times the leg's shots behind its filter on the battery that is off earliest: not yet used before
 * used, then ready earliest. FALSE when none can fly it. */
gboolean ff_leg_fit_battery (const FfSortieProblem *problem, const FfGround *ground, FfLeg *leg);

/* The latest that the leg may come down: off and the battery's usable minutes. */
gint64 ff_leg_land_by (const FfSortieProblem *problem, const FfLeg *leg);

/* The battery of a leg goes to the charger's queue: cool, then the first free slot. Promises count
 * from land-by. Where no charge is planned, ready_at is FF_NEVER. */
FfSortieCharge ff_leg_queue_charge (const FfSortieProblem *problem,
                                    const FfLeg *leg,
                                    FfGround *ground);
