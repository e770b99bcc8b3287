/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-bracket.h"

#include <math.h>

guint
ff_bracket_frames (double scene_stops, double camera_stops, double step_stops)
{
  const double noise = 1e-9;

  if (scene_stops <= camera_stops)
    return 1;
  return 1 + (guint) ceil ((scene_stops - camera_stops) / step_stops - noise);
}

guint
ff_bracket_odd_frames (guint frames)
{
  return frames | 1;
}

double
ff_bracket_exposure_s (double base_s, double step_stops, guint frames, guint index)
{
  return base_s * exp2 (step_stops * (index - (frames - 1) / 2.0));
}
