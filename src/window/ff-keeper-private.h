/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shared by the parts of the keeper: what it holds (ff-keeper.c), what it changes
 * (ff-keeper-edit.c, ff-keeper-crew.c, ff-keeper-shots.c). */
#pragma once

#include "ff-keeper.h"
#include "ff-undo.h"

typedef enum {
  FF_NEWS_JOBS = 1 << 0,
  FF_NEWS_ITEMS = 1 << 1,
  FF_NEWS_JOB = 1 << 2,
  FF_NEWS_COUNT = 1 << 3, /* no plan follows from what was counted */
} FfKeeperNews;

FfUndo *ff_keeper_get_undo (FfKeeper *self);

/* The store, or NULL with the trouble as an error. */
FfStore *ff_keeper_need_store (FfKeeper *self, GError **error);

/* Reads anew what has changed, tells everyone, and asks for a new plan. */
void ff_keeper_announce (FfKeeper *self, FfKeeperNews news);

/* Several records changed as one. `taken` is the step that undoes it, which `work` fills; it is
 * taken in any case. */
typedef gboolean (*FfKeeperChange) (FfStore *store,
                                    FfUndoStep *step,
                                    gpointer what,
                                    GError **error);
gboolean ff_keeper_change (FfKeeper *self,
                           FfUndoStep *taken,
                           FfKeeperChange work,
                           gpointer what,
                           GError **error);

/* A step named "Job “Skarrowick Head” deleted": the format is one of ours, its %s the quoted name. */
FfUndoStep *ff_keeper_step_about (const char *format, const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* Who holds a role, as undo remembers it. */
FfHeldRole *ff_keeper_role_new (const char *job_id, const char *member_id, FfRole role)
    G_GNUC_WARN_UNUSED_RESULT;
char *ff_keeper_role_id (const char *job_id, const char *member_id, FfRole role)
    G_GNUC_WARN_UNUSED_RESULT;
