/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Why these settings: from the sun to what is left over, one step at a time, each with its numbers,
 * its formula and the source of it. The numbers are those of ff-advise.h and add up to its error.
 * Pure; what is passed in is the caller's. */
#pragma once

#include <glib.h>

#include "ff-advise.h"

typedef enum {
  FF_WHY_SUN,    /* where it stands */
  FF_WHY_LIGHT,  /* what the camera meets */
  FF_WHY_LEVEL,  /* what it exposes right as it would like to be set */
  FF_WHY_NEED,   /* light less level */
  FF_WHY_FILTER, /* what it takes */
  FF_WHY_LEFT,   /* need less filter */
  FF_WHY_PAYS,   /* who gives way for it, and the error that stays */
  FF_N_WHY,
} FfExplainKind;

extern const FfNames ff_names_step;

#define FF_MAX_WHY_VALUES 8

typedef struct {
  const char *name; /* token with its unit, for files: "need_stops" */
  double value;     /* NAN: there is none */
} FfExplainValue;

typedef struct {
  FfExplainKind kind;
  char *text;          /* the step as a sentence with its numbers, translated; owned */
  const char *formula; /* in plain notation, the same in every language */
  const char *source;  /* translated */
  FfExplainValue values[FF_MAX_WHY_VALUES];
  guint n_values;
} FfExplainStep;

/* Where the level of light was taken from. */
typedef enum { FF_EXPLAIN_SUN, FF_EXPLAIN_TABLE, FF_EXPLAIN_GIVEN } FfExplainFrom;

typedef struct {
  FfExplainFrom from;
  double sun_altitude_deg, sun_azimuth_deg, from_sun_deg; /* from the sun, else not looked at */
  FfSky sky;
  FfView view;
  double subject_stops;                /* what the subject adds; the rest of the offset is learned */
  const char *source;                  /* of a condition of the table */
  double ev100, low_ev100, high_ev100; /* the light, whatever it comes from */
  const FfCameraRange *camera;
  const FfWant *want;
  const char *filters; /* as written on them; empty or NULL: none */
  double filter_stops;
  FfSettings settings; /* their error is not looked at, but added up */
} FfExplainQuery;

/* The steps in their order: an array of FfExplainStep that frees them, FF_N_WHY long. A still takes any
 * shutter, so that its level is that of its own shutter and its need is not known. Formulae: ISO
 * 2720 with C = 250, APEX (Exif 2.3, annex C), ISO 5-1 notation; who pays is common practice, no
 * source. */
GPtrArray *ff_explain (const FfExplainQuery *query) G_GNUC_WARN_UNUSED_RESULT;

/* A value of a step by its name; NAN: it has none of that name. */
double ff_explain_value (const FfExplainStep *step, const char *name);
