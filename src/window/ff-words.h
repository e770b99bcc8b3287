/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lines of words that stand in the frame. Pure: what the keeper holds in, one text out. */
#pragma once

#include "ff-keeper.h"

/* "Sat 18 Sep", or "no date yet" for a job without one. */
char *ff_words_date (const char *date) G_GNUC_WARN_UNUSED_RESULT;

/* "Skarrowick Head · Sat 18 Sep · first off 16:30 · sunset 19:27", without what is not given. */
char *ff_words_facts (FfKeeper *keeper) G_GNUC_WARN_UNUSED_RESULT;

/* What is open in the plan, in one line that begins with its shape; NULL: nothing to say yet. */
char *ff_words_open (FfKeeper *keeper) G_GNUC_WARN_UNUSED_RESULT;
