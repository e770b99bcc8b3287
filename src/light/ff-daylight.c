/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-daylight.h"

#include <math.h>

#include "ff-exposure.h"

#define RADIANS(degrees) ((degrees) * (G_PI / 180.0))

/* Seidelmann (ed.), Explanatory Supplement to the Astronomical Almanac (1992), illumination:
 * log10 E = l0 + l1 x + l2 x^2 + l3 x^3 lx at x = h / 90, from `from` degrees up to the row above;
 * `error` is the stated one, in log10. */
typedef struct {
  double from;
  double l[4];
  double error;
} Range;

static const Range ranges[] = {
  { 20.0, { 3.74, 3.97, -4.07, 1.47 }, 0.02 },
  { 5.0, { 3.05, 13.28, -45.98, 64.33 }, 0.02 },
  { -0.8, { 2.88, 22.26, -207.64, 1034.30 }, 0.02 },
  { -5.0, { 2.88, 21.81, -258.11, -858.36 }, 0.02 },
  { -12.0, { 2.70, 12.17, -431.69, -1899.83 }, 0.01 },
  { -18.0, { 13.84, 262.72, 1447.42, 2797.93 }, 0.01 },
};

#define LOWEST_DEG (-18.0)

/* Below this the IES model's skies are not told apart any more. */
#define LOWEST_IES_DEG 5.0

/* Stops below a clear sky. Thin: factor 2 of USNO Circular 171 (Janiczek and DeYoung 1987), "thin
 * veil"; dark: its factor 10, "dark stratus". */
#define THIN_STOPS 1.0
#define DARK_STOPS 3.3

/* Below this sun altitude the EV is a guide for planning only. */
#define GUIDE_ONLY_DEG (-4.0)

static const Range *
range_of (double sun_altitude_deg)
{
  for (guint i = 0; i < G_N_ELEMENTS (ranges); i++)
    if (sun_altitude_deg >= ranges[i].from)
      return &ranges[i];
  return &ranges[G_N_ELEMENTS (ranges) - 1];
}

double
ff_daylight_clear_lx (double sun_altitude_deg)
{
  double altitude = CLAMP (sun_altitude_deg, LOWEST_DEG, 90.0);
  const double *l = range_of (altitude)->l;
  double x = altitude / 90.0;

  return exp10 (l[0] + x * (l[1] + x * (l[2] + x * l[3])));
}

/* Direct beam weakened along an air mass of 1 / sin h, on the flat. */
static double
ies_direct_lx (double sine, double extinction)
{
  return sine > 0.0 ? 127500.0 * exp (-extinction / sine) * sine : 0.0;
}

double
ff_daylight_ies_lx (double sun_altitude_deg, FfSky sky)
{
  double sine = sin (RADIANS (CLAMP (sun_altitude_deg, 0.0, 90.0)));

  switch (sky)
    {
    case FF_SKY_PARTLY:
      return ies_direct_lx (sine, 0.80) + 300.0 + 45000.0 * sine;
    case FF_SKY_OVERCAST:
    case FF_SKY_DARK:
      return 300.0 + 21000.0 * sine;
    case FF_SKY_CLEAR:
    case FF_SKY_THIN:
    default:
      return ies_direct_lx (sine, 0.21) + 800.0 + 15500.0 * sqrt (sine);
    }
}

/* The share of clear-sky light that a sky lets through. */
static double
share_of_clear (double sun_altitude_deg, FfSky sky)
{
  double altitude = MAX (sun_altitude_deg, LOWEST_IES_DEG);

  switch (sky)
    {
    case FF_SKY_THIN:
      return exp2 (-THIN_STOPS);
    case FF_SKY_DARK:
      return exp2 (-DARK_STOPS);
    case FF_SKY_PARTLY:
    case FF_SKY_OVERCAST:
      return ff_daylight_ies_lx (altitude, sky) / ff_daylight_ies_lx (altitude, FF_SKY_CLEAR);
    case FF_SKY_CLEAR:
    default:
      return 1.0;
    }
}

double
ff_daylight_lx (double sun_altitude_deg, FfSky sky)
{
  return ff_daylight_clear_lx (sun_altitude_deg) * share_of_clear (sun_altitude_deg, sky);
}

/* Low sun strikes an upright, sun-facing scene more squarely than the flat ground on which lux are
 * counted. How much that gains an oblique view with the sun behind is a model of our own, not
 * published; a reading on site overrules it. */
static double
front_gain (double sun_altitude_deg)
{
  static const struct {
    double altitude_deg, stops;
  } knots[] = {
    { 0, 0.0 },  { 1, 0.1 },  { 2, 0.4 },  { 3, 0.8 },  { 5, 1.4 },  { 8, 1.4 },  { 10, 1.3 },
    { 15, 1.2 }, { 20, 1.1 }, { 30, 0.8 }, { 45, 0.5 }, { 60, 0.2 }, { 90, 0.0 },
  };

  for (guint i = 1; i < G_N_ELEMENTS (knots); i++)
    if (sun_altitude_deg <= knots[i].altitude_deg)
      {
        double width = knots[i].altitude_deg - knots[i - 1].altitude_deg;
        double share = (sun_altitude_deg - knots[i - 1].altitude_deg) / width;

        return knots[i - 1].stops + share * (knots[i].stops - knots[i - 1].stops);
      }
  return 0.0;
}

/* Side light costs one stop and back light two (ANSI PH2.7-1986, note to the table of daylight
 * conditions, as reprinted). The fade to none at the horizon is our own: with the sun gone there
 * is no side to be lit from. */
static double
direction_loss (double sun_altitude_deg, double from_sun_deg)
{
  double fade = CLAMP (sun_altitude_deg / 15.0, 0.0, 1.0);

  return fade * (180.0 - from_sun_deg) / 90.0;
}

double
ff_daylight_view_gain (double sun_altitude_deg, FfSky sky, FfView view, double from_sun_deg)
{
  /* Overcast and dark skies throw no shadow: every direction looks the same. */
  gboolean shadows = sky == FF_SKY_CLEAR || sky == FF_SKY_THIN || sky == FF_SKY_PARTLY;

  if (view == FF_VIEW_DOWN || !shadows || sun_altitude_deg <= 0.0)
    return 0.0;
  return front_gain (sun_altitude_deg) - direction_loss (sun_altitude_deg, from_sun_deg);
}

double
ff_lit_from_sun_deg (FfLit lit)
{
  switch (lit)
    {
    case FF_LIT_BACK:
      return 0.0;
    case FF_LIT_SIDE:
      return 90.0;
    case FF_LIT_FRONT:
    default:
      return 180.0;
    }
}

FfLit
ff_lit_of_angle (double from_sun_deg)
{
  if (from_sun_deg >= 135.0)
    return FF_LIT_FRONT;
  return from_sun_deg >= 45.0 ? FF_LIT_SIDE : FF_LIT_BACK;
}

double
ff_bearing_difference_deg (double a_deg, double b_deg)
{
  return fabs (remainder (a_deg - b_deg, 360.0));
}

static double
spread_stops (double sun_altitude_deg, FfSky sky)
{
  double altitude = CLAMP (sun_altitude_deg, LOWEST_DEG, 90.0);
  double model = altitude >= 8.0 ? 0.5 : 1.0;
  double stated = range_of (altitude)->error * log2 (10.0);

  if (sky == FF_SKY_PARTLY)
    model += 0.5;
  return hypot (model, stated);
}

void
ff_daylight (const FfDaylightQuery *query, FfDaylight *ret_daylight)
{
  double altitude = query->sun_altitude_deg;
  double lux = ff_daylight_lx (altitude, query->sky);
  double gain = ff_daylight_view_gain (altitude, query->sky, query->view, query->from_sun_deg);
  double ev100 = ff_exposure_ev100_of_lux (lux) + gain + query->offset_stops;
  double spread = spread_stops (altitude, query->sky);

  *ret_daylight = (FfDaylight) {
    .illuminance_lx = lux,
    .ev100 = ev100,
    .low_ev100 = ev100 - spread,
    .high_ev100 = ev100 + spread,
    .guide_only = altitude < GUIDE_ONLY_DEG,
  };
}
