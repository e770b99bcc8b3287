/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-hire-house.h"

#include "ff-item.h"

static const char *const titles[] = { "long one", "the yellow one", "spare", "Graufilter",
                                      "Küste", "old", "hired out in summer", "with lamp" };
static const char *const reasons[] = { "back from hire", "scratched at the rim", "latch loose",
                                       "looked at, good", "to Brackenholt", "new cable" };

static FfItem *
make_item (guint i)
{
  FfItem *item = ff_item_new ((FfKind) (i % ff_names_kind.n_names));

  g_free (item->label);
  item->label = g_strdup_printf ("%c%c%04u", (char) ('a' + i % 26), (char) ('a' + i / 26 % 26), i);
  ff_set_text (&item->title, titles[i % G_N_ELEMENTS (titles)]);
  g_free (item->case_label);
  item->case_label = g_strdup_printf ("%u", i % 400);
  ff_set_text (&item->apertures, "2.8");
  ff_set_text (&item->shutter_fast, "1/8000");
  ff_set_text (&item->shutter_slow, "8");
  item->iso_low = 100;
  item->iso_high = 6400;
  item->capacity_gb = 128;
  item->stops = item->stops_to = i % 10;
  return item;
}

static gboolean
add_events (FfStore *store, GPtrArray *ids, guint events)
{
  for (guint i = 0; i < events; i++)
    {
      FfState state = i % 7 == 0 ? FF_STATE_OUT : i % 11 == 0 ? FF_STATE_DEFECT
                                                              : FF_STATE_SERVICEABLE;

      if (!ff_item_set_state (store, g_ptr_array_index (ids, i % ids->len), state,
                              reasons[i % G_N_ELEMENTS (reasons)], NULL, NULL, "MO",
                              1500000000 + i * 1500, NULL))
        return FALSE;
    }
  return TRUE;
}

gboolean
ff_hire_house_fill (FfStore *store, guint items, guint events)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);
  gboolean done = ff_records_begin (store, NULL);

  for (guint i = 0; done && i < items; i++)
    {
      g_autoptr (FfItem) item = make_item (i);

      done = ff_item_save (store, item, NULL);
      g_ptr_array_add (ids, g_strdup (item->id));
    }
  done = done && add_events (store, ids, events);
  if (done)
    return ff_records_commit (store, NULL);
  ff_records_rollback (store);
  return FALSE;
}
