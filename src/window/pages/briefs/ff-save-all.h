/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Saving all that can be printed into a folder, from the question where to the sentence that it is
 * done; files that are there already are asked about first. */
#pragma once

#include "ff-bundle.h"
#include "ff-page.h"

/* Asks for the folder. */
void ff_save_all_ask (FfPage *page, const FfProofWish *wish);

/* What the question leads to. */
void ff_save_all_into (FfPage *page, const FfProofWish *wish, GFile *folder);

/* Whether files are being written. */
gboolean ff_save_all_is_busy (FfPage *page);
