/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Air: pressure, density and moisture near the ground, in the ICAO standard atmosphere (Doc 7488:
 * 288.15 K, 1013.25 hPa and 1.225 kg/m³ at sea level, 6.5 K a kilometre). Estimates for a crew, and
 * to be shown as such: a report's temperature is good to half a degree, its pressure to 1 hPa. */
#pragma once

#include <glib.h>

/* The standard temperature in °C and pressure in hPa at a height in m (geopotential, up to 11 km). */
double ff_air_standard_c (double height_m);
double ff_air_standard_hpa (double height_m);

/* The pressure at a place of that elevation when its QNH is this. */
double ff_air_station_hpa (double qnh_hpa, double elevation_m);

/* The height in m at which the standard atmosphere has the place's pressure (NWS form, as in the
 * pressure altitude table of FAA-H-8083-25, chapter 10). */
double ff_air_pressure_altitude_m (double qnh_hpa, double elevation_m);

/* Vapour pressure of saturated air over water in hPa (WMO-No. 8, annex 4.B). */
double ff_air_saturation_hpa (double temperature_c);

/* The dew point in °C of air at this temperature and relative humidity, 0 < humidity <= 100 %. */
double ff_air_dew_point_c (double temperature_c, double humidity_percent);

/* kg/m³; a NaN dew point means dry air. */
double ff_air_density_kgm3 (double pressure_hpa, double temperature_c, double dew_point_c);

/* The height in m at which the standard atmosphere has this density. */
double ff_air_density_altitude_m (double density_kgm3);

/* Power to hover against that at sea level: √(1.225/ρ), the momentum theory of a hovering rotor
 * (J. G. Leishman, Principles of Helicopter Aerodynamics, chapter 2, from memory). Profile power
 * goes the other way, so it is good to about 5 %. */
double ff_air_hover_power_ratio (double density_kgm3);

/* The base in m above ground of clouds that the day's warmth builds: 1000 ft for each 2.5 °C
 * between temperature and dew point (FAA-H-8083-25B, chapter 12). Not for layers of a front or of
 * fog; good to 400 ft with whole degrees. A reported ceiling comes first. */
double ff_air_cloud_base_m (double temperature_c, double dew_point_c);

/* Wind chill in °C for bare skin, the 2001 formula of Environment Canada and the US National
 * Weather Service; wind at 10 m. NaN where it is not defined: above 10 °C or below 4.8 km/h (these
 * edges from memory). For people only; it says nothing of batteries. */
double ff_air_wind_chill_c (double temperature_c, double wind_ms);

/* The wind in m/s at another height over open ground: the power law with exponent 1/7 in neutral
 * air (AMS Glossary of Meteorology, "power-law profile"). ret_low and ret_high: the same with 0.11
 * (water) and 0.25 (hedges and houses). Both heights positive; never from a sensor below 2 m. */
double ff_air_wind_at_m (double wind_ms,
                         double from_height_m,
                         double to_height_m,
                         double *ret_low,
                         double *ret_high);

/* The Beaufort force of a mean wind (WMO-No. 306, section E), in the scale's own unit: its columns
 * disagree at whole knots (16 kt is force 4, 8.23 m/s is force 5), so ask in the unit reported. */
typedef enum { FF_BEAUFORT_KNOTS, FF_BEAUFORT_MS, FF_BEAUFORT_KMH } FfBeaufortUnit;
int ff_air_beaufort (double mean_wind, FfBeaufortUnit unit);
/* "gentle breeze", translated. */
const char *ff_air_beaufort_text (int force);
