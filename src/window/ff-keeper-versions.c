/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Freezing, amending, acknowledging: decisions that others have read on paper, so none of them is
 * offered to be taken back. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

#include "ff-briefing.h"
#include "ff-error.h"

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

/* The stored plan's answer, not one that is only tried. */
static FfAnswer *
need_plan (FfKeeper *self, GError **error)
{
  FfAnswer *answer = ff_keeper_answer (self);

  if (answer != NULL && answer->plan != NULL && !ff_keeper_is_planning (self))
    return answer;
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT,
                       _ ("the plan is being worked out; do it again when it stands"));
  return NULL;
}

gboolean
ff_keeper_freeze (FfKeeper *self, const char *why, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  FfAnswer *answer = store != NULL ? need_plan (self, error) : NULL;
  g_autofree char *letter = NULL;

  if (answer == NULL)
    return FALSE;
  letter = ff_plan_freeze (store, answer->day, answer->plan, ff_keeper_initials (self), why, now (),
                           error);
  if (letter != NULL)
    ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return letter != NULL;
}

gboolean
ff_keeper_amend (FfKeeper *self, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  FfAnswer *answer = store != NULL ? need_plan (self, error) : NULL;
  g_autoptr (FfAmendment) amendment = NULL;

  if (answer == NULL || answer->standing == NULL)
    return FALSE;
  amendment = ff_standing_propose (answer->standing, answer->day, answer->plan,
                                   ff_keeper_initials (self), now ());
  if (amendment == NULL)
    return TRUE;
  if (!ff_amendment_append (store, amendment, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_acknowledge (FfKeeper *self,
                       int number,
                       FfRole role,
                       const char *initials,
                       GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  const FfJob *job = ff_keeper_job (self);
  g_autoptr (FfAmendment) amendment = NULL;

  if (store == NULL || job == NULL)
    return FALSE;
  amendment = ff_amendment_new (job->id);
  amendment->number = number;
  if (!ff_acknowledgement_append (store,
                                  ff_amendment_add_acknowledgement (amendment, role, initials,
                                                                    now (),
                                                                    ff_keeper_initials (self)),
                                  error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_brief (FfKeeper *self, const char *name, const char *initials, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  FfAnswer *answer = store != NULL ? need_plan (self, error) : NULL;
  g_autoptr (FfBriefed) briefed = NULL;

  if (answer == NULL || answer->standing == NULL)
    return FALSE;
  briefed = ff_briefing_say (answer->standing, answer->day, name, initials,
                             ff_keeper_initials (self), now ());
  if (!ff_briefed_append (store, briefed, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}
