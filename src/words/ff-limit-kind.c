/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit-kind.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define PLAIN NULL

static const FfLimitKind kinds[] = {
  /* TRANSLATORS: kinds of limit to a flight, in the words of aviation, and what each counts from. */
  { "height", N_ ("height"), FF_DIMENSION_LENGTH, N_ ("above the ground below") },
  { "structure-radius", N_ ("distance within which a structure raises the height limit"),
    FF_DIMENSION_LENGTH, N_ ("horizontally from the structure") },
  { "structure-height", N_ ("height above a structure"), FF_DIMENSION_LENGTH,
    N_ ("above its top") },
  { "ground-speed", N_ ("ground speed"), FF_DIMENSION_SPEED, PLAIN },
  { "slow-speed", N_ ("speed near people"), FF_DIMENSION_SPEED, PLAIN },
  { "visibility", N_ ("visibility"), FF_DIMENSION_LENGTH, N_ ("from the pilot") },
  { "below-cloud", N_ ("distance below cloud"), FF_DIMENSION_LENGTH, N_ ("below its base") },
  { "beside-cloud", N_ ("distance beside cloud"), FF_DIMENSION_LENGTH, N_ ("horizontally") },
  { "cloud-base", N_ ("cloud base"), FF_DIMENSION_LENGTH, N_ ("above the ground at the site") },
  { "flying-time", N_ ("time of day for flying"), FF_DIMENSION_CLOCK, PLAIN },
  { "all-down", N_ ("all down"), FF_DIMENSION_CLOCK, PLAIN },
  { "light", N_ ("light on the aircraft"), FF_DIMENSION_NONE, PLAIN },
  { "light-range", N_ ("range of the aircraft's light"), FF_DIMENSION_LENGTH, PLAIN },
  { "people", N_ ("distance from uninvolved people"), FF_DIMENSION_LENGTH, N_ ("horizontally") },
  { "one-to-one", N_ ("distance for each metre of height"), FF_DIMENSION_COUNT,
    N_ ("from uninvolved people") },
  { "built-up", N_ ("distance from built-up and recreational areas"), FF_DIMENSION_LENGTH,
    N_ ("horizontally") },
  { "crowd-distance", N_ ("distance from crowds"), FF_DIMENSION_LENGTH, N_ ("horizontally") },
  { "over-crowds", N_ ("flight over crowds"), FF_DIMENSION_NONE, PLAIN },
  { "over-people", N_ ("flight over uninvolved people"), FF_DIMENSION_NONE, PLAIN },
  { "over-vehicles", N_ ("flight over moving vehicles"), FF_DIMENSION_NONE, PLAIN },
  { "impact-energy", N_ ("energy on impact"), FF_DIMENSION_ENERGY, PLAIN },
  { "mass", N_ ("take-off mass"), FF_DIMENSION_MASS, N_ ("with all it carries") },
  { "aerodrome", N_ ("distance from aerodromes"), FF_DIMENSION_LENGTH, N_ ("horizontally") },
  { "airspace", N_ ("airspace permission"), FF_DIMENSION_NONE, PLAIN },
  { "distance", N_ ("distance"), FF_DIMENSION_LENGTH, N_ ("from the pilot, straight line") },
  { "by-screen", N_ ("distance when flown by the screen"), FF_DIMENSION_LENGTH,
    N_ ("from the pilot") },
  { "observer", N_ ("an observer"), FF_DIMENSION_NONE, PLAIN },
  { "aircraft-each", N_ ("aircraft for each pilot"), FF_DIMENSION_COUNT, PLAIN },
  { "mean-wind", N_ ("mean wind"), FF_DIMENSION_SPEED, N_ ("at flying height") },
  { "gust", N_ ("gust"), FF_DIMENSION_SPEED, N_ ("at flying height") },
  { "air-temperature", N_ ("air temperature"), FF_DIMENSION_TEMPERATURE, PLAIN },
  { "battery-temperature", N_ ("battery temperature"), FF_DIMENSION_TEMPERATURE,
    N_ ("at take-off") },
  { "rain", N_ ("rain, snow or hail"), FF_DIMENSION_NONE, PLAIN },
  { "rain-rate", N_ ("rain"), FF_DIMENSION_RATE, PLAIN },
  { "icing", N_ ("icing conditions"), FF_DIMENSION_NONE, PLAIN },
  { "geomagnetic", N_ ("geomagnetic index Kp"), FF_DIMENSION_COUNT, PLAIN },
  { "satellites", N_ ("navigation satellites"), FF_DIMENSION_COUNT, N_ ("before arming") },
  { "reserve", N_ ("reserve"), FF_DIMENSION_SHARE, N_ ("at landing") },
  { "reserve-time", N_ ("reserve"), FF_DIMENSION_DURATION, N_ ("at landing") },
  { "alcohol-hours", N_ ("time since alcohol"), FF_DIMENSION_DURATION, PLAIN },
  { "alcohol", N_ ("alcohol in the blood"), FF_DIMENSION_CONCENTRATION, PLAIN },
  { "rest", N_ ("rest before duty"), FF_DIMENSION_DURATION, PLAIN },
  { "duty", N_ ("duty"), FF_DIMENSION_DURATION, PLAIN },
  { "flights-between-breaks", N_ ("flights between breaks"), FF_DIMENSION_COUNT, PLAIN },
  { "age", N_ ("age"), FF_DIMENSION_DURATION, PLAIN },
  { "certificate", N_ ("certificate in date"), FF_DIMENSION_NONE, PLAIN },
  { "remote-id", N_ ("remote identification"), FF_DIMENSION_NONE, PLAIN },
  { "registration", N_ ("registration on the aircraft"), FF_DIMENSION_NONE, PLAIN },
  { "insurance", N_ ("insurance in force"), FF_DIMENSION_NONE, PLAIN },
  { "landowner", N_ ("landowner's permission"), FF_DIMENSION_NONE, PLAIN },
  { "quiet-hours", N_ ("hours without noise"), FF_DIMENSION_CLOCK, PLAIN },
  { "noise", N_ ("noise"), FF_DIMENSION_LEVEL, PLAIN },
  { "dangerous-goods", N_ ("dangerous goods on board"), FF_DIMENSION_NONE, PLAIN },
  { "dropping", N_ ("dropping of things"), FF_DIMENSION_NONE, PLAIN },
  { "emergency-scene", N_ ("flight near an emergency"), FF_DIMENSION_NONE, PLAIN },
  { "report-within", N_ ("report of an occurrence"), FF_DIMENSION_DURATION,
    N_ ("from the occurrence") },
  { "keep-records", N_ ("keeping of records"), FF_DIMENSION_DURATION, PLAIN },
  { "privacy", N_ ("notice to people in the picture"), FF_DIMENSION_NONE, PLAIN },
  { "pad-radius", N_ ("clear ground around the pad"), FF_DIMENSION_LENGTH, PLAIN },
};

const FfLimitKind *
ff_limit_kind_at (guint i)
{
  return i < G_N_ELEMENTS (kinds) ? &kinds[i] : NULL;
}

const FfLimitKind *
ff_limit_kind_find (const char *token)
{
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (kinds[i].token, token) == 0)
      return &kinds[i];
  return NULL;
}

const char *
ff_limit_kind_text (const FfLimitKind *kind)
{
  return g_dgettext (GETTEXT_PACKAGE, kind->text);
}

const char *
ff_limit_kind_datum (const FfLimitKind *kind)
{
  return kind->datum != NULL ? g_dgettext (GETTEXT_PACKAGE, kind->datum) : "";
}
