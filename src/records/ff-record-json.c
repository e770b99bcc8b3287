/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-record-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-number.h"

/* ---- Out ---- */

static void
write_text (FfJson *json, const char *name, const char *text)
{
  ff_json_text (json, name, text != NULL && *text != '\0' ? text : NULL);
}

static void
write_clock (FfJson *json, const char *name, int minutes)
{
  g_autofree char *text = minutes != FF_NO_CLOCK ? ff_clock_format (minutes) : NULL;

  ff_json_text (json, name, text);
}

static void
write_instant (FfJson *json, const char *name, gint64 instant)
{
  g_autofree char *text = ff_instant_format ((double) instant, NULL);

  ff_json_text (json, name, text);
}

static void
write_field (FfJson *json, const FfField *field, gconstpointer record)
{
  switch (field->type)
    {
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      write_text (json, field->name, *ff_field_text (field, record));
      break;
    case FF_FIELD_REAL:
      ff_json_number (json, field->name, *ff_field_real (field, record));
      break;
    case FF_FIELD_INSTANT:
      write_instant (json, field->name, *ff_field_instant (field, record));
      break;
    case FF_FIELD_CLOCK:
      write_clock (json, field->name, *ff_field_whole (field, record));
      break;
    case FF_FIELD_FLAG:
      ff_json_flag (json, field->name, *ff_field_whole (field, record) != 0);
      break;
    case FF_FIELD_NAME:
      ff_json_text (json, field->name,
                    ff_name_token (field->names, *ff_field_whole (field, record)));
      break;
    case FF_FIELD_WHOLE:
    default:
      ff_json_integer (json, field->name, *ff_field_whole (field, record));
      break;
    }
}

void
ff_json_fields (FfJson *json, const FfFields *fields, guint first, gconstpointer record)
{
  for (guint i = first; i < fields->n_fields; i++)
    write_field (json, &fields->fields[i], record);
}

/* ---- In ---- */

static char *
show (JsonNode *node)
{
  g_autofree char *text = NULL;

  if (node == NULL)
    return g_strdup (_ ("nothing"));
  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup (_ ("an object"));
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup (_ ("a list"));
  /* JsonGenerator would write 97.2 as 97.200000000000003. */
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_DOUBLE)
    return ff_number_format (json_node_get_double (node), 6);
  text = json_to_string (node, FALSE);
  /* Long enough to recognise it. */
  if (g_utf8_strlen (text, -1) > 60)
    {
      g_autofree char *start = g_utf8_substring (text, 0, 60);

      return g_strconcat (start, "…", NULL);
    }
  return g_steal_pointer (&text);
}

gboolean
ff_json_refuse (const char *path,
                const char *name,
                JsonNode *found,
                const char *wanted,
                GError **error)
{
  g_autofree char *shown = show (found);

  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: place in a file ("shots[2].minutes"), what is there, what may be. */
               _ ("%s%s%s: found %s; accepted: %s"), path,
               *path != '\0' && *name != '\0' ? "." : "", name, shown, wanted);
  return FALSE;
}

/* A value node, or NULL when it is null or anything else. */
static gboolean
holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

static gboolean
read_text (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  if (!holds (node, G_TYPE_STRING))
    return ff_json_refuse (path, field->name, node, _ ("a text"), error);
  ff_set_text (ff_field_text (field, record), json_node_get_string (node));
  return TRUE;
}

/* Before a number is narrowed to the type of the field. */
static gboolean
in_range (const FfField *field, double value, const char *path, JsonNode *node, GError **error)
{
  g_autofree char *low = NULL, *high = NULL, *wanted = NULL;

  if (value >= field->low && value <= field->high)
    return TRUE;
  low = ff_number_format (field->low, 6);
  high = ff_number_format (field->high, 6);
  wanted = g_strdup_printf (_ ("%s to %s"), low, high);
  return ff_json_refuse (path, field->name, node, wanted, error);
}

static gboolean
read_real (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  if (!holds (node, G_TYPE_DOUBLE) && !holds (node, G_TYPE_INT64))
    return ff_json_refuse (path, field->name, node, _ ("a number"), error);
  if (!in_range (field, json_node_get_double (node), path, node, error))
    return FALSE;
  *ff_field_real (field, record) = json_node_get_double (node);
  return TRUE;
}

static gboolean
read_whole (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  if (!holds (node, G_TYPE_INT64))
    return ff_json_refuse (path, field->name, node, _ ("a whole number"), error);
  if (!in_range (field, (double) json_node_get_int (node), path, node, error))
    return FALSE;
  *ff_field_whole (field, record) = (int) json_node_get_int (node);
  return TRUE;
}

static gboolean
read_flag (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  if (!holds (node, G_TYPE_BOOLEAN))
    return ff_json_refuse (path, field->name, node, "true, false", error);
  *ff_field_whole (field, record) = json_node_get_boolean (node);
  return TRUE;
}

static gboolean
read_name (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  g_autoptr (GError) problem = NULL;

  if (!holds (node, G_TYPE_STRING))
    return ff_json_refuse (path, field->name, node, _ ("a word"), error);
  if (ff_name_parse (field->names, json_node_get_string (node), ff_field_whole (field, record),
                     &problem))
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s.%s: %s", path, field->name, problem->message);
  return FALSE;
}

/* Hours run on past midnight up to the end of the next day. */
static gboolean
read_clock (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  const char *text = holds (node, G_TYPE_STRING) ? json_node_get_string (node) : "";
  gboolean good = strlen (text) == 5 && text[2] == ':';
  int minutes;

  for (int i = 0; good && i < 5; i++)
    good = i == 2 || g_ascii_isdigit (text[i]);
  if (!good || text[3] > '5')
    return ff_json_refuse (path, field->name, node, _ ("a clock, HH:MM"), error);
  minutes = ((text[0] - '0') * 10 + text[1] - '0') * 60 + (text[3] - '0') * 10 + text[4] - '0';
  if (minutes > FF_CLOCK_MAX)
    return ff_json_refuse (path, field->name, node, _ ("a clock up to 48:00"), error);
  *ff_field_whole (field, record) = minutes;
  return TRUE;
}

static gboolean
read_instant (const FfField *field,
              gpointer record,
              JsonNode *node,
              const char *path,
              GError **error)
{
  if (holds (node, G_TYPE_STRING)
      && ff_instant_parse (json_node_get_string (node), ff_field_instant (field, record), NULL))
    return TRUE;
  return ff_json_refuse (path, field->name, node, _ ("a time, ISO 8601 with an offset or Z"),
                         error);
}

static gboolean
read_value (const FfField *field, gpointer record, JsonNode *node, const char *path, GError **error)
{
  switch (field->type)
    {
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      return read_text (field, record, node, path, error);
    case FF_FIELD_REAL:
      return read_real (field, record, node, path, error);
    case FF_FIELD_INSTANT:
      return read_instant (field, record, node, path, error);
    case FF_FIELD_CLOCK:
      return read_clock (field, record, node, path, error);
    case FF_FIELD_FLAG:
      return read_flag (field, record, node, path, error);
    case FF_FIELD_NAME:
      return read_name (field, record, node, path, error);
    case FF_FIELD_WHOLE:
    default:
      return read_whole (field, record, node, path, error);
    }
}

/* What is not given. */
static void
read_absent (const FfField *field, gpointer record)
{
  if (ff_field_is_text (field))
    ff_set_text (ff_field_text (field, record), "");
  else if (field->type == FF_FIELD_REAL)
    *ff_field_real (field, record) = NAN;
  else if (field->type == FF_FIELD_CLOCK)
    *ff_field_whole (field, record) = FF_NO_CLOCK;
}

gboolean
ff_json_read_fields (JsonObject *object,
                     const FfFields *fields,
                     guint first,
                     gpointer record,
                     const char *path,
                     GError **error)
{
  for (guint i = first; i < fields->n_fields; i++)
    {
      const FfField *field = &fields->fields[i];
      JsonNode *node = json_object_get_member (object, field->name);
      gboolean absent = node == NULL || JSON_NODE_HOLDS_NULL (node);

      if (absent && field->needed)
        return ff_json_refuse (path, field->name, node, _ ("a value, it is needed"), error);
      if (absent)
        read_absent (field, record);
      else if (!read_value (field, record, node, path, error))
        return FALSE;
    }
  return TRUE;
}

/* The key of a further table is that of the first one again, and is not written twice. */
static gboolean
is_known (const char *name, const FfFields *const *tables, const char *const *others)
{
  for (guint i = 0; tables[i] != NULL; i++)
    {
      const FfField *field = ff_fields_find (tables[i], name);

      if (field != NULL && (i == 0 || field != tables[i]->fields))
        return TRUE;
    }
  return g_strv_contains (others, name);
}

gboolean
ff_json_known_members (JsonObject *object,
                       const FfFields *const *tables,
                       const char *const *others,
                       const char *path,
                       GError **error)
{
  JsonObjectIter iter;
  const char *name;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, NULL))
    if (!is_known (name, tables, others))
      {
        g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                     _ ("%s%s%s: unknown; the schema of the file says what is accepted"), path,
                     *path != '\0' ? "." : "", name);
        return FALSE;
      }
  return TRUE;
}

JsonObject *
ff_json_get_object (JsonObject *object, const char *name, const char *path, GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  ff_json_refuse (path, name, node, _ ("an object"), error);
  return NULL;
}

JsonArray *
ff_json_get_array (JsonObject *object, const char *name, const char *path, GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node != NULL && JSON_NODE_HOLDS_ARRAY (node))
    return json_node_get_array (node);
  ff_json_refuse (path, name, node, _ ("a list"), error);
  return NULL;
}

JsonObject *
ff_json_element_object (JsonArray *array, guint i, const char *path, GError **error)
{
  JsonNode *node = json_array_get_element (array, i);

  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  ff_json_refuse (path, "", node, _ ("an object"), error);
  return NULL;
}

gboolean
ff_json_read_texts (JsonObject *object,
                    const char *name,
                    const char *path,
                    GPtrArray *texts,
                    GError **error)
{
  JsonArray *array = ff_json_get_array (object, name, path, error);

  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    {
      JsonNode *node = json_array_get_element (array, i);

      if (!holds (node, G_TYPE_STRING))
        return ff_json_refuse (path, name, node, _ ("a list of texts"), error);
      g_ptr_array_add (texts, g_strdup (json_node_get_string (node)));
    }
  return array != NULL;
}
