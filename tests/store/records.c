/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each noun: random records come back from the store as they went in, and every fact that is out of
 * bounds is refused by name before anything is written. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

#include "ff-crew.h"
#include "ff-error.h"
#include "ff-flight.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-place.h"
#include "ff-shot.h"

#define ROUNDS 200

static char *folder;
static FfStore *store;
static FfTestRandom dice;

/* Random records, by their own tables of fields. */

static char *
random_text (gsize longest)
{
  static const char *const words[] = { "a", "Skarrowick ", "Ω", "水", "'; --", "\"q\"", "\n", "%s", "0" };
  GString *text = g_string_new ("x");
  int n = ff_test_random_int (&dice, 0, 6);

  for (int i = 0; i < n; i++)
    {
      const char *word = words[ff_test_random_int (&dice, 0, (int) G_N_ELEMENTS (words) - 1)];

      if (text->len + strlen (word) <= longest)
        g_string_append (text, word);
    }
  return g_string_free (text, FALSE);
}

static void
fill_text (const FfField *field, gpointer record)
{
  gboolean given = field->needed || ff_test_random_int (&dice, 0, 3) > 0;
  char *text = NULL;

  if (given && field->type == FF_FIELD_TEXT)
    text = random_text ((gsize) field->high);
  else if (given && field->type == FF_FIELD_DATE)
    text = g_strdup_printf ("20%02d-%02d-%02d", ff_test_random_int (&dice, 10, 99),
                            ff_test_random_int (&dice, 1, 12), ff_test_random_int (&dice, 1, 28));
  if (text != NULL)
    {
      g_free (*ff_field_text (field, record));
      *ff_field_text (field, record) = text;
    }
}

static void
fill_field (const FfField *field, gpointer record)
{
  gboolean given = field->needed || ff_test_random_int (&dice, 0, 3) > 0;

  if (ff_field_is_text (field))
    fill_text (field, record);
  else if (field->type == FF_FIELD_REAL)
    *ff_field_real (field, record)
        = given ? ff_test_random (&dice, field->low, field->high) : NAN;
  else if (field->type == FF_FIELD_INSTANT)
    *ff_field_instant (field, record) = ff_test_random_int (&dice, 0, 2000000000);
  else if (field->type == FF_FIELD_NAME)
    *ff_field_whole (field, record)
        = ff_test_random_int (&dice, 0, (int) field->names->n_names - 1);
  else
    *ff_field_whole (field, record)
        = given ? ff_test_random_int (&dice, (int) field->low, (int) field->high) : -1;
}

/* Everything but ids, which the records give themselves. */
static void
fill (const FfFields *fields, gpointer record)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (fields->fields[i].type != FF_FIELD_ID)
      fill_field (&fields->fields[i], record);
}

static void
sort_two (double *low, double *high)
{
  double swap = *low;

  if (*high < *low)
    {
      *low = *high;
      *high = swap;
    }
}

static FfPlace *
random_place (void)
{
  FfPlace *place = ff_place_new ();
  int n = ff_test_random_int (&dice, 0, 4);

  fill (&ff_place_fields, place);
  ff_set_text (&place->zone, "Europe/London");
  for (int i = 0; i < n; i++)
    {
      FfHazard *hazard = ff_hazard_new ();

      fill (&ff_hazard_fields, hazard);
      g_ptr_array_add (place->hazards, hazard);
    }
  return place;
}

static FfJob *
random_job (void)
{
  FfJob *job = ff_job_new ();
  int n = ff_test_random_int (&dice, 0, 4);

  fill (&ff_job_fields, job);
  ff_set_text (&job->version, "B");
  job->on_site = -1;
  job->first_off = ff_test_random_int (&dice, 0, 700);
  job->all_down = job->first_off + ff_test_random_int (&dice, 0, 700);
  job->off_site = -1;
  sort_two (&job->wind_ms, &job->gust_ms);
  for (int i = 0; i < n; i++)
    {
      FfDayEvent *event = ff_day_event_new ();

      event->clock = i * 100 + ff_test_random_int (&dice, 0, 99);
      ff_set_text (&event->text, "ferry passes");
      g_ptr_array_add (job->events, event);
    }
  return job;
}

static FfShot *
random_shot (const char *job_id)
{
  FfShot *shot = ff_shot_new (job_id);

  fill (&ff_shot_fields, shot);
  g_free (shot->label);
  shot->label = g_uuid_string_random ();
  shot->label[16] = '\0';
  shot->minutes = ff_test_random_int (&dice, 1, 60);
  shot->window_from = ff_test_random_int (&dice, 0, 1300);
  shot->window_to = shot->window_from + shot->minutes + ff_test_random_int (&dice, 0, 60);
  shot->fps = 25;
  shot->angle_deg = ff_test_random (&dice, 90, 180);
  shot->angle_from_deg = shot->angle_deg - 10;
  shot->angle_to_deg = shot->angle_deg + 10;
  shot->frames = ff_test_random_int (&dice, 2, 9);
  shot->step_stops = 2;
  shot->interval_s = 2;
  return shot;
}

static FfItem *
random_item (FfKind kind)
{
  FfItem *item = ff_item_new (kind);
  const FfFields *own = ff_item_kind_fields (kind);

  fill (&ff_item_fields, item);
  item->kind = kind;
  g_free (item->label);
  item->label = g_uuid_string_random ();
  item->label[24] = '\0';
  if (own != NULL)
    fill (own, item);
  if (kind == FF_KIND_CAMERA)
    {
      ff_set_text (&item->apertures, "2.8, 4,5.6");
      ff_set_text (&item->base_iso, "100,800");
      ff_set_text (&item->shutter_fast, "1/8000");
      ff_set_text (&item->shutter_slow, "8");
      item->iso_low = 100;
      item->iso_high = ff_test_random_int (&dice, 100, 25600);
    }
  sort_two (&item->temperature_low_c, &item->temperature_high_c);
  sort_two (&item->stops, &item->stops_to);
  return item;
}

static FfMember *
random_member (void)
{
  FfMember *member = ff_member_new ();

  fill (&ff_member_fields, member);
  g_free (member->initials);
  member->initials = g_strdup_printf ("%c%c%c", 'A' + ff_test_random_int (&dice, 0, 25),
                                      'A' + ff_test_random_int (&dice, 0, 25),
                                      'A' + ff_test_random_int (&dice, 0, 25));
  return member;
}

static FfLimit *
random_limit (void)
{
  FfLimit *limit = ff_limit_new ();

  fill (&ff_limit_fields, limit);
  limit->value = ff_test_random (&dice, 0, 1000);
  if (limit->compare == FF_COMPARE_REQUIRED || limit->compare == FF_COMPARE_PROHIBITED)
    limit->value = NAN;
  return limit;
}

/* Round trips */

static void
test_places (void **state)
{
  g_autoptr (GError) error = NULL;

  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (FfPlace) place = random_place ();
      g_autoptr (FfPlace) again = NULL;

      /* The second save replaces the first, hazards as well. */
      assert_true (ff_place_save (store, place, &error));
      assert_no_error (error);
      ff_set_text (&place->name, "another name");
      assert_true (ff_place_save (store, place, &error));
      again = ff_place_load (store, place->id, &error);
      assert_no_error (error);
      assert_true (ff_fields_equal (&ff_place_fields, place, again));
      assert_int_equal (place->hazards->len, again->hazards->len);
      for (guint i = 0; i < again->hazards->len; i++)
        assert_true (ff_fields_equal (&ff_hazard_fields, g_ptr_array_index (place->hazards, i),
                                      g_ptr_array_index (again->hazards, i)));
    }
}

static void
test_jobs (void **state)
{
  g_autoptr (GError) error = NULL;

  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (FfJob) job = random_job ();
      g_autoptr (FfPlace) place = random_place ();
      g_autoptr (FfItem) item = random_item (FF_KIND_CARD);
      g_autoptr (FfJob) again = NULL;

      assert_true (ff_place_save (store, place, &error));
      assert_true (ff_item_save (store, item, &error));
      ff_set_text (&job->place_id, place->id);
      g_ptr_array_add (job->item_ids, g_strdup (item->id));
      assert_true (ff_job_save (store, job, &error));
      assert_no_error (error);
      assert_true (ff_job_save (store, job, &error));
      again = ff_job_load (store, job->id, &error);
      assert_no_error (error);
      assert_true (ff_fields_equal (&ff_job_fields, job, again));
      assert_int_equal (again->events->len, job->events->len);
      assert_int_equal (again->item_ids->len, 1);
      assert_string_equal (g_ptr_array_index (again->item_ids, 0), item->id);
    }
}

static void
test_shots (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = random_job ();
  g_autoptr (GPtrArray) shots = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_shot_free);
  g_autoptr (GPtrArray) again = NULL;

  assert_true (ff_job_save (store, job, &error));
  for (int i = 0; i < ROUNDS; i++)
    {
      FfShot *shot = random_shot (job->id);

      shot->position = i;
      g_ptr_array_add (shots, shot);
      ff_shot_save (store, shot, &error);
      assert_no_error (error);
    }
  again = ff_shots_load (store, job->id, &error);
  assert_no_error (error);
  assert_int_equal (again->len, ROUNDS);
  for (guint i = 0; i < again->len; i++)
    assert_true (ff_fields_equal (&ff_shot_fields, g_ptr_array_index (shots, i),
                                  g_ptr_array_index (again, i)));
}

static void
test_items (void **state)
{
  g_autoptr (GError) error = NULL;

  for (int kind = FF_KIND_AIRCRAFT; kind <= FF_KIND_OTHER; kind++)
    for (int round = 0; round < 20; round++)
      {
        const FfFields *own = ff_item_kind_fields ((FfKind) kind);
        g_autoptr (FfItem) item = random_item ((FfKind) kind);
        g_autoptr (FfItem) again = NULL;

        ff_item_save (store, item, &error);
        assert_no_error (error);
        again = ff_item_load (store, item->id, &error);
        assert_no_error (error);
        assert_true (ff_fields_equal (&ff_item_fields, item, again));
        assert_true (own == NULL || ff_fields_equal (own, item, again));
      }
}

static void
test_crew_and_roles (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = random_job ();
  g_autoptr (FfMember) member = random_member ();
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) crew = NULL;
  const FfMember *lead, *pilot;

  member->role = FF_ROLE_OBSERVER;
  assert_true (ff_job_save (store, job, &error));
  assert_true (ff_member_save (store, member, &error));
  all = ff_members_load (store, &error);
  assert_int_equal (all->len, 1);
  assert_true (ff_fields_equal (&ff_member_fields, member, g_ptr_array_index (all, 0)));

  /* One person with two roles stands there twice, the lead first. */
  assert_true (ff_job_crew_add (store, job->id, member->id, FF_ROLE_PILOT, &error));
  assert_true (ff_job_crew_add (store, job->id, member->id, FF_ROLE_LEAD, &error));
  assert_false (ff_job_crew_add (store, job->id, member->id, FF_ROLE_LEAD, &error));
  assert_error (error, FF_ERROR_INPUT, "UNIQUE");
  crew = ff_job_crew_load (store, job->id, &error);
  assert_int_equal (crew->len, 2);
  lead = g_ptr_array_index (crew, 0);
  pilot = g_ptr_array_index (crew, 1);
  assert_int_equal (lead->role, FF_ROLE_LEAD);
  assert_int_equal (pilot->role, FF_ROLE_PILOT);
  assert_string_equal (pilot->name, member->name);
}

static void
test_limits (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) limits = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_limit_free);
  g_autoptr (GPtrArray) again = NULL;

  for (int i = 0; i < ROUNDS; i++)
    {
      FfLimit *limit = random_limit ();

      ff_set_text (&limit->sheet, "sheet");
      limit->position = i;
      g_ptr_array_add (limits, limit);
      ff_limit_save (store, limit, &error);
      assert_no_error (error);
    }
  again = ff_limits_load (store, &error);
  assert_int_equal (again->len, ROUNDS);
  for (guint i = 0; i < again->len; i++)
    assert_true (ff_fields_equal (&ff_limit_fields, g_ptr_array_index (limits, i),
                                  g_ptr_array_index (again, i)));
}

static void
test_flights (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = random_job ();
  g_autoptr (FfItem) battery = random_item (FF_KIND_BATTERY);
  g_autoptr (FfItem) filter = random_item (FF_KIND_FILTER);
  g_autoptr (FfFlight) flight = ff_flight_new (job->id);
  g_autoptr (GPtrArray) again = NULL;
  const FfFlight *first;

  assert_true (ff_job_save (store, job, &error));
  assert_true (ff_item_save (store, battery, &error));
  assert_true (ff_item_save (store, filter, &error));
  fill (&ff_flight_fields, flight);
  ff_set_text (&flight->version, "A");
  ff_set_text (&flight->by, "JV");
  flight->down = flight->off + 960;
  ff_set_text (&flight->battery_id, battery->id);
  g_ptr_array_add (flight->filter_ids, g_strdup (filter->id));
  ff_flight_append (store, flight, &error);
  assert_no_error (error);
  again = ff_flights_load (store, job->id, &error);
  assert_int_equal (again->len, 1);
  first = g_ptr_array_index (again, 0);
  assert_true (ff_fields_equal (&ff_flight_fields, flight, first));
  assert_int_equal (first->filter_ids->len, 1);
  assert_string_equal (g_ptr_array_index (first->filter_ids, 0), filter->id);

  /* Appended once and for all. */
  assert_false (ff_flight_append (store, flight, &error));
  assert_error (error, FF_ERROR_INPUT, "UNIQUE");

  /* A battery must be one: a filter in its place leaves nothing behind. */
  g_free (flight->id);
  flight->id = ff_records_new_id ();
  ff_set_text (&flight->battery_id, filter->id);
  assert_false (ff_flight_append (store, flight, &error));
  assert_error (error, FF_ERROR_INPUT, "FOREIGN KEY");
  g_ptr_array_unref (again);
  again = ff_flights_load (store, job->id, &error);
  assert_int_equal (again->len, 1);
}

static void
test_state_follows_the_last_event (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) item = random_item (FF_KIND_BATTERY);
  g_autoptr (FfItem) before = NULL;
  g_autoptr (FfItem) after = NULL;

  assert_true (ff_item_save (store, item, &error));
  before = ff_item_load (store, item->id, &error);
  assert_int_equal (before->state, FF_STATE_SERVICEABLE);

  /* The last one entered counts, also when its clock is behind. */
  assert_true (ff_item_set_state (store, item->id, FF_STATE_QUARANTINED, "swollen", NULL, NULL,
                                  "JV", 2000, &error));
  assert_true (ff_item_set_state (store, item->id, FF_STATE_OUT, "lent", "Brackenholt",
                                  "2027-09-19", "MO", 1000, &error));
  assert_true (ff_item_save (store, item, &error));
  after = ff_item_load (store, item->id, &error);
  assert_int_equal (after->state, FF_STATE_OUT);
  assert_string_equal (after->state_why, "lent");
  assert_string_equal (after->out_with, "Brackenholt");
  assert_string_equal (after->out_until, "2027-09-19");

  assert_false (ff_item_set_state (store, item->id, FF_STATE_DEFECT, "", NULL, NULL, NULL, 1,
                                   &error));
  assert_error (error, FF_ERROR_INPUT, "reason");
  assert_false (ff_item_set_state (store, item->id, FF_STATE_OUT, "lent", NULL, "tomorrow", NULL,
                                   1, &error));
  assert_error (error, FF_ERROR_INPUT, "tomorrow");
}

/* Refusals */

typedef gboolean (*Check) (gconstpointer record, GError **error);

/* Each field of a good record in turn gets what it does not accept; the message names it. */
static void
refuse_each (const FfFields *fields, gpointer record, Check check)
{
  g_autoptr (GError) error = NULL;

  assert_true (check (record, &error));
  for (guint i = 0; i < fields->n_fields; i++)
    {
      const FfField *field = &fields->fields[i];

      if (ff_field_is_text (field))
        {
          char **place = ff_field_text (field, record);
          char *kept = *place;
          g_autofree char *bad = g_strnfill ((gsize) field->high + 1, 'x');

          *place = bad;
          assert_false (check (record, &error));
          assert_error (error, FF_ERROR_INPUT, field->words);
          strcpy (bad, "\xff");
          assert_false (check (record, &error));
          assert_error (error, FF_ERROR_INPUT, field->words);
          *place = kept;
        }
      else if (field->type == FF_FIELD_REAL)
        {
          double *place = ff_field_real (field, record);
          double kept = *place;
          const double bad[] = { field->low - 1, field->high + 1, INFINITY, -INFINITY };

          for (guint j = 0; j < G_N_ELEMENTS (bad); j++)
            {
              *place = bad[j];
              assert_false (check (record, &error));
              assert_error (error, FF_ERROR_INPUT, field->words);
            }
          *place = kept;
        }
      else if (field->type != FF_FIELD_INSTANT)
        {
          int *place = ff_field_whole (field, record);
          int kept = *place;

          *place = field->type == FF_FIELD_NAME ? (int) field->names->n_names : (int) field->high + 1;
          assert_false (check (record, &error));
          assert_error (error, FF_ERROR_INPUT, field->words);
          *place = -2;
          assert_false (check (record, &error));
          assert_error (error, FF_ERROR_INPUT, field->words);
          *place = kept;
        }
    }
}

static void
test_each_field_is_guarded (void **state)
{
  g_autoptr (FfPlace) place = random_place ();
  g_autoptr (FfJob) job = random_job ();
  g_autoptr (FfShot) shot = random_shot (job->id);
  g_autoptr (FfMember) member = random_member ();
  g_autoptr (FfLimit) limit = random_limit ();

  refuse_each (&ff_place_fields, place, (Check) ff_place_check);
  refuse_each (&ff_job_fields, job, (Check) ff_job_check);
  refuse_each (&ff_shot_fields, shot, (Check) ff_shot_check);
  refuse_each (&ff_member_fields, member, (Check) ff_member_check);
  refuse_each (&ff_limit_fields, limit, (Check) ff_limit_check);
  for (int kind = FF_KIND_AIRCRAFT; kind <= FF_KIND_OTHER; kind++)
    {
      g_autoptr (FfItem) item = random_item ((FfKind) kind);

      refuse_each (&ff_item_fields, item, (Check) ff_item_check);
      if (ff_item_kind_fields ((FfKind) kind) != NULL)
        refuse_each (ff_item_kind_fields ((FfKind) kind), item, (Check) ff_item_check);
    }
}

static void
test_shot_rules (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfShot) shot = ff_shot_new ("7d8bd7a2-8a52-4d4d-9a40-0d3f1f6a9a11");

  ff_set_text (&shot->label, "G");
  shot->minutes = 7;
  shot->window_from = 19 * 60;
  shot->window_to = 18 * 60;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "shot G: the window ends at 18:00, before it starts at 19:00");
  shot->window_to = 19 * 60 + 6;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "shorter than the 7 minutes");
  shot->window_to = 19 * 60 + 7;
  assert_true (ff_shot_check (shot, &error));
  shot->angle_from_deg = 190;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "angle");
  shot->fps = NAN;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "frames a second");
  shot->intent = FF_INTENT_BRACKET;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "at least 2 frames");
  shot->intent = FF_INTENT_TIMELAPSE;
  assert_false (ff_shot_check (shot, &error));
  assert_error (error, FF_ERROR_INPUT, "interval");
  shot->intent = FF_INTENT_STILL;
  assert_true (ff_shot_check (shot, &error));
}

static void
test_job_and_place_rules (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (FfPlace) place = ff_place_new ();

  ff_set_text (&job->title, "T");
  job->on_site = 900;
  job->off_site = 800;
  assert_false (ff_job_check (job, &error));
  assert_error (error, FF_ERROR_INPUT, "“off site” is earlier than “on site”");
  job->off_site = -1;
  job->wind_ms = 6;
  job->gust_ms = 5;
  assert_false (ff_job_check (job, &error));
  assert_error (error, FF_ERROR_INPUT, "gust");
  job->gust_ms = NAN;
  ff_set_text (&job->version, "b");
  assert_false (ff_job_check (job, &error));
  assert_error (error, FF_ERROR_INPUT, "letter");
  ff_set_text (&job->version, "B");
  ff_set_text (&job->date, "2027-02-29");
  assert_false (ff_job_check (job, &error));
  assert_error (error, FF_ERROR_INPUT, "2027-02-29");

  ff_set_text (&place->name, "P");
  ff_set_text (&place->zone, "UTC+02:00");
  assert_false (ff_place_check (place, &error));
  assert_error (error, FF_ERROR_INPUT, "UTC+02:00");
}

static void
test_item_limit_flight_rules (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) camera = random_item (FF_KIND_CAMERA);
  g_autoptr (FfLimit) limit = random_limit ();
  g_autoptr (FfFlight) flight = ff_flight_new (camera->id);

  ff_set_text (&camera->apertures, "2.8,,4");
  assert_false (ff_item_check (camera, &error));
  assert_error (error, FF_ERROR_INPUT, "apertures");
  ff_set_text (&camera->apertures, "2.8");
  ff_set_text (&camera->shutter_fast, "fast");
  assert_false (ff_item_check (camera, &error));
  assert_error (error, FF_ERROR_INPUT, "1/8000");

  limit->compare = FF_COMPARE_AT_MOST;
  limit->value = NAN;
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "value is missing");
  limit->compare = FF_COMPARE_REQUIRED;
  assert_true (ff_limit_check (limit, &error));
  limit->value = 1;
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "no value");

  assert_false (ff_flight_check (flight, &error));
  assert_error (error, FF_ERROR_INPUT, "battery");
  ff_set_text (&flight->battery_id, camera->id);
  assert_false (ff_flight_check (flight, &error));
  assert_error (error, FF_ERROR_INPUT, "down before it is off");
  flight->down = flight->off + 4 * 3600 + 1;
  assert_false (ff_flight_check (flight, &error));
  assert_error (error, FF_ERROR_INPUT, "four hours");
}

/* Finding */

static void
save_job (const char *title)
{
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (GError) error = NULL;

  ff_set_text (&job->title, title);
  assert_true (ff_job_save (store, job, &error));
}

static void
test_find (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *exact = NULL;
  g_autofree char *begun = NULL;
  g_autofree char *by_id = NULL;

  assert_null (ff_job_find (store, "x", &error));
  assert_error (error, FF_ERROR_INPUT, "none yet");
  save_job ("Mill");
  save_job ("Millpond");
  save_job ("Árvíztűrő");
  exact = ff_job_find (store, "mIlL", &error);
  assert_no_error (error);
  begun = ff_job_find (store, "árvíz", &error);
  assert_no_error (error);
  by_id = ff_job_find (store, exact, &error);
  assert_string_equal (by_id, exact);
  assert_null (ff_job_find (store, "mil", &error));
  assert_error (error, FF_ERROR_INPUT, "could be any of: Mill");
  assert_null (ff_job_find (store, "quay", &error));
  assert_error (error, FF_ERROR_INPUT, "there is: Mill, Millpond");
  assert_null (ff_job_find (store, "", &error));
  assert_error (error, FF_ERROR_INPUT, "there is");
}

/* A name that is taken is said in words, whatever its case. */
static void
test_names_are_taken_once (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) first = random_item (FF_KIND_RADIO);
  g_autoptr (FfItem) second = random_item (FF_KIND_CARD);
  g_autoptr (FfMember) one = random_member ();
  g_autoptr (FfMember) two = random_member ();
  g_autoptr (FfJob) job = random_job ();
  g_autoptr (FfShot) a = random_shot (job->id);
  g_autoptr (FfShot) b = random_shot (job->id);

  ff_set_text (&first->label, "radio 1");
  ff_set_text (&second->label, "Radio 1");
  assert_true (ff_item_save (store, first, &error));
  assert_false (ff_item_save (store, second, &error));
  assert_error (error, FF_ERROR_INPUT, "item Radio 1: another item");
  ff_set_text (&one->initials, "MO");
  ff_set_text (&two->initials, "mo");
  assert_true (ff_member_save (store, one, &error));
  assert_false (ff_member_save (store, two, &error));
  assert_error (error, FF_ERROR_INPUT, "somebody else has the initials mo");
  assert_true (ff_job_save (store, job, &error));
  ff_set_text (&a->label, "A");
  ff_set_text (&b->label, "a");
  assert_true (ff_shot_save (store, a, &error));
  assert_false (ff_shot_save (store, b, &error));
  assert_error (error, FF_ERROR_INPUT, "shot a: another shot");
}

/* All or nothing */

static void
test_rollback_takes_everything_back (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfPlace) place = random_place ();
  g_autoptr (FfJob) job = random_job ();
  gboolean empty;

  assert_true (ff_records_begin (store, &error));
  assert_true (ff_place_save (store, place, &error));
  ff_set_text (&job->place_id, job->id);
  assert_false (ff_job_save (store, job, &error));
  assert_error (error, FF_ERROR_INPUT, "FOREIGN KEY");
  ff_records_rollback (store);
  assert_true (ff_records_is_empty (store, &empty, &error));
  assert_true (empty);
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  dice.state = 20270918;
  return 0;
}

static int
tear_down (void **state)
{
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_places),
    CASE (test_jobs),
    CASE (test_shots),
    CASE (test_items),
    CASE (test_crew_and_roles),
    CASE (test_limits),
    CASE (test_flights),
    CASE (test_state_follows_the_last_event),
    CASE (test_each_field_is_guarded),
    CASE (test_shot_rules),
    CASE (test_job_and_place_rules),
    CASE (test_item_limit_flight_rules),
    CASE (test_find),
    CASE (test_names_are_taken_once),
    CASE (test_rollback_takes_everything_back),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("records", tests, NULL, NULL);
}
