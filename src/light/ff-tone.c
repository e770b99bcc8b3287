/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-tone.h"

#include <math.h>

double
ff_tone_srgb_value (double light)
{
  return light <= 0.0031308 ? 12.92 * light : 1.055 * pow (light, 1.0 / 2.4) - 0.055;
}

double
ff_tone_srgb_light (double value)
{
  return value <= 0.04045 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

double
ff_tone_video_level (double light)
{
  return 100.0 * (light < 0.018 ? 4.5 * light : 1.099 * pow (light, 0.45) - 0.099);
}

double
ff_tone_video_light (double level)
{
  const double value = level / 100.0;

  return value < 0.081 ? value / 4.5 : pow ((value + 0.099) / 1.099, 1.0 / 0.45);
}

double
ff_tone_stops_of_clip (double light)
{
  return log2 (light);
}

double
ff_tone_stops_of_grey (double light)
{
  return log2 (light / FF_TONE_GREY);
}

double
ff_tone_metered_lxs (double iso)
{
  return 10.0 / iso;
}

double
ff_tone_saturation_lxs (double iso)
{
  return 78.0 / iso;
}
