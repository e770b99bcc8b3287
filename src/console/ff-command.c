/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-command.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-error.h"
#include "ff-number.h"

gboolean
ff_option_missing (const char *name, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s is missing"), name);
  return FALSE;
}

gboolean
ff_option_number (const char *name,
                  const char *text,
                  double low,
                  double high,
                  double *ret_value,
                  GError **error)
{
  if (text == NULL)
    return ff_option_missing (name, error);
  return ff_number_parse (name, text, low, high, ret_value, error);
}

gboolean
ff_option_instant (const char *name, const char *text, gint64 *ret_instant, GError **error)
{
  if (text == NULL)
    return ff_option_missing (name, error);
  if (ff_instant_parse (text, ret_instant, error))
    return TRUE;
  g_prefix_error (error, "%s: ", name);
  return FALSE;
}

gboolean
ff_option_name (const char *name,
                const FfNames *names,
                const char *text,
                int *ret_value,
                GError **error)
{
  if (text == NULL)
    return ff_option_missing (name, error);
  if (ff_name_parse (names, text, ret_value, error))
    return TRUE;
  g_prefix_error (error, "%s: ", name);
  return FALSE;
}

GStrv
ff_option_list (const char *name, const char *text, GError **error)
{
  g_auto (GStrv) parts = NULL;

  if (text == NULL)
    {
      ff_option_missing (name, error);
      return NULL;
    }
  parts = g_strsplit (text, ",", -1);
  for (guint i = 0; parts[i] != NULL; i++)
    if (*g_strstrip (parts[i]) == '\0')
      {
        g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                     _ ("%s: empty part in “%s”; accepted: a comma-separated list"), name, text);
        return NULL;
      }
  return g_steal_pointer (&parts);
}

gboolean
ff_option_initials (const char *name,
                    const char *text,
                    FfStore *store,
                    char **ret_initials,
                    GError **error)
{
  g_autoptr (GPtrArray) members = NULL;
  g_autoptr (GString) known = g_string_new (NULL);

  *ret_initials = NULL;
  if (text == NULL)
    return TRUE;
  members = ff_members_load (store, error);
  for (guint i = 0; members != NULL && i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      if (g_ascii_strcasecmp (member->initials, text) == 0)
        {
          *ret_initials = g_strdup (member->initials);
          return TRUE;
        }
      g_string_append_printf (known, "%s%s", known->len > 0 ? ", " : "", member->initials);
    }
  if (members != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("%s: nobody has the initials “%s”; accepted: %s"), name, text, known->str);
  return FALSE;
}

gboolean
ff_console_want_words (FfConsole *console, guint n, const char *what, GError **error)
{
  if (console->n_words == n)
    return TRUE;
  if (console->n_words < n)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s is missing"), what);
  else
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("“%s” is one word too many; accepted: %s"),
                 console->words[n], n > 0 ? what : _ ("options only"));
  return FALSE;
}

void
ff_console_line (FfConsole *console, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_string_append_vprintf (console->text, format, arguments);
  va_end (arguments);
  g_string_append_c (console->text, '\n');
}

#define COLUMNS 80

void
ff_console_wrap (FfConsole *console, guint indent, const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  glong column = 0;

  for (guint i = 0; words[i] != NULL; i++)
    {
      glong width = g_utf8_strlen (words[i], -1);
      gboolean breaks = i > 0 && column > (glong) indent && column + 1 + width > COLUMNS;

      if (breaks)
        g_string_append_printf (console->text, "\n%*s", (int) indent, "");
      else if (i > 0)
        g_string_append_c (console->text, ' ');
      column = breaks ? (glong) indent + width : column + (i > 0) + width;
      g_string_append (console->text, words[i]);
    }
  g_string_append_c (console->text, '\n');
}

void
ff_console_row (FfConsole *console, const char *label, const char *format, ...)
{
  const glong pad = 24 - g_utf8_strlen (label, -1);
  va_list arguments;

  g_string_append_printf (console->text, "%s%*s", label, (int) MAX (pad, 1), "");
  va_start (arguments, format);
  g_string_append_vprintf (console->text, format, arguments);
  va_end (arguments);
  g_string_append_c (console->text, '\n');
}

FfStore *
ff_console_open (FfConsole *console, FfRecordsAccess access, GError **error)
{
  return ff_records_open (console->data_dir, access, error);
}
