/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The paper fallback of a checklist: the same items in the same order and the same version as on
 * screen, with a square for each, a line for what is said, and initials. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-checklist.h"
#include "ff-sheets.h"

#define LIST_PAGES 2
#define INITIALS 48
#define LINE_TO_WRITE 90

/* What the head of the page has room for: the name before its question. */
static char *
short_title (const FfChecklist *list)
{
  const char *colon = strstr (list->title, ": ");

  return colon != NULL ? g_strndup (list->title, (gsize) (colon - list->title))
                       : g_strdup (list->title);
}

/* What the paper must say of itself: nobody can look up its version in the field. */
static void
add_origin (FfSheet *sheet, const FfChecklist *list)
{
  g_autofree char *when = ff_when_words (list->when);
  g_autofree char *origin
      /* Translators: version, date and author of a checklist, then how it is read. */
      = g_strdup_printf (_ ("List version %s, %s, by %s; %s"), list->version, list->date,
                         list->author, ff_name_text (&ff_names_list_mode, (int) list->mode));

  ff_cell_text (ff_sheet_block_cell (ff_sheet_row (sheet), -1), FF_SIZE_LINE, TRUE, list->title);
  ff_sheet_paragraph (sheet, FF_SIZE_LABEL, origin);
  if (*when != '\0')
    ff_sheet_paragraph (sheet, FF_SIZE_LABEL, when);
  for (guint i = 0; i < list->remarks->len; i++)
    ff_sheet_paragraph (sheet, FF_SIZE_BODY, g_ptr_array_index (list->remarks, i));
}

static FfCaution
weight_of (FfGuardKind kind)
{
  return kind == FF_GUARD_WARNING   ? FF_CAUTION_WARNING
         : kind == FF_GUARD_CAUTION ? FF_CAUTION_CAUTION
                                    : FF_CAUTION_NOTE;
}

static void
add_guards (FfSheet *sheet, const FfCheckItem *item)
{
  for (guint i = 0; i < item->guards->len; i++)
    {
      const FfGuard *guard = g_ptr_array_index (item->guards, i);
      FfSheetBlock *block = ff_sheet_caution (sheet, weight_of (guard->kind), guard->text);

      block->keep_next = TRUE;
    }
}

/* Who answers, and what else the item asks for: "camera operator; touch; second person". */
static char *
marks_of (const FfCheckItem *item)
{
  GString *marks = g_string_new (item->role >= 0 ? ff_name_text (&ff_names_role, item->role) : "");

  if (item->touch)
    g_string_append_printf (marks, "%s%s", marks->len > 0 ? "; " : "", _ ("touch"));
  if (item->second)
    g_string_append_printf (marks, "%s%s", marks->len > 0 ? "; " : "", _ ("second person"));
  return g_string_free (marks, FALSE);
}

/* The answer: the words expected, the bounds of a value, a line where something is said. */
static void
add_answer (FfSheetBlock *block, const FfCheckItem *item)
{
  FfCell *cell = ff_sheet_block_cell (block, -1);
  g_autofree char *bounds = item->value.sort == FF_VALUE_NUMBER
                                ? ff_check_value_format (&item->value)
                                : g_strdup ("");

  ff_cell_text (cell, FF_SIZE_BODY, FALSE, item->response);
  if (*bounds != '\0')
    {
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, *item->response != '\0' ? "  " : "");
      ff_cell_more (cell, FF_SIZE_BODY, FALSE, bounds);
    }
  if (ff_check_item_asks (item))
    cell->write_on = LINE_TO_WRITE;
}

/* An emergency card is read and done: large, and nobody signs. */
static void
add_item (FfSheet *sheet, const FfCheckItem *item, gboolean emergency)
{
  g_autofree char *marks = marks_of (item);
  FfSheetBlock *block;
  FfCell *cell;

  add_guards (sheet, item);
  block = ff_sheet_row (sheet);
  block->space_above = 3;
  ff_cell_text (ff_sheet_block_cell (block, 18), FF_SIZE_LINE, FALSE, "□");
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, emergency ? FF_SIZE_LINE : FF_SIZE_CAMERA, item->critical, item->challenge);
  if (emergency && *item->response != '\0')
    {
      ff_cell_more (cell, FF_SIZE_LINE, item->critical, ": ");
      ff_cell_more (cell, FF_SIZE_LINE, item->critical, item->response);
    }
  if (*marks != '\0')
    ff_cell_text (cell, FF_SIZE_LABEL, FALSE, marks);
  if (*item->note != '\0')
    ff_cell_text (cell, FF_SIZE_LABEL, FALSE, item->note);
  block->on_baseline = TRUE;
  if (emergency)
    return;
  add_answer (block, item);
  cell = ff_sheet_block_cell (block, INITIALS);
  ff_cell_text (cell, FF_SIZE_BODY, FALSE, "");
  cell->write_on = INITIALS - 10;
}

static void
add_completion (FfSheet *sheet, const FfCheckSection *section)
{
  /* Translators: the title of a section of a checklist goes in. */
  g_autofree char *complete = g_strdup_printf (_ ("%s complete"), section->title);
  FfSheetBlock *block = ff_sheet_row (sheet);
  FfCell *cell;

  block->space_above = 4;
  cell = ff_sheet_block_cell (block, -1);
  ff_cell_text (cell, FF_SIZE_CAMERA, TRUE, "□  ");
  ff_cell_more (cell, FF_SIZE_CAMERA, TRUE, complete);
  for (int i = 0; i < 2; i++)
    {
      cell = ff_sheet_block_cell (block, 110);
      ff_cell_text (cell, FF_SIZE_BODY, FALSE, i == 0 ? _ ("time") : _ ("initials"));
      cell->write_on = 40;
    }
}

static void
add_section (FfSheet *sheet, const FfCheckSection *section, guint conditions, gboolean emergency)
{
  FfSheetBlock *block;

  ff_sheet_begin_part (sheet, section->title);
  block = ff_sheet_heading (sheet, section->title);
  block->on_baseline = TRUE;
  if (!emergency)
    ff_cell_text (ff_sheet_block_cell (block, INITIALS), FF_SIZE_LABEL, FALSE, _ ("initials"));
  for (guint i = 0; i < section->items->len; i++)
    {
      const FfCheckItem *item = g_ptr_array_index (section->items, i);

      if (ff_when_holds (item->when, conditions))
        add_item (sheet, item, emergency);
    }
  if (!emergency)
    add_completion (sheet, section);
}

static FfSheet *
list_sheet (const FfChecklist *list, guint conditions)
{
  g_autofree char *title = short_title (list);
  FfSheet *sheet = ff_sheet_new (FF_READER_ALL, title, LIST_PAGES);

  ff_sheet_begin_part (sheet, list->title);
  add_origin (sheet, list);
  for (guint i = 0; i < list->sections->len; i++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, i);

      if (ff_when_holds (section->when, conditions))
        add_section (sheet, section, conditions, list->phase == FF_PHASE_EMERGENCY);
    }
  return sheet;
}

void
ff_list_sheets_add (GPtrArray *sheets, const FfSheetFacts *facts)
{
  for (guint i = 0; i < facts->lists->len; i++)
    g_ptr_array_add (sheets,
                     list_sheet (g_ptr_array_index (facts->lists, i), facts->conditions));
}
