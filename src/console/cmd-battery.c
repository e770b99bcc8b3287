/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a battery holds, and how such a one is usually carried. */
#include <glib/gi18n-lib.h>

#include "ff-battery.h"
#include "ff-command.h"
#include "ff-number.h"

static char *volts_text, *mah_text;

static GOptionEntry entries[] = {
  { "volts", 0, 0, G_OPTION_ARG_STRING, &volts_text, N_ ("Nominal voltage, as printed"), "V" },
  { "mah", 0, 0, G_OPTION_ARG_STRING, &mah_text, N_ ("Capacity in milliampere-hours"), "N" },
  G_OPTION_ENTRY_NULL,
};

static const FfName carry_names[] = {
  [FF_CARRY_UP_TO_100] = { "up_to_100", N_ ("up to 100 Wh: usually in the cabin") },
  [FF_CARRY_OVER_100_TO_160]
  = { "over_100_to_160", N_ ("over 100 to 160 Wh: usually two, with the airline's approval") },
  [FF_CARRY_OVER_160] = { "over_160", N_ ("over 160 Wh: usually not as baggage") },
};
static const FfNames names_carry = { "band", carry_names, G_N_ELEMENTS (carry_names) };

#define CAUTION_FIRST N_ ("The carrier decides: ask before packing; terminals covered, cabin only.")
#define CAUTION_SOURCE                                                                             \
  N_ ("The bands are an example: IATA Dangerous Goods Regulations, 67th edition (2026).")

static FfOutcome
run (FfConsole *console, GError **error)
{
  double volts, mah, energy_wh;
  g_autofree char *energy = NULL, *caution = NULL;
  FfCarry carry;

  if (!ff_console_want_words (console, 0, NULL, error)
      || !ff_option_number ("--volts", volts_text, 0.1, 1000, &volts, error)
      || !ff_option_number ("--mah", mah_text, 1, 1e6, &mah, error))
    return FF_FAILED;
  energy_wh = ff_battery_energy_wh (volts, mah);
  carry = ff_battery_carry (energy_wh);
  energy = ff_number_format (energy_wh, 2);
  caution = g_strdup_printf ("%s %s", _ (CAUTION_FIRST), _ (CAUTION_SOURCE));

  ff_json_rounded (console->json, "energy_wh", energy_wh, 9);
  ff_json_text (console->json, "carry", ff_name_token (&names_carry, carry));
  ff_json_text (console->json, "caution", caution);
  /* The caution stands before what it guards. */
  ff_console_line (console, "%s", _ (CAUTION_FIRST));
  ff_console_line (console, "%s", _ (CAUTION_SOURCE));
  ff_console_row (console, _ ("Energy"), _ ("%s Wh"), energy);
  ff_console_row (console, _ ("Band"), "%s", ff_name_text (&names_carry, carry));
  return FF_DONE;
}

const FfCommand ff_command_battery = {
  .name = "battery",
  .summary = N_ ("Say what a battery holds and how such a one is usually carried"),
  .usage = "battery --volts V --mah N",
  .example = "fieldfarectl battery --volts 14.8 --mah 4700",
  .entries = entries,
  .run = run,
};
