/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-paragraph.h"

#define COLUMNS 80

void
ff_console_paragraph (FfConsole *console, const char *head, const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  g_autoptr (GString) line = g_string_new (head);
  glong indent = g_utf8_strlen (head, -1);
  gboolean empty = TRUE;

  for (guint i = 0; words[i] != NULL; i++)
    {
      glong length = g_utf8_strlen (line->str, -1) + g_utf8_strlen (words[i], -1);

      if (!empty && length + 1 > COLUMNS)
        {
          ff_console_line (console, "%s", line->str);
          g_string_printf (line, "%*s", (int) indent, "");
          empty = TRUE;
        }
      g_string_append_printf (line, "%s%s", empty ? "" : " ", words[i]);
      empty = FALSE;
    }
  ff_console_line (console, "%s", line->str);
}
