/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The gear of a hire house: ten thousand items, two hundred thousand events. */
#include <glib.h>
#include <glib/gstdio.h>
#include <stdio.h>

#include "ff-gear-csv.h"
#include "ff-hire-house.h"
#include "ff-item-event.h"
#include "ff-item-search.h"
#include "ff-wear.h"

#define ROUNDS 10

static FfStore *store;

static void
load_items (void)
{
  g_autoptr (GPtrArray) items = ff_items_load (store, NULL);
}

static void
search_one_letter (void)
{
  g_autoptr (GHashTable) found = ff_items_search (store, "k", NULL);
}

static void
search_two_words (void)
{
  g_autoptr (GHashTable) found = ff_items_search (store, "kust batt", NULL);
}

static void
load_story (void)
{
  g_autofree char *id = ff_item_find (store, "aa0000", NULL);
  g_autoptr (GPtrArray) events = ff_item_events_load (store, id, 100, NULL);
}

static void
load_wear (void)
{
  g_autoptr (GHashTable) wear = ff_wear_load (store, NULL, NULL);
}

static void
round_trip_csv (void)
{
  g_autoptr (GPtrArray) items = ff_items_load (store, NULL);
  g_autoptr (GPtrArray) nobody = g_ptr_array_new ();
  g_autofree char *text = ff_gear_csv_write (items, nobody);
  g_autoptr (FfGearImport) import = ff_gear_csv_read (text, items, nobody, NULL);
}

static void
measure (const char *what, void (*work) (void), double granted_ms)
{
  double best = G_MAXDOUBLE;

  for (int i = 0; i < ROUNDS; i++)
    {
      gint64 start = g_get_monotonic_time ();

      work ();
      best = MIN (best, (double) (g_get_monotonic_time () - start) / 1000);
    }
  printf ("%-36s %8.2f ms  granted %g ms\n", what, best, granted_ms);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("fieldfare-bench-XXXXXX", NULL);
  g_autofree char *file = g_build_filename (folder, "fieldfare.db", NULL);

  store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  if (store == NULL
      || !ff_hire_house_fill (store, FF_HIRE_HOUSE_ITEMS, FF_HIRE_HOUSE_EVENTS))
    return 2;
  measure ("load 10 000 items", load_items, 200);
  measure ("search one letter", search_one_letter, 30);
  measure ("search two words", search_two_words, 30);
  measure ("the story of one item", load_story, 30);
  measure ("hours and cycles of all", load_wear, 30);
  measure ("all of it as CSV and read again", round_trip_csv, 3000);
  ff_records_close (store);
  g_remove (file);
  g_rmdir (folder);
  return 0;
}
