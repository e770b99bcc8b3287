/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Battery arithmetic. */
#pragma once

#include <glib.h>

/* How a lithium battery of this energy is usually classed for passenger baggage; a published
 * example (IATA and ICAO bands), never a ruling: the carrier decides. */
typedef enum { FF_CARRY_UP_TO_100, FF_CARRY_OVER_100_TO_160, FF_CARRY_OVER_160 } FfCarry;

/* Wh = nominal volts x ampere-hours; never the full-charge voltage. */
double ff_battery_energy_wh (double volts, double milliamp_hours);

/* Band of an energy; compared unrounded, but for the noise of the last binary digits. */
FfCarry ff_battery_carry (double energy_wh);

/* Whether the energy printed on the case differs from V x Ah by more than 2 percent. */
gboolean ff_battery_print_differs (double printed_wh, double computed_wh);
