/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-travel-sheet.h"

static char *carrier_text, *people_text;
static char *source_text, *read_on_text, *in_all_text, *cabin_text, *charge_text, *note_text;
static char **bands;

static GOptionEntry entries[] = {
  { "carrier", 0, 0, G_OPTION_ARG_STRING, &carrier_text, N_ ("Whose rule; else the first entered"),
    "NAME" },
  { "people", 0, 0, G_OPTION_ARG_STRING, &people_text, N_ ("So many people instead of the crew"),
    "N" },
  { "source", 0, 0, G_OPTION_ARG_STRING, &source_text, N_ ("add: where the rule stands"), "TEXT" },
  { "read-on", 0, 0, G_OPTION_ARG_STRING, &read_on_text, N_ ("add: the day it was read"), "DAY" },
  { "band", 0, 0, G_OPTION_ARG_STRING_ARRAY, &bands,
    N_ ("add: up to so many Wh, spares each (or “any”), approval; may be repeated"),
    "WH:N[:approval]" },
  { "in-all", 0, 0, G_OPTION_ARG_STRING, &in_all_text, N_ ("add: spares of all sizes, each"), "N" },
  { "cabin-kg", 0, 0, G_OPTION_ARG_STRING, &cabin_text, N_ ("add: cabin weight, each"), "KG" },
  { "charge", 0, 0, G_OPTION_ARG_STRING, &charge_text, N_ ("add: charge for travel, at most"),
    "PERCENT" },
  { "note", 0, 0, G_OPTION_ARG_STRING, &note_text, N_ ("add: note"), "TEXT" },
  G_OPTION_ENTRY_NULL,
};

/* ---- The rules ---- */

static void
json_carrier (FfJson *json, const FfCarrier *carrier)
{
  ff_json_begin_object (json, NULL);
  ff_json_text (json, "name", carrier->name);
  ff_json_text (json, "source", carrier->source);
  ff_json_text (json, "read_on", carrier->read_on);
  ff_json_flag (json, "example", carrier->example);
  ff_json_begin_array (json, "bands");
  for (guint i = 0; i < carrier->bands->len; i++)
    {
      const FfCarrierBand *band = g_ptr_array_index (carrier->bands, i);

      ff_json_begin_object (json, NULL);
      ff_json_number (json, "up_to_wh", band->up_to_wh);
      if (band->spares_each >= 0)
        ff_json_integer (json, "spares_each", band->spares_each);
      else
        ff_json_null (json, "spares_each");
      ff_json_flag (json, "approval", band->approval);
      ff_json_end (json);
    }
  ff_json_end (json);
  if (carrier->spares_in_all >= 0)
    ff_json_integer (json, "spares_in_all", carrier->spares_in_all);
  else
    ff_json_null (json, "spares_in_all");
  ff_json_number (json, "cabin_kg", carrier->cabin_kg);
  ff_json_number (json, "charge_percent", carrier->charge_percent);
  ff_json_text (json, "note", carrier->note);
  ff_json_end (json);
}

static void
print_carrier (FfConsole *console, const FfCarrier *carrier)
{
  g_autofree char *rule = ff_travel_rule_words (carrier);
  g_autofree char *words = g_strdup_printf ("  %s.", rule);
  g_autofree char *source
      = g_strdup_printf (carrier->example ? _ ("  Source: %s, dated %s.")
                                          : _ ("  Source: %s, read %s."),
                         carrier->source, carrier->read_on);

  ff_console_line (console, "%s%s", carrier->name, carrier->example ? _ ("  (example)") : "");
  ff_console_wrap (console, 2, words);
  ff_console_wrap (console, 2, source);
}

static FfOutcome
show_rules (FfConsole *console, FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) carriers = ff_carriers_load (store, error);

  if (carriers == NULL)
    return FF_FAILED;
  ff_json_begin_array (console->json, "carriers");
  for (guint i = 0; i < carriers->len; i++)
    {
      json_carrier (console->json, g_ptr_array_index (carriers, i));
      print_carrier (console, g_ptr_array_index (carriers, i));
    }
  ff_json_end (console->json);
  if (carriers->len == 0)
    ff_console_wrap (console, 0, _ ("No carrier's rule is entered. “travel examples” brings the "
                                    "published ones as a start."));
  return FF_DONE;
}

static gboolean
read_carrier (FfCarrier *carrier, const char *name, GError **error)
{
  ff_set_text (&carrier->name, name);
  ff_set_text (&carrier->source, source_text);
  ff_set_text (&carrier->read_on, read_on_text);
  ff_set_text (&carrier->note, note_text);
  carrier->spares_in_all = FF_CARRIER_NO_LIMIT;
  if (source_text == NULL)
    return ff_option_missing ("--source", error);
  if (read_on_text == NULL)
    return ff_option_missing ("--read-on", error);
  for (guint i = 0; bands != NULL && bands[i] != NULL; i++)
    if (!ff_travel_read_band (carrier, bands[i], error))
      {
        g_prefix_error (error, "--band: ");
        return FALSE;
      }
  return (in_all_text == NULL
          || ff_integer_parse ("--in-all", in_all_text, 0, 999, &carrier->spares_in_all, error))
         && (cabin_text == NULL
             || ff_number_parse ("--cabin-kg", cabin_text, 0.1, 100, &carrier->cabin_kg, error))
         && (charge_text == NULL
             || ff_number_parse ("--charge", charge_text, 1, 100, &carrier->charge_percent, error));
}

/* One of the same name is replaced: rules are read again and change. */
static FfOutcome
add_rule (FfConsole *console, FfStore *store, GError **error)
{
  g_autoptr (FfCarrier) carrier = ff_carrier_new ();
  g_autoptr (GPtrArray) there = ff_carriers_load (store, error);

  for (guint i = 0; there != NULL && i < there->len; i++)
    {
      const FfCarrier *other = g_ptr_array_index (there, i);

      if (g_ascii_strcasecmp (other->name, console->words[1]) == 0)
        ff_set_text (&carrier->id, other->id);
    }
  if (there == NULL || !read_carrier (carrier, console->words[1], error)
      || !ff_carrier_save (store, carrier, error))
    return FF_FAILED;
  return show_rules (console, store, error);
}

static FfOutcome
remove_rule (FfConsole *console, FfStore *store, GError **error)
{
  g_autofree char *id = ff_carrier_find (store, console->words[1], error);

  if (id == NULL || !ff_carrier_delete (store, id, error))
    return FF_FAILED;
  return show_rules (console, store, error);
}

/* ---- The sheet ---- */

static void
write_json (FfJson *json, const FfTravelSheet *sheet)
{
  ff_json_text (json, "job", sheet->job);
  ff_json_text (json, "carrier", sheet->carrier);
  ff_json_text (json, "source", sheet->source);
  ff_json_text (json, "read_on", sheet->read_on);
  ff_json_flag (json, "example", sheet->example);
  ff_json_begin_array (json, "batteries");
  for (guint i = 0; i < sheet->rows->len; i++)
    {
      const FfTravelRow *row = g_ptr_array_index (sheet->rows, i);
      const FfTravelPerson *person
          = row->person >= 0 ? g_ptr_array_index (sheet->people, (guint) row->person) : NULL;

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "battery", row->label);
      ff_json_rounded (json, "energy_wh", row->energy_wh, 2);
      ff_json_rounded (json, "mass_kg", row->mass_kg, 3);
      ff_json_flag (json, "goes", row->person >= 0);
      ff_json_text (json, "carried_by", person != NULL ? person->name : NULL);
      ff_json_flag (json, "approval", row->approval);
      ff_json_text (json, "words", row->words);
      ff_json_end (json);
    }
  ff_json_end (json);
  ff_json_begin_array (json, "people");
  for (guint i = 0; i < sheet->people->len; i++)
    {
      const FfTravelPerson *person = g_ptr_array_index (sheet->people, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "name", person->name);
      ff_json_texts (json, "batteries", person->labels);
      ff_json_rounded (json, "energy_wh", person->energy_wh, 2);
      ff_json_rounded (json, "mass_kg", person->mass_kg, 3);
      ff_json_end (json);
    }
  ff_json_end (json);
  ff_json_texts (json, "approval_letter", sheet->approval);
  ff_json_texts (json, "cautions", sheet->cautions);
  ff_json_texts (json, "remarks", sheet->remarks);
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
print_sheet (FfConsole *console, const FfTravelSheet *sheet)
{
  g_autofree char *source
      = g_strdup_printf (sheet->example ? _ ("%s: rule “%s”, dated %s. %s")
                                        : _ ("%s: rule of %s, read %s. %s"),
                         sheet->job, sheet->carrier, sheet->read_on, sheet->source);

  if (sheet->example)
    ff_console_line (console, _ ("EXAMPLE RULE: enter your own carrier's before you rely on it."));
  ff_console_wrap (console, 0, source);
  print_texts (console, _ ("Cautions"), sheet->cautions);
  ff_console_line (console, "%s", "");
  for (guint i = 0; i < sheet->rows->len; i++)
    {
      const FfTravelRow *row = g_ptr_array_index (sheet->rows, i);
      g_autofree char *energy
          = isfinite (row->energy_wh) ? ff_number_format (row->energy_wh, 1) : g_strdup ("–");
      g_autofree char *line
          = g_strdup_printf (_ ("  %-8s %6s Wh  %s"), row->label, energy, row->words);

      ff_console_wrap (console, 21, line);
    }
  print_texts (console, _ ("For the letter that asks for approval"), sheet->approval);
  print_texts (console, _ ("To look at"), sheet->remarks);
}

static FfOutcome
show_sheet (FfConsole *console, FfStore *store, GError **error)
{
  g_autoptr (FfTravelSheet) sheet = NULL;
  int people = 0;

  if (people_text != NULL && !ff_integer_parse ("--people", people_text, 1, 40, &people, error))
    return FF_FAILED;
  sheet = ff_travel_sheet_load (store, console->words[0], carrier_text, people, error);
  if (sheet == NULL)
    return FF_FAILED;
  write_json (console->json, sheet);
  print_sheet (console, sheet);
  return sheet->wanted_left > 0 ? FF_NO : FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *what = console->n_words > 0 ? console->words[0] : "";
  gboolean names = strcmp (what, "add") == 0 || strcmp (what, "remove") == 0;
  gboolean writes = names || strcmp (what, "examples") == 0;
  g_autoptr (FfStore) store = NULL;

  if (!ff_console_want_words (console, names ? 2 : 1, names ? "NAME" : "JOB", error))
    return FF_FAILED;
  store = ff_console_open (console, writes ? FF_RECORDS_WRITE : FF_RECORDS_READ, error);
  if (store == NULL)
    return FF_FAILED;
  if (strcmp (what, "add") == 0)
    return add_rule (console, store, error);
  if (strcmp (what, "remove") == 0)
    return remove_rule (console, store, error);
  if (strcmp (what, "examples") == 0 && !ff_travel_add_examples (store, error))
    return FF_FAILED;
  if (writes || strcmp (what, "rules") == 0)
    return show_rules (console, store, error);
  return show_sheet (console, store, error);
}

const FfCommand ff_command_travel = {
  .name = "travel",
  .summary = N_ ("Share batteries among people by a carrier's rule"),
  .usage = "travel JOB [--carrier NAME] [--people N]\n"
           "  fieldfarectl travel rules | examples | remove NAME\n"
           "  fieldfarectl travel add NAME --source TEXT --read-on DAY --band WH:N[:approval]\n"
           "    [--band …] [--in-all N] [--cabin-kg KG] [--charge PERCENT] [--note TEXT]",
  .example = "fieldfarectl travel add 'Northern Air' --source 'their page on batteries' \\\n"
             "    --read-on 2027-09-01 --band 100:20 --band 160:2:approval --cabin-kg 8",
  .entries = entries,
  .run = run,
};
