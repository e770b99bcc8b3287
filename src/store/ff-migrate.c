/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Version n of the store is what the first n files of migrations/ make. A file that was released
 * is never changed; a change of the tables is a new file.
 *   1  the ground floor: crew, places, jobs, shots, items, limits, readings, versions, flights
 *   2  readings in full
 *   4  the gear in full: goes with, search, what is measured at batteries, pictures
 *   8  frozen plans: sentences and acknowledgements of amendments, locks of lines
 *  10  who was briefed */
#include "ff-store-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <unistd.h>

#include "ff-error.h"

static gboolean
apply (FfStore *store, const char *const *steps, GError **error)
{
  gint64 version;

  /* Read inside the transaction: another program may have been faster. */
  if (!ff_store_integer (store, "PRAGMA user_version", &version, error))
    return FALSE;
  for (gint64 i = 0; steps[i] != NULL; i++)
    {
      g_autofree char *mark = g_strdup_printf ("PRAGMA user_version = %d", (int) i + 1);

      if (i >= version
          && (!ff_store_exec (store, steps[i], error) || !ff_store_exec (store, mark, error)))
        return FALSE;
    }
  return TRUE;
}

static gboolean
references_hold (FfStore *store, GError **error)
{
  gint64 broken;

  if (!ff_store_integer (store, "SELECT count(*) FROM pragma_foreign_key_check", &broken, error))
    return FALSE;
  return broken == 0
         || ff_store_damaged (store->path, _ ("its records do not refer to each other"), error);
}

static gboolean
migrate (FfStore *store, const char *const *steps, GError **error)
{
  if (!ff_store_begin (store, error))
    return FALSE;
  if (!apply (store, steps, error) || !references_hold (store, error))
    {
      ff_store_rollback (store);
      return FALSE;
    }
  return ff_store_commit (store, error);
}

/* A table that others refer to can only be made anew while references are not followed; they are
 * all looked at before the commit. A transaction ignores the pragma: it stands outside. */
gboolean
ff_migrate (FfStore *store, const char *const *steps, GError **error)
{
  gint64 followed;
  gboolean done;

  if (!ff_store_integer (store, "PRAGMA foreign_keys", &followed, error)
      || !ff_store_exec (store, "PRAGMA foreign_keys = OFF", error))
    return FALSE;
  done = migrate (store, steps, error);
  if (followed != 0 && !ff_store_exec (store, "PRAGMA foreign_keys = ON", done ? error : NULL))
    return FALSE;
  return done;
}

/* A rollback journal while it is made: the finished file then stands alone. */
static gboolean
fill (const char *path, GError **error)
{
  FfStore store = { .path = (char *) path, .access = FF_STORE_WRITE };
  g_autofree char *id
      = g_strdup_printf ("PRAGMA application_id = %d", FF_STORE_APPLICATION_ID);
  int code = sqlite3_open_v2 (path, &store.db, SQLITE_OPEN_READWRITE, NULL);
  gboolean done = (code == SQLITE_OK || ff_store_failed (&store, code, error))
                  && ff_store_exec (&store, "PRAGMA synchronous = FULL", error)
                  && ff_store_exec (&store, id, error)
                  && ff_migrate (&store, ff_migrations, error);

  sqlite3_close (store.db);
  return done;
}

gboolean
ff_store_create (const char *path, GError **error)
{
  g_autofree char *temporary = g_strconcat (path, ".new-XXXXXX", NULL);
  g_autofree char *shown = g_filename_display_name (path);
  int file = g_mkstemp_full (temporary, O_RDWR | O_CLOEXEC, 0600);

  if (file < 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_STORE, _ ("%s can't be made: %s"), shown,
                   g_strerror (errno));
      return FALSE;
    }
  close (file);
  if (!fill (temporary, error))
    {
      ff_discard (temporary);
      return FALSE;
    }
  if (ff_publish (temporary, path) || errno == EEXIST)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_STORE, _ ("%s can't be made: %s"), shown,
               g_strerror (errno));
  return FALSE;
}
