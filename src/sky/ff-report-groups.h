/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The groups of a weather report, one reader each. */
#pragma once

#include "ff-report.h"

typedef struct {
  FfReport *report;
  FfReportPart *part;  /* where wind, visibility, weather and cloud go */
  const char *next;    /* the group after this one, or "" */
  gboolean took_next;  /* "2 1/2SM" is two */
  GPtrArray *aside;
} FfGroupReader;

/* A part of which nothing is known yet. */
void ff_report_part_clear (FfReportPart *part);

/* FALSE if the group is none that is known. */
gboolean ff_report_read_group (FfGroupReader *reader, const char *group);

/* Exactly n digits at *text, which moves behind them. */
gboolean ff_report_digits (const char **text, guint n, int *ret_value);
