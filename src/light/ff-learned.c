/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-learned.h"

#include <math.h>

gboolean
ff_learned_sky_moves (FfSky sky)
{
  return sky == FF_SKY_PARTLY || sky == FF_SKY_DARK;
}

/* The newest that is not after `at`; -1: none. */
static int
newest_before (const FfLearnedReading *readings, guint n_readings, double at)
{
  int newest = -1;

  for (guint i = 0; i < n_readings && readings[i].at <= at; i++)
    newest = (int) i;
  return newest;
}

/* From a variance to another. */
static double
blend (double from, double to, double part)
{
  return from + part * (to - from);
}

/* A reading that is less sure than the model does not get surer by waiting. */
static double
held_variance (const FfLearnedReading *reading, double age, double model)
{
  double own = reading->spread_stops * reading->spread_stops;

  return blend (own, MAX (own, model), CLAMP (age / FF_LEARNED_TRUST_S, 0.0, 1.0));
}

void
ff_learned_at (const FfLearnedReading *readings,
               guint n_readings,
               double at,
               FfSky sky,
               double model_spread_stops,
               FfLearned *ret_learned)
{
  int newest = newest_before (readings, n_readings, at);
  const FfLearnedReading *reading = newest >= 0 ? &readings[newest] : NULL;
  double model = model_spread_stops * model_spread_stops;
  FfLearned learned = { .index = -1, .spread_stops = model_spread_stops };

  if (reading != NULL)
    {
      double age = at - reading->at;

      learned.fades = reading->cloud_moves || reading->sky != sky;
      learned.weight = learned.fades ? CLAMP (1.0 - age / FF_LEARNED_FADE_S, 0.0, 1.0) : 1.0;
      learned.offset_stops = learned.weight * reading->offset_stops;
      learned.spread_stops
          = sqrt (blend (model, held_variance (reading, age, model), learned.weight));
      learned.index = learned.weight > 0.0 ? newest : -1;
    }
  *ret_learned = learned;
}
