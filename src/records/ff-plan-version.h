/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A plan as it was frozen and printed under a letter: a copy, kept as text, that nothing changes. */
#pragma once

#include "ff-field.h"
#include "ff-records.h"

typedef struct {
  char *job_id;
  char *letter; /* "A" */
  gint64 frozen_at;
  char *by;   /* initials of who froze it; may be empty */
  char *why;  /* of a further letter: why a new one was decided; may be empty */
  char *copy; /* the plan, as JSON */
} FfPlanVersion;

extern const FfFields ff_plan_version_fields;

FfPlanVersion *ff_plan_version_new (const char *job_id) G_GNUC_WARN_UNUSED_RESULT;
void ff_plan_version_free (FfPlanVersion *version);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfPlanVersion, ff_plan_version_free)

/* A letter A to Z, and a copy that is one JSON value. */
gboolean ff_plan_version_check (const FfPlanVersion *version, GError **error);

/* FF_ERROR_INPUT when the letter is taken. */
gboolean ff_plan_version_append (FfStore *store, const FfPlanVersion *version, GError **error);

/* By time: an array of FfPlanVersion that frees them. */
GPtrArray *ff_plan_versions_load (FfStore *store,
                             const char *job_id,
                             GError **error) G_GNUC_WARN_UNUSED_RESULT;
