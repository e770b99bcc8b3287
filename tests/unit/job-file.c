/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A job file goes out and comes in as it was; one that is wrong anywhere is refused with its place
 * in the file, and leaves the store as it was. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "ff-csv.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-file.h"
#include "ff-job-file.h"
#include "ff-json-check.h"

static char *folder;
static FfStore *store;
static char *good; /* the demo day as a file */

static char *
write_job (FfStore *from, const char *wanted)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_job_find (from, wanted, &error);
  g_autoptr (FfJobFile) file = NULL;
  g_autoptr (FfJson) json = ff_json_new ();

  assert_no_error (error);
  file = ff_job_file_load (from, id, &error);
  assert_no_error (error);
  ff_job_file_write (file, json);
  return ff_json_finish (json);
}

/* The good file with the first `from` after `mark` replaced. */
static char *
with (const char *mark, const char *from, const char *to)
{
  const char *start = strstr (good, mark);
  const char *place;

  assert_non_null (start);
  place = strstr (start, from);
  assert_non_null (place);
  return g_strdup_printf ("%.*s%s%s", (int) (place - good), good, to, place + strlen (from));
}

static void
refused (const char *mark, const char *from, const char *to, const char *part)
{
  g_autofree char *text = with (mark, from, to);
  g_autoptr (GError) error = NULL;

  assert_null (ff_job_file_parse (text, &error));
  assert_error (error, FF_ERROR_INPUT, part);
}

/* ---- There and back ---- */

static void
test_round_trip (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *second = g_build_filename (folder, "second", NULL);
  g_autoptr (FfStore) other = ff_records_open (second, FF_RECORDS_WRITE, &error);
  g_autoptr (FfJobFile) file = ff_job_file_parse (good, &error);
  g_autofree char *again = NULL;

  assert_no_error (error);
  ff_job_file_store (file, other, 0, &error);
  assert_no_error (error);
  again = write_job (other, "skarrowick");
  assert_string_equal (again, good);
}

/* What was frozen, amended, read and locked comes along, letter by letter. */
static void
test_versions_come_along (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *second = g_build_filename (folder, "versions", NULL);
  g_autoptr (FfStore) other = ff_records_open (second, FF_RECORDS_WRITE, &error);
  g_autoptr (FfJobFile) file = ff_job_file_parse (good, &error);
  g_autoptr (FfPlanVersion) version = ff_plan_version_new (file->job->id);
  g_autoptr (FfAmendment) amendment = ff_amendment_new (file->job->id);
  g_autoptr (FfLock) lock = ff_lock_new (file->job->id);
  g_autoptr (FfBriefed) briefed = ff_briefed_new (file->job->id);
  g_autoptr (FfJobFile) read = NULL;
  g_autofree char *text = NULL, *again = NULL;

  ff_set_text (&version->letter, "A");
  ff_set_text (&version->copy, "{\"lines\": []}");
  amendment->number = 1;
  ff_set_text (&amendment->letter, "A");
  ff_set_text (&amendment->text, "Pilot: line 4, off 18:18 not 17:38.");
  ff_amendment_add_sentence (amendment, FF_ROLE_PILOT, "line 4, off 18:18 not 17:38");
  ff_amendment_add_acknowledgement (amendment, FF_ROLE_PILOT, "JV", 5, "MO");
  ff_set_text (&lock->shot_id, ((FfShot *) g_ptr_array_index (file->shots, 2))->id);
  lock->off_by = 1038;
  assert_true (ff_plan_version_append (store, version, &error));
  assert_true (ff_amendment_append (store, amendment, &error));
  assert_true (ff_lock_save (store, lock, &error));
  ff_set_text (&briefed->letter, "A");
  ff_set_text (&briefed->name, "Pell Rasmussen");
  ff_set_text (&briefed->initials, "PR");
  briefed->upto = 1;
  assert_true (ff_briefed_append (store, briefed, &error));
  text = write_job (store, "skarrowick");
  read = ff_job_file_parse (text, &error);
  assert_no_error (error);
  ff_job_file_store (read, other, 0, &error);
  assert_no_error (error);
  again = write_job (other, "skarrowick");
  assert_string_equal (again, text);
  assert_non_null (strstr (again, "\"initials\": \"JV\""));
  assert_non_null (strstr (again, "\"name\": \"Pell Rasmussen\""));
}

static void
versions_refused (const char *versions, const char *part)
{
  g_autofree char *whole = g_strdup_printf ("%s, \"format\"", versions);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  const char *empty[] = { "\"versions\": [],", "\"amendments\": [],", "\"briefed\": [],",
                          "\"locks\": []" };
  g_autoptr (GString) bare = g_string_new (good);

  for (guint i = 0; i < G_N_ELEMENTS (empty); i++)
    assert_int_equal (g_string_replace (bare, empty[i], "", 1), 1);
  text = g_string_free (g_steal_pointer (&bare), FALSE);
  /* The comma before the last member goes too. */
  *strrchr (text, ',') = ' ';
  {
    g_autoptr (GString) filled = g_string_new (text);

    g_string_replace (filled, "\"format\"", whole, 1);
    assert_null (ff_job_file_parse (filled->str, &error));
  }
  assert_error (error, FF_ERROR_INPUT, part);
}

static void
test_versions_are_checked (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJobFile) file = ff_job_file_parse (good, &error);
  g_autofree char *version = g_strdup_printf (
      "{\"job_id\": \"%s\", \"letter\": \"A\", \"frozen_at\": \"2027-09-17T18:00:00Z\","
      " \"copy\": \"{}\"}",
      file->job->id);
  g_autofree char *twice = g_strdup_printf ("\"versions\": [%s, %s]", version, version);
  g_autofree char *alien = g_strdup_printf (
      "\"amendments\": [{\"job_id\": \"%s\", \"number\": 1, \"letter\": \"A\", \"text\": \"x\","
      " \"at\": \"2027-09-17T18:00:00Z\", \"sentences\": [{\"role\": \"pilot\","
      " \"text\": \"x\"}], \"acknowledgements\": []}]",
      file->job->id);
  g_autofree char *nobody = g_strdup_printf (
      "\"locks\": [{\"id\": \"99999999-9999-4999-8999-999999999999\", \"job_id\": \"%s\","
      " \"shot_id\": \"99999999-9999-4999-8999-999999999999\", \"keep_filter\": true}]",
      file->job->id);
  g_autofree char *unnamed = g_strdup_printf (
      "\"briefed\": [{\"job_id\": \"%s\", \"letter\": \"A\", \"upto\": 0, \"name\": \"\","
      " \"initials\": \"PR\", \"at\": \"2027-09-17T18:00:00Z\"}]",
      file->job->id);

  versions_refused (twice, "versions[1]: found “A”; accepted: a letter that no other");
  versions_refused (alien, "amendments[0]: found “A”; accepted: the letter of a version");
  versions_refused (nobody, "locks[0]: found");
  versions_refused (unnamed, "briefed[0]");
  versions_refused ("\"locks\": {}", "locks: found an object");
}

/* Place, crew and gear that are there already and the same are taken as they are. */
static void
test_a_second_job_shares_place_and_gear (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJobFile) file = ff_job_file_parse (good, &error);
  g_autofree char *id = g_strdup (file->job->id);
  g_autofree char *other_id = ff_records_new_id ();
  g_auto (GStrv) parts = g_strsplit (good, id, -1);
  g_autofree char *moved = g_strjoinv (other_id, parts);
  g_autoptr (FfJobFile) second = NULL;

  /* The shots would still be those of the first job: taking them over is refused. */
  second = ff_job_file_parse (moved, &error);
  assert_no_error (error);
  assert_false (ff_job_file_store (second, store, 0, &error));
  assert_error (error, FF_ERROR_INPUT, "shot A");
  g_ptr_array_set_size (second->shots, 0);
  g_ptr_array_set_size (second->readings, 0); /* they are the first job's, too */
  g_ptr_array_set_size (second->pack_events, 0);
  ff_job_file_store (second, store, 0, &error);
  assert_no_error (error);
}

static void
test_the_state_of_new_gear_comes_along (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *second = g_build_filename (folder, "third", NULL);
  g_autoptr (FfStore) other = ff_records_open (second, FF_RECORDS_WRITE, &error);
  g_autofree char *b4 = ff_item_find (store, "b4", &error);
  g_autofree char *text = NULL;
  g_autoptr (FfJobFile) file = NULL;
  g_autoptr (FfItem) item = NULL;

  assert_true (ff_item_set_state (store, b4, FF_STATE_QUARANTINED, "swollen", NULL, NULL, "JV", 5,
                                  &error));
  text = write_job (store, "skarrowick");
  file = ff_job_file_parse (text, &error);
  assert_no_error (error);
  ff_job_file_store (file, other, 7, &error);
  assert_no_error (error);
  item = ff_item_load (other, b4, &error);
  assert_int_equal (item->state, FF_STATE_QUARANTINED);
  assert_string_equal (item->state_why, "swollen");
}

/* ---- Syntax ---- */

static void
test_syntax_says_line_and_column (void **state)
{
  static const struct {
    const char *text, *part;
  } cases[] = {
    { "", "line 1, column 1: found the end of the file" },
    { "{\n  \"a\": 1,\n}", "line 3, column 1" },
    { "{\n  \"é\": tru }", "line 2, column 8" },
    { "{\"a\": 1} x", "line 1, column 10" },
    { "{\"a\": 1, \"a\": 2}", "line 1, column 10" },
    { "{\"a\\u0062\": 1}", "plain name" },
    { "/* note */ {}", "line 1, column 1" },
    { "{'a': 1}", "line 1, column 2" },
    { "{\"a\": 01}", "leading 0" },
    { "{\"a\": 1.}", "a digit" },
    { "{\"a\": .5}", "a value" },
    { "{\"a\": +1}", "a value" },
    { "{\"a\": NaN}", "a value" },
    { "{\"a\": 1e}", "a digit" },
    { "{\"a\": 1234567890123456}", "15 digits" },
    { "{\"a\": \"\\u0000\"}", "not all 0" },
    { "{\"a\": \"\\ud800\"}", "second half" },
    { "{\"a\": \"\\udc00\"}", "second half" },
    { "{\"a\": \"\\x\"}", "b f n r t u" },
    { "{\"a\": \"x\ny\"}", "closing quote" },
    { "{\"a\": \"x", "closing quote" },
    { "[1, 2", ", or ]" },
    { "{\"a\" 1}", "accepted: :" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_null (ff_job_file_parse (cases[i].text, &error));
      assert_error (error, FF_ERROR_INPUT, cases[i].part);
    }
}

static void
test_what_json_allows (void **state)
{
  static const char *const texts[]
      = { "{}", " [ ] ", "-0.5e+10", "\"\\ud83d\\ude00 \\\" \\/ \\n\"", "[true,false,null,[{}]]" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_true (ff_json_check (texts[i], &error));
      assert_no_error (error);
    }
}

static void
test_depth_is_bounded (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *deep = g_strnfill (1000000, '[');
  g_autofree char *just = g_strnfill (2 * FF_JSON_DEPTH_MAX, '[');

  assert_null (ff_job_file_parse (deep, &error));
  assert_error (error, FF_ERROR_INPUT, "column 17");
  memset (just + FF_JSON_DEPTH_MAX, ']', FF_JSON_DEPTH_MAX);
  assert_true (ff_json_check (just, &error));
}

/* ---- Members ---- */

static void
test_members_say_their_path (void **state)
{
  refused ("{", "\"fieldfare-job\"", "\"other\"", "format: found \"other\"");
  refused ("{", "\"format_version\": 1", "\"format_version\": 2", "format_version: found 2");
  refused ("{", "\"format\"", "\"extra\": 1, \"format\"", "extra: unknown");
  refused ("\"job\"", "\"client\"", "\"klient\"", "job.klient: unknown");
  refused ("\"events\"", "\"text\"", "\"words\"", "job.events[0].words: unknown");
  refused ("\"events\"", "\"17:14\"", "\"17.14\"", "job.events[0].clock");
  refused ("\"events\"", "\"17:14\"", "\"48:01\"", "job.events[0].clock");
  refused ("\"place\": {", "57.2", "\"57.2\"", "place.latitude_deg: found \"57.2\"");
  refused ("\"place\": {", "57.2", "97.2", "place.latitude_deg: found 97.2; accepted: -90 to 90");
  refused ("\"place\": {", "57.2", "null", "place.latitude_deg: found null");
  refused ("\"place\": {", "Europe/London", "Europe/Atlantis", "Europe/Atlantis");
  refused ("\"shots\"", "\"minutes\": 6", "\"minutes\": 6.5", "shots[0].minutes");
  refused ("\"shots\"", "\"minutes\": 6", "\"minutes\": 4294967302", "shots[0].minutes");
  refused ("\"shots\"", "\"minutes\": 6", "\"minutes\": []", "found a list");
  refused ("\"shots\"", "\"minutes\": 6,", "", "shots[0].minutes: found nothing");
  refused ("\"shots\"", "\"fixed_time\": false", "\"fixed_time\": 0", "accepted: true, false");
  refused ("\"shots\"", "\"down\"", "\"up\"", "unknown view “up”");
  refused ("\"shots\"", "\"16:30\"", "\"17:30\"", "shots[0]: shot A: the window ends");
  refused ("\"crew\"", "\"MO\"", "\"M0\"", "two or three letters");
  refused ("\"items\": [", "\"kind\": \"aircraft\"", "\"kind\": \"camera\"", "items[0]");
  refused ("\"items\": [", "\"size_m\"", "\"item_id\": null, \"size_m\"", "items[0].item_id: unknown");
  refused ("\"items\": [", "\"serviceable\"", "\"defect\"", "items[0].state_why");
  refused ("\"items\": [", "\"state\": \"serviceable\"", "\"state\": {}", "found an object");
}

static void
test_what_is_named_must_be_there (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJobFile) file = ff_job_file_parse (good, &error);
  const FfShot *a = g_ptr_array_index (file->shots, 0);
  const FfShot *b = g_ptr_array_index (file->shots, 1);
  const char *nobody = "99999999-9999-4999-8999-999999999999";

  refused ("\"job\"", file->job->place_id, nobody, "job.place_id");
  refused ("\"job\"", file->job->aircraft_id, nobody, "job.aircraft_id");
  refused ("\"item_ids\"", g_ptr_array_index (file->job->item_ids, 3), nobody, "job.item_ids");
  refused ("\"shots\"", file->job->id, nobody, "shots[0]");
  refused ("\"shots\"", b->id, a->id, "one record alone");
  refused ("\"shots\"", "\"label\": \"B\"", "\"label\": \"a\"", "no other shot");
  refused ("\"roles\"", "\"member_id\": \"", "\"member_id\": \"9", "roles[0], crew member: it is too long");
}

/* Damaged at random, a file is read or refused, and nothing else. */
static void
test_random_damage (void **state)
{
  FfTestRandom dice = { 18 };
  gsize length = strlen (good);

  for (int round = 0; round < 800; round++)
    {
      g_autofree char *text = g_strdup (good);
      int n = ff_test_random_int (&dice, 1, 3);
      g_autoptr (GError) error = NULL;
      g_autoptr (FfJobFile) file = NULL;

      for (int i = 0; i < n; i++)
        text[ff_test_random_int (&dice, 0, (int) length - 1)]
            = "{}[]\",:0123456789eE+-.nulltruefalse\\ \n"[ff_test_random_int (&dice, 0, 37)];
      if (ff_test_random_int (&dice, 0, 3) == 0)
        text[ff_test_random_int (&dice, 0, (int) length - 1)] = '\0';
      if (g_utf8_validate (text, -1, NULL))
        file = ff_job_file_parse (text, &error);
      if (error != NULL)
        assert_error (error, FF_ERROR_INPUT, ":");
    }
}

/* ---- All or nothing ---- */

static gint64
count_all (void)
{
  g_autoptr (GArray) counts = ff_records_counts (store, NULL);
  gint64 total = 0;

  for (guint i = 0; i < counts->len; i++)
    total += g_array_index (counts, FfCount, i).count;
  return total;
}

static void
store_refuses (FfJobFile *file, const char *part)
{
  g_autoptr (GError) error = NULL;
  gint64 before = count_all ();

  assert_false (ff_job_file_store (file, store, 0, &error));
  assert_error (error, FF_ERROR_INPUT, part);
  assert_int_equal (count_all (), before);
  assert_true (ff_records_begin (store, &error));
  ff_records_rollback (store);
}

static void
test_a_refused_import_leaves_nothing (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfJobFile) file = ff_job_file_parse (good, &error);
  FfItem *item = g_ptr_array_index (file->items, 0);
  FfMember *member = g_ptr_array_index (file->crew, 0);
  FfHazard *hazard = g_ptr_array_index (file->place->hazards, 0);

  store_refuses (file, "in the store already, as “Skarrowick");
  g_free (file->job->id);
  file->job->id = ff_records_new_id ();
  ff_set_text (&hazard->measure, "another measure");
  store_refuses (file, "place “Skarrowick Head”");
  item->mass_kg = 0.8;
  store_refuses (file, "item “aircraft 1”");
  g_free (item->id);
  item->id = ff_records_new_id ();
  store_refuses (file, "another one in the store");
  ff_set_text (&member->phone, "1");
  store_refuses (file, "crew member");
  g_free (member->id);
  member->id = ff_records_new_id ();
  store_refuses (file, "initials");
}

/* ---- The files themselves ---- */

static void
test_files_are_whole_or_not_there (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (folder, "job.json", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "none", "job.json", NULL);
  g_autofree char *text = NULL;

  assert_true (ff_file_write_new (path, "first", &error));
  assert_false (ff_file_write_new (path, "second", &error));
  assert_error (error, FF_ERROR_INPUT, "exists already");
  text = ff_file_read (path, 5, &error);
  assert_string_equal (text, "first");
  assert_null (ff_file_read (path, 4, &error));
  assert_error (error, FF_ERROR_INPUT, "too large");
  assert_null (ff_file_read (folder, 5, &error));
  assert_error (error, FF_ERROR_INPUT, "not a file");
  assert_null (ff_file_read (nowhere, 5, &error));
  assert_error (error, FF_ERROR_INPUT, "job.json");
  assert_false (ff_file_write_new (nowhere, "x", &error));
  assert_error (error, FF_ERROR_OUTPUT, "job.json");
  assert_true (g_file_set_contents (path, "a\0b", 3, NULL));
  assert_null (ff_file_read (path, 5, &error));
  assert_error (error, FF_ERROR_INPUT, "no text");
}

static void
test_csv (void **state)
{
  static const char *const cells[] = { "b1", "a, b", "say \"x\"", "=1+1", "+cmd", "-2.5", "@x",
                                       "two\nlines", "", NULL };
  g_autoptr (GString) out = g_string_new (NULL);

  ff_csv_row (out, cells);
  assert_string_equal (out->str, "b1,\"a, b\",\"say \"\"x\"\"\",'=1+1,'+cmd,-2.5,'@x,"
                                 "\"two\nlines\",\r\n");
}

/* One that counts and one that was set aside. */
static void
add_readings (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_job_find (store, "skarrowick", &error);

  for (int i = 0; i < 2; i++)
    {
      g_autoptr (FfReading) reading = ff_reading_new (id);

      reading->method = FF_METHOD_LUX;
      reading->at = 1821281400 + i;
      reading->ev100 = 14.25;
      reading->spread_stops = 0.25;
      reading->lux = 48765.5;
      if (i == 1)
        ff_set_text (&reading->dropped_why, "a cloud passed");
      ff_reading_append (store, reading, &error);
      assert_no_error (error);
    }
}

static void
add_counts (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_job_find (store, "skarrowick", &error);
  g_autofree char *tablet = ff_item_find (store, "tablet", &error);
  g_autoptr (FfPackEvent) event = ff_pack_event_new (id, tablet);

  event->at = 1821212600;
  event->mark = FF_PACK_NOT_TAKEN;
  ff_set_text (&event->condition, "screen cracked");
  ff_pack_event_append (store, event, &error);
  assert_no_error (error);
}

static void
test_counts_and_watches_are_checked (void **state)
{
  refused ("\"pack_events\"", "\"mark\": \"not-taken\"", "\"mark\": \"lost\"", "mark");
  refused ("\"pack_events\"", "\"stage\": \"out\"", "\"stage\": \"base\"", "pack_events[0]");
  refused ("\"pack_events\"", "\"condition\": \"screen cracked\"", "\"condition\": null",
           "reason");
  refused ("\"charge_watches\"", "\"from_clock\": \"17:00\"", "\"from_clock\": \"23:30\"",
           "charge_watches");
}

/* Files of the first release have no readings at all. */
static void
test_a_file_without_readings (void **state)
{
  g_autoptr (GError) error = NULL;
  const char *start = strstr (good, ",\n  \"readings\"");
  g_autofree char *text = g_strdup_printf ("%.*s\n}\n", (int) (start - good), good);
  g_autoptr (FfJobFile) file = ff_job_file_parse (text, &error);

  assert_no_error (error);
  assert_int_equal (file->readings->len, 0);
}

static void
test_readings_are_checked (void **state)
{
  refused ("\"readings\"", "\"lux\": 48765.5", "\"lux\": null", "readings[0]");
  refused ("\"readings\"", "\"spread_stops\": 0.25", "\"spread_stops\": -1", "spread_stops");
  refused ("\"readings\"", "\"why\": \"a cloud passed\"", "\"why\": null",
           "readings[1].dropped.why");
  refused ("\"readings\"", "\"method\": \"lux\"", "\"method\": \"eye\"", "method");
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  if (store == NULL || !ff_demo_fill (store, &error))
    return -1;
  add_readings ();
  add_counts ();
  good = write_job (store, "skarrowick");
  return 0;
}

static int
tear_down (void **state)
{
  g_free (good);
  ff_records_close (store);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_round_trip),
    CASE (test_versions_come_along),
    CASE (test_versions_are_checked),
    CASE (test_a_second_job_shares_place_and_gear),
    CASE (test_the_state_of_new_gear_comes_along),
    CASE (test_syntax_says_line_and_column),
    CASE (test_what_json_allows),
    CASE (test_depth_is_bounded),
    CASE (test_members_say_their_path),
    CASE (test_what_is_named_must_be_there),
    CASE (test_a_file_without_readings),
    CASE (test_readings_are_checked),
    CASE (test_counts_and_watches_are_checked),
    CASE (test_random_damage),
    CASE (test_a_refused_import_leaves_nothing),
    CASE (test_files_are_whole_or_not_there),
    CASE (test_csv),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("job-file", tests, NULL, NULL);
}
