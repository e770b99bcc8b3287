/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-report.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-report-groups.h"

#define DAY 86400
#define FARTHEST (16 * DAY) /* half a month: farther off, the month would be a guess */

/* The groups of a report, and how far they are read. */
typedef struct {
  FfReport *report;
  char **groups;
  guint n, i;
  GPtrArray *aside, *unread;
} FfReportReader;

static gboolean G_GNUC_PRINTF (2, 3)
refuse (GError **error, const char *format, ...)
{
  va_list args;
  char *message;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, message);
  g_free (message);
  return FALSE;
}

/* Blanks of any kind part the groups; small letters are taken for large ones. */
static char **
split (const char *text, GError **error)
{
  g_autofree char *upper = NULL;
  g_auto (GStrv) pieces = NULL;
  g_autoptr (GStrvBuilder) kept = g_strv_builder_new ();
  const char *c;
  gsize i;

  if (strlen (text) > FF_REPORT_LONGEST)
    {
      refuse (error, _ ("Weather report: too long; one report has at most %d characters"),
              FF_REPORT_LONGEST);
      return NULL;
    }
  for (c = text; *c != '\0'; c++)
    if (!g_ascii_isgraph (*c) && !g_ascii_isspace (*c))
      {
        refuse (error, _ ("Weather report, character %zu: no letter, figure or sign of a report"),
                (size_t) (c - text) + 1);
        return NULL;
      }
  upper = g_ascii_strup (text, -1);
  pieces = g_strsplit_set (upper, " \t\r\n\v\f", -1);
  for (i = 0; pieces[i] != NULL; i++)
    {
      gsize length = strlen (pieces[i]);

      if (length > 0 && pieces[i][length - 1] == '=')
        pieces[i][length - 1] = '\0';
      if (pieces[i][0] != '\0')
        g_strv_builder_add (kept, pieces[i]);
    }
  return g_strv_builder_end (kept);
}

static const char *
group_at (const FfReportReader *reader, guint i)
{
  return i < reader->n ? reader->groups[i] : "";
}

static gboolean
take (FfReportReader *reader, const char *word)
{
  if (strcmp (group_at (reader, reader->i), word) != 0)
    return FALSE;
  reader->i++;
  return TRUE;
}

/* Days since 1970-01-01 of a civil date; FALSE if there is no such day. */
static gboolean
instant_of (int year, int month, int day, gint64 *ret_instant)
{
  g_autoptr (GDateTime) midnight = g_date_time_new_utc (year, month, day, 0, 0, 0.0);

  if (midnight == NULL)
    return FALSE;
  *ret_instant = g_date_time_to_unix (midnight);
  return TRUE;
}

/* The instant of a day of the month and a time of day that is nearest to another. */
static gboolean
nearest (int day, int hour, int minute, gint64 near, gint64 *ret_instant)
{
  g_autoptr (GDateTime) now = g_date_time_new_from_unix_utc (near);
  gboolean found = FALSE;
  int step;

  if (now == NULL || hour > 24 || minute > 59 || (hour == 24 && minute > 0))
    return FALSE;
  for (step = -2; step <= 2; step++)
    {
      int months = g_date_time_get_year (now) * 12 + g_date_time_get_month (now) - 1 + step;
      gint64 at;

      if (!instant_of (months / 12, months % 12 + 1, day, &at))
        continue;
      at += hour * 3600 + minute * 60;
      if (!found || ABS (at - near) < ABS (*ret_instant - near))
        *ret_instant = at;
      found = TRUE;
    }
  return found && ABS (*ret_instant - near) <= FARTHEST;
}

/* ---- the head ----------------------------------------------------------------------------- */

static void
read_kind (FfReportReader *reader)
{
  FfReport *report = reader->report;

  if (take (reader, "TAF"))
    report->kind = FF_REPORT_TAF;
  else if (take (reader, "SPECI"))
    report->kind = FF_REPORT_SPECI;
  else
    take (reader, "METAR");
  /* Said twice in some bulletins. */
  take (reader, "TAF");
  for (;;)
    {
      if (take (reader, "COR"))
        report->corrected = TRUE;
      else if (take (reader, "AMD"))
        report->amended = TRUE;
      else
        return;
    }
}

static gboolean
read_station (FfReportReader *reader, GError **error)
{
  const char *group = group_at (reader, reader->i);
  gsize i;

  if (strlen (group) == 4 && g_ascii_isupper (group[0]))
    {
      for (i = 1; i < 4 && g_ascii_isalnum (group[i]); i++)
        ;
      if (i == 4)
        {
          g_strlcpy (reader->report->station, group, sizeof reader->report->station);
          reader->i++;
          return TRUE;
        }
    }
  return refuse (error, _ ("Weather report: “%s” stands where the aerodrome’s four letters belong"),
                 group);
}

static gboolean
read_time (FfReportReader *reader, gint64 now, GError **error)
{
  const char *group = group_at (reader, reader->i);
  const char *rest = group;
  int day, hour, minute;

  if (!ff_report_digits (&rest, 2, &day) || !ff_report_digits (&rest, 2, &hour)
      || !ff_report_digits (&rest, 2, &minute) || strcmp (rest, "Z") != 0)
    return refuse (error, _ ("Weather report: “%s” stands where day and time belong, as in 181620Z"),
                   group);
  if (!nearest (day, hour, minute, now, &reader->report->at))
    return refuse (error,
                   _ ("Weather report: “%s” is no time within 16 days of now; check the report’s "
                      "age and this computer’s clock"),
                   group);
  reader->i++;
  return TRUE;
}

static void
read_modifiers (FfReportReader *reader)
{
  FfReport *report = reader->report;

  for (; reader->i < reader->n; reader->i++)
    {
      const char *group = group_at (reader, reader->i);

      if (strcmp (group, "AUTO") == 0)
        report->automatic = TRUE;
      else if (strcmp (group, "NIL") == 0)
        report->nil = TRUE;
      else if (strcmp (group, "CNL") == 0)
        report->cancelled = TRUE;
      /* Corrections are lettered in Canada: CCA, CCB. */
      else if (strcmp (group, "COR") == 0
               || (strlen (group) == 3 && g_str_has_prefix (group, "CC")
                   && g_ascii_isupper (group[2])))
        report->corrected = TRUE;
      else
        return;
    }
}

/* ---- the validity and the periods of a forecast ------------------------------------------- */

/* The first instant with this hour of the day that is not before `from`. */
static gint64
first_at (gint64 from, int hour, int minute)
{
  gint64 at = from - from % DAY + hour * 3600 + minute * 60;

  return at < from ? at + DAY : at;
}

/* "0918/1024", and "1316" or "311322" as they were written before 2008. `near` is what the days are
 * counted from. */
static gboolean
read_span (const char *group, gint64 near, gint64 *ret_from, gint64 *ret_to)
{
  const gsize length = strlen (group);
  int day = 0, hour, end_day, end_hour;

  if (length == 9)
    return ff_report_digits (&group, 2, &day) && ff_report_digits (&group, 2, &hour)
           && *group++ == '/' && ff_report_digits (&group, 2, &end_day)
           && ff_report_digits (&group, 2, &end_hour) && nearest (day, hour, 0, near, ret_from)
           && nearest (end_day, end_hour, 0, *ret_from, ret_to) && *ret_from < *ret_to;
  if ((length != 6 && length != 4) || (length == 6 && !ff_report_digits (&group, 2, &day))
      || !ff_report_digits (&group, 2, &hour) || !ff_report_digits (&group, 2, &end_hour)
      || hour > 24 || end_hour > 24)
    return FALSE;
  if (length == 4)
    *ret_from = first_at (near, hour, 0);
  else if (!nearest (day, hour, 0, near, ret_from))
    return FALSE;
  *ret_to = first_at (*ret_from + 1, end_hour, 0);
  return TRUE;
}

/* "FM091930", and "FM1930" as it was. */
static gboolean
read_from (const char *group, const FfReport *report, gint64 *ret_from)
{
  const gsize length = strlen (group);
  const char *rest = group;
  int day = 0, hour, minute;

  if (length < 2 || !g_str_has_prefix (group, "FM"))
    return FALSE;
  rest += 2;
  if ((length != 8 && length != 6)
      || (length == 8 && !ff_report_digits (&rest, 2, &day))
      || !ff_report_digits (&rest, 2, &hour) || !ff_report_digits (&rest, 2, &minute) || hour > 24
      || minute > 59)
    return FALSE;
  if (length == 8)
    return nearest (day, hour, minute, report->valid_from, ret_from);
  *ret_from = first_at (report->valid_from, hour, minute);
  return TRUE;
}

static gboolean
begin_period (FfReportReader *reader, GArray *periods)
{
  const FfReport *report = reader->report;
  const guint start = reader->i;
  FfReportPeriod period = { .to = report->valid_to };

  ff_report_part_clear (&period.part);
  if (read_from (group_at (reader, reader->i), report, &period.from))
    {
      period.kind = FF_PERIOD_FROM;
      reader->i++;
      g_array_append_val (periods, period);
      return TRUE;
    }
  if (take (reader, "PROB30") || take (reader, "PROB40"))
    {
      period.kind = FF_PERIOD_PERHAPS;
      period.chance = strcmp (reader->groups[start], "PROB40") == 0 ? 40 : 30;
      take (reader, "TEMPO");
    }
  else if (take (reader, "TEMPO"))
    period.kind = FF_PERIOD_AT_TIMES;
  else if (take (reader, "BECMG"))
    period.kind = FF_PERIOD_BECOMING;
  else
    return FALSE;
  if (read_span (group_at (reader, reader->i), report->valid_from, &period.from, &period.to))
    {
      reader->i++;
      g_array_append_val (periods, period);
      return TRUE;
    }
  reader->i = start;
  return FALSE;
}

/* What holds until the next FM ends there. */
static void
end_periods (FfReport *report)
{
  guint i, j;

  for (i = 0; i < report->n_periods; i++)
    {
      FfReportPeriod *period = &report->periods[i];

      if (period->kind != FF_PERIOD_BASE && period->kind != FF_PERIOD_FROM)
        continue;
      for (j = i + 1; j < report->n_periods; j++)
        if (report->periods[j].kind == FF_PERIOD_FROM)
          {
            period->to = report->periods[j].from;
            break;
          }
    }
}

/* ---- the body ----------------------------------------------------------------------------- */

static char *
rest_of (FfReportReader *reader, const char *until)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (; reader->i < reader->n && g_strcmp0 (reader->groups[reader->i], until) != 0; reader->i++)
    {
      if (text->len > 0)
        g_string_append_c (text, ' ');
      g_string_append (text, reader->groups[reader->i]);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
read_one (FfReportReader *reader, FfReportPart *part)
{
  FfGroupReader group = { .report = reader->report,
                          .part = part,
                          .next = group_at (reader, reader->i + 1),
                          .aside = reader->aside };

  if (!ff_report_read_group (&group, reader->groups[reader->i]))
    g_ptr_array_add (reader->unread, g_strdup (reader->groups[reader->i]));
  else if (group.took_next)
    reader->i++;
  reader->i++;
}

static void
read_observation (FfReportReader *reader)
{
  static const char *const trends[] = { "NOSIG", "BECMG", "TEMPO", NULL };

  while (reader->i < reader->n && strcmp (reader->groups[reader->i], "RMK") != 0)
    if (g_strv_contains (trends, reader->groups[reader->i]))
      reader->report->trend = rest_of (reader, "RMK");
    else
      read_one (reader, &reader->report->part);
}

static void
read_forecast (FfReportReader *reader)
{
  FfReport *report = reader->report;
  GArray *periods = g_array_new (FALSE, FALSE, sizeof (FfReportPeriod));
  FfReportPeriod base = { .from = report->valid_from, .to = report->valid_to };

  ff_report_part_clear (&base.part);
  g_array_append_val (periods, base);
  while (reader->i < reader->n && strcmp (reader->groups[reader->i], "RMK") != 0)
    if (!begin_period (reader, periods))
      read_one (reader, &g_array_index (periods, FfReportPeriod, periods->len - 1).part);
  report->n_periods = periods->len;
  report->periods = (FfReportPeriod *) (void *) g_array_free (periods, FALSE);
  report->part = report->periods[0].part;
  end_periods (report);
}

static gboolean
read_report (FfReportReader *reader, gint64 now, GError **error)
{
  FfReport *report = reader->report;
  const char *group;

  read_kind (reader);
  if (!read_station (reader, error) || !read_time (reader, now, error))
    return FALSE;
  read_modifiers (reader);
  group = group_at (reader, reader->i);
  if ((report->kind == FF_REPORT_TAF || strlen (group) == 9)
      && read_span (group, report->at, &report->valid_from, &report->valid_to))
    {
      report->kind = FF_REPORT_TAF;
      reader->i++;
      read_modifiers (reader);
    }
  else if (report->kind == FF_REPORT_TAF && !report->nil)
    return refuse (error,
                   _ ("Forecast: “%s” stands where its validity belongs, as in 1806/1912"), group);
  if (report->kind == FF_REPORT_TAF && !report->nil)
    read_forecast (reader);
  else
    read_observation (reader);
  if (take (reader, "RMK"))
    report->remarks = rest_of (reader, NULL);
  return TRUE;
}

FfReport *
ff_report_read (const char *text, gint64 now, GError **error)
{
  g_autoptr (FfReport) report = g_new0 (FfReport, 1);
  g_auto (GStrv) groups = split (text, error);
  FfReportReader reader = { .report = report, .groups = groups };
  gboolean done;

  if (groups == NULL)
    return NULL;
  ff_report_part_clear (&report->part);
  reader.n = g_strv_length (groups);
  reader.aside = g_ptr_array_new ();
  reader.unread = g_ptr_array_new ();
  done = read_report (&reader, now, error);
  g_ptr_array_add (reader.aside, NULL);
  g_ptr_array_add (reader.unread, NULL);
  report->aside = (char **) g_ptr_array_free (reader.aside, FALSE);
  report->unread = (char **) g_ptr_array_free (reader.unread, FALSE);
  return done ? g_steal_pointer (&report) : NULL;
}

void
ff_report_free (FfReport *report)
{
  if (report == NULL)
    return;
  g_free (report->trend);
  g_free (report->remarks);
  g_strfreev (report->aside);
  g_strfreev (report->unread);
  g_free (report->periods);
  g_free (report);
}
