/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-flicker.h"

#include <math.h>

/* Of the last binary digits only: 24 frames divide 120 pulses, 24000/1001 do not. */
#define NOISE 1e-9

static double
pulses_per_frame (double mains_hz, double fps)
{
  return 2.0 * mains_hz / fps;
}

guint
ff_flicker_count (double mains_hz, double fps)
{
  return (guint) floor (pulses_per_frame (mains_hz, fps) * (1.0 + NOISE));
}

double
ff_flicker_shutter_s (double mains_hz, guint n)
{
  return n / (2.0 * mains_hz);
}

gboolean
ff_flicker_any_angle (double mains_hz, double fps)
{
  const double pulses = pulses_per_frame (mains_hz, fps);

  return fabs (pulses - round (pulses)) <= NOISE * pulses;
}
