/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-records.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "ff-error.h"
#include "ff-store.h"

#define STORE_NAME "fieldfare.db"

/* What is counted, and under which name: one row per noun that the crew would count. */
static const struct {
  const char *noun;
  const char *sql;
} nouns[] = {
  { "crew", "SELECT count(*) FROM crew_member" },
  { "places", "SELECT count(*) FROM place" },
  { "items", "SELECT count(*) FROM item" },
  { "item_events", "SELECT count(*) FROM item_event" },
  { "jobs", "SELECT count(*) FROM job" },
  { "shots", "SELECT count(*) FROM shot" },
  { "limits", "SELECT count(*) FROM limit_row" },
  { "readings", "SELECT count(*) FROM reading" },
  { "versions", "SELECT count(*) FROM plan_version" },
  { "amendments", "SELECT count(*) FROM amendment" },
  { "flights", "SELECT count(*) FROM flight" },
  { "pack_events", "SELECT count(*) FROM pack_event" },
  { "carriers", "SELECT count(*) FROM carrier" },
  { "lists", "SELECT count(*) FROM checklist" },
  { "runs", "SELECT count(*) FROM run" },
  { "run_events", "SELECT count(*) FROM run_event" },
};

static gboolean
make_folder (const char *data_dir, GError **error)
{
  g_autofree char *shown = g_filename_display_name (data_dir);

  if (g_mkdir_with_parents (data_dir, 0700) == 0)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_STORE,
               _ ("the data folder %s can't be made: %s; choose another data folder"), shown,
               g_strerror (errno));
  return FALSE;
}

FfStore *
ff_records_open (const char *data_dir, FfRecordsAccess access, GError **error)
{
  g_autofree char *path = g_build_filename (data_dir, STORE_NAME, NULL);

  if (access == FF_RECORDS_WRITE && !make_folder (data_dir, error))
    return NULL;
  return ff_store_open (path, access == FF_RECORDS_WRITE ? FF_STORE_WRITE : FF_STORE_READ, error);
}

void
ff_records_close (FfStore *store)
{
  ff_store_close (store);
}

gboolean
ff_records_begin (FfStore *store, GError **error)
{
  return ff_store_begin (store, error);
}

gboolean
ff_records_commit (FfStore *store, GError **error)
{
  return ff_store_commit (store, error);
}

void
ff_records_rollback (FfStore *store)
{
  ff_store_rollback (store);
}

int
ff_records_schema_version (FfStore *store)
{
  return ff_store_version (store);
}

static void
clear_count (gpointer count)
{
  g_free (((FfCount *) count)->noun);
}

GArray *
ff_records_counts (FfStore *store, GError **error)
{
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (FfCount));

  g_array_set_clear_func (counts, clear_count);
  for (guint i = 0; i < G_N_ELEMENTS (nouns); i++)
    {
      FfCount count = { NULL, 0 };

      if (!ff_store_integer (store, nouns[i].sql, &count.count, error))
        return NULL;
      count.noun = g_strdup (nouns[i].noun);
      g_array_append_val (counts, count);
    }
  return g_steal_pointer (&counts);
}

gboolean
ff_records_is_empty (FfStore *store, gboolean *ret_empty, GError **error)
{
  g_autoptr (GArray) counts = ff_records_counts (store, error);
  gint64 total = 0;

  if (counts == NULL)
    return FALSE;
  for (guint i = 0; i < counts->len; i++)
    total += g_array_index (counts, FfCount, i).count;
  *ret_empty = total == 0;
  return TRUE;
}

GPtrArray *
ff_records_faults (FfStore *store, GError **error)
{
  return ff_store_faults (store, error);
}

gboolean
ff_records_backup (FfStore *store, const char *path, GError **error)
{
  return ff_store_backup (store, path, error);
}

char *
ff_records_new_id (void)
{
  return g_uuid_string_random ();
}
