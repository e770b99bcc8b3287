/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-battery-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"
#include "ff-rows.h"

#define MOST_CELLS 64

/* ---- Resistance ---- */

FfResistance *
ff_resistance_new (void)
{
  FfResistance *resistance = g_new0 (FfResistance, 1);

  resistance->temperature_c = NAN;
  resistance->milliohms = g_array_new (FALSE, FALSE, sizeof (double));
  resistance->by = g_strdup ("");
  return resistance;
}

void
ff_resistance_free (FfResistance *resistance)
{
  if (resistance == NULL)
    return;
  g_array_unref (resistance->milliohms);
  g_free (resistance->by);
  g_free (resistance);
}

/* A comma is the decimal one when no blank stands beside any comma but blanks part the numbers. */
static char *
with_points (const char *text)
{
  gboolean parted = strchr (text, ' ') != NULL || strchr (text, ';') != NULL;
  gboolean listed = strstr (text, ", ") != NULL || strstr (text, " ,") != NULL;
  char *copy = g_strdup (text);

  return g_strdelimit (copy, ",", parted && !listed ? '.' : ' ');
}

gboolean
ff_resistance_parse (FfResistance *resistance, const char *text, int cells, GError **error)
{
  g_autofree char *points = with_points (text);
  g_auto (GStrv) parts = g_strsplit_set (points, " ;\t", -1);

  g_array_set_size (resistance->milliohms, 0);
  for (guint i = 0; parts[i] != NULL; i++)
    {
      double value;

      if (*parts[i] == '\0')
        continue;
      if (!ff_number_parse (_ ("resistance"), parts[i], 0.01, 10000, &value, error))
        return FALSE;
      g_array_append_val (resistance->milliohms, value);
    }
  if (resistance->milliohms->len > 0 && resistance->milliohms->len <= MOST_CELLS
      && (cells <= 0 || resistance->milliohms->len == (guint) cells))
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("found %u cells; accepted: one number a cell, in milliohms, %d of them"),
               resistance->milliohms->len, cells > 0 ? cells : MOST_CELLS);
  return FALSE;
}

double
ff_resistance_worst (const FfResistance *resistance)
{
  double worst = NAN;

  for (guint i = 0; i < resistance->milliohms->len; i++)
    worst = fmax (worst, g_array_index (resistance->milliohms, double, i));
  return worst;
}

#define NEARLY_FULL_PERCENT 95

static gboolean
add_cells (FfStore *store, const FfResistance *resistance, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "INSERT INTO resistance_cell (resistance, cell, milliohms)"
                          " VALUES ((SELECT max (sequence) FROM resistance), ?1, ?2)",
                          error);

  for (guint i = 0; statement != NULL && i < resistance->milliohms->len; i++)
    if (!ff_statement_bind_integer (statement, 1, i + 1, error)
        || !ff_statement_bind_real (statement, 2,
                                    g_array_index (resistance->milliohms, double, i), error)
        || !ff_statement_run (statement, error))
      return FALSE;
  return statement != NULL;
}

static gboolean
add_head (FfStore *store, const char *battery_id, const FfResistance *resistance, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "INSERT INTO resistance (battery_id, at, temperature_c, entered_by)"
                          " VALUES (?1, ?2, ?3, ?4)",
                          error);

  return statement != NULL && ff_statement_bind_text (statement, 1, battery_id, error)
         && ff_statement_bind_integer (statement, 2, resistance->at, error)
         && ff_statement_bind_real (statement, 3, resistance->temperature_c, error)
         && ff_statement_bind_text (statement, 4, resistance->by, error)
         && ff_statement_run (statement, error);
}

gboolean
ff_resistance_add (FfStore *store,
                   const char *battery_id,
                   const FfResistance *resistance,
                   GError **error)
{
  gboolean own, done;

  g_return_val_if_fail (resistance->milliohms->len > 0, FALSE);
  if (!ff_rows_open (store, &own, error))
    return FALSE;
  done = add_head (store, battery_id, resistance, error) && add_cells (store, resistance, error);
  return ff_rows_close (store, own, done, error);
}

static FfResistance *
resistance_of_row (FfStatement *statement)
{
  FfResistance *resistance = ff_resistance_new ();

  resistance->at = ff_statement_get_integer (statement, 1);
  resistance->temperature_c = ff_statement_get_real (statement, 2);
  ff_set_text (&resistance->by, ff_statement_get_text (statement, 3));
  return resistance;
}

GPtrArray *
ff_resistances_load (FfStore *store, const char *battery_id, GError **error)
{
  g_autoptr (GPtrArray) found
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_resistance_free);
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT r.sequence, r.at, r.temperature_c, r.entered_by, c.milliohms"
                          " FROM resistance AS r JOIN resistance_cell AS c ON c.resistance"
                          " = r.sequence WHERE r.battery_id = ?1 ORDER BY r.at, r.sequence, c.cell",
                          error);
  FfStep step = FF_STEP_ERROR;
  FfResistance *last = NULL;
  gint64 sequence = -1;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, battery_id, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      double milliohms = ff_statement_get_real (statement, 4);

      if (last == NULL || ff_statement_get_integer (statement, 0) != sequence)
        {
          last = resistance_of_row (statement);
          g_ptr_array_add (found, last);
        }
      sequence = ff_statement_get_integer (statement, 0);
      g_array_append_val (last->milliohms, milliohms);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&found) : NULL;
}

double
ff_resistance_new_cell (const FfItem *battery, GPtrArray *resistances)
{
  if (isfinite (battery->new_milliohms) || resistances->len == 0)
    return battery->new_milliohms;
  return ff_resistance_worst (g_ptr_array_index (resistances, 0));
}

/* ---- The day ---- */

void
ff_battery_day_free (FfBatteryDay *day)
{
  if (day == NULL)
    return;
  g_free (day->by);
  g_free (day);
}

gboolean
ff_battery_day_add (FfStore *store,
                    const char *battery_id,
                    const FfBatteryDay *day,
                    GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "INSERT INTO battery_day (battery_id, at, state, until, percent,"
                          " temperature_c, entered_by)"
                          " VALUES (?1, ?2, ?3, nullif (?4, 0), ?5, ?6, ?7)",
                          error);

  return statement != NULL && ff_statement_bind_text (statement, 1, battery_id, error)
         && ff_statement_bind_integer (statement, 2, day->at, error)
         && ff_statement_bind_text (statement, 3,
                                    ff_name_token (&ff_names_battery_day, (int) day->state), error)
         && ff_statement_bind_integer (statement, 4, day->until, error)
         && ff_statement_bind_real (statement, 5, day->percent, error)
         && ff_statement_bind_real (statement, 6, day->temperature_c, error)
         && ff_statement_bind_text (statement, 7, day->by, error)
         && ff_statement_run (statement, error);
}

/* "Sat 18 Sep 21:40" */
static char *
local_words (gint64 at)
{
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc (at);
  g_autoptr (GDateTime) local = utc != NULL ? g_date_time_to_local (utc) : NULL;

  return local != NULL ? g_date_time_format (local, "%a %e %b %H:%M") : g_strdup ("");
}

gboolean
ff_battery_day_is_full (const FfBatteryDay *day)
{
  return day->state == FF_BATTERY_DAY_FULL || day->percent >= NEARLY_FULL_PERCENT;
}

char *
ff_battery_day_words (const FfBatteryDay *day)
{
  g_autoptr (GString) words = g_string_new (NULL);
  g_autofree char *percent = NULL;
  g_autofree char *celsius = NULL;
  g_autofree char *until = NULL;
  g_autofree char *at = NULL;

  if (day == NULL)
    return g_strdup (_ ("Nothing is entered yet about its charge."));
  percent = ff_number_format (day->percent, 0);
  celsius = ff_number_format (day->temperature_c, 0);
  at = local_words (day->at);
  g_string_append (words, ff_name_text (&ff_names_battery_day, (int) day->state));
  if (day->until != 0)
    {
      until = local_words (day->until);
      /* Translators: a battery is on charge until this time. */
      g_string_append_printf (words, _ (" until %s"), until);
    }
  if (isfinite (day->percent))
    g_string_append_printf (words, ", %s %%", percent);
  if (isfinite (day->temperature_c))
    g_string_append_printf (words, ", %s °C", celsius);
  /* Translators: who entered the state of a battery, and when. */
  g_string_append_printf (words, _ ("; entered by %s, %s"), *day->by != '\0' ? day->by : "?", at);
  return g_string_free (g_steal_pointer (&words), FALSE);
}

static FfBatteryDay *
day_of_row (FfStatement *statement, GError **error)
{
  FfBatteryDay *day;
  int state;

  if (!ff_name_parse (&ff_names_battery_day, ff_statement_get_text (statement, 2), &state, error))
    return NULL;
  day = g_new0 (FfBatteryDay, 1);
  day->at = ff_statement_get_integer (statement, 1);
  day->state = (FfBatteryDayState) state;
  day->until = ff_statement_get_integer (statement, 3);
  day->percent = ff_statement_get_real (statement, 4);
  day->temperature_c = ff_statement_get_real (statement, 5);
  day->by = ff_statement_dup_text (statement, 6);
  return day;
}

GHashTable *
ff_battery_days_load (FfStore *store, GError **error)
{
  g_autoptr (GHashTable) days = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                                       (GDestroyNotify) ff_battery_day_free);
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT battery_id, at, state, until, percent, temperature_c, entered_by"
                          " FROM battery_day WHERE sequence IN"
                          " (SELECT max (sequence) FROM battery_day GROUP BY battery_id)",
                          error);
  FfStep step = FF_STEP_ERROR;

  while (statement != NULL && (step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      FfBatteryDay *day = day_of_row (statement, error);

      if (day == NULL)
        return NULL;
      g_hash_table_insert (days, ff_statement_dup_text (statement, 0), day);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&days) : NULL;
}

/* ---- Incidents ---- */

void
ff_incident_free (FfIncident *incident)
{
  if (incident == NULL)
    return;
  g_free (incident->found);
  g_free (incident->by);
  g_free (incident);
}

static gboolean
check_incident (const FfIncident *incident, GError **error)
{
  const char *what = NULL;

  if (incident->found == NULL || *incident->found == '\0')
    what = _ ("write what was found: the next to hold the battery wants to know");
  else if (incident->by == NULL || *incident->by == '\0')
    what = _ ("a decision about a battery has a name to it: say who is here");
  else if (incident->sign == FF_SIGN_SWELLING && incident->decision == FF_DECISION_KEEP)
    what = _ ("a swollen battery is not kept in use; accepted: quarantine or retire");
  if (what != NULL)
    g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, what);
  return what == NULL;
}

static gboolean
append_incident (FfStore *store,
                 const char *battery_id,
                 const FfIncident *incident,
                 GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "INSERT INTO incident (battery_id, at, sign, decision, found, entered_by)"
                          " VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                          error);

  return statement != NULL && ff_statement_bind_text (statement, 1, battery_id, error)
         && ff_statement_bind_integer (statement, 2, incident->at, error)
         && ff_statement_bind_text (statement, 3,
                                    ff_name_token (&ff_names_sign, (int) incident->sign), error)
         && ff_statement_bind_text (
             statement, 4, ff_name_token (&ff_names_decision, (int) incident->decision), error)
         && ff_statement_bind_text (statement, 5, incident->found, error)
         && ff_statement_bind_text (statement, 6, incident->by, error)
         && ff_statement_run (statement, error);
}

gboolean
ff_incident_add (FfStore *store,
                 const char *battery_id,
                 const FfIncident *incident,
                 GError **error)
{
  static const FfState states[] = { [FF_DECISION_QUARANTINE] = FF_STATE_QUARANTINED,
                                    [FF_DECISION_RETIRE] = FF_STATE_RETIRED,
                                    [FF_DECISION_KEEP] = FF_STATE_SERVICEABLE };
  g_autofree char *why = NULL;
  gboolean own, done;

  if (!check_incident (incident, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  /* Translators: what was seen at a battery ("swelling"), then what was found, in words. */
  why = g_strdup_printf (_ ("%s: %s"), ff_name_text (&ff_names_sign, (int) incident->sign),
                         incident->found);
  done = append_incident (store, battery_id, incident, error)
         && ff_item_set_state (store, battery_id, states[incident->decision], why, NULL, NULL,
                               incident->by, incident->at, error);
  return ff_rows_close (store, own, done, error);
}

GPtrArray *
ff_incidents_load (FfStore *store, const char *battery_id, GError **error)
{
  g_autoptr (GPtrArray) found
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_incident_free);
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT at, sign, decision, found, entered_by FROM incident"
                          " WHERE battery_id = ?1 ORDER BY sequence DESC",
                          error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, battery_id, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      FfIncident *incident = g_new0 (FfIncident, 1);
      int sign, decision;

      g_ptr_array_add (found, incident);
      if (!ff_name_parse (&ff_names_sign, ff_statement_get_text (statement, 1), &sign, error)
          || !ff_name_parse (&ff_names_decision, ff_statement_get_text (statement, 2), &decision,
                             error))
        return NULL;
      incident->at = ff_statement_get_integer (statement, 0);
      incident->sign = (FfSign) sign;
      incident->decision = (FfDecision) decision;
      incident->found = ff_statement_dup_text (statement, 3);
      incident->by = ff_statement_dup_text (statement, 4);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&found) : NULL;
}
