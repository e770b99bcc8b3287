/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The joins of a plan: the planner's answer as lines, promises and a bag. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-day-reading.h"
#include "ff-scale.h"
#include "ff-turn-round.h"

static void
read_settings (const FfChoice *choice, FfPlanSettings *ret_settings)
{
  const FfSettings *settings = &choice->settings;

  ret_settings->aperture = settings->aperture.written;
  ret_settings->shutter = g_strdup (ff_scale_label (FF_SCALE_SHUTTER, settings->shutter));
  ret_settings->shutter_s = settings->shutter_s;
  ret_settings->shutter_angle_deg = settings->shutter_angle_deg;
  ret_settings->iso = (int) ff_scale_written (FF_SCALE_ISO, settings->iso);
  ret_settings->error_stops = settings->error_stops;
}

static FfPlanTake *
read_take (const FfDayProblem *problem, const FfSortieLine *line, const FfSortieTake *take)
{
  const FfShot *record = g_ptr_array_index (problem->records, take->shot);
  FfPlanTake *read = ff_plan_take_new ();
  gboolean has_frames = record->intent == FF_INTENT_VIDEO || record->intent == FF_INTENT_SLOW;

  read->shot_id = g_strdup (record->id);
  read->shot = g_strdup (record->label);
  read->title = g_strdup (record->title);
  read->from = take->from;
  read->to = take->to;
  read->ev100_start = take->ev100_start;
  read->ev100_end = take->ev100_end;
  read->need_start_stops = take->need_start;
  read->need_end_stops = take->need_end;
  read->intent = record->intent;
  read->fps = has_frames ? record->fps : NAN;
  read_settings (&take->start, &read->start);
  read_settings (&take->end, &read->end);
  ff_plan_add_remarks (problem, take, read->remarks);
  ff_plan_add_light_remarks (problem, line, take, read->remarks);
  ff_run_read (problem, record, line->land_by, read);
  return read;
}

/* The glass in front: the filter, or the clear one where the crew owns one. */
static void
read_filter (const FfDayProblem *problem, const FfSortieLine *line, FfPlanLine *read)
{
  const FfItem *item = line->filter != FF_NO_FILTER
                           ? g_ptr_array_index (problem->filter_items, line->filter)
                           : problem->clear;

  const FfItem *second = line->filter != FF_NO_FILTER
                             ? g_ptr_array_index (problem->second_items, line->filter)
                             : NULL;

  read->filter_stops = line->filter_stops;
  read->engraving = second != NULL
                        /* Translators: what is engraved on two filters that stand one before the
                           other: "ND8 + ND16". */
                        ? g_strdup_printf (_ ("%s + %s"), item->engraving, second->engraving)
                        : g_strdup (item != NULL ? item->engraving : "");
  if (item != NULL)
    g_ptr_array_add (read->filters, g_strdup (item->label));
  if (second != NULL)
    g_ptr_array_add (read->filters, g_strdup (second->label));
}

static FfPlanLine *
read_line (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line)
{
  const FfItem *battery = g_ptr_array_index (problem->battery_items, line->battery);
  FfPlanLine *read = ff_plan_line_new ();

  read->off_by = line->off_by;
  read->down = line->down;
  read->land_by = line->land_by;
  read->battery = g_strdup (battery->label);
  read_filter (problem, line, read);
  for (guint i = 0; i < line->n_takes; i++)
    g_ptr_array_add (read->takes,
                     read_take (problem, line,
                                &g_array_index (sorties->takes, FfSortieTake,
                                                line->first_take + i)));
  read->land_rule = ff_plan_land_rule (read, problem->day->zone);
  read->id = g_strdup (((FfPlanTake *) g_ptr_array_index (read->takes, 0))->shot_id);
  read->trim = ff_plan_trim (problem, sorties, line);
  read->why = ff_plan_why (problem, sorties, line);
  return read;
}

/* That the sun leaves the subject too soon is no fault of the day's hours. */
static char *
reason_of (const FfDayProblem *problem, const FfSortieMiss *missed)
{
  const FfShot *record = g_ptr_array_index (problem->records, missed->shot);
  const FfSortieShot *shot = &problem->problem.shots[missed->shot];
  g_autofree char *clock = NULL;

  if (missed->why != FF_WHY_DAYLIGHT || record->sun_leaves == FF_NO_CLOCK
      || shot->window_to - shot->window_from >= shot->minutes * 60)
    return ff_why_not_text (missed->why);
  clock = ff_clock_format (record->sun_leaves);
  return g_strdup_printf (_ ("the sun leaves its subject at %s, before it could be flown"), clock);
}

static FfPlanMiss *
read_miss (const FfDayProblem *problem, const FfSortieMiss *missed)
{
  const FfShot *record = g_ptr_array_index (problem->records, missed->shot);
  FfPlanMiss *miss = g_new0 (FfPlanMiss, 1);

  miss->shot = g_strdup (record->label);
  miss->title = g_strdup (record->title);
  miss->reason = reason_of (problem, missed);
  if (record->must_fly)
    {
      g_autofree char *reason = g_steal_pointer (&miss->reason);

      /* Translators: of a shot that is left out though the crew said it must be flown; then why. */
      miss->reason = g_strdup_printf (_ ("it must fly, and can't: %s"), reason);
    }
  return miss;
}

/* Those that must fly stand first. */
static void
read_misses (FfDayPlan *plan, const FfDayProblem *problem, const FfSortiePlan *sorties)
{
  guint n_must = 0;

  for (guint i = 0; i < sorties->missed->len; i++)
    {
      const FfSortieMiss *missed = &g_array_index (sorties->missed, FfSortieMiss, i);
      gboolean must_fly = problem->problem.shots[missed->shot].must_fly;

      g_ptr_array_insert (plan->missed, must_fly ? (int) n_must++ : -1,
                          read_miss (problem, missed));
    }
}

static void
read_charges (FfDayPlan *plan, const FfDayProblem *problem, const FfSortiePlan *sorties)
{
  for (guint i = 0; i < sorties->charges->len; i++)
    {
      const FfSortieCharge *queued = &g_array_index (sorties->charges, FfSortieCharge, i);
      const FfItem *battery = g_ptr_array_index (problem->battery_items, queued->battery);
      FfPlanCharge *charge = g_new0 (FfPlanCharge, 1);

      charge->battery = g_strdup (battery->label);
      charge->cool_from = queued->cool_from;
      charge->charge_from = queued->charge_from;
      charge->ready_at = queued->ready_at;
      charge->attended_by = g_strdup (problem->charger_by);
      g_ptr_array_add (plan->charges, charge);
    }
}

static void
count_up (FfDayPlan *plan, const FfSortiePlan *sorties)
{
  g_autoptr (GHashTable) batteries = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      const FfSortieLine *now = &g_array_index (sorties->lines, FfSortieLine, i);

      g_hash_table_add (batteries, line->battery);
      plan->landings_for_filter_alone += now->filter_landing;
      if (i > 0 && !now->filter_landing && now->filter != g_array_index (sorties->lines, FfSortieLine, i - 1).filter)
        plan->swaps++;
    }
  plan->batteries_used = (int) g_hash_table_size (batteries);
}

/* Shots at a frame rate that the camera lacks: planned, because the rates may be out of date. */
static void
add_rate_clashes (FfDayPlan *plan, const FfDayProblem *problem)
{
  for (guint i = 0; i < problem->records->len; i++)
    {
      char *caution = ff_day_rate_caution (problem->day, g_ptr_array_index (problem->records, i));

      if (*caution != '\0')
        g_ptr_array_add (plan->clashes, caution);
      else
        g_free (caution);
    }
}

/* A cheaper plan that is not clearly better is said, with what it would save. */
static void
add_kept (FfDayPlan *plan, const FfDayProblem *problem, const FfSortiePlan *sorties)
{
  plan->kept = sorties->kept;
  if (sorties->kept)
    g_ptr_array_add (plan->clashes,
                     /* Translators: prices of the plan: what another would save, what it would
                        have to save. */
                     g_strdup_printf (_ ("The plan that stands is kept: another would save %.1f, "
                                         "and has to save more than %g."),
                                      sorties->kept_price, problem->problem.stay_margin));
}

FfDayPlan *
ff_plan_read (const FfDayProblem *problem, const FfSortiePlan *sorties)
{
  FfDayPlan *plan = ff_day_plan_new ();

  plan->job = g_strdup (problem->day->job->title);
  plan->version = g_strdup (problem->day->job->version);
  plan->sky = problem->sky;
  ff_day_last_reading (problem->day, &plan->learned_offset_stops);
  g_free (plan->light);
  plan->light = ff_day_learned_words (problem->day, problem->sky);
  for (guint i = 0; i < sorties->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (sorties->lines, FfSortieLine, i);
      FfPlanLine *read = read_line (problem, sorties, line);

      read->line = (int) i + 1;
      g_ptr_array_add (plan->lines, read);
      ff_plan_add_clashes (problem, sorties, line, plan->clashes);
    }
  if (problem->filters->len == 0)
    g_ptr_array_add (plan->clashes,
                     g_strdup (_ ("No neutral-density filter is at hand: shots that need one are "
                                  "not flown or run at a narrow shutter.")));
  ff_plan_add_light_clashes (problem, sorties, plan->clashes);
  ff_turn_rounds_add (plan, problem->day->items);
  add_rate_clashes (plan, problem);
  add_kept (plan, problem, sorties);
  for (guint i = 0; i < problem->said->len; i++)
    g_ptr_array_add (plan->clashes, g_strdup (g_ptr_array_index (problem->said, i)));
  read_misses (plan, problem, sorties);
  read_charges (plan, problem, sorties);
  count_up (plan, sorties);
  plan->cost = sorties->cost;
  memcpy (plan->parts, sorties->parts, sizeof plan->parts);
  plan->optimal = sorties->optimal;
  plan->bound = sorties->bound;
  return plan;
}

FfDayPlan *
ff_day_plan_bare (const FfDay *day, const FfDayChange *change, GError **error)
{
  g_autoptr (FfDayProblem) problem = ff_day_problem_new (day, change, error);
  g_autoptr (FfSortiePlan) sorties = NULL;

  if (problem == NULL)
    return NULL;
  sorties = ff_sorties_plan (&problem->problem);
  return ff_plan_read (problem, sorties);
}

static void
add_filter_labels (GPtrArray *labels, const GPtrArray *things)
{
  for (guint i = 0; i < things->len; i++)
    {
      const FfBagItem *item = g_ptr_array_index (things, i);

      if (item->kind == FF_KIND_FILTER)
        g_ptr_array_add (labels, g_strdup (item->label));
    }
}

static FfDayPlan *
plan_with_cases (const FfDay *day, const FfDayChange *change, GError **error)
{
  g_autoptr (FfDayProblem) problem = ff_day_problem_new (day, change, error);
  g_autoptr (FfSortiePlan) sorties = NULL;
  g_autoptr (FfDayPlan) plan = NULL;

  if (problem == NULL)
    return NULL;
  sorties = ff_sorties_plan (&problem->problem);
  plan = ff_plan_read (problem, sorties);
  plan->cases = ff_cases_new (problem, sorties, plan, change, error);
  if (plan->cases == NULL)
    return NULL;
  add_filter_labels (plan->bag_needed, plan->cases->bag->needed);
  add_filter_labels (plan->bag_in_case, plan->cases->bag->in_case);
  return g_steal_pointer (&plan);
}

/* Another sky is a case of the day, not a change of it. */
static gboolean
tries (const FfDay *day, const FfDayChange *change)
{
  return change->late_minutes > 0 || change->without != NULL || change->moves != NULL
         || change->drop != NULL || change->with != NULL
         || (change->any_order && !day->job->any_order)
         || (change->legs_per_battery > 0
             && change->legs_per_battery != day->job->legs_per_battery)
         || change->prices != NULL;
}

FfDayPlan *
ff_day_plan (const FfDay *day, const FfDayChange *change, GError **error)
{
  static const FfDayChange no_change;
  const FfDayChange *wanted = change != NULL ? change : &no_change;
  g_autoptr (FfDayPlan) plan = plan_with_cases (day, wanted, error);

  if (plan == NULL)
    return NULL;
  if (tries (day, wanted))
    {
      const FfDayChange before = { .other_sky = wanted->other_sky, .sky = wanted->sky };

      if (!ff_day_price_change (day, &before, wanted, plan, NULL, NULL, error))
        return NULL;
    }
  return g_steal_pointer (&plan);
}
