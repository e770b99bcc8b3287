/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's own price table: the kit's, with what the crew has changed in the store. */
#pragma once

#include "ff-price.h"

typedef struct _FfStore FfStore;

/* A kept price that this program does not know, or would not accept, counts as the kit's. */
gboolean ff_crew_prices_load (FfStore *store, FfPrices *ret_prices, GError **error);

/* Keeps those that are not the kit's. Error: FF_ERROR_INPUT for a price out of its row. */
gboolean ff_crew_prices_save (FfStore *store, const FfPrices *prices, GError **error);

/* How many prices are not the kit's. */
guint ff_prices_n_changed (const FfPrices *prices);

/* Whether this price is not the kit's. */
gboolean ff_price_is_changed (const FfPriceRow *row, const FfPrices *prices);

/* "a battery 8 instead of 6"; numbers as the tables of the console write them. */
char *ff_price_words (const FfPriceRow *row, const FfPrices *prices) G_GNUC_WARN_UNUSED_RESULT;
