/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A smooth curve over time cut into pieces that only rise or only fall, so that no crossing of a
 * level can hide between two samples: not even the pair of a body that just grazes the horizon. */
#pragma once

#include <glib.h>

typedef double (*FfCurve) (double instant, gconstpointer data);

typedef struct {
  double instant;
  double value;
} FfCurvePoint;

/* Points of the curve over [from, to] and up to one step beyond either end, at most `step` seconds
 * apart, its highest and lowest points among them: an array of FfCurvePoint in order of time. */
GArray *ff_curve_points (FfCurve curve,
                         gconstpointer data,
                         double from,
                         double to,
                         double step) G_GNUC_WARN_UNUSED_RESULT;

/* When the curve crosses `level` between two neighbouring points on either side of it, to a
 * hundredth of a second. */
double ff_curve_crossing (FfCurve curve,
                          gconstpointer data,
                          const FfCurvePoint *before,
                          const FfCurvePoint *after,
                          double level);
