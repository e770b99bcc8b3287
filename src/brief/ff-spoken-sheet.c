/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The spoken brief: two minutes in the crew's words, who says what and who says it back; under it
 * the day chart. Longer than two minutes and nobody remembers its beginning (common practice, no
 * source). What nobody has entered is a line to write on. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-day-chart.h"
#include "ff-sheets.h"

#define SPOKEN_PAGES 2
#define WHO 84
#define BACK_SHARE -2
#define SAY_SHARE -3
#define CHART_WIDTH 514.0 /* the narrower of the papers, bound at 20 mm */
#define SAID_LIMITS 4 /* more are read, not said */

/* One exchange: who says it, what is said, and what comes back from whom. */
static FfCell *
add_exchange (FfSheet *sheet, FfRole who, const char *say, const char *back)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  block->rule_above = FF_STROKE_THIN;
  block->space_above = 2;
  ff_cell_text (ff_sheet_block_cell (block, WHO), FF_SIZE_BODY, TRUE,
                ff_name_text (&ff_names_role, (int) who));
  cell = ff_sheet_block_cell (block, SAY_SHARE);
  ff_cell_text (cell, FF_SIZE_CAMERA, FALSE, say);
  ff_cell_text (ff_sheet_block_cell (block, BACK_SHARE), FF_SIZE_BODY, FALSE, back);
  block->on_baseline = TRUE;
  return cell;
}

/* A word that everything hangs on, large; where it is not chosen, a line. */
static void
add_word (FfCell *cell, const char *word)
{
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_LINE, TRUE, word);
  if (*word == '\0')
    cell->write_on = 60;
}

static void
add_day (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  const FfPlanLine *first, *last;
  g_autofree char *off = NULL, *down = NULL, *say = NULL;

  if (plan->lines->len == 0)
    {
      add_exchange (sheet, FF_ROLE_LEAD, _ ("No sortie is planned."), "");
      return;
    }
  first = g_ptr_array_index (plan->lines, 0);
  last = g_ptr_array_index (plan->lines, plan->lines->len - 1);
  off = ff_instant_clock ((double) first->off_by, facts->zone);
  down = ff_instant_clock ((double) last->land_by, facts->zone);
  say = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                      "%u sortie. First off by %s, last down by %s.",
                                      "%u sorties. First off by %s, last down by %s.",
                                      plan->lines->len),
                         plan->lines->len, off, down);
  add_exchange (sheet, FF_ROLE_LEAD, say, _ ("Pilot: both times, read off the own sheet"));
}

static void
add_place (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfCell *cell = add_exchange (sheet, FF_ROLE_PILOT, _ ("I take off from"),
                               _ ("All: point to both spots"));

  add_word (cell, facts->takeoff_spot);
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, _ ("; if that is taken I land at"));
  add_word (cell, facts->second_spot);
  cell = add_exchange (sheet, FF_ROLE_PILOT, _ ("If the link is lost:"),
                       _ ("Observer: says what it will do"));
  add_word (cell, facts->return_height);
}

static void
add_limits (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfCell *cell = add_exchange (sheet, FF_ROLE_PILOT, _ ("We stop beyond"),
                               _ ("Observer: height and distance, said back"));

  for (guint i = 0; i < MIN (facts->limits->len, SAID_LIMITS); i++)
    {
      const FfSheetLimit *limit = g_ptr_array_index (facts->limits, i);

      ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, i > 0 ? "; " : " ");
      ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, limit->text);
      ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, " ");
      ff_cell_more (cell, FF_SIZE_CAMERA, TRUE, limit->bound);
    }
  if (facts->limits->len == 0)
    cell->write_on = 60;
}

static void
add_watch (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfCell *cell = add_exchange (sheet, FF_ROLE_OBSERVER, _ ("I stand at"),
                               _ ("Pilot: looks there from the take-off spot"));

  add_word (cell, facts->observer_post);
  add_exchange (sheet, FF_ROLE_OBSERVER,
                _ ("I call by compass point or landmark: aircraft, person, bird, lost sight."),
                _ ("Pilot: “Seen”, or lands"));
  /* Translators: percent of charge, as the pilot calls it out; ten more than what is kept. */
  add_exchange (sheet, FF_ROLE_PILOT,
                _ ("Ten above the reserve I call “returning”. I am down with the reserve untouched."),
                _ ("Lead: names the reserve in percent"));
  add_exchange (sheet, FF_ROLE_CAMERA,
                _ ("I name the filter before each take-off and read it off the ring."),
                _ ("Pilot: the stops, said back"));
}

static void
add_stop (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfCell *cell = add_exchange (sheet, FF_ROLE_LEAD, _ ("Anyone may stop us. The word is"),
                               _ ("Each says the word aloud"));

  add_word (cell, facts->abort_word);
  cell = add_exchange (sheet, FF_ROLE_LEAD, _ ("In an emergency we call"),
                       _ ("Observer: reads out where we are, from the foot of the sheet"));
  add_word (cell, facts->emergency_phone);
  add_exchange (sheet, FF_ROLE_LEAD, _ ("Who is not fit to work says so now."),
                _ ("Each: “Fit”, or not"));
}

static void
draw_chart (cairo_t *cr, gconstpointer data, double width, double height)
{
  ff_day_chart_draw (data, cr, 0);
}

static void
add_chart (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfChartFrame frame = { &ff_palette_paper, NULL, 1.0, CHART_WIDTH, 0 };
  FfSheetBlock *block;

  if (facts->chart == NULL)
    return;
  ff_sheet_begin_part (sheet, _ ("the day chart"));
  ff_sheet_heading (sheet, _ ("The day"));
  frame.height = ceil (ff_day_chart_height (facts->chart, plan, &frame));
  block = ff_sheet_row (sheet);
  block->drawing = (FfDrawing){ frame.width, frame.height, draw_chart,
                                ff_day_chart_new (facts->chart, plan, &frame),
                                (GDestroyNotify) ff_day_chart_free };
}

FfSheet *
ff_spoken_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_LEAD, _ ("Spoken brief"), SPOKEN_PAGES);
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("who says what"));
  ff_sheet_caution (sheet, FF_CAUTION_NOTE,
                    _ ("Two minutes, standing where all see the spot. What is not said back was "
                       "not heard: say it again."));
  block = ff_sheet_row (sheet);
  block->keep_next = TRUE;
  block->space_above = 4;
  ff_cell_text (ff_sheet_block_cell (block, WHO), FF_SIZE_LABEL, FALSE, _ ("who"));
  ff_cell_text (ff_sheet_block_cell (block, SAY_SHARE), FF_SIZE_LABEL, FALSE, _ ("says"));
  ff_cell_text (ff_sheet_block_cell (block, BACK_SHARE), FF_SIZE_LABEL, FALSE, _ ("said back"));
  add_day (sheet, facts, plan);
  add_place (sheet, facts);
  add_limits (sheet, facts);
  add_watch (sheet, facts);
  add_stop (sheet, facts);
  add_chart (sheet, facts, plan);
  return sheet;
}
