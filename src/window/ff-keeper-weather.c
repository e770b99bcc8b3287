/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was measured and reported of the sky, what was decided, and the limits it is held against. */
#include "ff-keeper-private.h"

#include <glib/gi18n-lib.h>

/* ---- only ever added to ---- */

gboolean
ff_keeper_add_measurement (FfKeeper *self, const FfMeasurement *measured, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL || !ff_measurement_append (store, measured, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_add_report (FfKeeper *self, const FfWeatherReport *report, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL || !ff_weather_report_append (store, report, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_add_call (FfKeeper *self, const FfWeatherCall *call, GError **error)
{
  FfStore *store = ff_keeper_need_store (self, error);

  if (store == NULL || !ff_weather_call_append (store, call, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

/* ---- thin air ---- */

static gpointer
load_air (FfStore *store, const char *id, GError **error)
{
  FfAirRules rules;

  return ff_air_rules_load (store, &rules, error) ? g_memdup2 (&rules, sizeof rules) : NULL;
}

static gboolean
save_air (FfStore *store, gconstpointer record, GError **error)
{
  return ff_air_rules_save (store, record, error);
}

/* There is always a rule: it is put back, never taken away. */
static gboolean
keep_air (FfStore *store, const char *id, GError **error)
{
  return TRUE;
}

static const FfNoun noun_air = { load_air, save_air, keep_air, g_free };

static gboolean
change_air (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  ff_undo_step_add (step, &noun_air, "air", load_air (store, "air", NULL));
  return ff_air_rules_save (store, what, error);
}

double
ff_keeper_thin_air (FfKeeper *self)
{
  FfStore *store = ff_keeper_store (self);
  FfAirRules rules;

  return store != NULL && ff_air_rules_load (store, &rules, NULL) ? rules.thin_air : 1.0;
}

gboolean
ff_keeper_save_thin_air (FfKeeper *self, double share, GError **error)
{
  FfAirRules rules = { 1, share };

  if (!ff_keeper_change (self, ff_undo_step_new (_ ("Thin air counted otherwise")), change_air,
                         &rules, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

/* ---- limits ---- */

static gpointer
load_limit (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) limits = ff_limits_load (store, error);

  for (guint i = 0; limits != NULL && i < limits->len; i++)
    if (g_str_equal (((FfLimit *) g_ptr_array_index (limits, i))->id, id))
      return g_ptr_array_steal_index (limits, i);
  return NULL;
}

static gboolean
save_limit (FfStore *store, gconstpointer record, GError **error)
{
  return ff_limit_save (store, record, error);
}

static void
free_limit (gpointer record)
{
  ff_limit_free (record);
}

static const FfNoun noun_limit = { load_limit, save_limit, ff_limit_delete, free_limit };

static gboolean
save_all (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  GPtrArray *limits = what;

  for (guint i = 0; i < limits->len; i++)
    {
      const FfLimit *limit = g_ptr_array_index (limits, i);

      ff_undo_step_add (step, &noun_limit, limit->id, load_limit (store, limit->id, NULL));
      if (!ff_limit_save (store, limit, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
ff_keeper_add_limits (FfKeeper *self, GPtrArray *limits, const char *what, GError **error)
{
  if (!ff_keeper_change (self, ff_undo_step_new (what), save_all, limits, error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}

gboolean
ff_keeper_save_limit (FfKeeper *self, const FfLimit *limit, const char *what, GError **error)
{
  g_autoptr (GPtrArray) one = g_ptr_array_new ();

  g_ptr_array_add (one, (gpointer) limit);
  return ff_keeper_add_limits (self, one, what, error);
}

static gboolean
delete_one (FfStore *store, FfUndoStep *step, gpointer what, GError **error)
{
  const char *id = what;

  ff_undo_step_add (step, &noun_limit, id, load_limit (store, id, NULL));
  return ff_limit_delete (store, id, error);
}

gboolean
ff_keeper_delete_limit (FfKeeper *self, const char *id, GError **error)
{
  if (!ff_keeper_change (self, ff_undo_step_new (_ ("Limit removed")), delete_one, (gpointer) id,
                         error))
    return FALSE;
  ff_keeper_announce (self, FF_NEWS_JOB);
  return TRUE;
}
