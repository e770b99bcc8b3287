/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-json.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

struct _FfJson {
  JsonBuilder *builder;
  GByteArray *open; /* 'o' or 'a' for each open level, outermost first */
};

FfJson *
ff_json_new (void)
{
  FfJson *json = g_new0 (FfJson, 1);

  json->builder = json_builder_new_immutable ();
  json->open = g_byte_array_new ();
  json_builder_begin_object (json->builder);
  return json;
}

void
ff_json_free (FfJson *json)
{
  if (json == NULL)
    return;
  g_object_unref (json->builder);
  g_byte_array_unref (json->open);
  g_free (json);
}

static void
set_name (FfJson *json, const char *name)
{
  if (name != NULL)
    json_builder_set_member_name (json->builder, name);
}

static void
begin (FfJson *json, const char *name, guint8 kind)
{
  set_name (json, name);
  if (kind == 'o')
    json_builder_begin_object (json->builder);
  else
    json_builder_begin_array (json->builder);
  g_byte_array_append (json->open, &kind, 1);
}

void
ff_json_begin_object (FfJson *json, const char *name)
{
  begin (json, name, 'o');
}

void
ff_json_begin_array (FfJson *json, const char *name)
{
  begin (json, name, 'a');
}

void
ff_json_end (FfJson *json)
{
  guint8 kind;

  g_return_if_fail (json->open->len > 0);
  kind = json->open->data[json->open->len - 1];
  g_byte_array_set_size (json->open, json->open->len - 1);
  if (kind == 'o')
    json_builder_end_object (json->builder);
  else
    json_builder_end_array (json->builder);
}

void
ff_json_text (FfJson *json, const char *name, const char *value)
{
  set_name (json, name);
  if (value != NULL)
    json_builder_add_string_value (json->builder, value);
  else
    json_builder_add_null_value (json->builder);
}

void
ff_json_number (FfJson *json, const char *name, double value)
{
  set_name (json, name);
  if (isfinite (value))
    json_builder_add_double_value (json->builder, value);
  else
    json_builder_add_null_value (json->builder);
}

void
ff_json_integer (FfJson *json, const char *name, gint64 value)
{
  set_name (json, name);
  json_builder_add_int_value (json->builder, value);
}

void
ff_json_flag (FfJson *json, const char *name, gboolean value)
{
  set_name (json, name);
  json_builder_add_boolean_value (json->builder, value);
}

void
ff_json_null (FfJson *json, const char *name)
{
  set_name (json, name);
  json_builder_add_null_value (json->builder);
}

void
ff_json_rounded (FfJson *json, const char *name, double value, int decimals)
{
  double scale = pow (10, decimals);

  ff_json_number (json, name, isfinite (value) ? round (value * scale) / scale + 0.0 : value);
}

void
ff_json_texts (FfJson *json, const char *name, GPtrArray *texts)
{
  ff_json_begin_array (json, name);
  for (guint i = 0; texts != NULL && i < texts->len; i++)
    ff_json_text (json, NULL, g_ptr_array_index (texts, i));
  ff_json_end (json);
}

/* JsonGenerator writes 0.1 as 0.10000000000000001; the walk below is here for that alone. */
static void write_node (GString *out, JsonNode *node, guint depth);

static void
write_number (GString *out, double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  for (int digits = 15; digits <= 17; digits++)
    {
      char format[8];

      g_snprintf (format, sizeof format, "%%.%dg", digits);
      g_ascii_formatd (buffer, sizeof buffer, format, value);
      if (g_ascii_strtod (buffer, NULL) == value)
        break;
    }
  g_string_append (out, buffer);
  if (strpbrk (buffer, ".e") == NULL)
    g_string_append (out, ".0");
}

static void
new_line (GString *out, guint depth)
{
  g_string_append_c (out, '\n');
  for (guint i = 0; i < depth; i++)
    g_string_append (out, "  ");
}

static void
write_string (GString *out, const char *text)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), text);
  g_autofree char *quoted = json_to_string (node, FALSE);

  g_string_append (out, quoted);
}

static void
write_object (GString *out, JsonObject *object, guint depth)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *member;
  gboolean first = TRUE;

  g_string_append_c (out, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &member))
    {
      if (!first)
        g_string_append_c (out, ',');
      first = FALSE;
      new_line (out, depth + 1);
      write_string (out, name);
      g_string_append (out, ": ");
      write_node (out, member, depth + 1);
    }
  if (!first)
    new_line (out, depth);
  g_string_append_c (out, '}');
}

static void
write_array (GString *out, JsonArray *array, guint depth)
{
  guint length = json_array_get_length (array);

  g_string_append_c (out, '[');
  for (guint i = 0; i < length; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      new_line (out, depth + 1);
      write_node (out, json_array_get_element (array, i), depth + 1);
    }
  if (length > 0)
    new_line (out, depth);
  g_string_append_c (out, ']');
}

static void
write_node (GString *out, JsonNode *node, guint depth)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    write_object (out, json_node_get_object (node), depth);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    write_array (out, json_node_get_array (node), depth);
  else if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_DOUBLE)
    write_number (out, json_node_get_double (node));
  else
    {
      g_autofree char *text = json_to_string (node, FALSE);

      g_string_append (out, text);
    }
}

char *
ff_json_finish (FfJson *json)
{
  g_autoptr (JsonNode) root = NULL;
  GString *out = g_string_new (NULL);

  g_return_val_if_fail (json->open->len == 0, g_string_free (out, FALSE));
  json_builder_end_object (json->builder);
  root = json_builder_get_root (json->builder);
  write_node (out, root, 0);
  g_string_append_c (out, '\n');
  return g_string_free (out, FALSE);
}
