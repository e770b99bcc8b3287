/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The time zone database's table of zones and their principal cities (zone1970.tab, or zone.tab of
 * an older system), from which a zone can be suggested. The nearest city is no more than a
 * suggestion: borders are not in the table. */
#pragma once

#include <glib.h>

typedef struct {
  char *zone; /* "Europe/London" */
  char *city; /* "London" */
  double latitude_deg, longitude_deg;
} FfZoneCity;

/* The table of this computer, or an empty array where there is none. Array of FfZoneCity. */
GPtrArray *ff_zone_table_load (void) G_GNUC_WARN_UNUSED_RESULT;

/* The same out of the text of such a file; lines that are none are passed over. */
GPtrArray *ff_zone_table_parse (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* The `most` nearest cities with another zone each, nearest first; elements are borrowed. */
GPtrArray *ff_zone_table_nearest (GPtrArray *table,
                                  double latitude_deg,
                                  double longitude_deg,
                                  guint most) G_GNUC_WARN_UNUSED_RESULT;

/* Great-circle distance in kilometres, good to a percent: to name a city, not to measure. */
double ff_zone_city_distance_km (const FfZoneCity *city, double latitude_deg, double longitude_deg);
