/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-save.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"

/* The error of errno, with the file it is about. */
static gboolean
fail (const char *path, GError **error)
{
  const int code = errno;
  g_autofree char *name = g_filename_display_name (path);

  g_set_error (error, FF_ERROR, FF_ERROR_OUTPUT, _ ("“%s” can't be written: %s"), name,
               code == ENOSPC || code == EDQUOT
                   ? _ ("the disk is full. Make room there, or choose another folder.")
                   : g_strerror (code));
  return FALSE;
}

static gboolean
write_all (int fd, const guint8 *bytes, gsize n_bytes)
{
  while (n_bytes > 0)
    {
      gssize done = write (fd, bytes, n_bytes);

      if (done < 0 && errno == EINTR)
        continue;
      if (done < 0)
        return FALSE;
      bytes += done;
      n_bytes -= (gsize) done;
    }
  return TRUE;
}

static gboolean
save_in_place (const char *path, const guint8 *bytes, gsize n_bytes, GError **error)
{
  int fd = g_open (path, O_WRONLY | O_CLOEXEC, 0);
  gboolean written;

  if (fd < 0)
    return fail (path, error);
  written = write_all (fd, bytes, n_bytes) || fail (path, error);
  if (close (fd) != 0 && written)
    return fail (path, error);
  return written;
}

/* The new name itself must reach the disk too. Some file systems can't sync a folder; then the file
 * is whole all the same. */
static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd < 0)
    return;
  (void) fsync (fd);
  close (fd);
}

static gboolean
save_beside (const char *path, const guint8 *bytes, gsize n_bytes, GError **error)
{
  g_autofree char *beside = g_strdup_printf ("%s.XXXXXX", path);
  int fd = g_mkstemp_full (beside, O_WRONLY | O_CLOEXEC, 0666);
  gboolean written;

  if (fd < 0)
    return fail (path, error);
  written = (write_all (fd, bytes, n_bytes) && fsync (fd) == 0) || fail (path, error);
  if (close (fd) != 0 && written)
    written = fail (path, error);
  if (written && g_rename (beside, path) != 0)
    written = fail (path, error);
  if (!written)
    {
      g_unlink (beside);
      return FALSE;
    }
  sync_folder (path);
  return TRUE;
}

gboolean
ff_save (const char *path, const guint8 *bytes, gsize n_bytes, GError **error)
{
  struct stat status;
  char *real;
  gboolean saved;

  if (stat (path, &status) != 0)
    return save_beside (path, bytes, n_bytes, error);
  if (S_ISDIR (status.st_mode))
    {
      errno = EISDIR;
      return fail (path, error);
    }
  if (!S_ISREG (status.st_mode))
    return save_in_place (path, bytes, n_bytes, error);
  /* A link keeps pointing where it points: what it points to is replaced. */
  real = realpath (path, NULL);
  if (real == NULL)
    return fail (path, error);
  saved = save_beside (real, bytes, n_bytes, error);
  free (real);
  return saved;
}
