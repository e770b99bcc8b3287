/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sortie-path.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-ground.h"
#include "ff-minute-price.h"

/* What the search added up as one price, told apart. */
static void
add_take_parts (FfSortiePlan *plan,
                const FfTakePrices *prices,
                const FfFlown *flown,
                guint index)
{
  const FfSortieProblem *problem = prices->problem;
  guint shot_index = flown->shots[index];
  const FfSortieShot *shot = &problem->shots[shot_index];
  int start = flown->starts[index];

  for (int minute = start; minute < start + shot->minutes; minute++)
    ff_minute_price (prices->prices, problem->camera, &shot->want, shot->own_from_angle_deg,
                     shot->ev100[minute], ff_take_filter_stops (problem, flown->filter),
                     plan->parts);
  plan->parts[FF_PART_LATE] += ff_take_late_price (prices, shot_index, start);
  plan->parts[FF_PART_STACK] += ff_take_filter_price (problem, flown->filter);
  if (index > 0)
    {
      guint before = flown->shots[index - 1];
      int waited = start - flown->starts[index - 1] - problem->shots[before].minutes;

      plan->parts[FF_PART_AIR] += prices->prices->air_minute * waited;
    }
}

static void
add_take (FfSortiePlan *plan, const FfTakePrices *prices, const FfFlown *flown, guint index)
{
  const FfSortieProblem *problem = prices->problem;
  const FfSortieShot *shot = &problem->shots[flown->shots[index]];
  FfWant want = shot->want;
  FfAdviseQuery query = { .camera = problem->camera, .want = &want, .prices = prices->prices };
  FfSortieTake take = { .shot = flown->shots[index] };
  double stops = ff_take_filter_stops (problem, flown->filter);
  int start = flown->starts[index], end = start + shot->minutes;
  double f_number;

  take.from = problem->from + start * 60;
  take.to = problem->from + end * 60;
  take.ev100_start = shot->ev100[start];
  take.ev100_end = shot->ev100[end];
  if (shot->own_from_angle_deg > 0)
    want.angle_from_deg = MIN (want.angle_from_deg, shot->own_from_angle_deg);
  query.ev100 = take.ev100_start;
  ff_advise_settings (&query, stops, &take.start);
  query.ev100 = take.ev100_end;
  ff_advise_settings (&query, stops, &take.end);
  f_number = take.start.settings.aperture.exact;
  take.need_start = ff_advise_need (take.ev100_start, problem->camera, &shot->want, f_number);
  take.need_end = ff_advise_need (take.ev100_end, problem->camera, &shot->want, f_number);
  g_array_append_val (plan->takes, take);
}

/* The price of what stood between this line and the one before it. */
static void
add_landing_parts (FfSortiePlan *plan, const FfPrices *prices, FfSortieLine *line)
{
  const FfSortieLine *before = plan->lines->len > 0
                                   ? &g_array_index (plan->lines, FfSortieLine,
                                                     plan->lines->len - 1)
                                   : NULL;
  gboolean swapped = before != NULL && before->filter != line->filter;

  if (line->relaunch && swapped)
    plan->parts[FF_PART_FILTER_LANDING] += prices->filter_landing;
  else if (line->relaunch)
    plan->parts[FF_PART_RELAUNCH] += prices->relaunch;
  else
    plan->parts[FF_PART_BATTERY] += prices->new_battery;
  if (swapped && !line->relaunch)
    plan->parts[FF_PART_SWAP] += prices->filter_swap;
  line->filter_landing = line->relaunch && swapped;
}

/* Shots that must match, each against the one of its group flown before it. */
static void
add_match_parts (FfSortiePlan *plan, const FfTakePrices *prices, const FfFlown *flown, int *matched)
{
  for (guint i = 0; i < flown->n_shots; i++)
    {
      guint group = prices->problem->shots[flown->shots[i]].match_group;

      if (group == 0 || group > FF_SORTIE_MAX_GROUPS)
        continue;
      plan->parts[FF_PART_MATCH] += ff_take_match_price (prices, matched[group - 1], flown->filter);
      matched[group - 1] = flown->filter;
    }
}

static void
add_line (FfSortiePlan *plan, const FfTakePrices *prices, const FfFlown *flown)
{
  const FfSortieProblem *problem = prices->problem;
  gint64 off = problem->from + flown->leg.off * 60;
  FfSortieLine line = {
    .off_by = off,
    .down = problem->from + flown->leg.down * 60,
    .land_by = off + flown->minutes * 60,
    .battery = flown->battery,
    .filter = flown->filter,
    .filter_stops = ff_take_filter_stops (problem, flown->filter),
    .first_take = plan->takes->len,
    .n_takes = flown->n_shots,
    .leg = flown->number,
    .relaunch = flown->relaunch,
  };

  for (guint i = 0; i < flown->n_shots; i++)
    {
      add_take (plan, prices, flown, i);
      add_take_parts (plan, prices, flown, i);
    }
  add_landing_parts (plan, prices->prices, &line);
  g_array_append_val (plan->lines, line);
}

/* The charge after the last leg on a battery, as the search queued it; kept where it is done before
 * all down. */
static void
add_charge (FfSortiePlan *plan,
            const FfSortieProblem *problem,
            const FfFlown *flown,
            FfGround *ground)
{
  int land_by = flown->leg.off + flown->minutes;
  int charge_from, ready_at;
  FfSortieCharge charge = {
    .battery = flown->battery,
    .cool_from = problem->from + (gint64) land_by * 60,
  };

  ff_ground_queue (ground, problem, land_by, &charge_from, &ready_at);
  charge.charge_from = problem->from + (gint64) charge_from * 60;
  charge.ready_at = problem->from + (gint64) ready_at * 60;
  if (charge.ready_at <= problem->to)
    g_array_append_val (plan->charges, charge);
}

/* ---- Why not ---- */

/* Whether a leg for this shot alone fits between its neighbours, batteries aside. */
static gboolean
fits_between (const FfSortieProblem *problem, const FfSortiePlan *plan, const FfSortieShot *shot)
{
  gint64 flight = (problem->out_minutes + shot->minutes + problem->back_minutes) * 60;
  gint64 change = problem->battery_change_minutes * 60;
  gint64 earliest = problem->from, latest_down = problem->to;
  gint64 off;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (plan->lines, FfSortieLine, i);

      if (line->off_by < shot->window_from)
        earliest = MAX (earliest, line->down + change);
      else
        latest_down = MIN (latest_down, line->off_by - change);
    }
  off = MAX (earliest, shot->window_from - problem->out_minutes * 60);
  return off + (problem->out_minutes + shot->minutes) * 60 <= shot->window_to
         && off + flight <= latest_down;
}

static FfWhyNot
why_not (const FfTakePrices *prices, const FfSortiePlan *plan, guint index)
{
  const FfSortieProblem *problem = prices->problem;
  const FfSortieShot *shot = &problem->shots[index];
  int longest = 0;

  for (guint i = 0; i < problem->n_batteries; i++)
    longest = MAX (longest, problem->batteries[i].usable_minutes);
  if (problem->out_minutes + shot->minutes + problem->back_minutes > longest)
    return FF_WHY_TOO_LONG;
  if (ff_take_first_start (prices, index) > ff_take_last_start (prices, index))
    return FF_WHY_DAYLIGHT;
  if (ff_take_lock (problem, index) != NULL)
    return FF_WHY_LOCK;
  if (ff_take_cheapest (prices, index) >= ff_take_weight (prices, index))
    return FF_WHY_LIGHT;
  if (!fits_between (problem, plan, shot))
    return FF_WHY_WINDOW;
  return plan->lines->len >= problem->n_batteries ? FF_WHY_BATTERY : FF_WHY_PRICE;
}

gboolean
ff_sortie_path_flies (const FfSortiePlan *plan, guint shot)
{
  for (guint i = 0; i < plan->takes->len; i++)
    if (g_array_index (plan->takes, FfSortieTake, i).shot == shot)
      return TRUE;
  return FALSE;
}

static void
add_misses (FfSortiePlan *plan, const FfTakePrices *prices)
{
  for (guint shot = 0; shot < prices->problem->n_shots; shot++)
    {
      FfSortieMiss miss = { .shot = shot };

      if (ff_sortie_path_flies (plan, shot))
        continue;
      miss.why = why_not (prices, plan, shot);
      plan->parts[FF_PART_NOT_FLOWN] += ff_take_weight (prices, shot);
      g_array_append_val (plan->missed, miss);
    }
}

/* ---- The whole ---- */

FfSortiePlan *
ff_sortie_path_read (const FfTakePrices *prices, const FfFlown *flown, guint n_flown)
{
  FfSortiePlan *plan = g_new0 (FfSortiePlan, 1);
  int matched[FF_SORTIE_MAX_GROUPS];
  FfBatteries batteries;
  FfGround ground;

  plan->lines = g_array_new (FALSE, FALSE, sizeof (FfSortieLine));
  plan->takes = g_array_new (FALSE, FALSE, sizeof (FfSortieTake));
  plan->missed = g_array_new (FALSE, FALSE, sizeof (FfSortieMiss));
  plan->charges = g_array_new (FALSE, FALSE, sizeof (FfSortieCharge));
  ff_batteries_init (&batteries, prices->problem);
  ff_ground_init (&ground, &batteries, prices->problem);
  for (guint i = 0; i < FF_SORTIE_MAX_GROUPS; i++)
    matched[i] = FF_UNFITTED;
  for (guint i = 0; i < n_flown; i++)
    {
      add_line (plan, prices, &flown[i]);
      add_match_parts (plan, prices, &flown[i], matched);
      if (i + 1 == n_flown || !flown[i + 1].relaunch)
        add_charge (plan, prices->problem, &flown[i], &ground);
    }
  add_misses (plan, prices);
  plan->cost = ff_price_sum (plan->parts);
  return plan;
}

void
ff_sortie_plan_free (FfSortiePlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->lines);
  g_array_unref (plan->takes);
  g_array_unref (plan->missed);
  g_array_unref (plan->charges);
  g_free (plan);
}

char *
ff_why_not_text (FfWhyNot why)
{
  switch (why)
    {
    case FF_WHY_WINDOW:
      return g_strdup (_ ("its window can't be met beside the sorties before and after it"));
    case FF_WHY_BATTERY:
      return g_strdup (_ ("no battery is ready in its window"));
    case FF_WHY_TOO_LONG:
      return g_strdup (_ ("it is longer than any battery's usable minutes, out and back included"));
    case FF_WHY_DAYLIGHT:
      return g_strdup (_ ("its window lies outside first off to all down"));
    case FF_WHY_LIGHT:
      return g_strdup (_ ("no filter at hand brings its light within the camera's reach"));
    case FF_WHY_PRICE:
      return g_strdup (_ ("flying it would cost more than it is worth"));
    case FF_WHY_LOCK:
      /* Translators: somebody has locked the shot to a battery, a filter or a time. */
      return g_strdup (_ ("the battery, filter or time it is locked to can't be kept"));
    default:
      return g_strdup ("");
    }
}
