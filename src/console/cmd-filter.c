/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What filter labels stand for, one by one and stacked; and measuring a filter of the gear. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-command.h"
#include "ff-error.h"
#include "ff-filter.h"
#include "ff-frame-filter.h"
#include "ff-item.h"
#include "ff-number.h"

/* More than anyone screws together; a bound for what comes from outside. */
#define MAX_LABELS 100

static char *without_path, *with_path;

static GOptionEntry entries[] = {
  { "without", 0, 0, G_OPTION_ARG_FILENAME, &without_path,
    N_ ("measure: picture without the filter"), "FILE" },
  { "with", 0, 0, G_OPTION_ARG_FILENAME, &with_path, N_ ("measure: picture with the filter"),
    "FILE" },
  G_OPTION_ENTRY_NULL,
};

static void
write_strength (FfJson *json, const FfFilterStrength *strength)
{
  ff_json_rounded (json, "stops", strength->stops, 9);
  ff_json_rounded (json, "stops_to", strength->stops_to, 9);
  ff_json_rounded (json, "density", ff_filter_density (strength->stops), 9);
  ff_json_number (json, "factor", ff_filter_factor (strength->stops));
  ff_json_number (json, "transmittance", ff_filter_transmittance (strength->stops));
}

/* "3", or "2 to 5" of a variable filter. */
static char *
format_range (double from, double to, int decimals)
{
  g_autofree char *low = ff_number_format (from, decimals);
  g_autofree char *high = ff_number_format (to, decimals);

  /* Translators: a range of numbers. */
  return from < to ? g_strdup_printf (_ ("%s to %s"), low, high) : g_steal_pointer (&low);
}

/* Columns of letters, not bytes: headings are translated. */
static void
append_right (GString *text, const char *cell, int width)
{
  const int pad = width - (int) g_utf8_strlen (cell, -1);

  g_string_append_printf (text, "%*s%s", MAX (pad, 1), "", cell);
}

/* Large factors need no decimals. */
static int
decimals_for (double value)
{
  return value < 100.0 ? 2 : 0;
}

static void
say_strength (FfConsole *console, const FfFilterStrength *strength, const char *what)
{
  const double from = strength->stops, to = strength->stops_to;
  g_autofree char *stops = format_range (from, to, 2);
  g_autofree char *factor = format_range (ff_filter_factor (from), ff_filter_factor (to),
                                          decimals_for (ff_filter_factor (to)));
  g_autofree char *density = format_range (ff_filter_density (from), ff_filter_density (to), 2);

  append_right (console->text, stops, 15);
  append_right (console->text, factor, 17);
  append_right (console->text, density, 13);
  g_string_append_printf (console->text, "  %s\n", what);
}

static void
say_headings (FfConsole *console)
{
  append_right (console->text, _ ("Stops"), 15);
  append_right (console->text, _ ("Factor"), 17);
  append_right (console->text, _ ("Density"), 13);
  /* Translators: what is engraved on a filter's rim, and how it was understood. */
  g_string_append_printf (console->text, "  %s\n", _ ("Engraved (read as)"));
}

static void
say_filter (FfConsole *console, const char *label, const FfFilterStrength *strength)
{
  g_autofree char *read_as = ff_filter_describe (strength);
  const gboolean plain
      = strength->naming == FF_FILTER_BY_STOPS || strength->naming == FF_FILTER_VARIABLE;
  /* A label in stops would only say itself twice. */
  g_autofree char *what = plain ? g_strdup (label) : g_strdup_printf ("%s (%s)", label, read_as);

  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "label", label);
  write_strength (console->json, strength);
  ff_json_text (console->json, "read_as", read_as);
  ff_json_end (console->json);
  say_strength (console, strength, what);
}

static FfOutcome
say_labels (FfConsole *console, GError **error)
{
  FfFilterStrength stack = { FF_FILTER_BY_STOPS, 0.0, 0.0 };

  if (console->n_words == 0)
    {
      ff_option_missing (_ ("a filter label, as ND8, 0.9 or “3 stops”,"), error);
      return FF_FAILED;
    }
  if (console->n_words > MAX_LABELS)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%u labels are too many; accepted: %d"),
                   console->n_words, MAX_LABELS);
      return FF_FAILED;
    }
  say_headings (console);
  ff_json_begin_array (console->json, "filters");
  for (guint i = 0; i < console->n_words; i++)
    {
      FfFilterStrength strength;

      if (!ff_filter_parse (console->words[i], &strength, error))
        return FF_FAILED;
      say_filter (console, console->words[i], &strength);
      stack.stops += strength.stops;
      stack.stops_to += strength.stops_to;
    }
  ff_json_end (console->json);
  ff_json_begin_object (console->json, "stack");
  write_strength (console->json, &stack);
  ff_json_end (console->json);
  if (console->n_words > 1)
    /* Translators: filters one in front of the other. */
    say_strength (console, &stack, _ ("stacked"));
  return FF_DONE;
}

/* ---- Measuring ---- */

static FfItem *
load_filter (FfStore *store, const char *wanted, GError **error)
{
  g_autofree char *id = ff_item_find (store, wanted, error);
  g_autoptr (FfItem) item = id != NULL ? ff_item_load (store, id, error) : NULL;

  if (item == NULL)
    return NULL;
  if (item->kind == FF_KIND_FILTER && item->stops_to <= item->stops)
    return g_steal_pointer (&item);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("“%s” is no filter of one strength; accepted: "
                                                   "one with fixed stops"),
               item->label);
  return NULL;
}

static void
write_measure (FfConsole *console, const FfItem *item, const FfFilterTest *test, double before)
{
  g_autofree char *stops = ff_stops_format (test->stops);
  g_autofree char *spread = ff_number_format (test->spread_stops, 1);
  g_autofree char *engraved = ff_stops_format (item->stops);

  ff_json_text (console->json, "item", item->label);
  ff_json_text (console->json, "engraving", *item->engraving != '\0' ? item->engraving : NULL);
  ff_json_number (console->json, "stops", item->stops);
  ff_json_rounded (console->json, "measured_stops", test->stops, 3);
  ff_json_rounded (console->json, "spread_stops", test->spread_stops, 3);
  ff_json_number (console->json, "measured_before_stops", before);
  /* Translators: label of a filter, its stops, how far off, and what is written on it. */
  ff_console_line (console, _ ("%s: measured %s ± %s, written %s. Plans count with what is "
                               "measured."),
                   item->label, stops, spread, engraved);
}

static FfOutcome
measure (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfItem) item = NULL;
  FfFilterTest test;
  double before;

  if (!ff_console_want_words (console, 2, "measure ITEM", error))
    return FF_FAILED;
  if (without_path == NULL || with_path == NULL)
    {
      ff_option_missing (without_path == NULL ? "--without" : "--with", error);
      return FF_FAILED;
    }
  store = ff_console_open (console, FF_RECORDS_WRITE, error);
  item = store != NULL ? load_filter (store, console->words[1], error) : NULL;
  if (item == NULL || !ff_frame_filter_test (without_path, with_path, &test, error))
    return FF_FAILED;
  before = item->measured_stops;
  /* What a picture says in thousandths of a stop is no news. */
  item->measured_stops = floor (test.stops * 100 + 0.5) / 100;
  if (!ff_item_save (store, item, error))
    return FF_FAILED;
  write_measure (console, item, &test, before);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  if (console->n_words > 0 && strcmp (console->words[0], "measure") == 0)
    return measure (console, error);
  if (without_path != NULL || with_path != NULL)
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           _ ("--without and --with go with “filter measure ITEM” alone"));
      return FF_FAILED;
    }
  return say_labels (console, error);
}

const FfCommand ff_command_filter = {
  .name = "filter",
  .summary = N_ ("Say what filter labels stand for; measure a filter with two pictures"),
  .usage = "filter LABEL…\n  fieldfarectl filter measure ITEM --without FILE --with FILE",
  .example = "fieldfarectl filter ND8 0.9 \"3 stops\" \"2-5 stops variable\"",
  .entries = entries,
  .run = run,
};
