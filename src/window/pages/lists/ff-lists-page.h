/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All lists: to read, to write as text with advice, to take in from a file and to give out. */
#pragma once

#include "ff-page.h"

#define FF_TYPE_LISTS_PAGE (ff_lists_page_get_type ())
G_DECLARE_FINAL_TYPE (FfListsPage, ff_lists_page, FF, LISTS_PAGE, FfPage)

extern const FfPageInfo ff_page_info_lists;

/* A file taken in and given out, without the dialog. */
void ff_lists_page_import (FfListsPage *self, GFile *file);
void ff_lists_page_export (FfListsPage *self, GFile *file);
