/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Light measured at an instant of a job. Readings are appended, never changed; one that turned out
 * wrong is set aside with a reason and stays in the list. */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *job_id;
  gint64 at;
  FfMethod method;
  double ev100;        /* of the scene, at ISO 100, without the filter */
  double spread_stops; /* how far off it may be, to either side */

  /* What was measured; NAN where the method has no such thing. */
  double shown_s, target_s; /* shutter shown in auto shutter, and the one wanted */
  double aperture, iso;     /* the camera's; aperture as written */
  double lux;               /* on level ground */
  double nd_stops;          /* filter fitted; 0: none */

  /* What was looked at, and the sky then. */
  FfView view;
  double bearing_deg; /* NAN: with the sun behind the camera */
  double subject_offset_stops;
  FfSky sky;
  gboolean cloud_moves; /* it fades, instead of holding for the same sky */

  char *source; /* name of the picture, or a note */
  char *by;     /* initials of who entered it */

  /* Set aside: then there is a reason. */
  gint64 dropped_at;
  char *dropped_why;
  char *dropped_by;
} FfReading;

/* What was measured; and what is added when it is set aside, in a table of its own. */
extern const FfFields ff_reading_fields;
extern const FfFields ff_reading_drop_fields;

FfReading *ff_reading_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_reading_free (FfReading *reading);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfReading, ff_reading_free)

gboolean ff_reading_is_dropped (const FfReading *reading);

/* That the method has what it needs, and that a reading set aside says why. */
gboolean ff_reading_check (const FfReading *reading, GError **error);

/* Appends it; when it is set aside already, that as well. */
gboolean ff_reading_append (FfStore *store, const FfReading *reading, GError **error);

/* Sets one aside. `by` may be NULL. FF_ERROR_INPUT without a reason, or when it was before. */
gboolean ff_reading_drop (FfStore *store,
                          const char *id,
                          const char *why,
                          const char *by,
                          gint64 at,
                          GError **error);

/* By time, those set aside as well: an array of FfReading that frees them. */
GPtrArray *ff_readings_load (FfStore *store,
                             const char *job_id,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One of a job's by its id or the unique beginning of it, case ignored; borrowed from the array.
 * FF_ERROR_INPUT lists the candidates. */
const FfReading *ff_readings_find (GPtrArray *readings, const char *wanted, GError **error);
