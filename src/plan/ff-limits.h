/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Limits against what is known. Four answers and no more: within, outside, not assessed, not
 * applicable. A fact is an interval, since a report may say no more than "10 km or more" or, of a
 * gust, nothing: it is within only where the whole of it is, outside only where none of it is within.
 * All values are SI (ff-unit.h); nothing is rounded before it is compared. */
#pragma once

#include <glib.h>

#include "ff-names.h"

/* In order of weight: the worse of two answers is the greater. */
typedef enum {
  FF_LIMIT_NOT_APPLICABLE,
  FF_LIMIT_WITHIN,
  FF_LIMIT_NOT_ASSESSED,
  FF_LIMIT_OUTSIDE,
} FfLimitAnswer;

extern const FfNames ff_names_limit_answer; /* tokens "not_applicable", "within" … */

/* What is asked. Of flags (required, prohibited) value and value_to are NAN. A window is from value
 * to value_to, minutes after midnight, and may pass midnight (to < from). */
typedef struct {
  const char *kind; /* token of ff-limit-kind.h; rows of one kind meet one fact */
  FfCompare compare;
  double value, value_to;
} FfLimitRow;

typedef enum {
  FF_FACT_UNKNOWN,
  FF_FACT_VALUE,          /* somewhere from low to high, both included */
  FF_FACT_FLAG,           /* low and high are both 1 for yes, 0 for no */
  FF_FACT_NOT_APPLICABLE, /* does not arise today */
} FfFactIs;

typedef struct {
  const char *kind;
  FfFactIs is;
  double low, high;
  gboolean low_open, high_open; /* "less than": the end itself is not reached */
} FfLimitFact;

/* One row against one fact; a NULL fact is unknown. Of a time of day the whole span low to high must
 * be in the window. Information alone is not applicable. */
FfLimitAnswer ff_limits_answer (const FfLimitRow *row, const FfLimitFact *fact);

/* Answers for all rows, each against the fact of its kind (unknown where there is none); and which
 * of them binds: the row of its kind that leaves least room, the first on a tie. Both arrays are the
 * caller's, n_rows long; ret_binds may be NULL. The worst answer of all; FF_LIMIT_NOT_APPLICABLE
 * without rows. */
FfLimitAnswer ff_limits_assess (const FfLimitRow *rows,
                          guint n_rows,
                          const FfLimitFact *facts,
                          guint n_facts,
                          FfLimitAnswer *ret_answers,
                          gboolean *ret_binds);
