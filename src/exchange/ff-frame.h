/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A test picture read as a light reading: its settings from Exif, its tones from the pixels. JPEG,
 * PNG and TIFF (8 or 16 bits), and of a raw picture in DNG the developed preview inside it. Pixels
 * pass row by row and are never all in memory. */
#pragma once

#include <glib.h>

#include "ff-civil.h"
#include "ff-histogram.h"
#include "ff-meter.h"

typedef struct {
  guint width, height; /* of the pixels that were read */
  gboolean is_preview; /* they are a raw picture's preview */
  FfTones tones;

  /* NAN where the picture does not say. */
  double aperture; /* f-number as written */
  double shutter_s, iso, bias_stops;

  /* When it was taken, by the camera's clock. */
  gboolean has_taken;
  FfDate taken_date;
  int taken_second; /* of the day */
  gboolean has_offset;
  int offset_s; /* of the camera's clock from UTC, where the picture says */
} FfFrame;

/* Error: FF_ERROR_INPUT, one sentence that names the file. */
gboolean ff_frame_read (const char *path, FfFrame *ret_frame, GError **error);

/* The instant it was taken. The picture's own offset counts before `zone`, in which the camera's
 * clock is read; NULL is UTC. Error: FF_ERROR_INPUT, for a clock that summer time skips or a
 * picture without time. */
gboolean ff_frame_instant (const FfFrame *frame,
                           GTimeZone *zone,
                           gint64 *ret_instant,
                           GError **error);

/* The light of the scene with these stops of filter in front of the camera. An aperture that is a
 * label of the third-stop series counts as its exact value. */
void ff_frame_meter (const FfFrame *frame, double nd_stops, FfMeterReading *ret_reading);
