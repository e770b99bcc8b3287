/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weather call: the limits of a day against what is known of its sky, what was measured and
 * reported, what follows from it as estimates, and what people decided. All texts are owned. The
 * decision is theirs alone: nothing here makes one. */
#pragma once

#include "ff-limits-today.h"
#include "ff-report-words.h"

typedef struct {
  FfLimitsToday *limits;
  GPtrArray *order;     /* FfLimitToday, borrowed: outside first, then what is not assessed */
  char *summary;        /* "1 limit outside, 7 not assessed. The pilot decides." */
  GPtrArray *measured;  /* char*, newest first: "16:40  gust 10.8 m/s at 2 m (JV)" */
  GPtrArray *reports;   /* char*, newest first: "METAR EGXX 16:20, 14 km away, 35 min old" */
  GPtrArray *estimates; /* FfReportWord */
  GPtrArray *calls;     /* char*, newest first: "16:52  stand by until 17:20 (JV): gusts" */
  char *standby;        /* how long the crew stands by; NULL: the last call is another one */
} FfWeatherToday;

/* `plan` may be NULL; `calls` are FfWeatherCall, oldest first. */
FfWeatherToday *ff_weather_today (const FfDay *day,
                                  const FfDayPlan *plan,
                                  const GPtrArray *calls,
                                  gint64 now) G_GNUC_WARN_UNUSED_RESULT;
void ff_weather_today_free (FfWeatherToday *today);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfWeatherToday, ff_weather_today_free)

/* What is known of the sky, newest first, a line each (char*): the last of each kind that was
 * measured, report and forecast as issued, what was typed with the job. */
GPtrArray *ff_weather_conditions (const FfDay *day) G_GNUC_WARN_UNUSED_RESULT;

/* "1 limit outside, 7 not assessed. The pilot decides." It never says that all is well: with
 * nothing open "Nothing entered here is open. Airspace …". */
char *ff_limits_summary (const FfLimitsToday *today) G_GNUC_WARN_UNUSED_RESULT;

/* "✕", "□", "■" or "–": an answer as a shape. */
const char *ff_limit_answer_shape (FfLimitAnswer answer);

/* "Standing by since 16:52: 23 min. Until 17:20: 5 min left." NULL: nobody stands by. */
char *ff_weather_standby (const GPtrArray *calls, GTimeZone *zone, gint64 now);
