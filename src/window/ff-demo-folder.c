/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-demo-folder.h"

#include <glib/gstdio.h>

#include "ff-demo.h"
#include "ff-records.h"

static gboolean
fill (const char *folder, GError **error)
{
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, error);

  return store != NULL && ff_demo_fill (store, error);
}

char *
ff_demo_folder_new (GError **error)
{
  g_autofree char *folder = g_dir_make_tmp ("fieldfare-demo-XXXXXX", error);

  if (folder == NULL)
    return NULL;
  if (!fill (folder, error))
    {
      ff_demo_folder_remove (g_steal_pointer (&folder));
      return NULL;
    }
  return g_steal_pointer (&folder);
}

void
ff_demo_folder_remove (char *folder)
{
  GDir *dir;
  const char *name;

  if (folder == NULL)
    return;
  dir = g_dir_open (folder, 0, NULL);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      (void) g_unlink (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  (void) g_rmdir (folder);
  g_free (folder);
}
