/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How far two colour temperatures are apart, and what has been published about daylight. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-balance.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-number.h"

static char *from_text, *to_text;
static gboolean want_list;

static GOptionEntry entries[] = {
  { "from", 0, 0, G_OPTION_ARG_STRING, &from_text, N_ ("Colour temperature of the light"), "K" },
  { "to", 0, 0, G_OPTION_ARG_STRING, &to_text, N_ ("What it should become, or is set as"), "K" },
  { "list", 0, 0, G_OPTION_ARG_NONE, &want_list, N_ ("List published ranges of daylight"), NULL },
  G_OPTION_ENTRY_NULL,
};

static void
list_range (FfConsole *console, const FfDaylightRange *range)
{
  g_autofree char *low = ff_number_format (range->low_kelvin, 0);
  g_autofree char *high = ff_number_format (range->high_kelvin, 0);
  g_autofree char *span = NULL;

  if (isinf (range->high_kelvin))
    span = g_strdup_printf (_ ("%s and more"), low);
  else if (range->low_kelvin < range->high_kelvin)
    span = g_strdup_printf (_ ("%s to %s"), low, high);
  else
    span = g_strdup (low);
  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "text", _ (range->text));
  ff_json_number (console->json, "low_k", range->low_kelvin);
  ff_json_number (console->json, "high_k", range->high_kelvin);
  ff_json_text (console->json, "source", _ (range->source));
  ff_json_end (console->json);
  ff_console_line (console, "%16s  %s", span, _ (range->text));
  ff_console_line (console, "%10s%s", "", _ (range->source));
}

static FfOutcome
run_list (FfConsole *console)
{
  ff_json_begin_array (console->json, "daylight");
  for (guint i = 0; i < ff_daylight_range_count (); i++)
    list_range (console, ff_daylight_range (i));
  ff_json_end (console->json);
  ff_console_line (console, _ ("In kelvin. Sources differ; a grey card on site decides."));
  return FF_DONE;
}

static void
write_chromaticity (FfJson *json, const char *name, double kelvin)
{
  double x, y;

  if (!ff_balance_daylight_xy (kelvin, &x, &y))
    {
      ff_json_null (json, name);
      return;
    }
  ff_json_begin_object (json, name);
  ff_json_rounded (json, "x", x, 6);
  ff_json_rounded (json, "y", y, 6);
  ff_json_end (json);
}

static void
say_mired (FfConsole *console, const char *label, double mired)
{
  g_autofree char *text = ff_number_format (mired, 1);

  ff_console_row (console, label, _ ("%s mired"), text);
}

static void
say_shift (FfConsole *console, double from, double to)
{
  const double shift = ff_balance_shift_mired (from, to);
  g_autofree char *text = ff_number_format (shift, 1);
  const char *sign = shift > 0 ? "+" : "";

  say_mired (console, _ ("From"), ff_balance_mired (from));
  say_mired (console, _ ("To"), ff_balance_mired (to));
  /* Translators: a filter that shifts the light; amber is warmer, blue is cooler. */
  ff_console_row (console, _ ("Shift"), _ ("%s%s mired, %s"), sign, text,
                  shift > 0   ? _ ("warmer (amber)")
                  : shift < 0 ? _ ("cooler (blue)")
                              : _ ("none"));
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  double from, to;

  if (!ff_console_want_words (console, 0, NULL, error))
    return FF_FAILED;
  if (want_list && (from_text != NULL || to_text != NULL))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("--list stands alone; leave out %s"),
                   from_text != NULL ? "--from" : "--to");
      return FF_FAILED;
    }
  if (want_list)
    return run_list (console);
  if (!ff_option_number ("--from", from_text, 500, 100000, &from, error)
      || !ff_option_number ("--to", to_text, 500, 100000, &to, error))
    return FF_FAILED;
  ff_json_number (console->json, "mired_from", ff_balance_mired (from));
  ff_json_number (console->json, "mired_to", ff_balance_mired (to));
  ff_json_number (console->json, "shift_mired", ff_balance_shift_mired (from, to));
  write_chromaticity (console->json, "daylight_from", from);
  write_chromaticity (console->json, "daylight_to", to);
  say_shift (console, from, to);
  return FF_DONE;
}

const FfCommand ff_command_balance = {
  .name = "balance",
  .summary = N_ ("Say how far two colour temperatures are apart"),
  .usage = "balance --from K --to K\n"
           "  fieldfarectl balance --list",
  .example = "fieldfarectl balance --from 3200 --to 5500",
  .entries = entries,
  .run = run,
};
