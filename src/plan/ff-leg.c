/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-leg.h"

#include <math.h>

typedef struct {
  const FfTakePrices *prices;
  int filter;
  int longest;      /* usable minutes of the best battery */
  GArray *found;    /* legs that are off at this minute */
  FfLeg leg;
} Building;

/* Of two legs that leave the same behind at the same minute only the cheaper is of use. */
static void
keep_cheaper (Building *self)
{
  FfLeg *leg = &self->leg;

  for (guint i = 0; i < self->found->len; i++)
    {
      FfLeg *other = &g_array_index (self->found, FfLeg, i);

      if (other->next != leg->next || other->down != leg->down)
        continue;
      if (leg->cost < other->cost - 1e-12)
        *other = *leg;
      return;
    }
  g_array_append_val (self->found, *leg);
}

/* Takes `shot` from `start` on, keeps the leg that ends there, and goes on to the shots after it. */
static void
take (Building *self, guint shot, int start)
{
  const FfSortieProblem *problem = self->prices->problem;
  const FfLeg before = self->leg;
  FfLeg *leg = &self->leg;
  int end = start + problem->shots[shot].minutes;
  double left_out = 0;

  leg->shots[leg->n_shots] = (guint8) shot;
  leg->starts[leg->n_shots] = (gint16) start;
  leg->n_shots++;
  leg->next = (guint8) (shot + 1);
  leg->down = (gint16) (end + problem->back_minutes);
  leg->cost += ff_take_price (self->prices, shot, self->filter, start);
  if (leg->down - leg->off <= self->longest)
    {
      keep_cheaper (self);
      for (guint next = shot + 1; next < problem->n_shots && leg->n_shots < FF_LEG_SHOTS; next++)
        {
          int last = MIN (ff_take_last_start (self->prices, next),
                          leg->off + self->longest - problem->back_minutes
                              - problem->shots[next].minutes);

          for (int at = MAX (end, ff_take_first_start (self->prices, next)); at <= last; at++)
            {
              double cost = leg->cost;

              leg->cost += left_out + self->prices->prices->air_minute * (at - end);
              take (self, next, at);
              leg->cost = cost;
            }
          left_out += ff_take_weight (self->prices, next);
        }
    }
  *leg = before;
}

static void
fill_list (GArray *list, const FfTakePrices *prices, guint shot, int filter, int longest)
{
  Building building = { .prices = prices, .filter = filter, .longest = longest };
  int last = ff_take_last_start (prices, shot);

  building.found = g_array_new (FALSE, FALSE, sizeof (FfLeg));
  for (int start = ff_take_first_start (prices, shot); start <= last; start++)
    {
      g_array_set_size (building.found, 0);
      building.leg = (FfLeg) { .off = (gint16) (start - prices->problem->out_minutes) };
      take (&building, shot, start);
      g_array_append_vals (list, building.found->data, building.found->len);
    }
  g_array_unref (building.found);
}

void
ff_leg_table_init (FfLegTable *self, const FfTakePrices *prices)
{
  const FfSortieProblem *problem = prices->problem;
  int longest = 0;

  for (guint i = 0; i < problem->n_batteries; i++)
    longest = MAX (longest, problem->batteries[i].usable_minutes);
  self->n_filters = problem->n_filters;
  self->n_lists = problem->n_shots * (problem->n_filters + 1);
  self->legs = g_new (GArray *, self->n_lists);
  for (guint i = 0; i < self->n_lists; i++)
    {
      self->legs[i] = g_array_new (FALSE, FALSE, sizeof (FfLeg));
      fill_list (self->legs[i], prices, i / (problem->n_filters + 1),
                 (int) (i % (problem->n_filters + 1)) - 1, longest);
    }
}

void
ff_leg_table_clear (FfLegTable *self)
{
  for (guint i = 0; i < self->n_lists; i++)
    g_array_unref (self->legs[i]);
  g_clear_pointer (&self->legs, g_free);
}

GArray *
ff_leg_table_get (const FfLegTable *self, guint shot, int filter)
{
  return self->legs[shot * (self->n_filters + 1) + (guint) (filter + 1)];
}

/* ---- On the ground ---- */

void
ff_ground_init (FfGround *self, const FfSortieProblem *problem)
{
  *self = (FfGround) { 0 };
  for (guint i = 0; i < problem->n_batteries; i++)
    {
      gint64 minutes = (problem->batteries[i].ready_at - problem->from + 59) / 60;

      self->ready[i] = (int) CLAMP (minutes, 0, FF_NEVER);
    }
}

void
ff_ground_queue (FfGround *self,
                 const FfSortieProblem *problem,
                 guint battery,
                 int land_by,
                 int *ret_charge_from,
                 int *ret_ready_at)
{
  guint slots = MIN (problem->charger_slots, FF_LEG_SLOTS);
  guint slot = 0;

  *ret_charge_from = *ret_ready_at = self->ready[battery] = FF_NEVER;
  if (slots == 0 || !problem->charger_attended)
    return;
  for (guint i = 1; i < slots; i++)
    if (self->slot_free[i] < self->slot_free[slot])
      slot = i;
  *ret_charge_from = MAX (land_by + problem->cool_minutes, self->slot_free[slot]);
  *ret_ready_at = *ret_charge_from + problem->charge_minutes;
  self->slot_free[slot] = self->ready[battery] = *ret_ready_at;
}
