/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-charge-watch.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-error.h"
#include "ff-rows.h"

static const FfField watch_fields[] = {
  FF_DATE (FfWatch, date, N_ ("day")),
  FF_CLOCK (FfWatch, from_clock, N_ ("from"), TRUE),
  FF_CLOCK (FfWatch, to_clock, N_ ("until"), TRUE),
  FF_ID (FfWatch, member_id, "member_id", N_ ("who attends the charger"), TRUE),
};
const FfFields ff_watch_fields = FF_FIELDS ("charge_watch", watch_fields);

static const FfParts watches_of_job = { "charge_watch", "job_id", FALSE };

static gpointer
watch_blank (void)
{
  return ff_watch_new ();
}

FfWatch *
ff_watch_new (void)
{
  FfWatch *watch = g_new0 (FfWatch, 1);

  ff_fields_init (&ff_watch_fields, watch);
  return watch;
}

void
ff_watch_free (FfWatch *watch)
{
  if (watch == NULL)
    return;
  ff_fields_clear (&ff_watch_fields, watch);
  g_free (watch);
}

static gboolean
check_one (const FfWatch *watch, const char *whose, GError **error)
{
  const char *what = NULL;

  if (!ff_fields_check (&ff_watch_fields, watch, whose, error))
    return FALSE;
  if (*watch->date == '\0')
    what = _ ("the day is missing");
  else if (watch->to_clock <= watch->from_clock)
    what = _ ("it ends before it begins; a watch past midnight ends at 25:00 and the like");
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

/* By time. A night's watch and one of the next morning are compared by date alone, which a watch
 * past midnight would only run into with clocks past 24:00. */
gboolean
ff_watches_check (const GPtrArray *watches, GError **error)
{
  const char *whose = _ ("watch at the charger");
  const FfWatch *before = NULL;

  for (guint i = 0; i < watches->len; i++)
    {
      const FfWatch *watch = g_ptr_array_index (watches, i);
      int order = before != NULL ? strcmp (before->date, watch->date) : -1;

      if (!check_one (watch, whose, error))
        return FALSE;
      if (order > 0 || (order == 0 && watch->from_clock < before->to_clock))
        {
          g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose,
                       _ ("it begins before the one ahead of it ends; put them in order"));
          return FALSE;
        }
      before = watch;
    }
  return TRUE;
}

gboolean
ff_watches_save (FfStore *store, const char *job_id, GPtrArray *watches, GError **error)
{
  gboolean own, done;

  if (!ff_watches_check (watches, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_parts_save (store, &watches_of_job, &ff_watch_fields, job_id, watches, error);
  return ff_rows_close (store, own, done, error);
}

GPtrArray *
ff_watches_load (FfStore *store, const char *job_id, GError **error)
{
  return ff_rows_load (store, &ff_watch_fields, "WHERE job_id = ?1 ORDER BY position", job_id,
                       watch_blank, (GDestroyNotify) ff_watch_free, error);
}

/* ---- Spares ---- */

static const FfField rule_fields[] = {
  FF_NAME (FfSpareRule, kind, N_ ("kind"), &ff_names_kind),
  FF_WHOLE (FfSpareRule, count, N_ ("spares"), 0, 99),
};
static const FfFields rule_table = FF_FIELDS ("spare_rule", rule_fields);

static gpointer
rule_blank (void)
{
  return g_new0 (FfSpareRule, 1);
}

static int
stored_count (const GPtrArray *stored, FfKind kind)
{
  for (guint i = 0; i < stored->len; i++)
    {
      const FfSpareRule *rule = g_ptr_array_index (stored, i);

      if (rule->kind == kind)
        return rule->count;
    }
  return 1;
}

GPtrArray *
ff_spare_rules_load (FfStore *store, GError **error)
{
  static const FfKind kinds[] = { FF_KIND_BATTERY, FF_KIND_PROPELLERS, FF_KIND_CARD };
  g_autoptr (GPtrArray) stored
      = ff_rows_load (store, &rule_table, "", NULL, rule_blank, g_free, error);
  GPtrArray *rules;

  if (stored == NULL)
    return NULL;
  rules = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      FfSpareRule *rule = g_new0 (FfSpareRule, 1);

      rule->kind = kinds[i];
      rule->count = stored_count (stored, kinds[i]);
      g_ptr_array_add (rules, rule);
    }
  return rules;
}

gboolean
ff_spare_rule_save (FfStore *store, FfKind kind, int count, GError **error)
{
  const FfSpareRule rule = { kind, count };

  if (kind != FF_KIND_BATTERY && kind != FF_KIND_PROPELLERS && kind != FF_KIND_CARD)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s",
                   _ ("spares are counted of batteries, propellers and cards"));
      return FALSE;
    }
  return ff_fields_check (&rule_table, &rule, _ ("spares"), error)
         && ff_rows_save (store, &rule_table, &rule, error);
}
