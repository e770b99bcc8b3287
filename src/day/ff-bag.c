/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-bag.h"

static void
item_free (gpointer data)
{
  FfBagItem *item = data;

  g_free (item->item_id);
  g_free (item->label);
  g_free (item->why);
  g_free (item);
}

FfBag *
ff_bag_new (void)
{
  FfBag *bag = g_new0 (FfBag, 1);

  bag->needed = g_ptr_array_new_with_free_func (item_free);
  bag->in_case = g_ptr_array_new_with_free_func (item_free);
  return bag;
}

void
ff_bag_free (FfBag *bag)
{
  if (bag == NULL)
    return;
  g_ptr_array_unref (bag->needed);
  g_ptr_array_unref (bag->in_case);
  g_free (bag);
}

FfBagItem *
ff_bag_find (const GPtrArray *items, const char *label)
{
  for (guint i = 0; i < items->len; i++)
    {
      FfBagItem *item = g_ptr_array_index (items, i);

      if (g_str_equal (item->label, label))
        return item;
    }
  return NULL;
}

void
ff_bag_add (GPtrArray *items,
            const char *item_id,
            const char *label,
            FfKind kind,
            const char *why)
{
  FfBagItem *item = ff_bag_find (items, label);

  if (item == NULL)
    {
      item = g_new0 (FfBagItem, 1);
      item->item_id = g_strdup (item_id);
      item->label = g_strdup (label);
      item->kind = kind;
      item->why = g_strdup (why);
      g_ptr_array_add (items, item);
    }
  else
    {
      char *both = g_strdup_printf ("%s; %s", item->why, why);

      g_free (item->why);
      item->why = both;
    }
}
