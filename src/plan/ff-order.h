/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: which shots of a day are still to be decided. Some are flown in the order of
 * a list, a few whenever it suits; a stage says how far the list is decided and which of the few
 * are flown. */
#pragma once

#include "ff-sorties.h"

typedef struct {
  guint8 fixed[FF_SORTIE_MAX_SHOTS]; /* shots in the order in which they are flown */
  guint n_fixed;
  guint8 free[FF_SORTIE_MAX_FREE];
  guint n_free;
} FfOrder;

/* How many free shots there is room for in memory, of all the shots. */
guint ff_order_room (const FfSortieProblem *problem);

/* The shots in the order of `shots`, those of [from, to) that are of free order free. */
void ff_order_init (FfOrder *self,
                    const FfSortieProblem *problem,
                    const guint8 *shots,
                    guint from,
                    guint to);

guint ff_order_n_stages (const FfOrder *self);

static inline guint
ff_order_stage (const FfOrder *self, guint place, guint flown)
{
  return place << self->n_free | flown;
}

/* The first place of the list that is not decided. */
static inline guint
ff_order_place (const FfOrder *self, guint stage)
{
  return stage >> self->n_free;
}

/* The free shots that are flown, a bit each. */
static inline guint
ff_order_flown (const FfOrder *self, guint stage)
{
  return stage & ((1u << self->n_free) - 1);
}

/* Whether a shot of this match group is still to be decided. */
gboolean ff_order_has_group (const FfOrder *self,
                             const FfSortieProblem *problem,
                             guint stage,
                             guint group);
