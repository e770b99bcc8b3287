/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sentences of a plan: why this filter, how to trim, what clashes, what a change does. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-day-reading.h"
#include "ff-number.h"
#include "ff-scale.h"

/* Between takes ISO may be raised this far, where the shot says nothing of its own (common
 * practice, no source). */
#define TRIM_ISO 400
#define CLASH_STOPS 1.5   /* needs this far apart on one battery are said */
#define SAID_STOPS 0.05
#define STEADY_STOPS 0.15 /* light that changes less over a sortie needs no trim */

static const FfSortieTake *
take_of (const FfSortiePlan *sorties, const FfSortieLine *line, guint index)
{
  return &g_array_index (sorties->takes, FfSortieTake, line->first_take + index);
}

static const FfShot *
record_of (const FfDayProblem *problem, const FfSortieTake *take)
{
  return g_ptr_array_index (problem->records, take->shot);
}

static char *
clock_of (const FfDayProblem *problem, gint64 at)
{
  return ff_instant_clock ((double) at, problem->day->zone);
}

/* "A needs 4.9 at 16:32 and 4.9 at 16:38" */
static char *
need_phrase (const FfDayProblem *problem, const FfSortieTake *take)
{
  g_autofree char *from = clock_of (problem, take->from);
  g_autofree char *to = clock_of (problem, take->to);
  const char *label = record_of (problem, take)->label;

  if (!isfinite (take->need_start))
    /* Translators: shot label, then its first and last clock time; stills take any shutter. */
    return g_strdup_printf (_ ("%s is stills from %s to %s"), label, from, to);
  /* Translators: shot label, need in stops, clock time, need in stops, clock time. */
  return g_strdup_printf (_ ("%s needs %.1f at %s and %.1f at %s"), label, take->need_start, from,
                          take->need_end, to);
}

/* What a reading has moved at the first take; less than a tenth of a stop is not worth a word. */
static void
add_learned (GString *text, const FfDayProblem *problem, gint64 at)
{
  FfLearned learned;
  const FfReading *reading;
  g_autofree char *clock = NULL, *amount = NULL;

  ff_day_learned (problem->day, problem->sky, at, &learned, &reading);
  if (reading == NULL || fabs (learned.offset_stops) < SAID_STOPS)
    return;
  clock = clock_of (problem, reading->at);
  amount = ff_signed_stops (learned.offset_stops);
  g_string_append_printf (
      text,
      learned.fades
          /* Translators: clock time of a light reading, "+0.4 stop" against the estimate. */
          ? _ (" The reading of %s still gives %s here.")
          : _ (" With the reading of %s: %s."),
      clock, amount);
}

static void
add_locks (GString *text,
           const FfDayProblem *problem,
           const FfSortiePlan *sorties,
           const FfSortieLine *line)
{
  for (guint i = 0; i < line->n_takes; i++)
    {
      g_autofree char *words = ff_problem_lock_words (problem, take_of (sorties, line, i)->shot);

      if (words != NULL)
        g_string_append_printf (text, " %s", words);
    }
}

char *
ff_plan_why (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line)
{
  GString *text = g_string_new (NULL);
  g_autofree char *stops = ff_stops_format (line->filter_stops);

  if (line->filter == FF_NO_FILTER)
    g_string_append (text, _ ("No filter: "));
  else
    /* Translators: the strength of a filter ("5 stops"), before the reason for it. */
    g_string_append_printf (text, _ ("%s: "), stops);
  for (guint i = 0; i < line->n_takes; i++)
    {
      g_autofree char *phrase = need_phrase (problem, take_of (sorties, line, i));

      g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", phrase);
    }
  g_string_append_c (text, '.');
  add_learned (text, problem, take_of (sorties, line, 0)->from);
  add_locks (text, problem, sorties, line);
  return g_string_free (text, FALSE);
}

int
ff_plan_iso_limit (const FfDayProblem *problem, const FfShot *shot)
{
  double limit = MIN (TRIM_ISO, ff_scale_written (FF_SCALE_ISO, problem->camera.iso_high));

  return (int) (shot->max_iso > 0 ? shot->max_iso : limit);
}

/* The lowest ISO limit of the shots on a line. */
static int
trim_iso (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line)
{
  int lowest = TRIM_ISO;

  for (guint i = 0; i < line->n_takes; i++)
    lowest = MIN (lowest,
                  ff_plan_iso_limit (problem, record_of (problem, take_of (sorties, line, i))));
  return lowest;
}

static gboolean
all_on_auto_iso (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line)
{
  for (guint i = 0; i < line->n_takes; i++)
    if (!record_of (problem, take_of (sorties, line, i))->auto_iso)
      return FALSE;
  return TRUE;
}

char *
ff_plan_trim (const FfDayProblem *problem, const FfSortiePlan *sorties, const FfSortieLine *line)
{
  const FfSortieTake *first = take_of (sorties, line, 0);
  const FfSortieTake *last = take_of (sorties, line, line->n_takes - 1);
  double change = last->ev100_end - first->ev100_start;

  if (all_on_auto_iso (problem, sorties, line))
    /* Translators: the camera sets its ISO by itself; the operator locks it while it films. */
    return g_strdup_printf (_ ("Auto ISO, to %d at most: lock it before each take."),
                            trim_iso (problem, sorties, line));
  if (change < -STEADY_STOPS && record_of (problem, last)->intent == FF_INTENT_TIMELAPSE)
    /* Translators: a time-lapse is one take that must not be interrupted. */
    return g_strdup_printf (_ ("As it darkens: lengthen the shutter inside the interval, then raise "
                               "ISO, to %d at most. It can't land in the middle."),
                            trim_iso (problem, sorties, line));
  if (change < -STEADY_STOPS)
    /* Translators: what the camera operator does between takes as the light fades. */
    return g_strdup_printf (_ ("As it darkens: open the shutter, then raise ISO between takes, "
                               "to %d at most; then land."),
                            trim_iso (problem, sorties, line));
  if (change > STEADY_STOPS)
    return g_strdup (_ ("As it brightens: lower ISO to its base, then close the shutter."));
  return g_strdup (_ ("The light holds: leave the settings alone within a take."));
}

char *
ff_plan_land_rule (const FfPlanLine *line, GTimeZone *zone)
{
  g_autofree char *land_by = ff_instant_clock ((double) line->land_by, zone);
  int minutes = (int) ((line->land_by - line->off_by) / FF_MINUTE);

  /* Translators: "reserve" is the battery charge kept back; "off" is the take-off. */
  return g_strdup_printf (_ ("Land by %s, or off + %d min, or the reserve: whichever comes first; "
                             "the aircraft's own reading wins."),
                          land_by, minutes);
}

/* ---- Remarks and clashes ---- */

static void
add_choice_remarks (const FfChoice *choice, GPtrArray *remarks)
{
  for (guint i = 0; i < choice->n_remarks; i++)
    {
      g_autofree char *text = ff_remark_text (&choice->remarks[i]);

      if (!g_ptr_array_find_with_equal_func (remarks, text, g_str_equal, NULL))
        g_ptr_array_add (remarks, g_steal_pointer (&text));
    }
}

void
ff_plan_add_remarks (const FfDayProblem *problem, const FfSortieTake *take, GPtrArray *remarks)
{
  add_choice_remarks (&take->start, remarks);
  if (fabs (take->end.settings.error_stops) > FF_REACH_STOPS
      && fabs (take->start.settings.error_stops) <= FF_REACH_STOPS)
    {
      g_autofree char *clock = clock_of (problem, take->to);

      g_ptr_array_add (remarks, g_strdup_printf (_ ("No longer exposed right at %s: %+.1f stops"),
                                                 clock, take->end.settings.error_stops));
    }
}

/* "B runs at 1/80 (112°)", "C at ISO 250" */
static char *
who_pays (const FfDayProblem *problem, const FfSortieTake *take)
{
  const FfSettings *settings = &take->start.settings;
  const char *label = record_of (problem, take)->label;
  const char *shutter = ff_scale_label (FF_SCALE_SHUTTER, settings->shutter);
  int iso = (int) ff_scale_written (FF_SCALE_ISO, settings->iso);

  if (isfinite (settings->shutter_angle_deg))
    /* Translators: shot label, shutter time, shutter angle in degrees, ISO. */
    return g_strdup_printf (_ ("%s runs at %s (%.0f°), ISO %d"), label, shutter,
                            settings->shutter_angle_deg, iso);
  /* Translators: shot label, shutter time, ISO. */
  return g_strdup_printf (_ ("%s runs at %s, ISO %d"), label, shutter, iso);
}

static void
add_clash (const FfDayProblem *problem,
           const FfSortieTake *first,
           const FfSortieTake *second,
           GPtrArray *clashes)
{
  double apart = fabs (first->need_start - second->need_start);
  g_autofree char *first_pays = NULL;
  g_autofree char *second_pays = NULL;

  if (!(apart >= CLASH_STOPS)) /* stills have no need to compare */
    return;
  first_pays = who_pays (problem, first);
  second_pays = who_pays (problem, second);
  g_ptr_array_add (clashes,
                   /* Translators: two shot labels, how far apart, then what each runs at. */
                   g_strdup_printf (_ ("%s and %s share a battery and are %.1f stops apart: %s; "
                                       "%s."),
                                    record_of (problem, first)->label,
                                    record_of (problem, second)->label, apart, first_pays,
                                    second_pays));
}

void
ff_plan_add_clashes (const FfDayProblem *problem,
                     const FfSortiePlan *sorties,
                     const FfSortieLine *line,
                     GPtrArray *clashes)
{
  for (guint i = 0; i + 1 < line->n_takes; i++)
    for (guint j = i + 1; j < line->n_takes; j++)
      add_clash (problem, take_of (sorties, line, i), take_of (sorties, line, j), clashes);
}

/* ---- Changes ---- */

static const FfPlanMiss *
find_miss (const FfDayPlan *plan, const char *shot)
{
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      if (g_str_equal (miss->shot, shot))
        return miss;
    }
  return NULL;
}

static void
add_lost_and_won (const FfDayPlan *before, FfDayPlan *after)
{
  for (guint i = 0; i < after->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (after->missed, i);

      if (find_miss (before, miss->shot) == NULL)
        g_ptr_array_add (after->changes, g_strdup_printf (_ ("%s (%s) is lost: %s."), miss->shot,
                                                          miss->title, miss->reason));
    }
  for (guint i = 0; i < before->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (before->missed, i);

      if (find_miss (after, miss->shot) == NULL)
        g_ptr_array_add (after->changes, g_strdup_printf (_ ("%s (%s) is flown after all."),
                                                          miss->shot, miss->title));
    }
}

const FfPlanLine *
ff_plan_line_of (const FfDayPlan *plan, const char *shot)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        if (g_str_equal (((const FfPlanTake *) g_ptr_array_index (line->takes, j))->shot, shot))
          return line;
    }
  return NULL;
}

/* Shots whose filter changes in the same way. */
typedef struct {
  double before, after;
  GString *shots;
  gulong n_shots;
} Swap;

static void
swap_clear (gpointer data)
{
  g_string_free (((Swap *) data)->shots, TRUE);
}

static void
add_swap (GArray *swaps, const char *shot, double before, double after)
{
  Swap swap = { before, after, NULL, 1 };

  for (guint i = 0; i < swaps->len; i++)
    {
      Swap *known = &g_array_index (swaps, Swap, i);

      if (fabs (known->before - before) >= 0.05 || fabs (known->after - after) >= 0.05)
        continue;
      g_string_append_printf (known->shots, ", %s", shot);
      known->n_shots++;
      return;
    }
  swap.shots = g_string_new (shot);
  g_array_append_val (swaps, swap);
}

static GArray *
find_swaps (const FfDayPlan *before, const FfDayPlan *after)
{
  GArray *swaps = g_array_new (FALSE, FALSE, sizeof (Swap));

  g_array_set_clear_func (swaps, swap_clear);
  for (guint i = 0; i < after->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (after->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);
          const FfPlanLine *was = ff_plan_line_of (before, take->shot);

          if (was != NULL && fabs (was->filter_stops - line->filter_stops) >= 0.05)
            add_swap (swaps, take->shot, was->filter_stops, line->filter_stops);
        }
    }
  return swaps;
}

static char *
behind_text (double stops)
{
  g_autofree char *strength = ff_stops_format (stops);

  if (stops < 0.05)
    /* Translators: how a shot is flown, within "G flies … instead of …". */
    return g_strdup (_ ("without a filter"));
  /* Translators: the same, with the strength of the filter: "behind 5 stops". */
  return g_strdup_printf (_ ("behind %s"), strength);
}

static void
add_other_filters (const FfDayPlan *before, FfDayPlan *after)
{
  g_autoptr (GArray) swaps = find_swaps (before, after);

  for (guint i = 0; i < swaps->len; i++)
    {
      const Swap *swap = &g_array_index (swaps, Swap, i);
      g_autofree char *now = behind_text (swap->after);
      g_autofree char *then = behind_text (swap->before);

      g_ptr_array_add (after->changes,
                       /* Translators: labels of shots; "behind 2 stops"; what it was before. */
                       g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                                     "%s flies %s instead of %s.",
                                                     "%s fly %s instead of %s.",
                                                     swap->n_shots),
                                        swap->shots->str, now, then));
    }
}

static const FfPlanTake *
take_in (const FfDayPlan *plan, const char *shot)
{
  const FfPlanLine *line = ff_plan_line_of (plan, shot);

  for (guint i = 0; line != NULL && i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      if (g_str_equal (take->shot, shot))
        return take;
    }
  return NULL;
}

/* "Other times: A 16:47 (was 16:32), D 18:29 (was 17:40)." */
static void
add_other_times (const FfDayPlan *before, FfDayPlan *after, GTimeZone *zone)
{
  g_autoptr (GString) times = g_string_new (NULL);

  for (guint i = 0; i < after->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (after->lines, i);

      for (guint j = 0; j < line->takes->len; j++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, j);
          const FfPlanTake *was = take_in (before, take->shot);
          g_autofree char *now = ff_instant_clock ((double) take->from, zone);
          g_autofree char *then = was != NULL ? ff_instant_clock ((double) was->from, zone) : NULL;

          if (was != NULL && was->from != take->from)
            /* Translators: label of a shot, when it is flown, when it was flown before. */
            g_string_append_printf (times, _ ("%s%s %s (was %s)"), times->len > 0 ? ", " : "",
                                    take->shot, now, then);
        }
    }
  if (times->len > 0)
    g_ptr_array_add (after->changes, g_strdup_printf (_ ("Other times: %s."), times->str));
}

void
ff_plan_add_details (const FfDayPlan *before, FfDayPlan *after, GTimeZone *zone)
{
  int more = (int) after->lines->len - (int) before->lines->len;

  if (more != 0)
    g_ptr_array_add (after->changes,
                     g_strdup_printf (_ ("%u sorties instead of %u."), after->lines->len,
                                      before->lines->len));
  if (zone != NULL)
    add_other_times (before, after, zone);
  add_other_filters (before, after);
}

void
ff_day_plan_compare (const FfDayPlan *before, FfDayPlan *after)
{
  g_ptr_array_set_size (after->changes, 0);
  add_lost_and_won (before, after);
  ff_plan_add_details (before, after, NULL);
  if (after->changes->len == 0)
    g_ptr_array_add (after->changes, g_strdup (_ ("All shots stay, behind the same filters.")));
}
