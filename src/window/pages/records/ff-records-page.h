/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's own limit sheets, for all jobs: whose rule each row is and when it was last looked up. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_RECORDS_PAGE (ff_records_page_get_type ())
G_DECLARE_FINAL_TYPE (FfRecordsPage, ff_records_page, FF, RECORDS_PAGE, FfPage)

extern const FfPageInfo ff_page_info_records;
