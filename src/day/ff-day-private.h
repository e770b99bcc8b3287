/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of this room share about a loaded day. */
#pragma once

#include "ff-advise.h"
#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-day.h"
#include "ff-daylight.h"
#include "ff-flight.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-place.h"
#include "ff-price.h"
#include "ff-shot.h"
#include "ff-sun.h"
#include "ff-weather.h"

struct _FfDay {
  FfJob *job;
  FfPlace *place;      /* NULL: none yet */
  GTimeZone *zone;     /* the place's, or UTC */
  FfDate date;
  gboolean has_date;
  FfSunTrack sun;      /* held for the local day and the night after; with a date and a place */
  GPtrArray *shots;    /* FfShot, in the order of the list */
  GPtrArray *crew;     /* FfMember with the role they have in this job */
  GPtrArray *items;    /* FfItem: all that the crew owns */
  GPtrArray *limits;   /* FfLimit */
  GPtrArray *measurements; /* FfMeasurement, oldest first */
  GPtrArray *reports;  /* FfWeatherReport, oldest first */
  double thin_air;     /* the share of what thin air takes that is planned with; 1: all of it */
  GPtrArray *battery_flights; /* FfBatteryFlight, by time */
  GPtrArray *flights;  /* FfFlight of this job, by time */
  GPtrArray *locks;    /* FfLock */
  FfPrices prices;     /* the crew's */
  FfDayPlan *stands;   /* as frozen and amended, where the job wants it kept; else NULL */
  GHashTable *battery_days; /* FfBatteryDay: the last that was said of each battery, by its id */
  GPtrArray *readings; /* FfReading, by time */
  GArray *learned;     /* FfLearnedReading: of those that count */
  GPtrArray *learned_from; /* FfReading of each, borrowed */
};

/* An item by id, or NULL. */
FfItem *ff_day_item (const FfDay *day, const char *id);

/* Whether the job may use the item: it is on the job's list, or there is no list. */
gboolean ff_day_uses (const FfDay *day, const FfItem *item);

/* The aircraft and camera of the job; NULL when there is none. */
FfItem *ff_day_aircraft (const FfDay *day);
FfItem *ff_day_camera (const FfDay *day);

/* A camera record as what it can be set to. Error: FF_ERROR_INPUT. */
gboolean ff_day_camera_range (const FfItem *camera, FfCameraRange *ret_range, GError **error);

/* A shot as what it wants. Error: FF_ERROR_INPUT. */
gboolean ff_day_want (const FfShot *shot, FfWant *ret_want, GError **error);

/* Cuts what a shot wants to the shutter angles that the camera has. */
void ff_day_fit_want (const FfItem *camera, FfWant *want);

/* That the camera lacks the frame rate of a shot, as a sentence; empty: it has it, or its rates are
 * not entered. */
char *ff_day_rate_caution (const FfDay *day, const FfShot *shot);

/* What the readings teach, once date, place and readings are there. */
void ff_day_learn (FfDay *day);

/* The model's light under a sky, as the readings correct it. */
void ff_day_correct_light (const FfDay *day, FfSky sky, double at, FfDaylight *light);

/* The sun, and the light as this shot meets it, corrected by the readings. The day has a date and a place. */
void ff_day_light_at (const FfDay *day,
                      const FfShot *shot,
                      FfSky sky,
                      double at,
                      FfDirection *ret_sun,
                      FfDaylight *ret_light);

/* EV at ISO 100 for each whole minute of [from, to], as this shot meets it. */
double *ff_day_light (const FfDay *day,
                      const FfShot *shot,
                      FfSky sky,
                      gint64 from,
                      gint64 to) G_GNUC_WARN_UNUSED_RESULT;

/* What a low sun does to this shot, as a sentence; empty: nothing. */
char *ff_day_sun_caution (const FfShot *shot, const FfDirection *sun);

/* Instant of a wall clock of the day. Error: FF_ERROR_INPUT, prefixed with `what`. */
gboolean ff_day_instant (const FfDay *day,
                         int clock,
                         const char *what,
                         gint64 *ret_instant,
                         GError **error);
