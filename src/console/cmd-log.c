/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-crew.h"
#include "ff-csv.h"
#include "ff-day-checks.h"
#include "ff-error.h"
#include "ff-file.h"
#include "ff-flight-sky.h"
#include "ff-flight.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limits.h"
#include "ff-number.h"
#include "ff-paper.h"
#include "ff-paragraph.h"
#include "ff-place.h"
#include "ff-standing.h"

static char *csv_path;
static char *line_text, *off_text, *down_text, *battery_text, *filters_text, *by_text, *note_text;
static char *percent_off_text, *percent_down_text, *battery_c_text;

static GOptionEntry entries[] = {
  { "csv", 0, 0, G_OPTION_ARG_FILENAME, &csv_path, N_ ("Also write the log as CSV"), "FILE" },
  { "line", 0, 0, G_OPTION_ARG_STRING, &line_text, N_ ("add: line of the plan; 0: none"), "N" },
  { "off", 0, 0, G_OPTION_ARG_STRING, &off_text, N_ ("add: when it was off"), "TIME" },
  { "down", 0, 0, G_OPTION_ARG_STRING, &down_text, N_ ("add: when it was down"), "TIME" },
  { "battery", 0, 0, G_OPTION_ARG_STRING, &battery_text, N_ ("add: battery really used"), "ITEM" },
  { "filters", 0, 0, G_OPTION_ARG_STRING, &filters_text, N_ ("add: filters really fitted"),
    "LIST" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("add: initials of who enters it"), "INITIALS" },
  { "note", 0, 0, G_OPTION_ARG_STRING, &note_text, N_ ("add: note"), "TEXT" },
  { "percent-off", 0, 0, G_OPTION_ARG_STRING, &percent_off_text,
    N_ ("add: charge the battery showed at take-off"), "P" },
  { "percent-down", 0, 0, G_OPTION_ARG_STRING, &percent_down_text,
    N_ ("add: charge it showed at landing"), "P" },
  { "battery-c", 0, 0, G_OPTION_ARG_STRING, &battery_c_text,
    N_ ("add: its temperature at take-off"), "C" },
  G_OPTION_ENTRY_NULL,
};

typedef struct {
  FfJob *job;
  GTimeZone *zone; /* NULL: UTC */
  GPtrArray *items, *flights;
  GPtrArray *said; /* FfSaidFact: entered in the runs of lists */
} Log;

static void
log_clear (Log *log)
{
  ff_job_free (log->job);
  g_clear_pointer (&log->zone, g_time_zone_unref);
  g_clear_pointer (&log->items, g_ptr_array_unref);
  g_clear_pointer (&log->flights, g_ptr_array_unref);
  g_clear_pointer (&log->said, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Log, log_clear)

static gboolean
load_log (Log *log, FfStore *store, const char *wanted, GError **error)
{
  g_autofree char *id = ff_job_find (store, wanted, error);
  g_autoptr (FfPlace) place = NULL;

  log->job = id != NULL ? ff_job_load (store, id, error) : NULL;
  if (log->job == NULL)
    return FALSE;
  if (*log->job->place_id != '\0')
    {
      place = ff_place_load (store, log->job->place_id, error);
      log->zone = place != NULL ? ff_zone_new (place->zone, error) : NULL;
      if (log->zone == NULL)
        return FALSE;
    }
  log->items = ff_items_load (store, error);
  log->flights = log->items != NULL ? ff_flights_load (store, id, error) : NULL;
  log->said = log->flights != NULL ? ff_day_said (store, id, error) : NULL;
  return log->said != NULL;
}

static const FfItem *
item_of (const Log *log, const char *id)
{
  for (guint i = 0; i < log->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (log->items, i);

      if (strcmp (item->id, id) == 0)
        return item;
    }
  return NULL;
}

static const char *
label_of (const Log *log, const char *id)
{
  const FfItem *item = item_of (log, id);

  return item != NULL ? item->label : id;
}

static char *
filter_labels (const Log *log, const FfFlight *flight)
{
  GString *labels = g_string_new (NULL);

  for (guint i = 0; i < flight->filter_ids->len; i++)
    g_string_append_printf (labels, "%s%s", i > 0 ? " + " : "",
                            label_of (log, g_ptr_array_index (flight->filter_ids, i)));
  return g_string_free (labels, FALSE);
}

/* ---- Out ---- */

/* "100 % off, 38 % down, 14 °C", where any of it was read. */
static void
print_battery (FfConsole *console, const FfFlight *flight)
{
  const struct {
    double value;
    const char *words;
  } read[] = {
    /* Translators: after a percentage: what a battery showed at take-off, and at landing. */
    { flight->percent_off, _ ("% off") },
    { flight->percent_down, _ ("% down") },
    { flight->battery_c, _ ("°C") },
  };
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (read); i++)
    {
      g_autofree char *value = ff_number_format (read[i].value, 1);

      if (isfinite (read[i].value))
        g_string_append_printf (words, "%s%s %s", words->len > 0 ? ", " : "", value,
                                read[i].words);
    }
  if (words->len > 0)
    ff_console_line (console, "     %s", words->str);
}

/* The sky as a copy of the time; of the limits only what was not within is said aloud. */
static void
write_sky (FfConsole *console, const FfFlight *flight)
{
  g_auto (GStrv) conditions = g_strsplit (flight->conditions, "\n", -1);
  g_auto (GStrv) limits = g_strsplit (flight->limits, "\n", -1);
  const char *outside = ff_name_text (&ff_names_limit_answer, FF_LIMIT_OUTSIDE);

  ff_json_begin_array (console->json, "conditions");
  for (guint i = 0; conditions[i] != NULL; i++)
    {
      ff_json_text (console->json, NULL, conditions[i]);
      ff_console_paragraph (console, "     ", conditions[i]);
    }
  ff_json_end (console->json);
  ff_json_begin_array (console->json, "limits");
  for (guint i = 0; limits[i] != NULL; i++)
    {
      ff_json_text (console->json, NULL, limits[i]);
      if (g_str_has_prefix (limits[i], outside))
        ff_console_paragraph (console, "     ✕ ", limits[i]);
    }
  ff_json_end (console->json);
}

static void
write_flight (FfConsole *console, const Log *log, const FfFlight *flight)
{
  FfJson *json = console->json;
  g_autofree char *off = ff_instant_format ((double) flight->off, log->zone);
  g_autofree char *down = ff_instant_format ((double) flight->down, log->zone);
  g_autofree char *off_clock = ff_instant_clock ((double) flight->off, log->zone);
  g_autofree char *down_clock = ff_instant_clock ((double) flight->down, log->zone);
  g_autofree char *filters = filter_labels (log, flight);

  ff_json_begin_object (json, NULL);
  ff_json_text (json, "version", *flight->version != '\0' ? flight->version : NULL);
  ff_json_integer (json, "line", flight->line);
  ff_json_text (json, "line_id", *flight->line_id != '\0' ? flight->line_id : NULL);
  ff_json_text (json, "off", off);
  ff_json_text (json, "down", down);
  ff_json_text (json, "battery", label_of (log, flight->battery_id));
  ff_json_begin_array (json, "filters");
  for (guint i = 0; i < flight->filter_ids->len; i++)
    ff_json_text (json, NULL, label_of (log, g_ptr_array_index (flight->filter_ids, i)));
  ff_json_end (json);
  ff_json_rounded (json, "percent_off", flight->percent_off, 1);
  ff_json_rounded (json, "percent_down", flight->percent_down, 1);
  ff_json_rounded (json, "battery_c", flight->battery_c, 1);
  ff_json_text (json, "by", *flight->by != '\0' ? flight->by : NULL);
  ff_json_text (json, "note", *flight->note != '\0' ? flight->note : NULL);
  ff_console_line (console, "%3d  %s  %s  %-8s  %-12s  %-4s  %s", flight->line, off_clock,
                   down_clock, label_of (log, flight->battery_id),
                   *filters != '\0' ? filters : _ ("none"), flight->by, flight->note);
  print_battery (console, flight);
  write_sky (console, flight);
  ff_json_end (json);
}

/* Gear of this job, or flown in it, that is not fit for use. */
static void
write_defects (FfConsole *console, const Log *log)
{
  ff_json_begin_array (console->json, "defects");
  for (guint i = 0; i < log->job->item_ids->len; i++)
    {
      const FfItem *item = item_of (log, g_ptr_array_index (log->job->item_ids, i));

      if (item == NULL
          || (item->state != FF_STATE_DEFECT && item->state != FF_STATE_QUARANTINED))
        continue;
      ff_json_begin_object (console->json, NULL);
      ff_json_text (console->json, "item", item->label);
      ff_json_text (console->json, "state", ff_name_token (&ff_names_state, (int) item->state));
      ff_json_text (console->json, "why", item->state_why);
      ff_json_end (console->json);
      ff_console_line (console, "%s: %s, %s", item->label,
                       ff_name_text (&ff_names_state, (int) item->state), item->state_why);
    }
  ff_json_end (console->json);
}

/* What was entered in the runs of lists. */
static void
write_said (FfConsole *console, const Log *log)
{
  ff_json_begin_array (console->json, "facts");
  for (guint i = 0; i < log->said->len; i++)
    {
      const FfSaidFact *fact = g_ptr_array_index (log->said, i);
      g_autofree char *at = ff_instant_format ((double) fact->at, log->zone);
      g_autofree char *clock = ff_instant_clock ((double) fact->at, log->zone);

      ff_json_begin_object (console->json, NULL);
      ff_json_text (console->json, "at", at);
      ff_json_text (console->json, "list", fact->list);
      ff_json_text (console->json, "what", fact->what);
      ff_json_text (console->json, "said", fact->said);
      ff_json_text (console->json, "unit", *fact->unit != '\0' ? fact->unit : NULL);
      ff_json_text (console->json, "by", *fact->by != '\0' ? fact->by : NULL);
      ff_json_flag (console->json, "outside", fact->challenge == FF_CHALLENGE_OUTSIDE);
      ff_json_flag (console->json, "differs", fact->challenge == FF_CHALLENGE_DIFFERS);
      ff_json_flag (console->json, "from_paper", fact->from_paper);
      ff_json_end (console->json);
      ff_console_line (console, "%s  %s: %s %s  %s", clock, fact->what, fact->said, fact->unit,
                       fact->by);
    }
  ff_json_end (console->json);
}

static void
write_log (FfConsole *console, const Log *log)
{
  ff_json_text (console->json, "job", log->job->title);
  ff_json_begin_array (console->json, "flights");
  if (log->flights->len == 0)
    ff_console_line (console, _ ("No flights are logged yet."));
  else
    ff_console_line (console, _ ("line  off    down   battery   filters       by    note"));
  for (guint i = 0; i < log->flights->len; i++)
    write_flight (console, log, g_ptr_array_index (log->flights, i));
  ff_json_end (console->json);
  write_defects (console, log);
  write_said (console, log);
}

static char *
number_or_nothing (double value)
{
  return isfinite (value) ? ff_number_format (value, 1) : g_strdup ("");
}

static void
csv_flight (GString *csv, const Log *log, const FfFlight *flight)
{
  g_autofree char *line = g_strdup_printf ("%d", flight->line);
  g_autofree char *off = ff_instant_format ((double) flight->off, log->zone);
  g_autofree char *down = ff_instant_format ((double) flight->down, log->zone);
  g_autofree char *minutes = ff_number_format ((double) (flight->down - flight->off) / 60, 1);
  g_autofree char *filters = filter_labels (log, flight);
  g_autofree char *percent_off = number_or_nothing (flight->percent_off);
  g_autofree char *percent_down = number_or_nothing (flight->percent_down);
  g_autofree char *battery_c = number_or_nothing (flight->battery_c);
  const char *cells[] = { flight->version, line, off, down, minutes,
                          label_of (log, flight->battery_id), filters, flight->by, flight->note,
                          percent_off, percent_down, battery_c, flight->conditions,
                          flight->limits, NULL };

  ff_csv_row (csv, cells);
}

static gboolean
write_csv (const Log *log, GError **error)
{
  static const char *const head[] = { "version", "line", "off", "down", "minutes", "battery",
                                      "filters", "by", "note", "percent_off", "percent_down",
                                      "battery_c", "conditions", "limits", NULL };
  g_autoptr (GString) csv = g_string_new (NULL);

  ff_csv_row (csv, head);
  for (guint i = 0; i < log->flights->len; i++)
    csv_flight (csv, log, g_ptr_array_index (log->flights, i));
  return ff_file_write_new (csv_path, csv->str, error);
}

/* ---- In ---- */

/* The id of an item of the right kind. */
static char *
find_kind (const Log *log,
           FfStore *store,
           const char *option,
           const char *text,
           FfKind kind,
           GError **error)
{
  g_autofree char *id = ff_item_find (store, text, error);
  const FfItem *item = id != NULL ? item_of (log, id) : NULL;

  if (item != NULL && item->kind == kind)
    return g_steal_pointer (&id);
  if (item != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” is a %s; accepted: a %s"), option,
                 item->label, ff_name_text (&ff_names_kind, (int) item->kind),
                 ff_name_text (&ff_names_kind, (int) kind));
  else
    g_prefix_error (error, "%s: ", option);
  return NULL;
}

static gboolean
read_filters (FfFlight *flight, const Log *log, FfStore *store, GError **error)
{
  g_auto (GStrv) labels = NULL;

  if (filters_text == NULL)
    return TRUE;
  labels = ff_option_list ("--filters", filters_text, error);
  for (guint i = 0; labels != NULL && labels[i] != NULL; i++)
    {
      char *id = find_kind (log, store, "--filters", labels[i], FF_KIND_FILTER, error);

      if (id == NULL)
        return FALSE;
      g_ptr_array_add (flight->filter_ids, id);
    }
  return labels != NULL;
}

static gboolean
read_initials (FfFlight *flight, FfStore *store, GError **error)
{
  g_autofree char *initials = NULL;

  if (!ff_option_initials ("--by", by_text, store, &initials, error))
    return FALSE;
  ff_set_text (&flight->by, initials);
  return TRUE;
}

/* What the battery showed; each may be left out. */
static gboolean
read_battery (FfFlight *flight, GError **error)
{
  return (percent_off_text == NULL
          || ff_option_number ("--percent-off", percent_off_text, 0, 100, &flight->percent_off,
                               error))
         && (percent_down_text == NULL
             || ff_option_number ("--percent-down", percent_down_text, 0, 100,
                                  &flight->percent_down, error))
         && (battery_c_text == NULL
             || ff_option_number ("--battery-c", battery_c_text, -60, 120, &flight->battery_c,
                                  error));
}

static gboolean
read_flight (FfFlight *flight, const Log *log, FfStore *store, GError **error)
{
  if (line_text == NULL)
    return ff_option_missing ("--line", error);
  if (battery_text == NULL)
    return ff_option_missing ("--battery", error);
  if (!ff_integer_parse ("--line", line_text, 0, 999, &flight->line, error)
      || !ff_option_instant ("--off", off_text, &flight->off, error)
      || !ff_option_instant ("--down", down_text, &flight->down, error))
    return FALSE;
  g_free (flight->line_id);
  flight->line_id = ff_paper_line_id (store, log->job->id, flight->line, error);
  if (flight->line_id == NULL)
    return FALSE;
  ff_set_text (&flight->version, flight->line > 0 ? log->job->version : "");
  ff_set_text (&flight->note, note_text);
  g_free (flight->battery_id);
  flight->battery_id
      = find_kind (log, store, "--battery", battery_text, FF_KIND_BATTERY, error);
  return flight->battery_id != NULL && read_filters (flight, log, store, error)
         && read_battery (flight, error) && read_initials (flight, store, error);
}

/* Numbers of lines are given anew with every plan; what flew stays with its line. And the sky it
 * flew under stays with it. */
static gboolean
find_line (FfFlight *flight, FfStore *store, GError **error)
{
  g_autoptr (FfDay) day = ff_day_load (store, flight->job_id, error);
  g_autoptr (FfStanding) standing
      = day != NULL ? ff_standing_load (store, flight->job_id, error) : NULL;
  g_autoptr (FfDayPlan) plan = NULL;

  if (standing == NULL)
    return FALSE;
  g_free (flight->line_id);
  flight->line_id = ff_standing_line_id (standing, day, flight->line);
  /* A flight is logged also of a day that can't be planned. */
  plan = ff_day_plan (day, NULL, NULL);
  ff_flight_keep_sky (flight, day, plan);
  return TRUE;
}

/* One battery can't be in two flights at once: the clock or the label is mistyped. */
static gboolean
battery_is_free (const FfFlight *flight, const Log *log, GError **error)
{
  for (guint i = 0; i < log->flights->len; i++)
    {
      const FfFlight *other = g_ptr_array_index (log->flights, i);

      if (strcmp (other->battery_id, flight->battery_id) == 0 && other->off < flight->down
          && flight->off < other->down)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("battery %s is logged in the air at that time already, on line %d"),
                       label_of (log, flight->battery_id), other->line);
          return FALSE;
        }
    }
  return TRUE;
}

static FfOutcome
add (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_WRITE, error);
  g_auto (Log) log = { 0 };
  g_autoptr (FfFlight) flight = NULL;

  if (store == NULL || !load_log (&log, store, console->words[1], error))
    return FF_FAILED;
  flight = ff_flight_new (log.job->id);
  if (!read_flight (flight, &log, store, error) || !battery_is_free (flight, &log, error)
      || !find_line (flight, store, error)
      || !ff_flight_append (store, flight, error))
    return FF_FAILED;
  g_ptr_array_unref (log.flights);
  log.flights = ff_flights_load (store, log.job->id, error);
  if (log.flights == NULL)
    return FF_FAILED;
  write_log (console, &log);
  return FF_DONE;
}

static FfOutcome
show (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_auto (Log) log = { 0 };

  if (store == NULL || !load_log (&log, store, console->words[0], error)
      || (csv_path != NULL && !write_csv (&log, error)))
    return FF_FAILED;
  write_log (console, &log);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  if (console->n_words > 0 && strcmp (console->words[0], "add") == 0)
    return ff_console_want_words (console, 2, "JOB", error) ? add (console, error) : FF_FAILED;
  return ff_console_want_words (console, 1, "JOB", error) ? show (console, error) : FF_FAILED;
}

const FfCommand ff_command_log = {
  .name = "log",
  .summary = N_ ("Show what really flew, and add to it"),
  .usage = "log JOB [--csv FILE]\n  fieldfarectl log add JOB --line N --off TIME --down TIME "
           "--battery ITEM\n    [--filters LIST] [--percent-off P] [--percent-down P]\n    "
           "[--battery-c C] [--by INITIALS] [--note TEXT]",
  .example = "fieldfarectl log add Skarrowick --line 1 --off 2027-09-18T16:30:00+01:00 \\\n"
             "    --down 2027-09-18T16:46:00+01:00 --battery b1 --filters ND32 \\\n"
             "    --percent-off 100 --percent-down 41 --battery-c 18 --by JV",
  .entries = entries,
  .run = run,
};
