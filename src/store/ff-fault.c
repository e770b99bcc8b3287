/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What SQLite reports, in sentences. */
#include "ff-store-private.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"

gboolean
ff_store_damaged (const char *path, const char *how, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_autofree char *name = g_path_get_basename (shown);

  /* A log that stays behind would be played into the backup: it has to go as well. */
  g_set_error (error, FF_ERROR, FF_ERROR_STORE,
               /* Translators: path, what is wrong with it, its name twice. */
               _ ("%s is damaged: %s. Restore a backup: move %s and any %s-wal and %s-shm away and "
                  "copy the backup over this file"),
               shown, how, name, name, name);
  return FALSE;
}

static const char *
sentence_for (int code)
{
  switch (code & 0xff)
    {
    case SQLITE_FULL:
      return _ ("can't be written, the disk is full: free some space and do it again");
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return _ ("read-only: allow writing to the file and its folder");
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return _ ("another program is writing to it: wait for that, then do it again");
    case SQLITE_CANTOPEN:
      return _ ("can't be opened: check that its folder exists and may be read and written");
    case SQLITE_IOERR:
      return _ ("can't be read or written: the disk reports an error or is full");
    default:
      return NULL;
    }
}

gboolean
ff_store_failed (FfStore *store, int code, GError **error)
{
  g_autofree char *shown = g_filename_display_name (store->path);
  const char *sentence = sentence_for (code);
  const char *detail = sqlite3_errmsg (store->db);

  if ((code & 0xff) == SQLITE_CORRUPT || (code & 0xff) == SQLITE_NOTADB)
    return ff_store_damaged (store->path, detail, error);
  if ((code & 0xff) == SQLITE_CONSTRAINT)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("a rule of the store forbids it: %s"), detail);
  else if (sentence != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_STORE, "%s: %s", shown, sentence);
  else
    g_set_error (error, FF_ERROR, FF_ERROR_STORE, _ ("%s: the store reports: %s"), shown, detail);
  return FALSE;
}
