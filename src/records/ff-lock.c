/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-lock.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-rows.h"

static const FfField lock_fields[] = {
  FF_ID (FfLock, id, "id", N_ ("id"), TRUE),
  FF_ID (FfLock, job_id, "job_id", N_ ("job"), TRUE),
  FF_ID (FfLock, shot_id, "shot_id", N_ ("first shot of the line"), TRUE),
  FF_ID (FfLock, battery_id, "battery_id", N_ ("battery"), FALSE),
  FF_FLAG (FfLock, keep_filter, N_ ("the filter stays")),
  FF_ID (FfLock, filter_id, "filter_id", N_ ("filter"), FALSE),
  FF_CLOCK (FfLock, off_by, N_ ("off by"), FALSE),
};
const FfFields ff_lock_fields = FF_FIELDS ("line_lock", lock_fields);

static gpointer
lock_blank (void)
{
  FfLock *lock = g_new0 (FfLock, 1);

  ff_fields_init (&ff_lock_fields, lock);
  return lock;
}

FfLock *
ff_lock_new (const char *job_id)
{
  FfLock *lock = lock_blank ();

  g_free (lock->id);
  lock->id = ff_records_new_id ();
  ff_set_text (&lock->job_id, job_id);
  return lock;
}

void
ff_lock_free (FfLock *lock)
{
  if (lock == NULL)
    return;
  ff_fields_clear (&ff_lock_fields, lock);
  g_free (lock);
}

gboolean
ff_lock_check (const FfLock *lock, GError **error)
{
  const char *whose = _ ("lock of a line"), *what = NULL;

  if (!ff_fields_check (&ff_lock_fields, lock, whose, error))
    return FALSE;
  if (*lock->battery_id == '\0' && !lock->keep_filter && lock->off_by == FF_NO_CLOCK)
    what = _ ("it fixes nothing; accepted: a battery, a filter, a time");
  else if (!lock->keep_filter && *lock->filter_id != '\0')
    what = _ ("it names a filter and does not fix it");
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

gboolean
ff_lock_save (FfStore *store, const FfLock *lock, GError **error)
{
  return ff_lock_check (lock, error)
         && (ff_rows_save (store, &ff_lock_fields, lock, error)
             || ff_rows_taken (error, "line_lock.shot_id", _ ("this line is locked already")));
}

FfLock *
ff_lock_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found = ff_rows_load (store, &ff_lock_fields, "WHERE id = ?1", id,
                                              lock_blank, (GDestroyNotify) ff_lock_free, error);

  if (found == NULL)
    return NULL;
  if (found->len > 0)
    return g_ptr_array_steal_index (found, 0);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no lock has the id “%s”"), id);
  return NULL;
}

gboolean
ff_lock_delete (FfStore *store, const char *id, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "DELETE FROM line_lock WHERE id = ?1", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, id, error)
         && ff_statement_run (statement, error);
}

GPtrArray *
ff_locks_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_lock_fields, "WHERE job_id = ?1 ORDER BY off_by, id", job_id,
                       lock_blank, (GDestroyNotify) ff_lock_free, error);
}

const FfLock *
ff_locks_find (GPtrArray *locks, const char *shot_id)
{
  for (guint i = 0; i < locks->len; i++)
    {
      const FfLock *lock = g_ptr_array_index (locks, i);

      if (g_str_equal (lock->shot_id, shot_id))
        return lock;
    }
  return NULL;
}
