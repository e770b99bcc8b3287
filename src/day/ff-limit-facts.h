/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is known of a day, as facts that limits can be held against; for the files of this room. */
#pragma once

#include "ff-day-private.h"
#include "ff-limits.h"
#include "ff-report.h"

typedef struct {
  FfLimitFact fact;
  char *whence; /* "measured 16:40 by JV"; NULL with an unknown one */
  char *reason; /* why it does not arise; or NULL */
} FfDayFact;

/* An array of FfDayFact, one a kind at most; SI. What was measured stands before what was reported,
 * unless the report is newer, and both before the forecast typed with the job. */
GArray *ff_day_limit_facts (const FfDay *day, const FfDayPlan *plan, gint64 now);

/* The same from one part of a report alone, for a forecast over some hours. */
GArray *ff_day_report_facts (const FfDay *day,
                             const FfReport *report,
                             const FfReportPart *part,
                             const char *whence,
                             double aerodrome_m,
                             double flying_m);

/* The latest report of a kind that can be read, with its record (borrowed); NULL if there is none. */
FfReport *ff_day_latest_report (const FfDay *day,
                                gboolean forecast,
                                const FfWeatherReport **ret_record);

/* "85 min old", "7 h old", "3 days old": for an age of seconds. */
char *ff_age_words (gint64 seconds);

/* The highest that a shot of the day goes, in metres above ground; 0 without shots. */
double ff_day_flying_height (const FfDay *day);

/* The fact of a kind, or NULL; borrowed. */
const FfDayFact *ff_day_fact_find (GArray *facts, const char *kind);
