/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

static int
index_of_shot (GPtrArray *shots, const char *id)
{
  for (guint i = 0; i < shots->len; i++)
    if (g_strcmp0 (((const FfShot *) g_ptr_array_index (shots, i))->id, id) == 0)
      return (int) i;
  return -1;
}

/* The list in another order */

/* Positions are numbered anew throughout: those of an old file may have gaps, or one twice. */
static gboolean
renumber (FfStore *store, FfUndoStep *step, GPtrArray *order, GError **error)
{
  for (guint i = 0; i < order->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (order, i);
      g_autoptr (FfShot) moved = NULL;

      if (shot->position == (int) i)
        continue;
      moved = ff_shot_load (store, shot->id, error);
      if (moved == NULL)
        return FALSE;
      ff_undo_step_add (step, &ff_noun_shot, moved->id, ff_shot_load (store, moved->id, NULL));
      moved->position = (int) i;
      if (!ff_shot_save (store, moved, error))
        return FALSE;
    }
  return TRUE;
}

/* A copy of the pointers: the keeper goes on owning the shots. */
static GPtrArray *
order_now (FfKeeper *self)
{
  GPtrArray *order = g_ptr_array_copy (ff_keeper_shots (self), NULL, NULL);

  g_ptr_array_set_free_func (order, NULL);
  return order;
}

static gboolean
move_shot (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  return renumber (store, step, what, error);
}

gboolean
ff_keeper_move_shot (FfKeeper *self, const char *id, int by, GError **error)
{
  g_autoptr (GPtrArray) order = order_now (self);
  int at = index_of_shot (order, id);
  int to = at + (by < 0 ? -1 : 1);
  FfShot *shot;

  /* At the end of the list there is nowhere to go, which is no fault. */
  if (at < 0 || to < 0 || to >= (int) order->len)
    return TRUE;
  shot = g_ptr_array_remove_index (order, (guint) at);
  g_ptr_array_insert (order, to, shot);
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Shot %s moved"), shot->label), move_shot,
                         order, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

/* One more, one less */

typedef struct {
  FfShot shot;      /* a shallow copy */
  GPtrArray *order; /* with the new one in its place */
} Insertion;

static gboolean
insert_shot (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  Insertion *insertion = what;

  if (!renumber (store, step, insertion->order, error))
    return FALSE;
  ff_undo_step_add (step, &ff_noun_shot, insertion->shot.id, NULL);
  return ff_shot_save (store, &insertion->shot, error);
}

gboolean
ff_keeper_insert_shot (FfKeeper *self, const FfShot *shot, const char *after, GError **error)
{
  g_autoptr (GPtrArray) order = order_now (self);
  int behind = index_of_shot (order, after);
  Insertion insertion = { .shot = *shot, .order = order };

  insertion.shot.position = behind >= 0 ? behind + 1 : (int) order->len;
  /* It stands in the order as it will be stored, so that nothing of it is loaded or saved twice. */
  g_ptr_array_insert (order, insertion.shot.position, &insertion.shot);
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Shot %s added"), shot->label),
                         insert_shot, &insertion, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

static gboolean
delete_shot (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  FfShot *shot = ff_shot_load (store, what, error);

  if (shot == NULL)
    return FALSE;
  ff_undo_step_add (step, &ff_noun_shot, what, shot);
  return ff_shot_delete (store, what, error);
}

gboolean
ff_keeper_delete_shot (FfKeeper *self, const char *id, GError **error)
{
  const FfShot *shot = ff_keeper_find_shot (self, id);
  g_autofree char *copy = g_strdup (id);

  if (shot == NULL)
    return TRUE;
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Shot %s deleted"), shot->label),
                         delete_shot, copy, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}
