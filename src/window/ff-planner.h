/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plans one job off the main thread, with a read connection of its own. Asked again while it works,
 * it starts anew when it is done: the latest question wins, and what stands on the screen stays
 * there until the answer to it has come. */
#pragma once

#include <glib-object.h>

#include "ff-chart-facts.h"
#include "ff-day.h"

#define FF_TYPE_PLANNER (ff_planner_get_type ())
G_DECLARE_FINAL_TYPE (FfPlanner, ff_planner, FF, PLANNER, GObject)

/* Signal "changed": another day, plan or reason. */
FfPlanner *ff_planner_new (const char *data_dir) G_GNUC_WARN_UNUSED_RESULT;

/* Plan this job as the store has it now. NULL: no job, the last plan is dropped at once. */
void ff_planner_ask (FfPlanner *self, const char *job_id);

/* The last answer; borrowed until "changed". A day without a plan has a reason in `why`. */
const FfDay *ff_planner_day (FfPlanner *self);
const FfDayPlan *ff_planner_plan (FfPlanner *self);
const FfChartFacts *ff_planner_chart (FfPlanner *self);
const char *ff_planner_why (FfPlanner *self);

gboolean ff_planner_is_busy (FfPlanner *self);
