/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who of a job was briefed, on what, and who must be told what came since. Whoever was briefed on an
 * earlier letter, before the plan was frozen, or before an amendment that concerns them, is briefed
 * again. All texts are translated, owned and never NULL. */
#pragma once

#include "ff-briefed.h"
#include "ff-standing.h"

typedef enum {
  FF_BRIEFING_OPEN,  /* not briefed */
  FF_BRIEFING_SINCE, /* briefed, and something has come since */
  FF_BRIEFING_DONE,
} FfBriefingState;

typedef struct {
  char *name, *initials;
  const char *role; /* translated; empty: of no role in this job; borrowed */
  FfBriefingState state;
  const FfBriefed *last; /* of the standing; NULL: never */
  char *words;      /* "briefed on version A, 16:02"; "briefed on version A; version B since: …" */
  char *brief;      /* the same for a narrow column of paper: "A, 16:02", or empty */
} FfBriefing;

/* Everyone who holds a role, then whoever else was briefed: an array of FfBriefing. */
GPtrArray *ff_briefings (const FfStanding *standing,
                         const FfDay *day) G_GNUC_WARN_UNUSED_RESULT;

/* How many are not briefed on what stands; and it said in a sentence. */
guint ff_briefings_n_open (GPtrArray *briefings);
char *ff_briefings_sum (GPtrArray *briefings) G_GNUC_WARN_UNUSED_RESULT;

/* "□", "◧" or "■"; "open", "since" or "done" for programs. */
const char *ff_briefing_shape (FfBriefingState state);
const char *ff_briefing_token (FfBriefingState state);

/* That somebody was briefed now, on what stands; not stored: ff_briefed_append(). */
FfBriefed *ff_briefing_say (const FfStanding *standing,
                            const FfDay *day,
                            const char *name,
                            const char *initials,
                            const char *by,
                            gint64 at) G_GNUC_WARN_UNUSED_RESULT;
