/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
text_free (gpointer data)
{
  FfText *text = data;

  g_string_free (text->text, TRUE);
  g_array_unref (text->runs);
  g_free (text);
}

static void
cell_free (gpointer data)
{
  FfCell *cell = data;

  g_ptr_array_unref (cell->texts);
  g_free (cell);
}

static void
block_free (gpointer data)
{
  FfSheetBlock *block = data;

  g_free (block->part);
  g_free (block->outline);
  g_ptr_array_unref (block->cells);
  if (block->drawing.free_data != NULL)
    block->drawing.free_data (block->drawing.data);
  g_free (block);
}

FfSheet *
ff_sheet_new (FfReader reader, const char *title, guint allowance)
{
  FfSheet *sheet = g_new0 (FfSheet, 1);

  sheet->reader = reader;
  sheet->title = g_strdup (title);
  sheet->allowance = allowance;
  sheet->part = g_strdup (title);
  sheet->blocks = g_ptr_array_new_with_free_func (block_free);
  return sheet;
}

void
ff_sheet_free (FfSheet *sheet)
{
  if (sheet == NULL)
    return;
  g_free (sheet->title);
  g_free (sheet->part);
  g_ptr_array_unref (sheet->blocks);
  g_free (sheet);
}

void
ff_sheet_begin_part (FfSheet *sheet, const char *part)
{
  g_free (sheet->part);
  sheet->part = g_strdup (part);
}

static FfSheetBlock *
add_block (FfSheet *sheet, FfBlockKind kind)
{
  FfSheetBlock *block = g_new0 (FfSheetBlock, 1);

  block->kind = kind;
  block->part = g_strdup (sheet->part);
  block->cells = g_ptr_array_new_with_free_func (cell_free);
  block->gap = 8;
  block->row_height = FF_ROW_TO_WRITE;
  g_ptr_array_add (sheet->blocks, block);
  return block;
}

FfSheetBlock *
ff_sheet_row (FfSheet *sheet)
{
  return add_block (sheet, FF_BLOCK_ROW);
}

FfSheetBlock *
ff_sheet_form (FfSheet *sheet, int n_rows)
{
  FfSheetBlock *block = add_block (sheet, FF_BLOCK_FORM);

  block->n_rows = n_rows;
  return block;
}

void
ff_sheet_to_last_page (FfSheet *sheet)
{
  add_block (sheet, FF_BLOCK_BREAK);
}

FfSheetBlock *
ff_sheet_heading (FfSheet *sheet, const char *text)
{
  FfSheetBlock *block = ff_sheet_row (sheet);

  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_CAMERA, TRUE, text);
  block->outline = g_strdup (text);
  block->heading = TRUE;
  block->keep_next = TRUE;
  block->space_above = 6;
  block->rule_above = FF_STROKE_THICK;
  return block;
}

FfSheetBlock *
ff_sheet_paragraph (FfSheet *sheet, double size, const char *text)
{
  FfSheetBlock *block = ff_sheet_row (sheet);

  ff_cell_text (ff_sheet_block_cell (block, -1), size, FALSE, text);
  block->may_split = TRUE;
  return block;
}

/* The heading is the head of its widest column: a line more to write on. */
void
ff_sheet_amendment_box (FfSheet *sheet)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, _ ("amendments"));
  block = ff_sheet_form (sheet, FF_AMENDMENT_LINES);
  block->outline = g_strdup (_ ("Amendments, as read out"));
  block->space_above = 2;
  block->row_height = FF_ROW_AMENDED;
  /* Translators: number of an amendment; head of a narrow column. */
  ff_cell_text (ff_sheet_block_cell (block, 28), FF_SIZE_LABEL, FALSE, _ ("no."));
  ff_cell_text (ff_sheet_block_cell (block, -1), FF_SIZE_BODY, TRUE, _ ("Amendments, as read out"));
  ff_cell_text (ff_sheet_block_cell (block, 56), FF_SIZE_LABEL, FALSE, _ ("time"));
  ff_cell_text (ff_sheet_block_cell (block, 56), FF_SIZE_LABEL, FALSE, _ ("initials"));
}

static const char *
caution_word (FfCaution weight)
{
  switch (weight)
    {
    case FF_CAUTION_WARNING:
      /* Translators: heads a statement about injury or death. */
      return _ ("WARNING");
    case FF_CAUTION_CAUTION:
      /* Translators: heads a statement about damage or a spoilt day. */
      return _ ("CAUTION");
    case FF_CAUTION_NOTE:
    default:
      /* Translators: heads a statement that helps, without danger. */
      return _ ("NOTE");
    }
}

FfSheetBlock *
ff_sheet_caution (FfSheet *sheet, FfCaution weight, const char *text)
{
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell = ff_sheet_block_cell (block, -1);

  ff_cell_text (cell, FF_SIZE_BODY, TRUE, caution_word (weight));
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, text);
  block->may_split = TRUE;
  block->bar = FF_STROKE_BAR;
  block->space_above = 4;
  return block;
}

FfCell *
ff_sheet_block_cell (FfSheetBlock *block, double width)
{
  FfCell *cell = g_new0 (FfCell, 1);

  cell->width = width;
  cell->stops = NAN;
  cell->texts = g_ptr_array_new_with_free_func (text_free);
  g_ptr_array_add (block->cells, cell);
  return cell;
}

FfText *
ff_cell_text (FfCell *cell, double size, gboolean bold, const char *text)
{
  FfText *paragraph = g_new0 (FfText, 1);

  paragraph->text = g_string_new (NULL);
  paragraph->runs = g_array_new (FALSE, FALSE, sizeof (FfRun));
  g_ptr_array_add (cell->texts, paragraph);
  ff_cell_more (cell, size, bold, text);
  return paragraph;
}

/* Marks that turn the direction of what follows: an outside text brings none of its own. */
static gboolean
is_direction_mark (gunichar c)
{
  return (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069) || c == 0x200e || c == 0x200f;
}

/* Blocks of the scripts that run from right to left: Hebrew to Arabic Extended, their presentation
 * forms, and the right-to-left planes (Unicode 15, DerivedBidiClass). */
static gboolean
is_right_to_left (gunichar c)
{
  return (c >= 0x0590 && c <= 0x08ff) || (c >= 0xfb1d && c <= 0xfdff)
         || (c >= 0xfe70 && c <= 0xfeff) || (c >= 0x10800 && c <= 0x10fff)
         || (c >= 0x1e800 && c <= 0x1efff);
}

static gboolean
is_blank_on_paper (gunichar c)
{
  return g_unichar_iscntrl (c) || c == 0x2028 || c == 0x2029;
}

char *
ff_sheet_clean (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *clean = g_string_new (NULL);

  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (!is_direction_mark (c))
        g_string_append_unichar (clean, is_blank_on_paper (c) ? ' ' : c);
    }
  return g_string_free (clean, FALSE);
}

static gboolean
turns (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (is_right_to_left (g_utf8_get_char (p)))
      return TRUE;
  return FALSE;
}

void
ff_cell_more (FfCell *cell, double size, gboolean bold, const char *text)
{
  FfText *last = g_ptr_array_index (cell->texts, cell->texts->len - 1);
  g_autofree char *clean = ff_sheet_clean (text);
  const gsize before = last->text->len;
  FfRun run = { 0, size, bold };

  if (turns (clean)) /* between a first strong isolate and its end */
    g_string_append_printf (last->text, "\u2068%s\u2069", clean);
  else
    g_string_append (last->text, clean);
  run.bytes = (guint) (last->text->len - before);
  g_array_append_val (last->runs, run);
}

FfCell *
ff_sheet_block_fact (FfSheetBlock *block,
                     double width,
                     double size,
                     const char *label,
                     const char *text)
{
  FfCell *cell = ff_sheet_block_cell (block, width);

  ff_cell_text (cell, FF_SIZE_LABEL, FALSE, label);
  ff_cell_text (cell, size, TRUE, text);
  return cell;
}
