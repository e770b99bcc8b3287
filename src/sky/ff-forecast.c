/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "ff-report-groups.h"
#include "ff-report.h"

#define KNOT (1852.0 / 3600.0)

FfCeiling
ff_report_ceiling (const FfReportPart *part, double *ret_m)
{
  FfCeiling answer = part->clear || part->n_layers > 0 ? FF_CEILING_NONE : FF_CEILING_UNKNOWN;
  double lowest = INFINITY, unknown = INFINITY;
  guint i;

  *ret_m = NAN;
  if (part->sky_hidden && part->vertical_visibility_m.is == FF_REPORTED_MISSING)
    return FF_CEILING_UNKNOWN;
  if (part->sky_hidden)
    lowest = part->vertical_visibility_m.value;
  for (i = 0; i < part->n_layers; i++)
    {
      const FfCloudLayer *layer = &part->layers[i];
      const double base = layer->base_m.is == FF_REPORTED_MISSING ? 0.0 : layer->base_m.value;

      if (layer->cover == FF_COVER_UNKNOWN
          || (layer->cover >= FF_COVER_BROKEN && layer->base_m.is == FF_REPORTED_MISSING))
        unknown = MIN (unknown, base);
      else if (layer->cover >= FF_COVER_BROKEN)
        lowest = MIN (lowest, base);
    }
  /* Cloud that might be a lower ceiling leaves the ceiling open. */
  if (unknown < lowest || (part->cloud_unknown && isinf (lowest)))
    return FF_CEILING_UNKNOWN;
  if (isinf (lowest))
    return answer;
  *ret_m = lowest;
  return FF_CEILING_KNOWN;
}

FfReported
ff_report_cloud_base (const FfReportPart *part)
{
  FfReported lowest = { FF_REPORTED_MISSING, NAN };
  guint i;

  if (part->cloud_unknown
      || (part->sky_hidden && part->vertical_visibility_m.is == FF_REPORTED_MISSING))
    return lowest;
  if (part->clear && part->clear_to_m > 0)
    lowest = (FfReported){ FF_REPORTED_OR_MORE, part->clear_to_m };
  if (part->sky_hidden)
    lowest = part->vertical_visibility_m;
  for (i = 0; i < part->n_layers; i++)
    {
      const FfReported base = part->layers[i].base_m;

      if (base.is == FF_REPORTED_MISSING)
        return (FfReported){ FF_REPORTED_MISSING, NAN };
      if (lowest.is == FF_REPORTED_MISSING || base.value < lowest.value)
        lowest = base;
    }
  return lowest;
}

FfReported
ff_report_gust_limit (const FfReportPart *part)
{
  double unsaid;

  if (part->gust_ms.is != FF_REPORTED_MISSING || part->wind_ms.is == FF_REPORTED_MISSING)
    return part->gust_ms;
  if (part->wind_unit_ms == 1.0)
    unsaid = 5.0;
  else
    unsaid = part->wind_unit_ms < 0.4 ? 20.0 / 3.6 : 10.0 * KNOT;
  return (FfReported){ .is = part->wind_ms.is == FF_REPORTED_OR_MORE ? FF_REPORTED_OR_MORE
                                                                     : FF_REPORTED_LESS_THAN,
                       .value = part->wind_ms.value + unsaid };
}

static void
copy_cloud (FfReportPart *to, const FfReportPart *from)
{
  to->clear = from->clear;
  to->clear_to_m = from->clear_to_m;
  to->cloud_unknown = from->cloud_unknown;
  memcpy (to->layers, from->layers, sizeof to->layers);
  to->n_layers = from->n_layers;
  to->sky_hidden = from->sky_hidden;
  to->vertical_visibility_m = from->vertical_visibility_m;
}

/* What a change names replaces what stood. */
static void
overlay (FfReportPart *part, const FfReportPart *change)
{
  FfReportPart old = *part;

  *part = *change;
  part->names |= old.names;
  if (!(change->names & FF_NAMES_WIND))
    {
      part->wind_deg = old.wind_deg;
      part->wind_variable = old.wind_variable;
      part->veer_from_deg = old.veer_from_deg;
      part->veer_to_deg = old.veer_to_deg;
      part->wind_ms = old.wind_ms;
      part->gust_ms = old.gust_ms;
      part->wind_unit_ms = old.wind_unit_ms;
    }
  if (!(change->names & FF_NAMES_VISIBILITY))
    {
      part->visibility_m = old.visibility_m;
      part->lowest_visibility_m = old.lowest_visibility_m;
    }
  if (!(change->names & FF_NAMES_WEATHER))
    {
      memcpy (part->weather, old.weather, sizeof part->weather);
      part->n_weather = old.n_weather;
    }
  if (!(change->names & FF_NAMES_CLOUD))
    copy_cloud (part, &old);
  if (!(change->names & (FF_NAMES_VISIBILITY | FF_NAMES_WEATHER | FF_NAMES_CLOUD)))
    part->cavok = old.cavok;
}

gboolean
ff_report_prevailing (const FfReport *report, gint64 at, FfReportPart *ret_part)
{
  guint i;

  *ret_part = report->part;
  if (report->kind != FF_REPORT_TAF)
    return TRUE;
  if (at < report->valid_from || at >= report->valid_to || report->cancelled || report->nil)
    return FALSE;
  for (i = 0; i < report->n_periods; i++)
    {
      const FfReportPeriod *period = &report->periods[i];

      if (period->kind == FF_PERIOD_FROM && period->from <= at)
        *ret_part = period->part;
      else if (period->kind == FF_PERIOD_BECOMING && period->to <= at)
        overlay (ret_part, &period->part);
    }
  return TRUE;
}

static void
take_stronger (FfReported *worst, FfReported other)
{
  if (other.is != FF_REPORTED_MISSING
      && (worst->is == FF_REPORTED_MISSING || other.value > worst->value
          || (other.value == worst->value && other.is == FF_REPORTED_OR_MORE)))
    *worst = other;
}

static void
take_weaker (FfReported *worst, FfReported other)
{
  if (other.is != FF_REPORTED_MISSING
      && (worst->is == FF_REPORTED_MISSING || other.value < worst->value
          || (other.value == worst->value && other.is == FF_REPORTED_LESS_THAN)))
    *worst = other;
}

static void
add_weather (FfReportPart *worst, const FfReportPart *other)
{
  guint i, j;

  for (i = 0; i < other->n_weather; i++)
    {
      for (j = 0; j < worst->n_weather; j++)
        if (strcmp (worst->weather[j], other->weather[i]) == 0)
          break;
      if (j == worst->n_weather && j < FF_REPORT_WEATHERS)
        memcpy (worst->weather[worst->n_weather++], other->weather[i], sizeof other->weather[i]);
    }
}

/* The cloud with the lower ceiling; an unknown one is worse than any. */
static gboolean
cloud_is_worse (const FfReportPart *a, const FfReportPart *b)
{
  double ceiling_a, ceiling_b;
  const FfCeiling is_a = ff_report_ceiling (a, &ceiling_a);
  const FfCeiling is_b = ff_report_ceiling (b, &ceiling_b);

  if (is_a == FF_CEILING_UNKNOWN || is_b == FF_CEILING_UNKNOWN)
    return is_a == FF_CEILING_UNKNOWN && is_b != FF_CEILING_UNKNOWN;
  if (is_a == FF_CEILING_NONE && is_b == FF_CEILING_NONE)
    return b->clear && (!a->clear || a->clear_to_m < b->clear_to_m);
  if (is_a == FF_CEILING_NONE || is_b == FF_CEILING_NONE)
    return is_b == FF_CEILING_NONE;
  return ceiling_a < ceiling_b;
}

/* Cloud that makes no ceiling is still in the way of whoever keeps below cloud. */
static void
add_thin_cloud (FfReportPart *worst, const FfReportPart *other)
{
  guint i;

  for (i = 0; i < other->n_layers && worst->n_layers < FF_REPORT_LAYERS; i++)
    {
      const FfReported lowest = ff_report_cloud_base (worst);
      const FfCloudLayer *layer = &other->layers[i];

      if ((layer->cover == FF_COVER_FEW || layer->cover == FF_COVER_SCATTERED)
          && layer->base_m.is == FF_REPORTED_EXACT && lowest.is != FF_REPORTED_MISSING
          && layer->base_m.value < lowest.value)
        worst->layers[worst->n_layers++] = *layer;
    }
  worst->clear = worst->clear && worst->n_layers == 0;
}

static void
take_worse (FfReportPart *worst, const FfReportPart *other)
{
  const FfReported gust = worst->gust_ms;
  const FfReportPart before = *worst;

  if (other->wind_ms.is != FF_REPORTED_MISSING
      && (worst->wind_ms.is == FF_REPORTED_MISSING || other->wind_ms.value > worst->wind_ms.value))
    {
      worst->wind_deg = other->wind_deg;
      worst->wind_variable = other->wind_variable;
      worst->veer_from_deg = other->veer_from_deg;
      worst->veer_to_deg = other->veer_to_deg;
      worst->wind_ms = other->wind_ms;
      worst->wind_unit_ms = other->wind_unit_ms;
    }
  worst->gust_ms = gust;
  take_stronger (&worst->gust_ms, other->gust_ms);
  take_weaker (&worst->visibility_m, other->visibility_m);
  take_weaker (&worst->lowest_visibility_m, other->lowest_visibility_m);
  worst->cavok = worst->cavok && other->cavok;
  add_weather (worst, other);
  if (cloud_is_worse (other, worst))
    {
      copy_cloud (worst, other);
      add_thin_cloud (worst, &before);
    }
  else
    add_thin_cloud (worst, other);
  worst->names |= other->names;
}

/* What stands at an instant, and on top of it each change that may already hold. */
static gboolean
worst_at (const FfReport *report, gint64 at, FfReportPart *worst)
{
  FfReportPart prevailing;
  guint i;

  if (!ff_report_prevailing (report, at, &prevailing))
    return FALSE;
  take_worse (worst, &prevailing);
  for (i = 0; i < report->n_periods; i++)
    {
      const FfReportPeriod *period = &report->periods[i];
      FfReportPart changed = prevailing;

      if (period->kind < FF_PERIOD_BECOMING || at < period->from || at >= period->to)
        continue;
      overlay (&changed, &period->part);
      take_worse (worst, &changed);
    }
  return TRUE;
}

gboolean
ff_report_worst (const FfReport *report, gint64 from, gint64 to, FfReportPart *ret_part)
{
  gboolean any = FALSE;
  guint i;

  ff_report_part_clear (ret_part);
  if (report->kind != FF_REPORT_TAF)
    {
      *ret_part = report->part;
      return TRUE;
    }
  /* Nothing changes but at the ends of periods. */
  ret_part->cavok = TRUE;
  ret_part->clear = TRUE;
  ret_part->clear_to_m = INFINITY;
  any = worst_at (report, from, ret_part);
  for (i = 0; i < report->n_periods; i++)
    {
      const gint64 ends[] = { report->periods[i].from, report->periods[i].to };
      gsize k;

      for (k = 0; k < G_N_ELEMENTS (ends); k++)
        if (ends[k] > from && ends[k] < to)
          any = worst_at (report, ends[k], ret_part) || any;
    }
  /* A gust forecast for one hour says nothing of the stronger mean wind of another. */
  if (ret_part->gust_ms.is == FF_REPORTED_EXACT && ret_part->gust_ms.value < ret_part->wind_ms.value)
    ret_part->gust_ms.is = FF_REPORTED_MISSING;
  return any;
}
