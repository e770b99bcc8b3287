/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pack list of a job: what its plan needs, what goes with it, what is in the bag in case of
 * cloud, documents and spares, by case; what is short and what to do; and what was counted out and
 * in. Sentences are translated; all texts are owned and never NULL. */
#pragma once

#include <glib.h>

#include "ff-charge-evening.h"
#include "ff-pack-event.h"
#include "ff-pack.h"

typedef struct _FfStore FfStore;

extern const FfNames ff_names_pack_need;

/* One line: an item, once. */
typedef struct {
  char *item_id, *label, *title;
  FfKind kind;
  FfState state;
  char *case_label;
  char *slot;      /* of the filter wallet; empty */
  FfPackNeed need;
  gboolean extra;  /* it was counted out, but the list does not ask for it (any more) */
  char *why;       /* "sorties 1, 2 and 3", "goes with aircraft 1" */
  char *due;       /* "due at 30 h, 26.2 h so far"; empty */
  FfPackMark marks[FF_N_PACK_STAGES];
  char *conditions[FF_N_PACK_STAGES]; /* as entered at that stage; why it was not taken */
  char *last_seen; /* "last fitted 17:38, battery b3" */
  double mass_kg, energy_wh; /* NAN: not known, or has none */
} FfPackEntry;

typedef struct {
  char *case_label;  /* empty: loose */
  GPtrArray *entries; /* FfPackEntry */
  double mass_kg;    /* of what is known */
  guint mass_unknown; /* so many entries have no weight entered */
  double energy_wh;  /* of the batteries in it */
} FfPackCase;

typedef struct {
  char *item;    /* its label, or "battery" and the like for a number of a kind */
  char *item_id; /* empty for a number of a kind */
  char *reason;  /* "out with Brackenholt, back Sunday 19 September: lent" */
  char *advice;  /* what to do; empty */
  gboolean counted; /* it is short because it was not counted in */
} FfPackMissing;

typedef struct {
  char *job_id, *job, *date;
  GPtrArray *cases;    /* FfPackCase, by label; what is loose last */
  GPtrArray *shorts;   /* FfPackMissing */
  GPtrArray *clashes;  /* char*: an item in two jobs on a day, in two cases */
  GPtrArray *due;      /* char*: checks that come up */
  GPtrArray *swaps;    /* char*: "1 → 2: out 5, into slot 5; in 4" of the filter wallet */
  GPtrArray *remarks;  /* char*: why there is no plan, that there is no gear list */
  char *cards;         /* "39 GB for 52 min at 100 Mbit/s"; empty */
  FfChargeEvening *evening;
  guint n_lines;       /* without extras */
  guint n_marked[FF_N_PACK_STAGES]; /* done, of the lines and extras */
  guint n_not_taken, n_missing;
  gboolean back_begun; /* something was counted in: what is not yet is among what is short */
} FfPackList;

/* Works it out from the store: plans the day, also as if nothing were broken or lent, to say what
 * that costs. Takes a tenth of a second; made for a worker. FF_ERROR_INPUT, FF_ERROR_STORE. */
FfPackList *ff_pack_list_load (FfStore *store,
                               const char *wanted_job,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_pack_list_free (FfPackList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfPackList, ff_pack_list_free)

/* The entry of an item, or NULL. */
FfPackEntry *ff_pack_list_find (const FfPackList *list, const char *item_id);

/* What is still to be counted at a stage: on the list and not done, not taken or missing. */
guint ff_pack_list_left (const FfPackList *list, FfPackStage stage);
