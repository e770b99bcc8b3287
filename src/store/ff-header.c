/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The header of an SQLite file, read by hand before SQLite may touch the file: opening a stranger's
 * file with SQLite could already roll back its journal. Layout: "Database File Format", SQLite
 * documentation, section 1.3. */
#include "ff-store-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"

#define HEADER_SIZE 100

static guint32
big_endian (const guint8 *header, int at, int n)
{
  guint32 value = 0;

  for (int i = 0; i < n; i++)
    value = value << 8 | header[at + i];
  return value;
}

static gboolean
refuse (const char *path, const char *sentence, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, FF_ERROR, FF_ERROR_STORE, "%s: %s", shown, sentence);
  return FALSE;
}

/* The first bytes and the size of the file; n is fewer than asked for in a short file. */
static gboolean
read_start (const char *path, guint8 *header, gssize *ret_n, gint64 *ret_size, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  int file = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  struct stat info;
  gssize n = -1;

  if (file >= 0 && fstat (file, &info) == 0 && S_ISREG (info.st_mode))
    n = pread (file, header, HEADER_SIZE, 0);
  else if (file >= 0)
    errno = EISDIR;
  if (n < 0)
    {
      int problem = errno;

      if (file >= 0)
        close (file);
      if (problem == EISDIR)
        return refuse (path, _ ("not a file: move it away, or choose another data folder"), error);
      g_set_error (error, FF_ERROR, FF_ERROR_STORE, _ ("%s can't be read: %s"), shown,
                   g_strerror (problem));
      return FALSE;
    }
  close (file);
  *ret_n = n;
  *ret_size = info.st_size;
  return TRUE;
}

/* What no version of this program writes any other way. */
static gboolean
has_our_layout (const guint8 *header)
{
  static const guint8 no_bytes[20];
  guint32 page = big_endian (header, 16, 2);
  gboolean power_of_two = page == 1 || (page >= 512 && (page & (page - 1)) == 0);

  return power_of_two && header[18] >= 1 && header[18] <= 2 && header[18] == header[19]
         && header[20] == 0 && header[21] == 64 && header[22] == 32 && header[23] == 32
         && big_endian (header, 44, 4) == 4 && big_endian (header, 56, 4) == 1
         && memcmp (header + 72, no_bytes, sizeof no_bytes) == 0;
}

/* Whole pages, and as many as the header counts. */
static gboolean
has_its_size (const guint8 *header, gint64 size)
{
  gint64 page = big_endian (header, 16, 2);
  gint64 pages = big_endian (header, 28, 4);

  if (page == 1)
    page = 65536;
  return pages > 0 && size == pages * page
         && big_endian (header, 24, 4) == big_endian (header, 92, 4);
}

gboolean
ff_version_check (const char *path, gint64 version, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  if (version > ff_store_newest_version ())
    {
      g_set_error (error, FF_ERROR, FF_ERROR_STORE,
                   _ ("%s is from a newer version of Fieldfare (store version %d; this program "
                      "knows %d): use the newer program"),
                   shown, (int) version, ff_store_newest_version ());
      return FALSE;
    }
  if (version < 1)
    return ff_store_damaged (path, _ ("it has no version"), error);
  return TRUE;
}

static gint64
wal_size (const char *path)
{
  g_autofree char *wal = g_strconcat (path, "-wal", NULL);
  struct stat info;

  return stat (wal, &info) == 0 ? info.st_size : 0;
}

gboolean
ff_header_check (const char *path, gboolean *ret_has_wal, GError **error)
{
  guint8 header[HEADER_SIZE];
  gssize n;
  gint64 size;

  if (!read_start (path, header, &n, &size, error))
    return FALSE;
  if (size == 0)
    return ff_store_damaged (path, _ ("it is empty"), error);
  if (n < 16 || memcmp (header, "SQLite format 3", 16) != 0)
    return refuse (path,
                   _ ("not a store of Fieldfare: move it away, or choose another data folder"), error);
  if (n < HEADER_SIZE)
    return ff_store_damaged (path, _ ("its end is missing"), error);
  if (big_endian (header, 68, 4) != FF_STORE_APPLICATION_ID)
    return refuse (path,
                   _ ("a file of another program: move it away, or choose another data folder"),
                   error);
  /* What a write-ahead log still holds replaces what the file says; SQLite has to read it. */
  *ret_has_wal = wal_size (path) > 0;
  if (*ret_has_wal)
    return TRUE;
  if (!has_our_layout (header))
    return ff_store_damaged (path, _ ("its header makes no sense"), error);
  if (!has_its_size (header, size))
    return ff_store_damaged (path, _ ("it does not have the size it had when it was written"),
                             error);
  return ff_version_check (path, (gint32) big_endian (header, 60, 4), error);
}
