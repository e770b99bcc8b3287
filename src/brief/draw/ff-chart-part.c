/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-chart-part.h"

#include "ff-civil.h"

#define LEAST_SPAN (25 * FF_MINUTE)

static double *
after (double *values, guint n)
{
  return values != NULL ? values + n : NULL;
}

static void
cut_curves (FfChartFacts *part, gint64 from, gint64 to)
{
  guint first = (guint) ((from - part->from) / part->step_s);
  guint last = (guint) ((to - part->from + part->step_s - 1) / part->step_s);

  if (part->n_samples == 0)
    return;
  first = MIN (first, part->n_samples - 1);
  last = CLAMP (last, first, part->n_samples - 1);
  part->to = MIN (part->to, part->from + (gint64) last * part->step_s);
  part->from += (gint64) first * part->step_s;
  part->n_samples = last - first + 1;
  part->sun_altitude_deg = after (part->sun_altitude_deg, first);
  part->ev100 = after (part->ev100, first);
  part->low_ev100 = after (part->low_ev100, first);
  part->high_ev100 = after (part->high_ev100, first);
  part->need_stops = after (part->need_stops, first);
}

static void
cut_instants (FfChartFacts *part)
{
  gint64 *instants[] = { &part->sunrise, &part->sunset, &part->civil_dawn, &part->civil_dusk,
                         &part->now };

  for (guint i = 0; i < G_N_ELEMENTS (instants); i++)
    if (*instants[i] < part->from || *instants[i] > part->to)
      *instants[i] = 0;
}

static GPtrArray *
events_within (const FfChartFacts *part)
{
  GPtrArray *within = g_ptr_array_new ();

  for (guint i = 0; i < part->events->len; i++)
    {
      FfChartEvent *event = g_ptr_array_index (part->events, i);

      if (event->at >= part->from && event->at <= part->to)
        g_ptr_array_add (within, event);
    }
  return within;
}

static void
cut_plan (FfChartPart *self, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      if (line->off_by < self->facts.to && MAX (line->land_by, line->down) > self->facts.from)
        g_ptr_array_add (self->plan.lines, line);
    }
  for (guint i = 0; i < plan->charges->len; i++)
    {
      FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);

      if (charge->cool_from < self->facts.to && charge->ready_at > self->facts.from)
        g_ptr_array_add (self->plan.charges, charge);
    }
}

FfChartPart *
ff_chart_part_new (const FfChartFacts *facts, const FfDayPlan *plan, gint64 from, gint64 to)
{
  FfChartPart *self = g_new0 (FfChartPart, 1);

  self->facts = *facts;
  cut_curves (&self->facts, MAX (from, facts->from), MIN (to, facts->to));
  cut_instants (&self->facts);
  self->facts.events = events_within (&self->facts);
  if (plan == NULL)
    return self;
  self->plan = *plan;
  self->plan.lines = g_ptr_array_new ();
  self->plan.charges = g_ptr_array_new ();
  cut_plan (self, plan);
  return self;
}

void
ff_chart_part_free (FfChartPart *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->facts.events);
  g_clear_pointer (&self->plan.lines, g_ptr_array_unref);
  g_clear_pointer (&self->plan.charges, g_ptr_array_unref);
  g_free (self);
}

int
ff_chart_part_most (const FfChartFacts *facts)
{
  int most = 0;

  while ((facts->to - facts->from) >> (most + 1) >= LEAST_SPAN)
    most++;
  return most;
}

void
ff_chart_part_place (const FfChartFacts *facts,
                     int halved,
                     gint64 first,
                     gint64 last,
                     gint64 *from,
                     gint64 *to)
{
  gint64 span = (facts->to - facts->from) >> CLAMP (halved, 0, ff_chart_part_most (facts));
  gint64 start = (first + last) / 2 - span / 2;

  span -= span % facts->step_s;
  if (*to - *from == span && *from >= facts->from && *to <= facts->to && first >= *from
      && last <= *to)
    return;
  start = CLAMP (start, facts->from, MAX (facts->to - span, facts->from));
  *from = start - (start - facts->from) % facts->step_s;
  *to = *from + span;
}
