/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-item-event.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-rows.h"

static gboolean
check_event (const char *why, const char *until, GError **error)
{
  FfDate date;

  if (why == NULL || *why == '\0')
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("a reason is missing: the next to hold the item wants to know"));
      return FALSE;
    }
  return until == NULL || *until == '\0' || ff_date_parse (until, &date, error);
}

/* Out to be repaired and back is no way round: what counts is whether anything after the last
 * quarantine says that it was rectified. */
static gboolean
is_held (FfStore *store, const char *item_id, gboolean *ret_held, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT state FROM item_event WHERE item_id = ?1"
                          " AND state IN ('quarantined', 'serviceable')"
                          " ORDER BY sequence DESC LIMIT 1",
                          error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, item_id, error))
    return FALSE;
  step = ff_statement_step (statement, error);
  *ret_held = step == FF_STEP_ROW
              && g_str_equal (ff_statement_get_text (statement, 0),
                              ff_name_token (&ff_names_state, FF_STATE_QUARANTINED));
  return step != FF_STEP_ERROR;
}

static gboolean
check_return (FfStore *store, const char *item_id, FfState state, const char *by, GError **error)
{
  gboolean held = FALSE;

  if (state != FF_STATE_SERVICEABLE || (by != NULL && *by != '\0'))
    return TRUE;
  if (!is_held (store, item_id, &held, error))
    return FALSE;
  if (held)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("it was quarantined, and comes back only with who rectified it: say who is "
                    "here, and write what was found and done"));
  return !held;
}

gboolean
ff_item_set_state (FfStore *store,
                   const char *item_id,
                   FfState state,
                   const char *why,
                   const char *with,
                   const char *until,
                   const char *by,
                   gint64 at,
                   GError **error)
{
  g_autoptr (FfStatement) statement = NULL;

  if (!check_event (why, until, error) || !check_return (store, item_id, state, by, error))
    return FALSE;
  statement = ff_statement_new (store,
                                "INSERT INTO item_event (item_id, at, state, why, out_with,"
                                " out_until, entered_by) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                                error);
  return statement != NULL && ff_statement_bind_text (statement, 1, item_id, error)
         && ff_statement_bind_integer (statement, 2, at, error)
         && ff_statement_bind_text (statement, 3, ff_name_token (&ff_names_state, (int) state),
                                    error)
         && ff_statement_bind_text (statement, 4, why, error)
         && ff_statement_bind_text (statement, 5, with, error)
         && ff_statement_bind_text (statement, 6, until, error)
         && ff_statement_bind_text (statement, 7, by, error)
         && ff_statement_run (statement, error);
}

/* The story */

void
ff_item_event_free (FfItemEvent *event)
{
  if (event == NULL)
    return;
  g_free (event->why);
  g_free (event->out_with);
  g_free (event->out_until);
  g_free (event->by);
  g_free (event);
}

static FfItemEvent *
read_event (FfStatement *statement, GError **error)
{
  int state;
  FfItemEvent *event;

  if (!ff_name_parse (&ff_names_state, ff_statement_get_text (statement, 1), &state, error))
    return NULL;
  event = g_new0 (FfItemEvent, 1);
  event->at = ff_statement_get_integer (statement, 0);
  event->state = (FfState) state;
  event->why = ff_statement_dup_text (statement, 2);
  event->out_with = ff_statement_dup_text (statement, 3);
  event->out_until = ff_statement_dup_text (statement, 4);
  event->by = ff_statement_dup_text (statement, 5);
  return event;
}

GPtrArray *
ff_item_events_load (FfStore *store, const char *item_id, guint most, GError **error)
{
  g_autoptr (GPtrArray) events
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_item_event_free);
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT at, state, why, out_with, out_until, entered_by FROM item_event"
                          " WHERE item_id = ?1 ORDER BY sequence DESC LIMIT ?2",
                          error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, item_id, error)
      || !ff_statement_bind_integer (statement, 2, most, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      FfItemEvent *event = read_event (statement, error);

      if (event == NULL)
        return NULL;
      g_ptr_array_add (events, event);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&events) : NULL;
}
