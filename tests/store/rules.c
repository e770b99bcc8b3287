/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every fact that is out of bounds is refused by name before anything is written. */
#include "ff-random-records.h"

#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-flight.h"
#include "ff-item-camera.h"

static FfTestRandom dice = { 20270918 };

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

          *place = (int) (field->type == FF_FIELD_NAME ? field->names->n_names : field->high + 1);
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
  g_autoptr (FfPlace) place = ff_random_place (&dice);
  g_autoptr (FfJob) job = ff_random_job (&dice);
  g_autoptr (FfShot) shot = ff_random_shot (&dice, job->id);
  g_autoptr (FfMember) member = ff_random_member (&dice);
  g_autoptr (FfLimit) limit = ff_random_limit (&dice);

  refuse_each (&ff_place_fields, place, (Check) ff_place_check);
  refuse_each (&ff_job_fields, job, (Check) ff_job_check);
  refuse_each (&ff_shot_fields, shot, (Check) ff_shot_check);
  refuse_each (&ff_member_fields, member, (Check) ff_member_check);
  refuse_each (&ff_limit_fields, limit, (Check) ff_limit_check);
  for (int kind = FF_KIND_AIRCRAFT; kind <= FF_KIND_OTHER; kind++)
    {
      g_autoptr (FfItem) item = ff_random_item (&dice, (FfKind) kind);

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
  assert_error (error, FF_ERROR_INPUT, "shot G: the window ends at 18:00, before it starts at 19");
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
refuses_camera (FfItem *camera, const char *part)
{
  g_autoptr (GError) error = NULL;

  assert_false (ff_item_check (camera, &error));
  assert_error (error, FF_ERROR_INPUT, part);
}

/* A camera with a fixed aperture of f/2.8, ISO 100 to 6400, base 100. */
static FfItem *
plain_camera (void)
{
  FfItem *camera = ff_item_new (FF_KIND_CAMERA);

  ff_set_text (&camera->label, "cam");
  ff_set_text (&camera->apertures, "2.8");
  ff_set_text (&camera->base_iso, "100");
  ff_set_text (&camera->shutter_fast, "1/8000");
  ff_set_text (&camera->shutter_slow, "8");
  camera->iso_low = 100;
  camera->iso_high = 6400;
  return camera;
}

static void
test_camera_iso_rules (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) camera = plain_camera ();

  assert_true (ff_item_check (camera, &error));
  camera->iso_high = 50;
  refuses_camera (camera, "the lowest ISO is above the highest");
  camera->iso_high = 6400;
  ff_set_text (&camera->base_iso, "50");
  refuses_camera (camera, "a base ISO is outside");
  ff_set_text (&camera->base_iso, "100,12800");
  refuses_camera (camera, "a base ISO is outside");
  ff_set_text (&camera->base_iso, "100,800");
  ff_set_text (&camera->profiles, "standard,flat");
  assert_true (ff_item_check (camera, &error));
  ff_set_text (&camera->profiles, "standard,flat,flatter");
  refuses_camera (camera, "one or two");
  ff_set_text (&camera->base_iso, "100");
  ff_set_text (&camera->profiles, "standard,flat");
  refuses_camera (camera, "more picture profiles than base ISOs");
}

static void
test_camera_lens_and_shutter_rules (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) camera = plain_camera ();

  ff_set_text (&camera->shutter_slow, "1/16000");
  refuses_camera (camera, "longer than the slowest");
  ff_set_text (&camera->shutter_slow, "8");
  camera->angle_low_deg = 200;
  camera->angle_high_deg = 100;
  refuses_camera (camera, "the smallest shutter angle");
  camera->angle_high_deg = 360;
  camera->sharp_from = 4;
  refuses_camera (camera, "none of its apertures");
  ff_set_text (&camera->apertures, "2.8,4,5.6,8");
  camera->sharp_to = 2.8;
  refuses_camera (camera, "upside down");
  camera->sharp_to = 5.6;
  ff_set_text (&camera->frame_rates, "25,,50");
  refuses_camera (camera, "frame rates");
  ff_set_text (&camera->frame_rates, "23.98, 25,50");
  ff_set_text (&camera->data_rates, "many");
  refuses_camera (camera, "data rates");
  ff_set_text (&camera->data_rates, "60,150");
  assert_true (ff_item_check (camera, &error));
}

static void
test_what_a_camera_has (void **state)
{
  g_autoptr (FfItem) camera = plain_camera ();

  assert_true (ff_item_has_frame_rate (camera, 100)); /* nobody has said */
  assert_true (isnan (ff_item_highest_data_rate (camera)));
  ff_set_text (&camera->frame_rates, "23.98, 25,50");
  assert_true (ff_item_has_frame_rate (camera, 23.976));
  assert_true (ff_item_has_frame_rate (camera, 50));
  assert_false (ff_item_has_frame_rate (camera, 100));
  camera->bitrate_mbits = 100;
  assert_close (ff_item_highest_data_rate (camera), 100, 0);
  ff_set_text (&camera->data_rates, "60,150");
  assert_close (ff_item_highest_data_rate (camera), 150, 0);
}

static void
test_item_limit_flight_rules (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfItem) camera = ff_random_item (&dice, FF_KIND_CAMERA);
  g_autoptr (FfLimit) limit = ff_random_limit (&dice);
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
  limit->value_to = NAN;
  assert_true (ff_limit_check (limit, &error));
  limit->value = 1;
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "no value");
  limit->compare = FF_COMPARE_BETWEEN;
  ff_set_text (&limit->kind, "air-temperature");
  ff_set_text (&limit->unit, "°C");
  limit->value = 40;
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "other end");
  limit->value_to = -10;
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "upside down");
  limit->value_to = 45;
  assert_true (ff_limit_check (limit, &error));
  ff_set_text (&limit->unit, "m");
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "°C, °F");
  limit->compare = FF_COMPARE_WINDOW;
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "can't be compared");
  ff_set_text (&limit->kind, "weather");
  assert_false (ff_limit_check (limit, &error));
  assert_error (error, FF_ERROR_INPUT, "no kind of limit");

  assert_false (ff_flight_check (flight, &error));
  assert_error (error, FF_ERROR_INPUT, "battery");
  ff_set_text (&flight->battery_id, camera->id);
  assert_false (ff_flight_check (flight, &error));
  assert_error (error, FF_ERROR_INPUT, "down before it is off");
  flight->down = flight->off + 4 * 3600 + 1;
  assert_false (ff_flight_check (flight, &error));
  assert_error (error, FF_ERROR_INPUT, "four hours");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_each_field_is_guarded),
    cmocka_unit_test (test_shot_rules),
    cmocka_unit_test (test_job_and_place_rules),
    cmocka_unit_test (test_camera_iso_rules),
    cmocka_unit_test (test_camera_lens_and_shutter_rules),
    cmocka_unit_test (test_what_a_camera_has),
    cmocka_unit_test (test_item_limit_flight_rules),
  };

  return cmocka_run_group_tests_name ("rules", tests, NULL, NULL);
}
