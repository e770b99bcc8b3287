/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The minutes that a battery is good for: from the crew's own flights with it in this temperature,
 * and until there are enough of them the figure that was typed, which is said. Pure. */
#pragma once

#include "ff-battery.h"
#include "ff-item.h"

/* So many flights in a band of temperature are believed; fewer are not. */
#define FF_USABLE_FEWEST 3

typedef struct {
  int minutes;         /* what a plan counts with; at least 1 */
  gboolean from_log;
  gboolean has_band;   /* the temperature is known */
  FfTemperatureBand band;
  guint flights;       /* in that band, of those that used enough to tell */
  double mean, worst;  /* of the last ten of them; NAN: none */
} FfUsable;

/* `flights` are FfBatteryFlight by time, of this battery and others. The plan counts with the worst of
 * the last ten flights: running out is a matter of the tail and not of the mean. The reserve is the
 * share of the charge that stays in the battery, in per cent. */
void ff_usable (const FfItem *battery,
                GPtrArray *flights,
                double temperature_c,
                double reserve_percent,
                FfUsable *ret_usable);

/* The reserve of the crew's own limit sheets (FfLimit): the highest; NAN when none is entered. */
double ff_usable_reserve (GPtrArray *limits);

/* What stands behind the minutes, as one line. */
char *ff_usable_words (const FfUsable *usable) G_GNUC_WARN_UNUSED_RESULT;
/* "10 to 20 °C". */
const char *ff_usable_band_text (FfTemperatureBand band);
