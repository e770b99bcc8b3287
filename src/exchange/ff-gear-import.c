/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a CSV file brings to the gear, and its way into the store. */
#include "ff-gear-csv-private.h"

#include <glib/gi18n-lib.h>

static void
change_free (gpointer data)
{
  FfGearChange *change = data;

  ff_item_free (change->item);
  g_ptr_array_unref (change->fields);
  g_free (change);
}

void
ff_gear_import_begin (FfGearImport *import)
{
  import->changes = g_ptr_array_new_with_free_func (change_free);
}

void
ff_gear_import_free (FfGearImport *import)
{
  if (import == NULL)
    return;
  g_ptr_array_unref (import->changes);
  g_free (import);
}

static gboolean
store_change (const FfGearChange *change,
              FfStore *store,
              const char *by,
              gint64 now,
              GError **error)
{
  const FfItem *item = change->item;

  if (ff_item_save (store, item, error)
      && (!change->has_event
          || ff_item_set_state (store, item->id, item->state, item->state_why, item->out_with,
                                item->out_until, by, now, error)))
    return TRUE;
  g_prefix_error (error, _ ("line %u: "), change->line);
  return FALSE;
}

/* Two items may swap their labels: each is first put aside under its id. */
static gboolean
free_labels (const FfGearImport *import, FfStore *store, GError **error)
{
  for (guint i = 0; i < import->changes->len; i++)
    {
      const FfGearChange *change = g_ptr_array_index (import->changes, i);
      gboolean renamed
          = g_ptr_array_find_with_equal_func (change->fields, "label", g_str_equal, NULL);
      g_autoptr (FfItem) item = NULL;

      if (!renamed)
        continue;
      item = ff_item_load (store, change->item->id, error);
      if (item == NULL)
        return FALSE;
      g_free (item->label);
      item->label = g_strndup (item->id, 24);
      if (!ff_item_save (store, item, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
store_all (const FfGearImport *import, FfStore *store, const char *by, gint64 now, GError **error)
{
  if (!free_labels (import, store, error))
    return FALSE;
  for (guint i = 0; i < import->changes->len; i++)
    if (!store_change (g_ptr_array_index (import->changes, i), store, by, now, error))
      return FALSE;
  return TRUE;
}

gboolean
ff_gear_import_store (const FfGearImport *import,
                      FfStore *store,
                      const char *by,
                      gint64 now,
                      GError **error)
{
  if (!ff_records_begin (store, error))
    return FALSE;
  if (store_all (import, store, by, now, error))
    return ff_records_commit (store, error);
  ff_records_rollback (store);
  return FALSE;
}
