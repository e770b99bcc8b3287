/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands: the plan as it was last frozen, with the amendments made since. Nothing here changes
 * a frozen plan; what is planned now becomes an amendment, or a new letter, only when somebody
 * decides it. */
#pragma once

#include "ff-amendment.h"
#include "ff-briefed.h"
#include "ff-day.h"
#include "ff-plan-version.h"

typedef struct _FfStanding {
  GPtrArray *versions;      /* FfPlanVersion, by time */
  GPtrArray *amendments;    /* FfAmendment of all letters, by number */
  GPtrArray *briefed;       /* FfBriefed, by time: ff_briefings() says it */
  const FfPlanVersion *version; /* the one that stands; NULL: nothing is frozen yet */
  FfDayPlan *frozen;        /* as its sheets say; NULL as above */
  FfDayPlan *plan;          /* the same with its amendments; lines keep their printed numbers */
} FfStanding;

/* Errors: FF_ERROR_STORE, and FF_ERROR_INPUT for a copy that can't be read. */
FfStanding *ff_standing_load (FfStore *store,
                              const char *job_id,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_standing_free (FfStanding *standing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfStanding, ff_standing_free)

/* How many amendments stand beside the sheets of this letter, and how many roles have not
 * acknowledged one of them. */
guint ff_standing_n_amendments (const FfStanding *standing);
guint ff_standing_n_open (const FfStanding *standing);

/* "Version A, frozen 17:32 Sat; amendments 1–3 stand beside it." Before anything is frozen: "Version
 * A, not frozen." */
char *ff_standing_words (const FfStanding *standing,
                         const FfDay *day) G_GNUC_WARN_UNUSED_RESULT;

/* "amendments 1–3 stand beside this sheet", "amendment 1 stands …"; empty without any. */
char *ff_standing_beside (const FfStanding *standing) G_GNUC_WARN_UNUSED_RESULT;

/* The id of the line that carries this number on the sheets or, before anything is frozen, in the plan
 * of now; empty where there is none. */
char *ff_standing_line_id (const FfStanding *standing,
                           const FfDay *day,
                           int number) G_GNUC_WARN_UNUSED_RESULT;

/* The amendment that would make what stands the plan given; NULL: for the crew they are the same, or
 * nothing is frozen. It is not stored: `ff_amendment_append`. */
FfAmendment *ff_standing_propose (const FfStanding *standing,
                                  const FfDay *day,
                                  const FfDayPlan *plan,
                                  const char *by,
                                  gint64 at) G_GNUC_WARN_UNUSED_RESULT;

/* Freezes a plan: the first under the job's letter; a further one under the next, which needs a
 * reason. Returns the letter. FF_ERROR_INPUT. */
char *ff_plan_freeze (FfStore *store,
                      const FfDay *day,
                      const FfDayPlan *plan,
                      const char *by,
                      const char *why,
                      gint64 at,
                      GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether each copy and change can be read: for what comes from another laptop. */
gboolean ff_standing_check (GPtrArray *versions, GPtrArray *amendments, GError **error);
