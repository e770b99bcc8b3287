/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-keeper-lists.h"

#include <glib/gi18n-lib.h>

#include "ff-error.h"
#include "ff-keeper-private.h"

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

gboolean
ff_keeper_run_act (FfKeeper *self, FfDayRun *run, FfRunEvent *event, GError **error)
{
  if (event->by == NULL)
    event->by = ff_keeper_initials (self);
  if (ff_keeper_need_store (self, error) == NULL
      || !ff_day_run_act (run, event, now (), error))
    return FALSE;
  if (event->subject != NULL && event->subject[0] != '\0')
    ff_keeper_announce (self, FF_NEWS_ITEMS);
  return TRUE;
}

static FfDay *
load_day (FfKeeper *self, GError **error)
{
  const FfJob *job = ff_keeper_job (self);
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL)
    return NULL;
  if (job != NULL)
    return ff_day_load (store, job->id, error);
  g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, _ ("No job is open."));
  return NULL;
}

FfDayChecks *
ff_keeper_checks (FfKeeper *self, GError **error)
{
  g_autoptr (FfDay) day = load_day (self, error);

  return day != NULL ? ff_day_checks (ff_keeper_store (self), day, ff_keeper_plan (self), now (),
                                      error)
                     : NULL;
}

static gboolean
take_facts (FfKeeper *self, FfDayRun *run, GError **error)
{
  g_autoptr (FfDay) day = load_day (self, error);

  if (day == NULL)
    return FALSE;
  ff_day_run_take_facts (run, ff_list_facts_new (day, ff_keeper_plan (self),
                                                 ff_day_run_kept (run)->line));
  return TRUE;
}

/* The one who flies answers; where the pilot is at the keys, the camera operator does. */
static const char *
other_person (FfKeeper *self)
{
  static const FfRole roles[] = { FF_ROLE_PILOT, FF_ROLE_CAMERA, FF_ROLE_OBSERVER, FF_ROLE_LEAD };
  GPtrArray *crew = ff_keeper_crew (self);

  for (guint r = 0; r < G_N_ELEMENTS (roles); r++)
    for (guint i = 0; i < crew->len; i++)
      {
        const FfMember *member = g_ptr_array_index (crew, i);

        if (member->role == roles[r]
            && g_ascii_strcasecmp (member->initials, ff_keeper_initials (self)) != 0)
          return member->initials;
      }
  return "";
}

FfDayRun *
ff_keeper_start_run (FfKeeper *self,
                     const FfListEntry *entry,
                     guint conditions,
                     int line,
                     GError **error)
{
  const FfJob *job = ff_keeper_job (self);
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfDayRun) run = NULL;

  if (store == NULL || job == NULL)
    return NULL;
  run = ff_day_run_start (store, job->id, entry, conditions, line, ff_keeper_initials (self),
                          other_person (self), now (), error);
  return run != NULL && take_facts (self, run, error) ? g_steal_pointer (&run) : NULL;
}

FfDayRun *
ff_keeper_open_run (FfKeeper *self, const char *run_id, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfDayRun) run = store != NULL ? ff_day_run_open (store, run_id, error) : NULL;

  if (run == NULL || !take_facts (self, run, error)
      || !ff_day_run_wake (run, _ ("left"), now (), error))
    return NULL;
  return g_steal_pointer (&run);
}

char *
ff_keeper_save_list (FfKeeper *self, const char *id, const char *text, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  return store != NULL ? ff_list_book_save (store, id, text, ff_keeper_initials (self), now (), error)
                       : NULL;
}
