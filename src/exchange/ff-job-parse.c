/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A job file from outside: hostile until every part of it is read and checked. */
#include "ff-job-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-job-pack.h"
#include "ff-job-versions.h"
#include "ff-json-check.h"
#include "ff-record-json.h"

/* More than any day holds; a file with more is broken. */
#define PARTS_MOST 5000

static const char *const no_others[] = { NULL };

typedef gboolean (*ReadOne) (FfJobFile *file, JsonObject *object, const char *path, GError **error);

static gboolean
prefix (gboolean good, const char *path, GError **error)
{
  if (!good)
    g_prefix_error (error, "%s: ", path);
  return good;
}

/* Each object of an array, with its own path. */
static gboolean
read_array (FfJobFile *file,
            JsonObject *parent,
            const char *path,
            const char *name,
            ReadOne read_one,
            GError **error)
{
  JsonArray *array = ff_json_get_array (parent, name, path, error);
  guint length = array != NULL ? json_array_get_length (array) : 0;

  if (length > PARTS_MOST)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: too many; accepted: up to %d"), name,
                   PARTS_MOST);
      return FALSE;
    }
  for (guint i = 0; i < length; i++)
    {
      g_autofree char *own
          = g_strdup_printf ("%s%s%s[%u]", path, *path != '\0' ? "." : "", name, i);
      JsonObject *object = ff_json_element_object (array, i, own, error);

      if (object == NULL || !read_one (file, object, own, error))
        return FALSE;
    }
  return array != NULL;
}

/* A record of one table and nothing else. */
static gboolean
read_plain (JsonObject *object,
            const FfFields *fields,
            gpointer record,
            const char *path,
            GError **error)
{
  const FfFields *const tables[] = { fields, NULL };

  return ff_json_known_members (object, tables, no_others, path, error)
         && ff_json_read_fields (object, fields, 0, record, path, error);
}

static gboolean
read_event (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfDayEvent *event = ff_day_event_new ();

  g_ptr_array_add (file->job->events, event);
  return read_plain (object, &ff_day_event_fields, event, path, error);
}

static gboolean
read_job (FfJobFile *file, JsonObject *root, GError **error)
{
  static const char *const others[] = { "events", "item_ids", NULL };
  const FfFields *const tables[] = { &ff_job_fields, NULL };
  JsonObject *object = ff_json_get_object (root, "job", "", error);

  file->job = ff_job_new ();
  return object != NULL && ff_json_known_members (object, tables, others, "job", error)
         && ff_json_read_fields (object, &ff_job_fields, 0, file->job, "job", error)
         && read_array (file, object, "job", "events", read_event, error)
         && ff_json_read_texts (object, "item_ids", "job", file->job->item_ids, error)
         && prefix (ff_job_check (file->job, error), "job", error);
}

static gboolean
read_hazard (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfHazard *hazard = ff_hazard_new ();

  g_ptr_array_add (file->place->hazards, hazard);
  return read_plain (object, &ff_hazard_fields, hazard, path, error);
}

static gboolean
read_place (FfJobFile *file, JsonObject *root, GError **error)
{
  static const char *const others[] = { "hazards", NULL };
  const FfFields *const tables[] = { &ff_place_fields, NULL };
  JsonNode *node = json_object_get_member (root, "place");
  JsonObject *object;

  if (node != NULL && JSON_NODE_HOLDS_NULL (node))
    return TRUE;
  object = ff_json_get_object (root, "place", "", error);
  file->place = ff_place_new ();
  return object != NULL && ff_json_known_members (object, tables, others, "place", error)
         && ff_json_read_fields (object, &ff_place_fields, 0, file->place, "place", error)
         && read_array (file, object, "place", "hazards", read_hazard, error)
         && prefix (ff_place_check (file->place, error), "place", error);
}

static gboolean
read_shot (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfShot *shot = ff_shot_new ("");

  g_ptr_array_add (file->shots, shot);
  return read_plain (object, &ff_shot_fields, shot, path, error)
         && prefix (ff_shot_check (shot, error), path, error);
}

static gboolean
read_member (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfMember *member = ff_member_new ();

  g_ptr_array_add (file->crew, member);
  return read_plain (object, &ff_member_fields, member, path, error)
         && prefix (ff_member_check (member, error), path, error);
}

static gboolean
read_role (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfJobRole *role = ff_job_role_new ();

  g_ptr_array_add (file->roles, role);
  return read_plain (object, &ff_job_role_fields, role, path, error)
         && ff_fields_check (&ff_job_role_fields, role, path, error);
}

/* The kind says which other fields there are. */
static gboolean
read_item (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfItem *item = ff_item_new (FF_KIND_OTHER);
  const FfFields *tables[] = { &ff_item_fields, NULL, NULL };
  const char *others[] = { "state",     "state_why", "out_with", "out_until",
                           "goes_with", "belongs_to", NULL };

  g_ptr_array_add (file->items, item);
  if (!ff_json_read_fields (object, &ff_item_fields, 0, item, path, error)
      || !ff_json_read_fields (object, &ff_item_state_fields, 0, item, path, error))
    return FALSE;
  tables[1] = ff_item_kind_fields (item->kind);
  if (!ff_json_known_members (object, tables, others, path, error)
      || (tables[1] != NULL && !ff_json_read_fields (object, tables[1], 1, item, path, error)))
    return FALSE;
  if (item->state != FF_STATE_SERVICEABLE && *item->state_why == '\0')
    return ff_json_refuse (path, "state_why", NULL, _ ("a reason of the state"), error);
  if (json_object_has_member (object, "goes_with")
      && !ff_json_read_texts (object, "goes_with", path, item->with_ids, error))
    return FALSE;
  return prefix (ff_item_check (item, error)
                     && ff_fields_check (&ff_item_state_fields, item, item->label, error),
                 path, error);
}

static gboolean
read_flight (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  static const char *const others[] = { "filter_ids", NULL };
  const FfFields *const tables[] = { &ff_flight_fields, NULL };
  FfFlight *flight = ff_flight_new ("");

  g_ptr_array_add (file->flights, flight);
  return ff_json_known_members (object, tables, others, path, error)
         && ff_json_read_fields (object, &ff_flight_fields, 0, flight, path, error)
         && ff_json_read_texts (object, "filter_ids", path, flight->filter_ids, error)
         && prefix (ff_flight_check (flight, error), path, error);
}

static gboolean
read_dropped (FfReading *reading, JsonObject *object, const char *path, GError **error)
{
  const FfFields *const tables[] = { &ff_reading_drop_fields, NULL };
  JsonNode *node = json_object_get_member (object, "dropped");
  g_autofree char *own = g_strconcat (path, ".dropped", NULL);
  JsonObject *dropped;

  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    return TRUE;
  dropped = ff_json_get_object (object, "dropped", path, error);
  return dropped != NULL && ff_json_known_members (dropped, tables, no_others, own, error)
         && ff_json_read_fields (dropped, &ff_reading_drop_fields, 1, reading, own, error);
}

static gboolean
read_reading (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  static const char *const others[] = { "dropped", NULL };
  const FfFields *const tables[] = { &ff_reading_fields, NULL };
  FfReading *reading = ff_reading_new ("");

  g_ptr_array_add (file->readings, reading);
  return ff_json_known_members (object, tables, others, path, error)
         && ff_json_read_fields (object, &ff_reading_fields, 0, reading, path, error)
         && read_dropped (reading, object, path, error)
         && prefix (ff_reading_check (reading, error), path, error);
}

/* Files of the first release have none. */
static gboolean
read_readings (FfJobFile *file, JsonObject *root, GError **error)
{
  return !json_object_has_member (root, "readings")
         || read_array (file, root, "", "readings", read_reading, error);
}

/* ---- What belongs together ---- */

static gboolean
dangling (const char *path, const char *id, const char *wanted, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: found “%s”; accepted: %s"), path, id,
               wanted);
  return FALSE;
}

/* Empty, or the id of an item of the file, of that kind (-1: any). */
static gboolean
item_is_there (const FfJobFile *file, const char *path, const char *id, int kind, GError **error)
{
  const FfItem *item = ff_job_file_item (file, id);

  if (*id == '\0' || (item != NULL && (kind < 0 || (int) item->kind == kind)))
    return TRUE;
  return dangling (path, id,
                   kind < 0 ? _ ("the id of an item of this file")
                            : _ ("the id of an item of this file and of the right kind"),
                   error);
}

static gboolean
member_is_there (const FfJobFile *file, const char *path, const char *id, GError **error)
{
  for (guint i = 0; i < file->crew->len; i++)
    if (strcmp (((FfMember *) g_ptr_array_index (file->crew, i))->id, id) == 0)
      return TRUE;
  return *id == '\0' || dangling (path, id, _ ("the id of a crew member of this file"), error);
}

static gboolean
first_of_its_id (GHashTable *ids, const char *id, const char *path, GError **error)
{
  return g_hash_table_add (ids, (char *) id)
         || dangling (path, id, _ ("an id that stands for one record alone"), error);
}

/* A second record under the id of a first would replace it. */
static gboolean
check_ids (const FfJobFile *file, GError **error)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < file->shots->len; i++)
    if (!first_of_its_id (ids, ((FfShot *) g_ptr_array_index (file->shots, i))->id, "shots", error))
      return FALSE;
  for (guint i = 0; i < file->crew->len; i++)
    if (!first_of_its_id (ids, ((FfMember *) g_ptr_array_index (file->crew, i))->id, "crew", error))
      return FALSE;
  for (guint i = 0; i < file->items->len; i++)
    if (!first_of_its_id (ids, ((FfItem *) g_ptr_array_index (file->items, i))->id, "items", error))
      return FALSE;
  for (guint i = 0; i < file->flights->len; i++)
    if (!first_of_its_id (ids, ((FfFlight *) g_ptr_array_index (file->flights, i))->id, "flights",
                          error))
      return FALSE;
  for (guint i = 0; i < file->readings->len; i++)
    if (!first_of_its_id (ids, ((FfReading *) g_ptr_array_index (file->readings, i))->id,
                          "readings", error))
      return FALSE;
  return TRUE;
}

static gboolean
check_job_links (const FfJobFile *file, GError **error)
{
  if (strcmp (file->job->place_id, file->place != NULL ? file->place->id : "") != 0)
    return dangling ("job.place_id", file->job->place_id, _ ("the id of the place"), error);
  if (!item_is_there (file, "job.aircraft_id", file->job->aircraft_id, FF_KIND_AIRCRAFT, error))
    return FALSE;
  for (guint i = 0; i < file->job->item_ids->len; i++)
    if (!item_is_there (file, "job.item_ids", g_ptr_array_index (file->job->item_ids, i), -1,
                        error))
      return FALSE;
  for (guint i = 0; i < file->roles->len; i++)
    if (!member_is_there (file, "roles",
                          ((FfJobRole *) g_ptr_array_index (file->roles, i))->member_id, error))
      return FALSE;
  return TRUE;
}

static gboolean
with_is_there (const FfJobFile *file, const char *path, const FfItem *item, GError **error)
{
  for (guint i = 0; i < item->with_ids->len; i++)
    if (!item_is_there (file, path, g_ptr_array_index (item->with_ids, i), -1, error))
      return FALSE;
  return TRUE;
}

static gboolean
check_item_links (const FfJobFile *file, GError **error)
{
  for (guint i = 0; i < file->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (file->items, i);
      g_autofree char *path = g_strdup_printf ("items[%u]", i);

      if (!with_is_there (file, path, item, error)
          || (item->kind == FF_KIND_AIRCRAFT
              && !item_is_there (file, path, item->camera_id, FF_KIND_CAMERA, error))
          || (item->kind == FF_KIND_CHARGER
              && !member_is_there (file, path, item->attended_by, error)))
        return FALSE;
    }
  return TRUE;
}

static gboolean
check_shot_links (const FfJobFile *file, GError **error)
{
  g_autoptr (GHashTable) labels
      = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < file->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (file->shots, i);
      g_autofree char *path = g_strdup_printf ("shots[%u]", i);

      if (strcmp (shot->job_id, file->job->id) != 0)
        return dangling (path, shot->job_id, _ ("the id of the job"), error);
      if (!g_hash_table_add (labels, g_ascii_strdown (shot->label, -1)))
        return dangling (path, shot->label, _ ("a label that no other shot has"), error);
    }
  return TRUE;
}

static gboolean
check_flight_links (const FfJobFile *file, GError **error)
{
  for (guint i = 0; i < file->flights->len; i++)
    {
      const FfFlight *flight = g_ptr_array_index (file->flights, i);
      g_autofree char *path = g_strdup_printf ("flights[%u]", i);

      if (strcmp (flight->job_id, file->job->id) != 0)
        return dangling (path, flight->job_id, _ ("the id of the job"), error);
      if (!item_is_there (file, path, flight->battery_id, FF_KIND_BATTERY, error))
        return FALSE;
      for (guint j = 0; j < flight->filter_ids->len; j++)
        if (!item_is_there (file, path, g_ptr_array_index (flight->filter_ids, j), FF_KIND_FILTER,
                            error))
          return FALSE;
    }
  return TRUE;
}

static gboolean
check_reading_links (const FfJobFile *file, GError **error)
{
  for (guint i = 0; i < file->readings->len; i++)
    {
      const FfReading *reading = g_ptr_array_index (file->readings, i);
      g_autofree char *path = g_strdup_printf ("readings[%u]", i);

      if (strcmp (reading->job_id, file->job->id) != 0)
        return dangling (path, reading->job_id, _ ("the id of the job"), error);
    }
  return TRUE;
}

static gboolean
check_format (JsonObject *root, GError **error)
{
  static const char *const known[] = { "format", "format_version", "job",   "place",
                                       "shots",  "crew",           "roles", "items",
                                       "flights", "readings",      "versions", "amendments",
                                       "briefed", "locks",         "pack_events",    "charge_watches", NULL };
  static const FfFields *const none[] = { NULL };
  JsonNode *format = json_object_get_member (root, "format");
  JsonNode *version = json_object_get_member (root, "format_version");

  if (format == NULL || json_node_get_value_type (format) != G_TYPE_STRING
      || strcmp (json_node_get_string (format), FF_JOB_FILE_FORMAT) != 0)
    return ff_json_refuse ("", "format", format, "\"" FF_JOB_FILE_FORMAT "\"", error);
  if (version == NULL || json_node_get_value_type (version) != G_TYPE_INT64
      || json_node_get_int (version) != FF_JOB_FILE_VERSION)
    return ff_json_refuse ("", "format_version", version, "1", error);
  return ff_json_known_members (root, none, known, "", error);
}

/* In files written before "goes_with" the thing named the one it belonged to. */
static gboolean
adopt_followers (FfJobFile *file, JsonObject *root, GError **error)
{
  JsonArray *items = json_object_get_array_member (root, "items");

  for (guint i = 0; i < file->items->len; i++)
    {
      JsonNode *node
          = json_object_get_member (json_array_get_object_element (items, i), "belongs_to");
      g_autofree char *path = g_strdup_printf ("items[%u].belongs_to", i);
      FfItem *leader;

      if (node == NULL || JSON_NODE_HOLDS_NULL (node))
        continue;
      leader = json_node_get_value_type (node) == G_TYPE_STRING
                   ? ff_job_file_item (file, json_node_get_string (node))
                   : NULL;
      if (leader == NULL || leader == g_ptr_array_index (file->items, i))
        return ff_json_refuse (path, "", node, _ ("the id of an item of this file"), error);
      ff_item_add_with (leader, ((FfItem *) g_ptr_array_index (file->items, i))->id);
    }
  return TRUE;
}

static gboolean
read_all (FfJobFile *file, JsonObject *root, GError **error)
{
  return check_format (root, error) && read_job (file, root, error)
         && read_place (file, root, error)
         && read_array (file, root, "", "shots", read_shot, error)
         && read_array (file, root, "", "crew", read_member, error)
         && read_array (file, root, "", "roles", read_role, error)
         && read_array (file, root, "", "items", read_item, error)
         && adopt_followers (file, root, error)
         && read_array (file, root, "", "flights", read_flight, error)
         && read_readings (file, root, error)
         && check_ids (file, error) && check_job_links (file, error)
         && check_item_links (file, error) && check_shot_links (file, error)
         && check_flight_links (file, error) && check_reading_links (file, error)
         && ff_job_pack_read (file, root, error) && ff_job_versions_read (file, root, error);
}

FfJobFile *
ff_job_file_parse (const char *text, GError **error)
{
  g_autoptr (FfJobFile) file = ff_job_file_new ();
  g_autoptr (JsonNode) root = NULL;
  g_autoptr (GError) problem = NULL;

  if (!ff_json_check (text, error))
    return NULL;
  root = json_from_string (text, &problem);
  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    {
      ff_json_refuse (_ ("the file"), "", root, _ ("an object"), error);
      return NULL;
    }
  return read_all (file, json_node_get_object (root), error) ? g_steal_pointer (&file) : NULL;
}
