/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A plan as text and back, whole: what is kept of it when it is frozen. JSON, with members that are
 * called as in the plan; one that a later release writes and this one does not know is passed over,
 * so that an old program still reads what it can. */
#pragma once

#include "ff-plan.h"

/* All of it but `changes`, which are of a moment. */
char *ff_plan_copy_write (const FfDayPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* FF_ERROR_INPUT with the place in the text. */
FfDayPlan *ff_plan_copy_read (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

FfPlanLine *ff_plan_line_dup (const FfPlanLine *line) G_GNUC_WARN_UNUSED_RESULT;
