/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was counted out of the store and in again for a job: appended, never changed. Of an item the
 * last event of a stage is what holds. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef enum {
  FF_PACK_OUT,    /* out-check: into its case, into the van */
  FF_PACK_GROUND, /* in-check on the ground, before the van moves */
  FF_PACK_BASE,   /* return-check at base */
} FfPackStage;

#define FF_N_PACK_STAGES 3

typedef enum {
  FF_PACK_OPEN,      /* not counted yet, or taken back */
  FF_PACK_DONE,
  FF_PACK_NOT_TAKEN, /* out-check only; with a reason */
  FF_PACK_MISSING,   /* in-checks only */
} FfPackMark;

extern const FfNames ff_names_pack_stage;
extern const FfNames ff_names_pack_mark;

/* "□", "■", "–" or "✕": a mark as a shape. */
const char *ff_pack_mark_shape (FfPackMark mark);

typedef struct {
  char *id, *job_id, *item_id;
  gint64 at;
  FfPackStage stage;
  FfPackMark mark;
  char *case_label; /* the case it went into or came out of; empty: none */
  char *condition;  /* in words: "scratched"; of what was not taken: why */
  char *entered_by; /* initials */
} FfPackEvent;

extern const FfFields ff_pack_event_fields;

FfPackEvent *ff_pack_event_new (const char *job_id,
                                const char *item_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_pack_event_free (FfPackEvent *event);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfPackEvent, ff_pack_event_free)

/* Not taken: at the out-check and with a reason; missing: at an in-check. */
gboolean ff_pack_event_check (const FfPackEvent *event, GError **error);
gboolean ff_pack_event_append (FfStore *store, const FfPackEvent *event, GError **error);

/* All of a job in the order they were entered: an array of FfPackEvent that frees them. */
GPtrArray *ff_pack_events_load (FfStore *store,
                                const char *job_id,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The last event of each item that is not of this job: where a thing is that another job took. */
GPtrArray *ff_pack_events_elsewhere (FfStore *store,
                                     const char *job_id,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
