/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-job-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-item-json.h"
#include "ff-job-pack.h"
#include "ff-job-versions.h"
#include "ff-record-json.h"

static const FfField role_fields[] = {
  FF_ID (FfJobRole, member_id, "member_id", N_ ("crew member"), TRUE),
  FF_NAME (FfJobRole, role, N_ ("role"), &ff_names_role),
};
const FfFields ff_job_role_fields = FF_FIELDS ("job_crew", role_fields);

FfJobRole *
ff_job_role_new (void)
{
  FfJobRole *role = g_new0 (FfJobRole, 1);

  ff_fields_init (&ff_job_role_fields, role);
  return role;
}

static void
role_free (gpointer role)
{
  ff_fields_clear (&ff_job_role_fields, role);
  g_free (role);
}

FfJobFile *
ff_job_file_new (void)
{
  FfJobFile *file = g_new0 (FfJobFile, 1);

  file->shots = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_shot_free);
  file->crew = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_member_free);
  file->roles = g_ptr_array_new_with_free_func (role_free);
  file->items = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_item_free);
  file->flights = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_flight_free);
  file->readings = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_reading_free);
  file->pack_events = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_pack_event_free);
  file->watches = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_watch_free);
  file->versions = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_plan_version_free);
  file->amendments = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_amendment_free);
  file->briefed = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_briefed_free);
  file->locks = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_lock_free);
  return file;
}

void
ff_job_file_free (FfJobFile *file)
{
  if (file == NULL)
    return;
  ff_job_free (file->job);
  ff_place_free (file->place);
  g_ptr_array_unref (file->shots);
  g_ptr_array_unref (file->crew);
  g_ptr_array_unref (file->roles);
  g_ptr_array_unref (file->items);
  g_ptr_array_unref (file->flights);
  g_ptr_array_unref (file->readings);
  g_ptr_array_unref (file->pack_events);
  g_ptr_array_unref (file->watches);
  g_ptr_array_unref (file->versions);
  g_ptr_array_unref (file->amendments);
  g_ptr_array_unref (file->briefed);
  g_ptr_array_unref (file->locks);
  g_free (file);
}

FfItem *
ff_job_file_item (const FfJobFile *file, const char *id)
{
  for (guint i = 0; i < file->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (file->items, i);

      if (strcmp (item->id, id) == 0)
        return item;
    }
  return NULL;
}

/* ---- From the store ---- */

static void
want (GHashTable *wanted, const char *id)
{
  if (*id != '\0')
    g_hash_table_add (wanted, g_strdup (id));
}

/* What the job and its log name; what that needs comes with it below. */
static GHashTable *
named_items (const FfJobFile *file)
{
  GHashTable *wanted = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  want (wanted, file->job->aircraft_id);
  for (guint i = 0; i < file->job->item_ids->len; i++)
    want (wanted, g_ptr_array_index (file->job->item_ids, i));
  for (guint i = 0; i < file->flights->len; i++)
    {
      const FfFlight *flight = g_ptr_array_index (file->flights, i);

      want (wanted, flight->battery_id);
      for (guint j = 0; j < flight->filter_ids->len; j++)
        want (wanted, g_ptr_array_index (flight->filter_ids, j));
    }
  for (guint i = 0; i < file->pack_events->len; i++)
    want (wanted, ((FfPackEvent *) g_ptr_array_index (file->pack_events, i))->item_id);
  for (guint i = 0; i < file->locks->len; i++)
    {
      const FfLock *lock = g_ptr_array_index (file->locks, i);

      want (wanted, lock->battery_id);
      want (wanted, lock->filter_id);
    }
  return wanted;
}

static void
add_needed (GHashTable *wanted, GPtrArray *all)
{
  guint before;

  do
    {
      before = g_hash_table_size (wanted);
      for (guint i = 0; i < all->len; i++)
        {
          const FfItem *item = g_ptr_array_index (all, i);

          if (!g_hash_table_contains (wanted, item->id))
            continue;
          for (guint j = 0; j < item->with_ids->len; j++)
            want (wanted, g_ptr_array_index (item->with_ids, j));
          if (item->kind == FF_KIND_AIRCRAFT)
            want (wanted, item->camera_id);
        }
    }
  while (g_hash_table_size (wanted) > before);
}

static gboolean
load_items (FfJobFile *file, FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) all = ff_items_load (store, error);
  g_autoptr (GHashTable) wanted = NULL;

  if (all == NULL)
    return FALSE;
  wanted = named_items (file);
  add_needed (wanted, all);
  for (guint i = 0; i < all->len;)
    {
      const FfItem *item = g_ptr_array_index (all, i);

      if (g_hash_table_contains (wanted, item->id))
        g_ptr_array_add (file->items, g_ptr_array_steal_index (all, i));
      else
        i++;
    }
  return TRUE;
}

static gboolean
is_named (const FfJobFile *file, const char *member_id)
{
  for (guint i = 0; i < file->roles->len; i++)
    if (strcmp (((FfJobRole *) g_ptr_array_index (file->roles, i))->member_id, member_id) == 0)
      return TRUE;
  for (guint i = 0; i < file->watches->len; i++)
    if (strcmp (((FfWatch *) g_ptr_array_index (file->watches, i))->member_id, member_id) == 0)
      return TRUE;
  for (guint i = 0; i < file->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (file->items, i);

      if (item->kind == FF_KIND_CHARGER && strcmp (item->attended_by, member_id) == 0)
        return TRUE;
    }
  return FALSE;
}

/* Roles of the job, and the members behind them with their usual roles. */
static gboolean
load_crew (FfJobFile *file, FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) holders = ff_job_crew_load (store, file->job->id, error);
  g_autoptr (GPtrArray) members = holders != NULL ? ff_members_load (store, error) : NULL;

  if (members == NULL)
    return FALSE;
  for (guint i = 0; i < holders->len; i++)
    {
      const FfMember *holder = g_ptr_array_index (holders, i);
      FfJobRole *role = ff_job_role_new ();

      ff_set_text (&role->member_id, holder->id);
      role->role = holder->role;
      g_ptr_array_add (file->roles, role);
    }
  for (guint i = 0; i < members->len;)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      if (is_named (file, member->id))
        g_ptr_array_add (file->crew, g_ptr_array_steal_index (members, i));
      else
        i++;
    }
  return TRUE;
}

static gboolean
replace (GPtrArray **place, GPtrArray *found)
{
  if (found == NULL)
    return FALSE;
  g_ptr_array_unref (*place);
  *place = found;
  return TRUE;
}

FfJobFile *
ff_job_file_load (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (FfJobFile) file = ff_job_file_new ();

  file->job = ff_job_load (store, job_id, error);
  if (file->job == NULL)
    return NULL;
  if (*file->job->place_id != '\0')
    {
      file->place = ff_place_load (store, file->job->place_id, error);
      if (file->place == NULL)
        return NULL;
    }
  if (!replace (&file->shots, ff_shots_load (store, job_id, error))
      || !replace (&file->flights, ff_flights_load (store, job_id, error))
      || !replace (&file->readings, ff_readings_load (store, job_id, error))
      || !ff_job_pack_load (file, store, error) || !ff_job_versions_load (file, store, error)
      || !load_items (file, store, error) || !load_crew (file, store, error))
    return NULL;
  return g_steal_pointer (&file);
}

/* ---- As JSON ---- */

static void
write_parts (FfJson *json, const char *name, const FfFields *fields, GPtrArray *records)
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

static void
write_job (const FfJob *job, FfJson *json)
{
  ff_json_begin_object (json, "job");
  ff_json_fields (json, &ff_job_fields, 0, job);
  write_parts (json, "events", &ff_day_event_fields, job->events);
  ff_json_texts (json, "item_ids", job->item_ids);
  ff_json_end (json);
}

static void
write_place (const FfPlace *place, FfJson *json)
{
  if (place == NULL)
    {
      ff_json_null (json, "place");
      return;
    }
  ff_json_begin_object (json, "place");
  ff_json_fields (json, &ff_place_fields, 0, place);
  write_parts (json, "hazards", &ff_hazard_fields, place->hazards);
  ff_json_end (json);
}

static void
write_items (GPtrArray *items, FfJson *json)
{
  ff_json_begin_array (json, "items");
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      ff_json_begin_object (json, NULL);
      ff_item_json_write (json, item);
      ff_json_texts (json, "goes_with", item->with_ids);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
write_flights (GPtrArray *flights, FfJson *json)
{
  ff_json_begin_array (json, "flights");
  for (guint i = 0; i < flights->len; i++)
    {
      const FfFlight *flight = g_ptr_array_index (flights, i);

      ff_json_begin_object (json, NULL);
      ff_json_fields (json, &ff_flight_fields, 0, flight);
      ff_json_texts (json, "filter_ids", flight->filter_ids);
      ff_json_end (json);
    }
  ff_json_end (json);
}

/* One that was set aside says so; of the others that is null. */
static void
write_readings (GPtrArray *readings, FfJson *json)
{
  ff_json_begin_array (json, "readings");
  for (guint i = 0; i < readings->len; i++)
    {
      const FfReading *reading = g_ptr_array_index (readings, i);

      ff_json_begin_object (json, NULL);
      ff_json_fields (json, &ff_reading_fields, 0, reading);
      if (ff_reading_is_dropped (reading))
        {
          ff_json_begin_object (json, "dropped");
          ff_json_fields (json, &ff_reading_drop_fields, 1, reading);
          ff_json_end (json);
        }
      else
        ff_json_null (json, "dropped");
      ff_json_end (json);
    }
  ff_json_end (json);
}

void
ff_job_file_write (const FfJobFile *file, FfJson *json)
{
  ff_json_text (json, "format", FF_JOB_FILE_FORMAT);
  ff_json_integer (json, "format_version", FF_JOB_FILE_VERSION);
  write_job (file->job, json);
  write_place (file->place, json);
  write_parts (json, "shots", &ff_shot_fields, file->shots);
  write_parts (json, "crew", &ff_member_fields, file->crew);
  write_parts (json, "roles", &ff_job_role_fields, file->roles);
  write_items (file->items, json);
  write_flights (file->flights, json);
  write_readings (file->readings, json);
  ff_job_pack_write (file, json);
  ff_job_versions_write (file, json);
}
