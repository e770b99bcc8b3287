/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lists that a day calls for, in the order of the day, where the run of each stands, and what is
 * open. It says what was entered, never that anything is ready. */
#pragma once

#include "ff-day-run.h"

typedef struct {
  const FfListEntry *entry; /* the book's */
  char *title;      /* with the line of the plan it is for: "Turn-round: … · line 2" */
  int line;         /* 0: of no one line */
  char *run_id;     /* the last run; empty: none */
  FfRunState state;
  int n_items, n_done, n_deferred, n_failed;
  char *at;         /* the item that is next; empty: none */
  gint64 held_since; /* 0: not held */
  char *held_why;
} FfDayCheck;

/* Something that is open. */
typedef struct {
  char *list, *item; /* item empty: the whole list */
  char *state;       /* token: "not-run", "open", "deferred", "failed", "outside" … */
  char *why;         /* empty: none was given */
} FfOpenItem;

typedef struct {
  GPtrArray *book;
  guint conditions;
  GPtrArray *checks;  /* FfDayCheck */
  GPtrArray *open;    /* FfOpenItem */
  int next;           /* the first check that is not complete; -1: none */
} FfDayChecks;

/* With the limits of the day that are outside or not assessed among what is open. The plan may be
 * NULL: then there are no lines. */
FfDayChecks *ff_day_checks (FfStore *store,
                            const FfDay *day,
                            const FfDayPlan *plan,
                            gint64 now,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_day_checks_free (FfDayChecks *checks);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfDayChecks, ff_day_checks_free)

/* "Turn-round · line 2: Filter: failed. Ring cracked." */
char *ff_open_item_say (const FfOpenItem *open) G_GNUC_WARN_UNUSED_RESULT;

/* A value that was entered in a run: a fact of the day. */
typedef struct {
  gint64 at;
  char *list, *what, *said, *unit, *by;
  FfChallenge challenge; /* it was outside, or differed from the plan, when it was said */
  gboolean from_paper;
} FfSaidFact;

/* In the order in which they were said: an array of FfSaidFact that frees them. */
GPtrArray *ff_day_said (FfStore *store,
                        const char *job_id,
                        GError **error) G_GNUC_WARN_UNUSED_RESULT;
