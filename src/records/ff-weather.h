/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the sky was like and what people made of it: things measured on site, aerodrome reports as
 * pasted, and the calls. All only ever added to: the latest counts, the earlier stay. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

/* One thing measured or found: any kind of limit can be. */
typedef struct {
  char *id;
  char *job_id;
  gint64 at;
  char *kind;       /* token of ff-limit-kind.h */
  double value;     /* in the unit entered; yes 1 and no 0 where there is none */
  char *unit;
  double height_m;  /* of the sensor above ground; NAN where that is not said */
  char *note;
  char *by;         /* initials */
} FfMeasurement;

typedef struct {
  char *id;
  char *job_id;
  gint64 at;          /* when it was entered; its own time is in it */
  char *text;         /* as typed or pasted */
  double distance_m;  /* of the aerodrome from the site; NAN */
  double elevation_m; /* of the aerodrome; NAN */
  char *by;
} FfWeatherReport;

typedef enum { FF_CALL_GO, FF_CALL_STAND_BY, FF_CALL_NO_GO } FfCall;

/* The crew's decision, by whom and why. It is theirs: the kit makes none. */
typedef struct {
  char *id;
  char *job_id;
  gint64 at;
  FfCall decision;
  char *why;
  gint64 until; /* standing by until; 0: not said */
  char *by;
} FfWeatherCall;

/* The crew's own rules for air: how far thin air shortens what is planned. */
typedef struct {
  int id;          /* 1: there is one row */
  double thin_air; /* 1: by all that the estimate of hover says; 0: not at all; 3 at most */
} FfAirRules;

extern const FfNames ff_names_call;
extern const FfFields ff_measurement_fields, ff_weather_report_fields, ff_weather_call_fields;

FfMeasurement *ff_measurement_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_measurement_free (FfMeasurement *measurement);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfMeasurement, ff_measurement_free)

FfWeatherReport *ff_weather_report_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_weather_report_free (FfWeatherReport *report);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfWeatherReport, ff_weather_report_free)

FfWeatherCall *ff_weather_call_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_weather_call_free (FfWeatherCall *call);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfWeatherCall, ff_weather_call_free)

/* Kind and unit must be known and fit. FF_ERROR_INPUT. */
gboolean ff_measurement_check (const FfMeasurement *measurement, GError **error);
gboolean ff_measurement_append (FfStore *store, const FfMeasurement *measurement, GError **error);

/* The text is not read here: the caller has read it, or keeps it as it is. */
gboolean ff_weather_report_check (const FfWeatherReport *report, GError **error);
gboolean ff_weather_report_append (FfStore *store, const FfWeatherReport *report, GError **error);

/* Why and by whom are needed. FF_ERROR_INPUT. */
gboolean ff_weather_call_check (const FfWeatherCall *call, GError **error);
gboolean ff_weather_call_append (FfStore *store, const FfWeatherCall *call, GError **error);

/* In full (1) until the crew says otherwise. FF_ERROR_INPUT names what is accepted. */
gboolean ff_air_rules_load (FfStore *store, FfAirRules *ret_rules, GError **error);
gboolean ff_air_rules_save (FfStore *store, const FfAirRules *rules, GError **error);

/* Those of a job, oldest first. */
GPtrArray *ff_measurements_load (FfStore *store,
                                 const char *job_id,
                                 GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *ff_weather_reports_load (FfStore *store,
                                    const char *job_id,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *ff_weather_calls_load (FfStore *store,
                                  const char *job_id,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
