/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-checks.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-number.h"
#include "ff-paragraph.h"

static char *start_text, *line_text, *do_text, *said_text, *why_text, *subject_text, *changed_text;
static char *by_text, *other_text, *at_text;
static gboolean from_paper, hold;

static GOptionEntry entries[] = {
  { "start", 0, 0, G_OPTION_ARG_STRING, &start_text, N_ ("Start this list"), "LIST-ID" },
  { "line", 0, 0, G_OPTION_ARG_STRING, &line_text, N_ ("For this line of the plan"), "N" },
  { "do", 0, 0, G_OPTION_ARG_STRING, &do_text,
    N_ ("Do this to the item that is next in the list that is running: say, done, second, accept, "
        "defer, not-applicable, fail, reopen, hold, resume, change, abandon"),
    "ACT" },
  { "hold", 0, 0, G_OPTION_ARG_NONE, &hold,
    N_ ("Hold the list that is running, or say with --why why it is held already"), NULL },
  { "said", 0, 0, G_OPTION_ARG_STRING, &said_text, N_ ("What was read"), "TEXT" },
  { "why", 0, 0, G_OPTION_ARG_STRING, &why_text, N_ ("The reason"), "TEXT" },
  { "subject", 0, 0, G_OPTION_ARG_STRING, &subject_text, N_ ("What the failure is a defect of"),
    "ITEM" },
  { "changed", 0, 0, G_OPTION_ARG_STRING, &changed_text,
    N_ ("What is another one now: battery, aircraft, person"), "LIST" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("Initials of who it is"), "INITIALS" },
  { "other", 0, 0, G_OPTION_ARG_STRING, &other_text, N_ ("Initials of the second person"),
    "INITIALS" },
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_text, N_ ("When it was; without it: now"), "TIME" },
  { "paper", 0, 0, G_OPTION_ARG_NONE, &from_paper, N_ ("It is entered from paper"), NULL },
  G_OPTION_ENTRY_NULL,
};

typedef struct {
  FfStore *store;
  FfDay *day;
  FfDayPlan *plan; /* NULL: the day can't be planned yet */
  char *job_id;
  gint64 now, at;
} Asked;

static void
asked_clear (Asked *asked)
{
  g_clear_pointer (&asked->plan, ff_day_plan_free);
  g_clear_pointer (&asked->day, ff_day_free);
  g_clear_pointer (&asked->store, ff_records_close);
  g_clear_pointer (&asked->job_id, g_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Asked, asked_clear)

/* A day without a plan still has its lists; only the lines are missing. */
static gboolean
load (Asked *asked, FfConsole *console, FfRecordsAccess access, GError **error)
{
  g_autoptr (GError) no_plan = NULL;

  asked->now = asked->at = g_get_real_time () / G_USEC_PER_SEC;
  if (at_text != NULL && !ff_option_instant ("--at", at_text, &asked->at, error))
    return FALSE;
  asked->store = ff_console_open (console, access, error);
  if (asked->store == NULL)
    return FALSE;
  asked->job_id = ff_job_find (asked->store, console->words[0], error);
  asked->day = asked->job_id != NULL ? ff_day_load (asked->store, asked->job_id, error) : NULL;
  if (asked->day == NULL)
    return FALSE;
  asked->plan = ff_day_plan (asked->day, NULL, &no_plan);
  if (asked->plan != NULL || g_error_matches (no_plan, FF_ERROR, FF_ERROR_INPUT))
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&no_plan));
  return FALSE;
}

/* ---- Out ---- */

static void
write_check (FfConsole *console, const Asked *asked, const FfDayCheck *check)
{
  FfJson *json = console->json;
  g_autofree char *since
      = check->held_since != 0
            ? ff_instant_format ((double) check->held_since, ff_day_zone (asked->day))
            : NULL;

  ff_json_begin_object (json, NULL);
  ff_json_text (json, "list", check->title);
  ff_json_text (json, "list_id", check->entry->id);
  ff_json_text (json, "run_id", check->run_id[0] != '\0' ? check->run_id : NULL);
  ff_json_integer (json, "line", check->line);
  ff_json_text (json, "state", ff_name_token (&ff_names_run_state, (int) check->state));
  ff_json_text (json, "at", check->at[0] != '\0' ? check->at : NULL);
  ff_json_text (json, "held_since", since);
  ff_json_text (json, "held_why", check->held_why[0] != '\0' ? check->held_why : NULL);
  ff_json_integer (json, "items", check->n_items);
  ff_json_integer (json, "done", check->n_done);
  ff_json_integer (json, "deferred", check->n_deferred);
  ff_json_integer (json, "failed", check->n_failed);
  ff_json_end (json);
}

static void
say_check (FfConsole *console, const Asked *asked, const FfDayCheck *check)
{
  g_autofree char *since
      = check->held_since != 0
            ? ff_instant_clock ((double) check->held_since, ff_day_zone (asked->day))
            : g_strdup ("");
  g_autofree char *counts = g_strdup_printf ("%d/%d", check->n_done, check->n_items);

  ff_console_line (console, "%-9s %5s %5s  %s",
                   ff_name_text (&ff_names_run_state, (int) check->state), since, counts,
                   check->title);
  if (check->at[0] != '\0')
    /* Translators: the item of a checklist that is next. */
    ff_console_line (console, _ ("                       at: %s"), check->at);
}

static void
write_open (FfConsole *console, const FfDayChecks *checks)
{
  FfJson *json = console->json;

  ff_json_begin_array (json, "open_items");
  for (guint i = 0; i < checks->open->len; i++)
    {
      g_autofree char *sentence = ff_open_item_say (g_ptr_array_index (checks->open, i));

      ff_json_text (json, NULL, sentence);
    }
  ff_json_end (json);
  ff_json_begin_array (json, "open");
  for (guint i = 0; i < checks->open->len; i++)
    {
      const FfOpenItem *open = g_ptr_array_index (checks->open, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "list", open->list);
      ff_json_text (json, "item", open->item[0] != '\0' ? open->item : NULL);
      ff_json_text (json, "state", open->state);
      ff_json_text (json, "why", open->why[0] != '\0' ? open->why : NULL);
      ff_json_end (json);
    }
  ff_json_end (json);
}

/* Lists that were not run stand above already; here are the single things. */
static void
say_open (FfConsole *console, const FfDayChecks *checks)
{
  ff_console_line (console, "%s", "");
  for (guint i = 0; i < checks->open->len; i++)
    {
      const FfOpenItem *open = g_ptr_array_index (checks->open, i);
      g_autofree char *sentence = ff_open_item_say (open);

      if (open->item[0] != '\0')
        ff_console_paragraph (console, "  ", sentence);
    }
  if (checks->open->len == 0)
    ff_console_paragraph (console, "",
                          _ ("Nothing entered here is open. Airspace and notices are not known to "
                             "this program. The pilot decides."));
  else
    ff_console_line (console, ngettext ("%u thing is open.", "%u things are open.",
                                        checks->open->len),
                     checks->open->len);
}

static FfOutcome
show (FfConsole *console, Asked *asked, GError **error)
{
  g_autoptr (FfDayChecks) checks
      = ff_day_checks (asked->store, asked->day, asked->plan, asked->now, error);
  g_autofree char *conditions = NULL;

  if (checks == NULL)
    return FF_FAILED;
  conditions = ff_when_tokens (checks->conditions);
  ff_json_text (console->json, "conditions", conditions);
  ff_json_begin_array (console->json, "runs");
  for (guint i = 0; i < checks->checks->len; i++)
    {
      write_check (console, asked, g_ptr_array_index (checks->checks, i));
      say_check (console, asked, g_ptr_array_index (checks->checks, i));
    }
  ff_json_end (console->json);
  write_open (console, checks);
  say_open (console, checks);
  return checks->open->len > 0 ? FF_NO : FF_DONE;
}

/* ---- In ---- */

static gboolean
read_line (const Asked *asked, int *ret_line, GError **error)
{
  int most = asked->plan != NULL ? (int) asked->plan->lines->len : 0;

  *ret_line = 0;
  return line_text == NULL || ff_integer_parse ("--line", line_text, 0, most, ret_line, error);
}

static gboolean
start (Asked *asked, GError **error)
{
  g_autoptr (FfDayChecks) checks
      = ff_day_checks (asked->store, asked->day, asked->plan, asked->now, error);
  const FfListEntry *entry
      = checks != NULL ? ff_list_book_find (checks->book, start_text, error) : NULL;
  g_autoptr (FfDayRun) run = NULL;
  int line;

  if (entry == NULL || !read_line (asked, &line, error))
    return FALSE;
  run = ff_day_run_start (asked->store, asked->job_id, entry, checks->conditions, line, by_text,
                          other_text, asked->at, error);
  return run != NULL;
}

/* The run that was started last and is not at its end. */
static FfDayRun *
open_running (Asked *asked, GError **error)
{
  g_autoptr (GPtrArray) runs = ff_kept_runs_load (asked->store, asked->job_id, error);

  for (guint i = runs != NULL ? runs->len : 0; i-- > 0;)
    {
      const FfKeptRun *kept = g_ptr_array_index (runs, i);
      g_autoptr (FfDayRun) run = ff_day_run_open (asked->store, kept->id, error);
      FfRunState state;

      if (run == NULL)
        return NULL;
      state = ff_list_run_state (ff_day_run_run (run));
      if (state == FF_RUN_GOING || state == FF_RUN_HELD)
        {
          ff_day_run_take_facts (run, ff_list_facts_new (asked->day, asked->plan, kept->line));
          return g_steal_pointer (&run);
        }
    }
  if (runs != NULL)
    g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                         _ ("--do: no list is running; start one with --start LIST-ID"));
  return NULL;
}

static gboolean
read_changed (guint *ret_changed, GError **error)
{
  static const char *const words[] = { "battery", "aircraft", "person" };
  g_auto (GStrv) each = NULL;

  *ret_changed = 0;
  if (changed_text == NULL)
    return TRUE;
  each = ff_option_list ("--changed", changed_text, error);
  for (guint i = 0; each != NULL && each[i] != NULL; i++)
    {
      guint n = 0;

      while (n < G_N_ELEMENTS (words) && strcmp (each[i], words[n]) != 0)
        n++;
      if (n == G_N_ELEMENTS (words))
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--changed: “%s”; accepted: battery, aircraft, person"), each[i]);
          return FALSE;
        }
      *ret_changed |= 1u << n;
    }
  return each != NULL;
}

/* What is opened again is what failed, or else what was completed last. */
static int
item_of (const FfListRun *run, FfAct act)
{
  int current = ff_list_run_current (run);

  if (act == FF_ACT_REOPEN && current >= 0 && ff_list_run_item (run, current)->mark != FF_MARK_FAILED)
    return ff_list_run_last_completed (run);
  return current;
}

static gboolean
act (Asked *asked, GError **error)
{
  g_autoptr (FfDayRun) run = NULL;
  g_autofree char *subject = NULL;
  FfRunEvent event = { .at = asked->at, .by = by_text, .other = other_text, .said = said_text,
                       .why = why_text, .after_ms = -1, .from_paper = from_paper };
  int what;

  if (!ff_option_name ("--do", &ff_names_act, hold ? "hold" : do_text, &what, error)
      || !read_changed (&event.changed, error))
    return FALSE;
  if (subject_text != NULL && (subject = ff_item_find (asked->store, subject_text, error)) == NULL)
    return FALSE;
  run = open_running (asked, error);
  if (run == NULL)
    return FALSE;
  event.act = (FfAct) what;
  event.subject = subject;
  event.item = item_of (ff_day_run_run (run), event.act);
  return ff_day_run_act (run, &event, asked->now, error);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  gboolean changes = start_text != NULL || do_text != NULL || hold;
  g_auto (Asked) asked = { 0 };

  if (hold && do_text != NULL)
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           _ ("--hold and --do can't be given together"));
      return FF_FAILED;
    }
  if (!ff_console_want_words (console, 1, "JOB", error)
      || !load (&asked, console, changes ? FF_RECORDS_WRITE : FF_RECORDS_READ, error)
      || (start_text != NULL && !start (&asked, error)) || ((do_text != NULL || hold) && !act (&asked, error)))
    return FF_FAILED;
  return show (console, &asked, error);
}

const FfCommand ff_command_checks = {
  .name = "checks",
  .summary = N_ ("Show which lists a day calls for and what is open in them; run them"),
  .usage = "checks JOB [--start LIST-ID [--line N] | --do ACT [--said TEXT] | --hold]\n"
           "    [--why TEXT] [--by INITIALS] [--other INITIALS] [--at TIME] [--paper]",
  .example = "fieldfarectl checks Skarrowick --do say --said 16.7 --by JV",
  .entries = entries,
  .run = run,
};
