/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-csv.h"

#include <string.h>

/* A sign before a number is no formula. A text that has such an apostrophe of its own counts as well,
 * so that taking one away again is right for every text. */
static gboolean
looks_like_formula (const char *cell)
{
  while (*cell == '\'')
    cell++;
  if (*cell == '\0' || strchr ("=+-@\t\r", *cell) == NULL)
    return FALSE;
  return strspn (cell, "+-.0123456789") != strlen (cell);
}

static void
append_cell (GString *out, const char *cell)
{
  gboolean quoted = strpbrk (cell, "\",\r\n") != NULL;

  if (quoted)
    g_string_append_c (out, '"');
  if (looks_like_formula (cell))
    g_string_append_c (out, '\'');
  for (const char *p = cell; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *p);
    }
  if (quoted)
    g_string_append_c (out, '"');
}

void
ff_csv_row (GString *out, const char *const *cells)
{
  for (guint i = 0; cells[i] != NULL; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      append_cell (out, cells[i]);
    }
  g_string_append (out, "\r\n");
}

char *
ff_csv_plain (const char *cell)
{
  return g_strdup (*cell == '\'' && looks_like_formula (cell) ? cell + 1 : cell);
}
