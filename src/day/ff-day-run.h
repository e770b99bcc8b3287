/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A run of a list in the store: each event is on the disk before the machine steps, so that whatever
 * was answered is there when the program, or the machine, is gone. */
#pragma once

#include "ff-kept-run.h"
#include "ff-list-book.h"
#include "ff-list-facts.h"
#include "ff-run.h"

typedef struct _FfDayRun FfDayRun;

/* Starts a list for a line of the plan (0: for none). `by` reads, `other` answers (may be empty). */
FfDayRun *ff_day_run_start (FfStore *store,
                            const char *job_id,
                            const FfListEntry *entry,
                            guint conditions,
                            int line,
                            const char *by,
                            const char *other,
                            gint64 at,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The run as its events left it. */
FfDayRun *ff_day_run_open (FfStore *store,
                           const char *run_id,
                           GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_run_free (FfDayRun *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayRun, ff_day_run_free)

const FfKeptRun *ff_day_run_kept (const FfDayRun *self);
const FfListRun *ff_day_run_run (const FfDayRun *self);
int ff_day_run_n_events (const FfDayRun *self);

/* What the plan says now, for bound items; taken over. Until it is set nothing is compared. */
void ff_day_run_take_facts (FfDayRun *self, FfListFacts *facts);

/* What the plan says for an item; empty: nothing. */
const char *ff_day_run_expected (const FfDayRun *self, int item);

/* One event, typed at `entered_at`. Refused ones are not kept. A failure with a subject (the id of an
 * item of the gear) opens a defect on it in the same transaction. */
gboolean ff_day_run_act (FfDayRun *self,
                         const FfRunEvent *event,
                         gint64 entered_at,
                         GError **error);

/* A run that still goes, but whose program has ended or whose machine slept, is held since its last
 * event. Does nothing to any other. */
gboolean ff_day_run_wake (FfDayRun *self, const char *why, gint64 now, GError **error);
