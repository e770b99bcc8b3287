/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pilot's sheet: what is flown on the front, where and within what on the back. */
#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-say.h"
#include "ff-sheets.h"

#define PAGES 2
#define INSET 32 /* of what belongs to a sortie, under its number */

/* What is the same on every line, and so is said once above them. */
typedef struct {
  int minutes;    /* from off to land by; 0: not the same */
  char *aperture; /* NULL: not the same */
} Common;

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

static char *
common_aperture (const FfDayPlan *plan)
{
  g_autofree char *common = NULL;

  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (guint t = 0; t < line->takes->len; t++)
        {
          g_autofree char *aperture = ff_say_aperture (g_ptr_array_index (line->takes, t));

          if (common != NULL && !g_str_equal (common, aperture))
            return NULL;
          g_free (common);
          common = g_strdup (aperture);
        }
    }
  return g_steal_pointer (&common);
}

static void
add_cautions (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *missing = NULL;

  ff_sheet_caution (sheet, FF_CAUTION_WARNING,
                    _ ("This sheet is no permission. Nothing entered here is open. Airspace and "
                       "notices are not known to this program. The pilot decides."));
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
add_land_by_rule (FfSheet *sheet, const Common *common)
{
  g_autofree char *rule = land_by_rule (common->minutes);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  block->space_above = 5;
  block->keep_next = TRUE;
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, rule);
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, _ ("The aircraft's own reading wins."));
  if (common->aperture != NULL)
    {
      /* Translators: an aperture follows, the same for the whole day. */
      g_autofree char *aperture = g_strdup_printf (_ ("Every shot at %s."), common->aperture);

      ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, aperture);
    }
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

/* The line that is flown by: everything the pilot looks for between two flights. */
static void
add_line_head (FfSheet *sheet, const FfPlanLine *line, GTimeZone *zone, const Common *common)
{
  g_autofree char *number = g_strdup_printf ("%d", line->line);
  g_autofree char *off_by = ff_instant_clock ((double) line->off_by, zone);
  g_autofree char *land_by = ff_instant_clock ((double) line->land_by, zone);
  g_autofree char *stops = ff_say_stops (line);
  g_autofree char *engraving = ff_say_engraving (line);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  ff_cell_text (ff_sheet_block_cell (block, INSET - 8),
                line->line < 10 ? FF_SIZE_LAND_BY : FF_SIZE_LINE, TRUE, number);
  cell = ff_sheet_block_cell (block, 90);
  /* Translators: the time follows by which the aircraft takes off. */
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, _ ("off by"));
  ff_cell_more (cell, FF_SIZE_LINE, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_LINE, TRUE, off_by);
  cell = ff_sheet_block_cell (block, 140);
  /* Translators: the time follows by which the aircraft is down. */
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("LAND BY"));
  ff_cell_more (cell, FF_SIZE_LINE, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_LAND_BY, TRUE, land_by);
  if (common->minutes == 0)
    {
      /* Translators: land by the time shown, or so many minutes after off. */
      g_autofree char *minutes = g_strdup_printf (_ ("or off + %d min"), minutes_in_air (line));

      ff_cell_text (cell, FF_SIZE_BODY, TRUE, minutes);
    }
  cell = ff_sheet_block_cell (block, 84);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, _ ("battery"));
  ff_cell_more (cell, FF_SIZE_LINE, FALSE, " ");
  ff_cell_more (cell, FF_SIZE_LINE, TRUE, line->battery);
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, stops);
  if (*engraving != '\0')
    {
      ff_cell_more (cell, FF_SIZE_LINE, FALSE, "  ");
      ff_cell_more (cell, FF_SIZE_LINE, FALSE, engraving);
    }
  cell->stops = ff_say_has_filter (line) ? line->filter_stops : 0;
  cell->block_side = 30;
  block->rule_above = FF_STROKE_THICK;
  block->space_above = 4;
  block->on_baseline = TRUE;
  block->keep_next = TRUE;
  block->heading = TRUE;
}

static void
add_take (FfSheet *sheet, const FfPlanTake *take, GTimeZone *zone, const Common *common)
{
  g_autofree char *span = ff_say_span (take->from, take->to, zone);
  g_autofree char *settings = ff_say_short_settings (take);
  g_autofree char *aperture = ff_say_aperture (take);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  block->inset = INSET;
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, take->shot);
  ff_cell_more (cell, FF_SIZE_LINE, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_LINE, FALSE, take->title);
  ff_cell_text (ff_sheet_block_cell (block, 103), FF_SIZE_LINE, FALSE, span);
  cell = ff_sheet_block_cell (block, 188);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, settings);
  if (common->aperture == NULL)
    {
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, " · ");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, aperture);
    }
  block->on_baseline = TRUE;
  block->keep_next = TRUE;
}

/* Which way the wind takes the run, under its shot: the pilot's to know before the camera's. */
static void
add_run (FfSheet *sheet, const FfPlanTake *take)
{
  FfSheetBlock *block;

  if (take->run == NULL)
    return;
  block = ff_sheet_paragraph (sheet, FF_SIZE_BODY, take->run);
  block->inset = INSET;
  block->may_split = FALSE;
  block->keep_next = TRUE;
}

static void
add_line (FfSheet *sheet, const FfPlanLine *line, GTimeZone *zone, const Common *common)
{
  /* Translators: a part of the sheet, named where it did not fit. */
  g_autofree char *part = g_strdup_printf (_ ("sortie %d"), line->line);
  FfSheetBlock *last;

  ff_sheet_begin_part (sheet, part);
  add_line_head (sheet, line, zone, common);
  for (guint i = 0; i < line->takes->len; i++)
    {
      add_take (sheet, g_ptr_array_index (line->takes, i), zone, common);
      add_run (sheet, g_ptr_array_index (line->takes, i));
    }
  if (*line->trim != '\0')
    {
      last = ff_sheet_paragraph (sheet, FF_SIZE_BODY, line->trim);
      last->inset = INSET;
      last->may_split = FALSE;
    }
  last = g_ptr_array_index (sheet->blocks, sheet->blocks->len - 1);
  last->keep_next = FALSE;
}

static void
add_front (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  g_autofree char *aperture = common_aperture (plan);
  const Common common = { common_minutes (plan), aperture };

  ff_sheet_begin_part (sheet, _ ("cautions"));
  add_cautions (sheet, facts);
  add_missed (sheet, plan);
  ff_sheet_begin_part (sheet, _ ("sorties"));
  if (plan->lines->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_LINE, _ ("No sortie is planned."));
  else
    add_land_by_rule (sheet, &common);
  for (guint i = 0; i < plan->lines->len; i++)
    add_line (sheet, g_ptr_array_index (plan->lines, i), facts->zone, &common);
}

/* A named fact; where nobody has entered it, a line to write it on. */
static void
add_named (FfSheet *sheet, const char *name, const char *value)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  ff_cell_text (ff_sheet_block_cell (block, 104), FF_SIZE_BODY, FALSE, name);
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, value);
  if (*value == '\0')
    cell->write_on = 100;
  block->on_baseline = TRUE;
}

static void
add_spots (FfSheet *sheet, const FfSheetFacts *facts)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("take-off and landing"));
  ff_sheet_heading (sheet, _ ("Take-off and landing"));
  block = ff_sheet_row (sheet);
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
  ff_sheet_heading (sheet, _ ("Who may speak to me in flight"));
  block = ff_sheet_row (sheet);
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, lead != NULL ? lead->name : "");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, lead != NULL ? "  " : "");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, _ ("crew lead, and the observer's calls"));
  if (lead == NULL)
    cell->write_on = 160;
  if (lead != NULL && *lead->phone != '\0')
    {
      cell = ff_sheet_block_cell (block, 150);
      cell->to_right = TRUE;
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, lead->phone);
    }
  block->on_baseline = TRUE;
}

static void
add_day (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autofree char *events = ff_say_all (facts->events, "  ·  ");
  g_autofree char *sun = ff_say_two (facts->sun_times, ". ", facts->sun_check);
  g_autofree char *wind = ff_say_two (facts->wind, "; ", facts->weather);

  ff_sheet_begin_part (sheet, _ ("the day"));
  ff_sheet_heading (sheet, _ ("The day"));
  add_named (sheet, _ ("hours"), facts->hours);
  add_named (sheet, _ ("sun"), sun);
  add_named (sheet, _ ("wind"), wind);
  if (*events != '\0')
    add_named (sheet, _ ("events"), events);
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
  block->space_above = 6;
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

static void
add_limit (FfSheetBlock *block, const FfSheetLimit *limit)
{
  FfCell *cell = ff_sheet_block_cell (block, -1);

  ff_cell_text (cell, FF_SIZE_BODY, FALSE, limit->text);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, TRUE, limit->bound);
}

/* Whose rules follow is said once for all that are the same, two to a row. */
static void
add_limits (FfSheet *sheet, const FfSheetFacts *facts)
{
  const char *whose = NULL;
  FfSheetBlock *block = NULL;

  ff_sheet_begin_part (sheet, _ ("limits"));
  ff_sheet_heading (sheet, _ ("Limits, as the crew entered them"));
  if (facts->limits->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_BODY, _ ("No limit is entered. The pilot sets them."));
  for (guint i = 0; i < facts->limits->len; i++)
    {
      const FfSheetLimit *limit = g_ptr_array_index (facts->limits, i);

      if (whose == NULL || !g_str_equal (whose, limit->whose))
        {
          ff_sheet_paragraph (sheet, FF_SIZE_LABEL, limit->whose)->keep_next = TRUE;
          block = NULL;
        }
      whose = limit->whose;
      if (block == NULL || block->cells->len == 2)
        block = ff_sheet_row (sheet);
      add_limit (block, limit);
    }
}

static void
add_hazards (FfSheet *sheet, const FfSheetFacts *facts)
{
  if (facts->hazards->len == 0)
    return;
  ff_sheet_begin_part (sheet, _ ("hazards"));
  ff_sheet_heading (sheet, _ ("Hazards"));
  for (guint i = 0; i < facts->hazards->len; i++)
    {
      const FfSheetHazard *hazard = g_ptr_array_index (facts->hazards, i);
      FfSheetBlock *block = ff_sheet_row (sheet);
      FfCell *cell = ff_sheet_block_cell (block, -1);

      ff_cell_text (cell, FF_SIZE_BODY, TRUE, hazard->what);
      if (*hazard->measure != '\0')
        {
          ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
          ff_cell_more (cell, FF_SIZE_BODY, FALSE, hazard->measure);
        }
      block->may_split = TRUE;
    }
}

static void
add_amendments (FfSheet *sheet)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("amendments"));
  ff_sheet_heading (sheet, _ ("Amendments, as read out"));
  block = ff_sheet_form (sheet, 3);
  /* Translators: number of an amendment; head of a narrow column. */
  ff_cell_text (ff_sheet_block_cell (block, 28), FF_SIZE_LABEL, FALSE, _ ("no."));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_LABEL, FALSE, _ ("what changes"));
  ff_cell_text (ff_sheet_block_cell (block, 56), FF_SIZE_LABEL, FALSE, _ ("time"));
  ff_cell_text (ff_sheet_block_cell (block, 56), FF_SIZE_LABEL, FALSE, _ ("initials"));
}

FfSheet *
ff_pilot_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_PILOT, _ ("Pilot"), PAGES);

  add_front (sheet, facts, plan);
  add_spots (sheet, facts);
  add_voice (sheet, facts);
  add_day (sheet, facts);
  add_limits (sheet, facts);
  add_hazards (sheet, facts);
  add_airspace (sheet);
  add_amendments (sheet);
  return sheet;
}
