/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The states of items, which are only ever added to: undo adds the state that was before. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

typedef struct {
  char *id;
  FfState state;
  char *why, *with, *until, *by;
} ItemState;

static void
item_state_free (gpointer record)
{
  ItemState *state = record;

  g_free (state->id);
  g_free (state->why);
  g_free (state->with);
  g_free (state->until);
  g_free (state->by);
  g_free (state);
}

static gboolean
append (FfStore *store, gconstpointer record, GError **error)
{
  const ItemState *state = record;

  return ff_item_set_state (store, state->id, state->state, state->why, state->with, state->until,
                            state->by, g_get_real_time () / G_USEC_PER_SEC, error);
}

/* The state as it is now, said as what was taken back to: an item nothing ever happened to has no
 * reason of its own. */
static ItemState *
state_before (const FfItem *item, const char *by)
{
  ItemState *state = g_new0 (ItemState, 1);

  state->id = g_strdup (item->id);
  state->state = item->state;
  state->why = item->state_why[0] != '\0' ? g_strdup (item->state_why)
                                          /* Translators: the reason of a state after undo. */
                                          : g_strdup (_ ("the change was taken back"));
  state->with = g_strdup (item->out_with);
  state->until = g_strdup (item->out_until);
  state->by = g_strdup (by);
  return state;
}

static const FfNoun noun_item_state = { NULL, append, NULL, item_state_free };

gboolean
ff_keeper_set_item_state (FfKeeper *self,
                          const char *id,
                          FfState state,
                          const char *why,
                          const char *with,
                          const char *until,
                          GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  g_autoptr (FfItem) item = store != NULL ? ff_item_load (store, id, error) : NULL;
  const char *by = ff_keeper_initials (self);
  g_autofree char *what = NULL;
  FfUndoStep *step;

  if (item == NULL
      || !ff_item_set_state (store, id, state, why, with, until, by,
                             g_get_real_time () / G_USEC_PER_SEC, error))
    return FALSE;
  /* Translators: an item, by its label, and its new state: "b4 is now: defect open". */
  what = g_strdup_printf (_ ("%s is now: %s"), item->label,
                          ff_name_text (&ff_names_state, (int) state));
  step = ff_undo_step_new (what);
  ff_undo_step_add (step, &noun_item_state, id, state_before (item, by));
  ff_undo_push (ff_keeper_get_undo (self), step);
  ff_keeper_announce (self, FF_NEWS_ITEMS);
  return TRUE;
}

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

gboolean
ff_keeper_add_resistance (FfKeeper *self,
                          const char *battery_id,
                          FfResistance *resistance,
                          GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  resistance->at = now ();
  ff_set_text (&resistance->by, ff_keeper_initials (self));
  if (store == NULL || !ff_resistance_add (store, battery_id, resistance, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_ITEMS);
  return TRUE;
}

gboolean
ff_keeper_add_incident (FfKeeper *self,
                        const char *battery_id,
                        FfSign sign,
                        FfDecision decision,
                        const char *found,
                        GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);
  const FfIncident incident
      = { now (), sign, decision, (char *) found, (char *) ff_keeper_initials (self) };

  if (store == NULL || !ff_incident_add (store, battery_id, &incident, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_ITEMS);
  return TRUE;
}

gboolean
ff_keeper_import_gear (FfKeeper *self, const FfGearImport *import, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL
      || !ff_gear_import_store (import, store, ff_keeper_initials (self), now (), error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_ITEMS);
  return TRUE;
}
