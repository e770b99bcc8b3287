/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is still missing on a day, in words that say what to do, and where to do it. Pure. */
#pragma once

#include "ff-crew.h"
#include "ff-job.h"
#include "ff-place.h"

/* A place begins with this zone, which nobody flies in: it says that none was chosen yet. */
#define FF_DAY_NO_ZONE "UTC"

typedef struct {
  const FfJob *job;
  const FfPlace *place; /* NULL: none yet */
  GPtrArray *crew;      /* FfMember with roles */
  guint n_shots;
  const char *why;      /* why there is no plan; NULL: there is one, or it is being made */
} FfDayState;

typedef struct {
  char *sentence;     /* "No date yet: enter the day of the shoot." */
  const char *goal;   /* the field that mends it, or the page */
  gboolean is_page;   /* goal is the name of a page */
  gboolean for_plan;  /* without it there is no plan */
} FfDayGap;

/* Array of FfDayGap, what a plan needs first. */
GPtrArray *ff_day_gaps (const FfDayState *state) G_GNUC_WARN_UNUSED_RESULT;
