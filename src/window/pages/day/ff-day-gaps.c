/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-gaps.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static void
gap_free (gpointer data)
{
  FfDayGap *gap = data;

  g_free (gap->sentence);
  g_free (gap);
}

static FfDayGap *
add (GPtrArray *gaps, const char *sentence, const char *goal)
{
  FfDayGap *gap = g_new0 (FfDayGap, 1);

  gap->sentence = g_strdup (sentence);
  gap->goal = goal;
  g_ptr_array_add (gaps, gap);
  return gap;
}

static void
add_page (GPtrArray *gaps, const char *sentence, const char *page)
{
  add (gaps, sentence, page)->is_page = TRUE;
}

/* "the job has no camera; enter one" as a sentence. */
static char *
as_sentence (const char *why)
{
  const char *rest = g_utf8_next_char (why);
  g_autofree char *first = g_utf8_strup (why, rest - why);

  return g_strdup_printf ("%s%s%s", first, rest, g_str_has_suffix (why, ".") ? "" : ".");
}

static void
add_for_plan (GPtrArray *gaps, const FfDayState *state)
{
  g_autofree char *why = NULL;

  if (state->job->date[0] == '\0')
    add (gaps, _ ("No date yet: enter the day of the shoot."), "date");
  if (state->place == NULL)
    add (gaps, _ ("No place yet: type its position, or choose one you know."), "position");
  else if (strcmp (state->place->zone, FF_DAY_NO_ZONE) == 0)
    add (gaps, _ ("No time zone yet: choose that of the place."), "zone");
  if (state->n_shots == 0)
    add_page (gaps, _ ("No shots yet: add the first one."), "shots");
  if (gaps->len > 0 || state->why == NULL || state->why[0] == '\0')
    return;
  /* What is left is the gear, or an hour that can't be. */
  why = as_sentence (state->why);
  add_page (gaps, why, "gear");
}

static void
add_crew (GPtrArray *gaps, const FfDayState *state)
{
  if (!ff_job_crew_has (state->crew, FF_ROLE_LEAD))
    add (gaps, _ ("No crew lead yet: say who runs the day."), "crew");
  if (!ff_job_crew_has (state->crew, FF_ROLE_PILOT))
    add (gaps, _ ("No pilot yet: say who flies."), "crew");
  if (!ff_job_crew_has (state->crew, FF_ROLE_OBSERVER))
    add (gaps, _ ("No observer yet: say who watches."), "crew");
}

/* A certificate that ends before the day; each member once, whatever the roles. */
static void
add_certificates (GPtrArray *gaps, const FfDayState *state)
{
  const char *date = state->job->date;

  for (guint i = 0; i < state->crew->len && date[0] != '\0'; i++)
    {
      const FfMember *member = g_ptr_array_index (state->crew, i);
      g_autofree char *sentence = NULL;
      gboolean said = FALSE;

      for (guint j = 0; j < i; j++)
        said = said
               || g_str_equal (((const FfMember *) g_ptr_array_index (state->crew, j))->id,
                               member->id);
      if (said || member->certificate_expiry[0] == '\0'
          || strcmp (member->certificate_expiry, date) >= 0)
        continue;
      /* Translators: name of a crew member, date as YYYY-MM-DD. */
      sentence = g_strdup_printf (_ ("The certificate of %s ends on %s, before the day."),
                                  member->name, member->certificate_expiry);
      add (gaps, sentence, "crew");
    }
}

static void
add_for_sheets (GPtrArray *gaps, const FfDayState *state)
{
  const FfJob *job = state->job;
  const FfPlace *place = state->place;

  if (place != NULL && place->emergency_location[0] == '\0')
    add (gaps, _ ("Emergency location is blank: write what to read to a call handler."),
         "emergency_location");
  if (place != NULL && place->emergency_phone[0] == '\0')
    add (gaps, _ ("Emergency telephone is blank: write whom to call."), "emergency_phone");
  if (job->abort_word[0] == '\0')
    add (gaps, _ ("No abort word yet: choose the one word that stops everything."), "abort_word");
  if (place != NULL && place->takeoff_spot[0] == '\0')
    add (gaps, _ ("No take-off spot yet: say where."), "takeoff_spot");
  if (place != NULL && place->second_spot[0] == '\0')
    add (gaps, _ ("No second landing spot yet: say where to go when the first is taken."),
         "second_spot");
  if (job->first_off < 0 || job->all_down < 0)
    add (gaps, _ ("No hours yet: enter first off and all down."),
         job->first_off < 0 ? "first_off" : "all_down");
  if (isnan (job->wind_ms) || isnan (job->gust_ms))
    add (gaps, _ ("No wind yet: enter mean and gust of the forecast."), "wind_ms");
}

GPtrArray *
ff_day_gaps (const FfDayState *state)
{
  GPtrArray *gaps = g_ptr_array_new_with_free_func (gap_free);

  add_for_plan (gaps, state);
  for (guint i = 0; i < gaps->len; i++)
    ((FfDayGap *) g_ptr_array_index (gaps, i))->for_plan = TRUE;
  add_for_sheets (gaps, state);
  add_crew (gaps, state);
  add_certificates (gaps, state);
  return gaps;
}
