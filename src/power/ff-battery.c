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
