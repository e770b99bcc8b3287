/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The part of a job file about the van: what was counted, and who attends the charger. */
#pragma once

#include <json-glib/json-glib.h>

#include "ff-job-file.h"

gboolean ff_job_pack_load (FfJobFile *file, FfStore *store, GError **error);
void ff_job_pack_write (const FfJobFile *file, FfJson *json);

/* Members that are not there are left empty: older files have none. After items and crew. */
gboolean ff_job_pack_read (FfJobFile *file, JsonObject *root, GError **error);
gboolean ff_job_pack_store (const FfJobFile *file, FfStore *store, GError **error);
