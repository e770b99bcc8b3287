/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-battery-log.h"
#include "ff-day-prices.h"
#include "ff-day-records.h"
#include "ff-error.h"
#include "ff-item-camera.h"
#include "ff-lock.h"
#include "ff-number.h"
#include "ff-reading.h"
#include "ff-scale.h"
#include "ff-standing.h"

static gboolean
load_place (FfDay *day, FfStore *store, GError **error)
{
  if (*day->job->place_id == '\0')
    {
      day->zone = g_time_zone_new_utc ();
      return TRUE;
    }
  day->place = ff_place_load (store, day->job->place_id, error);
  if (day->place == NULL)
    return FALSE;
  day->zone = ff_zone_new (day->place->zone, error);
  return day->zone != NULL;
}

static gboolean
load_air (FfDay *day, FfStore *store, GError **error)
{
  FfAirRules rules;

  day->measurements = ff_measurements_load (store, day->job->id, error);
  if (day->measurements == NULL)
    return FALSE;
  day->reports = ff_weather_reports_load (store, day->job->id, error);
  if (day->reports == NULL || !ff_air_rules_load (store, &rules, error))
    return FALSE;
  day->thin_air = rules.thin_air;
  return TRUE;
}

static gboolean
load_lists (FfDay *day, FfStore *store, GError **error)
{
  day->shots = ff_shots_load (store, day->job->id, error);
  if (day->shots == NULL)
    return FALSE;
  day->crew = ff_job_crew_load (store, day->job->id, error);
  if (day->crew == NULL)
    return FALSE;
  day->items = ff_items_load (store, error);
  if (day->items == NULL)
    return FALSE;
  day->battery_flights = ff_battery_flights_load (store, NULL, error);
  if (day->battery_flights == NULL)
    return FALSE;
  day->limits = ff_limits_load (store, error);
  if (day->limits == NULL)
    return FALSE;
  day->readings = ff_readings_load (store, day->job->id, error);
  return day->readings != NULL;
}

/* What has been decided and what has happened. */
static gboolean
load_course (FfDay *day, FfStore *store, GError **error)
{
  day->flights = ff_flights_load (store, day->job->id, error);
  if (day->flights == NULL)
    return FALSE;
  day->locks = ff_locks_load (store, day->job->id, error);
  if (day->locks == NULL)
    return FALSE;
  day->battery_days = ff_battery_days_load (store, error);
  return day->battery_days != NULL;
}

/* What the crew wants of a plan. What stands counts only where another plan has to beat it by a
 * margin. */
static gboolean
load_wishes (FfDay *day, FfStore *store, GError **error)
{
  g_autoptr (FfStanding) standing = NULL;

  if (!ff_crew_prices_load (store, &day->prices, error))
    return FALSE;
  if (!(day->job->stay_margin > 0))
    return TRUE;
  standing = ff_standing_load (store, day->job->id, error);
  if (standing != NULL)
    day->stands = g_steal_pointer (&standing->plan);
  return standing != NULL;
}

static void
hold_sun (FfDay *day)
{
  FfSite site;
  gint64 from, to;

  if (day->place == NULL)
    return;
  site = (FfSite) { day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  ff_day_bounds (day->date, day->zone, &from, &to);
  ff_sun_track_init (&day->sun, (double) from, (double) from + 2 * 86400, &site);
}

FfDay *
ff_day_load (FfStore *store, const char *wanted, GError **error)
{
  g_autofree char *id = ff_job_find (store, wanted, error);
  g_autoptr (FfDay) day = NULL;

  if (id == NULL)
    return NULL;
  day = g_new0 (FfDay, 1);
  day->job = ff_job_load (store, id, error);
  if (day->job == NULL || !load_place (day, store, error) || !load_lists (day, store, error)
      || !load_air (day, store, error) || !load_course (day, store, error)
      || !load_wishes (day, store, error))
    return NULL;
  if (*day->job->date != '\0')
    {
      if (!ff_date_parse (day->job->date, &day->date, error))
        return NULL;
      day->has_date = TRUE;
      hold_sun (day);
    }
  ff_day_learn (day);
  return g_steal_pointer (&day);
}

void
ff_day_free (FfDay *day)
{
  if (day == NULL)
    return;
  ff_job_free (day->job);
  ff_place_free (day->place);
  g_clear_pointer (&day->zone, g_time_zone_unref);
  g_clear_pointer (&day->shots, g_ptr_array_unref);
  g_clear_pointer (&day->crew, g_ptr_array_unref);
  g_clear_pointer (&day->items, g_ptr_array_unref);
  g_clear_pointer (&day->limits, g_ptr_array_unref);
  g_clear_pointer (&day->battery_flights, g_ptr_array_unref);
  g_clear_pointer (&day->flights, g_ptr_array_unref);
  g_clear_pointer (&day->locks, g_ptr_array_unref);
  g_clear_pointer (&day->stands, ff_day_plan_free);
  g_clear_pointer (&day->battery_days, g_hash_table_unref);
  g_clear_pointer (&day->learned, g_array_unref);
  g_clear_pointer (&day->learned_from, g_ptr_array_unref);
  g_clear_pointer (&day->measurements, g_ptr_array_unref);
  g_clear_pointer (&day->reports, g_ptr_array_unref);
  g_clear_pointer (&day->readings, g_ptr_array_unref);
  g_free (day);
}

const FfJob *
ff_day_job (const FfDay *day)
{
  return day->job;
}

const FfPlace *
ff_day_place (const FfDay *day)
{
  return day->place;
}

GTimeZone *
ff_day_zone (const FfDay *day)
{
  return day->zone;
}

FfItem *
ff_day_item (const FfDay *day, const char *id)
{
  for (guint i = 0; id != NULL && i < day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (day->items, i);

      if (g_str_equal (item->id, id))
        return item;
    }
  return NULL;
}

gboolean
ff_day_uses (const FfDay *day, const FfItem *item)
{
  GPtrArray *ids = day->job->item_ids;

  if (ids == NULL || ids->len == 0)
    return TRUE;
  for (guint i = 0; i < ids->len; i++)
    if (g_str_equal (g_ptr_array_index (ids, i), item->id))
      return TRUE;
  return FALSE;
}

FfItem *
ff_day_aircraft (const FfDay *day)
{
  FfItem *aircraft = ff_day_item (day, day->job->aircraft_id);

  for (guint i = 0; aircraft == NULL && i < day->items->len; i++)
    {
      FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind == FF_KIND_AIRCRAFT && item->state == FF_STATE_SERVICEABLE
          && ff_day_uses (day, item))
        aircraft = item;
    }
  return aircraft;
}

FfItem *
ff_day_camera (const FfDay *day)
{
  FfItem *aircraft = ff_day_aircraft (day);

  return aircraft != NULL ? ff_day_item (day, aircraft->camera_id) : NULL;
}

/* ---- Records as kernels see them ---- */

static gboolean
read_step (FfScale scale, const char *what, const char *label, guint *ret_step, GError **error)
{
  int step = ff_scale_find (scale, label);

  if (step < 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s: “%s” is not a step of the third-stop series"), what, label);
      return FALSE;
    }
  *ret_step = (guint) step;
  return TRUE;
}

static gboolean
read_iso (const char *what, int iso, guint *ret_step, GError **error)
{
  g_autofree char *label = g_strdup_printf ("%d", iso);

  return read_step (FF_SCALE_ISO, what, label, ret_step, error);
}

static gboolean
read_apertures (const FfItem *camera, FfCameraRange *range, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (camera->apertures, ",", FF_MAX_APERTURES);

  for (guint i = 0; parts[i] != NULL && *g_strstrip (parts[i]) != '\0'; i++)
    {
      FfAperture *aperture = &range->apertures[range->n_apertures++];

      if (!ff_aperture_parse (camera->label, parts[i], &aperture->written, &aperture->exact, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_bases (const FfItem *camera, FfCameraRange *range, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (camera->base_iso, ",", FF_MAX_BASES);

  for (guint i = 0; parts[i] != NULL && *g_strstrip (parts[i]) != '\0'; i++)
    if (!read_step (FF_SCALE_ISO, camera->label, parts[i], &range->base_iso[range->n_bases++],
                    error))
      return FALSE;
  return TRUE;
}

/* The exact value of an aperture as written; 0: there is none. */
static double
exact_or_none (double written)
{
  g_autofree char *text = ff_number_format (written, 2);
  double read, exact = 0;

  if (isfinite (written))
    ff_aperture_parse ("", text, &read, &exact, NULL);
  return exact;
}

gboolean
ff_day_camera_range (const FfItem *camera, FfCameraRange *ret_range, GError **error)
{
  FfCameraRange range = {
    .iso_whole = camera->iso_steps == FF_ISO_STOPS,
    .pitch_um = isfinite (camera->pitch_um) ? camera->pitch_um : 0,
    .sharp_from = exact_or_none (camera->sharp_from),
    .sharp_to = exact_or_none (camera->sharp_to),
  };

  if (!read_apertures (camera, &range, error) || !read_bases (camera, &range, error)
      || !read_iso (camera->label, camera->iso_low, &range.iso_low, error)
      || !read_iso (camera->label, camera->iso_high, &range.iso_high, error)
      || !read_step (FF_SCALE_SHUTTER, camera->label, camera->shutter_fast, &range.shutter_fast,
                     error)
      || !read_step (FF_SCALE_SHUTTER, camera->label, camera->shutter_slow, &range.shutter_slow,
                     error))
    return FALSE;
  *ret_range = range;
  return TRUE;
}

gboolean
ff_day_want (const FfShot *shot, FfWant *ret_want, GError **error)
{
  FfWant want = {
    .intent = shot->intent,
    .fps = shot->fps,
    .angle_deg = shot->angle_deg,
    .angle_from_deg = shot->angle_from_deg,
    .angle_to_deg = shot->angle_to_deg,
    .frames = shot->frames,
    .step_stops = shot->step_stops,
    .interval_s = shot->interval_s,
    .max_iso = shot->max_iso,
  };

  if (shot->hold_aperture > 0)
    {
      g_autofree char *text = g_strdup_printf ("%g", shot->hold_aperture);
      double written;

      g_strdelimit (text, ",", '.');
      if (!ff_aperture_parse (shot->label, text, &written, &want.hold_aperture, error))
        return FALSE;
    }
  *ret_want = want;
  return TRUE;
}

/* A camera that is set by angle has only the angles it has. */
void
ff_day_fit_want (const FfItem *camera, FfWant *want)
{
  gboolean moves = want->intent == FF_INTENT_VIDEO || want->intent == FF_INTENT_SLOW;
  double low = isfinite (camera->angle_low_deg) ? camera->angle_low_deg : 0;
  double high = isfinite (camera->angle_high_deg) ? camera->angle_high_deg : 360;

  if (camera->shutter_by != FF_SHUTTER_BY_ANGLE || !moves)
    return;
  want->angle_deg = CLAMP (want->angle_deg, low, high);
  want->angle_from_deg = CLAMP (want->angle_from_deg, low, high);
  want->angle_to_deg = CLAMP (want->angle_to_deg, low, high);
}

char *
ff_day_rate_caution (const FfDay *day, const FfShot *shot)
{
  const FfItem *camera = ff_day_camera (day);
  gboolean moves = shot->intent == FF_INTENT_VIDEO || shot->intent == FF_INTENT_SLOW;
  g_autofree char *rate = ff_number_format (shot->fps, 3);

  if (camera == NULL || !moves || !(shot->fps > 0) || ff_item_has_frame_rate (camera, shot->fps))
    return g_strdup ("");
  /* Translators: label of a shot, its frames a second; label of the camera, those that it has. */
  return g_strdup_printf (_ ("%s wants %s frames a second, which %s does not have: %s."),
                          shot->label, rate, camera->label, camera->frame_rates);
}

/* ---- Sun and light ---- */

void
ff_day_light_at (const FfDay *day,
                 const FfShot *shot,
                 FfSky sky,
                 double at,
                 FfDirection *ret_sun,
                 FfDaylight *ret_light)
{
  FfDaylightQuery query = {
    .sky = sky, .view = shot->view, .offset_stops = shot->subject_offset_stops,
    /* All round: the brightest side is planned for; the others are darker. */
    .from_sun_deg = 180,
  };

  ff_sun_track_direction (&day->sun, at, ret_sun);
  query.sun_altitude_deg = ret_sun->altitude_deg;
  if (isfinite (shot->bearing_deg))
    query.from_sun_deg = ff_bearing_difference_deg (shot->bearing_deg, ret_sun->azimuth_deg);
  ff_daylight (&query, ret_light);
  ff_day_correct_light (day, sky, at, ret_light);
}

double *
ff_day_light (const FfDay *day, const FfShot *shot, FfSky sky, gint64 from, gint64 to)
{
  gsize n = (gsize) ((to - from) / 60) + 1;
  double *ev100 = g_new (double, n);

  for (gsize i = 0; i < n; i++)
    {
      FfDirection sun;
      FfDaylight light;

      ff_day_light_at (day, shot, sky, (double) from + (double) i * 60, &sun, &light);
      ev100[i] = light.ev100;
    }
  return ev100;
}

gboolean
ff_day_instant (const FfDay *day, int clock, const char *what, gint64 *ret_instant, GError **error)
{
  if (ff_instant_from_clock (day->date, clock, day->zone, ret_instant, error))
    return TRUE;
  g_prefix_error (error, "%s: ", what);
  return FALSE;
}
