/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a test picture says of the light and of the exposure. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-frame.h"
#include "ff-number.h"
#include "ff-scale.h"

#define MAX_STOPS 33.0

static char *nd_text, *tz_text;

static GOptionEntry entries[] = {
  { "nd", 0, 0, G_OPTION_ARG_STRING, &nd_text, N_ ("Filter in front, in stops (default 0)"),
    "STOPS" },
  { "tz", 0, 0, G_OPTION_ARG_STRING, &tz_text,
    N_ ("Time zone of the camera's clock, as Europe/London (default UTC)"), "ZONE" },
  G_OPTION_ENTRY_NULL,
};

/* When it was taken, in the zone asked for, else by the picture's own offset, else in UTC. NULL for
 * a picture that does not say. */
static gboolean
taken_text (const FfFrame *frame, GTimeZone *zone, char **ret_text, GError **error)
{
  g_autoptr (GTimeZone) own = frame->has_offset ? g_time_zone_new_offset (frame->offset_s) : NULL;
  gint64 instant;

  *ret_text = NULL;
  if (!frame->has_taken)
    return TRUE;
  if (!ff_frame_instant (frame, zone, &instant, error))
    return FALSE;
  *ret_text = ff_instant_format ((double) instant, zone != NULL ? zone : own);
  return TRUE;
}

static void
write_frame (FfJson *json,
             const FfFrame *frame,
             const char *taken_at,
             const FfMeterReading *reading,
             const char *advice)
{
  ff_json_number (json, "aperture", frame->aperture);
  ff_json_number (json, "shutter_s", frame->shutter_s);
  ff_json_number (json, "iso", frame->iso);
  ff_json_number (json, "bias_stops", frame->bias_stops);
  ff_json_text (json, "taken_at", taken_at);
  ff_json_integer (json, "width_px", frame->width);
  ff_json_integer (json, "height_px", frame->height);
  ff_json_flag (json, "is_preview", frame->is_preview);
  ff_json_begin_object (json, "histogram");
  ff_json_rounded (json, "clipped_low", frame->tones.clipped_low, 9);
  ff_json_rounded (json, "clipped_high", frame->tones.clipped_high, 9);
  ff_json_rounded (json, "middle_stops", frame->tones.middle_stops, 6);
  ff_json_end (json);
  ff_json_rounded (json, "ev100", reading->ev100, 6);
  ff_json_rounded (json, "error_stops", reading->error_stops, 6);
  ff_json_rounded (json, "spread_stops", reading->spread_stops, 6);
  ff_json_text (json, "advice", advice);
}

static char *
settings_text (const FfFrame *frame)
{
  g_autofree char *aperture = ff_number_format (frame->aperture, 1);
  g_autofree char *shutter = ff_shutter_format (frame->shutter_s);
  g_autofree char *iso = ff_number_format (frame->iso, 0);

  if (isnan (frame->aperture) && isnan (frame->shutter_s) && isnan (frame->iso))
    return g_strdup (_ ("the picture does not say"));
  /* Translators: f-number, shutter time in seconds, ISO; a dash for what is not known. */
  return g_strdup_printf (_ ("f/%s   %s s   ISO %s"), aperture, shutter, iso);
}

static void
say_stops (FfConsole *console, const char *label, double stops, double spread)
{
  g_autofree char *value = ff_number_format (stops, 1);
  g_autofree char *around = ff_number_format (spread, 1);

  if (isfinite (stops))
    ff_console_row (console, label, "%s ± %s", value, around);
}

static void
say_frame (FfConsole *console,
           const FfFrame *frame,
           const char *taken_at,
           const FfMeterReading *reading,
           const char *advice)
{
  g_autofree char *settings = settings_text (frame);
  g_autofree char *low = ff_number_format (100 * frame->tones.clipped_low, 1);
  g_autofree char *high = ff_number_format (100 * frame->tones.clipped_high, 1);
  g_autofree char *middle = ff_number_format (frame->tones.middle_stops, 1);

  ff_console_row (console, _ ("Settings"), "%s", settings);
  if (taken_at != NULL)
    ff_console_row (console, _ ("Taken"), "%s%s", taken_at,
                    frame->has_offset || tz_text != NULL ? "" : _ (" (clock taken as UTC)"));
  ff_console_row (console, _ ("Pixels"), _ ("%u × %u%s"), frame->width, frame->height,
                  frame->is_preview ? _ (", the raw picture's preview") : "");
  ff_console_row (console, _ ("Lost"), _ ("%s %% shadows, %s %% highlights"), low, high);
  /* Translators: how far the mean tone lies from 18 % grey. */
  if (isfinite (frame->tones.middle_stops))
    ff_console_row (console, _ ("Middle"), _ ("%s stops from 18 %% grey"), middle);
  say_stops (console, _ ("Light, EV at ISO 100"), reading->ev100, reading->spread_stops);
  ff_console_line (console, "%s", advice);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (GTimeZone) zone = NULL;
  g_autofree char *taken_at = NULL, *advice = NULL;
  double nd_stops = 0;
  FfMeterReading reading;
  FfFrame frame;

  if (!ff_console_want_words (console, 1, "FILE", error))
    return FF_FAILED;
  if (nd_text != NULL && !ff_option_number ("--nd", nd_text, 0, MAX_STOPS, &nd_stops, error))
    return FF_FAILED;
  if (tz_text != NULL && (zone = ff_zone_new (tz_text, error)) == NULL)
    {
      g_prefix_error (error, "--tz: ");
      return FF_FAILED;
    }
  if (!ff_frame_read (console->words[0], &frame, error)
      || !taken_text (&frame, zone, &taken_at, error))
    return FF_FAILED;
  ff_frame_meter (&frame, nd_stops, &reading);
  advice = ff_meter_advice (&frame.tones, &reading);
  write_frame (console->json, &frame, taken_at, &reading, advice);
  say_frame (console, &frame, taken_at, &reading, advice);
  return FF_DONE;
}

const FfCommand ff_command_frame = {
  .name = "frame",
  .summary = N_ ("Read the light and the exposure from a test picture"),
  .usage = "frame FILE [--nd STOPS] [--tz ZONE]",
  .example = "fieldfarectl frame test.jpg --nd 3 --tz Europe/London",
  .entries = entries,
  .run = run,
};
