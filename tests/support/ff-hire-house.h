/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The store of a hire house after ten years: so many items, and so many events among them. */
#pragma once

#include "ff-records.h"

#define FF_HIRE_HOUSE_ITEMS 10000
#define FF_HIRE_HOUSE_EVENTS 200000

/* Fills the store in one transaction, the same each time. FALSE: it could not. */
gboolean ff_hire_house_fill (FfStore *store, guint items, guint events);
