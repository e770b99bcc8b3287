/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-weather.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-limit-kind.h"
#include "ff-rows.h"

#define FF_BY(type)                                                                                \
  { "entered_by", N_ ("initials of who entered it"), FF_FIELD_TEXT, FALSE,                         \
    G_STRUCT_OFFSET (type, by), 0, 12, NULL }

static const FfName call_names[] = {
  /* TRANSLATORS: the crew's decision about the weather. Standing by is waiting, and is paid. */
  [FF_CALL_GO] = { "go", N_ ("go") },
  [FF_CALL_STAND_BY] = { "stand-by", N_ ("stand by") },
  [FF_CALL_NO_GO] = { "no-go", N_ ("no go") },
};
const FfNames ff_names_call = { "weather call", call_names, G_N_ELEMENTS (call_names) };

static const FfField measurement_fields[] = {
  FF_ID (FfMeasurement, id, "id", N_ ("id"), TRUE),
  FF_ID (FfMeasurement, job_id, "job_id", N_ ("job"), TRUE),
  FF_INSTANT (FfMeasurement, at, N_ ("time")),
  FF_TEXT (FfMeasurement, kind, N_ ("kind"), TRUE, 64),
  FF_REAL (FfMeasurement, value, N_ ("value"), FALSE, -1e6, 1e6),
  FF_TEXT (FfMeasurement, unit, N_ ("unit"), FALSE, 24),
  FF_REAL (FfMeasurement, height_m, N_ ("height of the sensor"), FALSE, 0, 1000),
  FF_TEXT (FfMeasurement, note, N_ ("note"), FALSE, 500),
  FF_BY (FfMeasurement),
};
const FfFields ff_measurement_fields = FF_FIELDS ("measurement", measurement_fields);

static const FfField report_fields[] = {
  FF_ID (FfWeatherReport, id, "id", N_ ("id"), TRUE),
  FF_ID (FfWeatherReport, job_id, "job_id", N_ ("job"), TRUE),
  FF_INSTANT (FfWeatherReport, at, N_ ("time")),
  FF_TEXT (FfWeatherReport, text, N_ ("report"), TRUE, 4096),
  FF_REAL (FfWeatherReport, distance_m, N_ ("distance of the aerodrome"), FALSE, 0, 500000),
  FF_REAL (FfWeatherReport, elevation_m, N_ ("elevation of the aerodrome"), FALSE, -500, 6000),
  FF_BY (FfWeatherReport),
};
const FfFields ff_weather_report_fields = FF_FIELDS ("weather_report", report_fields);

static const FfField call_fields[] = {
  FF_ID (FfWeatherCall, id, "id", N_ ("id"), TRUE),
  FF_ID (FfWeatherCall, job_id, "job_id", N_ ("job"), TRUE),
  FF_INSTANT (FfWeatherCall, at, N_ ("time")),
  FF_NAME (FfWeatherCall, decision, N_ ("decision"), &ff_names_call),
  FF_TEXT (FfWeatherCall, why, N_ ("reason"), TRUE, 500),
  FF_INSTANT (FfWeatherCall, until, N_ ("standing by until")),
  { "entered_by", N_ ("initials of who decided"), FF_FIELD_TEXT, TRUE,
    G_STRUCT_OFFSET (FfWeatherCall, by), 0, 12, NULL },
};
const FfFields ff_weather_call_fields = FF_FIELDS ("weather_call", call_fields);

static const FfField air_fields[] = {
  FF_WHOLE (FfAirRules, id, "id", 1, 1),
  FF_REAL (FfAirRules, thin_air, N_ ("share of what thin air takes"), TRUE, 0, 3),
};
static const FfFields ff_air_rules_fields = FF_FIELDS ("air_rules", air_fields);

static gpointer
measurement_blank (void)
{
  FfMeasurement *measurement = g_new0 (FfMeasurement, 1);

  ff_fields_init (&ff_measurement_fields, measurement);
  return measurement;
}

static gpointer
report_blank (void)
{
  FfWeatherReport *report = g_new0 (FfWeatherReport, 1);

  ff_fields_init (&ff_weather_report_fields, report);
  return report;
}

static gpointer
call_blank (void)
{
  FfWeatherCall *call = g_new0 (FfWeatherCall, 1);

  ff_fields_init (&ff_weather_call_fields, call);
  return call;
}

FfMeasurement *
ff_measurement_new (const char *job_id)
{
  FfMeasurement *measurement = measurement_blank ();

  g_free (measurement->id);
  measurement->id = ff_records_new_id ();
  ff_set_text (&measurement->job_id, job_id);
  return measurement;
}

FfWeatherReport *
ff_weather_report_new (const char *job_id)
{
  FfWeatherReport *report = report_blank ();

  g_free (report->id);
  report->id = ff_records_new_id ();
  ff_set_text (&report->job_id, job_id);
  return report;
}

FfWeatherCall *
ff_weather_call_new (const char *job_id)
{
  FfWeatherCall *call = call_blank ();

  g_free (call->id);
  call->id = ff_records_new_id ();
  ff_set_text (&call->job_id, job_id);
  return call;
}

void
ff_measurement_free (FfMeasurement *measurement)
{
  if (measurement == NULL)
    return;
  ff_fields_clear (&ff_measurement_fields, measurement);
  g_free (measurement);
}

void
ff_weather_report_free (FfWeatherReport *report)
{
  if (report == NULL)
    return;
  ff_fields_clear (&ff_weather_report_fields, report);
  g_free (report);
}

void
ff_weather_call_free (FfWeatherCall *call)
{
  if (call == NULL)
    return;
  ff_fields_clear (&ff_weather_call_fields, call);
  g_free (call);
}

gboolean
ff_measurement_check (const FfMeasurement *measurement, GError **error)
{
  const FfLimitKind *kind = ff_limit_kind_find (measurement->kind);
  g_autofree char *accepted = NULL;

  if (!ff_fields_check (&ff_measurement_fields, measurement, _ ("measurement"), error))
    return FALSE;
  if (kind == NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("measurement: “%s” is nothing that a limit speaks of"), measurement->kind);
      return FALSE;
    }
  if (isnan (measurement->value))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: the value is missing"),
                   ff_limit_kind_text (kind));
      return FALSE;
    }
  if (ff_unit_find (kind->dimension, measurement->unit) != NULL)
    return TRUE;
  accepted = ff_unit_accepted (kind->dimension);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” is no unit for it; accepted: %s"),
               ff_limit_kind_text (kind), measurement->unit, *accepted != '\0' ? accepted : _ ("none"));
  return FALSE;
}

gboolean
ff_measurement_append (FfStore *store, const FfMeasurement *measurement, GError **error)
{
  return ff_measurement_check (measurement, error)
         && ff_rows_append (store, &ff_measurement_fields, measurement, error);
}

gboolean
ff_weather_report_check (const FfWeatherReport *report, GError **error)
{
  return ff_fields_check (&ff_weather_report_fields, report, _ ("weather report"), error);
}

gboolean
ff_weather_report_append (FfStore *store, const FfWeatherReport *report, GError **error)
{
  return ff_weather_report_check (report, error)
         && ff_rows_append (store, &ff_weather_report_fields, report, error);
}

gboolean
ff_weather_call_check (const FfWeatherCall *call, GError **error)
{
  return ff_fields_check (&ff_weather_call_fields, call, _ ("weather call"), error);
}

gboolean
ff_weather_call_append (FfStore *store, const FfWeatherCall *call, GError **error)
{
  return ff_weather_call_check (call, error)
         && ff_rows_append (store, &ff_weather_call_fields, call, error);
}

static gpointer
air_rules_blank (void)
{
  return g_new0 (FfAirRules, 1);
}

gboolean
ff_air_rules_load (FfStore *store, FfAirRules *ret_rules, GError **error)
{
  static const FfAirRules ours = { 1, 1.0 };
  g_autoptr (GPtrArray) rows
      = ff_rows_load (store, &ff_air_rules_fields, "", NULL, air_rules_blank, g_free, error);

  if (rows == NULL)
    return FALSE;
  *ret_rules = rows->len > 0 ? *(const FfAirRules *) g_ptr_array_index (rows, 0) : ours;
  return TRUE;
}

gboolean
ff_air_rules_save (FfStore *store, const FfAirRules *rules, GError **error)
{
  return ff_fields_check (&ff_air_rules_fields, rules, _ ("rules for air"), error)
         && ff_rows_save (store, &ff_air_rules_fields, rules, error);
}

GPtrArray *
ff_measurements_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_measurement_fields, "WHERE job_id = ?1 ORDER BY at, rowid", job_id,
                       measurement_blank, (GDestroyNotify) ff_measurement_free, error);
}

GPtrArray *
ff_weather_reports_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_weather_report_fields, "WHERE job_id = ?1 ORDER BY at, rowid",
                       job_id, report_blank, (GDestroyNotify) ff_weather_report_free, error);
}

GPtrArray *
ff_weather_calls_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_weather_call_fields, "WHERE job_id = ?1 ORDER BY at, rowid",
                       job_id, call_blank, (GDestroyNotify) ff_weather_call_free, error);
}
