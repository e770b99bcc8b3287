/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

/* Copies: what the store gives back is a copy of what it holds. */

FfJob *
ff_keeper_dup_job (FfKeeper *self, const char *id)
{
  FfStore *store = ff_keeper_store (self);

  return store != NULL && id != NULL ? ff_job_load (store, id, NULL) : NULL;
}

FfPlace *
ff_keeper_dup_place (FfKeeper *self, const char *id)
{
  FfStore *store = ff_keeper_store (self);

  return store != NULL && id != NULL ? ff_place_load (store, id, NULL) : NULL;
}

FfShot *
ff_keeper_dup_shot (FfKeeper *self, const char *id)
{
  FfStore *store = ff_keeper_store (self);

  return store != NULL && id != NULL ? ff_shot_load (store, id, NULL) : NULL;
}

FfItem *
ff_keeper_dup_item (FfKeeper *self, const char *id)
{
  FfStore *store = ff_keeper_store (self);

  return store != NULL && id != NULL ? ff_item_load (store, id, NULL) : NULL;
}

FfMember *
ff_keeper_dup_member (FfKeeper *self, const char *id)
{
  FfStore *store = ff_keeper_store (self);

  return store != NULL && id != NULL ? ff_member_load (store, id, NULL) : NULL;
}

/* One record */

static gboolean
save (FfKeeper *self,
      const FfNoun *noun,
      const char *id,
      gconstpointer record,
      const char *what,
      GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfUndoStep) step = ff_undo_step_new (what);

  if (store == NULL)
    return FALSE;
  ff_undo_step_add (step, noun, id, noun->load (store, id, NULL));
  if (!noun->save (store, record, error))
    return FALSE;
  ff_undo_push (ff_keeper_get_undo (self), g_steal_pointer (&step));
  return TRUE;
}

gboolean
ff_keeper_save_job (FfKeeper *self, const FfJob *job, const char *what, GError **error)
{
  if (!save (self, &ff_noun_job, job->id, job, what, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_save_place (FfKeeper *self, const FfPlace *place, const char *what, GError **error)
{
  if (!save (self, &ff_noun_place, place->id, place, what, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_save_shot (FfKeeper *self, const FfShot *shot, const char *what, GError **error)
{
  if (!save (self, &ff_noun_shot, shot->id, shot, what, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_save_item (FfKeeper *self, const FfItem *item, const char *what, GError **error)
{
  if (!save (self, &ff_noun_item, item->id, item, what, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_ITEMS);
  return TRUE;
}

gboolean
ff_keeper_save_member (FfKeeper *self, const FfMember *member, const char *what, GError **error)
{
  if (!save (self, &ff_noun_member, member->id, member, what, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}

/* Several records at once: what is done, and the step that undoes it. */

gboolean
ff_keeper_change (FfKeeper *self,
                  FfUndoStep *taken,
                  FfKeeperChange work,
                  gpointer what,
                  GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfUndoStep) step = taken;

  if (store == NULL || !ff_records_begin (store, error))
    return FALSE;
  if (!work (store, step, what, error) || !ff_records_commit (store, error))
    {
      ff_records_rollback (store);
      return FALSE;
    }
  ff_undo_push (ff_keeper_get_undo (self), g_steal_pointer (&step));
  return TRUE;
}

FfUndoStep *
ff_keeper_step_about (const char *format, const char *name)
{
  g_auto (GStrv) around = g_strsplit (format, "%s", 2);
  g_autofree char *quoted = g_strdup_printf ("“%s”", name);
  g_autofree char *what = g_strjoinv (quoted, around);

  return ff_undo_step_new (what);
}

/* Jobs */

static gboolean
add_job (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  FfJob *job = what;

  ff_undo_step_add (step, &ff_noun_job, job->id, NULL);
  return ff_job_save (store, job, error);
}

/* A title that no other job has: "New job", "New job 2" … */
static char *
free_title (FfKeeper *self, const char *wanted)
{
  GPtrArray *jobs = ff_keeper_jobs (self);

  for (guint n = 1;; n++)
    {
      g_autofree char *title
          = n == 1 ? g_strdup (wanted) : g_strdup_printf ("%s %u", wanted, n);
      gboolean taken = FALSE;

      for (guint i = 0; i < jobs->len && !taken; i++)
        taken = g_str_equal (((const FfJob *) g_ptr_array_index (jobs, i))->title, title);
      if (!taken)
        return g_steal_pointer (&title);
    }
}

char *
ff_keeper_new_job (FfKeeper *self, GError **error)
{
  g_autoptr (FfJob) job = ff_job_new ();

  g_free (job->title);
  job->title = free_title (self, _ ("New job"));
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Job %s added"), job->title),
                         add_job, job, error))
    return NULL;
  ff_keeper_announce (self, FF_NEWS_JOBS);
  return g_strdup (job->id);
}

typedef struct {
  FfJob *job;
  char *old_id;
} Copying;

static gboolean
copy_shots (FfStore *store, const Copying *copying, GError **error)
{
  g_autoptr (GPtrArray) shots = ff_shots_load (store, copying->old_id, error);

  for (guint i = 0; shots != NULL && i < shots->len; i++)
    {
      FfShot *shot = g_ptr_array_index (shots, i);

      ff_set_text (&shot->job_id, copying->job->id);
      g_free (shot->id);
      shot->id = ff_records_new_id ();
      if (!ff_shot_save (store, shot, error))
        return FALSE;
    }
  return shots != NULL;
}

static gboolean
copy_crew (FfStore *store, const Copying *copying, GError **error)
{
  g_autoptr (GPtrArray) crew = ff_job_crew_load (store, copying->old_id, error);

  for (guint i = 0; crew != NULL && i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      if (!ff_job_crew_add (store, copying->job->id, member->id, member->role, error))
        return FALSE;
    }
  return crew != NULL;
}

/* Undone by deleting the copy, which takes its shots and crew with it. */
static gboolean
copy_job (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  const Copying *copying = what;

  return add_job (store, step, copying->job, error) && copy_shots (store, copying, error)
         && copy_crew (store, copying, error);
}

/* The copy is planned anew: it has no date yet, no version but the first, and nothing is flown. */
static void
make_fresh (FfJob *job, const char *title)
{
  g_free (job->id);
  job->id = ff_records_new_id ();
  ff_set_text (&job->title, title);
  ff_set_text (&job->date, "");
  ff_set_text (&job->version, "A");
  job->state = FF_JOB_PLANNED;
}

char *
ff_keeper_duplicate_job (FfKeeper *self, const char *id, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfJob) job = store != NULL ? ff_job_load (store, id, error) : NULL;
  g_autofree char *title = NULL;
  g_autofree char *wanted = NULL;
  Copying copying = { job, (char *) id };

  if (job == NULL)
    return NULL;
  /* Translators: title of a copied job. */
  wanted = g_strdup_printf (_ ("%s, again"), job->title);
  title = free_title (self, wanted);
  make_fresh (job, title);
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Job %s added"), title),
                         copy_job, &copying, error))
    return NULL;
  ff_keeper_announce (self, FF_NEWS_JOBS);
  return g_strdup (job->id);
}

static void
remember_shots (FfUndoStep *step, GPtrArray *shots)
{
  while (shots->len > 0)
    {
      FfShot *shot = g_ptr_array_steal_index (shots, shots->len - 1);

      ff_undo_step_add (step, &ff_noun_shot, shot->id, shot);
    }
}

FfHeldRole *
ff_keeper_role_new (const char *job_id, const char *member_id, FfRole role)
{
  FfHeldRole *held = g_new0 (FfHeldRole, 1);

  held->job_id = g_strdup (job_id);
  held->member_id = g_strdup (member_id);
  held->role = (int) role;
  return held;
}

char *
ff_keeper_role_id (const char *job_id, const char *member_id, FfRole role)
{
  return g_strdup_printf ("%s/%s/%d", job_id, member_id, (int) role);
}

static void
remember_crew (FfUndoStep *step, const char *job_id, GPtrArray *crew)
{
  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);
      g_autofree char *id = ff_keeper_role_id (job_id, member->id, member->role);

      ff_undo_step_add (step, &ff_noun_job_crew, id,
                        ff_keeper_role_new (job_id, member->id, member->role));
    }
}

/* Steps are taken back last first: the job comes back before what hangs on it. */
static gboolean
delete_job (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  const char *id = what;
  g_autoptr (GPtrArray) shots = ff_shots_load (store, id, error);
  g_autoptr (GPtrArray) crew = shots != NULL ? ff_job_crew_load (store, id, error) : NULL;
  FfJob *job = crew != NULL ? ff_job_load (store, id, error) : NULL;

  if (job == NULL)
    return FALSE;
  remember_shots (step, shots);
  remember_crew (step, id, crew);
  ff_undo_step_add (step, &ff_noun_job, id, job);
  return ff_job_delete (store, id, error);
}

gboolean
ff_keeper_delete_job (FfKeeper *self, const char *id, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfJob) job = store != NULL ? ff_job_load (store, id, error) : NULL;

  if (job == NULL
      || !ff_keeper_change (self, ff_keeper_step_about (_ ("Job %s deleted"), job->title),
                            delete_job, (gpointer) id, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}

/* Gear */

/* Jobs that may use the item lose it from their gear lists, and get it back by undo. */
static gboolean
remember_users (FfStore *store, FfUndoStep *step, const char *item_id, GError **error)
{
  g_autoptr (GPtrArray) jobs = ff_jobs_load (store, error);

  for (guint i = jobs != NULL ? jobs->len : 0; i > 0; i--)
    {
      FfJob *job = g_ptr_array_index (jobs, i - 1);

      if (!g_ptr_array_find_with_equal_func (job->item_ids, item_id, g_str_equal, NULL))
        continue;
      job = g_ptr_array_steal_index (jobs, i - 1);
      ff_undo_step_add (step, &ff_noun_job, job->id, job);
    }
  return jobs != NULL;
}

static gboolean
delete_item (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  FfItem *item;

  if (!remember_users (store, step, what, error))
    return FALSE;
  item = ff_item_load (store, what, error);
  if (item == NULL)
    return FALSE;
  ff_undo_step_add (step, &ff_noun_item, what, item);
  return ff_item_delete (store, what, error);
}

gboolean
ff_keeper_delete_item (FfKeeper *self, const char *id, GError **error)
{
  const FfItem *item = ff_keeper_find_item (self, id);

  if (item == NULL)
    return TRUE;
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Item %s deleted"), item->label),
                         delete_item, (gpointer) id, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_ITEMS | FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}

/* Undo */

const char *
ff_keeper_undo_text (FfKeeper *self)
{
  return ff_undo_text (ff_keeper_get_undo (self));
}

gboolean
ff_keeper_undo (FfKeeper *self, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL || !ff_undo_take_back (ff_keeper_get_undo (self), store, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_ITEMS | FF_NEWS_JOB);
  return TRUE;
}
