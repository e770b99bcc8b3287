/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The amendments beside the printed sheets: numbered, one sentence for each role, as the lead reads
 * them out; each initials the own one. Below, lines for those that come in the field. */
#include <glib/gi18n-lib.h>

#include "ff-sheets.h"

#define PAGES 2
#define NUMBER 34
#define WHO 116
#define INITIALS 66

/* The role's own sentence, at the size of what is flown by. */
static void
add_sentence (FfSheet *sheet, const FfSheetSentence *sentence)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  block->inset = NUMBER;
  block->rule_above = FF_STROKE_THIN;
  ff_cell_text (ff_sheet_block_cell (block, WHO), FF_SIZE_CAMERA, TRUE,
                ff_name_text (&ff_names_role, (int) sentence->role));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_LINE, FALSE, sentence->text);
  cell = ff_sheet_block_cell (block, INITIALS);
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, sentence->initials);
  if (*sentence->initials == '\0')
    cell->write_on = INITIALS - 10;
  block->on_baseline = TRUE;
}

static void
add_amendment (FfSheet *sheet, const FfSheetFacts *facts, const FfSheetAmendment *amendment)
{
  g_autofree char *number = g_strdup_printf ("%d", amendment->number);
  /* Translators: number of an amendment, as a part of the sheet. */
  g_autofree char *part = g_strdup_printf (_ ("amendment %d"), amendment->number);
  /* Translators: the time at which it was made, and the letter of the printed plan. */
  g_autofree char *made
      = g_strdup_printf (_ ("made %s, beside version %s"), amendment->clock, facts->version);
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, part);
  block = ff_sheet_row (sheet);
  block->outline = g_strdup (part);
  block->heading = block->keep_next = TRUE;
  block->rule_above = FF_STROKE_THICK;
  block->space_above = 6;
  ff_cell_text (ff_sheet_block_cell (block, NUMBER), FF_SIZE_LAND_BY, TRUE, number);
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_BODY, FALSE, made);
  block->on_baseline = TRUE;
  for (guint i = 0; i < amendment->sentences->len; i++)
    add_sentence (sheet, g_ptr_array_index (amendment->sentences, i));
}

/* What comes when no printer is at hand. */
static void
add_lines (FfSheet *sheet)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("lines to write on"));
  ff_sheet_heading (sheet, _ ("To write in"));
  block = ff_sheet_form (sheet, 0);
  ff_cell_text (ff_sheet_block_cell (block, 28), FF_SIZE_LABEL, FALSE, _ ("no."));
  ff_cell_text (ff_sheet_block_cell (block, 90), FF_SIZE_LABEL, FALSE, _ ("for whom"));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_LABEL, FALSE,
                _ ("line, what is, what was"));
  ff_cell_text (ff_sheet_block_cell (block, 50), FF_SIZE_LABEL, FALSE, _ ("time"));
  ff_cell_text (ff_sheet_block_cell (block, 56), FF_SIZE_LABEL, FALSE, _ ("initials"));
}

FfSheet *
ff_amendments_sheet (const FfSheetFacts *facts)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_ALL, _ ("Amendments"), PAGES);

  ff_sheet_begin_part (sheet, _ ("how it is done"));
  ff_sheet_caution (sheet, FF_CAUTION_NOTE,
                    _ ("The lead reads each aloud. Each writes the own sentence on the own sheet, "
                       "says it back, and puts initials here."));
  if (facts->amendments->len == 0)
    ff_sheet_paragraph (sheet, FF_SIZE_CAMERA, _ ("No amendment stands beside the sheets."));
  for (guint i = 0; i < facts->amendments->len; i++)
    add_amendment (sheet, facts, g_ptr_array_index (facts->amendments, i));
  add_lines (sheet);
  return sheet;
}
