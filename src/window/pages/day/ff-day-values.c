/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-values.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-number.h"

#define DECIMALS 3

/* ---- Shown ---- */

char *
ff_day_value_text (const FfField *field, gconstpointer record, double scale)
{
  const int whole = ff_field_is_text (field) ? 0 : *ff_field_whole (field, record);

  switch (field->type)
    {
    case FF_FIELD_REAL:
      return isnan (*ff_field_real (field, record))
                 ? g_strdup ("")
                 : ff_number_format (*ff_field_real (field, record) / scale, DECIMALS);
    case FF_FIELD_CLOCK:
      return whole == FF_NO_CLOCK ? g_strdup ("") : ff_clock_format (whole);
    case FF_FIELD_WHOLE:
      return g_strdup_printf ("%d", whole);
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      return g_strdup (*ff_field_text (field, record));
    case FF_FIELD_INSTANT:
    case FF_FIELD_FLAG:
    case FF_FIELD_NAME:
    default:
      return g_strdup ("");
    }
}

/* ---- Typed ---- */

/* A minus sign of typographers, a decimal comma. */
static char *
plain_number (const char *text)
{
  GString *plain = g_string_new (text);

  g_string_replace (plain, "−", "-", 0);
  g_string_replace (plain, ",", ".", 0);
  return g_strstrip (g_string_free (plain, FALSE));
}

static gboolean
set_real (const FfField *field, gpointer record, double scale, const char *text, GError **error)
{
  g_autofree char *plain = plain_number (text);
  double value = NAN;

  if (plain[0] != '\0'
      && !ff_number_parse (g_dgettext (GETTEXT_PACKAGE, field->words), plain, field->low / scale,
                           field->high / scale, &value, error))
    return FALSE;
  *ff_field_real (field, record) = value * scale;
  return TRUE;
}

static gboolean
set_whole (const FfField *field, gpointer record, const char *text, GError **error)
{
  g_autofree char *plain = plain_number (text);

  return ff_integer_parse (g_dgettext (GETTEXT_PACKAGE, field->words), plain, (int) field->low,
                           (int) field->high, ff_field_whole (field, record), error);
}

static gboolean
set_clock (const FfField *field, gpointer record, const char *text, GError **error)
{
  int minutes = FF_NO_CLOCK;

  if (text[0] != '\0' && !ff_day_clock_parse (text, &minutes, error))
    return FALSE;
  *ff_field_whole (field, record) = minutes;
  return TRUE;
}

static gboolean
set_date (const FfField *field, gpointer record, const char *text, GError **error)
{
  g_autofree char *date = g_strdup ("");

  if (text[0] != '\0')
    {
      g_clear_pointer (&date, g_free);
      if (!ff_day_date_parse (text, &date, error))
        return FALSE;
    }
  ff_set_text (ff_field_text (field, record), date);
  return TRUE;
}

gboolean
ff_day_value_set (
    const FfField *field, gpointer record, double scale, const char *text, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));

  switch (field->type)
    {
    case FF_FIELD_REAL:
      return set_real (field, record, scale, bare, error);
    case FF_FIELD_WHOLE:
      return set_whole (field, record, bare, error);
    case FF_FIELD_CLOCK:
      return set_clock (field, record, bare, error);
    case FF_FIELD_DATE:
      return set_date (field, record, bare, error);
    case FF_FIELD_TEXT:
      ff_set_text (ff_field_text (field, record), bare);
      return TRUE;
    case FF_FIELD_ID:
    case FF_FIELD_INSTANT:
    case FF_FIELD_FLAG:
    case FF_FIELD_NAME:
    default:
      g_return_val_if_reached (FALSE);
    }
}

/* ---- Clocks, dates, events ---- */

/* Reads up to `most` digits at *p. */
static gboolean
take_digits (const char **p, gsize most, int *ret_value, gsize *ret_n)
{
  const gsize n = strspn (*p, "0123456789");
  g_autofree char *digits = g_strndup (*p, n);

  if (n == 0 || n > most)
    return FALSE;
  *ret_value = (int) g_ascii_strtoll (digits, NULL, 10);
  *ret_n = n;
  *p += n;
  return TRUE;
}

static gboolean
read_clock (const char *text, int *ret_minutes)
{
  const char *p = text;
  int hour, minute = 0;
  gsize n;

  if (!take_digits (&p, 4, &hour, &n))
    return FALSE;
  if (n == 4)
    {
      minute = hour % 100;
      hour /= 100;
    }
  else if (n > 2 || (*p != ':' && *p != '.'))
    return FALSE;
  else
    {
      p++;
      if (!take_digits (&p, 2, &minute, &n) || n != 2)
        return FALSE;
    }
  *ret_minutes = hour * 60 + minute;
  return *p == '\0' && minute < 60 && *ret_minutes <= FF_CLOCK_MAX;
}

gboolean
ff_day_clock_parse (const char *text, int *ret_minutes, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  int minutes;

  if (!read_clock (bare, &minutes))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("“%s” is not a clock time; accepted: as 16:30 or 1630, and past midnight as "
                      "25:30"),
                   bare);
      return FALSE;
    }
  *ret_minutes = minutes;
  return TRUE;
}

/* Day, month, year with points between them; blanks do no harm. */
static char *
iso_from_points (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, ".", 3);
  int numbers[3];

  if (g_strv_length (parts) != 3)
    return NULL;
  for (guint i = 0; i < 3; i++)
    {
      const char *p = g_strstrip (parts[i]);
      gsize n;

      if (!take_digits (&p, i < 2 ? 2 : 4, &numbers[i], &n) || *p != '\0' || (i == 2 && n != 4))
        return NULL;
    }
  return g_strdup_printf ("%04d-%02d-%02d", numbers[2], numbers[1], numbers[0]);
}

gboolean
ff_day_date_parse (const char *text, char **ret_date, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  g_autofree char *iso = iso_from_points (bare);
  FfDate date;

  if (strchr (bare, '/') != NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("“%s” can be read in two ways; accepted: YYYY-MM-DD, as 2027-09-18, or day, "
                      "month and year with points, as 18.9.2027"),
                   bare);
      return FALSE;
    }
  if (!ff_date_parse (iso != NULL ? iso : bare, &date, error))
    return FALSE;
  *ret_date = ff_date_format (date);
  return TRUE;
}

gboolean
ff_day_event_parse (const char *text, int *ret_minutes, char **ret_words, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  const gsize at = strcspn (bare, " ");
  g_autofree char *clock = g_strndup (bare, at);
  int minutes;

  if (bare[at] == '\0' || !read_clock (clock, &minutes))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("an event is a time and what happens, as “17:14 ferry passes”"));
      return FALSE;
    }
  *ret_minutes = minutes;
  *ret_words = g_strstrip (g_strdup (bare + at));
  return TRUE;
}

/* ---- Words ---- */

const char *
ff_day_refusal (const char *whose, const FfField *field, const char *message)
{
  const char *words = field != NULL ? g_dgettext (GETTEXT_PACKAGE, field->words) : "";
  g_autofree char *with_field = g_strdup_printf ("%s, %s: ", whose, words);
  g_autofree char *with_record = g_strdup_printf ("%s: ", whose);
  g_autofree char *field_alone = g_strdup_printf ("%s: ", words);

  if (g_str_has_prefix (message, with_field))
    return message + strlen (with_field);
  if (g_str_has_prefix (message, with_record))
    return message + strlen (with_record);
  return g_str_has_prefix (message, field_alone) ? message + strlen (field_alone) : message;
}

static gboolean
is_taken (const char *initials, const char *const *taken)
{
  for (; *taken != NULL; taken++)
    {
      g_autofree char *a = g_utf8_casefold (*taken, -1);
      g_autofree char *b = g_utf8_casefold (initials, -1);

      if (g_str_equal (a, b))
        return TRUE;
    }
  return FALSE;
}

static char *
two_letters (gunichar first, gunichar second)
{
  GString *letters = g_string_new (NULL);

  g_string_append_unichar (letters, g_unichar_toupper (first));
  g_string_append_unichar (letters, g_unichar_toupper (second));
  return g_string_free (letters, FALSE);
}

/* First letters of the first and last word; then of the first letter with each other letter of the
 * name; then with each of the alphabet. */
static gunichar *
second_letters (const char *name, gunichar *ret_first)
{
  GArray *letters = g_array_new (TRUE, TRUE, sizeof (gunichar));
  const char *last = strrchr (name, ' ');
  gunichar letter = last != NULL ? g_utf8_get_char (last + 1) : 0;

  if (g_unichar_isalpha (letter))
    g_array_append_val (letters, letter);
  *ret_first = 'X';
  for (const char *p = name; *p != '\0'; p = g_utf8_next_char (p))
    {
      letter = g_utf8_get_char (p);
      if (g_unichar_isalpha (letter) && p == name)
        *ret_first = letter;
      else if (g_unichar_isalpha (letter))
        g_array_append_val (letters, letter);
    }
  for (letter = 'A'; letter <= 'Z'; letter++)
    g_array_append_val (letters, letter);
  return (gunichar *) (gpointer) g_array_free (letters, FALSE);
}

char *
ff_day_initials (const char *name, const char *const *taken)
{
  g_autofree char *bare = g_strstrip (g_strdup (name));
  gunichar first;
  g_autofree gunichar *seconds = second_letters (bare, &first);

  for (guint i = 0; seconds[i] != 0; i++)
    {
      char *initials = two_letters (first, seconds[i]);

      if (!is_taken (initials, taken))
        return initials;
      g_free (initials);
    }
  return two_letters ('X', 'X');
}
