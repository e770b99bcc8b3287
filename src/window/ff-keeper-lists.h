/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists and their runs in the keeper: what is entered is stored before it is answered, and whoever
 * shows the gear hears of a defect. */
#pragma once

#include "ff-day-checks.h"
#include "ff-keeper.h"

/* One event of a run of the open job, by whoever is at the keys unless it says by whom. */
gboolean ff_keeper_run_act (FfKeeper *self, FfDayRun *run, FfRunEvent *event, GError **error);

/* The lists of the open job; NULL with an error, or when no job is open. */
FfDayChecks *ff_keeper_checks (FfKeeper *self, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Starts a list, or opens a run that was left; one that nobody held meanwhile is held since its last
 * event. It knows what the plan says. */
FfDayRun *ff_keeper_start_run (FfKeeper *self,
                               const FfListEntry *entry,
                               guint conditions,
                               int line,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
FfDayRun *ff_keeper_open_run (FfKeeper *self,
                              const char *run_id,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Keeps the text of a list. Returns its id. */
char *ff_keeper_save_list (FfKeeper *self,
                           const char *id,
                           const char *text,
                           GError **error) G_GNUC_WARN_UNUSED_RESULT;
