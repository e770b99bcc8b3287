/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the pack list share. */
#pragma once

#include "ff-charge-watch.h"
#include "ff-flight.h"
#include "ff-pack-list.h"
#include "ff-plan-private.h"
#include "ff-wear.h"

typedef struct {
  FfStore *store;
  FfDay *day; /* of its own: states are changed in it to plan as if nothing were broken */
  FfDayPlan *plan; /* NULL: it can't be planned */
  FfDayPlan *wish; /* the same with all that is broken or lent; NULL: nothing is */
  GHashTable *wear;  /* FfWear, by item: what the log adds to hours and cycles */
  GPtrArray *rules;  /* FfSpareRule */
  GPtrArray *flights; /* FfFlight of the job */
  GPtrArray *events, *elsewhere; /* FfPackEvent */
  GArray *items;  /* FfPackItem, as day->items */
  GArray *wants;  /* FfPackWant */
  GArray *links;  /* FfPackLink */
  GArray *spares; /* FfPackSpare */
  char *no_spare_why; /* what falls without which battery; or NULL */
  FfPackList *list;
} FfPacking;

/* Index of an item in day->items; FF_PACK_NO_ITEM. */
guint ff_packing_index (const FfPacking *self, const char *label);

/* Fills items, wants, links and spares. */
void ff_packing_state_needs (FfPacking *self);

/* Sentences. */
char *ff_packing_why (const FfPacking *self, const FfPackLine *line) G_GNUC_WARN_UNUSED_RESULT;
char *ff_packing_due (const FfPacking *self, const FfItem *item) G_GNUC_WARN_UNUSED_RESULT;
void ff_packing_add_short (FfPacking *self, const FfPackShort *missing);
char *ff_packing_last_seen (const FfPacking *self, const FfItem *item) G_GNUC_WARN_UNUSED_RESULT;
void ff_packing_add_swaps (FfPacking *self);
gboolean ff_packing_add_clashes (FfPacking *self, GError **error);

/* Puts what was counted on the lines, and what was not counted in among what is short. */
void ff_packing_apply_events (FfPacking *self);

/* A new entry in the item's case, which is made when it is not there. */
FfPackEntry *ff_packing_add_entry (FfPacking *self, const FfItem *item);

FfPackMissing *ff_packing_add_missing (FfPacking *self, const char *item, const char *item_id);

/* "b1, b2 and b3" of an array of char *. */
char *ff_packing_join (const GPtrArray *words) G_GNUC_WARN_UNUSED_RESULT;
