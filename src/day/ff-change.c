/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-change-private.h"

#include <string.h>

typedef struct {
  const FfDay *day;
  const FfDayChange *change;
  const FfDayPlan *after;
  FfChangePrice *price;
  FfGoOn go_on;
  gpointer data;
} Search;

void
ff_change_price_free (FfChangePrice *price)
{
  if (price == NULL)
    return;
  g_ptr_array_unref (price->lost);
  g_ptr_array_unref (price->won);
  g_free (price->reason);
  ff_remedy_clear (&price->remedy);
  g_free (price->drop);
  g_clear_pointer (&price->drop_saves, g_ptr_array_unref);
  g_free (price->sentence);
  g_free (price);
}

/* ---- What is lost ---- */

static void
find_lost (FfChangePrice *price, const FfDayPlan *before, const FfDayPlan *after)
{
  for (guint i = 0; i < after->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (after->missed, i);

      if (ff_plan_line_of (before, miss->shot) == NULL)
        continue;
      g_ptr_array_add (price->lost, g_strdup (miss->shot));
      if (price->reason == NULL)
        price->reason = g_strdup (miss->reason);
    }
  for (guint i = 0; i < before->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (before->missed, i);

      if (ff_plan_line_of (after, miss->shot) != NULL)
        g_ptr_array_add (price->won, g_strdup (miss->shot));
    }
}

/* ---- What it would take ---- */

/* Whether everything that flies after the change, but for `dropped`, still flies in this plan. */
static gboolean
loses_nothing_else (const FfDayPlan *after, const FfDayPlan *plan, const char *dropped)
{
  for (guint i = 0; i < after->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (after->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const char *shot = ((const FfPlanTake *) g_ptr_array_index (line->takes, j))->shot;

          if (g_strcmp0 (shot, dropped) != 0 && ff_plan_line_of (plan, shot) == NULL)
            return FALSE;
        }
    }
  return TRUE;
}

static gboolean
flies_all (const FfDayPlan *plan, const GPtrArray *shots)
{
  for (guint i = 0; i < shots->len; i++)
    if (ff_plan_line_of (plan, g_ptr_array_index (shots, i)) == NULL)
      return FALSE;
  return TRUE;
}

static gboolean
goes_on (const Search *self)
{
  return self->go_on == NULL || self->go_on (self->data);
}

/* Whether `trial` flies all of `wanted` and loses nothing else but `dropped`. */
static gboolean
works (const Search *self,
       const FfDayChange *trial,
       const GPtrArray *wanted,
       const char *dropped,
       double *ret_cost)
{
  g_autoptr (FfDayPlan) plan = ff_day_plan_bare (self->day, trial, NULL);

  if (plan == NULL || !flies_all (plan, wanted)
      || !loses_nothing_else (self->after, plan, dropped))
    return FALSE;
  if (ret_cost != NULL)
    *ret_cost = plan->cost;
  return TRUE;
}

static gboolean
take_remedy (Search *self, FfRemedy *remedy, GPtrArray *wanted)
{
  self->price->remedy = *remedy;
  self->price->remedy.saves = g_ptr_array_ref (wanted);
  *remedy = (FfRemedy) { FF_REMEDY_NONE }; /* the list must not clear what was taken */
  return TRUE;
}

/* The least trouble that saves all of `wanted`. FALSE: none does, or nobody waits any more. */
static gboolean
find_remedy (Search *self, GPtrArray *wanted)
{
  const FfShot *shot = ff_day_shot (self->day, g_ptr_array_index (wanted, 0));
  g_autoptr (GArray) remedies = ff_remedies_for (self->day, self->change, shot);

  for (guint i = 0; i < remedies->len && goes_on (self); i++)
    {
      FfRemedy *remedy = &g_array_index (remedies, FfRemedy, i);
      g_auto (FfTrial) trial = { 0 };

      if (ff_trial_remedy (&trial, self->day, self->change, remedy, NULL)
          && works (self, &trial.change, wanted, NULL, NULL))
        return take_remedy (self, remedy, wanted);
    }
  return FALSE;
}

/* The shot whose loss costs least among those that would make room for all of `wanted`. */
static gboolean
find_drop (Search *self, GPtrArray *wanted)
{
  const FfPrices *prices = ff_day_prices_under (self->day, self->change);
  double cheapest = G_MAXDOUBLE;

  for (guint i = 0; i < self->day->shots->len && goes_on (self); i++)
    {
      const FfShot *shot = g_ptr_array_index (self->day->shots, i);
      g_auto (FfTrial) trial = { 0 };
      double cost;

      if (ff_plan_line_of (self->after, shot->label) == NULL)
        continue;
      ff_trial_drop (&trial, self->change, shot->label);
      if (!works (self, &trial.change, wanted, shot->label, &cost)
          || cost + ff_day_shot_weight (prices, shot) >= cheapest)
        continue;
      cheapest = cost + ff_day_shot_weight (prices, shot);
      g_free (self->price->drop);
      self->price->drop = g_strdup (shot->label);
    }
  if (self->price->drop != NULL)
    self->price->drop_saves = g_ptr_array_ref (wanted);
  return self->price->drop != NULL;
}

/* Of several lost shots the one most worth saving, should nothing save them all. */
static GPtrArray *
dearest_alone (const Search *self)
{
  GPtrArray *alone = g_ptr_array_new_with_free_func (g_free);
  const FfPrices *prices = ff_day_prices_under (self->day, self->change);
  const char *dearest = NULL;
  double most = -1;

  for (guint i = 0; i < self->price->lost->len; i++)
    {
      const char *label = g_ptr_array_index (self->price->lost, i);
      double weight = ff_day_shot_weight (prices, ff_day_shot (self->day, label));

      if (weight > most)
        {
          most = weight;
          dearest = label;
        }
    }
  g_ptr_array_add (alone, g_strdup (dearest));
  return alone;
}

static void
find_ways_out (Search *self)
{
  gboolean several = self->price->lost->len > 1;
  g_autoptr (GPtrArray) alone = dearest_alone (self);
  GPtrArray *all = several ? self->price->lost : alone;

  if (!find_remedy (self, all) && several)
    find_remedy (self, alone);
  if (!find_drop (self, all) && several)
    find_drop (self, alone);
}

/* ---- The whole ---- */

static void
say (FfDayPlan *plan, const FfDayPlan *before, GTimeZone *zone)
{
  g_ptr_array_set_size (plan->changes, 0);
  g_ptr_array_add (plan->changes, g_strdup (plan->price->sentence));
  ff_plan_add_details (before, plan, zone);
}

/* Owned; NULL: stopped. */
static FfChangePrice *
price_of (const FfDayPlan *was,
          const FfDay *day,
          const FfDayChange *change,
          const FfDayPlan *plan,
          FfGoOn go_on,
          gpointer data)
{
  g_autoptr (FfChangePrice) price = g_new0 (FfChangePrice, 1);
  Search search = { day, change, plan, price, go_on, data };

  price->lost = g_ptr_array_new_with_free_func (g_free);
  price->won = g_ptr_array_new_with_free_func (g_free);
  find_lost (price, was, plan);
  price->more_cost = plan->cost - was->cost;
  if (price->lost->len > 0)
    find_ways_out (&search);
  if (!goes_on (&search))
    return NULL;
  price->sentence = ff_change_sentence (price, was);
  return g_steal_pointer (&price);
}

gboolean
ff_day_price_change (const FfDay *day,
                     const FfDayChange *before,
                     const FfDayChange *change,
                     FfDayPlan *plan,
                     FfGoOn go_on,
                     gpointer data,
                     GError **error)
{
  static const FfDayChange no_change;
  g_autoptr (FfDayPlan) was
      = ff_day_plan_bare (day, before != NULL ? before : &no_change, error);
  FfChangePrice *price = NULL;

  if (was != NULL)
    price = price_of (was, day, change, plan, go_on, data);
  if (price == NULL)
    return FALSE;
  g_clear_pointer (&plan->price, ff_change_price_free);
  plan->price = price;
  say (plan, was, day->zone);
  return TRUE;
}

FfChangePrice *
ff_day_edit_price (const FfDayPlan *was,
                   const FfDay *day,
                   const FfDayPlan *plan,
                   FfGoOn go_on,
                   gpointer data)
{
  static const FfDayChange no_change;

  return price_of (was, day, &no_change, plan, go_on, data);
}
