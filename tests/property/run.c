/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The run of a list under 100 000 random sequences of events: its rules as invariants. */
#include "ff-random-list.h"

#include <string.h>

#include "ff-run.h"

#define SEQUENCES 100000
#define MOST_EVENTS 50

static const char *const said[] = { "5", "16.5", "-3", "x", "99", "", "b3" };
static const char *const people[] = { "JV", "IC", "MO", "", NULL };
static const char *const reasons[] = { "broken", "", NULL, "gusty" };

static const char *
pick (FfTestRandom *random, const char *const *from, int n)
{
  return from[ff_test_random_int (random, 0, n - 1)];
}

static FfRunEvent
any_event (FfTestRandom *random, const FfListRun *run, gint64 at)
{
  gboolean near = ff_test_random_int (random, 0, 9) > 0;

  return (FfRunEvent) {
    .act = (FfAct) ff_test_random_int (random, 0, FF_N_ACTS - 1),
    .item = near ? ff_list_run_current (run) : ff_test_random_int (random, -1, 30),
    .at = at,
    .by = pick (random, people, 5),
    .other = pick (random, people, 5),
    .said = pick (random, said, 7),
    .expected = ff_test_random_int (random, 0, 1) ? "5 stops" : NULL,
    .why = pick (random, reasons, 4),
    .subject = ff_test_random_int (random, 0, 1) ? "b3" : NULL,
    .changed = (guint) ff_test_random_int (random, 0, 7),
    .after_ms = ff_test_random_int (random, -1, 3000),
  };
}

/* What a good crew would do next: with random events alone few runs would get anywhere. */
static FfRunEvent
good_event (FfTestRandom *random, const FfListRun *run, gint64 at)
{
  FfRunEvent event = any_event (random, run, at);
  int current = ff_list_run_current (run);
  const FfRunItem *item = current >= 0 ? ff_list_run_item (run, current) : NULL;

  event.item = current;
  event.by = "JV";
  event.other = "IC";
  event.why = "seen";
  event.act = FF_ACT_DONE;
  if (ff_list_run_state (run) == FF_RUN_NOT_STARTED)
    event.act = FF_ACT_START;
  else if (ff_list_run_state (run) == FF_RUN_HELD)
    event.act = FF_ACT_RESUME;
  else if (item != NULL && item->mark == FF_MARK_FAILED)
    event.act = FF_ACT_REOPEN;
  else if (item != NULL && item->waits_for_second)
    event = (FfRunEvent) { .act = FF_ACT_SECOND, .item = current, .at = at, .by = "IC" };
  else if (item != NULL && item->challenge != FF_CHALLENGE_NONE)
    event.act = item->item->critical && item->challenge == FF_CHALLENGE_OUTSIDE ? FF_ACT_SAY
                                                                                : FF_ACT_ACCEPT;
  else if (item != NULL && item->item != NULL && ff_check_item_asks (item->item))
    event.act = FF_ACT_SAY;
  return event;
}

static FfRunEvent
some_event (FfTestRandom *random, const FfListRun *run, gint64 at)
{
  return ff_test_random_int (random, 0, 3) > 0 ? good_event (random, run, at)
                                               : any_event (random, run, at);
}

typedef struct {
  FfMark mark;
  guint order;
  gboolean waits;
} Was;

static Was
was (const FfListRun *run, int i)
{
  const FfRunItem *item = ff_list_run_item (run, i);

  return (Was) { item->mark, item->order, item->waits_for_second };
}

/* Nothing becomes done or left out except the one item that the event is about, by an event that
 * may do so. */
static void
check_only_its_own (const FfListRun *run, const Was *before, const FfRunEvent *event)
{
  for (int i = 0; i < ff_list_run_n_items (run); i++)
    {
      const FfRunItem *item = ff_list_run_item (run, i);

      if (item->mark == before[i].mark && item->order == before[i].order)
        continue;
      if (item->mark == FF_MARK_DONE)
        assert_true (i == event->item
                     && (event->act == FF_ACT_DONE || event->act == FF_ACT_SAY
                         || event->act == FF_ACT_SECOND || event->act == FF_ACT_ACCEPT));
      if (item->mark == FF_MARK_NOT_APPLICABLE)
        assert_true (i == event->item && event->act == FF_ACT_NOT_APPLICABLE
                     && item->why[0] != '\0' && item->by[0] != '\0');
      if (before[i].mark == FF_MARK_FAILED)
        assert_true (i == event->item && event->act == FF_ACT_REOPEN);
      if (item->mark == FF_MARK_FAILED)
        assert_true (item->why[0] != '\0');
    }
}

/* A completed section has nothing unresolved in it; a critical item that is done was answered as it
 * should be; a second look was another person's. */
static void
check_whole (const FfListRun *run)
{
  for (int i = 0; i < ff_list_run_n_items (run); i++)
    {
      const FfRunItem *item = ff_list_run_item (run, i);

      if (item->mark != FF_MARK_DONE)
        continue;
      if (item->item == NULL)
        for (int k = 0; k < i; k++)
          if (ff_list_run_item (run, k)->section_number == item->section_number)
            assert_false (ff_mark_is_unresolved (ff_list_run_item (run, k)->mark));
      if (item->item == NULL)
        continue;
      assert_false (ff_check_item_asks (item->item) && item->said[0] == '\0');
      if (item->item->critical && item->item->value.sort == FF_VALUE_NUMBER)
        assert_true (ff_said_within (&item->item->value, item->said));
      if (item->challenge != FF_CHALLENGE_NONE)
        assert_true (item->why[0] != '\0');
      if (item->item->second || (item->item->critical && item->challenge != FF_CHALLENGE_NONE))
        assert_true (item->second_by[0] != '\0'
                     && g_ascii_strcasecmp (item->second_by, item->by) != 0);
    }
}

static void
check_resume (const FfListRun *run, const Was *before, int last, int n_completions)
{
  if (n_completions > 0)
    {
      assert_true (last >= 0);
      assert_true (ff_mark_is_unresolved (ff_list_run_item (run, last)->mark));
      assert_true (ff_list_run_current (run) <= last);
      assert_int_not_equal (before[last].order, 0);
    }
}

static void
walk (FfTestRandom *random, const FfChecklist *list, guint *complete, guint *accepted)
{
  const FfRunRules rules = { 300, (guint) ff_test_random_int (random, 0, 7) };
  g_autoptr (FfListRun) run
      = ff_list_run_new (list, (guint) ff_test_random_int (random, 0, (1 << FF_N_WHEN) - 1), &rules);
  g_autofree Was *before = g_new0 (Was, (gsize) ff_list_run_n_items (run) + 1);
  gint64 at = 1000000;

  for (int n = 0; n < MOST_EVENTS; n++)
    {
      FfRunEvent event = some_event (random, run, at += ff_test_random_int (random, 0, 200));
      int last = ff_list_run_last_completed (run), completions = last >= 0;
      FfRunState state = ff_list_run_state (run);

      for (int i = 0; i < ff_list_run_n_items (run); i++)
        before[i] = was (run, i);
      if (!ff_list_run_step (run, &event, NULL))
        {
          assert_int_equal (ff_list_run_state (run), state);
          continue;
        }
      ++*accepted;
      assert_true (state != FF_RUN_COMPLETE && state != FF_RUN_ABANDONED);
      assert_true (state != FF_RUN_HELD || event.act == FF_ACT_RESUME
                   || event.act == FF_ACT_ABANDON || event.act == FF_ACT_HOLD);
      check_only_its_own (run, before, &event);
      check_whole (run);
      if (event.act == FF_ACT_RESUME)
        check_resume (run, before, last, completions);
      if (ff_list_run_state (run) == FF_RUN_COMPLETE)
        for (int i = 0; i < ff_list_run_n_items (run); i++)
          assert_false (ff_mark_is_unresolved (ff_list_run_item (run, i)->mark));
    }
  *complete += ff_list_run_state (run) == FF_RUN_COMPLETE;
}

static void
test_random_events (void **state)
{
  FfTestRandom random = { 1711 };
  guint complete = 0, accepted = 0;

  for (int i = 0; i < SEQUENCES / 100; i++)
    {
      g_autoptr (FfChecklist) list = ff_random_list (&random);

      for (int n = 0; n < 100; n++)
        walk (&random, list, &complete, &accepted);
    }
  /* The walks got somewhere, else the invariants saw nothing. */
  assert_true (complete > SEQUENCES / 50);
  assert_true (accepted > SEQUENCES * 5);
}

/* The same events lead to the same marks: what is on the disk is the whole run. */
static void
test_replay (void **state)
{
  FfTestRandom random = { 5 };

  for (int i = 0; i < 300; i++)
    {
      g_autoptr (FfChecklist) list = ff_random_list (&random);
      const FfRunRules rules = { 300, FF_ANOTHER_BATTERY };
      g_autoptr (FfListRun) run = ff_list_run_new (list, 0, &rules), again = ff_list_run_new (list, 0, &rules);
      gint64 at = 0;

      for (int n = 0; n < MOST_EVENTS; n++)
        {
          FfRunEvent event = some_event (&random, run, at += 60);

          assert_int_equal (ff_list_run_step (run, &event, NULL), ff_list_run_step (again, &event, NULL));
        }
      assert_int_equal (ff_list_run_current (run), ff_list_run_current (again));
      for (int n = 0; n < ff_list_run_n_items (run); n++)
        assert_int_equal (ff_list_run_mark (run, n), ff_list_run_mark (again, n));
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_random_events),
    cmocka_unit_test (test_replay),
  };

  return cmocka_run_group_tests_name ("random runs", tests, NULL, NULL);
}
