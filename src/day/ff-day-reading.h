/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Readings of a day: what was measured becomes a record, the record an offset against the model,
 * and the offset corrects the light of every later minute. The rules are those of ff-learned.h. */
#pragma once

#include <glib.h>

#include "ff-day-records.h"
#include "ff-day.h"
#include "ff-job.h"
#include "ff-learned.h"
#include "ff-reading.h"
#include "ff-shot.h"

typedef enum { FF_CLOUD_BY_SKY, FF_CLOUD_STILL, FF_CLOUD_MOVES } FfCloud;

/* What a person or a picture says of the light. NAN: not given. */
typedef struct {
  FfMethod method;
  gint64 at;
  double shown_s, target_s;
  double aperture, iso;  /* as written; not given: the camera's one aperture and preferred base */
  double ev100, lux;     /* as metered, a filter in front not yet counted */
  double spread_stops;   /* not given: the method's usual one */
  double nd_stops;
  const FfShot *shot;    /* NULL: an oblique view with the sun behind the camera */
  gboolean other_sky;    /* the sky is not that of the job */
  FfSky sky;
  FfCloud cloud;
  const char *source, *by; /* may be NULL */
} FfReadingEntry;

/* A test picture has its filter counted in `ev100` already. */
#define FF_READING_ENTRY_INIT                                                                      \
  {                                                                                                \
    .shown_s = NAN, .target_s = NAN, .aperture = NAN, .iso = NAN, .ev100 = NAN, .lux = NAN,        \
    .spread_stops = NAN                                                                            \
  }

/* The record of it, not stored yet. Auto shutter is read with the job's camera: the scene's EV is
 * that of the settings shown, and the filter's stops. Errors: FF_ERROR_INPUT, for a value that is
 * missing, a camera that is not known or has several apertures, a time on another day. */
FfReading *ff_day_reading_new (const FfDay *day,
                               const FfReadingEntry *entry,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A shot of the job by its label, case ignored, or NULL. Borrowed. */
const FfShot *ff_day_find_shot (const FfDay *day, const char *label);

/* All readings of the job by time, those set aside as well: FfReading, borrowed. */
GPtrArray *ff_day_readings (const FfDay *day);

/* By how many stops a reading differs from the model, under its own sky; NAN while the job has no
 * date or place. */
double ff_day_reading_offset (const FfDay *day, const FfReading *reading);

/* The filter that auto shutter asks for: log2 (target / shown) and the one fitted; else NAN. */
double ff_day_reading_need (const FfReading *reading);

/* What the readings teach for an instant under a sky; borrowed reading in `ret_reading`, which is
 * NULL where none counts and may itself be NULL. */
void ff_day_learned (const FfDay *day,
                     FfSky sky,
                     gint64 at,
                     FfLearned *ret_learned,
                     const FfReading **ret_reading);

/* The newest reading that is not set aside, and its offset; NULL and 0: none. */
const FfReading *ff_day_last_reading (const FfDay *day, double *ret_offset);

/* "16:42, test picture, EV 13.6: +0.4 stop" */
char *ff_day_reading_words (const FfDay *day, const FfReading *reading) G_GNUC_WARN_UNUSED_RESULT;

/* How far the light of the day rests on a reading and how long that lasts, under this sky, as one
 * sentence; also that there is none yet. */
char *ff_day_learned_words (const FfDay *day, FfSky sky) G_GNUC_WARN_UNUSED_RESULT;

/* How long one reading lasts: "holds while the sky stays clear", "fades by 17:12". */
char *ff_day_reading_lasts (const FfDay *day,
                            const FfReading *reading,
                            FfSky sky) G_GNUC_WARN_UNUSED_RESULT;

/* What looks wrong about a reading, as a sentence; empty: nothing. */
char *ff_day_reading_caution (const FfDay *day,
                              const FfReading *reading) G_GNUC_WARN_UNUSED_RESULT;

/* "+0.4 stop", "−1.3 stops" */
char *ff_signed_stops (double stops) G_GNUC_WARN_UNUSED_RESULT;
