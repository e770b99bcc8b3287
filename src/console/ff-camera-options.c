/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-camera-options.h"

#include <glib/gi18n-lib.h>

#include "ff-command.h"
#include "ff-error.h"
#include "ff-scale.h"

static gboolean
read_aperture (FfCameraRange *camera, const char *text, GError **error)
{
  FfAperture aperture;

  if (!ff_aperture_parse ("--apertures", text, &aperture.written, &aperture.exact, error))
    return FALSE;
  for (guint i = 0; i < camera->n_apertures; i++)
    if (camera->apertures[i].exact == aperture.exact)
      {
        g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                     _ ("--apertures: “%s” stands twice; accepted: each once"), text);
        return FALSE;
      }
  camera->apertures[camera->n_apertures++] = aperture;
  return TRUE;
}

static gboolean
read_apertures (const FfCameraOptions *options, FfCameraRange *camera, GError **error)
{
  g_auto (GStrv) parts = ff_option_list ("--apertures", options->apertures, error);

  if (parts == NULL)
    return FALSE;
  for (guint i = 0; parts[i] != NULL; i++)
    {
      if (i == FF_MAX_APERTURES)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--apertures: “%s” is one too many; accepted: up to %d"), parts[i],
                       FF_MAX_APERTURES);
          return FALSE;
        }
      if (!read_aperture (camera, parts[i], error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_step (const char *option, FfScale scale, const char *text, guint *ret_step, GError **error)
{
  int step = ff_scale_find (scale, text);

  if (step < 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   /* Translators: a label of the third-stop series, as 1/50 or 100. */
                   _ ("%s: “%s” is not a label of the thirds of a stop; accepted: %s to %s, "
                      "as cameras show them"),
                   option, text, ff_scale_label (scale, 0),
                   ff_scale_label (scale, ff_scale_size (scale) - 1));
      return FALSE;
    }
  *ret_step = (guint) step;
  return TRUE;
}

/* "FIRST:LAST", both labels of the scale, in its order. */
static gboolean
read_range (const char *option,
            FfScale scale,
            const char *text,
            guint *ret_first,
            guint *ret_last,
            GError **error)
{
  g_auto (GStrv) ends = NULL;

  if (text == NULL)
    return ff_option_missing (option, error);
  ends = g_strsplit (text, ":", -1);
  if (g_strv_length (ends) != 2)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s: “%s” is not a range; accepted: two labels with a colon between, "
                      "as %s:%s"),
                   option, text, scale == FF_SCALE_ISO ? "100" : "1/8000",
                   scale == FF_SCALE_ISO ? "6400" : "8");
      return FALSE;
    }
  if (!read_step (option, scale, g_strstrip (ends[0]), ret_first, error)
      || !read_step (option, scale, g_strstrip (ends[1]), ret_last, error))
    return FALSE;
  if (*ret_first <= *ret_last)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s: the range “%s” is upside down; accepted: %s"), option, text,
               scale == FF_SCALE_ISO ? _ ("the lowest first") : _ ("the fastest first"));
  return FALSE;
}

static gboolean
read_base (FfCameraRange *camera, const char *text, GError **error)
{
  guint base = 0;

  if (!read_step ("--base-iso", FF_SCALE_ISO, text, &base, error))
    return FALSE;
  if (base < camera->iso_low || base > camera->iso_high)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--base-iso: %s lies outside --iso; accepted: %s to %s"), text,
                   ff_scale_label (FF_SCALE_ISO, camera->iso_low),
                   ff_scale_label (FF_SCALE_ISO, camera->iso_high));
      return FALSE;
    }
  if (camera->n_bases == FF_MAX_BASES)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--base-iso: “%s” is one too many; accepted: up to %d"), text, FF_MAX_BASES);
      return FALSE;
    }
  camera->base_iso[camera->n_bases++] = base;
  return TRUE;
}

static gboolean
read_bases (const FfCameraOptions *options, FfCameraRange *camera, GError **error)
{
  g_auto (GStrv) parts = NULL;

  if (options->base_iso == NULL)
    {
      camera->base_iso[camera->n_bases++] = camera->iso_low;
      return TRUE;
    }
  parts = ff_option_list ("--base-iso", options->base_iso, error);
  for (guint i = 0; parts != NULL && parts[i] != NULL; i++)
    if (!read_base (camera, parts[i], error))
      return FALSE;
  return parts != NULL;
}

gboolean
ff_camera_options_resolve (const FfCameraOptions *options,
                           FfCameraRange *ret_camera,
                           GError **error)
{
  FfCameraRange camera = { .thirds_exact = options->thirds };

  if (!read_apertures (options, &camera, error)
      || !read_range ("--iso", FF_SCALE_ISO, options->iso, &camera.iso_low, &camera.iso_high, error)
      || !read_bases (options, &camera, error)
      || !read_range ("--shutters", FF_SCALE_SHUTTER, options->shutters, &camera.shutter_fast,
                      &camera.shutter_slow, error))
    return FALSE;
  if (options->pitch != NULL
      && !ff_option_number ("--pitch", options->pitch, 0.1, 100, &camera.pitch_um, error))
    return FALSE;
  *ret_camera = camera;
  return TRUE;
}
