/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the day is: for whom, when, where, under which sky, by whom; and what sun and moon do, and
 * what is still missing. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_DAY_PAGE (ff_day_page_get_type ())
G_DECLARE_FINAL_TYPE (FfDayPage, ff_day_page, FF, DAY_PAGE, FfPage)

extern const FfPageInfo ff_page_info_day;
