/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-explain.h"

#include <math.h>

#include "ff-day-private.h"
#include "ff-scale.h"

void
ff_day_explain_light (const FfDay *day,
                      const FfShot *shot,
                      FfSky sky,
                      gint64 at,
                      FfExplainQuery *ret_query)
{
  FfDirection sun;
  FfDaylight light;

  ff_day_light_at (day, shot, sky, (double) at, &sun, &light);
  *ret_query = (FfExplainQuery) {
    .from = FF_EXPLAIN_SUN,
    .sun_altitude_deg = sun.altitude_deg,
    .sun_azimuth_deg = sun.azimuth_deg,
    .from_sun_deg = isfinite (shot->bearing_deg)
                        ? ff_bearing_difference_deg (shot->bearing_deg, sun.azimuth_deg)
                        : 180,
    .sky = sky,
    .view = shot->view,
    .subject_stops = shot->subject_offset_stops,
    .ev100 = light.ev100,
    .low_ev100 = light.low_ev100,
    .high_ev100 = light.high_ev100,
  };
}

static const FfShot *
shot_of_take (const FfDay *day, const FfPlanTake *take)
{
  for (guint i = 0; i < day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (day->shots, i);

      if (g_str_equal (shot->label, take->shot))
        return shot;
    }
  return NULL;
}

static FfAperture
aperture_of (const FfCameraRange *camera, double written)
{
  for (guint i = 0; i < camera->n_apertures; i++)
    if (fabs (camera->apertures[i].written - written) < 1e-9)
      return camera->apertures[i];
  return (FfAperture) { written, written };
}

static FfSettings
settings_of (const FfCameraRange *camera, const FfPlanSettings *planned)
{
  g_autofree char *iso = g_strdup_printf ("%d", planned->iso);

  return (FfSettings) {
    .aperture = aperture_of (camera, planned->aperture),
    .shutter = (guint) MAX (ff_scale_find (FF_SCALE_SHUTTER, planned->shutter), 0),
    .shutter_s = planned->shutter_s,
    .shutter_angle_deg = planned->shutter_angle_deg,
    .iso = (guint) MAX (ff_scale_find (FF_SCALE_ISO, iso), 0),
    .error_stops = planned->error_stops,
  };
}

GPtrArray *
ff_day_explain_take (const FfDay *day,
                     const FfDayPlan *plan,
                     const FfPlanLine *line,
                     const FfPlanTake *take)
{
  const FfShot *shot = shot_of_take (day, take);
  const FfItem *item = ff_day_camera (day);
  FfExplainQuery query;
  FfCameraRange camera;
  FfWant want;

  if (shot == NULL || item == NULL || !ff_day_camera_range (item, &camera, NULL)
      || !ff_day_want (shot, &want, NULL))
    return NULL;
  ff_day_fit_want (item, &want);
  ff_day_explain_light (day, shot, plan->sky, take->from, &query);
  query.camera = &camera;
  query.want = &want;
  query.filters = line->engraving;
  query.filter_stops = line->filter_stops;
  query.settings = settings_of (&camera, &take->start);
  return ff_explain (&query);
}
