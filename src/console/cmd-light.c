/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How much light there is: under a sun and a sky, or by a published condition. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-light-options.h"
#include "ff-number.h"

/* Looking into a sun lower than this, a model is no guide to what the meter sees. */
#define LOW_SUN_DEG 15.0

static FfLightOptions options;
static gboolean want_list;

#define LIST_INDENT 27 /* name, range, and two blanks */
#define ROW_INDENT 24  /* as of ff_console_row() */

static GOptionEntry entries[] = {
  FF_LIGHT_OPTION_ENTRIES (options),
  { "list", 0, 0, G_OPTION_ARG_NONE, &want_list, N_ ("List the lighting conditions"), NULL },
  G_OPTION_ENTRY_NULL,
};

/* A row whose value may want more than one line. */
static void
say_long (FfConsole *console, const char *label, const char *value)
{
  const int pad = ROW_INDENT - (int) g_utf8_strlen (label, -1);
  g_autofree char *line = g_strdup_printf ("%s%*s%s", label, MAX (pad, 1), "", value);

  ff_console_wrap (console, ROW_INDENT, line);
}

static void
say_level (FfConsole *console, double ev100, double low, double high)
{
  g_autofree char *level = ff_number_format (ev100, 1);
  g_autofree char *low_text = ff_number_format (low, 1);
  g_autofree char *high_text = ff_number_format (high, 1);

  if (low < high)
    ff_console_row (console, _ ("EV at ISO 100"), _ ("%s (%s to %s)"), level, low_text, high_text);
  else
    ff_console_row (console, _ ("EV at ISO 100"), "%s", level);
}

static void
write_range (FfJson *json, double low, double high)
{
  ff_json_rounded (json, "low_ev100", low, 6);
  ff_json_rounded (json, "high_ev100", high, 6);
}

static FfOutcome
run_condition (FfConsole *console, const FfLight *light)
{
  const FfCondition *condition = light->condition;
  const char *note = condition->note != NULL ? _ (condition->note) : NULL;
  FfJson *json = console->json;

  ff_json_text (json, "name", condition->name);
  ff_json_text (json, "text", _ (condition->text));
  ff_json_rounded (json, "ev100", light->ev100, 6);
  write_range (json, light->low_ev100, light->high_ev100);
  ff_json_text (json, "source", _ (condition->source));
  ff_json_text (json, "note", note);

  say_long (console, _ ("Condition"), _ (condition->text));
  say_level (console, light->ev100, light->low_ev100, light->high_ev100);
  say_long (console, _ ("Source"), _ (condition->source));
  if (note != NULL)
    {
      g_autofree char *sentence = g_strdup_printf ("%s.", note);

      ff_console_wrap (console, 0, sentence);
    }
  return FF_DONE;
}

static void
list_condition (FfConsole *console, const FfCondition *condition)
{
  g_autofree char *low = ff_number_format (condition->low_ev100, 1);
  g_autofree char *high = ff_number_format (condition->high_ev100, 1);
  g_autofree char *range = condition->low_ev100 < condition->high_ev100
                               ? g_strdup_printf (_ ("%s to %s"), low, high)
                               : g_strdup (low);
  g_autofree char *line = NULL;

  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "name", condition->name);
  ff_json_text (console->json, "text", _ (condition->text));
  write_range (console->json, condition->low_ev100, condition->high_ev100);
  ff_json_text (console->json, "source", _ (condition->source));
  ff_json_end (console->json);
  line = g_strdup_printf ("%-16s %8s  %s", condition->name, range, _ (condition->text));
  ff_console_wrap (console, LIST_INDENT, line);
}

static FfOutcome
run_list (FfConsole *console)
{
  ff_json_begin_array (console->json, "conditions");
  for (guint i = 0; i < ff_conditions_count (); i++)
    list_condition (console, ff_condition (i));
  ff_json_end (console->json);
  /* Translators: below a table of lighting conditions. */
  ff_console_line (console, _ ("The numbers are EV at ISO 100. Conditions in direct sun:"));
  ff_console_line (console, "%s.", _ (ff_condition (0)->note));
  return FF_DONE;
}

/* What the numbers can't promise, in sentences. */
static GPtrArray *
remarks_of (const FfLight *light)
{
  GPtrArray *remarks = g_ptr_array_new ();
  const double altitude = light->sun.altitude_deg;

  if (light->daylight.guide_only)
    g_ptr_array_add (remarks,
                     _ ("The sun is more than 4° below the horizon: a guide only, take a reading"));
  if (light->query.view == FF_VIEW_OBLIQUE && light->lit == FF_LIT_BACK && altitude > -1.0
      && altitude < LOW_SUN_DEG
      && (light->query.sky == FF_SKY_CLEAR || light->query.sky == FF_SKY_THIN
          || light->query.sky == FF_SKY_PARTLY))
    g_ptr_array_add (remarks, _ ("The camera looks into the low sun: take a reading"));
  return remarks;
}

static void
write_sun (FfJson *json, const FfDirection *sun)
{
  ff_json_begin_object (json, "sun");
  ff_json_rounded (json, "altitude_deg", sun->altitude_deg, 4);
  ff_json_rounded (json, "apparent_altitude_deg", sun->apparent_altitude_deg, 4);
  ff_json_rounded (json, "azimuth_deg", sun->azimuth_deg, 4);
  ff_json_end (json);
}

static void
write_light (FfJson *json, const FfLight *light, const char *at, GPtrArray *remarks)
{
  ff_json_text (json, "at", at);
  ff_json_number (json, "illuminance_lx", light->daylight.illuminance_lx);
  ff_json_rounded (json, "ev100", light->ev100, 6);
  write_range (json, light->low_ev100, light->high_ev100);
  ff_json_text (json, "sky", ff_name_token (&ff_names_sky, light->query.sky));
  ff_json_text (json, "view", ff_name_token (&ff_names_view, light->query.view));
  ff_json_text (json, "lit", ff_name_token (&ff_names_lit, light->lit));
  ff_json_rounded (json, "from_sun_deg", light->query.from_sun_deg, 4);
  ff_json_rounded (json, "offset_stops", light->query.offset_stops, 6);
  ff_json_flag (json, "guide_only", light->daylight.guide_only);
  write_sun (json, &light->sun);
  ff_json_texts (json, "remarks", remarks);
}

/* Three digits: the model is good for no more. */
static char *
format_lux (double lux)
{
  const int decimals = 2 - (int) floor (log10 (lux));
  const double unit = exp10 (-decimals);

  return ff_number_format (round (lux / unit) * unit, MAX (decimals, 0));
}

static void
say_light (FfConsole *console, const FfLight *light, const char *at, GPtrArray *remarks)
{
  g_autofree char *altitude = ff_number_format (light->sun.altitude_deg, 1);
  g_autofree char *azimuth = ff_number_format (light->sun.azimuth_deg, 0);
  g_autofree char *lux = format_lux (light->daylight.illuminance_lx);
  const char *view = ff_name_text (&ff_names_view, light->query.view);

  ff_console_row (console, _ ("Time"), "%s", at);
  /* Translators: the sun's altitude and its bearing from true north, in degrees. */
  ff_console_row (console, _ ("Sun"), _ ("%s° high, bearing %s°"), altitude, azimuth);
  ff_console_row (console, _ ("Sky"), "%s", ff_name_text (&ff_names_sky, light->query.sky));
  if (light->query.view == FF_VIEW_DOWN)
    ff_console_row (console, _ ("View"), "%s", view);
  else
    ff_console_row (console, _ ("View"), "%s, %s", view, ff_name_text (&ff_names_lit, light->lit));
  /* Translators: illuminance, in lux. */
  ff_console_row (console, _ ("On level ground"), _ ("%s lx"), lux);
  say_level (console, light->ev100, light->low_ev100, light->high_ev100);
  for (guint i = 0; i < remarks->len; i++)
    ff_console_line (console, "%s.", (const char *) g_ptr_array_index (remarks, i));
}

static FfOutcome
run_sun (FfConsole *console, const FfLight *light)
{
  g_autofree char *at = ff_instant_format ((double) light->at, NULL);
  g_autoptr (GPtrArray) remarks = remarks_of (light);

  write_light (console->json, light, at, remarks);
  say_light (console, light, at, remarks);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *other = ff_light_options_first (&options);
  FfLight light;

  if (!ff_console_want_words (console, 0, NULL, error))
    return FF_FAILED;
  if (want_list && other != NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("--list stands alone; leave out %s"), other);
      return FF_FAILED;
    }
  if (want_list)
    return run_list (console);
  if (other == NULL)
    {
      ff_option_missing (_ ("--lat, --lon, --at and --sky, or --condition, or --list,"), error);
      return FF_FAILED;
    }
  if (!ff_light_options_resolve (&options, &light, error))
    return FF_FAILED;
  return light.from == FF_LIGHT_FROM_CONDITION ? run_condition (console, &light)
                                               : run_sun (console, &light);
}

const FfCommand ff_command_light = {
  .name = "light",
  .summary = N_ ("Say how much light there is under a sun and a sky, or by a condition"),
  .usage = "light --lat D --lon D --at TIME --sky SKY [--view oblique|down]\n"
           "      [--bearing DEG | --lit front|side|back] [--offset STOPS]\n"
           "  fieldfarectl light --condition NAME\n"
           "  fieldfarectl light --list",
  .example = "fieldfarectl light --lat 57.2 --lon -4 --at 2027-09-18T16:30:00+01:00 --sky clear",
  .entries = entries,
  .run = run,
};
