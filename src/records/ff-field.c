/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-field.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-number.h"

/* The one place where const is given up: the same field is read and written. */
static gpointer
place_of (const FfField *field, gconstpointer record)
{
  return (guint8 *) record + field->offset;
}

char **
ff_field_text (const FfField *field, gconstpointer record)
{
  return place_of (field, record);
}

int *
ff_field_whole (const FfField *field, gconstpointer record)
{
  return place_of (field, record);
}

double *
ff_field_real (const FfField *field, gconstpointer record)
{
  return place_of (field, record);
}

gint64 *
ff_field_instant (const FfField *field, gconstpointer record)
{
  return place_of (field, record);
}

gboolean
ff_field_is_text (const FfField *field)
{
  return field->type == FF_FIELD_ID || field->type == FF_FIELD_TEXT
         || field->type == FF_FIELD_DATE;
}

void
ff_set_text (char **place, const char *text)
{
  char *copy = g_strdup (text != NULL ? text : "");

  g_free (*place);
  *place = copy;
}

static void
init_field (const FfField *field, gpointer record)
{
  switch (field->type)
    {
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      *ff_field_text (field, record) = g_strdup ("");
      break;
    case FF_FIELD_REAL:
      *ff_field_real (field, record) = field->needed ? MAX (field->low, 0) : NAN;
      break;
    case FF_FIELD_INSTANT:
      *ff_field_instant (field, record) = 0;
      break;
    case FF_FIELD_CLOCK:
      *ff_field_whole (field, record) = FF_NO_CLOCK;
      break;
    case FF_FIELD_WHOLE:
    case FF_FIELD_FLAG:
    case FF_FIELD_NAME:
    default:
      *ff_field_whole (field, record) = (int) field->low;
      break;
    }
}

void
ff_fields_init (const FfFields *fields, gpointer record)
{
  for (guint i = 0; i < fields->n_fields; i++)
    init_field (&fields->fields[i], record);
}

void
ff_fields_clear (const FfFields *fields, gpointer record)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (ff_field_is_text (&fields->fields[i]))
      g_clear_pointer (ff_field_text (&fields->fields[i], record), g_free);
}

static gboolean
refuse (const FfField *field, const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: a record ("shot A"), its field ("minutes"), what is wrong. */
               _ ("%s, %s: %s"), whose, g_dgettext (GETTEXT_PACKAGE, field->words), what);
  return FALSE;
}

/* Lines and tabs are what people type; other control characters come from broken files. */
static gboolean
is_clean (const char *text)
{
  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_iscntrl (g_utf8_get_char (p)) && *p != '\n' && *p != '\t')
      return FALSE;
  return TRUE;
}

static gboolean
check_text (const FfField *field, gconstpointer record, const char *whose, GError **error)
{
  const char *text = *ff_field_text (field, record);
  g_autoptr (GError) problem = NULL;
  FfDate date;

  if (text == NULL || *text == '\0')
    return !field->needed || refuse (field, whose, _ ("it is missing"), error);
  if (strlen (text) > (gsize) field->high)
    {
      g_autofree char *what
          = g_strdup_printf (_ ("it is too long; accepted: up to %d bytes"), (int) field->high);

      return refuse (field, whose, what, error);
    }
  if (!is_clean (text))
    return refuse (field, whose, _ ("it holds bytes that are no text; accepted: UTF-8"), error);
  if (field->type == FF_FIELD_ID && !g_uuid_string_is_valid (text))
    return refuse (field, whose, _ ("it is not an id; accepted: a UUID"), error);
  if (field->type == FF_FIELD_DATE && !ff_date_parse (text, &date, &problem))
    return refuse (field, whose, problem->message, error);
  return TRUE;
}

static gboolean
check_range (const FfField *field, double value, const char *whose, GError **error)
{
  g_autofree char *shown = ff_number_format (value, 6);
  g_autofree char *low = ff_number_format (field->low, 6);
  g_autofree char *high = ff_number_format (field->high, 6);
  g_autofree char *what = NULL;

  if (value >= field->low && value <= field->high)
    return TRUE;
  what = g_strdup_printf (_ ("%s is out of range; accepted: %s to %s"), shown, low, high);
  return refuse (field, whose, what, error);
}

static gboolean
check_clock (const FfField *field, int clock, const char *whose, GError **error)
{
  if (clock == FF_NO_CLOCK)
    return !field->needed || refuse (field, whose, _ ("it is missing"), error);
  return check_range (field, clock, whose, error);
}

static gboolean
check_name (const FfField *field, int value, const char *whose, GError **error)
{
  if (value >= 0 && (guint) value < field->names->n_names)
    return TRUE;
  return refuse (field, whose, _ ("it is none of the accepted words"), error);
}

static gboolean
check_field (const FfField *field, gconstpointer record, const char *whose, GError **error)
{
  switch (field->type)
    {
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      return check_text (field, record, whose, error);
    case FF_FIELD_REAL:
      if (isnan (*ff_field_real (field, record)))
        return !field->needed || refuse (field, whose, _ ("it is missing"), error);
      return check_range (field, *ff_field_real (field, record), whose, error);
    case FF_FIELD_INSTANT:
      return check_range (field, (double) *ff_field_instant (field, record), whose, error);
    case FF_FIELD_CLOCK:
      return check_clock (field, *ff_field_whole (field, record), whose, error);
    case FF_FIELD_NAME:
      return check_name (field, *ff_field_whole (field, record), whose, error);
    case FF_FIELD_WHOLE:
    case FF_FIELD_FLAG:
    default:
      return check_range (field, *ff_field_whole (field, record), whose, error);
    }
}

gboolean
ff_fields_check (const FfFields *fields, gconstpointer record, const char *whose, GError **error)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (!check_field (&fields->fields[i], record, whose, error))
      return FALSE;
  return TRUE;
}

static gboolean
field_equal (const FfField *field, gconstpointer a, gconstpointer b)
{
  if (ff_field_is_text (field))
    return g_strcmp0 (*ff_field_text (field, a), *ff_field_text (field, b)) == 0;
  if (field->type == FF_FIELD_REAL)
    {
      double x = *ff_field_real (field, a);
      double y = *ff_field_real (field, b);

      return isnan (x) ? isnan (y) : x >= y && x <= y;
    }
  if (field->type == FF_FIELD_INSTANT)
    return *ff_field_instant (field, a) == *ff_field_instant (field, b);
  return *ff_field_whole (field, a) == *ff_field_whole (field, b);
}

gboolean
ff_fields_equal (const FfFields *fields, gconstpointer a, gconstpointer b)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (!field_equal (&fields->fields[i], a, b))
      return FALSE;
  return TRUE;
}

const FfField *
ff_fields_find (const FfFields *fields, const char *name)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (strcmp (fields->fields[i].name, name) == 0)
      return &fields->fields[i];
  return NULL;
}
