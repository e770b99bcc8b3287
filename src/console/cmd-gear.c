/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The inventory and what happened to it. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-battery-log.h"
#include "ff-civil.h"
#include "ff-command.h"
#include "ff-crew.h"
#include "ff-error.h"
#include "ff-file.h"
#include "ff-gear-csv.h"
#include "ff-item-search.h"
#include "ff-print-item.h"
#include "ff-wear.h"

static char *kind_text, *find_text, *state_text, *case_text, *why_text, *until_text, *with_text;
static char *by_text, *cells_text, *temperature_text, *sign_text, *decision_text, *day_text;
static char *percent_text, *on_text, *at_text;
static gboolean dry_run;

static GOptionEntry entries[] = {
  { "kind", 0, 0, G_OPTION_ARG_STRING, &kind_text, N_ ("list: one kind"), "K" },
  { "find", 0, 0, G_OPTION_ARG_STRING, &find_text, N_ ("list: words, each a beginning"), "TEXT" },
  { "case", 0, 0, G_OPTION_ARG_STRING, &case_text, N_ ("list: one case"), "C" },
  { "state", 0, 0, G_OPTION_ARG_STRING, &state_text,
    N_ ("set: serviceable, defect, quarantined, out or retired; list: one of them"), "S" },
  { "why", 0, 0, G_OPTION_ARG_STRING, &why_text, N_ ("set, decide: the reason"), "TEXT" },
  { "until", 0, 0, G_OPTION_ARG_STRING, &until_text, N_ ("set: the day it comes back"), "DAY" },
  { "with", 0, 0, G_OPTION_ARG_STRING, &with_text, N_ ("set: with whom it is"), "WHOM" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text,
    N_ ("initials of who enters it (default: the account's name)"), "INITIALS" },
  { "dry-run", 0, 0, G_OPTION_ARG_NONE, &dry_run, N_ ("import: only say what would change"), NULL },
  { "cells", 0, 0, G_OPTION_ARG_STRING, &cells_text,
    N_ ("measure: milliohms of each cell, cell 1 first"), "LIST" },
  { "temperature", 0, 0, G_OPTION_ARG_STRING, &temperature_text,
    N_ ("measure, day: temperature of the battery"), "C" },
  { "sign", 0, 0, G_OPTION_ARG_STRING, &sign_text, N_ ("decide: swelling, drop or wet"), "S" },
  { "decision", 0, 0, G_OPTION_ARG_STRING, &decision_text,
    N_ ("decide: quarantine, retire or keep"), "D" },
  { "is", 0, 0, G_OPTION_ARG_STRING, &day_text,
    N_ ("day: full, part-used, hot, cold, charging or storage"), "S" },
  { "percent", 0, 0, G_OPTION_ARG_STRING, &percent_text, N_ ("day: charge it shows"), "P" },
  { "on", 0, 0, G_OPTION_ARG_STRING, &on_text,
    N_ ("fit: the aircraft, frame or camera it is on; none: taken off"), "ITEM" },
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_text, N_ ("fit: since when (default: now)"), "TIME" },
  G_OPTION_ENTRY_NULL,
};

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

/* A member of the crew, or whoever has the account: nothing is entered by nobody. */
static char *
who (FfStore *store, GError **error)
{
  char *initials = NULL;

  if (!ff_option_initials ("--by", by_text, store, &initials, error))
    return NULL;
  return initials != NULL ? initials : g_strdup (g_get_user_name ());
}

static FfItem *
load_item (FfConsole *console, FfStore *store, GError **error)
{
  g_autofree char *id = ff_item_find (store, console->words[1], error);

  return id != NULL ? ff_item_load (store, id, error) : NULL;
}

/* ---- list ---- */

typedef struct {
  int kind, state;   /* -1: all */
  GHashTable *found; /* ids; NULL: all */
} Wanted;

static gboolean
read_wanted (Wanted *wanted, FfStore *store, GError **error)
{
  wanted->kind = wanted->state = -1;
  if ((kind_text != NULL
       && !ff_option_name ("--kind", &ff_names_kind, kind_text, &wanted->kind, error))
      || (state_text != NULL
          && !ff_option_name ("--state", &ff_names_state, state_text, &wanted->state, error)))
    return FALSE;
  if (find_text == NULL || *find_text == '\0')
    return TRUE;
  wanted->found = ff_items_search (store, find_text, error);
  return wanted->found != NULL;
}

static gboolean
is_wanted (const Wanted *wanted, const FfItem *item)
{
  return (wanted->kind < 0 || (int) item->kind == wanted->kind)
         && (wanted->state < 0 || (int) item->state == wanted->state)
         && (case_text == NULL || g_ascii_strcasecmp (item->case_label, case_text) == 0)
         && (wanted->found == NULL || g_hash_table_contains (wanted->found, item->id));
}

static FfOutcome
run_list (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (GPtrArray) items = NULL;
  Wanted wanted = { 0 };

  if (!ff_console_want_words (console, 1, "list", error) || store == NULL
      || !read_wanted (&wanted, store, error))
    return FF_FAILED;
  items = ff_items_load (store, error);
  if (items == NULL)
    return FF_FAILED;
  ff_json_begin_array (console->json, "items");
  for (guint i = 0; i < items->len; i++)
    if (is_wanted (&wanted, g_ptr_array_index (items, i)))
      ff_print_item_line (console, g_ptr_array_index (items, i));
  ff_json_end (console->json);
  g_clear_pointer (&wanted.found, g_hash_table_unref);
  return FF_DONE;
}

/* ---- show ---- */

static FfOutcome
run_show (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (FfItem) item = NULL;

  if (!ff_console_want_words (console, 2, "show ITEM", error) || store == NULL)
    return FF_FAILED;
  item = load_item (console, store, error);
  return item != NULL && ff_print_item (console, store, item, error) ? FF_DONE : FF_FAILED;
}

/* ---- set ---- */

static FfOutcome
run_set (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfItem) item = NULL;
  g_autoptr (FfItem) after = NULL;
  g_autofree char *by = NULL;
  int state;

  if (!ff_console_want_words (console, 2, "set ITEM", error))
    return FF_FAILED;
  if (state_text == NULL || why_text == NULL)
    {
      ff_option_missing (state_text == NULL ? "--state" : "--why", error);
      return FF_FAILED;
    }
  if (!ff_option_name ("--state", &ff_names_state, state_text, &state, error)
      || (store = ff_console_open (console, FF_RECORDS_WRITE, error)) == NULL
      || (item = load_item (console, store, error)) == NULL || (by = who (store, error)) == NULL
      || !ff_item_set_state (store, item->id, (FfState) state, why_text, with_text, until_text, by,
                             now (), error)
      || (after = ff_item_load (store, item->id, error)) == NULL)
    return FF_FAILED;
  return ff_print_item (console, store, after, error) ? FF_DONE : FF_FAILED;
}

/* ---- import and export ---- */

static void
print_change (FfConsole *console, const FfGearChange *change)
{
  g_autofree char *fields = NULL;

  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "label", change->item->label);
  ff_json_text (console->json, "kind", ff_name_token (&ff_names_kind, (int) change->item->kind));
  ff_json_integer (console->json, "line", change->line);
  ff_json_texts (console->json, "fields", change->fields);
  ff_json_end (console->json);
  g_ptr_array_add (change->fields, NULL);
  fields = g_strjoinv (", ", (char **) change->fields->pdata);
  g_ptr_array_remove_index (change->fields, change->fields->len - 1);
  ff_console_line (console, "  %-10s %s", change->item->label,
                   change->is_new ? ff_name_text (&ff_names_kind, (int) change->item->kind)
                                  : fields);
}

static void
print_changes (FfConsole *console, const FfGearImport *import, gboolean added)
{
  ff_json_begin_array (console->json, added ? "added" : "changed");
  if ((added ? import->added : import->changed) > 0)
    ff_console_line (console, "%s", added ? _ ("Added:") : _ ("Changed:"));
  for (guint i = 0; i < import->changes->len; i++)
    {
      const FfGearChange *change = g_ptr_array_index (import->changes, i);

      if (change->is_new == added)
        print_change (console, change);
    }
  ff_json_end (console->json);
}

static void
print_import (FfConsole *console, const FfGearImport *import)
{
  ff_json_flag (console->json, "dry_run", dry_run);
  print_changes (console, import, TRUE);
  print_changes (console, import, FALSE);
  ff_json_integer (console->json, "unchanged", import->same);
  ff_console_line (console, _ ("%u added, %u changed, %u as they were"), import->added,
                   import->changed, import->same);
  if (dry_run)
    ff_console_line (console, "%s", _ ("Nothing was stored: this was a dry run."));
}

static FfOutcome
run_import (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autofree char *text = NULL;
  g_autofree char *by = NULL;
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (GPtrArray) members = NULL;
  g_autoptr (FfGearImport) import = NULL;

  if (!ff_console_want_words (console, 2, "import FILE.csv", error)
      || (text = ff_file_read (console->words[1], FF_GEAR_CSV_MOST, error)) == NULL)
    return FF_FAILED;
  store = ff_console_open (console, dry_run ? FF_RECORDS_READ : FF_RECORDS_WRITE, error);
  if (store == NULL || (by = who (store, error)) == NULL
      || (items = ff_items_load (store, error)) == NULL
      || (members = ff_members_load (store, error)) == NULL)
    return FF_FAILED;
  import = ff_gear_csv_read (text, items, members, error);
  if (import == NULL
      || (!dry_run && !ff_gear_import_store (import, store, by, now (), error)))
    {
      g_prefix_error (error, "%s: ", console->words[1]);
      return FF_FAILED;
    }
  print_import (console, import);
  return FF_DONE;
}

static FfOutcome
run_export (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (GPtrArray) members = NULL;
  g_autofree char *text = NULL;

  if (!ff_console_want_words (console, 2, "export FILE.csv", error) || store == NULL
      || (items = ff_items_load (store, error)) == NULL
      || (members = ff_members_load (store, error)) == NULL)
    return FF_FAILED;
  text = ff_gear_csv_write (items, members);
  if (!ff_file_write_new (console->words[1], text, error))
    return FF_FAILED;
  ff_json_text (console->json, "file", console->words[1]);
  ff_json_integer (console->json, "items", items->len);
  ff_console_line (console, _ ("%u items written to %s"), items->len, console->words[1]);
  return FF_DONE;
}

/* ---- What is measured and decided at batteries ---- */

static gboolean
read_temperature (double *ret_celsius, GError **error)
{
  return temperature_text == NULL
         || ff_option_number ("--temperature", temperature_text, -60, 120, ret_celsius, error);
}

static gboolean
measure (FfStore *store, const FfItem *battery, const char *by, GError **error)
{
  g_autoptr (FfResistance) resistance = ff_resistance_new ();

  if (cells_text == NULL)
    return ff_option_missing ("--cells", error);
  resistance->at = now ();
  ff_set_text (&resistance->by, by);
  if (!ff_resistance_parse (resistance, cells_text, battery->cells, error))
    {
      g_prefix_error (error, "--cells: ");
      return FALSE;
    }
  return read_temperature (&resistance->temperature_c, error)
         && ff_resistance_add (store, battery->id, resistance, error);
}

static gboolean
decide (FfStore *store, const FfItem *battery, const char *by, GError **error)
{
  FfIncident incident = { .at = now (), .found = why_text, .by = (char *) by };
  int sign, decision;

  if (sign_text == NULL || decision_text == NULL || why_text == NULL)
    return ff_option_missing (sign_text == NULL       ? "--sign"
                              : decision_text == NULL ? "--decision"
                                                      : "--why",
                              error);
  if (!ff_option_name ("--sign", &ff_names_sign, sign_text, &sign, error)
      || !ff_option_name ("--decision", &ff_names_decision, decision_text, &decision, error))
    return FALSE;
  incident.sign = (FfSign) sign;
  incident.decision = (FfDecision) decision;
  return ff_incident_add (store, battery->id, &incident, error);
}

static gboolean
note_day (FfStore *store, const FfItem *battery, const char *by, GError **error)
{
  FfBatteryDay day = { .at = now (), .percent = NAN, .temperature_c = NAN, .by = (char *) by };
  int state;

  if (day_text == NULL)
    return ff_option_missing ("--is", error);
  if (!ff_option_name ("--is", &ff_names_battery_day, day_text, &state, error)
      || !read_temperature (&day.temperature_c, error)
      || (percent_text != NULL
          && !ff_option_number ("--percent", percent_text, 0, 100, &day.percent, error))
      || (until_text != NULL && !ff_option_instant ("--until", until_text, &day.until, error)))
    return FALSE;
  day.state = (FfBatteryDayState) state;
  return ff_battery_day_add (store, battery->id, &day, error);
}

typedef gboolean (*Doing) (FfStore *store, const FfItem *battery, const char *by, GError **error);

static FfOutcome
run_doing (FfConsole *console, Doing doing, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfItem) item = NULL;
  g_autoptr (FfItem) after = NULL;
  g_autofree char *by = NULL;

  if (!ff_console_want_words (console, 2, "ITEM", error)
      || (store = ff_console_open (console, FF_RECORDS_WRITE, error)) == NULL
      || (item = load_item (console, store, error)) == NULL || (by = who (store, error)) == NULL)
    return FF_FAILED;
  if (item->kind != FF_KIND_BATTERY)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s is no battery"), item->label);
      return FF_FAILED;
    }
  if (!doing (store, item, by, error) || (after = ff_item_load (store, item->id, error)) == NULL
      || !ff_print_item (console, store, after, error))
    return FF_FAILED;
  return FF_DONE;
}

/* ---- What it is fitted on ---- */

/* NULL with no error: taken off. */
static gboolean
read_on (FfStore *store, const FfItem *item, char **ret_id, GError **error)
{
  g_autofree char *id = NULL;
  g_autoptr (FfItem) on = NULL;

  *ret_id = NULL;
  if (on_text == NULL)
    return ff_option_missing ("--on", error);
  if (g_ascii_strcasecmp (on_text, "none") == 0)
    return TRUE;
  id = ff_item_find (store, on_text, error);
  on = id != NULL ? ff_item_load (store, id, error) : NULL;
  if (on == NULL)
    {
      g_prefix_error (error, "--on: ");
      return FALSE;
    }
  if (!ff_fitting_suits (item, on))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--on: %s is not fitted on %s; accepted: propellers on an aircraft, a filter "
                      "in the frame that it can't go without or on a camera, none"),
                   item->label, on->label);
      return FALSE;
    }
  *ret_id = g_steal_pointer (&id);
  return TRUE;
}

static FfOutcome
run_fit (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfItem) item = NULL;
  g_autofree char *by = NULL;
  g_autofree char *on_id = NULL;
  gint64 at = now ();

  if (!ff_console_want_words (console, 2, "fit ITEM", error)
      || (at_text != NULL && !ff_option_instant ("--at", at_text, &at, error))
      || (store = ff_console_open (console, FF_RECORDS_WRITE, error)) == NULL
      || (item = load_item (console, store, error)) == NULL || (by = who (store, error)) == NULL
      || !read_on (store, item, &on_id, error))
    return FF_FAILED;
  if (item->kind != FF_KIND_PROPELLERS && item->kind != FF_KIND_FILTER)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("%s is neither a propeller set nor a filter"), item->label);
      return FF_FAILED;
    }
  return ff_fitting_add (store, item->id, on_id, at, by, error)
                 && ff_print_item (console, store, item, error)
             ? FF_DONE
             : FF_FAILED;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *verb = console->n_words > 0 ? console->words[0] : "";

  if (g_str_equal (verb, "list"))
    return run_list (console, error);
  if (g_str_equal (verb, "show"))
    return run_show (console, error);
  if (g_str_equal (verb, "set"))
    return run_set (console, error);
  if (g_str_equal (verb, "import"))
    return run_import (console, error);
  if (g_str_equal (verb, "export"))
    return run_export (console, error);
  if (g_str_equal (verb, "measure"))
    return run_doing (console, measure, error);
  if (g_str_equal (verb, "decide"))
    return run_doing (console, decide, error);
  if (g_str_equal (verb, "day"))
    return run_doing (console, note_day, error);
  if (g_str_equal (verb, "fit"))
    return run_fit (console, error);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("gear: found “%s”; accepted: list, show, set, import, export, measure, decide, "
                  "day, fit"),
               verb);
  return FF_FAILED;
}

const FfCommand ff_command_gear = {
  .name = "gear",
  .summary = N_ ("List the gear, say what happened to it, carry it as CSV"),
  .usage = "gear list|show|set|import|export|measure|decide|day|fit [ITEM|FILE]",
  .example = "fieldfarectl gear set ND16 --state out --why lent --with Brackenholt "
             "--until 2027-09-19",
  .entries = entries,
  .run = run,
};
