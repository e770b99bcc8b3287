/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What makes one plan of another, as a value: lines that go, lines that come or are no longer as
 * they were printed, what is not flown, what the charger promises. An amendment is such a change,
 * with the sentences that say it.
 *
 * Two plans are the same for the crew when the same is printed of them: times, battery, filter,
 * shots and settings. The light behind the settings and the reasons may differ. */
#pragma once

#include "ff-amendment.h"
#include "ff-plan.h"

typedef struct {
  GPtrArray *order;   /* char*: ids of the lines of the new plan, in order of time */
  GPtrArray *lines;   /* FfPlanLine: those that are new or not as they were; whole */
  GPtrArray *missed;  /* FfPlanMiss: all of the new plan */
  GPtrArray *charges; /* FfPlanCharge: all of the new plan */
} FfPlanChange;

gboolean ff_plan_same (const FfDayPlan *a, const FfDayPlan *b);
gboolean ff_plan_line_same (const FfPlanLine *a, const FfPlanLine *b); /* but for their numbers */

/* A line by its id, or NULL; borrowed. */
FfPlanLine *ff_plan_find_line (const FfDayPlan *plan, const char *id);

/* Lines keep the number they were printed with; a new one takes the number after `last_number`,
 * which is the highest that was ever given. */
FfPlanChange *ff_plan_change_new (const FfDayPlan *before,
                                  const FfDayPlan *after,
                                  int last_number) G_GNUC_WARN_UNUSED_RESULT;
void ff_plan_change_free (FfPlanChange *change);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfPlanChange, ff_plan_change_free)

char *ff_plan_change_write (const FfPlanChange *change) G_GNUC_WARN_UNUSED_RESULT;
FfPlanChange *ff_plan_change_read (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Makes the new plan of the old one. FF_ERROR_INPUT when the change names a line that neither has:
 * then the plan is as it was. */
gboolean ff_plan_change_apply (const FfPlanChange *change, FfDayPlan *plan, GError **error);

/* Adds to an amendment one sentence for each role that the change concerns; the crew lead always
 * has one. */
void ff_plan_change_say (const FfPlanChange *change,
                         const FfDayPlan *before,
                         GTimeZone *zone,
                         FfAmendment *amendment);

/* "Pilot: line 4, off 18:18 not 17:38." */
char *ff_sentence_words (const FfSentence *sentence) G_GNUC_WARN_UNUSED_RESULT;
