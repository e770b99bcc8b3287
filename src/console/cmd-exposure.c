/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What settings expose right, and what they become when one of them changes and another pays. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-command.h"
#include "ff-error.h"
#include "ff-exposure.h"
#include "ff-number.h"
#include "ff-scale.h"

#define MAX_STOPS 33.0

/* The four things an exposure is made of. */
typedef enum { PART_APERTURE, PART_SHUTTER, PART_ISO, PART_ND, N_PARTS } Part;

static const FfName part_names[] = {
  [PART_APERTURE] = { "aperture", N_ ("aperture") },
  [PART_SHUTTER] = { "shutter", N_ ("shutter time") },
  [PART_ISO] = { "iso", N_ ("ISO") },
  [PART_ND] = { "nd", N_ ("ND filter") },
};
static const FfNames names_part = { "setting", part_names, N_PARTS };

typedef struct {
  double aperture_written, f_number; /* as typed, and what it stands for */
  double seconds, iso, nd_stops;
} Settings;

static char *part_text[N_PARTS], *to_text[N_PARTS], *pays_text;
static gboolean thirds;

#define TEXT G_OPTION_ARG_STRING

static GOptionEntry entries[] = {
  { "aperture", 0, 0, TEXT, &part_text[PART_APERTURE], N_ ("f-number, as 2.8"), "N" },
  { "shutter", 0, 0, TEXT, &part_text[PART_SHUTTER], N_ ("Shutter time, as 1/50 or 8"), "S" },
  { "iso", 0, 0, TEXT, &part_text[PART_ISO], N_ ("ISO speed"), "I" },
  { "nd", 0, 0, TEXT, &part_text[PART_ND], N_ ("Filter in front, in stops (default 0)"), "STOPS" },
  { "thirds", 0, 0, G_OPTION_ARG_NONE, &thirds,
    N_ ("Shutter labels stand for exact thirds of a stop: 1/60 is 1/64 s"), NULL },
  { "to-aperture", 0, 0, TEXT, &to_text[PART_APERTURE], N_ ("Change the aperture to this"), "N" },
  { "to-shutter", 0, 0, TEXT, &to_text[PART_SHUTTER], N_ ("Change the shutter to this"), "S" },
  { "to-iso", 0, 0, TEXT, &to_text[PART_ISO], N_ ("Change the ISO to this"), "I" },
  { "to-nd", 0, 0, TEXT, &to_text[PART_ND], N_ ("Change the filter to these stops"), "STOPS" },
  { "pays", 0, 0, TEXT, &pays_text,
    N_ ("What makes up for it: aperture, shutter (default), iso or nd"), "SETTING" },
  G_OPTION_ENTRY_NULL,
};

static gboolean
read_part (Part part, const char *option, const char *text, Settings *settings, GError **error)
{
  if (text == NULL)
    return ff_option_missing (option, error);
  switch (part)
    {
    case PART_APERTURE:
      return ff_aperture_parse (option, text, &settings->aperture_written, &settings->f_number,
                                error);
    case PART_SHUTTER:
      return ff_shutter_parse (option, text, thirds, &settings->seconds, error);
    case PART_ISO:
      return ff_number_parse (option, text, 1.0, 1e7, &settings->iso, error);
    case PART_ND:
    case N_PARTS:
    default:
      return ff_number_parse (option, text, 0.0, MAX_STOPS, &settings->nd_stops, error);
    }
}

static gboolean
read_settings (Settings *ret_settings, GError **error)
{
  Settings settings = { 0 };

  if (!read_part (PART_APERTURE, "--aperture", part_text[PART_APERTURE], &settings, error)
      || !read_part (PART_SHUTTER, "--shutter", part_text[PART_SHUTTER], &settings, error)
      || !read_part (PART_ISO, "--iso", part_text[PART_ISO], &settings, error))
    return FALSE;
  if (part_text[PART_ND] != NULL
      && !read_part (PART_ND, "--nd", part_text[PART_ND], &settings, error))
    return FALSE;
  *ret_settings = settings;
  return TRUE;
}

static double
light_of (const Settings *settings)
{
  return ff_exposure_ev100 (settings->f_number, settings->seconds, settings->iso)
         + settings->nd_stops;
}

/* Which --to-… was given: N_PARTS for none. Two are refused. */
static gboolean
read_changed (Part *ret_changed, GError **error)
{
  Part changed = N_PARTS;

  for (int part = 0; part < N_PARTS; part++)
    {
      if (to_text[part] == NULL)
        continue;
      if (changed != N_PARTS)
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("--to-%s and --to-%s together leave open what is asked; give one"),
                       part_names[changed].token, part_names[part].token);
          return FALSE;
        }
      changed = (Part) part;
    }
  if (changed == N_PARTS && pays_text != NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--pays needs a change to pay for: one of --to-aperture, --to-shutter, "
                      "--to-iso, --to-nd"));
      return FALSE;
    }
  *ret_changed = changed;
  return TRUE;
}

static gboolean
read_payer (Part changed, Part *ret_payer, GError **error)
{
  int payer = PART_SHUTTER;

  if (pays_text != NULL && !ff_option_name ("--pays", &names_part, pays_text, &payer, error))
    return FALSE;
  if ((Part) payer == changed && pays_text == NULL)
    {
      g_set_error (
          error, FF_ERROR, FF_ERROR_INPUT,
          _ ("--to-shutter needs to know what pays; accepted: --pays aperture, iso or nd"));
      return FALSE;
    }
  if ((Part) payer == changed)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--pays %s: --to-%s sets it already; accepted: another setting"),
                   part_names[payer].token, part_names[payer].token);
      return FALSE;
    }
  *ret_payer = (Part) payer;
  return TRUE;
}

/* The nearest label of the series; past its ends the time itself, since a label would mislead. */
static char *
shutter_label (double seconds)
{
  const guint step = ff_scale_nearest (FF_SCALE_SHUTTER, seconds);

  if (fabs (log2 (seconds / ff_scale_exact (FF_SCALE_SHUTTER, step))) > 1.0 / 5)
    return ff_shutter_format (seconds);
  return g_strdup (ff_scale_label (FF_SCALE_SHUTTER, step));
}

/* Makes the payer expose `light_ev100` right, the others as they are. */
static void
let_pay (Part payer, double light_ev100, Settings *settings)
{
  const double level = light_ev100 - settings->nd_stops;
  guint step;

  switch (payer)
    {
    case PART_APERTURE:
      settings->f_number = ff_exposure_aperture_for (level, settings->seconds, settings->iso);
      step = ff_scale_nearest (FF_SCALE_APERTURE, settings->f_number);
      settings->aperture_written = ff_scale_written (FF_SCALE_APERTURE, step);
      break;
    case PART_SHUTTER:
      settings->seconds = ff_exposure_seconds_for (level, settings->f_number, settings->iso);
      break;
    case PART_ISO:
      settings->iso = ff_exposure_iso_for (level, settings->f_number, settings->seconds);
      break;
    case PART_ND:
    case N_PARTS:
    default:
      settings->nd_stops
          = light_ev100 - ff_exposure_ev100 (settings->f_number, settings->seconds, settings->iso);
      break;
    }
}

/* Whether a value lies past an end of its series by more than rounding can explain. */
static gboolean
is_past (FfScale scale, double value, gboolean last)
{
  const guint step = last ? ff_scale_size (scale) - 1 : 0;
  const double ratio = value / ff_scale_exact (scale, step);

  return last ? ratio > 1.06 : ratio < 1.0 / 1.06;
}

/* Why what pays can't be had, or NULL. */
static const char *
why_not (Part payer, const Settings *settings)
{
  switch (payer)
    {
    case PART_APERTURE:
      if (is_past (FF_SCALE_APERTURE, settings->f_number, FALSE))
        return _ ("The aperture can't pay: that is wider than f/1");
      return is_past (FF_SCALE_APERTURE, settings->f_number, TRUE)
                 ? _ ("The aperture can't pay: that is narrower than f/32")
                 : NULL;
    case PART_SHUTTER:
      return is_past (FF_SCALE_SHUTTER, settings->seconds, FALSE)
                 ? _ ("The shutter can't pay: that is faster than 1/32000 s")
                 : NULL;
    case PART_ISO:
      if (is_past (FF_SCALE_ISO, settings->iso, FALSE))
        return _ ("The ISO can't pay: that is below 25");
      return is_past (FF_SCALE_ISO, settings->iso, TRUE)
                 ? _ ("The ISO can't pay: that is above 102400")
                 : NULL;
    case PART_ND:
    case N_PARTS:
    default:
      return settings->nd_stops < -1e-9
                 ? _ ("A filter can't pay: it would have to brighten the picture")
                 : NULL;
    }
}

/* Twelve digits: enough for any check, and 3200 does not come out as 3200.0000000000014. */
static void
write_measure (FfJson *json, const char *name, double value)
{
  ff_json_rounded (json, name, value, MAX (0, 11 - (int) floor (log10 (value))));
}

static void
write_levels (FfJson *json, const Settings *settings)
{
  const double light = light_of (settings);

  ff_json_rounded (json, "av", ff_exposure_av (settings->f_number), 9);
  ff_json_rounded (json, "tv", ff_exposure_tv (settings->seconds), 9);
  ff_json_rounded (json, "sv", ff_exposure_sv (settings->iso), 9);
  ff_json_rounded (json, "ev", ff_exposure_ev (settings->f_number, settings->seconds), 9);
  ff_json_rounded (json, "ev100", light - settings->nd_stops, 9);
  ff_json_rounded (json, "light_ev100", light, 9);
  write_measure (json, "luminance_cdm2", ff_exposure_luminance (light));
  write_measure (json, "illuminance_lx", ff_exposure_illuminance (light));
}

static void
write_equivalent (FfJson *json, const Settings *settings)
{
  g_autofree char *shutter = shutter_label (settings->seconds);

  ff_json_begin_object (json, "equivalent");
  ff_json_number (json, "aperture", settings->aperture_written);
  write_measure (json, "aperture_exact", settings->f_number);
  ff_json_text (json, "shutter", shutter);
  write_measure (json, "shutter_s", settings->seconds);
  write_measure (json, "iso", settings->iso);
  ff_json_rounded (json, "nd_stops", settings->nd_stops, 9);
  ff_json_end (json);
}

static char *
filter_text (double stops)
{
  g_autofree char *number = ff_number_format (stops, 2);

  if (strcmp (number, "0") == 0)
    return g_strdup (_ ("no filter"));
  return g_strdup_printf (
      strcmp (number, "1") == 0 ? _ ("%s stop of filter") : _ ("%s stops of filter"), number);
}

static void
say_settings (FfConsole *console, const char *label, const Settings *settings, const char *shutter)
{
  g_autofree char *aperture = ff_number_format (settings->aperture_written, 2);
  g_autofree char *iso = ff_number_format (settings->iso, 0);
  g_autofree char *filter = filter_text (settings->nd_stops);

  /* Translators: f-number, shutter time in seconds, ISO, filter. */
  ff_console_row (console, label, _ ("f/%s   %s s   ISO %s   %s"), aperture, shutter, iso, filter);
}

static void
say_level (FfConsole *console, const char *label, double level)
{
  g_autofree char *text = ff_number_format (level, 2);

  ff_console_row (console, label, "%s", text);
}

static void
say_levels (FfConsole *console, const Settings *settings)
{
  const double light = light_of (settings);
  g_autofree char *shutter = ff_shutter_format (settings->seconds);
  g_autofree char *luminance = ff_number_format (ff_exposure_luminance (light), 3);
  g_autofree char *illuminance = ff_number_format (ff_exposure_illuminance (light), 2);

  say_settings (console, _ ("Settings"), settings, shutter);
  say_level (console, _ ("EV of the settings"),
             ff_exposure_ev (settings->f_number, settings->seconds));
  say_level (console, _ ("The same at ISO 100"), light - settings->nd_stops);
  say_level (console, _ ("Light, EV at ISO 100"), light);
  ff_console_row (console, _ ("Luminance"), _ ("%s cd/m² (K = 12.5)"), luminance);
  ff_console_row (console, _ ("Illuminance"), _ ("%s lx (C = 250)"), illuminance);
}

/* The settings after the change, and what pays named as exactly as it came out. */
static void
say_equivalent (FfConsole *console, Part payer, const Settings *settings)
{
  g_autofree char *shutter = shutter_label (settings->seconds);
  g_autofree char *f_number = ff_number_format (settings->f_number, 3);
  g_autofree char *seconds = ff_number_format (settings->seconds, 6);

  say_settings (console, _ ("Equivalent"), settings, shutter);
  if (payer == PART_APERTURE)
    ff_console_row (console, "", _ ("exactly f/%s"), f_number);
  if (payer == PART_SHUTTER)
    ff_console_row (console, "", _ ("exactly %s s"), seconds);
}

static FfOutcome
run_equivalent (FfConsole *console, const Settings *settings, Part changed, GError **error)
{
  g_autofree char *option = g_strdup_printf ("--to-%s", part_names[changed].token);
  Settings equivalent = *settings;
  const char *trouble;
  Part payer;

  if (!read_payer (changed, &payer, error)
      || !read_part (changed, option, to_text[changed], &equivalent, error))
    return FF_FAILED;
  let_pay (payer, light_of (settings), &equivalent);
  trouble = why_not (payer, &equivalent);
  write_equivalent (console->json, &equivalent);
  ff_json_text (console->json, "trouble", trouble);
  say_equivalent (console, payer, &equivalent);
  if (trouble == NULL)
    return FF_DONE;
  ff_console_line (console, "%s.", trouble);
  return FF_NO;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  Settings settings;
  Part changed;

  if (!ff_console_want_words (console, 0, NULL, error) || !read_settings (&settings, error)
      || !read_changed (&changed, error))
    return FF_FAILED;
  write_levels (console->json, &settings);
  say_levels (console, &settings);
  if (changed == N_PARTS)
    return FF_DONE;
  return run_equivalent (console, &settings, changed, error);
}

const FfCommand ff_command_exposure = {
  .name = "exposure",
  .summary = N_ ("Say what settings expose right, and trade one of them for another"),
  .usage = "exposure --aperture N --shutter S --iso I [--nd STOPS] [--thirds]\n"
           "      [--to-aperture N | --to-shutter S | --to-iso I | --to-nd STOPS]\n"
           "      [--pays aperture|shutter|iso|nd]",
  .example = "fieldfarectl exposure --aperture 2.8 --shutter 1/3200 --iso 100 --to-nd 6",
  .entries = entries,
  .run = run,
};
