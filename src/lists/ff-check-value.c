/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-check-value.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"

#define LONGEST_UNIT 12
#define MOST 1e9

/* The grammar */

static gboolean
refuse (GError **error, const char *text)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("“%s” is not a value; accepted: `16.4 to 16.8 V`, `at least 16.4 V`, "
                  "`at most 8 m/s`, a unit alone, `number` or `words`"),
               text);
  return FALSE;
}

/* A number at the front; `rest` goes behind it and the blanks that follow. */
static gboolean
take_number (const char **rest, double *ret_number)
{
  gsize length = strspn (*rest, "+-.0123456789");
  g_autofree char *digits = g_strndup (*rest, length);

  if (length == 0 || !ff_number_parse ("", digits, -MOST, MOST, ret_number, NULL))
    return FALSE;
  *rest += length;
  *rest += strspn (*rest, " ");
  return TRUE;
}

static gboolean
take_word (const char **rest, const char *word)
{
  if (!g_str_has_prefix (*rest, word))
    return FALSE;
  *rest += strlen (word);
  return TRUE;
}

static gboolean
is_unit (const char *text)
{
  return g_utf8_strlen (text, -1) <= LONGEST_UNIT && strpbrk (text, "`\n") == NULL
         && strspn (text, "+-.0123456789") == 0;
}

static gboolean
take_bounds (const char **rest, FfCheckValue *value)
{
  if (take_word (rest, "at least "))
    return take_number (rest, &value->low);
  if (take_word (rest, "at most "))
    return take_number (rest, &value->high);
  if (strspn (*rest, "+-.0123456789") == 0)
    return TRUE;
  return take_number (rest, &value->low) && take_word (rest, "to ")
         && take_number (rest, &value->high) && value->low <= value->high;
}

gboolean
ff_check_value_parse (const char *text, FfCheckValue *ret_value, GError **error)
{
  FfCheckValue value = { FF_VALUE_NUMBER, NAN, NAN, NULL };
  g_autofree char *trimmed = g_strstrip (g_strdup (text));
  const char *rest = trimmed;

  if (*rest == '\0')
    return refuse (error, text);
  if (g_str_equal (rest, "words"))
    value.sort = FF_VALUE_WORDS;
  else if (!g_str_equal (rest, "number"))
    {
      if (!take_bounds (&rest, &value) || !is_unit (rest))
        return refuse (error, text);
      value.unit = g_strdup (rest);
    }
  if (value.unit == NULL)
    value.unit = g_strdup ("");
  *ret_value = value;
  return TRUE;
}

char *
ff_check_value_format (const FfCheckValue *value)
{
  g_autofree char *low = ff_number_format (value->low, 6);
  g_autofree char *high = ff_number_format (value->high, 6);
  const char *unit = value->unit != NULL ? value->unit : "";
  const char *blank = unit[0] != '\0' ? " " : "";

  if (value->sort != FF_VALUE_NUMBER)
    return g_strdup (value->sort == FF_VALUE_WORDS ? "words" : "");
  if (isfinite (value->low) && isfinite (value->high))
    return g_strdup_printf ("%s to %s%s%s", low, high, blank, unit);
  if (isfinite (value->low))
    return g_strdup_printf ("at least %s%s%s", low, blank, unit);
  if (isfinite (value->high))
    return g_strdup_printf ("at most %s%s%s", high, blank, unit);
  return g_strdup (unit[0] != '\0' ? unit : "number");
}

void
ff_check_value_clear (FfCheckValue *value)
{
  g_clear_pointer (&value->unit, g_free);
}

static gboolean
same_bound (double a, double b)
{
  return (isnan (a) && isnan (b)) || a == b;
}

gboolean
ff_check_value_equal (const FfCheckValue *a, const FfCheckValue *b)
{
  if (a->sort != b->sort)
    return FALSE;
  return a->sort != FF_VALUE_NUMBER
         || (same_bound (a->low, b->low) && same_bound (a->high, b->high)
             && g_strcmp0 (a->unit, b->unit) == 0);
}

/* What was said */

gboolean
ff_said_number (const FfCheckValue *value, const char *said, double *ret_number)
{
  g_autofree char *text = g_strdelimit (g_strstrip (g_strdup (said)), ",", '.');
  const char *rest = text;
  double number;

  if (!take_number (&rest, &number))
    return FALSE;
  if (*rest != '\0' && (value->unit == NULL || g_ascii_strcasecmp (rest, value->unit) != 0))
    return FALSE;
  *ret_number = number;
  return TRUE;
}

gboolean
ff_said_within (const FfCheckValue *value, const char *said)
{
  double number;

  if (value->sort != FF_VALUE_NUMBER)
    return TRUE;
  return ff_said_number (value, said, &number) && (isnan (value->low) || number >= value->low)
         && (isnan (value->high) || number <= value->high);
}

/* Case and blanks away. */
static char *
fold (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  GString *bare = g_string_new (NULL);

  for (const char *p = folded; *p != '\0'; p = g_utf8_next_char (p))
    if (!g_unichar_isspace (g_utf8_get_char (p)))
      g_string_append_unichar (bare, g_utf8_get_char (p));
  return g_string_free (bare, FALSE);
}

/* A label that ends in just these digits. */
static gboolean
ends_in (const char *label, const char *digits)
{
  gsize label_length = strlen (label), length = strlen (digits);

  return length > 0 && strspn (digits, "0123456789") == length && g_str_has_suffix (label, digits)
         && label_length > length && g_ascii_isalpha (label[label_length - length - 1]);
}

/* A measure that begins with just this number: "5" and "5.0" with "5stops". */
static gboolean
measures (const char *measure, const char *said)
{
  const char *rest = measure, *said_rest = said;
  double known, number;

  return take_number (&rest, &known) && take_number (&said_rest, &number) && *said_rest == '\0'
         && fabs (known - number) < 1e-6;
}

gboolean
ff_said_agrees (const char *expected, const char *said)
{
  g_auto (GStrv) ways = g_strsplit (expected, " / ", -1);
  g_autofree char *folded = fold (said);

  for (guint i = 0; ways[i] != NULL; i++)
    {
      g_autofree char *way = fold (ways[i]);

      if (folded[0] != '\0'
          && (g_str_equal (way, folded) || ends_in (way, folded) || measures (way, folded)))
        return TRUE;
    }
  return FALSE;
}
