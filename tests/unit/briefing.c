/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who was briefed on what stands: never, on it, on a letter before it, before it was frozen, before
 * an amendment that concerns them. */
#include "ff-test.h"

#include <stdlib.h>
#include <string.h>

#include "ff-briefing.h"
#include "ff-crew.h"
#include "ff-day-reading.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-job.h"

#define NOW 1821279960 /* 2027-09-18 15:06 UTC, 16:06 there */

static char *folder;
static FfStore *store;
static FfDay *day;

static FfStanding *
load_standing (void)
{
  g_autoptr (GError) error = NULL;
  FfStanding *standing = ff_standing_load (store, ff_day_job (day)->id, &error);

  assert_no_error (error);
  if (standing == NULL)
    abort (); /* not reached; the compiler does not know */
  return standing;
}

static void
freeze (const char *why, gint64 at)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDayPlan) plan = ff_day_plan (day, NULL, &error);
  g_autofree char *letter = ff_plan_freeze (store, day, plan, "MO", why, at, &error);

  assert_no_error (error);
}

static void
say (const char *name, const char *initials, gint64 at)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStanding) standing = load_standing ();
  g_autoptr (FfBriefed) briefed = ff_briefing_say (standing, day, name, initials, "MO", at);

  ff_briefed_append (store, briefed, &error);
  assert_no_error (error);
}

static void
amend (int number, FfRole role, gint64 at)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfAmendment) amendment = ff_amendment_new (ff_day_job (day)->id);

  amendment->number = number;
  amendment->at = at;
  ff_set_text (&amendment->letter, "A");
  ff_set_text (&amendment->text, "line 4, off 18:18 not 17:38");
  ff_amendment_add_sentence (amendment, role, "line 4, off 18:18 not 17:38");
  ff_amendment_append (store, amendment, &error);
  assert_no_error (error);
}

/* What is said of one, with its shape before it: "■ briefed on version A, 16:06". */
static char *
words_of (const char *initials)
{
  g_autoptr (FfStanding) standing = load_standing ();
  g_autoptr (GPtrArray) briefings = ff_briefings (standing, day);

  for (guint i = 0; i < briefings->len; i++)
    {
      const FfBriefing *one = g_ptr_array_index (briefings, i);

      if (strcmp (one->initials, initials) == 0)
        return g_strdup_printf ("%s %s", ff_briefing_shape (one->state), one->words);
    }
  return g_strdup ("nobody");
}

static void
said (const char *initials, const char *words)
{
  g_autofree char *got = words_of (initials);

  assert_string_equal (got, words);
}

static void
test_nobody_yet (void **state)
{
  g_autoptr (FfStanding) standing = load_standing ();
  g_autoptr (GPtrArray) briefings = ff_briefings (standing, day);
  g_autofree char *sum = ff_briefings_sum (briefings);

  assert_int_equal (briefings->len, 4);
  assert_string_equal (sum, "4 of 4 are not briefed on what stands.");
  said ("PR", "□ not briefed");
}

static void
test_on_what_stands (void **state)
{
  freeze (NULL, NOW);
  say ("Pell Rasmussen", "PR", NOW + 60);
  said ("PR", "■ briefed on version A, 16:07");
  said ("JV", "□ not briefed");
}

static void
test_before_it_was_frozen (void **state)
{
  say ("Pell Rasmussen", "PR", NOW);
  said ("PR", "◧ briefed on version A, which is not frozen: brief again when it is");
  freeze (NULL, NOW + 60);
  said ("PR", "◧ briefed before version A was frozen: brief again");
  say ("Pell Rasmussen", "PR", NOW + 120);
  said ("PR", "■ briefed on version A, 16:08");
}

static void
test_a_letter_since (void **state)
{
  freeze (NULL, NOW);
  say ("Pell Rasmussen", "PR", NOW + 60);
  freeze ("sheets are wet", NOW + 120);
  said ("PR", "◧ briefed on version A; version B since: brief again");
}

/* Whom an amendment does not concern need not hear it; who has read it has heard it. */
static void
test_an_amendment_since (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfAmendment) given = ff_amendment_new (ff_day_job (day)->id);

  freeze (NULL, NOW);
  say ("Pell Rasmussen", "PR", NOW + 60);
  say ("Jonah Velk", "JV", NOW + 60);
  amend (1, FF_ROLE_PILOT, NOW + 90);
  said ("PR", "■ briefed on version A, 16:07");
  said ("JV", "◧ briefed on version A; amendment 1 since: read it out");
  given->number = 1;
  assert_true (ff_acknowledgement_append (
      store, ff_amendment_add_acknowledgement (given, FF_ROLE_PILOT, "JV", NOW + 95, "MO"),
      &error));
  said ("JV", "■ briefed on version A, 16:07");
  amend (2, FF_ROLE_OBSERVER, NOW + 100);
  said ("PR", "◧ briefed on version A; amendment 2 since: read it out");
  say ("Pell Rasmussen", "PR", NOW + 120);
  said ("PR", "■ briefed on version A, 16:08");
}

static void
test_someone_from_outside (void **state)
{
  g_autoptr (FfStanding) standing = NULL;
  g_autoptr (GPtrArray) briefings = NULL;
  const FfBriefing *last;

  freeze (NULL, NOW);
  say ("Skipper of the ferry", "SF", NOW + 60);
  standing = load_standing ();
  briefings = ff_briefings (standing, day);
  assert_int_equal (briefings->len, 5);
  last = g_ptr_array_index (briefings, 4);
  assert_string_equal (last->name, "Skipper of the ferry");
  assert_string_equal (last->role, "");
  assert_int_equal (last->state, FF_BRIEFING_DONE);
  assert_int_equal (ff_briefings_n_open (briefings), 4);
}

static void
test_what_is_refused (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfBriefed) briefed = ff_briefed_new (ff_day_job (day)->id);

  ff_set_text (&briefed->initials, "PR");
  ff_set_text (&briefed->letter, "A");
  briefed->at = NOW;
  assert_false (ff_briefed_append (store, briefed, &error));
  assert_error (error, FF_ERROR_INPUT, "name of who was briefed");
  ff_set_text (&briefed->name, "Pell Rasmussen");
  ff_set_text (&briefed->letter, "a");
  assert_false (ff_briefed_append (store, briefed, &error));
  assert_error (error, FF_ERROR_INPUT, "a letter, A to Z");
  ff_set_text (&briefed->letter, "A");
  assert_true (ff_briefed_append (store, briefed, &error));
  assert_false (ff_briefed_append (store, briefed, &error));
  assert_error (error, FF_ERROR_INPUT, "stand there already");
  /* Such a job has a log. */
  assert_false (ff_job_delete (store, ff_day_job (day)->id, &error));
  assert_error (error, FF_ERROR_INPUT, "has a log");
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  ff_demo_fill (store, &error);
  day = ff_day_load (store, "Skarrowick", &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  g_clear_pointer (&day, ff_day_free);
  g_clear_pointer (&store, ff_records_close);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_nobody_yet),
    CASE (test_on_what_stands),
    CASE (test_before_it_was_frozen),
    CASE (test_a_letter_since),
    CASE (test_an_amendment_since),
    CASE (test_someone_from_outside),
    CASE (test_what_is_refused),
  };

  return cmocka_run_group_tests_name ("briefing", tests, NULL, NULL);
}
