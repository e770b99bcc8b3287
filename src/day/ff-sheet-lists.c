/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What sheets take from the store besides the day: the checklists as the crew keeps them, and the
 * pack list. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-day-private.h"
#include "ff-list-book.h"
#include "ff-list-facts.h"
#include "ff-pack-list.h"
#include "ff-sheet-facts.h"

/* Its card is in the first-aid kit, and among the lists on paper: an injury is no flight. */
#define INJURY "28-injury"

gboolean
ff_sheet_facts_read_lists (FfSheetFacts *facts, FfStore *store, const FfDay *day, GError **error)
{
  FfListRules rules;

  facts->book = ff_list_book_load (store, error);
  if (facts->book == NULL || !ff_list_rules_load (store, &rules, error)
      || !ff_day_conditions (store, day, &rules, &facts->conditions, error))
    return FALSE;
  facts->lists = g_ptr_array_new ();
  facts->emergencies = g_ptr_array_new ();
  for (guint i = 0; i < facts->book->len; i++)
    {
      const FfListEntry *entry = g_ptr_array_index (facts->book, i);

      if (entry->list->phase == FF_PHASE_EMERGENCY && strcmp (entry->name, INJURY) != 0)
        g_ptr_array_add (facts->emergencies, entry->list);
      if (ff_when_holds (entry->list->when, facts->conditions)
          && ff_checklist_count (entry->list, facts->conditions) > 0)
        g_ptr_array_add (facts->lists, entry->list);
    }
  return TRUE;
}

static void
pack_item_free (gpointer data)
{
  FfSheetPackItem *item = data;

  g_free (item->case_label);
  g_free (item->label);
  g_free (item->title);
  g_free (item->why);
  g_free (item);
}

static void
add_entry (FfSheetFacts *facts, const FfPackCase *kit, const FfPackEntry *entry)
{
  FfSheetPackItem *item = g_new0 (FfSheetPackItem, 1);

  item->case_label = g_strdup (kit->case_label);
  item->label = g_strdup (entry->label);
  item->title = *entry->slot != '\0'
                    /* Translators: an item, and its place in the filter wallet. */
                    ? g_strdup_printf (_ ("%s, slot %s"), entry->title, entry->slot)
                    : g_strdup (entry->title);
  item->why = g_strdup (entry->why);
  g_ptr_array_add (facts->pack, item);
}

gboolean
ff_sheet_facts_read_pack (FfSheetFacts *facts, FfStore *store, const FfDay *day, GError **error)
{
  g_autoptr (FfPackList) list = ff_pack_list_load (store, day->job->id, error);

  if (list == NULL)
    return FALSE;
  facts->pack = g_ptr_array_new_with_free_func (pack_item_free);
  facts->pack_short = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < list->cases->len; i++)
    {
      const FfPackCase *kit = g_ptr_array_index (list->cases, i);

      for (guint e = 0; e < kit->entries->len; e++)
        add_entry (facts, kit, g_ptr_array_index (kit->entries, e));
    }
  for (guint i = 0; i < list->shorts->len; i++)
    {
      const FfPackMissing *missing = g_ptr_array_index (list->shorts, i);

      g_ptr_array_add (facts->pack_short,
                       g_strdup_printf ("%s: %s. %s", missing->item, missing->reason,
                                        missing->advice));
    }
  return TRUE;
}
