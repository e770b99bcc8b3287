/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-plan-change.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-plan-copy-private.h"
#include "ff-plan-copy.h"

/* ---- The same ---- */

static gboolean
settings_same (const FfPlanSettings *a, const FfPlanSettings *b)
{
  return fabs (a->aperture - b->aperture) < 1e-6 && a->iso == b->iso
         && strcmp (a->shutter, b->shutter) == 0;
}

static gboolean
take_same (const FfPlanTake *a, const FfPlanTake *b)
{
  return strcmp (a->shot_id, b->shot_id) == 0 && a->from == b->from && a->to == b->to
         && settings_same (&a->start, &b->start) && settings_same (&a->end, &b->end);
}

static gboolean
texts_same (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (strcmp (g_ptr_array_index (a, i), g_ptr_array_index (b, i)) != 0)
      return FALSE;
  return TRUE;
}

gboolean
ff_plan_line_same (const FfPlanLine *a, const FfPlanLine *b)
{
  gboolean same = strcmp (a->id, b->id) == 0 && a->off_by == b->off_by && a->down == b->down
                  && a->land_by == b->land_by && strcmp (a->battery, b->battery) == 0
                  && texts_same (a->filters, b->filters)
                  && strcmp (a->engraving, b->engraving) == 0 && a->takes->len == b->takes->len;

  for (guint i = 0; same && i < a->takes->len; i++)
    same = take_same (g_ptr_array_index (a->takes, i), g_ptr_array_index (b->takes, i));
  return same;
}

static gboolean
misses_same (const GPtrArray *a, const GPtrArray *b)
{
  gboolean same = a->len == b->len;

  for (guint i = 0; same && i < a->len; i++)
    same = strcmp (((FfPlanMiss *) g_ptr_array_index (a, i))->shot,
                   ((FfPlanMiss *) g_ptr_array_index (b, i))->shot)
           == 0;
  return same;
}

static gboolean
charges_same (const GPtrArray *a, const GPtrArray *b)
{
  gboolean same = a->len == b->len;

  for (guint i = 0; same && i < a->len; i++)
    {
      const FfPlanCharge *was = g_ptr_array_index (a, i), *is = g_ptr_array_index (b, i);

      same = strcmp (was->battery, is->battery) == 0 && was->ready_at == is->ready_at
             && was->charge_from == is->charge_from;
    }
  return same;
}

gboolean
ff_plan_same (const FfDayPlan *a, const FfDayPlan *b)
{
  gboolean same = a->lines->len == b->lines->len && misses_same (a->missed, b->missed)
                  && charges_same (a->charges, b->charges);

  for (guint i = 0; same && i < a->lines->len; i++)
    same = ff_plan_line_same (g_ptr_array_index (a->lines, i), g_ptr_array_index (b->lines, i));
  return same;
}

/* ---- The change ---- */

static FfPlanLine *
find_line (const GPtrArray *lines, const char *id)
{
  for (guint i = 0; i < lines->len; i++)
    {
      FfPlanLine *line = g_ptr_array_index (lines, i);

      if (strcmp (line->id, id) == 0)
        return line;
    }
  return NULL;
}

FfPlanLine *
ff_plan_find_line (const FfDayPlan *plan, const char *id)
{
  return find_line (plan->lines, id);
}

static FfPlanChange *
change_blank (void)
{
  g_autoptr (FfDayPlan) plan = ff_day_plan_new ();
  FfPlanChange *change = g_new0 (FfPlanChange, 1);

  /* Of a plan: they free what they hold. */
  change->order = g_ptr_array_new_with_free_func (g_free);
  change->lines = g_ptr_array_ref (plan->lines);
  change->missed = g_ptr_array_ref (plan->missed);
  change->charges = g_ptr_array_ref (plan->charges);
  return change;
}

static void
add_rest (GPtrArray *missed, const GPtrArray *all_missed, GPtrArray *charges,
          const GPtrArray *all_charges)
{
  for (guint i = 0; i < all_missed->len; i++)
    g_ptr_array_add (missed, ff_plan_miss_dup (g_ptr_array_index (all_missed, i)));
  for (guint i = 0; i < all_charges->len; i++)
    g_ptr_array_add (charges, ff_plan_charge_dup (g_ptr_array_index (all_charges, i)));
}

FfPlanChange *
ff_plan_change_new (const FfDayPlan *before, const FfDayPlan *after, int last_number)
{
  FfPlanChange *change = change_blank ();

  for (guint i = 0; i < after->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (after->lines, i);
      const FfPlanLine *was = ff_plan_find_line (before, line->id);
      FfPlanLine *copy;

      g_ptr_array_add (change->order, g_strdup (line->id));
      if (was != NULL && ff_plan_line_same (was, line))
        continue;
      copy = ff_plan_line_dup (line);
      copy->line = was != NULL ? was->line : ++last_number;
      g_ptr_array_add (change->lines, copy);
    }
  add_rest (change->missed, after->missed, change->charges, after->charges);
  return change;
}

void
ff_plan_change_free (FfPlanChange *change)
{
  if (change == NULL)
    return;
  g_ptr_array_unref (change->order);
  g_ptr_array_unref (change->lines);
  g_ptr_array_unref (change->missed);
  g_ptr_array_unref (change->charges);
  g_free (change);
}

char *
ff_plan_change_write (const FfPlanChange *change)
{
  g_autoptr (FfJson) json = ff_json_new ();

  ff_json_texts (json, "order", change->order);
  ff_plan_json_parts (json, change->lines, change->missed, change->charges);
  return ff_json_finish (json);
}

FfPlanChange *
ff_plan_change_read (const char *text, GError **error)
{
  g_autoptr (JsonNode) root = ff_plan_parse (text, error);
  g_autoptr (FfPlanChange) change = NULL;

  if (root == NULL)
    return NULL;
  change = change_blank ();
  if (!ff_json_read_texts (json_node_get_object (root), "order", "", change->order, error)
      || !ff_plan_read_parts (json_node_get_object (root), change->lines, change->missed,
                              change->charges, error))
    return NULL;
  return g_steal_pointer (&change);
}

/* The lines of the new plan, in their order; NULL when one of them is nowhere. */
static GPtrArray *
lines_after (const FfPlanChange *change, const FfDayPlan *plan)
{
  g_autoptr (FfDayPlan) after = ff_day_plan_new ();

  for (guint i = 0; i < change->order->len; i++)
    {
      const char *id = g_ptr_array_index (change->order, i);
      const FfPlanLine *line = find_line (change->lines, id);

      if (line == NULL)
        line = ff_plan_find_line (plan, id);
      if (line == NULL)
        return NULL;
      g_ptr_array_add (after->lines, ff_plan_line_dup (line));
    }
  return g_ptr_array_ref (after->lines);
}

gboolean
ff_plan_change_apply (const FfPlanChange *change, FfDayPlan *plan, GError **error)
{
  GPtrArray *lines = lines_after (change, plan);

  if (lines == NULL)
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           _ ("an amendment changes a line that the plan does not have"));
      return FALSE;
    }
  g_ptr_array_unref (plan->lines);
  plan->lines = lines;
  g_ptr_array_set_size (plan->missed, 0);
  g_ptr_array_set_size (plan->charges, 0);
  add_rest (plan->missed, change->missed, plan->charges, change->charges);
  return TRUE;
}
