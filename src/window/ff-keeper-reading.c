/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Readings of the open job: added, and set aside. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

/* What was measured is kept: undone, it is set aside. */
static gboolean
take_back (FfStore *store, const char *id, GError **error)
{
  return ff_reading_drop (store, id, _ ("taken back at once"), NULL,
                          g_get_real_time () / G_USEC_PER_SEC, error);
}

static const FfNoun noun_reading = { .remove = take_back };

gboolean
ff_keeper_add_reading (FfKeeper *self, const FfReading *reading, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  FfUndoStep *step;

  if (store == NULL || !ff_reading_append (store, reading, error))
    return FALSE;
  step = ff_undo_step_new (_ ("Light reading added"));
  ff_undo_step_add (step, &noun_reading, reading->id, NULL);
  ff_undo_push (ff_keeper_get_undo (self), step);
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_drop_reading (FfKeeper *self, const char *id, const char *why, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL
      || !ff_reading_drop (store, id, why, ff_keeper_initials (self),
                           g_get_real_time () / G_USEC_PER_SEC, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}
