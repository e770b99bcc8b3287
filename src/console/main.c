/* SPDX-License-Identifier: GPL-3.0-or-later */
/* fieldfarectl: the table of commands, the options that all share, and the exit status. */
#include <glib/gi18n-lib.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "ff-command.h"
#include "ff-error.h"

static const FfCommand *const commands[] = {
#include "ff-command-table.h"
};

enum { STATUS_DONE = 0, STATUS_NO = 1, STATUS_REQUEST = 2, STATUS_STORE = 3 };

static char *data_dir_text;
static char *lang_text;
static gboolean as_json;
static gboolean want_version;
static char **words;

static const GOptionEntry global_entries[] = {
  { "data-dir", 0, 0, G_OPTION_ARG_FILENAME, &data_dir_text,
    N_ ("Folder of the store (default: the user's data folder)"), "DIR" },
  { "json", 0, 0, G_OPTION_ARG_NONE, &as_json, N_ ("One JSON object on standard output"), NULL },
  { "lang", 0, 0, G_OPTION_ARG_STRING, &lang_text, N_ ("Language of texts, as a locale name"),
    "LANG" },
  { "version", 0, 0, G_OPTION_ARG_NONE, &want_version, N_ ("Say the version"), NULL },
  { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_STRING_ARRAY, &words, NULL, NULL },
  G_OPTION_ENTRY_NULL,
};

static const FfCommand *
find_command (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (strcmp (commands[i]->name, name) == 0)
      return commands[i];
  return NULL;
}

static gboolean
entries_have_flag (const GOptionEntry *entries, const char *name)
{
  for (; entries != NULL && entries->long_name != NULL; entries++)
    if (entries->arg == G_OPTION_ARG_NONE && strcmp (entries->long_name, name) == 0)
      return TRUE;
  return FALSE;
}

/* Whether an option of any command stands alone, without a value. Needed because options may
 * stand before the command, when it is not yet known whose they are. */
static gboolean
is_flag (const char *argument)
{
  const char *name = argument + strspn (argument, "-");

  if (strcmp (name, "help") == 0 || strchr (name, '=') != NULL
      || entries_have_flag (global_entries, name))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (entries_have_flag (commands[i]->entries, name))
      return TRUE;
  return FALSE;
}

/* The place of the command's name: the first word that is no option and no option's value. */
static int
command_place (int argc, char **argv)
{
  for (int i = 1; i < argc; i++)
    {
      if (argv[i][0] != '-')
        return i;
      if (!is_flag (argv[i]) && strcmp (argv[i], "-o") != 0 && g_str_has_prefix (argv[i], "--"))
        i++;
      else if (strcmp (argv[i], "-o") == 0)
        i++;
    }
  return 0;
}

static char *
overview (void)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, _ ("Usage: %s COMMAND [options]\n\nCommands:\n"), "fieldfarectl");
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (text, "  %-10s %s\n", commands[i]->name, _ (commands[i]->summary));
  g_string_append (text, _ ("\nEvery command has --help with a worked example.\n"
                            "Global options: --data-dir DIR, --json, --lang LANG, --version\n"));
  return g_string_free (text, FALSE);
}

static GOptionContext *
context_for (const FfCommand *command)
{
  GOptionContext *context = g_option_context_new (NULL);
  g_autofree char *example = g_strdup_printf (_ ("Example:\n  %s"), command->example);
  g_autofree char *usage = g_strdup_printf ("%s\n  fieldfarectl %s", _ (command->summary),
                                            command->usage);

  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, usage);
  g_option_context_set_description (context, example);
  g_option_context_add_main_entries (context, command->entries, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, global_entries, GETTEXT_PACKAGE);
  return context;
}

/* One line on standard error, whatever the message holds. */
static int
complain (const GError *error)
{
  g_autofree char *line = g_strdelimit (g_strdup (error->message), "\r\n", ' ');

  fprintf (stderr, "fieldfarectl: %s\n", line);
  if (error->domain == FF_ERROR && error->code != FF_ERROR_INPUT)
    return STATUS_STORE;
  return STATUS_REQUEST;
}

static int
print_result (FfConsole *console, FfOutcome outcome)
{
  g_autofree char *json = console->as_json ? ff_json_finish (console->json) : NULL;

  if (fputs (json != NULL ? json : console->text->str, stdout) < 0 || fflush (stdout) != 0)
    {
      fprintf (stderr, "fieldfarectl: %s\n", _ ("standard output can't be written"));
      return STATUS_STORE;
    }
  return outcome == FF_NO ? STATUS_NO : STATUS_DONE;
}

static int
run_command (const FfCommand *command, int argc, char **argv)
{
  g_autoptr (GOptionContext) context = context_for (command);
  g_autoptr (GError) error = NULL;
  FfConsole console = { 0 };
  FfOutcome outcome;
  int status;

  for (int i = 1; i < argc; i++)
    if (strcmp (argv[i], "--help") == 0 || strcmp (argv[i], "-h") == 0)
      {
        g_autofree char *help = g_option_context_get_help (context, TRUE, NULL);

        fputs (help, stdout);
        return STATUS_DONE;
      }
  if (!g_option_context_parse (context, &argc, &argv, &error))
    return complain (error);

  console.as_json = as_json;
  console.data_dir = data_dir_text != NULL
                         ? g_strdup (data_dir_text)
                         : g_build_filename (g_get_user_data_dir (), "fieldfare", NULL);
  console.words = words;
  console.n_words = words != NULL ? g_strv_length (words) : 0;
  console.json = ff_json_new ();
  console.text = g_string_new (NULL);
  outcome = command->run (&console, &error);
  status = outcome == FF_FAILED ? complain (error) : print_result (&console, outcome);
  ff_json_free (console.json);
  g_string_free (console.text, TRUE);
  g_free (console.data_dir);
  return status;
}

/* --lang must act before any text is translated, so it is looked for by hand. */
static void
set_language (int argc, char **argv)
{
  const char *lang = NULL;

  for (int i = 1; i < argc; i++)
    {
      if (g_str_has_prefix (argv[i], "--lang="))
        lang = argv[i] + strlen ("--lang=");
      else if (strcmp (argv[i], "--lang") == 0 && i + 1 < argc)
        lang = argv[i + 1];
    }
  if (lang != NULL)
    g_setenv ("LANGUAGE", lang, TRUE);
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, FF_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
}

int
main (int argc, char **argv)
{
  g_auto (GStrv) arguments = NULL;
  g_autofree char **parsed = NULL;
  const FfCommand *command;
  int place, status, count = argc;

  g_set_prgname ("fieldfarectl");
  set_language (argc, argv);
  place = command_place (argc, argv);
  if (place == 0)
    {
      g_autofree char *text = overview ();

      for (int i = 1; i < argc; i++)
        if (strcmp (argv[i], "--version") == 0)
          {
            printf ("fieldfarectl %s\n", FF_VERSION);
            return STATUS_DONE;
          }
        else if (strcmp (argv[i], "--help") == 0 || strcmp (argv[i], "-h") == 0)
          {
            fputs (text, stdout);
            return STATUS_DONE;
          }
      fprintf (stderr, "fieldfarectl: %s\n", _ ("no command given; --help lists them"));
      return STATUS_REQUEST;
    }
  command = find_command (argv[place]);
  if (command == NULL)
    {
      fprintf (stderr, _ ("fieldfarectl: unknown command “%s”; --help lists them\n"), argv[place]);
      return STATUS_REQUEST;
    }

  /* GOption takes the words in any order; only the command's own name is dropped. It moves the
   * pointers about, so the copies are freed through a second array. */
  arguments = g_strdupv (argv);
  parsed = g_new0 (char *, (gsize) argc + 1);
  for (int from = 0, to = 0; from < argc; from++)
    if (from != place)
      parsed[to++] = arguments[from];
  status = run_command (command, count - 1, parsed);
  g_strfreev (words);
  g_free (data_dir_text);
  g_free (lang_text);
  return status;
}
