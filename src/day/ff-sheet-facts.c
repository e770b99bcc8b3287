/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sheet-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-day-reading.h"
#include "ff-daylight.h"
#include "ff-events.h"
#include "ff-number.h"
#include "ff-sheet-limits.h"
#include "ff-sheet-private.h"
#include "ff-standing.h"


#define FF_SHEET_MOST_TEXTS 40

static void
member_free (gpointer data)
{
  FfSheetMember *member = data;

  g_free (member->name);
  g_free (member->initials);
  g_free (member->phone);
  g_free (member->briefed);
  g_free (member);
}

static void
limit_free (gpointer data)
{
  FfSheetLimit *limit = data;

  g_free (limit->text);
  g_free (limit->bound);
  g_free (limit->whose);
  g_free (limit->stands);
  g_free (limit);
}

static void
hazard_free (gpointer data)
{
  FfSheetHazard *hazard = data;

  g_free (hazard->what);
  g_free (hazard->measure);
  g_free (hazard);
}

static char *
clock_phrase (const char *word, int clock)
{
  g_autofree char *text = NULL;

  if (clock == FF_NO_CLOCK)
    return NULL;
  text = ff_clock_format (clock);
  return g_strdup_printf ("%s %s", word, text);
}

static char *
hours_text (const FfJob *job)
{
  GString *text = g_string_new (NULL);

  ff_sheet_append_part (text, ", ", clock_phrase (_ ("on site"), job->on_site));
  ff_sheet_append_part (text, ", ", clock_phrase (_ ("first off"), job->first_off));
  ff_sheet_append_part (text, ", ", clock_phrase (_ ("all down"), job->all_down));
  ff_sheet_append_part (text, ", ", clock_phrase (_ ("off site"), job->off_site));
  return g_string_free (text, FALSE);
}

static char *
position_text (const FfPlace *place)
{
  return g_strdup_printf ("%.4f° %s, %.4f° %s", fabs (place->latitude_deg),
                          /* Translators: the letters of the compass points, here of latitude. */
                          place->latitude_deg >= 0 ? _ ("N") : _ ("S"), fabs (place->longitude_deg),
                          place->longitude_deg >= 0 ? _ ("E") : _ ("W"));
}

static char *
wind_text (const FfJob *job)
{
  GString *text = g_string_new (NULL);

  if (isfinite (job->wind_from_deg))
    ff_sheet_append_part (text, " ", g_strdup_printf (_ ("from %.0f°"), job->wind_from_deg));
  if (isfinite (job->wind_ms))
    ff_sheet_append_part (text, " ", g_strdup_printf (_ ("%.0f m/s"), job->wind_ms));
  if (isfinite (job->gust_ms))
    ff_sheet_append_part (text, " ", g_strdup_printf (_ ("gusting %.0f"), job->gust_ms));
  if (isfinite (job->wind_height_m) && text->len > 0)
    ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("at %.0f m"), job->wind_height_m));
  return g_string_free (text, FALSE);
}

static char *
weather_text (const FfJob *job)
{
  GString *text = g_string_new (ff_name_text (&ff_names_sky, job->sky));

  if (isfinite (job->temperature_c))
    ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("%.0f °C"), job->temperature_c));
  if (isfinite (job->visibility_m))
    ff_sheet_append_part (text, ", ", g_strdup_printf (_ ("visibility %.0f km"), job->visibility_m / 1000));
  return g_string_free (text, FALSE);
}

/* ---- Sun ---- */

static char *
event_phrase (const FfDay *day, GArray *events, FfEvent event)
{
  const FfSkyEvent *found = ff_sky_events_find (events, event);
  g_autofree char *clock = NULL;

  if (found == NULL)
    return NULL;
  clock = ff_instant_clock (found->instant, day->zone);
  return g_strdup_printf ("%s %s", ff_name_text (&ff_names_event, event), clock);
}

static char *
sun_times_text (const FfDay *day)
{
  FfSite site = { day->place->latitude_deg, day->place->longitude_deg, day->place->elevation_m };
  GString *text = g_string_new (NULL);
  g_autoptr (GArray) events = NULL;
  gint64 from, to;
  FfPolar polar;

  ff_day_bounds (day->date, day->zone, &from, &to);
  events = ff_sky_events (from, to, &site, &polar);
  if (polar != FF_POLAR_NONE)
    ff_sheet_append_part (text, ", ", g_strdup (ff_name_text (&ff_names_polar, polar)));
  ff_sheet_append_part (text, ", ", event_phrase (day, events, FF_EVENT_SUNRISE));
  ff_sheet_append_part (text, ", ", event_phrase (day, events, FF_EVENT_SUNSET));
  ff_sheet_append_part (text, ", ", event_phrase (day, events, FF_EVENT_CIVIL_DUSK));
  return g_string_free (text, FALSE);
}

static char *
sun_check_text (const FfDay *day, const FfDayPlan *plan)
{
  const FfPlanLine *first = plan != NULL && plan->lines->len > 0 ? g_ptr_array_index (plan->lines, 0) : NULL;
  g_autofree char *clock = NULL;
  FfDirection sun;

  if (first == NULL)
    return g_strdup ("");
  ff_sun_track_direction (&day->sun, (double) first->off_by, &sun);
  clock = ff_instant_clock ((double) first->off_by, day->zone);
  /* Translators: a check of clock and zone: where the sun must stand, bearing and height. */
  return g_strdup_printf (_ ("At %s the sun stands at %.0f°, %.0f° high; if not, the clock "
                             "or the zone is wrong."),
                          clock, sun.azimuth_deg, sun.altitude_deg);
}

/* ---- Lists ---- */

static void
add_crew (FfSheetFacts *facts, const FfDay *day)
{
  for (guint i = 0; i < day->crew->len; i++)
    {
      const FfMember *record = g_ptr_array_index (day->crew, i);
      FfSheetMember *member = g_new0 (FfSheetMember, 1);

      member->name = g_strdup (record->name);
      member->initials = g_strdup (record->initials);
      member->phone = g_strdup (record->phone);
      member->briefed = g_strdup ("");
      member->role = record->role;
      g_ptr_array_add (facts->crew, member);
    }
}

static void
add_hazards (FfSheetFacts *facts, const FfPlace *place)
{
  for (guint i = 0; i < place->hazards->len; i++)
    {
      const FfHazard *record = g_ptr_array_index (place->hazards, i);
      FfSheetHazard *hazard = g_new0 (FfSheetHazard, 1);

      hazard->what = g_strdup (record->what);
      hazard->measure = g_strdup (record->measure);
      g_ptr_array_add (facts->hazards, hazard);
    }
}

static void
add_events (FfSheetFacts *facts, const FfJob *job)
{
  for (guint i = 0; i < job->events->len; i++)
    {
      const FfDayEvent *event = g_ptr_array_index (job->events, i);
      g_autofree char *clock = ff_clock_format (event->clock);

      g_ptr_array_add (facts->events, g_strdup_printf ("%s %s", clock, event->text));
    }
}

/* ---- Gear ---- */

static char *
cards_text (const FfDay *day)
{
  const FfItem *camera = ff_day_camera (day);
  GString *labels = g_string_new (NULL);
  double smallest = INFINITY;
  char *text;

  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);

      if (item->kind != FF_KIND_CARD || item->state != FF_STATE_SERVICEABLE
          || !ff_day_uses (day, item))
        continue;
      ff_sheet_append_part (labels, " ", g_strdup (item->label));
      smallest = MIN (smallest, item->capacity_gb);
    }
  if (labels->len == 0)
    return g_string_free (labels, FALSE);
  if (camera == NULL || !(camera->bitrate_mbits > 0))
    return g_string_free (labels, FALSE);
  /* Translators: card labels, capacity in GB of each, minutes that one holds, data rate. */
  text = g_strdup_printf (_ ("%s, %.0f GB each: %.0f min of video at %.0f Mbit/s"), labels->str,
                          smallest, floor (smallest * 8000 / camera->bitrate_mbits / 60),
                          camera->bitrate_mbits);
  g_string_free (labels, TRUE);
  return text;
}

/* ---- The whole ---- */

static void
fill_place (FfSheetFacts *facts, const FfDay *day, const FfDayPlan *plan)
{
  const FfPlace *place = day->place;

  facts->place = g_strdup (place->name);
  facts->position = position_text (place);
  facts->takeoff_spot = g_strdup (place->takeoff_spot);
  facts->second_spot = g_strdup (place->second_spot);
  facts->emergency_location = g_strdup (place->emergency_location);
  facts->emergency_phone = g_strdup (place->emergency_phone);
  facts->sun_times = sun_times_text (day);
  facts->sun_check = sun_check_text (day, plan);
  add_hazards (facts, place);
}

static char *
printed_text (gint64 printed_at, GTimeZone *zone)
{
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc (printed_at);
  g_autoptr (GDateTime) local = g_date_time_to_timezone (utc, zone);

  /* Translators: when a sheet was printed, in strftime's letters: "Printed 17:32 Thu". */
  return g_date_time_format (local, _ ("Printed %H:%M %a"));
}

static void
fill_job (FfSheetFacts *facts, const FfDay *day, gint64 printed_at)
{
  const FfJob *job = day->job;

  facts->job = g_strdup (job->title);
  facts->client = g_strdup (job->client);
  facts->version = g_strdup (job->version);
  facts->date = ff_date_format_long (day->date);
  facts->printed = printed_text (printed_at, day->zone);
  facts->example = job->example;
  facts->abort_word = g_strdup (job->abort_word);
  facts->hours = hours_text (job);
  facts->wind = wind_text (job);
  facts->weather = weather_text (job);
  add_events (facts, job);
}

/* What of the job's gear is not to be used, or only with care, and why: "b3 defect: latch". */
static char *
defects_text (const FfDay *day)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < day->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (day->items, i);

      if ((item->state != FF_STATE_DEFECT && item->state != FF_STATE_QUARANTINED)
          || !ff_day_uses (day, item))
        continue;
      ff_sheet_append_part (text, "; ",
                            g_strdup_printf ("%s %s%s%s", item->label,
                                             ff_name_text (&ff_names_state, (int) item->state),
                                             *item->state_why != '\0' ? ": " : "",
                                             item->state_why));
    }
  return g_string_free (text, FALSE);
}

static void
fill_gear (FfSheetFacts *facts, const FfDay *day)
{
  const FfItem *aircraft = ff_day_aircraft (day);
  const FfItem *camera = ff_day_camera (day);

  facts->aircraft = g_strdup (aircraft->title);
  facts->camera = g_strdup (camera->title);
  facts->return_height
      = isfinite (aircraft->return_height_m)
            ? g_strdup_printf (_ ("automatic return at %.0f m"), aircraft->return_height_m)
            : g_strdup ("");
  facts->cards = cards_text (day);
  facts->defects = defects_text (day);
}

/* What the observer must know of the site and of where the aircraft will be. */
static void
fill_site (FfSheetFacts *facts, const FfDay *day)
{
  g_autoptr (GString) area = g_string_new (NULL);

  facts->compass = ff_compass_facts (day);
  facts->latitude_deg = day->place != NULL ? day->place->latitude_deg : NAN;
  facts->longitude_deg = day->place != NULL ? day->place->longitude_deg : NAN;
  facts->observer_post = g_strdup (day->place != NULL ? day->place->observer_post : "");
  facts->second_post = g_strdup (day->place != NULL ? day->place->second_post : "");
  for (guint i = 0; i < day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (day->shots, i);

      facts->highest_m = MAX (facts->highest_m, MAX (shot->height_from_m, shot->height_to_m));
      g_string_append_printf (area, "%s%s ", area->len > 0 ? "; " : "", shot->label);
      /* Translators: highest of a shot, in metres, with a blank that does not break; where it goes
       * follows. */
      g_string_append_printf (area, _ ("%.0f m"), MAX (shot->height_from_m, shot->height_to_m));
      if (*shot->track != '\0')
        g_string_append_printf (area, " %s", shot->track);
    }
  facts->area = g_string_free (g_steal_pointer (&area), FALSE);
}

/* Until somebody has looked, paper says that nobody has. */
static char *
light_source (const FfDay *day, const FfDayPlan *plan)
{
  double offset;

  if (plan != NULL && ff_day_last_reading (day, &offset) != NULL)
    return g_strdup (plan->light);
  return g_strdup_printf (_ ("%s, estimated; not yet checked by a reading"),
                          ff_name_text (&ff_names_sky, plan != NULL ? plan->sky : day->job->sky));
}

/* Every text of the facts; returns how many. */
static guint
list_texts (FfSheetFacts *facts, char **ret_texts[FF_SHEET_MOST_TEXTS])
{
  char **const texts[] = {
    &facts->job, &facts->client, &facts->place, &facts->version, &facts->date,
    &facts->printed, &facts->beside, &facts->abort_word, &facts->emergency_location,
    &facts->emergency_phone, &facts->position, &facts->takeoff_spot, &facts->second_spot,
    &facts->hours, &facts->sun_times, &facts->sun_check, &facts->wind, &facts->weather,
    &facts->return_height, &facts->aircraft, &facts->camera, &facts->light_source,
    &facts->cards, &facts->observer_post, &facts->second_post, &facts->area,
    &facts->distance_limit, &facts->drop_first, &facts->defects, &facts->limits_stand,
  };

  G_STATIC_ASSERT (G_N_ELEMENTS (texts) <= FF_SHEET_MOST_TEXTS);
  memcpy (ret_texts, texts, sizeof texts);
  return G_N_ELEMENTS (texts);
}

static FfSheetFacts *
facts_new (GTimeZone *zone)
{
  FfSheetFacts *facts = g_new0 (FfSheetFacts, 1);

  facts->zone = g_time_zone_ref (zone);
  facts->crew = g_ptr_array_new_with_free_func (member_free);
  facts->limits = g_ptr_array_new_with_free_func (limit_free);
  facts->hazards = g_ptr_array_new_with_free_func (hazard_free);
  facts->events = g_ptr_array_new_with_free_func (g_free);
  facts->shots = g_ptr_array_new_with_free_func (ff_sheet_shot_free);
  facts->missing = g_ptr_array_new_with_free_func (g_free);
  facts->mend = g_ptr_array_new ();
  facts->amendments = g_ptr_array_new_with_free_func (ff_sheet_amendment_free);
  return facts;
}

/* A fact that nobody has said is an empty text. */
static void
fill_gaps (FfSheetFacts *facts)
{
  char **texts[FF_SHEET_MOST_TEXTS];
  const guint n = list_texts (facts, texts);

  for (guint i = 0; i < n; i++)
    if (*texts[i] == NULL)
      *texts[i] = g_strdup ("");
}

FfSheetFacts *
ff_sheet_facts_blank (gint64 printed_at, GTimeZone *zone)
{
  FfSheetFacts *facts = facts_new (zone);

  facts->latitude_deg = facts->longitude_deg = NAN;
  facts->printed = printed_text (printed_at, zone);
  fill_gaps (facts);
  return facts;
}

FfSheetFacts *
ff_sheet_facts (const FfDay *day, const FfDayPlan *plan, gint64 printed_at)
{
  FfSheetFacts *facts = facts_new (day->zone);

  fill_job (facts, day, printed_at);
  fill_place (facts, day, plan);
  fill_gear (facts, day);
  facts->light_source = light_source (day, plan);
  fill_site (facts, day);
  add_crew (facts, day);
  ff_sheet_add_shots (facts, day, plan);
  ff_sheet_facts_miss (facts, day);
  ff_sheet_facts_add_limits (facts, day, plan, printed_at);
  fill_gaps (facts);
  return facts;
}

void
ff_sheet_facts_stand (FfSheetFacts *facts, const FfStanding *standing)
{
  if (standing->version == NULL)
    return;
  ff_set_text (&facts->version, standing->version->letter);
  g_free (facts->beside);
  facts->beside = ff_standing_beside (standing);
  ff_sheet_add_amendments (facts, standing);
}

void
ff_sheet_facts_free (FfSheetFacts *facts)
{
  if (facts == NULL)
    return;

  char **texts[FF_SHEET_MOST_TEXTS];
  const guint n = list_texts (facts, texts);

  for (guint i = 0; i < n; i++)
    g_free (*texts[i]);
  g_ptr_array_unref (facts->amendments);
  g_time_zone_unref (facts->zone);
  g_ptr_array_unref (facts->crew);
  g_ptr_array_unref (facts->limits);
  g_ptr_array_unref (facts->hazards);
  g_ptr_array_unref (facts->events);
  g_ptr_array_unref (facts->shots);
  g_ptr_array_unref (facts->missing);
  g_ptr_array_unref (facts->mend);
  g_clear_pointer (&facts->emergencies, g_ptr_array_unref);
  g_clear_pointer (&facts->lists, g_ptr_array_unref);
  g_clear_pointer (&facts->book, g_ptr_array_unref);
  g_clear_pointer (&facts->pack, g_ptr_array_unref);
  g_clear_pointer (&facts->chart, ff_chart_facts_free);
  g_clear_pointer (&facts->pack_short, g_ptr_array_unref);
  ff_compass_facts_free (facts->compass);
  g_free (facts);
}
