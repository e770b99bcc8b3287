/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-command.h"
#include "ff-day-prices.h"
#include "ff-error.h"
#include "ff-job.h"
#include "ff-number.h"
#include "ff-paragraph.h"

static char **set_texts;
static gboolean reset;

static GOptionEntry entries[] = {
  { "set", 0, 0, G_OPTION_ARG_STRING_ARRAY, &set_texts,
    N_ ("A rule of the job or a price of the crew; may be repeated"), "NAME=VALUE" },
  { "reset", 0, 0, G_OPTION_ARG_NONE, &reset, N_ ("All prices as the kit has them"), NULL },
  G_OPTION_ENTRY_NULL,
};

/* The rules of a job that say how far its plan may go. */
static const char *const rules[] = { "any_order", "legs_per_battery", "filters_at_once",
                                     "stay_margin" };

/* ---- In ---- */

static gboolean
is_rule (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (g_str_equal (rules[i], name))
      return TRUE;
  return FALSE;
}

static gboolean
set_rule (FfJob *job, const char *name, const char *text, GError **error)
{
  const FfField *field = ff_fields_find (&ff_job_fields, name);
  double value;

  if (!ff_number_parse (name, text, field->low, field->high, &value, error))
    return FALSE;
  if (field->type == FF_FIELD_REAL)
    *ff_field_real (field, job) = value;
  else if (value > floor (value))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” is not a whole number; accepted: "
                                                       "%g to %g"),
                   name, text, field->low, field->high);
      return FALSE;
    }
  else
    *ff_field_whole (field, job) = (int) value;
  return TRUE;
}

/* "filter_swap=2.5" */
static gboolean
set_one (FfJob *job, FfPrices *prices, const char *text, GError **error)
{
  g_auto (GStrv) halves = g_strsplit (text, "=", 2);
  double value;

  if (halves[0] == NULL || halves[1] == NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--set %s: accepted: NAME=VALUE, as in filter_swap=2.5"), text);
      return FALSE;
    }
  if (is_rule (halves[0]))
    return set_rule (job, halves[0], halves[1], error);
  return ff_number_parse ("--set", halves[1], 0, G_MAXDOUBLE, &value, error)
         && ff_price_set (prices, halves[0], value, error);
}

static gboolean
set_all (FfStore *store, FfJob *job, FfPrices *prices, GError **error)
{
  if (reset)
    *prices = ff_prices_default;
  for (guint i = 0; set_texts != NULL && set_texts[i] != NULL; i++)
    if (!set_one (job, prices, set_texts[i], error))
      return FALSE;
  return ff_job_save (store, job, error) && ff_crew_prices_save (store, prices, error);
}

/* ---- Out ---- */

static void
write_rule (FfConsole *console, const FfJob *job, const char *name)
{
  const FfField *field = ff_fields_find (&ff_job_fields, name);
  double value = field->type == FF_FIELD_REAL ? *ff_field_real (field, job)
                                              : *ff_field_whole (field, job);
  g_autofree char *head = NULL;

  if (field->type == FF_FIELD_FLAG)
    ff_json_flag (console->json, name, value > 0);
  else
    ff_json_number (console->json, name, value);
  if (isnan (value))
    value = 0;
  head = g_strdup_printf ("  %-16s %9g  ", name, value);
  ff_console_paragraph (console, head, g_dgettext (GETTEXT_PACKAGE, field->words));
}

static void
write_price (FfConsole *console, const FfPriceRow *row, const FfPrices *prices)
{
  double value = ff_price_row_get (row, prices), usual = ff_price_row_get (row, &ff_prices_default);
  g_autofree char *head = g_strdup_printf ("  %-16s %9g  ", row->token, value);
  g_autofree char *words
      = ff_price_is_changed (row, prices)
            /* Translators: the name of a price, then what it is without the crew's change. */
            ? g_strdup_printf (_ ("%s; the kit's is %g"), ff_price_row_text (row), usual)
            : g_strdup (ff_price_row_text (row));

  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "name", row->token);
  ff_json_text (console->json, "text", ff_price_row_text (row));
  ff_json_number (console->json, "value", value);
  ff_json_number (console->json, "usual", usual);
  ff_json_number (console->json, "lowest", row->lowest);
  ff_json_number (console->json, "highest", row->highest);
  ff_json_flag (console->json, "changed", ff_price_is_changed (row, prices));
  ff_json_end (console->json);
  ff_console_paragraph (console, head, words);
}

static void
write_all (FfConsole *console, const FfJob *job, const FfPrices *prices)
{
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);

  ff_json_text (console->json, "job", job->title);
  ff_console_line (console, "%s", job->title);
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    write_rule (console, job, rules[i]);
  ff_console_line (console, _ ("\nPrices of the crew, on every job"));
  ff_json_begin_array (console->json, "prices");
  for (guint i = 0; i < n_rows; i++)
    write_price (console, &rows[i], prices);
  ff_json_end (console->json);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  gboolean writes = reset || set_texts != NULL;
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfJob) job = NULL;
  g_autofree char *id = NULL;
  FfPrices prices;

  if (!ff_console_want_words (console, 1, "JOB", error))
    return FF_FAILED;
  store = ff_console_open (console, writes ? FF_RECORDS_WRITE : FF_RECORDS_READ, error);
  id = store != NULL ? ff_job_find (store, console->words[0], error) : NULL;
  job = id != NULL ? ff_job_load (store, id, error) : NULL;
  if (job == NULL || !ff_crew_prices_load (store, &prices, error)
      || (writes && !set_all (store, job, &prices, error)))
    return FF_FAILED;
  write_all (console, job, &prices);
  return FF_DONE;
}

const FfCommand ff_command_planning = {
  .name = "planning",
  .summary = N_ ("Say how a job is planned: its rules, and the price table"),
  .usage = "planning JOB [--set NAME=VALUE] [--reset]",
  .example = "fieldfarectl planning Skarrowick --set legs_per_battery=2 --set filter_swap=2.5",
  .entries = entries,
  .run = run,
};
