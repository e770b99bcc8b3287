/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What each compromise costs, as one visible table. The defaults behaved sensibly on worked days;
 * they are judgement (common practice, no source) and the crew's to change. */
#pragma once

#include <glib.h>

#include "ff-names.h"

#define FF_REACH_STOPS (1.0 / 3.0) /* an error up to this counts as exposed right */

typedef struct {
  double close_stop;     /* closing the shutter, per stop up to close_free */
  double close_free;     /* stops of closing that are nearly free */
  double close_square;   /* beyond it: close_square x2 + close_slope x on top */
  double close_slope;
  double open_free;      /* stops of opening (to 216 degrees) that cost nothing; beyond them
                            opening costs what closing does */
  double iso_stop;       /* per stop of ISO above the nearest base at or below it */
  double iso_over_stop;  /* per stop beyond the shot's own ISO limit */
  double second_base;    /* using a base ISO that is not the preferred one */
  double slow_stop;      /* stills: per stop that the longest frame is slower than slow_limit_s */
  double slow_limit_s;   /* 1/60 s for a hovering aircraft */
  double aperture_half;  /* per half stop beyond the sharp range (diffraction) */
  double stacked;        /* per filter in a stack beyond the first */
  double variable_top;   /* per take: a variable filter in the last stop of its range, where a cross
                            shows in the sky */
  double still_filter;   /* a filter before a still or a bracket, which need none */
  double error_square;   /* left over error: error_square e2, linear beyond one stop */
  double unreached;      /* on top, once, where the error is beyond a third */
  double unreached_stop; /* on top, per stop of error beyond a third */
  double not_flown;      /* a shot not flown, where it carries no weight of its own */
  double must_fly;       /* a shot that must fly, or is locked to a line, not flown */
  double new_battery;
  double relaunch;       /* waiting relaunch on the same battery */
  double filter_swap;    /* at a battery landing */
  double filter_landing; /* landing for a filter alone */
  double match_step;     /* two filters within one must-match group */
  double match_set;      /* two filter sets within it */
  double late_minute;    /* per minute after a shot's window opens */
  double late_fixed;     /* the same for a shot whose time somebody else keeps */
  double air_minute;     /* per minute of waiting in the air between takes */
} FfPrices;

extern const FfPrices ff_prices_default;

/* One row of the table that the crew sees and edits; every field of FfPrices has one. */
typedef struct {
  const char *token; /* as files and the command line write it */
  const char *text;  /* marked for translation */
  gsize offset;      /* of the double in FfPrices */
  double lowest, highest;
} FfPriceRow;

guint ff_price_rows (const FfPriceRow **ret_rows);
const char *ff_price_row_text (const FfPriceRow *row); /* translated */
double ff_price_row_get (const FfPriceRow *row, const FfPrices *prices);

/* Changes one price, by its token. Error: FF_ERROR_INPUT, with what is accepted; prices stay. */
gboolean ff_price_set (FfPrices *prices, const char *token, double value, GError **error);

/* Whether every price lies within its row. Error: FF_ERROR_INPUT, naming the first that doesn't. */
gboolean ff_prices_check (const FfPrices *prices, GError **error);

/* The parts a cost is made of, and their tokens for the console. */
typedef enum {
  FF_PART_SHUTTER,
  FF_PART_ISO,
  FF_PART_APERTURE,
  FF_PART_STACK,
  FF_PART_ERROR,
  FF_PART_NOT_FLOWN,
  FF_PART_BATTERY,
  FF_PART_RELAUNCH,
  FF_PART_SWAP,
  FF_PART_FILTER_LANDING,
  FF_PART_MATCH,
  FF_PART_LATE,
  FF_PART_AIR,
  FF_N_PARTS,
} FfPart;

extern const FfNames ff_names_part;

double ff_price_sum (const double parts[FF_N_PARTS]);

/* Price of a shutter `closed_stops` shorter (negative: longer) than the wanted one. Zero where
 * it is the wanted one, and never falls on the way from there to either side. */
double ff_price_shutter (const FfPrices *prices, double closed_stops);

/* Price of an error, positive too bright; even in sign. */
double ff_price_error (const FfPrices *prices, double error_stops);
