/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

#define FF_JOB_MOST_LEGS 5
#define FF_JOB_MOST_FILTERS 2

/* A typed event of the day: "ferry passes", at 17:14. */
typedef struct {
  int clock; /* minutes after local midnight */
  char *text;
} FfDayEvent;

typedef struct {
  char *id;
  char *title;
  char *client, *purpose;
  char *place_id; /* empty: none yet */
  char *date;     /* YYYY-MM-DD in the place's zone; empty: none yet */
  FfJobState state;
  char *version;  /* letter of the plan: "A" */
  char *abort_word; /* the one word that stops everything, chosen by the crew */
  gboolean example; /* every sheet says "EXAMPLE, not a place to fly" */
  double delivery_fps;
  int on_site, first_off, all_down, off_site; /* minutes after local midnight, or -1 */
  FfSky sky;
  double wind_from_deg, wind_ms, gust_ms, wind_height_m; /* NAN: not given */
  double temperature_c, visibility_m;                    /* NAN: not given */
  char *aircraft_id;                                     /* empty: none yet */
  int out_minutes, back_minutes, battery_change_minutes, filter_change_minutes;
  gboolean any_order;    /* shots in any order that their windows allow, not by the list */
  int legs_per_battery;  /* on one charge, by the crew's rule; 1: land, charge */
  int filters_at_once;   /* in front of the lens, by the crew's rule */
  double stay_margin;    /* what another plan must save before it replaces the frozen one; NAN: 0 */
  GPtrArray *events;   /* FfDayEvent, by time */
  GPtrArray *item_ids; /* char*: filters, batteries, chargers, cards … that this job may use */
} FfJob;

extern const FfFields ff_job_fields;
extern const FfFields ff_day_event_fields;

FfDayEvent *ff_day_event_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_event_free (FfDayEvent *event);

FfJob *ff_job_new (void) G_GNUC_WARN_UNUSED_RESULT; /* new id; 2, 2, 4 and 2 minutes; version A */
void ff_job_free (FfJob *job);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfJob, ff_job_free)

gboolean ff_job_check (const FfJob *job, GError **error);
gboolean ff_job_save (FfStore *store, const FfJob *job, GError **error);
FfJob *ff_job_load (FfStore *store, const char *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes the job out with its shots, typed events, gear list and roles. One with a log (flights,
 * readings, printed plans) is refused: it can be put away. FF_ERROR_INPUT. */
gboolean ff_job_delete (FfStore *store, const char *id, GError **error);

/* By id, whole title, or a unique beginning of one, case ignored. FF_ERROR_INPUT lists the candidates. */
char *ff_job_find (FfStore *store, const char *wanted, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* All jobs by date: an array of FfJob that frees them. */
GPtrArray *ff_jobs_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
