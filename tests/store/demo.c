/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo day, fact by fact, as the store gives it back. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-place.h"
#include "ff-shot.h"

static char *folder;
static FfStore *store;
static FfJob *job;
static FfPlace *place;
static GPtrArray *shots, *items, *crew, *limits;

static const FfItem *
item (const char *label)
{
  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *one = g_ptr_array_index (items, i);

      if (strcmp (one->label, label) == 0)
        return one;
    }
  fail_msg ("no item %s", label);
  return NULL;
}

static int
at (const char *clock)
{
  int minutes = -1;

  assert_true (ff_clock_parse (clock, &minutes, NULL));
  return minutes;
}

static void
test_crew (void **state)
{
  static const struct {
    const char *name, *initials;
    FfRole role;
  } want[] = {
    { "Marit Ostrander", "MO", FF_ROLE_LEAD },
    { "Jonah Velk", "JV", FF_ROLE_PILOT },
    { "Ife Calloway", "IC", FF_ROLE_CAMERA },
    { "Pell Rasmussen", "PR", FF_ROLE_OBSERVER },
  };

  assert_int_equal (crew->len, G_N_ELEMENTS (want));
  for (guint i = 0; i < crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (crew, i);

      assert_string_equal (member->name, want[i].name);
      assert_string_equal (member->initials, want[i].initials);
      assert_int_equal (member->role, want[i].role);
    }
}

static void
test_place (void **state)
{
  const FfHazard *line = g_ptr_array_index (place->hazards, 0);

  assert_string_equal (place->name, "Skarrowick Head");
  assert_close (place->latitude_deg, 57.2, 0);
  assert_close (place->longitude_deg, -4, 0);
  assert_close (place->elevation_m, 12, 0);
  assert_string_equal (place->zone, "Europe/London");
  assert_string_equal (place->takeoff_spot, "the slipway car park");
  assert_string_equal (place->second_spot, "the bowling green");
  assert_string_equal (place->observer_post, "the sea wall");
  assert_non_null (strstr (place->second_post, "only when the aircraft is down"));
  assert_string_equal (place->emergency_location, "");
  assert_string_equal (place->emergency_phone, "");
  assert_int_equal (place->hazards->len, 4);
  assert_string_equal (line->what, "power line along the lane");
  assert_string_equal (line->measure, "keep clear, never retrieve from it");
}

static void
test_job (void **state)
{
  static const struct {
    const char *clock, *text;
  } want[] = {
    { "17:14", "ferry passes" },
    { "18:05", "high water" },
    { "20:00", "north gate locked" },
  };

  assert_string_equal (job->client, "Skarrowick Harbour Trust");
  assert_string_equal (job->date, "2027-09-18");
  assert_true (job->example);
  assert_close (job->delivery_fps, 25, 0);
  assert_int_equal (job->on_site, at ("15:00"));
  assert_int_equal (job->first_off, at ("16:30"));
  assert_int_equal (job->all_down, at ("19:50"));
  assert_int_equal (job->off_site, at ("20:30"));
  assert_int_equal (job->sky, FF_SKY_CLEAR);
  assert_close (job->wind_from_deg, 240, 0);
  assert_close (job->wind_ms, 4, 0);
  assert_close (job->gust_ms, 6, 0);
  assert_close (job->wind_height_m, 10, 0);
  assert_close (job->temperature_c, 15, 0);
  assert_close (job->visibility_m, 20000, 0);
  assert_int_equal (job->out_minutes, 2);
  assert_int_equal (job->back_minutes, 2);
  assert_int_equal (job->battery_change_minutes, 4);
  assert_int_equal (job->filter_change_minutes, 2);
  assert_int_equal (job->events->len, G_N_ELEMENTS (want));
  for (guint i = 0; i < job->events->len; i++)
    {
      const FfDayEvent *event = g_ptr_array_index (job->events, i);

      assert_int_equal (event->clock, at (want[i].clock));
      assert_string_equal (event->text, want[i].text);
    }
}

static void
test_shots (void **state)
{
  static const struct {
    const char *label, *title;
    FfView view;
    double bearing, height_from, height_to, speed, fps;
    FfIntent intent;
    int minutes;
    const char *from, *to;
  } want[] = {
    { "A", "harbour from above", FF_VIEW_DOWN, NAN, 60, 60, 0, 25, FF_INTENT_VIDEO, 6, "16:30",
      "17:00" },
    { "B", "ferry tracking", FF_VIEW_OBLIQUE, 60, 30, 30, 6, 25, FF_INTENT_VIDEO, 7, "17:10",
      "17:20" },
    { "C", "mill wheel, slow", FF_VIEW_OBLIQUE, 75, 8, 8, 0, 100, FF_INTENT_SLOW, 5, "17:15",
      "18:00" },
    { "D", "headland push-in", FF_VIEW_OBLIQUE, 70, 40, 40, 5, 25, FF_INTENT_VIDEO, 6, "17:40",
      "17:55" },
    { "E", "stills and panorama", FF_VIEW_OBLIQUE, NAN, 50, 50, 0, NAN, FF_INTENT_BRACKET, 6,
      "17:45", "18:30" },
    { "F", "low-sun reveal", FF_VIEW_OBLIQUE, 80, 10, 45, 3, 25, FF_INTENT_VIDEO, 7, "18:35",
      "18:55" },
    { "G", "last-sun line", FF_VIEW_OBLIQUE, 95, 25, 25, 4, 25, FF_INTENT_VIDEO, 7, "18:58",
      "19:22" },
    { "H", "dusk moving time-lapse", FF_VIEW_OBLIQUE, 90, 50, 50, 0.5, NAN, FF_INTENT_TIMELAPSE,
      10, "19:28", "19:45" },
  };

  assert_int_equal (shots->len, G_N_ELEMENTS (want));
  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);

      assert_string_equal (shot->label, want[i].label);
      assert_string_equal (shot->title, want[i].title);
      assert_int_equal (shot->view, want[i].view);
      assert_true (isnan (want[i].bearing) == isnan (shot->bearing_deg));
      if (!isnan (want[i].bearing))
        assert_close (shot->bearing_deg, want[i].bearing, 0);
      assert_close (shot->height_from_m, want[i].height_from, 0);
      assert_close (shot->height_to_m, want[i].height_to, 0);
      assert_close (shot->speed_ms, want[i].speed, 0);
      assert_int_equal (shot->intent, want[i].intent);
      assert_true (isnan (want[i].fps) == isnan (shot->fps));
      if (!isnan (want[i].fps))
        assert_close (shot->fps, want[i].fps, 0);
      assert_int_equal (shot->minutes, want[i].minutes);
      assert_int_equal (shot->window_from, at (want[i].from));
      assert_int_equal (shot->window_to, at (want[i].to));
      assert_int_equal (shot->fixed_time, i == 1);
      assert_int_equal (shot->most_wanted, i == 6);
    }
}

static void
test_what_only_some_shots_have (void **state)
{
  const FfShot *b = g_ptr_array_index (shots, 1);
  const FfShot *c = g_ptr_array_index (shots, 2);
  const FfShot *e = g_ptr_array_index (shots, 4);
  const FfShot *g = g_ptr_array_index (shots, 6);
  const FfShot *h = g_ptr_array_index (shots, 7);

  assert_string_equal (b->note, "skipper agreed; abeam, never over the vessel");
  assert_close (b->angle_deg, 180, 0);
  assert_close (b->angle_from_deg, 144, 0);
  assert_close (b->angle_to_deg, 216, 0);
  assert_close (c->max_iso, 400, 0);
  assert_int_equal (e->frames, 3);
  assert_close (e->step_stops, 2, 0);
  assert_true (g->weight > 120);
  assert_close (h->interval_s, 2, 0);
}

static void
test_aircraft_and_camera (void **state)
{
  const FfItem *aircraft = item ("aircraft 1");
  const FfItem *camera = item ("camera 1");

  assert_string_equal (job->aircraft_id, aircraft->id);
  assert_string_equal (aircraft->camera_id, camera->id);
  assert_close (aircraft->size_m, 0.35, 0);
  assert_close (aircraft->mass_kg, 0.9, 0);
  assert_close (aircraft->wind_limit_ms, 10, 0);
  assert_close (aircraft->temperature_low_c, -10, 0);
  assert_close (aircraft->temperature_high_c, 40, 0);
  assert_close (aircraft->return_height_m, 50, 0);
  assert_true (aircraft->light_fitted);
  assert_string_equal (camera->apertures, "2.8");
  assert_string_equal (camera->base_iso, "100");
  assert_int_equal (camera->iso_low, 100);
  assert_int_equal (camera->iso_high, 6400);
  assert_string_equal (camera->shutter_fast, "1/8000");
  assert_string_equal (camera->shutter_slow, "8");
  assert_close (camera->pitch_um, 3, 0);
  assert_close (camera->focal_mm, 11, 0);
  assert_int_equal (camera->width_px, 4800);
  assert_int_equal (camera->height_px, 3200);
  assert_close (camera->bitrate_mbits, 100, 0);
}

static void
test_filters (void **state)
{
  static const char *const labels[] = { "ND2", "ND4", "ND8", "ND16", "ND32", "ND64", "clear" };

  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      const FfItem *filter = item (labels[i]);
      g_autofree char *slot = g_strdup_printf ("%u", i + 1);

      assert_close (filter->stops, i < 6 ? i + 1 : 0, 0);
      assert_close (filter->stops_to, filter->stops, 0);
      assert_string_equal (filter->engraving, i < 6 ? labels[i] : "");
      assert_string_equal (filter->slot, slot);
      assert_string_equal (filter->set_name, "coast");
      assert_string_equal (filter->case_label, "3");
      assert_true (isnan (filter->measured_stops) == (i != 2));
    }
  assert_close (item ("ND8")->measured_stops, 3.1, 0);
}

static void
test_batteries_and_charger (void **state)
{
  static const double cycles[] = { 12, 31, 30, 88, 14 };
  const FfMember *lead = g_ptr_array_index (crew, 0);
  const FfItem *charger = item ("charger");

  for (guint i = 0; i < G_N_ELEMENTS (cycles); i++)
    {
      g_autofree char *label = g_strdup_printf ("b%u", i + 1);
      const FfItem *battery = item (label);

      assert_close (battery->used, cycles[i], 0);
      assert_int_equal (battery->cells, 4);
      assert_close (battery->volts, 14.8, 0);
      assert_close (battery->milliamp_hours, 4700, 0);
      assert_close (battery->printed_wh, 69.6, 0);
      assert_close (battery->mass_kg, 0.42, 0);
      assert_int_equal (battery->usable_minutes, 18);
      assert_close (battery->usable_at_c, 15, 0);
      assert_string_equal (battery->case_label, "2");
      assert_int_equal (battery->state, FF_STATE_SERVICEABLE);
    }
  assert_close (item ("b4")->due_at, 100, 0);
  assert_non_null (strstr (item ("b4")->note, "resistance rise"));
  assert_int_equal (charger->slots, 1);
  assert_int_equal (charger->cool_minutes, 20);
  assert_int_equal (charger->charge_minutes, 60);
  assert_string_equal (charger->attended_by, lead->id);
}

static void
test_the_rest_of_the_gear (void **state)
{
  static const char *const also[] = { "controller", "cable", "tablet", "pad", "radio 1", "radio 2",
                                      "radio 3", "radio 4", "fire blanket", "extinguisher",
                                      "first-aid kit", "cones", "vests", "reader" };

  for (guint i = 0; i < G_N_ELEMENTS (also); i++)
    assert_non_null (item (also[i]));
  assert_true (ff_item_goes_with (item ("controller"), item ("cable")->id));
  assert_true (ff_item_goes_with (item ("aircraft 1"), item ("P1")->id));
  assert_false (ff_item_goes_with (item ("aircraft 1"), item ("P2")->id));
  assert_close (item ("P1")->used, 26.2, 0);
  assert_close (item ("P1")->due_at, 30, 0);
  assert_string_equal (item ("P2")->case_label, "2");
  assert_close (item ("C4")->capacity_gb, 128, 0);
  assert_string_equal (item ("C4")->speed_class, "V30");
  assert_string_equal (item ("insurance")->valid_until, "2027-12-31");
  assert_string_equal (item ("permission")->valid_until, "2027-09-18");
  assert_string_equal (item ("certificate")->valid_until, "");
  assert_int_equal (job->item_ids->len, items->len);
}

static void
test_limits (void **state)
{
  static const struct {
    const char *kind;
    FfCompare compare;
    double value;
    const char *unit;
  } want[] = {
    { "mean-wind", FF_COMPARE_AT_MOST, 8, "m/s" },
    { "gust", FF_COMPARE_AT_MOST, 9, "m/s" },
    { "rain", FF_COMPARE_PROHIBITED, NAN, "" },
    { "height", FF_COMPARE_AT_MOST, 60, "m" },
    { "distance", FF_COMPARE_AT_MOST, 130, "m" },
    { "people", FF_COMPARE_AT_LEAST, 50, "m" },
    { "visibility", FF_COMPARE_AT_LEAST, 5, "km" },
    { "battery-temperature", FF_COMPARE_AT_LEAST, 15, "°C" },
    { "reserve", FF_COMPARE_AT_LEAST, 30, "%" },
    { "light", FF_COMPARE_REQUIRED, NAN, "" },
    { "all-down", FF_COMPARE_BY_TIME, 1190, "" },
    { "observer", FF_COMPARE_REQUIRED, NAN, "" },
  };

  assert_int_equal (limits->len, G_N_ELEMENTS (want));
  for (guint i = 0; i < limits->len; i++)
    {
      const FfLimit *limit = g_ptr_array_index (limits, i);

      assert_string_equal (limit->sheet, "Tern Four own sheet (example)");
      assert_string_equal (limit->kind, want[i].kind);
      assert_int_equal (limit->compare, want[i].compare);
      assert_true (isnan (want[i].value) == isnan (limit->value));
      if (!isnan (want[i].value))
        assert_close (limit->value, want[i].value, 0);
      assert_string_equal (limit->unit, want[i].unit);
      assert_true (limit->example);
      assert_string_equal (limit->checked_on, "");
    }
}

static void
test_the_other_job (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) jobs = ff_jobs_load (store, &error);
  const FfJob *before = g_ptr_array_index (jobs, 0);
  const FfJob *after = g_ptr_array_index (jobs, 2);

  assert_int_equal (jobs->len, 3);
  assert_true (g_str_has_prefix (before->title, "Brackenholt"));
  assert_string_equal (before->date, "2027-09-16");
  assert_true (g_str_has_prefix (after->title, "Brackenholt"));
  assert_string_equal (after->date, "2027-09-19");
}

static gint64
count_all (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) counts = ff_records_counts (store, &error);
  gint64 total = 0;

  for (guint i = 0; i < counts->len; i++)
    total += g_array_index (counts, FfCount, i).count;
  return total;
}

static void
test_a_second_demo_is_refused (void **state)
{
  g_autoptr (GError) error = NULL;
  gint64 before = count_all ();

  assert_false (ff_demo_fill (store, &error));
  assert_error (error, FF_ERROR_INPUT, "empty");
  assert_int_equal (count_all (), before);
  assert_true (ff_records_begin (store, &error));
  ff_records_rollback (store);
}

static void
test_sound (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) faults = ff_records_faults (store, &error);

  assert_no_error (error);
  assert_int_equal (faults->len, 0);
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  if (store == NULL || !ff_demo_fill (store, &error))
    return -1;
  id = ff_job_find (store, "skarrowick", &error);
  job = ff_job_load (store, id, &error);
  place = ff_place_load (store, job->place_id, &error);
  shots = ff_shots_load (store, id, &error);
  items = ff_items_load (store, &error);
  crew = ff_job_crew_load (store, id, &error);
  limits = ff_limits_load (store, &error);
  return error != NULL ? -1 : 0;
}

static int
tear_down (void **state)
{
  ff_job_free (job);
  ff_place_free (place);
  g_ptr_array_unref (shots);
  g_ptr_array_unref (items);
  g_ptr_array_unref (crew);
  g_ptr_array_unref (limits);
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_crew),
    cmocka_unit_test (test_place),
    cmocka_unit_test (test_job),
    cmocka_unit_test (test_shots),
    cmocka_unit_test (test_what_only_some_shots_have),
    cmocka_unit_test (test_aircraft_and_camera),
    cmocka_unit_test (test_filters),
    cmocka_unit_test (test_batteries_and_charger),
    cmocka_unit_test (test_the_rest_of_the_gear),
    cmocka_unit_test (test_limits),
    cmocka_unit_test (test_the_other_job),
    cmocka_unit_test (test_a_second_demo_is_refused),
    cmocka_unit_test (test_sound),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("demo", tests, set_up, tear_down);
}
