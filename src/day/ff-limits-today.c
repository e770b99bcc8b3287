/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limits-today.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-events.h"
#include "ff-limit-facts.h"
#include "ff-limit-kind.h"
#include "ff-limit-words.h"
#include "ff-number.h"

/* What stands above every list of limits. */
#define STANDING                                                                                   \
  N_ ("The crew's own limits. Airspace and notices are not known to this program. The pilot "      \
      "decides.")

static void
row_free (gpointer data)
{
  FfLimitToday *row = data;

  g_free (row->id);
  g_free (row->sheet);
  g_free (row->kind);
  g_free (row->text);
  g_free (row->bound);
  g_free (row->unit);
  g_free (row->found);
  g_free (row->reason);
  g_free (row->source);
  g_free (row->checked);
  g_free (row);
}

void
ff_limits_today_free (FfLimitsToday *today)
{
  if (today == NULL)
    return;
  g_ptr_array_unref (today->rows);
  g_ptr_array_unref (today->outside);
  g_ptr_array_unref (today->lines);
  g_free (today->standing);
  g_free (today);
}

/* ---- a record as a row to compare ---------------------------------------------------------- */

static const FfUnit *
unit_of (const FfLimit *limit)
{
  const FfLimitKind *kind = ff_limit_kind_find (limit->kind);

  return kind != NULL ? ff_unit_find (kind->dimension, limit->unit) : NULL;
}

static gboolean
anchor_minutes (const FfDay *day, FfAnchor anchor, double *ret_minutes)
{
  static const FfEvent events[] = { [FF_ANCHOR_CIVIL_DAWN] = FF_EVENT_CIVIL_DAWN,
                                    [FF_ANCHOR_SUNRISE] = FF_EVENT_SUNRISE,
                                    [FF_ANCHOR_SUNSET] = FF_EVENT_SUNSET,
                                    [FF_ANCHOR_CIVIL_DUSK] = FF_EVENT_CIVIL_DUSK };
  g_autoptr (GArray) of_day = NULL;
  const FfSkyEvent *event;
  FfSite site;
  gint64 from, to;

  *ret_minutes = 0.0;
  if (anchor == FF_ANCHOR_CLOCK)
    return TRUE;
  if (day->place == NULL || !day->has_date)
    return FALSE;
  site = (FfSite){ day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  ff_day_bounds (day->date, day->zone, &from, &to);
  of_day = ff_sky_events (from, to, &site, NULL);
  event = ff_sky_events_find (of_day, events[anchor]);
  if (event == NULL)
    return FALSE;
  *ret_minutes = (event->instant - (double) from) / 60.0;
  return TRUE;
}

/* FALSE: an anchor that this day does not have. */
static gboolean
row_of (const FfDay *day, const FfLimit *limit, FfLimitRow *ret_row)
{
  const FfUnit *unit = unit_of (limit);
  double from = 0.0, to = 0.0;

  *ret_row = (FfLimitRow){ limit->kind, limit->compare, NAN, NAN };
  if (limit->compare == FF_COMPARE_WINDOW
      && (!anchor_minutes (day, limit->anchor_from, &from)
          || !anchor_minutes (day, limit->anchor_to, &to)))
    return FALSE;
  if (unit != NULL && !isnan (limit->value))
    ret_row->value = ff_unit_to_si (unit, limit->value) + from;
  if (unit != NULL && !isnan (limit->value_to))
    ret_row->value_to = ff_unit_to_si (unit, limit->value_to) + to;
  return TRUE;
}

/* ---- when a row applies at all ------------------------------------------------------------- */

/* The sun over the hours of the plan: the part of the day each moment falls in. */
static gboolean
line_flies_in (const FfDay *day, const FfPlanLine *line, double above_deg, double below_deg)
{
  gint64 at;

  for (at = line->off_by; at <= line->down; at += FF_MINUTE)
    {
      const double altitude_deg = ff_sun_track_altitude_deg (&day->sun, (double) at);

      if (altitude_deg > above_deg && altitude_deg <= below_deg)
        return TRUE;
    }
  return FALSE;
}

static gboolean
flies_in (const FfDay *day, const GPtrArray *lines, double above_deg, double below_deg)
{
  guint i;

  for (i = 0; i < lines->len; i++)
    if (line_flies_in (day, g_ptr_array_index (lines, i), above_deg, below_deg))
      return TRUE;
  return FALSE;
}

/* Why a condition is known not to arise on these lines (NULL: not planned), or NULL. What can't be
 * told counts as arising. */
static const char *
does_not_arise (const FfDay *day, const GPtrArray *lines, FfOnlyIf only_if)
{
  const gboolean sun = lines != NULL && day->place != NULL && day->has_date;

  switch (only_if)
    {
    case FF_ONLY_DAYLIGHT:
      return sun && !flies_in (day, lines, -0.8333, 90.0) ? _ ("no flight in daylight") : NULL;
    case FF_ONLY_TWILIGHT:
      return sun && !flies_in (day, lines, -6.0, -0.8333) ? _ ("no flight in civil twilight")
                                                          : NULL;
    case FF_ONLY_NIGHT:
      return sun && !flies_in (day, lines, -90.0, -6.0) ? _ ("no flight at night") : NULL;
    case FF_ONLY_OBSERVER_USED:
      return ff_job_crew_has (day->crew, FF_ROLE_OBSERVER) ? NULL
                                                           : _ ("no observer in the crew of the job");
    case FF_ONLY_ALWAYS:
    case FF_ONLY_NEAR_PEOPLE:
    case FF_ONLY_OVER_WATER:
    case FF_ONLY_CONTROLLED_AIRSPACE:
      break;
    }
  return NULL;
}

/* ---- in words ------------------------------------------------------------------------------ */

static char *
with_unit (double value, int decimals, const FfLimit *limit, gboolean clock)
{
  g_autofree char *number
      = clock ? ff_clock_format ((int) CLAMP (floor (value + 0.5), 0, FF_CLOCK_MAX))
              : ff_number_format (value, decimals);

  return g_strdup_printf ("%s%s%s", number, *limit->unit != '\0' ? " " : "", limit->unit);
}

static gboolean
is_clock (const FfLimit *limit)
{
  return limit->compare == FF_COMPARE_BY_TIME || limit->compare == FF_COMPARE_WINDOW;
}

static char *
bound_words (const FfLimit *limit, const FfLimitRow *row)
{
  const char *word = ff_name_text (&ff_names_compare, limit->compare);
  g_autofree char *value = NULL, *other = NULL;

  if (isnan (limit->value))
    return ff_limit_with_datum (limit, g_strdup (word));
  /* Anchored windows are shown as the clock they make today. */
  value = with_unit (is_clock (limit) ? row->value : limit->value, 2, limit,
                     is_clock (limit));
  if (isnan (limit->value_to))
    return ff_limit_with_datum (limit, g_strdup_printf ("%s %s", word, value));
  other = with_unit (is_clock (limit) ? row->value_to : limit->value_to, 2, limit,
                     is_clock (limit));
  /* TRANSLATORS: "between 5 °C and 40 °C", "within the hours 06:20 and 19:57". */
  return ff_limit_with_datum (limit, g_strdup_printf (_ ("%s %s and %s"), word, value, other));
}

static char *
value_words (const FfLimit *limit, const FfLimitToday *row, const FfLimitFact *fact)
{
  g_autofree char *low = NULL, *high = NULL;

  if (fact->is == FF_FACT_FLAG)
    return g_strdup (fact->high > 0 ? _ ("yes") : _ ("no"));
  low = with_unit (row->low, 1, limit, is_clock (limit));
  high = with_unit (row->high, 1, limit, is_clock (limit));
  if (fact->low == fact->high)
    return g_steal_pointer (&low);
  if (isinf (fact->high))
    return g_strdup_printf (_ ("%s or more"), low);
  if (fact->low <= 0.0 && fact->high_open)
    return g_strdup_printf (_ ("less than %s"), high);
  if (fact->high_open)
    return g_strdup_printf (_ ("%s to just under %s"), low, high);
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static char *
source_words (const FfLimit *limit)
{
  GString *text = g_string_new (ff_name_text (&ff_names_rule, limit->rule));

  if (*limit->authority != '\0')
    g_string_append_printf (text, ", %s", limit->authority);
  if (*limit->source != '\0')
    g_string_append_printf (text, ": %s", limit->source);
  if (*limit->permit != '\0')
    /* TRANSLATORS: the number of a permit or waiver. */
    g_string_append_printf (text, _ (", permit %s"), limit->permit);
  return g_string_free (text, FALSE);
}

static gboolean
is_overdue (const FfDay *day, const FfLimit *limit)
{
  return *limit->checked_on == '\0'
         || (*limit->expires_on != '\0' && *day->job->date != '\0'
             && strcmp (limit->expires_on, day->job->date) < 0);
}

static char *
checked_words (const FfLimit *limit)
{
  if (*limit->checked_on == '\0')
    return g_strdup ("");
  if (*limit->checked_by == '\0')
    return g_strdup (limit->checked_on);
  /* TRANSLATORS: a date, and by whom. */
  return g_strdup_printf (_ ("%s by %s"), limit->checked_on, limit->checked_by);
}

/* ---- rows ---------------------------------------------------------------------------------- */

static void
put_found (FfLimitToday *row, const FfLimit *limit, const FfDayFact *fact)
{
  const FfUnit *unit = unit_of (limit);
  g_autofree char *value = NULL;

  row->low = row->high = NAN;
  if (fact == NULL || (fact->fact.is != FF_FACT_VALUE && fact->fact.is != FF_FACT_FLAG))
    {
      row->found = g_strdup ("");
      return;
    }
  if (fact->fact.is == FF_FACT_VALUE && unit != NULL)
    {
      row->low = ff_unit_from_si (unit, fact->fact.low);
      row->high = isinf (fact->fact.high) ? NAN : ff_unit_from_si (unit, fact->fact.high);
    }
  value = value_words (limit, row, &fact->fact);
  row->found = g_strdup_printf ("%s, %s", value, fact->whence);
}

static char *
reason_words (const FfLimitToday *row, const FfDayFact *fact, const char *not_arising)
{
  if (not_arising != NULL)
    return g_strdup (not_arising);
  if (row->answer == FF_LIMIT_NOT_APPLICABLE)
    return g_strdup (fact != NULL && fact->reason != NULL ? fact->reason : _ ("for information"));
  if (row->answer != FF_LIMIT_NOT_ASSESSED)
    return g_strdup ("");
  return g_strdup (*row->found != '\0' ? _ ("what is known does not settle it")
                                       : _ ("nothing is entered"));
}

static FfLimitToday *
row_new (const FfDay *day, const FfLimit *limit, const FfLimitRow *row, const FfDayFact *fact)
{
  FfLimitToday *made = g_new0 (FfLimitToday, 1);

  made->id = g_strdup (limit->id);
  made->sheet = g_strdup (limit->sheet);
  made->kind = g_strdup (limit->kind);
  made->text = g_strdup (limit->text);
  made->bound = bound_words (limit, row);
  made->compare = limit->compare;
  made->limit = limit->value;
  made->limit_to = limit->value_to;
  made->unit = g_strdup (limit->unit);
  made->source = source_words (limit);
  made->checked = checked_words (limit);
  made->overdue = is_overdue (day, limit);
  made->example = limit->example;
  put_found (made, limit, fact);
  return made;
}

static char *
outside_words (const FfLimitToday *row)
{
  /* TRANSLATORS: a limit, what was found, the bound, whose rule it is. */
  return g_strdup_printf (_ ("%s: %s. Outside: %s (%s)."), row->text, row->found, row->bound,
                          row->source);
}

static void
add_row (FfLimitsToday *today,
         const FfDay *day,
         const FfDayPlan *plan,
         const FfLimit *limit,
         GArray *facts)
{
  const char *not_arising
      = does_not_arise (day, plan != NULL ? plan->lines : NULL, limit->only_if);
  const FfDayFact *fact = ff_day_fact_find (facts, limit->kind);
  FfLimitRow row;
  FfLimitToday *made;

  if (!row_of (day, limit, &row) && not_arising == NULL)
    not_arising = _ ("the sun does not do that on this day");
  made = row_new (day, limit, &row, fact);
  made->answer = not_arising != NULL ? FF_LIMIT_NOT_APPLICABLE
                                     : ff_limits_answer (&row, fact != NULL ? &fact->fact : NULL);
  made->reason = reason_words (made, fact, not_arising);
  today->worst = MAX (today->worst, made->answer);
  g_ptr_array_add (today->rows, made);
  if (made->answer == FF_LIMIT_OUTSIDE)
    g_ptr_array_add (today->outside, outside_words (made));
}

/* Which rows bind, of those that apply. */
static void
mark_binding (FfLimitsToday *today, const FfDay *day)
{
  const guint n = today->rows->len;
  g_autofree FfLimitRow *rows = g_new0 (FfLimitRow, n);
  g_autofree FfLimitAnswer *answers = g_new0 (FfLimitAnswer, n);
  g_autofree gboolean *binds = g_new0 (gboolean, n);
  guint i;

  for (i = 0; i < n; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (today->rows, i);

      if (!row_of (day, g_ptr_array_index (day->limits, i), &rows[i])
          || row->answer == FF_LIMIT_NOT_APPLICABLE)
        rows[i].compare = FF_COMPARE_INFORMATION;
    }
  ff_limits_assess (rows, n, NULL, 0, answers, binds);
  for (i = 0; i < n; i++)
    ((FfLimitToday *) g_ptr_array_index (today->rows, i))->binds = binds[i];
}

/* ---- the lines that a forecast touches ----------------------------------------------------- */

static GPtrArray *
touches (const FfDay *day, FfPlanLine *line, const FfReport *forecast, double aerodrome_m)
{
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) only = g_ptr_array_new ();
  g_autoptr (GArray) facts = NULL;
  FfReportPart worst;
  guint i;

  if (forecast == NULL || !ff_report_worst (forecast, line->off_by, line->down, &worst))
    return texts;
  g_ptr_array_add (only, line);
  facts = ff_day_report_facts (day, forecast, &worst, forecast->station, aerodrome_m,
                               ff_day_flying_height (day));
  for (i = 0; i < day->limits->len; i++)
    {
      const FfLimit *limit = g_ptr_array_index (day->limits, i);
      const FfDayFact *fact = ff_day_fact_find (facts, limit->kind);
      g_autoptr (GPtrArray) one = g_ptr_array_new_with_free_func (row_free);
      FfLimitRow row;
      FfLimitToday *made;

      if (fact == NULL || does_not_arise (day, only, limit->only_if) != NULL
          || !row_of (day, limit, &row)
          || ff_limits_answer (&row, &fact->fact) != FF_LIMIT_OUTSIDE)
        continue;
      made = row_new (day, limit, &row, fact);
      g_ptr_array_add (one, made);
      /* TRANSLATORS: a forecast crosses a limit while this sortie flies. */
      g_ptr_array_add (texts, g_strdup_printf (_ ("%s: forecast %s; %s"), made->text, made->found,
                                               made->bound));
    }
  return texts;
}

static void
add_lines (FfLimitsToday *today, const FfDay *day, const FfDayPlan *plan)
{
  const FfWeatherReport *record;
  g_autoptr (FfReport) forecast = ff_day_latest_report (day, TRUE, &record);
  guint i;

  for (i = 0; plan != NULL && i < plan->lines->len; i++)
    g_ptr_array_add (today->lines,
                     touches (day, g_ptr_array_index (plan->lines, i), forecast,
                              forecast != NULL ? record->elevation_m : NAN));
}

gint64
ff_limits_clock (const FfDay *day, gint64 now)
{
  gint64 today_from, today_to, from, to;

  if (!day->job->example || !day->has_date)
    return now;
  ff_day_bounds (ff_instant_date (now, day->zone), day->zone, &today_from, &today_to);
  ff_day_bounds (day->date, day->zone, &from, &to);
  return MIN (from + (now - today_from), to - 1);
}

FfLimitsToday *
ff_limits_today (const FfDay *day, const FfDayPlan *plan, gint64 now)
{
  FfLimitsToday *today = g_new0 (FfLimitsToday, 1);
  g_autoptr (GArray) facts = ff_day_limit_facts (day, plan, ff_limits_clock (day, now));
  guint i;

  today->rows = g_ptr_array_new_with_free_func (row_free);
  today->outside = g_ptr_array_new_with_free_func (g_free);
  today->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  today->standing = g_strdup (_ (STANDING));
  for (i = 0; i < day->limits->len; i++)
    add_row (today, day, plan, g_ptr_array_index (day->limits, i), facts);
  mark_binding (today, day);
  add_lines (today, day, plan);
  return today;
}
