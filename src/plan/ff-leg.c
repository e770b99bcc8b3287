/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-leg.h"

/* Starts every take as early as may be from `off` on, then as late as the last one allows, so that
 * no minute is spent waiting in the air. FALSE when a window can't be met. */
static gboolean
time_leg (const FfSortieProblem *problem, gint64 earliest_off, FfLeg *leg)
{
  gint64 at = earliest_off + problem->out_minutes * 60;

  for (guint i = 0; i < leg->n_shots; i++)
    {
      const FfSortieShot *shot = &problem->shots[leg->shots[i]];

      leg->starts[i] = MAX (at, shot->window_from);
      at = leg->starts[i] + shot->minutes * 60;
      if (at > shot->window_to)
        return FALSE;
    }
  leg->down = at + problem->back_minutes * 60;
  for (guint i = leg->n_shots - 1; i > 0; i--)
    {
      const FfSortieShot *before = &problem->shots[leg->shots[i - 1]];
      gint64 latest_end = MIN (leg->starts[i], before->window_to);

      leg->starts[i - 1] = latest_end - before->minutes * 60;
    }
  leg->off = leg->starts[0] - problem->out_minutes * 60;
  return leg->down <= problem->to;
}

/* Whether `battery` is the better one for a leg that both could fly: off earlier, then not yet
 * used, then ready earlier. */
static gboolean
is_better_battery (const FfGround *ground, const FfLeg *leg, int battery, const FfLeg *best)
{
  gboolean used = (ground->used >> battery) & 1;
  gboolean best_used;

  if (best->battery < 0 || leg->off != best->off)
    return best->battery < 0 || leg->off < best->off;
  best_used = (ground->used >> best->battery) & 1;
  if (used != best_used)
    return !used;
  return ground->ready[battery] < ground->ready[best->battery];
}

gboolean
ff_leg_fit_battery (const FfSortieProblem *problem, const FfGround *ground, FfLeg *leg)
{
  gint64 turned_round = problem->from;
  FfLeg best = { .battery = -1 };

  if (ground->clock > 0)
    {
      turned_round = ground->clock + problem->battery_change_minutes * 60;
      if (leg->filter != ground->filter)
        turned_round += problem->filter_change_minutes * 60;
    }
  for (int battery = 0; battery < (int) problem->n_batteries; battery++)
    {
      FfLeg tried = *leg;

      if (ground->ready[battery] == FF_NEVER
          || !time_leg (problem, MAX (turned_round, ground->ready[battery]), &tried)
          || tried.down - tried.off > problem->batteries[battery].usable_minutes * 60
          || !is_better_battery (ground, &tried, battery, &best))
        continue;
      best = tried;
      best.battery = battery;
    }
  if (best.battery < 0)
    return FALSE;
  *leg = best;
  return TRUE;
}

gint64
ff_leg_land_by (const FfSortieProblem *problem, const FfLeg *leg)
{
  return leg->off + problem->batteries[leg->battery].usable_minutes * 60;
}

FfSortieCharge
ff_leg_queue_charge (const FfSortieProblem *problem, const FfLeg *leg, FfGround *ground)
{
  FfSortieCharge charge = { .battery = (guint) leg->battery, .cool_from = ff_leg_land_by (problem, leg) };
  guint slots = MIN (problem->charger_slots, FF_LEG_SLOTS);
  guint slot = 0;

  ground->ready[leg->battery] = FF_NEVER;
  charge.ready_at = FF_NEVER;
  if (slots == 0 || !problem->charger_attended)
    return charge;
  for (guint i = 1; i < slots; i++)
    if (ground->slot_free[i] < ground->slot_free[slot])
      slot = i;
  charge.charge_from
      = MAX (charge.cool_from + problem->cool_minutes * 60, ground->slot_free[slot]);
  charge.ready_at = charge.charge_from + problem->charge_minutes * 60;
  ground->slot_free[slot] = charge.ready_at;
  ground->ready[leg->battery] = charge.ready_at;
  return charge;
}
