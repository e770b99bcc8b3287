/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-kept-run.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-rows.h"

#define LONGEST_LIST (128 * 1024)
#define LONGEST_WORDS 1000

static const FfField run_fields[] = {
  FF_ID (FfKeptRun, id, "id", N_ ("id"), TRUE),
  FF_ID (FfKeptRun, job_id, "job_id", N_ ("job"), TRUE),
  FF_ID (FfKeptRun, list_id, "list_id", N_ ("list"), TRUE),
  FF_TEXT (FfKeptRun, title, N_ ("title"), TRUE, 200),
  FF_TEXT (FfKeptRun, text, N_ ("text"), TRUE, LONGEST_LIST),
  FF_TEXT (FfKeptRun, conditions, N_ ("conditions"), FALSE, 200),
  FF_WHOLE (FfKeptRun, line, N_ ("line"), 0, 999),
  FF_WHOLE (FfKeptRun, restart_after_s, N_ ("longest interruption"), 1, 86400),
  FF_WHOLE (FfKeptRun, restart_on, N_ ("changes that start a section anew"), 0, 7),
  FF_INSTANT (FfKeptRun, started_at, N_ ("start")),
};
const FfFields ff_kept_run_fields = FF_FIELDS ("run", run_fields);

static const FfField event_fields[] = {
  FF_ID (FfKeptEvent, run_id, "run_id", N_ ("run"), TRUE),
  FF_WHOLE (FfKeptEvent, sequence, N_ ("number"), 1, 1000000),
  FF_NAME (FfKeptEvent, act, N_ ("event"), &ff_names_act),
  FF_WHOLE (FfKeptEvent, item, N_ ("item"), -1, 10000),
  FF_INSTANT (FfKeptEvent, at, N_ ("time")),
  FF_INSTANT (FfKeptEvent, entered_at, N_ ("time of entry")),
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfKeptEvent, by), 0, 12, NULL },
  FF_TEXT (FfKeptEvent, other, N_ ("initials of the second person"), FALSE, 12),
  FF_TEXT (FfKeptEvent, said, N_ ("value"), FALSE, LONGEST_WORDS),
  FF_TEXT (FfKeptEvent, expected, N_ ("expected value"), FALSE, LONGEST_WORDS),
  FF_TEXT (FfKeptEvent, why, N_ ("reason"), FALSE, LONGEST_WORDS),
  FF_ID (FfKeptEvent, subject_id, "subject_id", N_ ("item of the gear"), FALSE),
  FF_WHOLE (FfKeptEvent, changed, N_ ("what changed"), 0, 7),
  FF_WHOLE (FfKeptEvent, after_ms, N_ ("milliseconds"), -1, 86400000),
  FF_FLAG (FfKeptEvent, from_paper, N_ ("from paper")),
};
const FfFields ff_kept_event_fields = FF_FIELDS ("run_event", event_fields);

static gpointer
run_blank (void)
{
  FfKeptRun *run = g_new0 (FfKeptRun, 1);

  ff_fields_init (&ff_kept_run_fields, run);
  return run;
}

FfKeptRun *
ff_kept_run_new (const char *job_id)
{
  FfKeptRun *run = run_blank ();

  g_free (run->id);
  run->id = ff_records_new_id ();
  ff_set_text (&run->job_id, job_id);
  return run;
}

void
ff_kept_run_free (FfKeptRun *run)
{
  if (run == NULL)
    return;
  ff_fields_clear (&ff_kept_run_fields, run);
  g_free (run);
}

static gpointer
event_blank (void)
{
  FfKeptEvent *event = g_new0 (FfKeptEvent, 1);

  ff_fields_init (&ff_kept_event_fields, event);
  return event;
}

FfKeptEvent *
ff_kept_event_new (void)
{
  return event_blank ();
}

void
ff_kept_event_free (FfKeptEvent *event)
{
  if (event == NULL)
    return;
  ff_fields_clear (&ff_kept_event_fields, event);
  g_free (event);
}

gboolean
ff_kept_run_check (const FfKeptRun *run, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("run of “%s”"), run->title);

  return ff_fields_check (&ff_kept_run_fields, run, whose, error);
}

gboolean
ff_kept_event_check (const FfKeptEvent *event, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("event %d of a run"), event->sequence);

  return ff_fields_check (&ff_kept_event_fields, event, whose, error);
}

gboolean
ff_kept_run_append (FfStore *store, const FfKeptRun *run, GError **error)
{
  return ff_kept_run_check (run, error)
         && ff_rows_append (store, &ff_kept_run_fields, run, error);
}

gboolean
ff_kept_event_append (FfStore *store, const FfKeptEvent *event, GError **error)
{
  return ff_kept_event_check (event, error)
         && ff_rows_append (store, &ff_kept_event_fields, event, error);
}

GPtrArray *
ff_kept_runs_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_kept_run_fields, "WHERE job_id = ?1 ORDER BY started_at, rowid",
                       job_id, run_blank, (GDestroyNotify) ff_kept_run_free, error);
}

FfKeptRun *
ff_kept_run_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found
      = ff_rows_load (store, &ff_kept_run_fields, "WHERE id = ?1", id, run_blank,
                      (GDestroyNotify) ff_kept_run_free, error);

  if (found != NULL && found->len == 0)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no run of a list has the id %s"), id);
  return found != NULL && found->len > 0 ? g_ptr_array_steal_index (found, 0) : NULL;
}

GPtrArray *
ff_kept_events_load (FfStore *store, const char *run_id, GError **error)
{
  return ff_rows_load (store, &ff_kept_event_fields, "WHERE run_id = ?1 ORDER BY sequence", run_id,
                       event_blank, (GDestroyNotify) ff_kept_event_free, error);
}

/* Conditions of a day */

static FfStatement *
condition_statement (FfStore *store,
                     const char *sql,
                     const char *job_id,
                     const char *condition,
                     GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);

  if (statement == NULL || !ff_statement_bind_text (statement, 1, job_id, error)
      || !ff_statement_bind_text (statement, 2, condition, error))
    return NULL;
  return g_steal_pointer (&statement);
}

gboolean
ff_day_condition_load (FfStore *store,
                       const char *job_id,
                       const char *condition,
                       int *ret_holds,
                       GError **error)
{
  g_autoptr (FfStatement) statement = condition_statement (
      store, "SELECT holds FROM day_condition WHERE job_id = ?1 AND condition = ?2", job_id,
      condition, error);
  FfStep step = statement != NULL ? ff_statement_step (statement, error) : FF_STEP_ERROR;

  if (step == FF_STEP_ERROR)
    return FALSE;
  *ret_holds = step == FF_STEP_ROW ? (int) ff_statement_get_integer (statement, 0) : -1;
  return TRUE;
}

gboolean
ff_day_condition_save (FfStore *store,
                       const char *job_id,
                       const char *condition,
                       int holds,
                       GError **error)
{
  g_autoptr (FfStatement) statement = condition_statement (
      store,
      holds < 0 ? "DELETE FROM day_condition WHERE job_id = ?1 AND condition = ?2"
                : "INSERT INTO day_condition (job_id, condition, holds) VALUES (?1, ?2, ?3)"
                  " ON CONFLICT (job_id, condition) DO UPDATE SET holds = excluded.holds",
      job_id, condition, error);

  return statement != NULL && (holds < 0 || ff_statement_bind_integer (statement, 3, holds, error))
         && ff_statement_run (statement, error);
}
