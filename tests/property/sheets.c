/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Jobs at random in a store, printed: what the records say is what the sheets say, on the sheets of
 * those who need it; no sheet goes over its pages unsaid, no ink leaves the margins, no word is too
 * small to read. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-brief.h"
#include "ff-civil.h"
#include "ff-crew.h"
#include "ff-day-records.h"
#include "ff-demo.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-leaf.h"
#include "ff-limit.h"
#include "ff-number.h"
#include "ff-place.h"
#include "ff-records.h"
#include "ff-sheets.h"
#include "ff-shot.h"
#include "ff-standing.h"
#include "ff-store.h"

#define PRINTED_AT G_GINT64_CONSTANT (1821000000)

typedef struct {
  FfStore *store;
  FfDay *day;
  FfDayPlan *plan;
  FfSheetFacts *facts;
  FfJob *job; /* as the store gives it back, and the next ones */
  FfPlace *place;
  GPtrArray *crew, *limits, *shots, *items;
} World;

static char *folder;

/* ---- Jobs ---- */

/* Long names, scripts from right to left and wide ones, a plain one, nothing at all. */
static char *
random_name (FfTestRandom *random, gboolean may_be_empty)
{
  static const char *const names[] = {
    "mill", "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch", "מגדל המים ליד הנמל",
    "برج المياه عند الميناء", "港の上からの眺め", "O0 l1 I|", "north gate, by the second lamp",
    "<b>&amp;%s", "a rather long name that somebody typed on a rainy afternoon",
  };

  if (may_be_empty && ff_test_random_int (random, 0, 4) == 0)
    return g_strdup ("");
  return g_strdup (names[ff_test_random_int (random, 0, (int) G_N_ELEMENTS (names) - 1)]);
}

/* A word or a number as the foot of a page has room for; that a longer one is said, unit/sheets holds. */
static void
rename_short (FfTestRandom *random, char **text)
{
  static const char *const words[] = { "", "112", "00 44 20 7946 0999", "Kestrel", "עצור" };

  g_free (*text);
  *text = g_strdup (words[ff_test_random_int (random, 0, (int) G_N_ELEMENTS (words) - 1)]);
}

static void
rename_text (FfTestRandom *random, char **text, gboolean may_be_empty)
{
  g_free (*text);
  *text = random_name (random, may_be_empty);
}

static void
change_place (FfTestRandom *random, FfStore *store, const char *id)
{
  g_autoptr (FfPlace) place = ff_place_load (store, id, NULL);
  char **texts[] = { &place->takeoff_spot, &place->second_spot, &place->observer_post,
                     &place->second_post, &place->emergency_location };

  g_assert (place != NULL);
  rename_text (random, &place->name, FALSE);
  rename_short (random, &place->emergency_phone);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    rename_text (random, texts[i], TRUE);
  g_ptr_array_set_size (place->hazards, 0);
  for (int n = ff_test_random_int (random, 0, 7); n > 0; n--)
    {
      FfHazard *hazard = ff_hazard_new ();

      rename_text (random, &hazard->what, FALSE);
      rename_text (random, &hazard->measure, TRUE);
      g_ptr_array_add (place->hazards, hazard);
    }
  assert_true (ff_place_save (store, place, NULL));
}

static void
change_job (FfTestRandom *random, FfStore *store, const char *id)
{
  g_autoptr (FfJob) job = ff_job_load (store, id, NULL);

  g_assert (job != NULL);
  rename_text (random, &job->title, FALSE);
  rename_text (random, &job->client, TRUE);
  rename_short (random, &job->abort_word);
  job->example = ff_test_random_int (random, 0, 1);
  job->wind_from_deg = ff_test_random_int (random, 0, 359);
  job->wind_ms = ff_test_random_int (random, 0, 5);
  job->gust_ms = job->wind_ms + ff_test_random_int (random, 0, 5);
  job->sky = ff_test_random_int (random, 0, FF_SKY_OVERCAST);
  assert_true (ff_job_save (store, job, NULL));
  change_place (random, store, job->place_id);
}

static void
change_crew (FfTestRandom *random, FfStore *store, const char *job_id)
{
  g_autoptr (GPtrArray) crew = ff_job_crew_load (store, job_id, NULL);

  for (guint i = 0; i < crew->len; i++)
    {
      g_autoptr (FfMember) member
          = ff_member_load (store, ((FfMember *) g_ptr_array_index (crew, i))->id, NULL);

      g_assert (member != NULL);
      rename_text (random, &member->name, FALSE);
      assert_true (ff_member_save (store, member, NULL));
    }
}

/* Some of the gear is not to be used. */
static void
change_gear (FfTestRandom *random, FfStore *store)
{
  static const char *const labels[] = { "ND8", "b3", "C3", NULL };
  g_autoptr (GPtrArray) items = ff_items_load (store, NULL);

  for (guint i = 0; i < items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (items, i);

      if (item->state == FF_STATE_SERVICEABLE && g_strv_contains (labels, item->label)
          && ff_test_random_int (random, 0, 3) == 0)
        assert_true (ff_item_set_state (store, item->id, FF_STATE_QUARANTINED, "dropped", NULL,
                                        NULL, NULL, PRINTED_AT, NULL));
    }
}

static void
change_limits (FfTestRandom *random, FfStore *store)
{
  g_autoptr (GPtrArray) limits = ff_limits_load (store, NULL);

  for (guint i = 0; i < limits->len; i++)
    {
      FfLimit *limit = g_ptr_array_index (limits, i);

      if (ff_test_random_int (random, 0, 3) == 0)
        {
          assert_true (ff_limit_delete (store, limit->id, NULL));
          continue;
        }
      if (strcmp (limit->kind, "visibility") == 0 || ff_test_random_int (random, 0, 1) == 0)
        rename_text (random, &limit->text, FALSE);
      if (limit->compare == FF_COMPARE_AT_MOST && ff_test_random_int (random, 0, 1) == 0)
        {
          limit->compare = FF_COMPARE_BETWEEN;
          limit->value_to = limit->value + ff_test_random_int (random, 1, 40);
        }
      assert_true (ff_limit_save (store, limit, NULL));
    }
}

/* Shots are renamed, some are gone; now and then there are forty. */
static void
change_shots (FfTestRandom *random, FfStore *store, const char *job_id)
{
  g_autoptr (GPtrArray) shots = ff_shots_load (store, job_id, NULL);
  const int more = ff_test_random_int (random, 0, 19) == 0 ? 32 : 0;

  for (guint i = 0; i < shots->len; i++)
    {
      FfShot *shot = g_ptr_array_index (shots, i);

      rename_text (random, &shot->title, FALSE);
      rename_text (random, &shot->note, TRUE);
      rename_text (random, &shot->track, TRUE);
      if (ff_test_random_int (random, 0, 5) == 0)
        assert_true (ff_shot_delete (store, shot->id, NULL));
      else
        assert_true (ff_shot_save (store, shot, NULL));
    }
  for (int i = 0; i < more; i++)
    {
      g_autoptr (FfShot) shot = ff_shot_new (job_id);

      g_free (shot->label);
      shot->label = g_strdup_printf ("S%d", i);
      rename_text (random, &shot->title, FALSE);
      shot->minutes = 2;
      shot->window_from = 16 * 60 + 30 + 5 * i;
      shot->window_to = shot->window_from + 30;
      shot->position = 20 + i;
      assert_true (ff_shot_save (store, shot, NULL));
    }
}

static void
world_free (World *world)
{
  g_ptr_array_unref (world->crew);
  g_ptr_array_unref (world->limits);
  g_ptr_array_unref (world->items);
  g_ptr_array_unref (world->shots);
  ff_place_free (world->place);
  ff_job_free (world->job);
  ff_sheet_facts_free (world->facts);
  ff_day_plan_free (world->plan);
  ff_day_free (world->day);
  ff_store_close (world->store);
  g_free (world);
}

/* A store of its own with a random job, and what is printed of it. */
static World *
world_new (FfTestRandom *random, int round)
{
  World *world = g_new0 (World, 1);
  g_autofree char *name = g_strdup_printf ("%d", round);
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;

  world->store = ff_records_open (path, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_true (ff_demo_fill (world->store, &error));
  id = ff_job_find (world->store, "Skarrowick", &error);
  change_job (random, world->store, id);
  change_crew (random, world->store, id);
  change_limits (random, world->store);
  change_gear (random, world->store);
  change_shots (random, world->store, id);
  world->job = ff_job_load (world->store, id, NULL);
  world->place = ff_place_load (world->store, world->job->place_id, NULL);
  world->crew = ff_job_crew_load (world->store, id, NULL);
  world->limits = ff_limits_load (world->store, NULL);
  world->items = ff_items_load (world->store, NULL);
  world->shots = ff_shots_load (world->store, id, NULL);
  world->day = ff_day_load (world->store, id, &error);
  assert_no_error (error);
  world->plan = ff_day_plan (world->day, NULL, &error);
  assert_no_error (error);
  world->facts = ff_sheet_facts (world->day, world->plan, PRINTED_AT);
  assert_true (ff_sheet_facts_read_lists (world->facts, world->store, world->day, &error));
  return world;
}

/* ---- What stands on paper ---- */

/* Without blanks, which lines break at, and without marks of direction; pages end with \f. */
static char *
packed (const char *text)
{
  GString *letters = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if ((c == '\f' || !g_unichar_isspace (c)) && !(c >= 0x2066 && c <= 0x2069)
          && !(c >= 0x202a && c <= 0x202e))
        g_string_append_unichar (letters, c);
    }
  return g_string_free (letters, FALSE);
}

static char *
text_on (const World *world, FfReader reader, FfPaper paper)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfBrief) brief = ff_brief_new (world->facts, world->plan, reader, paper, &error);
  g_autofree char *path = g_build_filename (folder, "sheet.pdf", NULL);
  char *arguments[]
      = { (char *) "pdftotext", (char *) "-raw", (char *) "-enc", (char *) "UTF-8", path,
          (char *) "-", NULL };
  g_autofree char *text = NULL;
  int status = -1;

  assert_no_error (error);
  assert_true (ff_brief_write_pdf (brief, path, &error));
  assert_true (g_spawn_sync (NULL, arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &text, NULL,
                             &status, NULL));
  assert_int_equal (status, 0);
  return packed (text);
}

/* Hebrew and Arabic, or wide letters. Readers of PDF put words from right to left and joined letters
 * in an order of their own; for wide ones there may be no font, which unit/sheets holds to be said.
 * Of such a text only that it is no obstacle is held here. */
static gboolean
is_beyond_reading (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);

      if ((c >= 0x0590 && c <= 0x06ff) || c >= 0x2e80)
        return TRUE;
    }
  return FALSE;
}

/* Whether a text that goes on over the end of a page stands there: its end is behind the frame of
 * the next page. */
static gboolean
is_parted (const char *sheet, const char *part)
{
  for (const char *end = strchr (sheet, '\f'); end != NULL; end = strchr (end + 1, '\f'))
    for (const char *cut = g_utf8_next_char (part); *cut != '\0'; cut = g_utf8_next_char (cut))
      {
        const gsize before = (gsize) (cut - part);
        const char *next = strchr (end + 1, '\f');

        if ((gsize) (end - sheet) >= before && strncmp (end - before, part, before) == 0
            && g_strstr_len (end + 1, next != NULL ? next - end - 1 : -1, cut) != NULL)
          return TRUE;
      }
  return FALSE;
}

static void
assert_says (const char *sheet, const char *text)
{
  g_autofree char *part = packed (text);

  if (!is_beyond_reading (text) && strstr (sheet, part) == NULL && !is_parted (sheet, part))
    fail_msg ("the sheet does not say “%s”: %s", part, sheet);
}

static void
assert_says_bound (const char *sheet, const FfLimit *limit)
{
  g_autofree char *text = packed (limit->text);
  const double ends[] = { limit->value, limit->value_to };
  const char *at = strstr (sheet, text);

  assert_says (sheet, limit->text);
  at = at != NULL ? at : sheet;
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_autofree char *number = limit->compare == FF_COMPARE_BY_TIME
                                    ? ff_clock_format ((int) ends[i])
                                    : ff_number_format (ends[i], 2);

      if (!isnan (ends[i]) && strstr (at, number) == NULL)
        fail_msg ("“%s” lacks %s: %s", text, number, sheet);
    }
}

/* What every page says. */
static void
check_frame (const char *sheet, const World *world)
{
  assert_says (sheet, world->job->title);
  assert_says (sheet, world->place->name);
  assert_says (sheet, world->job->abort_word);
  assert_says (sheet, world->place->emergency_phone);
  assert_says (sheet, world->place->emergency_location);
  assert_says (sheet, world->job->example ? "EXAMPLE, not a place to fly" : "");
}

static void
check_pilot (const char *sheet, const World *world)
{
  check_frame (sheet, world);
  assert_says (sheet, world->place->takeoff_spot);
  assert_says (sheet, world->place->second_spot);
  for (guint i = 0; i < world->limits->len; i++)
    assert_says_bound (sheet, g_ptr_array_index (world->limits, i));
  for (guint i = 0; i < world->place->hazards->len; i++)
    {
      const FfHazard *hazard = g_ptr_array_index (world->place->hazards, i);

      assert_says (sheet, hazard->what);
      assert_says (sheet, hazard->measure);
    }
  for (guint i = 0; i < world->plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (world->plan->lines, i);
      g_autofree char *off = ff_instant_clock ((double) line->off_by, world->facts->zone);
      g_autofree char *land = ff_instant_clock ((double) line->land_by, world->facts->zone);
      g_autofree char *times = g_strdup_printf ("off by %s LAND BY %s", off, land);

      assert_says (sheet, times);
    }
}

/* The record of a shot by its label. */
static const FfShot *
record_of (const World *world, const char *label)
{
  for (guint i = 0; i < world->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (world->shots, i);

      if (strcmp (shot->label, label) == 0)
        return shot;
    }
  fail_msg ("no shot %s in the store", label);
  return NULL;
}

/* Each shot of the store stands there once: flown with its title and note, or named as not flown. */
static void
check_shots (const char *camera, const char *pilot, const World *world)
{
  guint n_flown = 0;

  for (guint i = 0; i < world->plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (world->plan->lines, i);

      n_flown += line->takes->len;
      for (guint t = 0; t < line->takes->len; t++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, t);
          const FfShot *shot = record_of (world, take->shot);

          assert_says (camera, shot->title);
          assert_says (camera, shot->note);
          assert_says (pilot, shot->title);
        }
    }
  for (guint i = 0; i < world->plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (world->plan->missed, i);

      assert_says (pilot, "Not flown");
      assert_says (pilot, record_of (world, miss->shot)->title);
    }
  assert_int_equal (n_flown + world->plan->missed->len, world->shots->len);
}

static void
check_defects (const char *sheet, const World *world)
{
  for (guint i = 0; i < world->items->len; i++)
    {
      const FfItem *item = g_ptr_array_index (world->items, i);
      g_autofree char *defect = g_strdup_printf ("%s quarantined: dropped", item->label);

      if (item->state == FF_STATE_QUARANTINED && g_str_equal (item->state_why, "dropped"))
        assert_says (sheet, defect);
    }
}

static void
check_lead (const char *sheet, const World *world)
{
  check_frame (sheet, world);
  assert_says (sheet, world->job->client);
  check_defects (sheet, world);
  for (guint i = 0; i < world->crew->len; i++)
    assert_says (sheet, ((const FfMember *) g_ptr_array_index (world->crew, i))->name);
  for (guint i = 0; i < world->limits->len; i++)
    assert_says_bound (sheet, g_ptr_array_index (world->limits, i));
}

static void
check_observer (const char *sheet, const World *world)
{
  g_autofree char *height = NULL;
  double highest = 0;

  check_frame (sheet, world);
  assert_says (sheet, world->place->observer_post);
  for (guint i = 0; i < MIN (world->place->hazards->len, 5); i++)
    assert_says (sheet, ((const FfHazard *) g_ptr_array_index (world->place->hazards, i))->what);
  for (guint i = 0; i < world->shots->len; i++)
    highest = MAX (highest, ((const FfShot *) g_ptr_array_index (world->shots, i))->height_to_m);
  height = g_strdup_printf ("up to %.0f m high", highest);
  assert_says (sheet, height);
}

/* ---- How it stands there ---- */

static void
check_sizes (FfSheet *taken)
{
  g_autoptr (FfSheet) sheet = taken;

  for (guint b = 0; b < sheet->blocks->len; b++)
    {
      const FfSheetBlock *block = g_ptr_array_index (sheet->blocks, b);

      for (guint c = 0; c < block->cells->len; c++)
        {
          const FfCell *cell = g_ptr_array_index (block->cells, c);

          for (guint t = 0; t < cell->texts->len; t++)
            {
              const GArray *runs = ((FfText *) g_ptr_array_index (cell->texts, t))->runs;

              for (guint r = 0; r < runs->len; r++)
                assert_true (g_array_index (runs, FfRun, r).size >= 11);
            }
        }
    }
}

static void
check_all_sizes (const World *world)
{
  g_autoptr (GPtrArray) lists = g_ptr_array_new ();

  check_sizes (ff_lead_sheet (world->facts, world->plan));
  check_sizes (ff_pilot_sheet (world->facts, world->plan));
  check_sizes (ff_camera_sheet (world->facts, world->plan));
  check_sizes (ff_observer_sheet (world->facts, world->plan));
  check_sizes (ff_client_sheet (world->facts, world->plan));
  check_sizes (ff_slip_sheet (world->facts, world->plan));
  check_sizes (ff_spoken_sheet (world->facts, world->plan));
  check_sizes (ff_amendments_sheet (world->facts));
  ff_list_sheets_add (lists, world->facts);
  for (guint i = 0; i < lists->len; i++)
    check_sizes (g_ptr_array_index (lists, i));
}

/* Pages beyond what a sheet may have are never silent, and nothing else is said to be too long. */
static void
check_pages (const FfBrief *brief)
{
  static const struct {
    const char *sheet;
    guint pages;
  } most[] = { { "Crew lead", 2 }, { "Pilot", 2 }, { "Camera operator", 2 }, { "Observer", 1 },
               { "Client and cast", 1 } };

  for (guint i = 0; i < G_N_ELEMENTS (most); i++)
    {
      g_autofree char *start = g_strdup_printf ("%s: ", most[i].sheet);
      gboolean said = FALSE;
      guint pages = 0;

      for (guint page = 0; page < ff_brief_n_pages (brief); page++)
        {
          FfBriefPage where;

          ff_brief_page (brief, page, &where);
          pages += strcmp (where.sheet, most[i].sheet) == 0;
        }
      for (guint m = 0; m < ff_brief_did_not_fit (brief)->len; m++)
        {
          const char *text = g_ptr_array_index (ff_brief_did_not_fit (brief), m);

          said = said || (g_str_has_prefix (text, start) && strstr (text, "instead of") != NULL);
        }
      assert_true (pages >= most[i].pages);
      assert_int_equal (said, pages > most[i].pages);
    }
}

static void
check_ink (const FfBrief *brief)
{
  double width, height;

  ff_brief_page_size (brief, &width, &height);
  for (guint page = 0; page < ff_brief_n_pages (brief); page++)
    {
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);
      cairo_rectangle_t ink;

      ff_brief_draw_page (brief, cr, page);
      cairo_destroy (cr);
      cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
      cairo_surface_destroy (surface);
      /* A glyph may reach a hair out of its advance. */
      assert_true (ink.x >= FF_LEAF_MARGIN - 4 && ink.y >= FF_LEAF_MARGIN - 4);
      assert_true (ink.x + ink.width <= width - FF_LEAF_MARGIN + 4);
      assert_true (ink.y + ink.height <= height - FF_LEAF_MARGIN + 4);
    }
}

static void
check_layout (const World *world, FfPaper paper)
{
  g_autoptr (FfBrief) brief
      = ff_brief_gather_with (world->facts, world->plan, FF_READER_ALL, paper,
                              FF_BRIEF_SLIPS | FF_BRIEF_SPOKEN | FF_BRIEF_AMENDMENTS, NULL);

  g_assert (brief != NULL);
  assert_true (ff_brief_lay_out (brief, world->facts, NULL));
  check_pages (brief);
  check_ink (brief);
}

static void
check_words (const World *world, FfPaper paper)
{
  g_autofree char *lead = text_on (world, FF_READER_LEAD, paper);
  g_autofree char *pilot = text_on (world, FF_READER_PILOT, paper);
  g_autofree char *camera = text_on (world, FF_READER_CAMERA, paper);
  g_autofree char *observer = text_on (world, FF_READER_OBSERVER, paper);

  check_lead (lead, world);
  check_pilot (pilot, world);
  check_frame (camera, world);
  check_shots (camera, pilot, world);
  check_observer (observer, world);
}

static void
test_sheets_say_what_the_store_says (void **state)
{
  FfTestRandom random = { 20270919 };
  g_autofree char *pdftotext = g_find_program_in_path ("pdftotext");
  const int rounds = g_getenv ("FF_LONG") != NULL ? 500 : 30;

  for (int round = 0; round < rounds; round++)
    {
      const FfPaper paper = round % 2 == 0 ? FF_PAPER_A4 : FF_PAPER_LETTER;
      World *world = world_new (&random, round);

      check_layout (world, paper);
      check_all_sizes (world);
      if (pdftotext != NULL)
        check_words (world, paper);
      world_free (world);
    }
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
    cmocka_unit_test (test_sheets_say_what_the_store_says),
  };

  return cmocka_run_group_tests_name ("sheets at random", tests, set_up, tear_down);
}
