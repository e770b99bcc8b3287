/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only: every way of fitting the filters asked about, none first. */
#pragma once

#include "ff-advise.h"

typedef struct {
  guint filters[FF_MAX_STACK]; /* indices, rising */
  double set_to[FF_MAX_STACK];
  guint n_filters;
  double stops;
} FfFilterCombo;

/* None, each filter, and stacks of up to max_stack; a variable filter once for each third of a
 * stop from its weakest to its strongest setting, both included. Of filters that are alike the
 * later ones are only fitted on top of the earlier ones. An array of FfFilterCombo. */
GArray *ff_filter_combos (const FfAdviseFilter *filters,
                          guint n_filters,
                          guint max_stack) G_GNUC_WARN_UNUSED_RESULT;
