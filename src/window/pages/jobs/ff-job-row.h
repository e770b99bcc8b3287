/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One job of the list: its day, its title, where and when; the next one larger than the rest. What
 * can be done with it is in the menu at its end and on keys: "job.duplicate", "job.put-away",
 * "job.delete" with its id. */
#pragma once

#include <gtk/gtk.h>

#include "ff-job.h"
#include "ff-place.h"

#define FF_TYPE_JOB_ROW (ff_job_row_get_type ())
G_DECLARE_FINAL_TYPE (FfJobRow, ff_job_row, FF, JOB_ROW, GtkListBoxRow)

/* `place` may be NULL. `next`: when it comes ("in 3 days"), for the job that comes next, else NULL;
 * `open`: it is open. */
GtkWidget *ff_job_row_new (const FfJob *job,
                           const FfPlace *place,
                           const char *next,
                           gboolean open) G_GNUC_WARN_UNUSED_RESULT;
const char *ff_job_row_get_id (FfJobRow *self);
