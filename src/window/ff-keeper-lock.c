/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew has decided about a line, as the plan has it at this moment. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-lock.h"

static const FfPlanLine *
find_line (FfKeeper *self, const char *line_id)
{
  const FfDayPlan *plan = ff_keeper_plan (self);

  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (g_strcmp0 (line->id, line_id) == 0)
        return line;
    }
  return NULL;
}

static const char *
id_of_label (FfKeeper *self, FfKind kind, const char *label)
{
  GPtrArray *items = ff_keeper_items (self);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->kind == kind && g_str_equal (item->label, label))
        return item->id;
    }
  return NULL;
}

/* Minutes after the midnight that the job's date begins with; past it they go on. */
static int
clock_of (FfKeeper *self, gint64 instant)
{
  const FfJob *job = ff_keeper_job (self);
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc (instant);
  g_autoptr (GDateTime) local = g_date_time_to_timezone (utc, ff_day_zone (ff_keeper_day (self)));
  g_autofree char *date = g_date_time_format (local, "%Y-%m-%d");
  int minutes = g_date_time_get_hour (local) * 60 + g_date_time_get_minute (local);

  return g_strcmp0 (date, job->date) > 0 ? minutes + 24 * 60 : minutes;
}

static FfLock *
lock_of (FfKeeper *self, const FfPlanLine *line)
{
  FfLock *lock = ff_lock_new (ff_keeper_job (self)->id);
  const char *filter = NULL;

  ff_set_text (&lock->shot_id, line->id);
  ff_set_text (&lock->battery_id, id_of_label (self, FF_KIND_BATTERY, line->battery));
  if (line->filters->len == 1)
    filter = id_of_label (self, FF_KIND_FILTER, g_ptr_array_index (line->filters, 0));
  lock->keep_filter = line->filters->len == 0 || filter != NULL;
  ff_set_text (&lock->filter_id, filter);
  lock->off_by = clock_of (self, line->off_by);
  return lock;
}

static gboolean
lock_line (FfKeeper *self, FfStore *store, const FfPlanLine *line, GError **error)
{
  g_autoptr (FfLock) lock = lock_of (self, line);
  g_autofree char *what = g_strdup_printf (_ ("Sortie %d locked"), line->line);
  g_autoptr (FfUndoStep) step = ff_undo_step_new (what);

  if (!ff_lock_save (store, lock, error))
    return FALSE;
  ff_undo_step_add (step, &ff_noun_lock, lock->id, NULL);
  ff_undo_push (ff_keeper_get_undo (self), g_steal_pointer (&step));
  return TRUE;
}

static gboolean
unlock_line (FfKeeper *self,
             FfStore *store,
             const FfPlanLine *line,
             const FfLock *lock,
             GError **error)
{
  g_autofree char *what = g_strdup_printf (_ ("Sortie %d unlocked"), line->line);
  g_autoptr (FfUndoStep) step = ff_undo_step_new (what);

  ff_undo_step_add (step, &ff_noun_lock, lock->id, ff_lock_load (store, lock->id, NULL));
  if (!ff_lock_delete (store, lock->id, error))
    return FALSE;
  ff_undo_push (ff_keeper_get_undo (self), g_steal_pointer (&step));
  return TRUE;
}

gboolean
ff_keeper_toggle_lock (FfKeeper *self, const char *line_id, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  const FfPlanLine *line = find_line (self, line_id);
  g_autoptr (GPtrArray) locks = NULL;
  const FfLock *lock;
  gboolean done;

  if (store == NULL)
    return FALSE;
  if (line == NULL || ff_keeper_is_planning (self))
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           _ ("the plan is being worked out; do it again when it stands"));
      return FALSE;
    }
  locks = ff_locks_load (store, ff_keeper_job (self)->id, error);
  if (locks == NULL)
    return FALSE;
  lock = ff_locks_find (locks, line_id);
  done = lock != NULL ? unlock_line (self, store, line, lock, error)
                      : lock_line (self, store, line, error);
  if (done)
    ff_keeper_announce (self, FF_NEWS_JOB);
  return done;
}
