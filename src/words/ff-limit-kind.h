/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kinds of limit that aviation rules, makers' manuals, permits and crews' own sheets hold, as
 * one table. The kit knows what can be limited and in which unit; the numbers are the crew's. */
#pragma once

#include "ff-unit.h"

typedef struct {
  const char *token;
  const char *text; /* marked for translation */
  FfDimension dimension;
  const char *datum; /* what it counts from, marked for translation; NULL where that is plain */
} FfLimitKind;

/* The i-th kind, NULL past the last. */
const FfLimitKind *ff_limit_kind_at (guint i);

/* By its token; NULL if there is none. */
const FfLimitKind *ff_limit_kind_find (const char *token);
const char *ff_limit_kind_text (const FfLimitKind *kind);
const char *ff_limit_kind_datum (const FfLimitKind *kind); /* "" where there is none to name */
