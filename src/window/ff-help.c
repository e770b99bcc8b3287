/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-help.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

char *
ff_help_address (const char *page)
{
  return g_strconcat ("help:fieldfare/", page != NULL ? page : "index", NULL);
}

gboolean
ff_help_is_in (const char *const *data_dirs)
{
  for (guint i = 0; data_dirs[i] != NULL; i++)
    {
      g_autofree char *first
          = g_build_filename (data_dirs[i], "help", "C", "fieldfare", "index.page", NULL);

      if (g_file_test (first, G_FILE_TEST_IS_REGULAR))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_installed (void)
{
  const char *const user[] = { g_get_user_data_dir (), NULL };

  return ff_help_is_in (user) || ff_help_is_in (g_get_system_data_dirs ());
}

char *
ff_help_show (const char *page)
{
  g_autofree char *address = ff_help_address (page);

  /* A viewer would open all the same, and only say that there is no such page. */
  if (!is_installed ())
    return g_strdup (_ ("The help comes with the installed program. In the source it is in the "
                        "folder help/C: type “yelp help/C” there."));
  if (!g_app_info_launch_default_for_uri (address, NULL, NULL))
    /* Translators: %s is the address of a page of the help. */
    return g_strdup_printf (_ ("No program here shows help pages. Install Yelp, then press F1 or "
                               "type “yelp %s”."),
                            address);
  return NULL;
}
