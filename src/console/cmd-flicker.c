/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which shutters don't flicker under lamps on the mains. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-command.h"
#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-flicker.h"
#include "ff-number.h"

static char *mains_text, *fps_text;

static GOptionEntry entries[] = {
  { "mains", 0, 0, G_OPTION_ARG_STRING, &mains_text, N_ ("Frequency of the mains: 50 or 60"),
    "HZ" },
  { "fps", 0, 0, G_OPTION_ARG_STRING, &fps_text, N_ ("Frames a second"), "F" },
  G_OPTION_ENTRY_NULL,
};

static gboolean
read_mains (double *ret_mains_hz, GError **error)
{
  if (mains_text == NULL)
    return ff_option_missing ("--mains", error);
  if (strcmp (mains_text, "50") != 0 && strcmp (mains_text, "60") != 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("--mains: “%s”; accepted: 50 or 60"),
                   mains_text);
      return FALSE;
    }
  *ret_mains_hz = strcmp (mains_text, "50") == 0 ? 50 : 60;
  return TRUE;
}

static void
write_answer (FfJson *json, double mains_hz, double fps, guint count)
{
  ff_json_begin_array (json, "angles_deg");
  for (guint n = 1; n <= count; n++)
    ff_json_rounded (json, NULL, ff_shutter_angle_deg (ff_flicker_shutter_s (mains_hz, n), fps), 6);
  ff_json_end (json);
  ff_json_begin_array (json, "shutters_s");
  for (guint n = 1; n <= count; n++)
    ff_json_number (json, NULL, ff_flicker_shutter_s (mains_hz, n));
  ff_json_end (json);
  ff_json_flag (json, "any_shutter", ff_flicker_any_angle (mains_hz, fps));
}

static void
say_shutter (FfConsole *console, double seconds, double fps)
{
  g_autofree char *denominator = ff_number_format (1 / seconds, 1);
  g_autofree char *shutter = g_strdup_printf (_ ("1/%s s"), denominator);
  g_autofree char *angle = ff_number_format (ff_shutter_angle_deg (seconds, fps), 2);

  ff_console_row (console, shutter, "%s°", angle);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  double mains_hz = 0, fps = 0;
  guint count;

  if (!ff_console_want_words (console, 0, NULL, error) || !read_mains (&mains_hz, error)
      || !ff_option_number ("--fps", fps_text, 1, 10000, &fps, error))
    return FF_FAILED;
  count = ff_flicker_count (mains_hz, fps);
  write_answer (console->json, mains_hz, fps, count);
  if (count > 0)
    ff_console_row (console, _ ("Shutter"), "%s", _ ("Shutter angle"));
  for (guint n = 1; n <= count; n++)
    say_shutter (console, ff_flicker_shutter_s (mains_hz, n), fps);
  if (ff_flicker_any_angle (mains_hz, fps))
    ff_console_line (console, _ ("At this frame rate every other shutter is steady, too."));
  if (count > 0)
    return FF_DONE;
  ff_console_line (console,
                   _ ("No shutter is free of flicker: a frame is shorter than a pulse of light."));
  return FF_NO;
}

const FfCommand ff_command_flicker = {
  .name = "flicker",
  .summary = N_ ("Say which shutters don't flicker under lamps on the mains"),
  .usage = "flicker --mains 50|60 --fps F",
  .example = "fieldfarectl flicker --mains 50 --fps 24",
  .entries = entries,
  .run = run,
};
