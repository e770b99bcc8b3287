/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-advise-table.h"

#include <math.h>

#include "ff-depth.h"
#include "ff-exposure.h"
#include "ff-motion.h"
#include "ff-scale.h"

/* Relative slack at the ends of a span: 1/250 s at 100 frames is 144 degrees, not just below. */
#define SLACK 1e-9

#define THIRDS 3 /* steps of a scale in a stop */

double
ff_advise_shutter_s (const FfCameraRange *camera, guint step)
{
  return camera->thirds_exact ? ff_scale_exact (FF_SCALE_SHUTTER, step)
                              : ff_scale_written (FF_SCALE_SHUTTER, step);
}

double
ff_advise_frames_stops (const FfWant *want)
{
  return want->intent == FF_INTENT_BRACKET ? (want->frames - 1) / 2.0 * want->step_stops : 0;
}

double
ff_advise_wanted_s (const FfWant *want)
{
  switch (want->intent)
    {
    case FF_INTENT_VIDEO:
    case FF_INTENT_SLOW:
      return ff_shutter_seconds (want->angle_deg, want->fps);
    case FF_INTENT_TIMELAPSE:
      return want->interval_s / 2;
    case FF_INTENT_STILL:
    case FF_INTENT_BRACKET:
    default:
      return NAN;
    }
}

void
ff_advise_span_s (const FfCameraRange *camera,
                  const FfWant *want,
                  double *ret_from,
                  double *ret_to)
{
  double frames = exp2 (ff_advise_frames_stops (want));

  switch (want->intent)
    {
    case FF_INTENT_VIDEO:
    case FF_INTENT_SLOW:
      *ret_from = ff_shutter_seconds (want->angle_from_deg, want->fps);
      *ret_to = ff_shutter_seconds (want->angle_to_deg, want->fps);
      break;
    case FF_INTENT_TIMELAPSE:
      *ret_from = want->interval_s / 8;
      *ret_to = want->interval_s * 3 / 4;
      break;
    case FF_INTENT_STILL:
    case FF_INTENT_BRACKET:
    default:
      *ret_from = ff_advise_shutter_s (camera, camera->shutter_fast) * frames;
      *ret_to = ff_advise_shutter_s (camera, camera->shutter_slow) / frames;
      break;
    }
}

double
ff_advise_blur_limit_s (const FfCameraRange *camera, const FfWant *want)
{
  double gsd_m = ff_motion_gsd_m (want->height_m, want->focal_mm, camera->pitch_um);

  if (!(want->max_blur_px > 0) || !(want->speed_ms > 0) || !(gsd_m > 0))
    return INFINITY;
  return ff_motion_longest_s (want->max_blur_px, ff_motion_travel_rate (want->speed_ms, gsd_m));
}

guint
ff_advise_base_at (const FfCameraRange *camera, guint iso)
{
  guint below = 0, lowest = G_MAXUINT;

  for (guint i = 0; i < camera->n_bases; i++)
    {
      guint base = camera->base_iso[i];

      lowest = MIN (lowest, base);
      if (base <= iso)
        below = MAX (below, base);
    }
  if (lowest == G_MAXUINT)
    return camera->iso_low;
  return MAX (below, lowest);
}

double
ff_advise_sharp_to (const FfCameraRange *camera)
{
  if (camera->sharp_to > 0)
    return camera->sharp_to;
  return camera->pitch_um > 0 ? ff_depth_sharp_to (camera->pitch_um) : INFINITY;
}

double
ff_advise_soft_stops (const FfCameraRange *camera, double f_number)
{
  double beyond = ff_exposure_av (f_number) - ff_exposure_av (ff_advise_sharp_to (camera));
  double before = camera->sharp_from > 0
                      ? ff_exposure_av (camera->sharp_from) - ff_exposure_av (f_number)
                      : 0;

  return fmax (fmax (beyond, before), 0);
}

static double
shutter_price (const FfWant *want, const FfPrices *prices, double seconds)
{
  double wanted = ff_advise_wanted_s (want);
  double longest;

  if (isfinite (wanted))
    return ff_price_shutter (prices, log2 (wanted / seconds));
  longest = seconds * exp2 (ff_advise_frames_stops (want));
  return prices->slow_stop * fmax (log2 (longest / prices->slow_limit_s), 0);
}

static void
add_shutter (FfAdviseTable *table, guint step, double seconds)
{
  table->shutters[table->n_shutters++]
      = (FfShutterOption) { .step = step, .seconds = seconds, .log_s = log2 (seconds) };
}

/* The shutters within [from, to]; where there are none, the nearest on each side of its middle. */
static void
fill_shutters (FfAdviseTable *table, const FfCameraRange *camera, double from, double to)
{
  double times[FF_MAX_STEPS];
  double middle = sqrt (from * to);
  guint n = MIN (camera->shutter_slow - camera->shutter_fast + 1, FF_MAX_STEPS);
  guint below = 0;

  for (guint i = 0; i < n; i++)
    {
      times[i] = ff_advise_shutter_s (camera, camera->shutter_fast + i);
      if (times[i] >= from * (1 - SLACK) && times[i] <= to * (1 + SLACK))
        add_shutter (table, camera->shutter_fast + i, times[i]);
      below += times[i] <= middle;
    }
  table->in_span = table->n_shutters > 0;
  if (table->in_span)
    return;
  if (below > 0)
    add_shutter (table, camera->shutter_fast + below - 1, times[below - 1]);
  if (below < n)
    add_shutter (table, camera->shutter_fast + below, times[below]);
}

/* Takes out what is slower than the blur limit; the fastest stays whatever it blurs. */
static void
cut_blurred (FfAdviseTable *table, double limit_s)
{
  while (table->n_shutters > 1
         && table->shutters[table->n_shutters - 1].seconds > limit_s * (1 + SLACK))
    table->n_shutters--;
}

static guint
highest_iso (const FfCameraRange *camera, const FfWant *want, guint lowest)
{
  guint step = camera->iso_high;

  while (want->max_iso > 0 && step > lowest
         && ff_scale_written (FF_SCALE_ISO, step) > want->max_iso * (1 + SLACK))
    step--;
  return step;
}

static double
iso_price (const FfCameraRange *camera, const FfPrices *prices, guint step, double written)
{
  guint base = ff_advise_base_at (camera, step);
  double price = prices->iso_stop * log2 (written / ff_scale_written (FF_SCALE_ISO, base));

  if (camera->n_bases > 0 && base != camera->base_iso[0])
    price += prices->second_base;
  return price;
}

static void
fill_isos (FfAdviseTable *table,
           const FfCameraRange *camera,
           const FfWant *want,
           const FfPrices *prices)
{
  guint lowest = ff_advise_base_at (camera, 0);
  guint highest = highest_iso (camera, want, lowest);

  for (guint step = lowest; step <= MAX (highest, lowest); step++)
    {
      double written = ff_scale_written (FF_SCALE_ISO, step);

      if (camera->iso_whole && (step - ff_advise_base_at (camera, step)) % THIRDS != 0)
        continue;
      table->isos[table->n_isos++]
          = (FfIsoOption) { step, written, ff_exposure_sv (written) - ff_exposure_sv (100),
                            iso_price (camera, prices, step, written) };
    }
}

/* The camera's aperture that is the one to hold, or nearest to it. */
static guint
held_aperture (const FfCameraRange *camera, double f_number)
{
  guint nearest = 0;

  for (guint i = 1; i < camera->n_apertures; i++)
    if (fabs (log2 (camera->apertures[i].exact / f_number))
        < fabs (log2 (camera->apertures[nearest].exact / f_number)))
      nearest = i;
  return nearest;
}

static void
fill_apertures (FfAdviseTable *table,
                const FfCameraRange *camera,
                const FfWant *want,
                const FfPrices *prices)
{
  gboolean held = want->hold_aperture > 0;
  guint first = held ? held_aperture (camera, want->hold_aperture) : 0;
  guint last = held ? first + 1 : MIN (camera->n_apertures, FF_MAX_APERTURES);

  for (guint i = first; i < last; i++)
    {
      double av = ff_exposure_av (camera->apertures[i].exact);
      double beyond = ff_advise_soft_stops (camera, camera->apertures[i].exact);

      table->apertures[table->n_apertures++]
          = (FfApertureOption) { camera->apertures[i], av, prices->aperture_half * beyond / 0.5 };
    }
}

void
ff_advise_table_fill (FfAdviseTable *table,
                      const FfCameraRange *camera,
                      const FfWant *want,
                      const FfPrices *prices)
{
  double from, to;

  table->n_shutters = table->n_isos = table->n_apertures = 0;
  table->log_frames = ff_advise_frames_stops (want);
  ff_advise_span_s (camera, want, &from, &to);
  fill_shutters (table, camera, from, to);
  cut_blurred (table, ff_advise_blur_limit_s (camera, want) / exp2 (table->log_frames));
  for (guint i = 0; i < table->n_shutters; i++)
    table->shutters[i].price = shutter_price (want, prices, table->shutters[i].seconds);
  fill_isos (table, camera, want, prices);
  fill_apertures (table, camera, want, prices);
}
