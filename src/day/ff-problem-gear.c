/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The gear of the planning problem: filters, stacks and settings of them, batteries, the charger, and
 * what a change borrows. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-air.h"
#include "ff-number.h"
#include "ff-usable.h"

#define CLEAR_STOPS 0.05
#define THIRD (1.0 / 3.0)
#define MOST_STACKED_STOPS 12 /* beyond it nothing is left to see (common practice, no source) */

static gboolean
is_available (const FfDayProblem *self, const FfDayChange *change, const FfItem *item)
{
  if (ff_is_named (change->without, item->label, item->id))
    return FALSE;
  return ff_is_named (change->with, item->label, item->id)
         || (item->state == FF_STATE_SERVICEABLE && ff_day_uses (self->day, item));
}

static gboolean
is_set_by_turning (const FfItem *item)
{
  return item->stops_to > item->stops + CLEAR_STOPS;
}

static void
append_filter (FfDayProblem *self, const FfSortieFilter *filter, FfItem *item, FfItem *second)
{
  g_array_append_vals (self->filters, filter, 1);
  g_ptr_array_add (self->filter_items, item);
  g_ptr_array_add (self->second_items, second);
}

/* In the last stop of a variable filter's range a dark cross shows in an even sky. */
static void
add_filter_setting (FfDayProblem *self, FfItem *item, double stops)
{
  gboolean is_variable = is_set_by_turning (item);
  FfSortieFilter filter = { .label = item->label, .stops = stops };

  if (item->set_name != NULL && *item->set_name != '\0')
    filter.set = item->set_name;
  if (is_variable && stops > item->stops_to - 1)
    filter.price_per_take = self->problem.prices->variable_top;
  append_filter (self, &filter, item, NULL);
}

static void
add_filter (FfDayProblem *self, FfItem *item)
{
  double stops = isfinite (item->measured_stops) ? item->measured_stops : item->stops;

  if (!is_set_by_turning (item) && stops < CLEAR_STOPS)
    self->clear = item;
  else if (!is_set_by_turning (item))
    add_filter_setting (self, item, stops);
  else /* a variable filter is set on the ground, in thirds */
    for (double set = item->stops; set < item->stops_to + 0.01; set += THIRD)
      add_filter_setting (self, item, set);
}

/* ---- Stacks ---- */

/* A strength that is at hand already needs no stack: one glass is always the better. */
static gboolean
has_strength (const FfDayProblem *self, double stops)
{
  for (guint i = 0; i < self->filters->len; i++)
    if (fabs (g_array_index (self->filters, FfSortieFilter, i).stops - stops) < THIRD / 2)
      return TRUE;
  return FALSE;
}

/* Whether two glasses can stand before each other: a polariser and a variable filter each turn, and
 * two polarisers in a row are a variable filter of no known strength. */
static gboolean
can_stack (const FfItem *item)
{
  return !is_set_by_turning (item) && !item->polariser;
}

static void
add_stack (FfDayProblem *self, guint first, guint second)
{
  const FfSortieFilter *a = &g_array_index (self->filters, FfSortieFilter, first);
  const FfSortieFilter *b = &g_array_index (self->filters, FfSortieFilter, second);
  FfSortieFilter stack = {
    .label = a->label,
    .stops = a->stops + b->stops,
    .price_per_take = self->problem.prices->stacked,
  };

  /* Of one set only if both are: else its cast is that of neither. */
  if (a->set != NULL && g_strcmp0 (a->set, b->set) == 0)
    stack.set = a->set;
  if (stack.stops <= MOST_STACKED_STOPS && !has_strength (self, stack.stops))
    append_filter (self, &stack, self->filter_items->pdata[first],
                   self->filter_items->pdata[second]);
}

/* Two filters at once where the crew's own rule allows it; each strength once, so that the search
 * does not pay for what can't be told apart. */
static void
add_stacks (FfDayProblem *self)
{
  guint n_single = self->filters->len;

  for (guint i = 0; self->day->job->filters_at_once > 1 && i < n_single; i++)
    for (guint j = i + 1; j < n_single; j++)
      if (can_stack (self->filter_items->pdata[i]) && can_stack (self->filter_items->pdata[j]))
        add_stack (self, i, j);
}

/* ---- Batteries and charger ---- */

static void
add_battery (FfDayProblem *self, FfItem *item)
{
  FfSortieBattery battery = { item->label, 0, self->problem.from };
  FfUsable usable;
  FfDayAir air;

  /* A battery of a controller, a camera or the van has no flying minutes. */
  if (item->battery_use != FF_BATTERY_USE_AIRCRAFT || item->usable_minutes <= 0
      || self->batteries->len >= FF_SORTIE_MAX_BATTERIES)
    return;
  ff_day_air (self->day, &air);
  ff_usable (item, self->day->battery_flights, air.temperature_c,
             ff_usable_reserve (self->day->limits), &usable);
  battery.usable_minutes = ff_day_air_minutes (self->day, &usable);
  g_array_append_val (self->batteries, battery);
  g_ptr_array_add (self->battery_items, item);
}

static void
add_charger (FfDayProblem *self, const FfItem *item)
{
  self->charger = item;
  self->problem.charger_slots = (guint) item->slots;
  self->problem.cool_minutes = item->cool_minutes;
  self->problem.charge_minutes = item->charge_minutes;
  for (guint i = 0; i < self->day->crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (self->day->crew, i);

      if (g_str_equal (member->id, item->attended_by))
        self->charger_by = member->name;
    }
  self->problem.charger_attended = self->charger_by != NULL;
}

static void
add_own_gear (FfDayProblem *self, const FfDayChange *change)
{
  for (guint i = 0; i < self->day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (self->day->items, i);

      if (!is_available (self, change, item))
        continue;
      if (item->kind == FF_KIND_FILTER && ff_item_fits (item, ff_day_camera (self->day)))
        add_filter (self, item);
      else if (item->kind == FF_KIND_BATTERY)
        add_battery (self, item);
      else if (item->kind == FF_KIND_CHARGER && self->problem.charger_slots == 0)
        add_charger (self, item);
    }
}

/* ---- What a change borrows ---- */

static FfItem *
borrow (FfDayProblem *self, FfKind kind, const char *label)
{
  FfItem *item = ff_item_new (kind);

  g_free (item->label);
  item->label = g_strdup (label);
  g_ptr_array_add (self->loans, item);
  return item;
}

static void
borrow_battery (FfDayProblem *self)
{
  FfItem *item = borrow (self, FF_KIND_BATTERY, _ ("one more battery"));

  for (guint i = 0; i < self->battery_items->len; i++)
    {
      const FfItem *own = g_ptr_array_index (self->battery_items, i);

      item->usable_minutes = MAX (item->usable_minutes, own->usable_minutes);
    }
  add_battery (self, item);
}

static void
borrow_filter (FfDayProblem *self, double stops)
{
  g_autofree char *label = ff_stops_format (stops);

  add_filter_setting (self, borrow (self, FF_KIND_FILTER, label), stops);
}

static void
add_loans (FfDayProblem *self, const FfDayChange *change)
{
  for (int i = 0; i < change->more_batteries; i++)
    borrow_battery (self);
  if (change->more_filter_stops > 0)
    borrow_filter (self, change->more_filter_stops);
  if (self->charger == NULL)
    return;
  self->problem.charger_slots += (guint) MAX (change->more_charger_slots, 0);
  if (change->attended && self->charger_by == NULL)
    {
      self->charger_by = _ ("somebody");
      self->problem.charger_attended = TRUE;
    }
}

void
ff_problem_add_gear (FfDayProblem *self, const FfDayChange *change)
{
  add_own_gear (self, change);
  add_loans (self, change);
  add_stacks (self);
}
