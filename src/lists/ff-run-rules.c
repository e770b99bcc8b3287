/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What may happen when. */
#include "ff-run-private.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
  return FALSE;
}

static gboolean
has (const char *text)
{
  return text != NULL && text[0] != '\0';
}

static gboolean
want_name (const FfRunEvent *event, GError **error)
{
  return has (event->by) || refuse (error, _ ("Who is it? Enter the initials."));
}

static gboolean
want_reason (const FfRunEvent *event, GError **error)
{
  if (!has (event->why))
    return refuse (error, _ ("A reason is needed."));
  return want_name (event, error);
}

static gboolean
want_other_person (const char *first, const char *second, GError **error)
{
  if (!has (second))
    return refuse (error, _ ("A second person is needed. Enter their initials."));
  if (g_ascii_strcasecmp (first, second) == 0)
    return refuse (error, _ ("The second person can't be the first one."));
  return TRUE;
}

/* Items */

FfChallenge
ff_list_run_challenge (const FfRunItem *item, const FfRunEvent *event)
{
  if (!ff_said_within (&item->item->value, event->said))
    return FF_CHALLENGE_OUTSIDE;
  if (item->item->fact != FF_FACT_NONE && has (event->expected)
      && !ff_said_agrees (event->expected, event->said))
    return FF_CHALLENGE_DIFFERS;
  return FF_CHALLENGE_NONE;
}

static gboolean
allow_say (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  double number;

  if (item->item == NULL || !ff_check_item_asks (item->item))
    return refuse (error, _ ("Nothing is asked for here."));
  if (item->mark == FF_MARK_FAILED)
    return refuse (error, _ ("This failed. Open it again first."));
  if (item->waits_for_second)
    return refuse (error, _ ("A second person is to look first."));
  if (!has (event->said))
    return refuse (error, _ ("Say what you read."));
  if (item->item->value.sort == FF_VALUE_NUMBER
      && !ff_said_number (&item->item->value, event->said, &number))
    return refuse (error, _ ("That is not a number."));
  return want_name (event, error);
}

static gboolean
allow_done (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  if (item->item != NULL && ff_check_item_asks (item->item))
    return refuse (error, _ ("Say what you read; this one is not ticked."));
  if (item->mark == FF_MARK_FAILED)
    return refuse (error, _ ("This failed. Open it again first."));
  if (item->waits_for_second)
    return refuse (error, _ ("A second person is to look first."));
  return want_name (event, error);
}

static gboolean
allow_second (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  if (!item->waits_for_second)
    return refuse (error, _ ("No second person is asked for here."));
  return want_other_person (item->by, event->by, error);
}

static gboolean
allow_accept (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  if (item->challenge == FF_CHALLENGE_NONE || item->mark == FF_MARK_FAILED)
    return refuse (error, _ ("Nothing differs here."));
  if (item->item->critical && item->challenge == FF_CHALLENGE_OUTSIDE)
    return refuse (error, _ ("A critical value outside its bounds is not kept. Read it again, mend "
                             "it, or mark it as failed."));
  if (!want_reason (event, error))
    return FALSE;
  return !item->item->critical || want_other_person (event->by, event->other, error);
}

static gboolean
allow_defer (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  if (item->item == NULL)
    return refuse (error, _ ("The completion of a section can't be deferred."));
  if (item->mark == FF_MARK_DEFERRED)
    return refuse (error, _ ("This was deferred already, and nothing else is open before it."));
  if (!ff_mark_may_follow (item->mark, FF_MARK_DEFERRED))
    return refuse (error, _ ("This failed. Open it again first."));
  return want_name (event, error);
}

static gboolean
allow_leave_out (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  if (item->item == NULL)
    return refuse (error, _ ("The completion of a section is always said."));
  if (!ff_mark_may_follow (item->mark, FF_MARK_NOT_APPLICABLE))
    return refuse (error, _ ("This failed. Open it again first."));
  return want_reason (event, error);
}

static gboolean
allow_fail (const FfRunItem *item, const FfRunEvent *event, GError **error)
{
  if (item->item == NULL)
    return refuse (error, _ ("The completion of a section can't fail; hold the list instead."));
  if (item->mark == FF_MARK_FAILED)
    return refuse (error, _ ("This has failed already."));
  return want_reason (event, error);
}

/* The one completed last can be taken back; what failed is opened again with what was done. */
static gboolean
allow_reopen (const FfListRun *run, const FfRunEvent *event, GError **error)
{
  const FfRunItem *item;

  if (event->item < 0 || event->item >= ff_list_run_n_items (run))
    return refuse (error, _ ("There is no such item."));
  item = ff_list_run_item (run, event->item);
  if (item->mark == FF_MARK_FAILED)
    return want_reason (event, error);
  if (event->item == ff_list_run_last_completed (run) || item->waits_for_second)
    return want_name (event, error);
  return refuse (error, _ ("Only the item completed last, or one that failed, is opened again."));
}

static gboolean
allow_on_item (const FfListRun *run, const FfRunEvent *event, GError **error)
{
  const FfRunItem *item;

  if (event->item < 0 || event->item != ff_list_run_current (run))
    return refuse (error, _ ("Another item is next. Nothing is ticked ahead."));
  item = ff_list_run_item (run, event->item);
  switch ((int) event->act)
    {
    case FF_ACT_SAY:
      return allow_say (item, event, error);
    case FF_ACT_DONE:
      return allow_done (item, event, error);
    case FF_ACT_SECOND:
      return allow_second (item, event, error);
    case FF_ACT_ACCEPT:
      return allow_accept (item, event, error);
    case FF_ACT_DEFER:
      return allow_defer (item, event, error);
    case FF_ACT_NOT_APPLICABLE:
      return allow_leave_out (item, event, error);
    case FF_ACT_FAIL:
    default:
      return allow_fail (item, event, error);
    }
}

/* The run */

static gboolean
allow_while_held (const FfRunEvent *event, GError **error)
{
  if (event->act == FF_ACT_RESUME)
    return want_name (event, error);
  if (event->act == FF_ACT_ABANDON)
    return want_reason (event, error);
  /* The key came first, at once; the reason is said when there is time for it. */
  if (event->act == FF_ACT_HOLD && has (event->why))
    return want_name (event, error);
  return refuse (error, _ ("The list is held. Resume it first."));
}

static gboolean
allow_while_going (const FfListRun *run, const FfRunEvent *event, GError **error)
{
  switch ((int) event->act)
    {
    case FF_ACT_START:
      return refuse (error, _ ("The list was started already."));
    case FF_ACT_RESUME:
      return refuse (error, _ ("The list is not held."));
    case FF_ACT_HOLD:
    case FF_ACT_AUTO_HOLD:
      return TRUE;
    case FF_ACT_CHANGE:
      return event->changed != 0 ? want_name (event, error)
                                 : refuse (error, _ ("Say what has changed."));
    case FF_ACT_ABANDON:
      return want_reason (event, error);
    case FF_ACT_REOPEN:
      return allow_reopen (run, event, error);
    default:
      return allow_on_item (run, event, error);
    }
}

gboolean
ff_list_run_allows (const FfListRun *run, const FfRunEvent *event, GError **error)
{
  switch (ff_list_run_state (run))
    {
    case FF_RUN_NOT_STARTED:
      if (event->act != FF_ACT_START)
        return refuse (error, _ ("The list has not been started."));
      if (ff_list_run_n_items (run) == 0)
        return refuse (error, _ ("Nothing in this list is called for today."));
      return want_name (event, error);
    case FF_RUN_HELD:
      return allow_while_held (event, error);
    case FF_RUN_COMPLETE:
      return refuse (error, _ ("The list is complete. Start it anew to run it again."));
    case FF_RUN_ABANDONED:
      return refuse (error, _ ("This run was abandoned. Start the list anew."));
    case FF_RUN_GOING:
    default:
      return allow_while_going (run, event, error);
    }
}
