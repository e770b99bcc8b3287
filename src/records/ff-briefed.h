/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who was briefed on what: a name and initials under a letter of the plan. Appended, never
 * changed. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef struct {
  char *job_id;
  char *letter; /* of the plan they were briefed on */
  int upto;     /* number of the last amendment they were told; 0: none */
  char *name;
  char *initials;
  gint64 at;
  char *by;     /* initials of who entered it; may be empty */
} FfBriefed;

extern const FfFields ff_briefed_fields;

FfBriefed *ff_briefed_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_briefed_free (FfBriefed *briefed);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfBriefed, ff_briefed_free)

/* A letter A to Z, a name, initials. FF_ERROR_INPUT. */
gboolean ff_briefed_check (const FfBriefed *briefed, GError **error);

/* FF_ERROR_INPUT when the same initials stand there for the same second. */
gboolean ff_briefed_append (FfStore *store, const FfBriefed *briefed, GError **error);

/* By time: an array of FfBriefed that frees them. */
GPtrArray *ff_briefed_load (FfStore *store,
                            const char *job_id,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
