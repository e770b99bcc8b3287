/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-job-pack.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-json-check.h"
#include "ff-record-json.h"

/* A van of a hundred things, counted three times and often taken back. */
#define PARTS_MOST 20000

static gboolean
take_over (GPtrArray **place, GPtrArray *found)
{
  if (found == NULL)
    return FALSE;
  g_ptr_array_unref (*place);
  *place = found;
  return TRUE;
}

gboolean
ff_job_pack_load (FfJobFile *file, FfStore *store, GError **error)
{
  return take_over (&file->pack_events, ff_pack_events_load (store, file->job->id, error))
         && take_over (&file->watches, ff_watches_load (store, file->job->id, error));
}

static void
write_all (FfJson *json, const char *name, const FfFields *fields, GPtrArray *records)
{
  ff_json_begin_array (json, name);
  for (guint i = 0; i < records->len; i++)
    {
      ff_json_begin_object (json, NULL);
      ff_json_fields (json, fields, 0, g_ptr_array_index (records, i));
      ff_json_end (json);
    }
  ff_json_end (json);
}

void
ff_job_pack_write (const FfJobFile *file, FfJson *json)
{
  write_all (json, "pack_events", &ff_pack_event_fields, file->pack_events);
  write_all (json, "charge_watches", &ff_watch_fields, file->watches);
}

/* ---- In ---- */

static gboolean
refuse (const char *path, const char *found, const char *accepted, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: found “%s”; accepted: %s"), path, found,
               accepted);
  return FALSE;
}

static gboolean
read_record (JsonObject *object, const FfFields *fields, gpointer record, const char *path,
             GError **error)
{
  static const char *const none[] = { NULL };
  const FfFields *const tables[] = { fields, NULL };

  return ff_json_known_members (object, tables, none, path, error)
         && ff_json_read_fields (object, fields, 0, record, path, error);
}

static gboolean
is_new (const FfJobFile *file, const char *id)
{
  for (guint i = 0; i < file->pack_events->len; i++)
    if (strcmp (((FfPackEvent *) g_ptr_array_index (file->pack_events, i))->id, id) == 0)
      return FALSE;
  return TRUE;
}

static gboolean
read_event (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  g_autoptr (FfPackEvent) event = ff_pack_event_new ("", "");

  if (!read_record (object, &ff_pack_event_fields, event, path, error))
    return FALSE;
  if (!ff_pack_event_check (event, error))
    {
      g_prefix_error (error, "%s: ", path);
      return FALSE;
    }
  if (strcmp (event->job_id, file->job->id) != 0)
    return refuse (path, event->job_id, _ ("the id of the job"), error);
  if (ff_job_file_item (file, event->item_id) == NULL)
    return refuse (path, event->item_id, _ ("the id of an item of this file"), error);
  if (!is_new (file, event->id))
    return refuse (path, event->id, _ ("an id that stands for one record alone"), error);
  g_ptr_array_add (file->pack_events, g_steal_pointer (&event));
  return TRUE;
}

static gboolean
read_watch (FfJobFile *file, JsonObject *object, const char *path, GError **error)
{
  FfWatch *watch = ff_watch_new ();

  g_ptr_array_add (file->watches, watch);
  if (!read_record (object, &ff_watch_fields, watch, path, error))
    return FALSE;
  for (guint i = 0; i < file->crew->len; i++)
    if (strcmp (((FfMember *) g_ptr_array_index (file->crew, i))->id, watch->member_id) == 0)
      return TRUE;
  return refuse (path, watch->member_id, _ ("the id of a crew member of this file"), error);
}

static gboolean
read_all (FfJobFile *file,
          JsonObject *root,
          const char *name,
          gboolean (*read_one) (FfJobFile *, JsonObject *, const char *, GError **),
          GError **error)
{
  JsonArray *array;

  if (!json_object_has_member (root, name))
    return TRUE;
  array = ff_json_get_array (root, name, "", error);
  if (array != NULL && json_array_get_length (array) > PARTS_MOST)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: too many; accepted: up to %d"), name,
                   PARTS_MOST);
      return FALSE;
    }
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s[%u]", name, i);
      JsonObject *object = ff_json_element_object (array, i, path, error);

      if (object == NULL || !read_one (file, object, path, error))
        return FALSE;
    }
  return array != NULL;
}

gboolean
ff_job_pack_read (FfJobFile *file, JsonObject *root, GError **error)
{
  if (!read_all (file, root, "pack_events", read_event, error)
      || !read_all (file, root, "charge_watches", read_watch, error))
    return FALSE;
  if (ff_watches_check (file->watches, error))
    return TRUE;
  g_prefix_error (error, "charge_watches: ");
  return FALSE;
}

gboolean
ff_job_pack_store (const FfJobFile *file, FfStore *store, GError **error)
{
  for (guint i = 0; i < file->pack_events->len; i++)
    if (!ff_pack_event_append (store, g_ptr_array_index (file->pack_events, i), error))
      return FALSE;
  return ff_watches_save (store, file->job->id, file->watches, error);
}
