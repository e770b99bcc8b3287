/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: what a camera allows for one shot, worked out once before a search. Each
 * option carries its level in stops and its price, so that the search itself only adds. */
#pragma once

#include "ff-advise.h"

#define FF_MAX_STEPS 64 /* no series of ff-scale.h is longer */

typedef struct {
  guint step;     /* of FF_SCALE_SHUTTER; of a bracket the middle frame */
  double seconds;
  double log_s;   /* log2 of it; grows with the step */
  double price;
} FfShutterOption;

typedef struct {
  guint step; /* of FF_SCALE_ISO */
  double written;
  double stops; /* above ISO 100 */
  double price;
} FfIsoOption;

typedef struct {
  FfAperture aperture;
  double av;
  double price;
} FfApertureOption;

typedef struct {
  FfShutterOption shutters[FF_MAX_STEPS]; /* fastest first */
  FfIsoOption isos[FF_MAX_STEPS];         /* lowest first */
  FfApertureOption apertures[FF_MAX_APERTURES];
  guint n_shutters, n_isos, n_apertures; /* never 0 */
  gboolean in_span; /* the camera has a shutter within the span that the shot allows */
  double log_frames; /* stops from the middle frame of a bracket to its longest; else 0 */
} FfAdviseTable;

void ff_advise_table_fill (FfAdviseTable *table,
                           const FfCameraRange *camera,
                           const FfWant *want,
                           const FfPrices *prices);

/* The shutter time that the shot wants, in seconds; NAN for stills and brackets. */
double ff_advise_wanted_s (const FfWant *want);

/* Times within which the middle frame has to lie. Not blur, which never empties the table. */
void ff_advise_span_s (const FfCameraRange *camera,
                       const FfWant *want,
                       double *ret_from,
                       double *ret_to);

/* The longest time, of the longest frame, that keeps to the blur limit; infinite without one. */
double ff_advise_blur_limit_s (const FfCameraRange *camera, const FfWant *want);

/* Stops from the middle frame of a bracket to its longest; 0 for every other intent. */
double ff_advise_frames_stops (const FfWant *want);

/* Step of the base ISO nearest at or below a step (the lowest base where none is below). */
guint ff_advise_base_at (const FfCameraRange *camera, guint iso);

/* The last sharp f-number of the camera; infinite where none is known. */
double ff_advise_sharp_to (const FfCameraRange *camera);

/* How far an aperture lies outside the sharp ones, in stops; 0: it is one of them. */
double ff_advise_soft_stops (const FfCameraRange *camera, double f_number);

double ff_advise_shutter_s (const FfCameraRange *camera, guint step);
