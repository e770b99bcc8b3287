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

/* How far the resistance of a cell has risen from new, as a share: 0.5 is half as much again. NAN
 * when either is not known. */
double ff_battery_rise (double milliohms, double new_milliohms);

/* What a rise says: from 50 per cent it is watched, from 100 per cent the battery is at its end (end
 * of life by convention: ohmic resistance at 200 % of new). */
typedef enum { FF_RISE_NONE, FF_RISE_WATCH, FF_RISE_END } FfRise;
FfRise ff_battery_rise_class (double rise);

/* Minutes that a full charge gives down to the reserve, from one flight that used part of it:
 * minutes flown x (100 - reserve) / (charge at take-off - charge at landing), all in per cent. NAN
 * when the flight used less than a quarter, which says too little. */
double ff_battery_minutes (double flown_minutes,
                           double percent_off,
                           double percent_down,
                           double reserve_percent);

/* Bands of temperature in which the minutes of a battery are kept apart (own bands; cold shortens). */
typedef enum {
  FF_BAND_BELOW_0,
  FF_BAND_0_TO_10,
  FF_BAND_10_TO_20,
  FF_BAND_20_TO_30,
  FF_BAND_ABOVE_30,
} FfTemperatureBand;
#define FF_N_TEMPERATURE_BANDS 5

/* The band of a finite temperature; a border belongs to the warmer one. */
FfTemperatureBand ff_battery_band (double temperature_c);

/* Whether the energy printed on the case differs from V x Ah by more than 2 percent. */
gboolean ff_battery_print_differs (double printed_wh, double computed_wh);
