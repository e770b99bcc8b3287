/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How many frames hold a scene, and their times. */
#include <glib/gi18n-lib.h>

#include "ff-bracket.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-scale.h"

static char *range_text, *camera_range_text, *step_text, *base_text;

static GOptionEntry entries[] = {
  { "range", 0, 0, G_OPTION_ARG_STRING, &range_text,
    N_ ("Stops from the darkest to the brightest that the scene must show"), "STOPS" },
  { "camera-range", 0, 0, G_OPTION_ARG_STRING, &camera_range_text,
    N_ ("Stops that the camera holds in one frame"), "STOPS" },
  { "step", 0, 0, G_OPTION_ARG_STRING, &step_text, N_ ("Stops between frames (default 2)"),
    "STOPS" },
  { "base", 0, 0, G_OPTION_ARG_STRING, &base_text, N_ ("Shutter time of the middle, as 1/200"),
    "S" },
  G_OPTION_ENTRY_NULL,
};

typedef struct {
  double scene, camera, step, base_s;
} Question;

static gboolean
read_question (Question *ret_question, GError **error)
{
  Question question = { .step = 2.0 };

  if (!ff_option_number ("--range", range_text, 0, 30, &question.scene, error)
      || !ff_option_number ("--camera-range", camera_range_text, 1, 30, &question.camera, error))
    return FALSE;
  if (step_text != NULL && !ff_option_number ("--step", step_text, 0.3, 10, &question.step, error))
    return FALSE;
  if (base_text == NULL)
    return ff_option_missing ("--base", error);
  if (!ff_shutter_parse ("--base", base_text, FALSE, &question.base_s, error))
    return FALSE;
  *ret_question = question;
  return TRUE;
}

/* Frames farther apart than one frame reaches leave tones between them that none holds. */
static gboolean
check_gap (const Question *question, GError **error)
{
  g_autofree char *step = ff_number_format (question->step, 3);
  g_autofree char *camera = ff_number_format (question->camera, 3);

  if (question->step <= question->camera)
    return TRUE;
  g_set_error (
      error, FF_ERROR, FF_ERROR_INPUT,
      _ ("--step: frames %s stops apart leave a gap when one holds %s; accepted: up to %s"), step,
      camera, camera);
  return FALSE;
}

static void
say_frame (FfConsole *console, guint number, double seconds)
{
  g_autofree char *time = ff_shutter_format (seconds);
  g_autofree char *label = g_strdup_printf (_ ("Frame %u"), number);

  ff_json_number (console->json, NULL, seconds);
  ff_console_row (console, label, _ ("%s s"), time);
}

static void
say_frames (FfConsole *console, const Question *question, guint frames)
{
  const guint odd = ff_bracket_odd_frames (frames);
  g_autofree char *step = ff_number_format (question->step, 2);

  ff_json_integer (console->json, "frames", frames);
  ff_json_integer (console->json, "camera_frames", odd);
  ff_json_number (console->json, "step_stops", question->step);
  ff_console_row (console, _ ("Frames"), "%u", frames);
  ff_console_row (console, _ ("Apart"), _ ("%s stops"), step);
  ff_json_begin_array (console->json, "exposures_s");
  for (guint i = 0; i < frames; i++)
    say_frame (console, i + 1, ff_bracket_exposure_s (question->base_s, question->step, frames, i));
  ff_json_end (console->json);
  if (odd != frames)
    ff_console_line (console, _ ("Most cameras bracket in odd numbers: take %u."), odd);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  Question question = { 0 };

  if (!ff_console_want_words (console, 0, NULL, error) || !read_question (&question, error)
      || !check_gap (&question, error))
    return FF_FAILED;
  say_frames (console, &question,
              ff_bracket_frames (question.scene, question.camera, question.step));
  return FF_DONE;
}

const FfCommand ff_command_bracket = {
  .name = "bracket",
  .summary = N_ ("Say how many frames hold a scene, and their shutter times"),
  .usage = "bracket --range STOPS --camera-range STOPS [--step 2] --base S",
  .example = "fieldfarectl bracket --range 16 --camera-range 12 --base 1/200",
  .entries = entries,
  .run = run,
};
