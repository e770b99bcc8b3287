/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The part of a job file that holds what was frozen, how it was amended, who has read that, who
 * was briefed, and what is locked. Files of the first releases have none of it. */
#pragma once

#include <json-glib/json-glib.h>

#include "ff-job-file.h"

gboolean ff_job_versions_load (FfJobFile *file, FfStore *store, GError **error);
void ff_job_versions_write (const FfJobFile *file, FfJson *json);

/* With the rules of the records, and that all of it is of this job. */
gboolean ff_job_versions_read (FfJobFile *file, JsonObject *root, GError **error);
gboolean ff_job_versions_store (const FfJobFile *file, FfStore *store, GError **error);
