/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's own limit sheets. The kit holds no law: each row says whose rule it is, where it
 * stands and when that was checked. Evaluation is not here. */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *sheet;      /* "Tern Four own sheet (example)" */
  int position;
  char *kind;       /* token: "mean-wind", "height" … */
  char *text;       /* "mean wind at flying height" */
  FfCompare compare;
  double value;     /* in the unit entered; NAN for required and prohibited; by-time: minutes */
  char *unit;       /* as entered: "m/s" */
  FfRule rule;
  char *source;     /* document and section */
  char *checked_on, *checked_by; /* YYYY-MM-DD; empty: never checked */
  char *expires_on;
  gboolean example; /* "set your own" stands beside it */
} FfLimit;

extern const FfFields ff_limit_fields;

FfLimit *ff_limit_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_limit_free (FfLimit *limit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfLimit, ff_limit_free)

gboolean ff_limit_check (const FfLimit *limit, GError **error);
gboolean ff_limit_save (FfStore *store, const FfLimit *limit, GError **error);

/* By sheet and position: an array of FfLimit that frees them. */
GPtrArray *ff_limits_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
