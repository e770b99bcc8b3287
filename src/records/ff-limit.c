/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-rows.h"

static const FfField limit_fields[] = {
  FF_ID (FfLimit, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfLimit, sheet, N_ ("sheet"), TRUE, 200),
  FF_WHOLE (FfLimit, position, N_ ("position"), 0, 9999),
  FF_TEXT (FfLimit, kind, N_ ("kind"), TRUE, 64),
  FF_TEXT (FfLimit, text, N_ ("text"), FALSE, 500),
  FF_NAME (FfLimit, compare, N_ ("comparison"), &ff_names_compare),
  FF_REAL (FfLimit, value, N_ ("value"), FALSE, -1e6, 1e6),
  FF_TEXT (FfLimit, unit, N_ ("unit"), FALSE, 24),
  FF_NAME (FfLimit, rule, N_ ("whose rule"), &ff_names_rule),
  FF_TEXT (FfLimit, source, N_ ("source"), FALSE, 500),
  FF_DATE (FfLimit, checked_on, N_ ("day it was checked")),
  FF_TEXT (FfLimit, checked_by, N_ ("who checked it"), FALSE, 60),
  FF_DATE (FfLimit, expires_on, N_ ("expiry")),
  FF_FLAG (FfLimit, example, N_ ("example")),
};
const FfFields ff_limit_fields = FF_FIELDS ("limit_row", limit_fields);

static gpointer
limit_blank (void)
{
  FfLimit *limit = g_new0 (FfLimit, 1);

  ff_fields_init (&ff_limit_fields, limit);
  return limit;
}

FfLimit *
ff_limit_new (void)
{
  FfLimit *limit = limit_blank ();

  g_free (limit->id);
  limit->id = ff_records_new_id ();
  return limit;
}

void
ff_limit_free (FfLimit *limit)
{
  if (limit == NULL)
    return;
  ff_fields_clear (&ff_limit_fields, limit);
  g_free (limit);
}

gboolean
ff_limit_check (const FfLimit *limit, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("limit “%s”"), limit->text);
  gboolean measured = limit->compare != FF_COMPARE_REQUIRED
                      && limit->compare != FF_COMPARE_PROHIBITED;
  const char *what = NULL;

  if (!ff_fields_check (&ff_limit_fields, limit, whose, error))
    return FALSE;
  if (measured && isnan (limit->value))
    what = _ ("a value is missing: without it nothing can be compared");
  else if (!measured && !isnan (limit->value))
    what = _ ("what is required or prohibited has no value");
  else if (limit->compare == FF_COMPARE_BY_TIME
           && !(limit->value >= 0 && limit->value <= FF_CLOCK_MAX))
    what = _ ("a time is given in minutes after midnight");
  if (what != NULL)
    g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return what == NULL;
}

gboolean
ff_limit_save (FfStore *store, const FfLimit *limit, GError **error)
{
  return ff_limit_check (limit, error) && ff_rows_save (store, &ff_limit_fields, limit, error);
}

GPtrArray *
ff_limits_load (FfStore *store, GError **error)
{
  return ff_rows_load (store, &ff_limit_fields, "ORDER BY sheet, position, id", NULL, limit_blank,
                       (GDestroyNotify) ff_limit_free, error);
}
