/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Turn-round slips: what is done between a landing and the next take-off, to be ticked and written on
 * at the van, a slip for each landing. Cut apart, so each says of which job and version it is. */
#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-say.h"
#include "ff-sheets.h"

#define BOX "□  "

static FfSheetBlock *
add_row (FfSheet *sheet)
{
  FfSheetBlock *block = ff_sheet_row (sheet);

  block->on_baseline = TRUE;
  block->keep_next = TRUE;
  return block;
}

/* A square to tick, and what was done. */
static void
add_tick (FfSheetBlock *block, double width, const char *what)
{
  FfCell *cell = ff_sheet_block_cell (block, width);

  ff_cell_text (cell, FF_SIZE_LINE, FALSE, BOX);
  ff_cell_more (cell, FF_SIZE_CAMERA, TRUE, what);
}

static void
add_blank (FfSheetBlock *block, double width, const char *label)
{
  FfCell *cell = ff_sheet_block_cell (block, width);

  ff_cell_text (cell, FF_SIZE_BODY, FALSE, label);
  cell->write_on = 24;
}

/* Which landing, of which job; and what it leads to. */
static void
add_head (FfSheet *sheet,
          const FfSheetFacts *facts,
          const FfPlanLine *line,
          const FfPlanLine *next)
{
  g_autofree char *land_by = ff_instant_clock ((double) line->land_by, facts->zone);
  /* Translators: on a slip: number of the sortie, and the time by which it is down. */
  g_autofree char *title = g_strdup_printf (_ ("After sortie %d, land by %s"), line->line, land_by);
  g_autofree char *whose = g_strdup_printf (_ ("%s, version %s"), facts->job, facts->version);
  FfSheetBlock *block = add_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  ff_cell_text (cell, FF_SIZE_LINE, TRUE, title);
  if (next != NULL)
    {
      g_autofree char *off_by = ff_instant_clock ((double) next->off_by, facts->zone);
      g_autofree char *then = g_strdup_printf (_ ("then sortie %d, off by %s"), next->line, off_by);

      ff_cell_text (cell, FF_SIZE_CAMERA, FALSE, then);
    }
  cell = ff_sheet_block_cell (block, -1);
  cell->to_right = TRUE;
  ff_cell_text (cell, FF_SIZE_LABEL, FALSE, whose);
  block->outline = g_strdup (title);
  block->heading = TRUE;
}

static char *
filter_words (const FfPlanLine *line, const FfPlanLine *next)
{
  g_autofree char *stops = ff_say_stops (line);

  if (line->turn_round != NULL && *line->turn_round != '\0')
    return g_strdup (line->turn_round);
  if (next == NULL)
    return g_strdup (_ ("filter into its slot, wallet counted"));
  return g_strdup_printf (_ ("filter stays on: %s"), stops);
}

static void
add_slip (FfSheet *sheet,
          const FfSheetFacts *facts,
          const FfPlanLine *line,
          const FfPlanLine *next)
{
  g_autofree char *out = g_strdup_printf (_ ("battery %s out"), line->battery);
  g_autofree char *filter = filter_words (line, next);
  FfSheetBlock *block;

  add_head (sheet, facts, line, next);
  block = add_row (sheet);
  add_tick (block, -1, _ ("motors stopped"));
  add_tick (block, -1, out);
  block = add_row (sheet);
  add_tick (block, -1, filter);
  block = add_row (sheet);
  if (next != NULL)
    {
      g_autofree char *in = g_strdup_printf (_ ("battery %s in, latch pulled"), next->battery);

      add_tick (block, -1, in);
    }
  else
    add_tick (block, -1, _ ("batteries counted"));
  add_tick (block, -1, _ ("card and time left read out"));
  block = add_row (sheet);
  block->space_above = 6;
  add_blank (block, -4, _ ("down at"));
  add_blank (block, -3, _ ("left %"));
  add_blank (block, -3, "°C");
  add_blank (block, -3, "V");
  /* Translators: minutes left on the card. */
  add_blank (block, -4, _ ("card min"));
  add_blank (block, -4, _ ("initials"));
}

/* Where the scissors go. */
static void
add_cut (FfSheet *sheet)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  cell->to_right = TRUE;
  /* Translators: along a line, for scissors. */
  ff_cell_text (cell, FF_SIZE_LABEL, FALSE, _ ("cut here"));
  block->rule_above = FF_STROKE_THIN;
  block->space_above = 10;
}

FfSheet *
ff_slip_sheet (const FfSheetFacts *facts, const FfDayPlan *plan)
{
  FfSheet *sheet
      = ff_sheet_new (FF_READER_PILOT, _ ("Turn-round slips"), MAX (plan->lines->len, 1));

  if (plan->lines->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_LINE, _ ("No sortie is planned."));
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);
      g_autofree char *part = g_strdup_printf (_ ("sortie %d"), line->line);

      ff_sheet_begin_part (sheet, part);
      add_slip (sheet, facts, line,
                i + 1 < plan->lines->len ? g_ptr_array_index (plan->lines, i + 1) : NULL);
      add_cut (sheet);
    }
  return sheet;
}
