/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-settings.h"

#define SCHEMA "org.fieldfare.Fieldfare"

GSettings *
ff_settings_get (void)
{
  static GSettings *settings;
  static gboolean looked;
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = NULL;

  if (looked)
    return settings;
  looked = TRUE;
  /* g_settings_new() would end the program where the schema is missing. */
  if (source != NULL)
    schema = g_settings_schema_source_lookup (source, SCHEMA, TRUE);
  if (schema != NULL)
    settings = g_settings_new (SCHEMA);
  return settings;
}

char *
ff_settings_dup_text (const char *key)
{
  GSettings *settings = ff_settings_get ();

  return settings != NULL ? g_settings_get_string (settings, key) : g_strdup ("");
}

void
ff_settings_set_text (const char *key, const char *text)
{
  GSettings *settings = ff_settings_get ();

  if (settings != NULL)
    g_settings_set_string (settings, key, text);
}

gboolean
ff_settings_get_flag (const char *key)
{
  GSettings *settings = ff_settings_get ();

  return settings != NULL && g_settings_get_boolean (settings, key);
}

void
ff_settings_set_flag (const char *key, gboolean on)
{
  GSettings *settings = ff_settings_get ();

  if (settings != NULL)
    g_settings_set_boolean (settings, key, on);
}
