/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-list-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-kept-run.h"
#include "ff-number.h"

#define SUNSET_DEG (-0.833) /* upper limb on the horizon in standard air: Meeus, chapter 15 */

/* Facts of the plan */

static const FfPlanLine *
line_of (const FfDayPlan *plan, int line)
{
  return plan != NULL && line > 0 && line <= (int) plan->lines->len
             ? g_ptr_array_index (plan->lines, line - 1)
             : NULL;
}

static void
add_way (GString *ways, const char *text)
{
  if (text != NULL && text[0] != '\0')
    g_string_append_printf (ways, "%s%s", ways->len > 0 ? " / " : "", text);
}

static char *
filter_ways (const FfPlanLine *line)
{
  g_autofree char *stops = ff_stops_format (line->filter_stops);
  GString *ways = g_string_new (NULL);

  if (line->filter_stops > 0)
    add_way (ways, stops);
  else
    /* Translators: no filter is fitted, or a clear one; every way that a person may say it, parted
       by " / ". */
    add_way (ways, _ ("none / clear / 0 stops"));
  add_way (ways, line->engraving);
  for (guint i = 0; i < line->filters->len; i++)
    if (g_strcmp0 (g_ptr_array_index (line->filters, i), line->engraving) != 0)
      add_way (ways, g_ptr_array_index (line->filters, i));
  return g_string_free (ways, FALSE);
}

static char *
clock_ways (gint64 at, GTimeZone *zone)
{
  g_autofree char *clock = ff_instant_clock ((double) at, zone);
  g_autofree char *bare = g_strdup (clock);

  g_strdelimit (bare, ":", '.');
  return g_strdup_printf ("%s / %c%c%s / %s", clock, clock[0], clock[1], clock + 3, bare);
}

static char *
card_ways (const FfDay *day)
{
  GString *ways = g_string_new (NULL);

  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind == FF_KIND_CARD && item->state == FF_STATE_SERVICEABLE
          && ff_day_uses (day, item))
        add_way (ways, item->label);
    }
  return g_string_free (ways, FALSE);
}

static char *
aircraft_ways (const FfItem *aircraft)
{
  GString *ways = g_string_new (NULL);

  add_way (ways, aircraft->label);
  add_way (ways, aircraft->title);
  return g_string_free (ways, FALSE);
}

static void
say_line (FfListFacts *facts, const FfPlanLine *line, GTimeZone *zone)
{
  facts->said[FF_FACT_FILTER] = filter_ways (line);
  facts->said[FF_FACT_BATTERY] = g_strdup (line->battery);
  facts->said[FF_FACT_LINE] = g_strdup_printf ("%d", line->line);
  facts->said[FF_FACT_LAND_BY] = clock_ways (line->land_by, zone);
}

FfListFacts *
ff_list_facts_new (const FfDay *day, const FfDayPlan *plan, int line)
{
  FfListFacts *facts = g_new0 (FfListFacts, 1);
  const FfPlanLine *planned = line_of (plan, line);
  const FfItem *aircraft = ff_day_aircraft (day);

  if (planned != NULL)
    {
      facts->line = line;
      say_line (facts, planned, day->zone);
    }
  facts->said[FF_FACT_CARD] = card_ways (day);
  facts->said[FF_FACT_ABORT_WORD] = g_strdup (day->job->abort_word);
  if (aircraft != NULL)
    {
      g_autofree char *height = ff_number_format (aircraft->return_height_m, 1);

      facts->said[FF_FACT_AIRCRAFT] = aircraft_ways (aircraft);
      if (isfinite (aircraft->return_height_m))
        facts->said[FF_FACT_RETURN_HEIGHT] = g_strdup_printf ("%s m", height);
    }
  return facts;
}

void
ff_list_facts_free (FfListFacts *facts)
{
  if (facts == NULL)
    return;
  for (guint i = 0; i < FF_N_FACTS; i++)
    g_free (facts->said[i]);
  g_free (facts);
}

const char *
ff_list_fact (const FfListFacts *facts, FfFact fact)
{
  return facts != NULL && facts->said[fact] != NULL ? facts->said[fact] : "";
}

gboolean
ff_list_next_line (FfStore *store,
                   const char *job_id,
                   const FfDayPlan *plan,
                   int *ret_line,
                   GError **error)
{
  g_autoptr (GPtrArray) flights = ff_flights_load (store, job_id, error);
  int last = 0, n_lines = plan != NULL ? (int) plan->lines->len : 0;

  if (flights == NULL)
    return FALSE;
  for (guint i = 0; i < flights->len; i++)
    last = MAX (last, ((const FfFlight *) g_ptr_array_index (flights, i))->line);
  *ret_line = last < n_lines ? last + 1 : 0;
  return TRUE;
}

/* Conditions */

static gboolean
is_night (const FfDay *day)
{
  gint64 at;
  FfDirection sun;

  if (!day->has_date || day->place == NULL || day->job->all_down < 0
      || !ff_instant_from_clock (day->date, day->job->all_down, day->zone, &at, NULL))
    return FALSE;
  ff_sun_track_direction (&day->sun, (double) at, &sun);
  return sun.altitude_deg < SUNSET_DEG;
}

/* Whether a hazard has one of these words in it. */
static gboolean
hazard_says (const FfDay *day, const char *words)
{
  g_auto (GStrv) each = g_strsplit (words, ",", -1);

  for (guint i = 0; day->place != NULL && i < day->place->hazards->len; i++)
    {
      const FfHazard *hazard = g_ptr_array_index (day->place->hazards, i);
      g_autofree char *folded = g_utf8_casefold (hazard->what, -1);

      for (guint n = 0; each[n] != NULL; n++)
        if (strstr (folded, each[n]) != NULL)
          return TRUE;
    }
  return FALSE;
}

static const FfMember *
holder (const FfDay *day, FfRole role)
{
  for (guint i = 0; i < day->crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (day->crew, i);

      if (member->role == role)
        return member;
    }
  return NULL;
}

static gboolean
has_two_operators (const FfDay *day)
{
  const FfMember *pilot = holder (day, FF_ROLE_PILOT), *camera = holder (day, FF_ROLE_CAMERA);

  return pilot != NULL && camera != NULL && !g_str_equal (pilot->id, camera->id);
}

static gboolean
was_here_before (const FfDay *day, GPtrArray *jobs)
{
  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);

      if (!g_str_equal (job->id, day->job->id) && day->job->place_id[0] != '\0'
          && g_str_equal (job->place_id, day->job->place_id) && job->date[0] != '\0'
          && strcmp (job->date, day->job->date) < 0)
        return TRUE;
    }
  return FALSE;
}

static guint
bit (FfWhen condition, gboolean holds)
{
  return holds ? 1u << condition : 0;
}

static gboolean
by_facts (FfStore *store, const FfDay *day, const FfListRules *rules, guint *ret, GError **error)
{
  g_autoptr (GPtrArray) jobs = ff_jobs_load (store, error);
  g_autoptr (GPtrArray) flights = jobs != NULL ? ff_flights_load (store, day->job->id, error) : NULL;

  if (flights == NULL)
    return FALSE;
  *ret = bit (FF_WHEN_COLD, day->job->temperature_c < rules->cold_below_c)
         | bit (FF_WHEN_NIGHT, is_night (day))
         /* Translators: words that tell of water in a hazard, in lower case, parted by commas, no
            blanks. */
         | bit (FF_WHEN_WATER, hazard_says (day, _ ("water,sea,harbour,river,lake,tide")))
         /* Translators: words that tell of people in a hazard, likewise. */
         | bit (FF_WHEN_PEOPLE, hazard_says (day, _ ("people,walker,public,child,crowd,rider")))
         | bit (FF_WHEN_OPERATORS, has_two_operators (day))
         | bit (FF_WHEN_FIRST_FLIGHT, flights->len == 0)
         | bit (FF_WHEN_NEW_SITE, !was_here_before (day, jobs));
  return TRUE;
}

gboolean
ff_day_conditions (FfStore *store,
                   const FfDay *day,
                   const FfListRules *rules,
                   guint *ret_conditions,
                   GError **error)
{
  guint conditions = 0;

  if (!by_facts (store, day, rules, &conditions, error))
    return FALSE;
  for (int i = 0; i < FF_N_WHEN; i++)
    {
      int said;

      if (!ff_day_condition_load (store, day->job->id, ff_name_token (&ff_names_when, i), &said,
                                  error))
        return FALSE;
      if (said >= 0)
        conditions = (conditions & ~(1u << i)) | bit ((FfWhen) i, said > 0);
    }
  *ret_conditions = conditions;
  return TRUE;
}
