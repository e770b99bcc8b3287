/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-explain-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-daylight.h"
#include "ff-number.h"
#include "ff-scale.h"

#define NOTHING_STOPS 0.005 /* less than this is nothing to two places */
#define NOBODY_STOPS 0.02   /* nobody sees a setting that gives way by so little */

/* To two places with a true minus, so that the sums can be followed on paper. */
static char *
two_places (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (buffer, sizeof buffer, "%.2f", fabs (value));
  return g_strdup_printf ("%s%s", value <= -NOTHING_STOPS ? "−" : "", buffer);
}

/* Always with its sign: "+0.40". */
static char *
with_sign (double value)
{
  g_autofree char *number = two_places (value);

  return value <= -NOTHING_STOPS ? g_steal_pointer (&number) : g_strdup_printf ("+%s", number);
}

/* Sun and light */

static const char *
side_of_sun (const FfExplainQuery *query)
{
  if (query->view == FF_VIEW_DOWN)
    return _ ("the camera looks straight down");
  switch (ff_lit_of_angle (query->from_sun_deg))
    {
    case FF_LIT_FRONT:
      return _ ("front light, the sun behind the camera");
    case FF_LIT_BACK:
      return _ ("back light, the sun before the camera");
    case FF_LIT_SIDE:
    default:
      return _ ("side light");
    }
}

static char *
words_of_sun (const FfExplainQuery *query)
{
  g_autofree char *height = NULL;

  if (query->from == FF_EXPLAIN_TABLE)
    return g_strdup (_ ("Not asked: the light is a condition of a published table."));
  if (query->from == FF_EXPLAIN_GIVEN)
    return g_strdup (_ ("Not asked: the light was entered."));
  height = two_places (query->sun_altitude_deg);
  if (query->sun_altitude_deg <= 0)
    /* Translators: height (negative) and bearing of the sun in degrees. */
    return g_strdup_printf (_ ("The sun is down, at %s° of height and %.0f°."), height,
                            query->sun_azimuth_deg);
  /* Translators: height and bearing of the sun, then "front light, the sun behind the camera". */
  return g_strdup_printf (_ ("The sun is %s° high at %.0f°: %s."), height, query->sun_azimuth_deg,
                          side_of_sun (query));
}

static char *
words_of_learned (const FfExplainSums *sums)
{
  g_autofree char *learned = with_sign (sums->learned);

  if (fabs (sums->learned) < NOTHING_STOPS)
    return g_strdup ("");
  /* Translators: part of the offset of the light that readings on site have taught. */
  return g_strdup_printf (_ (" (%s of it learned from readings)"), learned);
}

static char *
words_of_light (const FfExplainQuery *query, const FfExplainSums *sums)
{
  g_autofree char *ev = two_places (query->ev100);
  g_autofree char *spread = two_places ((query->high_ev100 - query->low_ev100) / 2);
  g_autofree char *flat = NULL;
  g_autofree char *view = NULL;
  g_autofree char *offset = NULL;
  g_autofree char *learned = NULL;
  g_autofree char *lux = NULL;

  if (query->from != FF_EXPLAIN_SUN)
    return g_strdup_printf (_ ("EV %s ± %s at ISO 100."), ev, spread);
  flat = two_places (sums->flat_ev100);
  view = with_sign (sums->view_gain);
  offset = with_sign (sums->offset);
  learned = words_of_learned (sums);
  lux = ff_number_format (sums->illuminance_lx, sums->illuminance_lx < 100 ? 2 : 0);
  /* Translators: sky, lux, EV of it, what view and offset add, "" or a remark about the offset, the
   * sum and its spread. */
  return g_strdup_printf (_ ("Sky %s: %s lx on level ground are EV %s; view %s, offset %s%s: EV %s "
                             "± %s."),
                          ff_name_text (&ff_names_sky, (int) query->sky), lux, flat, view, offset,
                          learned, ev, spread);
}

/* Level, need and filter */

static char *
words_of_level (const FfExplainQuery *query, const FfExplainSums *sums)
{
  g_autofree char *aperture = ff_number_format (sums->f_written, 2);
  g_autofree char *shutter = ff_shutter_format (sums->wanted_s);
  g_autofree char *level = two_places (sums->level);
  g_autofree char *iso = ff_number_format (sums->base_iso, 0);

  if (isnan (sums->need))
    /* Translators: aperture, shutter time, ISO, EV. A still does not mind its shutter. */
    return g_strdup_printf (_ ("A still takes any shutter: f/%s, %s and ISO %s expose EV %s right."),
                            aperture, shutter, iso, level);
  /* Translators: aperture, the shutter time that the shot wants, base ISO, EV. */
  return g_strdup_printf (_ ("f/%s, the wanted %s and ISO %s expose EV %s right."), aperture, shutter,
                          iso, level);
}

static char *
words_of_need (const FfExplainQuery *query, const FfExplainSums *sums)
{
  g_autofree char *light = two_places (query->ev100);
  g_autofree char *level = two_places (sums->level);
  g_autofree char *need = two_places (fabs (sums->need));

  if (isnan (sums->need))
    return g_strdup (_ ("None: the shutter follows the light."));
  if (sums->need < 0)
    /* Translators: light, level, and by how many stops it is too dark. */
    return g_strdup_printf (_ ("%s − %s: %s stops too dark already, without a filter."), light,
                            level, need);
  /* Translators: light, level, need in stops. */
  return g_strdup_printf (_ ("%s − %s = %s stops have to be taken away."), light, level, need);
}

static char *
words_of_filter (const FfExplainQuery *query)
{
  g_autofree char *stops = ff_number_format (query->filter_stops, 2);

  if (query->filters == NULL || query->filters[0] == '\0')
    return query->filter_stops > 0 ? g_strdup_printf (_ ("The filter takes %s stops."), stops)
                                   : g_strdup (_ ("None is fitted: it takes nothing."));
  /* Translators: a filter by what is written on it, and its stops. */
  return g_strdup_printf (_ ("%s takes %s stops."), query->filters, stops);
}

static char *
bright_or_dark (double stops)
{
  g_autofree char *number = two_places (fabs (stops));

  if (fabs (stops) < NOTHING_STOPS)
    return g_strdup (_ ("nothing"));
  return stops > 0 ? g_strdup_printf (_ ("%s stop too bright"), number)
                   : g_strdup_printf (_ ("%s stop too dark"), number);
}

static char *
words_of_left (const FfExplainQuery *query, const FfExplainSums *sums)
{
  g_autofree char *light = two_places (query->ev100);
  g_autofree char *level = two_places (sums->level);
  g_autofree char *filter = two_places (query->filter_stops);
  g_autofree char *left = bright_or_dark (sums->left);

  /* Translators: light, level, filter, and then "0.30 stop too bright" or "nothing". */
  return g_strdup_printf (_ ("%s − %s − %s: %s."), light, level, filter, left);
}

/* Who pays */

static void
add_payer (GString *text, const char *who, double stops, const char *now, const char *before)
{
  g_autofree char *number = with_sign (stops);

  if (fabs (stops) < NOBODY_STOPS)
    return;
  if (text->len > 0)
    g_string_append (text, "; ");
  /* Translators: who pays, how many stops, the setting now and the one that was wanted:
   * "shutter +0.26: 1/60 for 1/50". */
  g_string_append_printf (text, _ ("%s %s: %s for %s"), who, number, now, before);
}

static char *
words_of_pays (const FfExplainQuery *query, const FfExplainSums *sums)
{
  const FfSettings *settings = &query->settings;
  g_autoptr (GString) payers = g_string_new (NULL);
  g_autofree char *wanted = ff_shutter_format (sums->wanted_s);
  g_autofree char *f_now = ff_number_format (settings->aperture.written, 2);
  g_autofree char *f_level = ff_number_format (sums->f_written, 2);
  g_autofree char *base = ff_number_format (sums->base_iso, 0);
  g_autofree char *error = bright_or_dark (sums->error);

  add_payer (payers, _ ("shutter"), sums->shutter_pays,
             ff_scale_label (FF_SCALE_SHUTTER, settings->shutter), wanted);
  add_payer (payers, _ ("aperture"), sums->aperture_pays, f_now, f_level);
  add_payer (payers, _ ("ISO"), sums->iso_pays, ff_scale_label (FF_SCALE_ISO, settings->iso), base);
  if (payers->len == 0)
    /* Translators: then "0.10 stop too bright" or "nothing". */
    return g_strdup_printf (_ ("Nobody has to; error: %s."), error);
  /* Translators: "shutter +0.26: 1/60 for 1/50", then "0.04 stop too bright" or "nothing". */
  return g_strdup_printf (_ ("Pays: %s; error: %s."), payers->str, error);
}

char *
ff_explain_words (const FfExplainQuery *query, const FfExplainSums *sums, FfExplainKind kind)
{
  switch (kind)
    {
    case FF_WHY_SUN:
      return words_of_sun (query);
    case FF_WHY_LIGHT:
      return words_of_light (query, sums);
    case FF_WHY_LEVEL:
      return words_of_level (query, sums);
    case FF_WHY_NEED:
      return words_of_need (query, sums);
    case FF_WHY_FILTER:
      return words_of_filter (query);
    case FF_WHY_LEFT:
      return words_of_left (query, sums);
    case FF_WHY_PAYS:
    case FF_N_WHY:
    default:
      return words_of_pays (query, sums);
    }
}
