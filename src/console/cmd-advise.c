/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Settings and filters for one shot in one light, the best first. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-advise.h"
#include "ff-camera-options.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-explain-lines.h"
#include "ff-filter.h"
#include "ff-light-options.h"
#include "ff-number.h"
#include "ff-scale.h"
#include "ff-want-options.h"

#define MAX_TOP 1000
#define MAX_FILTERS 40
/* Ways of fitting filters that are still worked out in well under a second. */
#define MAX_WAYS 100000.0
/* What arithmetic leaves beyond this is noise. */
#define DECIMALS 9

static FfLightOptions light_options;
static FfCameraOptions camera_options;
static FfWantOptions want_options;
static char *filters_text, *max_stack_text, *top_text;
static gboolean explain;

#define TEXT G_OPTION_ARG_STRING

static GOptionEntry entries[] = {
  FF_LIGHT_LEVEL_ENTRY (light_options),
  FF_LIGHT_OPTION_ENTRIES (light_options),
  { "apertures", 0, 0, TEXT, &camera_options.apertures,
    N_ ("f-numbers of the camera; one value: fixed"), "LIST" },
  { "iso", 0, 0, TEXT, &camera_options.iso, N_ ("ISO range in thirds, as 100:6400"), "MIN:MAX" },
  { "base-iso", 0, 0, TEXT, &camera_options.base_iso,
    N_ ("Base ISOs, the preferred one first (default: MIN)"), "LIST" },
  { "shutters", 0, 0, TEXT, &camera_options.shutters,
    N_ ("Shutter range in thirds, as 1/8000:8"), "FAST:SLOW" },
  { "thirds", 0, 0, G_OPTION_ARG_NONE, &camera_options.thirds,
    N_ ("Shutter labels stand for exact thirds of a stop: 1/60 is 1/64 s"), NULL },
  { "pitch", 0, 0, TEXT, &camera_options.pitch, N_ ("Pixel pitch in micrometres"), "UM" },
  { "intent", 0, 0, TEXT, &want_options.intent,
    N_ ("video, slow, still, bracket or timelapse"), "INTENT" },
  { "fps", 0, 0, TEXT, &want_options.fps, N_ ("Frames a second (video, slow)"), "F" },
  { "angle", 0, 0, TEXT, &want_options.angle, N_ ("Wanted shutter angle (default 180)"), "DEG" },
  { "angle-from", 0, 0, TEXT, &want_options.angle_from,
    N_ ("Smallest angle allowed (default 144)"), "DEG" },
  { "angle-to", 0, 0, TEXT, &want_options.angle_to, N_ ("Largest angle allowed (default 216)"),
    "DEG" },
  { "frames", 0, 0, TEXT, &want_options.frames, N_ ("Frames of the bracket, 2 to 15"), "N" },
  { "step", 0, 0, TEXT, &want_options.step, N_ ("Stops between frames of the bracket"), "STOPS" },
  { "interval", 0, 0, TEXT, &want_options.interval, N_ ("Seconds between frames (timelapse)"),
    "S" },
  { "max-iso", 0, 0, TEXT, &want_options.max_iso, N_ ("Highest ISO that the shot allows"), "I" },
  { "hold-aperture", 0, 0, TEXT, &want_options.hold_aperture, N_ ("f-number to keep"), "N" },
  { "max-blur", 0, 0, TEXT, &want_options.max_blur,
    N_ ("Pixels that a frame may move (needs the next three and --pitch)"), "PX" },
  { "speed", 0, 0, TEXT, &want_options.speed, N_ ("Speed over the ground in m/s"), "MS" },
  { "height", 0, 0, TEXT, &want_options.height, N_ ("Height above the ground in metres"), "M" },
  { "focal", 0, 0, TEXT, &want_options.focal, N_ ("Focal length in millimetres"), "MM" },
  { "filters", 0, 0, TEXT, &filters_text,
    N_ ("Filters at hand by their labels, as ND8,ND32; none is always a choice"), "LIST" },
  { "max-stack", 0, 0, TEXT, &max_stack_text, N_ ("Filters at once, 0 to 3 (default 1)"), "N" },
  { "top", 0, 0, TEXT, &top_text, N_ ("How many choices to show (default 5)"), "N" },
  { "explain", 0, 0, G_OPTION_ARG_NONE, &explain,
    N_ ("Say the steps from the light to the first choice, with their formulae"), NULL },
  G_OPTION_ENTRY_NULL,
};

/* Whole numbers that may be left out. */
static gboolean
read_count (const char *option, const char *text, int low, int high, guint *count, GError **error)
{
  int value;

  if (text == NULL)
    return TRUE;
  if (!ff_integer_parse (option, text, low, high, &value, error))
    return FALSE;
  *count = (guint) value;
  return TRUE;
}

static gboolean
read_light (FfLight *ret_light, GError **error)
{
  if (ff_light_options_first (&light_options) == NULL)
    return ff_option_missing (_ ("the light (--ev100, --condition, or --lat, --lon, --at, --sky)"),
                              error);
  return ff_light_options_resolve (&light_options, ret_light, error);
}

/* Each label points into `labels`. */
static GArray *
read_filters (GStrv labels, GError **error)
{
  g_autoptr (GArray) filters = g_array_new (FALSE, FALSE, sizeof (FfAdviseFilter));

  for (guint i = 0; labels != NULL && labels[i] != NULL; i++)
    {
      FfFilterStrength strength;
      FfAdviseFilter filter;

      if (i == MAX_FILTERS)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--filters: “%s” is one too many; accepted: up to %d"), labels[i],
                       MAX_FILTERS);
          return NULL;
        }
      if (!ff_filter_parse (labels[i], &strength, error))
        {
          g_prefix_error (error, "--filters: ");
          return NULL;
        }
      filter = (FfAdviseFilter) { labels[i], strength.stops, strength.stops_to };
      g_array_append_val (filters, filter);
    }
  return g_steal_pointer (&filters);
}

/* Stacks of variable filters multiply; nobody carries so many, but anybody can type them. */
static gboolean
check_ways (const FfAdviseQuery *query, GError **error)
{
  double settings = 0, ways = 1;

  for (guint i = 0; i < query->n_filters; i++)
    settings += 1 + ceil ((query->filters[i].stops_to - query->filters[i].stops) * 3);
  for (guint i = 1; i <= query->max_stack; i++)
    ways *= settings / i;
  if (ways <= MAX_WAYS)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("--filters, --max-stack: %u filters, up to %u at once, are more ways than can be "
                  "tried; accepted: fewer of either"),
               query->n_filters, query->max_stack);
  return FALSE;
}

static void
write_filters (FfJson *json, const FfChoice *choice, const FfAdviseFilter *filters)
{
  ff_json_begin_array (json, "filters");
  for (guint i = 0; i < choice->n_filters; i++)
    ff_json_text (json, NULL, filters[choice->filters[i]].label);
  ff_json_end (json);
  ff_json_begin_array (json, "set_to_stops");
  for (guint i = 0; i < choice->n_filters; i++)
    ff_json_rounded (json, NULL, choice->set_to[i], DECIMALS);
  ff_json_end (json);
  ff_json_rounded (json, "filter_stops", choice->filter_stops, DECIMALS);
}

static void
write_settings (FfJson *json, const FfSettings *settings)
{
  ff_json_number (json, "aperture", settings->aperture.written);
  ff_json_number (json, "aperture_exact", settings->aperture.exact);
  ff_json_text (json, "shutter", ff_scale_label (FF_SCALE_SHUTTER, settings->shutter));
  ff_json_number (json, "shutter_s", settings->shutter_s);
  ff_json_rounded (json, "shutter_angle_deg", settings->shutter_angle_deg, DECIMALS);
  ff_json_number (json, "iso", ff_scale_written (FF_SCALE_ISO, settings->iso));
  ff_json_rounded (json, "error_stops", settings->error_stops, DECIMALS);
}

static void
write_choice (FfJson *json, const FfChoice *choice, const FfAdviseFilter *filters)
{
  ff_json_begin_object (json, NULL);
  write_filters (json, choice, filters);
  write_settings (json, &choice->settings);
  ff_json_rounded (json, "cost", choice->cost, DECIMALS);
  ff_json_begin_object (json, "cost_parts");
  for (int part = FF_PART_SHUTTER; part <= FF_PART_ERROR; part++)
    ff_json_rounded (json, ff_name_token (&ff_names_part, part), choice->parts[part], DECIMALS);
  ff_json_end (json);
  ff_json_rounded (json, "good_from_ev100", choice->good_from_ev100, DECIMALS);
  ff_json_rounded (json, "good_to_ev100", choice->good_to_ev100, DECIMALS);
  ff_json_begin_array (json, "remarks");
  for (guint i = 0; i < choice->n_remarks; i++)
    {
      g_autofree char *text = ff_remark_text (&choice->remarks[i]);

      ff_json_text (json, NULL, text);
    }
  ff_json_end (json);
  ff_json_end (json);
}

/* Columns of letters, not bytes: headings are translated and labels are as typed. */
static void
append_cell (GString *line, const char *cell, int width)
{
  const int pad = width - (int) g_utf8_strlen (cell, -1);

  g_string_append_printf (line, "%s%*s", cell, MAX (pad, 1), "");
}

/* "ND8 + ND64" */
static char *
filter_labels (const FfChoice *choice, const FfAdviseFilter *filters)
{
  GString *labels = g_string_new (NULL);

  for (guint i = 0; i < choice->n_filters; i++)
    g_string_append_printf (labels, "%s%s", i > 0 ? " + " : "", filters[choice->filters[i]].label);
  return g_string_free (labels, FALSE);
}

/* Stops first, then what is engraved: "9: ND8 + ND64". */
static char *
filters_cell (const FfChoice *choice, const FfAdviseFilter *filters)
{
  g_autofree char *stops = ff_number_format (choice->filter_stops, 2);
  g_autofree char *labels = filter_labels (choice, filters);

  /* Translators: no filter in front of the lens. */
  return choice->n_filters == 0 ? g_strdup (_ ("none")) : g_strdup_printf ("%s: %s", stops, labels);
}

static void
say_headings (FfConsole *console)
{
  GString *line = g_string_new (NULL);

  append_cell (line, "", 4);
  /* Translators: headings of a narrow table: at most 25, 9, 14, 8 and 8 letters. */
  append_cell (line, _ ("Filter in stops"), 26);
  append_cell (line, _ ("Aperture"), 10);
  append_cell (line, _ ("Shutter"), 15);
  append_cell (line, _ ("ISO"), 8);
  append_cell (line, _ ("Error"), 8);
  g_string_append (line, _ ("Cost"));
  ff_console_line (console, "%s", line->str);
  g_string_free (line, TRUE);
}

/* Two decimals and no "-0.00". */
static char *
fixed (double value, const char *format)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (text, sizeof text, format, fabs (value) < 0.005 ? 0 : value));
}

static char *
shutter_cell (const FfSettings *settings)
{
  const char *label = ff_scale_label (FF_SCALE_SHUTTER, settings->shutter);
  g_autofree char *angle = ff_number_format (settings->shutter_angle_deg, 1);

  return isnan (settings->shutter_angle_deg) ? g_strdup_printf ("%s s", label)
                                             : g_strdup_printf ("%s %s°", label, angle);
}

static void
say_choice (FfConsole *console, guint place, const FfChoice *choice, const FfAdviseFilter *filters)
{
  const FfSettings *settings = &choice->settings;
  g_autofree char *number = g_strdup_printf ("%u", place);
  g_autofree char *filter = filters_cell (choice, filters);
  g_autofree char *f_number = ff_number_format (settings->aperture.written, 2);
  g_autofree char *aperture = g_strdup_printf ("f/%s", f_number);
  g_autofree char *shutter = shutter_cell (settings);
  g_autofree char *stops = fixed (settings->error_stops, "%+.2f");
  g_autofree char *cost = fixed (choice->cost, "%.2f");
  GString *line = g_string_new (NULL);

  append_cell (line, number, 4);
  append_cell (line, filter, 26);
  append_cell (line, aperture, 10);
  append_cell (line, shutter, 15);
  append_cell (line, ff_scale_label (FF_SCALE_ISO, settings->iso), 8);
  append_cell (line, stops, 8);
  g_string_append (line, cost);
  ff_console_line (console, "%s", line->str);
  g_string_free (line, TRUE);
  for (guint i = 0; i < choice->n_remarks; i++)
    {
      g_autofree char *text = ff_remark_text (&choice->remarks[i]);

      ff_console_line (console, "    %s", text);
    }
}

static void
say_reach (FfConsole *console, const FfReach *reach, const FfChoice *best, GPtrArray *would_help)
{
  g_autofree char *from = ff_number_format (best->good_from_ev100, 1);
  g_autofree char *to = ff_number_format (best->good_to_ev100, 1);
  g_autofree char *stops = ff_number_format (fabs (reach->shortfall_stops), 2);

  ff_console_line (console, "%s", "");
  if (reach->ok)
    {
      ff_console_line (console, _ ("The first choice holds from EV %s to EV %s."), from, to);
      return;
    }
  if (reach->shortfall_stops > 0)
    ff_console_line (console, _ ("Out of reach: too bright by %s stops at the nearest."), stops);
  else
    ff_console_line (console, _ ("Out of reach: too dark by %s stops at the nearest."), stops);
  if (would_help->len > 0)
    ff_console_line (console, "%s", _ ("Would help:"));
  for (guint i = 0; i < would_help->len; i++)
    ff_console_line (console, "    %s", (const char *) g_ptr_array_index (would_help, i));
}

static FfExplainFrom
explain_from (FfLightFrom from)
{
  if (from == FF_LIGHT_FROM_SUN)
    return FF_EXPLAIN_SUN;
  return from == FF_LIGHT_FROM_CONDITION ? FF_EXPLAIN_TABLE : FF_EXPLAIN_GIVEN;
}

static void
write_explain (FfConsole *console,
               const FfAdviseQuery *query,
               const FfLight *light,
               const FfChoice *choice)
{
  g_autofree char *filters = choice->n_filters > 0 ? filter_labels (choice, query->filters) : NULL;
  const FfExplainQuery asked = {
    .from = explain_from (light->from),
    .sun_altitude_deg = light->sun.altitude_deg,
    .sun_azimuth_deg = light->sun.azimuth_deg,
    .from_sun_deg = light->query.from_sun_deg,
    .sky = light->query.sky,
    .view = light->query.view,
    .subject_stops = light->query.offset_stops,
    .source = light->condition != NULL ? light->condition->source : NULL,
    .ev100 = light->ev100,
    .low_ev100 = light->low_ev100,
    .high_ev100 = light->high_ev100,
    .camera = query->camera,
    .want = query->want,
    .filters = filters,
    .filter_stops = choice->filter_stops,
    .settings = choice->settings,
  };
  g_autoptr (GPtrArray) steps = ff_explain (&asked);

  ff_json_steps (console->json, "explain", steps);
  ff_console_line (console, "\n%s", _ ("Why the first choice"));
  ff_console_steps (console, steps, 2);
}

static FfOutcome
answer (FfConsole *console, const FfAdviseQuery *query, const FfLight *light, guint top)
{
  FfReach reach;
  g_autoptr (GArray) choices = ff_advise (query, top, &reach);
  g_autoptr (GPtrArray) would_help = ff_advise_would_help (query, &reach);
  g_autofree char *level = ff_number_format (query->ev100, 2);

  ff_json_begin_object (console->json, "target");
  ff_json_number (console->json, "ev100", query->ev100);
  ff_json_end (console->json);
  ff_console_line (console, _ ("Light: EV %s at ISO 100"), level);
  say_headings (console);
  ff_json_begin_array (console->json, "choices");
  for (guint i = 0; i < choices->len; i++)
    {
      const FfChoice *choice = &g_array_index (choices, FfChoice, i);

      write_choice (console->json, choice, query->filters);
      say_choice (console, i + 1, choice, query->filters);
    }
  ff_json_end (console->json);
  ff_json_begin_object (console->json, "reach");
  ff_json_flag (console->json, "ok", reach.ok);
  ff_json_rounded (console->json, "shortfall_stops", reach.shortfall_stops, DECIMALS);
  ff_json_texts (console->json, "would_help", would_help);
  ff_json_end (console->json);
  say_reach (console, &reach, &g_array_index (choices, FfChoice, 0), would_help);
  if (explain)
    write_explain (console, query, light, &g_array_index (choices, FfChoice, 0));
  return reach.ok ? FF_DONE : FF_NO;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  FfCameraRange camera;
  FfWant want;
  FfLight light;
  FfAdviseQuery query = { .camera = &camera, .want = &want, .max_stack = 1 };
  guint top = 5;
  g_auto (GStrv) labels = NULL;
  g_autoptr (GArray) filters = NULL;

  if (!ff_console_want_words (console, 0, _ ("options only"), error)
      || !read_light (&light, error)
      || !ff_camera_options_resolve (&camera_options, &camera, error)
      || !ff_want_options_resolve (&want_options, &camera, &want, error)
      || !read_count ("--max-stack", max_stack_text, 0, FF_MAX_STACK, &query.max_stack, error)
      || !read_count ("--top", top_text, 1, MAX_TOP, &top, error))
    return FF_FAILED;
  if (filters_text != NULL)
    labels = ff_option_list ("--filters", filters_text, error);
  if (filters_text != NULL && labels == NULL)
    return FF_FAILED;
  filters = read_filters (labels, error);
  if (filters == NULL)
    return FF_FAILED;
  query.ev100 = light.ev100;
  query.filters = (const FfAdviseFilter *) (const void *) filters->data;
  query.n_filters = filters->len;
  return check_ways (&query, error) ? answer (console, &query, &light, top) : FF_FAILED;
}

const FfCommand ff_command_advise = {
  .name = "advise",
  .summary = N_ ("Settings and filters for one shot in one light, the best first"),
  .usage = "advise LIGHT CAMERA WANT FILTERS [--top N] [--explain]",
  .example = "fieldfarectl advise --ev100 13.6 --apertures 2.8 --iso 100:6400 "
             "--shutters 1/8000:8 --intent video --fps 25 --filters ND8,ND16,ND32",
  .entries = entries,
  .run = run,
};
