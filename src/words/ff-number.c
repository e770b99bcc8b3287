/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"

/* g_ascii_strtod() also takes hexadecimal, "inf" and "nan": none of them is a typed measure. */
static gboolean
read_plain (const char *text, double *ret_value)
{
  char *end = NULL;
  double value;

  if (*text == '\0' || strspn (text, "+-.0123456789eE") != strlen (text))
    return FALSE;
  value = g_ascii_strtod (text, &end);
  if (end == text || *end != '\0' || !isfinite (value))
    return FALSE;
  *ret_value = value;
  return TRUE;
}

gboolean
ff_number_parse (const char *what,
                 const char *text,
                 double low,
                 double high,
                 double *ret_value,
                 GError **error)
{
  g_autofree char *low_text = ff_number_format (low, 6);
  g_autofree char *high_text = ff_number_format (high, 6);
  double value;

  if (!read_plain (text, &value))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s: “%s” is not a number; accepted: %s to %s"), what, text, low_text,
                   high_text);
      return FALSE;
    }
  if (value < low || value > high)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s: %s is out of range; accepted: %s to %s"), what, text, low_text,
                   high_text);
      return FALSE;
    }
  *ret_value = value;
  return TRUE;
}

gboolean
ff_integer_parse (const char *what,
                  const char *text,
                  int low,
                  int high,
                  int *ret_value,
                  GError **error)
{
  double value;

  if (!ff_number_parse (what, text, low, high, &value, error))
    return FALSE;
  if (value != floor (value))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s: “%s” is not a whole number; accepted: %d to %d"), what, text, low, high);
      return FALSE;
    }
  *ret_value = (int) value;
  return TRUE;
}

char *
ff_number_format (double value, int decimals)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE + 32];
  g_autofree char *format = g_strdup_printf ("%%.%df", decimals);
  char *end;

  if (!isfinite (value))
    return g_strdup ("–");
  if (fabs (value) >= 1e15)
    return g_strdup (g_ascii_formatd (buffer, sizeof buffer, "%.6g", value));
  g_ascii_formatd (buffer, sizeof buffer, format, value);
  if (strchr (buffer, '.') != NULL)
    {
      end = buffer + strlen (buffer);
      while (end[-1] == '0')
        *--end = '\0';
      if (end[-1] == '.')
        *--end = '\0';
    }
  return g_strdup (strcmp (buffer, "-0") == 0 ? "0" : buffer);
}

char *
ff_stops_format (double stops)
{
  g_autofree char *number = ff_number_format (stops, 1);

  /* Translators: the photographer's unit of light: a doubling. A number, as 1 or 3.1. */
  return g_strdup_printf (g_str_equal (number, "1") ? _ ("%s stop") : _ ("%s stops"), number);
}
