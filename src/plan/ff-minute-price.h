/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a minute in one light behind one filter costs: the price of advise with settings let free
 * between their steps. Close to ff_advise_settings() and a thousand times cheaper, so that a
 * planner can look at every minute of every shot behind every filter. */
#pragma once

#include "ff-advise.h"

/* Adds the parts to `add_to_parts` (may be NULL) and returns their sum. */
double ff_minute_price (const FfPrices *prices,
                        const FfCameraRange *camera,
                        const FfWant *want,
                        double narrowest_angle_deg,
                        double ev100,
                        double filter_stops,
                        double *add_to_parts);
