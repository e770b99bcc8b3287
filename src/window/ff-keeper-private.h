/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shared by the two halves of the keeper: what it holds (ff-keeper.c), what it changes
 * (ff-keeper-edit.c). */
#pragma once

#include "ff-keeper.h"
#include "ff-undo.h"

typedef enum {
  FF_NEWS_JOBS = 1 << 0,
  FF_NEWS_ITEMS = 1 << 1,
  FF_NEWS_JOB = 1 << 2,
} FfKeeperNews;

FfUndo *ff_keeper_get_undo (FfKeeper *self);

/* The store, or NULL with the trouble as an error. */
FfStore *ff_keeper_need_store (FfKeeper *self, GError **error);

/* Reads anew what has changed, tells everyone, and asks for a new plan. */
void ff_keeper_announce (FfKeeper *self, FfKeeperNews news);
