/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps behind the settings of a planned take, as ff-explain.h takes them. */
#pragma once

#include "ff-day.h"
#include "ff-explain.h"
#include "ff-shot.h"

/* The light of a shot at an instant, filled in for ff_explain(); camera, want, filter and settings
 * are the caller's to add. The day has a date and a place. */
void ff_day_explain_light (const FfDay *day,
                           const FfShot *shot,
                           FfSky sky,
                           gint64 at,
                           FfExplainQuery *ret_query);

/* The settings at the start of a take of the plan: an array of FfExplainStep that frees them. NULL
 * when the day no longer has its shot or its camera. */
GPtrArray *ff_day_explain_take (const FfDay *day,
                                const FfDayPlan *plan,
                                const FfPlanLine *line,
                                const FfPlanTake *take) G_GNUC_WARN_UNUSED_RESULT;
