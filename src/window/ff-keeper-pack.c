/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is counted for the open job, which is only ever added to: undo adds the mark that was before.
 * And who attends the charger. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

static gboolean
append (FfStore *store, gconstpointer record, GError **error)
{
  return ff_pack_event_append (store, record, error);
}

static void
event_free (gpointer record)
{
  ff_pack_event_free (record);
}

static const FfNoun noun_count = { NULL, append, NULL, event_free };

static FfPackEvent *
event_of (FfKeeper *self,
          const FfPackEntry *entry,
          FfPackStage stage,
          FfPackMark mark,
          const char *condition)
{
  FfPackEvent *event = ff_pack_event_new (ff_keeper_job (self)->id, entry->item_id);

  event->at = now ();
  event->stage = stage;
  event->mark = mark;
  ff_set_text (&event->case_label, entry->case_label);
  ff_set_text (&event->condition, condition);
  ff_set_text (&event->entered_by, ff_keeper_initials (self));
  return event;
}

gboolean
ff_keeper_count (FfKeeper *self,
                 const FfPackEntry *entry,
                 FfPackStage stage,
                 FfPackMark mark,
                 const char *condition,
                 GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfPackEvent) event = NULL;
  g_autofree char *what = NULL;
  FfUndoStep *step;

  if (store == NULL || ff_keeper_job (self) == NULL)
    return FALSE;
  event = event_of (self, entry, stage, mark, condition);
  if (!ff_pack_event_append (store, event, error))
    return FALSE;
  /* Translators: an item, the stage at which it was counted, and how: "ND32, out: done". */
  what = g_strdup_printf (_ ("%s, %s: %s"), entry->label,
                          ff_name_text (&ff_names_pack_stage, (int) stage),
                          ff_name_text (&ff_names_pack_mark, (int) mark));
  step = ff_undo_step_new (what);
  ff_undo_step_add (step, &noun_count, event->id,
                    event_of (self, entry, stage, entry->marks[stage], entry->conditions[stage]));
  ff_undo_push (ff_keeper_get_undo (self), step);
  ff_keeper_announce (self, FF_NEWS_COUNT);
  return TRUE;
}

/* ---- Watches at the charger ---- */

typedef struct {
  char *job_id;
  GPtrArray *watches;
} Watches;

static gboolean
save_watches (FfStore *store, gconstpointer record, GError **error)
{
  const Watches *kept = record;

  return ff_watches_save (store, kept->job_id, kept->watches, error);
}

static void
watches_free (gpointer record)
{
  Watches *kept = record;

  g_free (kept->job_id);
  g_ptr_array_unref (kept->watches);
  g_free (kept);
}

static const FfNoun noun_watches = { NULL, save_watches, NULL, watches_free };

gboolean
ff_keeper_save_watches (FfKeeper *self, GPtrArray *watches, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  const FfJob *job = ff_keeper_job (self);
  GPtrArray *before = store != NULL && job != NULL ? ff_watches_load (store, job->id, error) : NULL;
  FfUndoStep *step;
  Watches *kept;

  if (before == NULL)
    return FALSE;
  kept = g_new0 (Watches, 1);
  kept->job_id = g_strdup (job->id);
  kept->watches = before;
  step = ff_undo_step_new (_ ("Watch at the charger changed"));
  ff_undo_step_add (step, &noun_watches, job->id, kept);
  if (!ff_watches_save (store, job->id, watches, error))
    {
      ff_undo_step_free (step);
      return FALSE;
    }
  ff_undo_push (ff_keeper_get_undo (self), step);
  ff_keeper_announce (self, FF_NEWS_COUNT);
  return TRUE;
}
