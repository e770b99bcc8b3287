/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pilot's sheet: on the front what is flown, from where and within what; on the back what to do
 * when it goes wrong, and what changes. */
#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-emergency-card.h"
#include "ff-limit-say.h"
#include "ff-say.h"
#include "ff-sheets.h"
#include "ff-wind-sketch.h"

#define PAGES 2
#define INSET 28    /* of what belongs to a sortie, under its number */
#define SKETCH 72.0 /* of wind and sun */
#define LAND_BY_LABEL 34 /* one word over the other */

static int
minutes_in_air (const FfPlanLine *line)
{
  return (int) ((line->land_by - line->off_by) / FF_MINUTE);
}

static int
common_minutes (const FfDayPlan *plan)
{
  int common = 0;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      int minutes = minutes_in_air (g_ptr_array_index (plan->lines, i));

      if (i > 0 && minutes != common)
        return 0;
      common = minutes;
    }
  return common;
}

static void
add_cautions (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *missing = NULL;
  /* Translators: the sentence between says how limits stand: "□ 7 limits not assessed." */
  g_autofree char *standing
      = g_strdup_printf (_ ("This sheet is no permission. %s Airspace and notices are not known to "
                            "this program. The pilot decides."),
                         facts->limits_stand);

  ff_sheet_caution (sheet, FF_CAUTION_WARNING, standing);
  missing = ff_say_sentences (facts->missing);
  if (*missing != '\0')
    ff_sheet_caution (sheet, FF_CAUTION_CAUTION, missing);
}

static char *
land_by_rule (int minutes)
{
  if (minutes <= 0)
    return g_strdup (_ ("Land by the time shown, or the minutes shown after off, or at the "
                        "reserve: whichever comes first."));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "Land by the time shown, or %d minute after off, or at the "
                                       "reserve: whichever comes first.",
                                       "Land by the time shown, or %d minutes after off, or at "
                                       "the reserve: whichever comes first.",
                                       (gulong) minutes),
                          minutes);
}

static void
add_land_by_rule (FfSheet *sheet, int common_minutes)
{
  g_autofree char *rule = land_by_rule (common_minutes);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  block->space_above = 5;
  block->keep_next = TRUE;
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, rule);
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, _ ("The aircraft's own reading wins."));
}

static void
add_missed (FfSheet *sheet, const FfDayPlan *plan)
{
  if (plan->missed->len == 0)
    return;
  ff_sheet_begin_part (sheet, _ ("what is not flown"));
  ff_sheet_heading (sheet, _ ("Not flown"));
  for (guint i = 0; i < plan->missed->len; i++)
    {
      const FfPlanMiss *miss = g_ptr_array_index (plan->missed, i);
      FfSheetBlock *block = ff_sheet_row (sheet);
      FfCell *cell = ff_sheet_block_cell (block, -1);

      ff_cell_text (cell, FF_SIZE_LINE, TRUE, miss->shot);
      ff_cell_more (cell, FF_SIZE_LINE, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_LINE, FALSE, miss->title);
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, miss->reason);
      block->bar = FF_STROKE_BAR;
      block->space_above = 2;
    }
}

/* What is flown: a letter that is found at a glance, and the words for it. */
static void
add_takes (FfSheetBlock *block, const FfPlanLine *line)
{
  FfCell *cell = ff_sheet_block_cell (block, -1);

  for (guint i = 0; i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      ff_cell_text (cell, FF_SIZE_LINE, TRUE, take->shot);
      ff_cell_more (cell, FF_SIZE_LINE, FALSE, " ");
      ff_cell_more (cell, FF_SIZE_LINE, FALSE, take->title);
    }
}

static void
add_filter (FfSheetBlock *block, const FfPlanLine *line)
{
  g_autofree char *stops = ff_say_stops (line);
  g_autofree char *engraving = ff_say_engraving (line);
  FfCell *cell = ff_sheet_block_cell (block, 96);

  ff_cell_text (cell, FF_SIZE_LINE, TRUE, stops);
  if (*engraving != '\0')
    ff_cell_text (cell, FF_SIZE_LINE, FALSE, engraving);
  cell->stops = ff_say_has_filter (line) ? line->filter_stops : 0;
  cell->block_side = 30;
}

/* When it is down, the largest on the page. Where the minutes in the air are the same for all they
 * are said once, above the lines; else each line says its own. */
static void
add_land_by (FfSheetBlock *block, const FfPlanLine *line, GTimeZone *zone, gboolean same_minutes)
{
  g_autofree char *land_by = ff_instant_clock ((double) line->land_by, zone);
  g_autofree char *minutes = NULL;
  FfCell *cell = ff_sheet_block_cell (block, same_minutes ? LAND_BY_LABEL : 128);

  /* Translators: the time follows by which the aircraft is down. */
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("LAND BY"));
  if (same_minutes)
    {
      ff_cell_text (ff_sheet_block_cell (block, 72), FF_SIZE_LAND_BY, TRUE, land_by);
      return;
    }
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_LAND_BY, TRUE, land_by);
  /* Translators: land by the time shown, or so many minutes after off. */
  minutes = g_strdup_printf (_ ("or off + %d min"), minutes_in_air (line));
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, minutes);
}

/* The line that is flown by: everything the pilot looks for between two flights. */
static void
add_line_row (FfSheet *sheet, const FfPlanLine *line, GTimeZone *zone, int common_minutes)
{
  g_autofree char *number = g_strdup_printf ("%d", line->line);
  g_autofree char *off_by = ff_instant_clock ((double) line->off_by, zone);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  block->gap = 5;
  ff_cell_text (ff_sheet_block_cell (block, 17),
                line->line < 10 ? FF_SIZE_LAND_BY : FF_SIZE_BODY, TRUE, number);
  cell = ff_sheet_block_cell (block, 48);
  /* Translators: the time follows by which the aircraft takes off. */
  ff_cell_text (cell, FF_SIZE_LABEL, FALSE, _ ("off by"));
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, off_by);
  add_land_by (block, line, zone, common_minutes != 0);
  cell = ff_sheet_block_cell (block, 44);
  ff_cell_text (cell, FF_SIZE_LABEL, FALSE, _ ("battery"));
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, line->battery);
  add_filter (block, line);
  add_takes (block, line);
  block->rule_above = FF_STROKE_THICK;
}

/* Which way the wind takes the run, under its shot: the pilot's to know before the camera's. */
static void
add_run (FfSheet *sheet, const FfPlanTake *take)
{
  FfSheetBlock *block = g_ptr_array_index (sheet->blocks, sheet->blocks->len - 1);

  if (take->run == NULL)
    return;
  block->keep_next = TRUE;
  block = ff_sheet_row (sheet);
  block->inset = INSET;
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_BODY, FALSE, take->run);
}

static void
add_line (FfSheet *sheet, const FfPlanLine *line, GTimeZone *zone, int common_minutes)
{
  /* Translators: a part of the sheet, named where it did not fit. */
  g_autofree char *part = g_strdup_printf (_ ("sortie %d"), line->line);

  ff_sheet_begin_part (sheet, part);
  add_line_row (sheet, line, zone, common_minutes);
  for (guint i = 0; i < line->takes->len; i++)
    add_run (sheet, g_ptr_array_index (line->takes, i));
}

static void
add_sorties (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  const int minutes = common_minutes (plan);

  ff_sheet_begin_part (sheet, _ ("cautions"));
  add_cautions (sheet, facts);
  add_missed (sheet, plan);
  ff_sheet_begin_part (sheet, _ ("sorties"));
  if (plan->lines->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_LINE, _ ("No sortie is planned."));
  else
    add_land_by_rule (sheet, minutes);
  for (guint i = 0; i < plan->lines->len; i++)
    add_line (sheet, g_ptr_array_index (plan->lines, i), facts->zone, minutes);
}

static void
add_spots (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("take-off and landing"));
  block = ff_sheet_row (sheet);
  block->outline = g_strdup (_ ("Take-off and landing"));
  block->rule_above = FF_STROKE_THICK;
  block->space_above = 4;
  ff_sheet_block_fact (block, -4, FF_SIZE_CAMERA, _ ("take-off spot"), facts->takeoff_spot);
  ff_sheet_block_fact (block, -4, FF_SIZE_CAMERA, _ ("second landing spot"), facts->second_spot);
  ff_sheet_block_fact (block, -5, FF_SIZE_CAMERA, _ ("if the link is lost"), facts->return_height);
  for (guint i = 0; i < block->cells->len; i++)
    {
      FfCell *cell = g_ptr_array_index (block->cells, i);

      if (((FfText *) g_ptr_array_index (cell->texts, 1))->text->len == 0)
        cell->write_on = 60;
    }
}

static const FfSheetMember *
find_role (const FfSheetFacts *facts, FfRole role)
{
  for (guint i = 0; i < facts->crew->len; i++)
    {
      const FfSheetMember *member = g_ptr_array_index (facts->crew, i);

      if (member->role == role)
        return member;
    }
  return NULL;
}

/* In flight one voice reaches the pilot. */
static void
add_voice (FfSheet *sheet, const FfSheetFacts *facts)
{
  const FfSheetMember *lead = find_role (facts, FF_ROLE_LEAD);
  FfSheetBlock *block;
  FfCell *cell;

  ff_sheet_begin_part (sheet, _ ("who may speak to me"));
  block = ff_sheet_row (sheet);
  block->outline = g_strdup (_ ("Who may speak to me in flight"));
  block->rule_above = FF_STROKE_THIN;
  block->space_above = 3;
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, _ ("In flight only"));
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_LINE, TRUE, lead != NULL ? lead->name : "");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, lead != NULL ? "  " : "");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE,
                _ ("crew lead, and the observer's calls, speak to me"));
  if (lead == NULL)
    cell->write_on = 100;
  if (lead != NULL && *lead->phone != '\0')
    {
      cell = ff_sheet_block_cell (block, 150);
      cell->to_right = TRUE;
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, lead->phone);
    }
  block->on_baseline = TRUE;
}

/* Whose rules follow is said once for all that are the same; then each with its bound. */
static void
add_limits (FfCell *cell, const FfSheetFacts *facts)
{
  const char *whose = NULL;

  ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("Limits"))->space_above = 3;
  if (facts->limits->len == 0)
    {
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, _ ("No limit is entered. The pilot sets them."));
    }
  for (guint i = 0; i < facts->limits->len; i++)
    {
      const FfSheetLimit *limit = g_ptr_array_index (facts->limits, i);
      const gboolean same = whose != NULL && g_str_equal (whose, limit->whose);

      if (!same && whose != NULL)
        ff_cell_text (cell, FF_SIZE_BODY, FALSE, "");
      if (!same)
        {
          ff_cell_more (cell, FF_SIZE_LABEL, FALSE, whose == NULL ? "  " : "");
          ff_cell_more (cell, FF_SIZE_LABEL, FALSE, limit->whose);
          ff_cell_more (cell, FF_SIZE_LABEL, FALSE, ": ");
        }
      else
        ff_cell_more (cell, FF_SIZE_BODY, FALSE, " · ");
      whose = limit->whose;
      ff_limit_say (cell, limit);
    }
}

static void
draw_wind (cairo_t *cr, gconstpointer data, double width, double height)
{
  ff_wind_sketch_draw (cr, data, &ff_palette_paper, width, height);
}

static void
add_to (FfCell *cell, const char *label, const char *value)
{
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, label);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, TRUE, value);
}

/* Wind and sun as a sketch and in words; beside them within what the day is flown. */
static void
add_wind (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *wind = ff_say_two (facts->wind, "; ", facts->weather);
  g_autofree char *events = ff_say_all (facts->events, " · ");
  FfSheetBlock *block;
  FfCell *cell;

  ff_sheet_begin_part (sheet, _ ("wind, sun and limits"));
  block = ff_sheet_row (sheet);
  block->outline = g_strdup (_ ("Wind, sun and limits"));
  block->rule_above = FF_STROKE_THIN;
  block->space_above = 3;
  if (facts->compass != NULL)
    block->drawing = (FfDrawing){ SKETCH, SKETCH, draw_wind, facts->compass, NULL };
  cell = ff_sheet_block_cell (block, -1);
  add_to (cell, _ ("wind"), wind);
  if (*wind == '\0')
    ff_cell_more (cell, FF_SIZE_BODY, FALSE, "________________");
  /* Translators: the marks are those of the sketch beside it: where the sun stands. */
  add_to (cell, facts->compass != NULL ? _ ("sun (○ first, ● last)") : _ ("sun"),
          facts->sun_times);
  if (*events != '\0')
    add_to (cell, _ ("events"), events);
  add_limits (cell, facts);
}

/* What the program can't know stands open until someone has asked today. */
static void
add_airspace (FfSheet *sheet)
{
  const struct {
    const char *label;
    double shares;
  } blanks[] = { { _ ("checked at"), -3 }, { _ ("by"), -2 }, { _ ("contact"), -4 } };
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("airspace"));
  block = ff_sheet_row (sheet);
  block->space_above = 2;
  block->rule_above = FF_STROKE_THICK;
  ff_cell_text (ff_sheet_block_cell (block, 136), FF_SIZE_LINE, FALSE, "");
  ff_cell_more (g_ptr_array_index (block->cells, 0), FF_SIZE_BODY, TRUE,
                _ ("Airspace and notices"));
  for (guint i = 0; i < G_N_ELEMENTS (blanks); i++)
    {
      FfCell *cell = ff_sheet_block_cell (block, blanks[i].shares);

      ff_cell_text (cell, FF_SIZE_LINE, FALSE, "");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, blanks[i].label);
      cell->write_on = 40;
    }
}

/* A label and texts that run on after it; nothing where there are none. */
static FfCell *
add_running (FfSheet *sheet, const char *outline, const char *label)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  block->outline = g_strdup (outline);
  block->rule_above = FF_STROKE_THIN;
  block->may_split = TRUE;
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, label);
  return cell;
}

static void
add_hazards (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfCell *cell = NULL;

  ff_sheet_begin_part (sheet, _ ("hazards"));
  for (guint i = 0; i < facts->hazards->len; i++)
    {
      const FfSheetHazard *hazard = g_ptr_array_index (facts->hazards, i);

      if (i == 0)
        cell = add_running (sheet, _ ("Hazards"), _ ("hazards"));
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, i > 0 ? "  ·  " : "  ");
      ff_cell_more (cell, FF_SIZE_BODY, TRUE, hazard->what);
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, *hazard->measure != '\0' ? " " : "");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, hazard->measure);
    }
}

FfSheet *
ff_pilot_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_PILOT, _ ("Pilot"), PAGES);

  sheet->two_sided = TRUE;
  add_sorties (sheet, facts, plan);
  add_spots (sheet, facts);
  add_voice (sheet, facts);
  add_airspace (sheet);
  add_wind (sheet, facts);
  ff_sheet_to_last_page (sheet);
  ff_emergency_card_add (sheet, facts);
  add_hazards (sheet, facts);
  ff_sheet_amendment_box (sheet);
  return sheet;
}
