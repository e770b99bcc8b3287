/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs of lists in the store: what was answered is on the disk, once, whatever happens to the
 * program; a run opens where it stood. */
#include "ff-test.h"

#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ff-day-checks.h"
#include "ff-demo.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-starter-lists.h"
#include "ff-store.h"

#define KILLS 200
#define START 1820000000

static char *folder;
static FfStore *store;
static char *job_id;

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (store, &error));
  assert_no_error (error);
  job_id = ff_job_find (store, "Skarrowick", &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  g_clear_pointer (&job_id, g_free);
  g_clear_pointer (&store, ff_records_close);
  ff_test_folder_remove (g_steal_pointer (&folder));
  return 0;
}

static FfDayRun *
start (const char *wanted)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) book = ff_list_book_load (store, &error);
  const FfListEntry *entry = ff_list_book_find (book, wanted, &error);
  FfDayRun *run;

  assert_no_error (error);
  run = ff_day_run_start (store, job_id, entry, 0, 2, "JV", "IC", START, &error);
  assert_no_error (error);
  return run;
}

static gboolean
act (FfDayRun *run, FfAct what, const char *said, const char *why, const char *subject)
{
  int current = ff_list_run_current (ff_day_run_run (run));
  FfRunEvent event = { .act = what, .item = current, .at = START + 10, .by = "JV", .said = said,
                       .why = why, .subject = subject, .after_ms = 2000 };

  return ff_day_run_act (run, &event, START + 10, NULL);
}

static void
test_a_run_opens_where_it_stood (void **state)
{
  g_autoptr (FfDayRun) run = start ("06-turn-round"), again = NULL;
  g_autoptr (GError) error = NULL;

  assert_true (act (run, FF_ACT_DONE, NULL, NULL, NULL));
  assert_true (act (run, FF_ACT_DONE, NULL, NULL, NULL));
  assert_false (act (run, FF_ACT_DONE, NULL, NULL, NULL));
  assert_true (act (run, FF_ACT_SAY, "5", NULL, NULL));
  again = ff_day_run_open (store, ff_day_run_kept (run)->id, &error);
  assert_no_error (error);
  assert_int_equal (ff_day_run_n_events (again), 4);
  assert_int_equal (ff_list_run_current (ff_day_run_run (again)),
                    ff_list_run_current (ff_day_run_run (run)));
  assert_true (ff_day_run_wake (again, "power cut", START + 500, &error));
  assert_int_equal (ff_list_run_state (ff_day_run_run (again)), FF_RUN_HELD);
  assert_int_equal (ff_list_run_held_since (ff_day_run_run (again)), START + 10);
  assert_true (ff_list_run_will_restart (ff_day_run_run (again), START + 500, "JV", 0));
  assert_false (ff_list_run_will_restart (ff_day_run_run (again), START + 100, "JV", 0));
}

static void
test_a_failure_opens_a_defect (void **state)
{
  g_autoptr (FfDayRun) run = start ("06-turn-round");
  g_autoptr (GError) error = NULL;
  g_autofree char *id = ff_item_find (store, "P1", &error);
  g_autoptr (FfItem) item = NULL;

  assert_no_error (error);
  assert_true (act (run, FF_ACT_DONE, NULL, NULL, NULL));
  assert_false (act (run, FF_ACT_FAIL, NULL, "", id));
  assert_true (act (run, FF_ACT_FAIL, NULL, "nick in blade 2", id));
  item = ff_item_load (store, id, &error);
  assert_int_equal (item->state, FF_STATE_DEFECT);
  assert_string_equal (item->state_why, "nick in blade 2");
  assert_int_equal (ff_list_run_state (ff_day_run_run (run)), FF_RUN_GOING);
}

/* A defect that can't be kept takes its event with it: both or neither. */
static void
test_a_failure_of_nothing_is_refused_whole (void **state)
{
  g_autoptr (FfDayRun) run = start ("06-turn-round");

  assert_false (act (run, FF_ACT_FAIL, NULL, "why", "00000000-0000-4000-8000-000000000000"));
  assert_int_equal (ff_day_run_n_events (run), 1);
  assert_true (act (run, FF_ACT_DONE, NULL, NULL, NULL));
}

static void
test_what_happened_is_only_added_to (void **state)
{
  static const char *const changes[] = {
    "UPDATE run SET line = 3",         "DELETE FROM run",
    "UPDATE run_event SET said = 'x'", "DELETE FROM run_event",
  };
  g_autoptr (FfDayRun) run = start ("06-turn-round");

  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_false (ff_store_exec (store, changes[i], &error));
      assert_non_null (strstr (error->message, "only added to"));
    }
}

static void
test_lists_of_ones_own (void **state)
{
  g_autoptr (GError) error = NULL;
  const char *text = "# Turn-round: fit to lift again?\n\n## A\n\n- [ ] Motors: out  \n";
  g_autofree char *id = ff_list_book_save (store, NULL, text, "MO", START, &error);
  g_autoptr (GPtrArray) book = NULL;
  const FfListEntry *entry;

  assert_no_error (error);
  book = ff_list_book_load (store, &error);
  assert_int_equal (book->len, ff_n_starter_lists);
  entry = ff_list_book_find (book, "turn-round", &error);
  assert_string_equal (entry->id, id);
  assert_string_equal (entry->text, text);
  assert_true (entry->own);
  assert_null (ff_list_book_save (store, id, "# T\n", "MO", START, &error));
  assert_error (error, FF_ERROR_INPUT, "line 1");
  assert_null (ff_list_book_find (book, "van unpack", &error));
  assert_error (error, FF_ERROR_INPUT, "Van pack");
}

static const FfDayCheck *
check_of (const FfDayChecks *checks, const char *name, int line)
{
  for (guint i = 0; i < checks->checks->len; i++)
    {
      const FfDayCheck *check = g_ptr_array_index (checks->checks, i);

      if (g_str_equal (check->entry->name, name) && check->line == line)
        return check;
    }
  return NULL;
}

static void
test_what_the_day_calls_for (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfDay) day = ff_day_load (store, job_id, &error);
  g_autoptr (FfDayPlan) plan = ff_day_plan (day, NULL, &error);
  g_autoptr (FfDayRun) run = start ("06-turn-round");
  g_autoptr (FfDayChecks) checks = NULL;
  g_autoptr (GPtrArray) said = NULL;
  FfListFacts *facts = ff_list_facts_new (day, plan, 2);
  const FfDayCheck *turn;

  ff_day_run_take_facts (run, facts);
  assert_true (ff_said_agrees (ff_list_fact (facts, FF_FACT_FILTER), "5"));
  assert_false (ff_said_agrees (ff_list_fact (facts, FF_FACT_FILTER), "4"));
  assert_true (act (run, FF_ACT_DONE, NULL, NULL, NULL));
  assert_true (act (run, FF_ACT_DONE, NULL, NULL, NULL));
  assert_true (act (run, FF_ACT_SAY, "4", NULL, NULL));
  assert_int_equal (ff_list_run_item (ff_day_run_run (run), 2)->challenge, FF_CHALLENGE_DIFFERS);
  checks = ff_day_checks (store, day, plan, START, &error);
  assert_no_error (error);
  assert_true (checks->conditions & 1u << FF_WHEN_NIGHT);
  assert_true (checks->conditions & 1u << FF_WHEN_WATER);
  assert_true (checks->conditions & 1u << FF_WHEN_OPERATORS);
  assert_false (checks->conditions & 1u << FF_WHEN_COLD);
  assert_null (check_of (checks, "10-cold", 0));
  assert_non_null (check_of (checks, "12-water", 0));
  assert_null (check_of (checks, "06-turn-round", 1));
  turn = check_of (checks, "06-turn-round", 2);
  assert_int_equal (turn->state, FF_RUN_GOING);
  assert_int_equal (turn->n_done, 2);
  assert_string_equal (turn->at, "Filter");
  assert_true (checks->open->len > 0 && checks->next == 0);
  said = ff_day_said (store, job_id, &error);
  assert_int_equal (said->len, 1);
  assert_string_equal (((FfSaidFact *) g_ptr_array_index (said, 0))->said, "4");
}

/* ---- Killed ---- */

typedef struct {
  int n_events, current;
} Answered;

/* Runs a list over and over: each answer is told only once the key would have been answered. */
static void
run_for_ever (int tell, const char *run_id)
{
  FfStore *own = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  FfDayRun *run = own != NULL ? ff_day_run_open (own, run_id, NULL) : NULL;
  gint64 at = START;

  while (run != NULL)
    {
      const FfListRun *machine = ff_day_run_run (run);
      int current = ff_list_run_current (machine);
      gboolean asks = current >= 0 && ff_list_run_item (machine, current)->item != NULL
                      && ff_check_item_asks (ff_list_run_item (machine, current)->item);
      FfRunEvent event = { .act = asks ? FF_ACT_SAY : FF_ACT_DONE, .item = current, .at = ++at,
                           .by = "JV", .said = "16.5", .after_ms = 1500 };
      Answered answered;

      /* Round and round in one section, so that one run has many events. */
      if (ff_list_run_state (machine) == FF_RUN_HELD)
        event.act = FF_ACT_RESUME;
      else if (current >= 3)
        event.act = FF_ACT_HOLD;
      if (!ff_day_run_act (run, &event, at, NULL))
        break;
      answered = (Answered) { ff_day_run_n_events (run), ff_list_run_current (ff_day_run_run (run)) };
      if (write (tell, &answered, sizeof answered) != sizeof answered)
        break;
    }
  _exit (1);
}

static Answered
run_and_kill (const char *run_id, FfTestRandom *dice)
{
  Answered answered = { 0, 0 }, next;
  int tell[2], status;
  pid_t child;

  assert_int_equal (pipe (tell), 0);
  child = fork ();
  assert_true (child >= 0);
  if (child == 0)
    run_for_ever (tell[1], run_id);
  close (tell[1]);
  assert_int_equal (read (tell[0], &answered, sizeof answered), (int) sizeof answered);
  g_usleep ((gulong) ff_test_random_int (dice, 0, 8000));
  assert_int_equal (kill (child, SIGKILL), 0);
  assert_int_equal (waitpid (child, &status, 0), child);
  assert_true (WIFSIGNALED (status));
  while (read (tell[0], &next, sizeof next) == sizeof next)
    answered = next;
  close (tell[0]);
  return answered;
}

static void
test_killed_at_200_moments (void **state)
{
  g_autofree char *run_id = NULL;
  FfTestRandom dice = { 20260112 };
  gint64 longest = 0;

  {
    g_autoptr (FfDayRun) run = start ("06-turn-round");

    run_id = g_strdup (ff_day_run_kept (run)->id);
  }
  g_clear_pointer (&store, ff_records_close);
  for (int round = 0; round < KILLS; round++)
    {
      Answered answered = run_and_kill (run_id, &dice);
      g_autoptr (GError) error = NULL;
      g_autoptr (FfStore) own = NULL;
      g_autoptr (FfDayRun) run = NULL;
      gint64 before = g_get_monotonic_time ();

      own = ff_records_open (folder, FF_RECORDS_WRITE, &error);
      assert_no_error (error);
      run = ff_day_run_open (own, run_id, &error);
      assert_no_error (error);
      longest = MAX (longest, g_get_monotonic_time () - before);
      /* The one that was not answered yet may be there; no other one, and none is missing. */
      assert_in_range (ff_day_run_n_events (run), answered.n_events, answered.n_events + 1);
      if (ff_day_run_n_events (run) == answered.n_events)
        assert_int_equal (ff_list_run_current (ff_day_run_run (run)), answered.current);
    }
  /* Within three seconds, on any machine. */
  assert_true (longest < 3 * G_USEC_PER_SEC);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_a_run_opens_where_it_stood, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_a_failure_opens_a_defect, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_a_failure_of_nothing_is_refused_whole, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_what_happened_is_only_added_to, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_lists_of_ones_own, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_what_the_day_calls_for, set_up, tear_down),
    cmocka_unit_test_setup_teardown (test_killed_at_200_moments, set_up, tear_down),
  };

  return cmocka_run_group_tests_name ("runs of lists", tests, NULL, NULL);
}
