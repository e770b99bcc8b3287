/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The limits that bind a job, and what is held against them: measurements, reports, calls. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-brief.h"
#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-records.h"
#include "ff-error.h"
#include "ff-job.h"
#include "ff-limits-today.h"
#include "ff-number.h"
#include "ff-paragraph.h"
#include "ff-report.h"
#include "ff-weather-today.h"
#include "ff-weather.h"

static char *at_text, *height_text, *distance_text, *elevation_text, *decision_text, *why_text;
static char *until_text, *by_text, *note_text, *file_path;

static GOptionEntry entries[] = {
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_text, N_ ("measure, report, call: when (default: now)"),
    "TIME" },
  { "height", 0, 0, G_OPTION_ARG_STRING, &height_text,
    N_ ("measure: height of the sensor in metres (default: where the aircraft flies)"), "M" },
  { "distance", 0, 0, G_OPTION_ARG_STRING, &distance_text,
    N_ ("report: how far the aerodrome is, in metres"), "M" },
  { "elevation", 0, 0, G_OPTION_ARG_STRING, &elevation_text,
    N_ ("report: elevation of the aerodrome in metres"), "M" },
  { "decision", 0, 0, G_OPTION_ARG_STRING, &decision_text, N_ ("call: go, stand-by or no-go"),
    "WORD" },
  { "why", 0, 0, G_OPTION_ARG_STRING, &why_text, N_ ("call: the reason"), "TEXT" },
  { "until", 0, 0, G_OPTION_ARG_STRING, &until_text, N_ ("call: standing by until"), "TIME" },
  { "note", 0, 0, G_OPTION_ARG_STRING, &note_text, N_ ("measure: a note"), "TEXT" },
  { "output", 'o', 0, G_OPTION_ARG_FILENAME, &file_path,
    N_ ("The weather call as a PDF of one page; one that exists is replaced"), "FILE.pdf" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("measure, report, call: initials"),
    "INITIALS" },
  G_OPTION_ENTRY_NULL,
};

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

/* ---- what holds ---------------------------------------------------------------------------- */

/* The one number that a reader of the row would want: the end that comes nearest to the limit. */
static double
telling_end (const FfLimitToday *row)
{
  if (row->compare == FF_COMPARE_AT_LEAST || row->compare == FF_COMPARE_ABOVE || isnan (row->high))
    return row->low;
  return row->high;
}

static void
json_row (FfJson *json, const FfLimitToday *row)
{
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "sheet", row->sheet);
  ff_json_text (json, "kind", row->kind);
  ff_json_text (json, "text", row->text);
  ff_json_text (json, "answer", ff_name_token (&ff_names_limit_answer, (int) row->answer));
  ff_json_text (json, "compare", ff_name_token (&ff_names_compare, (int) row->compare));
  ff_json_rounded (json, "value", telling_end (row), 4);
  ff_json_rounded (json, "value_low", row->low, 4);
  ff_json_rounded (json, "value_high", row->high, 4);
  ff_json_number (json, "limit", row->limit);
  ff_json_number (json, "limit_to", row->limit_to);
  ff_json_text (json, "unit", *row->unit != '\0' ? row->unit : NULL);
  ff_json_text (json, "found", *row->found != '\0' ? row->found : NULL);
  ff_json_text (json, "reason", *row->reason != '\0' ? row->reason : NULL);
  ff_json_flag (json, "binds", row->binds);
  ff_json_text (json, "source", row->source);
  ff_json_text (json, "checked", *row->checked != '\0' ? row->checked : NULL);
  ff_json_flag (json, "check_overdue", row->overdue);
  ff_json_flag (json, "example", row->example);
  ff_json_end (json);
}

static void
say_limit (FfConsole *console, const FfLimitToday *row)
{
  g_autofree char *answer = g_utf8_strup (ff_name_text (&ff_names_limit_answer, (int) row->answer), -1);

  g_autofree char *limit = g_strdup_printf ("%s, %s", row->text, row->bound);
  g_autofree char *head = g_strdup_printf ("%-14s  ", answer);
  g_autofree char *under = g_strnfill ((gsize) g_utf8_strlen (head, -1), ' ');

  ff_console_paragraph (console, head, limit);
  if (*row->found != '\0')
    ff_console_paragraph (console, under, row->found);
  if (*row->reason != '\0')
    ff_console_paragraph (console, under, row->reason);
  if (row->overdue && !row->example)
    ff_console_paragraph (console, under, _ ("its check is overdue"));
}

static void
say_examples (FfConsole *console, const FfLimitsToday *today)
{
  guint n = 0, i;

  for (i = 0; i < today->rows->len; i++)
    if (((const FfLimitToday *) g_ptr_array_index (today->rows, i))->example)
      n++;
  if (n > 0)
    ff_console_line (console,
                     g_dngettext (GETTEXT_PACKAGE, "%u row is an example: set your own.",
                                  "%u rows are examples: set your own.", n),
                     n);
}

static void
write_touched (FfConsole *console, const FfLimitsToday *today)
{
  guint i, k;

  ff_json_begin_array (console->json, "sorties");
  for (i = 0; i < today->lines->len; i++)
    {
      GPtrArray *texts = g_ptr_array_index (today->lines, i);

      if (texts->len == 0)
        continue;
      ff_json_begin_object (console->json, NULL);
      ff_json_integer (console->json, "line", (gint64) i + 1);
      ff_json_texts (console->json, "crossed", texts);
      ff_json_end (console->json);
      for (k = 0; k < texts->len; k++)
        {
          g_autofree char *head = g_strdup_printf (_ ("Sortie %u: "), i + 1);

          ff_console_paragraph (console, head, g_ptr_array_index (texts, k));
        }
    }
  ff_json_end (console->json);
}

static void
write_calls (FfConsole *console, const FfDay *day, GPtrArray *calls)
{
  guint i;

  ff_json_begin_array (console->json, "calls");
  for (i = 0; i < calls->len; i++)
    {
      const FfWeatherCall *call = g_ptr_array_index (calls, i);
      g_autofree char *at = ff_instant_format ((double) call->at, ff_day_zone (day));
      g_autofree char *until = call->until > 0
                                   ? ff_instant_format ((double) call->until, ff_day_zone (day))
                                   : NULL;
      g_autofree char *clock = ff_instant_clock ((double) call->at, ff_day_zone (day));
      g_autofree char *said = NULL;

      ff_json_begin_object (console->json, NULL);
      ff_json_text (console->json, "at", at);
      ff_json_text (console->json, "decision", ff_name_token (&ff_names_call, (int) call->decision));
      ff_json_text (console->json, "why", call->why);
      ff_json_text (console->json, "until", until);
      ff_json_text (console->json, "by", call->by);
      ff_json_end (console->json);
      said = g_strdup_printf (_ ("Weather call %s by %s: %s. %s"), clock, call->by,
                              ff_name_text (&ff_names_call, (int) call->decision), call->why);
      ff_console_paragraph (console, "", said);
    }
  ff_json_end (console->json);
}

static gboolean
write_page (FfConsole *console,
            const FfDay *day,
            const FfDayPlan *plan,
            const GPtrArray *calls,
            GError **error)
{
  g_autoptr (FfSheetFacts) facts = ff_sheet_facts (day, plan, now ());
  g_autoptr (FfWeatherToday) today = ff_weather_today (day, plan, calls, now ());
  g_autoptr (FfBrief) brief = ff_brief_new_weather (facts, today, FF_PAPER_A4, error);

  if (brief == NULL || !ff_brief_write_pdf (brief, file_path, error))
    return FALSE;
  ff_json_integer (console->json, "pages", ff_brief_n_pages (brief));
  ff_json_texts (console->json, "did_not_fit", ff_brief_did_not_fit (brief));
  return TRUE;
}

static FfOutcome
show (FfConsole *console, const char *wanted, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (FfDay) day = store != NULL ? ff_day_load (store, wanted, error) : NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  g_autoptr (GPtrArray) calls = NULL;
  g_autoptr (FfLimitsToday) today = NULL;
  FfAirRules rules;
  guint i;

  if (day == NULL || !ff_air_rules_load (store, &rules, error))
    return FF_FAILED;
  calls = ff_weather_calls_load (store, ff_day_job (day)->id, error);
  if (calls == NULL)
    return FF_FAILED;
  /* Limits stand also for a day that can't be planned yet. */
  plan = ff_day_plan (day, NULL, NULL);
  today = ff_limits_today (day, plan, now ());
  ff_json_text (console->json, "job", ff_day_job (day)->title);
  ff_json_text (console->json, "standing", today->standing);
  ff_json_rounded (console->json, "thin_air", rules.thin_air, 3);
  ff_console_paragraph (console, "", today->standing);
  if (today->rows->len == 0)
    ff_console_line (console, "%s", _ ("No limits are entered: the crew's own sheet is blank."));
  ff_json_begin_array (console->json, "rows");
  for (i = 0; i < today->rows->len; i++)
    {
      json_row (console->json, g_ptr_array_index (today->rows, i));
      say_limit (console, g_ptr_array_index (today->rows, i));
    }
  ff_json_end (console->json);
  say_examples (console, today);
  ff_json_texts (console->json, "outside", today->outside);
  write_touched (console, today);
  write_calls (console, day, calls);
  if (file_path != NULL && !write_page (console, day, plan, calls, error))
    return FF_FAILED;
  return today->worst == FF_LIMIT_OUTSIDE || today->worst == FF_LIMIT_NOT_ASSESSED ? FF_NO
                                                                                   : FF_DONE;
}

/* ---- what is added ------------------------------------------------------------------------- */

static gboolean
read_at (gint64 *ret_at, GError **error)
{
  *ret_at = now ();
  return at_text == NULL || ff_option_instant ("--at", at_text, ret_at, error);
}

static gboolean
read_yes_no (const char *text, double *ret_value)
{
  if (g_ascii_strcasecmp (text, "yes") != 0 && g_ascii_strcasecmp (text, "no") != 0)
    return FALSE;
  *ret_value = g_ascii_strcasecmp (text, "yes") == 0 ? 1 : 0;
  return TRUE;
}

/* limits measure JOB KIND VALUE [UNIT] */
static gboolean
add_measurement (FfConsole *console, FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (FfMeasurement) made = ff_measurement_new (job_id);

  if (console->n_words < 4 || console->n_words > 5)
    return ff_console_want_words (console, 5, _ ("measure, JOB, KIND, VALUE and UNIT"), error);
  ff_set_text (&made->kind, console->words[2]);
  ff_set_text (&made->unit, console->n_words == 5 ? console->words[4] : "");
  ff_set_text (&made->note, note_text != NULL ? note_text : "");
  ff_set_text (&made->by, by_text != NULL ? by_text : "");
  if ((!read_yes_no (console->words[3], &made->value)
       && !ff_number_parse (_ ("VALUE"), console->words[3], -1e6, 1e6, &made->value, error))
      || !read_at (&made->at, error))
    return FALSE;
  if (height_text != NULL
      && !ff_option_number ("--height", height_text, 0, 1000, &made->height_m, error))
    return FALSE;
  return ff_measurement_append (store, made, error);
}

/* limits report JOB "REPORT": one that can't be read is refused, not kept. */
static gboolean
add_report (FfConsole *console, FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (FfWeatherReport) made = ff_weather_report_new (job_id);
  g_autoptr (FfReport) report = NULL;

  if (!ff_console_want_words (console, 3, _ ("report, JOB and the report in quotes"), error)
      || !read_at (&made->at, error))
    return FALSE;
  report = ff_report_read (console->words[2], made->at, error);
  if (report == NULL)
    return FALSE;
  ff_set_text (&made->text, console->words[2]);
  ff_set_text (&made->by, by_text != NULL ? by_text : "");
  if ((distance_text != NULL
       && !ff_option_number ("--distance", distance_text, 0, 500000, &made->distance_m, error))
      || (elevation_text != NULL
          && !ff_option_number ("--elevation", elevation_text, -500, 6000, &made->elevation_m,
                                error)))
    return FALSE;
  return ff_weather_report_append (store, made, error);
}

/* limits call JOB --decision WORD --why TEXT --by INITIALS */
static gboolean
add_call (FfConsole *console, FfStore *store, const char *job_id, GError **error)
{
  g_autoptr (FfWeatherCall) made = ff_weather_call_new (job_id);
  int decision;

  if (!ff_console_want_words (console, 2, _ ("call and JOB"), error) || !read_at (&made->at, error)
      || !ff_option_name ("--decision", &ff_names_call, decision_text, &decision, error))
    return FALSE;
  if (until_text != NULL && !ff_option_instant ("--until", until_text, &made->until, error))
    return FALSE;
  made->decision = (FfCall) decision;
  ff_set_text (&made->why, why_text != NULL ? why_text : "");
  ff_set_text (&made->by, by_text != NULL ? by_text : "");
  return ff_weather_call_append (store, made, error);
}

/* limits thin-air on|off|SHARE: how far thin air shortens what is planned. */
static FfOutcome
set_thin_air (FfConsole *console, GError **error)
{
  const char *said = console->words[1];
  g_autoptr (FfStore) store = NULL;
  FfAirRules rules = { 1, g_str_equal (said, "on") ? 1.0 : 0.0 };

  if (!ff_console_want_words (console, 2, _ ("thin-air and on, off or a number"), error)
      || (!g_str_equal (said, "on") && !g_str_equal (said, "off")
          && !ff_number_parse (_ ("thin-air (on, off or a number)"), said, 0, 3, &rules.thin_air,
                               error)))
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_WRITE, error);
  if (store == NULL || !ff_air_rules_save (store, &rules, error))
    return FF_FAILED;
  ff_json_rounded (console->json, "thin_air", rules.thin_air, 3);
  if (rules.thin_air > 0)
    ff_console_line (console, _ ("Thin air shortens planned minutes by %g times the estimate."),
                     rules.thin_air);
  else
    ff_console_line (console, "%s", _ ("Thin air shortens no planned minutes."));
  return FF_DONE;
}

static FfOutcome
add (FfConsole *console,
     gboolean (*append) (FfConsole *, FfStore *, const char *, GError **),
     GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_WRITE, error);
  g_autofree char *job_id = NULL;

  if (store == NULL)
    return FF_FAILED;
  job_id = ff_job_find (store, console->words[1], error);
  if (job_id == NULL || !append (console, store, job_id, error))
    return FF_FAILED;
  g_clear_pointer (&store, ff_records_close);
  return show (console, job_id, error);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *first = console->n_words > 1 ? console->words[0] : "";

  if (strcmp (first, "measure") == 0)
    return add (console, add_measurement, error);
  if (strcmp (first, "report") == 0)
    return add (console, add_report, error);
  if (strcmp (first, "call") == 0)
    return add (console, add_call, error);
  if (strcmp (first, "thin-air") == 0)
    return set_thin_air (console, error);
  if (!ff_console_want_words (console, 1, _ ("JOB"), error))
    return FF_FAILED;
  return show (console, console->words[0], error);
}

const FfCommand ff_command_limits = {
  .name = "limits",
  .summary = N_ ("Hold a job's limits against what was measured, reported and planned"),
  .usage = "limits JOB [-o FILE.pdf] | limits measure JOB KIND VALUE [UNIT] | limits report JOB \"REPORT\" | "
           "limits call JOB | limits thin-air on|off|SHARE",
  .example = "fieldfarectl limits measure Skarrowick gust 10.3 m/s --height 2 --by JV",
  .entries = entries,
  .run = run,
};
