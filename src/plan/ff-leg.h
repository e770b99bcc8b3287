/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only. Legs: every way to fly some shots in a row on one battery behind one filter,
 * with the cheapest start of each take. Minutes count from the problem's `from`. */
#pragma once

#include "ff-order.h"
#include "ff-take-price.h"

#define FF_LEG_MINUTES 128 /* no leg is planned longer */
#define FF_LEG_NO_PLACE 255

/* Sixteen bytes: there are many. What it flies is worked out again for the few that are chosen. */
typedef struct {
  double cost;     /* of the takes, and of shots of the list left out between them */
  gint16 off, down;
  guint8 place;    /* first place of the list after it; FF_LEG_NO_PLACE: flies none of the list */
  guint8 flown;    /* free shots it flies, a bit each */
  gint8 battery;   /* that a lock asks for, or FF_ANY_BATTERY */
  guint8 groups;   /* match groups it flies shots of, a bit each from group 1 on */
} FfLeg;

/* All legs of a day, in order of the minute they are off. */
typedef struct {
  const FfTakePrices *prices;
  const FfOrder *order;
  GArray **legs;     /* [first place, or n_fixed for none][free shots flown][filter + 1]: FfLeg */
  guint n_filters;
  guint n_lists;
  int longest;       /* minutes of the best battery */
  guint8 groups;     /* groups that matter: those with shots to match */
  gint16 *next_pause; /* per minute: the first minute from it on that nobody may fly in */
} FfLegTable;

void ff_leg_table_init (FfLegTable *self,
                        const FfTakePrices *prices,
                        const FfOrder *order,
                        int longest);
void ff_leg_table_clear (FfLegTable *self);

/* Legs whose first shot of the list is the one at `place` (n_fixed: none of it) and that fly
 * exactly these free shots. */
static inline const GArray *
ff_leg_table_get (const FfLegTable *self, guint place, guint flown, int filter)
{
  guint list = place << self->order->n_free | flown;

  return self->legs[list * (self->n_filters + 1) + (guint) (filter + 1)];
}

/* Number of the first leg of a list that is off at `minute` or later. */
guint ff_leg_first_from (const GArray *legs, int minute);

/* A leg with what it flies. */
typedef struct {
  FfLeg leg;
  guint battery;
  int filter;
  gboolean relaunch; /* on the battery that was in */
  int minutes;       /* left to the battery at take-off */
  guint number;      /* of the leg on this charge: 1 */
  guint n_shots;
  guint8 shots[FF_LEG_MINUTES];
  gint16 starts[FF_LEG_MINUTES];
} FfFlown;

/* Works out what a leg of the table flies; `place` is where its list begins. */
void ff_leg_table_read (const FfLegTable *self,
                        const FfLeg *leg,
                        guint place,
                        int filter,
                        FfFlown *ret_flown);
