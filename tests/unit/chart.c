/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day chart: what it promises whatever the day, the size and the style. */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-chart-fixture.h"
#include "ff-day-chart.h"
#include "ff-neutral-block.h"
#include "ff-shapes.h"
#include "ff-time-axis.h"

static const FfPalette *const palettes[] = { &ff_palette_light, &ff_palette_dark,
                                             &ff_palette_daylight, &ff_palette_night,
                                             &ff_palette_paper };

static FfDayChart *
chart_of (const FfChartFixture *fixture, double width, double height, double scale)
{
  FfChartFrame frame = { &ff_palette_light, NULL, scale, width, height };

  return ff_day_chart_new (&fixture->facts, &fixture->plan, &frame);
}

static gboolean
says (const FfDayChart *chart, const char *text)
{
  const FfLabels *labels = ff_day_chart_labels (chart);

  for (guint i = 0; i < ff_labels_count (labels); i++)
    if (strcmp (ff_labels_text (labels, i), text) == 0)
      return TRUE;
  return FALSE;
}

static const FfChartRow *
find_row (const FfDayChart *chart, FfChartRowKind kind, const char *part)
{
  GPtrArray *rows = ff_day_chart_rows (chart);

  for (guint i = 0; i < rows->len; i++)
    {
      const FfChartRow *row = g_ptr_array_index (rows, i);

      if (row->kind == kind && strstr (row->what, part) != NULL)
        return row;
    }
  return NULL;
}

static void
check_labels (const FfDayChart *chart, double width, double height)
{
  const FfLabels *labels = ff_day_chart_labels (chart);
  cairo_rectangle_t a, b;

  for (guint i = 0; i < ff_labels_count (labels); i++)
    {
      ff_labels_ink (labels, i, &a);
      if (!(a.x >= 0 && a.y >= 0 && a.x + a.width <= width && a.y + a.height <= height))
        fail_msg ("“%s” leaves the chart", ff_labels_text (labels, i));
      for (guint j = i + 1; j < ff_labels_count (labels); j++)
        {
          ff_labels_ink (labels, j, &b);
          if (ff_boxes_overlap (&a, &b))
            fail_msg ("“%s” lies over “%s”", ff_labels_text (labels, i),
                      ff_labels_text (labels, j));
        }
    }
}

static void
check_table (const FfDayChart *chart, const FfDayPlan *plan)
{
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      g_autofree char *head = g_strdup_printf ("sortie %d:", line->line);
      const FfChartRow *row = find_row (chart, FF_CHART_ROW_SORTIE, head);

      assert_non_null (row);
      assert_int_equal (row->line, line->line);
      assert_non_null (strstr (row->what, line->battery));
      for (guint t = 0; t < line->takes->len; t++)
        assert_non_null (
            strstr (row->what, ((FfPlanTake *) g_ptr_array_index (line->takes, t))->shot));
    }
  for (guint i = 0; i < plan->charges->len; i++)
    assert_non_null (
        find_row (chart, FF_CHART_ROW_CHARGE,
                  ((FfPlanCharge *) g_ptr_array_index (plan->charges, i))->battery));
  for (guint i = 0; i < plan->missed->len; i++)
    assert_non_null (find_row (chart, FF_CHART_ROW_MISSED,
                               ((FfPlanMiss *) g_ptr_array_index (plan->missed, i))->title));
}

static void
check_hits (const FfDayChart *chart, const FfDayPlan *plan)
{
  cairo_rectangle_t box;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      assert_true (ff_day_chart_line_rect (chart, line->line, &box));
      assert_true (box.width > 0 && box.height > 0);
      assert_int_equal (
          ff_day_chart_line_at (chart, box.x + box.width / 2, box.y + box.height / 2),
          line->line);
    }
  assert_false (ff_day_chart_line_rect (chart, (int) plan->lines->len + 1, &box));
  assert_int_equal (ff_day_chart_line_at (chart, -1000, -1000), 0);
}

/* The background covers the chart exactly, so ink past it shows in the extents. */
static void
check_ink (const FfDayChart *chart, double width, double height)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, w, h;

  ff_day_chart_draw (chart, cr, 1);
  assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &w, &h);
  assert_close (x, 0, 0.5);
  assert_close (y, 0, 0.5);
  assert_close (w, width, 1);
  assert_close (h, height, 1);
  cairo_surface_destroy (surface);
}

static void
check_all (const FfChartFixture *fixture, const FfChartFrame *frame)
{
  g_autoptr (FfDayChart) chart = ff_day_chart_new (&fixture->facts, &fixture->plan, frame);

  check_labels (chart, frame->width, frame->height);
  check_table (chart, &fixture->plan);
  check_hits (chart, &fixture->plan);
  check_ink (chart, frame->width, frame->height);
}

static void
test_any_day_in_any_frame (void **state)
{
  FfTestRandom random = { 20270918 };

  for (int i = 0; i < 120; i++)
    {
      guint n = (guint) ff_test_random_int (&random, 0, i % 10 == 0 ? 40 : 9);
      g_autoptr (FfChartFixture) fixture = ff_chart_fixture_random (&random, n);
      FfChartFrame frame = { palettes[i % 5], NULL, i % 3 == 0 ? 2 : 1,
                             ff_test_random_int (&random, 320, i % 4 == 0 ? 2000 : 900),
                             ff_test_random_int (&random, 200, 700) };

      check_all (fixture, &frame);
    }
}

static void
test_demo_day_says_what_it_must (void **state)
{
  static const char *const wanted[]
      = { "5",  "4",  "2",   "A",  "B C",   "D E",     "F",     "G",
          "H",  "17:32 now", "17:14 ferry passes", "18:05 high water", "Sunset 19:27",
          "Low sun, below 8°", "Civil twilight", "6.0", "2.1", "14", "12", "16:30", "20:00",
          "cools", "charges", "ready 18:00, attended by Marit Ostrander", "31 min" };
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  g_autoptr (FfDayChart) chart = chart_of (fixture, 1200, 420, 1);

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (!says (chart, wanted[i]))
      fail_msg ("the chart does not say “%s”", wanted[i]);
}

static void
test_demo_day_as_a_table (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  g_autoptr (FfDayChart) chart = chart_of (fixture, 1200, 420, 1);
  const FfChartRow *sortie = find_row (chart, FF_CHART_ROW_SORTIE, "sortie 2:");
  const FfChartRow *sunset = find_row (chart, FF_CHART_ROW_SUN, "Sunset");
  const FfChartRow *charge = find_row (chart, FF_CHART_ROW_CHARGE, "battery 1");

  assert_string_equal (sortie->when, "17:08–17:29");
  assert_string_equal (sortie->what, "sortie 2: B, C, battery 2");
  assert_string_equal (sortie->detail, "5 stops (ND32), land by 17:29");
  assert_string_equal (sunset->when, "19:27");
  assert_string_equal (charge->what, "battery 1 cools, charges from 17:00, ready 18:00");
  assert_string_equal (charge->detail, "attended by Marit Ostrander");
  assert_non_null (find_row (chart, FF_CHART_ROW_TURNROUND, "turn-round, 12 minutes"));
  assert_non_null (find_row (chart, FF_CHART_ROW_EVENT, "ferry passes"));
  assert_non_null (find_row (chart, FF_CHART_ROW_LIGHT, "sun 22°, EV 14."));
  assert_non_null (find_row (chart, FF_CHART_ROW_LIGHT, "sun −5°"));
}

static void
test_every_size_of_the_demo_day (void **state)
{
  static const double sizes[][2]
      = { { 320, 400 }, { 320, 240 }, { 360, 640 }, { 510, 300 }, { 700, 420 }, { 2000, 500 } };
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();

  for (guint p = 0; p < G_N_ELEMENTS (palettes); p++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      for (int scale = 1; scale <= 2; scale++)
        {
          FfChartFrame frame = { palettes[p], NULL, scale, sizes[i][0], sizes[i][1] };

          check_all (fixture, &frame);
        }
}

/* Where two lines lie over each other the nearer middle is meant; a near miss counts, a far one
 * does not. */
static void
test_hits_close_by (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  FfPlanLine *first = g_ptr_array_index (fixture->plan.lines, 0);
  FfPlanLine *second = g_ptr_array_index (fixture->plan.lines, 1);
  g_autoptr (FfDayChart) chart = NULL;
  cairo_rectangle_t box;

  second->off_by = first->down + 120;
  first->land_by = first->down + 20 * 60;
  chart = chart_of (fixture, 1200, 420, 1);
  check_hits (chart, &fixture->plan);
  assert_true (ff_day_chart_line_rect (chart, 6, &box));
  assert_int_equal (ff_day_chart_line_at (chart, box.x + box.width + 8, box.y + 5), 6);
  assert_int_equal (ff_day_chart_line_at (chart, box.x + box.width + 15, box.y + 5), 0);
}

/* The stops are written in every block, or beside those that are too narrow for them. */
static void
test_narrow_blocks_keep_their_stops (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  g_autoptr (FfDayChart) chart = chart_of (fixture, 320, 480, 1.2);
  const FfLabels *labels = ff_day_chart_labels (chart);
  guint n = 0;

  for (guint i = 0; i < ff_labels_count (labels); i++)
    {
      const char *text = ff_labels_text (labels, i);
      cairo_rectangle_t ink, first;

      ff_labels_ink (labels, i, &ink);
      assert_true (ff_day_chart_line_rect (chart, 1, &first));
      if (ink.y > first.y - 20 && ink.y < first.y + 40
          && (strcmp (text, "5") == 0 || strcmp (text, "4") == 0 || strcmp (text, "2") == 0))
        n++;
    }
  assert_true (n >= 6);
}

static void
test_nothing_planned (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_empty ();
  g_autoptr (FfDayChart) chart = chart_of (fixture, 1200, 420, 1);
  FfChartFrame frame = { &ff_palette_light, NULL, 1, 700, 300 };
  g_autoptr (FfDayChart) sky = ff_day_chart_new (&fixture->facts, NULL, &frame);

  assert_true (says (chart, "No sorties planned"));
  assert_false (says (chart, "Need, stops"));
  assert_int_equal (ff_day_chart_line_at (chart, 600, 300), 0);
  check_ink (chart, 1200, 420);
  assert_false (says (sky, "No sorties planned"));
  assert_true (says (sky, "Sunset 19:27"));
  check_ink (sky, 700, 300);
}

static void
test_a_day_without_samples (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  g_autoptr (FfDayChart) chart = NULL;

  fixture->facts.n_samples = 0;
  chart = chart_of (fixture, 700, 300, 1);
  check_ink (chart, 700, 300);
  check_table (chart, &fixture->plan);
}

/* A frame with no space at all is drawn as far as it goes and keeps its table. */
static void
test_hopeless_frames (void **state)
{
  static const double sizes[][2] = { { 1, 1 }, { 20, 300 }, { 300, 20 }, { 80, 60 } };
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (FfDayChart) chart = chart_of (fixture, sizes[i][0], sizes[i][1], 2);
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 300, 300);
      cairo_t *cr = cairo_create (surface);

      check_labels (chart, sizes[i][0], sizes[i][1]);
      check_table (chart, &fixture->plan);
      ff_day_chart_draw (chart, cr, 3);
      assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

static void
test_no_filter_holds_in_words (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  FfPlanLine *last = g_ptr_array_index (fixture->plan.lines, 5);
  FfPlanTake *take = g_ptr_array_index (last->takes, 0);
  g_autoptr (FfDayChart) chart = NULL;
  g_autoptr (FfDayChart) within = NULL;

  take->end.error_stops = -1.0 / 3.0;
  within = chart_of (fixture, 1200, 420, 1);
  assert_false (says (within, "no filter holds"));
  take->end.error_stops = -0.9;
  chart = chart_of (fixture, 1200, 420, 1);
  assert_true (says (chart, "no filter holds"));
  assert_true (says (chart, "No filter holds sortie 6: shot H is 0.9 stops too dark."));
  assert_non_null (strstr (find_row (chart, FF_CHART_ROW_SORTIE, "sortie 6:")->detail,
                           "No filter holds sortie 6"));
}

static void
test_missed_shots_in_words (void **state)
{
  static char shot[] = "E", title[] = "panorama", reason[] = "No battery is ready in its window.";
  FfPlanMiss miss = { shot, title, reason };
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  g_autoptr (FfDayChart) chart = NULL;

  g_ptr_array_add (fixture->plan.missed, &miss);
  chart = chart_of (fixture, 1200, 420, 1);
  assert_true (says (chart, "Not flown: E, panorama: No battery is ready in its window."));
  check_table (chart, &fixture->plan);
}

/* What was drawn is the chart's own: facts and plan may be gone. */
static void
test_stands_alone (void **state)
{
  FfChartFixture *fixture = ff_chart_fixture_demo ();
  g_autoptr (FfDayChart) chart = chart_of (fixture, 700, 420, 1);

  ff_chart_fixture_free (fixture);
  check_ink (chart, 700, 420);
  assert_string_equal (find_row (chart, FF_CHART_ROW_SUN, "Sunset")->when, "19:27");
}

static void
test_palettes_can_be_read (void **state)
{
  for (guint i = 0; i < G_N_ELEMENTS (palettes); i++)
    {
      const FfPalette *palette = palettes[i];
      gboolean night = palette == &ff_palette_night;
      double least = palette->hatched ? 10 : 4.5;

      assert_true (ff_colour_contrast (palette->ink, palette->paper) >= (night ? 7 : 10));
      assert_true (ff_colour_contrast (palette->soft, palette->paper) >= least);
      assert_true (ff_colour_contrast (palette->accent, palette->paper) >= least);
      for (double stops = 0; stops <= 10; stops += 0.1)
        {
          FfColour shade = ff_palette_shade (palette, stops);
          FfColour on = ff_palette_ink_on (palette, shade);

          /* Night stays dim: large figures only, WCAG's 3 to 1. */
          assert_true (ff_colour_contrast (on, shade) >= (night ? 3 : least));
        }
    }
}

/* WCAG 2.1: black on white is 21 to 1; the worked value of #777777 on white, 4.48, from memory. */
static void
test_contrast (void **state)
{
  FfColour black = { 0, 0, 0 }, white = { 1, 1, 1 };
  FfColour grey = { 0x77 / 255.0, 0x77 / 255.0, 0x77 / 255.0 };

  assert_close (ff_colour_contrast (black, white), 21, 1e-9);
  assert_close (ff_colour_contrast (white, black), 21, 1e-9);
  assert_close (ff_colour_contrast (grey, white), 4.48, 0.01);
}

static void
test_stronger_is_darker (void **state)
{
  for (guint i = 0; i < G_N_ELEMENTS (palettes); i++)
    for (int stops = 0; stops < 8 && !palettes[i]->hatched; stops++)
      {
        FfColour weak = ff_palette_shade (palettes[i], stops);
        FfColour strong = ff_palette_shade (palettes[i], stops + 1);

        assert_true (strong.red < weak.red && strong.green < weak.green
                     && strong.blue < weak.blue);
      }
}

static void
test_block_text (void **state)
{
  static const struct {
    double stops;
    const char *text;
    int lines;
  } cases[] = {
    { 0, "0", 0 }, { 3.1, "3.1", 3 }, { 5, "5", 5 }, { 2.66, "2.7", 3 }, { 10, "10", 10 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = ff_neutral_block_text (cases[i].stops);

      assert_string_equal (text, cases[i].text);
      assert_int_equal (ff_neutral_block_lines (cases[i].stops), cases[i].lines);
    }
}

/* Counts the dark runs down one column of pixels: the hatch lines and the two edges. */
static int
dark_runs (cairo_surface_t *surface, int x, int height)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface), runs = 0;
  gboolean was_dark = FALSE;

  for (int y = 0; y < height; y++)
    {
      gboolean dark = data[y * stride + 4 * x] < 128;

      runs += dark && !was_dark;
      was_dark = dark;
    }
  return runs;
}

static void
test_hatching_can_be_counted (void **state)
{
  for (int stops = 0; stops <= 10; stops++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 200, 220);
      cairo_t *cr = cairo_create (surface);
      cairo_rectangle_t box = { 10, 10, 180, 200 };

      cairo_set_source_rgb (cr, 1, 1, 1);
      cairo_paint (cr);
      ff_neutral_block_draw (cr, &ff_palette_paper, &box, stops, NULL);
      cairo_surface_flush (surface);
      assert_int_equal (dark_runs (surface, 18, 220), stops + 2);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

/* 31 October 2027 in Britain: 02:00 becomes 01:00, so 01:30 comes twice (European summer time ends
 * at 01:00 UTC on the last Sunday of October, Directive 2000/84/EC). */
static void
test_ticks_follow_the_clock (void **state)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_identifier ("Europe/London");
  const gint64 midnight = 1824937200; /* 2027-10-31 00:00 +01:00 */
  FfTimeAxis axis = { midnight, midnight + 4 * 3600, 0, 240, zone };
  const gint64 wanted[] = { 0, 3600, 7200, 10800, 14400 };
  gint64 at = axis.from;

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      at = ff_time_axis_next (&axis, at, 60);
      assert_int_equal (at - midnight, wanted[i]);
      at += 60;
    }
  assert_int_equal (ff_time_axis_next (&axis, at, 60), G_MAXINT64);
  assert_close (ff_time_axis_x (&axis, (double) midnight + 3600), 60, 1e-9);
  assert_close (ff_time_axis_x (&axis, (double) midnight - 99), 0, 0);
  assert_int_equal (ff_time_axis_step (&axis, 29), 30);
  assert_int_equal (ff_time_axis_step (&axis, 31), 60);
}

/* At the height it asks for nothing is given up, and a line less is not enough for all. */
static void
test_the_height_it_asks_for (void **state)
{
  g_autoptr (FfChartFixture) fixture = ff_chart_fixture_demo ();
  const double widths[] = { 360, 620, 900, 1400 };

  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    for (double scale = 1; scale <= 2; scale++)
      {
        FfChartFrame frame = { &ff_palette_light, NULL, scale, widths[i], 0 };
        double height = ff_day_chart_height (&fixture->facts, &fixture->plan, &frame);
        g_autoptr (FfDayChart) chart = chart_of (fixture, widths[i], height, scale);
        g_autoptr (FfDayChart) low = chart_of (fixture, widths[i], height * 0.5, scale);

        check_labels (chart, widths[i], height);
        assert_true (ff_labels_count (ff_day_chart_labels (chart))
                     > ff_labels_count (ff_day_chart_labels (low)));
        assert_true (height > 200 * scale && height < 600 * scale);
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_any_day_in_any_frame),
    cmocka_unit_test (test_the_height_it_asks_for),
    cmocka_unit_test (test_demo_day_says_what_it_must),
    cmocka_unit_test (test_demo_day_as_a_table),
    cmocka_unit_test (test_every_size_of_the_demo_day),
    cmocka_unit_test (test_hits_close_by),
    cmocka_unit_test (test_narrow_blocks_keep_their_stops),
    cmocka_unit_test (test_nothing_planned),
    cmocka_unit_test (test_a_day_without_samples),
    cmocka_unit_test (test_hopeless_frames),
    cmocka_unit_test (test_no_filter_holds_in_words),
    cmocka_unit_test (test_missed_shots_in_words),
    cmocka_unit_test (test_stands_alone),
    cmocka_unit_test (test_palettes_can_be_read),
    cmocka_unit_test (test_contrast),
    cmocka_unit_test (test_stronger_is_darker),
    cmocka_unit_test (test_block_text),
    cmocka_unit_test (test_hatching_can_be_counted),
    cmocka_unit_test (test_ticks_follow_the_clock),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
