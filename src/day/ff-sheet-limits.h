/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The limits among the facts of the sheets; for the files of this room. */
#pragma once

#include "ff-sheet-facts.h"

/* The rows with their answers as known at an instant, the distance that binds, and what is missing:
 * a sheet at all, a check against its source, one that is not overdue. */
void ff_sheet_facts_add_limits (FfSheetFacts *facts,
                                const FfDay *day,
                                const FfDayPlan *plan,
                                gint64 now);
