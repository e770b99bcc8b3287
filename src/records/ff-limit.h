/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's own limit sheets. The kit holds no law: each row says whose rule it is, where it
 * stands and when that was checked. Evaluation is in the plan room. */
#pragma once

#include "ff-field.h"
#include "ff-names.h"
#include "ff-records.h"

typedef struct {
  char *id;
  char *sheet;      /* "Tern Four own sheet (example)" */
  int position;
  char *kind;       /* token of ff-limit-kind.h: "mean-wind", "height" … */
  char *text;       /* "mean wind at flying height" */
  FfCompare compare;
  double value;     /* in the unit entered; NAN for required, prohibited and information */
  double value_to;  /* between and window: the other end; else NAN */
  char *unit;       /* as entered, a label of ff-unit.h: "m/s" */
  char *datum;      /* what it counts from, where it is not the usual; or empty */
  FfOnlyIf only_if;
  FfAnchor anchor_from, anchor_to; /* a window: what value and value_to are minutes after */
  FfRule rule;
  char *authority;  /* who made the rule */
  char *source;     /* document and section */
  char *permit;     /* number of a permit or waiver, or empty */
  char *checked_on, *checked_by; /* YYYY-MM-DD; empty: never checked */
  char *expires_on;
  char *note;
  gboolean example; /* "set your own" stands beside it */
} FfLimit;

extern const FfFields ff_limit_fields;

FfLimit *ff_limit_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ff_limit_free (FfLimit *limit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfLimit, ff_limit_free)

/* A kind that is known, a unit of its dimension, values that the comparison needs and no others.
 * FF_ERROR_INPUT. */
gboolean ff_limit_check (const FfLimit *limit, GError **error);
gboolean ff_limit_save (FfStore *store, const FfLimit *limit, GError **error);
gboolean ff_limit_delete (FfStore *store, const char *id, GError **error);

/* By sheet and position: an array of FfLimit that frees them. */
GPtrArray *ff_limits_load (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
