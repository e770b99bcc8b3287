/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-balance.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MANUAL     N_ ("American Cinematographer Manual")
#define WORKSHOP   N_ ("American Cinematographer, “Cinema Workshop: Photographic Daylight”")
#define DICTIONARY N_ ("table of an art dictionary")
#define BROADCAST  N_ ("table of a broadcast guideline")
#define TWO_TABLES N_ ("tables of two broadcast manuals")
#define MEASURED   N_ ("Hernández-Andrés et al., JOSA A 18(6), 2001: 2600 spectra, all skies")
#define CLEAR_SKY  N_ ("Hernández-Andrés et al., JOSA A 18(2), 2001: narrow field, clear sky")

/* They do not agree with each other, and none is a law of nature: a guide for setting a camera
 * before the grey card is out. */
static const FfDaylightRange ranges[] = {
  { N_ ("photographic daylight, nominal"), 5500, 5500, MANUAL },
  { N_ ("daylight as measured, typical"), 5700, 5700, MEASURED },
  { N_ ("daylight, its whole range"), 5000, INFINITY, WORKSHOP },
  { N_ ("sunrise or sunset"), 2000, 3000, BROADCAST },
  { N_ ("an hour after sunrise or before sunset"), 3500, 4000, TWO_TABLES },
  { N_ ("morning or afternoon sun"), 5000, 5500, DICTIONARY },
  { N_ ("direct sunlight"), 5000, 5500, WORKSHOP },
  { N_ ("noon sun"), 5000, 5600, BROADCAST },
  { N_ ("average daylight"), 5500, 6000, DICTIONARY },
  { N_ ("hazy sun"), 5800, 5800, DICTIONARY },
  { N_ ("overcast"), 6700, 7000, DICTIONARY },
  { N_ ("shade under a hazy sky"), 7500, 8400, BROADCAST },
  { N_ ("shade under a blue sky"), 12000, 20000, BROADCAST },
  { N_ ("clear blue sky without sun"), 12000, 15000, WORKSHOP },
  { N_ ("patches of clear sky"), 3800, INFINITY, CLEAR_SKY },
};

double
ff_balance_mired (double kelvin)
{
  return 1e6 / kelvin;
}

double
ff_balance_shift_mired (double from_kelvin, double to_kelvin)
{
  return ff_balance_mired (to_kelvin) - ff_balance_mired (from_kelvin);
}

double
ff_balance_shifted_kelvin (double kelvin, double shift_mired)
{
  const double mired = ff_balance_mired (kelvin) + shift_mired;

  return mired > 0.0 ? 1e6 / mired : INFINITY;
}

gboolean
ff_balance_daylight_xy (double kelvin, double *ret_x, double *ret_y)
{
  const double t = 1e3 / kelvin;
  double x;

  if (!(kelvin >= 4000.0 && kelvin <= 25000.0))
    return FALSE;
  if (kelvin <= 7000.0)
    x = ((-4.6070 * t + 2.9678) * t + 0.09911) * t + 0.244063;
  else
    x = ((-2.0064 * t + 1.9018) * t + 0.24748) * t + 0.237040;
  *ret_x = x;
  *ret_y = (-3.000 * x + 2.870) * x - 0.275;
  return TRUE;
}

guint
ff_daylight_range_count (void)
{
  return G_N_ELEMENTS (ranges);
}

const FfDaylightRange *
ff_daylight_range (guint index)
{
  g_return_val_if_fail (index < G_N_ELEMENTS (ranges), NULL);
  return &ranges[index];
}
