/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-time-axis.h"

#include "ff-civil.h"

double
ff_time_axis_x (const FfTimeAxis *axis, double instant)
{
  double part = (instant - (double) axis->from) / (double) (axis->to - axis->from);

  return axis->left + CLAMP (part, 0, 1) * (axis->right - axis->left);
}

gboolean
ff_time_axis_holds (const FfTimeAxis *axis, gint64 instant)
{
  return instant >= axis->from && instant <= axis->to;
}

int
ff_time_axis_step (const FfTimeAxis *axis, double distance)
{
  static const int steps[] = { 5, 10, 15, 30, 60, 120, 180, 240, 360, 720 };
  double per_minute
      = (axis->right - axis->left) * FF_MINUTE / (double) (axis->to - axis->from);

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * per_minute >= distance)
      return steps[i];
  return 24 * 60;
}

static gint64
offset_at (GTimeZone *zone, gint64 instant)
{
  int interval = g_time_zone_find_interval (zone, G_TIME_TYPE_UNIVERSAL, instant);

  return g_time_zone_get_offset (zone, interval);
}

/* Goes by five-minute steps of the wall clock, so that a change of clocks on the way is met. */
gint64
ff_time_axis_next (const FfTimeAxis *axis, gint64 after, int step_minutes)
{
  const gint64 fine = 5 * FF_MINUTE;
  gint64 step = step_minutes * FF_MINUTE;
  gint64 late = (after + offset_at (axis->zone, after)) % fine;

  for (gint64 at = after + (fine - late) % fine; at <= axis->to; at += fine)
    if ((at + offset_at (axis->zone, at)) % step == 0)
      return at;
  return G_MAXINT64;
}
