/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-random-records.h"

#include <math.h>
#include <string.h>

static char *
random_text (FfTestRandom *dice, gsize longest)
{
  static const char *const words[]
      = { "a", "Skarrowick ", "Ω", "水", "'; --", "\"q\"", "\n", "%s", "0" };
  GString *text = g_string_new ("x");
  int n = ff_test_random_int (dice, 0, 6);

  for (int i = 0; i < n; i++)
    {
      const char *word = words[ff_test_random_int (dice, 0, (int) G_N_ELEMENTS (words) - 1)];

      if (text->len + strlen (word) <= longest)
        g_string_append (text, word);
    }
  return g_string_free (text, FALSE);
}

static void
fill_text (FfTestRandom *dice, const FfField *field, gpointer record)
{
  gboolean given = field->needed || ff_test_random_int (dice, 0, 3) > 0;
  char *text = NULL;

  if (given && field->type == FF_FIELD_TEXT)
    text = random_text (dice, (gsize) field->high);
  else if (given && field->type == FF_FIELD_DATE)
    text = g_strdup_printf ("20%02d-%02d-%02d", ff_test_random_int (dice, 10, 99),
                            ff_test_random_int (dice, 1, 12), ff_test_random_int (dice, 1, 28));
  if (text != NULL)
    {
      g_free (*ff_field_text (field, record));
      *ff_field_text (field, record) = text;
    }
}

static void
fill_field (FfTestRandom *dice, const FfField *field, gpointer record)
{
  gboolean given = field->needed || ff_test_random_int (dice, 0, 3) > 0;

  if (ff_field_is_text (field))
    fill_text (dice, field, record);
  else if (field->type == FF_FIELD_REAL)
    *ff_field_real (field, record)
        = given ? ff_test_random (dice, field->low, field->high) : NAN;
  else if (field->type == FF_FIELD_INSTANT)
    *ff_field_instant (field, record) = ff_test_random_int (dice, 0, 2000000000);
  else if (field->type == FF_FIELD_NAME)
    *ff_field_whole (field, record)
        = ff_test_random_int (dice, 0, (int) field->names->n_names - 1);
  else if (field->type == FF_FIELD_FLAG)
    *ff_field_whole (field, record) = ff_test_random_int (dice, 0, 1);
  else if (given)
    *ff_field_whole (field, record)
        = ff_test_random_int (dice, (int) field->low, (int) field->high);
  else
    *ff_field_whole (field, record) = field->type == FF_FIELD_CLOCK ? -1 : (int) field->low;
}

/* Everything but ids, which the records give themselves. */
void
ff_random_fill (FfTestRandom *dice, const FfFields *fields, gpointer record)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (fields->fields[i].type != FF_FIELD_ID)
      fill_field (dice, &fields->fields[i], record);
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

FfPlace *
ff_random_place (FfTestRandom *dice)
{
  FfPlace *place = ff_place_new ();
  int n = ff_test_random_int (dice, 0, 4);

  ff_random_fill (dice, &ff_place_fields, place);
  ff_set_text (&place->zone, "Europe/London");
  for (int i = 0; i < n; i++)
    {
      FfHazard *hazard = ff_hazard_new ();

      ff_random_fill (dice, &ff_hazard_fields, hazard);
      g_ptr_array_add (place->hazards, hazard);
    }
  return place;
}

FfJob *
ff_random_job (FfTestRandom *dice)
{
  FfJob *job = ff_job_new ();
  int n = ff_test_random_int (dice, 0, 4);

  ff_random_fill (dice, &ff_job_fields, job);
  ff_set_text (&job->version, "B");
  job->on_site = -1;
  job->first_off = ff_test_random_int (dice, 0, 700);
  job->all_down = job->first_off + ff_test_random_int (dice, 0, 700);
  job->off_site = -1;
  sort_two (&job->wind_ms, &job->gust_ms);
  for (int i = 0; i < n; i++)
    {
      FfDayEvent *event = ff_day_event_new ();

      event->clock = i * 100 + ff_test_random_int (dice, 0, 99);
      ff_set_text (&event->text, "ferry passes");
      g_ptr_array_add (job->events, event);
    }
  return job;
}

FfShot *
ff_random_shot (FfTestRandom *dice, const char *job_id)
{
  FfShot *shot = ff_shot_new (job_id);

  ff_random_fill (dice, &ff_shot_fields, shot);
  g_free (shot->label);
  shot->label = g_uuid_string_random ();
  shot->label[16] = '\0';
  shot->minutes = ff_test_random_int (dice, 1, 60);
  shot->window_from = ff_test_random_int (dice, 0, 1300);
  shot->window_to = shot->window_from + shot->minutes + ff_test_random_int (dice, 0, 60);
  if (shot->sun_leaves >= 0)
    shot->sun_leaves = shot->window_from + shot->minutes + ff_test_random_int (dice, 0, 90);
  shot->fps = 25;
  shot->angle_deg = ff_test_random (dice, 90, 180);
  shot->angle_from_deg = shot->angle_deg - 10;
  shot->angle_to_deg = shot->angle_deg + 10;
  shot->frames = ff_test_random_int (dice, 2, 9);
  shot->step_stops = 2;
  shot->interval_s = 2;
  return shot;
}

FfItem *
ff_random_item (FfTestRandom *dice, FfKind kind)
{
  FfItem *item = ff_item_new (kind);
  const FfFields *own = ff_item_kind_fields (kind);

  ff_random_fill (dice, &ff_item_fields, item);
  item->kind = kind;
  g_free (item->label);
  item->label = g_uuid_string_random ();
  item->label[24] = '\0';
  if (own != NULL)
    ff_random_fill (dice, own, item);
  if (kind == FF_KIND_CAMERA)
    {
      ff_set_text (&item->apertures, "2.8, 4,5.6");
      ff_set_text (&item->base_iso, "100,800");
      ff_set_text (&item->shutter_fast, "1/8000");
      ff_set_text (&item->shutter_slow, "8");
      item->iso_low = 100;
      item->iso_high = ff_test_random_int (dice, 800, 25600);
      ff_set_text (&item->profiles, "standard, flat");
      ff_set_text (&item->frame_rates, "24, 25,50,100");
      ff_set_text (&item->data_rates, "60,100");
      item->sharp_from = ff_test_random (dice, 1, 2.8);
      item->sharp_to = ff_test_random (dice, 2.8, 11);
      sort_two (&item->angle_low_deg, &item->angle_high_deg);
    }
  sort_two (&item->temperature_low_c, &item->temperature_high_c);
  sort_two (&item->stops, &item->stops_to);
  return item;
}

FfMember *
ff_random_member (FfTestRandom *dice)
{
  FfMember *member = ff_member_new ();

  ff_random_fill (dice, &ff_member_fields, member);
  g_free (member->initials);
  member->initials = g_strdup_printf ("%c%c%c", 'A' + ff_test_random_int (dice, 0, 25),
                                      'A' + ff_test_random_int (dice, 0, 25),
                                      'A' + ff_test_random_int (dice, 0, 25));
  return member;
}

FfReading *
ff_random_reading (FfTestRandom *dice, const char *job_id)
{
  FfReading *reading = ff_reading_new (job_id);

  ff_random_fill (dice, &ff_reading_fields, reading);
  if (ff_test_random_int (dice, 0, 2) == 0)
    ff_random_fill (dice, &ff_reading_drop_fields, reading);
  reading->shown_s = exp2 (ff_test_random (dice, -12, 2));
  reading->target_s = exp2 (ff_test_random (dice, -12, 2));
  reading->lux = ff_test_random (dice, 1, 1e5);
  if (*reading->source == '\0')
    ff_set_text (&reading->source, "grey.jpg");
  return reading;
}

/* A kind that the comparison can be about, with a unit of it and the values that it needs. */
static void
random_bound (FfTestRandom *dice, FfLimit *limit)
{
  const gboolean flag = limit->compare == FF_COMPARE_REQUIRED
                        || limit->compare == FF_COMPARE_PROHIBITED
                        || limit->compare == FF_COMPARE_INFORMATION;
  const gboolean two
      = limit->compare == FF_COMPARE_BETWEEN || limit->compare == FF_COMPARE_WINDOW;
  const gboolean clock
      = limit->compare == FF_COMPARE_BY_TIME || limit->compare == FF_COMPARE_WINDOW;

  ff_set_text (&limit->kind, flag ? "observer" : clock ? "all-down" : "height");
  ff_set_text (&limit->unit, flag || clock ? "" : "ft");
  limit->value = flag ? NAN : ff_test_random (dice, 0, 1000);
  limit->value_to = two ? limit->value + ff_test_random (dice, 0, 1000) : NAN;
}

FfLimit *
ff_random_limit (FfTestRandom *dice)
{
  FfLimit *limit = ff_limit_new ();

  ff_random_fill (dice, &ff_limit_fields, limit);
  random_bound (dice, limit);
  return limit;
}
