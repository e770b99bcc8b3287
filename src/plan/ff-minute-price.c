/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-minute-price.h"

#include <math.h>
#include <string.h>

#include "ff-advise-table.h"
#include "ff-exposure.h"
#include "ff-scale.h"

/* The largest ISO that the shot may use, as a number. */
static double
highest_iso (const FfCameraRange *camera, const FfWant *want)
{
  double camera_high = ff_scale_written (FF_SCALE_ISO, camera->iso_high);

  return want->max_iso > 0 ? MIN (want->max_iso, camera_high) : camera_high;
}

static double
base_iso (const FfCameraRange *camera)
{
  return ff_scale_written (FF_SCALE_ISO, camera->base_iso[0]);
}

/* Too dark by `stops`: ISO pays up to its limit, at a dear price beyond it. */
static double
price_of_iso (const FfPrices *prices, double stops, double room)
{
  double paid = MIN (stops, room);

  return prices->iso_stop * paid + prices->iso_over_stop * (stops - paid);
}

/* Shots that want a shutter time. `residual` is how much too bright the light is behind the filter
 * at the wanted shutter and base ISO. */
static void
price_motion (const FfPrices *prices,
              const FfCameraRange *camera,
              const FfWant *want,
              double narrowest_angle_deg,
              double residual,
              double parts[FF_N_PARTS])
{
  double room_close = 3.0;
  double closed;

  if (residual < 0)
    {
      double room_iso = log2 (highest_iso (camera, want) / base_iso (camera));

      parts[FF_PART_ISO] += price_of_iso (prices, MAX (-residual - prices->open_free, 0), room_iso);
      return;
    }
  if (want->intent != FF_INTENT_TIMELAPSE && narrowest_angle_deg > 0)
    room_close = log2 (want->angle_deg / narrowest_angle_deg);
  closed = MIN (residual, MAX (room_close, 0));
  parts[FF_PART_SHUTTER] += ff_price_shutter (prices, closed);
  parts[FF_PART_ERROR] += ff_price_error (prices, residual - closed);
}

/* Stills take any shutter; the longest frame of a bracket must not be slower than is steady. */
static void
price_stills (const FfPrices *prices,
              const FfCameraRange *camera,
              const FfWant *want,
              double f_number,
              double ev100,
              double parts[FF_N_PARTS])
{
  gboolean is_bracket = want->intent == FF_INTENT_BRACKET;
  double half_span = is_bracket ? want->step_stops * (want->frames - 1) / 2 : 0;
  double middle = ff_exposure_seconds_for (ev100, f_number, base_iso (camera));
  double slow = log2 (middle / prices->slow_limit_s) + half_span;
  double fastest = ff_scale_written (FF_SCALE_SHUTTER, camera->shutter_fast);
  double too_fast = log2 (fastest / middle) + half_span;
  double raised = 0;

  parts[FF_PART_ERROR] += ff_price_error (prices, MAX (too_fast, 0));
  if (slow <= 0)
    return;
  if (prices->iso_stop < prices->slow_stop)
    raised = MIN (slow, log2 (highest_iso (camera, want) / base_iso (camera)));
  parts[FF_PART_ISO] += prices->iso_stop * raised;
  parts[FF_PART_SHUTTER] += prices->slow_stop * (slow - raised);
}

/* Price per half stop outside the sharp apertures. */
static double
price_of_aperture (const FfPrices *prices, const FfCameraRange *camera, double f_number)
{
  return prices->aperture_half * 2 * ff_advise_soft_stops (camera, f_number);
}

double
ff_minute_price (const FfPrices *prices,
                 const FfCameraRange *camera,
                 const FfWant *want,
                 double narrowest_angle_deg,
                 double ev100,
                 double filter_stops,
                 double *add_to_parts)
{
  double best[FF_N_PARTS] = { 0 };
  double best_price = INFINITY;

  for (guint i = 0; i < camera->n_apertures; i++)
    {
      double f_number = camera->apertures[i].exact;
      double parts[FF_N_PARTS] = { 0 };
      double price;

      if (want->hold_aperture > 0 && fabs (f_number - want->hold_aperture) > 1e-9)
        continue;
      parts[FF_PART_APERTURE] = price_of_aperture (prices, camera, f_number);
      if (want->intent == FF_INTENT_STILL || want->intent == FF_INTENT_BRACKET)
        price_stills (prices, camera, want, f_number, ev100 - filter_stops, parts);
      else
        price_motion (prices, camera, want, narrowest_angle_deg,
                      ff_advise_need (ev100, camera, want, f_number) - filter_stops, parts);
      price = ff_price_sum (parts);
      if (price < best_price)
        {
          best_price = price;
          memcpy (best, parts, sizeof best);
        }
    }
  for (guint i = 0; add_to_parts != NULL && i < FF_N_PARTS; i++)
    add_to_parts[i] += best[i];
  return best_price;
}
