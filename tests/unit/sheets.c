/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheets as paper: every fact of the plan can be read off the PDF, whatever was typed, on
 * either paper; and a file that can't be written leaves nothing behind. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ff-brief.h"
#include "ff-checklist.h"
#include "ff-civil.h"
#include "ff-error.h"
#include "ff-fixture.h"
#include "ff-leaf.h"
#include "ff-number.h"
#include "ff-starter-lists.h"

static char *folder;

static FfBrief *
make (const FfFixture *fixture, FfReader reader, FfPaper paper)
{
  g_autoptr (GError) error = NULL;
  FfBrief *brief = ff_brief_new (&fixture->facts, &fixture->plan, reader, paper, &error);

  assert_no_error (error);
  return brief;
}

/* Writes a brief into the test's folder; the caller frees the path. */
static char *
write_brief (const FfBrief *brief)
{
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (folder, "brief.pdf", NULL);

  assert_true (ff_brief_write_pdf (brief, path, &error));
  assert_no_error (error);
  return path;
}

/* Standard output of a tool of poppler-utils, which must find nothing to complain of. */
static char *
run_tool (const char *const *arguments)
{
  g_autofree char *complaints = NULL;
  char *output = NULL;
  int status = -1;

  assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL,
                             &output, &complaints, &status, NULL));
  assert_int_equal (status, 0);
  assert_string_equal (complaints, "");
  return output;
}

/* Words with one blank between them, those that go on after a hyphen in the next line as one; marks of
 * direction dropped, which readers of text show as nothing. */
static char *
squeeze (const char *text)
{
  GString *words = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if ((c >= 0x2066 && c <= 0x2069) || (c >= 0x202a && c <= 0x202e))
        continue;
      if (!g_unichar_isspace (c) && c != '\f')
        g_string_append_unichar (words, c);
      else if (c == '\n' && g_str_has_suffix (words->str, "-"))
        continue;
      else if (words->len > 0 && words->str[words->len - 1] != ' ')
        g_string_append_c (words, ' ');
    }
  return g_string_free (words, FALSE);
}

static gboolean
have_poppler (void)
{
  g_autofree char *text = g_find_program_in_path ("pdftotext");
  g_autofree char *info = g_find_program_in_path ("pdfinfo");

  return text != NULL && info != NULL;
}

/* The text of a fixture's sheets in the order in which it is drawn. */
static char *
text_of (const FfFixture *fixture, FfReader reader, FfPaper paper)
{
  g_autoptr (FfBrief) brief = make (fixture, reader, paper);
  g_autofree char *path = write_brief (brief);
  const char *arguments[] = { "pdftotext", "-raw", "-enc", "UTF-8", path, "-", NULL };
  g_autofree char *text = run_tool (arguments);

  return squeeze (text);
}

static void
assert_says (const char *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
assert_says (const char *text, const char *format, ...)
{
  g_autofree char *part = NULL;
  va_list arguments;

  va_start (arguments, format);
  part = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (strstr (text, part) == NULL)
    fail_msg ("the sheet does not say “%s”: %s", part, text);
}

static void
assert_says_trend (const char *text, const char *before, const char *start, const char *end)
{
  if (g_str_equal (start, end))
    assert_says (text, "%s%s", before, start);
  else
    assert_says (text, "%s%s → %s", before, start, end);
}

static void
check_iso (const char *text, const FfPlanTake *take)
{
  g_autofree char *start = g_strdup_printf ("%d", take->start.iso);
  g_autofree char *end = g_strdup_printf ("%d", take->end.iso);

  assert_says_trend (text, "ISO ", start, end);
}

/* The lines of the plan as the pilot reads them, one after the other. */
static void
check_pilot (const char *text, const FfFixture *fixture)
{
  GTimeZone *zone = fixture->facts.zone;

  for (guint i = 0; i < fixture->plan.lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (fixture->plan.lines, i);
      g_autofree char *off_by = ff_instant_clock ((double) line->off_by, zone);
      g_autofree char *land_by = ff_instant_clock ((double) line->land_by, zone);

      assert_says (text, "off by %s LAND BY %s", off_by, land_by);
      assert_says (text, "battery %s", line->battery);
      if (*line->engraving != '\0')
        assert_says (text, "%s", line->engraving);
      for (guint t = 0; t < line->takes->len; t++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, t);

          assert_says (text, "%s %s", take->shot, take->title);
        }
    }
}

static void
check_camera (const char *text, const FfFixture *fixture)
{
  for (guint i = 0; i < fixture->plan.lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (fixture->plan.lines, i);
      g_autofree char *stops = ff_number_format (line->filter_stops, 1);

      if (line->filters->len == 0)
        assert_says (text, "no filter");
      else
        assert_says (text, "%s %s %s", stops, line->filter_stops == 1 ? "stop" : "stops",
                     line->engraving);
      for (guint t = 0; t < line->takes->len; t++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, t);

          assert_says (text, "%s %s", take->shot, take->title);
          assert_says (text, "%s", take->start.shutter);
          assert_says (text, "%s", take->end.shutter);
          check_iso (text, take);
        }
    }
}

/* Must run before the first font is looked for: the child looks for it in a folder without any. */
static void
test_no_font_is_an_error (void **state)
{
  g_autofree char *path = g_build_filename (folder, "no-fonts.conf", NULL);
  int status = -1;
  pid_t child;

  assert_true (g_file_set_contents (path, "<fontconfig></fontconfig>", -1, NULL));
  child = fork ();
  if (child == 0)
    {
      g_autoptr (FfFixture) demo = ff_fixture_demo ();
      GError *error = NULL;

      g_setenv ("FONTCONFIG_FILE", path, TRUE);
      if (ff_brief_new (&demo->facts, &demo->plan, FF_READER_ALL, FF_PAPER_A4, &error) == NULL
          && g_error_matches (error, FF_ERROR, FF_ERROR_OUTPUT)
          && strstr (error->message, "fonts-b612") != NULL
          && strstr (error->message, "fonts-dejavu-core") != NULL)
        _exit (0);
      _exit (1);
    }
  assert_true (child > 0);
  assert_int_equal (waitpid (child, &status, 0), child);
  assert_true (WIFEXITED (status));
  assert_int_equal (WEXITSTATUS (status), 0);
}

static void
test_demo_day_fits_its_pages (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();

  for (int paper = FF_PAPER_A4; paper <= FF_PAPER_LETTER; paper++)
    {
      g_autoptr (FfBrief) all = make (demo, FF_READER_ALL, (FfPaper) paper);
      g_autoptr (FfBrief) pilot = make (demo, FF_READER_PILOT, (FfPaper) paper);
      g_autoptr (FfBrief) camera = make (demo, FF_READER_CAMERA, (FfPaper) paper);

      for (guint i = 0; i < ff_brief_did_not_fit (all)->len; i++)
        fail_msg ("%s", (const char *) g_ptr_array_index (ff_brief_did_not_fit (all), i));
      assert_int_equal (ff_brief_n_pages (pilot), 2);
      assert_int_equal (ff_brief_n_pages (camera), 2);
      assert_int_equal (ff_brief_n_pages (all), 8);
    }
}

static void
test_demo_day_in_words (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autofree char *pilot = NULL, *camera = NULL;

  if (!have_poppler ())
    skip ();
  pilot = text_of (demo, FF_READER_PILOT, FF_PAPER_A4);
  camera = text_of (demo, FF_READER_CAMERA, FF_PAPER_A4);
  check_pilot (pilot, demo);
  check_camera (camera, demo);
  assert_says (pilot, "1 off by 16:30 LAND BY 16:48 battery 1 5 stops ND32");
  assert_says (pilot, "or 18 minutes after off, or at the reserve: whichever comes first.");
  assert_says (pilot, "The aircraft's own reading wins.");
  assert_says (pilot, "□ 12 limits not assessed. Airspace and notices are not known to this "
                      "program. The pilot decides.");
  assert_says (pilot, "Emergency telephone: fill it in.");
  assert_says (pilot, "second landing spot bowling green");
  assert_says (pilot, "gust at flying height at most 9 m/s");
  assert_says (pilot, "Lost link 1 Say “lost link”. The observer keeps it in sight.");
  assert_says (pilot, "Pilot unwell 1 Pilot: say “unwell”");
  assert_says (pilot, "power line along the lane keep clear, never retrieve from it");
  assert_says (pilot, "Marit Ostrander crew lead");
  assert_says (camera, "5 stops ND32 factor 32, density 1.5");
  assert_says (camera, "f/2.8 · 1/60 (150°) → 1/50 (180°) · ISO 100 → 125");
  assert_says (camera, "25 fps · need 2.4 → 1.6 stops · sun 270°, 4° high, behind");
  assert_says (camera, "B and C share a battery");
  assert_says (camera, "good hold no note");
}

/* What makes a page found alone make sense. */
static void
test_frame_is_on_every_page (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfBrief) brief = make (demo, FF_READER_PILOT, FF_PAPER_A4);
  g_autofree char *path = write_brief (brief);

  if (!have_poppler ())
    skip ();
  for (int page = 1; page <= 2; page++)
    {
      g_autofree char *number = g_strdup_printf ("%d", page);
      const char *arguments[]
          = { "pdftotext", "-raw", "-f", number, "-l", number, path, "-", NULL };
      g_autofree char *raw = run_tool (arguments);
      g_autofree char *text = squeeze (raw);

      assert_says (text, "Pilot printed 17:32 Thu page %d of 2 version A", page);
      assert_says (text, "Skarrowick tidal mill · Skarrowick Head · Saturday 18 September 2027");
      assert_says (text, "EXAMPLE, not a place to fly");
      assert_says (text, "Abort word Kestrel");
      assert_says (text, "Emergency, call FILL IN");
      assert_says (text, "Say where FILL IN");
    }
}

static void
test_document_facts (void **state)
{
  static const char *const sizes[] = { "595.276 x 841.89 pts (A4)", "612 x 792 pts (letter)" };
  g_autoptr (FfFixture) demo = ff_fixture_demo ();

  if (!have_poppler ())
    skip ();
  for (int paper = FF_PAPER_A4; paper <= FF_PAPER_LETTER; paper++)
    {
      g_autoptr (FfBrief) brief = make (demo, FF_READER_ALL, (FfPaper) paper);
      g_autofree char *path = write_brief (brief);
      const char *arguments[] = { "pdfinfo", path, NULL };
      g_autofree char *raw = run_tool (arguments);
      g_autofree char *info = squeeze (raw);
      g_autofree char *bytes = NULL;
      gsize size;

      assert_says (info, "Title: Brief: Skarrowick tidal mill, version A");
      assert_says (info, "Pages: 8");
      assert_says (info, "Page size: %s", sizes[paper]);
      assert_true (g_file_get_contents (path, &bytes, &size, NULL));
      assert_non_null (memmem (bytes, size, "/Lang (en)", 10));
      assert_non_null (memmem (bytes, size, "(Camera operator)", 17));
      assert_non_null (memmem (bytes, size, "(Hazards)", 9));
    }
}

static void
test_random_plans_in_words (void **state)
{
  FfTestRandom random = { 1948 };

  if (!have_poppler ())
    skip ();
  for (int round = 0; round < (g_getenv ("FF_LONG") != NULL ? 500 : 60); round++)
    {
      g_autoptr (FfFixture) fixture = ff_fixture_random (&random);
      FfPaper paper = round % 2 == 0 ? FF_PAPER_A4 : FF_PAPER_LETTER;
      g_autofree char *text = text_of (fixture, FF_READER_ALL, paper);
      const char *camera = strstr (text, "Camera operator printed");

      assert_non_null (camera);
      check_camera (camera, fixture);
      text[camera - text] = '\0';
      check_pilot (text, fixture);
    }
}

static void
test_nothing_entered_still_makes_sense (void **state)
{
  g_autoptr (FfFixture) empty = ff_fixture_empty ();
  g_autofree char *text = NULL;

  if (!have_poppler ())
    skip ();
  text = text_of (empty, FF_READER_PILOT, FF_PAPER_A4);
  assert_says (text, "No sortie is planned.");
  assert_says (text, "No limit is entered.");
  assert_says (text, "Abort word FILL IN");
  assert_null (strstr (text, "EXAMPLE"));
  g_free (text);
  text = text_of (empty, FF_READER_CAMERA, FF_PAPER_A4);
  assert_says (text, "filter fitted");
}

static void
test_missed_shots_come_first (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  FfPlanMiss miss = { (char *) "G", (char *) "last-sun line", (char *) "No battery is ready." };
  g_autofree char *text = NULL;

  if (!have_poppler ())
    skip ();
  g_ptr_array_add (demo->plan.missed, &miss);
  text = text_of (demo, FF_READER_PILOT, FF_PAPER_A4);
  assert_says (text, "Not flown G last-sun line No battery is ready.");
  assert_true (strstr (text, "Not flown") < strstr (text, "off by"));
}

static const char *
overflow_of (GPtrArray *did_not_fit, const char *sheet)
{
  for (guint i = 0; i < did_not_fit->len; i++)
    if (g_str_has_prefix (g_ptr_array_index (did_not_fit, i), sheet))
      return g_ptr_array_index (did_not_fit, i);
  fail_msg ("nothing is said of %s", sheet);
  return NULL;
}

/* Forty more shots than a sheet is made for: all are printed, and what went too far is named. The
 * sixteen sorties take the pilot's two pages, so it is what follows them that goes past. */
static void
test_too_much_is_printed_and_said (void **state)
{
  g_autoptr (FfFixture) fixture = ff_fixture_hostile ("mill", 40);
  g_autoptr (FfBrief) brief = make (fixture, FF_READER_ALL, FF_PAPER_A4);
  g_autoptr (FfBrief) pilot = make (fixture, FF_READER_PILOT, FF_PAPER_A4);
  GPtrArray *did_not_fit = ff_brief_did_not_fit (brief);
  g_autofree char *text = NULL;

  assert_int_equal (ff_brief_n_pages (pilot), 4);
  assert_string_equal (overflow_of (did_not_fit, "Pilot: "),
                       "Pilot: 4 pages instead of 2; on the further pages: who may speak to me, "
                       "airspace, wind, sun and limits, the emergency card, hazards, amendments; no "
                       "paper holds it; fewer lines would");
  assert_says (overflow_of (did_not_fit, "Camera operator: "), "the camera sheet to fill in");
  if (!have_poppler ())
    skip ();
  text = text_of (fixture, FF_READER_PILOT, FF_PAPER_A4);
  check_pilot (text, fixture);
  for (int i = 1; i <= 40; i++)
    assert_says (text, "S%d mill", i);
  assert_says (text, "page 4 of 4");
  assert_says (text, "16 off by");
}

/* What would bring a sheet back to its pages is tried before it is said. */
static void
test_what_would_fit_is_said (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfBrief) brief
      = ff_brief_gather (&demo->facts, &demo->plan, FF_READER_PILOT, FF_PAPER_A4, NULL);

  ff_brief_bind (brief, 20);
  assert_true (ff_brief_lay_out (brief, &demo->facts, NULL));
  assert_int_equal (ff_brief_did_not_fit (brief)->len, 1);
  assert_true (g_str_has_suffix (g_ptr_array_index (ff_brief_did_not_fit (brief), 0),
                                 "; without room to bind it would fit"));
}

/* A script that no font here has is said; one that is there can be read off the paper. */
static void
test_letters_without_a_font_are_said (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfBrief) before = make (demo, FF_READER_PILOT, FF_PAPER_A4);
  g_autoptr (FfBrief) brief = NULL;

  assert_int_equal (ff_brief_did_not_fit (before)->len, 0);
  /* A letter of the last plane for private use: in no font. */
  demo->facts.takeoff_spot = (char *) "\364\217\277\275";
  brief = make (demo, FF_READER_PILOT, FF_PAPER_A4);
  assert_int_equal (ff_brief_did_not_fit (brief)->len, 1);
  assert_string_equal (g_ptr_array_index (ff_brief_did_not_fit (brief), 0),
                       "Pilot: no font here has 1 of its letters, which stands as a box; install a "
                       "font for its script");
}

/* ---- What is printed besides the readers' sheets ---- */

/* The facts of a fixture with every list that comes with the program, and a pack list of `n` items. */
static void
add_books (FfFixture *fixture, GPtrArray *book, const char *text, guint n)
{
  static FfSheetPackItem item;

  for (guint i = 0; i < ff_n_starter_lists; i++)
    g_ptr_array_add (book, ff_checklist_parse (ff_starter_lists[i].text, NULL));
  fixture->facts.lists = book;
  fixture->facts.conditions = ~0u;
  item = (FfSheetPackItem) { (char *) text, (char *) text, (char *) text, (char *) text };
  fixture->facts.pack = g_ptr_array_new ();
  fixture->facts.pack_short = g_ptr_array_new ();
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (fixture->facts.pack, &item);
}

static FfBrief *
make_more (const FfFixture *fixture, FfPaper paper, FfBriefMore more)
{
  FfBrief *brief = ff_brief_gather_with (&fixture->facts, &fixture->plan, FF_READER_CLIENT, paper,
                                         more, NULL);

  assert_non_null (brief);
  assert_true (ff_brief_lay_out (brief, &fixture->facts, NULL));
  return brief;
}

static char *
text_of_more (const FfFixture *fixture, FfPaper paper, FfBriefMore more)
{
  g_autoptr (FfBrief) brief = make_more (fixture, paper, more);
  g_autofree char *path = write_brief (brief);
  const char *arguments[] = { "pdftotext", "-raw", "-enc", "UTF-8", path, "-", NULL };
  g_autofree char *text = run_tool (arguments);

  return squeeze (text);
}

/* A slip for each landing says which battery goes out and which comes in, for any plan. */
static void
test_slips_follow_the_plan (void **state)
{
  FfTestRandom random = { 509 };

  if (!have_poppler ())
    skip ();
  for (int round = 0; round < (g_getenv ("FF_LONG") != NULL ? 500 : 20); round++)
    {
      g_autoptr (FfFixture) fixture = ff_fixture_random (&random);
      const GPtrArray *lines = fixture->plan.lines;
      g_autofree char *text = text_of_more (fixture, (FfPaper) (round % 2), FF_BRIEF_SLIPS);

      for (guint i = 0; i < lines->len; i++)
        {
          const FfPlanLine *line = g_ptr_array_index (lines, i);
          const FfPlanLine *next = i + 1 < lines->len ? g_ptr_array_index (lines, i + 1) : NULL;
          g_autofree char *land_by
              = ff_instant_clock ((double) line->land_by, fixture->facts.zone);

          assert_says (text, "After sortie %d, land by %s", line->line, land_by);
          assert_says (text, "battery %s out", line->battery);
          if (next != NULL)
            assert_says (text, "battery %s in, latch pulled", next->battery);
        }
    }
}

/* Every item of every list stands on paper, in the order of the screen, with its version. */
static void
test_lists_are_the_same_on_paper (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (GPtrArray) book = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_checklist_free);
  g_autoptr (FfBrief) brief = NULL;
  g_autofree char *text = NULL;
  const char *at;

  add_books (demo, book, "case", 0);
  brief = make_more (demo, FF_PAPER_LETTER, FF_BRIEF_LISTS);
  assert_int_equal (ff_brief_did_not_fit (brief)->len, 0);
  if (!have_poppler ())
    skip ();
  text = text_of_more (demo, FF_PAPER_A4, FF_BRIEF_LISTS);
  at = text;
  for (guint i = 0; i < book->len; i++)
    {
      const FfChecklist *list = g_ptr_array_index (book, i);
      g_autofree char *version = g_strdup_printf ("List version %s, %s", list->version, list->date);

      at = strstr (at, version);
      assert_non_null (at);
      for (guint s = 0; s < list->sections->len; s++)
        {
          const FfCheckSection *section = g_ptr_array_index (list->sections, s);

          for (guint n = 0; n < section->items->len; n++)
            {
              const FfCheckItem *item = g_ptr_array_index (section->items, n);
              g_auto (GStrv) words = g_strsplit (item->challenge, " ", 2);

              at = strstr (at, words[0]);
              if (at == NULL)
                fail_msg ("“%s” does not follow in %s", item->challenge, list->title);
            }
        }
    }
}

/* A list needs no job to be printed; what nobody has entered is a line to write on. */
static void
test_a_list_prints_without_a_job (void **state)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autoptr (FfSheetFacts) facts = ff_sheet_facts_blank (0, zone);
  g_autoptr (FfChecklist) list = ff_checklist_parse (
      "# Van pack\n\n## Power\n\n- [ ] Batteries: charged\n- [ ] Cold: packed\n", NULL);
  g_autoptr (FfBrief) brief = NULL;
  g_autofree char *path = NULL, *raw = NULL, *text = NULL;

  facts->lists = g_ptr_array_new ();
  g_ptr_array_add (facts->lists, list);
  facts->conditions = ~0u;
  brief = ff_brief_new_lists (facts, FF_PAPER_A4, NULL);
  g_assert (brief != NULL);
  assert_string_equal (ff_brief_title (brief), "Van pack");
  assert_int_equal (ff_brief_n_pages (brief), 1);
  if (!have_poppler ())
    skip ();
  path = write_brief (brief);
  raw = run_tool ((const char *[]){ "pdftotext", "-raw", "-enc", "UTF-8", path, "-", NULL });
  text = squeeze (raw);
  assert_says (text, "Van pack Printed 00:00 Thu page 1 of 1");
  assert_says (text, "Abort word FILL IN");
  assert_says (text, "Batteries charged");
  assert_says (text, "Power complete");
}

/* Numbered, the sentence of each role, who has read it; and room for those to come. */
static void
test_amendments_are_read_by_role (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  FfSheetSentence said[] = { { FF_ROLE_PILOT, (char *) "line 4, off 18:18 not 17:38",
                               (char *) "JV" },
                             { FF_ROLE_CAMERA, (char *) "line 4, keep 5 stops", (char *) "" } };
  FfSheetAmendment amendment = { 3, (char *) "17:02", g_ptr_array_new () };
  g_autofree char *text = NULL, *none = NULL;

  if (!have_poppler ())
    skip ();
  none = text_of_more (demo, FF_PAPER_A4, FF_BRIEF_AMENDMENTS);
  assert_says (none, "No amendment stands beside the sheets.");
  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    g_ptr_array_add (amendment.sentences, &said[i]);
  g_ptr_array_add (demo->facts.amendments, &amendment);
  text = text_of_more (demo, FF_PAPER_LETTER, FF_BRIEF_AMENDMENTS);
  assert_says (text, "3 made 17:02, beside version A pilot line 4, off 18:18 not 17:38 JV "
                     "camera operator line 4, keep 5 stops");
  assert_says (text, "To write in no. for whom");
  g_ptr_array_unref (amendment.sentences);
}

/* What the lead decides by when it gets late: the order of giving up, and what each line has left. */
static void
test_lead_sees_what_gives_way (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  FfCases *cases = g_new0 (FfCases, 1);
  FfLineSlip slips[] = { { .line = 1, .room_minutes = 22, .light_holds_late = TRUE },
                         { .line = 2, .room_minutes = 3, .light_holds_cloud = TRUE } };
  g_autofree char *text = NULL;

  cases->bag = ff_bag_new ();
  cases->slips = g_ptr_array_new ();
  ff_bag_add (cases->bag->needed, "f5", "ND32", FF_KIND_FILTER, "the plan: A, B");
  ff_bag_add (cases->bag->in_case, "f3", "ND8", FF_KIND_FILTER, "thin cloud: F");
  ff_bag_add (cases->bag->in_case, "b6", "b6", FF_KIND_BATTERY, "30 min late");
  for (guint i = 0; i < G_N_ELEMENTS (slips); i++)
    g_ptr_array_add (cases->slips, &slips[i]);
  demo->plan.cases = cases;
  demo->facts.drop_first = (char *) "Drop first: D; then H, F; G last.";
  if (have_poppler ())
    {
      text = text_of (demo, FF_READER_LEAD, FF_PAPER_A4);
      assert_says (text, "Drop first: D; then H, F; G last.");
      assert_says (text, "1 16:30, land by 16:48 battery 1 5 stops A room 22 min");
      assert_says (text, "2 17:08, land by 17:26 battery 2 5 stops B C room 3 min");
      assert_says (text, "does not hold 15 min later: lines 2; under a stop of cloud: lines 1.");
      assert_says (text, "filters needed ND32 the plan: A, B in case ND8 thin cloud: F cards");
    }
  g_ptr_array_unref (cases->slips);
  ff_bag_free (cases->bag);
  g_free (cases);
}

static void
test_pack_list_is_by_case (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (GPtrArray) book = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_checklist_free);
  g_autofree char *text = NULL;

  add_books (demo, book, "grey", 9);
  if (!have_poppler ())
    skip ();
  text = text_of_more (demo, FF_PAPER_A4, FF_BRIEF_PACK);
  assert_says (text, "Case grey 9 items");
  assert_says (text, "Pack list printed");
}

/* Whatever was typed, nothing is drawn outside the margins. */
static void
check_layout (const FfBrief *brief)
{
  double width, height;

  ff_brief_page_size (brief, &width, &height);
  for (guint page = 0; page < ff_brief_n_pages (brief); page++)
    {
      cairo_rectangle_t ink;
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);

      ff_brief_draw_page (brief, cr, page);
      assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
      cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
      assert_true (ink.x >= FF_LEAF_MARGIN - 4 && ink.y >= FF_LEAF_MARGIN - 4);
      assert_true (ink.x + ink.width <= width - FF_LEAF_MARGIN + 4);
      assert_true (ink.y + ink.height <= height - FF_LEAF_MARGIN + 4);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

static void
test_nothing_leaves_the_margins (void **state)
{
  static const char *const texts[] = { "mill", "מגדל המים ליד הנמל", "港の上からの眺め", "", NULL };
  g_autofree char *word = g_strnfill (200, 'W');

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      const char *text = texts[i] != NULL ? texts[i] : word;
      const FfPaper paper = i % 2 == 0 ? FF_PAPER_A4 : FF_PAPER_LETTER;
      g_autoptr (FfFixture) fixture = ff_fixture_hostile (text, 40);
      g_autoptr (GPtrArray) book
          = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_checklist_free);
      g_autoptr (FfBrief) brief = NULL;

      add_books (fixture, book, text, 12);
      g_ptr_array_add (fixture->facts.pack_short, (char *) text);
      brief = ff_brief_gather_with (&fixture->facts, &fixture->plan, FF_READER_ALL, paper,
                                    FF_BRIEF_LISTS | FF_BRIEF_SLIPS | FF_BRIEF_PACK, NULL);
      assert_true (ff_brief_lay_out (brief, &fixture->facts, NULL));
      check_layout (brief);
    }
}

/* Text from right to left must not turn round the times beside it. */
static void
test_any_script_leaves_times_alone (void **state)
{
  static const char *const texts[] = {
    "מגדל המים ליד הנמל",
    "برج المياه عند الميناء ١٢",
    "港の上からの眺め",
    "\342\200\256gnola dnuor eht yaw \342\201\246",
    "a\n\tb\r\001\033[31m c",
    "\377\376 not UTF-8",
    "<b>&amp;%s%n</b>",
    "",
  };

  if (!have_poppler ())
    skip ();
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (FfFixture) fixture = ff_fixture_hostile (texts[i], 8);
      g_autofree char *pilot = text_of (fixture, FF_READER_PILOT, FF_PAPER_A4);
      g_autofree char *camera = text_of (fixture, FF_READER_CAMERA, FF_PAPER_LETTER);

      assert_says (pilot, "off by 07:58 LAND BY 08:42");
      assert_says (pilot, "or off + 44 min");
      assert_says (camera, "08:00–08:09");
      assert_says (camera, "f/2.8 · 1/50 (180°) → 1/40 (225°) · ISO 100 → 160");
    }
}

static void
test_very_long_text_is_all_there (void **state)
{
  g_autofree char *word = g_strnfill (3000, 'w');
  FfPlanTake *take;
  g_autoptr (FfFixture) fixture = ff_fixture_hostile ("w", 1);
  FfPlanLine *line = g_ptr_array_index (fixture->plan.lines, 6);
  g_autofree char *before = NULL, *after = NULL;
  gsize n_before = 0, n_after = 0;

  if (!have_poppler ())
    skip ();
  before = text_of (fixture, FF_READER_PILOT, FF_PAPER_A4);
  take = g_ptr_array_index (line->takes, 0);
  take->title = word;
  after = text_of (fixture, FF_READER_PILOT, FF_PAPER_A4);
  /* Words of the frame hold some too, once a page: compared per page they cancel out. */
  for (const char *p = before; *p != '\0'; p++)
    n_before += *p == 'w';
  for (const char *p = after; *p != '\0'; p++)
    n_after += *p == 'w';
  assert_true (n_after >= n_before + 2999);
}

static void
test_emergency_text_that_is_cut_is_said (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autofree char *location = g_strnfill (2000, 'x');
  g_autoptr (FfBrief) brief = NULL;

  demo->facts.emergency_location = location;
  brief = make (demo, FF_READER_PILOT, FF_PAPER_A4);
  assert_says (g_ptr_array_index (ff_brief_did_not_fit (brief),
                                  ff_brief_did_not_fit (brief)->len - 1),
               "the emergency text is longer than the foot of the page");
}

/* Each has the pages that its reader can hold, and nothing that is not for that reader. */
static void
test_every_reader_has_a_sheet (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  static const struct {
    FfReader reader;
    guint pages;
    const char *says, *never;
  } cases[] = {
    { FF_READER_LEAD, 2, "Count by case", NULL },
    { FF_READER_OBSERVER, 1, "BACK BY", "stops" },
    { FF_READER_OBSERVER, 1, "Kestrel", "Harbour Trust" },
    { FF_READER_CLIENT, 1, "Clear the area", "battery" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FfBrief) brief = make (demo, cases[i].reader, FF_PAPER_A4);
      g_autofree char *text = NULL;

      assert_true (ff_brief_has_sheet (cases[i].reader));
      assert_int_equal (ff_brief_n_pages (brief), cases[i].pages);
      if (!have_poppler ())
        continue;
      text = text_of (demo, cases[i].reader, FF_PAPER_A4);
      assert_says (text, "%s", cases[i].says);
      if (cases[i].never != NULL)
        assert_null (strstr (text, cases[i].never));
    }
}

static guint
count_files (void)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  g_dir_close (dir);
  return n;
}

static void
refuse_to_write (const FfBrief *brief, const char *path)
{
  g_autoptr (GError) error = NULL;
  guint before = count_files ();

  assert_false (ff_brief_write_pdf (brief, path, &error));
  assert_error (error, FF_ERROR_OUTPUT, "can't be written");
  assert_int_equal (count_files (), before);
}

static void
test_a_file_that_cant_be_written_leaves_nothing (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfBrief) brief = make (demo, FF_READER_ALL, FF_PAPER_A4);
  g_autofree char *plain = g_build_filename (folder, "plain", NULL);
  g_autofree char *below = g_build_filename (plain, "brief.pdf", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "none", "brief.pdf", NULL);
  struct rlimit limit, small;

  assert_true (g_file_set_contents (plain, "kept", -1, NULL));
  refuse_to_write (brief, "/dev/full");
  refuse_to_write (brief, below);
  refuse_to_write (brief, nowhere);
  refuse_to_write (brief, folder);

  /* A disk that fills up while the file grows; the one that stood there stays. */
  signal (SIGXFSZ, SIG_IGN);
  assert_int_equal (getrlimit (RLIMIT_FSIZE, &limit), 0);
  small = limit;
  small.rlim_cur = 4096;
  assert_int_equal (setrlimit (RLIMIT_FSIZE, &small), 0);
  refuse_to_write (brief, plain);
  assert_int_equal (setrlimit (RLIMIT_FSIZE, &limit), 0);
  {
    g_autofree char *text = NULL;

    assert_true (g_file_get_contents (plain, &text, NULL, NULL));
    assert_string_equal (text, "kept");
  }
}

static void
test_a_file_that_exists_is_replaced (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfBrief) brief = make (demo, FF_READER_ALL, FF_PAPER_A4);
  g_autofree char *target = g_build_filename (folder, "target.pdf", NULL);
  g_autofree char *link = g_build_filename (folder, "link.pdf", NULL);
  g_autofree char *text = NULL;

  assert_true (g_file_set_contents (target, "old", -1, NULL));
  assert_int_equal (symlink (target, link), 0);
  assert_true (ff_brief_write_pdf (brief, link, NULL));
  assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_true (g_file_get_contents (target, &text, NULL, NULL));
  assert_true (g_str_has_prefix (text, "%PDF-1.4"));
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  return 0;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_no_font_is_an_error),
    cmocka_unit_test (test_demo_day_fits_its_pages),
    cmocka_unit_test (test_demo_day_in_words),
    cmocka_unit_test (test_frame_is_on_every_page),
    cmocka_unit_test (test_document_facts),
    cmocka_unit_test (test_random_plans_in_words),
    cmocka_unit_test (test_nothing_entered_still_makes_sense),
    cmocka_unit_test (test_missed_shots_come_first),
    cmocka_unit_test (test_too_much_is_printed_and_said),
    cmocka_unit_test (test_what_would_fit_is_said),
    cmocka_unit_test (test_letters_without_a_font_are_said),
    cmocka_unit_test (test_slips_follow_the_plan),
    cmocka_unit_test (test_lists_are_the_same_on_paper),
    cmocka_unit_test (test_a_list_prints_without_a_job),
    cmocka_unit_test (test_amendments_are_read_by_role),
    cmocka_unit_test (test_lead_sees_what_gives_way),
    cmocka_unit_test (test_pack_list_is_by_case),
    cmocka_unit_test (test_nothing_leaves_the_margins),
    cmocka_unit_test (test_any_script_leaves_times_alone),
    cmocka_unit_test (test_very_long_text_is_all_there),
    cmocka_unit_test (test_emergency_text_that_is_cut_is_said),
    cmocka_unit_test (test_every_reader_has_a_sheet),
    cmocka_unit_test (test_a_file_that_cant_be_written_leaves_nothing),
    cmocka_unit_test (test_a_file_that_exists_is_replaced),
  };

  return cmocka_run_group_tests_name ("sheets", tests, set_up, tear_down);
}
