/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-remark.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-depth.h"
#include "ff-exposure.h"
#include "ff-number.h"
#include "ff-scale.h"

/* Nobody sees a shutter that is a sixtieth of a stop away from the wanted one. */
#define SHUTTER_NOISE_STOPS 0.017

static void
add (FfChoice *choice, FfRemarkKind kind, double a, double b)
{
  if (choice->n_remarks < FF_MAX_REMARKS)
    choice->remarks[choice->n_remarks++] = (FfRemark) { kind, a, b };
}

static gboolean
is_video (const FfWant *want)
{
  return want->intent == FF_INTENT_VIDEO || want->intent == FF_INTENT_SLOW;
}

static void
remark_shutter (FfChoice *choice, const FfWant *want, gboolean in_span)
{
  double wanted = ff_advise_wanted_s (want);

  if (is_video (want) && !in_span)
    add (choice, FF_REMARK_SPAN, want->angle_from_deg, want->angle_to_deg);
  if (!isfinite (wanted)
      || fabs (log2 (wanted / choice->settings.shutter_s)) < SHUTTER_NOISE_STOPS)
    return;
  if (is_video (want))
    add (choice, FF_REMARK_ANGLE, choice->settings.shutter_angle_deg, want->angle_deg);
  else
    add (choice, FF_REMARK_INTERVAL, choice->settings.shutter_s, wanted);
}

static void
remark_iso (FfChoice *choice, const FfCameraRange *camera)
{
  guint iso = choice->settings.iso;
  guint base = ff_advise_base_at (camera, iso);
  double base_written = ff_scale_written (FF_SCALE_ISO, base);

  if (iso != base)
    add (choice, FF_REMARK_ISO, ff_scale_written (FF_SCALE_ISO, iso), base_written);
  if (camera->n_bases > 0 && base != camera->base_iso[0])
    add (choice, FF_REMARK_SECOND_BASE, base_written, 0);
}

static void
remark_aperture (FfChoice *choice, const FfCameraRange *camera)
{
  double f_number = choice->settings.aperture.exact;

  if (f_number > ff_advise_sharp_to (camera) * (1 + 1e-9))
    add (choice, FF_REMARK_DIFFRACTION, ff_depth_airy_um (f_number), camera->pitch_um);
  if (camera->sharp_from > 0 && f_number < camera->sharp_from * (1 - 1e-9))
    add (choice, FF_REMARK_SOFT, choice->settings.aperture.written, camera->sharp_from);
}

/* The frame at base ISO is worked out from the light, not from the settings: it is what a camera
 * left at its base would do, and crews leave it there. */
static void
remark_frames (FfChoice *choice, const FfAdviseQuery *query, double log_frames)
{
  const FfCameraRange *camera = query->camera;
  const FfPrices *prices = query->prices != NULL ? query->prices : &ff_prices_default;
  guint base = camera->n_bases > 0 ? camera->base_iso[0] : camera->iso_low;
  double base_iso = ff_scale_written (FF_SCALE_ISO, base);
  double longest = choice->settings.shutter_s * exp2 (log_frames);
  double at_base;

  if (query->want->intent != FF_INTENT_BRACKET)
    return;
  add (choice, FF_REMARK_LONGEST_FRAME, longest, longest * exp2 (-choice->filter_stops));
  at_base = ff_exposure_seconds_for (query->ev100 - choice->filter_stops,
                                     choice->settings.aperture.exact, base_iso)
            * exp2 (log_frames);
  if (choice->filter_stops > 0 && at_base > prices->slow_limit_s)
    add (choice, FF_REMARK_FRAME_AT_BASE, at_base, base_iso);
}

static void
remark_blur (FfChoice *choice, const FfAdviseQuery *query, double log_frames)
{
  double limit_s = ff_advise_blur_limit_s (query->camera, query->want);
  double longest = choice->settings.shutter_s * exp2 (log_frames);

  if (isfinite (limit_s))
    add (choice, FF_REMARK_BLUR, query->want->max_blur_px * longest / limit_s,
         query->want->max_blur_px);
}

static void
remark_filters (FfChoice *choice, const FfAdviseFilter *filters)
{
  for (guint i = 0; i < choice->n_filters; i++)
    if (filters[choice->filters[i]].stops < filters[choice->filters[i]].stops_to)
      add (choice, FF_REMARK_VARIABLE, choice->set_to[i], 0);
  if (choice->n_filters > 1)
    add (choice, FF_REMARK_STACK, choice->n_filters, 0);
}

void
ff_remarks_fill (FfChoice *choice, const FfAdviseQuery *query, const FfAdviseTable *table)
{
  choice->n_remarks = 0;
  if (fabs (choice->settings.error_stops) > FF_REACH_STOPS + 1e-9)
    add (choice, FF_REMARK_OFF, choice->settings.error_stops, 0);
  remark_filters (choice, query->filters);
  remark_shutter (choice, query->want, table->in_span);
  remark_iso (choice, query->camera);
  remark_frames (choice, query, table->log_frames);
  remark_blur (choice, query, table->log_frames);
  remark_aperture (choice, query->camera);
}

/* How each kind shows its two numbers: with so many decimals, or as a shutter time. */
#define AS_TIME (-1)
static const struct {
  int a, b;
} number_styles[] = {
  [FF_REMARK_ANGLE] = { 0, 0 },
  [FF_REMARK_ISO] = { 0, 0 },
  [FF_REMARK_SECOND_BASE] = { 0, 0 },
  [FF_REMARK_DIFFRACTION] = { 1, 1 },
  [FF_REMARK_SOFT] = { 1, 1 },
  [FF_REMARK_LONGEST_FRAME] = { AS_TIME, AS_TIME },
  [FF_REMARK_FRAME_AT_BASE] = { AS_TIME, 0 },
  [FF_REMARK_BLUR] = { 1, 1 },
  [FF_REMARK_STACK] = { 0, 0 },
  [FF_REMARK_VARIABLE] = { 2, 0 },
  [FF_REMARK_OFF] = { 1, 0 },
  [FF_REMARK_SPAN] = { 0, 0 },
  [FF_REMARK_INTERVAL] = { AS_TIME, AS_TIME },
};

static char *
number_text (double value, int style)
{
  return style == AS_TIME ? ff_shutter_format (value) : ff_number_format (fabs (value), style);
}

/* The remarks about what is in front of the lens and about single frames. */
static char *
text_of_filter_or_frame (const FfRemark *remark, const char *a, const char *b)
{
  switch ((int) remark->kind)
    {
    case FF_REMARK_STACK:
      /* Translators: optical filters one behind the other. */
      return g_strdup_printf (_ ("%s filters stacked: look for dark corners and reflections"), a);
    case FF_REMARK_VARIABLE:
      /* Translators: a variable neutral-density filter, set by turning it. */
      return g_strdup_printf (_ ("Set the variable filter to %s stops"), a);
    case FF_REMARK_LONGEST_FRAME:
      if (remark->a == remark->b)
        /* Translators: of a bracket, several stills at different exposures. */
        return g_strdup_printf (_ ("The longest frame is %s s"), a);
      return g_strdup_printf (_ ("The longest frame is %s s; without the filter %s s"), a, b);
    case FF_REMARK_FRAME_AT_BASE:
      return g_strdup_printf (_ ("With this filter at ISO %s the longest frame would be %s s"), b,
                              a);
    case FF_REMARK_BLUR:
      if (remark->a > remark->b * (1 + 1e-9))
        return g_strdup_printf (_ ("Moves %s pixels in a frame, more than the %s allowed"), a, b);
      return g_strdup_printf (_ ("Moves %s pixels in a frame, of %s allowed"), a, b);
    default:
      return NULL;
    }
}

static char *
text_of_settings (const FfRemark *remark, const char *a, const char *b)
{
  switch ((int) remark->kind)
    {
    case FF_REMARK_ANGLE:
      return g_strdup_printf (_ ("Shutter at %s°, wanted %s°"), a, b);
    case FF_REMARK_INTERVAL:
      return g_strdup_printf (_ ("Shutter at %s s, wanted %s s"), a, b);
    case FF_REMARK_SPAN:
      return g_strdup_printf (_ ("The camera has no shutter from %s° to %s°"), a, b);
    case FF_REMARK_ISO:
      /* Translators: the base ISO of a camera is the one its sensor was made for. */
      return g_strdup_printf (_ ("ISO %s, base %s"), a, b);
    case FF_REMARK_SECOND_BASE:
      return g_strdup_printf (_ ("On the base ISO %s, not the preferred one"), a);
    case FF_REMARK_DIFFRACTION:
      /* Translators: diffraction: the blur disk (Airy disk) against the size of a pixel. */
      return remark->b > 0 ? g_strdup_printf (_ ("Beyond the sharp range: a point spreads over "
                                                 "%s µm, pixels are %s µm apart"),
                                              a, b)
                           : g_strdup_printf (_ ("Beyond the sharp range: a point spreads over "
                                                 "%s µm"),
                                              a);
    case FF_REMARK_SOFT:
      /* Translators: apertures: the one that is set, and the widest at which the lens is sharp. */
      return g_strdup_printf (_ ("f/%s is wider than the lens is sharp, which is from f/%s"), a, b);
    case FF_REMARK_OFF:
      /* Translators: exposure, in stops. */
      return remark->a > 0 ? g_strdup_printf (_ ("Too bright by %s stops"), a)
                           : g_strdup_printf (_ ("Too dark by %s stops"), a);
    default:
      return text_of_filter_or_frame (remark, a, b);
    }
}

char *
ff_remark_text (const FfRemark *remark)
{
  g_autofree char *a = NULL;
  g_autofree char *b = NULL;

  g_return_val_if_fail ((guint) remark->kind < G_N_ELEMENTS (number_styles), NULL);
  a = number_text (remark->a, number_styles[remark->kind].a);
  b = number_text (remark->b, number_styles[remark->kind].b);
  return text_of_settings (remark, a, b);
}
