/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pack list on paper: by case, a square at both edges (out, in), the label as it is written on
 * the item; what is short stands first. */
#include <glib/gi18n-lib.h>

#include "ff-sheets.h"

#define PACK_PAGES 2
#define PACK_SIZE 13.0
#define EDGE 20

static void
add_edge (FfSheetBlock *block, gboolean right, double size, const char *text)
{
  FfCell *cell = ff_sheet_block_cell (block, right ? EDGE + 8 : EDGE);

  cell->to_right = right;
  ff_cell_text (cell, size, FALSE, text);
}

static void
add_case_head (FfSheet *sheet, const char *case_label, guint n)
{
  g_autofree char *name = *case_label != '\0' ? g_strdup_printf (_ ("Case %s"), case_label)
                                              : g_strdup (_ ("Loose"));
  g_autofree char *count
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u item", "%u items", n), n);
  FfSheetBlock *block;
  FfCell *cell;

  ff_sheet_begin_part (sheet, name);
  block = ff_sheet_row (sheet);
  /* Translators: heads of two narrow columns of squares: counted out, counted in. */
  add_edge (block, FALSE, FF_SIZE_LABEL, _ ("out"));
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_LINE, TRUE, name);
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, count);
  add_edge (block, TRUE, FF_SIZE_LABEL, _ ("in"));
  block->outline = g_strdup (name);
  block->on_baseline = TRUE;
  block->heading = TRUE;
  block->keep_next = TRUE;
  block->space_above = 6;
  block->rule_above = FF_STROKE_THICK;
}

static void
add_entry (FfSheet *sheet, const FfSheetPackItem *entry)
{
  FfSheetBlock *block = ff_sheet_row (sheet);

  add_edge (block, FALSE, FF_SIZE_LINE, "□");
  ff_cell_text (ff_sheet_block_cell (block, 96), PACK_SIZE, TRUE, entry->label);
  ff_cell_text (ff_sheet_block_cell (block, -3), PACK_SIZE, FALSE, entry->title);
  ff_cell_text (ff_sheet_block_cell (block, -2), FF_SIZE_LABEL, FALSE, entry->why);
  add_edge (block, TRUE, FF_SIZE_LINE, "□");
  block->on_baseline = TRUE;
  block->rule_above = FF_STROKE_THIN;
}

static gboolean
same_case (const FfSheetFacts *facts, guint a, guint b)
{
  const FfSheetPackItem *one = g_ptr_array_index (facts->pack, a);
  const FfSheetPackItem *other = g_ptr_array_index (facts->pack, b);

  return g_str_equal (one->case_label, other->case_label);
}

FfSheet *
ff_pack_paper (const FfSheetFacts *facts)
{
  FfSheet *sheet = ff_sheet_new (FF_READER_LEAD, _ ("Pack list"), PACK_PAGES);

  ff_sheet_begin_part (sheet, _ ("what is short"));
  for (guint i = 0; i < facts->pack_short->len; i++)
    ff_sheet_caution (sheet, FF_CAUTION_CAUTION, g_ptr_array_index (facts->pack_short, i));
  for (guint i = 0; i < facts->pack->len; i++)
    {
      const FfSheetPackItem *item = g_ptr_array_index (facts->pack, i);
      guint end = i + 1;

      while (end < facts->pack->len && same_case (facts, i, end))
        end++;
      if (i == 0 || !same_case (facts, i - 1, i))
        add_case_head (sheet, item->case_label, end - i);
      add_entry (sheet, item);
    }
  return sheet;
}
