/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Light readings of a job: one corrects the rest of the day. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-reading.h"
#include "ff-error.h"
#include "ff-frame.h"
#include "ff-number.h"
#include "ff-scale.h"

#define MAX_STOPS 30.0

static char *at_text, *shown_text, *target_text, *ev100_text, *lux_text, *frame_path, *nd_text;
static char *aperture_text, *iso_text, *shot_text, *sky_text, *cloud_text, *by_text, *why_text;

static GOptionEntry entries[] = {
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_text,
    N_ ("add: when (a picture knows its own time)"), "TIME" },
  { "shown", 0, 0, G_OPTION_ARG_STRING, &shown_text, N_ ("add: shutter that auto shutter shows"),
    "S" },
  { "target", 0, 0, G_OPTION_ARG_STRING, &target_text, N_ ("add: shutter that is wanted"), "S" },
  { "ev100", 0, 0, G_OPTION_ARG_STRING, &ev100_text, N_ ("add: EV at ISO 100 of a meter"), "X" },
  { "lux", 0, 0, G_OPTION_ARG_STRING, &lux_text, N_ ("add: lux on level ground"), "X" },
  { "frame", 0, 0, G_OPTION_ARG_FILENAME, &frame_path, N_ ("add: a test picture"), "FILE" },
  { "nd", 0, 0, G_OPTION_ARG_STRING, &nd_text, N_ ("add: filter fitted, in stops (default 0)"),
    "STOPS" },
  { "aperture", 0, 0, G_OPTION_ARG_STRING, &aperture_text,
    N_ ("add: aperture (default: the camera's one)"), "N" },
  { "iso", 0, 0, G_OPTION_ARG_STRING, &iso_text, N_ ("add: ISO (default: the camera's base)"),
    "I" },
  { "shot", 0, 0, G_OPTION_ARG_STRING, &shot_text,
    N_ ("add: shot it looked at (default: oblique, sun behind)"), "SHOT" },
  { "sky", 0, 0, G_OPTION_ARG_STRING, &sky_text, N_ ("add: sky now (default: the job's)"), "SKY" },
  { "cloud", 0, 0, G_OPTION_ARG_STRING, &cloud_text,
    N_ ("add: does cloud move? still or moves (default: by the sky)"), "WORD" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("add, drop: initials of who enters it"),
    "INITIALS" },
  { "why", 0, 0, G_OPTION_ARG_STRING, &why_text, N_ ("drop: why it is set aside"), "TEXT" },
  G_OPTION_ENTRY_NULL,
};

/* ---- Out ---- */

static void
json_instant (FfJson *json, const char *name, gint64 at, GTimeZone *zone)
{
  g_autofree char *text = ff_instant_format ((double) at, zone);

  ff_json_text (json, name, text);
}

static void
json_text (FfJson *json, const char *name, const char *text)
{
  ff_json_text (json, name, *text != '\0' ? text : NULL);
}

static void
json_dropped (FfJson *json, const FfReading *reading, GTimeZone *zone)
{
  if (!ff_reading_is_dropped (reading))
    {
      ff_json_null (json, "dropped");
      return;
    }
  ff_json_begin_object (json, "dropped");
  json_instant (json, "at", reading->dropped_at, zone);
  ff_json_text (json, "why", reading->dropped_why);
  json_text (json, "by", reading->dropped_by);
  ff_json_end (json);
}

static void
json_reading (FfJson *json, const FfDay *day, const FfReading *reading)
{
  GTimeZone *zone = ff_day_zone (day);

  ff_json_text (json, "id", reading->id);
  json_instant (json, "at", reading->at, zone);
  ff_json_text (json, "method", ff_name_token (&ff_names_method, (int) reading->method));
  ff_json_rounded (json, "ev100", reading->ev100, 6);
  ff_json_rounded (json, "spread_stops", reading->spread_stops, 6);
  ff_json_rounded (json, "offset_stops", ff_day_reading_offset (day, reading), 6);
  ff_json_rounded (json, "need_stops", ff_day_reading_need (reading), 6);
  ff_json_number (json, "nd_stops", reading->nd_stops);
  ff_json_number (json, "shown_s", reading->shown_s);
  ff_json_number (json, "target_s", reading->target_s);
  ff_json_number (json, "aperture", reading->aperture);
  ff_json_number (json, "iso", reading->iso);
  ff_json_number (json, "lux", reading->lux);
  ff_json_text (json, "view", ff_name_token (&ff_names_view, (int) reading->view));
  ff_json_number (json, "bearing_deg", reading->bearing_deg);
  ff_json_text (json, "sky", ff_name_token (&ff_names_sky, (int) reading->sky));
  ff_json_flag (json, "cloud_moves", reading->cloud_moves);
  json_text (json, "source", reading->source);
  json_text (json, "by", reading->by);
  json_dropped (json, reading, zone);
}

static void
print_reading (FfConsole *console, const FfDay *day, const FfReading *reading)
{
  g_autofree char *words = ff_day_reading_words (day, reading);

  ff_console_line (console, "%.8s  %s", reading->id, words);
  if (ff_reading_is_dropped (reading))
    /* Translators: of a reading; then the reason. */
    ff_console_line (console, _ ("          set aside: %s"), reading->dropped_why);
}

/* What the day has learned, at the end of every answer. */
static void
write_learned (FfConsole *console, const FfDay *day, FfSky sky)
{
  g_autofree char *words = ff_day_learned_words (day, sky);
  double offset;

  ff_day_last_reading (day, &offset);
  ff_json_rounded (console->json, "learned_offset_stops", offset, 6);
  ff_json_text (console->json, "light", words);
  ff_console_line (console, "%s", words);
}

static FfSky
sky_of (const FfDay *day)
{
  return ff_day_job (day)->sky;
}

static void
write_list (FfConsole *console, const FfDay *day)
{
  GPtrArray *readings = ff_day_readings (day);

  ff_json_text (console->json, "job", ff_day_job (day)->title);
  ff_json_begin_array (console->json, "readings");
  for (guint i = 0; i < readings->len; i++)
    {
      ff_json_begin_object (console->json, NULL);
      json_reading (console->json, day, g_ptr_array_index (readings, i));
      ff_json_end (console->json);
      print_reading (console, day, g_ptr_array_index (readings, i));
    }
  ff_json_end (console->json);
  write_learned (console, day, sky_of (day));
}

/* What it does to the plan; nothing of a job that can't be planned yet. */
static void
write_changes (FfConsole *console, const FfDay *before, const FfDay *after)
{
  g_autoptr (FfDayPlan) was = ff_day_plan (before, NULL, NULL);
  g_autoptr (FfDayPlan) now = was != NULL ? ff_day_plan (after, NULL, NULL) : NULL;

  ff_json_begin_array (console->json, "changes");
  if (now != NULL)
    ff_day_plan_compare (was, now);
  for (guint i = 0; now != NULL && i < now->changes->len; i++)
    {
      ff_json_text (console->json, NULL, g_ptr_array_index (now->changes, i));
      ff_console_line (console, "  %s", (const char *) g_ptr_array_index (now->changes, i));
    }
  ff_json_end (console->json);
}

/* ---- In ---- */

/* Exactly one way to take a reading. */
static gboolean
read_method (FfReadingEntry *entry, GError **error)
{
  const char *const given[] = { shown_text, ev100_text, lux_text, frame_path };
  int n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (given); i++)
    if (given[i] != NULL)
      {
        entry->method = (FfMethod) i;
        n++;
      }
  if (n == 1 && (target_text == NULL || entry->method == FF_METHOD_SHOWN))
    return TRUE;
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                       n == 1 ? _ ("--target: goes with --shown alone")
                              : _ ("accepted: one of --shown with --target, --ev100, --lux, "
                                   "--frame"));
  return FALSE;
}

static gboolean
read_shown (FfReadingEntry *entry, GError **error)
{
  if (target_text == NULL)
    return ff_option_missing ("--target", error);
  return ff_shutter_parse ("--shown", shown_text, FALSE, &entry->shown_s, error)
         && ff_shutter_parse ("--target", target_text, FALSE, &entry->target_s, error);
}

/* The picture says its light, how sure that is, and when. */
static gboolean
read_frame (FfReadingEntry *entry, const FfDay *day, char **ret_name, GError **error)
{
  FfMeterReading meter;
  FfFrame frame;

  if (!ff_frame_read (frame_path, &frame, error))
    return FALSE;
  ff_frame_meter (&frame, entry->nd_stops, &meter);
  if (!isfinite (meter.ev100))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--frame: %s does not say aperture, shutter and ISO; accepted: a picture "
                      "with its settings"),
                   frame_path);
      return FALSE;
    }
  entry->ev100 = meter.ev100;
  entry->spread_stops = meter.spread_stops;
  entry->aperture = frame.aperture;
  entry->iso = frame.iso;
  *ret_name = g_path_get_basename (frame_path);
  if (at_text != NULL || ff_frame_instant (&frame, ff_day_zone (day), &entry->at, error))
    return TRUE;
  g_prefix_error (error, "--at: ");
  return FALSE;
}

static gboolean
read_cloud (FfReadingEntry *entry, GError **error)
{
  if (cloud_text == NULL || strcmp (cloud_text, "still") == 0 || strcmp (cloud_text, "moves") == 0)
    {
      entry->cloud = cloud_text == NULL              ? FF_CLOUD_BY_SKY
                     : strcmp (cloud_text, "still") == 0 ? FF_CLOUD_STILL
                                                         : FF_CLOUD_MOVES;
      return TRUE;
    }
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("--cloud: found “%s”; accepted: still, moves"),
               cloud_text);
  return FALSE;
}

static gboolean
read_sky (FfReadingEntry *entry, GError **error)
{
  int sky;

  if (sky_text == NULL)
    return TRUE;
  if (!ff_option_name ("--sky", &ff_names_sky, sky_text, &sky, error))
    return FALSE;
  entry->other_sky = TRUE;
  entry->sky = (FfSky) sky;
  return TRUE;
}

static gboolean
read_shot (FfReadingEntry *entry, const FfDay *day, GError **error)
{
  if (shot_text == NULL)
    return TRUE;
  entry->shot = ff_day_find_shot (day, shot_text);
  if (entry->shot == NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                 _ ("--shot: no shot of this job is labelled “%s”"), shot_text);
  return entry->shot != NULL;
}

static gboolean
read_numbers (FfReadingEntry *entry, GError **error)
{
  if ((nd_text != NULL && !ff_option_number ("--nd", nd_text, 0, MAX_STOPS, &entry->nd_stops, error))
      || (aperture_text != NULL
          && !ff_option_number ("--aperture", aperture_text, 0.5, 64, &entry->aperture, error))
      || (iso_text != NULL && !ff_option_number ("--iso", iso_text, 1, 1e7, &entry->iso, error)))
    return FALSE;
  switch (entry->method)
    {
    case FF_METHOD_SHOWN:
      return read_shown (entry, error);
    case FF_METHOD_EV100:
      return ff_option_number ("--ev100", ev100_text, -12, 24, &entry->ev100, error);
    case FF_METHOD_LUX:
      return ff_option_number ("--lux", lux_text, 1e-6, 1e6, &entry->lux, error);
    case FF_METHOD_FRAME:
    default:
      return TRUE;
    }
}

static FfReading *
read_reading (FfStore *store, const FfDay *day, GError **error)
{
  FfReadingEntry entry = FF_READING_ENTRY_INIT;
  g_autofree char *name = NULL, *initials = NULL;

  if (!read_method (&entry, error) || !read_numbers (&entry, error))
    return NULL;
  if ((at_text != NULL || entry.method != FF_METHOD_FRAME)
      && !ff_option_instant ("--at", at_text, &entry.at, error))
    return NULL;
  if ((entry.method == FF_METHOD_FRAME && !read_frame (&entry, day, &name, error))
      || !read_cloud (&entry, error) || !read_sky (&entry, error)
      || !read_shot (&entry, day, error) || !ff_option_initials ("--by", by_text, store, &initials, error))
    return NULL;
  entry.source = name;
  entry.by = initials;
  return ff_day_reading_new (day, &entry, error);
}

/* ---- Commands ---- */

static FfOutcome
add (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_WRITE, error);
  g_autoptr (FfDay) before = NULL, after = NULL;
  g_autoptr (FfReading) reading = NULL;
  g_autofree char *caution = NULL;

  before = store != NULL ? ff_day_load (store, console->words[1], error) : NULL;
  reading = before != NULL ? read_reading (store, before, error) : NULL;
  if (reading == NULL || !ff_reading_append (store, reading, error))
    return FF_FAILED;
  after = ff_day_load (store, ff_day_job (before)->id, error);
  if (after == NULL)
    return FF_FAILED;
  ff_json_text (console->json, "job", ff_day_job (after)->title);
  json_reading (console->json, after, reading);
  print_reading (console, after, reading);
  caution = ff_day_reading_caution (after, reading);
  json_text (console->json, "caution", caution);
  if (*caution != '\0')
    ff_console_line (console, "%s", caution);
  write_learned (console, after, sky_of (after));
  write_changes (console, before, after);
  return FF_DONE;
}

static FfOutcome
drop (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_WRITE, error);
  g_autoptr (FfDay) before = NULL, after = NULL;
  const FfReading *reading;
  g_autofree char *initials = NULL;

  before = store != NULL ? ff_day_load (store, console->words[1], error) : NULL;
  if (before == NULL)
    return FF_FAILED;
  reading = ff_readings_find (ff_day_readings (before), console->words[2], error);
  if (reading == NULL || !ff_option_initials ("--by", by_text, store, &initials, error))
    return FF_FAILED;
  if (why_text == NULL)
    {
      ff_option_missing ("--why", error);
      return FF_FAILED;
    }
  if (!ff_reading_drop (store, reading->id, why_text, initials,
                        g_get_real_time () / G_USEC_PER_SEC, error))
    return FF_FAILED;
  after = ff_day_load (store, ff_day_job (before)->id, error);
  if (after == NULL)
    return FF_FAILED;
  write_list (console, after);
  write_changes (console, before, after);
  return FF_DONE;
}

static FfOutcome
list (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = ff_console_open (console, FF_RECORDS_READ, error);
  g_autoptr (FfDay) day = store != NULL ? ff_day_load (store, console->words[1], error) : NULL;

  if (day == NULL)
    return FF_FAILED;
  write_list (console, day);
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *verb = console->n_words > 0 ? console->words[0] : "";

  if (strcmp (verb, "add") == 0)
    return ff_console_want_words (console, 2, "add JOB", error) ? add (console, error) : FF_FAILED;
  if (strcmp (verb, "list") == 0)
    return ff_console_want_words (console, 2, "list JOB", error) ? list (console, error)
                                                                 : FF_FAILED;
  if (strcmp (verb, "drop") == 0)
    return ff_console_want_words (console, 3, "drop JOB ID", error) ? drop (console, error)
                                                                    : FF_FAILED;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("found “%s”; accepted: add, list, drop"), verb);
  return FF_FAILED;
}

const FfCommand ff_command_reading = {
  .name = "reading",
  .summary = N_ ("Take light readings, which correct the rest of the day"),
  .usage = "reading add JOB --at TIME (--shown S --target S | --ev100 X | --lux X | --frame FILE)\n"
           "    [--nd STOPS] [--aperture N] [--iso I] [--shot SHOT] [--sky SKY]\n"
           "    [--cloud still|moves] [--by INITIALS]\n"
           "  fieldfarectl reading list JOB\n"
           "  fieldfarectl reading drop JOB ID --why TEXT [--by INITIALS]",
  .example = "fieldfarectl reading add Skarrowick --at 2027-09-18T16:42:00+01:00 \\\n"
             "    --shown 1/2500 --target 1/50",
  .entries = entries,
  .run = run,
};
