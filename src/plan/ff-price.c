/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-price.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const FfPrices ff_prices_default = {
  .close_stop = 0.15,
  .close_free = 0.33,
  .close_square = 3.0,
  .close_slope = 1.0,
  .open_free = 0.26304, /* log2 (216 / 180), rounded up so that 216 degrees is free to the end */
  .iso_stop = 0.4,
  .iso_over_stop = 8.0,
  .second_base = 0.2,
  .slow_stop = 0.5,
  .slow_limit_s = 1.0 / 60.0,
  .aperture_half = 1.0,
  .stacked = 1.0,
  .variable_top = 1.0,
  .still_filter = 0.5,
  .error_square = 2.0,
  .unreached = 12.0,
  .unreached_stop = 100.0,
  .not_flown = 120.0,
  .must_fly = 10000.0,
  .new_battery = 6.0,
  .relaunch = 3.0,
  .filter_swap = 1.0,
  .filter_landing = 14.0,
  .match_step = 5.0,
  .match_set = 8.0,
  .late_minute = 0.02,
  .late_fixed = 1.0,
  .air_minute = 0.2,
};

static const FfName part_names[] = {
  [FF_PART_SHUTTER] = { "shutter", N_ ("shutter") },
  /* Translators: the sensitivity setting of a camera. */
  [FF_PART_ISO] = { "iso", N_ ("ISO") },
  [FF_PART_APERTURE] = { "aperture", N_ ("aperture") },
  /* Translators: filters in front of the lens beyond what the shot asks for. */
  [FF_PART_STACK] = { "stack", N_ ("extra filters") },
  /* Translators: exposure left over, too bright or too dark. */
  [FF_PART_ERROR] = { "error", N_ ("exposure error") },
  [FF_PART_NOT_FLOWN] = { "not_flown", N_ ("shots not flown") },
  [FF_PART_BATTERY] = { "battery", N_ ("batteries") },
  /* Translators: take-off again on the battery that is in the aircraft. */
  [FF_PART_RELAUNCH] = { "relaunch", N_ ("relaunches") },
  [FF_PART_SWAP] = { "swap", N_ ("filter swaps") },
  [FF_PART_FILTER_LANDING] = { "filter_landing", N_ ("landings for a filter alone") },
  /* Translators: shots that will be cut together, so should be filmed behind one filter. */
  [FF_PART_MATCH] = { "match", N_ ("shots that must match") },
  [FF_PART_LATE] = { "late", N_ ("late in the window") },
  [FF_PART_AIR] = { "air", N_ ("waiting in the air") },
};
const FfNames ff_names_part = { "part of a cost", part_names, G_N_ELEMENTS (part_names) };

double
ff_price_sum (const double parts[FF_N_PARTS])
{
  double sum = 0;

  for (guint i = 0; i < FF_N_PARTS; i++)
    sum += parts[i];
  return sum;
}

double
ff_price_shutter (const FfPrices *prices, double closed_stops)
{
  double away = closed_stops >= 0 ? closed_stops : fmax (-closed_stops - prices->open_free, 0);
  double beyond = fmax (away - prices->close_free, 0);

  return prices->close_stop * away
         + (prices->close_square * beyond + prices->close_slope) * beyond;
}

/* The slack keeps an error of exactly a third on the good side, whatever the arithmetic left. */
double
ff_price_error (const FfPrices *prices, double error_stops)
{
  double size = fabs (error_stops);
  double price = prices->error_square * size * fmin (size, 1);

  if (size > FF_REACH_STOPS + 1e-9)
    price += prices->unreached + prices->unreached_stop * (size - FF_REACH_STOPS);
  return price;
}
