/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The air of a day as it is best known: what was measured last, or a report that is newer, else the
 * forecast typed with the job. For the files of this room. */
#pragma once

#include "ff-day-private.h"
#include "ff-usable.h"

typedef struct {
  double temperature_c, dew_point_c, qnh_hpa; /* NAN: not known */
  double wind_ms, wind_height_m;              /* a mean wind, and where it blows */
  gboolean seen; /* temperature or pressure were measured or reported, not only forecast */
} FfDayAir;

void ff_day_air (const FfDay *day, FfDayAir *ret_air);

/* At the site. Standard air stands in for what is not known. kg/m³ */
double ff_day_air_density (const FfDay *day, const FfDayAir *air);

/* What that air costs in power to hover against standard air at sea level, as an estimate; never
 * below 1, so that what follows from it only ever shortens a flight. 1 where nothing was measured or
 * reported. ff_day_air_counts() is the share of it that the crew lets the plan count with. */
double ff_day_air_cost (const FfDay *day);
double ff_day_air_counts (const FfDay *day);

/* The minutes that a plan counts with in that air. What was typed is cut by its cost and never
 * grows; what the crew's own flights show was flown in real air and stays. At least 1. */
int ff_day_air_minutes (const FfDay *day, const FfUsable *usable);
