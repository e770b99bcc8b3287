/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-order.h"

#define CELLS_AT_MOST (9u << 20) /* of the bound's table: 72 MB */

guint
ff_order_room (const FfSortieProblem *problem)
{
  gsize row = (gsize) ((problem->to - problem->from) / 60 + 1) * (problem->n_filters + 1);
  guint room = 0;

  while (room < MIN (FF_SORTIE_MAX_FREE, problem->n_shots)
         && (((gsize) problem->n_shots - room) << (room + 1)) * row <= CELLS_AT_MOST)
    room++;
  return room;
}

void
ff_order_init (FfOrder *self,
               const FfSortieProblem *problem,
               const guint8 *shots,
               guint from,
               guint to)
{
  *self = (FfOrder) { 0 };
  for (guint i = 0; i < problem->n_shots; i++)
    if (i >= from && i < to && problem->shots[shots[i]].free_order
        && self->n_free < FF_SORTIE_MAX_FREE)
      self->free[self->n_free++] = shots[i];
    else
      self->fixed[self->n_fixed++] = shots[i];
}

guint
ff_order_n_stages (const FfOrder *self)
{
  return (self->n_fixed + 1) << self->n_free;
}

gboolean
ff_order_has_group (const FfOrder *self,
                    const FfSortieProblem *problem,
                    guint stage,
                    guint group)
{
  for (guint place = ff_order_place (self, stage); place < self->n_fixed; place++)
    if (problem->shots[self->fixed[place]].match_group == group)
      return TRUE;
  for (guint i = 0; i < self->n_free; i++)
    if (!((stage >> i) & 1) && problem->shots[self->free[i]].match_group == group)
      return TRUE;
  return FALSE;
}
