/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the gear page asks, reads, refuses and says, without a display. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-gear-find.h"
#include "ff-gear-list.h"
#include "ff-gear-words.h"

static GPtrArray *items; /* FfItem: what else there is */
static GPtrArray *jobs;  /* FfJob */

static int
set_up (void **state)
{
  items = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_item_free);
  jobs = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_job_free);
  return 0;
}

static int
tear_down (void **state)
{
  g_ptr_array_unref (items);
  g_ptr_array_unref (jobs);
  return 0;
}

static FfItem *
add_item (FfKind kind, const char *label)
{
  FfItem *item = ff_item_new (kind);

  ff_set_text (&item->label, label);
  g_ptr_array_add (items, item);
  return item;
}

static const FfGearField *
field (FfKind kind, const char *name)
{
  FfGearGroup groups[FF_GEAR_MAX_GROUPS];
  guint n = ff_gear_groups (kind, groups);

  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < groups[i].n_fields; j++)
      if (g_str_equal (groups[i].fields[j].name, name))
        return &groups[i].fields[j];
  fail_msg ("kind %d has no field %s", (int) kind, name);
  return NULL;
}

static void
read_well (FfItem *item, const char *name, const char *typed)
{
  g_autoptr (GError) error = NULL;

  ff_gear_read (item, field (item->kind, name), typed, items, &error);
  assert_no_error (error);
}

static void
refuse (FfItem *item, const char *name, const char *typed, const char *part)
{
  g_autofree char *before = ff_gear_text (item, field (item->kind, name));
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;

  assert_false (ff_gear_read (item, field (item->kind, name), typed, items, &error));
  assert_false (g_str_has_suffix (error->message, "."));
  assert_error (error, FF_ERROR_INPUT, part);
  after = ff_gear_text (item, field (item->kind, name));
  assert_string_equal (before, after);
}

static void
want_text (const FfItem *item, const char *name, const char *want)
{
  g_autofree char *got = ff_gear_text (item, field (item->kind, name));

  assert_string_equal (got, want);
}

/* The remark holds `part`; it is a question or not. */
static void
want_remark (const FfItem *item, const char *name, const char *part, gboolean question)
{
  FfGearWorld world = { items, jobs, "2027-09-18" };
  g_autofree char *got = ff_gear_remark (item, field (item->kind, name), &world);

  if (part == NULL)
    {
      assert_null (got);
      return;
    }
  assert_non_null (got);
  if (strstr (got, part) == NULL)
    fail_msg ("“%s” does not say “%s”", got, part);
  assert_int_equal (ff_gear_is_question (got), question);
}

static void
test_every_kind_has_fields_that_its_record_has (void **state)
{
  for (guint kind = 0; kind < ff_names_kind.n_names; kind++)
    {
      FfGearGroup groups[FF_GEAR_MAX_GROUPS];
      guint n = ff_gear_groups ((FfKind) kind, groups);

      assert_in_range (n, 2, FF_GEAR_MAX_GROUPS);
      assert_string_equal (groups[0].fields[0].name, "label");
      for (guint i = 0; i < n; i++)
        for (guint j = 0; j < groups[i].n_fields; j++)
          assert_non_null (ff_gear_record_field ((FfKind) kind, &groups[i].fields[j]));
    }
}

/* Every field of a kind's table is asked for, so that no value is out of reach. */
static void
test_no_field_of_a_kind_is_forgotten (void **state)
{
  for (guint kind = 0; kind < ff_names_kind.n_names; kind++)
    {
      const FfFields *own = ff_item_kind_fields ((FfKind) kind);

      for (guint i = 1; own != NULL && i < own->n_fields; i++)
        if (strcmp (own->fields[i].name, "stops_to") != 0)
          field ((FfKind) kind, own->fields[i].name);
    }
}

static void
test_what_is_shown_is_read_back (void **state)
{
  for (guint kind = 0; kind < ff_names_kind.n_names; kind++)
    {
      g_autoptr (FfItem) item = ff_gear_new ((FfKind) kind, items);
      g_autoptr (GError) error = NULL;
      FfGearGroup groups[FF_GEAR_MAX_GROUPS];
      guint n = ff_gear_groups ((FfKind) kind, groups);

      assert_true (ff_item_check (item, &error));
      for (guint i = 0; i < n; i++)
        for (guint j = 0; j < groups[i].n_fields; j++)
          {
            const FfField *record = ff_gear_record_field ((FfKind) kind, &groups[i].fields[j]);
            g_autofree char *text = ff_gear_text (item, &groups[i].fields[j]);
            g_autofree char *again = NULL;

            if (record->type == FF_FIELD_ID || record->type == FF_FIELD_FLAG
                || groups[i].fields[j].how == FF_GEAR_WANTED)
              continue;
            ff_gear_read (item, &groups[i].fields[j], text, items, &error);
            assert_no_error (error);
            again = ff_gear_text (item, &groups[i].fields[j]);
            assert_string_equal (text, again);
          }
    }
}

static void
test_strength_in_every_way_it_is_named (void **state)
{
  FfItem *item = add_item (FF_KIND_FILTER, "F1");

  read_well (item, "stops", "ND32");
  assert_close (item->stops, 5, 1e-12);
  want_text (item, "stops", "5 stops");
  want_remark (item, "stops", "5 stops · factor 32 · density 1.51", FALSE);
  read_well (item, "stops", "1.5");
  assert_close (item->stops, 1.5 / log10 (2), 1e-12);
  read_well (item, "stops", " 1 stop ");
  want_text (item, "stops", "1 stop");
  read_well (item, "stops", "2-5 stops variable");
  assert_close (item->stops_to, 5, 0);
  want_text (item, "stops", "2-5 stops variable");
  want_remark (item, "stops", "from 2 stops", FALSE);
  read_well (item, "stops", "clear");
  assert_close (item->stops_to, 0, 0);
  want_remark (item, "stops", "clear glass", FALSE);
  refuse (item, "stops", "5", "a number alone may be a factor or stops");
  refuse (item, "stops", "dark", "not a filter label");
}

static void
test_an_engraving_that_says_something_else (void **state)
{
  FfItem *item = add_item (FF_KIND_FILTER, "F1");

  read_well (item, "stops", "5 stops");
  read_well (item, "engraving", "ND32");
  want_remark (item, "engraving", NULL, FALSE);
  read_well (item, "engraving", "ND16");
  want_remark (item, "engraving", "Engraved are 4 stops, typed are 5 stops", TRUE);
  read_well (item, "engraving", "made in Wick");
  want_remark (item, "engraving", NULL, FALSE);
  read_well (item, "measured_stops", "5.1");
  want_remark (item, "measured_stops", "+0.1", FALSE);
  read_well (item, "measured_stops", "4");
  want_remark (item, "measured_stops", "1 away", TRUE);
}

static void
test_labels (void **state)
{
  FfItem *item = add_item (FF_KIND_BATTERY, "b1");

  add_item (FF_KIND_BATTERY, "b2");
  read_well (item, "label", " b3 ");
  want_text (item, "label", "b3");
  read_well (item, "label", "äöüßéñ");
  refuse (item, "label", "", "is needed");
  refuse (item, "label", "1234567", "1 to 6 characters");
  refuse (item, "label", "B2", "“b2” is already written on another item (battery)");
}

static void
want_warning (const char *label, const char *part)
{
  g_autofree char *got = ff_gear_label_warning (label, "none", items);

  if (part == NULL && got != NULL)
    fail_msg ("“%s” is warned of: %s", label, got);
  if (part != NULL && (got == NULL || strstr (got, part) == NULL))
    fail_msg ("“%s”: “%s” does not say “%s”", label, got, part);
}

static void
test_look_alikes (void **state)
{
  add_item (FF_KIND_CARD, "C10");
  want_warning ("b1", NULL);
  want_warning ("C1", NULL);
  want_warning ("spool", NULL);
  want_warning ("Ionel", NULL);
  want_warning ("radio", NULL);
  want_warning ("O2", "The letter O looks like the digit 0");
  want_warning ("a1l", "The letter l looks like the digit 1");
  want_warning ("B1", "The letter B looks like the digit 8");
  want_warning ("S2", "The letter S looks like the digit 5");
  want_warning ("bS", NULL);
  want_warning ("Il", "The letter I looks like the digit 1");
  want_warning ("c1O", "Looks like “C10”");
  want_warning ("ClO", "Looks like “C10”");
  want_warning ("extinguisher", "long for a label");
}

static void
test_the_energy_beside_the_printed_one (void **state)
{
  FfItem *item = add_item (FF_KIND_BATTERY, "b1");

  want_remark (item, "printed_wh", NULL, FALSE);
  read_well (item, "volts", "14.8");
  read_well (item, "milliamp_hours", "4700");
  want_remark (item, "printed_wh", "14.8 V × 4.7 Ah = 69.6 Wh", FALSE);
  read_well (item, "printed_wh", "69.6");
  want_remark (item, "printed_wh", "14.8 V × 4.7 Ah = 69.6 Wh", FALSE);
  /* 2 % of 69.56 Wh is 1.39 Wh. */
  read_well (item, "printed_wh", "70.9");
  want_remark (item, "printed_wh", "69.6 Wh", FALSE);
  read_well (item, "printed_wh", "71");
  want_remark (item, "printed_wh", "2 % away", TRUE);
  read_well (item, "cells", "4");
  want_remark (item, "cells", "3.7 V a cell", FALSE);
}

static void
test_usable_minutes_are_asked_for (void **state)
{
  FfItem *item = add_item (FF_KIND_BATTERY, "b1");

  want_text (item, "usable_minutes", "");
  want_remark (item, "usable_minutes", "hover time is not usable minutes", TRUE);
  read_well (item, "usable_minutes", "18");
  want_remark (item, "usable_minutes", "hover time is not usable minutes", FALSE);
  refuse (item, "usable_minutes", "", "A number is needed");
  refuse (item, "usable_minutes", "18.5", "not a whole number");
  refuse (item, "usable_minutes", "500", "1 to 240");
}

static void
test_steps_are_thirds (void **state)
{
  FfItem *item = ff_gear_new (FF_KIND_CAMERA, items);

  g_ptr_array_add (items, item);
  read_well (item, "apertures", "f/2.8");
  want_text (item, "apertures", "2.8");
  read_well (item, "apertures", "1.7");
  want_remark (item, "apertures", "no third of a stop", FALSE);
  read_well (item, "apertures", "4, 2.8 f/3.5,3.2");
  want_text (item, "apertures", "2.8,3.2,3.5,4");
  refuse (item, "apertures", "2.8, 2.9", "beside it stand 2.8 and 3.2");
  refuse (item, "apertures", " ", "is needed");
  refuse (item, "iso_high", "150", "beside it stand 125 and 160");
  refuse (item, "iso_high", "1e9", "ISO");
  read_well (item, "iso_high", "6400");
  read_well (item, "base_iso", "100, 800");
  want_text (item, "base_iso", "100,800");
  want_remark (item, "base_iso", NULL, FALSE);
  read_well (item, "base_iso", "12800");
  want_remark (item, "base_iso", "12800 is not between", TRUE);
  refuse (item, "shutter_fast", "1/7000", "beside it stand 1/8000 and 1/6400");
  refuse (item, "shutter_fast", "fast", "not a shutter time");
  read_well (item, "shutter_fast", "1/8000");
  read_well (item, "shutter_slow", "8 s");
  want_text (item, "shutter_slow", "8");
}

static void
test_cards_by_the_camera (void **state)
{
  FfItem *camera = ff_gear_new (FF_KIND_CAMERA, items);
  FfItem *card = add_item (FF_KIND_CARD, "C1");

  g_ptr_array_add (items, camera);
  want_remark (card, "capacity_gb", "Not typed yet", TRUE);
  read_well (card, "capacity_gb", "128");
  want_remark (card, "capacity_gb", NULL, FALSE);
  read_well (camera, "bitrate_mbits", "100");
  want_remark (camera, "bitrate_mbits", "45 GB an hour", FALSE);
  /* 128 GB are 1 024 000 Mbit: 170.7 minutes at 100 Mbit/s. */
  want_remark (card, "capacity_gb", "170 minutes at 100 Mbit/s", FALSE);
  read_well (card, "speed_class", "V30");
  want_remark (card, "speed_class", "promises 30 MB/s", FALSE);
  read_well (camera, "bitrate_mbits", "400");
  want_remark (card, "speed_class", "too slow?", TRUE);
}

static void
test_what_runs_out (void **state)
{
  FfItem *propellers = add_item (FF_KIND_PROPELLERS, "P1");
  FfItem *paper = add_item (FF_KIND_DOCUMENT, "D1");
  FfJob *job = ff_job_new ();

  g_ptr_array_add (jobs, job);
  ff_set_text (&job->title, "Skarrowick");
  ff_set_text (&job->date, "2027-10-02");
  read_well (propellers, "used", "26.2");
  want_remark (propellers, "due_at", NULL, FALSE);
  read_well (propellers, "due_at", "30");
  want_remark (propellers, "due_at", "3.8 left", FALSE);
  read_well (propellers, "used", "31");
  want_remark (propellers, "due_at", "Due, and 1 over", TRUE);
  read_well (paper, "valid_until", "2027-09-30");
  want_remark (paper, "valid_until", "30 September 2027", FALSE);
  g_ptr_array_add (job->item_ids, g_strdup (paper->id));
  want_remark (paper, "valid_until", "Runs out before “Skarrowick”", TRUE);
  read_well (paper, "valid_until", "2027-09-17");
  want_remark (paper, "valid_until", "past", TRUE);
  refuse (paper, "valid_until", "30 September", "");
  refuse (paper, "valid_until", "2027-02-29", "");
}

static void
test_states_by_word_and_shape (void **state)
{
  FfItem *item = add_item (FF_KIND_FILTER, "F1");
  g_autofree char *open = ff_gear_state_words (FF_STATE_DEFECT);
  g_autofree char *good = ff_gear_state_words (FF_STATE_SERVICEABLE);
  g_autofree char *whole = NULL;
  g_autofree char *brief = NULL;

  assert_string_equal (open, "✕\u00a0defect open");
  assert_string_equal (good, "■\u00a0serviceable");
  item->state = FF_STATE_OUT;
  ff_set_text (&item->out_with, "Brackenholt");
  ff_set_text (&item->out_until, "2027-09-19");
  ff_set_text (&item->state_why, "lent");
  whole = ff_gear_state_reason (item, FALSE);
  brief = ff_gear_state_reason (item, TRUE);
  assert_string_equal (whole, "with Brackenholt, back Sun 19 Sep: lent");
  assert_string_equal (brief, "with Brackenholt, back Sun 19 Sep");
}

static void
test_who_uses_it_and_what_goes_with_it (void **state)
{
  FfItem *aircraft = add_item (FF_KIND_AIRCRAFT, "A1");
  FfItem *charger = add_item (FF_KIND_CHARGER, "ch1");
  FfGearWorld world = { items, jobs, "2027-09-18" };
  FfJob *job = ff_job_new ();
  g_autofree char *used_by = NULL;
  g_autofree char *followers = NULL;
  g_autofree char *question = NULL;

  g_ptr_array_add (jobs, job);
  ff_set_text (&job->title, "Skarrowick tidal mill");
  assert_null (ff_gear_used_by (aircraft, jobs));
  ff_set_text (&job->aircraft_id, aircraft->id);
  ff_item_add_with (aircraft, charger->id);
  used_by = ff_gear_used_by (aircraft, jobs);
  followers = ff_gear_followers (aircraft, items);
  question = ff_gear_question (aircraft, &world);
  assert_string_equal (used_by, "Skarrowick tidal mill");
  assert_string_equal (followers, "ch1");
  assert_non_null (strstr (question, "No camera"));
  job->state = FF_JOB_PUT_AWAY;
  assert_null (ff_gear_used_by (aircraft, jobs));
}

static void
want_found (const char *words, guint n, const FfItem *first)
{
  g_autoptr (FfGearFound) found = ff_gear_find (NULL, items, words);

  assert_int_equal (found->items->len, n);
  if (n > 0)
    assert_ptr_equal (g_ptr_array_index (found->items, 0), first);
}

static void
test_counts_and_search (void **state)
{
  FfItem *first = add_item (FF_KIND_BATTERY, "b1");
  FfItem *second = add_item (FF_KIND_BATTERY, "b2");
  g_autoptr (FfGearFound) everything = NULL;
  g_autofree char *counts = NULL;

  add_item (FF_KIND_CARD, "C1");
  ff_set_text (&second->case_label, "2");
  second->state = FF_STATE_QUARANTINED;
  everything = ff_gear_find (NULL, items, "");
  counts = ff_gear_found_counts (everything, FF_KIND_BATTERY);
  assert_string_equal (counts, "2 · 1 ‖\u00a0quarantined");
  want_found ("BATTER", 2, first);
  want_found ("quarantined", 1, second);
  want_found ("batteries  quarant", 1, second);
  want_found ("case", 1, second);
  want_found ("cards quarantined", 0, NULL);
}

static void
test_another_one_of_the_same (void **state)
{
  FfItem *item = add_item (FF_KIND_BATTERY, "b1");
  FfItem *filter = add_item (FF_KIND_FILTER, "ND32");

  add_item (FF_KIND_BATTERY, "b2");
  ff_set_text (&item->title, "battery 1");
  ff_set_text (&item->note, "watch it");
  item->used = 88;
  item->usable_minutes = 18;
  ff_gear_make_another (item, items);
  assert_string_equal (item->label, "b3");
  assert_string_equal (item->title, "battery 3");
  assert_string_equal (item->note, "");
  assert_true (isnan (item->used));
  assert_int_equal (item->usable_minutes, 18);
  /* Of a filter the number says the strength. */
  filter->measured_stops = 5.1;
  ff_gear_make_another (filter, items);
  assert_string_equal (filter->label, "ND32b");
  assert_true (isnan (filter->measured_stops));
}

static void
test_new_items_are_labelled_as_the_crew_does (void **state)
{
  g_autoptr (FfItem) first = ff_gear_new (FF_KIND_CARD, items);
  g_autoptr (FfItem) next = NULL;

  assert_string_equal (first->label, "C1");
  add_item (FF_KIND_CARD, "S12");
  next = ff_gear_new (FF_KIND_CARD, items);
  assert_string_equal (next->label, "S1");
}

static void
test_figures (void **state)
{
  FfItem *item = add_item (FF_KIND_AIRCRAFT, "A1");
  FfGearFigure figures[FF_GEAR_MAX_FIGURES];

  item->temperature_low_c = -10;
  item->temperature_high_c = 40;
  item->wind_limit_ms = 10;
  assert_int_equal (ff_gear_figures (item, figures), 3);
  assert_string_equal (figures[0].value, "10");
  assert_string_equal (figures[1].value, "–");
  assert_string_equal (figures[2].value, "−10 to 40");
  ff_gear_figures_clear (figures);
  assert_null (figures[0].value);
}

#define RULE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    RULE (test_every_kind_has_fields_that_its_record_has),
    RULE (test_no_field_of_a_kind_is_forgotten),
    RULE (test_what_is_shown_is_read_back),
    RULE (test_strength_in_every_way_it_is_named),
    RULE (test_an_engraving_that_says_something_else),
    RULE (test_labels),
    RULE (test_look_alikes),
    RULE (test_the_energy_beside_the_printed_one),
    RULE (test_usable_minutes_are_asked_for),
    RULE (test_steps_are_thirds),
    RULE (test_cards_by_the_camera),
    RULE (test_what_runs_out),
    RULE (test_states_by_word_and_shape),
    RULE (test_who_uses_it_and_what_goes_with_it),
    RULE (test_counts_and_search),
    RULE (test_another_one_of_the_same),
    RULE (test_new_items_are_labelled_as_the_crew_does),
    RULE (test_figures),
  };

  return cmocka_run_group_tests_name ("gear rules", tests, NULL, NULL);
}
