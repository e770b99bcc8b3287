/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A job file into the store. What is there already under the same id is left alone when it is the
 * same, and otherwise nobody can know which of the two is right: the crew has to. */
#include "ff-job-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-job-pack.h"
#include "ff-job-versions.h"

static gboolean
differs (const char *what, const char *name, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s “%s” is in the store already, and not the same; make them the same in one of "
                  "the two stores, then do it again"),
               what, name);
  return FALSE;
}

static gboolean
name_taken (const char *what, const char *name, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s “%s”: another one in the store has this name; give one of the two another "
                  "name, then do it again"),
               what, name);
  return FALSE;
}

static gboolean
merge_member (FfStore *store, GPtrArray *known, const FfMember *member, GError **error)
{
  for (guint i = 0; i < known->len; i++)
    {
      const FfMember *other = g_ptr_array_index (known, i);

      if (strcmp (other->id, member->id) == 0)
        return ff_fields_equal (&ff_member_fields, other, member)
               || differs (_ ("crew member"), member->name, error);
      if (g_ascii_strcasecmp (other->initials, member->initials) == 0)
        return name_taken (_ ("initials"), member->initials, error);
    }
  return ff_member_save (store, member, error);
}

static gboolean
merge_crew (const FfJobFile *file, FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) known = ff_members_load (store, error);

  for (guint i = 0; known != NULL && i < file->crew->len; i++)
    if (!merge_member (store, known, g_ptr_array_index (file->crew, i), error))
      return FALSE;
  return known != NULL;
}

/* The state is what happened to it here, so the store's own stands. */
static gboolean
items_equal (const FfItem *a, const FfItem *b)
{
  const FfFields *own = ff_item_kind_fields (a->kind);

  return ff_fields_equal (&ff_item_fields, a, b) && (own == NULL || ff_fields_equal (own, a, b))
         && ff_item_same_with (a, b);
}

static gboolean
save_new_item (FfStore *store, const FfItem *item, gint64 now, GError **error)
{
  if (!ff_item_save (store, item, error))
    return FALSE;
  return item->state == FF_STATE_SERVICEABLE
         || ff_item_set_state (store, item->id, item->state, item->state_why, item->out_with,
                               item->out_until, NULL, now, error);
}

static gboolean
merge_item (FfStore *store, GPtrArray *known, const FfItem *item, gint64 now, GError **error)
{
  for (guint i = 0; i < known->len; i++)
    {
      const FfItem *other = g_ptr_array_index (known, i);

      if (strcmp (other->id, item->id) == 0)
        return items_equal (other, item) || differs (_ ("item"), item->label, error);
      if (g_ascii_strcasecmp (other->label, item->label) == 0)
        return name_taken (_ ("item"), item->label, error);
    }
  return save_new_item (store, item, now, error);
}

static gboolean
merge_items (const FfJobFile *file, FfStore *store, gint64 now, GError **error)
{
  g_autoptr (GPtrArray) known = ff_items_load (store, error);

  for (guint i = 0; known != NULL && i < file->items->len; i++)
    if (!merge_item (store, known, g_ptr_array_index (file->items, i), now, error))
      return FALSE;
  return known != NULL;
}

static gboolean
places_equal (const FfPlace *a, const FfPlace *b)
{
  gboolean equal
      = ff_fields_equal (&ff_place_fields, a, b) && a->hazards->len == b->hazards->len;

  for (guint i = 0; equal && i < a->hazards->len; i++)
    equal = ff_fields_equal (&ff_hazard_fields, g_ptr_array_index (a->hazards, i),
                             g_ptr_array_index (b->hazards, i));
  return equal;
}

static gboolean
merge_place (const FfJobFile *file, FfStore *store, GError **error)
{
  g_autoptr (FfPlace) known = NULL;
  g_autoptr (GError) problem = NULL;

  if (file->place == NULL)
    return TRUE;
  known = ff_place_load (store, file->place->id, &problem);
  if (known != NULL)
    return places_equal (known, file->place)
           || differs (_ ("place"), file->place->name, error);
  if (!g_error_matches (problem, FF_ERROR, FF_ERROR_INPUT))
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  return ff_place_save (store, file->place, error);
}

static gboolean
refuse_known_job (const FfJobFile *file, FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) jobs = ff_jobs_load (store, error);

  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);

      if (strcmp (job->id, file->job->id) == 0)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("the job is in the store already, as “%s”"), job->title);
          return FALSE;
        }
    }
  return jobs != NULL;
}

static gboolean
save_parts (const FfJobFile *file, FfStore *store, GError **error)
{
  for (guint i = 0; i < file->roles->len; i++)
    {
      const FfJobRole *role = g_ptr_array_index (file->roles, i);

      if (!ff_job_crew_add (store, file->job->id, role->member_id, role->role, error))
        return FALSE;
    }
  for (guint i = 0; i < file->shots->len; i++)
    if (!ff_shot_add (store, g_ptr_array_index (file->shots, i), error))
      return FALSE;
  for (guint i = 0; i < file->flights->len; i++)
    if (!ff_flight_append (store, g_ptr_array_index (file->flights, i), error))
      return FALSE;
  for (guint i = 0; i < file->readings->len; i++)
    if (!ff_reading_append (store, g_ptr_array_index (file->readings, i), error))
      return FALSE;
  return ff_job_pack_store (file, store, error) && ff_job_versions_store (file, store, error);
}

static gboolean
store_all (const FfJobFile *file, FfStore *store, gint64 now, GError **error)
{
  return refuse_known_job (file, store, error) && merge_crew (file, store, error)
         && merge_items (file, store, now, error) && merge_place (file, store, error)
         && ff_job_save (store, file->job, error) && save_parts (file, store, error);
}

gboolean
ff_job_file_store (const FfJobFile *file, FfStore *store, gint64 now, GError **error)
{
  if (!ff_records_begin (store, error))
    return FALSE;
  if (store_all (file, store, now, error))
    return ff_records_commit (store, error);
  ff_records_rollback (store);
  return FALSE;
}
