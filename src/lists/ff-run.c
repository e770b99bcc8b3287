/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-run-private.h"

#include <glib/gi18n-lib.h>

static const FfName mark_names[] = {
  /* Translators: states of an item of a checklist; each is shown with a shape of its own. */
  [FF_MARK_OPEN] = { "open", N_ ("open") },
  [FF_MARK_DONE] = { "done", N_ ("done") },
  [FF_MARK_DEFERRED] = { "deferred", N_ ("deferred") },
  [FF_MARK_HELD] = { "held", N_ ("held") },
  [FF_MARK_FAILED] = { "failed", N_ ("failed") },
  [FF_MARK_NOT_APPLICABLE] = { "not-applicable", N_ ("not applicable") },
};
const FfNames ff_names_mark = { "mark", mark_names, G_N_ELEMENTS (mark_names) };

static const FfName run_state_names[] = {
  /* Translators: states of the run of a checklist. */
  [FF_RUN_NOT_STARTED] = { "not-run", N_ ("not run") },
  [FF_RUN_GOING] = { "running", N_ ("running") },
  [FF_RUN_HELD] = { "held", N_ ("held") },
  [FF_RUN_COMPLETE] = { "complete", N_ ("complete") },
  [FF_RUN_ABANDONED] = { "abandoned", N_ ("abandoned") },
};
const FfNames ff_names_run_state
    = { "state of a run", run_state_names, G_N_ELEMENTS (run_state_names) };

gboolean
ff_mark_may_follow (FfMark from, FfMark to)
{
  if (from == to)
    return FALSE;
  switch (from)
    {
    case FF_MARK_OPEN:
      return TRUE;
    case FF_MARK_DEFERRED:
      return to != FF_MARK_HELD;
    case FF_MARK_HELD:
    case FF_MARK_DONE:
    case FF_MARK_FAILED:
    case FF_MARK_NOT_APPLICABLE:
      return to == FF_MARK_OPEN;
    default:
      return FALSE;
    }
}

gboolean
ff_mark_is_unresolved (FfMark mark)
{
  return mark != FF_MARK_DONE && mark != FF_MARK_NOT_APPLICABLE;
}

/* The items of a day */

static void
item_clear (gpointer data)
{
  FfRunItem *item = data;

  g_free (item->by);
  g_free (item->second_by);
  g_free (item->said);
  g_free (item->expected);
  g_free (item->why);
  g_free (item->subject);
}

void
ff_list_run_set (char **place, const char *text)
{
  g_free (*place);
  *place = g_strdup (text != NULL ? text : "");
}

void
ff_list_run_item_open (FfRunItem *item)
{
  item->mark = FF_MARK_OPEN;
  item->challenge = FF_CHALLENGE_NONE;
  item->waits_for_second = item->quick = item->from_paper = FALSE;
  item->order = 0;
  ff_list_run_set (&item->by, "");
  ff_list_run_set (&item->second_by, "");
  ff_list_run_set (&item->said, "");
  ff_list_run_set (&item->expected, "");
  ff_list_run_set (&item->why, "");
  ff_list_run_set (&item->subject, "");
}

static void
add_item (FfListRun *run, const FfCheckSection *section, const FfCheckItem *item)
{
  FfRunItem new = { .section = section, .item = item, .section_number = run->n_sections };

  ff_list_run_item_open (&new);
  g_array_append_val (run->items, new);
}

static void
add_section (FfListRun *run, const FfCheckSection *section, guint conditions)
{
  guint before = run->items->len;

  if (!ff_when_holds (section->when, conditions))
    return;
  for (guint i = 0; i < section->items->len; i++)
    {
      const FfCheckItem *item = g_ptr_array_index (section->items, i);

      if (ff_when_holds (item->when, conditions))
        add_item (run, section, item);
    }
  if (run->items->len == before)
    return;
  add_item (run, section, NULL);
  run->n_sections++;
}

FfListRun *
ff_list_run_new (const FfChecklist *list, guint conditions, const FfRunRules *rules)
{
  FfListRun *run = g_new0 (FfListRun, 1);

  run->list = list;
  run->rules = *rules;
  run->items = g_array_new (FALSE, TRUE, sizeof (FfRunItem));
  g_array_set_clear_func (run->items, item_clear);
  run->reader = g_strdup ("");
  run->other = g_strdup ("");
  run->held_why = g_strdup ("");
  for (guint i = 0; i < list->sections->len; i++)
    add_section (run, g_ptr_array_index (list->sections, i), conditions);
  return run;
}

void
ff_list_run_free (FfListRun *run)
{
  if (run == NULL)
    return;
  g_array_unref (run->items);
  g_free (run->reader);
  g_free (run->other);
  g_free (run->held_why);
  g_free (run);
}

/* Where it stands */

const FfChecklist *
ff_list_run_list (const FfListRun *run)
{
  return run->list;
}

FfRunState
ff_list_run_state (const FfListRun *run)
{
  if (!run->started)
    return FF_RUN_NOT_STARTED;
  if (run->abandoned)
    return FF_RUN_ABANDONED;
  if (run->held)
    return FF_RUN_HELD;
  return ff_list_run_current (run) < 0 ? FF_RUN_COMPLETE : FF_RUN_GOING;
}

int
ff_list_run_n_items (const FfListRun *run)
{
  return (int) run->items->len;
}

int
ff_list_run_n_sections (const FfListRun *run)
{
  return run->n_sections;
}

FfRunItem *
ff_list_run_at (const FfListRun *run, int i)
{
  return &g_array_index (run->items, FfRunItem, i);
}

const FfRunItem *
ff_list_run_item (const FfListRun *run, int i)
{
  return ff_list_run_at (run, i);
}

FfMark
ff_list_run_mark (const FfListRun *run, int i)
{
  return run->held && i == ff_list_run_current (run) ? FF_MARK_HELD : ff_list_run_at (run, i)->mark;
}

static int
first_unresolved_section (const FfListRun *run)
{
  for (int i = 0; i < ff_list_run_n_items (run); i++)
    if (ff_mark_is_unresolved (ff_list_run_at (run, i)->mark))
      return ff_list_run_at (run, i)->section_number;
  return -1;
}

static int
first_with (const FfListRun *run, int section, FfMark mark, gboolean completion)
{
  for (int i = 0; i < ff_list_run_n_items (run); i++)
    {
      const FfRunItem *item = ff_list_run_at (run, i);

      if (item->section_number == section && item->mark == mark
          && (item->item == NULL) == completion)
        return i;
    }
  return -1;
}

int
ff_list_run_current (const FfListRun *run)
{
  int section = first_unresolved_section (run);
  int i;

  if (section < 0)
    return -1;
  if ((i = first_with (run, section, FF_MARK_OPEN, FALSE)) >= 0
      || (i = first_with (run, section, FF_MARK_DEFERRED, FALSE)) >= 0
      || (i = first_with (run, section, FF_MARK_FAILED, FALSE)) >= 0)
    return i;
  return first_with (run, section, FF_MARK_OPEN, TRUE);
}

int
ff_list_run_last_completed (const FfListRun *run)
{
  int last = -1;

  for (int i = 0; i < ff_list_run_n_items (run); i++)
    if (ff_list_run_at (run, i)->order > 0
        && (last < 0 || ff_list_run_at (run, i)->order > ff_list_run_at (run, last)->order))
      last = i;
  return last;
}

gboolean
ff_list_run_shows_expected (const FfListRun *run, int i)
{
  const FfRunItem *item = ff_list_run_at (run, i);

  return item->item == NULL || !item->item->critical || item->said[0] != '\0'
         || !ff_mark_is_unresolved (item->mark);
}

int
ff_list_run_count (const FfListRun *run, int section, FfMark mark)
{
  int count = 0;

  for (int i = 0; i < ff_list_run_n_items (run); i++)
    count += ff_list_run_at (run, i)->item != NULL && ff_list_run_mark (run, i) == mark
             && (section < 0 || ff_list_run_at (run, i)->section_number == section);
  return count;
}

int
ff_list_run_section_size (const FfListRun *run, int section)
{
  int count = 0;

  for (int i = 0; i < ff_list_run_n_items (run); i++)
    count += ff_list_run_at (run, i)->item != NULL && ff_list_run_at (run, i)->section_number == section;
  return count;
}

const char *
ff_list_run_reader (const FfListRun *run)
{
  return run->reader;
}

const char *
ff_list_run_other (const FfListRun *run)
{
  return run->other;
}

gint64
ff_list_run_held_since (const FfListRun *run)
{
  return run->held_since;
}

const char *
ff_list_run_held_why (const FfListRun *run)
{
  return run->held_why;
}

gint64
ff_list_run_last_at (const FfListRun *run)
{
  return run->last_at;
}
