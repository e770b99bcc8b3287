/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "ff-command.h"
#include "ff-demo.h"
#include "ff-job.h"

static GOptionEntry entries[] = {
  G_OPTION_ENTRY_NULL,
};

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  if (!ff_console_want_words (console, 0, "", error))
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_WRITE, error);
  if (store == NULL || !ff_demo_fill (store, error))
    return FF_FAILED;
  jobs = ff_jobs_load (store, error);
  if (jobs == NULL)
    return FF_FAILED;
  ff_json_begin_array (console->json, "jobs");
  ff_console_line (console, _ ("The demo day is stored:"));
  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);

      ff_json_text (console->json, NULL, job->title);
      ff_console_line (console, "  %s  %s", job->date, job->title);
    }
  ff_json_end (console->json);
  return FF_DONE;
}

const FfCommand ff_command_demo = {
  .name = "demo",
  .summary = N_ ("Fill an empty store with the demo day"),
  .usage = "demo",
  .example = "fieldfarectl demo --data-dir /tmp/demo",
  .entries = entries,
  .run = run,
};
