/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-options.h"

#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-error.h"

/* The first option given of those for sun and sky, or NULL. */
static const char *
given_for_sun (const FfLightOptions *options)
{
  const struct {
    const char *name, *text;
  } all[] = {
    { "--lat", options->lat }, { "--lon", options->lon },       { "--at", options->at },
    { "--sky", options->sky }, { "--view", options->view },     { "--bearing", options->bearing },
    { "--lit", options->lit }, { "--offset", options->offset },
  };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    if (all[i].text != NULL)
      return all[i].name;
  return NULL;
}

const char *
ff_light_options_first (const FfLightOptions *options)
{
  if (options->ev100 != NULL)
    return "--ev100";
  return options->condition != NULL ? "--condition" : given_for_sun (options);
}

static gboolean
refuse_together (const char *a, const char *b, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s and %s exclude each other; give one of them"), a, b);
  return FALSE;
}

/* One way of saying the light, not two at once. */
static gboolean
check_one_way (const FfLightOptions *options, GError **error)
{
  const char *sun = given_for_sun (options);

  if (options->ev100 != NULL && options->condition != NULL)
    return refuse_together ("--ev100", "--condition", error);
  if (options->ev100 != NULL && sun != NULL)
    return refuse_together ("--ev100", sun, error);
  if (options->condition != NULL && sun != NULL)
    return refuse_together ("--condition", sun, error);
  if (options->lit != NULL && options->bearing != NULL)
    return refuse_together ("--lit", "--bearing", error);
  return TRUE;
}

static gboolean
resolve_level (const FfLightOptions *options, FfLight *light, GError **error)
{
  if (!ff_option_number ("--ev100", options->ev100, -20.0, 25.0, &light->ev100, error))
    return FALSE;
  light->from = FF_LIGHT_FROM_LEVEL;
  light->low_ev100 = light->high_ev100 = light->ev100;
  return TRUE;
}

static gboolean
resolve_condition (const FfLightOptions *options, FfLight *light, GError **error)
{
  light->condition = ff_condition_find (options->condition, error);
  if (light->condition == NULL)
    {
      g_prefix_error (error, "--condition: ");
      return FALSE;
    }
  light->from = FF_LIGHT_FROM_CONDITION;
  light->low_ev100 = light->condition->low_ev100;
  light->high_ev100 = light->condition->high_ev100;
  light->ev100 = (light->low_ev100 + light->high_ev100) / 2.0;
  return TRUE;
}

/* The models of the sun are no good for any year one can write. */
static gboolean
read_time (const FfLightOptions *options, gint64 *ret_at, GError **error)
{
  gint64 at;
  FfDate date;

  if (!ff_option_instant ("--at", options->at, &at, error))
    return FALSE;
  date = ff_instant_date (at, NULL);
  if (date.year < 1900 || date.year > 2199)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--at: the year of “%s” is out of reach; accepted: 1900 to 2199"),
                   options->at);
      return FALSE;
    }
  *ret_at = at;
  return TRUE;
}

static gboolean
read_place_and_time (const FfLightOptions *options, FfLight *light, GError **error)
{
  FfSite site = { 0 };

  if (!ff_option_number ("--lat", options->lat, -90.0, 90.0, &site.latitude_deg, error)
      || !ff_option_number ("--lon", options->lon, -180.0, 180.0, &site.longitude_deg, error)
      || !read_time (options, &light->at, error))
    return FALSE;
  ff_sun_direction ((double) light->at, &site, &light->sun);
  light->query.sun_altitude_deg = light->sun.altitude_deg;
  return TRUE;
}

static gboolean
read_sky_and_view (const FfLightOptions *options, FfLight *light, GError **error)
{
  int sky, view = FF_VIEW_OBLIQUE;

  if (!ff_option_name ("--sky", &ff_names_sky, options->sky, &sky, error))
    return FALSE;
  if (options->view != NULL
      && !ff_option_name ("--view", &ff_names_view, options->view, &view, error))
    return FALSE;
  light->query.sky = (FfSky) sky;
  light->query.view = (FfView) view;
  return options->offset == NULL
         || ff_option_number ("--offset", options->offset, -10.0, 10.0, &light->query.offset_stops,
                              error);
}

/* After the sun is known: a bearing counts against it. */
static gboolean
read_direction (const FfLightOptions *options, FfLight *light, GError **error)
{
  int lit = FF_LIT_FRONT;
  double bearing;

  if (options->bearing != NULL)
    {
      if (!ff_option_number ("--bearing", options->bearing, 0.0, 360.0, &bearing, error))
        return FALSE;
      light->query.from_sun_deg = ff_bearing_difference_deg (bearing, light->sun.azimuth_deg);
      light->lit = ff_lit_of_angle (light->query.from_sun_deg);
      return TRUE;
    }
  if (options->lit != NULL && !ff_option_name ("--lit", &ff_names_lit, options->lit, &lit, error))
    return FALSE;
  light->lit = (FfLit) lit;
  light->query.from_sun_deg = ff_lit_from_sun_deg (light->lit);
  return TRUE;
}

static gboolean
resolve_sun (const FfLightOptions *options, FfLight *light, GError **error)
{
  if (!read_place_and_time (options, light, error) || !read_sky_and_view (options, light, error)
      || !read_direction (options, light, error))
    return FALSE;
  light->from = FF_LIGHT_FROM_SUN;
  ff_daylight (&light->query, &light->daylight);
  light->ev100 = light->daylight.ev100;
  light->low_ev100 = light->daylight.low_ev100;
  light->high_ev100 = light->daylight.high_ev100;
  return TRUE;
}

gboolean
ff_light_options_resolve (const FfLightOptions *options, FfLight *ret_light, GError **error)
{
  FfLight light = { 0 };
  gboolean read;

  if (!check_one_way (options, error))
    return FALSE;
  if (options->ev100 != NULL)
    read = resolve_level (options, &light, error);
  else if (options->condition != NULL)
    read = resolve_condition (options, &light, error);
  else
    read = resolve_sun (options, &light, error);
  if (read)
    *ret_light = light;
  return read;
}
