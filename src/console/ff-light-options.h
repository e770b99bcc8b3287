/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The options by which a command line says what the light is, shared by the commands that ask: a
 * condition of the published table, sun and sky over a place, or (for some) a plain level. */
#pragma once

#include <glib.h>

#include "ff-conditions.h"
#include "ff-daylight.h"
#include "ff-names.h"
#include "ff-sun.h"

/* As typed; NULL where not given. Static in the command's file, for GOption to fill. */
typedef struct {
  char *ev100;
  char *condition;
  char *lat, *lon, *at, *sky, *view, *bearing, *lit, *offset;
} FfLightOptions;

#define FF_LIGHT_ENTRY(name, place, text, argument)                                                \
  { name, 0, 0, G_OPTION_ARG_STRING, &(place), text, argument }

/* For a command's table: the options of `light`, and the plain level. */
#define FF_LIGHT_OPTION_ENTRIES(o)                                                                 \
  FF_LIGHT_ENTRY ("condition", (o).condition,                                                      \
                  N_ ("Lighting condition by name (“light --list” lists them)"), "NAME"),          \
      FF_LIGHT_ENTRY ("lat", (o).lat, N_ ("Latitude, north positive"), "DEG"),                     \
      FF_LIGHT_ENTRY ("lon", (o).lon, N_ ("Longitude, east positive"), "DEG"),                     \
      FF_LIGHT_ENTRY ("at", (o).at, N_ ("Time, ISO 8601 with an offset or Z"), "TIME"),            \
      FF_LIGHT_ENTRY ("sky", (o).sky, N_ ("clear, thin, partly, overcast or dark"), "SKY"),        \
      FF_LIGHT_ENTRY ("view", (o).view, N_ ("oblique (default) or down"), "VIEW"),                 \
      FF_LIGHT_ENTRY ("bearing", (o).bearing, N_ ("Bearing of the camera from true north"),        \
                      "DEG"),                                                                      \
      FF_LIGHT_ENTRY ("lit", (o).lit,                                                              \
                      N_ ("front (default, sun behind the camera), side or back"), "LIT"),         \
      FF_LIGHT_ENTRY ("offset", (o).offset,                                                        \
                      N_ ("Subject and learned offset, positive is brighter"), "STOPS")

#define FF_LIGHT_LEVEL_ENTRY(o)                                                                    \
  FF_LIGHT_ENTRY ("ev100", (o).ev100, N_ ("The light as EV at ISO 100"), "EV")

typedef enum { FF_LIGHT_FROM_LEVEL, FF_LIGHT_FROM_CONDITION, FF_LIGHT_FROM_SUN } FfLightFrom;

typedef struct {
  FfLightFrom from;
  double ev100, low_ev100, high_ev100; /* all alike for a plain level */
  const FfCondition *condition;        /* from a condition, else NULL */
  gint64 at;                           /* from here on: from the sun, else zero */
  FfDirection sun;
  FfDaylightQuery query;
  FfDaylight daylight;
  FfLit lit; /* as asked, or the word for the angle between bearing and sun */
} FfLight;

/* The first option that was given, as "--lat", or NULL when none was. */
const char *ff_light_options_first (const FfLightOptions *options);

/* What the options say. Exactly one of the three ways; a condition counts as the middle of its
 * range. Error: FF_ERROR_INPUT, naming the option. */
gboolean ff_light_options_resolve (const FfLightOptions *options,
                                   FfLight *ret_light,
                                   GError **error);
