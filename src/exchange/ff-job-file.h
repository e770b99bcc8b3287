/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A whole job as one JSON file, for the other laptop: the job with its place, shots, crew, gear and
 * log. The format is published as data/fieldfare-job.schema.json. */
#pragma once

#include "ff-amendment.h"
#include "ff-briefed.h"
#include "ff-charge-watch.h"
#include "ff-crew.h"
#include "ff-flight.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-json.h"
#include "ff-lock.h"
#include "ff-pack-event.h"
#include "ff-place.h"
#include "ff-plan-version.h"
#include "ff-reading.h"
#include "ff-shot.h"

#define FF_JOB_FILE_FORMAT "fieldfare-job"
#define FF_JOB_FILE_VERSION 1
#define FF_JOB_FILE_MOST 8000000 /* bytes: a job of a thousand shots is a tenth of it */

typedef struct {
  char *member_id;
  FfRole role;
} FfJobRole;

typedef struct {
  FfJob *job;
  FfPlace *place;     /* NULL: none yet */
  GPtrArray *shots;   /* FfShot */
  GPtrArray *crew;    /* FfMember, with their usual roles */
  GPtrArray *roles;   /* FfJobRole: who is what in this job */
  GPtrArray *items;   /* FfItem: all that the job, its gear and its log name */
  GPtrArray *flights; /* FfFlight */
  GPtrArray *readings; /* FfReading, those set aside as well */
  GPtrArray *pack_events; /* FfPackEvent, as they were entered */
  GPtrArray *watches;  /* FfWatch: who attends the charger */
  GPtrArray *versions; /* FfPlanVersion: copies of plans, as text that nobody has read yet */
  GPtrArray *amendments; /* FfAmendment */
  GPtrArray *briefed;  /* FfBriefed: who was briefed on what */
  GPtrArray *locks;    /* FfLock */
} FfJobFile;

extern const FfFields ff_job_role_fields;

FfJobFile *ff_job_file_new (void) G_GNUC_WARN_UNUSED_RESULT; /* without a job */
void ff_job_file_free (FfJobFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfJobFile, ff_job_file_free)
FfJobRole *ff_job_role_new (void) G_GNUC_WARN_UNUSED_RESULT;
FfItem *ff_job_file_item (const FfJobFile *file, const char *id); /* borrowed, or NULL */

FfJobFile *ff_job_file_load (FfStore *store,
                             const char *job_id,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Its members, into the object that is open. */
void ff_job_file_write (const FfJobFile *file, FfJson *json);

/* Reads and checks the whole text: syntax, members, types, ranges, rules of the records, and that
 * everything that is named is there. FF_ERROR_INPUT with line and column, or the path. */
FfJobFile *ff_job_file_parse (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Stores it, all or nothing. A job that is there already is refused; of place, crew and gear what is
 * there already must be the same. `now` dates the states of gear that is new. */
gboolean ff_job_file_store (const FfJobFile *file, FfStore *store, gint64 now, GError **error);
