/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Blocks into pages: nothing lost, nothing doubled, the order kept, no heading alone at the foot;
 * and what is drawn stays on the paper and is large enough to read. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-brief.h"
#include "ff-fixture.h"
#include "ff-sheet-flow.h"
#include "ff-leaf.h"
#include "ff-sheets.h"

#define WIDTH 540.0
#define HEIGHT 300.0
#define NOISE 1e-6

static PangoContext *context;

static const char *const words[]
    = { "Keep", "clear", "of", "the", "harbour", "wall", "by", "five", "metres", "17:14", "מגדל" };

static char *
random_text (FfTestRandom *random, int most)
{
  GString *text = g_string_new (NULL);

  for (int n = ff_test_random_int (random, 1, most); n > 0; n--)
    g_string_append_printf (text, "%s ",
                            words[ff_test_random_int (random, 0, G_N_ELEMENTS (words) - 1)]);
  return g_string_free (text, FALSE);
}

static void
draw_nothing (cairo_t *cr, gconstpointer data, double width, double height)
{
}

static void
add_random_row (FfSheet *sheet, FfTestRandom *random)
{
  static const double sizes[] = { 11, 12, 16, 28 };
  FfSheetBlock *block = ff_sheet_row (sheet);

  for (int n = ff_test_random_int (random, 1, 4); n > 0; n--)
    {
      FfCell *cell = ff_sheet_block_cell (block, -1);

      for (int t = ff_test_random_int (random, 1, 3); t > 0; t--)
        {
          /* Now and then a row that no page can hold. */
          g_autofree char *text
              = random_text (random, ff_test_random_int (random, 0, 20) == 0 ? 300 : 12);

          ff_cell_text (cell, sizes[ff_test_random_int (random, 0, 3)], t % 2 == 0, text);
        }
      if (ff_test_random_int (random, 0, 3) == 0)
        {
          cell->stops = ff_test_random (random, 0, 10);
          cell->block_side = 30;
        }
    }
  if (ff_test_random_int (random, 0, 9) == 0)
    block->drawing = (FfDrawing){ 60, ff_test_random (random, 20, 150), draw_nothing, NULL, NULL };
  block->on_baseline = ff_test_random_int (random, 0, 1);
  block->keep_next = ff_test_random_int (random, 0, 2) == 0;
  block->may_split = ff_test_random_int (random, 0, 3) == 0;
  block->space_above = ff_test_random (random, 0, 12);
}

static void
add_random_block (FfSheet *sheet, FfTestRandom *random)
{
  g_autofree char *text = random_text (random, 120);

  switch (ff_test_random_int (random, 0, 9))
    {
    case 0:
    case 1:
      ff_sheet_heading (sheet, "What to watch for");
      break;
    case 2:
    case 3:
      ff_sheet_paragraph (sheet, 12, text);
      break;
    case 4:
      ff_sheet_caution (sheet, FF_CAUTION_CAUTION, text);
      break;
    case 5:
      ff_sheet_to_last_page (sheet);
      break;
    case 6:
      ff_cell_text (ff_sheet_block_cell (ff_sheet_form (sheet, 4), -1), 11, FALSE, "note");
      break;
    default:
      add_random_row (sheet, random);
    }
}

static FfSheet *
random_sheet (FfTestRandom *random)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_PILOT, "Pilot", 3);

  for (int n = ff_test_random_int (random, 0, 40); n > 0; n--)
    add_random_block (sheet, random);
  ff_sheet_paragraph (sheet, 12, "The end.");
  return sheet;
}

static const FfPiece *
piece_at (const FfSheetFlow *flow, guint i)
{
  return &g_array_index (ff_sheet_flow_pieces (flow), FfPiece, i);
}

static const FfSheetBlock *
block_of (const FfSheet *sheet, const FfPiece *piece)
{
  return g_ptr_array_index (sheet->blocks, piece->block);
}

/* Every line of every block lies on exactly one page. */
static void
check_lines (const FfSheet *sheet, const FfSheetFlow *flow)
{
  for (guint block = 0; block < sheet->blocks->len; block++)
    {
      const GArray *lines = ff_sheet_flow_measured (flow, block)->lines;

      for (guint l = 0; l < lines->len; l++)
        {
          double bottom = g_array_index (lines, FfMeasuredLine, l).bottom;
          int drawn = 0;

          for (guint i = 0; i < ff_sheet_flow_pieces (flow)->len; i++)
            drawn += piece_at (flow, i)->block == block
                     && bottom > piece_at (flow, i)->after + NOISE
                     && bottom <= piece_at (flow, i)->upto + NOISE;
          assert_int_equal (drawn, 1);
        }
    }
}

/* Order, no overlap, within the page, drawings too; a split piece holds its lines. */
static void
check_places (const FfSheet *sheet, const FfSheetFlow *flow)
{
  for (guint i = 0; i < ff_sheet_flow_pieces (flow)->len; i++)
    {
      const FfPiece *piece = piece_at (flow, i);
      const FfPiece *before = i > 0 ? piece_at (flow, i - 1) : NULL;

      assert_true (piece->y >= 0);
      assert_true (piece->y + piece->height <= HEIGHT + NOISE);
      if (piece->after <= 0)
        assert_true (piece->y + block_of (sheet, piece)->drawing.height <= HEIGHT + NOISE);
      if (before == NULL)
        continue;
      assert_true (piece->block >= before->block);
      assert_true (piece->page == before->page || piece->page == before->page + 1);
      if (piece->page == before->page)
        assert_true (piece->y >= before->y + before->height - NOISE);
      else
        assert_true (fabs (piece->y) < NOISE);
    }
}

static void
check_no_heading_last (const FfSheet *sheet, const FfSheetFlow *flow)
{
  for (guint i = 0; i + 1 < ff_sheet_flow_pieces (flow)->len; i++)
    {
      const FfPiece *piece = piece_at (flow, i), *next = piece_at (flow, i + 1);
      gboolean broken = next->block > piece->block + 1; /* a break stands between them */

      if (block_of (sheet, piece)->heading && next->page != piece->page && !broken)
        fail_msg ("heading alone at the foot of page %u", piece->page + 1);
    }
}

/* A block that fits a page with a heading above it and may not be split is whole. */
static void
check_whole (const FfSheet *sheet, const FfSheetFlow *flow)
{
  for (guint i = 0; i < ff_sheet_flow_pieces (flow)->len; i++)
    {
      const FfPiece *piece = piece_at (flow, i);
      const FfMeasured *measured = ff_sheet_flow_measured (flow, piece->block);

      if (!block_of (sheet, piece)->may_split && measured->height <= HEIGHT - 100)
        assert_true (piece->after <= 0 && piece->upto >= measured->height - NOISE);
    }
}

static void
test_random_sheets_keep_everything (void **state)
{
  FfTestRandom random = { 20270918 };

  for (int round = 0; round < 150; round++)
    {
      g_autoptr (FfSheet) sheet = random_sheet (&random);
      g_autoptr (FfSheetFlow) flow = ff_sheet_flow_new (sheet, context, WIDTH, HEIGHT);

      check_lines (sheet, flow);
      check_places (sheet, flow);
      check_no_heading_last (sheet, flow);
      check_whole (sheet, flow);
    }
}

static void
test_kept_blocks_share_a_page (void **state)
{
  g_autoptr (FfSheet) sheet = ff_sheet_new (FF_READER_PILOT, "Pilot", 9);
  g_autoptr (FfSheetFlow) flow = NULL;

  for (int i = 0; i < 60; i++)
    ff_sheet_paragraph (sheet, 12, "One line.")->keep_next = i % 3 != 2;
  flow = ff_sheet_flow_new (sheet, context, WIDTH, HEIGHT);
  assert_true (ff_sheet_flow_n_pages (flow) > 2);
  for (guint i = 0; i < 60; i++)
    assert_int_equal (piece_at (flow, i)->page, piece_at (flow, i - i % 3)->page);
}

static void
test_no_line_of_a_paragraph_stands_alone (void **state)
{
  g_autofree char *text = g_strnfill (4000, 'm');

  for (int before = 0; before < 18; before++)
    {
      g_autoptr (FfSheet) sheet = ff_sheet_new (FF_READER_PILOT, "Pilot", 9);
      g_autoptr (FfSheetFlow) flow = NULL;

      for (int i = 0; i < before; i++)
        ff_sheet_paragraph (sheet, 12, "One line.");
      ff_sheet_paragraph (sheet, 12, text);
      flow = ff_sheet_flow_new (sheet, context, WIDTH, HEIGHT);
      for (guint i = (guint) before; i < ff_sheet_flow_pieces (flow)->len; i++)
        assert_true (piece_at (flow, i)->height >= 2 * 12 * FF_LINE_PITCH - NOISE);
    }
}

static void
test_form_fills_the_last_page (void **state)
{
  g_autoptr (FfSheet) sheet = ff_sheet_new (FF_READER_CAMERA, "Camera operator", 2);
  g_autoptr (FfSheetFlow) flow = NULL;
  const FfPiece *form;

  ff_sheet_paragraph (sheet, 12, "Front.");
  ff_sheet_to_last_page (sheet);
  ff_cell_text (ff_sheet_block_cell (ff_sheet_form (sheet, 0), -1), 11, FALSE, "shot");
  flow = ff_sheet_flow_new (sheet, context, WIDTH, HEIGHT);
  form = piece_at (flow, 1);
  assert_int_equal (form->page, 1);
  assert_true (form->height <= HEIGHT && form->height > HEIGHT - FF_ROW_TO_WRITE);
  /* 9 mm: a pencil in a gloved hand. */
  assert_true (FF_ROW_TO_WRITE >= 9 / 25.4 * 72);
}

static void
test_what_goes_past_the_pages_is_named (void **state)
{
  g_autoptr (FfSheet) sheet = ff_sheet_new (FF_READER_PILOT, "Pilot", 1);
  g_autoptr (FfSheetFlow) flow = NULL;
  g_autoptr (GPtrArray) past = NULL;

  ff_sheet_begin_part (sheet, "sortie 1");
  ff_sheet_paragraph (sheet, 12, "Fits.");
  for (int i = 0; i < 30; i++)
    {
      ff_sheet_begin_part (sheet, i < 25 ? "sortie 2" : "limits");
      ff_sheet_paragraph (sheet, 12, "One line.");
    }
  flow = ff_sheet_flow_new (sheet, context, WIDTH, HEIGHT);
  past = ff_sheet_flow_past_allowance (flow);
  assert_int_equal (past->len, 2);
  assert_string_equal (g_ptr_array_index (past, 0), "sortie 2");
  assert_string_equal (g_ptr_array_index (past, 1), "limits");
}

static cairo_rectangle_t
ink_of (const FfBrief *brief, guint page)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  cairo_rectangle_t ink;

  ff_brief_draw_page (brief, cr, page);
  assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_surface_destroy (surface);
  return ink;
}

/* The ink of every page lies inside the margins. */
static void
check_ink (const FfFixture *fixture, FfPaper paper)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfBrief) brief
      = ff_brief_new (&fixture->facts, &fixture->plan, FF_READER_ALL, paper, &error);
  double width, height;

  assert_no_error (error);
  ff_brief_page_size (brief, &width, &height);
  for (guint page = 0; page < ff_brief_n_pages (brief); page++)
    {
      const cairo_rectangle_t ink = ink_of (brief, page);

      /* A glyph may reach a hair out of its advance; half of the margin still prints. */
      assert_true (ink.x >= FF_LEAF_MARGIN - 2);
      assert_true (ink.y >= FF_LEAF_MARGIN - 2);
      assert_true (ink.x + ink.width <= width - FF_LEAF_MARGIN + 2);
      assert_true (ink.y + ink.height <= height - FF_LEAF_MARGIN + 2);
    }
}

static void
test_ink_stays_inside_the_margins (void **state)
{
  const char *const texts[] = {
    "",
    "x",
    "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch and everything that lies behind it",
  };
  g_autoptr (FfFixture) demo = ff_fixture_demo ();

  check_ink (demo, FF_PAPER_A4);
  check_ink (demo, FF_PAPER_LETTER);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (FfFixture) fixture = ff_fixture_hostile (texts[i], 9);

      check_ink (fixture, i % 2 == 0 ? FF_PAPER_A4 : FF_PAPER_LETTER);
    }
}

/* 20 mm at the side that is bound: left, and right on the back of a sheet; nothing is lost by it. */
static void
test_a_bound_side_stays_clear (void **state)
{
  const double bound = 20 / 25.4 * 72;
  g_autoptr (FfFixture) demo = ff_fixture_demo ();

  for (int paper = FF_PAPER_A4; paper <= FF_PAPER_LETTER; paper++)
    {
      g_autoptr (FfBrief) brief
          = ff_brief_gather (&demo->facts, &demo->plan, FF_READER_ALL, (FfPaper) paper, NULL);
      double width, height;

      ff_brief_bind (brief, 20);
      assert_true (ff_brief_lay_out (brief, &demo->facts, NULL));
      ff_brief_page_size (brief, &width, &height);
      for (guint page = 0; page < ff_brief_n_pages (brief); page++)
        {
          const cairo_rectangle_t ink = ink_of (brief, page);
          FfBriefPage where;
          gboolean back;

          ff_brief_page (brief, page, &where);
          back = where.number == 2 && (strcmp (where.sheet, "Pilot") == 0
                                       || strcmp (where.sheet, "Camera operator") == 0);
          assert_true (ink.x >= (back ? FF_LEAF_MARGIN : bound) - 2);
          assert_true (ink.x + ink.width <= width - (back ? bound : FF_LEAF_MARGIN) + 2);
        }
    }
}

/* The size of the run that holds `part`; 0 when no run does. */
static double
size_of (const FfSheet *sheet, const char *part, double *ret_smallest)
{
  double found = 0;

  *ret_smallest = INFINITY;
  for (guint b = 0; b < sheet->blocks->len; b++)
    {
      const FfSheetBlock *block = g_ptr_array_index (sheet->blocks, b);

      for (guint c = 0; c < block->cells->len; c++)
        {
          const FfCell *cell = g_ptr_array_index (block->cells, c);

          for (guint t = 0; t < cell->texts->len; t++)
            {
              const FfText *text = g_ptr_array_index (cell->texts, t);
              const char *run_text = text->text->str;

              for (guint r = 0; r < text->runs->len; r++)
                {
                  const FfRun *run = &g_array_index (text->runs, FfRun, r);

                  *ret_smallest = MIN (*ret_smallest, run->size);
                  if (g_strstr_len (run_text, run->bytes, part) != NULL && found <= 0)
                    found = run->size;
                  run_text += run->bytes;
                }
            }
        }
    }
  return found;
}

/* Least sizes for reading outdoors: capitals of 20 minutes of arc at the distance of the reader, 14
 * point at 0.6 m, 24 at 1 m (common practice, no source). */
static void
test_sizes (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfSheet) pilot = ff_pilot_sheet (&demo->facts, &demo->plan);
  g_autoptr (FfSheet) camera = ff_camera_sheet (&demo->facts, &demo->plan);
  g_autoptr (FfSheet) lead = ff_lead_sheet (&demo->facts, &demo->plan);
  g_autoptr (FfSheet) observer = ff_observer_sheet (&demo->facts, &demo->plan);
  double smallest;

  assert_true (size_of (pilot, "16:48", &smallest) >= 24);
  assert_true (smallest >= 11);
  assert_true (size_of (pilot, "16:30", &smallest) >= 16);
  assert_true (size_of (pilot, "ND32", &smallest) >= 16);
  assert_true (size_of (pilot, "5 stops", &smallest) >= 16);
  assert_true (size_of (pilot, "harbour from above", &smallest) >= 16);
  assert_true (size_of (pilot, "power line", &smallest) >= 12);
  assert_true (size_of (pilot, "Lost link", &smallest) >= 16);
  assert_true (size_of (pilot, "“lost link”", &smallest) >= 16);
  assert_true (size_of (pilot, "Land if unsure", &smallest) >= 16);
  assert_true (size_of (camera, "5 stops", &smallest) >= 28);
  assert_true (smallest >= 11);
  assert_true (size_of (camera, "ND32", &smallest) >= 14);
  assert_true (size_of (camera, "1/200 (180°)", &smallest) >= 14);
  assert_true (size_of (lead, "land by 16:48", &smallest) >= 18);
  assert_true (smallest >= 11);
  assert_true (size_of (lead, "first off 16:30", &smallest) >= 18);
  assert_true (size_of (lead, "Ife Calloway", &smallest) >= 14);
  assert_true (size_of (observer, "16:48", &smallest) >= 24);
  assert_true (smallest >= 11);
  assert_true (size_of (observer, "closing", &smallest) >= 24);
  assert_true (size_of (observer, "Kestrel", &smallest) >= 36);
}

static guint8 *
render (const FfBrief *brief, guint page, gsize *ret_size)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 600, 850);
  cairo_t *cr = cairo_create (surface);
  guint8 *copy;

  ff_brief_draw_page (brief, cr, page);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  *ret_size = (gsize) cairo_image_surface_get_stride (surface) * 850;
  copy = g_memdup2 (cairo_image_surface_get_data (surface), *ret_size);
  cairo_surface_destroy (surface);
  return copy;
}

static void
test_pages_can_be_drawn_in_any_order (void **state)
{
  g_autoptr (FfFixture) demo = ff_fixture_demo ();
  g_autoptr (FfBrief) brief
      = ff_brief_new (&demo->facts, &demo->plan, FF_READER_ALL, FF_PAPER_A4, NULL);
  gsize size, again_size;
  g_autofree guint8 *last = render (brief, ff_brief_n_pages (brief) - 1, &size);
  g_autofree guint8 *first = render (brief, 0, &size);
  g_autofree guint8 *again = render (brief, ff_brief_n_pages (brief) - 1, &again_size);

  assert_memory_equal (last, again, size);
  assert_memory_not_equal (first, last, size);
}

static int
set_up (void **state)
{
  context = ff_measure_context_new (NULL);
  return context != NULL ? 0 : -1;
}

static int
tear_down (void **state)
{
  g_object_unref (context);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_random_sheets_keep_everything),
    cmocka_unit_test (test_kept_blocks_share_a_page),
    cmocka_unit_test (test_no_line_of_a_paragraph_stands_alone),
    cmocka_unit_test (test_form_fills_the_last_page),
    cmocka_unit_test (test_what_goes_past_the_pages_is_named),
    cmocka_unit_test (test_ink_stays_inside_the_margins),
    cmocka_unit_test (test_a_bound_side_stays_clear),
    cmocka_unit_test (test_sizes),
    cmocka_unit_test (test_pages_can_be_drawn_in_any_order),
  };

  return cmocka_run_group_tests_name ("flow", tests, set_up, tear_down);
}
