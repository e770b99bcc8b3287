/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-wear.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-civil.h"
#include "ff-number.h"
#include "ff-rows.h"

#define SOON_SHARE 0.15
#define SOON_DAYS 30

#define HOURS "sum (f.down - f.off) / 3600.0"

static const char *const wear_sql
    = "SELECT i.id, count (*) * 1.0, count (*) FROM flight AS f"
      " JOIN item AS i ON i.id = f.battery_id"
      " WHERE f.off >= i.used_as_of AND (?1 = '' OR i.id = ?1) GROUP BY i.id"
      " UNION ALL "
      "SELECT i.id, " HOURS ", count (*) FROM flight AS f JOIN job AS j ON j.id = f.job_id"
      " JOIN item AS i ON i.id = j.aircraft_id"
      " WHERE f.off >= i.used_as_of AND (?1 = '' OR i.id = ?1) GROUP BY i.id"
      " UNION ALL "
      "SELECT i.id, " HOURS ", count (*) FROM flight AS f JOIN job AS j ON j.id = f.job_id"
      " JOIN goes_with AS g ON g.item_id = j.aircraft_id JOIN item AS i ON i.id = g.with_id"
      " WHERE f.off >= i.used_as_of AND (?1 = '' OR i.id = ?1)"
      " AND i.kind IN ('propellers', 'controller')"
      " AND NOT EXISTS (SELECT 1 FROM fitting WHERE item_id = i.id) GROUP BY i.id"
      " UNION ALL "
      "SELECT i.id, " HOURS ", count (*)"
      " FROM (SELECT DISTINCT item_id FROM fitting) AS t JOIN item AS i ON i.id = t.item_id"
      " JOIN flight AS f ON f.off >= i.used_as_of JOIN job AS j ON j.id = f.job_id"
      " WHERE (?1 = '' OR i.id = ?1)"
      " AND j.aircraft_id = (SELECT on_id FROM fitting AS x WHERE x.item_id = i.id AND x.at <= f.off"
      " ORDER BY x.at DESC, x.sequence DESC LIMIT 1) GROUP BY i.id";

GHashTable *
ff_wear_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GHashTable) wear = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (FfStatement) statement = ff_statement_new (store, wear_sql, error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, id, error))
    return NULL;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      FfWear *one = g_new0 (FfWear, 1);

      one->logged = ff_statement_get_real (statement, 1);
      one->flights = (guint) ff_statement_get_integer (statement, 2);
      g_hash_table_replace (wear, ff_statement_dup_text (statement, 0), one);
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&wear) : NULL;
}

double
ff_wear_total (const FfItem *item, GHashTable *wear)
{
  const FfWear *one = wear != NULL ? g_hash_table_lookup (wear, item->id) : NULL;

  if (one == NULL)
    return item->used;
  return (isnan (item->used) ? 0 : item->used) + one->logged;
}

/* ---- What is due ---- */

static void
due_by_use (const FfItem *item, GHashTable *wear, FfDue *due)
{
  double used = ff_wear_total (item, wear);

  due->unit = item->kind == FF_KIND_BATTERY ? FF_DUE_CYCLES : FF_DUE_HOURS;
  due->left = item->due_at - (isnan (used) ? 0 : used);
  if (isnan (due->left))
    return;
  if (due->left <= 0)
    due->answer = FF_DUE_NOW;
  else if (due->left <= SOON_SHARE * item->due_at)
    due->answer = FF_DUE_SOON;
}

/* Days from one date to another. */
static double
days_until (FfDate from, FfDate to)
{
  g_autoptr (GDate) first = g_date_new_dmy ((GDateDay) from.day, (GDateMonth) from.month,
                                            (GDateYear) from.year);
  g_autoptr (GDate) second = g_date_new_dmy ((GDateDay) to.day, (GDateMonth) to.month,
                                             (GDateYear) to.year);

  return g_date_days_between (first, second);
}

static void
due_by_date (const FfItem *item, const char *day, FfDue *due)
{
  FfDate until, now;

  if (!ff_date_parse (item->valid_until, &until, NULL) || !ff_date_parse (day, &now, NULL))
    return;
  due->left = days_until (now, until);
  if (due->left < 0)
    due->answer = FF_DUE_NOW;
  else if (due->left <= SOON_DAYS)
    due->answer = FF_DUE_SOON;
}

void
ff_due (const FfItem *item, GHashTable *wear, const char *day, FfDue *ret_due)
{
  FfDue use = { FF_DUE_NOT, FF_DUE_HOURS, NAN };
  FfDue date = { FF_DUE_NOT, FF_DUE_DATE, NAN };

  due_by_use (item, wear, &use);
  due_by_date (item, day, &date);
  *ret_due = date.answer > use.answer || isnan (use.left) ? date : use;
}

static char *
left_words (FfDueUnit unit, double left)
{
  g_autofree char *said = ff_number_format (fabs (left), unit == FF_DUE_HOURS ? 1 : 0);

  if (unit == FF_DUE_HOURS)
    /* Translators: hours of use. */
    return g_strdup_printf (_ ("%s h"), said);
  if (unit == FF_DUE_CYCLES)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s cycle", "%s cycles",
                                         (gulong) fabs (left)),
                            said);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s day", "%s days", (gulong) fabs (left)),
                          said);
}

char *
ff_due_words (const FfDue *due)
{
  g_autofree char *said = NULL;

  if (isnan (due->left))
    return NULL;
  said = left_words (due->unit, due->left);
  if (due->unit == FF_DUE_DATE && due->left < 0)
    return g_strdup_printf (_ ("ran out %s ago"), said);
  if (due->unit == FF_DUE_DATE)
    return g_strdup_printf (_ ("valid %s more"), said);
  /* Translators: hours or cycles before, or after, something is due. */
  return due->left > 0 ? g_strdup_printf (_ ("%s left"), said)
                       : g_strdup_printf (_ ("due, %s over"), said);
}

/* ---- Fittings ---- */

gboolean
ff_fitting_suits (const FfItem *item, const FfItem *on)
{
  if (item->kind == FF_KIND_PROPELLERS)
    return on->kind == FF_KIND_AIRCRAFT;
  return item->kind == FF_KIND_FILTER
         && (on->kind == FF_KIND_CAMERA
             || (on->kind == FF_KIND_OTHER && ff_item_goes_with (item, on->id)));
}

gboolean
ff_fitting_add (FfStore *store,
                const char *item_id,
                const char *on_id,
                gint64 at,
                const char *by,
                GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (
      store, "INSERT INTO fitting (item_id, on_id, at, entered_by) VALUES (?1, ?2, ?3, ?4)", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, item_id, error)
         && ff_statement_bind_reference (statement, 2, on_id, error)
         && ff_statement_bind_integer (statement, 3, at, error)
         && ff_statement_bind_text (statement, 4, by, error)
         && ff_statement_run (statement, error);
}

gboolean
ff_fitting_now (FfStore *store, const char *item_id, char **ret_on_id, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store,
                          "SELECT on_id FROM fitting WHERE item_id = ?1"
                          " ORDER BY at DESC, sequence DESC LIMIT 1",
                          error);
  FfStep step = FF_STEP_ERROR;

  *ret_on_id = NULL;
  if (statement != NULL && ff_statement_bind_text (statement, 1, item_id, error))
    step = ff_statement_step (statement, error);
  if (step == FF_STEP_ROW)
    *ret_on_id = ff_statement_dup_text (statement, 0);
  return step != FF_STEP_ERROR;
}
