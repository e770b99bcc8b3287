/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-explain.h"
#include "ff-day-prices.h"
#include "ff-day-reading.h"
#include "ff-error.h"
#include "ff-explain-lines.h"
#include "ff-number.h"
#include "ff-paper.h"
#include "ff-paragraph.h"
#include "ff-print-cases.h"

static char *case_text;
static char *late_text;
static char **without;
static char **moves;
static gboolean any_order;
static char *legs_text;
static char **price_texts;
static gboolean explain;

#define MOST_LEGS 5
static FfPrices prices; /* that this plan is made with */

static GOptionEntry entries[] = {
  { "case", 0, 0, G_OPTION_ARG_STRING, &case_text, N_ ("Plan for another sky"), "SKY" },
  { "late", 0, 0, G_OPTION_ARG_STRING, &late_text, N_ ("First off so many minutes late"), "MIN" },
  { "without", 0, 0, G_OPTION_ARG_STRING_ARRAY, &without, N_ ("Without an item; may be repeated"),
    "ITEM" },
  { "move", 0, 0, G_OPTION_ARG_STRING_ARRAY, &moves,
    N_ ("Move a shot's window to open then; may be repeated"), "SHOT=HH:MM" },
  { "any-order", 0, 0, G_OPTION_ARG_NONE, &any_order,
    N_ ("Shots in any order that their windows allow"), NULL },
  { "legs", 0, 0, G_OPTION_ARG_STRING, &legs_text,
    N_ ("Legs that one battery may fly on a charge; not in the cold"), "N" },
  { "price", 0, 0, G_OPTION_ARG_STRING_ARRAY, &price_texts,
    N_ ("Another price; --explain lists them; may be repeated"), "NAME=VALUE" },
  { "explain", 0, 0, G_OPTION_ARG_NONE, &explain, N_ ("Say why, step by step with formulae, and what it costs"), NULL },
  G_OPTION_ENTRY_NULL,
};

/* The plan with the day that it was made from. */
typedef struct {
  const FfDay *day;
  const FfDayPlan *plan;
  const GPtrArray *drops; /* FfDrop */
  const char *letter;     /* "A, amendments 1–2" */
} Answer;

/* ---- JSON ---- */

static void
json_settings (FfJson *json, const char *name, const FfPlanSettings *settings)
{
  ff_json_begin_object (json, name);
  ff_json_number (json, "aperture", settings->aperture);
  ff_json_text (json, "shutter", settings->shutter);
  ff_json_number (json, "shutter_s", settings->shutter_s);
  ff_json_rounded (json, "shutter_angle_deg", settings->shutter_angle_deg, 2);
  ff_json_integer (json, "iso", settings->iso);
  ff_json_rounded (json, "error_stops", settings->error_stops, 3);
  ff_json_end (json);
}

static void
json_instant (FfJson *json, const char *name, gint64 instant, GTimeZone *zone)
{
  g_autofree char *text = ff_instant_format ((double) instant, zone);

  ff_json_text (json, name, text);
}

static void
json_explain (FfJson *json, const Answer *answer, const FfPlanLine *line, const FfPlanTake *take)
{
  g_autoptr (GPtrArray) steps
      = explain ? ff_day_explain_take (answer->day, answer->plan, line, take) : NULL;

  if (steps != NULL)
    ff_json_steps (json, "explain", steps);
}

static void
json_run (FfJson *json, const FfPlanTake *take, GTimeZone *zone)
{
  ff_json_number (json, "track_deg", take->track_deg);
  ff_json_rounded (json, "wind_at_height_ms", take->wind_ms, 2);
  ff_json_rounded (json, "tail_wind_ms", take->tail_ms, 2);
  if (take->turn_back_by > 0)
    json_instant (json, "turn_back_by", take->turn_back_by, zone);
  else
    ff_json_null (json, "turn_back_by");
  ff_json_text (json, "run", take->run);
}

static void
json_take (FfJson *json, const Answer *answer, const FfPlanLine *line, const FfPlanTake *take)
{
  GTimeZone *zone = ff_day_zone (answer->day);

  ff_json_begin_object (json, NULL);
  ff_json_text (json, "shot", take->shot);
  ff_json_text (json, "title", take->title);
  json_instant (json, "from", take->from, zone);
  json_instant (json, "to", take->to, zone);
  ff_json_rounded (json, "ev100_start", take->ev100_start, 3);
  ff_json_rounded (json, "ev100_end", take->ev100_end, 3);
  ff_json_rounded (json, "need_start_stops", take->need_start_stops, 3);
  ff_json_rounded (json, "need_end_stops", take->need_end_stops, 3);
  json_settings (json, "start", &take->start);
  json_settings (json, "end", &take->end);
  ff_json_texts (json, "remarks", take->remarks);
  json_run (json, take, zone);
  json_explain (json, answer, line, take);
  ff_json_end (json);
}

static void
json_lines (FfJson *json, const Answer *answer)
{
  const FfDayPlan *plan = answer->plan;
  GTimeZone *zone = ff_day_zone (answer->day);

  ff_json_begin_array (json, "sorties");
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "id", line->id);
      ff_json_integer (json, "line", line->line);
      json_instant (json, "off_by", line->off_by, zone);
      json_instant (json, "down", line->down, zone);
      json_instant (json, "land_by", line->land_by, zone);
      ff_json_text (json, "land_rule", line->land_rule);
      ff_json_text (json, "battery", line->battery);
      ff_json_texts (json, "filters", line->filters);
      ff_json_rounded (json, "filter_stops", line->filter_stops, 3);
      ff_json_begin_array (json, "shots");
      for (guint j = 0; j < line->takes->len; j++)
        json_take (json, answer, line, g_ptr_array_index (line->takes, j));
      ff_json_end (json);
      ff_json_text (json, "trim", line->trim);
      ff_json_text (json, "turn_round", *line->turn_round != '\0' ? line->turn_round : NULL);
      ff_json_text (json, "why", line->why);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
json_misses (FfJson *json, const FfDayPlan *plan)
{
  ff_json_begin_array (json, "not_flown");
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "shot", miss->shot);
      ff_json_text (json, "reason", miss->reason);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
json_charges (FfJson *json, const FfDayPlan *plan, GTimeZone *zone)
{
  ff_json_begin_array (json, "charge");
  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "battery", charge->battery);
      json_instant (json, "cool_from", charge->cool_from, zone);
      json_instant (json, "charge_from", charge->charge_from, zone);
      json_instant (json, "ready_at", charge->ready_at, zone);
      ff_json_text (json, "attended_by", charge->attended_by);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
json_prices (FfJson *json)
{
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);

  ff_json_begin_object (json, "prices");
  for (guint i = 0; i < n_rows; i++)
    ff_json_number (json, rows[i].token, ff_price_row_get (&rows[i], &prices));
  ff_json_end (json);
}

static void
write_json (FfJson *json, const Answer *answer)
{
  const FfDayPlan *plan = answer->plan;

  ff_json_text (json, "job", plan->job);
  ff_json_text (json, "version", plan->version);
  ff_json_text (json, "standing", answer->letter);
  ff_json_text (json, "case", ff_name_token (&ff_names_sky, plan->sky));
  ff_json_rounded (json, "learned_offset_stops", plan->learned_offset_stops, 3);
  ff_json_text (json, "light", plan->light);
  json_lines (json, answer);
  json_misses (json, plan);
  ff_json_texts (json, "clashes", plan->clashes);
  ff_json_integer (json, "swaps", plan->swaps);
  ff_json_integer (json, "landings_for_filter_alone", plan->landings_for_filter_alone);
  ff_json_integer (json, "batteries_used", plan->batteries_used);
  json_charges (json, plan, ff_day_zone (answer->day));
  ff_json_cases (json, plan, answer->drops);
  ff_json_rounded (json, "cost", plan->cost, 4);
  ff_json_begin_object (json, "cost_parts");
  for (int part = 0; part < FF_N_PARTS; part++)
    ff_json_rounded (json, ff_name_token (&ff_names_part, part), plan->parts[part], 4);
  ff_json_end (json);
  json_prices (json);
  ff_json_integer (json, "prices_changed", ff_prices_n_changed (&prices));
  ff_json_flag (json, "kept", plan->kept);
  ff_json_flag (json, "optimal", plan->optimal);
  ff_json_rounded (json, "bound", plan->bound, 4);
  ff_json_texts (json, "changes", plan->changes);
  ff_json_change (json, plan->price);
}

/* ---- Text ---- */

/* The table that the cost was counted by, so that anybody can change it. */
static void
print_prices (FfConsole *console)
{
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);

  ff_console_line (console, _ ("\nPrices (--price NAME=VALUE tries another one)"));
  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *head = g_strdup_printf ("  %-14s %9g  ", rows[i].token,
                                               ff_price_row_get (&rows[i], &prices));

      ff_console_paragraph (console, head, ff_price_row_text (&rows[i]));
    }
}

/* A plan by other prices than the kit's says so. */
static void
print_changed_prices (FfConsole *console)
{
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);

  if (ff_prices_n_changed (&prices) > 0)
    ff_console_line (console, _ ("\nPlanned by other prices than the kit's"));
  for (guint i = 0; i < n_rows; i++)
    if (ff_price_is_changed (&rows[i], &prices))
      {
        g_autofree char *words = ff_price_words (&rows[i], &prices);

        ff_console_paragraph (console, "  ", words);
      }
}

static char *
settings_text (const FfPlanSettings *settings)
{
  g_autofree char *aperture = ff_number_format (settings->aperture, 1);
  g_autofree char *angle = isfinite (settings->shutter_angle_deg)
                               ? g_strdup_printf (" (%.0f°)", settings->shutter_angle_deg)
                               : g_strdup ("");

  return g_strdup_printf ("f/%s %s%s ISO %d", aperture, settings->shutter, angle, settings->iso);
}

static void
print_explain (FfConsole *console,
               const Answer *answer,
               const FfPlanLine *line,
               const FfPlanTake *take)
{
  g_autoptr (GPtrArray) steps = ff_day_explain_take (answer->day, answer->plan, line, take);

  for (guint i = 0; i < take->remarks->len; i++)
    ff_console_paragraph (console, "      ", g_ptr_array_index (take->remarks, i));
  if (steps != NULL)
    ff_console_steps (console, steps, 6);
}

static void
print_take (FfConsole *console,
            const Answer *answer,
            const FfPlanLine *line,
            const FfPlanTake *take)
{
  GTimeZone *zone = ff_day_zone (answer->day);
  g_autofree char *from = ff_instant_clock ((double) take->from, zone);
  g_autofree char *to = ff_instant_clock ((double) take->to, zone);
  g_autofree char *start = settings_text (&take->start);
  g_autofree char *end = settings_text (&take->end);
  gboolean changes = !g_str_equal (start, end);

  ff_console_line (console, "   %-2s %s–%s  %s%s%s", take->shot, from, to, start,
                   changes ? " → " : "", changes ? end : "");
  if (take->run != NULL)
    ff_console_paragraph (console, "      ", take->run);
  if (explain)
    print_explain (console, answer, line, take);
}

static char *
filter_text (const FfPlanLine *line)
{
  g_autofree char *stops = ff_stops_format (line->filter_stops);

  if (line->filter_stops <= 0)
    return g_strdup (line->filters->len > 0 ? _ ("clear") : _ ("no filter"));
  return g_strdup_printf ("%s  %s", stops, line->engraving);
}

static void
print_line (FfConsole *console, const Answer *answer, const FfPlanLine *line)
{
  GTimeZone *zone = ff_day_zone (answer->day);
  g_autofree char *off = ff_instant_clock ((double) line->off_by, zone);
  g_autofree char *down = ff_instant_clock ((double) line->down, zone);
  g_autofree char *land = ff_instant_clock ((double) line->land_by, zone);
  g_autofree char *filter = filter_text (line);

  ff_console_line (console, _ ("%d  off by %s  down %s  land by %s  battery %s  %s"), line->line,
                   off, down, land, line->battery, filter);
  for (guint i = 0; i < line->takes->len; i++)
    print_take (console, answer, line, g_ptr_array_index (line->takes, i));
  if (*line->turn_round != '\0')
    ff_console_line (console, "   %s", line->turn_round);
  if (explain)
    {
      ff_console_paragraph (console, "   ", line->land_rule);
      ff_console_paragraph (console, "   ", line->why);
      ff_console_paragraph (console, "   ", line->trim);
    }
}

static void
print_texts (FfConsole *console, const char *heading, GPtrArray *texts)
{
  if (texts->len > 0)
    ff_console_line (console, "\n%s", heading);
  for (guint i = 0; i < texts->len; i++)
    ff_console_paragraph (console, "  ", g_ptr_array_index (texts, i));
}

static void
print_charges (FfConsole *console, const FfDayPlan *plan, GTimeZone *zone)
{
  if (plan->charges->len > 0)
    ff_console_line (console, _ ("\nCharging (counts from land-by; someone must attend)"));
  for (guint i = 0; i < plan->charges->len; i++)
    {
      const FfPlanCharge *charge = g_ptr_array_index (plan->charges, i);
      g_autofree char *from = ff_instant_clock ((double) charge->charge_from, zone);
      g_autofree char *ready = ff_instant_clock ((double) charge->ready_at, zone);

      ff_console_line (console, _ ("  battery %s on charge %s, ready %s, attended by %s"),
                       charge->battery, from, ready, charge->attended_by);
    }
}

static void
print_cost (FfConsole *console, const FfDayPlan *plan)
{
  ff_console_line (console, _ ("\nCost %.1f"), plan->cost);
  for (int part = 0; part < FF_N_PARTS; part++)
    if (plan->parts[part] > 0)
      ff_console_line (console, "  %-24s %6.1f", ff_name_text (&ff_names_part, part),
                       plan->parts[part]);
}

static void
write_text (FfConsole *console, const Answer *answer)
{
  const FfDayPlan *plan = answer->plan;

  ff_console_line (console, _ ("%s · version %s · %s"), plan->job, answer->letter,
                   ff_name_text (&ff_names_sky, plan->sky));
  ff_console_line (console, "%s\n", plan->light);
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);

      ff_console_line (console, _ ("NOT FLOWN  %s %s: %s"), miss->shot, miss->title, miss->reason);
    }
  for (guint i = 0; i < plan->lines->len; i++)
    print_line (console, answer, g_ptr_array_index (plan->lines, i));
  if (plan->lines->len > 0 && !explain)
    ff_console_paragraph (console, "",
                          _ ("Land by the line's time, or off + its battery's minutes, or the "
                             "reserve: whichever comes first; the aircraft's own reading wins."));
  print_texts (console, _ ("What this changes"), plan->changes);
  print_texts (console, _ ("Clashes"), plan->clashes);
  print_charges (console, plan, ff_day_zone (answer->day));
  ff_print_cases (console, plan, answer->drops, explain);
  print_changed_prices (console);
  if (!plan->optimal && !plan->kept)
    ff_console_line (console, _ ("Best found, not proven: it costs %.1f, and no plan costs less than "
                                 "%.1f."),
                     plan->cost, plan->bound);
  if (explain)
    print_cost (console, plan);
  if (explain)
    print_prices (console);
}

/* "filter_swap=2.5"; the others stay the crew's. */
static gboolean
read_prices (GError **error)
{
  for (guint i = 0; price_texts != NULL && price_texts[i] != NULL; i++)
    {
      g_auto (GStrv) halves = g_strsplit (price_texts[i], "=", 2);
      double value;

      if (halves[0] == NULL || halves[1] == NULL)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--price %s: accepted: NAME=VALUE, as in filter_swap=2.5"),
                       price_texts[i]);
          return FALSE;
        }
      if (!ff_number_parse ("--price", halves[1], 0, G_MAXDOUBLE, &value, error)
          || !ff_price_set (&prices, halves[0], value, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_change (FfDayChange *change, GError **error)
{
  int sky;

  if (case_text != NULL)
    {
      if (!ff_option_name ("--case", &ff_names_sky, case_text, &sky, error))
        return FALSE;
      change->other_sky = TRUE;
      change->sky = (FfSky) sky;
    }
  if (late_text != NULL
      && !ff_integer_parse ("--late", late_text, 0, 24 * 60, &change->late_minutes, error))
    return FALSE;
  if (legs_text != NULL
      && !ff_integer_parse ("--legs", legs_text, 1, MOST_LEGS, &change->legs_per_battery, error))
    return FALSE;
  change->prices = price_texts != NULL ? &prices : NULL;
  change->any_order = any_order;
  change->without = (const char *const *) without;
  change->moves = (const char *const *) moves;
  return TRUE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  g_autoptr (GPtrArray) drops = NULL;
  g_autofree char *letter = NULL;
  FfDayChange change = { 0 };
  Answer answer;

  if (!ff_console_want_words (console, 1, "JOB", error) || !read_change (&change, error))
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_READ, error);
  if (store == NULL)
    return FF_FAILED;
  if (!ff_crew_prices_load (store, &prices, error) || !read_prices (error))
    return FF_FAILED;
  day = ff_day_load (store, console->words[0], error);
  if (day == NULL)
    return FF_FAILED;
  plan = ff_day_plan (day, &change, error);
  if (plan == NULL)
    return FF_FAILED;
  drops = ff_day_drop_first (day, &change, plan, NULL, NULL, error);
  if (drops == NULL)
    return FF_FAILED;
  letter = ff_paper_letter (store, ff_day_job (day)->id, error);
  if (letter == NULL)
    return FF_FAILED;
  answer = (Answer) { day, plan, drops, letter };
  write_json (console->json, &answer);
  write_text (console, &answer);
  return plan->missed->len > 0 ? FF_NO : FF_DONE;
}

const FfCommand ff_command_plan = {
  .name = "plan",
  .summary = N_ ("Plan the sorties of a job"),
  .usage = "plan JOB [--case SKY] [--late MIN] [--without ITEM] [--move SHOT=HH:MM] [--any-order] "
           "[--legs N] [--price NAME=VALUE] [--explain]",
  .example = "fieldfarectl plan Skarrowick --case overcast",
  .entries = entries,
  .run = run,
};
