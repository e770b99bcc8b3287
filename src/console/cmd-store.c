/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-command.h"
#include "ff-error.h"

static GOptionEntry entries[] = {
  G_OPTION_ENTRY_NULL,
};

static FfOutcome
info (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (GArray) counts = store != NULL ? ff_records_counts (store, error) : NULL;

  if (counts == NULL)
    return FF_FAILED;
  ff_json_integer (console->json, "schema_version", ff_records_schema_version (store));
  ff_json_begin_object (console->json, "counts");
  ff_console_line (console, _ ("Store version %d"), ff_records_schema_version (store));
  for (guint i = 0; i < counts->len; i++)
    {
      const FfCount *count = &g_array_index (counts, FfCount, i);

      ff_json_integer (console->json, count->noun, count->count);
      ff_console_line (console, "  %-12s %6" G_GINT64_FORMAT, count->noun, count->count);
    }
  ff_json_end (console->json);
  return FF_DONE;
}

static FfOutcome
check (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (GPtrArray) faults = store != NULL ? ff_records_faults (store, error) : NULL;

  if (faults == NULL)
    return FF_FAILED;
  ff_json_flag (console->json, "sound", faults->len == 0);
  ff_json_texts (console->json, "faults", faults);
  if (faults->len == 0)
    ff_console_line (console, _ ("The store is sound."));
  else
    ff_console_line (console, _ ("The store has faults; restore a backup:"));
  for (guint i = 0; i < faults->len; i++)
    ff_console_line (console, "  %s", (const char *) g_ptr_array_index (faults, i));
  return faults->len == 0 ? FF_DONE : FF_NO;
}

static FfOutcome
backup (FfConsole *console, GError **error)
{
  const char *path = console->words[1];
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);

  if (store == NULL || !ff_records_backup (store, path, error))
    return FF_FAILED;
  ff_json_text (console->json, "file", path);
  ff_console_line (console, _ ("The store is copied to %s."), path);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *what = console->n_words > 0 ? console->words[0] : "";

  if (strcmp (what, "backup") == 0)
    return ff_console_want_words (console, 2, "FILE", error) ? backup (console, error) : FF_FAILED;
  if (strcmp (what, "info") != 0 && strcmp (what, "check") != 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("store “%s” is unknown; accepted: info, check, backup FILE"), what);
      return FF_FAILED;
    }
  if (!ff_console_want_words (console, 1, what, error))
    return FF_FAILED;
  return strcmp (what, "info") == 0 ? info (console, error) : check (console, error);
}

const FfCommand ff_command_store = {
  .name = "store",
  .summary = N_ ("Say what the store holds, check it, copy it"),
  .usage = "store info | store check | store backup FILE",
  .example = "fieldfarectl store backup /media/stick/fieldfare.db",
  .entries = entries,
  .run = run,
};
