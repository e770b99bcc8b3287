/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of shots: what a new one is, and what a row says. Pure. */
#pragma once

#include "ff-job.h"
#include "ff-plan.h"
#include "ff-shot.h"

/* A label that no shot has: the next letter; of a copy "D2", "D3" … */
char *ff_shots_free_label (GPtrArray *shots, const char *copied) G_GNUC_WARN_UNUSED_RESULT;

/* A new shot behind `after` (NULL: behind nothing): its window opens where that one's closes, or
 * with the first off of the day; it can be stored as it is. */
FfShot *ff_shots_new (const FfJob *job,
                      GPtrArray *shots,
                      const FfShot *after) G_GNUC_WARN_UNUSED_RESULT;

/* Where a shot stands in the plan: `line` and `take`, or `miss`; none: the plan knows nothing of
 * it. All borrowed from the plan. */
typedef struct {
  const FfPlanLine *line;
  const FfPlanTake *take;
  const FfPlanMiss *miss;
} FfShotPlace;

FfShotPlace ff_shots_find_place (const FfDayPlan *plan, const FfShot *shot);

/* "17:40–17:55 · 6 min · video" */
char *ff_shots_facts (const FfShot *shot) G_GNUC_WARN_UNUSED_RESULT;

/* "Sortie 3 at 17:40, 5 stops", "✕ NOT FLOWN: no battery is ready in its window" or what there is
 * instead of a plan. */
char *ff_shots_place_words (const FfShotPlace *place,
                            GTimeZone *zone,
                            gboolean planning) G_GNUC_WARN_UNUSED_RESULT;

/* The same at length: "Sortie 3, off by 17:38 on battery b3: 5 stops, f/2.8, 1/60 (150°), ISO 100."
 * Under it what the plan remarks, but for what was `said` already (may be NULL). */
char *ff_shots_plan_words (const FfShotPlace *place,
                           GTimeZone *zone,
                           gboolean planning,
                           GPtrArray *said) G_GNUC_WARN_UNUSED_RESULT;
