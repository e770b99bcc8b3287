/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-flight.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-rows.h"

/* No battery of a small aircraft lasts longer; a longer flight is a typing mistake. */
#define LONGEST_FLIGHT (4 * 60 * 60)

static const FfField flight_fields[] = {
  FF_ID (FfFlight, id, "id", N_ ("id"), TRUE),
  FF_ID (FfFlight, job_id, "job_id", N_ ("job"), TRUE),
  FF_TEXT (FfFlight, version, N_ ("version of the plan"), FALSE, 3),
  FF_WHOLE (FfFlight, line, N_ ("line"), 0, 999),
  FF_ID (FfFlight, line_id, "line_id", N_ ("first shot of the line"), FALSE),
  FF_INSTANT (FfFlight, off, N_ ("off")),
  FF_INSTANT (FfFlight, down, N_ ("down")),
  FF_ID (FfFlight, battery_id, "battery_id", N_ ("battery"), TRUE),
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,
    G_STRUCT_OFFSET (FfFlight, by), 0, 12, NULL },
  FF_TEXT (FfFlight, note, N_ ("note"), FALSE, 2000),
  FF_REAL (FfFlight, percent_off, N_ ("charge at take-off"), FALSE, 0, 100),
  FF_REAL (FfFlight, percent_down, N_ ("charge at landing"), FALSE, 0, 100),
  FF_REAL (FfFlight, battery_c, N_ ("temperature of the battery"), FALSE, -60, 120),
  FF_TEXT (FfFlight, conditions, N_ ("conditions at take-off"), FALSE, FF_FLIGHT_CONDITIONS_MOST),
  FF_TEXT (FfFlight, limits, N_ ("limits at take-off"), FALSE, FF_FLIGHT_LIMITS_MOST),
};
const FfFields ff_flight_fields = FF_FIELDS ("flight", flight_fields);

static const FfParts flight_filters = { "flight_filter", "flight_id", TRUE };

static gpointer
flight_blank (void)
{
  FfFlight *flight = g_new0 (FfFlight, 1);

  ff_fields_init (&ff_flight_fields, flight);
  flight->filter_ids = g_ptr_array_new_with_free_func (g_free);
  return flight;
}

FfFlight *
ff_flight_new (const char *job_id)
{
  FfFlight *flight = flight_blank ();

  g_free (flight->id);
  flight->id = ff_records_new_id ();
  ff_set_text (&flight->job_id, job_id);
  return flight;
}

void
ff_flight_free (FfFlight *flight)
{
  if (flight == NULL)
    return;
  ff_fields_clear (&ff_flight_fields, flight);
  g_ptr_array_unref (flight->filter_ids);
  g_free (flight);
}

gboolean
ff_flight_check (const FfFlight *flight, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("flight of line %d"), flight->line);
  const char *what = NULL;

  if (!ff_fields_check (&ff_flight_fields, flight, whose, error))
    return FALSE;
  if (flight->down <= flight->off)
    what = _ ("it is down before it is off");
  else if (flight->down - flight->off > LONGEST_FLIGHT)
    what = _ ("it is longer than four hours");
  else if (flight->percent_down > flight->percent_off)
    what = _ ("its battery is fuller at landing than at take-off");
  for (guint i = 0; what == NULL && i < flight->filter_ids->len; i++)
    if (!g_uuid_string_is_valid (g_ptr_array_index (flight->filter_ids, i)))
      what = _ ("a filter is named by something that is no id");
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

gboolean
ff_flight_append (FfStore *store, const FfFlight *flight, GError **error)
{
  gboolean own, done;

  if (!ff_flight_check (flight, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_rows_append (store, &ff_flight_fields, flight, error)
         && ff_parts_save_ids (store, &flight_filters, "filter_id", flight->id, flight->filter_ids,
                               error);
  return ff_rows_close (store, own, done, error);
}

GPtrArray *
ff_flights_load (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) flights
      = ff_rows_load (store, &ff_flight_fields, "WHERE job_id = ?1 ORDER BY \"off\", id", job_id,
                      flight_blank, (GDestroyNotify) ff_flight_free, error);

  for (guint i = 0; flights != NULL && i < flights->len; i++)
    {
      FfFlight *flight = g_ptr_array_index (flights, i);

      if (!ff_parts_load_ids (store, &flight_filters, "filter_id", flight->id, flight->filter_ids,
                              error))
        return NULL;
    }
  return g_steal_pointer (&flights);
}

static void
battery_flight_free (gpointer flight)
{
  g_free (((FfBatteryFlight *) flight)->battery_id);
  g_free (flight);
}

GPtrArray *
ff_battery_flights_load (FfStore *store, const char *battery_id, GError **error)
{
  g_autoptr (GPtrArray) flights = g_ptr_array_new_with_free_func (battery_flight_free);
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT f.battery_id, f.off, (f.down - f.off) / 60.0, f.percent_off,"
                          " f.percent_down, coalesce (f.battery_c, j.temperature_c)"
                          " FROM flight AS f JOIN job AS j ON j.id = f.job_id"
                          " WHERE ?1 = '' OR f.battery_id = ?1 ORDER BY f.off",
                          error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, battery_id, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      FfBatteryFlight *flight = g_new0 (FfBatteryFlight, 1);

      flight->battery_id = ff_statement_dup_text (statement, 0);
      flight->off = ff_statement_get_integer (statement, 1);
      flight->minutes = ff_statement_get_real (statement, 2);
      flight->percent_off = ff_statement_get_real (statement, 3);
      flight->percent_down = ff_statement_get_real (statement, 4);
      flight->temperature_c = ff_statement_get_real (statement, 5);
      g_ptr_array_add (flights, flight);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&flights) : NULL;
}
