/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The times of a day that a crew puts into its calendar. */
#pragma once

#include "ff-day.h"

typedef struct {
  char *key;  /* "on-site", "first-off" … stable */
  char *text; /* "On site" */
  gint64 at, to;
} FfCallTime;

/* On site (to off site), first off (to all down), last light, typed events: those that are known, in
 * order of time. An array of FfCallTime. */
GPtrArray *ff_call_times (const FfDay *day) G_GNUC_WARN_UNUSED_RESULT;
