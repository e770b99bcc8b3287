/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The order and choice of the list of jobs. Pure. */
#pragma once

#include "ff-job.h"

typedef enum {
  FF_JOBS_COMING, /* today and later, or not yet dated; nearest first, undated last */
  FF_JOBS_PAST,   /* latest first */
  FF_JOBS_AWAY,   /* put away */
} FfJobsGroup;

/* Where a job belongs on a day (YYYY-MM-DD in the zone of the computer). */
FfJobsGroup ff_jobs_group (const FfJob *job, const char *today);

/* Sorts an array of FfJob as the page shows them. */
void ff_jobs_sort (GPtrArray *jobs, const char *today);

/* "today", "tomorrow", "in 12 days"; NULL for a day that is past or not given. */
char *ff_jobs_when (const char *date, const char *today) G_GNUC_WARN_UNUSED_RESULT;

/* Whether every word of `wanted` stands in one of the texts, case ignored. Texts end with NULL. */
gboolean ff_jobs_match (const char *wanted, const char *const *texts);
