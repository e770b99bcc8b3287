/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the sun compass of a day shows: where the sun goes over the hours on site, where spots and
 * posts lie, which way people and cameras look, and when a low sun stands in an observer's eyes.
 * Bearings are degrees clockwise from true north. */
#pragma once

#include "ff-day.h"

typedef struct {
  gint64 at;
  char *clock; /* "17:30" */
  double azimuth_deg, altitude_deg; /* as seen */
} FfCompassSun;

typedef struct {
  char *mark;  /* "2", "P1": what stands on the sketch */
  char *name;  /* "the sea wall" */
  double bearing_deg, distance_m; /* from the take-off spot; NAN: not said */
  double faces_deg;               /* of a post; NAN */
  gboolean post;
  double glare_from_deg, glare_to_deg; /* azimuths of a low sun within 30° of where it faces; NAN */
  char *glare; /* "sun low in your eyes 17:30 to 18:40, 252° to 267°"; empty */
} FfCompassSpot;

typedef struct {
  char *shot;
  double bearing_deg; /* where the camera looks */
} FfCompassShot;

typedef struct {
  GPtrArray *suns;  /* FfCompassSun at each half hour from first off to all down, and at sunset */
  GPtrArray *spots; /* FfCompassSpot */
  GPtrArray *shots; /* FfCompassShot of those with a bearing */
  double wind_from_deg; /* NAN */
  char *wind;       /* "240° 4 m/s gusting 6" */
} FfCompassFacts;

FfCompassFacts *ff_compass_facts (const FfDay *day) G_GNUC_WARN_UNUSED_RESULT;
void ff_compass_facts_free (FfCompassFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfCompassFacts, ff_compass_facts_free)
