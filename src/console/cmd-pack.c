/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-charge-watch.h"
#include "ff-civil.h"
#include "ff-command.h"
#include "ff-crew.h"
#include "ff-day.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-number.h"
#include "ff-pack-list.h"

static char **out_items, **in_items, **base_items, **not_taken_items, **missing_items, **undo_items;
static char **watches, **spares;
static char *why_text, *case_text, *by_text, *at_text;
static gboolean all_out;

static GOptionEntry entries[] = {
  { "out", 0, 0, G_OPTION_ARG_STRING_ARRAY, &out_items, N_ ("Count an item out; may be repeated"),
    "ITEM" },
  { "all-out", 0, 0, G_OPTION_ARG_NONE, &all_out, N_ ("Count out all that is still open"), NULL },
  { "in", 0, 0, G_OPTION_ARG_STRING_ARRAY, &in_items,
    N_ ("Count an item in on the ground; may be repeated"), "ITEM" },
  { "at-base", 0, 0, G_OPTION_ARG_STRING_ARRAY, &base_items,
    N_ ("Count an item in at base; may be repeated"), "ITEM" },
  { "not-taken", 0, 0, G_OPTION_ARG_STRING_ARRAY, &not_taken_items,
    N_ ("Leave an item behind; needs --why"), "ITEM" },
  { "missing", 0, 0, G_OPTION_ARG_STRING_ARRAY, &missing_items,
    N_ ("An item that was not found on the ground"), "ITEM" },
  { "undo", 0, 0, G_OPTION_ARG_STRING_ARRAY, &undo_items,
    N_ ("Take back the last count of an item"), "ITEM" },
  { "why", 0, 0, G_OPTION_ARG_STRING, &why_text, N_ ("Why, or in what condition"), "TEXT" },
  { "in-case", 0, 0, G_OPTION_ARG_STRING, &case_text, N_ ("The case it went into, if not its own"),
    "CASE" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("Initials of who counts"), "INITIALS" },
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_text, N_ ("When; now unless given"), "TIME" },
  { "spare", 0, 0, G_OPTION_ARG_STRING_ARRAY, &spares,
    N_ ("The crew's rule: so many spares of battery, propellers or card"), "KIND=N" },
  { "watch", 0, 0, G_OPTION_ARG_STRING_ARRAY, &watches,
    N_ ("Who attends the charger; replaces those entered; “none” takes them away"),
    "DAY,HH:MM-HH:MM,INITIALS" },
  G_OPTION_ENTRY_NULL,
};

/* ---- JSON ---- */

static void
json_entry (FfJson *json, const FfPackEntry *entry)
{
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "item", entry->label);
  ff_json_text (json, "need", entry->extra ? "extra"
                                           : ff_name_token (&ff_names_pack_need,
                                                            (int) entry->need));
  ff_json_text (json, "state", ff_name_token (&ff_names_state, (int) entry->state));
  ff_json_flag (json, "out", entry->marks[FF_PACK_OUT] == FF_PACK_DONE);
  ff_json_flag (json, "in", entry->marks[FF_PACK_GROUND] == FF_PACK_DONE);
  ff_json_flag (json, "at_base", entry->marks[FF_PACK_BASE] == FF_PACK_DONE);
  ff_json_text (json, "not_taken", entry->marks[FF_PACK_OUT] == FF_PACK_NOT_TAKEN
                                       ? entry->conditions[FF_PACK_OUT] : NULL);
  ff_json_flag (json, "missing", entry->marks[FF_PACK_GROUND] == FF_PACK_MISSING
                                     || entry->marks[FF_PACK_BASE] == FF_PACK_MISSING);
  ff_json_text (json, "kind", ff_name_token (&ff_names_kind, (int) entry->kind));
  ff_json_text (json, "title", entry->title);
  ff_json_text (json, "why", entry->why);
  ff_json_text (json, "due", *entry->due != '\0' ? entry->due : NULL);
  ff_json_text (json, "slot", *entry->slot != '\0' ? entry->slot : NULL);
  ff_json_text (json, "last_seen", entry->last_seen);
  ff_json_rounded (json, "mass_kg", entry->mass_kg, 3);
  ff_json_rounded (json, "energy_wh", entry->energy_wh, 2);
  ff_json_end (json);
}

static void
json_cases (FfJson *json, const FfPackList *list)
{
  ff_json_begin_array (json, "cases");
  for (guint i = 0; i < list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (list->cases, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "case", *box->case_label != '\0' ? box->case_label : NULL);
      ff_json_rounded (json, "mass_kg", box->mass_kg, 3);
      ff_json_integer (json, "mass_unknown", box->mass_unknown);
      ff_json_rounded (json, "energy_wh", box->energy_wh, 2);
      ff_json_begin_array (json, "lines");
      for (guint j = 0; j < box->entries->len; j++)
        json_entry (json, g_ptr_array_index (box->entries, j));
      ff_json_end (json);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
json_shorts (FfJson *json, const FfPackList *list)
{
  ff_json_begin_array (json, "short");
  for (guint i = 0; i < list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (list->shorts, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "item", missing->item);
      ff_json_text (json, "reason", missing->reason);
      ff_json_text (json, "advice", *missing->advice != '\0' ? missing->advice : NULL);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
json_instant (FfJson *json, const char *name, gint64 instant, GTimeZone *zone)
{
  g_autofree char *text = instant != 0 ? ff_instant_format ((double) instant, zone) : NULL;

  ff_json_text (json, name, text);
}

static void
json_evening (FfJson *json, const FfChargeEvening *evening, GTimeZone *zone)
{
  ff_json_begin_object (json, "charge_evening");
  ff_json_begin_array (json, "turns");
  for (guint i = 0; i < evening->turns->len; i++)
    {
      const FfChargeTurn *turn = g_ptr_array_index (evening->turns, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "battery", turn->battery);
      ff_json_text (json, "charger", turn->charger);
      ff_json_integer (json, "slot", turn->slot);
      json_instant (json, "from", turn->from, zone);
      json_instant (json, "to", turn->to, zone);
      ff_json_text (json, "attended_by", turn->attended_by);
      ff_json_end (json);
    }
  ff_json_end (json);
  ff_json_texts (json, "remarks", evening->remarks);
  ff_json_texts (json, "not_charged", evening->not_charged);
  json_instant (json, "first_by", evening->first_by, zone);
  json_instant (json, "done_at", evening->done_at, zone);
  ff_json_integer (json, "busy_minutes", evening->busy_minutes);
  ff_json_text (json, "trouble", *evening->trouble != '\0' ? evening->trouble : NULL);
  ff_json_end (json);
}

static void
write_json (FfJson *json, const FfPackList *list, GTimeZone *zone)
{
  ff_json_text (json, "job", list->job);
  json_cases (json, list);
  json_shorts (json, list);
  ff_json_texts (json, "clashes", list->clashes);
  ff_json_texts (json, "due", list->due);
  ff_json_texts (json, "turn_rounds", list->swaps);
  ff_json_texts (json, "remarks", list->remarks);
  ff_json_begin_object (json, "counted");
  ff_json_integer (json, "lines", list->n_lines);
  ff_json_integer (json, "out", list->n_marked[FF_PACK_OUT]);
  ff_json_integer (json, "in", list->n_marked[FF_PACK_GROUND]);
  ff_json_integer (json, "at_base", list->n_marked[FF_PACK_BASE]);
  ff_json_integer (json, "not_taken", list->n_not_taken);
  ff_json_end (json);
  json_evening (json, list->evening, zone);
}

/* ---- Text ---- */

/* The label padded by letters, not bytes. */
static void
print_entry (FfConsole *console, const FfPackEntry *entry)
{
  const char *more = entry->marks[FF_PACK_OUT] == FF_PACK_NOT_TAKEN
                         ? entry->conditions[FF_PACK_OUT] : entry->due;
  glong pad = MAX (13 - g_utf8_strlen (entry->label, -1), 0);
  g_autofree char *line = g_strdup_printf (
      "  %s %s %s  %s%*s %s%s%s", ff_pack_mark_shape (entry->marks[FF_PACK_OUT]),
      ff_pack_mark_shape (entry->marks[FF_PACK_GROUND]), ff_pack_mark_shape (entry->marks[FF_PACK_BASE]),
      entry->label, (int) pad, "", entry->why, *more != '\0' ? "; " : "", more);

  ff_console_wrap (console, 24, line);
}

static void
print_case (FfConsole *console, const FfPackCase *box)
{
  g_autofree char *mass = ff_number_format (box->mass_kg, 2);
  g_autofree char *energy = ff_number_format (box->energy_wh, 1);
  g_autoptr (GString) head = g_string_new (NULL);

  if (*box->case_label != '\0')
    g_string_append_printf (head, _ ("Case %s"), box->case_label);
  else
    g_string_append (head, _ ("In no case"));
  if (box->mass_kg > 0)
    g_string_append_printf (head, _ ("  %s kg known, %u without a weight"), mass,
                            box->mass_unknown);
  if (box->energy_wh > 0)
    g_string_append_printf (head, _ ("  %s Wh"), energy);
  ff_console_line (console, "\n%s", head->str);
  for (guint i = 0; i < box->entries->len; i++)
    print_entry (console, g_ptr_array_index (box->entries, i));
}

static void
print_shorts (FfConsole *console, const FfPackList *list)
{
  const char *look = NULL;

  for (guint i = 0; i < list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (list->shorts, i);
      g_autofree char *line
          = g_strdup_printf (_ ("SHORT  %s: %s. %s"), missing->item, missing->reason,
                             missing->counted ? "" : missing->advice);

      ff_console_wrap (console, 7, g_strchomp (line));
      look = missing->counted ? missing->advice : look;
    }
  if (look != NULL)
    ff_console_line (console, "       %s", look);
}

static void
print_texts (FfConsole *console, const char *heading, const GPtrArray *texts)
{
  if (texts->len > 0)
    ff_console_line (console, "\n%s", heading);
  for (guint i = 0; i < texts->len; i++)
    {
      g_autofree char *line = g_strconcat ("  ", g_ptr_array_index (texts, i), NULL);

      ff_console_wrap (console, 4, line);
    }
}

static void
print_evening (FfConsole *console, const FfChargeEvening *evening, GTimeZone *zone)
{
  ff_console_line (console, _ ("\nCharging before the job"));
  if (*evening->words != '\0')
    ff_console_wrap (console, 0, evening->words);
  if (*evening->trouble != '\0')
    ff_console_wrap (console, 0, evening->trouble);
  for (guint i = 0; i < evening->remarks->len; i++)
    ff_console_wrap (console, 0, g_ptr_array_index (evening->remarks, i));
  for (guint i = 0; i < evening->turns->len; i++)
    {
      const FfChargeTurn *turn = g_ptr_array_index (evening->turns, i);
      g_autofree char *from = ff_instant_clock ((double) turn->from, zone);
      g_autofree char *to = ff_instant_clock ((double) turn->to, zone);

      ff_console_line (console, _ ("  %s–%s  battery %s in %s, slot %u, attended by %s"), from, to,
                       turn->battery, turn->charger, turn->slot, turn->attended_by);
    }
}

static void
write_text (FfConsole *console, const FfPackList *list, GTimeZone *zone)
{
  ff_console_line (console, _ ("%s · %s · out %u, in %u, at base %u of %u lines\n"), list->job,
                   list->date, list->n_marked[FF_PACK_OUT], list->n_marked[FF_PACK_GROUND],
                   list->n_marked[FF_PACK_BASE], list->n_lines);
  for (guint i = 0; i < list->remarks->len; i++)
    ff_console_wrap (console, 0, g_ptr_array_index (list->remarks, i));
  print_shorts (console, list);
  for (guint i = 0; i < list->clashes->len; i++)
    ff_console_wrap (console, 0, g_ptr_array_index (list->clashes, i));
  ff_console_line (console, _ ("Out, in on the ground, in at base: □ open ■ done – not taken ✕ "
                               "missing"));
  for (guint i = 0; i < list->cases->len; i++)
    print_case (console, g_ptr_array_index (list->cases, i));
  print_texts (console, _ ("Checks that come up"), list->due);
  print_texts (console, _ ("Filter wallet"), list->swaps);
  print_evening (console, list->evening, zone);
}

/* ---- Counting ---- */

typedef struct {
  FfStore *store;
  FfDay *day;
  FfPackList *list;
  gint64 at;
  char *by;
} Count;

static gboolean
append (const Count *count, const char *item_id, FfPackStage stage, FfPackMark mark, GError **error)
{
  g_autoptr (FfPackEvent) event = ff_pack_event_new (count->list->job_id, item_id);
  g_autoptr (FfItem) item = ff_item_load (count->store, item_id, error);

  if (item == NULL)
    return FALSE;
  event->at = count->at;
  event->stage = stage;
  event->mark = mark;
  ff_set_text (&event->case_label, case_text != NULL ? case_text : item->case_label);
  ff_set_text (&event->condition, why_text);
  ff_set_text (&event->entered_by, count->by);
  return ff_pack_event_append (count->store, event, error);
}

static gboolean
mark_each (const Count *count,
           const char *option,
           char **items,
           FfPackStage stage,
           FfPackMark mark,
           GError **error)
{
  for (guint i = 0; items != NULL && items[i] != NULL; i++)
    {
      g_autofree char *id = ff_item_find (count->store, items[i], error);

      if (id == NULL)
        {
          g_prefix_error (error, "%s: ", option);
          return FALSE;
        }
      if (!append (count, id, stage, mark, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
mark_all_out (const Count *count, GError **error)
{
  for (guint i = 0; all_out && i < count->list->cases->len; i++)
    {
      const FfPackCase *box = g_ptr_array_index (count->list->cases, i);

      for (guint j = 0; j < box->entries->len; j++)
        {
          const FfPackEntry *entry = g_ptr_array_index (box->entries, j);

          if (!entry->extra && entry->marks[FF_PACK_OUT] == FF_PACK_OPEN
              && !append (count, entry->item_id, FF_PACK_OUT, FF_PACK_DONE, error))
            return FALSE;
        }
    }
  return TRUE;
}

/* The stage that was counted last is the one that is taken back. */
static gboolean
undo_each (const Count *count, GError **error)
{
  for (guint i = 0; undo_items != NULL && undo_items[i] != NULL; i++)
    {
      g_autofree char *id = ff_item_find (count->store, undo_items[i], error);
      const FfPackEntry *entry = id != NULL ? ff_pack_list_find (count->list, id) : NULL;
      int stage = FF_N_PACK_STAGES - 1;

      if (id == NULL)
        return FALSE;
      while (entry != NULL && stage >= 0 && entry->marks[stage] == FF_PACK_OPEN)
        stage--;
      if (entry == NULL || stage < 0)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--undo: “%s” was not counted; nothing to take back"), undo_items[i]);
          return FALSE;
        }
      if (!append (count, id, (FfPackStage) stage, FF_PACK_OPEN, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
save_spares (FfStore *store, GError **error)
{
  for (guint i = 0; spares != NULL && spares[i] != NULL; i++)
    {
      g_auto (GStrv) parts = g_strsplit (spares[i], "=", 2);
      int kind, number;

      if (parts[0] == NULL || parts[1] == NULL)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--spare: found “%s”; accepted: battery=N, propellers=N or card=N"),
                       spares[i]);
          return FALSE;
        }
      if (!ff_option_name ("--spare", &ff_names_kind, parts[0], &kind, error)
          || !ff_integer_parse ("--spare", parts[1], 0, 99, &number, error)
          || !ff_spare_rule_save (store, (FfKind) kind, number, error))
        return FALSE;
    }
  return TRUE;
}

static const FfMember *
member_of (const GPtrArray *members, const char *initials)
{
  for (guint i = 0; i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      if (g_ascii_strcasecmp (member->initials, initials) == 0)
        return member;
    }
  return NULL;
}

static FfWatch *
read_watch (const GPtrArray *members, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ",", 3);
  g_auto (GStrv) clocks
      = g_strsplit (g_strv_length (parts) == 3 ? parts[1] : "", "-", 2);
  const FfMember *member = g_strv_length (parts) == 3 ? member_of (members, parts[2]) : NULL;
  g_autoptr (FfWatch) watch = ff_watch_new ();
  FfDate date;

  if (g_strv_length (parts) != 3 || g_strv_length (clocks) != 2 || member == NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--watch: found “%s”; accepted: DAY,HH:MM-HH:MM,INITIALS of the crew"), text);
      return NULL;
    }
  if (!ff_date_parse (parts[0], &date, error)
      || !ff_clock_parse (clocks[0], &watch->from_clock, error)
      || !ff_clock_parse (clocks[1], &watch->to_clock, error))
    {
      g_prefix_error (error, "--watch: ");
      return NULL;
    }
  if (watch->to_clock <= watch->from_clock)
    watch->to_clock += 24 * 60;
  ff_set_text (&watch->date, parts[0]);
  ff_set_text (&watch->member_id, member->id);
  return g_steal_pointer (&watch);
}

static gboolean
save_watches (FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) kept = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_watch_free);
  g_autoptr (GPtrArray) members = NULL;

  if (watches == NULL)
    return TRUE;
  members = ff_members_load (store, error);
  if (members == NULL)
    return FALSE;
  for (guint i = 0; watches[i] != NULL; i++)
    {
      FfWatch *watch;

      if (g_str_equal (watches[i], "none"))
        continue;
      watch = read_watch (members, watches[i], error);
      if (watch == NULL)
        return FALSE;
      g_ptr_array_add (kept, watch);
    }
  return ff_watches_save (store, job_id, kept, error);
}

static gboolean
count_all (const Count *count, GError **error)
{
  return mark_all_out (count, error)
         && mark_each (count, "--out", out_items, FF_PACK_OUT, FF_PACK_DONE, error)
         && mark_each (count, "--not-taken", not_taken_items, FF_PACK_OUT, FF_PACK_NOT_TAKEN, error)
         && mark_each (count, "--in", in_items, FF_PACK_GROUND, FF_PACK_DONE, error)
         && mark_each (count, "--missing", missing_items, FF_PACK_GROUND, FF_PACK_MISSING, error)
         && mark_each (count, "--at-base", base_items, FF_PACK_BASE, FF_PACK_DONE, error)
         && undo_each (count, error) && save_spares (count->store, error)
         && save_watches (count->store, count->list->job_id, error);
}

/* All or nothing. */
static gboolean
change (Count *count, GError **error)
{
  if (!ff_records_begin (count->store, error))
    return FALSE;
  if (count_all (count, error))
    return ff_records_commit (count->store, error);
  ff_records_rollback (count->store);
  return FALSE;
}

static gboolean
changes_anything (void)
{
  return all_out || out_items != NULL || in_items != NULL || base_items != NULL
         || not_taken_items != NULL || missing_items != NULL || undo_items != NULL
         || spares != NULL || watches != NULL;
}

static gboolean
load (Count *count, const char *wanted, GError **error)
{
  g_clear_pointer (&count->list, ff_pack_list_free);
  count->list = ff_pack_list_load (count->store, wanted, error);
  return count->list != NULL;
}

static void
count_clear (Count *count)
{
  ff_day_free (count->day);
  ff_pack_list_free (count->list);
  g_free (count->by);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Count, count_clear)

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_auto (Count) count = { .at = g_get_real_time () / G_USEC_PER_SEC };

  if (!ff_console_want_words (console, 1, "JOB", error)
      || (at_text != NULL && !ff_option_instant ("--at", at_text, &count.at, error)))
    return FF_FAILED;
  if (not_taken_items != NULL && why_text == NULL)
    {
      ff_option_missing ("--why", error);
      return FF_FAILED;
    }
  store = ff_console_open (console, changes_anything () ? FF_RECORDS_WRITE : FF_RECORDS_READ,
                           error);
  count.store = store;
  count.day = store != NULL ? ff_day_load (store, console->words[0], error) : NULL;
  if (count.day == NULL || !ff_option_initials ("--by", by_text, store, &count.by, error)
      || !load (&count, console->words[0], error)
      || (changes_anything ()
          && (!change (&count, error) || !load (&count, console->words[0], error))))
    return FF_FAILED;
  write_json (console->json, count.list, ff_day_zone (count.day));
  write_text (console, count.list, ff_day_zone (count.day));
  return count.list->shorts->len > 0 ? FF_NO : FF_DONE;
}

const FfCommand ff_command_pack = {
  .name = "pack",
  .summary = N_ ("Show what goes in the van, and count it out and in"),
  .usage = "pack JOB [--out ITEM | --all-out | --in ITEM | --at-base ITEM]\n"
           "    [--not-taken ITEM --why TEXT] [--missing ITEM] [--undo ITEM]\n"
           "    [--in-case CASE] [--by INITIALS] [--at TIME]\n"
           "    [--watch DAY,HH:MM-HH:MM,INITIALS] [--spare KIND=N]",
  .example = "fieldfarectl pack Skarrowick --out ND32 --out ND16 --by MO",
  .entries = entries,
  .run = run,
};
