/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two small habits of the crew that the pack list rests on: who is at the charger when, before a
 * job, and how many spares are taken. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

/* Wall clocks in the zone of the job's place; `to` may pass 24:00 into the night. */
typedef struct {
  char *date; /* YYYY-MM-DD: usually the day before */
  int from_clock, to_clock;
  char *member_id;
} FfWatch;

extern const FfFields ff_watch_fields;

FfWatch *ff_watch_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_watch_free (FfWatch *watch);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfWatch, ff_watch_free)

/* All watches of a job by time, replaced as one. They must not overlap. FF_ERROR_INPUT. */
gboolean ff_watches_check (const GPtrArray *watches, GError **error);
gboolean ff_watches_save (FfStore *store, const char *job_id, GPtrArray *watches, GError **error);
GPtrArray *ff_watches_load (FfStore *store,
                            const char *job_id,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct {
  FfKind kind; /* battery, propellers, card */
  int count;
} FfSpareRule;

/* One of each where the crew has said nothing else: an array of three FfSpareRule. */
GPtrArray *ff_spare_rules_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ff_spare_rule_save (FfStore *store, FfKind kind, int count, GError **error);
