/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-emergency-card.h"

#include <glib/gi18n-lib.h>

#include "ff-checklist.h"
#include "ff-starter-lists.h"

#define LEAST_ACTIONS 3 /* of a card, and the most: what is remembered when it counts (common */
#define MOST_ACTIONS 4  /* practice, no source) */
#define BOLD_ACTIONS 2
#define GUTTER 14
#define BETWEEN_CARDS 2
#define CARDS_OF_A_SIDE 8

static GPtrArray *
starter_cards (void)
{
  GPtrArray *cards = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_checklist_free);

  for (guint i = 0; i < ff_n_starter_lists; i++)
    {
      FfChecklist *list = ff_checklist_parse (ff_starter_lists[i].text, NULL);

      if (list != NULL && list->phase == FF_PHASE_EMERGENCY
          && !g_str_equal (ff_starter_lists[i].name, FF_INJURY_LIST))
        g_ptr_array_add (cards, list);
      else
        ff_checklist_free (list);
    }
  return cards;
}

/* One action: who does it where it is not the pilot, then what. Returns how many stand there now. */
static guint
add_action (FfCell *cell, const FfCheckItem *item, guint n)
{
  const gboolean bold = n < BOLD_ACTIONS;
  g_autofree char *number = g_strdup_printf ("%u ", n + 1);

  ff_cell_text (cell, FF_SIZE_LINE, bold, number);
  if (item->role >= 0)
    {
      ff_cell_more (cell, FF_SIZE_LINE, bold, ff_name_text (&ff_names_role, item->role));
      ff_cell_more (cell, FF_SIZE_LINE, bold, ": ");
    }
  ff_cell_more (cell, FF_SIZE_LINE, bold, item->challenge);
  if (*item->response != '\0')
    {
      ff_cell_more (cell, FF_SIZE_LINE, bold, ": ");
      ff_cell_more (cell, FF_SIZE_LINE, bold, item->response);
    }
  return n + 1;
}

static guint
count_critical (const FfChecklist *list)
{
  guint n = 0;

  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = 0; i < section->items->len; i++)
        n += ((const FfCheckItem *) g_ptr_array_index (section->items, i))->critical ? 1 : 0;
    }
  return n;
}

/* The critical actions alone; where the crew has marked fewer than a card holds, the first ones. */
static void
add_card (FfCell *cell, const FfChecklist *list)
{
  const gboolean all = count_critical (list) < LEAST_ACTIONS;
  guint n = 0;
  FfText *text;

  text = ff_cell_text (cell, FF_SIZE_LINE, TRUE, list->title);
  text->rule_above = TRUE;
  text->space_above = cell->texts->len > 1 ? BETWEEN_CARDS : 0;
  for (guint s = 0; s < list->sections->len; s++)
    {
      const FfCheckSection *section = g_ptr_array_index (list->sections, s);

      for (guint i = 0; i < section->items->len && n < MOST_ACTIONS; i++)
        {
          const FfCheckItem *item = g_ptr_array_index (section->items, i);

          if (item->critical || all)
            n = add_action (cell, item, n);
        }
    }
}

/* Cards down the left column, then down the right one. */
static void
add_cards (FfSheet *sheet, const GPtrArray *cards, guint from, guint to)
{
  FfSheetBlock *row = ff_sheet_row (sheet);
  const guint half = from + (to - from + 1) / 2;
  FfCell *cell = NULL;

  row->gap = GUTTER;
  row->space_above = from > 0 ? BETWEEN_CARDS : 0;
  for (guint i = from; i < to; i++)
    {
      if (i == from || i == half)
        cell = ff_sheet_block_cell (row, -1);
      add_card (cell, g_ptr_array_index (cards, i));
    }
}

void
ff_emergency_card_add (FfSheet *sheet, const FfSheetFacts *facts)
{
  g_autoptr (GPtrArray) starters = facts->emergencies == NULL ? starter_cards () : NULL;
  const GPtrArray *cards = starters != NULL ? starters : facts->emergencies;
  FfSheetBlock *row;
  FfCell *cell;

  ff_sheet_begin_part (sheet, _ ("the emergency card"));
  row = ff_sheet_row (sheet);
  row->outline = g_strdup (_ ("Emergency card"));
  row->heading = row->keep_next = TRUE;
  cell = ff_sheet_block_cell (row, -1);
  ff_cell_text (cell, FF_SIZE_BODY, TRUE, _ ("Emergency card"));
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, "  ");
  ff_cell_more (cell, FF_SIZE_BODY, FALSE, _ ("The pilot does each, unless it names another."));
  for (guint i = 0; i < cards->len; i += CARDS_OF_A_SIDE)
    add_cards (sheet, cards, i, MIN (i + CARDS_OF_A_SIDE, cards->len));
}
