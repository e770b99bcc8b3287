/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-checks.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-error.h"
#include "ff-limits-today.h"

typedef struct {
  FfStore *store;
  FfDayChecks *checks;
  GPtrArray *runs; /* FfKeptRun of the job */
} Gather;

static void
check_free (gpointer data)
{
  FfDayCheck *check = data;

  g_free (check->title);
  g_free (check->run_id);
  g_free (check->at);
  g_free (check->held_why);
  g_free (check);
}

static void
open_item_free (gpointer data)
{
  FfOpenItem *open = data;

  g_free (open->list);
  g_free (open->item);
  g_free (open->state);
  g_free (open->why);
  g_free (open);
}

void
ff_day_checks_free (FfDayChecks *checks)
{
  if (checks == NULL)
    return;
  g_clear_pointer (&checks->book, g_ptr_array_unref);
  g_ptr_array_unref (checks->checks);
  g_ptr_array_unref (checks->open);
  g_free (checks);
}

static void
add_open (FfDayChecks *checks,
          const char *list,
          const char *item,
          const char *state,
          const char *why)
{
  FfOpenItem *open = g_new0 (FfOpenItem, 1);

  open->list = g_strdup (list);
  open->item = g_strdup (item);
  open->state = g_strdup (state);
  open->why = g_strdup (why);
  g_ptr_array_add (checks->open, open);
}

/* One list */

static const FfKeptRun *
last_run (const Gather *gather, const char *list_id, int line)
{
  for (guint i = gather->runs->len; i-- > 0;)
    {
      const FfKeptRun *run = g_ptr_array_index (gather->runs, i);

      if (g_str_equal (run->list_id, list_id) && run->line == line)
        return run;
    }
  return NULL;
}

static const char *
name_of (const FfRunItem *item)
{
  return item->item != NULL ? item->item->challenge : _ ("completion of the section");
}

static void
add_unresolved (Gather *gather, const FfDayCheck *check, const FfListRun *run)
{
  for (int i = 0; i < ff_list_run_n_items (run); i++)
    {
      const FfRunItem *item = ff_list_run_item (run, i);
      FfMark mark = ff_list_run_mark (run, i);

      if (ff_mark_is_unresolved (mark) && (item->item != NULL || i == ff_list_run_current (run)))
        add_open (gather->checks, check->title, name_of (item),
                  ff_name_token (&ff_names_mark, (int) mark), item->why);
    }
}

static void
read_run (FfDayCheck *check, const FfListRun *run)
{
  int current = ff_list_run_current (run);

  check->state = ff_list_run_state (run);
  for (int s = 0; s < ff_list_run_n_sections (run); s++)
    check->n_items += ff_list_run_section_size (run, s);
  check->n_done = ff_list_run_count (run, -1, FF_MARK_DONE)
                  + ff_list_run_count (run, -1, FF_MARK_NOT_APPLICABLE);
  check->n_deferred = ff_list_run_count (run, -1, FF_MARK_DEFERRED);
  check->n_failed = ff_list_run_count (run, -1, FF_MARK_FAILED);
  if (check->state == FF_RUN_HELD)
    {
      check->held_since = ff_list_run_held_since (run);
      check->held_why = g_strdup (ff_list_run_held_why (run));
    }
  if (current >= 0 && check->state != FF_RUN_ABANDONED)
    check->at = g_strdup (name_of (ff_list_run_item (run, current)));
}

static gboolean
look_at_run (Gather *gather, FfDayCheck *check, const FfKeptRun *kept, GError **error)
{
  g_autoptr (FfDayRun) run = ff_day_run_open (gather->store, kept->id, error);

  if (run == NULL)
    return FALSE;
  check->run_id = g_strdup (kept->id);
  read_run (check, ff_day_run_run (run));
  if (check->state == FF_RUN_GOING || check->state == FF_RUN_HELD)
    add_unresolved (gather, check, ff_day_run_run (run));
  return TRUE;
}

static char *
title_of (const FfListEntry *entry, int line)
{
  if (line == 0)
    return g_strdup (entry->title);
  /* Translators: a checklist, and the line of the plan it is run for. */
  return g_strdup_printf (_ ("%s · line %d"), entry->title, line);
}

static gboolean
add_check (Gather *gather, const FfListEntry *entry, int line, GError **error)
{
  const FfKeptRun *kept = last_run (gather, entry->id, line);
  FfDayCheck *check = g_new0 (FfDayCheck, 1);

  check->entry = entry;
  check->line = line;
  check->title = title_of (entry, line);
  g_ptr_array_add (gather->checks->checks, check);
  if (kept != NULL && !look_at_run (gather, check, kept, error))
    return FALSE;
  if (check->run_id == NULL)
    {
      check->run_id = g_strdup ("");
      check->n_items = (int) ff_checklist_count (entry->list, gather->checks->conditions);
    }
  if (check->at == NULL)
    check->at = g_strdup ("");
  if (check->held_why == NULL)
    check->held_why = g_strdup ("");
  if (check->state == FF_RUN_NOT_STARTED || check->state == FF_RUN_ABANDONED)
    add_open (gather->checks, check->title, "",
              ff_name_token (&ff_names_run_state, (int) check->state), "");
  if (gather->checks->next < 0 && check->state != FF_RUN_COMPLETE)
    gather->checks->next = (int) gather->checks->checks->len - 1;
  return TRUE;
}

/* The lists of the day */

static gboolean
is_called_for (const Gather *gather, const FfListEntry *entry)
{
  return ff_when_holds (entry->list->when, gather->checks->conditions)
         && ff_checklist_count (entry->list, gather->checks->conditions) > 0;
}

static gboolean
add_phase (Gather *gather, FfPhase phase, int line, GError **error)
{
  for (guint i = 0; i < gather->checks->book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (gather->checks->book, i);

      /* A list of no fixed place is called for by its conditions alone. */
      if (entry->list->phase == phase && (phase != FF_PHASE_ANY || entry->list->when != 0)
          && is_called_for (gather, entry) && !add_check (gather, entry, line, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
add_phases (Gather *gather, const FfPhase *phases, guint n, int line, GError **error)
{
  for (guint i = 0; i < n; i++)
    if (!add_phase (gather, phases[i], line, error))
      return FALSE;
  return TRUE;
}

static gboolean
add_lines (Gather *gather, int n_lines, GError **error)
{
  static const FfPhase flight[] = { FF_PHASE_TURN_ROUND, FF_PHASE_TAKE_OFF, FF_PHASE_AFTER_LANDING };

  if (n_lines == 0)
    return add_phases (gather, flight, G_N_ELEMENTS (flight), 0, error);
  for (int line = 1; line <= n_lines; line++)
    /* Before the first flight there is nothing to turn round. */
    if (!add_phases (gather, flight + (line == 1), G_N_ELEMENTS (flight) - (line == 1), line, error))
      return FALSE;
  return TRUE;
}

static gboolean
add_day (Gather *gather, int n_lines, GError **error)
{
  static const FfPhase before[] = { FF_PHASE_VAN_PACK, FF_PHASE_SITE, FF_PHASE_ANY,
                                    FF_PHASE_PRE_FLIGHT };
  static const FfPhase after[] = { FF_PHASE_DE_RIG, FF_PHASE_OFFLOAD, FF_PHASE_RETURN_CHECK };

  return add_phases (gather, before, G_N_ELEMENTS (before), 0, error)
         && add_lines (gather, n_lines, error)
         && add_phases (gather, after, G_N_ELEMENTS (after), 0, error);
}

/* Limits that do not hold, or that nobody has looked at, are open as well. */
static void
add_limits (FfDayChecks *checks, const FfDay *day, const FfDayPlan *plan, gint64 now)
{
  g_autoptr (FfLimitsToday) limits = ff_limits_today (day, plan, now);

  for (guint i = 0; i < limits->rows->len; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (limits->rows, i);

      if (row->answer == FF_LIMIT_OUTSIDE)
        add_open (checks, row->sheet, row->text, "outside", row->found);
      else if (row->answer == FF_LIMIT_NOT_ASSESSED)
        add_open (checks, row->sheet, row->text, "not-assessed", row->reason);
    }
}

FfDayChecks *
ff_day_checks (FfStore *store, const FfDay *day, const FfDayPlan *plan, gint64 now, GError **error)
{
  g_autoptr (FfDayChecks) checks = g_new0 (FfDayChecks, 1);
  g_autoptr (GPtrArray) runs = NULL;
  Gather gather = { store, checks, NULL };
  FfListRules rules;

  checks->checks = g_ptr_array_new_with_free_func (check_free);
  checks->open = g_ptr_array_new_with_free_func (open_item_free);
  checks->next = -1;
  checks->book = ff_list_book_load (store, error);
  runs = checks->book != NULL ? ff_kept_runs_load (store, day->job->id, error) : NULL;
  gather.runs = runs;
  if (runs == NULL || !ff_list_rules_load (store, &rules, error)
      || !ff_day_conditions (store, day, &rules, &checks->conditions, error)
      || !add_day (&gather, plan != NULL ? (int) plan->lines->len : 0, error))
    return NULL;
  add_limits (checks, day, plan, now);
  return g_steal_pointer (&checks);
}

char *
ff_open_item_say (const FfOpenItem *open)
{
  const char *state = open->state;
  int value;

  if (ff_name_parse (&ff_names_mark, open->state, &value, NULL))
    state = ff_name_text (&ff_names_mark, value);
  else if (ff_name_parse (&ff_names_run_state, open->state, &value, NULL))
    state = ff_name_text (&ff_names_run_state, value);
  else if (g_str_equal (open->state, "outside"))
    state = _ ("outside");
  else
    state = _ ("not assessed");
  if (open->item[0] == '\0')
    return g_strdup_printf ("%s: %s", open->list, state);
  if (open->why[0] == '\0')
    return g_strdup_printf ("%s: %s: %s", open->list, open->item, state);
  return g_strdup_printf ("%s: %s: %s, %s", open->list, open->item, state, open->why);
}
