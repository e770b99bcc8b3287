/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything that follows from the store at one moment about one job, or would follow under a
 * change that is tried. Never changed once it is made, and counted, so that what is on the screen
 * can hold on to it while the next one is worked out. */
#pragma once

#include "ff-chart-facts.h"
#include "ff-day.h"
#include "ff-try.h"

typedef struct {
  FfDay *day;          /* NULL: the job can't be read */
  FfDayPlan *plan;     /* NULL: it can't be planned, for the reason in `why` */
  FfChartFacts *chart; /* NULL without a plan */
  char *why;           /* the sentence that says what to enter; NULL with a plan */
} FfAnswer;

/* Works it out, with a connection of its own: made for a worker. Never NULL. Under a try the plan's
 * `changes` say what it does to the plan as stored. */
FfAnswer *ff_answer_new (const char *data_dir,
                         const char *job_id,
                         const FfTry *tried) G_GNUC_WARN_UNUSED_RESULT;
FfAnswer *ff_answer_ref (FfAnswer *self);
void ff_answer_unref (FfAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfAnswer, ff_answer_unref)
