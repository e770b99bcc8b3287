/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the cases of a plan are printed: the bag, what survives, what to drop first. */
#pragma once

#include "ff-command.h"
#include "ff-plan.h"

/* Keys "bag", "cases", "drop_first" (of FfDrop) and "survives". */
void ff_json_cases (FfJson *json, const FfDayPlan *plan, const GPtrArray *drops);

/* Key "change": the claim behind the first of "changes"; null when nothing is tried. */
void ff_json_change (FfJson *json, const FfChangePrice *price);

/* With `explain` each thing of the bag with its reason, and each case. */
void ff_print_cases (FfConsole *console,
                     const FfDayPlan *plan,
                     const GPtrArray *drops,
                     gboolean explain);
