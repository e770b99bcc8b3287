/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lists that the day of the open job calls for: the one that is next first and large, what the
 * day is, where each run stands; and the run itself in their place. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_CHECKS_PAGE (ff_checks_page_get_type ())
G_DECLARE_FINAL_TYPE (FfChecksPage, ff_checks_page, FF, CHECKS_PAGE, FfPage)

extern const FfPageInfo ff_page_info_checks;
