/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The options by which a command line says what a camera can be set to. */
#pragma once

#include <glib.h>

#include "ff-advise.h"

/* As typed; NULL where not given. Static in the command's file, for GOption to fill. */
typedef struct {
  char *apertures, *iso, *base_iso, *shutters, *pitch;
  gboolean thirds;
} FfCameraOptions;

/* What the options say. Error: FF_ERROR_INPUT, naming the option. */
gboolean ff_camera_options_resolve (const FfCameraOptions *options,
                                    FfCameraRange *ret_camera,
                                    GError **error);
