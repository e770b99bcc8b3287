/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-store-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-statement.h"

static gboolean
flush (const char *path, int flags)
{
  int file = open (path, flags | O_CLOEXEC);
  gboolean done = file >= 0 && fsync (file) == 0;

  if (file >= 0)
    close (file);
  return done;
}

/* Some file systems, such as those of memory sticks, know neither way to refuse an existing name in
 * one step; there a look has to do. */
static gboolean
name_new_file (const char *temporary, const char *path)
{
  if (renameat2 (AT_FDCWD, temporary, AT_FDCWD, path, RENAME_NOREPLACE) == 0)
    return TRUE;
  if (errno != EINVAL && errno != ENOSYS)
    return FALSE;
  if (link (temporary, path) == 0)
    {
      g_unlink (temporary);
      return TRUE;
    }
  if (errno == EEXIST)
    return FALSE;
  if (access (path, F_OK) == 0)
    {
      errno = EEXIST;
      return FALSE;
    }
  return g_rename (temporary, path) == 0;
}

void
ff_discard (const char *temporary)
{
  g_autofree char *journal = g_strconcat (temporary, "-journal", NULL);

  g_unlink (temporary);
  g_unlink (journal);
}

gboolean
ff_publish (const char *temporary, const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int problem;

  if (flush (temporary, O_RDONLY) && name_new_file (temporary, path))
    {
      /* Not every file system can flush a folder; the file itself is safe already. */
      flush (folder, O_RDONLY | O_DIRECTORY);
      return TRUE;
    }
  problem = errno;
  ff_discard (temporary);
  errno = problem;
  return FALSE;
}

static gboolean
cannot_write (const char *path, int problem, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  if (problem == EEXIST)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("%s exists already: choose a name that is not taken"), shown);
  else
    g_set_error (error, FF_ERROR, FF_ERROR_OUTPUT, _ ("%s can't be written: %s"), shown,
                 g_strerror (problem));
  return FALSE;
}

static gboolean
copy_into (FfStore *store, const char *path, GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, "VACUUM INTO ?1", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, path, error)
         && ff_statement_run (statement, error);
}

gboolean
ff_store_backup (FfStore *store, const char *path, GError **error)
{
  g_autofree char *temporary = g_strconcat (path, ".part-XXXXXX", NULL);
  int file;

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    return cannot_write (path, EEXIST, error);
  file = g_mkstemp_full (temporary, O_RDWR | O_CLOEXEC, 0600);
  if (file < 0)
    return cannot_write (path, errno, error);
  close (file);
  if (!copy_into (store, temporary, error))
    {
      ff_discard (temporary);
      return FALSE;
    }
  return ff_publish (temporary, path) || cannot_write (path, errno, error);
}

gboolean
ff_backup_before_migration (FfStore *store, int version, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (store->path);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autofree char *day = g_date_time_format (now, "%Y-%m-%d");

  /* A second one on the same day gets a number; none is ever replaced. */
  for (int i = 1; i < 1000; i++)
    {
      g_autofree char *number = i > 1 ? g_strdup_printf ("-%d", i) : g_strdup ("");
      g_autofree char *name = g_strdup_printf ("fieldfare-%s-v%d%s.db", day, version, number);
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (!g_file_test (path, G_FILE_TEST_EXISTS))
        return ff_store_backup (store, path, error);
    }
  return cannot_write (store->path, EEXIST, error);
}
