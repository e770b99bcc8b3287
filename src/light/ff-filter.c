/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-filter.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"

#define LOG10_2 0.30102999566398119521

/* Beyond any glass that is made; keeps every factor far from overflow. */
#define MAX_STOPS   33.0
#define MAX_DENSITY 10.0 /* not included */
#define MAX_FACTOR  1e9

/* Part of the trade engraves a code, 100 and the stops: "ND103" is three stops there and factor
 * 103 elsewhere. No one makes a filter of such a factor, but taking it so would be 4 stops off. */
#define CODE_FIRST 101.0
#define CODE_LAST  120.0

double
ff_filter_factor (double stops)
{
  return exp2 (stops);
}

double
ff_filter_density (double stops)
{
  return stops * LOG10_2;
}

double
ff_filter_transmittance (double stops)
{
  return exp2 (-stops);
}

/* The plain number at the start of *text, digits and at most one point; moves *text behind it and
 * says whether there was a point. */
static gboolean
take_number (const char **text, double *ret_value, gboolean *ret_point)
{
  gsize length = strspn (*text, "0123456789.");
  g_autofree char *number = g_strndup (*text, length);

  if (!ff_number_parse ("", number, 0.0, MAX_FACTOR, ret_value, NULL))
    return FALSE;
  *ret_point = strchr (number, '.') != NULL;
  *text += length;
  return TRUE;
}

static void
skip_blanks (const char **text)
{
  while (**text == ' ')
    (*text)++;
}

/* Moves *text behind a word, whatever its case; FALSE and unmoved when it is not there. */
static gboolean
take_word (const char **text, const char *word)
{
  if (g_ascii_strncasecmp (*text, word, strlen (word)) != 0)
    return FALSE;
  *text += strlen (word);
  return TRUE;
}

static gboolean
take_stops_word (const char **text)
{
  skip_blanks (text);
  return take_word (text, "stops") || take_word (text, "stop");
}

static gboolean
refuse (const char *label, const char *why, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("filter “%s”: %s; accepted: ND8 (a factor), 0.9 or ND0.9 (a density), 3 stops, "
                  "2-5 stops variable"),
               label, why);
  return FALSE;
}

/* A fixed filter after its number was read. */
static gboolean
finish_fixed (const char *label,
              FfFilterNaming naming,
              double number,
              FfFilterStrength *ret_strength,
              GError **error)
{
  double stops = number;

  if (naming == FF_FILTER_BY_FACTOR && (number < 1.0 || number > MAX_FACTOR))
    return refuse (label, _ ("a factor is 1 or more"), error);
  if (naming == FF_FILTER_BY_FACTOR && number >= CODE_FIRST && number <= CODE_LAST)
    return refuse (label, _ ("this may be a factor or a code for stops"), error);
  if (naming == FF_FILTER_BY_DENSITY && number >= MAX_DENSITY)
    return refuse (label, _ ("a density is below 10"), error);
  if (naming == FF_FILTER_BY_STOPS && number > MAX_STOPS)
    return refuse (label, _ ("more stops than any filter has"), error);
  if (naming == FF_FILTER_BY_FACTOR)
    stops = log2 (number);
  else if (naming == FF_FILTER_BY_DENSITY)
    stops = number / LOG10_2;
  *ret_strength = (FfFilterStrength) { naming, stops, stops };
  return TRUE;
}

/* "2-5 stops variable" after the 2; the dash may be a printed one. */
static gboolean
finish_variable (const char *label,
                 const char *rest,
                 double from,
                 FfFilterStrength *ret_strength,
                 GError **error)
{
  gboolean point;
  double to;

  skip_blanks (&rest);
  if (!take_word (&rest, "-") && !take_word (&rest, "–"))
    return refuse (label, _ ("not a filter label"), error);
  skip_blanks (&rest);
  if (!take_number (&rest, &to, &point) || !take_stops_word (&rest))
    return refuse (label, _ ("not a filter label"), error);
  skip_blanks (&rest);
  if (!take_word (&rest, "variable") || *rest != '\0')
    return refuse (label, _ ("a range of stops is that of a variable filter"), error);
  if (from >= to)
    return refuse (label, _ ("the range runs from the weaker to the stronger setting"), error);
  if (to > MAX_STOPS)
    return refuse (label, _ ("more stops than any filter has"), error);
  *ret_strength = (FfFilterStrength) { FF_FILTER_VARIABLE, from, to };
  return TRUE;
}

static gboolean
parse_bare (const char *label, FfFilterStrength *ret_strength, GError **error)
{
  gboolean nd = FALSE, point;
  const char *rest = label;
  double number;

  if (take_word (&rest, "nd"))
    {
      nd = TRUE;
      skip_blanks (&rest);
    }
  if (!take_number (&rest, &number, &point))
    return refuse (label, _ ("not a filter label"), error);
  if (*rest == '\0' && !nd && !point)
    return refuse (label, _ ("a number alone may be a factor or stops"), error);
  if (*rest == '\0')
    return finish_fixed (label, point ? FF_FILTER_BY_DENSITY : FF_FILTER_BY_FACTOR, number,
                         ret_strength, error);
  if (nd)
    return refuse (label, _ ("not a filter label"), error);
  if (!take_stops_word (&rest))
    return finish_variable (label, rest, number, ret_strength, error);
  if (*rest != '\0')
    return refuse (label, _ ("not a filter label"), error);
  return finish_fixed (label, FF_FILTER_BY_STOPS, number, ret_strength, error);
}

gboolean
ff_filter_parse (const char *label, FfFilterStrength *ret_strength, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (label));

  return parse_bare (bare, ret_strength, error);
}

static char *
stops_text (double stops)
{
  g_autofree char *number = ff_number_format (stops, 3);

  /* Translators: a stop is a doubling or halving of the light. */
  return g_strdup_printf (strcmp (number, "1") == 0 ? _ ("%s stop") : _ ("%s stops"), number);
}

char *
ff_filter_describe (const FfFilterStrength *strength)
{
  g_autofree char *stops = stops_text (strength->stops);
  g_autofree char *stops_to = stops_text (strength->stops_to);
  g_autofree char *number = NULL;

  switch (strength->naming)
    {
    case FF_FILTER_BY_FACTOR:
      number = ff_number_format (ff_filter_factor (strength->stops), 3);
      /* Translators: the factor by which a filter weakens light, then the same in stops. */
      return g_strdup_printf (_ ("factor %s, %s"), number, stops);
    case FF_FILTER_BY_DENSITY:
      number = ff_number_format (ff_filter_density (strength->stops), 3);
      /* Translators: the optical density of a filter, then the same in stops. */
      return g_strdup_printf (_ ("density %s, %s"), number, stops);
    case FF_FILTER_VARIABLE:
      number = ff_number_format (strength->stops, 3);
      /* Translators: a filter that can be turned between two strengths. */
      return g_strdup_printf (_ ("variable, %s to %s"), number, stops_to);
    case FF_FILTER_BY_STOPS:
    default:
      return g_steal_pointer (&stops);
    }
}
