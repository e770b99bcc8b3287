/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A run of a checklist in a job and what happened in it. Both are only added to. The run keeps the
 * list's text as it was; what its events mean is worked out elsewhere. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"
#include "ff-run-acts.h"

typedef struct {
  char *id;
  char *job_id;
  char *list_id; /* of a list that may have changed or gone since */
  char *title, *text;
  char *conditions; /* tokens: "cold, night" */
  int line;         /* of the plan, that the run was for; 0: none */
  int restart_after_s, restart_on;
  gint64 started_at;
} FfKeptRun;

typedef struct {
  char *run_id;
  int sequence; /* from 1, no gaps */
  FfAct act;
  int item;     /* in the order of the run; -1: the run itself */
  gint64 at, entered_at; /* when it happened, and when it was typed */
  char *by, *other;
  char *said, *expected, *why;
  char *subject_id; /* item of the gear; empty: none */
  int changed;      /* bits: battery 1, aircraft 2, person 4 */
  int after_ms;
  gboolean from_paper;
} FfKeptEvent;

extern const FfFields ff_kept_run_fields;
extern const FfFields ff_kept_event_fields;

FfKeptRun *ff_kept_run_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_kept_run_free (FfKeptRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfKeptRun, ff_kept_run_free)

FfKeptEvent *ff_kept_event_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_kept_event_free (FfKeptEvent *event);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfKeptEvent, ff_kept_event_free)

gboolean ff_kept_run_check (const FfKeptRun *run, GError **error);
gboolean ff_kept_event_check (const FfKeptEvent *event, GError **error);
gboolean ff_kept_run_append (FfStore *store, const FfKeptRun *run, GError **error);

/* On the disk when this returns. An event with a sequence that is taken is refused. */
gboolean ff_kept_event_append (FfStore *store, const FfKeptEvent *event, GError **error);

/* Of a job, by time; one run, by its id; its events, in order. Arrays that free what they hold. */
GPtrArray *ff_kept_runs_load (FfStore *store,
                              const char *job_id,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
FfKeptRun *ff_kept_run_load (FfStore *store,
                             const char *id,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *ff_kept_events_load (FfStore *store,
                                const char *run_id,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What a person says of a day, by token of the condition; 1 it holds, 0 it does not, -1 nothing was
 * said. */
gboolean ff_day_condition_load (FfStore *store,
                                const char *job_id,
                                const char *condition,
                                int *ret_holds,
                                GError **error);
gboolean ff_day_condition_save (FfStore *store,
                                const char *job_id,
                                const char *condition,
                                int holds,
                                GError **error);
