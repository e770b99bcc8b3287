/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-meter.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-exposure.h"
#include "ff-number.h"

#define PROFILE_STOPS (1.0 / 3.0)
#define SKEW_SHARE    0.25

/* Fewer lost pixels are glints and deep corners, of which no one speaks (common practice, no
 * source). */
#define LOST_SHARE 0.005

/* A picture of which so much is lost at one end says little about its middle. */
#define HARDLY_A_READING 0.5

static double
spread_of (const FfTones *tones)
{
  const double skew = SKEW_SHARE * log2 (tones->mean / tones->median);
  const double lost = log2 ((tones->mean + tones->clipped_high) / tones->mean);

  return sqrt (PROFILE_STOPS * PROFILE_STOPS + skew * skew + lost * lost);
}

void
ff_meter_picture (const FfTones *tones,
                  const FfMeterSettings *settings,
                  FfMeterReading *ret_reading)
{
  *ret_reading = (FfMeterReading){
    .ev100 = ff_exposure_ev100 (settings->f_number, settings->seconds, settings->iso)
             + settings->nd_stops + tones->middle_stops,
    .error_stops = tones->middle_stops - settings->bias_stops,
    .spread_stops = spread_of (tones),
  };
}

/* Cameras are set in thirds, so that is how people speak of an error. */
static int
thirds_of (double stops)
{
  return (int) lround (CLAMP (stops, -30.0, 30.0) * 3.0);
}

static char *
say_amount (int thirds)
{
  return ff_number_format (abs (thirds) / 3.0, 1);
}

static char *
say_error (int thirds)
{
  const gboolean under = thirds < 0;
  g_autofree char *amount = say_amount (thirds);

  switch (abs (thirds))
    {
    case 0:
      return g_strdup (_ ("The middle is right"));
    case 1:
      return g_strdup (under ? _ ("A third of a stop under") : _ ("A third of a stop over"));
    case 2:
      return g_strdup (under ? _ ("Two thirds of a stop under") : _ ("Two thirds of a stop over"));
    case 3:
      return g_strdup (under ? _ ("One stop under") : _ ("One stop over"));
    default:
      return g_strdup_printf (under ? _ ("%s stops under") : _ ("%s stops over"), amount);
    }
}

static char *
say_lost (const FfTones *tones)
{
  const gboolean low = tones->clipped_low >= LOST_SHARE;
  const gboolean high = tones->clipped_high >= LOST_SHARE;
  g_autofree char *low_text = ff_number_format (100 * tones->clipped_low, 0);
  g_autofree char *high_text = ff_number_format (100 * tones->clipped_high, 0);

  if (low && high)
    return g_strdup_printf (_ (", %s %% lost in the shadows and %s %% in the highlights"), low_text,
                            high_text);
  if (low)
    return g_strdup_printf (_ (", %s %% lost in the shadows"), low_text);
  if (high)
    return g_strdup_printf (_ (", %s %% lost in the highlights"), high_text);
  return g_strdup ("");
}

/* With the middle right, only what is lost at an end is left to talk about. */
static const char *
remedy_at_ends (gboolean low, gboolean high)
{
  if (low && high)
    return _ ("bracket, one picture can't hold both ends");
  if (high)
    return _ ("bracket, or close down if the highlights matter");
  return low ? _ ("bracket, or open up if the shadows matter") : _ ("keep these settings");
}

static char *
say_remedy (const FfTones *tones, int thirds)
{
  const gboolean low = tones->clipped_low >= LOST_SHARE;
  const gboolean high = tones->clipped_high >= LOST_SHARE;
  g_autofree char *amount = say_amount (thirds);
  const gboolean plural = abs (thirds) > 3;

  if (thirds == 0)
    return g_strdup (remedy_at_ends (low, high));
  if (thirds < 0 && high)
    return g_strdup (_ ("bracket, opening up would lose more of the highlights"));
  if (thirds > 0 && low)
    return g_strdup (_ ("bracket, closing down would lose more of the shadows"));
  if (thirds < 0)
    return g_strdup_printf (plural ? _ ("open up %s stops") : _ ("open up %s stop"), amount);
  return g_strdup_printf (plural ? _ ("close down %s stops") : _ ("close down %s stop"), amount);
}

char *
ff_meter_advice (const FfTones *tones, const FfMeterReading *reading)
{
  const int thirds = thirds_of (reading->error_stops);
  g_autofree char *error = say_error (thirds);
  g_autofree char *lost = say_lost (tones);
  g_autofree char *remedy = say_remedy (tones, thirds);

  if (tones->clipped_low >= HARDLY_A_READING)
    return g_strdup (_ ("Most of the picture is lost in the shadows: open up and take it again."));
  if (tones->clipped_high >= HARDLY_A_READING)
    return g_strdup (
        _ ("Most of the picture is lost in the highlights: close down and take it again."));
  /* Translators: how far off, what is lost at the ends, what to do. */
  return g_strdup_printf (_ ("%s%s: %s."), error, lost, remedy);
}
