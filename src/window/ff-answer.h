/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything that follows from the store at one moment about one job, or would follow under a
 * change that is tried. Never changed once it is made, and counted, so that what is on the screen
 * can hold on to it while the next one is worked out. */
#pragma once

#include <gio/gio.h>

#include "ff-chart-facts.h"
#include "ff-day.h"
#include "ff-limits-today.h"
#include "ff-lock.h"
#include "ff-standing.h"
#include "ff-try.h"

typedef struct {
  FfDay *day;          /* NULL: the job can't be read */
  FfDayPlan *plan;     /* NULL: it can't be planned, for the reason in `why` */
  FfChartFacts *chart; /* NULL without a plan */
  FfLimitsToday *limits; /* what touches it; NULL without a plan */
  char *why;           /* the sentence that says what to enter; NULL with a plan */
  FfTry tried;         /* what the plan was asked under */
  GPtrArray *locks;     /* FfLock: what the crew has decided about lines; NULL without a day */
  FfStanding *standing; /* what stands on paper; NULL without a plan, and under a try */
} FfAnswer;

/* Works it out, with a connection of its own: made for a worker. Never NULL. Under a try the plan's
 * `changes` say what it does to the plan as stored, its price first. Cancelled, it stops early and
 * has no plan and no reason; nobody waits for it. */
FfAnswer *ff_answer_new (const char *data_dir,
                         const char *job_id,
                         const FfTry *tried,
                         GCancellable *cancellable) G_GNUC_WARN_UNUSED_RESULT;

/* What was edited between two answers costs: made for a worker. NULL: one has no plan; cancelled. */
FfChangePrice *ff_answer_price_since (const FfAnswer *self,
                                      const FfAnswer *before,
                                      GCancellable *cancellable) G_GNUC_WARN_UNUSED_RESULT;

/* Which shots of the plan to drop first (FfDrop), worked out by planning without each: made for a
 * worker. NULL: cancelled. */
GPtrArray *ff_answer_drop_first (const FfAnswer *self,
                                 GCancellable *cancellable) G_GNUC_WARN_UNUSED_RESULT;
FfAnswer *ff_answer_ref (FfAnswer *self);
void ff_answer_unref (FfAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfAnswer, ff_answer_unref)
