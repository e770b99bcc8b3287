/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a line survives behind its own filter: a later start, a stop of cloud. Nothing is planned
 * anew here: the line stays as it is and its takes are looked at in other light. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-scale.h"

#define CLOUD_STOPS 1.0

static void
slip_free (gpointer data)
{
  FfLineSlip *slip = data;

  g_free (slip->tightest);
  g_ptr_array_unref (slip->why);
  g_free (slip);
}

/* The settings of one end of a take in another light, at the angles that its line allows. */
static void
settings_in (const FfDayProblem *problem,
             const FfSortieTake *take,
             double ev100,
             double filter_stops,
             FfChoice *ret_choice)
{
  const FfSortieShot *shot = &problem->problem.shots[take->shot];
  FfWant want = shot->want;
  const FfAdviseQuery query = { .ev100 = ev100, .camera = &problem->camera, .want = &want,
                                .prices = problem->problem.prices };

  if (shot->own_from_angle_deg > 0)
    want.angle_from_deg = MIN (want.angle_from_deg, shot->own_from_angle_deg);
  ff_advise_settings (&query, filter_stops, ret_choice);
}

/* Stills are taken at any ISO that the shot and the camera allow: nobody turns it between frames. */
static int
iso_limit (const FfDayProblem *problem, const FfShot *shot)
{
  if (shot->intent != FF_INTENT_STILL && shot->intent != FF_INTENT_BRACKET)
    return ff_plan_iso_limit (problem, shot);
  return shot->max_iso > 0 ? (int) shot->max_iso : G_MAXINT;
}

/* "G is 0.6 stops too dark", "H needs ISO 640, its limit is 400"; NULL: it holds. */
static char *
what_fails (const FfDayProblem *problem, const FfShot *shot, const FfChoice *choice)
{
  double off = choice->settings.error_stops;
  int iso = (int) ff_scale_written (FF_SCALE_ISO, choice->settings.iso);
  int limit = iso_limit (problem, shot);

  if (off < -FF_REACH_STOPS - 1e-9)
    /* Translators: shot label, stops. */
    return g_strdup_printf (_ ("%s is %.1f stops too dark"), shot->label, -off);
  if (off > FF_REACH_STOPS + 1e-9)
    /* Translators: shot label, stops. */
    return g_strdup_printf (_ ("%s is %.1f stops too bright"), shot->label, off);
  if (iso > limit)
    /* Translators: shot label, ISO it would run at, ISO it may be raised to. */
    return g_strdup_printf (_ ("%s needs ISO %d, its limit is %d"), shot->label, iso, limit);
  return NULL;
}

/* How the first take of the line that fails does, so many minutes later and so many stops darker. */
static char *
light_fails (const FfDayProblem *problem,
             const FfSortiePlan *sorties,
             const FfSortieLine *line,
             int minutes_later,
             double stops_darker)
{
  for (guint i = 0; i < line->n_takes; i++)
    {
      const FfSortieTake *take = &g_array_index (sorties->takes, FfSortieTake,
                                                 line->first_take + i);
      const FfShot *shot = g_ptr_array_index (problem->records, take->shot);
      gint64 late = (gint64) minutes_later * FF_MINUTE;
      g_autofree double *light = ff_day_light (problem->day, shot, problem->sky,
                                               take->from + late, take->to + late);
      const double ends[] = { light[0], light[(take->to - take->from) / FF_MINUTE] };

      for (guint end = 0; end < G_N_ELEMENTS (ends); end++)
        {
          FfChoice choice;
          char *fails;

          settings_in (problem, take, ends[end] - stops_darker, line->filter_stops, &choice);
          fails = what_fails (problem, shot, &choice);
          if (fails != NULL)
            return fails;
        }
    }
  return NULL;
}

/* How much later the line may be with every take inside its window and the day's hours. */
static void
find_room (const FfDayProblem *problem,
           const FfSortiePlan *sorties,
           const FfSortieLine *line,
           FfLineSlip *slip)
{
  gint64 room = problem->problem.to - line->down;
  guint tightest = 0;

  for (guint i = 0; i < line->n_takes; i++)
    {
      const FfSortieTake *take = &g_array_index (sorties->takes, FfSortieTake,
                                                 line->first_take + i);
      gint64 left = problem->problem.shots[take->shot].window_to - take->to;

      if (left < room)
        {
          room = left;
          tightest = take->shot + 1;
        }
    }
  slip->room_minutes = (int) (room / FF_MINUTE);
  if (tightest > 0)
    slip->tightest = g_strdup (problem->problem.shots[tightest - 1].label);
}

static void
say_room (FfLineSlip *slip)
{
  if (slip->room_minutes >= FF_SLIP_MINUTES)
    return;
  if (slip->tightest == NULL)
    g_ptr_array_add (slip->why,
                     /* Translators: number of the line, minutes. */
                     g_strdup_printf (_ ("Line %d can be %d min late at most: all are down then."),
                                      slip->line, slip->room_minutes));
  else
    g_ptr_array_add (slip->why,
                     /* Translators: number of the line, minutes, label of a shot. */
                     g_strdup_printf (_ ("Line %d can be %d min late at most: then the window of "
                                         "%s closes."),
                                      slip->line, slip->room_minutes, slip->tightest));
}

static FfLineSlip *
slip_of (const FfDayProblem *problem,
         const FfSortiePlan *sorties,
         const FfSortieLine *line,
         int number)
{
  FfLineSlip *slip = g_new0 (FfLineSlip, 1);
  g_autofree char *late = light_fails (problem, sorties, line, FF_SLIP_MINUTES, 0);
  g_autofree char *cloud = light_fails (problem, sorties, line, 0, CLOUD_STOPS);

  slip->line = number;
  slip->why = g_ptr_array_new_with_free_func (g_free);
  slip->light_holds_late = late == NULL;
  slip->light_holds_cloud = cloud == NULL;
  find_room (problem, sorties, line, slip);
  say_room (slip);
  if (late != NULL)
    g_ptr_array_add (slip->why,
                     /* Translators: number of the line, minutes, "G is 0.6 stops too dark". */
                     g_strdup_printf (_ ("Line %d, %d min later, behind the same filter: %s."),
                                      number, FF_SLIP_MINUTES, late));
  if (cloud != NULL)
    g_ptr_array_add (slip->why,
                     /* Translators: number of the line, "G is 0.6 stops too dark". */
                     g_strdup_printf (_ ("Line %d under one stop of cloud, behind the same "
                                         "filter: %s."),
                                      number, cloud));
  return slip;
}

GPtrArray *
ff_slips_new (const FfDayProblem *problem, const FfSortiePlan *sorties)
{
  GPtrArray *slips = g_ptr_array_new_with_free_func (slip_free);

  for (guint i = 0; i < sorties->lines->len; i++)
    g_ptr_array_add (slips, slip_of (problem, sorties,
                                     &g_array_index (sorties->lines, FfSortieLine, i),
                                     (int) i + 1));
  return slips;
}

gboolean
ff_line_slip_survives (const FfLineSlip *slip)
{
  return slip->why->len == 0;
}

GPtrArray *
ff_cases_slip_words (const FfCases *cases)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < cases->slips->len; i++)
    {
      const FfLineSlip *slip = g_ptr_array_index (cases->slips, i);

      for (guint j = 0; j < slip->why->len; j++)
        g_ptr_array_add (words, g_strdup (g_ptr_array_index (slip->why, j)));
    }
  if (words->len == 0 && cases->slips->len > 0)
    g_ptr_array_add (words,
                     g_strdup_printf (_ ("Every line survives %d minutes of slip and one stop of "
                                         "cloud behind its filter."),
                                      FF_SLIP_MINUTES));
  return words;
}
