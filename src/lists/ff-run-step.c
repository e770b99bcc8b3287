/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an allowed event does. */
#include "ff-run-private.h"

#include <glib/gi18n-lib.h>

#define QUICK_MS 1000 /* Dismukes and Berman: an answer this fast was not looked for */

static void
complete (FfListRun *run, FfRunItem *item, FfMark mark)
{
  item->mark = mark;
  item->waits_for_second = FALSE;
  item->order = ++run->completed;
}

/* Answered: done, unless somebody else is still to look. */
static void
answer (FfListRun *run, FfRunItem *item)
{
  if (item->item != NULL && item->item->second && item->second_by[0] == '\0')
    item->waits_for_second = TRUE;
  else
    complete (run, item, FF_MARK_DONE);
}

static void
take_words (FfRunItem *item, const FfRunEvent *event)
{
  item->at = event->at;
  item->from_paper = event->from_paper;
  ff_list_run_set (&item->by, event->by);
  ff_list_run_set (&item->why, event->why);
}

static void
say (FfListRun *run, FfRunItem *item, const FfRunEvent *event)
{
  take_words (item, event);
  ff_list_run_set (&item->said, event->said);
  ff_list_run_set (&item->expected, event->expected);
  item->challenge = ff_list_run_challenge (item, event);
  item->quick = event->after_ms >= 0 && event->after_ms < QUICK_MS;
  if (item->challenge == FF_CHALLENGE_NONE)
    answer (run, item);
}

static void
done (FfListRun *run, FfRunItem *item, const FfRunEvent *event)
{
  take_words (item, event);
  item->quick = event->after_ms >= 0 && event->after_ms < QUICK_MS;
  answer (run, item);
}

static void
second (FfListRun *run, FfRunItem *item, const FfRunEvent *event)
{
  item->at = event->at;
  ff_list_run_set (&item->second_by, event->by);
  complete (run, item, FF_MARK_DONE);
}

/* The challenge stays to be seen in the log: it was answered, not taken away. */
static void
accept (FfListRun *run, FfRunItem *item, const FfRunEvent *event)
{
  take_words (item, event);
  if (event->other != NULL && g_ascii_strcasecmp (event->other, event->by) != 0)
    ff_list_run_set (&item->second_by, event->other);
  answer (run, item);
}

static void
hold (FfListRun *run, gint64 since, const char *why)
{
  run->held = TRUE;
  run->held_since = since;
  ff_list_run_set (&run->held_why, why);
}

/* What is not a defect of one thing holds the whole flight. */
static void
fail (FfListRun *run, FfRunItem *item, const FfRunEvent *event)
{
  take_words (item, event);
  item->mark = FF_MARK_FAILED;
  item->waits_for_second = FALSE;
  ff_list_run_set (&item->subject, event->subject);
  if (item->subject[0] == '\0')
    hold (run, event->at, event->why);
}

/* After an interruption or a change */

static int
section_now (const FfListRun *run)
{
  int current = ff_list_run_current (run);

  return current >= 0 ? ff_list_run_item (run, current)->section_number : -1;
}

/* What failed stays failed: that is opened again by its own event alone. */
static void
restart_section (FfListRun *run, int section)
{
  for (int i = 0; i < ff_list_run_n_items (run); i++)
    {
      FfRunItem *item = ff_list_run_at (run, i);

      if (item->section_number == section && item->mark != FF_MARK_FAILED)
        ff_list_run_item_open (item);
    }
}

static guint
all_changed (const FfListRun *run, const char *by, guint changed)
{
  if (by != NULL && g_ascii_strcasecmp (by, run->reader) != 0
      && g_ascii_strcasecmp (by, run->other) != 0)
    changed |= FF_ANOTHER_PERSON;
  return changed;
}

/* A clock that was set back says nothing about how long it was. */
gboolean
ff_list_run_will_restart (const FfListRun *run, gint64 at, const char *by, guint changed)
{
  gint64 gap = at - run->held_since;

  return gap < 0 || gap >= run->rules.restart_after_s
         || (all_changed (run, by, changed) & run->rules.restart_on) != 0;
}

static void
change_person (FfListRun *run, const char *by)
{
  if (all_changed (run, by, 0) & FF_ANOTHER_PERSON)
    ff_list_run_set (&run->reader, by);
}

static void
resume (FfListRun *run, const FfRunEvent *event)
{
  gboolean restart = ff_list_run_will_restart (run, event->at, event->by, event->changed);
  int last = ff_list_run_last_completed (run), section = section_now (run);

  run->held = FALSE;
  if (last >= 0)
    ff_list_run_item_open (ff_list_run_at (run, last));
  if (restart)
    restart_section (run, section);
  change_person (run, event->by);
  ff_list_run_set (&run->held_why, "");
}

static void
change (FfListRun *run, const FfRunEvent *event)
{
  if (all_changed (run, event->by, event->changed) & run->rules.restart_on)
    restart_section (run, section_now (run));
  change_person (run, event->by);
}

static void
start (FfListRun *run, const FfRunEvent *event)
{
  run->started = TRUE;
  ff_list_run_set (&run->reader, event->by);
  ff_list_run_set (&run->other, event->other);
}

static void
step_item (FfListRun *run, FfRunItem *item, const FfRunEvent *event)
{
  switch ((int) event->act)
    {
    case FF_ACT_SAY:
      say (run, item, event);
      break;
    case FF_ACT_DONE:
      done (run, item, event);
      break;
    case FF_ACT_SECOND:
      second (run, item, event);
      break;
    case FF_ACT_ACCEPT:
      accept (run, item, event);
      break;
    case FF_ACT_DEFER:
      ff_list_run_item_open (item);
      take_words (item, event);
      item->mark = FF_MARK_DEFERRED;
      break;
    case FF_ACT_NOT_APPLICABLE:
      take_words (item, event);
      complete (run, item, FF_MARK_NOT_APPLICABLE);
      break;
    case FF_ACT_FAIL:
      fail (run, item, event);
      break;
    case FF_ACT_REOPEN:
    default:
      ff_list_run_item_open (item);
      item->at = event->at;
      break;
    }
}

static void
step_run (FfListRun *run, const FfRunEvent *event)
{
  switch ((int) event->act)
    {
    case FF_ACT_START:
      start (run, event);
      break;
    case FF_ACT_HOLD:
    case FF_ACT_AUTO_HOLD:
      /* A reason that is said later does not move the beginning. */
      hold (run, run->held ? run->held_since : event->at, event->why);
      break;
    case FF_ACT_RESUME:
      resume (run, event);
      break;
    case FF_ACT_CHANGE:
      change (run, event);
      break;
    case FF_ACT_ABANDON:
    default:
      run->held = FALSE;
      run->abandoned = TRUE;
      break;
    }
}

static gboolean
is_about_item (FfAct act)
{
  return act != FF_ACT_START && act != FF_ACT_HOLD && act != FF_ACT_AUTO_HOLD
         && act != FF_ACT_RESUME && act != FF_ACT_CHANGE && act != FF_ACT_ABANDON;
}

gboolean
ff_list_run_step (FfListRun *run, const FfRunEvent *event, GError **error)
{
  if (!ff_list_run_allows (run, event, error))
    return FALSE;
  if (is_about_item (event->act))
    step_item (run, ff_list_run_at (run, event->item), event);
  else
    step_run (run, event);
  run->last_at = event->at;
  return TRUE;
}
