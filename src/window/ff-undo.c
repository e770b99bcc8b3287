/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-undo.h"

#include <stdlib.h>

#include "ff-crew.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-lock.h"
#include "ff-place.h"
#include "ff-shot.h"

#define MOST_STEPS 200
#define SOON (8 * G_USEC_PER_SEC) /* keystrokes of one edit are closer together than this */

typedef struct {
  const FfNoun *noun;
  char *id;
  gpointer before;
} Entry;

struct _FfUndoStep {
  char *what;
  GPtrArray *entries;
  gint64 at;
};

struct _FfUndo {
  GPtrArray *steps;
};

/* The nouns */

static gboolean
save_job (FfStore *store, gconstpointer record, GError **error)
{
  return ff_job_save (store, record, error);
}

static gboolean
save_place (FfStore *store, gconstpointer record, GError **error)
{
  return ff_place_save (store, record, error);
}

static gboolean
save_shot (FfStore *store, gconstpointer record, GError **error)
{
  return ff_shot_save (store, record, error);
}

static gboolean
save_item (FfStore *store, gconstpointer record, GError **error)
{
  return ff_item_save (store, record, error);
}

static gboolean
save_member (FfStore *store, gconstpointer record, GError **error)
{
  return ff_member_save (store, record, error);
}

static gboolean
save_lock (FfStore *store, gconstpointer record, GError **error)
{
  return ff_lock_save (store, record, error);
}

static gboolean
save_job_role (FfStore *store, gconstpointer record, GError **error)
{
  const FfHeldRole *role = record;

  return ff_job_crew_add (store, role->job_id, role->member_id, (FfRole) role->role, error);
}

/* A role has no id of its own; "job/member/role" stands for one. */
static gboolean
remove_job_role (FfStore *store, const char *id, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (id, "/", 3);

  g_return_val_if_fail (g_strv_length (parts) == 3, FALSE);
  return ff_job_crew_remove (store, parts[0], parts[1], (FfRole) atoi (parts[2]), error);
}

static gpointer
load_job (FfStore *store, const char *id, GError **error)
{
  return ff_job_load (store, id, error);
}

static gpointer
load_place (FfStore *store, const char *id, GError **error)
{
  return ff_place_load (store, id, error);
}

static gpointer
load_shot (FfStore *store, const char *id, GError **error)
{
  return ff_shot_load (store, id, error);
}

static gpointer
load_item (FfStore *store, const char *id, GError **error)
{
  return ff_item_load (store, id, error);
}

static gpointer
load_member (FfStore *store, const char *id, GError **error)
{
  return ff_member_load (store, id, error);
}

static gpointer
load_lock (FfStore *store, const char *id, GError **error)
{
  return ff_lock_load (store, id, error);
}

static void
free_lock (gpointer record)
{
  ff_lock_free (record);
}

static void
free_job (gpointer record)
{
  ff_job_free (record);
}

static void
free_place (gpointer record)
{
  ff_place_free (record);
}

static void
free_shot (gpointer record)
{
  ff_shot_free (record);
}

static void
free_item (gpointer record)
{
  ff_item_free (record);
}

static void
free_member (gpointer record)
{
  ff_member_free (record);
}

static void
free_job_role (gpointer record)
{
  FfHeldRole *role = record;

  if (role == NULL)
    return;
  g_free (role->job_id);
  g_free (role->member_id);
  g_free (role);
}

const FfNoun ff_noun_job = { load_job, save_job, ff_job_delete, free_job };
const FfNoun ff_noun_place = { load_place, save_place, ff_place_delete, free_place };
const FfNoun ff_noun_shot = { load_shot, save_shot, ff_shot_delete, free_shot };
const FfNoun ff_noun_item = { load_item, save_item, ff_item_delete, free_item };
const FfNoun ff_noun_member = { load_member, save_member, ff_member_delete, free_member };
const FfNoun ff_noun_lock = { load_lock, save_lock, ff_lock_delete, free_lock };
const FfNoun ff_noun_job_crew = { NULL, save_job_role, remove_job_role, free_job_role };

/* Steps */

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  if (entry->before != NULL)
    entry->noun->free (entry->before);
  g_free (entry->id);
  g_free (entry);
}

FfUndoStep *
ff_undo_step_new (const char *what)
{
  FfUndoStep *step = g_new0 (FfUndoStep, 1);

  step->what = g_strdup (what);
  step->entries = g_ptr_array_new_with_free_func (entry_free);
  step->at = g_get_monotonic_time ();
  return step;
}

void
ff_undo_step_free (FfUndoStep *step)
{
  if (step == NULL)
    return;
  g_ptr_array_unref (step->entries);
  g_free (step->what);
  g_free (step);
}

void
ff_undo_step_add (FfUndoStep *step, const FfNoun *noun, const char *id, gpointer before)
{
  Entry *entry = g_new0 (Entry, 1);

  entry->noun = noun;
  entry->id = g_strdup (id);
  entry->before = before;
  g_ptr_array_add (step->entries, entry);
}

/* The stack */

FfUndo *
ff_undo_new (void)
{
  FfUndo *undo = g_new0 (FfUndo, 1);

  undo->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_undo_step_free);
  return undo;
}

void
ff_undo_free (FfUndo *undo)
{
  if (undo == NULL)
    return;
  g_ptr_array_unref (undo->steps);
  g_free (undo);
}

static FfUndoStep *
last_step (const FfUndo *undo)
{
  return undo->steps->len > 0 ? g_ptr_array_index (undo->steps, undo->steps->len - 1) : NULL;
}

static gboolean
continues (const FfUndoStep *last, const FfUndoStep *step)
{
  const Entry *a, *b;

  if (last == NULL || last->entries->len != 1 || step->entries->len != 1
      || step->at - last->at > SOON || !g_str_equal (last->what, step->what))
    return FALSE;
  a = g_ptr_array_index (last->entries, 0);
  b = g_ptr_array_index (step->entries, 0);
  return a->noun == b->noun && b->before != NULL && g_str_equal (a->id, b->id);
}

void
ff_undo_push (FfUndo *undo, FfUndoStep *step)
{
  FfUndoStep *last = last_step (undo);

  if (continues (last, step))
    {
      last->at = step->at;
      ff_undo_step_free (step);
      return;
    }
  if (undo->steps->len == MOST_STEPS)
    g_ptr_array_remove_index (undo->steps, 0);
  g_ptr_array_add (undo->steps, step);
}

const char *
ff_undo_text (const FfUndo *undo)
{
  FfUndoStep *last = last_step (undo);

  return last != NULL ? last->what : NULL;
}

static gboolean
put_back (FfStore *store, const FfUndoStep *step, GError **error)
{
  for (guint i = step->entries->len; i > 0; i--)
    {
      const Entry *entry = g_ptr_array_index (step->entries, i - 1);

      if (entry->before != NULL ? !entry->noun->save (store, entry->before, error)
                                : !entry->noun->remove (store, entry->id, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
ff_undo_take_back (FfUndo *undo, FfStore *store, GError **error)
{
  FfUndoStep *last = last_step (undo);

  if (last == NULL)
    return TRUE;
  if (!ff_records_begin (store, error))
    return FALSE;
  if (!put_back (store, last, error) || !ff_records_commit (store, error))
    {
      ff_records_rollback (store);
      return FALSE;
    }
  g_ptr_array_remove_index (undo->steps, undo->steps->len - 1);
  return TRUE;
}
