/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-advise.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-advise-table.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-scale.h"

#define SLACK 1e-9
#define MAX_FRAMES 15

static gboolean refuse (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse (GError **error, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list arguments;

  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, message);
  return FALSE;
}

static gboolean
check_apertures (const FfCameraRange *camera, GError **error)
{
  if (camera->n_apertures < 1 || camera->n_apertures > FF_MAX_APERTURES)
    return refuse (error, _ ("the camera has %u apertures; accepted: 1 to %d"),
                   camera->n_apertures, FF_MAX_APERTURES);
  for (guint i = 0; i < camera->n_apertures; i++)
    if (!(camera->apertures[i].exact > 0) || !isfinite (camera->apertures[i].exact))
      return refuse (error, _ ("an aperture of the camera is not above 0"));
  return TRUE;
}

static gboolean
check_isos (const FfCameraRange *camera, GError **error)
{
  if (camera->iso_low > camera->iso_high || camera->iso_high >= ff_scale_size (FF_SCALE_ISO))
    return refuse (error, _ ("the camera's ISO range is upside down; accepted: lowest first"));
  if (camera->n_bases < 1 || camera->n_bases > FF_MAX_BASES)
    return refuse (error, _ ("the camera has %u base ISOs; accepted: 1 to %d"), camera->n_bases,
                   FF_MAX_BASES);
  for (guint i = 0; i < camera->n_bases; i++)
    if (camera->base_iso[i] < camera->iso_low || camera->base_iso[i] > camera->iso_high)
      return refuse (error, _ ("the base ISO lies outside the camera's range; accepted: %s to %s"),
                     ff_scale_label (FF_SCALE_ISO, camera->iso_low),
                     ff_scale_label (FF_SCALE_ISO, camera->iso_high));
  return TRUE;
}

static gboolean
check_shutters (const FfCameraRange *camera, GError **error)
{
  if (camera->shutter_fast > camera->shutter_slow
      || camera->shutter_slow >= ff_scale_size (FF_SCALE_SHUTTER))
    return refuse (error, _ ("the camera's shutter range is upside down; accepted: fastest first"));
  return TRUE;
}

static gboolean
check_angle (const FfWant *want, GError **error)
{
  g_autofree char *from = ff_number_format (want->angle_from_deg, 1);
  g_autofree char *to = ff_number_format (want->angle_to_deg, 1);
  g_autofree char *angle = ff_number_format (want->angle_deg, 1);

  if (!(want->fps > 0) || !isfinite (want->fps))
    return refuse (error, _ ("the frame rate is missing; accepted: above 0"));
  if (!(want->angle_from_deg > 0) || !(want->angle_to_deg <= 360))
    return refuse (error,
                   _ ("shutter angles from %s° to %s° are not possible; accepted: above 0 to 360"),
                   from, to);
  if (!(want->angle_deg >= want->angle_from_deg) || !(want->angle_deg <= want->angle_to_deg))
    return refuse (error,
                   _ ("the span from %s° to %s° does not hold the shutter angle of %s°; accepted: "
                      "one that does"),
                   from, to, angle);
  return TRUE;
}

/* Whether some shutter of the camera has the shortest and the longest frame in its range too. */
static gboolean
bracket_fits (const FfCameraRange *camera, const FfWant *want)
{
  double from, to;

  ff_advise_span_s (camera, want, &from, &to);
  for (guint step = camera->shutter_fast; step <= camera->shutter_slow; step++)
    {
      double seconds = ff_advise_shutter_s (camera, step);

      if (seconds >= from * (1 - SLACK) && seconds <= to * (1 + SLACK))
        return TRUE;
    }
  return FALSE;
}

static gboolean
check_bracket (const FfCameraRange *camera, const FfWant *want, GError **error)
{
  g_autofree char *step = ff_number_format (want->step_stops, 2);

  if (want->frames < 2 || want->frames > MAX_FRAMES)
    return refuse (error, _ ("a bracket of %d frames is not one; accepted: 2 to %d frames"),
                   want->frames, MAX_FRAMES);
  if (!(want->step_stops > 0) || !isfinite (want->step_stops))
    return refuse (error, _ ("a bracket step of %s stops is not one; accepted: above 0"), step);
  if (!bracket_fits (camera, want))
    return refuse (error,
                   _ ("a bracket of %d frames %s stops apart does not fit the camera's shutters, "
                      "%s to %s s; accepted: fewer frames or a smaller step"),
                   want->frames, step, ff_scale_label (FF_SCALE_SHUTTER, camera->shutter_fast),
                   ff_scale_label (FF_SCALE_SHUTTER, camera->shutter_slow));
  return TRUE;
}

static gboolean
check_intent (const FfCameraRange *camera, const FfWant *want, GError **error)
{
  switch (want->intent)
    {
    case FF_INTENT_VIDEO:
    case FF_INTENT_SLOW:
      return check_angle (want, error);
    case FF_INTENT_BRACKET:
      return check_bracket (camera, want, error);
    case FF_INTENT_TIMELAPSE:
      if (!(want->interval_s > 0) || !isfinite (want->interval_s))
        return refuse (error, _ ("the interval of the time-lapse is missing; accepted: above 0 s"));
      return TRUE;
    case FF_INTENT_STILL:
    default:
      return TRUE;
    }
}

static gboolean
check_max_iso (const FfCameraRange *camera, const FfWant *want, GError **error)
{
  guint lowest = ff_advise_base_at (camera, 0);
  g_autofree char *limit = ff_number_format (want->max_iso, 0);

  if (want->max_iso == 0 || want->max_iso >= ff_scale_written (FF_SCALE_ISO, lowest) * (1 - SLACK))
    return TRUE;
  return refuse (error,
                 _ ("the shot's ISO limit of %s lies below the base ISO; accepted: %s or more"),
                 limit, ff_scale_label (FF_SCALE_ISO, lowest));
}

static gboolean
check_held_aperture (const FfCameraRange *camera, const FfWant *want, GError **error)
{
  g_autofree char *held = ff_number_format (want->hold_aperture, 2);

  if (want->hold_aperture == 0)
    return TRUE;
  for (guint i = 0; i < camera->n_apertures; i++)
    if (fabs (camera->apertures[i].exact / want->hold_aperture - 1) <= SLACK)
      return TRUE;
  return refuse (error, _ ("the camera has no f/%s to hold; accepted: one of its apertures"), held);
}

static gboolean
check_blur (const FfCameraRange *camera, const FfWant *want, GError **error)
{
  if (want->max_blur_px == 0)
    return TRUE;
  if (!(want->max_blur_px > 0) || !(want->speed_ms >= 0))
    return refuse (error, _ ("the blur limit or the speed is below 0; accepted: 0 or more"));
  if (!(camera->pitch_um > 0) || !(want->height_m > 0) || !(want->focal_mm > 0))
    return refuse (error, _ ("a blur limit needs the speed, the height, the focal length and the "
                             "pixel pitch, all above 0"));
  return TRUE;
}

gboolean
ff_advise_check (const FfCameraRange *camera, const FfWant *want, GError **error)
{
  return check_apertures (camera, error) && check_isos (camera, error)
         && check_shutters (camera, error) && check_intent (camera, want, error)
         && check_max_iso (camera, want, error) && check_held_aperture (camera, want, error)
         && check_blur (camera, want, error);
}
