/* SPDX-License-Identifier: GPL-3.0-or-later */
/* When something holds over a day of light that is sampled evenly. Pure. */
#pragma once

#include <glib.h>

#include "ff-advise.h"

/* Samples [from, to], both included. */
typedef struct {
  guint from, to;
} FfHold;

/* Runs of samples whose light lies within [low, high]: an array of FfHold, in order. */
GArray *ff_hold_within (const double *ev100,
                        guint n,
                        double low,
                        double high) G_GNUC_WARN_UNUSED_RESULT;

/* The first moment, in samples from the first one and interpolated, after sample `at` at which the
 * light leaves [low, high]; NAN: not before the last sample. The light at `at` is within. */
double ff_hold_until (const double *ev100, guint n, guint at, double low, double high);

/* Runs of samples for which this filter (-1: none) is the cheapest choice of ff_advise() that is
 * within reach; the query's own light is not looked at. `best` holds for each sample the filter
 * that ff_hold_best() found. */
GArray *ff_hold_runs (const int *best, guint n, int filter) G_GNUC_WARN_UNUSED_RESULT;

/* For each sample the filter of the cheapest single choice, -1: none, FF_HOLD_NOTHING: nothing is
 * within reach. */
#define FF_HOLD_NOTHING (-2)
int *ff_hold_best (const FfAdviseQuery *query,
                   const double *ev100,
                   guint n) G_GNUC_WARN_UNUSED_RESULT;
