/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Taking records out again. What happened stays: a record that the log rests on is refused with the
 * sentence that says what to do instead. */
#include <glib/gi18n-lib.h>

#include "ff-carrier.h"
#include "ff-crew.h"
#include "ff-error.h"
#include "ff-item-search.h"
#include "ff-job.h"
#include "ff-place.h"
#include "ff-rows.h"
#include "ff-shot.h"

static gboolean
run_with_id (FfStore *store, const char *sql, const char *id, GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);

  return statement != NULL && ff_statement_bind_text (statement, 1, id, error)
         && ff_statement_run (statement, error);
}

static gboolean
run_all (FfStore *store, const char *const *sql, guint n, const char *id, GError **error)
{
  gboolean own, done = TRUE;

  if (!ff_rows_open (store, &own, error))
    return FALSE;
  for (guint i = 0; i < n && done; i++)
    done = run_with_id (store, sql[i], id, error);
  return ff_rows_close (store, own, done, error);
}

/* FALSE with `refusal` as the error when one of the ids in `table`.`column` is this one. */
static gboolean
nothing_rests_on (FfStore *store,
                  const char *table,
                  const char *column,
                  const char *id,
                  const char *refusal,
                  GError **error)
{
  g_autofree char *sql
      = g_strdup_printf ("SELECT 1 FROM \"%s\" WHERE \"%s\" = ?1 LIMIT 1", table, column);
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);
  FfStep step = FF_STEP_ERROR;

  if (statement != NULL && ff_statement_bind_text (statement, 1, id, error))
    step = ff_statement_step (statement, error);
  if (step == FF_STEP_ROW)
    g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, refusal);
  return step == FF_STEP_DONE;
}

gboolean
ff_job_delete (FfStore *store, const char *id, GError **error)
{
  static const char *const logs[] = { "flight", "reading", "plan_version", "amendment",
                                      "measurement", "weather_report", "weather_call",
                                      "pack_event", "run", "briefed" };
  static const char *const sql[] = {
    "DELETE FROM line_lock WHERE job_id = ?1",
    "DELETE FROM shot WHERE job_id = ?1",     "DELETE FROM day_event WHERE job_id = ?1",
    "DELETE FROM job_item WHERE job_id = ?1", "DELETE FROM job_crew WHERE job_id = ?1",
    "DELETE FROM job_limit_sheet WHERE job_id = ?1", "DELETE FROM charge_watch WHERE job_id = ?1",
    "DELETE FROM day_condition WHERE job_id = ?1",
    "DELETE FROM job WHERE id = ?1",
  };

  for (guint i = 0; i < G_N_ELEMENTS (logs); i++)
    if (!nothing_rests_on (store, logs[i], "job_id", id,
                           _ ("this job has a log, and what happened is kept; put the job away "
                              "instead"),
                           error))
      return FALSE;
  return run_all (store, sql, G_N_ELEMENTS (sql), id, error);
}

gboolean
ff_shot_delete (FfStore *store, const char *id, GError **error)
{
  return run_with_id (store, "DELETE FROM shot WHERE id = ?1", id, error);
}

gboolean
ff_place_delete (FfStore *store, const char *id, GError **error)
{
  static const char *const sql[] = {
    "DELETE FROM hazard WHERE place_id = ?1",
    "DELETE FROM place WHERE id = ?1",
  };

  return nothing_rests_on (store, "job", "place_id", id,
                           _ ("a job is at this place; give the job another place first"), error)
         && run_all (store, sql, G_N_ELEMENTS (sql), id, error);
}

static gboolean
item_has_no_history (FfStore *store, const char *id, GError **error)
{
  const char *refusal = _ ("this item has a history, and what happened is kept; retire it instead");

  return nothing_rests_on (store, "item_event", "item_id", id, refusal, error)
         && nothing_rests_on (store, "fitting", "item_id", id, refusal, error)
         && nothing_rests_on (store, "fitting", "on_id", id, refusal, error)
         && nothing_rests_on (store, "resistance", "battery_id", id, refusal, error)
         && nothing_rests_on (store, "battery_day", "battery_id", id, refusal, error)
         && nothing_rests_on (store, "incident", "battery_id", id, refusal, error)
         && nothing_rests_on (store, "flight", "battery_id", id, refusal, error)
         && nothing_rests_on (store, "flight_filter", "filter_id", id, refusal, error)
         && nothing_rests_on (store, "run_event", "subject_id", id, refusal, error)
         && nothing_rests_on (store, "pack_event", "item_id", id, refusal, error);
}

static gboolean
item_is_not_locked (FfStore *store, const char *id, GError **error)
{
  const char *refusal = _ ("a line of a plan is locked to this item; unlock it there first");

  return nothing_rests_on (store, "line_lock", "battery_id", id, refusal, error)
         && nothing_rests_on (store, "line_lock", "filter_id", id, refusal, error);
}

static gboolean
remove_item (FfStore *store, const char *id, GError **error)
{
  static const char *const sql[] = {
    "DELETE FROM job_item WHERE item_id = ?1", "DELETE FROM aircraft WHERE item_id = ?1",
    "DELETE FROM camera WHERE item_id = ?1",   "DELETE FROM filter WHERE item_id = ?1",
    "DELETE FROM battery WHERE item_id = ?1",  "DELETE FROM charger WHERE item_id = ?1",
    "DELETE FROM card WHERE item_id = ?1",     "DELETE FROM document WHERE item_id = ?1",
    "DELETE FROM goes_with WHERE item_id = ?1", "DELETE FROM item_photo WHERE item_id = ?1",
    "DELETE FROM item WHERE id = ?1",
  };

  gboolean own, done;

  if (!ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_item_unindex (store, id, error) && run_all (store, sql, G_N_ELEMENTS (sql), id, error);
  return ff_rows_close (store, own, done, error);
}

gboolean
ff_item_delete (FfStore *store, const char *id, GError **error)
{
  return item_has_no_history (store, id, error) && item_is_not_locked (store, id, error)
         && nothing_rests_on (store, "job", "aircraft_id", id,
                              _ ("a job flies this aircraft; choose another one there first"),
                              error)
         && nothing_rests_on (store, "aircraft", "camera_id", id,
                              _ ("an aircraft carries this camera; choose another one there first"),
                              error)
         && nothing_rests_on (store, "goes_with", "with_id", id,
                              _ ("another item can't go without this one; change that first"),
                              error)
         && remove_item (store, id, error);
}

gboolean
ff_member_delete (FfStore *store, const char *id, GError **error)
{
  return nothing_rests_on (store, "job_crew", "member_id", id,
                           _ ("this member holds a role in a job; take that away first"), error)
         && nothing_rests_on (store, "charger", "attended_by", id,
                              _ ("this member attends a charger; choose somebody else there first"),
                              error)
         && nothing_rests_on (store, "charge_watch", "member_id", id,
                              _ ("this member attends a charger; choose somebody else there first"),
                              error)
         && run_with_id (store, "DELETE FROM crew_member WHERE id = ?1", id, error);
}

gboolean
ff_job_crew_remove (FfStore *store,
                    const char *job_id,
                    const char *member_id,
                    FfRole role,
                    GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (
      store, "DELETE FROM job_crew WHERE job_id = ?1 AND member_id = ?2 AND role = ?3", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, job_id, error)
         && ff_statement_bind_text (statement, 2, member_id, error)
         && ff_statement_bind_text (statement, 3, ff_name_token (&ff_names_role, (int) role), error)
         && ff_statement_run (statement, error);
}

gboolean
ff_carrier_delete (FfStore *store, const char *id, GError **error)
{
  static const char *const sql[] = {
    "DELETE FROM carrier_band WHERE carrier_id = ?1",
    "DELETE FROM carrier WHERE id = ?1",
  };

  return run_all (store, sql, G_N_ELEMENTS (sql), id, error);
}
