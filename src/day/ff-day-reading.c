/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-reading.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-number.h"
#include "ff-scale.h"

/* How far off a reading may be where it does not say so itself: a shutter shown goes in thirds of
 * a stop, a meter in tenths (our own judgement, no source). */
#define SHOWN_SPREAD 0.33
#define METER_SPREAD 0.2

/* The small hours after a shoot day belong to it. */
#define AFTER_MIDNIGHT (6 * 60 * 60)

static FfReading *
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return NULL;
}

/* ---- What was measured, as a record ---- */

static gboolean
check_time (const FfDay *day, gint64 at, GError **error)
{
  gint64 from, to;

  if (!day->has_date)
    return TRUE;
  ff_day_bounds (day->date, day->zone, &from, &to);
  if (at >= from && at < to + AFTER_MIDNIGHT)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("the reading is not of the day of the job; accepted: a time on %s"),
               day->job->date);
  return FALSE;
}

/* Aperture and ISO that the camera shows by itself, where they were not said. */
static gboolean
take_camera (const FfDay *day, FfReading *reading, GError **error)
{
  const FfItem *camera = ff_day_camera (day);
  FfCameraRange range;
  guint iso;

  if (isfinite (reading->aperture) && isfinite (reading->iso))
    return TRUE;
  if (camera == NULL)
    return refuse (error, _ ("the job has no camera: say aperture and ISO as well")) != NULL;
  if (!ff_day_camera_range (camera, &range, error))
    return FALSE;
  if (!isfinite (reading->aperture) && range.n_apertures != 1)
    return refuse (error, _ ("the camera has several apertures: say which one was set")) != NULL;
  if (!isfinite (reading->aperture))
    reading->aperture = range.apertures[0].written;
  iso = range.n_bases > 0 ? range.base_iso[0] : range.iso_low;
  if (!isfinite (reading->iso))
    reading->iso = ff_scale_written (FF_SCALE_ISO, iso);
  return TRUE;
}

static gboolean
read_shown (const FfDay *day, FfReading *reading, GError **error)
{
  g_autofree char *aperture = NULL;
  double written, exact;

  if (!(reading->shown_s > 0) || !(reading->target_s > 0))
    return refuse (error, _ ("say both the shutter shown and the shutter wanted")) != NULL;
  if (!take_camera (day, reading, error))
    return FALSE;
  aperture = ff_number_format (reading->aperture, 2);
  if (!ff_aperture_parse (_ ("aperture"), aperture, &written, &exact, error))
    return FALSE;
  reading->ev100
      = ff_exposure_ev100 (exact, reading->shown_s, reading->iso) + reading->nd_stops;
  return TRUE;
}

static gboolean
read_light (const FfDay *day, const FfReadingEntry *entry, FfReading *reading, GError **error)
{
  switch (entry->method)
    {
    case FF_METHOD_SHOWN:
      return read_shown (day, reading, error);
    case FF_METHOD_LUX:
      if (!(entry->lux > 0))
        return refuse (error, _ ("say the lux; accepted: a number above 0")) != NULL;
      reading->ev100 = ff_exposure_ev100_of_lux (entry->lux) + entry->nd_stops;
      /* Lux fall on level ground, as a camera that looks straight down sees it. */
      reading->view = FF_VIEW_DOWN;
      reading->bearing_deg = NAN;
      reading->subject_offset_stops = 0;
      return TRUE;
    case FF_METHOD_EV100:
      reading->ev100 = entry->ev100 + entry->nd_stops;
      break;
    case FF_METHOD_FRAME:
    default:
      reading->ev100 = entry->ev100;
      break;
    }
  return isfinite (reading->ev100)
         || refuse (error, _ ("the light is not known: the settings are missing")) != NULL;
}

static void
take_view (const FfDay *day, const FfReadingEntry *entry, FfReading *reading)
{
  reading->view = entry->shot != NULL ? entry->shot->view : FF_VIEW_OBLIQUE;
  reading->bearing_deg = entry->shot != NULL ? entry->shot->bearing_deg : NAN;
  reading->subject_offset_stops = entry->shot != NULL ? entry->shot->subject_offset_stops : 0;
  reading->sky = entry->other_sky ? entry->sky : day->job->sky;
  reading->cloud_moves = entry->cloud == FF_CLOUD_BY_SKY ? ff_learned_sky_moves (reading->sky)
                                                         : entry->cloud == FF_CLOUD_MOVES;
}

FfReading *
ff_day_reading_new (const FfDay *day, const FfReadingEntry *entry, GError **error)
{
  g_autoptr (FfReading) reading = ff_reading_new (day->job->id);
  double usual = entry->method == FF_METHOD_SHOWN ? SHOWN_SPREAD : METER_SPREAD;

  reading->at = entry->at;
  reading->method = entry->method;
  reading->shown_s = entry->shown_s;
  reading->target_s = entry->target_s;
  reading->aperture = entry->aperture;
  reading->iso = entry->iso;
  reading->lux = entry->lux;
  reading->nd_stops = entry->nd_stops;
  reading->spread_stops = isfinite (entry->spread_stops) ? entry->spread_stops : usual;
  ff_set_text (&reading->source, entry->source);
  ff_set_text (&reading->by, entry->by);
  take_view (day, entry, reading);
  if (!check_time (day, entry->at, error) || !read_light (day, entry, reading, error)
      || !ff_reading_check (reading, error))
    return NULL;
  return g_steal_pointer (&reading);
}

/* ---- Against the model ---- */

/* The model's light where the reading looked, without what any reading teaches. */
static double
model_ev100 (const FfDay *day, const FfReading *reading)
{
  FfDaylightQuery query = {
    .sky = reading->sky, .view = reading->view, .from_sun_deg = 180,
    .offset_stops = reading->subject_offset_stops,
  };
  FfDirection sun;
  FfDaylight light;

  ff_sun_track_direction (&day->sun, (double) reading->at, &sun);
  query.sun_altitude_deg = sun.altitude_deg;
  if (isfinite (reading->bearing_deg))
    query.from_sun_deg = ff_bearing_difference_deg (reading->bearing_deg, sun.azimuth_deg);
  ff_daylight (&query, &light);
  return light.ev100;
}

double
ff_day_reading_offset (const FfDay *day, const FfReading *reading)
{
  if (!day->has_date || day->place == NULL)
    return NAN;
  return reading->ev100 - model_ev100 (day, reading);
}

double
ff_day_reading_need (const FfReading *reading)
{
  if (reading->method != FF_METHOD_SHOWN)
    return NAN;
  return log2 (reading->target_s / reading->shown_s) + reading->nd_stops;
}

const FfShot *
ff_day_find_shot (const FfDay *day, const char *label)
{
  for (guint i = 0; i < day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (day->shots, i);

      if (g_ascii_strcasecmp (shot->label, label) == 0)
        return shot;
    }
  return NULL;
}

GPtrArray *
ff_day_readings (const FfDay *day)
{
  return day->readings;
}

void
ff_day_learn (FfDay *day)
{
  day->learned = g_array_new (FALSE, FALSE, sizeof (FfLearnedReading));
  day->learned_from = g_ptr_array_new ();
  for (guint i = 0; i < day->readings->len; i++)
    {
      const FfReading *reading = g_ptr_array_index (day->readings, i);
      FfLearnedReading learned = { (double) reading->at, ff_day_reading_offset (day, reading),
                                   reading->spread_stops, reading->sky, reading->cloud_moves };

      if (ff_reading_is_dropped (reading) || !isfinite (learned.offset_stops))
        continue;
      g_array_append_val (day->learned, learned);
      g_ptr_array_add (day->learned_from, (gpointer) reading);
    }
}

static void
learned_at (const FfDay *day, FfSky sky, double at, double spread, FfLearned *ret_learned)
{
  ff_learned_at ((const FfLearnedReading *) (gpointer) day->learned->data, day->learned->len, at,
                 sky, spread, ret_learned);
}

void
ff_day_correct_light (const FfDay *day, FfSky sky, double at, FfDaylight *light)
{
  double spread = (light->high_ev100 - light->low_ev100) / 2;
  FfLearned learned;

  learned_at (day, sky, at, spread, &learned);
  if (learned.index < 0)
    return;
  light->ev100 += learned.offset_stops;
  light->low_ev100 = light->ev100 - learned.spread_stops;
  light->high_ev100 = light->ev100 + learned.spread_stops;
}

void
ff_day_learned (const FfDay *day,
                FfSky sky,
                gint64 at,
                FfLearned *ret_learned,
                const FfReading **ret_reading)
{
  FfDaylightQuery query = { .sky = sky, .from_sun_deg = 180 };
  FfDaylight light = { .low_ev100 = 0 };
  FfDirection sun;

  if (day->learned->len > 0)
    {
      ff_sun_track_direction (&day->sun, (double) at, &sun);
      query.sun_altitude_deg = sun.altitude_deg;
      ff_daylight (&query, &light);
    }
  learned_at (day, sky, (double) at, (light.high_ev100 - light.low_ev100) / 2, ret_learned);
  if (ret_reading != NULL)
    *ret_reading = ret_learned->index >= 0
                       ? g_ptr_array_index (day->learned_from, (guint) ret_learned->index)
                       : NULL;
}

const FfReading *
ff_day_last_reading (const FfDay *day, double *ret_offset)
{
  guint n = day->learned->len;

  *ret_offset = n > 0 ? g_array_index (day->learned, FfLearnedReading, n - 1).offset_stops : 0;
  return n > 0 ? g_ptr_array_index (day->learned_from, n - 1) : NULL;
}
