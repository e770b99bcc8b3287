/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rows of the price table: one place for the name and the span of every price. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-price.h"

#define ROW(field, text, lowest, highest)                                                          \
  {                                                                                                \
    #field, text, G_STRUCT_OFFSET (FfPrices, field), lowest, highest                               \
  }

static const FfPriceRow rows[] = {
  ROW (close_stop, N_ ("shutter closed, per stop"), 0, 100),
  ROW (close_free, N_ ("stops of closing that are nearly free"), 0, 5),
  ROW (close_square, N_ ("shutter closed further, per stop squared"), 0, 100),
  ROW (close_slope, N_ ("shutter closed further, per stop"), 0, 100),
  ROW (open_free, N_ ("stops of opening that are free"), 0, 5),
  /* Translators: ISO is the sensitivity setting of a camera. */
  ROW (iso_stop, N_ ("ISO raised, per stop"), 0, 100),
  ROW (iso_over_stop, N_ ("ISO beyond the shot's limit, per stop"), 0, 1000),
  ROW (second_base, N_ ("a base ISO that is not the preferred one"), 0, 100),
  ROW (slow_stop, N_ ("frame of a still longer than is steady, per stop"), 0, 100),
  ROW (slow_limit_s, N_ ("longest steady frame of a still, in seconds"), 0.0001, 10),
  ROW (aperture_half, N_ ("aperture beyond the sharp range, per half stop"), 0, 100),
  ROW (stacked, N_ ("each filter of a stack beyond the first"), 0, 100),
  ROW (variable_top, N_ ("a variable filter near its strongest, per take"), 0, 100),
  ROW (still_filter, N_ ("a filter before a still"), 0, 100),
  ROW (error_square, N_ ("exposure error, per stop squared"), 0, 100),
  ROW (unreached, N_ ("exposure error beyond a third of a stop"), 0, 1000),
  ROW (unreached_stop, N_ ("exposure error beyond a third of a stop, per stop"), 0, 1000),
  ROW (not_flown, N_ ("a shot not flown"), 0.1, 9999),
  ROW (must_fly, N_ ("a shot that must fly, not flown"), 1, 1000000),
  ROW (new_battery, N_ ("a battery"), 0, 1000),
  ROW (relaunch, N_ ("a relaunch on the same battery"), 0, 1000),
  ROW (filter_swap, N_ ("a filter swap at a battery landing"), 0, 1000),
  ROW (filter_landing, N_ ("a landing for a filter alone"), 0, 1000),
  /* Translators: shots that will be cut together, so should be filmed behind one filter. */
  ROW (match_step, N_ ("shots that must match behind two filters"), 0, 1000),
  ROW (match_set, N_ ("shots that must match behind two sets of filters"), 0, 1000),
  ROW (late_minute, N_ ("a minute after a window opens"), 0, 100),
  ROW (late_fixed, N_ ("a minute after a time that somebody else keeps"), 0, 100),
  ROW (air_minute, N_ ("a minute of waiting in the air"), 0, 100),
};

guint
ff_price_rows (const FfPriceRow **ret_rows)
{
  *ret_rows = rows;
  return G_N_ELEMENTS (rows);
}

const char *
ff_price_row_text (const FfPriceRow *row)
{
  return _ (row->text);
}

double
ff_price_row_get (const FfPriceRow *row, const FfPrices *prices)
{
  return G_STRUCT_MEMBER (double, prices, row->offset);
}

static gboolean
check_value (const FfPriceRow *row, double value, GError **error)
{
  if (value >= row->lowest && value <= row->highest)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               /* Translators: the name of a price, its value, then the smallest and the largest
                  that are accepted. */
               _ ("price “%s” is %g; accepted: %g to %g"), _ (row->text), value, row->lowest,
               row->highest);
  return FALSE;
}

gboolean
ff_price_set (FfPrices *prices, const char *token, double value, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_ascii_strcasecmp (rows[i].token, token) == 0)
      {
        if (!check_value (&rows[i], value, error))
          return FALSE;
        G_STRUCT_MEMBER (double, prices, rows[i].offset) = value;
        return TRUE;
      }
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("no price is called “%s”; the price table names them"), token);
  return FALSE;
}

gboolean
ff_prices_check (const FfPrices *prices, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (!check_value (&rows[i], ff_price_row_get (&rows[i], prices), error))
      return FALSE;
  return TRUE;
}
