/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who was briefed on what, and that somebody was. */
#include <glib/gi18n-lib.h>

#include "ff-briefing.h"
#include "ff-civil.h"
#include "ff-command.h"
#include "ff-crew.h"
#include "ff-day-reading.h"
#include "ff-error.h"

static char *said_text, *name_text, *by_text;

static GOptionEntry entries[] = {
  { "said", 0, 0, G_OPTION_ARG_STRING, &said_text,
    N_ ("Who was briefed just now on what stands: initials"), "INITIALS" },
  { "name", 0, 0, G_OPTION_ARG_STRING, &name_text,
    N_ ("With --said: the name of somebody who is not of the crew"), "NAME" },
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("With --said: initials of who enters it"),
    "INITIALS" },
  G_OPTION_ENTRY_NULL,
};

/* ---- Out ---- */

static void
write_one (FfConsole *console, const FfBriefing *one, GTimeZone *zone)
{
  FfJson *json = console->json;
  const FfBriefed *last = one->last;
  g_autofree char *at = last != NULL ? ff_instant_format ((double) last->at, zone) : NULL;
  g_autofree char *line = NULL;

  ff_json_begin_object (json, NULL);
  ff_json_text (json, "name", one->name);
  ff_json_text (json, "initials", one->initials);
  ff_json_text (json, "role", *one->role != '\0' ? one->role : NULL);
  ff_json_text (json, "state", ff_briefing_token (one->state));
  ff_json_text (json, "version", last != NULL ? last->letter : NULL);
  if (last != NULL)
    ff_json_integer (json, "amendment", last->upto);
  else
    ff_json_null (json, "amendment");
  ff_json_text (json, "at", at);
  ff_json_text (json, "by", last != NULL && *last->by != '\0' ? last->by : NULL);
  ff_json_text (json, "words", one->words);
  ff_json_end (json);
  line = g_strdup_printf ("%s %-4s%s: %s", ff_briefing_shape (one->state), one->initials,
                          one->name, one->words);
  ff_console_wrap (console, 6, line);
}

static FfOutcome
write_all (FfConsole *console, const FfDay *day, const FfStanding *standing)
{
  g_autoptr (GPtrArray) briefings = ff_briefings (standing, day);
  g_autofree char *words = ff_standing_words (standing, day);
  g_autofree char *sum = ff_briefings_sum (briefings);
  const guint n_open = ff_briefings_n_open (briefings);

  ff_json_text (console->json, "job", ff_day_job (day)->title);
  ff_json_text (console->json, "version",
                standing->version != NULL ? standing->version->letter : NULL);
  ff_console_line (console, "%s", words);
  ff_json_begin_array (console->json, "briefed");
  for (guint i = 0; i < briefings->len; i++)
    write_one (console, g_ptr_array_index (briefings, i), ff_day_zone (day));
  ff_json_end (console->json);
  ff_json_integer (console->json, "open", n_open);
  ff_console_line (console, "%s", sum);
  return n_open > 0 ? FF_NO : FF_DONE;
}

/* ---- In ---- */

/* Initials of the crew as they are written there; of anyone else with the name. */
static gboolean
read_who (FfStore *store, char **ret_initials, char **ret_name, GError **error)
{
  g_autoptr (GPtrArray) members = NULL;

  *ret_name = g_strdup (name_text);
  if (name_text != NULL)
    {
      *ret_initials = g_strdup (said_text);
      return TRUE;
    }
  if (!ff_option_initials ("--said", said_text, store, ret_initials, error))
    return FALSE;
  members = ff_members_load (store, error);
  for (guint i = 0; members != NULL && i < members->len; i++)
    {
      const FfMember *member = g_ptr_array_index (members, i);

      if (g_str_equal (member->initials, *ret_initials))
        *ret_name = g_strdup (member->name);
    }
  return members != NULL;
}

static gboolean
note (FfStore *store, const FfDay *day, const FfStanding *standing, GError **error)
{
  g_autoptr (FfBriefed) briefed = NULL;
  g_autofree char *initials = NULL, *name = NULL, *by = NULL;

  if (!read_who (store, &initials, &name, error)
      || !ff_option_initials ("--by", by_text, store, &by, error))
    return FALSE;
  briefed = ff_briefing_say (standing, day, name, initials, by,
                             g_get_real_time () / G_USEC_PER_SEC);
  return ff_briefed_append (store, briefed, error);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const FfRecordsAccess access = said_text != NULL ? FF_RECORDS_WRITE : FF_RECORDS_READ;
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfStanding) standing = NULL;

  if (!ff_console_want_words (console, 1, "JOB", error)
      || (said_text == NULL && (name_text != NULL || by_text != NULL)
          && !ff_option_missing ("--said", error)))
    return FF_FAILED;
  store = ff_console_open (console, access, error);
  day = store != NULL ? ff_day_load (store, console->words[0], error) : NULL;
  standing = day != NULL ? ff_standing_load (store, ff_day_job (day)->id, error) : NULL;
  if (standing == NULL)
    return FF_FAILED;
  if (said_text == NULL)
    return write_all (console, day, standing);
  if (!note (store, day, standing, error))
    return FF_FAILED;
  ff_standing_free (standing);
  standing = ff_standing_load (store, ff_day_job (day)->id, error);
  return standing != NULL ? write_all (console, day, standing) : FF_FAILED;
}

const FfCommand ff_command_briefed = {
  .name = "briefed",
  .summary = N_ ("Say who was briefed on which version of a plan"),
  .usage = "briefed JOB [--said INITIALS [--name NAME] [--by INITIALS]]",
  .example = "fieldfarectl briefed Skarrowick --said PR --by MO",
  .entries = entries,
  .run = run,
};
