/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What goes in the van, by case: what is short, each line counted out, in on the ground and in at
 * base; and the evening's charging. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_PACK_PAGE (ff_pack_page_get_type ())
G_DECLARE_FINAL_TYPE (FfPackPage, ff_pack_page, FF, PACK_PAGE, FfPage)

extern const FfPageInfo ff_page_info_pack;

/* The list on the screen, or NULL while there is none; for tests. */
const FfPackList *ff_pack_page_list (FfPackPage *self);
