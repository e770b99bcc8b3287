/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What goes in the van: from what is wanted, what goes with what and the rule of spares, the lines
 * to pack and what is short. Pure; items are known by their index. Nothing wanted is ever left out
 * in silence: it is on a line or among what is short. Common practice, no source. */
#pragma once

#include <glib.h>

#include "ff-names.h"

#define FF_PACK_NO_ITEM G_MAXUINT

/* Why a thing is on the list; the first that applies stands on the line. */
typedef enum {
  FF_PACK_NEEDED,    /* the plan or the job names it */
  FF_PACK_IN_CASE,   /* for a darker sky than the forecast */
  FF_PACK_GOES_WITH, /* another line can't go without it */
  FF_PACK_DOCUMENT,
  FF_PACK_SPARE,
} FfPackNeed;

typedef enum {
  FF_PACK_STATE,   /* it is owned, but its state says no: see the item's state */
  FF_PACK_LAPSED,  /* a document that is not valid on the day */
  FF_PACK_NO_MORE, /* `count` more of a kind were wanted than there are */
  FF_PACK_NO_SPARE, /* likewise, by the rule of spares */
} FfPackWhy;

typedef struct {
  const char *label;
  FfKind kind;
  FfState state;
  gboolean lapsed;
  gboolean may_go; /* a number of its kind may be met by it: it is on the list of the job */
} FfPackItem;

/* One named item, or (with FF_PACK_NO_ITEM) `count` of a kind, whichever. */
typedef struct {
  guint item;
  FfKind kind;
  guint count;
  FfPackNeed need;
} FfPackWant;

/* `item` can't go without `with`. Cycles are harmless. */
typedef struct {
  guint item, with;
} FfPackLink;

/* So many more of a kind than are wanted. `covered` of them need not be things: a plan that flies
 * every shot without any one of its batteries has a spare already. */
typedef struct {
  FfKind kind;
  guint count, covered;
} FfPackSpare;

typedef struct {
  const FfPackItem *items;
  guint n_items;
  const FfPackWant *wants;
  guint n_wants;
  const FfPackLink *links;
  guint n_links;
  const FfPackSpare *spares; /* one a kind */
  guint n_spares;
} FfPackProblem;

typedef struct {
  guint item;
  FfPackNeed need;
  guint because; /* goes with this item; else FF_PACK_NO_ITEM */
} FfPackLine;

typedef struct {
  guint item; /* FF_PACK_NO_ITEM: `count` of `kind` */
  FfKind kind;
  guint count;
  FfPackNeed need;
  FfPackWhy why;
  guint because;
} FfPackShort;

typedef struct {
  GArray *lines; /* FfPackLine, each item once */
  GArray *shorts; /* FfPackShort, each item once */
} FfPack;

/* Wants are met in their order, then what goes with them, then spares with what goes with those.
 * An index out of range is a programming error. */
FfPack *ff_pack (const FfPackProblem *problem) G_GNUC_WARN_UNUSED_RESULT;
void ff_pack_free (FfPack *pack);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfPack, ff_pack_free)
