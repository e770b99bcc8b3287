/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a crew must know of the light inside a sortie: where no filter holds, where the set has a
 * gap, what a low sun, dusk, broken cloud, a polariser or a panorama asks for. All of it is common
 * practice, no source, but for the light itself. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-number.h"
#include "ff-scale.h"

#define FALL_STOPS 0.9        /* light that changes more over one line is said */
#define FREE_ISO_STOPS 1.0    /* above its base: a filter that needs more does not hold */
#define GAP_STOPS 1.5         /* neighbours in a set further apart leave a gap */
#define FAR_STOPS 0.75        /* from the nearest filter at hand: a gap is felt */
#define SUNSET_DEG (-50.0 / 60)
#define LOW_DEG 5.0
#define MODEL_ENDS_DEG (-4.0)
#define WIDE_OF_SUN_DEG 30.0
#define MOST_STOPS 12

static const FfShot *
shot_of (const FfDayProblem *problem, const FfSortieTake *take)
{
  return g_ptr_array_index (problem->records, take->shot);
}

static const FfSortieTake *
nth_take (const FfSortiePlan *sorties, const FfSortieLine *line, guint index)
{
  return &g_array_index (sorties->takes, FfSortieTake, line->first_take + index);
}

static void
say_once (GPtrArray *sentences, char *sentence)
{
  if (g_ptr_array_find_with_equal_func (sentences, sentence, g_str_equal, NULL))
    g_free (sentence);
  else
    g_ptr_array_add (sentences, sentence);
}

static gboolean
is_motion (const FfWant *want)
{
  return want->intent == FF_INTENT_VIDEO || want->intent == FF_INTENT_SLOW;
}

/* ---- Filters that hold ---- */

/* Whether settings with this filter are right in this light with ISO at most a stop up. */
static gboolean
holds (const FfDayProblem *problem, const FfSortieShot *shot, double ev100, double stops)
{
  const FfAdviseQuery query = { .ev100 = ev100, .camera = &problem->camera, .want = &shot->want };
  FfChoice choice;
  double above;

  ff_advise_settings (&query, stops, &choice);
  above = log2 (ff_scale_written (FF_SCALE_ISO, choice.settings.iso)
                / ff_scale_written (FF_SCALE_ISO, problem->camera.base_iso[0]));
  return fabs (choice.settings.error_stops) <= FF_REACH_STOPS && above <= FREE_ISO_STOPS + 0.05;
}

static gboolean
holds_over_line (const FfDayProblem *problem,
                 const FfSortiePlan *sorties,
                 const FfSortieLine *line,
                 double stops)
{
  for (guint i = 0; i < line->n_takes; i++)
    {
      const FfSortieTake *take = nth_take (sorties, line, i);
      const FfSortieShot *shot = &problem->problem.shots[take->shot];

      if (!holds (problem, shot, take->ev100_start, stops)
          || !holds (problem, shot, take->ev100_end, stops))
        return FALSE;
    }
  return TRUE;
}

static gboolean
any_holds (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line)
{
  for (int filter = FF_NO_FILTER; filter < (int) problem->problem.n_filters; filter++)
    if (holds_over_line (problem, sorties, line,
                         filter >= 0 ? problem->problem.filters[filter].stops : 0))
      return TRUE;
  return FALSE;
}

/* The light falls faster than any filter can follow: the plan has to change kind. */
static void
add_none_holds (const FfDayProblem *problem,
                const FfSortiePlan *sorties,
                const FfSortieLine *line,
                guint number,
                GPtrArray *clashes)
{
  const FfSortieTake *first = nth_take (sorties, line, 0);
  const FfSortieTake *last = nth_take (sorties, line, line->n_takes - 1);
  double fall = first->ev100_start - last->ev100_end;
  g_autofree char *from = ff_instant_clock ((double) first->from, problem->day->zone);
  g_autofree char *to = ff_instant_clock ((double) last->to, problem->day->zone);

  if (!(fabs (fall) >= FALL_STOPS) || any_holds (problem, sorties, line))
    return;
  say_once (clashes,
            /* Translators: number of a sortie; stops; two clock times. */
            g_strdup_printf (_ ("No filter holds for sortie %u: the light changes by %.1f stops from "
                                "%s to %s. Start a little bright and end on ISO."),
                             number, fabs (fall), from, to));
}

/* ---- Gaps in the set ---- */

/* The filters on either side of a strength; none at all is one of them. */
static gboolean
neighbours (const FfDayProblem *problem, double stops, double *ret_below, double *ret_above)
{
  *ret_below = 0;
  *ret_above = INFINITY;
  for (guint i = 0; i < problem->problem.n_filters; i++)
    {
      double each = problem->problem.filters[i].stops;

      if (each <= stops)
        *ret_below = MAX (*ret_below, each);
      else
        *ret_above = MIN (*ret_above, each);
    }
  return isfinite (*ret_above) && *ret_above - *ret_below > GAP_STOPS;
}

/* The whole stops between two filters, as one would ask for them: "4", "4 or 5". */
static char *
stops_between (double below, double above)
{
  GString *text = g_string_new (NULL);

  for (int stops = 1; stops < MOST_STOPS; stops++)
    if (stops > below + 0.5 && stops < above - 0.5)
      /* Translators: between the strengths of filters: "4 or 5". */
      g_string_append_printf (text, "%s%d", text->len > 0 ? _ (" or ") : "", stops);
  return g_string_free (text, FALSE);
}

/* Said where the best filter at hand is far from what a take needs: the shutter closes or ISO rises
 * for want of the one between. */
static void
add_gap (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *clashes)
{
  const FfSortieShot *shot = &problem->problem.shots[take->shot];
  g_autofree char *missing = NULL;
  double need = take->need_start, below, above;

  if (!is_motion (&shot->want) || !isfinite (need) || !neighbours (problem, need, &below, &above)
      || fmin (need - below, above - need) < FAR_STOPS)
    return;
  missing = stops_between (below, above);
  if (*missing == '\0')
    return;
  say_once (clashes,
            /* Translators: strengths of filters in stops; shot label; need in stops; "4 or 5". */
            g_strdup_printf (_ ("Gap between %.2g and %.2g stops in the filters at hand: %s needs "
                                "%.1f. One of %s stops would close it."),
                             below, above, shot->label, need, missing));
}

/* ---- Sun and sky ---- */

static void
add_sun (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *remarks)
{
  const FfShot *record = shot_of (problem, take);
  FfDaylight light;
  FfDirection sun;

  ff_day_light_at (problem->day, record, problem->sky, (double) take->to, &sun, &light);
  if (sun.altitude_deg < MODEL_ENDS_DEG)
    say_once (remarks, g_strdup (_ ("The light model ends here: readings only")));
  else if (sun.altitude_deg < SUNSET_DEG)
    say_once (remarks, g_strdup (_ ("After sunset: a reading first")));
  else if (sun.altitude_deg < LOW_DEG)
    say_once (remarks, g_strdup (_ ("Low sun: start a little bright, end on ISO")));
  if (sun.altitude_deg > SUNSET_DEG && sun.altitude_deg < LOW_DEG && isfinite (record->bearing_deg)
      && ff_bearing_difference_deg (record->bearing_deg, sun.azimuth_deg) < WIDE_OF_SUN_DEG)
    say_once (remarks, g_strdup (_ ("Into the sun: meter for the sky")));
}

/* Glass that minds where it points or how it is set. What a panorama asks for is among the cautions
 * of the sun. */
static void
add_glass (const FfDayProblem *problem,
           const FfSortieLine *line,
           const FfSortieTake *take,
           GPtrArray *remarks)
{
  const FfShot *record = shot_of (problem, take);
  const FfItem *item = line->filter >= 0
                           ? g_ptr_array_index (problem->filter_items, line->filter)
                           : NULL;
  gboolean all_round = record->view == FF_VIEW_OBLIQUE && !isfinite (record->bearing_deg);

  if (item != NULL && item->polariser && all_round)
    say_once (remarks, g_strdup (_ ("A polariser changes with direction: not for all round")));
  if (item != NULL && item->stops_to > item->stops + 0.05)
    {
      g_autofree char *stops = ff_stops_format (line->filter_stops);

      /* Translators: a variable filter is turned to a strength, here "3 stops". */
      say_once (remarks, g_strdup_printf (_ ("Set the variable filter to %s; write down its mark"),
                                          stops));
    }
}

/* The camera follows the light: so does the picture, in steps. */
static void
add_auto_iso (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *remarks)
{
  const FfShot *record = shot_of (problem, take);

  if (record->auto_iso)
    say_once (remarks,
              /* Translators: the camera sets its ISO by itself, up to the one given. */
              g_strdup_printf (_ ("Auto ISO to %d: steps of brightness show, and tilting towards the "
                                  "sky darkens the picture. Lock it before the take"),
                               ff_plan_iso_limit (problem, record)));
}

/* When the crew has said that the sun goes from the subject. */
static void
add_sun_leaves (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *remarks)
{
  const FfShot *record = shot_of (problem, take);
  g_autofree char *clock = NULL;

  if (record->sun_leaves == FF_NO_CLOCK)
    return;
  clock = ff_clock_format (record->sun_leaves);
  say_once (remarks, g_strdup_printf (_ ("The sun leaves the subject at %s"), clock));
}

void
ff_plan_add_light_remarks (const FfDayProblem *problem,
                           const FfSortieLine *line,
                           const FfSortieTake *take,
                           GPtrArray *remarks)
{
  add_sun (problem, take, remarks);
  add_glass (problem, line, take, remarks);
  add_auto_iso (problem, take, remarks);
  add_sun_leaves (problem, take, remarks);
}

/* ---- The whole day ---- */

/* An exception from landing for a battery alone: said with its price. */
static void
add_filter_landing (const FfDayProblem *problem,
                    const FfSortieLine *line,
                    guint number,
                    GPtrArray *clashes)
{
  g_autofree char *stops = ff_stops_format (line->filter_stops);

  if (!line->filter_landing)
    return;
  say_once (clashes,
            /* Translators: number of a sortie; strength of a filter ("3 stops"); a price. */
            g_strdup_printf (_ ("Before sortie %u the aircraft lands for a filter alone (%s): it "
                                "costs %g. Fly it only if the pilot agrees."),
                             number, stops, problem->problem.prices->filter_landing));
}

void
ff_plan_add_light_clashes (const FfDayProblem *problem,
                           const FfSortiePlan *sorties,
                           GPtrArray *clashes)
{
  for (guint i = 0; i < sorties->lines->len; i++)
    {
      const FfSortieLine *line = &g_array_index (sorties->lines, FfSortieLine, i);

      add_none_holds (problem, sorties, line, i + 1, clashes);
      add_filter_landing (problem, line, i + 1, clashes);
      for (guint j = 0; j < line->n_takes; j++)
        add_gap (problem, nth_take (sorties, line, j), clashes);
    }
  if (problem->sky == FF_SKY_PARTLY && sorties->lines->len > 0)
    say_once (clashes, g_strdup (_ ("Broken cloud: filters are for the sun, ISO is for the shade. "
                                    "Where the sun is wanted hold up to 4 minutes, then take.")));
}
