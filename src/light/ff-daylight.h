/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Daylight: from the sun's geometric altitude and the sky to lux on the ground and to the EV that
 * a camera meets, each with its honest spread. */
#pragma once

#include <glib.h>

#include "ff-names.h"

/* Horizontal illuminance under a clear sky, lx: the polynomials of the Explanatory Supplement to
 * the Astronomical Almanac (1992) at geometric altitude, held constant below -18 degrees. */
double ff_daylight_clear_lx (double sun_altitude_deg);

/* The same under another sky: thin one stop less; partly and overcast by the IES (1984) model's
 * ratio to its own clear sky, the ratio held below 5 degrees; dark 3.3 stops less. */
double ff_daylight_lx (double sun_altitude_deg, FfSky sky);

/* Horizontal illuminance by the IES model at mean distance of the sun, lx, for clear, partly and
 * overcast (thin counts as clear, dark as overcast): IES Calculation Procedures Committee,
 * "Recommended Practice for the Calculation of Daylight Availability", J. IES 13(4), 1984, with
 * E_xt 127.5 klx and air mass 1 / sin h. For sun altitudes from 0 up; lower ones count as 0. Only
 * its ratios are used here: near the horizon it runs to twice the polynomials above. */
double ff_daylight_ies_lx (double sun_altitude_deg, FfSky sky);

/* What a view gains or loses against log2 (E / 2.5), in stops. from_sun_deg is the angle between
 * the camera's bearing and the sun's: 180 with the sun behind the camera, 90 side, 0 back. Nothing
 * straight down, under overcast or dark cloud, or with the sun below the horizon. */
double ff_daylight_view_gain (double sun_altitude_deg, FfSky sky, FfView view, double from_sun_deg);

/* 180, 90 or 0 degrees; and the word for an angle (halves at 135 and 45). */
double ff_lit_from_sun_deg (FfLit lit);
FfLit ff_lit_of_angle (double from_sun_deg);

/* The angle between two bearings, 0 to 180. */
double ff_bearing_difference_deg (double a_deg, double b_deg);

typedef struct {
  double sun_altitude_deg; /* geometric */
  FfSky sky;
  FfView view;
  double from_sun_deg;     /* ignored straight down */
  double offset_stops;     /* subject and learned offset together */
} FfDaylightQuery;

typedef struct {
  double illuminance_lx; /* horizontal, this sky, without the offset */
  double ev100;
  double low_ev100, high_ev100;
  gboolean guide_only;   /* sun below -4 degrees: take a reading */
} FfDaylight;

/* Spread: 0.5 stop from 8 degrees of sun up, 1 below, half a stop more under a partly cloudy sky,
 * joined in quadrature with the polynomial's stated error. */
void ff_daylight (const FfDaylightQuery *query, FfDaylight *ret_daylight);
