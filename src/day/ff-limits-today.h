/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The join of limits and what is known of a day: measured on site, reported, forecast, planned. It
 * answers each row, says from what, and never that anything may be flown. */
#pragma once

#include "ff-day.h"
#include "ff-limits.h"

typedef struct {
  char *id, *sheet, *kind;
  char *text;            /* "gust at flying height" */
  char *bound;           /* "at most 9 m/s" */
  FfCompare compare;
  FfLimitAnswer answer;
  gboolean binds;        /* no other row of its kind and sense is stricter */
  double limit, limit_to; /* in the unit entered; NAN where there is none */
  double low, high;      /* what is known, in the same unit; NAN: nothing, or no end */
  char *unit;
  char *found;           /* "10.8 m/s, measured 16:40 by JV"; empty: nothing is known */
  char *reason;          /* why it is not assessed or not applicable; empty otherwise */
  char *source;          /* "own sheet: example: set your own" */
  char *checked;         /* "2027-09-01 by MO"; empty: never */
  gboolean overdue;      /* never checked, or past its expiry on the day */
  gboolean example;
} FfLimitToday;

typedef struct {
  GPtrArray *rows;     /* FfLimitToday, by sheet and position */
  FfLimitAnswer worst;
  GPtrArray *outside;  /* char*: "Gust: 10.8 m/s … outside: at most 9 m/s, own sheet …" */
  GPtrArray *lines;    /* one GPtrArray of char* for each line of the plan: what touches it */
  char *standing;      /* the sentence that stands above them: never "ready", never "may fly" */
} FfLimitsToday;

/* The clock of a day: `now`; on an example, whose day is years away, the same time on its own date. */
gint64 ff_limits_clock (const FfDay *day, gint64 now);

/* What to say of the limits of a day with this plan (may be NULL: then heights, times and the
 * aircraft's doings are not known). `now`, put on the clock of the day, says how old a measurement
 * is. */
FfLimitsToday *ff_limits_today (const FfDay *day,
                                const FfDayPlan *plan,
                                gint64 now) G_GNUC_WARN_UNUSED_RESULT;
void ff_limits_today_free (FfLimitsToday *today);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfLimitsToday, ff_limits_today_free)
