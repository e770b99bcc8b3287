/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What motion does to the picture: blur, the longest shutter, panning and overlap. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-command.h"
#include "ff-error.h"
#include "ff-motion.h"
#include "ff-number.h"
#include "ff-scale.h"

static char *height_text, *focal_text, *pitch_text, *speed_text, *yaw_text, *shutter_text;
static char *max_blur_text, *pixels_text, *overlap_text;

#define TEXT G_OPTION_ARG_STRING

static GOptionEntry entries[] = {
  { "height", 0, 0, TEXT, &height_text, N_ ("Height above the subject"), "M" },
  { "focal", 0, 0, TEXT, &focal_text, N_ ("Focal length in millimetres, as engraved"), "MM" },
  { "pitch", 0, 0, TEXT, &pitch_text, N_ ("Size of a pixel on the sensor, in micrometres"), "UM" },
  { "speed", 0, 0, TEXT, &speed_text, N_ ("Travel in metres a second"), "MS" },
  { "yaw", 0, 0, TEXT, &yaw_text, N_ ("Or turn in degrees a second"), "DEGS" },
  { "shutter", 0, 0, TEXT, &shutter_text, N_ ("Shutter time, as 1/500"), "S" },
  { "max-blur", 0, 0, TEXT, &max_blur_text, N_ ("Blur that is still good, in pixels"), "PX" },
  { "pixels", 0, 0, TEXT, &pixels_text, N_ ("Pixels of the picture along the movement"), "N" },
  { "overlap", 0, 0, TEXT, &overlap_text,
    N_ ("Part that two pictures share, 0 to 0.99 (with --pixels)"), "PART" },
  G_OPTION_ENTRY_NULL,
};

/* NAN or 0 where not given. */
typedef struct {
  double height_m, focal_mm, pitch_um;
  double speed_ms, yaw_deg_s; /* one of them is NAN */
  double shutter_s;
  double max_blur_px;
  int pixels;
  double overlap;
} Question;

typedef struct {
  double gsd_m, blur_px;
  double longest_s;               /* NAN where not asked */
  double interval_s, footprint_m; /* NAN where not asked */
  double field_deg;
  double pan_limit; /* m/s of travel or degrees/s of a turn */
} Answer;

/* Travel or turn: one of them and not both. */
static gboolean
read_movement (Question *question, GError **error)
{
  question->speed_ms = question->yaw_deg_s = NAN;
  if ((speed_text == NULL) == (yaw_text == NULL))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("what moves is open; accepted: one of --speed (travel) and --yaw (turn)"));
      return FALSE;
    }
  if (speed_text != NULL)
    return ff_option_number ("--speed", speed_text, 0, 1000, &question->speed_ms, error);
  return ff_option_number ("--yaw", yaw_text, 0, 3600, &question->yaw_deg_s, error);
}

static gboolean
read_limits (Question *question, GError **error)
{
  question->max_blur_px = question->overlap = NAN;
  question->pixels = 0;
  if (max_blur_text != NULL
      && !ff_option_number ("--max-blur", max_blur_text, 0.001, 10000, &question->max_blur_px,
                            error))
    return FALSE;
  if (pixels_text != NULL
      && !ff_integer_parse ("--pixels", pixels_text, 1, 100000, &question->pixels, error))
    return FALSE;
  if (overlap_text != NULL && pixels_text == NULL)
    return ff_option_missing (_ ("--pixels (for --overlap)"), error);
  return overlap_text == NULL
         || ff_option_number ("--overlap", overlap_text, 0, 0.99, &question->overlap, error);
}

static gboolean
read_question (Question *question, GError **error)
{
  if (!ff_option_number ("--height", height_text, 0.01, 100000, &question->height_m, error)
      || !ff_option_number ("--focal", focal_text, 0.1, 10000, &question->focal_mm, error)
      || !ff_option_number ("--pitch", pitch_text, 0.1, 1000, &question->pitch_um, error)
      || !read_movement (question, error))
    return FALSE;
  if (shutter_text == NULL)
    return ff_option_missing ("--shutter", error);
  return ff_shutter_parse ("--shutter", shutter_text, FALSE, &question->shutter_s, error)
         && read_limits (question, error);
}

static void
work_out_frame (const Question *question, Answer *answer)
{
  const double extent_mm = question->pixels * question->pitch_um * 1e-3;
  const gboolean travels = !isnan (question->speed_ms);

  answer->footprint_m = answer->field_deg = answer->pan_limit = answer->interval_s = NAN;
  if (question->pixels == 0)
    return;
  answer->footprint_m = ff_motion_footprint_m (question->height_m, question->focal_mm, extent_mm);
  answer->field_deg = ff_motion_field_deg (extent_mm, question->focal_mm);
  answer->pan_limit = (travels ? answer->footprint_m : answer->field_deg) / FF_MOTION_PAN_S;
  if (travels && !isnan (question->overlap))
    answer->interval_s = ff_motion_interval_s (
        ff_motion_base_m (answer->footprint_m, question->overlap), question->speed_ms);
}

static void
work_out (const Question *question, Answer *answer)
{
  double rate;

  answer->gsd_m = ff_motion_gsd_m (question->height_m, question->focal_mm, question->pitch_um);
  rate = isnan (question->speed_ms)
             ? ff_motion_yaw_rate (question->yaw_deg_s, question->focal_mm, question->pitch_um)
             : ff_motion_travel_rate (question->speed_ms, answer->gsd_m);
  answer->blur_px = ff_motion_blur_px (rate, question->shutter_s);
  answer->longest_s
      = isnan (question->max_blur_px) ? NAN : ff_motion_longest_s (question->max_blur_px, rate);
  work_out_frame (question, answer);
}

static void
write_answer (FfJson *json, const Question *question, const Answer *answer)
{
  const gboolean travels = !isnan (question->speed_ms);

  ff_json_number (json, "gsd_m", answer->gsd_m);
  ff_json_number (json, "blur_px", answer->blur_px);
  ff_json_number (json, "longest_shutter_s", answer->longest_s);
  ff_json_number (json, "interval_s", answer->interval_s);
  ff_json_number (json, "footprint_m", answer->footprint_m);
  ff_json_number (json, "field_deg", answer->field_deg);
  ff_json_number (json, "pan_limit_ms", travels ? answer->pan_limit : NAN);
  ff_json_number (json, "pan_limit_deg_s", travels ? NAN : answer->pan_limit);
}

/* A row whose value is a number with its unit; none for what was not asked. */
static void
say (FfConsole *console, const char *label, double value, int decimals, const char *unit)
{
  g_autofree char *text = ff_number_format (value, decimals);

  if (!isnan (value))
    ff_console_row (console, label, "%s %s", isinf (value) ? "∞" : text, unit);
}

/* Rounded down: a time for people must not be longer than what is asked for. */
static void
say_longest (FfConsole *console, double seconds)
{
  g_autofree char *denominator = NULL;

  if (isnan (seconds))
    return;
  if (isinf (seconds) || seconds > 0.25)
    {
      say (console, _ ("Longest shutter"), isinf (seconds) ? seconds : floor (seconds * 100) / 100,
           2, _ ("s"));
      return;
    }
  denominator = ff_number_format (ceil (1.0 / seconds - 1e-9), 0);
  ff_console_row (console, _ ("Longest shutter"), _ ("1/%s s"), denominator);
}

static void
say_answer (FfConsole *console, const Question *question, const Answer *answer)
{
  const gboolean travels = !isnan (question->speed_ms);

  /* Translators: ground sample distance, what one pixel covers on the ground. */
  say (console, _ ("A pixel covers"), answer->gsd_m * 100, 2, _ ("cm of ground"));
  say (console, _ ("Blur"), answer->blur_px, 2, _ ("pixels"));
  say_longest (console, answer->longest_s);
  say (console, _ ("Picture covers"), answer->footprint_m, 1, _ ("m along the movement"));
  say (console, _ ("Field of view"), answer->field_deg, 1, _ ("degrees"));
  /* Translators: the fastest pan that is calm to look at. */
  say (console, _ ("Calm on screen up to"), answer->pan_limit, 1,
       travels ? _ ("m/s (a picture in 7 s, rule of thumb)")
               : _ ("degrees/s (a picture in 7 s, rule of thumb)"));
  say (console, _ ("Next picture after"), answer->interval_s, 2, _ ("s"));
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  Question question = { 0 };
  Answer answer;

  if (!ff_console_want_words (console, 0, NULL, error) || !read_question (&question, error))
    return FF_FAILED;
  work_out (&question, &answer);
  write_answer (console->json, &question, &answer);
  say_answer (console, &question, &answer);
  return FF_DONE;
}

const FfCommand ff_command_motion = {
  .name = "motion",
  .summary = N_ ("Say what travel or a turn does to the picture"),
  .usage = "motion --height M --focal MM --pitch UM (--speed MS | --yaw DEGS) --shutter S\n"
           "      [--max-blur PX] [--pixels N [--overlap 0..1]]",
  .example = "fieldfarectl motion --height 60 --focal 11 --pitch 3 --speed 6 --shutter 1/50\n"
             "      --max-blur 2 --pixels 4800 --overlap 0.7",
  .entries = entries,
  .run = run,
};
