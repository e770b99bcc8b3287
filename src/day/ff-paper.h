/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew holds in its hands, as others name it: a heading, the flight log. */
#pragma once

#include "ff-records.h"

/* The letter of a job with the amendments that stand beside it: "A", "A, amendment 1", "A, amendments
 * 1–2"; before anything is frozen the job's own. Errors as of ff_standing_load(). */
char *ff_paper_letter (FfStore *store,
                       const char *job_id,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Which line a number on the sheets is: the id of its first shot. Of a plan that is not frozen, as
 * it is planned now. Empty when no line has that number, or the day can't be planned. */
char *ff_paper_line_id (FfStore *store,
                        const char *job_id,
                        int number,
                        GError **error) G_GNUC_WARN_UNUSED_RESULT;
