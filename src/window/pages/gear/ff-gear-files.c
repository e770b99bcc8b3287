/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-gear-files.h"

#include <glib/gi18n-lib.h>

#include "ff-compat.h"
#include "ff-file.h"
#include "ff-gear-csv.h"

#define MOST_SHOWN 12

/* What was read and waits for an answer. */
typedef struct {
  FfPage *page;
  FfGearImport *import;
} Waiting;

/* Out */

static void
on_export_chosen (GFile *file, gpointer data)
{
  g_autoptr (FfPage) page = data;
  FfKeeper *keeper = ff_page_get_keeper (page);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;
  text = ff_gear_csv_write (ff_keeper_items (keeper), ff_keeper_members (keeper));
  if (ff_file_write_new (path, text, &error))
    ff_page_say (page, _ ("The gear is written"), FALSE);
  ff_page_say_error (page, &error);
}

void
ff_gear_files_export (FfPage *page)
{
  ff_compat_save_file (ff_page_window (page), _ ("The gear as CSV"), "gear.csv", on_export_chosen,
                       g_object_ref (page));
}

/* In */

static void
on_confirmed (gpointer data)
{
  Waiting *waiting = data;
  g_autoptr (GError) error = NULL;

  if (ff_keeper_import_gear (ff_page_get_keeper (waiting->page), waiting->import, &error))
    ff_page_say (waiting->page, _ ("The gear is read in"), FALSE);
  ff_page_say_error (waiting->page, &error);
}

static void
waiting_free (gpointer data)
{
  Waiting *waiting = data;

  ff_gear_import_free (waiting->import);
  g_free (waiting);
}

static void
append_change (GString *words, const FfGearChange *change)
{
  g_ptr_array_add (change->fields, NULL);
  if (change->is_new)
    /* Translators: an item of a file that is new: its label and kind. */
    g_string_append_printf (words, _ ("\n+ %s, %s"), change->item->label,
                            ff_name_text (&ff_names_kind, (int) change->item->kind));
  else
    {
      g_autofree char *fields = g_strjoinv (", ", (char **) change->fields->pdata);

      g_string_append_printf (words, "\n△ %s: %s", change->item->label, fields);
    }
  g_ptr_array_remove_index (change->fields, change->fields->len - 1);
}

static char *
preview_words (const FfGearImport *import)
{
  GString *words = g_string_new (NULL);

  g_string_append_printf (words, _ ("%u new, %u changed, %u as they are. This can't be undone."),
                          import->added, import->changed, import->same);
  for (guint i = 0; i < import->changes->len && i < MOST_SHOWN; i++)
    append_change (words, g_ptr_array_index (import->changes, i));
  if (import->changes->len > MOST_SHOWN)
    g_string_append (words, "\n…");
  return g_string_free (words, FALSE);
}

gboolean
ff_gear_files_preview (FfPage *page, const char *path)
{
  FfKeeper *keeper = ff_page_get_keeper (page);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = ff_file_read (path, FF_GEAR_CSV_MOST, &error);
  FfGearImport *import
      = text != NULL ? ff_gear_csv_read (text, ff_keeper_items (keeper),
                                         ff_keeper_members (keeper), &error)
                     : NULL;
  g_autofree char *words = NULL;
  Waiting *waiting;

  ff_page_say_error (page, &error);
  if (import == NULL)
    return FALSE;
  waiting = g_new0 (Waiting, 1);
  waiting->page = page;
  waiting->import = import;
  /* It lives until the next file is read, whatever the answer. */
  g_object_set_data_full (G_OBJECT (page), "gear-import", waiting, waiting_free);
  words = preview_words (import);
  ff_compat_confirm (ff_page_window (page), _ ("Read this file in?"), words, _ ("Read it in"),
                     on_confirmed, waiting);
  return TRUE;
}

static void
on_import_chosen (GFile *file, gpointer data)
{
  g_autoptr (FfPage) page = data;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    ff_gear_files_preview (page, path);
}

void
ff_gear_files_import (FfPage *page)
{
  ff_compat_open_file (ff_page_window (page), _ ("A CSV file with gear"), on_import_chosen,
                       g_object_ref (page));
}
