/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: what stands on the ground between legs. Minutes count from the problem's
 * `from`. */
#pragma once

#include "ff-sorties.h"

#define FF_GROUND_SLOTS 4
#define FF_NEVER 32000    /* a minute that does not come */

/* Batteries of one class are as good as one another: which of them flies is of no matter, only when
 * the next of them is ready. */
typedef struct {
  guint first, n;        /* places in `ready` */
  int usable;            /* minutes on a full charge */
  int first_usable;      /* minutes on the charge it has at the beginning */
  guint legs, first_legs; /* the same for legs */
  int alone;             /* the battery that a lock names or that is part-used; else -1 */
} FfBatteryClass;

typedef struct {
  FfBatteryClass classes[FF_SORTIE_MAX_BATTERIES];
  guint n_classes;
  guint8 battery[FF_SORTIE_MAX_BATTERIES]; /* at each place */
  gint16 ready[FF_SORTIE_MAX_BATTERIES];   /* at the beginning; FF_NEVER: after a charge first */
  guint n_batteries;
  int longest;   /* minutes of the best of them */
  int most_legs; /* that one of them may fly on a charge */
} FfBatteries;

void ff_batteries_init (FfBatteries *self, const FfSortieProblem *problem);

/* When each battery may fly, in each class the soonest first, and when charger slots are free. */
typedef struct {
  gint16 ready[FF_SORTIE_MAX_BATTERIES];
  gint16 slot_free[FF_GROUND_SLOTS]; /* the soonest first */
} FfGround;

void ff_ground_init (FfGround *self, const FfBatteries *batteries, const FfSortieProblem *problem);

/* A battery that must be down by `land_by` cools, then takes the slot that is free first. Promises
 * count from land-by. Gives the minutes; FF_NEVER where no charge is planned. */
void ff_ground_queue (FfGround *self,
                      const FfSortieProblem *problem,
                      int land_by,
                      int *ret_charge_from,
                      int *ret_ready_at);

/* The soonest battery of the class is taken; it is ready again at `ready_at`. */
void ff_ground_take (FfGround *self, const FfBatteryClass *class, int ready_at);

/* The last of a class, which was taken until FF_NEVER, is ready at `ready_at` after all. */
void ff_ground_bring_back (FfGround *self, const FfBatteryClass *class, int ready_at);

/* The most flights on a charge of their own that batteries and charger allow from now on, whenever
 * they are ready. */
int ff_ground_flights_left (const FfGround *self,
                            const FfBatteries *batteries,
                            const FfSortieProblem *problem,
                            int minute);
