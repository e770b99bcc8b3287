/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "ff-command.h"
#include "ff-job.h"
#include "ff-place.h"

static GOptionEntry entries[] = {
  G_OPTION_ENTRY_NULL,
};

static const char *
or_null (const char *text)
{
  return *text != '\0' ? text : NULL;
}

static gboolean
write_job (FfConsole *console, FfStore *store, const FfJob *job, GError **error)
{
  g_autoptr (FfPlace) place = NULL;
  FfJson *json = console->json;

  if (*job->place_id != '\0')
    {
      place = ff_place_load (store, job->place_id, error);
      if (place == NULL)
        return FALSE;
    }
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "id", job->id);
  ff_json_text (json, "title", job->title);
  ff_json_text (json, "date", or_null (job->date));
  ff_json_text (json, "place", place != NULL ? place->name : NULL);
  ff_json_text (json, "state", ff_name_token (&ff_names_job_state, (int) job->state));
  ff_json_text (json, "version", job->version);
  ff_json_end (json);
  ff_console_line (console, "%-10s  %s  %s%s%s, %s", *job->date != '\0' ? job->date : _ ("undated"),
                   job->version, job->title, place != NULL ? ", " : "",
                   place != NULL ? place->name : "",
                   ff_name_text (&ff_names_job_state, (int) job->state));
  return TRUE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  if (!ff_console_want_words (console, 0, "", error))
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_READ, error);
  jobs = store != NULL ? ff_jobs_load (store, error) : NULL;
  if (jobs == NULL)
    return FF_FAILED;
  ff_json_begin_array (console->json, "jobs");
  for (guint i = 0; i < jobs->len; i++)
    if (!write_job (console, store, g_ptr_array_index (jobs, i), error))
      return FF_FAILED;
  ff_json_end (console->json);
  if (jobs->len == 0)
    ff_console_line (console, _ ("No jobs yet."));
  return FF_DONE;
}

const FfCommand ff_command_jobs = {
  .name = "jobs",
  .summary = N_ ("List the jobs"),
  .usage = "jobs",
  .example = "fieldfarectl jobs --json",
  .entries = entries,
  .run = run,
};
