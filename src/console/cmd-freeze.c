/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Freezes the plan of a job: from then on its sheets carry the letter, and changes are amendments. */
#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-reading.h"
#include "ff-standing.h"

static char *by_text, *why_text;

static GOptionEntry entries[] = {
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("Initials of who freezes it"), "INITIALS" },
  { "why", 0, 0, G_OPTION_ARG_STRING, &why_text,
    N_ ("Decide on a new letter, and say why: sheets are printed anew"), "TEXT" },
  G_OPTION_ENTRY_NULL,
};

static void
write_frozen (FfConsole *console, const FfDay *day, const FfStanding *standing)
{
  g_autofree char *words = ff_standing_words (standing, day);
  g_autofree char *at
      = ff_instant_format ((double) standing->version->frozen_at, ff_day_zone (day));

  ff_json_text (console->json, "job", ff_day_job (day)->title);
  ff_json_text (console->json, "version", standing->version->letter);
  ff_json_text (console->json, "frozen_at", at);
  ff_json_text (console->json, "by",
                *standing->version->by != '\0' ? standing->version->by : NULL);
  ff_json_text (console->json, "why",
                *standing->version->why != '\0' ? standing->version->why : NULL);
  ff_json_integer (console->json, "lines", standing->frozen->lines->len);
  ff_console_line (console, _ ("%s: %s."), ff_day_job (day)->title, words);
  ff_console_line (console, _ ("Sheets carry this letter; what changes now is an amendment."));
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  g_autoptr (FfStanding) standing = NULL;
  g_autofree char *initials = NULL, *letter = NULL;

  if (!ff_console_want_words (console, 1, "JOB", error))
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_WRITE, error);
  if (store == NULL || !ff_option_initials ("--by", by_text, store, &initials, error))
    return FF_FAILED;
  day = ff_day_load (store, console->words[0], error);
  plan = day != NULL ? ff_day_plan (day, NULL, error) : NULL;
  if (plan == NULL)
    return FF_FAILED;
  letter = ff_plan_freeze (store, day, plan, initials, why_text,
                           g_get_real_time () / G_USEC_PER_SEC, error);
  standing = letter != NULL ? ff_standing_load (store, ff_day_job (day)->id, error) : NULL;
  if (standing == NULL)
    return FF_FAILED;
  write_frozen (console, day, standing);
  return FF_DONE;
}

const FfCommand ff_command_freeze = {
  .name = "freeze",
  .summary = N_ ("Freeze the plan of a job under its letter"),
  .usage = "freeze JOB [--by INITIALS] [--why TEXT]",
  .example = "fieldfarectl freeze Skarrowick --by MO",
  .entries = entries,
  .run = run,
};
