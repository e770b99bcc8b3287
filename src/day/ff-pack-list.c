/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-pack-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-battery.h"
#include "ff-pack-private.h"

/* ---- The value ---- */

static void
entry_free (gpointer data)
{
  FfPackEntry *entry = data;

  g_free (entry->item_id);
  g_free (entry->label);
  g_free (entry->title);
  g_free (entry->case_label);
  g_free (entry->slot);
  g_free (entry->why);
  g_free (entry->due);
  for (guint i = 0; i < FF_N_PACK_STAGES; i++)
    g_free (entry->conditions[i]);
  g_free (entry->last_seen);
  g_free (entry);
}

static void
case_free (gpointer data)
{
  FfPackCase *box = data;

  g_free (box->case_label);
  g_ptr_array_unref (box->entries);
  g_free (box);
}

static void
missing_free (gpointer data)
{
  FfPackMissing *missing = data;

  g_free (missing->item);
  g_free (missing->item_id);
  g_free (missing->reason);
  g_free (missing->advice);
  g_free (missing);
}

static FfPackList *
list_new (void)
{
  FfPackList *list = g_new0 (FfPackList, 1);

  list->cases = g_ptr_array_new_with_free_func (case_free);
  list->shorts = g_ptr_array_new_with_free_func (missing_free);
  list->clashes = g_ptr_array_new_with_free_func (g_free);
  list->due = g_ptr_array_new_with_free_func (g_free);
  list->swaps = g_ptr_array_new_with_free_func (g_free);
  list->remarks = g_ptr_array_new_with_free_func (g_free);
  list->cards = g_strdup ("");
  return list;
}

void
ff_pack_list_free (FfPackList *list)
{
  if (list == NULL)
    return;
  g_free (list->job_id);
  g_free (list->job);
  g_free (list->date);
  g_ptr_array_unref (list->cases);
  g_ptr_array_unref (list->shorts);
  g_ptr_array_unref (list->clashes);
  g_ptr_array_unref (list->due);
  g_ptr_array_unref (list->swaps);
  g_ptr_array_unref (list->remarks);
  g_free (list->cards);
  ff_charge_evening_free (list->evening);
  g_free (list);
}

FfPackEntry *
ff_pack_list_find (const FfPackList *list, const char *item_id)
{
  for (guint i = 0; i < list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          if (g_str_equal (entry->item_id, item_id))
            return entry;
        }
    }
  return NULL;
}

guint
ff_pack_list_left (const FfPackList *list, FfPackStage stage)
{
  guint left = 0;

  for (guint i = 0; i < list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          const FfPackEntry *entry = g_ptr_array_index (box->entries, j);
          gboolean asked = stage == FF_PACK_OUT ? !entry->extra
                                                : entry->marks[FF_PACK_OUT] == FF_PACK_DONE;

          left += asked && entry->marks[stage] == FF_PACK_OPEN;
        }
    }
  return left;
}

/* ---- Cases ---- */

static FfPackCase *
case_of (FfPackList *list, const char *label)
{
  FfPackCase *box;

  for (guint i = 0; i < list->cases->len; i++)
    {
      box = g_ptr_array_index (list->cases, i);
      if (g_str_equal (box->case_label, label))
        return box;
    }
  box = g_new0 (FfPackCase, 1);
  box->case_label = g_strdup (label);
  box->entries = g_ptr_array_new_with_free_func (entry_free);
  g_ptr_array_add (list->cases, box);
  return box;
}

static double
energy_of (const FfItem *item)
{
  if (item->kind != FF_KIND_BATTERY)
    return NAN;
  return isfinite (item->printed_wh) ? item->printed_wh
                                     : ff_battery_energy_wh (item->volts, item->milliamp_hours);
}

FfPackEntry *
ff_packing_add_entry (FfPacking *self, const FfItem *item)
{
  FfPackEntry *entry = g_new0 (FfPackEntry, 1);

  entry->item_id = g_strdup (item->id);
  entry->label = g_strdup (item->label);
  entry->title = g_strdup (item->title);
  entry->kind = item->kind;
  entry->state = item->state;
  entry->case_label = g_strdup (item->case_label);
  entry->slot = g_strdup (item->kind == FF_KIND_FILTER ? item->slot : "");
  for (guint i = 0; i < FF_N_PACK_STAGES; i++)
    entry->conditions[i] = g_strdup ("");
  entry->mass_kg = item->mass_kg;
  entry->energy_wh = energy_of (item);
  g_ptr_array_add (case_of (self->list, item->case_label)->entries, entry);
  return entry;
}

static void
add_line (FfPacking *self, const FfPackLine *line)
{
  const FfItem *item = g_ptr_array_index (self->day->items, line->item);
  FfPackEntry *entry = ff_packing_add_entry (self, item);

  entry->need = line->need;
  entry->why = ff_packing_why (self, line);
  entry->due = ff_packing_due (self, item);
  if (*entry->due != '\0')
    g_ptr_array_add (self->list->due, g_strdup_printf ("%s: %s", entry->label, entry->due));
}

/* As the gear list has them: by kind, then by label; "b2" before "b10". */
static gint
compare_entries (gconstpointer a, gconstpointer b)
{
  const FfPackEntry *first = *(FfPackEntry *const *) a, *second = *(FfPackEntry *const *) b;
  g_autofree char *first_key = NULL, *second_key = NULL;

  if (first->kind != second->kind)
    return first->kind < second->kind ? -1 : 1;
  first_key = g_utf8_collate_key_for_filename (first->label, -1);
  second_key = g_utf8_collate_key_for_filename (second->label, -1);
  return strcmp (first_key, second_key);
}

static gint
compare_cases (gconstpointer a, gconstpointer b)
{
  const FfPackCase *first = *(FfPackCase *const *) a, *second = *(FfPackCase *const *) b;
  g_autofree char *first_key = g_utf8_collate_key_for_filename (first->case_label, -1);
  g_autofree char *second_key = g_utf8_collate_key_for_filename (second->case_label, -1);

  if ((*first->case_label == '\0') != (*second->case_label == '\0'))
    return *first->case_label == '\0' ? 1 : -1;
  return strcmp (first_key, second_key);
}

static void
weigh (FfPackCase *box)
{
  for (guint i = 0; i < box->entries->len; i++)
    {
      const FfPackEntry *entry = g_ptr_array_index (box->entries, i);

      if (isfinite (entry->mass_kg))
        box->mass_kg += entry->mass_kg;
      else
        box->mass_unknown++;
      if (isfinite (entry->energy_wh))
        box->energy_wh += entry->energy_wh;
    }
}

static void
put_in_order (FfPackList *list)
{
  for (guint i = list->cases->len; i-- > 0;)
    if (((FfPackCase *) g_ptr_array_index (list->cases, i))->entries->len == 0)
      g_ptr_array_remove_index (list->cases, i);
  g_ptr_array_sort (list->cases, compare_cases);
  for (guint i = 0; i < list->cases->len; i++)
    {
      FfPackCase *box = g_ptr_array_index (list->cases, i);

      g_ptr_array_sort (box->entries, compare_entries);
      weigh (box);
    }
}

/* ---- Clashes ---- */

static gboolean
holds_id (const GPtrArray *ids, const char *id)
{
  return g_ptr_array_find_with_equal_func ((GPtrArray *) ids, id, g_str_equal, NULL);
}

/* What another job of the same day has on its list as well, said once for that job. */
static void
add_shared (FfPacking *self, const FfJob *other)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();
  g_autofree char *joined = NULL;

  for (guint i = 0; i < self->list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (self->list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          const FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          if (holds_id (other->item_ids, entry->item_id))
            g_ptr_array_add (labels, entry->label);
        }
    }
  if (labels->len == 0)
    return;
  joined = ff_packing_join (labels);
  g_ptr_array_add (self->list->clashes,
                   g_strdup_printf (_ ("In two jobs on one day: %s is also on the list of %s."),
                                    joined, other->title));
}

static const char *
title_of (const GPtrArray *jobs, const char *id)
{
  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);

      if (g_str_equal (job->id, id))
        return job->title;
    }
  return "";
}

/* Taken by another job and not counted in at base since. */
static void
add_taken (FfPacking *self, const GPtrArray *jobs)
{
  for (guint i = 0; i < self->elsewhere->len; i++)
    {
      const FfPackEvent *event = g_ptr_array_index (self->elsewhere, i);
      const FfPackEntry *entry = ff_pack_list_find (self->list, event->item_id);
      gboolean away = event->mark == FF_PACK_MISSING
                      || (event->mark == FF_PACK_DONE && event->stage != FF_PACK_BASE);

      if (entry != NULL && away)
        g_ptr_array_add (self->list->clashes,
                         g_strdup_printf (_ ("%s was counted out with %s and is not counted in at "
                                             "base: look whether it is here."),
                                          entry->label, title_of (jobs, event->job_id)));
    }
}

static const FfPackEvent *
last_out (const FfPacking *self, const char *item_id)
{
  for (guint i = self->events->len; i-- > 0;)
    {
      const FfPackEvent *event = g_ptr_array_index (self->events, i);

      if (event->stage == FF_PACK_OUT && g_str_equal (event->item_id, item_id))
        return event;
    }
  return NULL;
}

static void
look_at_case (FfPacking *self, const FfPackEntry *entry)
{
  const FfPackEvent *event = last_out (self, entry->item_id);
  const char *own = *entry->case_label != '\0' ? entry->case_label : "–";

  if (event != NULL && event->mark == FF_PACK_DONE
      && !g_str_equal (event->case_label, entry->case_label))
    g_ptr_array_add (
        self->list->clashes,
        g_strdup_printf (_ ("In two cases: %s was counted into case %s, its own is case %s."),
                         entry->label, *event->case_label != '\0' ? event->case_label : "–", own));
}

/* Counted into another case than its own: the next who looks for it looks in the wrong one. */
static void
add_misplaced (FfPacking *self)
{
  for (guint i = 0; i < self->list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (self->list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        look_at_case (self, g_ptr_array_index (box->entries, j));
    }
}

gboolean
ff_packing_add_clashes (FfPacking *self, GError **error)
{
  const FfJob *job = self->day->job;
  g_autoptr (GPtrArray) jobs = ff_jobs_load (self->store, error);

  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    {
      const FfJob *other = g_ptr_array_index (jobs, i);

      if (*job->date != '\0' && !g_str_equal (other->id, job->id)
          && g_str_equal (other->date, job->date) && other->state != FF_JOB_PUT_AWAY)
        add_shared (self, other);
    }
  if (jobs == NULL)
    return FALSE;
  add_taken (self, jobs);
  add_misplaced (self);
  return TRUE;
}

/* ---- The whole ---- */

/* The plan as it would be, were everything on the list whole and here. */
static FfDayPlan *
plan_the_wish (FfPacking *self)
{
  g_autoptr (GPtrArray) changed = g_ptr_array_new ();
  g_autoptr (GArray) states = g_array_new (FALSE, FALSE, sizeof (FfState));
  FfDayPlan *wish = NULL;

  for (guint i = 0; i < self->day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (self->day->items, i);

      if ((item->kind != FF_KIND_FILTER && item->kind != FF_KIND_BATTERY)
          || item->state == FF_STATE_SERVICEABLE || item->state == FF_STATE_RETIRED
          || !ff_day_uses (self->day, item))
        continue;
      g_array_append_val (states, item->state);
      g_ptr_array_add (changed, item);
      item->state = FF_STATE_SERVICEABLE;
    }
  if (changed->len > 0)
    wish = ff_day_plan (self->day, NULL, NULL);
  for (guint i = 0; i < changed->len; i++)
    ((FfItem *) g_ptr_array_index (changed, i))->state = g_array_index (states, FfState, i);
  return wish;
}

static gboolean
load (FfPacking *self, const char *wanted, GError **error)
{
  self->day = ff_day_load (self->store, wanted, error);
  if (self->day == NULL)
    return FALSE;
  self->wear = ff_wear_load (self->store, NULL, error);
  if (self->wear == NULL)
    return FALSE;
  self->rules = ff_spare_rules_load (self->store, error);
  if (self->rules == NULL)
    return FALSE;
  self->flights = ff_flights_load (self->store, self->day->job->id, error);
  if (self->flights == NULL)
    return FALSE;
  self->events = ff_pack_events_load (self->store, self->day->job->id, error);
  if (self->events == NULL)
    return FALSE;
  self->elsewhere = ff_pack_events_elsewhere (self->store, self->day->job->id, error);
  return self->elsewhere != NULL;
}

/* A day that can't be planned is packed by the list of the job alone, and says so. */
static void
plan (FfPacking *self)
{
  g_autoptr (GError) error = NULL;

  self->plan = ff_day_plan (self->day, NULL, &error);
  if (self->plan == NULL)
    g_ptr_array_add (self->list->remarks,
                     g_strdup_printf (_ ("Not planned, so filters, batteries and cards are all "
                                         "those of the list. %s"),
                                      error->message));
  else
    self->wish = plan_the_wish (self);
}

static void
run_kernel (FfPacking *self)
{
  const FfPackProblem problem = {
    .items = (const FfPackItem *) (gpointer) self->items->data,
    .n_items = self->items->len,
    .wants = (const FfPackWant *) (gpointer) self->wants->data,
    .n_wants = self->wants->len,
    .links = (const FfPackLink *) (gpointer) self->links->data,
    .n_links = self->links->len,
    .spares = (const FfPackSpare *) (gpointer) self->spares->data,
    .n_spares = self->spares->len,
  };
  g_autoptr (FfPack) pack = ff_pack (&problem);

  for (guint i = 0; i < pack->lines->len; i++)
    add_line (self, &g_array_index (pack->lines, FfPackLine, i));
  for (guint i = 0; i < pack->shorts->len; i++)
    ff_packing_add_short (self, &g_array_index (pack->shorts, FfPackShort, i));
}

/* Batteries by their first sortie, then the spares. */
static GPtrArray *
batteries_to_charge (const FfPacking *self)
{
  GPtrArray *labels = g_ptr_array_new ();

  for (guint i = 0; self->plan != NULL && i < self->plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (self->plan->lines, i);

      if (!holds_id (labels, line->battery))
        g_ptr_array_add (labels, line->battery);
    }
  for (guint i = 0; i < self->list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (self->list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          const FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          if (entry->kind == FF_KIND_BATTERY && !entry->extra && !holds_id (labels, entry->label))
            g_ptr_array_add (labels, entry->label);
        }
    }
  return labels;
}

static gboolean
fill (FfPacking *self, GError **error)
{
  const FfJob *job = self->day->job;
  g_autoptr (GPtrArray) batteries = NULL;

  self->list->job_id = g_strdup (job->id);
  self->list->job = g_strdup (job->title);
  self->list->date = g_strdup (job->date);
  plan (self);
  ff_packing_state_needs (self);
  run_kernel (self);
  ff_packing_apply_events (self);
  put_in_order (self->list);
  ff_packing_add_swaps (self);
  if (!ff_packing_add_clashes (self, error))
    return FALSE;
  batteries = batteries_to_charge (self);
  self->list->evening = ff_charge_evening_new (self->day, self->store, batteries, error);
  return self->list->evening != NULL;
}

static void
packing_clear (FfPacking *self)
{
  ff_day_free (self->day);
  ff_day_plan_free (self->plan);
  ff_day_plan_free (self->wish);
  g_clear_pointer (&self->wear, g_hash_table_unref);
  g_clear_pointer (&self->rules, g_ptr_array_unref);
  g_clear_pointer (&self->flights, g_ptr_array_unref);
  g_clear_pointer (&self->events, g_ptr_array_unref);
  g_clear_pointer (&self->elsewhere, g_ptr_array_unref);
  g_array_unref (self->items);
  g_array_unref (self->wants);
  g_array_unref (self->links);
  g_array_unref (self->spares);
  g_free (self->no_spare_why);
  ff_pack_list_free (self->list);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FfPacking, packing_clear)

FfPackList *
ff_pack_list_load (FfStore *store, const char *wanted_job, GError **error)
{
  g_auto (FfPacking) self = { .store = store };

  self.items = g_array_new (FALSE, FALSE, sizeof (FfPackItem));
  self.wants = g_array_new (FALSE, FALSE, sizeof (FfPackWant));
  self.links = g_array_new (FALSE, FALSE, sizeof (FfPackLink));
  self.spares = g_array_new (FALSE, FALSE, sizeof (FfPackSpare));
  self.list = list_new ();
  if (!load (&self, wanted_job, error) || !fill (&self, error))
    return NULL;
  return g_steal_pointer (&self.list);
}
