/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-usable.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-flight.h"
#include "ff-limit.h"
#include "ff-number.h"

#define MOST_FLIGHTS 10

static gboolean
counts (const FfBatteryFlight *flight, const FfItem *battery, FfTemperatureBand band)
{
  return g_str_equal (flight->battery_id, battery->id) && isfinite (flight->temperature_c)
         && ff_battery_band (flight->temperature_c) == band;
}

/* The newest flights first, until there are enough. */
static void
look_at_flights (const FfItem *battery, GPtrArray *flights, double reserve, FfUsable *usable)
{
  double sum = 0;

  for (guint i = flights->len; i > 0 && usable->flights < MOST_FLIGHTS; i--)
    {
      const FfBatteryFlight *flight = g_ptr_array_index (flights, i - 1);
      double minutes = ff_battery_minutes (flight->minutes, flight->percent_off,
                                           flight->percent_down, reserve);

      if (!counts (flight, battery, usable->band) || isnan (minutes))
        continue;
      usable->flights++;
      sum += minutes;
      usable->worst = fmin (usable->worst, minutes);
    }
  if (usable->flights > 0)
    usable->mean = sum / usable->flights;
}

void
ff_usable (const FfItem *battery,
           GPtrArray *flights,
           double temperature_c,
           double reserve_percent,
           FfUsable *ret_usable)
{
  FfUsable usable = { .minutes = battery->usable_minutes, .mean = NAN, .worst = NAN };

  usable.has_band = isfinite (temperature_c);
  if (usable.has_band)
    {
      usable.band = ff_battery_band (temperature_c);
      look_at_flights (battery, flights, reserve_percent, &usable);
    }
  if (usable.flights >= FF_USABLE_FEWEST)
    {
      usable.from_log = TRUE;
      usable.minutes = MAX ((int) floor (usable.worst), 1);
    }
  *ret_usable = usable;
}

double
ff_usable_reserve (GPtrArray *limits)
{
  double reserve = NAN;

  for (guint i = 0; i < limits->len; i++)
    {
      const FfLimit *limit = g_ptr_array_index (limits, i);

      if (g_str_equal (limit->kind, "reserve") && limit->compare == FF_COMPARE_AT_LEAST
          && g_str_equal (limit->unit, "%") && limit->value < 100)
        reserve = fmax (reserve, limit->value);
    }
  return reserve;
}

const char *
ff_usable_band_text (FfTemperatureBand band)
{
  static const char *const texts[] = {
    [FF_BAND_BELOW_0] = N_ ("under 0 °C"),      [FF_BAND_0_TO_10] = N_ ("0 to 10 °C"),
    [FF_BAND_10_TO_20] = N_ ("10 to 20 °C"),    [FF_BAND_20_TO_30] = N_ ("20 to 30 °C"),
    [FF_BAND_ABOVE_30] = N_ ("30 °C and more"),
  };

  return g_dgettext (GETTEXT_PACKAGE, texts[band]);
}

char *
ff_usable_words (const FfUsable *usable)
{
  const char *band = usable->has_band ? ff_usable_band_text (usable->band) : NULL;
  g_autofree char *mean = ff_number_format (usable->mean, 1);

  if (usable->from_log)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "worst of %u flight at %s; mean %s min",
                                         "worst of %u flights at %s; mean %s min", usable->flights),
                            usable->flights, band, mean);
  if (!usable->has_band)
    return g_strdup (_ ("as typed; no temperature is known to look for in the log"));
  if (usable->flights == 0)
    /* Translators: %s is a range of temperature. */
    return g_strdup_printf (_ ("as typed; no flight in the log yet at %s"), band);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "as typed; only %u flight in the log at %s",
                                       "as typed; only %u flights in the log at %s",
                                       usable->flights),
                          usable->flights, band);
}
