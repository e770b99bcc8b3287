/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The options by which a command line says what a shot wants of the camera. */
#pragma once

#include <glib.h>

#include "ff-advise.h"

/* As typed; NULL where not given. Static in the command's file, for GOption to fill. */
typedef struct {
  char *intent;
  char *fps, *angle, *angle_from, *angle_to; /* video, slow */
  char *frames, *step;                       /* bracket */
  char *interval;                            /* time-lapse */
  char *max_iso, *hold_aperture;
  char *max_blur, *speed, *height, *focal;
} FfWantOptions;

/* What the options say, checked against the camera; those of other intents are not looked at.
 * Error: FF_ERROR_INPUT, naming the option. */
gboolean ff_want_options_resolve (const FfWantOptions *options,
                                  const FfCameraRange *camera,
                                  FfWant *ret_want,
                                  GError **error);
