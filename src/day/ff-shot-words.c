/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shot-advice-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-filter.h"
#include "ff-number.h"
#include "ff-scale.h"

/* The upper rim of the sun touches a flat horizon here, refraction counted. */
#define SUN_DOWN_DEG (-0.8333)
#define SAME_STOPS 0.05 /* values closer than this read the same to a tenth */

static char *
clock_of (const FfShotQuestion *question, gint64 at)
{
  return ff_instant_clock ((double) at, question->day->zone);
}

/* A signed value to a tenth, always with its tenth, so that two of them compare at a glance; with a
 * true minus. */
static char *
signed_tenth (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (buffer, sizeof buffer, "%.1f", fabs (value));
  return g_strdup_printf ("%s%s", value < -SAME_STOPS ? "−" : "", buffer);
}

/* The need and how it changes over the window */

static char *
words_of_steady (double need)
{
  g_autofree char *stops = ff_stops_format (fabs (need));

  if (need < -SAME_STOPS)
    /* Translators: the need in stops is below 0: it is too dark without a filter already. */
    return g_strdup_printf (_ ("%s short of light all through its window, without a filter."),
                            stops);
  return g_strdup_printf (_ ("Needs %s all through its window."), stops);
}

char *
ff_shot_words_need (const FfShotQuestion *question, const FfShotAdvice *advice)
{
  double start = advice->start.need_stops, end = advice->end.need_stops;
  g_autofree char *from = clock_of (question, advice->start.at);
  g_autofree char *to = clock_of (question, advice->end.at);
  g_autofree char *first = signed_tenth (start);
  g_autofree char *last = signed_tenth (end);

  if (isnan (start))
    return question->shot->intent == FF_INTENT_STILL || question->shot->intent == FF_INTENT_BRACKET
               ? g_strdup (_ ("Stills take any shutter: no filter is needed."))
               : g_strdup ("");
  if (g_str_equal (first, last))
    return words_of_steady (start);
  if (start < 0)
    /* Translators: need in stops below 0, with clock times: it is darker than the settings want. */
    return g_strdup_printf (_ ("Too dark without a filter already: %s stops at %s, %s at %s."),
                            first, from, last, to);
  if (end < 0)
    return g_strdup_printf (_ ("Needs %s stops at %s, %s at %s: then ISO rises without a filter."),
                            first, from, last, to);
  /* Translators: need in stops and clock, at the start and at the end of the window. */
  return g_strdup_printf (_ ("Needs %s stops at %s, %s at %s."), first, from, last, to);
}

/* The sun */

/* Where the sun stands, seen along the camera: in words that need no compass. */
static char *
side_of (const FfShot *shot, double azimuth_deg)
{
  double right = fmod (azimuth_deg - shot->bearing_deg + 720, 360);

  switch (ff_lit_of_angle (ff_bearing_difference_deg (shot->bearing_deg, azimuth_deg)))
    {
    case FF_LIT_FRONT:
      return g_strdup (_ ("Front light: the sun is behind the camera"));
    case FF_LIT_BACK:
      return g_strdup (_ ("Back light: the sun stands before the camera"));
    case FF_LIT_SIDE:
    default:
      return g_strdup (right < 180 ? _ ("Side light: the sun is on the right")
                                   : _ ("Side light: the sun is on the left"));
    }
}

static char *
words_of_side (const FfShot *shot, double azimuth_deg)
{
  if (shot->view == FF_VIEW_DOWN)
    return g_strdup (_ ("Straight down: the same from every side. The sun"));
  if (!isfinite (shot->bearing_deg))
    return g_strdup (_ ("All round: planned for the brightest side. The sun"));
  return side_of (shot, azimuth_deg);
}

char *
ff_shot_words_sun (const FfShotQuestion *question, const FfShotMoment *moment)
{
  g_autofree char *side = words_of_side (question->shot, moment->sun_azimuth_deg);

  if (moment->sun_altitude_deg < SUN_DOWN_DEG)
    /* Translators: height below the horizon and bearing of the sun, in whole degrees. */
    return g_strdup_printf (_ ("The sun is down, %.0f° below the horizon at %.0f°: soft light from "
                               "the sky."),
                            -moment->sun_altitude_deg, moment->sun_azimuth_deg);
  if (question->shot->view == FF_VIEW_DOWN || !isfinite (question->shot->bearing_deg))
    /* Translators: a sentence that ends with "The sun"; then its bearing and its height. */
    return g_strdup_printf (_ ("%s is at %.0f°, %.0f° high."), side, moment->sun_azimuth_deg,
                            MAX (moment->sun_altitude_deg, 0.0));
  /* Translators: where the sun is seen from the camera; then its bearing and its height. */
  return g_strdup_printf (_ ("%s, at %.0f°, %.0f° high."), side, moment->sun_azimuth_deg,
                          MAX (moment->sun_altitude_deg, 0.0));
}

/* The light */

static char *
words_of_ev (const FfShotQuestion *question, const FfShotMoment *moment)
{
  g_autofree char *ev = signed_tenth (moment->ev100);
  g_autofree char *clock = clock_of (question, moment->at);
  g_autofree char *spread
      = ff_number_format ((moment->high_ev100 - moment->low_ev100) / 2, 1);

  /* Translators: light as an exposure value at ISO 100, its spread, a clock time. */
  return g_strdup_printf (_ ("EV %s ± %s at %s"), ev, spread, clock);
}

char *
ff_shot_words_light (const FfShotQuestion *question, const FfShotAdvice *advice)
{
  g_autofree char *start = words_of_ev (question, &advice->start);
  g_autofree char *end = signed_tenth (advice->end.ev100);
  g_autofree char *to = clock_of (question, advice->end.at);
  gboolean guide = advice->start.guide_only || advice->end.guide_only;

  /* Translators: the light at the start of the window, then a value and its clock time. */
  return g_strdup_printf (guide ? _ ("%s, %s at %s. So late this is a guide only: take a reading.")
                                : _ ("%s, %s at %s."),
                          start, end, to);
}

/* The choice */

static char *
words_of_settings (const FfSettings *settings)
{
  g_autofree char *aperture = ff_number_format (settings->aperture.written, 1);
  const char *shutter = ff_scale_label (FF_SCALE_SHUTTER, settings->shutter);
  const char *iso = ff_scale_label (FF_SCALE_ISO, settings->iso);

  if (isfinite (settings->shutter_angle_deg))
    /* Translators: aperture, shutter time, shutter angle in degrees, ISO. */
    return g_strdup_printf (_ ("f/%s, %s (%.0f°), ISO %s"), aperture, shutter,
                            settings->shutter_angle_deg, iso);
  /* Translators: aperture, shutter time in seconds, ISO. */
  return g_strdup_printf (_ ("f/%s, %s s, ISO %s"), aperture, shutter, iso);
}

static char *
words_of_error (double error_stops)
{
  g_autofree char *stops = ff_stops_format (fabs (error_stops));

  return error_stops > 0
             /* Translators: exposure that no filter at hand puts right; %s is "2.3 stops". */
             ? g_strdup_printf (_ ("Too bright by %s for every filter at hand. Nearest: "), stops)
             : g_strdup_printf (_ ("Too dark by %s for this camera. Nearest: "), stops);
}

char *
ff_shot_words_best (const FfChoice *choice)
{
  g_autofree char *settings = words_of_settings (&choice->settings);
  g_autofree char *glass = choice->n_filters > 0 ? ff_stops_format (choice->filter_stops)
                                                 : g_strdup (_ ("no filter"));
  g_autofree char *error = fabs (choice->settings.error_stops) > FF_REACH_STOPS + 1e-9
                               ? words_of_error (choice->settings.error_stops)
                               : g_strdup ("");
  g_autofree char *whole = NULL;
  g_autofree char *first = NULL;

  /* Translators: filter ("5 stops"), then settings ("f/2.8, 1/50 (180°), ISO 100"). */
  whole = g_strdup_printf (_ ("%s, %s."), glass, settings);
  first = g_utf8_strup (whole, 1);
  return error[0] != '\0' ? g_strconcat (error, whole, NULL)
                          : g_strconcat (first, g_utf8_next_char (whole), NULL);
}

char *
ff_shot_words_glass (const FfShotQuestion *question, const FfChoice *choice)
{
  g_autofree char *factor = ff_number_format (ff_filter_factor (choice->filter_stops), 0);
  g_autofree char *density = ff_number_format (ff_filter_density (choice->filter_stops), 1);
  const FfItem *item;
  const char *mark;

  if (choice->n_filters == 0)
    return g_strdup ("");
  item = g_ptr_array_index (question->items, choice->filters[0]);
  mark = item->engraving[0] != '\0' ? item->engraving : item->label;
  /* Translators: a neutral-density filter: factor, optical density, what is engraved on it. */
  return g_strdup_printf (_ ("factor %s · density %s · %s"), factor, density, mark);
}

char *
ff_shot_words_lasts (const FfShotQuestion *question, gint64 until, double next_stops)
{
  g_autofree char *clock = clock_of (question, until);
  g_autofree char *stops = NULL;

  if (until == 0)
    return g_strdup (question->at > question->from ? _ ("Good to the end of its window.")
                                                   : _ ("Good for its whole window."));
  stops = next_stops > SAME_STOPS ? ff_stops_format (next_stops) : g_strdup (_ ("no filter"));
  /* Translators: a clock time from which on another filter is better, and which ("4 stops"). */
  return g_strdup_printf (_ ("Off at %s or later, %s would be better."), clock, stops);
}
