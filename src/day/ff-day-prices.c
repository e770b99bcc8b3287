/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-day-prices.h"

#include <glib/gi18n-lib.h>

#include "ff-price-book.h"

gboolean
ff_price_is_changed (const FfPriceRow *row, const FfPrices *prices)
{
  double value = ff_price_row_get (row, prices), usual = ff_price_row_get (row, &ff_prices_default);

  return value < usual || value > usual;
}

guint
ff_prices_n_changed (const FfPrices *prices)
{
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);
  guint n = 0;

  for (guint i = 0; i < n_rows; i++)
    n += ff_price_is_changed (&rows[i], prices) != FALSE;
  return n;
}

char *
ff_price_words (const FfPriceRow *row, const FfPrices *prices)
{
  /* Translators: what a compromise costs in the plan: its name, its price, the usual price. */
  return g_strdup_printf (_ ("%s: %g instead of %g"), ff_price_row_text (row),
                          ff_price_row_get (row, prices),
                          ff_price_row_get (row, &ff_prices_default));
}

gboolean
ff_crew_prices_load (FfStore *store, FfPrices *ret_prices, GError **error)
{
  g_autoptr (GPtrArray) kept = ff_kept_prices_load (store, error);

  if (kept == NULL)
    return FALSE;
  *ret_prices = ff_prices_default;
  for (guint i = 0; i < kept->len; i++)
    {
      const FfKeptPrice *price = g_ptr_array_index (kept, i);

      ff_price_set (ret_prices, price->name, price->value, NULL);
    }
  return TRUE;
}

gboolean
ff_crew_prices_save (FfStore *store, const FfPrices *prices, GError **error)
{
  g_autoptr (GPtrArray) kept
      = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_kept_price_free);
  const FfPriceRow *rows;
  guint n_rows = ff_price_rows (&rows);

  if (!ff_prices_check (prices, error))
    return FALSE;
  for (guint i = 0; i < n_rows; i++)
    if (ff_price_is_changed (&rows[i], prices))
      g_ptr_array_add (kept, ff_kept_price_new (rows[i].token, ff_price_row_get (&rows[i], prices)));
  return ff_kept_prices_save (store, kept, error);
}
