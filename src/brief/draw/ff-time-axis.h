/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A span of time laid along a line, with its ticks on the wall clock of a place. */
#pragma once

#include <glib.h>

typedef struct {
  gint64 from, to; /* UTC seconds, from < to */
  double left, right;
  GTimeZone *zone; /* borrowed */
} FfTimeAxis;

/* Where an instant stands; what lies outside is held at the ends. */
double ff_time_axis_x (const FfTimeAxis *axis, double instant);

gboolean ff_time_axis_holds (const FfTimeAxis *axis, gint64 instant);

/* The shortest step of whole minutes that a clock divides well (5 minutes to a day) and that takes
 * at least `distance` along the line. */
int ff_time_axis_step (const FfTimeAxis *axis, double distance);

/* The first instant from `after` on whose wall clock is a multiple of the step; G_MAXINT64 when
 * there is none on the axis. */
gint64 ff_time_axis_next (const FfTimeAxis *axis, gint64 after, int step_minutes);
