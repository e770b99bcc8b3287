/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The published schema of a job file says what the tables of fields say: it is written from them
 * here and compared. After a change of the tables, what it should be lies in the build folder. */
#include "ff-test.h"

#include <string.h>

#include "ff-job-file.h"

#define ID_PATTERN "^[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}$"
#define DATE_PATTERN "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
#define CLOCK_PATTERN "^[0-4][0-9]:[0-5][0-9]$"

static void
write_type (FfJson *json, const char *type, gboolean needed)
{
  if (needed)
    {
      ff_json_text (json, "type", type);
      return;
    }
  ff_json_begin_array (json, "type");
  ff_json_text (json, NULL, type);
  ff_json_text (json, NULL, "null");
  ff_json_end (json);
}

static void
write_tokens (FfJson *json, const FfNames *names)
{
  ff_json_begin_array (json, "enum");
  for (guint i = 0; i < names->n_names; i++)
    ff_json_text (json, NULL, names->names[i].token);
  ff_json_end (json);
}

static void
write_text_field (FfJson *json, const FfField *field)
{
  write_type (json, "string", field->needed);
  if (field->type == FF_FIELD_ID)
    ff_json_text (json, "pattern", ID_PATTERN);
  else if (field->type == FF_FIELD_DATE)
    ff_json_text (json, "pattern", DATE_PATTERN);
  else
    {
      if (field->needed)
        ff_json_integer (json, "minLength", 1);
      ff_json_integer (json, "maxLength", (gint64) field->high);
    }
}

static void
write_field (FfJson *json, const FfField *field)
{
  ff_json_begin_object (json, field->name);
  ff_json_text (json, "description", field->words);
  if (ff_field_is_text (field))
    write_text_field (json, field);
  else if (field->type == FF_FIELD_REAL || field->type == FF_FIELD_WHOLE)
    {
      write_type (json, field->type == FF_FIELD_REAL ? "number" : "integer", field->needed);
      ff_json_number (json, "minimum", field->low);
      ff_json_number (json, "maximum", field->high);
    }
  else if (field->type == FF_FIELD_CLOCK)
    {
      write_type (json, "string", field->needed);
      ff_json_text (json, "pattern", CLOCK_PATTERN);
    }
  else if (field->type == FF_FIELD_INSTANT)
    {
      write_type (json, "string", TRUE);
      ff_json_text (json, "format", "date-time");
    }
  else if (field->type == FF_FIELD_FLAG)
    write_type (json, "boolean", field->needed);
  else
    write_tokens (json, field->names);
  ff_json_end (json);
}

static void
write_fields (FfJson *json, const FfFields *fields, guint first)
{
  for (guint i = first; i < fields->n_fields; i++)
    write_field (json, &fields->fields[i]);
}

static void
write_needed (FfJson *json, const FfFields *fields, guint first)
{
  for (guint i = first; i < fields->n_fields; i++)
    if (fields->fields[i].needed)
      ff_json_text (json, NULL, fields->fields[i].name);
}

static void
write_reference (FfJson *json, const char *name)
{
  g_autofree char *path = g_strconcat ("#/$defs/", name, NULL);

  ff_json_text (json, "$ref", path);
}

/* An array of objects of one definition, or of ids. */
static void
write_array (FfJson *json, const char *name, const char *definition)
{
  ff_json_begin_object (json, name);
  ff_json_text (json, "type", "array");
  ff_json_begin_object (json, "items");
  if (definition != NULL)
    write_reference (json, definition);
  else
    {
      ff_json_text (json, "type", "string");
      ff_json_text (json, "pattern", ID_PATTERN);
    }
  ff_json_end (json);
  ff_json_end (json);
}

/* An object of one table, with an array of parts (NULL: none) and an array of ids (NULL: none). */
static void
write_definition (FfJson *json,
                  const char *name,
                  const FfFields *fields,
                  const char *parts,
                  const char *part,
                  const char *ids)
{
  ff_json_begin_object (json, name);
  ff_json_text (json, "type", "object");
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  write_needed (json, fields, 0);
  if (parts != NULL)
    ff_json_text (json, NULL, parts);
  if (ids != NULL)
    ff_json_text (json, NULL, ids);
  ff_json_end (json);
  ff_json_begin_object (json, "properties");
  write_fields (json, fields, 0);
  if (parts != NULL)
    write_array (json, parts, part);
  if (ids != NULL)
    write_array (json, ids, NULL);
  ff_json_end (json);
  ff_json_end (json);
}

/* One that was set aside says when and why. */
static void
write_reading (FfJson *json)
{
  ff_json_begin_object (json, "reading");
  ff_json_text (json, "type", "object");
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  write_needed (json, &ff_reading_fields, 0);
  ff_json_end (json);
  ff_json_begin_object (json, "properties");
  write_fields (json, &ff_reading_fields, 0);
  ff_json_begin_object (json, "dropped");
  ff_json_begin_array (json, "type");
  ff_json_text (json, NULL, "object");
  ff_json_text (json, NULL, "null");
  ff_json_end (json);
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  write_needed (json, &ff_reading_drop_fields, 1);
  ff_json_end (json);
  ff_json_begin_object (json, "properties");
  write_fields (json, &ff_reading_drop_fields, 1);
  ff_json_end (json);
  ff_json_end (json);
  ff_json_end (json);
  ff_json_end (json);
}

static void
write_part (FfJson *json, const char *name, const FfFields *fields)
{
  ff_json_begin_object (json, name);
  ff_json_text (json, "type", "object");
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  write_needed (json, fields, 2);
  ff_json_end (json);
  ff_json_begin_object (json, "properties");
  write_fields (json, fields, 2);
  ff_json_end (json);
  ff_json_end (json);
}

/* Its parts do not say again whose they are. */
static void
write_amendment (FfJson *json)
{
  ff_json_begin_object (json, "amendment");
  ff_json_text (json, "type", "object");
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  write_needed (json, &ff_amendment_fields, 0);
  ff_json_text (json, NULL, "sentences");
  ff_json_text (json, NULL, "acknowledgements");
  ff_json_end (json);
  ff_json_begin_object (json, "properties");
  write_fields (json, &ff_amendment_fields, 0);
  write_array (json, "sentences", "sentence");
  write_array (json, "acknowledgements", "acknowledgement");
  ff_json_end (json);
  ff_json_end (json);
  write_part (json, "sentence", &ff_sentence_fields);
  write_part (json, "acknowledgement", &ff_acknowledgement_fields);
}

/* The item of one kind: what all have, and its own. */
static void
write_kind (FfJson *json, int kind)
{
  const FfFields *own = ff_item_kind_fields ((FfKind) kind);
  g_autofree char *name = g_strconcat ("item_", ff_name_token (&ff_names_kind, kind), NULL);

  ff_json_begin_object (json, name);
  ff_json_text (json, "type", "object");
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  write_needed (json, &ff_item_fields, 0);
  write_needed (json, &ff_item_state_fields, 0);
  if (own != NULL)
    write_needed (json, own, 1);
  ff_json_end (json);
  ff_json_begin_object (json, "properties");
  for (guint i = 0; i < ff_item_fields.n_fields; i++)
    if (strcmp (ff_item_fields.fields[i].name, "kind") != 0)
      write_field (json, &ff_item_fields.fields[i]);
  ff_json_begin_object (json, "kind");
  ff_json_text (json, "const", ff_name_token (&ff_names_kind, kind));
  ff_json_end (json);
  write_fields (json, &ff_item_state_fields, 0);
  if (own != NULL)
    write_fields (json, own, 1);
  write_array (json, "goes_with", NULL);
  ff_json_end (json);
  ff_json_end (json);
}

static void
write_item (FfJson *json)
{
  ff_json_begin_object (json, "item");
  ff_json_begin_array (json, "oneOf");
  for (guint kind = 0; kind < ff_names_kind.n_names; kind++)
    {
      g_autofree char *name
          = g_strconcat ("item_", ff_name_token (&ff_names_kind, (int) kind), NULL);

      ff_json_begin_object (json, NULL);
      write_reference (json, name);
      ff_json_end (json);
    }
  ff_json_end (json);
  ff_json_end (json);
}

static void
write_definitions (FfJson *json)
{
  ff_json_begin_object (json, "$defs");
  write_definition (json, "job", &ff_job_fields, "events", "event", "item_ids");
  write_definition (json, "event", &ff_day_event_fields, NULL, NULL, NULL);
  write_definition (json, "place", &ff_place_fields, "hazards", "hazard", NULL);
  write_definition (json, "hazard", &ff_hazard_fields, NULL, NULL, NULL);
  write_definition (json, "shot", &ff_shot_fields, NULL, NULL, NULL);
  write_definition (json, "member", &ff_member_fields, NULL, NULL, NULL);
  write_definition (json, "role", &ff_job_role_fields, NULL, NULL, NULL);
  write_definition (json, "flight", &ff_flight_fields, NULL, NULL, "filter_ids");
  write_reading (json);
  write_definition (json, "pack_event", &ff_pack_event_fields, NULL, NULL, NULL);
  write_definition (json, "charge_watch", &ff_watch_fields, NULL, NULL, NULL);
  write_definition (json, "version", &ff_plan_version_fields, NULL, NULL, NULL);
  write_amendment (json);
  write_definition (json, "briefed", &ff_briefed_fields, NULL, NULL, NULL);
  write_definition (json, "lock", &ff_lock_fields, NULL, NULL, NULL);
  write_item (json);
  for (guint kind = 0; kind < ff_names_kind.n_names; kind++)
    write_kind (json, (int) kind);
  ff_json_end (json);
}

static void
write_properties (FfJson *json)
{
  ff_json_begin_object (json, "properties");
  ff_json_begin_object (json, "format");
  ff_json_text (json, "const", FF_JOB_FILE_FORMAT);
  ff_json_end (json);
  ff_json_begin_object (json, "format_version");
  ff_json_integer (json, "const", FF_JOB_FILE_VERSION);
  ff_json_end (json);
  ff_json_begin_object (json, "job");
  write_reference (json, "job");
  ff_json_end (json);
  ff_json_begin_object (json, "place");
  ff_json_begin_array (json, "oneOf");
  ff_json_begin_object (json, NULL);
  write_reference (json, "place");
  ff_json_end (json);
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "type", "null");
  ff_json_end (json);
  ff_json_end (json);
  ff_json_end (json);
  write_array (json, "shots", "shot");
  write_array (json, "crew", "member");
  write_array (json, "roles", "role");
  write_array (json, "items", "item");
  write_array (json, "flights", "flight");
  write_array (json, "readings", "reading");
  write_array (json, "pack_events", "pack_event");
  write_array (json, "charge_watches", "charge_watch");
  write_array (json, "versions", "version");
  write_array (json, "amendments", "amendment");
  write_array (json, "briefed", "briefed");
  write_array (json, "locks", "lock");
  ff_json_end (json);
}

static char *
schema_of_the_tables (void)
{
  static const char *const members[] = { "format", "format_version", "job",   "place",  "shots",
                                         "crew",   "roles",          "items", "flights" };
  g_autoptr (FfJson) json = ff_json_new ();

  ff_json_text (json, "$schema", "https://json-schema.org/draft/2020-12/schema");
  ff_json_text (json, "title", "Fieldfare job");
  ff_json_text (json, "description",
                "A whole job of a small aerial-camera crew: the job, its place, shots, crew, gear "
                "and log. An absent fact is null. GPL-3.0-or-later.");
  ff_json_text (json, "type", "object");
  ff_json_flag (json, "additionalProperties", FALSE);
  ff_json_begin_array (json, "required");
  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    ff_json_text (json, NULL, members[i]);
  ff_json_end (json);
  write_properties (json);
  write_definitions (json);
  return ff_json_finish (json);
}

static void
test_the_schema_is_that_of_the_tables (void **state)
{
  g_autofree char *path = g_build_filename (g_getenv ("FF_TEST_SOURCE_DIR"), "data",
                                            "fieldfare-job.schema.json", NULL);
  g_autofree char *wanted = g_build_filename (g_getenv ("FF_TEST_BUILD_DIR"),
                                              "fieldfare-job.schema.json", NULL);
  g_autofree char *text = schema_of_the_tables ();
  g_autofree char *published = NULL;

  if (g_file_get_contents (path, &published, NULL, NULL) && strcmp (published, text) == 0)
    return;
  assert_true (g_file_set_contents (wanted, text, -1, NULL));
  fail_msg ("the published schema is out of date; copy %s to data/", wanted);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_schema_is_that_of_the_tables),
  };

  return cmocka_run_group_tests_name ("job-schema", tests, NULL, NULL);
}
