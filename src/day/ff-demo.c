/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-demo.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-charge-watch.h"
#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-demo-data.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-number.h"
#include "ff-place.h"
#include "ff-shot.h"
#include "ff-travel-sheet.h"

/* What later records refer to. */
typedef struct {
  FfStore *store;
  char *job_id;
  char *lead_id;
  GHashTable *item_ids; /* label to id */
  GPtrArray *members;   /* FfMember */
} Demo;

/* A clock of the tables, which are right. */
static int
clock_of (const char *text)
{
  int minutes = FF_NO_CLOCK;

  ff_clock_parse (text, &minutes, NULL);
  return minutes;
}

static gboolean
save_crew (Demo *demo, GError **error)
{
  for (const FfDemoMember *row = ff_demo_crew; row->name != NULL; row++)
    {
      FfMember *member = ff_member_new ();

      g_ptr_array_add (demo->members, member);
      ff_set_text (&member->name, row->name);
      ff_set_text (&member->initials, row->initials);
      member->role = row->role;
      if (row->role == FF_ROLE_LEAD)
        ff_set_text (&demo->lead_id, member->id);
      if (!ff_member_save (demo->store, member, error))
        return FALSE;
    }
  return TRUE;
}

/* The emergency texts stay blank: the crew must fill them in, and every sheet says so. */
static FfPlace *
make_place (void)
{
  FfPlace *place = ff_place_new ();

  ff_set_text (&place->name, "Skarrowick Head");
  place->latitude_deg = 57.2;
  place->longitude_deg = -4;
  place->elevation_m = 12;
  ff_set_text (&place->zone, "Europe/London");
  ff_set_text (&place->takeoff_spot, "the slipway car park");
  ff_set_text (&place->second_spot, "the bowling green");
  ff_set_text (&place->observer_post, "the sea wall");
  ff_set_text (&place->second_post, "the mill yard (move only when the aircraft is down)");
  place->second_spot_bearing_deg = 320;
  place->second_spot_distance_m = 120;
  place->post_bearing_deg = 75;
  place->post_distance_m = 110;
  place->post_faces_deg = 260;
  place->second_post_bearing_deg = 290;
  place->second_post_distance_m = 60;
  place->second_post_faces_deg = 80;
  for (const FfDemoPair *row = ff_demo_hazards; row->first != NULL; row++)
    {
      FfHazard *hazard = ff_hazard_new ();

      ff_set_text (&hazard->what, row->first);
      ff_set_text (&hazard->measure, row->second);
      g_ptr_array_add (place->hazards, hazard);
    }
  return place;
}

static void
fill_aircraft (FfItem *item, Demo *demo)
{
  item->size_m = 0.35;
  item->mass_kg = 0.9;
  item->wind_limit_ms = 10;
  item->temperature_low_c = -10;
  item->temperature_high_c = 40;
  item->return_height_m = 50;
  item->light_fitted = TRUE;
  ff_set_text (&item->camera_id, g_hash_table_lookup (demo->item_ids, "camera 1"));
}

static void
fill_camera (FfItem *item)
{
  ff_set_text (&item->apertures, "2.8");
  ff_set_text (&item->base_iso, "100");
  item->iso_low = 100;
  item->iso_high = 6400;
  ff_set_text (&item->shutter_fast, "1/8000");
  ff_set_text (&item->shutter_slow, "8");
  item->pitch_um = 3;
  item->focal_mm = 11;
  item->width_px = 4800;
  item->height_px = 3200;
  item->bitrate_mbits = 100;
}

/* "ND32" is five stops: the engraving is the factor. */
static void
fill_filter (FfItem *item, int slot)
{
  double factor = 1;

  if (g_str_has_prefix (item->label, "ND"))
    {
      ff_number_parse (item->label, item->label + 2, 1, 64, &factor, NULL);
      ff_set_text (&item->engraving, item->label);
    }
  item->stops = item->stops_to = log2 (factor);
  if (strcmp (item->label, "ND8") == 0)
    item->measured_stops = 3.1;
  ff_set_text (&item->set_name, "coast");
  g_free (item->slot);
  item->slot = g_strdup_printf ("%d", slot);
}

static void
fill_battery (FfItem *item, int number)
{
  static const double cycles[] = { 12, 31, 30, 88, 14 };

  ff_set_text (&item->chemistry, "lithium polymer");
  item->cells = 4;
  item->volts = 14.8;
  item->milliamp_hours = 4700;
  item->printed_wh = 69.6;
  item->mass_kg = 0.42;
  item->usable_minutes = 18;
  item->usable_at_c = 15;
  item->used = cycles[number - 1];
  if (number == 4)
    item->due_at = 100;
}

static void
fill_charger (FfItem *item, Demo *demo)
{
  item->slots = 1;
  item->cool_minutes = 20;
  item->charge_minutes = 60;
  ff_set_text (&item->attended_by, demo->lead_id);
}

static void
fill_propellers (FfItem *item)
{
  item->due_at = 30;
  if (strcmp (item->label, "P1") == 0)
    item->used = 26.2;
}

static void
fill_document (FfItem *item)
{
  for (const FfDemoPair *row = ff_demo_documents; row->first != NULL; row++)
    if (strcmp (row->first, item->label) == 0)
      ff_set_text (&item->valid_until, row->second);
}

/* `number` counts the items of one kind from 1. */
static void
fill_kind (FfItem *item, Demo *demo, int number)
{
  if (item->kind == FF_KIND_AIRCRAFT)
    fill_aircraft (item, demo);
  else if (item->kind == FF_KIND_CAMERA)
    fill_camera (item);
  else if (item->kind == FF_KIND_FILTER)
    fill_filter (item, number);
  else if (item->kind == FF_KIND_BATTERY)
    fill_battery (item, number);
  else if (item->kind == FF_KIND_CHARGER)
    fill_charger (item, demo);
  else if (item->kind == FF_KIND_PROPELLERS)
    fill_propellers (item);
  else if (item->kind == FF_KIND_DOCUMENT)
    fill_document (item);
  else if (item->kind == FF_KIND_CARD)
    {
      item->capacity_gb = 128;
      ff_set_text (&item->speed_class, "V30");
    }
}

static gboolean
save_item (Demo *demo, const FfDemoItem *row, int number, GError **error)
{
  g_autoptr (FfItem) item = ff_item_new (row->kind);

  ff_set_text (&item->id, g_hash_table_lookup (demo->item_ids, row->label));
  ff_set_text (&item->label, row->label);
  ff_set_text (&item->title, row->title);
  ff_set_text (&item->case_label, row->case_label);
  ff_set_text (&item->note, row->note);
  for (const FfDemoItem *other = ff_demo_items; other->label != NULL; other++)
    if (g_strcmp0 (other->leader, row->label) == 0)
      ff_item_add_with (item, g_hash_table_lookup (demo->item_ids, other->label));
  fill_kind (item, demo, number);
  return ff_item_save (demo->store, item, error);
}

/* Ids first: items refer to each other both ways. */
static gboolean
save_items (Demo *demo, GError **error)
{
  int numbers[FF_KIND_OTHER + 1] = { 0 };

  for (const FfDemoItem *row = ff_demo_items; row->label != NULL; row++)
    g_hash_table_insert (demo->item_ids, (char *) row->label, ff_records_new_id ());
  for (const FfDemoItem *row = ff_demo_items; row->label != NULL; row++)
    if (!save_item (demo, row, ++numbers[row->kind], error))
      return FALSE;
  return TRUE;
}

static void
set_hours_and_weather (FfJob *job)
{
  job->on_site = clock_of ("15:00");
  job->first_off = clock_of ("16:30");
  job->all_down = clock_of ("19:50");
  job->off_site = clock_of ("20:30");
  job->sky = FF_SKY_CLEAR;
  job->wind_from_deg = 240;
  job->wind_ms = 4;
  job->gust_ms = 6;
  job->wind_height_m = 10;
  job->temperature_c = 15;
  job->visibility_m = 20000;
  for (const FfDemoPair *row = ff_demo_events; row->first != NULL; row++)
    {
      FfDayEvent *event = ff_day_event_new ();

      event->clock = clock_of (row->first);
      ff_set_text (&event->text, row->second);
      g_ptr_array_add (job->events, event);
    }
}

static gboolean
save_job (Demo *demo, const char *place_id, GError **error)
{
  g_autoptr (FfJob) job = ff_job_new ();

  ff_set_text (&demo->job_id, job->id);
  ff_set_text (&job->title, "Skarrowick tidal mill");
  ff_set_text (&job->client, "Skarrowick Harbour Trust");
  ff_set_text (&job->purpose, "a tidal mill and its harbour, for a visitor film");
  ff_set_text (&job->place_id, place_id);
  ff_set_text (&job->date, "2027-09-18");
  ff_set_text (&job->aircraft_id, g_hash_table_lookup (demo->item_ids, "aircraft 1"));
  job->example = TRUE;
  job->delivery_fps = 25;
  set_hours_and_weather (job);
  for (const FfDemoItem *row = ff_demo_items; row->label != NULL; row++)
    g_ptr_array_add (job->item_ids,
                     g_strdup (g_hash_table_lookup (demo->item_ids, row->label)));
  if (!ff_job_save (demo->store, job, error))
    return FALSE;
  for (guint i = 0; i < demo->members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (demo->members, i);

      if (!ff_job_crew_add (demo->store, job->id, member->id, member->role, error))
        return FALSE;
    }
  return TRUE;
}

/* The evening before, somebody is at the charger. */
static gboolean
save_watch (Demo *demo, GError **error)
{
  g_autoptr (GPtrArray) watches = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_watch_free);
  FfWatch *watch = ff_watch_new ();

  g_ptr_array_add (watches, watch);
  ff_set_text (&watch->date, "2027-09-17");
  watch->from_clock = clock_of ("17:00");
  watch->to_clock = clock_of ("23:00");
  ff_set_text (&watch->member_id, demo->lead_id);
  return ff_watches_save (demo->store, demo->job_id, watches, error);
}

/* Stills have no frame rate and no shutter angle. */
static void
set_stills (FfShot *shot)
{
  shot->fps = NAN;
  shot->angle_deg = NAN;
  shot->angle_from_deg = NAN;
  shot->angle_to_deg = NAN;
}

static void
set_intent (FfShot *shot, FfIntent intent)
{
  shot->intent = intent;
  if (intent == FF_INTENT_SLOW)
    {
      shot->fps = 100;
      shot->max_iso = 400;
    }
  else if (intent == FF_INTENT_BRACKET)
    {
      set_stills (shot);
      shot->frames = 3;
      shot->step_stops = 2;
    }
  else if (intent == FF_INTENT_TIMELAPSE)
    {
      set_stills (shot);
      shot->interval_s = 2;
    }
}

static gboolean
save_shot (Demo *demo, const FfDemoShot *row, int position, GError **error)
{
  g_autoptr (FfShot) shot = ff_shot_new (demo->job_id);

  shot->position = position;
  ff_set_text (&shot->label, row->label);
  ff_set_text (&shot->title, row->title);
  ff_set_text (&shot->note, row->note);
  shot->view = row->view;
  shot->bearing_deg = row->bearing_deg;
  shot->height_from_m = row->height_from_m;
  shot->height_to_m = row->height_to_m;
  ff_set_text (&shot->track, row->track);
  shot->speed_ms = row->speed_ms;
  set_intent (shot, row->intent);
  shot->minutes = row->minutes;
  shot->window_from = clock_of (row->from);
  shot->window_to = clock_of (row->to);
  shot->fixed_time = strcmp (row->label, "B") == 0;
  shot->most_wanted = strcmp (row->label, "G") == 0;
  /* Twice the price of another shot that is not flown. */
  shot->weight = shot->most_wanted ? 240 : 0;
  return ff_shot_save (demo->store, shot, error);
}

static gboolean
save_shots (Demo *demo, GError **error)
{
  for (int i = 0; ff_demo_shots[i].label != NULL; i++)
    if (!save_shot (demo, &ff_demo_shots[i], i, error))
      return FALSE;
  return TRUE;
}

static gboolean
save_limits (Demo *demo, GError **error)
{
  for (int i = 0; ff_demo_limits[i].kind != NULL; i++)
    {
      const FfDemoLimit *row = &ff_demo_limits[i];
      g_autoptr (FfLimit) limit = ff_limit_new ();

      ff_set_text (&limit->sheet, "Tern Four own sheet (example)");
      limit->position = i;
      ff_set_text (&limit->kind, row->kind);
      ff_set_text (&limit->text, row->text);
      limit->compare = row->compare;
      limit->value = row->value;
      ff_set_text (&limit->unit, row->unit);
      limit->rule = FF_RULE_OWN;
      ff_set_text (&limit->source, "example: set your own");
      limit->example = TRUE;
      if (!ff_limit_save (demo->store, limit, error))
        return FALSE;
    }
  return TRUE;
}

/* Another job on the days around it, so that an item can be out with it. */
static gboolean
save_other_days (Demo *demo, GError **error)
{
  for (const FfDemoPair *row = ff_demo_other_days; row->first != NULL; row++)
    {
      g_autoptr (FfJob) job = ff_job_new ();

      ff_set_text (&job->title, row->first);
      ff_set_text (&job->date, row->second);
      job->example = TRUE;
      if (!ff_job_save (demo->store, job, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
save_all (Demo *demo, GError **error)
{
  g_autoptr (FfPlace) place = make_place ();

  return save_crew (demo, error) && save_items (demo, error)
         && ff_place_save (demo->store, place, error) && save_job (demo, place->id, error)
         && save_watch (demo, error) && ff_travel_add_examples (demo->store, error)
         && save_shots (demo, error) && save_limits (demo, error)
         && save_other_days (demo, error);
}

static gboolean
refuse_unless_empty (FfStore *store, GError **error)
{
  gboolean empty;

  if (!ff_records_is_empty (store, &empty, error))
    return FALSE;
  if (!empty)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("the store holds records already; the demo day only fills an empty one: choose "
                    "another data folder"));
  return empty;
}

static gboolean
fill_in_transaction (FfStore *store, GError **error)
{
  Demo demo = { .store = store };
  gboolean done;

  demo.item_ids = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  demo.members = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_member_free);
  done = refuse_unless_empty (store, error) && save_all (&demo, error);
  g_hash_table_unref (demo.item_ids);
  g_ptr_array_unref (demo.members);
  g_free (demo.job_id);
  g_free (demo.lead_id);
  return done;
}

/* Looked at inside the transaction, so that two programs can't both find it empty. */
gboolean
ff_demo_fill (FfStore *store, GError **error)
{
  if (!ff_records_begin (store, error))
    return FALSE;
  if (fill_in_transaction (store, error))
    return ff_records_commit (store, error);
  ff_records_rollback (store);
  return FALSE;
}
