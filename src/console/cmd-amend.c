/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Amendments of a frozen plan: what would have to be one, making it, and who has read it. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-day-reading.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-plan-change.h"
#include "ff-standing.h"

static char *by_text, *role_text, *initials_text;

static GOptionEntry entries[] = {
  { "by", 0, 0, G_OPTION_ARG_STRING, &by_text, N_ ("add, read: initials of who enters it"),
    "INITIALS" },
  { "role", 0, 0, G_OPTION_ARG_STRING, &role_text, N_ ("read: lead, pilot, camera or observer"),
    "ROLE" },
  { "initials", 0, 0, G_OPTION_ARG_STRING, &initials_text, N_ ("read: who has read it"),
    "INITIALS" },
  G_OPTION_ENTRY_NULL,
};

/* What every verb looks at. */
typedef struct {
  FfStore *store;
  FfDay *day;
  FfStanding *standing;
} Case;

static void
case_clear (Case *self)
{
  ff_standing_free (self->standing);
  ff_day_free (self->day);
  g_clear_pointer (&self->store, ff_records_close);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Case, case_clear)

static gboolean
open_case (Case *self, FfConsole *console, FfRecordsAccess access, GError **error)
{
  self->store = ff_console_open (console, access, error);
  self->day = self->store != NULL ? ff_day_load (self->store, console->words[1], error) : NULL;
  if (self->day != NULL)
    self->standing = ff_standing_load (self->store, ff_day_job (self->day)->id, error);
  return self->standing != NULL;
}

/* ---- Out ---- */

static void
json_instant (FfJson *json, const char *name, gint64 at, GTimeZone *zone)
{
  g_autofree char *text = ff_instant_format ((double) at, zone);

  ff_json_text (json, name, text);
}

static void
json_texts_of (FfJson *json, const FfAmendment *amendment)
{
  ff_json_begin_array (json, "sentences");
  for (guint i = 0; i < amendment->sentences->len; i++)
    {
      const FfSentence *sentence = g_ptr_array_index (amendment->sentences, i);
      g_autofree char *words = ff_sentence_words (sentence);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "role", ff_name_token (&ff_names_role, (int) sentence->role));
      ff_json_text (json, "text", words);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
json_readers (FfJson *json, const FfAmendment *amendment, GTimeZone *zone)
{
  ff_json_begin_array (json, "acknowledged");
  for (guint i = 0; i < amendment->acknowledgements->len; i++)
    {
      const FfAcknowledgement *given = g_ptr_array_index (amendment->acknowledgements, i);

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "role", ff_name_token (&ff_names_role, (int) given->role));
      ff_json_text (json, "initials", given->initials);
      json_instant (json, "at", given->at, zone);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
write_amendment (FfConsole *console, const FfAmendment *amendment, GTimeZone *zone)
{
  FfJson *json = console->json;
  g_autofree char *clock = ff_instant_clock ((double) amendment->at, zone);

  ff_json_integer (json, "number", amendment->number);
  ff_json_text (json, "version", amendment->letter);
  json_instant (json, "at", amendment->at, zone);
  ff_json_text (json, "by", *amendment->by != '\0' ? amendment->by : NULL);
  json_texts_of (json, amendment);
  json_readers (json, amendment, zone);
  ff_json_integer (json, "open", ff_amendment_n_open (amendment));
  ff_console_line (console, _ ("Amendment %d to version %s, %s  %s"), amendment->number,
                   amendment->letter, clock, amendment->by);
  for (guint i = 0; i < amendment->sentences->len; i++)
    {
      const FfSentence *sentence = g_ptr_array_index (amendment->sentences, i);
      const FfAcknowledgement *given = ff_amendment_acknowledged (amendment, sentence->role);
      g_autofree char *words = ff_sentence_words (sentence);

      /* Translators: after a sentence: nobody of this role has read it yet. */
      g_autofree char *whole = g_strdup_printf (
          "  %s  %s", words, given != NULL ? given->initials : _ ("[not read]"));

      ff_console_wrap (console, 4, whole);
    }
}

/* The job's letter, then all amendments; status 1 while somebody has not read one that stands. */
static FfOutcome
write_list (FfConsole *console, const Case *self)
{
  FfJson *json = console->json;
  GPtrArray *amendments = self->standing->amendments;
  g_autofree char *words = ff_standing_words (self->standing, self->day);
  guint n_open = ff_standing_n_open (self->standing);

  ff_json_text (json, "job", ff_day_job (self->day)->title);
  ff_json_text (json, "version",
                self->standing->version != NULL ? self->standing->version->letter : NULL);
  ff_console_line (console, "%s", words);
  ff_json_begin_array (json, "amendments");
  for (guint i = 0; i < amendments->len; i++)
    {
      ff_json_begin_object (json, NULL);
      write_amendment (console, g_ptr_array_index (amendments, i), ff_day_zone (self->day));
      ff_json_end (json);
    }
  ff_json_end (json);
  ff_json_integer (json, "open", n_open);
  return n_open > 0 ? FF_NO : FF_DONE;
}

/* ---- What is done ---- */

static FfOutcome
list (FfConsole *console, GError **error)
{
  g_auto (Case) self = { 0 };

  return open_case (&self, console, FF_RECORDS_READ, error) ? write_list (console, &self)
                                                            : FF_FAILED;
}

/* NULL without an error: nothing to amend. */
static FfAmendment *
propose (const Case *self, const char *by, GError **error)
{
  g_autoptr (FfDayPlan) plan = NULL;

  if (self->standing->version == NULL)
    {
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                           _ ("no version is frozen yet, so the plan can change freely; freeze it "
                              "first"));
      return NULL;
    }
  plan = ff_day_plan (self->day, NULL, error);
  return plan != NULL ? ff_standing_propose (self->standing, self->day, plan, by,
                                             g_get_real_time () / G_USEC_PER_SEC)
                      : NULL;
}

static FfOutcome
say_nothing_to_amend (FfConsole *console)
{
  ff_json_null (console->json, "amendment");
  ff_console_line (console, _ ("The plan is as it stands on the sheets: nothing to amend."));
  return FF_DONE;
}

static FfOutcome
try (FfConsole *console, gboolean keep, GError **error)
{
  g_auto (Case) self = { 0 };
  g_autoptr (FfAmendment) amendment = NULL;
  g_autoptr (GError) problem = NULL;
  g_autofree char *by = NULL;

  if (!open_case (&self, console, keep ? FF_RECORDS_WRITE : FF_RECORDS_READ, error)
      || !ff_option_initials ("--by", by_text, self.store, &by, error))
    return FF_FAILED;
  amendment = propose (&self, by, &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FF_FAILED;
    }
  if (amendment == NULL)
    return say_nothing_to_amend (console);
  if (keep && !ff_amendment_append (self.store, amendment, error))
    return FF_FAILED;
  ff_json_begin_object (console->json, "amendment");
  write_amendment (console, amendment, ff_day_zone (self.day));
  ff_json_end (console->json);
  if (!keep)
    ff_console_line (console, _ ("Not kept: “amend add” keeps it."));
  return keep ? FF_DONE : FF_NO;
}

static gboolean
want_reader (GError **error)
{
  if (role_text == NULL)
    return ff_option_missing ("--role", error);
  return initials_text != NULL || ff_option_missing ("--initials", error);
}

static gboolean
is_there (const Case *self, int number, GError **error)
{
  GPtrArray *amendments = self->standing->amendments;

  for (guint i = 0; i < amendments->len; i++)
    if (((FfAmendment *) g_ptr_array_index (amendments, i))->number == number)
      return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("there is no amendment %d; accepted: 1 to %u"),
               number, amendments->len);
  return FALSE;
}

static FfOutcome
acknowledge (FfConsole *console, GError **error)
{
  g_auto (Case) self = { 0 };
  g_autoptr (FfAmendment) given = NULL;
  g_autofree char *by = NULL, *initials = NULL;
  int number, role;

  if (!want_reader (error)
      || !ff_integer_parse ("N", console->words[2], 1, 9999, &number, error)
      || !ff_option_name ("--role", &ff_names_role, role_text, &role, error)
      || !open_case (&self, console, FF_RECORDS_WRITE, error)
      || !is_there (&self, number, error)
      || !ff_option_initials ("--initials", initials_text, self.store, &initials, error)
      || !ff_option_initials ("--by", by_text, self.store, &by, error))
    return FF_FAILED;
  given = ff_amendment_new (ff_day_job (self.day)->id);
  given->number = number;
  if (!ff_acknowledgement_append (
          self.store,
          ff_amendment_add_acknowledgement (given, (FfRole) role, initials,
                                            g_get_real_time () / G_USEC_PER_SEC, by),
          error))
    return FF_FAILED;
  g_clear_pointer (&self.standing, ff_standing_free);
  self.standing = ff_standing_load (self.store, ff_day_job (self.day)->id, error);
  return self.standing != NULL ? write_list (console, &self) : FF_FAILED;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  const char *verb = console->n_words > 0 ? console->words[0] : "";

  if (strcmp (verb, "list") == 0)
    return ff_console_want_words (console, 2, "list JOB", error) ? list (console, error)
                                                                 : FF_FAILED;
  if (strcmp (verb, "try") == 0 || strcmp (verb, "add") == 0)
    return ff_console_want_words (console, 2, "add JOB", error)
               ? try (console, strcmp (verb, "add") == 0, error)
               : FF_FAILED;
  if (strcmp (verb, "read") == 0)
    return ff_console_want_words (console, 3, "read JOB N", error) ? acknowledge (console, error)
                                                                   : FF_FAILED;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("found “%s”; accepted: list, try, add, read"),
               verb);
  return FF_FAILED;
}

const FfCommand ff_command_amend = {
  .name = "amend",
  .summary = N_ ("Number what changes after a plan was frozen"),
  .usage = "amend list JOB\n"
           "  fieldfarectl amend try JOB\n"
           "  fieldfarectl amend add JOB [--by INITIALS]\n"
           "  fieldfarectl amend read JOB N --role ROLE --initials INITIALS [--by INITIALS]",
  .example = "fieldfarectl amend read Skarrowick 1 --role pilot --initials JV",
  .entries = entries,
  .run = run,
};
