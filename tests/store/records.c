/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each noun: random records come back from the store as they went in. */
#include "ff-random-records.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-flight.h"
#include "ff-item-event.h"
#include "ff-item-search.h"

#define ROUNDS 200

static char *folder;
static FfStore *store;
static FfTestRandom dice;

/* Round trips */

static void
test_places (void **state)
{
  g_autoptr (GError) error = NULL;

  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (FfPlace) place = ff_random_place (&dice);
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
      g_autoptr (FfJob) job = ff_random_job (&dice);
      g_autoptr (FfPlace) place = ff_random_place (&dice);
      g_autoptr (FfItem) item = ff_random_item (&dice, FF_KIND_CARD);
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
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (GPtrArray) shots = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_shot_free);
  g_autoptr (GPtrArray) again = NULL;

  assert_true (ff_job_save (store, job, &error));
  for (int i = 0; i < ROUNDS; i++)
    {
      FfShot *shot = ff_random_shot (&dice, job->id);

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

  g_autoptr (FfItem) other = NULL;

  for (int kind = FF_KIND_AIRCRAFT; kind <= FF_KIND_OTHER; kind++)
    for (int round = 0; round < 20; round++)
      {
        const FfFields *own = ff_item_kind_fields ((FfKind) kind);
        g_autoptr (FfItem) item = ff_random_item (&dice, (FfKind) kind);
        g_autoptr (FfItem) again = NULL;

        if (other != NULL)
          ff_item_add_with (item, other->id);
        ff_item_save (store, item, &error);
        assert_no_error (error);
        again = ff_item_load (store, item->id, &error);
        assert_no_error (error);
        assert_true (ff_fields_equal (&ff_item_fields, item, again));
        assert_true (own == NULL || ff_fields_equal (own, item, again));
        assert_true (ff_item_same_with (item, again));
        ff_item_free (other);
        other = g_steal_pointer (&item);
      }
}

/* What it can't go without: entered once, never twice, never itself, and it must be there. */
static void
test_goes_with (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) aircraft = ff_random_item (&dice, FF_KIND_AIRCRAFT);
  g_autoptr (FfItem) charger = ff_random_item (&dice, FF_KIND_CHARGER);
  g_autoptr (FfItem) again = NULL;

  ff_item_add_with (aircraft, charger->id);
  ff_item_add_with (aircraft, charger->id);
  assert_int_equal (aircraft->with_ids->len, 1);
  assert_false (ff_item_save (store, aircraft, &error));
  assert_error (error, FF_ERROR_INPUT, "FOREIGN KEY");
  assert_true (ff_item_save (store, charger, &error));
  assert_true (ff_item_save (store, aircraft, &error));
  assert_false (ff_item_delete (store, charger->id, &error));
  assert_error (error, FF_ERROR_INPUT, "can't go without");
  ff_item_remove_with (aircraft, charger->id);
  assert_true (ff_item_save (store, aircraft, &error));
  again = ff_item_load (store, aircraft->id, &error);
  assert_int_equal (again->with_ids->len, 0);
  assert_true (ff_item_delete (store, charger->id, &error));
  ff_item_add_with (aircraft, aircraft->id);
  assert_false (ff_item_save (store, aircraft, &error));
  assert_error (error, FF_ERROR_INPUT, "with itself");
}

/* Being lent or repaired meanwhile is no way round the rectification. */
static void
test_a_quarantined_battery_comes_back_rectified (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) item = ff_random_item (&dice, FF_KIND_BATTERY);
  g_autoptr (GPtrArray) story = NULL;
  const FfItemEvent *last, *first;

  assert_true (ff_item_save (store, item, &error));
  assert_true (ff_item_set_state (store, item->id, FF_STATE_DEFECT, "latch", NULL, NULL, NULL, 1,
                                  &error));
  assert_true (ff_item_set_state (store, item->id, FF_STATE_SERVICEABLE, "new latch", NULL, NULL,
                                  NULL, 2, &error));
  assert_true (ff_item_set_state (store, item->id, FF_STATE_QUARANTINED, "swollen", NULL, NULL,
                                  "JV", 3, &error));
  assert_true (ff_item_set_state (store, item->id, FF_STATE_OUT, "to the maker", NULL, NULL, NULL,
                                  4, &error));
  assert_false (ff_item_set_state (store, item->id, FF_STATE_SERVICEABLE, "back", NULL, NULL, "",
                                   5, &error));
  assert_error (error, FF_ERROR_INPUT, "rectified");
  assert_true (ff_item_set_state (store, item->id, FF_STATE_SERVICEABLE,
                                  "measured, cells even, case flat", NULL, NULL, "MO", 6, &error));
  story = ff_item_events_load (store, item->id, 100, &error);
  assert_int_equal (story->len, 5);
  last = g_ptr_array_index (story, 0);
  first = g_ptr_array_index (story, 4);
  assert_int_equal (last->state, FF_STATE_SERVICEABLE);
  assert_string_equal (last->by, "MO");
  assert_int_equal (last->at, 6);
  assert_string_equal (first->why, "latch");
}

static guint
found (const char *words, const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GHashTable) ids = ff_items_search (store, words, &error);

  assert_no_error (error);
  return g_hash_table_contains (ids, id) ? g_hash_table_size (ids) : 0;
}

static void
test_search (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) filter = ff_item_new (FF_KIND_FILTER);
  g_autoptr (FfItem) other = ff_item_new (FF_KIND_FILTER);

  ff_set_text (&filter->label, "F1");
  ff_set_text (&filter->title, "Graufilter für die Küste");
  ff_set_text (&filter->engraving, "ND32");
  ff_set_text (&filter->case_label, "3");
  ff_set_text (&other->label, "F2");
  ff_set_text (&other->title, "AND NOT \"quoted\" *");
  assert_true (ff_item_save (store, filter, &error));
  assert_true (ff_item_save (store, other, &error));
  assert_int_equal (found ("kust", filter->id), 1);
  assert_int_equal (found ("KÜS grau", filter->id), 1);
  assert_int_equal (found ("nd3", filter->id), 1);
  assert_int_equal (found ("filter", filter->id), 2);
  assert_int_equal (found ("grau quoted", filter->id), 0);
  /* What would be an operator is a word. */
  assert_int_equal (found ("AND NOT", other->id), 1);
  assert_int_equal (found ("\"quoted* (", other->id), 1);
  assert_int_equal (found ("", other->id), 0);
  assert_int_equal (found ("\xff", other->id), 0);
  ff_set_text (&filter->title, "Sky");
  assert_true (ff_item_save (store, filter, &error));
  assert_int_equal (found ("kust", filter->id), 0);
  assert_int_equal (found ("sky", filter->id), 1);
  assert_true (ff_item_delete (store, filter->id, &error));
  assert_int_equal (found ("f", other->id), 1);
}

static void
test_crew_and_roles (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (FfMember) member = ff_random_member (&dice);
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
      FfLimit *limit = ff_random_limit (&dice);

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

/* Those set aside stay among the others, in order of time. */
static void
test_readings (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (GPtrArray) readings
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_reading_free);
  g_autoptr (GPtrArray) again = NULL;

  assert_true (ff_job_save (store, job, &error));
  for (int i = 0; i < ROUNDS; i++)
    {
      FfReading *reading = ff_random_reading (&dice, job->id);

      reading->at = 1000 + i;
      g_ptr_array_add (readings, reading);
      ff_reading_append (store, reading, &error);
      assert_no_error (error);
    }
  again = ff_readings_load (store, job->id, &error);
  assert_no_error (error);
  assert_int_equal (again->len, ROUNDS);
  for (guint i = 0; i < again->len; i++)
    {
      const FfReading *was = g_ptr_array_index (readings, i), *is = g_ptr_array_index (again, i);

      assert_true (ff_fields_equal (&ff_reading_fields, was, is));
      assert_int_equal (ff_reading_is_dropped (was), ff_reading_is_dropped (is));
      assert_true (!ff_reading_is_dropped (was)
                   || ff_fields_equal (&ff_reading_drop_fields, was, is));
    }
}

static void
test_a_reading_is_set_aside_once (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (FfReading) reading = ff_random_reading (&dice, job->id);
  g_autoptr (GPtrArray) again = NULL;
  const FfReading *found;

  assert_true (ff_job_save (store, job, &error));
  ff_set_text (&reading->dropped_why, "");
  assert_true (ff_reading_append (store, reading, &error));
  assert_false (ff_reading_append (store, reading, &error));
  g_clear_error (&error);
  assert_false (ff_reading_drop (store, reading->id, "  ", NULL, 5, &error));
  assert_error (error, FF_ERROR_INPUT, "why");
  assert_true (ff_reading_drop (store, reading->id, "cloud", "IC", 5, &error));
  assert_false (ff_reading_drop (store, reading->id, "again", NULL, 6, &error));
  assert_error (error, FF_ERROR_INPUT, "set aside already");
  again = ff_readings_load (store, job->id, &error);
  found = ff_readings_find (again, reading->id, &error);
  assert_no_error (error);
  assert_string_equal (found->dropped_why, "cloud");
  assert_string_equal (found->dropped_by, "IC");
  assert_int_equal (found->dropped_at, 5);
  assert_null (ff_readings_find (again, "x", &error));
  assert_error (error, FF_ERROR_INPUT, "no reading begins with");
}

static void
test_flights (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (FfItem) battery = ff_random_item (&dice, FF_KIND_BATTERY);
  g_autoptr (FfItem) filter = ff_random_item (&dice, FF_KIND_FILTER);
  g_autoptr (FfFlight) flight = ff_flight_new (job->id);
  g_autoptr (GPtrArray) again = NULL;
  const FfFlight *first;

  assert_true (ff_job_save (store, job, &error));
  assert_true (ff_item_save (store, battery, &error));
  assert_true (ff_item_save (store, filter, &error));
  ff_random_fill (&dice, &ff_flight_fields, flight);
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
  g_autoptr (FfItem) item = ff_random_item (&dice, FF_KIND_BATTERY);
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
  g_autoptr (FfItem) first = ff_random_item (&dice, FF_KIND_RADIO);
  g_autoptr (FfItem) second = ff_random_item (&dice, FF_KIND_CARD);
  g_autoptr (FfMember) one = ff_random_member (&dice);
  g_autoptr (FfMember) two = ff_random_member (&dice);
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (FfShot) a = ff_random_shot (&dice, job->id);
  g_autoptr (FfShot) b = ff_random_shot (&dice, job->id);

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
  g_autoptr (FfPlace) place = ff_random_place (&dice);
  g_autoptr (FfJob) job = ff_random_job (&dice);
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
    CASE (test_goes_with),
    CASE (test_a_quarantined_battery_comes_back_rectified),
    CASE (test_search),
    CASE (test_crew_and_roles),
    CASE (test_limits),
    CASE (test_flights),
    CASE (test_readings),
    CASE (test_a_reading_is_set_aside_once),
    CASE (test_state_follows_the_last_event),
    CASE (test_find),
    CASE (test_names_are_taken_once),
    CASE (test_rollback_takes_everything_back),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("records", tests, NULL, NULL);
}
