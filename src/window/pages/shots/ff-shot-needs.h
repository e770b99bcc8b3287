/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the edited shot needs at its hour: the sentence first, then how the need changes over its
 * window, the sun, the light, what to look out for, and what the plan makes of it. */
#pragma once

#include <adwaita.h>

#include "ff-shot-advice.h"

#define FF_TYPE_SHOT_NEEDS (ff_shot_needs_get_type ())
G_DECLARE_FINAL_TYPE (FfShotNeeds, ff_shot_needs, FF, SHOT_NEEDS, AdwBin)

/* `advice` NULL: `why` says what keeps it away. */
void ff_shot_needs_show (FfShotNeeds *self,
                         const FfShot *shot,
                         const FfShotAdvice *advice,
                         GTimeZone *zone,
                         const char *why);

/* What the plan says of it; `missed`: that it is not flown. */
void ff_shot_needs_show_plan (FfShotNeeds *self, const char *words, gboolean missed);

/* What the edits since the shot was opened cost the day; NULL: nothing. */
void ff_shot_needs_show_edit (FfShotNeeds *self, const char *sentence);
