/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-job-versions.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-record-json.h"

#define PARTS_MOST 5000
#define OF_AMENDMENT 2 /* fields of a part that the amendment says: job and number */

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
ff_job_versions_load (FfJobFile *file, FfStore *store, GError **error)
{
  const char *job_id = file->job->id;

  return take_over (&file->versions, ff_plan_versions_load (store, job_id, error))
         && take_over (&file->amendments, ff_amendments_load (store, job_id, error))
         && take_over (&file->briefed, ff_briefed_load (store, job_id, error))
         && take_over (&file->locks, ff_locks_load (store, job_id, error));
}

/* ---- Out ---- */

static void
write_all (FfJson *json, const char *name, const FfFields *fields, guint first, GPtrArray *records)
{
  ff_json_begin_array (json, name);
  for (guint i = 0; i < records->len; i++)
    {
      ff_json_begin_object (json, NULL);
      ff_json_fields (json, fields, first, g_ptr_array_index (records, i));
      ff_json_end (json);
    }
  ff_json_end (json);
}

void
ff_job_versions_write (const FfJobFile *file, FfJson *json)
{
  write_all (json, "versions", &ff_plan_version_fields, 0, file->versions);
  ff_json_begin_array (json, "amendments");
  for (guint i = 0; i < file->amendments->len; i++)
    {
      const FfAmendment *amendment = g_ptr_array_index (file->amendments, i);

      ff_json_begin_object (json, NULL);
      ff_json_fields (json, &ff_amendment_fields, 0, amendment);
      write_all (json, "sentences", &ff_sentence_fields, OF_AMENDMENT, amendment->sentences);
      write_all (json, "acknowledgements", &ff_acknowledgement_fields, OF_AMENDMENT,
                 amendment->acknowledgements);
      ff_json_end (json);
    }
  ff_json_end (json);
  write_all (json, "briefed", &ff_briefed_fields, 0, file->briefed);
  write_all (json, "locks", &ff_lock_fields, 0, file->locks);
}

/* ---- In ---- */

/* `owner` is the file, or the amendment whose part it is. */
typedef gboolean (*ReadOne) (gpointer owner, JsonObject *object, const char *path, GError **error);

static gboolean
read_all (gpointer owner,
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

      if (object == NULL || !read_one (owner, object, own, error))
        return FALSE;
    }
  return array != NULL;
}

static gboolean
read_record (JsonObject *object,
             const FfFields *fields,
             guint first,
             const char *const *others,
             gpointer record,
             const char *path,
             GError **error)
{
  const FfFields *const tables[] = { fields, NULL };

  return ff_json_known_members (object, tables, others, path, error)
         && ff_json_read_fields (object, fields, first, record, path, error);
}

static gboolean
refuse (const char *path, const char *found, const char *wanted, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: found “%s”; accepted: %s"), path, found,
               wanted);
  return FALSE;
}

/* The record's own rules said no, or it is of another job. */
static gboolean
good (const FfJobFile *file, const char *job_id, gboolean passed, const char *path, GError **error)
{
  if (!passed)
    g_prefix_error (error, "%s: ", path);
  return passed
         && (strcmp (job_id, file->job->id) == 0
             || refuse (path, job_id, _ ("the id of the job"), error));
}

static gboolean
read_version (gpointer data, JsonObject *object, const char *path, GError **error)
{
  static const char *const none[] = { NULL };
  FfJobFile *file = data;
  FfPlanVersion *version = ff_plan_version_new ("");

  g_ptr_array_add (file->versions, version);
  if (!read_record (object, &ff_plan_version_fields, 0, none, version, path, error)
      || !good (file, version->job_id, ff_plan_version_check (version, error), path, error))
    return FALSE;
  for (guint i = 0; i + 1 < file->versions->len; i++)
    if (strcmp (((FfPlanVersion *) g_ptr_array_index (file->versions, i))->letter,
                version->letter)
        == 0)
      return refuse (path, version->letter, _ ("a letter that no other version has"), error);
  return TRUE;
}

static gboolean
read_sentence (gpointer data, JsonObject *object, const char *path, GError **error)
{
  static const char *const none[] = { NULL };

  return read_record (object, &ff_sentence_fields, OF_AMENDMENT, none,
                      ff_amendment_add_sentence (data, FF_ROLE_LEAD, ""), path, error);
}

static gboolean
read_acknowledgement (gpointer data, JsonObject *object, const char *path, GError **error)
{
  static const char *const none[] = { NULL };

  return read_record (object, &ff_acknowledgement_fields, OF_AMENDMENT, none,
                      ff_amendment_add_acknowledgement (data, FF_ROLE_LEAD, "", 0, ""), path,
                      error);
}

static gboolean
is_letter_there (const FfJobFile *file, const FfAmendment *amendment, const char *path,
                 GError **error)
{
  for (guint i = 0; i < file->versions->len; i++)
    if (strcmp (((FfPlanVersion *) g_ptr_array_index (file->versions, i))->letter,
                amendment->letter)
        == 0)
      return TRUE;
  return refuse (path, amendment->letter, _ ("the letter of a version of this file"), error);
}

static gboolean
read_amendment (gpointer data, JsonObject *object, const char *path, GError **error)
{
  static const char *const others[] = { "sentences", "acknowledgements", NULL };
  FfJobFile *file = data;
  FfAmendment *amendment = ff_amendment_new ("");

  g_ptr_array_add (file->amendments, amendment);
  return read_record (object, &ff_amendment_fields, 0, others, amendment, path, error)
         && read_all (amendment, object, path, "sentences", read_sentence, error)
         && read_all (amendment, object, path, "acknowledgements", read_acknowledgement, error)
         && good (file, amendment->job_id, ff_amendment_check (amendment, error), path, error)
         && is_letter_there (file, amendment, path, error);
}

static gboolean
read_briefed (gpointer data, JsonObject *object, const char *path, GError **error)
{
  static const char *const none[] = { NULL };
  FfJobFile *file = data;
  FfBriefed *briefed = ff_briefed_new ("");

  g_ptr_array_add (file->briefed, briefed);
  return read_record (object, &ff_briefed_fields, 0, none, briefed, path, error)
         && good (file, briefed->job_id, ff_briefed_check (briefed, error), path, error);
}

static gboolean
is_shot_there (const FfJobFile *file, const char *path, const char *id, GError **error)
{
  for (guint i = 0; i < file->shots->len; i++)
    if (strcmp (((FfShot *) g_ptr_array_index (file->shots, i))->id, id) == 0)
      return TRUE;
  return refuse (path, id, _ ("the id of a shot of this file"), error);
}

static gboolean
is_item_there (const FfJobFile *file, const char *path, const char *id, FfKind kind, GError **error)
{
  const FfItem *item = ff_job_file_item (file, id);

  return *id == '\0' || (item != NULL && item->kind == kind)
         || refuse (path, id, _ ("the id of an item of this file and of the right kind"), error);
}

static gboolean
read_lock (gpointer data, JsonObject *object, const char *path, GError **error)
{
  static const char *const none[] = { NULL };
  FfJobFile *file = data;
  FfLock *lock = ff_lock_new ("");

  if (!read_record (object, &ff_lock_fields, 0, none, lock, path, error)
      || !good (file, lock->job_id, ff_lock_check (lock, error), path, error)
      || !is_shot_there (file, path, lock->shot_id, error)
      || !is_item_there (file, path, lock->battery_id, FF_KIND_BATTERY, error)
      || !is_item_there (file, path, lock->filter_id, FF_KIND_FILTER, error)
      || (ff_locks_find (file->locks, lock->shot_id) != NULL
          && !refuse (path, lock->shot_id, _ ("a shot that no other lock names"), error)))
    {
      ff_lock_free (lock);
      return FALSE;
    }
  g_ptr_array_add (file->locks, lock);
  return TRUE;
}

gboolean
ff_job_versions_read (FfJobFile *file, JsonObject *root, GError **error)
{
  static const struct {
    const char *name;
    ReadOne read_one;
  } parts[] = {
    { "versions", read_version },
    { "amendments", read_amendment },
    { "briefed", read_briefed },
    { "locks", read_lock },
  };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (json_object_has_member (root, parts[i].name)
        && !read_all (file, root, "", parts[i].name, parts[i].read_one, error))
      return FALSE;
  return TRUE;
}

/* ---- Into the store ---- */

gboolean
ff_job_versions_store (const FfJobFile *file, FfStore *store, GError **error)
{
  for (guint i = 0; i < file->versions->len; i++)
    if (!ff_plan_version_append (store, g_ptr_array_index (file->versions, i), error))
      return FALSE;
  for (guint i = 0; i < file->amendments->len; i++)
    if (!ff_amendment_append (store, g_ptr_array_index (file->amendments, i), error))
      return FALSE;
  for (guint i = 0; i < file->briefed->len; i++)
    if (!ff_briefed_append (store, g_ptr_array_index (file->briefed, i), error))
      return FALSE;
  for (guint i = 0; i < file->locks->len; i++)
    if (!ff_lock_save (store, g_ptr_array_index (file->locks, i), error))
      return FALSE;
  return TRUE;
}
