/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The light page: the stop ruler for a shot, a place or a condition; how long its settings hold and
 * why; the need over the day and the hours of each filter. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_LIGHT_PAGE (ff_light_page_get_type ())
G_DECLARE_FINAL_TYPE (FfLightPage, ff_light_page, FF, LIGHT_PAGE, FfPage)
