/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The curves of a shoot day that the day chart draws beside the plan: the sun, the light with its
 * honest spread, the need at the camera's level; sampled evenly. */
#pragma once

#include <glib.h>

#include "ff-day.h"

typedef struct {
  gint64 at;
  char *text; /* "ferry passes", "reading +0.4 stops" */
  char *detail; /* of a reading: how long it lasts; else NULL */
  gboolean is_reading;
} FfChartEvent;

typedef struct {
  GTimeZone *zone;
  gint64 from, to;          /* the axis, whole minutes */
  int step_s;               /* seconds between samples */
  guint n_samples;          /* sample i is at from + i step_s */
  double *sun_altitude_deg; /* geometric */
  double *ev100, *low_ev100, *high_ev100; /* oblique view, sun behind the camera */
  double *need_stops;       /* of plain video at the delivery frame rate; NAN without a camera */
  gint64 sunrise, sunset, civil_dawn, civil_dusk; /* 0: not on this axis */
  gint64 now;               /* 0: do not draw it */
  GPtrArray *events;        /* FfChartEvent: typed events and readings, by time */
} FfChartFacts;

/* `now` 0: none. Needs a day that ff_day_plan() can plan; samples every `step_s` seconds. */
FfChartFacts *ff_chart_facts (const FfDay *day, int step_s, gint64 now) G_GNUC_WARN_UNUSED_RESULT;

/* The same under a change that is tried: the light of another sky, the axis of other hours. */
FfChartFacts *ff_chart_facts_changed (const FfDay *day,
                                      const FfDayChange *change,
                                      int step_s,
                                      gint64 now) G_GNUC_WARN_UNUSED_RESULT;
void ff_chart_facts_free (FfChartFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfChartFacts, ff_chart_facts_free)
