/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-price-book.h"

#include "ff-rows.h"

FfKeptPrice *
ff_kept_price_new (const char *name, double value)
{
  FfKeptPrice *price = g_new0 (FfKeptPrice, 1);

  price->name = g_strdup (name);
  price->value = value;
  return price;
}

void
ff_kept_price_free (FfKeptPrice *price)
{
  if (price == NULL)
    return;
  g_free (price->name);
  g_free (price);
}

GPtrArray *
ff_kept_prices_load (FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) prices
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_kept_price_free);
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "SELECT name, value FROM price ORDER BY name", error);
  FfStep step;

  if (statement == NULL)
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    g_ptr_array_add (prices, ff_kept_price_new (ff_statement_get_text (statement, 0),
                                                ff_statement_get_real (statement, 1)));
  return step == FF_STEP_DONE ? g_steal_pointer (&prices) : NULL;
}

static gboolean
insert_all (FfStore *store, const GPtrArray *prices, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "INSERT INTO price (name, value) VALUES (?1, ?2)", error);

  if (statement == NULL)
    return FALSE;
  for (guint i = 0; i < prices->len; i++)
    {
      const FfKeptPrice *price = g_ptr_array_index (prices, i);

      if (!ff_statement_bind_text (statement, 1, price->name, error)
          || !ff_statement_bind_real (statement, 2, price->value, error)
          || !ff_statement_run (statement, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
ff_kept_prices_save (FfStore *store, const GPtrArray *prices, GError **error)
{
  gboolean own, done;

  if (!ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_store_exec (store, "DELETE FROM price", error) && insert_all (store, prices, error);
  return ff_rows_close (store, own, done, error);
}
