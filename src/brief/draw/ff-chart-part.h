/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A part of the day for the day chart: the same facts and the same plan, cut to a span of time. A
 * line keeps its number. */
#pragma once

#include "ff-chart-facts.h"
#include "ff-plan.h"

/* A view: all that it points at is borrowed, but for the arrays of what is left. */
typedef struct {
  FfChartFacts facts;
  FfDayPlan plan;
} FfChartPart;

/* What of a day stands in [from, to]; `plan` may be NULL. The ends are moved outwards to whole
 * samples of the curves. */
FfChartPart *ff_chart_part_new (const FfChartFacts *facts,
                                const FfDayPlan *plan,
                                gint64 from,
                                gint64 to) G_GNUC_WARN_UNUSED_RESULT;
void ff_chart_part_free (FfChartPart *part);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChartPart, ff_chart_part_free)

/* How often a day can be halved before less than 25 minutes are left. */
int ff_chart_part_most (const FfChartFacts *facts);

/* The part of a day that is halved so often, 0: all of it. One that has this length already and
 * holds [first, last] stays; else it is laid around their middle, within the day. */
void ff_chart_part_place (const FfChartFacts *facts,
                          int halved,
                          gint64 first,
                          gint64 last,
                          gint64 *from,
                          gint64 *to);
