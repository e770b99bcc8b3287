/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-json-check.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"

typedef struct {
  const char *text; /* whole; UTF-8 */
  const char *at;
  int depth;
  GError **error;
} Scan;

static gboolean scan_value (Scan *scan);

/* Columns count characters, from 1. */
static gboolean
refuse (Scan *scan, const char *wanted)
{
  const char *line_start = scan->text;
  int line = 1;
  g_autofree char *found = g_strndup (scan->at, (gsize) (g_utf8_next_char (scan->at) - scan->at));

  for (const char *p = scan->text; p < scan->at; p++)
    if (*p == '\n')
      {
        line++;
        line_start = p + 1;
      }
  g_set_error (scan->error, FF_ERROR, FF_ERROR_INPUT,
               _ ("line %d, column %d: found %s%s%s; accepted: %s"), line,
               (int) g_utf8_pointer_to_offset (line_start, scan->at) + 1,
               *scan->at != '\0' ? "“" : "", *scan->at != '\0' ? found : _ ("the end of the file"),
               *scan->at != '\0' ? "”" : "", wanted);
  return FALSE;
}

static void
skip_blanks (Scan *scan)
{
  scan->at += strspn (scan->at, " \t\r\n");
}

static gboolean
expect (Scan *scan, char wanted)
{
  const char name[] = { wanted, '\0' };

  skip_blanks (scan);
  if (*scan->at != wanted)
    return refuse (scan, name);
  scan->at++;
  return TRUE;
}

/* Four hexadecimal digits, or -1. */
static int
hex4 (const char *text)
{
  int value = 0;

  for (int i = 0; i < 4; i++)
    {
      if (!g_ascii_isxdigit (text[i]))
        return -1;
      value = value * 16 + g_ascii_xdigit_value (text[i]);
    }
  return value;
}

/* After the backslash and the u. */
static gboolean
scan_code (Scan *scan)
{
  int code = hex4 (scan->at);
  int low;

  if (code <= 0)
    return refuse (scan, _ ("four hexadecimal digits, not all 0"));
  if (code >= 0xdc00 && code <= 0xdfff)
    return refuse (scan, _ ("a whole character, not the second half of one"));
  scan->at += 4;
  if (code < 0xd800 || code > 0xdbff)
    return TRUE;
  low = scan->at[0] == '\\' && scan->at[1] == 'u' ? hex4 (scan->at + 2) : -1;
  if (low < 0xdc00 || low > 0xdfff)
    return refuse (scan, _ ("the second half of the character"));
  scan->at += 6;
  return TRUE;
}

static gboolean
scan_escape (Scan *scan)
{
  scan->at++;
  if (*scan->at == 'u')
    {
      scan->at++;
      return scan_code (scan);
    }
  if (*scan->at == '\0' || strchr ("\"\\/bfnrt", *scan->at) == NULL)
    return refuse (scan, "\" \\ / b f n r t u");
  scan->at++;
  return TRUE;
}

static gboolean
scan_string (Scan *scan)
{
  if (!expect (scan, '"'))
    return FALSE;
  while (*scan->at != '"')
    {
      if ((guchar) *scan->at < 0x20)
        return refuse (scan, _ ("the rest of the text and its closing quote"));
      if (*scan->at != '\\')
        scan->at++;
      else if (!scan_escape (scan))
        return FALSE;
    }
  scan->at++;
  return TRUE;
}

static gboolean
scan_digits (Scan *scan)
{
  if (!g_ascii_isdigit (*scan->at))
    return refuse (scan, _ ("a digit"));
  while (g_ascii_isdigit (*scan->at))
    scan->at++;
  return TRUE;
}

static gboolean
scan_number (Scan *scan)
{
  const char *start = scan->at;
  gsize whole;

  if (*scan->at == '-')
    scan->at++;
  if (scan->at[0] == '0' && g_ascii_isdigit (scan->at[1]))
    return refuse (scan, _ ("a number without leading 0"));
  if (!scan_digits (scan))
    return FALSE;
  whole = (gsize) (scan->at - start);
  if (*scan->at == '.')
    {
      scan->at++;
      if (!scan_digits (scan))
        return FALSE;
    }
  if (*scan->at == 'e' || *scan->at == 'E')
    {
      scan->at++;
      if (*scan->at == '+' || *scan->at == '-')
        scan->at++;
      if (!scan_digits (scan))
        return FALSE;
    }
  /* No fact needs more digits; a longer one would overflow further on. */
  if (whole <= 15 && scan->at - start <= 30)
    return TRUE;
  scan->at = start;
  return refuse (scan, _ ("a shorter number, of at most 15 digits before the point"));
}

static gboolean
scan_word (Scan *scan)
{
  static const char *const words[] = { "true", "false", "null" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_has_prefix (scan->at, words[i]))
      {
        scan->at += strlen (words[i]);
        return TRUE;
      }
  return refuse (scan, _ ("a value"));
}

/* Names as they are written: one with an escape in it is no name that any file of ours has, so two
 * ways to write one name can't hide here. */
static gboolean
scan_member (Scan *scan, GHashTable *names)
{
  const char *start;
  char *name;

  skip_blanks (scan);
  start = scan->at;
  if (!scan_string (scan))
    return FALSE;
  name = g_strndup (start + 1, (gsize) (scan->at - start - 2));
  if (strchr (name, '\\') != NULL || !g_hash_table_add (names, name))
    {
      if (strchr (name, '\\') != NULL)
        g_free (name);
      scan->at = start;
      return refuse (scan, _ ("a plain name that the object does not have yet"));
    }
  return expect (scan, ':') && scan_value (scan);
}

static gboolean
scan_object (Scan *scan)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  scan->at++;
  skip_blanks (scan);
  if (*scan->at == '}')
    {
      scan->at++;
      return TRUE;
    }
  for (;;)
    {
      if (!scan_member (scan, names))
        return FALSE;
      skip_blanks (scan);
      if (*scan->at == '}')
        {
          scan->at++;
          return TRUE;
        }
      if (*scan->at != ',')
        return refuse (scan, _ (", or }"));
      scan->at++;
    }
}

static gboolean
scan_array (Scan *scan)
{
  scan->at++;
  skip_blanks (scan);
  if (*scan->at == ']')
    {
      scan->at++;
      return TRUE;
    }
  for (;;)
    {
      if (!scan_value (scan))
        return FALSE;
      skip_blanks (scan);
      if (*scan->at == ']')
        {
          scan->at++;
          return TRUE;
        }
      if (*scan->at != ',')
        return refuse (scan, _ (", or ]"));
      scan->at++;
    }
}

static gboolean
scan_nested (Scan *scan)
{
  gboolean good;

  if (scan->depth == FF_JSON_DEPTH_MAX)
    return refuse (scan, _ ("a value that is no deeper level"));
  scan->depth++;
  good = *scan->at == '{' ? scan_object (scan) : scan_array (scan);
  scan->depth--;
  return good;
}

static gboolean
scan_value (Scan *scan)
{
  skip_blanks (scan);
  if (*scan->at == '{' || *scan->at == '[')
    return scan_nested (scan);
  if (*scan->at == '"')
    return scan_string (scan);
  if (*scan->at == '-' || g_ascii_isdigit (*scan->at))
    return scan_number (scan);
  return scan_word (scan);
}

gboolean
ff_json_check (const char *text, GError **error)
{
  Scan scan = { text, text, 0, error };

  if (!scan_value (&scan))
    return FALSE;
  skip_blanks (&scan);
  return *scan.at == '\0' || refuse (&scan, _ ("the end of the file"));
}
