/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-shots-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-number.h"

#define NEW_MINUTES 6
#define NEW_WINDOW_MINUTES 30
#define NEW_HEIGHT_M 30
#define NOON (12 * 60)

/* Labels */

static gboolean
is_taken (GPtrArray *shots, const char *label)
{
  for (guint i = 0; i < shots->len; i++)
    if (g_ascii_strcasecmp (((const FfShot *) g_ptr_array_index (shots, i))->label, label) == 0)
      return TRUE;
  return FALSE;
}

/* A to Z, then A2 to Z2 and so on. */
static char *
nth_label (guint n)
{
  return n < 26 ? g_strdup_printf ("%c", 'A' + (char) n)
                : g_strdup_printf ("%c%u", 'A' + (char) (n % 26), n / 26 + 1);
}

/* "D" of "D" and of "D2". */
static char *
without_number (const char *label)
{
  gsize length = strlen (label);

  while (length > 1 && g_ascii_isdigit (label[length - 1]))
    length--;
  return g_strndup (label, length);
}

char *
ff_shots_free_label (GPtrArray *shots, const char *copied)
{
  g_autofree char *stem = copied != NULL ? without_number (copied) : NULL;

  for (guint n = 0;; n++)
    {
      g_autofree char *label
          = stem != NULL ? g_strdup_printf ("%s%u", stem, n + 2) : nth_label (n);

      if (!is_taken (shots, label))
        return g_steal_pointer (&label);
    }
}

/* A new shot */

/* The first minute at which an aircraft can be over the subject. */
static int
opening (const FfJob *job)
{
  return job->first_off != FF_NO_CLOCK ? job->first_off + job->out_minutes : NOON;
}

static int
closing (const FfJob *job)
{
  return job->all_down != FF_NO_CLOCK ? job->all_down - job->back_minutes : FF_CLOCK_MAX;
}

FfShot *
ff_shots_new (const FfJob *job, GPtrArray *shots, const FfShot *after)
{
  FfShot *shot = ff_shot_new (job->id);
  g_autofree char *label = ff_shots_free_label (shots, NULL);

  ff_set_text (&shot->label, label);
  shot->minutes = NEW_MINUTES;
  shot->height_from_m = shot->height_to_m = after != NULL ? after->height_from_m : NEW_HEIGHT_M;
  if (job->delivery_fps > 0)
    shot->fps = job->delivery_fps;
  shot->window_from = after != NULL ? after->window_to : opening (job);
  /* Behind the last shot of a full day its window is the last half hour. */
  if (shot->window_from + NEW_MINUTES > closing (job))
    shot->window_from = MAX (closing (job) - NEW_WINDOW_MINUTES, 0);
  shot->window_to = CLAMP (shot->window_from + NEW_WINDOW_MINUTES,
                           shot->window_from + NEW_MINUTES,
                           MAX (closing (job), shot->window_from + NEW_MINUTES));
  return shot;
}

/* Its place in the plan */

static gboolean
find_take (const FfPlanLine *line, const char *label, FfShotPlace *place)
{
  for (guint i = 0; i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      if (!g_str_equal (take->shot, label))
        continue;
      place->line = line;
      place->take = take;
      return TRUE;
    }
  return FALSE;
}

FfShotPlace
ff_shots_find_place (const FfDayPlan *plan, const FfShot *shot)
{
  FfShotPlace place = { NULL };

  for (guint i = 0; plan != NULL && i < plan->lines->len; i++)
    if (find_take (g_ptr_array_index (plan->lines, i), shot->label, &place))
      return place;
  for (guint i = 0; plan != NULL && i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      if (g_str_equal (miss->shot, shot->label))
        place.miss = miss;
    }
  return place;
}

/* Words */

char *
ff_shots_facts (const FfShot *shot)
{
  g_autofree char *from = ff_clock_format (shot->window_from);
  g_autofree char *to = ff_clock_format (shot->window_to);

  /* Translators: a shot in a list: its window, its minutes, "video" or "bracket" … */
  return g_strdup_printf (_ ("%s–%s · %d min · %s"), from, to, shot->minutes,
                          ff_name_text (&ff_names_intent, (int) shot->intent));
}

static char *
words_of_filter (const FfPlanLine *line)
{
  return line->filter_stops > 0.05 ? ff_stops_format (line->filter_stops)
                                   : g_strdup (_ ("no filter"));
}

char *
ff_shots_place_words (const FfShotPlace *place, GTimeZone *zone, gboolean planning)
{
  g_autofree char *clock = NULL;
  g_autofree char *filter = NULL;

  if (place->miss != NULL)
    /* Translators: ✕ is the shape of "failed"; why the plan leaves the shot out. */
    return g_strdup_printf (_ ("✕ NOT FLOWN: %s"), place->miss->reason);
  if (place->take == NULL)
    return g_strdup (planning ? _ ("being planned") : _ ("□ not planned yet"));
  clock = ff_instant_clock ((double) place->take->from, zone);
  filter = words_of_filter (place->line);
  /* Translators: number of the sortie, clock time of the take, filter ("5 stops"). */
  return g_strdup_printf (_ ("Sortie %d at %s · %s"), place->line->line, clock, filter);
}

static char *
words_of_settings (const FfPlanSettings *settings)
{
  g_autofree char *aperture = ff_number_format (settings->aperture, 1);

  if (isfinite (settings->shutter_angle_deg))
    /* Translators: aperture, shutter time, shutter angle in degrees, ISO. */
    return g_strdup_printf (_ ("f/%s, %s (%.0f°), ISO %d"), aperture, settings->shutter,
                            settings->shutter_angle_deg, settings->iso);
  /* Translators: aperture, shutter time in seconds, ISO. */
  return g_strdup_printf (_ ("f/%s, %s s, ISO %d"), aperture, settings->shutter, settings->iso);
}

static void
add_remarks (GString *words, const FfPlanTake *take, GPtrArray *said)
{
  for (guint i = 0; i < take->remarks->len; i++)
    {
      const char *remark = g_ptr_array_index (take->remarks, i);

      if (said == NULL || !g_ptr_array_find_with_equal_func (said, remark, g_str_equal, NULL))
        g_string_append_printf (words, "\n▸ %s", remark);
    }
}

char *
ff_shots_plan_words (const FfShotPlace *place,
                     GTimeZone *zone,
                     gboolean planning,
                     GPtrArray *said)
{
  GString *words;
  g_autofree char *off = NULL;
  g_autofree char *filter = NULL;
  g_autofree char *settings = NULL;

  if (place->take == NULL)
    return ff_shots_place_words (place, zone, planning);
  off = ff_instant_clock ((double) place->line->off_by, zone);
  filter = words_of_filter (place->line);
  settings = words_of_settings (&place->take->start);
  words = g_string_new (NULL);
  /* Translators: number of the sortie, off by, battery; then filter and settings. */
  g_string_append_printf (words, _ ("Sortie %d, off by %s on battery %s: %s, %s."),
                          place->line->line, off, place->line->battery, filter, settings);
  add_remarks (words, place->take, said);
  return g_string_free (words, FALSE);
}
