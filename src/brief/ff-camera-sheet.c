/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The camera operator's sheet: what to fit and set on the front, what was taken on the back. */
#include <glib/gi18n-lib.h>

#include "ff-say.h"
#include "ff-sheets.h"

#define PAGES 2
#define FILTER_WIDTH 148 /* of the column that says what to fit */

static const FfSheetShot *
find_shot (const FfSheetFacts *facts, const char *label)
{
  for (guint i = 0; i < facts->shots->len; i++)
    {
      const FfSheetShot *shot = g_ptr_array_index (facts->shots, i);

      if (g_str_equal (shot->shot, label))
        return shot;
    }
  return NULL;
}

/* What to fit, under all its names, and for which flight. */
static void
add_filter (FfCell *cell, const FfPlanLine *line)
{
  g_autofree char *stops = ff_say_stops (line);
  g_autofree char *engraving = ff_say_engraving (line);
  g_autofree char *strength = ff_say_strength (line->filter_stops);
  const gboolean fitted = ff_say_has_filter (line);

  ff_cell_text (cell, fitted ? FF_SIZE_GLANCE : FF_SIZE_LAND_BY, TRUE, stops);
  if (fitted)
    {
      ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, engraving);
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, strength);
    }
  cell->stops = fitted ? line->filter_stops : 0;
  cell->block_side = 32;
}

/* A fact that goes on in the last paragraph. */
static void
add_fact (FfCell *cell, const char *text)
{
  if (*text == '\0')
    return;
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, " · ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, text);
}

static void
add_caution (FfCell *cell, const char *caution)
{
  if (*caution == '\0')
    return;
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("CAUTION"));
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, caution);
}

/* What the light does, what the planner remarks on, what the crew noted. */
static void
add_light (FfCell *cell, const FfPlanTake *take, const FfSheetShot *shot)
{
  g_autofree char *need = ff_say_need (take);
  g_autofree char *rate = ff_say_rate (take);
  g_autofree char *remarks = ff_say_sentences (take->remarks);

  ff_cell_text (cell, FF_SIZE_BODY, FALSE, rate);
  add_fact (cell, need);
  if (shot != NULL)
    add_fact (cell, shot->sun);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, *remarks != '\0' ? ". " : "");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, remarks);
  if (shot != NULL && *shot->note != '\0')
    ff_cell_text (cell, FF_SIZE_BODY, FALSE, shot->note);
}

static void
add_take (FfCell *cell, const FfPlanTake *take, const FfSheetShot *shot, GTimeZone *zone)
{
  g_autofree char *span = ff_say_span (take->from, take->to, zone);
  g_autofree char *settings = ff_say_settings (take);
  FfText *first = ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, take->shot);

  first->space_above = cell->texts->len > 1 ? 4 : 0;
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, take->title);
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_CAMERA, FALSE, span);
  if (shot != NULL)
    add_caution (cell, shot->caution);
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, settings);
  add_light (cell, take, shot);
}

static void
add_line (FfSheet *sheet, const FfSheetFacts *facts, const FfPlanLine *line)
{
  g_autofree char *part = g_strdup_printf (_ ("sortie %d"), line->line);
  FfSheetBlock *block;
  FfCell *cell;

  ff_sheet_begin_part (sheet, part);
  block = ff_sheet_row (sheet);
  block->rule_above = FF_STROKE_THICK;
  block->space_above = 4;
  add_filter (ff_sheet_block_cell (block, FILTER_WIDTH), line);
  cell = ff_sheet_block_cell (block, -1);
  for (guint i = 0; i < line->takes->len; i++)
    {
      const FfPlanTake *take = g_ptr_array_index (line->takes, i);

      add_take (cell, take, find_shot (facts, take->shot), facts->zone);
    }
  if (*line->trim != '\0')
    ff_cell_text (cell, FF_SIZE_BODY, FALSE, line->trim);
}

/* What holds for the whole day. */
static void
add_day (FfSheet *sheet, const FfSheetFacts *facts, const FfDayPlan *plan)
{
  g_autofree char *cards = NULL;
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("notes of the day"));
  for (guint i = 0; i < plan->clashes->len; i++)
    {
      block = ff_sheet_caution (sheet, FF_CAUTION_NOTE, g_ptr_array_index (plan->clashes, i));
      block->space_above = 6;
    }
  /* Translators: the memory cards of the day follow. */
  cards = g_strdup_printf (_ ("Cards: %s"), facts->cards);
  block = ff_sheet_paragraph (sheet, FF_SIZE_BODY, *facts->cards != '\0' ? cards : "");
  add_fact (g_ptr_array_index (block->cells, 0), facts->light_source);
  block->space_above = 4;
}

static void
add_form (FfSheet *sheet)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("the camera sheet to fill in"));
  ff_sheet_to_last_page (sheet);
  block = ff_sheet_form (sheet, 0);
  block->space_above = 8;
  block->outline = g_strdup (_ ("Camera sheet to fill in"));
  ff_cell_text (ff_sheet_block_cell (block, 34), FF_SIZE_LABEL, FALSE, _ ("shot"));
  ff_cell_text (ff_sheet_block_cell (block, 32), FF_SIZE_LABEL, FALSE, _ ("take"));
  ff_cell_text (ff_sheet_block_cell (block, 70), FF_SIZE_LABEL, FALSE, _ ("clip"));
  ff_cell_text (ff_sheet_block_cell (block, 60), FF_SIZE_LABEL, FALSE, _ ("filter fitted"));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_LABEL, FALSE, _ ("settings"));
  ff_cell_text (ff_sheet_block_cell (block, 34), FF_SIZE_LABEL, FALSE, _ ("good"));
  ff_cell_text (ff_sheet_block_cell (block, 34), FF_SIZE_LABEL, FALSE, _ ("hold"));
  ff_cell_text (ff_sheet_block_cell (block, 34), FF_SIZE_LABEL, FALSE, _ ("no"));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_LABEL, FALSE, _ ("note"));
  for (guint i = 5; i < 8; i++)
    ((FfCell *) g_ptr_array_index (block->cells, i))->tick = TRUE;
}

FfSheet *
ff_camera_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_CAMERA, _ ("Camera operator"), PAGES);

  sheet->two_sided = TRUE;
  for (guint i = 0; i < plan->lines->len; i++)
    add_line (sheet, facts, g_ptr_array_index (plan->lines, i));
  add_day (sheet, facts, plan);
  add_form (sheet);
  return sheet;
}
