/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What sun and moon do in a local civil day. A day is a list of crossings and what held at its
 * start, never one pair of rise and set: far from the equator an event is absent or comes twice. */
#pragma once

#include <glib.h>

#include "ff-names.h"
#include "ff-sun.h"

typedef enum {
  FF_EVENT_NAUTICAL_DAWN,
  FF_EVENT_CIVIL_DAWN,
  FF_EVENT_SUNRISE,
  FF_EVENT_SOLAR_NOON,
  FF_EVENT_SUNSET,
  FF_EVENT_CIVIL_DUSK,
  FF_EVENT_NAUTICAL_DUSK,
  FF_EVENT_MOONRISE,
  FF_EVENT_MOONSET,
} FfEvent;

/* Tokens as the console says them: nautical_dawn, sunrise … */
extern const FfNames ff_names_event;

typedef struct {
  FfEvent event;
  double instant;
} FfSkyEvent;

/* Events in [from, to), at most two days, in order of time: an array of FfSkyEvent. ret_polar (may
 * be NULL) says whether the sun stays up or down over the whole span. Sun: upper limb at -0.8333
 * degrees, twilights at -6 and -12 (USNO definitions); moon: upper limb at -34 arcminutes,
 * topocentric. Flat horizon at sea level: hills and a raised viewpoint are not known here. */
GArray *ff_sky_events (gint64 from,
                       gint64 to,
                       const FfSite *site,
                       FfPolar *ret_polar) G_GNUC_WARN_UNUSED_RESULT;

/* The first event of a kind in the array, or NULL. */
const FfSkyEvent *ff_sky_events_find (GArray *events, FfEvent event);
