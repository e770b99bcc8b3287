/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One shot's light over a whole day, and what the crew's glass makes of it: what the light page
 * shows. The light is that of a job's day, of any place and date, or a condition of the published
 * table; the camera and the filters are those at hand. */
#pragma once

#include "ff-civil.h"
#include "ff-conditions.h"
#include "ff-day-explain.h"
#include "ff-ruler.h"

/* The day somewhere, without a job. Takes copies of all but the items, which it keeps a reference
 * to. */
FfDay *ff_day_anywhere (double latitude_deg,
                        double longitude_deg,
                        FfDate date,
                        GTimeZone *zone,
                        GPtrArray *items) G_GNUC_WARN_UNUSED_RESULT;

/* Noon of its clock. FALSE: the day has no date, or no noon. */
gboolean ff_day_noon (const FfDay *day, gint64 *ret_at);

typedef struct {
  const FfDay *day;             /* kept, not copied: it has to live as long as the study */
  const FfShot *shot;           /* the same */
  FfSky sky;                    /* may be another one than the job's */
  const FfCondition *condition; /* NULL: the light of sun and sky; else the middle of it */
} FfLightStudyQuery;

typedef struct {
  gint64 from, to;
} FfStudySpan;

/* One way to fit a filter, over the day. */
typedef struct {
  int filter; /* index into the filters of the study; -1: none */
  double stops;
  char *name;    /* "5 stops · ND32", "no filter" */
  GArray *best;  /* FfStudySpan: when it is the one to fit */
  GArray *holds; /* FfStudySpan: when it exposes right with ISO at most a stop above its base */
  char *words;   /* both as a sentence */
} FfStudyHours;

typedef struct {
  FfLightStudyQuery query;
  FfCameraRange camera;
  FfWant want;
  GArray *filters;         /* FfAdviseFilter, serviceable and of the job, the weakest first */
  GPtrArray *filter_names; /* char*: "ND32" */
  gint64 from, to;         /* from civil dawn to dusk, a little more; the whole day without them */
  int step_s;
  guint n_samples;
  double *sun_altitude_deg, *ev100, *need_stops; /* a sample each step; need NAN for stills */
  GPtrArray *hours;                              /* FfStudyHours; empty for a condition */
} FfLightStudy;

/* Errors: FF_ERROR_INPUT, saying what to enter: no date, no place, no camera, a camera that is not
 * right. */
FfLightStudy *ff_light_study_new (const FfLightStudyQuery *query,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_light_study_free (FfLightStudy *study);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfLightStudy, ff_light_study_free)

/* The light at an instant, with camera and want; the filter and the settings are left to add. */
void ff_light_study_light (const FfLightStudy *study, gint64 at, FfExplainQuery *ret_query);

/* What the ruler asks, in that light. */
FfAdviseQuery ff_light_study_advise (const FfLightStudy *study, double ev100);

/* The first whole minute after `at` at which the light leaves the span; 0: not before the end of
 * the day that is studied. */
gint64 ff_light_study_until (const FfLightStudy *study, gint64 at, double low, double high);

/* The filter of the ruler as it is written on it; empty: none. */
const char *ff_light_study_filter (const FfLightStudy *study, int filter);
