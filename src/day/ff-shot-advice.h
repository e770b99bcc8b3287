/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What one shot meets and wants at its hour, straight from the day and the shot as it is being
 * typed: the light with its spread, the sun in words, the need in stops and how it changes over the
 * window, the best settings behind one of the filters at hand. Pure, and quick enough to be asked
 * at every keystroke. */
#pragma once

#include "ff-day.h"
#include "ff-shot.h"

typedef struct {
  gint64 at;
  double sun_altitude_deg, sun_azimuth_deg; /* geometric */
  double ev100, low_ev100, high_ev100;
  gboolean guide_only; /* so dark that the model is a guide: take a reading */
  double need_stops;   /* NAN: stills, which take any shutter; or no camera is known */
} FfShotMoment;

typedef struct {
  FfShotMoment start, middle, end; /* of the window */
  FfShotMoment now;                /* when the take starts */

  gboolean has_choice;     /* FALSE: `best` says what keeps settings from being named */
  gboolean in_reach;       /* some filter at hand exposes it right */
  double filter_stops;     /* 0: none */
  FfPlanSettings settings; /* at the start of the take */

  /* Sentences, owned; an empty one has nothing to say. */
  char *best;  /* "5 stops, f/2.8, 1/60 (150°), ISO 100." */
  char *glass; /* "factor 32 · density 1.5 · ND32" */
  char *lasts; /* "Good for the whole window." */
  char *need;  /* "Needs 5.3 stops at 17:40, 5.2 at 17:55." */
  char *sun;   /* "Front light: the sun is behind the camera, at 251°, 13° high." */
  char *light; /* "EV 13.9 ± 0.5 at 17:40, 13.8 at 17:55." */
  GPtrArray *remarks; /* char*: what these settings mean */
  GPtrArray *helps;   /* char*: what would bring it within reach */
} FfShotAdvice;

/* The shot at an instant; the need is NAN where the day has no camera that is right. The day has
 * a date and a place. */
void ff_day_shot_moment (const FfDay *day,
                         const FfShot *shot,
                         gint64 at,
                         FfShotMoment *ret_moment);

/* `at`: when its take starts, 0 or outside of its window: as the window opens. Errors:
 * FF_ERROR_INPUT, where there is no light to speak of yet (no date, no place, no window). */
FfShotAdvice *ff_day_shot_advice (const FfDay *day,
                                  const FfShot *shot,
                                  gint64 at,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_shot_advice_free (FfShotAdvice *advice);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfShotAdvice, ff_shot_advice_free)

/* The instant at which its window opens and closes. */
gboolean ff_day_shot_window (const FfDay *day,
                             const FfShot *shot,
                             gint64 *ret_from,
                             gint64 *ret_to,
                             GError **error);
