/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records go out whole, and what happened stays: a record that the log or another record rests on
 * is refused with the sentence that says what to do, and is still there. */
#include "ff-test.h"

#include "ff-crew.h"
#include "ff-error.h"
#include "ff-flight.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-place.h"
#include "ff-shot.h"

static char *folder;
static FfStore *store;

/* Records as plain as they may be. */

static FfPlace *
save_place (void)
{
  FfPlace *place = ff_place_new ();
  GError *error = NULL;

  ff_set_text (&place->name, "Skarrowick Head");
  ff_set_text (&place->zone, "Europe/London");
  place->latitude_deg = 57.2;
  place->longitude_deg = -4;
  place->elevation_m = 12;
  ff_place_save (store, place, &error);
  assert_no_error (error);
  return place;
}

static FfJob *
save_job (const char *place_id, const char *item_id)
{
  FfJob *job = ff_job_new ();
  FfDayEvent *event = ff_day_event_new ();
  GError *error = NULL;

  ff_set_text (&job->title, "Skarrowick Head");
  ff_set_text (&job->place_id, place_id);
  event->clock = 17 * 60 + 14;
  ff_set_text (&event->text, "ferry passes");
  g_ptr_array_add (job->events, event);
  if (item_id != NULL)
    g_ptr_array_add (job->item_ids, g_strdup (item_id));
  ff_job_save (store, job, &error);
  assert_no_error (error);
  return job;
}

static FfShot *
save_shot (const char *job_id)
{
  FfShot *shot = ff_shot_new (job_id);
  GError *error = NULL;

  ff_set_text (&shot->label, "A");
  shot->height_from_m = shot->height_to_m = 60;
  shot->minutes = 6;
  shot->window_from = 990;
  shot->window_to = 1020;
  ff_shot_save (store, shot, &error);
  assert_no_error (error);
  return shot;
}

static FfItem *
save_battery (void)
{
  FfItem *item = ff_item_new (FF_KIND_BATTERY);
  GError *error = NULL;

  ff_set_text (&item->label, "b1");
  item->usable_minutes = 18;
  ff_item_save (store, item, &error);
  assert_no_error (error);
  return item;
}

static FfMember *
save_member (void)
{
  FfMember *member = ff_member_new ();
  GError *error = NULL;

  ff_set_text (&member->name, "Jonah Velk");
  ff_set_text (&member->initials, "JV");
  ff_member_save (store, member, &error);
  assert_no_error (error);
  return member;
}

static gint64
count_of (const char *noun)
{
  g_autoptr (GArray) counts = ff_records_counts (store, NULL);

  for (guint i = 0; i < counts->len; i++)
    if (g_str_equal (g_array_index (counts, FfCount, i).noun, noun))
      return g_array_index (counts, FfCount, i).count;
  fail_msg ("nothing is counted as %s", noun);
  return -1;
}

static void
test_a_job_goes_with_all_that_hangs_on_it (void **state)
{
  g_autoptr (FfPlace) place = save_place ();
  g_autoptr (FfItem) battery = save_battery ();
  g_autoptr (FfMember) member = save_member ();
  g_autoptr (FfJob) job = save_job (place->id, battery->id);
  G_GNUC_UNUSED g_autoptr (FfShot) shot = save_shot (job->id);
  g_autoptr (GPtrArray) faults = NULL;
  GError *error = NULL;

  assert_true (ff_job_crew_add (store, job->id, member->id, FF_ROLE_PILOT, &error));
  assert_true (ff_job_delete (store, job->id, &error));
  assert_no_error (error);
  assert_int_equal (count_of ("jobs"), 0);
  assert_int_equal (count_of ("shots"), 0);
  assert_int_equal (count_of ("places"), 1);
  assert_int_equal (count_of ("items"), 1);
  faults = ff_records_faults (store, &error);
  assert_no_error (error);
  assert_int_equal (faults->len, 0);
  /* Nothing holds the member and the battery any more. */
  assert_true (ff_member_delete (store, member->id, &error));
  assert_true (ff_item_delete (store, battery->id, &error));
  assert_true (ff_place_delete (store, place->id, &error));
  assert_no_error (error);
}

static void
test_a_flown_job_stays (void **state)
{
  g_autoptr (FfPlace) place = save_place ();
  g_autoptr (FfItem) battery = save_battery ();
  g_autoptr (FfJob) job = save_job (place->id, battery->id);
  G_GNUC_UNUSED g_autoptr (FfShot) shot = save_shot (job->id);
  g_autoptr (FfFlight) flight = ff_flight_new (job->id);
  GError *error = NULL;

  flight->off = 1821281400;
  flight->down = flight->off + 900;
  ff_set_text (&flight->battery_id, battery->id);
  ff_set_text (&flight->by, "JV");
  ff_flight_append (store, flight, &error);
  assert_no_error (error);
  assert_false (ff_job_delete (store, job->id, &error));
  assert_error (error, FF_ERROR_INPUT, "put the job away");
  assert_false (ff_item_delete (store, battery->id, &error));
  assert_error (error, FF_ERROR_INPUT, "retire it");
  assert_int_equal (count_of ("jobs"), 1);
  assert_int_equal (count_of ("shots"), 1);
  assert_int_equal (count_of ("items"), 1);
}

static void
test_what_others_rest_on_stays (void **state)
{
  g_autoptr (FfPlace) place = save_place ();
  g_autoptr (FfMember) member = save_member ();
  g_autoptr (FfItem) battery = save_battery ();
  g_autoptr (FfJob) job = save_job (place->id, NULL);
  GError *error = NULL;

  assert_false (ff_place_delete (store, place->id, &error));
  assert_error (error, FF_ERROR_INPUT, "another place first");
  assert_true (ff_job_crew_add (store, job->id, member->id, FF_ROLE_LEAD, &error));
  assert_false (ff_member_delete (store, member->id, &error));
  assert_error (error, FF_ERROR_INPUT, "holds a role");
  assert_true (ff_job_crew_remove (store, job->id, member->id, FF_ROLE_LEAD, &error));
  assert_true (ff_member_delete (store, member->id, &error));
  assert_no_error (error);
  assert_true (ff_item_set_state (store, battery->id, FF_STATE_DEFECT, "swollen", NULL, NULL, "JV",
                                  1821281400, &error));
  assert_false (ff_item_delete (store, battery->id, &error));
  assert_error (error, FF_ERROR_INPUT, "history");
}

static void
test_one_shot_and_one_member_by_id (void **state)
{
  g_autoptr (FfPlace) place = save_place ();
  g_autoptr (FfJob) job = save_job (place->id, NULL);
  G_GNUC_UNUSED g_autoptr (FfShot) shot = save_shot (job->id);
  g_autoptr (FfMember) member = save_member ();
  g_autoptr (FfShot) found = NULL;
  g_autoptr (FfMember) who = NULL;
  GError *error = NULL;

  found = ff_shot_load (store, shot->id, &error);
  assert_no_error (error);
  assert_true (ff_fields_equal (&ff_shot_fields, shot, found));
  who = ff_member_load (store, member->id, &error);
  assert_no_error (error);
  assert_true (ff_fields_equal (&ff_member_fields, member, who));
  assert_true (ff_shot_delete (store, shot->id, &error));
  assert_null (ff_shot_load (store, shot->id, &error));
  assert_error (error, FF_ERROR_INPUT, shot->id);
  assert_null (ff_member_load (store, job->id, &error));
  assert_error (error, FF_ERROR_INPUT, job->id);
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  return store != NULL ? 0 : -1;
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
    CASE (test_a_job_goes_with_all_that_hangs_on_it),
    CASE (test_a_flown_job_stays),
    CASE (test_what_others_rest_on_stays),
    CASE (test_one_shot_and_one_member_by_id),
  };

  return cmocka_run_group_tests_name ("remove", tests, NULL, NULL);
}
