/* SPDX-License-Identifier: GPL-3.0-or-later */
/* fieldfare: the window. Everything else is in the library of this room. */
#include <glib/gi18n-lib.h>
#include <locale.h>

#include "ff-application.h"

int
main (int argc, char **argv)
{
  g_autoptr (FfApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, FF_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  g_set_application_name ("Fieldfare");
  application = ff_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
