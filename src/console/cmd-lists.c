/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-checklist-advice.h"
#include "ff-command.h"
#include "ff-file.h"
#include "ff-list-book.h"
#include "ff-paragraph.h"

static char *by_text;

static GOptionEntry entries[] = {
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("Initials of who imports"), "INITIALS" },
  G_OPTION_ENTRY_NULL,
};

static const char *
or_null (const char *text)
{
  return *text != '\0' ? text : NULL;
}

static void
write_entry (FfConsole *console, const char *name, const FfListEntry *entry)
{
  FfJson *json = console->json;
  const FfChecklist *list = entry->list;
  g_autoptr (GPtrArray) advice = ff_checklist_advice (list);
  g_autofree char *when = ff_when_tokens (list->when);

  ff_json_begin_object (json, name);
  ff_json_text (json, "id", entry->id);
  ff_json_text (json, "name", or_null (entry->name));
  ff_json_text (json, "title", entry->title);
  ff_json_text (json, "phase", ff_name_token (&ff_names_phase, (int) list->phase));
  ff_json_text (json, "mode", ff_name_token (&ff_names_list_mode, (int) list->mode));
  ff_json_text (json, "when", or_null (when));
  ff_json_text (json, "version", or_null (list->version));
  ff_json_text (json, "date", or_null (list->date));
  ff_json_flag (json, "own", entry->own);
  ff_json_integer (json, "sections", list->sections->len);
  ff_json_integer (json, "items", ff_checklist_count (list, ~0u));
  ff_json_begin_array (json, "advice");
  for (guint i = 0; i < advice->len; i++)
    ff_json_text (json, NULL, ((FfAdvice *) g_ptr_array_index (advice, i))->text);
  ff_json_end (json);
  ff_json_end (json);
}

static void
say_entry (FfConsole *console, const FfListEntry *entry)
{
  ff_console_line (console, "%-15s %3u  %-8s  %s", ff_name_text (&ff_names_phase,
                                                                (int) entry->list->phase),
                   ff_checklist_count (entry->list, ~0u), entry->own ? _ ("own") : _ ("example"),
                   entry->title);
}

static FfOutcome
show (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (GPtrArray) book = store != NULL ? ff_list_book_load (store, error) : NULL;

  if (book == NULL)
    return FF_FAILED;
  ff_json_begin_array (console->json, "lists");
  ff_console_line (console, _ ("place in day  items            title"));
  for (guint i = 0; i < book->len; i++)
    {
      write_entry (console, NULL, g_ptr_array_index (book, i));
      say_entry (console, g_ptr_array_index (book, i));
    }
  ff_json_end (console->json);
  return FF_DONE;
}

static void
say_advice (FfConsole *console, const FfChecklist *list)
{
  g_autoptr (GPtrArray) advice = ff_checklist_advice (list);

  for (guint i = 0; i < advice->len; i++)
    {
      const FfAdvice *one = g_ptr_array_index (advice, i);
      /* Translators: advice on a line of a text file. */
      g_autofree char *head = g_strdup_printf (_ ("  line %d: "), one->line);

      ff_console_paragraph (console, head, one->text);
    }
}

static FfOutcome
import (FfConsole *console, GError **error)
{
  const char *path = console->words[1];
  g_autoptr (FfStore) store = NULL;
  g_autoptr (GPtrArray) book = NULL;
  g_autofree char *text = ff_file_read (path, FF_CHECKLIST_BYTES, error);
  g_autofree char *id = NULL;

  if (text == NULL)
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_WRITE, error);
  if (store == NULL)
    return FF_FAILED;
  id = ff_list_book_save (store, NULL, text, by_text != NULL ? by_text : "",
                          g_get_real_time () / G_USEC_PER_SEC, error);
  if (id == NULL)
    {
      g_prefix_error (error, "%s: ", path);
      return FF_FAILED;
    }
  book = ff_list_book_load (store, error);
  if (book == NULL)
    return FF_FAILED;
  write_entry (console, "list", ff_list_book_get (book, id));
  say_entry (console, ff_list_book_get (book, id));
  say_advice (console, ff_list_book_get (book, id)->list);
  return FF_DONE;
}

static FfOutcome
export (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (GPtrArray) book = store != NULL ? ff_list_book_load (store, error) : NULL;
  const FfListEntry *entry
      = book != NULL ? ff_list_book_find (book, console->words[1], error) : NULL;

  if (entry == NULL || !ff_file_write_new (console->words[2], entry->text, error))
    return FF_FAILED;
  write_entry (console, "list", entry);
  ff_json_text (console->json, "file", console->words[2]);
  ff_console_line (console, "%s → %s", entry->title, console->words[2]);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *first = console->n_words > 0 ? console->words[0] : "";

  if (strcmp (first, "import") == 0)
    return ff_console_want_words (console, 2, "import FILE.md", error) ? import (console, error)
                                                                       : FF_FAILED;
  if (strcmp (first, "export") == 0)
    return ff_console_want_words (console, 3, "export LIST-ID FILE.md", error)
               ? export (console, error)
               : FF_FAILED;
  return ff_console_want_words (console, 0, "", error) ? show (console, error) : FF_FAILED;
}

const FfCommand ff_command_lists = {
  .name = "lists",
  .summary = N_ ("List the checklists, read one from a file, write one to a file"),
  .usage = "lists | lists import FILE.md [--by INITIALS] | lists export LIST-ID FILE.md",
  .example = "fieldfarectl lists export turn-round turn-round.md",
  .entries = entries,
  .run = run,
};
