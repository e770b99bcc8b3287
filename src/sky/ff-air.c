/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-air.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SEA_LEVEL_K 288.15
#define SEA_LEVEL_HPA 1013.25
#define SEA_LEVEL_KGM3 1.225
#define LAPSE_KM 0.0065 /* K per metre */
#define DRY_AIR 287.05287 /* J/(kg K) */
#define VAPOUR 461.495    /* J/(kg K) */
#define ZERO_C 273.15
#define PRESSURE_POWER 5.25588
#define DENSITY_POWER 4.25588
#define FOOT 0.3048

double
ff_air_standard_c (double height_m)
{
  return SEA_LEVEL_K - LAPSE_KM * height_m - ZERO_C;
}

double
ff_air_standard_hpa (double height_m)
{
  return SEA_LEVEL_HPA * pow (1.0 - LAPSE_KM * height_m / SEA_LEVEL_K, PRESSURE_POWER);
}

double
ff_air_station_hpa (double qnh_hpa, double elevation_m)
{
  const double base = pow (qnh_hpa / SEA_LEVEL_HPA, 1.0 / PRESSURE_POWER);

  return SEA_LEVEL_HPA * pow (base - LAPSE_KM * elevation_m / SEA_LEVEL_K, PRESSURE_POWER);
}

double
ff_air_pressure_altitude_m (double qnh_hpa, double elevation_m)
{
  return elevation_m + 145366.45 * FOOT * (1.0 - pow (qnh_hpa / SEA_LEVEL_HPA, 0.190284));
}

double
ff_air_saturation_hpa (double temperature_c)
{
  return 6.112 * exp (17.62 * temperature_c / (243.12 + temperature_c));
}

double
ff_air_dew_point_c (double temperature_c, double humidity_percent)
{
  const double g = log (humidity_percent / 100.0) + 17.62 * temperature_c / (243.12 + temperature_c);

  return 243.12 * g / (17.62 - g);
}

double
ff_air_density_kgm3 (double pressure_hpa, double temperature_c, double dew_point_c)
{
  const double kelvin = temperature_c + ZERO_C;
  const double vapour_hpa = isnan (dew_point_c) ? 0.0 : ff_air_saturation_hpa (dew_point_c);

  return 100.0 * ((pressure_hpa - vapour_hpa) / (DRY_AIR * kelvin) + vapour_hpa / (VAPOUR * kelvin));
}

double
ff_air_density_altitude_m (double density_kgm3)
{
  return SEA_LEVEL_K / LAPSE_KM * (1.0 - pow (density_kgm3 / SEA_LEVEL_KGM3, 1.0 / DENSITY_POWER));
}

double
ff_air_hover_power_ratio (double density_kgm3)
{
  return sqrt (SEA_LEVEL_KGM3 / density_kgm3);
}

double
ff_air_cloud_base_m (double temperature_c, double dew_point_c)
{
  return MAX (temperature_c - dew_point_c, 0.0) / 2.5 * 1000.0 * FOOT;
}

double
ff_air_wind_chill_c (double temperature_c, double wind_ms)
{
  const double kmh = wind_ms * 3.6;
  const double power = pow (kmh, 0.16);

  if (!(temperature_c <= 10.0) || !(kmh >= 4.8))
    return NAN;
  return 13.12 + 0.6215 * temperature_c - 11.37 * power + 0.3965 * temperature_c * power;
}

double
ff_air_wind_at_m (double wind_ms,
                  double from_height_m,
                  double to_height_m,
                  double *ret_low,
                  double *ret_high)
{
  const double ratio = to_height_m / from_height_m;
  const double water = wind_ms * pow (ratio, 0.11), houses = wind_ms * pow (ratio, 0.25);

  if (ret_low != NULL)
    *ret_low = MIN (water, houses);
  if (ret_high != NULL)
    *ret_high = MAX (water, houses);
  return wind_ms * pow (ratio, 1.0 / 7.0);
}

int
ff_air_beaufort (double mean_wind, FfBeaufortUnit unit)
{
  /* The least of each force from 1 on, as printed in that column. */
  static const double least[][12] = {
    [FF_BEAUFORT_KNOTS] = { 1, 4, 7, 11, 17, 22, 28, 34, 41, 48, 56, 64 },
    [FF_BEAUFORT_MS]
    = { 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7 },
    [FF_BEAUFORT_KMH] = { 1, 6, 12, 20, 29, 39, 50, 62, 75, 89, 103, 118 },
  };
  /* The columns are in whole knots and kilometres, and tenths of m/s: a wind is rounded to them. */
  const double step = unit == FF_BEAUFORT_MS ? 10.0 : 1.0;
  const double wind = round (mean_wind * step) / step;
  int force = 0;

  while (force < 12 && wind >= least[unit][force])
    force++;
  return force;
}

const char *
ff_air_beaufort_text (int force)
{
  static const char *const texts[] = {
    /* TRANSLATORS: The thirteen forces of the Beaufort scale, from here on. */
    N_ ("calm"),         N_ ("light air"),     N_ ("light breeze"), N_ ("gentle breeze"),
    N_ ("moderate breeze"), N_ ("fresh breeze"), N_ ("strong breeze"), N_ ("near gale"),
    N_ ("gale"),         N_ ("strong gale"),   N_ ("storm"),        N_ ("violent storm"),
    N_ ("hurricane"),
  };

  g_return_val_if_fail (force >= 0 && force < (int) G_N_ELEMENTS (texts), texts[0]);
  return _ (texts[force]);
}
