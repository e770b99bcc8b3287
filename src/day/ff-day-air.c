/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-air.h"

#include <math.h>

#include "ff-air.h"
#include "ff-limit-facts.h"
#include "ff-limit-kind.h"

#define MAST 10.0 /* m: where a forecast's wind blows, unless it says otherwise */

/* The newest measurement of a kind, in SI; FALSE: there is none. */
static gboolean
newest (const FfDay *day, const char *kind, double *ret_si, const FfMeasurement **ret_measured)
{
  guint i;

  for (i = day->measurements->len; i-- > 0;)
    {
      const FfMeasurement *measured = g_ptr_array_index (day->measurements, i);
      const FfLimitKind *known = ff_limit_kind_find (measured->kind);
      const FfUnit *unit
          = known != NULL ? ff_unit_find (known->dimension, measured->unit) : NULL;

      if (!g_str_equal (measured->kind, kind) || unit == NULL || isnan (measured->value))
        continue;
      *ret_si = ff_unit_to_si (unit, measured->value);
      *ret_measured = measured;
      return TRUE;
    }
  return FALSE;
}

static double
exact (FfReported reported)
{
  return reported.is == FF_REPORTED_EXACT ? reported.value : NAN;
}

static void
take_report (FfDayAir *air, const FfReport *report)
{
  air->qnh_hpa = exact (report->qnh_hpa);
  if (report->temperature_c.is == FF_REPORTED_EXACT)
    {
      air->temperature_c = report->temperature_c.value;
      air->dew_point_c = exact (report->dew_point_c);
    }
  if (report->part.wind_ms.is == FF_REPORTED_EXACT)
    {
      air->wind_ms = report->part.wind_ms.value;
      air->wind_height_m = MAST;
    }
  air->seen = !isnan (air->qnh_hpa) || report->temperature_c.is == FF_REPORTED_EXACT;
}

/* A dew point is of the same air as the temperature it was reported with: with another temperature
 * the two say nothing together. */
static void
take_measured (const FfDay *day, FfDayAir *air, gint64 after)
{
  const FfMeasurement *measured = NULL;
  double si;

  if (newest (day, "air-temperature", &si, &measured) && measured->at >= after)
    {
      air->temperature_c = si;
      air->dew_point_c = NAN;
      air->seen = TRUE;
    }
  if (newest (day, "mean-wind", &si, &measured) && measured->at >= after)
    {
      air->wind_ms = si;
      air->wind_height_m = measured->height_m;
    }
}

void
ff_day_air (const FfDay *day, FfDayAir *ret_air)
{
  const FfJob *job = day->job;
  const FfWeatherReport *record;
  g_autoptr (FfReport) report = ff_day_latest_report (day, FALSE, &record);

  *ret_air = (FfDayAir){ job->temperature_c, NAN, NAN, job->wind_ms,
                         isnan (job->wind_height_m) ? MAST : job->wind_height_m, FALSE };
  if (report != NULL)
    take_report (ret_air, report);
  take_measured (day, ret_air, report != NULL ? report->at : G_MININT64);
}

double
ff_day_air_density (const FfDay *day, const FfDayAir *air)
{
  const double site_m = day->place != NULL && isfinite (day->place->elevation_m)
                            ? day->place->elevation_m : 0.0;
  const double hpa = ff_air_station_hpa (isnan (air->qnh_hpa) ? 1013.25 : air->qnh_hpa, site_m);
  const double celsius
      = isnan (air->temperature_c) ? ff_air_standard_c (site_m) : air->temperature_c;

  return ff_air_density_kgm3 (hpa, celsius, air->dew_point_c);
}

double
ff_day_air_cost (const FfDay *day)
{
  FfDayAir air;

  ff_day_air (day, &air);
  if (!air.seen)
    return 1.0;
  return fmax (ff_air_hover_power_ratio (ff_day_air_density (day, &air)), 1.0);
}

double
ff_day_air_counts (const FfDay *day)
{
  return 1.0 + day->thin_air * (ff_day_air_cost (day) - 1.0);
}

int
ff_day_air_minutes (const FfDay *day, const FfUsable *usable)
{
  if (usable->from_log)
    return usable->minutes;
  return MAX ((int) floor (usable->minutes / ff_day_air_counts (day)), 1);
}
