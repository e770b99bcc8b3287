/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-console-run.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

static char **
argv_of (const char *command_line)
{
  g_autofree char *whole = g_strdup_printf ("%s %s", g_getenv ("FF_TEST_CONSOLE"), command_line);
  char **argv = NULL;

  assert_true (g_shell_parse_argv (whole, NULL, &argv, NULL));
  return argv;
}

FfRun *
ff_run (const char *command_line)
{
  g_auto (GStrv) argv = argv_of (command_line);
  g_autoptr (GSubprocess) process = NULL;
  g_autoptr (GError) error = NULL;
  FfRun *run = g_new0 (FfRun, 1);

  process
      = g_subprocess_newv ((const char *const *) argv,
                           G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE, &error);
  assert_no_error (error);
  g_subprocess_communicate_utf8 (process, NULL, NULL, &run->out, &run->err, &error);
  assert_no_error (error);
  if (!g_subprocess_get_if_exited (process))
    fail_msg ("%s: died of signal %d", command_line, g_subprocess_get_term_sig (process));
  run->status = g_subprocess_get_exit_status (process);
  run->parser = json_parser_new ();
  if (run->out[0] == '{' && json_parser_load_from_data (run->parser, run->out, -1, NULL))
    run->json = json_node_get_object (json_parser_get_root (run->parser));
  return run;
}

void
ff_run_free (FfRun *run)
{
  g_object_unref (run->parser);
  g_free (run->out);
  g_free (run->err);
  g_free (run);
}

FfRun *
ff_run_json (const char *command_line, int status)
{
  g_autofree char *with_json = g_strconcat (command_line, " --json", NULL);
  FfRun *run = ff_run (with_json);

  if (run->status != status || run->json == NULL || *run->err != '\0')
    fail_msg ("%s: status %d\n%s%s", command_line, run->status, run->out, run->err);
  return run;
}

static JsonNode *
node_at (FfRun *run, const char *path)
{
  g_auto (GStrv) steps = g_strsplit (path, ".", -1);
  JsonObject *object = run->json;
  JsonNode *node = NULL;

  for (guint i = 0; steps[i] != NULL; i++)
    {
      node = object != NULL ? json_object_get_member (object, steps[i]) : NULL;
      if (node == NULL)
        fail_msg ("no %s in\n%s", path, run->out);
      object = JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
    }
  return node;
}

double
ff_run_number (FfRun *run, const char *path)
{
  JsonNode *node = node_at (run, path);

  return JSON_NODE_HOLDS_VALUE (node) ? json_node_get_double (node) : NAN;
}

const char *
ff_run_text (FfRun *run, const char *path)
{
  JsonNode *node = node_at (run, path);

  assert_true (JSON_NODE_HOLDS_VALUE (node));
  return json_node_get_string (node);
}

gboolean
ff_run_is_null (FfRun *run, const char *path)
{
  return JSON_NODE_HOLDS_NULL (node_at (run, path));
}

JsonArray *
ff_run_array (FfRun *run, const char *path)
{
  JsonNode *node = node_at (run, path);

  assert_true (JSON_NODE_HOLDS_ARRAY (node));
  return json_node_get_array (node);
}

void
ff_run_refused (const char *command_line, const char *part)
{
  g_autoptr (FfRun) run = ff_run (command_line);
  const char *line_end = strchr (run->err, '\n');

  if (run->status != 2 || *run->out != '\0' || strstr (run->err, part) == NULL || line_end == NULL
      || line_end[1] != '\0')
    fail_msg ("%s: want “%s”, status %d\n%s%s", command_line, part, run->status, run->out,
              run->err);
}

void
ff_run_reads_well (const char *command_line)
{
  g_autoptr (FfRun) run = ff_run (command_line);
  g_auto (GStrv) lines = g_strsplit (run->out, "\n", -1);

  if (run->status != 0 || *run->out == '\0' || *run->err != '\0')
    fail_msg ("%s: status %d\n%s%s", command_line, run->status, run->out, run->err);
  for (guint i = 0; lines[i] != NULL; i++)
    if (g_utf8_strlen (lines[i], -1) > 80)
      fail_msg ("%s: too wide: %s", command_line, lines[i]);
}
