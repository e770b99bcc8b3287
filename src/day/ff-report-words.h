/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A weather report in short rows, for console and window alike. What it does not say is said to be
 * missing: a gust that is not reported may blow all the same. */
#pragma once

#include "ff-report.h"

typedef struct {
  char *label; /* "Wind"; empty: goes on under the row before; NULL: `text` is a heading */
  char *text;  /* "240°, 4.1 m/s" */
} FfReportWord;

/* An array of FfReportWord that frees them. Times are clocks of `zone`, or UTC with the date where
 * it is NULL. */
GPtrArray *ff_report_words (const FfReport *report, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* "METAR EGXX 16:20, automatic station". */
char *ff_report_title (const FfReport *report, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* One more row; takes `text`. And an empty array for them. */
void ff_report_words_add (GPtrArray *words, const char *label, char *text);
GPtrArray *ff_report_words_new (void) G_GNUC_WARN_UNUSED_RESULT;
