/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plan of the day: the day chart, then what is open, one line a sortie, what the charger
 * promises, the bag, the cost; and what would be if. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_SORTIES_PAGE (ff_sorties_page_get_type ())
G_DECLARE_FINAL_TYPE (FfSortiesPage, ff_sorties_page, FF, SORTIES_PAGE, FfPage)

extern const FfPageInfo ff_page_info_sorties;
