/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-bound.h"

#include <math.h>

#define FLIGHTS_AT_MOST 24        /* so many flights left or more count as any number */
#define CELLS_AT_MOST (7u << 20)  /* 56 MB */

/* fmin() is a call, and this is done a hundred million times. */
static inline double
least (double a, double b)
{
  return a < b ? a : b;
}

static gsize
row_length (const FfSortieBound *self)
{
  return (gsize) (self->n_minutes + 1) * (self->n_filters + 1);
}

static double *
row_of (const FfSortieBound *self, guint stage, int flights, int relaunches)
{
  gsize row = (gsize) stage * (gsize) (self->n_flights + 1) + (gsize) flights;

  return self->least + (row * (gsize) (self->n_relaunches + 1) + (gsize) relaunches)
                           * row_length (self);
}

static double *
cell (const FfSortieBound *self, guint stage, int flights, int relaunches, int minute, int filter)
{
  return row_of (self, stage, flights, relaunches)
         + (gsize) minute * (self->n_filters + 1) + (gsize) (filter + 1);
}

static double *
first_cell (const FfSortieBound *self, guint stage, int flights)
{
  return self->first + (gsize) stage * (gsize) (self->n_flights + 1) + flights;
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
ff_sortie_relaunched (const FfSortieProblem *problem, int down, int fitted, int filter)
{
  return down + (fitted == filter ? problem->relaunch_minutes : problem->filter_landing_minutes);
}

double
ff_sortie_relaunch_price (const FfPrices *prices, int fitted, int filter)
{
  return fitted == filter ? prices->relaunch : prices->filter_landing;
}

int
ff_sortie_bound_relaunches (const FfSortieBound *self, int legs, int left)
{
  return left >= self->shortest_leg ? MIN (legs, self->n_relaunches) : 0;
}

/* One less of any number is still any number. */
static int
one_less (const FfSortieBound *self, int flights)
{
  return self->endless && flights == self->n_flights ? flights : flights - 1;
}

/* ---- Filling ---- */

/* The least that flying on costs, by the minute from which the aircraft can be off: on a new
 * battery, or with so many relaunches left on the one that is in. */
typedef struct {
  double *flown;   /* [relaunches used + 1][filter + 1][minute]; the first of a new battery */
  double *anyhow;  /* [minute]: the least of `flown` on a new battery over the filters */
} Ways;

static double *
way (const FfSortieBound *self, const Ways *ways, int relaunches, int filter)
{
  gsize width = (gsize) self->n_minutes + 1;

  return ways->flown + ((gsize) relaunches * (self->n_filters + 1) + (gsize) (filter + 1)) * width;
}

static void
weigh_legs (const FfSortieBound *self,
            const GArray *legs,
            guint stage,
            int flights,
            int filter,
            const Ways *ways)
{
  const FfOrder *order = self->legs->order;
  double *fresh = way (self, ways, 0, filter);
  int less = one_less (self, flights);

  for (guint i = 0; i < legs->len; i++)
    {
      const FfLeg *leg = &g_array_index (legs, FfLeg, i);
      guint place = leg->place == FF_LEG_NO_PLACE ? ff_order_place (order, stage) : leg->place;
      guint next = ff_order_stage (order, place, ff_order_flown (order, stage) | leg->flown);
      int left = self->legs->longest - (leg->down - leg->off);

      for (int relaunches = 0; relaunches <= self->n_relaunches; relaunches++)
        {
          /* Relaunched: one fewer of them left. Fresh: as many as the rule allows. */
          int after = ff_sortie_bound_relaunches (
              self, relaunches > 0 ? relaunches - 1 : self->n_relaunches, left);
          double *flown = relaunches > 0 ? way (self, ways, relaunches, filter) : fresh;

          if (relaunches == 0 && less < 0)
            continue;
          flown[leg->off] = least (flown[leg->off],
                                  leg->cost + *cell (self, next, relaunches > 0 ? flights : less,
                                                     after, leg->down, filter));
        }
    }
}

/* All legs from a stage behind one filter: those that begin with the next shot of the list and
 * those that fly none of it, with any of the free shots. */
static void
fill_ways (const FfSortieBound *self, guint stage, int flights, int filter, const Ways *ways)
{
  const FfOrder *order = self->legs->order;
  guint place = ff_order_place (order, stage);
  guint open = ff_order_flown (order, ~stage);

  for (int relaunches = 0; relaunches <= self->n_relaunches; relaunches++)
    for (int minute = 0; minute <= self->n_minutes; minute++)
      way (self, ways, relaunches, filter)[minute] = INFINITY;
  for (guint flown = open;; flown = (flown - 1) & open)
    {
      if (place < order->n_fixed)
        weigh_legs (self, ff_leg_table_get (self->legs, place, flown, filter), stage, flights,
                    filter, ways);
      weigh_legs (self, ff_leg_table_get (self->legs, order->n_fixed, flown, filter), stage,
                  flights, filter, ways);
      if (flown == 0)
        break;
    }
  for (int relaunches = 0; relaunches <= self->n_relaunches; relaunches++)
    {
      double *row = way (self, ways, relaunches, filter);

      for (int minute = self->n_minutes - 1; minute >= 0; minute--)
        row[minute] = least (row[minute], row[minute + 1]);
    }
}

/* The cheapest way on from one landing by flying. A swap to the filter that is fitted is dearer
 * than no swap, so that the least over all filters may count as a swap. */
static double
best_way_on (const FfSortieBound *self, const Ways *ways, int relaunches, int minute, int fitted)
{
  const FfSortieProblem *problem = self->prices->problem;
  const FfPrices *prices = self->prices->prices;
  int off = ff_sortie_turned_round (problem, minute, fitted, fitted);
  int swapped = off + problem->filter_change_minutes;
  double best = INFINITY;

  if (off <= self->n_minutes)
    best = prices->new_battery + way (self, ways, 0, fitted)[off];
  if (swapped <= self->n_minutes)
    best = least (best, prices->new_battery + prices->filter_swap + ways->anyhow[swapped]);
  for (int filter = FF_NO_FILTER; relaunches > 0 && filter < (int) self->n_filters; filter++)
    {
      int again = ff_sortie_relaunched (problem, minute, fitted, filter);

      if (again <= self->n_minutes)
        best = least (best, ff_sortie_relaunch_price (prices, fitted, filter)
                               + way (self, ways, relaunches, filter)[again]);
    }
  return best;
}

/* What it costs to leave out the next shot of the list, or all that are left where it is done. */
static double
price_of_leaving (const FfSortieBound *self, guint stage, guint *ret_next)
{
  const FfOrder *order = self->legs->order;
  guint place = ff_order_place (order, stage);
  double price = 0;

  if (place < order->n_fixed)
    {
      *ret_next = stage + (1u << order->n_free);
      return ff_take_weight (self->prices, order->fixed[place]);
    }
  *ret_next = ff_order_n_stages (order) - 1;
  for (guint i = 0; i < order->n_free; i++)
    if (!((stage >> i) & 1))
      price += ff_take_weight (self->prices, order->free[i]);
  return price;
}

static void
fill_stage (FfSortieBound *self, guint stage, int flights, const Ways *ways)
{
  guint next;
  double leaving = price_of_leaving (self, stage, &next);
  double first = leaving + *first_cell (self, next, flights);

  for (int minute = 0; minute <= self->n_minutes; minute++)
    ways->anyhow[minute] = INFINITY;
  for (int filter = FF_NO_FILTER; filter < (int) self->n_filters; filter++)
    {
      fill_ways (self, stage, flights, filter, ways);
      for (int minute = 0; minute <= self->n_minutes; minute++)
        ways->anyhow[minute] = least (ways->anyhow[minute], way (self, ways, 0, filter)[minute]);
    }
  *first_cell (self, stage, flights)
      = least (first, self->prices->prices->new_battery + ways->anyhow[0]);
  for (int relaunches = 0; relaunches <= self->n_relaunches; relaunches++)
    for (int minute = 0; minute <= self->n_minutes; minute++)
      for (int fitted = FF_NO_FILTER; fitted < (int) self->n_filters; fitted++)
        *cell (self, stage, flights, relaunches, minute, fitted)
            = least (leaving + *cell (self, next, flights, relaunches, minute, fitted),
                     best_way_on (self, ways, relaunches, minute, fitted));
}

/* ---- The whole ---- */

static int
shortest_leg (const FfSortieProblem *problem)
{
  int shortest = FF_NEVER;

  for (guint i = 0; i < problem->n_shots; i++)
    shortest = MIN (shortest, problem->shots[i].minutes);
  return problem->out_minutes + shortest + problem->back_minutes;
}

/* As many flights are told apart as there is room for; a leg flies a shot at least, so with as many
 * flights as shots their number never binds. */
static void
set_flights (FfSortieBound *self, const FfOrder *order, int supply)
{
  guint n_shots = order->n_fixed + order->n_free;
  gsize cells = ff_order_n_stages (order) * (gsize) (self->n_relaunches + 1) * row_length (self);
  int room = (int) MIN (CELLS_AT_MOST / MAX (cells, 1), FLIGHTS_AT_MOST + 1) - 1;

  room = MAX (room, 0);
  self->endless = supply >= (int) n_shots || supply > room;
  self->n_flights = supply >= (int) n_shots ? 0 : MIN (supply, room);
}

void
ff_sortie_bound_init (FfSortieBound *self,
                      const FfTakePrices *prices,
                      const FfLegTable *legs,
                      const FfBatteries *batteries,
                      int flights)
{
  gsize n_stages = ff_order_n_stages (legs->order);
  Ways ways;

  *self = (FfSortieBound) { .prices = prices, .legs = legs };
  self->n_filters = prices->problem->n_filters;
  self->n_minutes = prices->n_minutes;
  self->n_relaunches = MAX (batteries->most_legs - 1, 0);
  self->shortest_leg = shortest_leg (prices->problem);
  set_flights (self, legs->order, flights);
  self->first = g_new0 (double, n_stages * (gsize) (self->n_flights + 1));
  self->least = g_new0 (double, n_stages * (gsize) (self->n_flights + 1)
                                    * (gsize) (self->n_relaunches + 1) * row_length (self));
  ways.flown = g_new (double, (gsize) (self->n_relaunches + 1) * row_length (self));
  ways.anyhow = g_new (double, self->n_minutes + 1);
  for (gsize stage = n_stages - 1; stage-- > 0;)
    for (int count = 0; count <= self->n_flights; count++)
      fill_stage (self, (guint) stage, count, &ways);
  g_free (ways.flown);
  g_free (ways.anyhow);
}

void
ff_sortie_bound_clear (FfSortieBound *self)
{
  g_clear_pointer (&self->least, g_free);
  g_clear_pointer (&self->first, g_free);
}

double
ff_sortie_bound_get (const FfSortieBound *self,
                     guint stage,
                     int flights,
                     int relaunches,
                     int minute,
                     int filter)
{
  int told_apart = MIN (flights, self->n_flights);

  return filter == FF_UNFITTED ? *first_cell (self, stage, told_apart)
                               : *cell (self, stage, told_apart, relaunches, minute, filter);
}
