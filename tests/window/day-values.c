/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rules of the day's page, which need no display: what is typed to values and back, what is
 * still missing. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-day-fields.h"
#include "ff-day-gaps.h"
#include "ff-day-values.h"
#include "ff-error.h"

/* ---- Clocks, dates, events ---- */

static void
test_clocks_as_people_type_them (void **state)
{
  static const struct {
    const char *text;
    int want; /* -1: refused */
  } cases[] = {
    { "16:30", 990 }, { "1630", 990 }, { "16.30", 990 },  { " 16:30 ", 990 }, { "9:05", 545 },
    { "0905", 545 },  { "00:00", 0 },  { "24:00", 1440 }, { "25:30", 1530 },  { "48:00", 2880 },
    { "48:01", -1 },  { "16:60", -1 }, { "16", -1 },      { "930", -1 },      { "16:3", -1 },
    { "16:300", -1 }, { "1:2:3", -1 }, { "-1:30", -1 },   { "noon", -1 },     { "", -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      int got = -1;
      gboolean taken = ff_day_clock_parse (cases[i].text, &got, NULL);

      if (taken != (cases[i].want >= 0) || got != cases[i].want)
        fail_msg ("“%s” is read as %d", cases[i].text, got);
    }
}

static void
test_dates_as_people_type_them (void **state)
{
  static const struct {
    const char *text, *want; /* NULL: refused */
  } cases[] = {
    { "2027-09-18", "2027-09-18" }, { "18.9.2027", "2027-09-18" }, { "18. 09. 2027", "2027-09-18" },
    { "18/9/2027", NULL }, /* or the 9th of a month that does not exist: the order is not clear */
    { "9/10/2027", NULL },          { "30.2.2027", NULL },         { "18.9.27", NULL },
    { "2027-9-18", NULL },          { "18.9.2027.1", NULL },       { "Saturday", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = NULL;
      gboolean taken = ff_day_date_parse (cases[i].text, &got, NULL);

      if (taken != (cases[i].want != NULL) || g_strcmp0 (got, cases[i].want) != 0)
        fail_msg ("“%s” is read as %s", cases[i].text, got != NULL ? got : "nothing");
    }
}

static void
test_an_event_is_a_time_and_words (void **state)
{
  int minutes = 0;
  g_autofree char *words = NULL;
  GError *error = NULL;

  assert_true (ff_day_event_parse (" 1714  ferry passes ", &minutes, &words, NULL));
  assert_int_equal (minutes, 17 * 60 + 14);
  assert_string_equal (words, "ferry passes");
  assert_false (ff_day_event_parse ("ferry passes 17:14", &minutes, &words, &error));
  assert_error (error, FF_ERROR_INPUT, "17:14 ferry passes");
  assert_false (ff_day_event_parse ("17:14", &minutes, &words, NULL));
  assert_false (ff_day_event_parse ("", &minutes, &words, NULL));
}

/* ---- Fields ---- */

static const FfDayField *
day_field (const char *name)
{
  const FfDayField *found = ff_day_fields_find (name);

  if (found == NULL)
    fail_msg ("there is no field %s", name);
  return found;
}

static void
test_every_field_is_of_its_record (void **state)
{
  assert_true (ff_day_fields_count () > 20);
  for (guint i = 0; i < ff_day_fields_count (); i++)
    if (ff_day_field_of (ff_day_fields_get (i)) == NULL)
      fail_msg ("no record has %s", ff_day_fields_get (i)->widget);
  assert_null (ff_day_fields_get (ff_day_fields_count ()));
}

static void
type_and_show (FfJob *job, const char *name, const char *text, const char *want)
{
  const FfField *field = ff_day_field_of (day_field (name));
  g_autoptr (GError) error = NULL;
  g_autofree char *shown = NULL;

  ff_day_value_set (field, job, day_field (name)->scale, text, &error);
  assert_no_error (error);
  shown = ff_day_value_text (field, job, day_field (name)->scale);
  assert_string_equal (shown, want);
}

static void
test_typed_is_shown_as_it_is_stored (void **state)
{
  g_autoptr (FfJob) job = ff_job_new ();

  type_and_show (job, "title", "  Tidal mill ", "Tidal mill");
  type_and_show (job, "wind_ms", "3,5", "3.5");
  type_and_show (job, "temperature_c", "−4", "-4"); /* a true minus */
  type_and_show (job, "visibility_m", "20", "20");
  assert_close (job->visibility_m, 20000, 1e-9);
  type_and_show (job, "visibility_m", "", "");
  assert_true (isnan (job->visibility_m));
  type_and_show (job, "first_off", "1630", "16:30");
  type_and_show (job, "first_off", "", "");
  assert_int_equal (job->first_off, -1);
  type_and_show (job, "date", "18.9.2027", "2027-09-18");
  type_and_show (job, "out_minutes", "3", "3");
}

static void
test_refused_leaves_the_record_alone (void **state)
{
  static const struct {
    const char *name, *text, *part;
  } cases[] = {
    { "wind_ms", "strong", "not a number" }, { "wind_ms", "400", "out of range" },
    { "visibility_m", "301", "0 to 300" },   { "first_off", "25:61", "not a clock time" },
    { "date", "31.9.2027", "not exist" },    { "out_minutes", "2.5", "not a whole number" },
    { "out_minutes", "", "not a number" },
  };
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (FfJob) before = ff_job_new ();

  ff_set_text (&before->id, job->id);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GError *error = NULL;

      if (ff_day_value_set (ff_day_field_of (day_field (cases[i].name)), job,
                            day_field (cases[i].name)->scale, cases[i].text, &error))
        fail_msg ("%s takes “%s”", cases[i].name, cases[i].text);
      assert_error (error, FF_ERROR_INPUT, cases[i].part);
      assert_true (ff_fields_equal (&ff_job_fields, job, before));
    }
}

static void
test_a_refusal_is_said_without_what_is_seen (void **state)
{
  const FfField *title = ff_fields_find (&ff_job_fields, "title");

  assert_string_equal (ff_day_refusal ("job “X”", title, "job “X”, title: it is missing"),
                       "it is missing");
  assert_string_equal (ff_day_refusal ("job “X”", title, "job “X”: the gust is less"),
                       "the gust is less");
  assert_string_equal (ff_day_refusal ("job “X”", title, "title: “a” is wrong"), "“a” is wrong");
  assert_string_equal (ff_day_refusal ("job “X”", NULL, "the disk is full"), "the disk is full");
}

static void
test_initials_are_free (void **state)
{
  static const char *const taken[] = { "mo", "MA", NULL };
  static const char *const none[] = { NULL };
  g_autofree char *first = ff_day_initials ("Marit Ostrander", none);
  g_autofree char *second = ff_day_initials ("Marit Ostrander", taken);
  g_autofree char *one_word = ff_day_initials ("Pell", none);
  g_autofree char *accent = ff_day_initials ("Élise Ødegård", none);
  g_autofree char *digits = ff_day_initials ("42", none);

  assert_string_equal (first, "MO");
  assert_string_equal (second, "MR");
  assert_string_equal (one_word, "PE");
  assert_string_equal (accent, "ÉØ");
  assert_int_equal (strlen (digits), 2);
}

/* ---- What is missing ---- */

static GPtrArray *
gaps_of (const FfJob *job, const FfPlace *place, GPtrArray *crew, guint n_shots, const char *why)
{
  FfDayState day = { job, place, crew, n_shots, why };

  return ff_day_gaps (&day);
}

static const FfDayGap *
gap_with (GPtrArray *gaps, const char *part)
{
  for (guint i = 0; i < gaps->len; i++)
    {
      const FfDayGap *gap = g_ptr_array_index (gaps, i);

      if (strstr (gap->sentence, part) != NULL)
        return gap;
    }
  return NULL;
}

static void
test_an_empty_job_wants_a_date_first (void **state)
{
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (GPtrArray) crew = g_ptr_array_new ();
  g_autoptr (GPtrArray) gaps = gaps_of (job, NULL, crew, 0, "the job has no date");
  const FfDayGap *first = g_ptr_array_index (gaps, 0), *shots, *pilot;

  assert_string_equal (first->sentence, "No date yet: enter the day of the shoot.");
  assert_string_equal (first->goal, "date");
  assert_true (first->for_plan);
  assert_non_null (gap_with (gaps, "No place yet"));
  shots = gap_with (gaps, "No shots yet");
  pilot = gap_with (gaps, "No pilot yet");
  assert_true (shots != NULL && shots->is_page);
  assert_true (pilot != NULL && !pilot->for_plan);
  /* Without a place there is nothing to say of its emergency telephone. */
  assert_null (gap_with (gaps, "telephone"));
}

static FfPlace *
full_place (void)
{
  FfPlace *place = ff_place_new ();

  ff_set_text (&place->zone, "Europe/London");
  ff_set_text (&place->takeoff_spot, "slipway");
  ff_set_text (&place->second_spot, "green");
  ff_set_text (&place->emergency_location, "the mill");
  ff_set_text (&place->emergency_phone, "1");
  return place;
}

static void
add_member (GPtrArray *crew, FfRole role, const char *expiry)
{
  FfMember *member = ff_member_new ();

  ff_set_text (&member->name, "Jonah Velk");
  ff_set_text (&member->certificate_expiry, expiry);
  member->role = role;
  g_ptr_array_add (crew, member);
}

static void
test_a_full_day_wants_nothing (void **state)
{
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (FfPlace) place = full_place ();
  g_autoptr (GPtrArray) crew = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_member_free);
  g_autoptr (GPtrArray) gaps = NULL;
  g_autoptr (GPtrArray) late = NULL;

  ff_set_text (&job->date, "2027-09-18");
  ff_set_text (&job->abort_word, "stop");
  job->first_off = 990;
  job->all_down = 1190;
  job->wind_ms = 4;
  job->gust_ms = 6;
  add_member (crew, FF_ROLE_LEAD, "");
  add_member (crew, FF_ROLE_PILOT, "2027-09-18");
  add_member (crew, FF_ROLE_OBSERVER, "");
  gaps = gaps_of (job, place, crew, 3, NULL);
  assert_int_equal (gaps->len, 0);
  /* A day later the certificate is no longer good. */
  ff_set_text (&job->date, "2027-09-19");
  late = gaps_of (job, place, crew, 3, NULL);
  assert_int_equal (late->len, 1);
  assert_non_null (gap_with (late, "The certificate of Jonah Velk ends on 2027-09-18"));
}

static void
test_the_gear_is_named_last (void **state)
{
  g_autoptr (FfJob) job = ff_job_new ();
  g_autoptr (FfPlace) place = full_place ();
  g_autoptr (GPtrArray) crew = g_ptr_array_new ();
  g_autoptr (GPtrArray) gaps = NULL;
  g_autoptr (GPtrArray) no_zone = NULL;

  ff_set_text (&job->date, "2027-09-18");
  gaps = gaps_of (job, place, crew, 3, "no serviceable battery; enter one in the gear");
  assert_string_equal (((FfDayGap *) g_ptr_array_index (gaps, 0))->sentence,
                       "No serviceable battery; enter one in the gear.");
  ff_set_text (&place->zone, FF_DAY_NO_ZONE);
  no_zone = gaps_of (job, place, crew, 3, "no serviceable battery");
  assert_string_equal (((FfDayGap *) g_ptr_array_index (no_zone, 0))->goal, "zone");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_clocks_as_people_type_them),
    cmocka_unit_test (test_dates_as_people_type_them),
    cmocka_unit_test (test_an_event_is_a_time_and_words),
    cmocka_unit_test (test_every_field_is_of_its_record),
    cmocka_unit_test (test_typed_is_shown_as_it_is_stored),
    cmocka_unit_test (test_refused_leaves_the_record_alone),
    cmocka_unit_test (test_a_refusal_is_said_without_what_is_seen),
    cmocka_unit_test (test_initials_are_free),
    cmocka_unit_test (test_an_empty_job_wants_a_date_first),
    cmocka_unit_test (test_a_full_day_wants_nothing),
    cmocka_unit_test (test_the_gear_is_named_last),
  };

  return cmocka_run_group_tests_name ("day-values", tests, NULL, NULL);
}
