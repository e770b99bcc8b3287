/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the day knows that lists ask for: its conditions, and the facts of the plan that items are
 * bound to. */
#pragma once

#include "ff-checklist.h"
#include "ff-day.h"
#include "ff-kept-list.h"

/* The facts for one line of the plan. A text holds every way to say it, parted by " / "; empty: the
 * plan does not say. */
typedef struct {
  int line;            /* 0: none is left, or there is no plan */
  char *said[FF_N_FACTS];
} FfListFacts;

FfListFacts *ff_list_facts_new (const FfDay *day,
                                const FfDayPlan *plan,
                                int line) G_GNUC_WARN_UNUSED_RESULT;
void ff_list_facts_free (FfListFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfListFacts, ff_list_facts_free)

/* What a bound item is compared with, by fact; never NULL. */
const char *ff_list_fact (const FfListFacts *facts, FfFact fact);

/* The line of the plan that is to be flown next, by the log: 0 when none is left. */
gboolean ff_list_next_line (FfStore *store,
                            const char *job_id,
                            const FfDayPlan *plan,
                            int *ret_line,
                            GError **error);

/* What this day is, as a mask of FfWhen: what the facts say, unless a person has said otherwise.
 * Cold: forecast below the crew's own limit. Night: all down after sunset. Water, near people: a
 * hazard says so. Two operators: pilot and camera are different persons. First flight: none is
 * logged. New site: no earlier job there. */
gboolean ff_day_conditions (FfStore *store,
                            const FfDay *day,
                            const FfListRules *rules,
                            guint *ret_conditions,
                            GError **error);
