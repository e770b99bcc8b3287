/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-say.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-filter.h"
#include "ff-number.h"

char *
ff_say_span (gint64 from, gint64 to, GTimeZone *zone)
{
  g_autofree char *start = ff_instant_clock ((double) from, zone);
  g_autofree char *end = ff_instant_clock ((double) to, zone);

  return g_strdup_printf ("%s–%s", start, end);
}

gboolean
ff_say_has_filter (const FfPlanLine *line)
{
  return line->filters->len > 0 || *line->engraving != '\0';
}

char *
ff_say_stops (const FfPlanLine *line)
{
  g_autofree char *figure = ff_number_format (line->filter_stops, 1);
  const gboolean whole = line->filter_stops == floor (line->filter_stops);

  if (!ff_say_has_filter (line))
    return g_strdup (_ ("no filter"));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s stop", "%s stops",
                                       whole ? (gulong) line->filter_stops : 2),
                          figure);
}

char *
ff_say_all (const GPtrArray *texts, const char *between)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < texts->len; i++)
    g_string_append_printf (all, "%s%s", i > 0 ? between : "",
                            (const char *) g_ptr_array_index (texts, i));
  return g_string_free (all, FALSE);
}

char *
ff_say_engraving (const FfPlanLine *line)
{
  if (*line->engraving != '\0')
    return g_strdup (line->engraving);
  return ff_say_all (line->filters, " + ");
}

/* Engravings round a density to a tenth (1.505 is sold as 1.5); so does the sheet where that is the
 * same within a hundredth. */
static char *
density_text (double stops)
{
  double density = ff_filter_density (stops);

  return ff_number_format (density, fabs (density * 10 - round (density * 10)) < 0.1 ? 1 : 2);
}

char *
ff_say_strength (double stops)
{
  g_autofree char *factor
      = ff_number_format (ff_filter_factor (stops), ff_filter_factor (stops) < 10 ? 1 : 0);
  g_autofree char *density = density_text (stops);

  /* Translators: the strength of a neutral filter as a factor and as a density. */
  return g_strdup_printf (_ ("factor %s, density %s"), factor, density);
}

/* "a", or "a → b" where they differ. */
static char *
trend (const char *start, const char *end)
{
  return g_str_equal (start, end) ? g_strdup (start) : g_strdup_printf ("%s → %s", start, end);
}

/* A fraction reads as a shutter time by itself; whole and decimal seconds take their unit. */
static char *
shutter_text (const FfPlanSettings *settings, gboolean with_angle)
{
  g_autofree char *angle = ff_number_format (settings->shutter_angle_deg, 0);

  if (with_angle && !isnan (settings->shutter_angle_deg))
    return g_strdup_printf ("%s (%s°)", settings->shutter, angle);
  if (g_ascii_isdigit (settings->shutter[0]) && strpbrk (settings->shutter, "/s") == NULL)
    return g_strdup_printf ("%s s", settings->shutter);
  return g_strdup (settings->shutter);
}

char *
ff_say_aperture (const FfPlanTake *take)
{
  g_autofree char *start = ff_number_format (take->start.aperture, 1);
  g_autofree char *end = ff_number_format (take->end.aperture, 1);
  g_autofree char *aperture = trend (start, end);

  return g_strdup_printf ("f/%s", aperture);
}

static char *
shutter_and_iso (const FfPlanTake *take, gboolean with_angle)
{
  g_autofree char *shutter_start = shutter_text (&take->start, with_angle);
  g_autofree char *shutter_end = shutter_text (&take->end, with_angle);
  g_autofree char *iso_start = g_strdup_printf ("%d", take->start.iso);
  g_autofree char *iso_end = g_strdup_printf ("%d", take->end.iso);
  g_autofree char *shutter = trend (shutter_start, shutter_end);
  g_autofree char *iso = trend (iso_start, iso_end);

  return g_strdup_printf ("%s · ISO %s", shutter, iso);
}

char *
ff_say_short_settings (const FfPlanTake *take)
{
  return shutter_and_iso (take, FALSE);
}

char *
ff_say_settings (const FfPlanTake *take)
{
  g_autofree char *aperture = ff_say_aperture (take);
  g_autofree char *others = shutter_and_iso (take, TRUE);

  return g_strdup_printf ("%s · %s", aperture, others);
}

/* One decimal, always: columns of needs are compared at a glance. */
static char *
tenths (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  /* Adding zero turns a rounded -0 into 0. */
  return g_strdup (g_ascii_formatd (buffer, sizeof buffer, "%.1f", round (value * 10) / 10 + 0.0));
}

char *
ff_say_need (const FfPlanTake *take)
{
  g_autofree char *start = tenths (take->need_start_stops);
  g_autofree char *end = tenths (take->need_end_stops);
  g_autofree char *both = trend (start, end);

  if (isnan (take->need_start_stops) || isnan (take->need_end_stops))
    return g_strdup ("");
  /* Translators: how strong a filter the light asks for, from start to end of a take. */
  return g_strdup_printf (_ ("need %s stops"), both);
}

char *
ff_say_rate (const FfPlanTake *take)
{
  g_autofree char *rate = ff_number_format (take->fps, 2);

  if (isnan (take->fps))
    return g_strdup (ff_name_text (&ff_names_intent, (int) take->intent));
  /* Translators: frames per second of a video. */
  return g_strdup_printf (_ ("%s fps"), rate);
}

char *
ff_say_two (const char *first, const char *between, const char *second)
{
  return g_strconcat (first, *first != '\0' && *second != '\0' ? between : "", second, NULL);
}

char *
ff_say_sentences (const GPtrArray *texts)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < texts->len; i++)
    {
      const char *text = g_ptr_array_index (texts, i);
      const gboolean ended = g_str_has_suffix (text, ".") || g_str_has_suffix (text, ":");

      g_string_append_printf (all, "%s%s%s", i > 0 ? " " : "", text, ended ? "" : ".");
    }
  return g_string_free (all, FALSE);
}
