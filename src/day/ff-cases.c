/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>

/* Stops of cloud 0 to 3. A partly cloudy sky is sun and shade in turn, and both are here. */
static const FfSky cloud_cases[] = { FF_SKY_CLEAR, FF_SKY_THIN, FF_SKY_OVERCAST, FF_SKY_DARK };
static const int late_cases[] = { 15, 30 };

static void
case_free (gpointer data)
{
  FfCase *self = data;

  g_free (self->title);
  g_ptr_array_unref (self->filters);
  g_ptr_array_unref (self->lost);
  g_free (self);
}

void
ff_cases_free (FfCases *cases)
{
  if (cases == NULL)
    return;
  g_ptr_array_unref (cases->cases);
  g_clear_pointer (&cases->slips, g_ptr_array_unref);
  ff_bag_free (cases->bag);
  g_free (cases);
}

static gboolean
has_text (const GPtrArray *texts, const char *text)
{
  return g_ptr_array_find_with_equal_func ((GPtrArray *) texts, text, g_str_equal, NULL);
}

/* ---- The bag ---- */

/* Something that a plan only tries to have is in no bag. */
static void
bag_add (GPtrArray *things, const FfDay *day, const char *label, const char *why)
{
  const FfItem *item = ff_items_labelled (day->items, label);

  if (item != NULL)
    ff_bag_add (things, item->id, item->label, item->kind, why);
}

static gboolean
carries (const FfPlanLine *line, FfKind kind, const char *label)
{
  return kind == FF_KIND_BATTERY ? g_str_equal (line->battery, label)
                                 : has_text (line->filters, label);
}

static void
add_shots (GString *shots, const FfPlanLine *line)
{
  for (guint i = 0; i < line->takes->len; i++)
    g_string_append_printf (shots, "%s%s", shots->len > 0 ? ", " : "",
                            ((const FfPlanTake *) g_ptr_array_index (line->takes, i))->shot);
}

/* "A, H": all that a plan flies with this thing. */
static char *
shots_with (const FfDayPlan *plan, FfKind kind, const char *label)
{
  GString *shots = g_string_new (NULL);

  for (guint i = 0; i < plan->lines->len; i++)
    if (carries (g_ptr_array_index (plan->lines, i), kind, label))
      add_shots (shots, g_ptr_array_index (plan->lines, i));
  return g_string_free (shots, FALSE);
}

/* The labels of one kind that a plan flies with, each once. Borrowed. */
static GPtrArray *
labels_in (const FfDayPlan *plan, FfKind kind)
{
  GPtrArray *labels = g_ptr_array_new ();

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      guint n = kind == FF_KIND_BATTERY ? 1 : line->filters->len;

      for (guint j = 0; j < n; j++)
        {
          char *label = kind == FF_KIND_BATTERY ? line->battery
                                                : g_ptr_array_index (line->filters, j);

          if (!has_text (labels, label))
            g_ptr_array_add (labels, label);
        }
    }
  return labels;
}

static gboolean
is_flown_again (const FfDayPlan *plan, const FfPlanCharge *charge)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (line->off_by >= charge->ready_at && g_str_equal (line->battery, charge->battery))
        return TRUE;
    }
  return FALSE;
}

/* The charger, where a battery flies a second time on its promise. */
static void
add_charger_of (GPtrArray *things, const FfDayProblem *problem, const FfDayPlan *plan)
{
  for (guint i = 0; problem->charger != NULL && i < plan->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);
      g_autofree char *why = NULL;

      if (!is_flown_again (plan, charge))
        continue;
      /* Translators: why a charger is packed; the label of a battery. */
      why = g_strdup_printf (_ ("battery %s flies again"), charge->battery);
      bag_add (things, problem->day, problem->charger->label, why);
    }
}

/* A thing that the plan needs is not packed in case as well. */
static void
add_kind (GPtrArray *things,
          const GPtrArray *but_not,
          const FfDay *day,
          const FfDayPlan *plan,
          FfKind kind,
          const char *title)
{
  g_autoptr (GPtrArray) labels = labels_in (plan, kind);

  for (guint i = 0; i < labels->len; i++)
    {
      const char *label = g_ptr_array_index (labels, i);
      g_autofree char *shots = shots_with (plan, kind, label);
      /* Translators: why a thing is packed: the case of the day, labels of shots: "thin cloud: F". */
      g_autofree char *why = g_strdup_printf (_ ("%s: %s"), title, shots);

      if (but_not == NULL || ff_bag_find (but_not, label) == NULL)
        bag_add (things, day, label, why);
    }
}

static void
add_needed (FfBag *bag, const FfDayProblem *problem, const FfDayPlan *plan)
{
  /* Translators: why a thing is packed: "the plan: A, H". */
  const char *title = _ ("the plan");

  add_kind (bag->needed, NULL, problem->day, plan, FF_KIND_FILTER, title);
  add_kind (bag->needed, NULL, problem->day, plan, FF_KIND_BATTERY, title);
  add_charger_of (bag->needed, problem, plan);
}

static void
add_in_case (FfBag *bag, const FfDay *day, const FfDayPlan *plan, const char *title)
{
  add_kind (bag->in_case, bag->needed, day, plan, FF_KIND_FILTER, title);
  add_kind (bag->in_case, bag->needed, day, plan, FF_KIND_BATTERY, title);
}

/* ---- One case ---- */

static char *
title_of (const FfDayChange *change)
{
  if (change->other_sky)
    return g_strdup (ff_name_text (&ff_names_sky, change->sky));
  /* Translators: a case of the day: the first take-off is so many minutes late. */
  return g_strdup_printf (_ ("%d min late"), change->late_minutes);
}

static GPtrArray *
copy_texts (const GPtrArray *texts)
{
  GPtrArray *copy = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < texts->len; i++)
    g_ptr_array_add (copy, g_strdup (g_ptr_array_index (texts, i)));
  return copy;
}

static void
read_lost (FfCase *self, const FfDayPlan *before, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      if (ff_plan_line_of (before, miss->shot) != NULL)
        g_ptr_array_add (self->lost, g_strdup (miss->shot));
    }
}

/* `named` is the case alone; `change` is the case on top of what is tried already. */
static gboolean
add_case (FfCases *cases,
          const FfDayProblem *problem,
          const FfDayPlan *before,
          const FfDayChange *change,
          const FfDayChange *named,
          GError **error)
{
  g_autoptr (FfDayPlan) plan = ff_day_plan_bare (problem->day, change, error);
  g_autoptr (GPtrArray) labels = NULL;
  FfCase *self;

  if (plan == NULL)
    return FALSE;
  self = g_new0 (FfCase, 1);
  self->other_sky = named->other_sky;
  self->sky = named->sky;
  self->late_minutes = named->late_minutes;
  self->title = title_of (named);
  labels = labels_in (plan, FF_KIND_FILTER);
  self->filters = copy_texts (labels);
  self->lost = g_ptr_array_new_with_free_func (g_free);
  self->sorties = (int) plan->lines->len;
  self->batteries_used = plan->batteries_used;
  read_lost (self, before, plan);
  g_ptr_array_add (cases->cases, self);
  add_in_case (cases->bag, problem->day, plan, self->title);
  return TRUE;
}

/* ---- All of them ---- */

static gboolean
add_clouds (FfCases *cases,
            const FfDayProblem *problem,
            const FfDayPlan *plan,
            const FfDayChange *change,
            GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (cloud_cases); i++)
    {
      const FfDayChange named = { .other_sky = TRUE, .sky = cloud_cases[i] };
      FfDayChange sky = *change;

      sky.other_sky = TRUE;
      sky.sky = cloud_cases[i];
      if (sky.sky != problem->sky && !add_case (cases, problem, plan, &sky, &named, error))
        return FALSE;
    }
  return TRUE;
}

/* A day too short for a late start has no such case. */
static gboolean
add_delays (FfCases *cases,
            const FfDayProblem *problem,
            const FfDayPlan *plan,
            const FfDayChange *change,
            GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (late_cases); i++)
    {
      FfDayChange late = *change;
      const FfDayChange named = { .late_minutes = late_cases[i] };

      late.late_minutes = MAX (change->late_minutes, 0) + late_cases[i];
      if (problem->problem.from + late_cases[i] * FF_MINUTE < problem->problem.to
          && !add_case (cases, problem, plan, &late, &named, error))
        return FALSE;
    }
  return TRUE;
}

FfCases *
ff_cases_new (const FfDayProblem *problem,
              const FfSortiePlan *sorties,
              const FfDayPlan *plan,
              const FfDayChange *change,
              GError **error)
{
  g_autoptr (FfCases) cases = g_new0 (FfCases, 1);

  cases->cases = g_ptr_array_new_with_free_func (case_free);
  cases->bag = ff_bag_new ();
  add_needed (cases->bag, problem, plan);
  if (!add_clouds (cases, problem, plan, change, error))
    return NULL;
  /* A day too tangled to prove takes its time: the bag follows from the skies, and delays wait. */
  if (sorties->optimal && !add_delays (cases, problem, plan, change, error))
    return NULL;
  cases->slips = ff_slips_new (problem, sorties);
  return g_steal_pointer (&cases);
}
