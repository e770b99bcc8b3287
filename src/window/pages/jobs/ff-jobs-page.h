/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All jobs: the next one first and large, then what comes, what was, and on demand what was put
 * away. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_JOBS_PAGE (ff_jobs_page_get_type ())
G_DECLARE_FINAL_TYPE (FfJobsPage, ff_jobs_page, FF, JOBS_PAGE, FfPage)

extern const FfPageInfo ff_page_info_jobs;
