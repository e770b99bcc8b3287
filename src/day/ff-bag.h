/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bag: what the plan of a day needs, and what it would need if the sky or the clock were
 * otherwise. Each thing once, with the reason it is in. Made by ff-cases.h, never typed. */
#pragma once

#include <glib.h>

#include "ff-names.h"

typedef struct {
  char *item_id;
  char *label; /* as written on it */
  FfKind kind; /* filter, battery or charger */
  char *why;   /* "the plan: A, H"; "thin cloud: F, H; overcast: A" */
} FfBagItem;

typedef struct {
  GPtrArray *needed;  /* FfBagItem: the plan flies with it */
  GPtrArray *in_case; /* FfBagItem: a case does, and the plan does not */
} FfBag;

FfBag *ff_bag_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_bag_free (FfBag *bag);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfBag, ff_bag_free)

/* The thing with this label among `items` (one of the two arrays), or NULL. */
FfBagItem *ff_bag_find (const GPtrArray *items, const char *label);

/* Puts a reason for an item into one of the two arrays: a new thing, or one more reason of it. */
void ff_bag_add (GPtrArray *items,
                 const char *item_id,
                 const char *label,
                 FfKind kind,
                 const char *why);
