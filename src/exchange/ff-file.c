/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"

static gboolean
refuse (const char *path, FfError code, const char *what, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, FF_ERROR, (int) code, "%s: %s", shown, what);
  return FALSE;
}

/* A pipe or a device would block, or never end. */
static int
open_regular (const char *path, GError **error)
{
  int file = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  struct stat info;

  if (file < 0)
    {
      refuse (path, FF_ERROR_INPUT, g_strerror (errno), error);
      return -1;
    }
  if (fstat (file, &info) == 0 && S_ISREG (info.st_mode))
    return file;
  close (file);
  refuse (path, FF_ERROR_INPUT, _ ("not a file"), error);
  return -1;
}

/* One byte more than is allowed tells a file that is too large. */
static GString *
read_up_to (int file, gsize most)
{
  GString *text = g_string_new (NULL);
  char buffer[65536];
  gssize n;

  do
    {
      n = read (file, buffer, sizeof buffer);
      if (n > 0)
        g_string_append_len (text, buffer, n);
    }
  while ((n > 0 && text->len <= most) || (n < 0 && errno == EINTR));
  if (n >= 0)
    return text;
  g_string_free (text, TRUE);
  return NULL;
}

char *
ff_file_read (const char *path, gsize most, GError **error)
{
  g_autoptr (GString) text = NULL;
  int file = open_regular (path, error);

  if (file < 0)
    return NULL;
  text = read_up_to (file, most);
  close (file);
  if (text == NULL)
    {
      refuse (path, FF_ERROR_INPUT, _ ("can't be read"), error);
      return NULL;
    }
  if (text->len > most)
    {
      g_autofree char *what
          = g_strdup_printf (_ ("too large; accepted: up to %zu MB"), most / 1000000);

      refuse (path, FF_ERROR_INPUT, what, error);
      return NULL;
    }
  if (!g_utf8_validate (text->str, (gssize) text->len, NULL))
    {
      refuse (path, FF_ERROR_INPUT, _ ("holds bytes that are no text; accepted: UTF-8"), error);
      return NULL;
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static gboolean
write_all (int file, const char *text)
{
  gsize left = strlen (text);

  while (left > 0)
    {
      gssize n = write (file, text, left);

      if (n < 0 && errno != EINTR)
        return FALSE;
      if (n > 0)
        {
          text += n;
          left -= (gsize) n;
        }
    }
  return fsync (file) == 0;
}

/* Never onto a file that exists. File systems of memory sticks know no way to do that in one step;
 * there a look has to do. */
static gboolean
name_it (const char *temporary, const char *path)
{
  if (renameat2 (AT_FDCWD, temporary, AT_FDCWD, path, RENAME_NOREPLACE) == 0)
    return TRUE;
  if (errno != EINVAL && errno != ENOSYS)
    return FALSE;
  if (access (path, F_OK) == 0)
    {
      errno = EEXIST;
      return FALSE;
    }
  return g_rename (temporary, path) == 0;
}

static gboolean
taken (const char *path, GError **error)
{
  return refuse (path, FF_ERROR_INPUT, _ ("exists already: choose a name that is not taken"),
                 error);
}

gboolean
ff_file_write_new (const char *path, const char *text, GError **error)
{
  g_autofree char *temporary = g_strconcat (path, ".part-XXXXXX", NULL);
  gboolean done;
  int file, problem;

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    return taken (path, error);
  file = g_mkstemp_full (temporary, O_WRONLY | O_CLOEXEC, 0644);
  if (file < 0)
    return refuse (path, FF_ERROR_OUTPUT, g_strerror (errno), error);
  done = write_all (file, text);
  problem = errno;
  close (file);
  if (done && name_it (temporary, path))
    return TRUE;
  if (done)
    problem = errno;
  g_unlink (temporary);
  if (problem == EEXIST)
    return taken (path, error);
  return refuse (path, FF_ERROR_OUTPUT, g_strerror (problem), error);
}
