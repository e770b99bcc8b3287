/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-light-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-day-private.h"
#include "ff-exposure.h"
#include "ff-number.h"
#include "ff-scale.h"

#define RIGHT_STOPS 0.05 /* less than this reads as nothing to a tenth */

/* Glass and its hours */

char *
ff_light_words_glass (const FfLightStudy *study, int filter)
{
  const FfAdviseFilter *glass;
  g_autofree char *stops = NULL;

  if (filter < 0)
    return g_strdup (_ ("no filter"));
  glass = &g_array_index (study->filters, FfAdviseFilter, filter);
  stops = glass->stops_to > glass->stops + RIGHT_STOPS
              /* Translators: range of a variable filter in stops. */
              ? g_strdup_printf (_ ("%.0f to %.0f stops"), glass->stops, glass->stops_to)
              : ff_stops_format (glass->stops);
  return g_strdup_printf ("%s · %s", stops, ff_light_study_filter (study, filter));
}

/* "14:50–18:40, 19:00–19:05"; moments of the day, not of the samples beyond its ends. */
static char *
words_of_spans (const FfLightStudy *study, GArray *spans)
{
  GTimeZone *zone = ff_day_zone (study->query.day);
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < spans->len; i++)
    {
      const FfStudySpan *span = &g_array_index (spans, FfStudySpan, i);
      g_autofree char *from = ff_instant_clock ((double) span->from, zone);
      g_autofree char *to = ff_instant_clock ((double) span->to, zone);

      g_string_append_printf (words, "%s%s–%s", i > 0 ? ", " : "", from, to);
    }
  return g_string_free (words, FALSE);
}

char *
ff_light_words_hours (const FfLightStudy *study, const FfStudyHours *hours)
{
  g_autofree char *best = words_of_spans (study, hours->best);
  g_autofree char *holds = words_of_spans (study, hours->holds);

  if (hours->holds->len == 0 && hours->best->len == 0)
    return g_strdup (_ ("Not on this day."));
  if (hours->best->len == 0)
    /* Translators: clock times at which a filter would expose right, though another is better. */
    return g_strdup_printf (_ ("Another suits better; it exposes right %s."), holds);
  if (hours->holds->len == 0)
    /* Translators: clock times at which a filter is the one to fit. */
    return g_strdup_printf (_ ("Fit it %s."), best);
  /* Translators: clock times at which a filter is the one to fit, and at which it would do. */
  return g_strdup_printf (_ ("Fit it %s. It exposes right %s."), best, holds);
}

/* Pieces */

static double
eats (const FfLightStudy *study, const FfRuler *ruler, FfRulerPiece piece)
{
  FfAdviseQuery query = ff_light_study_advise (study, 0);

  return ff_ruler_eats (ruler, &query, piece);
}

char *
ff_light_words_value (const FfLightStudy *study, const FfRuler *ruler, FfRulerPiece piece)
{
  g_autofree char *number = NULL;

  switch (piece)
    {
    case FF_PIECE_LENS:
      number = ff_number_format (study->camera.apertures[ruler->aperture].written, 2);
      return g_strdup_printf ("f/%s", number);
    case FF_PIECE_SHUTTER:
      return g_strdup (ff_scale_label (FF_SCALE_SHUTTER, ruler->shutter));
    case FF_PIECE_ISO:
      return g_strdup (ff_scale_label (FF_SCALE_ISO, ruler->iso));
    case FF_PIECE_FILTER:
    case FF_N_PIECES:
    default:
      return ruler->filter < 0 ? g_strdup (_ ("none"))
                               : ff_stops_format (ff_ruler_filter_stops (ruler));
    }
}

/* "5.6 stops", "gives 2 stops": what a piece does to the light. */
static char *
words_of_eating (double stops)
{
  g_autofree char *amount = ff_stops_format (fabs (stops));

  /* Translators: a setting that adds light, as a higher ISO does; %s is "2 stops". */
  return stops < -RIGHT_STOPS ? g_strdup_printf (_ ("gives %s"), amount)
                              : g_steal_pointer (&amount);
}

char *
ff_light_words_detail (const FfLightStudy *study, const FfRuler *ruler, FfRulerPiece piece)
{
  FfAdviseQuery query = ff_light_study_advise (study, 0);
  g_autofree char *amount = words_of_eating (eats (study, ruler, piece));
  FfSettings settings;

  ff_ruler_settings (ruler, &query, &settings);
  if (piece == FF_PIECE_SHUTTER && isfinite (settings.shutter_angle_deg))
    return g_strdup_printf ("%.0f° · %s", settings.shutter_angle_deg, amount);
  if (piece == FF_PIECE_FILTER)
    return g_strdup (ff_light_study_filter (study, ruler->filter));
  return g_steal_pointer (&amount);
}

char *
ff_light_words_piece (const FfLightStudy *study, const FfRuler *ruler, FfRulerPiece piece)
{
  g_autofree char *value = ff_light_words_value (study, ruler, piece);
  g_autofree char *detail = ff_light_words_detail (study, ruler, piece);

  return g_strdup_printf ("%s %s%s%s%s%s", ff_name_text (&ff_names_piece, (int) piece), value,
                          detail[0] != '\0' ? ", " : "", detail, ruler->fixed[piece] ? ", " : "",
                          /* Translators: a setting that is held and does not give way. */
                          ruler->fixed[piece] ? _ ("fixed") : "");
}

char *
ff_light_words_level (const FfExplainQuery *light)
{
  g_autofree char *spread
      = ff_number_format ((light->high_ev100 - light->low_ev100) / 2, 1);
  char ev[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (ev, sizeof ev, "%.1f", fabs (light->ev100));
  /* Translators: light as an exposure value at ISO 100, with its spread. */
  return g_strdup_printf (_ ("EV %s%s ± %s"), light->ev100 < -RIGHT_STOPS ? "−" : "", ev, spread);
}

/* The gap */

char *
ff_light_words_gap_number (double gap_stops)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (buffer, sizeof buffer, "%.1f", fabs (gap_stops));
  if (fabs (gap_stops) < RIGHT_STOPS)
    return g_strdup (buffer);
  return g_strdup_printf ("%s%s", gap_stops > 0 ? "+" : "−", buffer);
}

char *
ff_light_words_gap (double gap_stops)
{
  g_autofree char *stops = ff_stops_format (fabs (gap_stops));

  if (fabs (gap_stops) < RIGHT_STOPS)
    return g_strdup (_ ("Exposed right"));
  return gap_stops > 0 ? g_strdup_printf (_ ("%s too bright"), stops)
                       : g_strdup_printf (_ ("%s too dark"), stops);
}

/* "Shutter 1/60 (150°)", "5 stops · ND32". */
static char *
words_of_change (const FfLightStudy *study, const FfRulerChange *change)
{
  g_autofree char *value = ff_light_words_value (study, &change->after, change->piece);
  FfAdviseQuery query = ff_light_study_advise (study, 0);
  FfSettings settings;

  if (change->piece == FF_PIECE_FILTER && change->after.filter >= 0)
    return ff_light_words_glass (study, change->after.filter);
  ff_ruler_settings (&change->after, &query, &settings);
  if (change->piece == FF_PIECE_SHUTTER && isfinite (settings.shutter_angle_deg))
    return g_strdup_printf ("%s %s (%.0f°)", ff_name_text (&ff_names_piece, (int) change->piece),
                            value, settings.shutter_angle_deg);
  return g_strdup_printf ("%s %s", ff_name_text (&ff_names_piece, (int) change->piece), value);
}

static char *
words_of_closers (const FfLightStudy *study, const FfRuler *ruler, const FfAdviseQuery *query)
{
  FfRulerChange changes[FF_N_PIECES];
  guint n = ff_ruler_closers (ruler, query, changes);
  g_autofree char *first = n > 0 ? words_of_change (study, &changes[0]) : NULL;
  g_autofree char *second = n > 1 ? words_of_change (study, &changes[1]) : NULL;

  if (n == 0)
    return g_strdup (_ ("No single setting closes it."));
  if (n == 1)
    /* Translators: the setting that would close the gap, as "Shutter 1/60 (150°)". */
    return g_strdup_printf (_ ("%s closes it."), first);
  /* Translators: two settings of which either would close the gap. */
  return g_strdup_printf (_ ("%s closes it, or %s."), first, second);
}

/* The filter next in strength, towards the gap, that exposes right with settings of its own. */
static char *
words_of_other_filter (const FfLightStudy *study, const FfRuler *ruler, const FfAdviseQuery *query)
{
  double now = ff_ruler_filter_stops (ruler), gap = ff_ruler_gap (ruler, query);
  int found = -1;
  g_autofree char *aperture = NULL;
  g_autofree char *stops = NULL;
  FfChoice choice;

  for (guint i = 0; i < query->n_filters; i++)
    if ((query->filters[i].stops - now) * (gap > 0 ? 1 : -1) > 0.5
        && (found < 0
            || fabs (query->filters[i].stops - now) < fabs (query->filters[found].stops - now)))
      found = (int) i;
  if (found < 0 || fabs (gap) < RIGHT_STOPS || ruler->fixed[FF_PIECE_FILTER])
    return g_strdup ("");
  ff_advise_settings (query, query->filters[found].stops, &choice);
  if (fabs (choice.settings.error_stops) > FF_REACH_STOPS)
    return g_strdup ("");
  aperture = ff_number_format (choice.settings.aperture.written, 2);
  stops = ff_stops_format (query->filters[found].stops);
  /* Translators: another filter ("6 stops") and the settings that it would want. */
  return g_strdup_printf (_ (" %s would want f/%s, %s, ISO %s."), stops, aperture,
                          ff_scale_label (FF_SCALE_SHUTTER, choice.settings.shutter),
                          ff_scale_label (FF_SCALE_ISO, choice.settings.iso));
}

char *
ff_light_words_closers (const FfLightStudy *study, const FfRuler *ruler, double ev100)
{
  FfAdviseQuery query = ff_light_study_advise (study, ev100);
  g_autofree char *closers = NULL;
  g_autofree char *other = NULL;

  if (fabs (ff_ruler_gap (ruler, &query)) <= 1.0 / 6)
    return g_strdup (_ ("Nothing has to give way."));
  closers = words_of_closers (study, ruler, &query);
  other = words_of_other_filter (study, ruler, &query);
  return g_strconcat (closers, other, NULL);
}

char *
ff_light_words_pay (const FfLightStudy *study, const FfRuler *before, const FfRulerChange *pay)
{
  g_autofree char *now = NULL;
  g_autofree char *then = NULL;

  if (!pay->any)
    return g_strdup ("");
  now = ff_light_words_value (study, &pay->after, pay->piece);
  then = ff_light_words_value (study, before, pay->piece);
  /* Translators: a setting gives way: its name, the value now and the one before. */
  return g_strdup_printf (_ ("%s pays: %s for %s."),
                          ff_name_text (&ff_names_piece, (int) pay->piece), now, then);
}

/* Until when */

/* Who may follow in the air: what is fixed does not. */
static char *
words_of_trimming (const FfRuler *ruler, const char *first, const char *second)
{
  if (ruler->fixed[FF_PIECE_SHUTTER])
    /* Translators: two clock times. */
    return g_strdup_printf (_ ("Good until %s. With ISO following, this filter holds until %s."),
                            first, second);
  if (ruler->fixed[FF_PIECE_ISO])
    /* Translators: two clock times. */
    return g_strdup_printf (_ ("Good until %s. With the shutter following, this filter holds until "
                               "%s."),
                            first, second);
  /* Translators: two clock times. */
  return g_strdup_printf (_ ("Good until %s. With shutter and ISO following, this filter holds until "
                             "%s."),
                          first, second);
}

char *
ff_light_words_until (const FfLightStudy *study, const FfRuler *ruler, gint64 at)
{
  GTimeZone *zone = ff_day_zone (study->query.day);
  FfExplainQuery light;
  FfAdviseQuery query;
  double low, high;
  gint64 exact, trimmed;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  ff_light_study_light (study, at, &light);
  query = ff_light_study_advise (study, light.ev100);
  if (study->query.condition != NULL)
    return g_strdup (_ ("Good as long as the light stays."));
  ff_ruler_trimmed_span (ruler, &query, &low, &high);
  if (light.ev100 < low || light.ev100 > high)
    return g_strdup (_ ("This filter does not hold, whatever shutter and ISO do."));
  trimmed = ff_light_study_until (study, at, low, high);
  second = ff_instant_clock ((double) (trimmed != 0 ? trimmed : study->to), zone);
  ff_ruler_span (ruler, &query, &low, &high);
  if (light.ev100 < low || light.ev100 > high)
    /* Translators: clock time. */
    return g_strdup_printf (_ ("Close the gap first; this filter can hold until %s."), second);
  exact = ff_light_study_until (study, at, low, high);
  first = ff_instant_clock ((double) (exact != 0 ? exact : study->to), zone);
  if (exact == trimmed)
    return g_strdup_printf (_ ("Good until %s."), first);
  return words_of_trimming (ruler, first, second);
}

/* Over the ruler */

static char *
words_of_sun (const FfExplainQuery *light)
{
  if (light->sun_altitude_deg < 0)
    return g_strdup_printf (_ ("sun down, %.0f° below"), -light->sun_altitude_deg);
  if (light->view == FF_VIEW_DOWN)
    return g_strdup_printf (_ ("sun %.0f° high, straight down"), light->sun_altitude_deg);
  switch (ff_lit_of_angle (light->from_sun_deg))
    {
    case FF_LIT_FRONT:
      return g_strdup_printf (_ ("sun %.0f° high, behind"), light->sun_altitude_deg);
    case FF_LIT_BACK:
      return g_strdup_printf (_ ("sun %.0f° high, ahead"), light->sun_altitude_deg);
    case FF_LIT_SIDE:
    default:
      return g_strdup_printf (_ ("sun %.0f° high, from the side"), light->sun_altitude_deg);
    }
}

char *
ff_light_words_head (const FfLightStudy *study, gint64 at)
{
  const FfShot *shot = study->query.shot;
  g_autofree char *clock = ff_instant_clock ((double) at, ff_day_zone (study->query.day));
  g_autofree char *sun = NULL;
  FfExplainQuery light;

  if (study->query.condition != NULL)
    return g_strdup (_ (study->query.condition->text));
  ff_light_study_light (study, at, &light);
  sun = words_of_sun (&light);
  return g_strdup_printf ("%s · %s · %s%s%s%s%s", clock, sun,
                          ff_name_text (&ff_names_sky, (int) study->query.sky),
                          shot->label[0] != '\0' ? " · " : "", shot->label,
                          shot->title[0] != '\0' ? " " : "", shot->title);
}
