/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-run.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-item.h"

struct _FfDayRun {
  FfStore *store; /* borrowed */
  FfKeptRun *kept;
  FfChecklist *list;
  FfListRun *run;
  FfListFacts *facts;
  int n_events;
};

void
ff_day_run_free (FfDayRun *self)
{
  if (self == NULL)
    return;
  ff_kept_run_free (self->kept);
  ff_list_run_free (self->run);
  ff_checklist_free (self->list);
  ff_list_facts_free (self->facts);
  g_free (self);
}

static FfDayRun *
run_new (FfStore *store, FfKeptRun *taken, GError **error)
{
  g_autoptr (FfDayRun) self = g_new0 (FfDayRun, 1);
  FfRunRules rules = { taken->restart_after_s, (guint) taken->restart_on };
  guint conditions;

  self->store = store;
  self->kept = taken;
  self->list = ff_checklist_parse (taken->text, error);
  if (self->list == NULL || !ff_when_parse (taken->conditions, &conditions, error))
    return NULL;
  self->run = ff_list_run_new (self->list, conditions, &rules);
  return g_steal_pointer (&self);
}

/* Events, from the machine to the store and back */

static void
set (char **place, const char *text)
{
  ff_set_text (place, text != NULL ? text : "");
}

static FfKeptEvent *
kept_event (const FfDayRun *self, const FfRunEvent *event, gint64 entered_at)
{
  FfKeptEvent *kept = ff_kept_event_new ();

  set (&kept->run_id, self->kept->id);
  kept->sequence = self->n_events + 1;
  kept->act = event->act;
  kept->item = event->item;
  kept->at = event->at;
  kept->entered_at = entered_at;
  set (&kept->by, event->by);
  set (&kept->other, event->other);
  set (&kept->said, event->said);
  set (&kept->expected, event->expected);
  set (&kept->why, event->why);
  set (&kept->subject_id, event->subject);
  kept->changed = (int) event->changed;
  kept->after_ms = event->after_ms;
  kept->from_paper = event->from_paper;
  return kept;
}

static FfRunEvent
machine_event (const FfKeptEvent *kept)
{
  return (FfRunEvent) {
    .act = kept->act, .item = kept->item, .at = kept->at, .by = kept->by, .other = kept->other,
    .said = kept->said, .expected = kept->expected, .why = kept->why,
    .subject = kept->subject_id, .changed = (guint) kept->changed, .after_ms = kept->after_ms,
    .from_paper = kept->from_paper,
  };
}

static gboolean
append (FfDayRun *self, const FfRunEvent *event, gint64 entered_at, GError **error)
{
  g_autoptr (FfKeptEvent) kept = kept_event (self, event, entered_at);

  if (!ff_kept_event_append (self->store, kept, error))
    return FALSE;
  return event->act != FF_ACT_FAIL || kept->subject_id[0] == '\0'
         || ff_item_set_state (self->store, kept->subject_id, FF_STATE_DEFECT, kept->why, NULL, NULL,
                               kept->by, kept->at, error);
}

/* Only an item of a list can ask what the plan says. */
static FfFact
fact_of (const FfDayRun *self, int item)
{
  const FfRunItem *asked;

  if (item < 0 || item >= ff_list_run_n_items (self->run))
    return FF_FACT_NONE;
  asked = ff_list_run_item (self->run, item);
  return asked->item != NULL ? asked->item->fact : FF_FACT_NONE;
}

const char *
ff_day_run_expected (const FfDayRun *self, int item)
{
  return ff_list_fact (self->facts, fact_of (self, item));
}

gboolean
ff_day_run_act (FfDayRun *self, const FfRunEvent *event, gint64 entered_at, GError **error)
{
  FfRunEvent full = *event;

  if (full.act == FF_ACT_SAY)
    full.expected = ff_day_run_expected (self, full.item);
  if (!ff_list_run_allows (self->run, &full, error) || !ff_records_begin (self->store, error))
    return FALSE;
  if (!append (self, &full, entered_at, error))
    {
      ff_records_rollback (self->store);
      return FALSE;
    }
  if (!ff_records_commit (self->store, error))
    return FALSE;
  self->n_events++;
  return ff_list_run_step (self->run, &full, error);
}

gboolean
ff_day_run_wake (FfDayRun *self, const char *why, gint64 now, GError **error)
{
  FfRunEvent event = { .act = FF_ACT_AUTO_HOLD, .item = -1, .after_ms = -1, .why = why };

  if (ff_list_run_state (self->run) != FF_RUN_GOING)
    return TRUE;
  event.at = ff_list_run_last_at (self->run);
  return ff_day_run_act (self, &event, now, error);
}

/* Start and open */

static FfKeptRun *
describe (FfStore *store,
          const char *job_id,
          const FfListEntry *entry,
          guint conditions,
          int line,
          gint64 at,
          GError **error)
{
  g_autoptr (FfKeptRun) kept = ff_kept_run_new (job_id);
  g_autofree char *tokens = ff_when_tokens (conditions);
  FfListRules rules;

  if (!ff_list_rules_load (store, &rules, error))
    return NULL;
  set (&kept->list_id, entry->id);
  set (&kept->title, entry->title);
  set (&kept->text, entry->text);
  set (&kept->conditions, tokens);
  kept->line = line;
  kept->restart_after_s = rules.restart_after_s;
  kept->restart_on = rules.restart_on;
  kept->started_at = at;
  return g_steal_pointer (&kept);
}

/* The run and its first event are there together or not at all. */
static gboolean
append_start (FfDayRun *self, const FfRunEvent *event, GError **error)
{
  if (!ff_list_run_allows (self->run, event, error) || !ff_records_begin (self->store, error))
    return FALSE;
  if (!ff_kept_run_append (self->store, self->kept, error)
      || !append (self, event, event->at, error))
    {
      ff_records_rollback (self->store);
      return FALSE;
    }
  if (!ff_records_commit (self->store, error))
    return FALSE;
  self->n_events = 1;
  return ff_list_run_step (self->run, event, error);
}

FfDayRun *
ff_day_run_start (FfStore *store,
                  const char *job_id,
                  const FfListEntry *entry,
                  guint conditions,
                  int line,
                  const char *by,
                  const char *other,
                  gint64 at,
                  GError **error)
{
  FfRunEvent event
      = { .act = FF_ACT_START, .item = -1, .at = at, .by = by, .other = other, .after_ms = -1 };
  FfKeptRun *kept = describe (store, job_id, entry, conditions, line, at, error);
  g_autoptr (FfDayRun) self = kept != NULL ? run_new (store, kept, error) : NULL;

  if (self == NULL || !append_start (self, &event, error))
    return NULL;
  return g_steal_pointer (&self);
}

static gboolean
replay (FfDayRun *self, GError **error)
{
  g_autoptr (GPtrArray) events = ff_kept_events_load (self->store, self->kept->id, error);

  for (guint i = 0; events != NULL && i < events->len; i++)
    {
      FfRunEvent event = machine_event (g_ptr_array_index (events, i));
      g_autoptr (GError) problem = NULL;

      if (!ff_list_run_step (self->run, &event, &problem))
        {
          g_set_error (error, FF_ERROR, FF_ERROR_STORE,
                       _ ("the run of “%s” does not add up at event %u: %s"), self->kept->title,
                       i + 1, problem->message);
          return FALSE;
        }
      self->n_events++;
    }
  return events != NULL;
}

FfDayRun *
ff_day_run_open (FfStore *store, const char *run_id, GError **error)
{
  FfKeptRun *kept = ff_kept_run_load (store, run_id, error);
  g_autoptr (FfDayRun) self = kept != NULL ? run_new (store, kept, error) : NULL;

  if (self == NULL || !replay (self, error))
    return NULL;
  return g_steal_pointer (&self);
}

const FfKeptRun *
ff_day_run_kept (const FfDayRun *self)
{
  return self->kept;
}

const FfListRun *
ff_day_run_run (const FfDayRun *self)
{
  return self->run;
}

int
ff_day_run_n_events (const FfDayRun *self)
{
  return self->n_events;
}

void
ff_day_run_take_facts (FfDayRun *self, FfListFacts *facts)
{
  ff_list_facts_free (self->facts);
  self->facts = facts;
}
