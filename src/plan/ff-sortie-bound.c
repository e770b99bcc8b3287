/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-bound.h"

#include <math.h>

static double *
cell (const FfSortieBound *self, guint next, int flights, int minute, int filter)
{
  gsize row = ((gsize) next * (gsize) (self->n_flights + 1) + (gsize) flights)
                  * (gsize) (self->n_minutes + 1)
              + (gsize) minute;

  return self->least + row * (self->n_filters + 1) + (gsize) (filter + 1);
}

static double *
first_cell (const FfSortieBound *self, guint next, int flights)
{
  return self->first + (gsize) next * (gsize) (self->n_flights + 1) + flights;
}

int
ff_sortie_turned_round (const FfSortieProblem *problem, int down, int fitted, int filter)
{
  if (fitted == FF_UNFITTED)
    return down;
  return down + problem->battery_change_minutes
         + (fitted != filter ? problem->filter_change_minutes : 0);
}

int
ff_sortie_flights_left (const FfSortieProblem *problem, const FfGround *ground, int minute)
{
  int last = (int) ((problem->to - problem->from) / 60);
  int flights = 0;

  for (guint i = 0; i < problem->n_batteries; i++)
    flights += ground->ready[i] <= last;
  if (!problem->charger_attended)
    return flights;
  for (guint i = 0; i < MIN (problem->charger_slots, FF_LEG_SLOTS); i++)
    {
      int free_at = MAX (ground->slot_free[i], minute + problem->cool_minutes);

      flights += MAX (last - free_at, 0) / MAX (problem->charge_minutes, 1);
    }
  return flights;
}

/* One less of any number is still any number. */
static int
one_less (const FfSortieBound *self, int flights)
{
  return self->endless && flights == self->n_flights ? flights : flights - 1;
}

/* The least that flying `shot` next costs, by the minute from which the aircraft can be off. */
static void
fill_flown (const FfSortieBound *self,
            const FfTakePrices *prices,
            GArray *legs,
            int flights,
            int filter,
            double *flown)
{
  for (int minute = 0; minute <= self->n_minutes; minute++)
    flown[minute] = INFINITY;
  if (one_less (self, flights) < 0)
    return;
  for (guint i = 0; i < legs->len; i++)
    {
      const FfLeg *leg = &g_array_index (legs, FfLeg, i);
      double price = prices->prices->new_battery + leg->cost
                     + *cell (self, leg->next, one_less (self, flights), leg->down, filter);

      flown[leg->off] = fmin (flown[leg->off], price);
    }
  for (int minute = self->n_minutes - 1; minute >= 0; minute--)
    flown[minute] = fmin (flown[minute], flown[minute + 1]);
}

/* The cheapest way on from one landing: leave the shot out, or fly it behind some filter. */
static double
best_way_on (const FfSortieBound *self,
             const FfTakePrices *prices,
             const double *flown,
             int minute,
             int fitted)
{
  gsize width = (gsize) self->n_minutes + 1;
  double best = INFINITY;

  for (int filter = FF_NO_FILTER; filter < (int) self->n_filters; filter++)
    {
      int off = ff_sortie_turned_round (prices->problem, minute, fitted, filter);
      double swap = filter != fitted ? prices->prices->filter_swap : 0;

      if (off <= self->n_minutes)
        best = fmin (best, swap + flown[(gsize) (filter + 1) * width + (gsize) off]);
    }
  return best;
}

static void
fill_shot (FfSortieBound *self,
           const FfTakePrices *prices,
           const FfLegTable *legs,
           guint shot,
           int flights)
{
  gsize width = (gsize) self->n_minutes + 1;
  g_autofree double *flown = g_new (double, (self->n_filters + 1) * width);
  double weight = ff_take_weight (prices, shot);
  double first = weight + *first_cell (self, shot + 1, flights);

  for (int filter = FF_NO_FILTER; filter < (int) self->n_filters; filter++)
    {
      double *row = flown + (gsize) (filter + 1) * width;

      fill_flown (self, prices, ff_leg_table_get (legs, shot, filter), flights, filter, row);
      first = fmin (first, row[0]);
    }
  *first_cell (self, shot, flights) = first;
  for (int minute = 0; minute <= self->n_minutes; minute++)
    for (int fitted = FF_NO_FILTER; fitted < (int) self->n_filters; fitted++)
      *cell (self, shot, flights, minute, fitted)
          = fmin (weight + *cell (self, shot + 1, flights, minute, fitted),
                  best_way_on (self, prices, flown, minute, fitted));
}

void
ff_sortie_bound_init (FfSortieBound *self, const FfTakePrices *prices, const FfLegTable *legs)
{
  const FfSortieProblem *problem = prices->problem;
  FfGround ground;
  int supply;

  ff_ground_init (&ground, problem);
  self->n_filters = problem->n_filters;
  self->n_minutes = prices->n_minutes;
  /* A leg flies a shot at least: with as many flights as shots their number never binds. */
  supply = ff_sortie_flights_left (problem, &ground, 0);
  self->endless = supply >= (int) problem->n_shots || supply > FF_BOUND_FLIGHTS;
  self->n_flights = supply >= (int) problem->n_shots ? 0 : MIN (supply, FF_BOUND_FLIGHTS);
  self->first = g_new0 (double, (problem->n_shots + 1) * (gsize) (self->n_flights + 1));
  self->least = g_new0 (double, (problem->n_shots + 1) * (gsize) (self->n_flights + 1)
                                    * (gsize) (self->n_minutes + 1) * (problem->n_filters + 1));
  for (guint shot = problem->n_shots; shot-- > 0;)
    for (int flights = 0; flights <= self->n_flights; flights++)
      fill_shot (self, prices, legs, shot, flights);
}

void
ff_sortie_bound_clear (FfSortieBound *self)
{
  g_clear_pointer (&self->least, g_free);
  g_clear_pointer (&self->first, g_free);
}

double
ff_sortie_bound_get (const FfSortieBound *self, guint next, int flights, int minute, int filter)
{
  int told_apart = MIN (flights, self->n_flights);

  return filter == FF_UNFITTED ? *first_cell (self, next, told_apart)
                               : *cell (self, next, told_apart, minute, filter);
}
