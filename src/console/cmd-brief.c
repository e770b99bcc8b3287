/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "ff-brief.h"
#include "ff-command.h"
#include "ff-day-reading.h"
#include "ff-error.h"
#include "ff-number.h"
#include "ff-standing.h"

#define CHART_STEP_S 120 /* between samples of the day chart's curves */

static char *file_path;
static char *reader_text;
static char *paper_text;
static char *margin_text;
static gboolean want_lists;
static gboolean want_slips;
static gboolean want_pack;
static gboolean want_spoken;
static gboolean want_amendments;
static gboolean want_phones;

static GOptionEntry entries[] = {
  { "output", 'o', 0, G_OPTION_ARG_FILENAME, &file_path,
    N_ ("The PDF to write; one that exists is replaced"), "FILE.pdf" },
  { "for", 0, 0, G_OPTION_ARG_STRING, &reader_text,
    N_ ("Whose sheets: lead, pilot, camera, observer, client or all (default: all)"), "READER" },
  { "paper", 0, 0, G_OPTION_ARG_STRING, &paper_text, N_ ("a4 or letter (default: a4)"), "PAPER" },
  { "margin", 0, 0, G_OPTION_ARG_STRING, &margin_text,
    N_ ("Room at the side that is bound: 9 to 20 mm (default: as the other sides)"), "MM" },
  { "lists", 0, 0, G_OPTION_ARG_NONE, &want_lists, 
    N_ ("The checklists the day calls for, too"), NULL },
  { "slips", 0, 0, G_OPTION_ARG_NONE, &want_slips, 
    N_ ("A turn-round slip for each landing, too"), NULL },
  { "pack", 0, 0, G_OPTION_ARG_NONE, &want_pack, N_ ("The pack list by case, too"), NULL },
  { "spoken", 0, 0, G_OPTION_ARG_NONE, &want_spoken,
    N_ ("The two-minute spoken brief and the day chart, too"), NULL },
  { "amendments", 0, 0, G_OPTION_ARG_NONE, &want_amendments,
    N_ ("The amendments as they are read out, with lines for more, too"), NULL },
  { "phones", 0, 0, G_OPTION_ARG_NONE, &want_phones,
    N_ ("Telephone numbers of the crew on the sheets; they stay off otherwise"), NULL },
  G_OPTION_ENTRY_NULL,
};

typedef struct {
  FfReader reader;
  FfPaper paper;
  double margin_mm;
  FfBriefMore more;
  gint64 printed_at;
} Request;

/* The moment that the sheets say they were printed: now, or the one that a build which must come
 * out the same twice sets (reproducible-builds.org, SOURCE_DATE_EPOCH). */
static gboolean
read_printed_at (gint64 *ret_instant, GError **error)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  double seconds;

  *ret_instant = g_get_real_time () / G_USEC_PER_SEC;
  if (epoch == NULL)
    return TRUE;
  if (!ff_number_parse ("SOURCE_DATE_EPOCH", epoch, 0, 7258118400.0, &seconds, error))
    return FALSE;
  *ret_instant = (gint64) seconds;
  return TRUE;
}

static gboolean
read_request (FfConsole *console, Request *request, GError **error)
{
  int reader = FF_READER_ALL, paper = FF_PAPER_A4;

  if (!ff_console_want_words (console, 1, "JOB", error))
    return FALSE;
  if (file_path == NULL)
    return ff_option_missing ("-o FILE.pdf", error);
  if (reader_text != NULL
      && !ff_option_name ("--for", &ff_names_reader, reader_text, &reader, error))
    return FALSE;
  if (paper_text != NULL
      && !ff_option_name ("--paper", &ff_names_paper, paper_text, &paper, error))
    return FALSE;
  if (margin_text != NULL
      && !ff_option_number ("--margin", margin_text, 9, FF_BRIEF_MOST_MARGIN_MM,
                            &request->margin_mm, error))
    return FALSE;
  request->reader = (FfReader) reader;
  request->paper = (FfPaper) paper;
  request->more = (want_lists ? FF_BRIEF_LISTS : 0) | (want_slips ? FF_BRIEF_SLIPS : 0)
                  | (want_pack ? FF_BRIEF_PACK : 0) | (want_spoken ? FF_BRIEF_SPOKEN : 0)
                  | (want_amendments ? FF_BRIEF_AMENDMENTS : 0);
  return read_printed_at (&request->printed_at, error);
}

static void
report (FfConsole *console, const FfBrief *brief, const FfSheetFacts *facts)
{
  g_autofree char *name = g_filename_display_name (file_path);
  GPtrArray *did_not_fit = ff_brief_did_not_fit (brief);
  const guint pages = ff_brief_n_pages (brief);

  ff_json_text (console->json, "file", name);
  ff_json_integer (console->json, "pages", pages);
  ff_json_texts (console->json, "did_not_fit", did_not_fit);
  ff_json_texts (console->json, "missing", facts->missing);

  ff_console_line (console, g_dngettext (GETTEXT_PACKAGE, "%s: %u page", "%s: %u pages", pages),
                   name, pages);
  for (guint i = 0; i < did_not_fit->len; i++)
    ff_console_line (console, _ ("Did not fit: %s"),
                     (const char *) g_ptr_array_index (did_not_fit, i));
  for (guint i = 0; i < facts->missing->len; i++)
    ff_console_line (console, _ ("Missing: %s"),
                     (const char *) g_ptr_array_index (facts->missing, i));
}

/* What the sheets are made of. `now` is the plan of now, `printed` what stands on the sheets. */
static FfSheetFacts *
gather_facts (FfStore *store,
              const FfDay *day,
              const FfDayPlan *now,
              const FfDayPlan *printed,
              const FfStanding *standing,
              const Request *request,
              GError **error)
{
  g_autoptr (FfSheetFacts) facts = ff_sheet_facts (day, printed, request->printed_at);
  const gboolean for_lead = request->reader == FF_READER_LEAD || request->reader == FF_READER_ALL;

  ff_sheet_facts_stand (facts, standing);
  ff_sheet_facts_say_briefed (facts, standing, day);
  if (!want_phones)
    ff_sheet_facts_hide_phones (facts);
  if ((request->more & FF_BRIEF_SPOKEN) != 0)
    facts->chart = ff_chart_facts (day, CHART_STEP_S, 0);
  if (!ff_sheet_facts_read_lists (facts, store, day, error)
      || (for_lead && !ff_sheet_facts_read_drops (facts, day, now, error))
      || ((request->more & FF_BRIEF_PACK) != 0
          && !ff_sheet_facts_read_pack (facts, store, day, error)))
    return NULL;
  return g_steal_pointer (&facts);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfDay) day = NULL;
  g_autoptr (FfDayPlan) plan = NULL;
  g_autoptr (FfStanding) standing = NULL;
  g_autoptr (FfSheetFacts) facts = NULL;
  g_autoptr (FfBrief) brief = NULL;
  const FfDayPlan *printed;
  Request request = { 0 };

  if (!read_request (console, &request, error))
    return FF_FAILED;
  store = ff_console_open (console, FF_RECORDS_READ, error);
  if (store == NULL)
    return FF_FAILED;
  day = ff_day_load (store, console->words[0], error);
  if (day == NULL)
    return FF_FAILED;
  plan = ff_day_plan (day, NULL, error);
  if (plan == NULL)
    return FF_FAILED;
  standing = ff_standing_load (store, ff_day_job (day)->id, error);
  if (standing == NULL)
    return FF_FAILED;
  /* What is frozen is printed as it was frozen. */
  printed = standing->frozen != NULL ? standing->frozen : plan;
  facts = gather_facts (store, day, plan, printed, standing, &request, error);
  if (facts == NULL)
    return FF_FAILED;
  brief = ff_brief_gather_with (facts, printed, request.reader, request.paper, request.more, error);
  if (brief != NULL)
    ff_brief_bind (brief, request.margin_mm);
  if (brief == NULL || !ff_brief_lay_out (brief, facts, error))
    {
      g_prefix_error (error, "brief: ");
      return FF_FAILED;
    }
  if (!ff_brief_write_pdf (brief, file_path, error))
    return FF_FAILED;
  report (console, brief, facts);
  return ff_brief_did_not_fit (brief)->len > 0 ? FF_NO : FF_DONE;
}

const FfCommand ff_command_brief = {
  .name = "brief",
  .summary = N_ ("Print the sheets of a job to a PDF"),
  .usage = "brief JOB -o FILE.pdf [--for READER] [--paper PAPER] [--margin MM] "
           "[--lists] [--slips] [--pack] [--spoken] [--amendments] [--phones]",
  .example = "fieldfarectl brief Skarrowick -o brief.pdf --for pilot --paper letter",
  .entries = entries,
  .run = run,
};
