/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-item-camera.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"

/* 23.976 is written 23.98 and counted as 24 by whoever plans (common practice, no source). */
#define SAME_RATE 0.005

#define MOST_PROFILES 2

static gboolean
refuse (const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return FALSE;
}

/* "2.8,4": each part a number, as written on the camera; an empty list has none. */
static gboolean
read_list (const char *list,
           const char *what,
           double low,
           double high,
           double *ret_least,
           double *ret_most,
           GError **error)
{
  g_auto (GStrv) parts = g_strsplit (list, ",", -1);

  *ret_least = *ret_most = NAN;
  for (guint i = 0; *list != '\0' && parts[i] != NULL; i++)
    {
      double value;

      if (!ff_number_parse (what, g_strstrip (parts[i]), low, high, &value, error))
        return FALSE;
      *ret_least = fmin (*ret_least, value);
      *ret_most = fmax (*ret_most, value);
    }
  return TRUE;
}

static gboolean
check_list (const char *list,
            const char *whose,
            const char *name,
            double low,
            double high,
            double *ret_least,
            double *ret_most,
            GError **error)
{
  g_autofree char *what = g_strdup_printf ("%s, %s", whose, name);

  return read_list (list, what, low, high, ret_least, ret_most, error);
}

/* "8", "0.5" or "1/8000", in seconds; 0 when it is none. */
static double
shutter_seconds (const char *label)
{
  const char *slash = strchr (label, '/');
  g_autofree char *above = slash != NULL ? g_strndup (label, (gsize) (slash - label)) : NULL;
  double numerator, denominator = 1;

  if (!ff_number_parse ("", above != NULL ? above : label, 1e-6, 86400, &numerator, NULL)
      || (slash != NULL && !ff_number_parse ("", slash + 1, 1, 1e6, &denominator, NULL)))
    return 0;
  return numerator / denominator;
}

static gboolean
check_shutter (const FfItem *camera, const char *whose, GError **error)
{
  double fast = shutter_seconds (camera->shutter_fast);
  double slow = shutter_seconds (camera->shutter_slow);

  if (!(fast > 0 && slow > 0))
    return refuse (whose, _ ("a shutter time is not read; accepted: 1/8000, 0.5 or 8"), error);
  if (fast > slow)
    return refuse (whose, _ ("the fastest shutter is longer than the slowest"), error);
  if (camera->angle_low_deg > camera->angle_high_deg)
    return refuse (whose, _ ("the smallest shutter angle is above the largest"), error);
  return TRUE;
}

static guint
count_profiles (const char *profiles)
{
  g_auto (GStrv) parts = g_strsplit (profiles, ",", -1);
  guint n = 0;

  for (guint i = 0; parts[i] != NULL; i++)
    n += *g_strstrip (parts[i]) != '\0';
  return n;
}

static guint
count_bases (const char *bases)
{
  return *bases == '\0' ? 0 : count_profiles (bases);
}

static gboolean
check_iso (const FfItem *camera, const char *whose, GError **error)
{
  guint profiles = count_profiles (camera->profiles);
  double least, most;

  if (camera->iso_low > camera->iso_high)
    return refuse (whose, _ ("the lowest ISO is above the highest"), error);
  if (!check_list (camera->base_iso, whose, _ ("base ISO"), 1, 1e7, &least, &most, error))
    return FALSE;
  if (least < camera->iso_low || most > camera->iso_high)
    return refuse (whose, _ ("a base ISO is outside the lowest and the highest ISO"), error);
  if (profiles > MOST_PROFILES)
    return refuse (whose, _ ("more than two picture profiles; accepted: one or two"), error);
  if (profiles > MAX (count_bases (camera->base_iso), 1))
    return refuse (whose, _ ("more picture profiles than base ISOs; enter the base of each"), error);
  return TRUE;
}

/* The sharp range may be wider than the ring: then it says nothing, which is no fault. */
static gboolean
check_aperture (const FfItem *camera, const char *whose, GError **error)
{
  double least, most;

  if (!check_list (camera->apertures, whose, _ ("apertures"), 0.5, 128, &least, &most, error))
    return FALSE;
  if (camera->sharp_from > camera->sharp_to)
    return refuse (whose, _ ("the sharp apertures are upside down: the wider one comes first"),
                   error);
  if (camera->sharp_from > most || camera->sharp_to < least)
    return refuse (whose, _ ("none of its apertures is within the sharp ones"), error);
  return TRUE;
}

gboolean
ff_item_check_camera (const FfItem *camera, const char *whose, GError **error)
{
  double least, most;

  return check_aperture (camera, whose, error) && check_iso (camera, whose, error)
         && check_shutter (camera, whose, error)
         && check_list (camera->frame_rates, whose, _ ("frame rates"), 1, 10000, &least, &most,
                        error)
         && check_list (camera->data_rates, whose, _ ("data rates"), 0.1, 100000, &least, &most,
                        error);
}

gboolean
ff_item_has_frame_rate (const FfItem *camera, double fps)
{
  g_auto (GStrv) parts = g_strsplit (camera->frame_rates, ",", -1);
  gboolean any = FALSE;

  for (guint i = 0; parts[i] != NULL; i++)
    {
      double rate = g_ascii_strtod (g_strstrip (parts[i]), NULL);

      any = any || rate > 0;
      if (fabs (rate - fps) < SAME_RATE)
        return TRUE;
    }
  return !any;
}

double
ff_item_highest_data_rate (const FfItem *camera)
{
  double least, most;

  if (!read_list (camera->data_rates, "", 0.1, 100000, &least, &most, NULL))
    most = NAN;
  return fmax (most, camera->bitrate_mbits);
}
