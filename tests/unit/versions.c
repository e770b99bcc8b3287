/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Frozen plans and their amendments: a copy is whole and stays; a change applied to what stood gives
 * what is planned, over random edits; sentences say what differs; numbers on paper are never given
 * twice; who has read what. */
#include "ff-test.h"

#include <stdlib.h>
#include <string.h>

#include "ff-day-reading.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-job.h"
#include "ff-plan-change.h"
#include "ff-plan-copy.h"
#include "ff-shot.h"
#include "ff-standing.h"

#define NOW 1821280000 /* 2027-09-18 15:06 UTC */

static char *folder;
static FfStore *store;

static FfDay *
load_day (void)
{
  g_autoptr (GError) error = NULL;
  FfDay *day = ff_day_load (store, "Skarrowick", &error);

  assert_no_error (error);
  if (day == NULL)
    abort (); /* not reached; the compiler does not know */
  return day;
}

static FfDayPlan *
plan_of (const FfDay *day)
{
  g_autoptr (GError) error = NULL;
  FfDayPlan *plan = ff_day_plan (day, NULL, &error);

  assert_no_error (error);
  if (plan == NULL)
    abort ();
  return plan;
}

static FfStanding *
load_standing (const FfDay *day)
{
  g_autoptr (GError) error = NULL;
  FfStanding *standing = ff_standing_load (store, ff_day_job (day)->id, &error);

  assert_no_error (error);
  if (standing == NULL)
    abort ();
  return standing;
}

static void
freeze (const char *why, const char *letter)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);
  g_autofree char *got = ff_plan_freeze (store, day, plan, "MO", why, NOW, &error);

  assert_no_error (error);
  assert_string_equal (got, letter);
}

static void
move_shot (const char *label, int from, int to)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (GPtrArray) shots = ff_shots_load (store, ff_day_job (day)->id, &error);

  for (guint i = 0; i < shots->len; i++)
    {
      FfShot *shot = g_ptr_array_index (shots, i);

      if (strcmp (shot->label, label) != 0)
        continue;
      shot->window_from = from;
      shot->window_to = to;
      ff_shot_save (store, shot, &error);
    }
  assert_no_error (error);
}

/* Makes the plan of now an amendment; NULL when there is nothing to amend. */
static FfAmendment *
amend (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);
  g_autoptr (FfStanding) standing = load_standing (day);
  FfAmendment *amendment = ff_standing_propose (standing, day, plan, "MO", NOW + 60);

  if (amendment != NULL)
    ff_amendment_append (store, amendment, &error);
  assert_no_error (error);
  return amendment;
}

/* ---- Copies ---- */

static void
test_a_copy_is_whole (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);
  g_autofree char *text = ff_plan_copy_write (plan);
  g_autoptr (FfDayPlan) copy = ff_plan_copy_read (text, &error);
  g_autofree char *again = NULL;

  assert_no_error (error);
  again = ff_plan_copy_write (copy);
  assert_string_equal (again, text);
  assert_true (ff_plan_same (plan, copy));
  assert_close (copy->cost, plan->cost, 0);
  assert_int_equal (copy->swaps, plan->swaps);
}

static void
test_a_damaged_copy_is_refused (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);
  g_autofree char *text = ff_plan_copy_write (plan);
  FfTestRandom dice = { 6 };
  gsize length = strlen (text);

  for (int i = 0; i < 400; i++)
    {
      g_autofree char *broken = g_strdup (text);
      g_autoptr (GError) error = NULL;
      g_autoptr (FfDayPlan) copy = NULL;

      for (int n = ff_test_random_int (&dice, 1, 4); n > 0; n--)
        broken[ff_test_random_int (&dice, 0, (int) length - 1)]
            = (char) ff_test_random_int (&dice, 32, 126);
      if (i % 5 == 0)
        broken[ff_test_random_int (&dice, 0, (int) length - 1)] = '\0';
      /* Read or refused with a reason; never a crash, never neither. */
      copy = ff_plan_copy_read (broken, &error);
      assert_true ((copy == NULL) == (error != NULL));
    }
}

static void
test_a_line_is_known_by_its_first_shot (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      const FfPlanTake *first = g_ptr_array_index (line->takes, 0);

      assert_string_equal (line->id, first->shot_id);
      assert_ptr_equal (ff_plan_find_line (plan, line->id), line);
    }
  assert_null (ff_plan_find_line (plan, "none such"));
}

/* ---- Changes ---- */

static FfDayPlan *
copy_of (const FfDayPlan *plan)
{
  g_autofree char *text = ff_plan_copy_write (plan);

  return ff_plan_copy_read (text, NULL);
}

static FfPlanLine *
any_line (const FfDayPlan *plan, FfTestRandom *dice)
{
  return g_ptr_array_index (plan->lines,
                            ff_test_random_int (dice, 0, (int) plan->lines->len - 1));
}

static void
shift (FfPlanLine *line, FfTestRandom *dice)
{
  gint64 by = 60 * ff_test_random_int (dice, -20, 20);

  line->off_by += by;
  line->down += by;
  line->land_by += by;
  for (guint i = 0; i < line->takes->len; i++)
    {
      FfPlanTake *take = g_ptr_array_index (line->takes, i);

      take->from += by;
      take->to += by;
    }
}

/* A further line of the same sort, under an id of its own. */
static void
add_line (FfDayPlan *plan, FfTestRandom *dice)
{
  FfPlanLine *line = ff_plan_line_dup (any_line (plan, dice));
  FfPlanTake *first = g_ptr_array_index (line->takes, 0);

  g_free (line->id);
  g_free (first->shot_id);
  line->id = ff_records_new_id ();
  first->shot_id = g_strdup (line->id);
  g_ptr_array_insert (plan->lines, ff_test_random_int (dice, 0, (int) plan->lines->len), line);
}

static void
edit (FfDayPlan *plan, FfTestRandom *dice)
{
  FfPlanLine *line = any_line (plan, dice);
  FfPlanTake *take = g_ptr_array_index (line->takes, line->takes->len - 1);

  switch (ff_test_random_int (dice, 0, 6))
    {
    case 0:
      shift (line, dice);
      break;
    case 1:
      take->end.iso += 50;
      break;
    case 2:
      g_free (line->battery);
      line->battery = g_strdup_printf ("b%d", ff_test_random_int (dice, 1, 9));
      break;
    case 3:
      if (plan->lines->len > 1)
        g_ptr_array_remove (plan->lines, line);
      break;
    case 4:
      add_line (plan, dice);
      break;
    case 5:
      if (line->takes->len > 1)
        g_ptr_array_remove_index (line->takes, line->takes->len - 1);
      break;
    default:
      if (plan->charges->len > 0)
        ((FfPlanCharge *) g_ptr_array_index (plan->charges, 0))->ready_at += 300;
      break;
    }
}

/* Through its text, as it is stored: what stood, changed, is what is planned. */
static void
want_applied (const FfDayPlan *before, const FfDayPlan *after, GTimeZone *zone)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfPlanChange) change = ff_plan_change_new (before, after, 100);
  g_autofree char *text = ff_plan_change_write (change);
  g_autoptr (FfPlanChange) read = ff_plan_change_read (text, &error);
  g_autoptr (FfDayPlan) applied = copy_of (before);
  g_autoptr (FfAmendment) amendment = ff_amendment_new (ff_plan_find_line (after,
      ((FfPlanLine *) g_ptr_array_index (after->lines, 0))->id)->id);

  assert_no_error (error);
  ff_plan_change_apply (read, applied, &error);
  assert_no_error (error);
  assert_true (ff_plan_same (applied, after));
  for (guint i = 0; i < applied->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (applied->lines, i);
      const FfPlanLine *was = ff_plan_find_line (before, line->id);

      assert_true (was != NULL ? line->line == was->line : line->line > 100);
    }
  ff_plan_change_say (change, before, zone, amendment);
  assert_non_null (ff_amendment_sentence (amendment, FF_ROLE_LEAD));
  for (guint i = 0; i < change->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (change->lines, i);
      g_autofree char *number = g_strdup_printf ("line %d", line->line);

      /* Whatever changes on a line, somebody is told of that line. */
      assert_non_null (strstr (amendment->text, number));
    }
}

static void
test_changes_of_random_edits (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) first = plan_of (day);
  FfTestRandom dice = { 606 };

  for (int i = 0; i < 600; i++)
    {
      g_autoptr (FfDayPlan) before = copy_of (first);
      g_autoptr (FfDayPlan) after = NULL;

      for (int n = ff_test_random_int (&dice, 0, 3); n > 0; n--)
        edit (before, &dice);
      after = copy_of (before);
      for (int n = ff_test_random_int (&dice, 0, 4); n > 0; n--)
        edit (after, &dice);
      want_applied (before, after, ff_day_zone (day));
    }
}

/* Random edits of the job itself, planned anew, amended one after another. */
static void
test_amendments_add_up (void **state)
{
  static const char *const labels[] = { "A", "C", "D", "E", "F", "G" };
  FfTestRandom dice = { 66 };
  int made = 0;

  freeze (NULL, "A");
  for (int i = 0; i < 12; i++)
    {
      int from = ff_test_random_int (&dice, 990, 1130);
      g_autoptr (FfAmendment) amendment = NULL;
      g_autoptr (FfDay) day = NULL;
      g_autoptr (FfDayPlan) plan = NULL;
      g_autoptr (FfStanding) standing = NULL;

      move_shot (labels[i % G_N_ELEMENTS (labels)], from, from + 25);
      amendment = amend ();
      made += amendment != NULL;
      day = load_day ();
      plan = plan_of (day);
      standing = load_standing (day);
      assert_true (ff_plan_same (standing->plan, plan));
      assert_int_equal (ff_standing_n_amendments (standing), made);
    }
  assert_true (made > 6);
}

static void
test_a_change_of_another_plan_is_refused (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);
  g_autoptr (FfDayPlan) longer = copy_of (plan);
  g_autoptr (FfPlanChange) change = NULL;
  FfTestRandom dice = { 1 };

  add_line (longer, &dice);
  change = ff_plan_change_new (longer, longer, 9);
  assert_false (ff_plan_change_apply (change, plan, &error));
  assert_error (error, FF_ERROR_INPUT, "a line that the plan does not have");
  assert_int_equal (plan->lines->len, longer->lines->len - 1);
}

/* ---- Words ---- */

static const char *
sentence (const FfAmendment *amendment, FfRole role)
{
  const FfSentence *found = ff_amendment_sentence (amendment, role);

  return found != NULL ? found->text : "";
}

static void
test_a_later_line_in_words (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) before = plan_of (day);
  g_autoptr (FfDayPlan) after = copy_of (before);
  FfPlanLine *line = g_ptr_array_index (after->lines, 2);
  FfPlanTake *take = g_ptr_array_index (line->takes, 0);
  g_autoptr (FfPlanChange) change = NULL;
  g_autoptr (FfAmendment) amendment = ff_amendment_new (line->id);
  g_autofree char *words = NULL;

  assert_int_equal (line->off_by, 1821285480); /* 17:38 in Europe/London, the day of the demo */
  line->off_by += 40 * 60;
  take->start.iso = 118;
  take->end.iso = 134;
  change = ff_plan_change_new (before, after, 6);
  ff_plan_change_say (change, before, ff_day_zone (day), amendment);
  words = ff_sentence_words (ff_amendment_sentence (amendment, FF_ROLE_PILOT));
  assert_string_equal (words, "Pilot: line 3, off 18:18 not 17:38.");
  assert_string_equal (sentence (amendment, FF_ROLE_CAMERA),
                       "line 3, keep 5 stops (ND32), D ISO 118 to 134");
  assert_string_equal (sentence (amendment, FF_ROLE_OBSERVER), "line 3, off 18:18 not 17:38");
  assert_string_equal (sentence (amendment, FF_ROLE_LEAD), "line 3, off 18:18 not 17:38");
}

static void
test_settings_alone_are_the_cameras (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) before = plan_of (day);
  g_autoptr (FfDayPlan) after = copy_of (before);
  FfPlanLine *line = g_ptr_array_index (after->lines, 0);
  g_autoptr (FfPlanChange) change = NULL;
  g_autoptr (FfAmendment) amendment = ff_amendment_new (line->id);

  ((FfPlanTake *) g_ptr_array_index (line->takes, 0))->end.iso = 160;
  change = ff_plan_change_new (before, after, 6);
  ff_plan_change_say (change, before, ff_day_zone (day), amendment);
  assert_int_equal (amendment->sentences->len, 2);
  assert_string_equal (sentence (amendment, FF_ROLE_CAMERA),
                       "line 1, keep 5 stops (ND32), A ISO 100 to 160");
  assert_string_equal (sentence (amendment, FF_ROLE_LEAD), "settings of the camera alone");
}

/* ---- Freezing ---- */

static void
test_freezing_gives_a_letter (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfDayPlan) plan = plan_of (day);
  g_autoptr (FfStanding) before = load_standing (day);
  g_autoptr (FfStanding) after = NULL;
  g_autofree char *loose = ff_standing_words (before, day);
  g_autofree char *words = NULL;

  assert_null (before->version);
  assert_string_equal (loose, "Version A, not frozen");
  assert_null (ff_standing_propose (before, day, plan, "MO", NOW));
  freeze (NULL, "A");
  after = load_standing (day);
  words = ff_standing_words (after, day);
  assert_string_equal (words, "Version A, frozen 16:06 Sat 18 Sep");
  assert_true (ff_plan_same (after->frozen, plan));
  assert_string_equal (after->version->by, "MO");
  assert_null (ff_plan_freeze (store, day, plan, "MO", NULL, NOW, &error));
  assert_error (error, FF_ERROR_INPUT, "version A is frozen and stays as it is");
}

static void
test_a_frozen_plan_never_changes (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfStanding) before = NULL;
  g_autoptr (FfStanding) after = NULL;
  g_autoptr (FfAmendment) amendment = NULL;

  freeze (NULL, "A");
  before = load_standing (day);
  move_shot ("D", 1100, 1115);
  amendment = amend ();
  assert_non_null (amendment);
  after = load_standing (day);
  assert_string_equal (after->version->copy, before->version->copy);
  assert_true (ff_plan_same (after->frozen, before->plan));
  assert_false (ff_plan_same (after->plan, before->plan));
}

static void
test_a_new_letter_is_a_decision (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfAmendment) first = NULL, second = NULL;
  g_autoptr (FfStanding) standing = NULL;
  g_autofree char *beside = NULL;

  freeze (NULL, "A");
  move_shot ("D", 1100, 1115);
  first = amend ();
  freeze ("sheets are wet", "B");
  standing = load_standing (day);
  assert_int_equal (ff_standing_n_amendments (standing), 0);
  assert_string_equal (standing->version->why, "sheets are wet");
  g_clear_pointer (&standing, ff_standing_free);
  move_shot ("D", 1060, 1075);
  second = amend ();
  /* Numbers go on over letters: there is only one amendment 1. */
  assert_int_equal (first->number, 1);
  assert_int_equal (second->number, 2);
  standing = load_standing (day);
  beside = ff_standing_beside (standing);
  assert_string_equal (beside, "amendment 2 stands beside this sheet");
  assert_int_equal (standing->versions->len, 2);
}

static void
test_a_number_is_not_given_twice (void **state)
{
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfAmendment) first = NULL, second = NULL, third = NULL;
  g_autoptr (FfStanding) standing = NULL;

  freeze (NULL, "A");
  move_shot ("D", 1100, 1115); /* C begins a line of its own: line 7 */
  first = amend ();
  move_shot ("D", 1060, 1075); /* and is back on line 2 */
  second = amend ();
  move_shot ("C", 1200, 1230);
  third = amend ();
  assert_non_null (strstr (first->text, "new line 7"));
  assert_null (strstr (second->text, "new line 7"));
  standing = load_standing (day);
  for (guint i = 0; third != NULL && i < standing->plan->lines->len; i++)
    for (guint j = 0; j < i; j++)
      assert_int_not_equal (((FfPlanLine *) g_ptr_array_index (standing->plan->lines, i))->line,
                            ((FfPlanLine *) g_ptr_array_index (standing->plan->lines, j))->line);
}

static void
test_who_has_read_it (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = load_day ();
  g_autoptr (FfAmendment) amendment = NULL;
  g_autoptr (FfStanding) standing = NULL;
  const FfAcknowledgement *given;
  guint n_open;

  freeze (NULL, "A");
  move_shot ("D", 1100, 1115);
  amendment = amend ();
  n_open = ff_amendment_n_open (amendment);
  assert_int_equal (n_open, 4);
  given = ff_amendment_add_acknowledgement (amendment, FF_ROLE_PILOT, "JV", NOW + 90, "MO");
  assert_true (ff_acknowledgement_append (store, given, &error));
  assert_false (ff_acknowledgement_append (store, given, &error));
  assert_error (error, FF_ERROR_INPUT, "stand there already");
  standing = load_standing (day);
  assert_int_equal (ff_standing_n_open (standing), 3);
  given = ff_amendment_acknowledged (g_ptr_array_index (standing->amendments, 0), FF_ROLE_PILOT);
  assert_string_equal (given->initials, "JV");
  assert_string_equal (given->by, "MO");
  assert_int_equal (given->at, NOW + 90);
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  ff_demo_fill (store, &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  g_clear_pointer (&store, ff_records_close);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_a_copy_is_whole),
    CASE (test_a_damaged_copy_is_refused),
    CASE (test_a_line_is_known_by_its_first_shot),
    CASE (test_changes_of_random_edits),
    CASE (test_amendments_add_up),
    CASE (test_a_change_of_another_plan_is_refused),
    CASE (test_a_later_line_in_words),
    CASE (test_settings_alone_are_the_cameras),
    CASE (test_freezing_gives_a_letter),
    CASE (test_a_frozen_plan_never_changes),
    CASE (test_a_new_letter_is_a_decision),
    CASE (test_a_number_is_not_given_twice),
    CASE (test_who_has_read_it),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
