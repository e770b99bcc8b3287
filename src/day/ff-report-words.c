/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-report-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-number.h"

static void
word_free (gpointer data)
{
  FfReportWord *word = data;

  g_free (word->label);
  g_free (word->text);
  g_free (word);
}

GPtrArray *
ff_report_words_new (void)
{
  return g_ptr_array_new_with_free_func (word_free);
}

void
ff_report_words_add (GPtrArray *words, const char *label, char *text)
{
  FfReportWord *word = g_new0 (FfReportWord, 1);

  word->label = g_strdup (label);
  word->text = text;
  g_ptr_array_add (words, word);
}

/* ---- wind, visibility, cloud --------------------------------------------------------------- */

static char *
speed_text (FfReported speed)
{
  g_autofree char *number = ff_number_format (speed.value, 1);

  if (speed.is == FF_REPORTED_OR_MORE)
    return g_strdup_printf (_ ("%s m/s or more"), number);
  return g_strdup_printf (_ ("%s m/s"), number);
}

static char *
wind_text (const FfReportPart *part)
{
  g_autofree char *speed = speed_text (part->wind_ms);

  if (part->wind_ms.is == FF_REPORTED_MISSING)
    return g_strdup (_ ("missing"));
  if (part->wind_ms.value == 0.0)
    return g_strdup (_ ("calm"));
  if (part->wind_deg.is == FF_REPORTED_EXACT)
    return g_strdup_printf ("%03.0f°, %s", part->wind_deg.value, speed);
  return g_strdup_printf ("%s, %s",
                          part->wind_variable ? _ ("variable") : _ ("direction missing"), speed);
}

static void
add_wind (GPtrArray *words, const FfReportPart *part)
{
  g_autofree char *gust = speed_text (ff_report_gust_limit (part));

  if (!(part->names & FF_NAMES_WIND))
    return;
  ff_report_words_add (words, _ ("Wind"), wind_text (part));
  if (part->wind_ms.is == FF_REPORTED_MISSING)
    return;
  if (part->gust_ms.is != FF_REPORTED_MISSING)
    ff_report_words_add (words, _ ("Gust"), g_steal_pointer (&gust));
  else
    ff_report_words_add (
        words, _ ("Gust"),
        g_strdup_printf (_ ("not reported: may be up to just under %s"), gust));
}

static void
add_visibility (GPtrArray *words, const FfReportPart *part)
{
  g_autofree char *metres = ff_number_format (part->visibility_m.value, 0);
  char *text = NULL;

  if (!(part->names & FF_NAMES_VISIBILITY))
    return;
  switch (part->visibility_m.is)
    {
    case FF_REPORTED_MISSING:
      text = g_strdup (_ ("missing"));
      break;
    case FF_REPORTED_EXACT:
      text = g_strdup_printf (_ ("%s m"), metres);
      break;
    case FF_REPORTED_LESS_THAN:
      text = g_strdup_printf (_ ("less than %s m"), metres);
      break;
    case FF_REPORTED_OR_MORE:
      text = g_strdup_printf (_ ("%s m or more"), metres);
      break;
    }
  ff_report_words_add (words, _ ("Visibility"), text);
}

static void
add_ceiling (GPtrArray *words, const FfReportPart *part)
{
  double ceiling;
  g_autofree char *metres = NULL;
  char *text = NULL;

  if (!(part->names & FF_NAMES_CLOUD))
    return;
  switch (ff_report_ceiling (part, &ceiling))
    {
    case FF_CEILING_UNKNOWN:
      text = g_strdup (_ ("unknown"));
      break;
    case FF_CEILING_NONE:
      /* CAVOK and the like are not "clear sky". */
      text = g_strdup (_ ("none reported"));
      break;
    case FF_CEILING_KNOWN:
      metres = ff_number_format (ceiling, 0);
      text = g_strdup_printf (_ ("%s m above the aerodrome"), metres);
      break;
    }
  ff_report_words_add (words, _ ("Ceiling"), text);
}

static void
add_part (GPtrArray *words, const FfReportPart *part)
{
  guint i;

  add_wind (words, part);
  add_visibility (words, part);
  add_ceiling (words, part);
  for (i = 0; i < part->n_weather; i++)
    ff_report_words_add (words, i == 0 ? _ ("Weather") : "", g_strdup (part->weather[i]));
}

/* ---- observed, and forecast in periods ----------------------------------------------------- */

static void
add_degrees (GPtrArray *words, const char *label, FfReported degrees)
{
  g_autofree char *number = ff_number_format (degrees.value, 0);

  ff_report_words_add (words, label,
                       degrees.is == FF_REPORTED_MISSING ? g_strdup (_ ("missing"))
                                                         : g_strdup_printf (_ ("%s °C"), number));
}

static void
add_observed (GPtrArray *words, const FfReport *report)
{
  g_autofree char *qnh = ff_number_format (report->qnh_hpa.value, 0);

  add_part (words, &report->part);
  add_degrees (words, _ ("Temperature"), report->temperature_c);
  add_degrees (words, _ ("Dew point"), report->dew_point_c);
  if (report->qnh_hpa.is == FF_REPORTED_EXACT)
    /* Translators: the pressure at sea level that an altimeter is set to. */
    ff_report_words_add (words, _ ("QNH"), g_strdup_printf (_ ("%s hPa"), qnh));
  if (report->trend != NULL)
    ff_report_words_add (words, _ ("Next two hours"), g_strdup (report->trend));
}

static char *
time_text (gint64 at, GTimeZone *zone)
{
  char *text;

  if (zone != NULL)
    return ff_instant_clock ((double) at, zone);
  /* Minutes of UTC are enough: "2027-09-18T16:30". */
  text = ff_instant_format ((double) at, NULL);
  text[16] = '\0';
  return text;
}

static char *
span_text (const FfReportPeriod *period, GTimeZone *zone)
{
  g_autofree char *from = time_text (period->from, zone);
  g_autofree char *to = time_text (period->to, zone);

  switch (period->kind)
    {
    case FF_PERIOD_FROM:
      return g_strdup_printf (_ ("From %s, to %s"), from, to);
    case FF_PERIOD_BECOMING:
      return g_strdup_printf (_ ("Becoming between %s and %s"), from, to);
    case FF_PERIOD_AT_TIMES:
      return g_strdup_printf (_ ("At times between %s and %s"), from, to);
    case FF_PERIOD_PERHAPS:
      return g_strdup_printf (_ ("Perhaps between %s and %s"), from, to);
    case FF_PERIOD_BASE:
      break;
    }
  return g_strdup_printf (_ ("%s to %s"), from, to);
}

GPtrArray *
ff_report_words (const FfReport *report, GTimeZone *zone)
{
  GPtrArray *words = ff_report_words_new ();
  guint i;

  if (report->nil || report->cancelled)
    ff_report_words_add (words, NULL,
                         g_strdup (report->nil ? _ ("The report is missing (NIL).")
                                               : _ ("Cancelled (CNL).")));
  else if (report->kind != FF_REPORT_TAF)
    add_observed (words, report);
  for (i = 0; i < report->n_periods && !report->nil && !report->cancelled; i++)
    {
      ff_report_words_add (words, NULL, span_text (&report->periods[i], zone));
      add_part (words, &report->periods[i].part);
    }
  if (report->unread[0] != NULL)
    ff_report_words_add (words, _ ("Not understood"), g_strjoinv (" ", report->unread));
  return words;
}

char *
ff_report_title (const FfReport *report, GTimeZone *zone)
{
  static const char *const kinds[] = { "METAR", "SPECI", "TAF" };
  g_autofree char *at
      = zone != NULL ? ff_instant_clock ((double) report->at, zone)
                     : ff_instant_format ((double) report->at, NULL);

  return g_strdup_printf ("%s %s  %s%s", kinds[report->kind], report->station, at,
                          report->automatic ? _ ("  automatic station") : "");
}
