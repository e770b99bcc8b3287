/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shots of the open job: the list at the left, the edited shot at the right with what it needs
 * beside it; on a narrow window one after the other. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_SHOTS_PAGE (ff_shots_page_get_type ())
G_DECLARE_FINAL_TYPE (FfShotsPage, ff_shots_page, FF, SHOTS_PAGE, FfPage)

extern const FfPageInfo ff_page_info_shots;
