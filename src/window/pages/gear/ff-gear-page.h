/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew owns: all items by kind, and one of them beside the list or, in a narrow window, in
 * its place. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_GEAR_PAGE (ff_gear_page_get_type ())
G_DECLARE_FINAL_TYPE (FfGearPage, ff_gear_page, FF, GEAR_PAGE, FfPage)

extern const FfPageInfo ff_page_info_gear;
