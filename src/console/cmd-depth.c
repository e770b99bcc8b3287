/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From where to where the picture is sharp. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-command.h"
#include "ff-depth.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-scale.h"

static char *focal_text, *aperture_text, *coc_text, *distance_text, *pitch_text;

static GOptionEntry entries[] = {
  { "focal", 0, 0, G_OPTION_ARG_STRING, &focal_text, N_ ("Focal length in millimetres"), "MM" },
  { "aperture", 0, 0, G_OPTION_ARG_STRING, &aperture_text, N_ ("f-number, taken as written"), "N" },
  { "coc", 0, 0, G_OPTION_ARG_STRING, &coc_text,
    N_ ("Circle of confusion in micrometres: the largest blur that still looks sharp"), "UM" },
  { "distance", 0, 0, G_OPTION_ARG_STRING, &distance_text, N_ ("Distance of focus in metres"),
    "M" },
  { "pitch", 0, 0, G_OPTION_ARG_STRING, &pitch_text,
    N_ ("Size of a pixel on the sensor in micrometres, for diffraction"), "UM" },
  G_OPTION_ENTRY_NULL,
};

typedef struct {
  double focal_mm, f_number, coc_um, distance_m;
  double pitch_um; /* NAN: not given */
} Question;

static gboolean
read_question (Question *question, GError **error)
{
  double exact;

  question->pitch_um = NAN;
  if (!ff_option_number ("--focal", focal_text, 0.1, 10000, &question->focal_mm, error))
    return FALSE;
  if (aperture_text == NULL)
    return ff_option_missing ("--aperture", error);
  if (!ff_aperture_parse ("--aperture", aperture_text, &question->f_number, &exact, error)
      || !ff_option_number ("--coc", coc_text, 0.1, 1000, &question->coc_um, error)
      || !ff_option_number ("--distance", distance_text, 0.001, 1e6, &question->distance_m, error))
    return FALSE;
  return pitch_text == NULL
         || ff_option_number ("--pitch", pitch_text, 0.1, 1000, &question->pitch_um, error);
}

/* Nothing nearer than the focal length can be brought into focus. */
static gboolean
check_distance (const Question *question, GError **error)
{
  g_autofree char *focal = ff_number_format (question->focal_mm / 1000, 6);

  if (question->distance_m > question->focal_mm / 1000)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("--distance: %s m is not beyond the focal length; accepted: more than %s"),
               distance_text, focal);
  return FALSE;
}

static void
say_metres (FfConsole *console, const char *label, double metres)
{
  g_autofree char *text = ff_number_format (metres, metres < 10 ? 2 : 1);

  if (isinf (metres))
    ff_console_row (console, label, "∞");
  else
    ff_console_row (console, label, _ ("%s m"), text);
}

static void
say_diffraction (FfConsole *console, const Question *question)
{
  const double airy_um = ff_depth_airy_um (question->f_number);
  const double pixels = airy_um / question->pitch_um;
  g_autofree char *disk = ff_number_format (airy_um, 2);
  g_autofree char *in_pixels = ff_number_format (pixels, 1);
  g_autofree char *sharp_to = ff_number_format (ff_depth_sharp_to (question->pitch_um), 1);

  ff_json_number (console->json, "airy_disk_um", airy_um);
  ff_json_number (console->json, "airy_disk_px", pixels);
  /* Translators: the Airy disk is the smallest spot that diffraction allows. */
  if (isnan (pixels))
    {
      ff_console_row (console, _ ("Airy disk"), _ ("%s µm at 550 nm"), disk);
      return;
    }
  ff_console_row (console, _ ("Airy disk"), _ ("%s µm at 550 nm, %s pixels"), disk, in_pixels);
  if (pixels > 2)
    ff_console_line (console, _ ("Diffraction costs sharpness beyond f/%s (rule of thumb)."),
                     sharp_to);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  Question question = { 0 };
  double hyperfocal, near, far;

  if (!ff_console_want_words (console, 0, NULL, error) || !read_question (&question, error)
      || !check_distance (&question, error))
    return FF_FAILED;
  hyperfocal = ff_depth_hyperfocal_m (question.focal_mm, question.f_number, question.coc_um);
  near = ff_depth_near_m (question.distance_m, question.focal_mm, hyperfocal);
  far = ff_depth_far_m (question.distance_m, question.focal_mm, hyperfocal);
  ff_json_number (console->json, "hyperfocal_m", hyperfocal);
  ff_json_number (console->json, "near_m", near);
  ff_json_number (console->json, "far_m", far);
  say_metres (console, _ ("Hyperfocal distance"), hyperfocal);
  say_metres (console, _ ("Sharp from"), near);
  say_metres (console, _ ("to"), far);
  say_diffraction (console, &question);
  return FF_DONE;
}

const FfCommand ff_command_depth = {
  .name = "depth",
  .summary = N_ ("Say from where to where the picture is sharp"),
  .usage = "depth --focal MM --aperture N --coc UM --distance M [--pitch UM]",
  .example = "fieldfarectl depth --focal 11 --aperture 2.8 --coc 6 --distance 10 --pitch 3",
  .entries = entries,
  .run = run,
};
