/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-flight-sky.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-weather-today.h"

/* Lines up to the longest text that the flight takes: a log is never refused for want of room. */
static void
take_lines (char **place, const GPtrArray *lines, gsize longest)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    {
      const char *line = g_ptr_array_index (lines, i);

      if (text->len + strlen (line) + 1 > longest)
        break;
      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", line);
    }
  g_free (*place);
  *place = g_string_free (text, FALSE);
}

/* The day as it was known at an instant. What it holds stays the day's. */
static FfDay
as_of (const FfDay *day, gint64 at)
{
  FfDay then = *day;

  then.measurements = g_ptr_array_new ();
  then.reports = g_ptr_array_new ();
  for (guint i = 0; i < day->measurements->len; i++)
    {
      FfMeasurement *measured = g_ptr_array_index (day->measurements, i);

      if (measured->at <= at)
        g_ptr_array_add (then.measurements, measured);
    }
  for (guint i = 0; i < day->reports->len; i++)
    {
      FfWeatherReport *report = g_ptr_array_index (day->reports, i);

      if (report->at <= at)
        g_ptr_array_add (then.reports, report);
    }
  return then;
}

static GPtrArray *
answers_of (const FfLimitsToday *today)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < today->rows->len; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (today->rows, i);
      const char *answer = ff_name_text (&ff_names_limit_answer, (int) row->answer);

      const char *found = *row->found != '\0' ? row->found : row->reason;

      /* Translators: an answer ("outside"), a limit, its bound, what was found or why nothing was,
         whose rule it is. */
      g_ptr_array_add (lines, g_strdup_printf (_ ("%s: %s, %s: %s (%s)"), answer, row->text,
                                               row->bound, found, row->source));
    }
  return lines;
}

void
ff_flight_keep_sky (FfFlight *flight, const FfDay *day, const FfDayPlan *plan)
{
  FfDay then = as_of (day, flight->off);
  g_autoptr (FfLimitsToday) today = ff_limits_today (&then, plan, flight->off);
  g_autoptr (GPtrArray) conditions = ff_weather_conditions (&then);
  g_autoptr (GPtrArray) answers = answers_of (today);

  take_lines (&flight->conditions, conditions, FF_FLIGHT_CONDITIONS_MOST);
  take_lines (&flight->limits, answers, FF_FLIGHT_LIMITS_MOST);
  g_ptr_array_unref (then.measurements);
  g_ptr_array_unref (then.reports);
}
