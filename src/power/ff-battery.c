/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-battery.h"

#include <math.h>

double
ff_battery_energy_wh (double volts, double milliamp_hours)
{
  return volts * milliamp_hours / 1000.0;
}

FfCarry
ff_battery_carry (double energy_wh)
{
  const double noise = 1e-9;

  if (energy_wh <= 100.0 + noise)
    return FF_CARRY_UP_TO_100;
  return energy_wh <= 160.0 + noise ? FF_CARRY_OVER_100_TO_160 : FF_CARRY_OVER_160;
}

gboolean
ff_battery_print_differs (double printed_wh, double computed_wh)
{
  return fabs (printed_wh - computed_wh) > 0.02 * computed_wh;
}

double
ff_battery_rise (double milliohms, double new_milliohms)
{
  return milliohms / new_milliohms - 1.0;
}

FfRise
ff_battery_rise_class (double rise)
{
  const double noise = 1e-9;

  if (rise >= 1.0 - noise)
    return FF_RISE_END;
  return rise >= 0.5 - noise ? FF_RISE_WATCH : FF_RISE_NONE;
}

double
ff_battery_minutes (double flown_minutes,
                    double percent_off,
                    double percent_down,
                    double reserve_percent)
{
  double used = percent_off - percent_down;

  if (!(used >= 25.0))
    return NAN;
  return flown_minutes * (100.0 - reserve_percent) / used;
}

FfTemperatureBand
ff_battery_band (double temperature_c)
{
  if (temperature_c < 0.0)
    return FF_BAND_BELOW_0;
  if (temperature_c < 10.0)
    return FF_BAND_0_TO_10;
  if (temperature_c < 20.0)
    return FF_BAND_10_TO_20;
  return temperature_c < 30.0 ? FF_BAND_20_TO_30 : FF_BAND_ABOVE_30;
}
