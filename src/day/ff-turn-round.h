/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The turn-round at a landing: which filter comes off and into which slot of the wallet, and which
 * goes on. From labels and slots alone. */
#pragma once

#include "ff-plan.h"

/* "out 5 (ND32), into slot 5; in 4 (ND16)", between two lines of a plan; `items` are FfItem. A filter
 * without a slot is said by its label. Empty: the same filters stay on. */
char *ff_turn_round_words (const FfPlanLine *before,
                           const FfPlanLine *after,
                           GPtrArray *items) G_GNUC_WARN_UNUSED_RESULT;

/* Puts them on each line of the plan, for the landing at its end. */
void ff_turn_rounds_add (FfDayPlan *plan, GPtrArray *items);
