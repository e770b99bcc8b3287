/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-curve.h"

#include <math.h>

static FfCurvePoint
point_at (FfCurve curve, gconstpointer data, double instant)
{
  return (FfCurvePoint) { instant, curve (instant, data) };
}

/* Whether the curve turns round within three points in a row, and where: the vertex of the parabola
 * through them. With minutes between the points a sun or moon strays from that parabola by far less
 * than any level is known. */
static gboolean
find_turn (const FfCurvePoint *points, double *ret_instant)
{
  const double fall = points[0].value - points[1].value;
  const double rise = points[2].value - points[1].value;
  const double step = points[2].instant - points[1].instant;

  if (fall * rise < 0 || fall + rise == 0)
    return FALSE;
  *ret_instant = points[1].instant + step / 2 * (fall - rise) / (fall + rise);
  return TRUE;
}

static GArray *
sample (FfCurve curve, gconstpointer data, double from, double to, double step)
{
  GArray *samples = g_array_new (FALSE, FALSE, sizeof (FfCurvePoint));
  const int n = MAX (1, (int) ceil ((to - from) / step));

  for (int i = -1; i <= n + 1; i++)
    {
      FfCurvePoint point = point_at (curve, data, from + (to - from) * i / n);

      g_array_append_val (samples, point);
    }
  return samples;
}

GArray *
ff_curve_points (FfCurve curve, gconstpointer data, double from, double to, double step)
{
  g_autoptr (GArray) samples = sample (curve, data, from, to, step);
  GArray *points = g_array_sized_new (FALSE, FALSE, sizeof (FfCurvePoint), samples->len + 8);
  const FfCurvePoint *all = (const FfCurvePoint *) (void *) samples->data;

  g_array_append_val (points, all[0]);
  for (guint i = 1; i + 1 < samples->len; i++)
    {
      double turn;
      gboolean has_turn = find_turn (&all[i - 1], &turn);
      FfCurvePoint extreme = { 0 };

      if (has_turn)
        extreme = point_at (curve, data, turn);
      if (has_turn && turn < all[i].instant)
        g_array_append_val (points, extreme);
      g_array_append_val (points, all[i]);
      if (has_turn && turn > all[i].instant)
        g_array_append_val (points, extreme);
    }
  g_array_append_val (points, all[samples->len - 1]);
  return points;
}

double
ff_curve_crossing (FfCurve curve,
                   gconstpointer data,
                   const FfCurvePoint *before,
                   const FfCurvePoint *after,
                   double level)
{
  const gboolean starts_below = before->value < level;
  double low = before->instant, high = after->instant;

  while (high - low > 0.01)
    {
      const double middle = low + (high - low) / 2;

      if ((curve (middle, data) < level) == starts_below)
        low = middle;
      else
        high = middle;
    }
  return low + (high - low) / 2;
}
