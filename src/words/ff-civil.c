/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-civil.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "ff-error.h"

static gboolean
all_digits (const char *text, int from, int n)
{
  for (int i = from; i < from + n; i++)
    if (!g_ascii_isdigit (text[i]))
      return FALSE;
  return TRUE;
}

/* Two or four digits that were checked before. */
static int
digits (const char *text, int from, int n)
{
  int value = 0;

  for (int i = from; i < from + n; i++)
    value = value * 10 + (text[i] - '0');
  return value;
}

gboolean
ff_date_parse (const char *text, FfDate *ret_date, GError **error)
{
  FfDate date;

  if (strlen (text) != 10 || text[4] != '-' || text[7] != '-' || !all_digits (text, 0, 4)
      || !all_digits (text, 5, 2) || !all_digits (text, 8, 2))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("“%s” is not a date; accepted: YYYY-MM-DD, as 2027-09-18"), text);
      return FALSE;
    }
  date = (FfDate) { digits (text, 0, 4), digits (text, 5, 2), digits (text, 8, 2) };
  if (date.year < 1900 || date.year > 2199
      || !g_date_valid_dmy ((GDateDay) date.day, (GDateMonth) date.month, (GDateYear) date.year))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("the date %s does not exist; accepted: a day of 1900 to 2199"), text);
      return FALSE;
    }
  *ret_date = date;
  return TRUE;
}

char *
ff_date_format (FfDate date)
{
  return g_strdup_printf ("%04d-%02d-%02d", date.year, date.month, date.day);
}

static char *
format_date (FfDate date, const char *format)
{
  g_autoptr (GDateTime) noon = g_date_time_new_utc (date.year, date.month, date.day, 12, 0, 0);

  return noon != NULL ? g_date_time_format (noon, format) : ff_date_format (date);
}

char *
ff_date_format_short (FfDate date)
{
  /* Translators: a short date in strftime's letters, "Sat 18 Sep". */
  return format_date (date, _ ("%a %-d %b"));
}

char *
ff_date_format_long (FfDate date)
{
  /* Translators: a long date in strftime's letters, "Saturday 18 September 2027". */
  return format_date (date, _ ("%A %-d %B %Y"));
}

int
ff_date_compare (FfDate a, FfDate b)
{
  if (a.year != b.year)
    return a.year - b.year;
  return a.month != b.month ? a.month - b.month : a.day - b.day;
}

int
ff_date_day_of_year (FfDate date)
{
  g_autoptr (GDate) day
      = g_date_new_dmy ((GDateDay) date.day, (GDateMonth) date.month, (GDateYear) date.year);

  return (int) g_date_get_day_of_year (day);
}

/* Names as the time zone database writes them: letters, or parts joined by slashes. What has
 * digits or signs outside such parts is an offset or a POSIX rule. */
static gboolean
is_zone_name (const char *name)
{
  gboolean has_slash = strchr (name, '/') != NULL;

  if (!g_ascii_isalpha (name[0]) || strstr (name, "..") != NULL)
    return FALSE;
  for (const char *p = name; *p != '\0'; p++)
    {
      if (g_ascii_isalpha (*p) || *p == '_' || *p == '/')
        continue;
      if (!has_slash || !(g_ascii_isdigit (*p) || *p == '+' || *p == '-'))
        return FALSE;
    }
  return TRUE;
}

GTimeZone *
ff_zone_new (const char *name, GError **error)
{
  GTimeZone *zone = is_zone_name (name) ? g_time_zone_new_identifier (name) : NULL;

  if (zone == NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("unknown time zone “%s”; accepted: a name such as Europe/London"), name);
  return zone;
}

/* ISO 8601 lets the seconds go ("16:30Z"), GLib does not: they are put in. */
static char *
with_seconds (const char *text)
{
  const char *clock = strchr (text, 'T');

  if (clock == NULL || strlen (clock) < 7 || clock[3] != ':' || clock[6] == ':'
      || g_ascii_isdigit (clock[6]))
    return g_strdup (text);
  return g_strdup_printf ("%.*s:00%s", (int) (clock + 6 - text), text, clock + 6);
}

gboolean
ff_instant_parse (const char *text, gint64 *ret_instant, GError **error)
{
  g_autofree char *whole = with_seconds (text);
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (whole, NULL);

  /* GLib also takes a bare hour and week dates; the crew writes a day and a clock. */
  if (time == NULL || strchr (text, 'T') == NULL || strchr (text, ':') == NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("“%s” is not a time; accepted: ISO 8601 with an offset or Z, "
                      "as 2027-09-18T16:30:00+01:00"),
                   text);
      return FALSE;
    }
  *ret_instant = g_date_time_to_unix (time);
  return TRUE;
}

static GDateTime *
to_date_time (double instant, GTimeZone *zone)
{
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc ((gint64) floor (instant + 0.5));

  if (utc == NULL)
    return NULL;
  return zone != NULL ? g_date_time_to_timezone (utc, zone) : g_steal_pointer (&utc);
}

char *
ff_instant_format (double instant, GTimeZone *zone)
{
  g_autoptr (GDateTime) time = to_date_time (instant, zone);

  return time != NULL ? g_date_time_format (time, "%Y-%m-%dT%H:%M:%S%:z") : g_strdup ("–");
}

gboolean
ff_clock_parse (const char *text, int *ret_minutes, GError **error)
{
  int minutes = -1;

  if (strlen (text) == 5 && text[2] == ':' && all_digits (text, 0, 2) && all_digits (text, 3, 2)
      && digits (text, 3, 2) < 60)
    minutes = digits (text, 0, 2) * 60 + digits (text, 3, 2);
  if (minutes < 0 || minutes > 24 * 60)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("“%s” is not a clock time; accepted: HH:MM from 00:00 to 24:00"), text);
      return FALSE;
    }
  *ret_minutes = minutes;
  return TRUE;
}

char *
ff_clock_format (int minutes)
{
  return g_strdup_printf ("%02d:%02d", minutes / 60, minutes % 60);
}

char *
ff_instant_clock (double instant, GTimeZone *zone)
{
  g_autoptr (GDateTime) time = to_date_time (floor (instant / 60 + 0.5) * 60, zone);

  return time != NULL ? g_date_time_format (time, "%H:%M") : g_strdup ("–");
}

gboolean
ff_instant_from_clock (FfDate date, int minutes, GTimeZone *zone, gint64 *ret_instant, GError **error)
{
  g_autoptr (GDate) day
      = g_date_new_dmy ((GDateDay) date.day, (GDateMonth) date.month, (GDateYear) date.year);
  g_autoptr (GDateTime) time = NULL;
  g_autoptr (GDateTime) earlier = NULL;
  int of_day = minutes % (24 * 60);

  g_return_val_if_fail (minutes >= 0, FALSE);
  g_date_add_days (day, (guint) (minutes / (24 * 60)));
  time = g_date_time_new (zone, g_date_get_year (day), (int) g_date_get_month (day),
                          g_date_get_day (day), of_day / 60, of_day % 60, 0);
  /* In a gap GLib goes on to the next clock that exists; the crew should hear of it instead. */
  if (time == NULL || g_date_time_get_hour (time) != of_day / 60
      || g_date_time_get_minute (time) != of_day % 60)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%02d:%02d does not exist on %04d-%02d-%02d in %s: the clocks go forward then"),
                   of_day / 60, of_day % 60, g_date_get_year (day), g_date_get_month (day),
                   g_date_get_day (day), g_time_zone_get_identifier (zone));
      return FALSE;
    }
  /* Of a clock that comes twice GLib gives the later one (standard time). */
  earlier = g_date_time_add_hours (time, -1);
  *ret_instant = g_date_time_to_unix (time);
  if (g_date_time_get_hour (earlier) == of_day / 60)
    *ret_instant = g_date_time_to_unix (earlier);
  return TRUE;
}

/* Midnight, or the first clock after it where the clocks go forward at midnight. */
static gint64
day_start (GDate *day, GTimeZone *zone)
{
  g_autoptr (GDateTime) start
      = g_date_time_new (zone, g_date_get_year (day), (int) g_date_get_month (day),
                         g_date_get_day (day), 0, 0, 0);

  return g_date_time_to_unix (start);
}

void
ff_day_bounds (FfDate date, GTimeZone *zone, gint64 *ret_from, gint64 *ret_to)
{
  g_autoptr (GDate) day
      = g_date_new_dmy ((GDateDay) date.day, (GDateMonth) date.month, (GDateYear) date.year);

  *ret_from = day_start (day, zone);
  g_date_add_days (day, 1);
  *ret_to = day_start (day, zone);
}

FfDate
ff_instant_date (gint64 instant, GTimeZone *zone)
{
  g_autoptr (GDateTime) time = to_date_time ((double) instant, zone);
  FfDate date = { 1970, 1, 1 };

  if (time != NULL)
    g_date_time_get_ymd (time, &date.year, &date.month, &date.day);
  return date;
}
