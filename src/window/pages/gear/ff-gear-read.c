/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The reading half of ff-gear-fields.h: what was typed becomes a value, or a sentence. */
#include "ff-gear-fields.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-advise.h"
#include "ff-civil.h"
#include "ff-error.h"
#include "ff-filter.h"
#include "ff-number.h"
#include "ff-scale.h"

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return FALSE;
}

static gboolean
read_label (FfItem *item, const char *typed, GPtrArray *items, GError **error)
{
  glong length = g_utf8_strlen (typed, -1);
  g_autofree char *folded = g_utf8_casefold (typed, -1);

  if (length == 0)
    return refuse (error, _ ("A label is needed: it is what people say and what is written on it"));
  if (length > FF_GEAR_LABEL_LENGTH)
    return refuse (error, _ ("A label has 1 to 6 characters, so that it can be written on the item "
                             "and said on the radio"));
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *other = g_ptr_array_index (items, i);
      g_autofree char *theirs = g_utf8_casefold (other->label, -1);
      g_autofree char *sentence = NULL;

      if (g_str_equal (other->id, item->id) || !g_str_equal (theirs, folded))
        continue;
      /* Translators: a label that is taken: the label, and the kind of item that has it. */
      sentence = g_strdup_printf (_ ("“%s” is already written on another item (%s)"), other->label,
                                  ff_name_text (&ff_names_kind, (int) other->kind));
      return refuse (error, sentence);
    }
  ff_set_text (&item->label, typed);
  return TRUE;
}

/* A clear glass is said by its word, too. */
static gboolean
read_strength (FfItem *item, const char *typed, GError **error)
{
  FfFilterStrength strength = { FF_FILTER_BY_STOPS, 0, 0 };

  if (g_ascii_strcasecmp (typed, "clear") != 0 && !ff_filter_parse (typed, &strength, error))
    return FALSE;
  item->stops = strength.stops;
  item->stops_to = strength.stops_to;
  return TRUE;
}

/* "“2.9” is no step of the third-stop series; beside it stand 2.8 and 3.2". */
static gboolean
refuse_step (FfScale scale, const char *typed, double value, GError **error)
{
  guint last = ff_scale_size (scale) - 1;
  guint above = 1;
  g_autofree char *sentence = NULL;

  while (above < last && ff_scale_written (scale, above) < value)
    above++;
  /* Translators: a step that is none of the camera's series; then the two steps beside it. */
  sentence = g_strdup_printf (_ ("“%s” is no step of the third-stop series; beside it stand %s and "
                                 "%s"),
                              typed, ff_scale_label (scale, above - 1),
                              ff_scale_label (scale, above));
  return refuse (error, sentence);
}

/* The label of the step that was typed; NULL when it is none. */
static const char *
read_shutter (const char *typed, GError **error)
{
  int step = ff_scale_find (FF_SCALE_SHUTTER, typed);
  double seconds = 1;

  if (step >= 0)
    return ff_scale_label (FF_SCALE_SHUTTER, (guint) step);
  if (ff_shutter_parse (_ ("shutter"), typed, FALSE, &seconds, error))
    refuse_step (FF_SCALE_SHUTTER, typed, seconds, error);
  return NULL;
}

static const char *
read_iso (const char *typed, GError **error)
{
  int step = ff_scale_find (FF_SCALE_ISO, typed);
  double value = 100;

  if (step >= 0)
    return ff_scale_label (FF_SCALE_ISO, (guint) step);
  if (ff_number_parse (_ ("ISO"), typed, 25, 102400, &value, error))
    refuse_step (FF_SCALE_ISO, typed, value, error);
  return NULL;
}

static int
compare_apertures (gconstpointer a, gconstpointer b)
{
  double first = g_ascii_strtod (*(char *const *) a, NULL);
  double second = g_ascii_strtod (*(char *const *) b, NULL);

  return (first > second) - (first < second);
}

/* One aperture alone is what the lens is, whatever it is; steps of a ring are thirds. */
static char *
read_aperture (const char *typed, gboolean alone, GError **error)
{
  int step = ff_scale_find (FF_SCALE_APERTURE, typed);
  double written = 0, exact;

  if (step >= 0)
    return g_strdup (ff_scale_label (FF_SCALE_APERTURE, (guint) step));
  if (!ff_aperture_parse (_ ("aperture"), typed, &written, &exact, error))
    return NULL;
  if (!alone)
    {
      refuse_step (FF_SCALE_APERTURE, typed, written, error);
      return NULL;
    }
  return ff_number_format (written, 2);
}

/* The parts between commas (or blanks, as one types on a ring), without empty ones. */
static GPtrArray *
parts_of (const char *typed)
{
  g_auto (GStrv) split = g_strsplit_set (typed, ", ", -1);
  GPtrArray *parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; split[i] != NULL; i++)
    if (split[i][0] != '\0')
      g_ptr_array_add (parts, g_strdup (split[i]));
  return parts;
}

static void
set_joined (char **place, GPtrArray *parts)
{
  g_autofree char *joined = NULL;

  g_ptr_array_add (parts, NULL);
  joined = g_strjoinv (",", (char **) parts->pdata);
  ff_set_text (place, joined);
}

static gboolean
read_apertures (FfItem *item, const char *typed, GError **error)
{
  g_autoptr (GPtrArray) parts = parts_of (typed);
  g_autoptr (GPtrArray) labels = g_ptr_array_new_with_free_func (g_free);

  if (parts->len == 0)
    return refuse (error, _ ("An aperture is needed: “2.8”, or a list “2.8, 3.2, 3.5, 4”"));
  if (parts->len >= FF_MAX_APERTURES)
    return refuse (error, _ ("These are more apertures than there are thirds of a stop"));
  for (guint i = 0; i < parts->len; i++)
    {
      char *label = read_aperture (g_ptr_array_index (parts, i), parts->len == 1, error);

      if (label == NULL)
        return FALSE;
      g_ptr_array_add (labels, label);
    }
  g_ptr_array_sort (labels, compare_apertures);
  set_joined (&item->apertures, labels);
  return TRUE;
}

static gboolean
read_bases (FfItem *item, const char *typed, GError **error)
{
  g_autoptr (GPtrArray) parts = parts_of (typed);
  g_autoptr (GPtrArray) labels = g_ptr_array_new_with_free_func (g_free);

  if (parts->len > FF_MAX_BASES)
    return refuse (error, _ ("At most four base ISOs, the preferred one first"));
  for (guint i = 0; i < parts->len; i++)
    {
      const char *label = read_iso (g_ptr_array_index (parts, i), error);

      if (label == NULL)
        return FALSE;
      g_ptr_array_add (labels, g_strdup (label));
    }
  set_joined (&item->base_iso, labels);
  return TRUE;
}

static gboolean
read_number (FfItem *item,
             const FfGearField *asked,
             const FfField *field,
             const char *typed,
             GError **error)
{
  const char *what = g_dgettext (GETTEXT_PACKAGE, asked->label);
  gboolean nothing = typed[0] == '\0';

  if (nothing && (asked->how == FF_GEAR_WANTED
                  || (asked->how != FF_GEAR_COUNT
                      && (field->needed || field->type == FF_FIELD_WHOLE))))
    return refuse (error, _ ("A number is needed here"));
  if (field->type == FF_FIELD_REAL && nothing)
    *ff_field_real (field, item) = NAN;
  else if (field->type == FF_FIELD_REAL)
    return ff_number_parse (what, typed, field->low, field->high, ff_field_real (field, item),
                            error);
  else if (nothing)
    *ff_field_whole (field, item) = (int) field->low;
  else
    return ff_integer_parse (what, typed, (int) field->low, (int) field->high,
                             ff_field_whole (field, item), error);
  return TRUE;
}

static gboolean
read_date (FfItem *item, const FfField *field, const char *typed, GError **error)
{
  FfDate date;

  if (typed[0] != '\0' && !ff_date_parse (typed, &date, error))
    return FALSE;
  ff_set_text (ff_field_text (field, item), typed);
  return TRUE;
}

static gboolean
read_plain (FfItem *item,
            const FfGearField *asked,
            const FfField *field,
            const char *typed,
            GError **error)
{
  if (field->type == FF_FIELD_DATE)
    return read_date (item, field, typed, error);
  if (!ff_field_is_text (field))
    return read_number (item, asked, field, typed, error);
  if (strlen (typed) > field->high)
    return refuse (error, _ ("This is too long to be kept"));
  ff_set_text (ff_field_text (field, item), typed);
  return TRUE;
}

static gboolean
read_iso_field (FfItem *item, const FfField *field, const char *typed, GError **error)
{
  const char *label = read_iso (typed, error);

  if (label != NULL)
    *ff_field_whole (field, item) = (int) g_ascii_strtoll (label, NULL, 10);
  return label != NULL;
}

static gboolean
read_shutter_field (FfItem *item, const FfField *field, const char *typed, GError **error)
{
  const char *label = read_shutter (typed, error);

  if (label != NULL)
    ff_set_text (ff_field_text (field, item), label);
  return label != NULL;
}

gboolean
ff_gear_read (FfItem *item,
              const FfGearField *asked,
              const char *typed,
              GPtrArray *items,
              GError **error)
{
  const FfField *field = ff_gear_record_field (item->kind, asked);
  g_autofree char *bare = g_strstrip (g_strdup (typed));

  g_return_val_if_fail (field != NULL, FALSE);
  switch (asked->how)
    {
    case FF_GEAR_LABEL:
      return read_label (item, bare, items, error);
    case FF_GEAR_STRENGTH:
      return read_strength (item, bare, error);
    case FF_GEAR_APERTURES:
      return read_apertures (item, bare, error);
    case FF_GEAR_BASES:
      return read_bases (item, bare, error);
    case FF_GEAR_ISO:
      return read_iso_field (item, field, bare, error);
    case FF_GEAR_SHUTTER:
      return read_shutter_field (item, field, bare, error);
    case FF_GEAR_PLAIN:
    case FF_GEAR_COUNT:
    case FF_GEAR_WANTED:
    default:
      return read_plain (item, asked, field, bare, error);
    }
}
