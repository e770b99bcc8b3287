/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plan of a day: the exact search (ff-sortie-search.c) over the orders that are allowed, and
 * the plan so far where the new one is hardly better. Where more shots are of free order than can
 * be searched at once, a window of them slides along the day, and all orders within it are searched
 * until no window gives a better plan. */
#include "ff-sorties.h"

#include <math.h>
#include <string.h>

#include "ff-leg.h"
#include "ff-order.h"
#include "ff-sortie-path.h"
#include "ff-sortie-search.h"
#include "ff-take-price.h"

#define NOISE 1e-6
#define WINDOW 6 /* shots of free order at once in a sliding window */

typedef struct {
  const FfSortieProblem *problem;
  const FfSortieWatch *watch;
  FfTakePrices prices;
  guint nodes_left;
  guint8 shots[FF_SORTIE_MAX_SHOTS]; /* the order so far */
  FfSortiePlan *best;
} Planning;

/* ---- Order ---- */

/* Where a shot may stand among those in place: a shot of the list after the ones before it, and
 * none before a shot whose window opens sooner. */
static guint
place_for (const Planning *self, const guint8 *shots, guint n, guint shot)
{
  const FfSortieShot *all = self->problem->shots;
  guint low = 0, high = n;

  for (guint i = 0; !all[shot].free_order && i < n; i++)
    if (!all[shots[i]].free_order && shots[i] < shot)
      low = i + 1;
    else if (!all[shots[i]].free_order && i < high)
      high = i;
  while (low < high && all[shots[low]].window_from <= all[shot].window_from)
    low++;
  return low;
}

/* The shots as the best plan flies them, the others put between. */
static void
follow_best (Planning *self)
{
  guint8 shots[FF_SORTIE_MAX_SHOTS];
  guint n = 0;

  for (guint i = 0; i < self->best->takes->len; i++)
    shots[n++] = (guint8) g_array_index (self->best->takes, FfSortieTake, i).shot;
  for (guint shot = 0; shot < self->problem->n_shots; shot++)
    {
      guint at;

      if (memchr (shots, (int) shot, n) != NULL)
        continue;
      at = place_for (self, shots, n, shot);
      memmove (shots + at + 1, shots + at, n - at);
      shots[at] = (guint8) shot;
      n++;
    }
  memcpy (self->shots, shots, n);
}

/* ---- Searching ---- */

/* Searches with the shots of [from, to) free; whether there is a better plan now. */
static gboolean
improve (Planning *self, guint from, guint to, double *ret_bound)
{
  FfSearchLimits limits = {
    .watch = self->watch,
    .nodes_at_most = self->nodes_left,
    .to_beat = self->best != NULL ? self->best->cost - NOISE : INFINITY,
  };
  FfSortiePlan *plan;
  FfOrder order;

  ff_order_init (&order, self->problem, self->shots, from, to);
  plan = ff_sortie_search (&self->prices, &order, &limits, ret_bound);
  if (plan == NULL)
    return FALSE;
  self->nodes_left -= MIN (self->nodes_left, plan->looked_at);
  ff_sortie_plan_free (self->best);
  self->best = plan;
  return TRUE;
}

/* What no plan in any order can be cheaper than: each shot at its best or left out, with its share
 * of a battery. */
static double
bound_of_any_order (const Planning *self)
{
  const FfSortieProblem *problem = self->problem;
  double bound = 0;
  int most = 1;

  for (guint i = 0; i < problem->n_batteries; i++)
    most = MAX (most, problem->batteries[i].usable_minutes - problem->out_minutes
                          - problem->back_minutes);
  for (guint shot = 0; shot < problem->n_shots; shot++)
    bound += MIN (ff_take_weight (&self->prices, shot),
                  ff_take_cheapest (&self->prices, shot)
                      + self->prices.prices->new_battery * problem->shots[shot].minutes / most);
  return bound;
}

static guint
count_free (const FfSortieProblem *problem)
{
  guint n = 0;

  for (guint i = 0; i < problem->n_shots; i++)
    n += problem->shots[i].free_order != FALSE;
  return n;
}

static gboolean
is_over (const Planning *self)
{
  return self->best->stopped || self->nodes_left == 0;
}

static void
slide (Planning *self, guint width)
{
  guint n = self->problem->n_shots;
  gboolean better = TRUE;
  double bound;

  while (better && !is_over (self))
    {
      better = FALSE;
      for (guint from = 0; from < n && !is_over (self); from += MAX (width / 2, 1))
        if (improve (self, from, MIN (from + width, n), &bound))
          {
            better = TRUE;
            follow_best (self);
          }
    }
}

static FfSortiePlan *
plan_once (const FfSortieProblem *problem, const FfSortieWatch *watch)
{
  Planning self = { .problem = problem, .watch = watch, .nodes_left = FF_SORTIE_NODES };
  guint room = ff_order_room (problem);
  gboolean all_at_once = count_free (problem) <= room;
  double bound;

  if (watch != NULL && watch->nodes_at_most > 0)
    self.nodes_left = watch->nodes_at_most;
  for (guint i = 0; i < problem->n_shots; i++)
    self.shots[i] = (guint8) i;
  ff_take_prices_init (&self.prices, problem);
  improve (&self, 0, all_at_once ? problem->n_shots : 0, &bound);
  if (!all_at_once)
    {
      follow_best (&self);
      slide (&self, MIN (room, WINDOW));
      bound = bound_of_any_order (&self);
    }
  self.best->bound = MIN (bound, self.best->cost);
  self.best->optimal = self.best->bound >= self.best->cost - NOISE;
  ff_take_prices_clear (&self.prices);
  return self.best;
}

/* ---- Staying close ---- */

/* The locks of the problem, and the plan so far for the shots that have none. */
static GArray *
locks_with_plan_so_far (const FfSortieProblem *problem, gboolean with_times)
{
  GArray *locks = g_array_new (FALSE, FALSE, sizeof (FfSortieLock));

  g_array_append_vals (locks, problem->locks, problem->n_locks);
  for (guint i = 0; i < problem->n_so_far; i++)
    {
      FfSortieLock lock = problem->plan_so_far[i];

      if (!with_times)
        lock.off_by = FF_ANY_TIME;
      if (ff_take_lock (problem, lock.shot) == NULL)
        g_array_append_val (locks, lock);
    }
  return locks;
}

/* The plan so far on the day as it is now; NULL where it can't be flown any more. */
static FfSortiePlan *
plan_as_before (const FfSortieProblem *problem, const FfSortieWatch *watch, gboolean with_times)
{
  g_autoptr (GArray) locks = locks_with_plan_so_far (problem, with_times);
  g_autoptr (FfSortiePlan) plan = NULL;
  FfSortieProblem locked = *problem;

  locked.locks = (const FfSortieLock *) (gpointer) locks->data;
  locked.n_locks = locks->len;
  plan = plan_once (&locked, watch);
  for (guint i = problem->n_locks; i < locks->len; i++)
    if (!ff_sortie_path_flies (plan, g_array_index (locks, FfSortieLock, i).shot))
      return NULL;
  return g_steal_pointer (&plan);
}

static FfSortiePlan *
stay_close (const FfSortieProblem *problem, const FfSortieWatch *watch, FfSortiePlan *best)
{
  for (int with_times = TRUE; with_times >= FALSE; with_times--)
    {
      g_autoptr (FfSortiePlan) plan = plan_as_before (problem, watch, with_times);

      if (plan == NULL || plan->cost > best->cost + problem->stay_margin)
        continue;
      plan->kept_price = MAX (plan->cost - best->cost, 0);
      plan->kept = plan->kept_price > NOISE;
      plan->bound = MIN (best->bound, plan->cost);
      plan->optimal = best->optimal && !plan->kept;
      ff_sortie_plan_free (best);
      return g_steal_pointer (&plan);
    }
  return best;
}

FfSortiePlan *
ff_sorties_plan_watched (const FfSortieProblem *problem, const FfSortieWatch *watch)
{
  FfSortiePlan *best;

  g_return_val_if_fail (problem->n_batteries <= FF_SORTIE_MAX_BATTERIES, NULL);
  g_return_val_if_fail (problem->n_shots <= FF_SORTIE_MAX_SHOTS, NULL);
  g_return_val_if_fail (problem->to >= problem->from, NULL);
  best = plan_once (problem, watch);
  if (problem->stay_margin > 0 && problem->n_so_far > 0 && !best->stopped)
    best = stay_close (problem, watch, best);
  return best;
}

FfSortiePlan *
ff_sorties_plan (const FfSortieProblem *problem)
{
  return ff_sorties_plan_watched (problem, NULL);
}

GArray *
ff_sortie_plan_locks (const FfSortiePlan *plan)
{
  GArray *locks = g_array_new (FALSE, FALSE, sizeof (FfSortieLock));

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);

      for (guint j = 0; j < line->n_takes; j++)
        {
          const FfSortieTake *take
              = &g_array_index (plan->takes, FfSortieTake, line->first_take + j);
          FfSortieLock lock = { take->shot, (int) line->battery, line->filter, line->off_by };

          g_array_append_val (locks, lock);
        }
    }
  return locks;
}
