/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The flight log: what really flew. Appended, never changed; kept beside the plan. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *job_id;
  char *version;       /* letter of the plan it followed; empty: none */
  int line;            /* line of that plan, from 1; 0: none */
  char *line_id;       /* the same line, by its first shot; empty: none */
  gint64 off, down;    /* instants */
  char *battery_id;
  GPtrArray *filter_ids; /* char*: really fitted; empty: none */
  char *by;            /* initials of who entered it */
  char *note;
  double percent_off, percent_down; /* charge the battery showed; NAN: not read */
  double battery_c;                 /* its temperature at take-off; NAN: not read */
  char *conditions;    /* of the sky at take-off, a line each, as a copy; empty: not kept */
  char *limits;        /* how each limit stood then, likewise */
} FfFlight;

/* The longest of them, in bytes. */
#define FF_FLIGHT_CONDITIONS_MOST 8000
#define FF_FLIGHT_LIMITS_MOST 64000

extern const FfFields ff_flight_fields;

FfFlight *ff_flight_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_flight_free (FfFlight *flight);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfFlight, ff_flight_free)

/* Down after off, no longer than four hours, a battery. */
gboolean ff_flight_check (const FfFlight *flight, GError **error);
gboolean ff_flight_append (FfStore *store, const FfFlight *flight, GError **error);

/* A flight as the battery saw it, for the minutes it is good for. */
typedef struct {
  char *battery_id;
  gint64 off;
  double minutes;
  double percent_off, percent_down; /* NAN: not read */
  double temperature_c; /* of the battery, else of the air in that job; NAN: neither is known */
} FfBatteryFlight;

/* By time, the oldest first: an array of FfBatteryFlight that frees them. `battery_id` NULL: of all
 * batteries. */
GPtrArray *ff_battery_flights_load (FfStore *store,
                                    const char *battery_id,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* By time: an array of FfFlight that frees them. */
GPtrArray *ff_flights_load (FfStore *store,
                            const char *job_id,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
