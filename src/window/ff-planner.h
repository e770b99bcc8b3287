/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plans one job off the main thread, with a read connection of its own. Asked again while it works,
 * it stops at the next plan and starts anew: the latest question wins, and what stands on the screen stays
 * there until the answer to it has come. */
#pragma once

#include <glib-object.h>

#include "ff-answer.h"

#define FF_TYPE_PLANNER (ff_planner_get_type ())
G_DECLARE_FINAL_TYPE (FfPlanner, ff_planner, FF, PLANNER, GObject)

/* Signal "changed": another answer, or none any more; or the price of an edit has come. */
FfPlanner *ff_planner_new (const char *data_dir) G_GNUC_WARN_UNUSED_RESULT;

/* Plan this job as the store has it now. NULL: no job, the last answer is dropped at once. */
void ff_planner_ask (FfPlanner *self, const char *job_id);

/* The same under a change that is tried; the last answer stays until this one has come. */
void ff_planner_ask_try (FfPlanner *self, const char *job_id, const FfTry *tried);

/* The last answer, or NULL. Borrowed until "changed"; to keep it longer, take a reference. */
FfAnswer *ff_planner_answer (FfPlanner *self);

/* Marks the plan that stands now, or the next if there is none: what is edited after it is priced, a
 * little later than it is planned. Another job forgets the mark. */
void ff_planner_mark (FfPlanner *self);

/* What was edited since the mark costs; NULL: nothing was, or not yet. Borrowed until "changed". */
const FfChangePrice *ff_planner_edit (FfPlanner *self);

gboolean ff_planner_is_busy (FfPlanner *self);
