/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart as a table, and the words that picture and table share. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-advise.h"
#include "ff-civil.h"
#include "ff-day-chart-private.h"
#include "ff-number.h"

char *
ff_chart_one_decimal (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  double shown = floor (fabs (value) * 10 + 0.5) / 10;

  if (!isfinite (value))
    return g_strdup ("–");
  g_ascii_formatd (buffer, sizeof buffer, "%.1f", MIN (shown, 1e6));
  return g_strconcat (value < 0 && shown > 0 ? "−" : "", buffer, NULL);
}

double
ff_chart_sample (const FfChartFacts *facts, const double *values, gint64 at)
{
  double index = (double) (at - facts->from) / facts->step_s;
  double part = index - floor (index);
  guint i = (guint) MAX (floor (index), 0);

  if (index < 0 || values == NULL || i >= facts->n_samples)
    return NAN;
  if (part == 0)
    return values[i];
  return i + 1 < facts->n_samples ? values[i] + part * (values[i + 1] - values[i]) : NAN;
}

static gboolean
misses (const FfPlanSettings *settings)
{
  /* A hair more than the reach itself, which the planner still counts as right. */
  return fabs (settings->error_stops) > FF_REACH_STOPS + 1e-6;
}

static const FfPlanTake *
worst_take (const FfPlanLine *line, double *ret_error)
{
  const FfPlanTake *worst = NULL;

  *ret_error = 0;
  for (guint i = 0; i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);
      const FfPlanSettings *ends[] = { &take->start, &take->end };

      for (guint e = 0; e < G_N_ELEMENTS (ends); e++)
        if (misses (ends[e]) && fabs (ends[e]->error_stops) > fabs (*ret_error))
          {
            worst = take;
            *ret_error = ends[e]->error_stops;
          }
    }
  return worst;
}

gboolean
ff_chart_line_holds (const FfPlanLine *line)
{
  double error;

  return worst_take (line, &error) == NULL;
}

char *
ff_chart_shots (const FfPlanLine *line, const char *between)
{
  GString *shots = g_string_new (NULL);

  for (guint i = 0; i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      g_string_append_printf (shots, "%s%s", i > 0 ? between : "", take->shot);
    }
  return g_string_free (shots, FALSE);
}

static char *
off_sentence (const FfPlanLine *line)
{
  double error;
  const FfPlanTake *take = worst_take (line, &error);
  g_autofree char *by = NULL;

  if (take == NULL)
    return NULL;
  by = ff_chart_one_decimal (fabs (error));
  return error > 0
             /* Translators: number of a sortie, its shot, stops. */
             ? g_strdup_printf (_ ("No filter holds sortie %d: shot %s is %s stops too bright."),
                                line->line, take->shot, by)
             : g_strdup_printf (_ ("No filter holds sortie %d: shot %s is %s stops too dark."),
                                line->line, take->shot, by);
}

static char *
missed_sentence (const FfPlanMiss *miss)
{
  /* Translators: label of a shot, its title, why it is not flown. */
  return g_strdup_printf (_ ("Not flown: %s, %s: %s"), miss->shot, miss->title, miss->reason);
}

GPtrArray *
ff_chart_sentences (const FfDayPlan *plan)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; plan != NULL && i < plan->missed->len; i++)
    g_ptr_array_add (sentences, missed_sentence (g_ptr_array_index (plan->missed, i)));
  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    {
      char *sentence = off_sentence (g_ptr_array_index (plan->lines, i));

      if (sentence != NULL)
        g_ptr_array_add (sentences, sentence);
    }
  return sentences;
}

static void
row_free (gpointer data)
{
  FfChartRow *row = data;

  g_free (row->when);
  g_free (row->what);
  g_free (row->detail);
  g_free (row);
}

/* Takes the three texts; NULL is an empty one. */
static void
add_row (GPtrArray *rows, FfChartRowKind kind, int line, char *when, char *what, char *detail)
{
  FfChartRow *row = g_new0 (FfChartRow, 1);

  row->kind = kind;
  row->line = line;
  row->when = when != NULL ? when : g_strdup ("");
  row->what = what != NULL ? what : g_strdup ("");
  row->detail = detail != NULL ? detail : g_strdup ("");
  g_ptr_array_add (rows, row);
}

static void
add_sun_rows (GPtrArray *rows, const FfChartFacts *facts)
{
  const struct {
    gint64 at;
    const char *text;
  } events[] = { { facts->civil_dawn, _ ("Civil twilight begins") },
                 { facts->sunrise, _ ("Sunrise") },
                 { facts->sunset, _ ("Sunset") },
                 { facts->civil_dusk, _ ("Civil twilight ends") } };

  for (guint i = 0; i < G_N_ELEMENTS (events); i++)
    if (events[i].at != 0)
      add_row (rows, FF_CHART_ROW_SUN, 0, ff_instant_clock ((double) events[i].at, facts->zone),
               g_strdup (events[i].text), NULL);
}

static void
add_event_rows (GPtrArray *rows, const FfChartFacts *facts)
{
  if (facts->now != 0)
    add_row (rows, FF_CHART_ROW_EVENT, 0, ff_instant_clock ((double) facts->now, facts->zone),
             g_strdup (_ ("now")), NULL);
  for (guint i = 0; i < facts->events->len; i++)
    {
      const FfChartEvent *event = g_ptr_array_index (facts->events, i);

      add_row (rows, event->is_reading ? FF_CHART_ROW_READING : FF_CHART_ROW_EVENT, 0,
               ff_instant_clock ((double) event->at, facts->zone), g_strdup (event->text),
               g_strdup (event->detail));
    }
}

static char *
need_text (double need)
{
  g_autofree char *value = ff_chart_one_decimal (need);

  /* Translators: how many stops of filter the camera would need. */
  return isfinite (need) ? g_strdup_printf (_ ("need %s stops"), value) : NULL;
}

static char *
altitude_text (double altitude)
{
  g_autofree char *degrees = ff_number_format (floor (fabs (altitude) + 0.5), 0);

  return g_strconcat (altitude <= -0.5 ? "−" : "", degrees, NULL);
}

static void
add_light_row (GPtrArray *rows, const FfChartFacts *facts, gint64 at)
{
  double altitude = ff_chart_sample (facts, facts->sun_altitude_deg, at);
  g_autofree char *sun = altitude_text (altitude);
  g_autofree char *ev = ff_chart_one_decimal (ff_chart_sample (facts, facts->ev100, at));
  g_autofree char *low = ff_chart_one_decimal (ff_chart_sample (facts, facts->low_ev100, at));
  g_autofree char *high = ff_chart_one_decimal (ff_chart_sample (facts, facts->high_ev100, at));

  if (!isfinite (altitude))
    return;
  add_row (rows, FF_CHART_ROW_LIGHT, 0, ff_instant_clock ((double) at, facts->zone),
           /* Translators: the sun's altitude, the light and the least and most it may be. */
           g_strdup_printf (_ ("sun %s°, EV %s (%s to %s)"), sun, ev, low, high),
           need_text (ff_chart_sample (facts, facts->need_stops, at)));
}

static void
add_light_rows (GPtrArray *rows, const FfDayChart *chart, const FfChartFacts *facts)
{
  gint64 at = facts->from;

  while ((at = ff_time_axis_next (&chart->axis, at, 30)) != G_MAXINT64)
    {
      add_light_row (rows, facts, at);
      at += FF_MINUTE;
    }
}

static char *
span_text (const FfChartFacts *facts, gint64 from, gint64 to)
{
  g_autofree char *begin = ff_instant_clock ((double) from, facts->zone);
  g_autofree char *end = ff_instant_clock ((double) to, facts->zone);

  return g_strdup_printf ("%s–%s", begin, end);
}

static char *
filter_text (const FfPlanLine *line)
{
  g_autofree char *stops = ff_number_format (line->filter_stops, 1);

  if (line->filters->len == 0)
    return g_strdup (_ ("no filter"));
  /* Translators: strength of a filter, then what is engraved on it. */
  return g_strdup_printf (_ ("%s stops (%s)"), stops, line->engraving);
}

static void
add_sortie_row (GPtrArray *rows, const FfChartFacts *facts, const FfPlanLine *line)
{
  g_autofree char *shots = ff_chart_shots (line, ", ");
  g_autofree char *filter = filter_text (line);
  g_autofree char *land_by = ff_instant_clock ((double) line->land_by, facts->zone);
  g_autofree char *off = off_sentence (line);

  add_row (rows, FF_CHART_ROW_SORTIE, line->line, span_text (facts, line->off_by, line->down),
           /* Translators: number of a sortie, labels of its shots, label of its battery. */
           g_strdup_printf (_ ("sortie %d: %s, battery %s"), line->line, shots, line->battery),
           g_strdup_printf (_ ("%s, land by %s%s%s"), filter, land_by, off != NULL ? ". " : "",
                            off != NULL ? off : ""));
}

void
ff_chart_rows_lock (GPtrArray *rows, int line)
{
  for (guint i = 0; i < rows->len; i++)
    {
      FfChartRow *row = g_ptr_array_index (rows, i);
      char *detail;

      if (row->kind != FF_CHART_ROW_SORTIE || row->line != line)
        continue;
      /* Translators: a sortie that the crew has decided about; then its filter and when to land. */
      detail = g_strdup_printf (_ ("locked, %s"), row->detail);
      g_free (row->detail);
      row->detail = detail;
    }
}

static void
add_turn_row (GPtrArray *rows,
              const FfChartFacts *facts,
              const FfPlanLine *landed,
              const FfPlanLine *next)
{
  int minutes = (int) ((next->off_by - landed->down) / FF_MINUTE);
  gboolean filter = landed->filter_stops != next->filter_stops;

  add_row (rows, FF_CHART_ROW_TURNROUND, 0, span_text (facts, landed->down, next->off_by),
           g_strdup_printf (ngettext ("turn-round, %d minute", "turn-round, %d minutes",
                                      (gulong) MAX (minutes, 0)),
                            minutes),
           g_strdup_printf (filter ? _ ("battery %s, another filter") : _ ("battery %s"),
                            next->battery));
}

static void
add_charge_row (GPtrArray *rows, const FfChartFacts *facts, const FfPlanCharge *charge)
{
  g_autofree char *from = ff_instant_clock ((double) charge->charge_from, facts->zone);
  g_autofree char *ready = ff_instant_clock ((double) charge->ready_at, facts->zone);

  add_row (rows, FF_CHART_ROW_CHARGE, 0, span_text (facts, charge->cool_from, charge->ready_at),
           /* Translators: a battery, when its charge begins and ends. */
           g_strdup_printf (_ ("battery %s cools, charges from %s, ready %s"), charge->battery,
                            from, ready),
           charge->attended_by != NULL && charge->attended_by[0] != '\0'
               ? g_strdup_printf (_ ("attended by %s"), charge->attended_by)
               : NULL);
}

static void
add_plan_rows (GPtrArray *rows, const FfChartFacts *facts, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (i > 0)
        add_turn_row (rows, facts, g_ptr_array_index (plan->lines, i - 1), line);
      add_sortie_row (rows, facts, line);
    }
  for (guint i = 0; i < plan->charges->len; i++)
    add_charge_row (rows, facts, g_ptr_array_index (plan->charges, i));
  for (guint i = 0; i < plan->missed->len; i++)
    add_row (rows, FF_CHART_ROW_MISSED, 0, NULL,
             missed_sentence (g_ptr_array_index (plan->missed, i)), NULL);
}

GPtrArray *
ff_chart_rows (const FfDayChart *chart, const FfChartFacts *facts, const FfDayPlan *plan)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (row_free);

  add_sun_rows (rows, facts);
  add_event_rows (rows, facts);
  add_light_rows (rows, chart, facts);
  if (plan != NULL)
    add_plan_rows (rows, facts, plan);
  return rows;
}
