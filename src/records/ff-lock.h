/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew has decided about a line, and the planner then keeps: its battery, its filter, when
 * it is off. A line is known by its first shot. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *job_id;
  char *shot_id;    /* the first of the line */
  char *battery_id; /* empty: any */
  gboolean keep_filter;
  char *filter_id;  /* with keep_filter: empty stands for none in front */
  int off_by;       /* minutes after local midnight, or -1: any time */
} FfLock;

extern const FfFields ff_lock_fields;

FfLock *ff_lock_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_lock_free (FfLock *lock);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfLock, ff_lock_free)

/* It fixes something. */
gboolean ff_lock_check (const FfLock *lock, GError **error);

/* One lock a line: FF_ERROR_INPUT when another stands there. */
gboolean ff_lock_save (FfStore *store, const FfLock *lock, GError **error);
FfLock *ff_lock_load (FfStore *store, const char *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ff_lock_delete (FfStore *store, const char *id, GError **error);

/* An array of FfLock that frees them. */
GPtrArray *ff_locks_load (FfStore *store,
                          const char *job_id,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The lock of a line, or NULL; borrowed. */
const FfLock *ff_locks_find (GPtrArray *locks, const char *shot_id);
