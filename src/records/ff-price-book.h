/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The prices that the crew has changed, by the names of the price table. What is not here is the
 * kit's; what a name means and what is accepted is the table's to say. */
#pragma once

#include "ff-records.h"

typedef struct {
  char *name;
  double value;
} FfKeptPrice;

/* By name: an array of FfKeptPrice that frees them. */
GPtrArray *ff_kept_prices_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Keeps these and no others, whole or not at all. */
gboolean ff_kept_prices_save (FfStore *store, const GPtrArray *prices, GError **error);

FfKeptPrice *ff_kept_price_new (const char *name, double value) G_GNUC_WARN_UNUSED_RESULT;
void ff_kept_price_free (FfKeptPrice *price);
