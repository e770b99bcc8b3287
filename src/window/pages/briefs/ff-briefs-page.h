/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The briefs of a job: its sheets as they come out on paper, printed or saved. */
#pragma once

#include "ff-page.h"
#include "ff-proof.h"

#define FF_TYPE_BRIEFS_PAGE (ff_briefs_page_get_type ())
G_DECLARE_FINAL_TYPE (FfBriefsPage, ff_briefs_page, FF, BRIEFS_PAGE, FfPage)

extern const FfPageInfo ff_page_info_briefs;

/* The proof that is shown, or NULL; and its page that is large. */
const FfProof *ff_briefs_page_get_proof (FfBriefsPage *self);
guint ff_briefs_page_get_number (FfBriefsPage *self);

/* Writes the sheets as they are now to a file, and says so: what the file dialog leads to. */
void ff_briefs_page_save (FfBriefsPage *self, GFile *file);

/* The same for all that can be printed, into a folder. */
void ff_briefs_page_save_all (FfBriefsPage *self, GFile *folder);

/* Whether sheets are being laid out, for whatever purpose. */
gboolean ff_briefs_page_is_busy (FfBriefsPage *self);
