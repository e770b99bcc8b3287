/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the keeper changes of the crew and of the place of the open job. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

/* Roles */

static const char *
name_of_member (FfKeeper *self, const char *member_id)
{
  const FfMember *member = ff_keeper_find_member (self, member_id);

  return member != NULL ? member->name : "";
}

gboolean
ff_keeper_add_crew (FfKeeper *self, const char *member_id, FfRole role, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  const FfJob *job = ff_keeper_job (self);
  FfUndoStep *step;
  g_autofree char *id = NULL;

  if (store == NULL || job == NULL || !ff_job_crew_add (store, job->id, member_id, role, error))
    return FALSE;
  id = ff_keeper_role_id (job->id, member_id, role);
  step = ff_keeper_step_about (_ ("%s added to the crew"), name_of_member (self, member_id));
  ff_undo_step_add (step, &ff_noun_job_crew, id, NULL);
  ff_undo_push (ff_keeper_get_undo (self), step);
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_remove_crew (FfKeeper *self, const char *member_id, FfRole role, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  const FfJob *job = ff_keeper_job (self);
  FfUndoStep *step;
  g_autofree char *id = NULL;

  if (store == NULL || job == NULL || !ff_job_crew_remove (store, job->id, member_id, role, error))
    return FALSE;
  id = ff_keeper_role_id (job->id, member_id, role);
  step = ff_keeper_step_about (_ ("%s taken from the crew"), name_of_member (self, member_id));
  ff_undo_step_add (step, &ff_noun_job_crew, id, ff_keeper_role_new (job->id, member_id, role));
  ff_undo_push (ff_keeper_get_undo (self), step);
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

typedef struct {
  const char *job_id;
  const FfMember *member;
  FfRole from, to;
} Casting;

static gboolean
add_member (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  const Casting *casting = what;
  const char *member_id = casting->member->id;
  g_autofree char *id = ff_keeper_role_id (casting->job_id, member_id, casting->to);

  ff_undo_step_add (step, &ff_noun_member, member_id, NULL);
  ff_undo_step_add (step, &ff_noun_job_crew, id, NULL);
  return ff_member_save (store, casting->member, error)
         && ff_job_crew_add (store, casting->job_id, member_id, casting->to, error);
}

static gboolean
swap_role (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  const Casting *casting = what;
  const char *member_id = casting->member->id;
  g_autofree char *from = ff_keeper_role_id (casting->job_id, member_id, casting->from);
  g_autofree char *to = ff_keeper_role_id (casting->job_id, member_id, casting->to);

  ff_undo_step_add (step, &ff_noun_job_crew, from,
                    ff_keeper_role_new (casting->job_id, member_id, casting->from));
  ff_undo_step_add (step, &ff_noun_job_crew, to, NULL);
  return ff_job_crew_remove (store, casting->job_id, member_id, casting->from, error)
         && ff_job_crew_add (store, casting->job_id, member_id, casting->to, error);
}

gboolean
ff_keeper_change_role (
    FfKeeper *self, const char *member_id, FfRole from, FfRole to, GError **error)
{
  const FfJob *job = ff_keeper_job (self);
  const FfMember *member = ff_keeper_find_member (self, member_id);
  Casting casting = { job != NULL ? job->id : NULL, member, from, to };

  if (job == NULL || member == NULL || from == to)
    return TRUE;
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Role of %s changed"), member->name),
                         swap_role, &casting, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_add_new_crew (FfKeeper *self, const FfMember *member, FfRole role, GError **error)
{
  const FfJob *job = ff_keeper_job (self);
  Casting casting = { job != NULL ? job->id : NULL, member, role, role };

  if (job == NULL)
    return TRUE;
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("%s added to the crew"), member->name),
                         add_member, &casting, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}

/* Places */

typedef struct {
  const FfPlace *place;
  const char *job_id;
} Placing;

/* Undone the other way round: the job leaves the place before the place goes. */
static gboolean
place_job (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  const Placing *placing = what;
  g_autoptr (FfJob) job = ff_job_load (store, placing->job_id, error);

  if (job == NULL || !ff_place_save (store, placing->place, error))
    return FALSE;
  ff_undo_step_add (step, &ff_noun_place, placing->place->id, NULL);
  ff_undo_step_add (step, &ff_noun_job, job->id, ff_job_load (store, job->id, NULL));
  ff_set_text (&job->place_id, placing->place->id);
  return ff_job_save (store, job, error);
}

gboolean
ff_keeper_add_place (FfKeeper *self, const FfPlace *place, GError **error)
{
  const FfJob *job = ff_keeper_job (self);
  Placing placing = { place, job != NULL ? job->id : NULL };

  if (job == NULL)
    return TRUE;
  if (!ff_keeper_change (self, ff_keeper_step_about (_ ("Place %s added"), place->name), place_job,
                         &placing, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOBS | FF_NEWS_JOB);
  return TRUE;
}
