/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The weather call on one side of paper: the limits with their answers, what was measured and
 * reported and when, what was decided, by whom and why. It decides nothing. */
#include <glib/gi18n-lib.h>

#include "ff-sheets.h"

#define PAGES 1
#define MOST_MEASURED 8 /* the newest; the store keeps all */
#define MOST_REPORTS 2
#define MOST_CALLS 6

static void
add_call (FfSheet *sheet, const FfWeatherToday *today)
{
  ff_sheet_begin_part (sheet, _ ("decision"));
  ff_sheet_heading (sheet, _ ("Decided by the crew"));
  if (today->calls->len == 0)
    {
      FfSheetBlock *block = ff_sheet_row (sheet);

      ff_sheet_block_cell (block, -1)->write_on = 120;
      ff_cell_text (g_ptr_array_index (block->cells, 0), FF_SIZE_BODY, FALSE,
                    _ ("Nothing is decided yet. Go, stand by or no go, by whom, why:"));
    }
  for (guint i = 0; i < today->calls->len && i < MOST_CALLS; i++)
    {
      FfSheetBlock *block = ff_sheet_row (sheet);

      ff_cell_text (ff_sheet_block_cell (block, -1), i == 0 ? FF_SIZE_LINE : FF_SIZE_BODY, i == 0,
                    g_ptr_array_index (today->calls, i));
    }
}

static const char *
found_or_reason (const FfLimitToday *row)
{
  return *row->found != '\0' ? row->found : row->reason;
}

/* "✕ OUTSIDE  gust at flying height: at most 9 m/s", what was found, whose rule and when checked. */
static void
add_full_row (FfSheet *sheet, const FfLimitToday *row)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);
  g_autofree char *answer
      = g_utf8_strup (ff_name_text (&ff_names_limit_answer, (int) row->answer), -1);
  g_autofree char *limit = g_strdup_printf ("%s  %s  %s: %s. ",
                                            ff_limit_answer_shape (row->answer), answer, row->text,
                                            row->bound);
  g_autofree char *rule
      = g_strdup_printf (*row->checked != '\0' ? _ (" (%s; checked %s)") : _ (" (%s; never checked)"),
                         row->source, row->checked);

  block->bar = FF_STROKE_BAR;
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, limit);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, found_or_reason (row));
  ff_cell_more (cell, FF_SIZE_LABEL, FALSE, rule);
}

static void
add_short_row (FfSheetBlock *block, const FfLimitToday *row)
{
  FfCell *cell = ff_sheet_block_cell (block, -1);
  g_autofree char *limit = g_strdup_printf ("%s %s: %s", ff_limit_answer_shape (row->answer),
                                            row->text, row->bound);

  ff_cell_text (cell, FF_SIZE_LABEL, FALSE, limit);
  if (*found_or_reason (row) == '\0')
    return;
  ff_cell_more (cell, FF_SIZE_LABEL, FALSE, "; ");
  ff_cell_more (cell, FF_SIZE_LABEL, FALSE, found_or_reason (row));
  if (row->overdue)
    ff_cell_more (cell, FF_SIZE_LABEL, TRUE, _ (" Check overdue."));
}

static void
add_limits (FfSheet *sheet, const FfWeatherToday *today)
{
  FfSheetBlock *block = NULL;
  guint n = 0;

  ff_sheet_begin_part (sheet, _ ("limits"));
  ff_sheet_heading (sheet, today->summary);
  for (guint i = 0; i < today->order->len; i++)
    {
      const FfLimitToday *row = g_ptr_array_index (today->order, i);

      if (row->answer == FF_LIMIT_OUTSIDE)
        {
          add_full_row (sheet, row);
          continue;
        }
      if (n++ % 2 == 0)
        {
          block = ff_sheet_row (sheet);
          block->gap = 14;
        }
      add_short_row (block, row);
    }
}

static void
add_texts (FfSheet *sheet, const char *part, const char *heading, const GPtrArray *texts, guint most)
{
  if (texts->len == 0)
    return;
  ff_sheet_begin_part (sheet, part);
  ff_sheet_heading (sheet, heading);
  for (guint i = 0; i < texts->len && i < most; i++)
    ff_sheet_paragraph (sheet, FF_SIZE_LABEL, g_ptr_array_index (texts, i));
}

static void
add_estimates (FfSheet *sheet, const FfWeatherToday *today)
{
  FfSheetBlock *block = NULL;

  if (today->estimates->len == 0)
    return;
  ff_sheet_begin_part (sheet, _ ("estimates"));
  ff_sheet_heading (sheet, _ ("Estimates, no measurements"));
  for (guint i = 0; i < today->estimates->len; i++)
    {
      const FfReportWord *word = g_ptr_array_index (today->estimates, i);
      FfCell *cell;

      if (i % 2 == 0)
        {
          block = ff_sheet_row (sheet);
          block->gap = 14;
        }
      cell = ff_sheet_block_cell (block, -1);
      ff_cell_text (cell, FF_SIZE_LABEL, TRUE, word->label);
      ff_cell_more (cell, FF_SIZE_LABEL, FALSE, ": ");
      ff_cell_more (cell, FF_SIZE_LABEL, FALSE, word->text);
    }
}

FfSheet *
ff_weather_sheet (const FfWeatherToday *today)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_PILOT, _ ("Weather call"), PAGES);

  ff_sheet_begin_part (sheet, _ ("what this is"));
  ff_sheet_caution (sheet, FF_CAUTION_NOTE, today->limits->standing);
  add_call (sheet, today);
  add_limits (sheet, today);
  add_texts (sheet, _ ("measured"), _ ("Measured on site"), today->measured, MOST_MEASURED);
  add_texts (sheet, _ ("reported"), _ ("Reported and forecast"), today->reports, MOST_REPORTS);
  add_estimates (sheet, today);
  return sheet;
}
