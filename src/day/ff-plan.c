/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-plan-private.h"

#include <math.h>

static void
take_free (gpointer data)
{
  FfPlanTake *take = data;

  g_free (take->shot_id);
  g_free (take->shot);
  g_free (take->title);
  g_free (take->start.shutter);
  g_free (take->end.shutter);
  g_ptr_array_unref (take->remarks);
  g_free (take->run);
  g_free (take);
}

FfPlanTake *
ff_plan_take_new (void)
{
  FfPlanTake *take = g_new0 (FfPlanTake, 1);

  take->remarks = g_ptr_array_new_with_free_func (g_free);
  take->track_deg = take->wind_ms = take->tail_ms = NAN;
  return take;
}

static void
line_free (gpointer data)
{
  FfPlanLine *line = data;

  g_free (line->id);
  g_free (line->battery);
  g_free (line->engraving);
  g_free (line->land_rule);
  g_free (line->trim);
  g_free (line->turn_round);
  g_free (line->why);
  g_ptr_array_unref (line->filters);
  g_ptr_array_unref (line->takes);
  g_free (line);
}

FfPlanLine *
ff_plan_line_new (void)
{
  FfPlanLine *line = g_new0 (FfPlanLine, 1);

  line->turn_round = g_strdup ("");
  line->filters = g_ptr_array_new_with_free_func (g_free);
  line->takes = g_ptr_array_new_with_free_func (take_free);
  return line;
}

static void
miss_free (gpointer data)
{
  FfPlanMiss *miss = data;

  g_free (miss->shot);
  g_free (miss->title);
  g_free (miss->reason);
  g_free (miss);
}

static void
charge_free (gpointer data)
{
  FfPlanCharge *charge = data;

  g_free (charge->battery);
  g_free (charge->attended_by);
  g_free (charge);
}

FfDayPlan *
ff_day_plan_new (void)
{
  FfDayPlan *plan = g_new0 (FfDayPlan, 1);

  plan->light = g_strdup ("");
  plan->lines = g_ptr_array_new_with_free_func (line_free);
  plan->missed = g_ptr_array_new_with_free_func (miss_free);
  plan->charges = g_ptr_array_new_with_free_func (charge_free);
  plan->clashes = g_ptr_array_new_with_free_func (g_free);
  plan->bag_needed = g_ptr_array_new_with_free_func (g_free);
  plan->bag_in_case = g_ptr_array_new_with_free_func (g_free);
  plan->changes = g_ptr_array_new_with_free_func (g_free);
  return plan;
}

void
ff_day_plan_free (FfDayPlan *plan)
{
  if (plan == NULL)
    return;
  g_free (plan->job);
  g_free (plan->version);
  g_free (plan->light);
  g_ptr_array_unref (plan->lines);
  g_ptr_array_unref (plan->missed);
  g_ptr_array_unref (plan->charges);
  g_ptr_array_unref (plan->clashes);
  g_ptr_array_unref (plan->bag_needed);
  g_ptr_array_unref (plan->bag_in_case);
  g_ptr_array_unref (plan->changes);
  ff_cases_free (plan->cases);
  ff_change_price_free (plan->price);
  g_free (plan);
}
