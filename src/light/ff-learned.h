/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What readings on site teach about the light: by how many stops the model is off, at any later
 * instant, and how sure that is.
 *
 * The rules are our own judgement, not published:
 * - a reading says nothing of the time before it;
 * - the newest reading counts alone, however far it lies from earlier ones: the crew looked again;
 * - under the sky it was taken under, with no cloud on the move, it holds fully. Its spread widens
 *   from its own to the model's over two hours, because the sun has moved on and with it what the
 *   model may get wrong;
 * - with cloud on the move, or for another sky than the one it was taken under, it fades evenly to
 *   nothing over 30 minutes. */
#pragma once

#include <glib.h>

#include "ff-names.h"

#define FF_LEARNED_FADE_S  (30 * 60)
#define FF_LEARNED_TRUST_S (2 * 60 * 60)

typedef struct {
  double at;           /* UTC seconds */
  double offset_stops; /* measured less model, under its own sky; positive: brighter */
  double spread_stops;
  FfSky sky;
  gboolean cloud_moves;
} FfLearnedReading;

typedef struct {
  int index;           /* of the reading that counts; -1: none yet, or faded */
  double offset_stops; /* weight times its offset */
  double weight;       /* 1: holds; 0: the model alone */
  double spread_stops; /* of the model's light with the offset */
  gboolean fades;
} FfLearned;

/* Whether cloud is on the move under a sky of which nobody said more: partly cloudy and dark. */
gboolean ff_learned_sky_moves (FfSky sky);

/* What the readings (in order of time; of one instant the later entered one last) teach for `at`
 * under `sky`, where the model alone has this spread. */
void ff_learned_at (const FfLearnedReading *readings,
                    guint n_readings,
                    double at,
                    FfSky sky,
                    double model_spread_stops,
                    FfLearned *ret_learned);
