/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-take-price.h"

#include <math.h>

#include "ff-minute-price.h"

static double *
row_of (const FfTakePrices *self, guint shot, int filter)
{
  gsize row = (gsize) shot * (self->problem->n_filters + 1) + (gsize) (filter + 1);

  return self->summed + row * (gsize) (self->n_minutes + 2);
}

double
ff_take_filter_stops (const FfSortieProblem *problem, int filter)
{
  return filter >= 0 ? problem->filters[filter].stops : 0;
}

double
ff_take_filter_price (const FfSortieProblem *problem, int filter)
{
  return filter >= 0 ? problem->filters[filter].price_per_take : 0;
}

const FfSortieLock *
ff_take_lock (const FfSortieProblem *problem, guint shot)
{
  for (guint i = 0; i < problem->n_locks; i++)
    if (problem->locks[i].shot == shot)
      return &problem->locks[i];
  return NULL;
}

static const char *
set_of (const FfSortieProblem *problem, int filter)
{
  return filter >= 0 ? problem->filters[filter].set : NULL;
}

double
ff_take_match_price (const FfTakePrices *self, int before, int filter)
{
  const char *set = set_of (self->problem, filter), *set_before = set_of (self->problem, before);

  if (before == FF_UNFITTED || before == filter)
    return 0;
  if (set != NULL && set_before != NULL && !g_str_equal (set, set_before))
    return self->prices->match_set;
  return self->prices->match_step;
}

static double
weight_of (const FfTakePrices *self, guint shot)
{
  double weight = self->problem->shots[shot].weight;

  if (self->problem->shots[shot].must_fly || ff_take_lock (self->problem, shot) != NULL)
    return self->prices->must_fly;
  return weight > 0 ? weight : self->prices->not_flown;
}

static void
fill_row (FfTakePrices *self, guint index, int filter)
{
  const FfSortieShot *shot = &self->problem->shots[index];
  double stops = ff_take_filter_stops (self->problem, filter);
  double *row = row_of (self, index, filter);
  int first = ff_take_first_start (self, index);
  int last = ff_take_last_start (self, index) + shot->minutes;

  for (int minute = 0; minute <= self->n_minutes; minute++)
    {
      row[minute + 1] = row[minute];
      if (minute >= first && minute < last)
        row[minute + 1] += ff_minute_price (self->prices, self->problem->camera, &shot->want,
                                            shot->own_from_angle_deg, shot->ev100[minute], stops,
                                            NULL);
    }
}

void
ff_take_prices_init (FfTakePrices *self, const FfSortieProblem *problem)
{
  self->problem = problem;
  self->prices = problem->prices != NULL ? problem->prices : &ff_prices_default;
  self->n_minutes = (int) ((problem->to - problem->from) / 60);
  self->weights = g_new (double, MAX (problem->n_shots, 1));
  self->summed = g_new0 (double, (gsize) problem->n_shots * (problem->n_filters + 1)
                                     * (gsize) (self->n_minutes + 2));
  for (guint shot = 0; shot < problem->n_shots; shot++)
    self->weights[shot] = weight_of (self, shot);
  for (guint shot = 0; shot < problem->n_shots; shot++)
    for (int filter = FF_NO_FILTER; filter < (int) problem->n_filters; filter++)
      fill_row (self, shot, filter);
}

void
ff_take_prices_clear (FfTakePrices *self)
{
  g_clear_pointer (&self->weights, g_free);
  g_clear_pointer (&self->summed, g_free);
}

static int
window_opens (const FfTakePrices *self, guint shot)
{
  return (int) ((self->problem->shots[shot].window_from - self->problem->from) / 60);
}

double
ff_take_price (const FfTakePrices *self, guint shot, int filter, int start)
{
  const double *row = row_of (self, shot, filter);

  return row[start + self->problem->shots[shot].minutes] - row[start]
         + ff_take_late_price (self, shot, start) + ff_take_filter_price (self->problem, filter);
}

double
ff_take_late_price (const FfTakePrices *self, guint shot, int start)
{
  double a_minute = self->problem->shots[shot].fixed_time ? self->prices->late_fixed
                                                          : self->prices->late_minute;

  return a_minute * (start - window_opens (self, shot));
}

int
ff_take_first_start (const FfTakePrices *self, guint shot)
{
  return MAX (window_opens (self, shot), self->problem->out_minutes);
}

int
ff_take_last_start (const FfTakePrices *self, guint shot)
{
  const FfSortieShot *wanted = &self->problem->shots[shot];
  int closes = (int) ((wanted->window_to - self->problem->from) / 60);

  return MIN (closes, self->n_minutes - self->problem->back_minutes) - wanted->minutes;
}

double
ff_take_weight (const FfTakePrices *self, guint shot)
{
  return self->weights[shot];
}

double
ff_take_cheapest (const FfTakePrices *self, guint shot)
{
  int last = ff_take_last_start (self, shot);
  double cheapest = INFINITY;

  for (int start = ff_take_first_start (self, shot); start <= last; start++)
    for (int filter = FF_NO_FILTER; filter < (int) self->problem->n_filters; filter++)
      cheapest = MIN (cheapest, ff_take_price (self, shot, filter, start));
  return cheapest;
}
