/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-want-options.h"

#include <glib/gi18n-lib.h>

#include "ff-command.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-scale.h"

#define MAX_FRAMES 15

/* An option that may be left out: `ret_value` keeps what it holds. */
static gboolean
read_if_given (const char *option,
               const char *text,
               double low,
               double high,
               double *ret_value,
               GError **error)
{
  return text == NULL || ff_number_parse (option, text, low, high, ret_value, error);
}

static gboolean
check_angle_inside (const FfWant *want, GError **error)
{
  gboolean below = want->angle_deg < want->angle_from_deg;
  g_autofree char *angle = ff_number_format (want->angle_deg, 2);
  g_autofree char *end = ff_number_format (below ? want->angle_from_deg : want->angle_to_deg, 2);

  if (!below && want->angle_deg <= want->angle_to_deg)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               below ? _ ("--angle-from: %s lies above --angle (%s); accepted: up to it")
                     : _ ("--angle-to: %s lies below --angle (%s); accepted: from it on"),
               end, angle);
  return FALSE;
}

/* The span is left out more often than not; it is then as wide as 144 to 216 is around 180. */
static gboolean
read_angles (const FfWantOptions *options, FfWant *want, GError **error)
{
  want->angle_deg = 180;
  if (!ff_option_number ("--fps", options->fps, 0.1, 10000, &want->fps, error)
      || !read_if_given ("--angle", options->angle, 0.1, 360, &want->angle_deg, error))
    return FALSE;
  want->angle_from_deg = want->angle_deg * 144 / 180;
  want->angle_to_deg = MIN (want->angle_deg * 216 / 180, 360);
  return read_if_given ("--angle-from", options->angle_from, 0.1, 360, &want->angle_from_deg, error)
         && read_if_given ("--angle-to", options->angle_to, 0.1, 360, &want->angle_to_deg, error)
         && check_angle_inside (want, error);
}

static gboolean
read_bracket (const FfWantOptions *options, FfWant *want, GError **error)
{
  if (options->frames == NULL)
    return ff_option_missing ("--frames", error);
  return ff_integer_parse ("--frames", options->frames, 2, MAX_FRAMES, &want->frames, error)
         && ff_option_number ("--step", options->step, 0.1, 10, &want->step_stops, error);
}

static gboolean
read_intent (const FfWantOptions *options, FfWant *want, GError **error)
{
  int intent;

  if (!ff_option_name ("--intent", &ff_names_intent, options->intent, &intent, error))
    return FALSE;
  want->intent = (FfIntent) intent;
  switch (want->intent)
    {
    case FF_INTENT_VIDEO:
    case FF_INTENT_SLOW:
      return read_angles (options, want, error);
    case FF_INTENT_BRACKET:
      return read_bracket (options, want, error);
    case FF_INTENT_TIMELAPSE:
      return ff_option_number ("--interval", options->interval, 0.01, 86400, &want->interval_s,
                               error);
    case FF_INTENT_STILL:
    default:
      return TRUE;
    }
}

static gboolean
read_held_aperture (const FfWantOptions *options,
                    const FfCameraRange *camera,
                    FfWant *want,
                    GError **error)
{
  double written;

  if (options->hold_aperture == NULL)
    return TRUE;
  if (!ff_aperture_parse ("--hold-aperture", options->hold_aperture, &written,
                          &want->hold_aperture, error))
    return FALSE;
  for (guint i = 0; i < camera->n_apertures; i++)
    if (camera->apertures[i].exact == want->hold_aperture)
      return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("--hold-aperture: the camera has no f/%s; accepted: one of --apertures"),
               options->hold_aperture);
  return FALSE;
}

static gboolean
read_max_iso (const FfWantOptions *options,
              const FfCameraRange *camera,
              FfWant *want,
              GError **error)
{
  guint lowest = camera->base_iso[0];

  for (guint i = 1; i < camera->n_bases; i++)
    lowest = MIN (lowest, camera->base_iso[i]);
  return read_if_given ("--max-iso", options->max_iso, ff_scale_written (FF_SCALE_ISO, lowest), 1e6,
                        &want->max_iso, error);
}

/* A limit in pixels means nothing without the pixel on the ground and the speed over it. */
static gboolean
read_blur (const FfWantOptions *options, const FfCameraRange *camera, FfWant *want, GError **error)
{
  if (options->max_blur == NULL)
    return TRUE;
  if (!(camera->pitch_um > 0))
    return ff_option_missing (_ ("--pitch (for --max-blur)"), error);
  return ff_number_parse ("--max-blur", options->max_blur, 0.01, 1000, &want->max_blur_px, error)
         && ff_option_number ("--speed", options->speed, 0, 200, &want->speed_ms, error)
         && ff_option_number ("--height", options->height, 0.1, 10000, &want->height_m, error)
         && ff_option_number ("--focal", options->focal, 0.5, 2000, &want->focal_mm, error);
}

gboolean
ff_want_options_resolve (const FfWantOptions *options,
                         const FfCameraRange *camera,
                         FfWant *ret_want,
                         GError **error)
{
  FfWant want = { 0 };

  if (!read_intent (options, &want, error) || !read_held_aperture (options, camera, &want, error)
      || !read_max_iso (options, camera, &want, error)
      || !read_blur (options, camera, &want, error))
    return FALSE;
  if (!ff_advise_check (camera, &want, error))
    {
      g_prefix_error (error, "%s: ",
                      want.intent == FF_INTENT_BRACKET ? "--frames, --step" : "--intent");
      return FALSE;
    }
  *ret_want = want;
  return TRUE;
}
