/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-error.h"
#include "ff-limit-kind.h"
#include "ff-rows.h"

static const FfField limit_fields[] = {
  FF_ID (FfLimit, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfLimit, sheet, N_ ("sheet"), TRUE, 200),
  FF_WHOLE (FfLimit, position, N_ ("position"), 0, 9999),
  FF_TEXT (FfLimit, kind, N_ ("kind"), TRUE, 64),
  FF_TEXT (FfLimit, text, N_ ("text"), FALSE, 500),
  FF_NAME (FfLimit, compare, N_ ("comparison"), &ff_names_compare),
  FF_REAL (FfLimit, value, N_ ("value"), FALSE, -1e6, 1e6),
  FF_REAL (FfLimit, value_to, N_ ("other end"), FALSE, -1e6, 1e6),
  FF_TEXT (FfLimit, unit, N_ ("unit"), FALSE, 24),
  FF_TEXT (FfLimit, datum, N_ ("counted from"), FALSE, 200),
  FF_NAME (FfLimit, only_if, N_ ("condition"), &ff_names_only_if),
  FF_NAME (FfLimit, anchor_from, N_ ("start counts from"), &ff_names_anchor),
  FF_NAME (FfLimit, anchor_to, N_ ("end counts from"), &ff_names_anchor),
  FF_NAME (FfLimit, rule, N_ ("whose rule"), &ff_names_rule),
  FF_TEXT (FfLimit, authority, N_ ("authority"), FALSE, 200),
  FF_TEXT (FfLimit, source, N_ ("source"), FALSE, 500),
  FF_TEXT (FfLimit, permit, N_ ("number of the permit"), FALSE, 200),
  FF_DATE (FfLimit, checked_on, N_ ("day it was checked")),
  FF_TEXT (FfLimit, checked_by, N_ ("who checked it"), FALSE, 60),
  FF_DATE (FfLimit, expires_on, N_ ("expiry")),
  FF_TEXT (FfLimit, note, N_ ("note"), FALSE, 2000),
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

/* How many values a comparison needs. */
static int
n_values (FfCompare compare)
{
  switch (compare)
    {
    case FF_COMPARE_REQUIRED:
    case FF_COMPARE_PROHIBITED:
    case FF_COMPARE_INFORMATION:
      return 0;
    case FF_COMPARE_BETWEEN:
    case FF_COMPARE_WINDOW:
      return 2;
    case FF_COMPARE_AT_MOST:
    case FF_COMPARE_AT_LEAST:
    case FF_COMPARE_BY_TIME:
    case FF_COMPARE_BELOW:
    case FF_COMPARE_ABOVE:
      break;
    }
  return 1;
}

static const char *
wrong_values (const FfLimit *limit)
{
  const int n = n_values (limit->compare);

  if (n > 0 && isnan (limit->value))
    return _ ("a value is missing: without it nothing can be compared");
  if (n == 0 && !isnan (limit->value))
    return _ ("what is required or prohibited has no value");
  if ((n == 2) == (isnan (limit->value_to) != 0))
    return n == 2 ? _ ("the other end is missing: it goes from one value to another")
                  : _ ("there is another end where one value is compared");
  if (limit->compare == FF_COMPARE_BETWEEN && limit->value_to < limit->value)
    return _ ("it is upside down: the first value is above the second");
  if (limit->compare == FF_COMPARE_BY_TIME
      && !(limit->value >= 0 && limit->value <= FF_CLOCK_MAX))
    return _ ("a time is given in minutes after midnight");
  return NULL;
}

/* A clock is compared with a clock, a flag with nothing, a length with a length. */
static gboolean
check_kind (const FfLimit *limit, const char *whose, GError **error)
{
  const FfLimitKind *kind = ff_limit_kind_find (limit->kind);
  const gboolean clock
      = limit->compare == FF_COMPARE_BY_TIME || limit->compare == FF_COMPARE_WINDOW;
  g_autofree char *accepted = NULL;

  if (kind == NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” is no kind of limit"), whose,
                   limit->kind);
      return FALSE;
    }
  if (n_values (limit->compare) == 0)
    return TRUE;
  if (kind->dimension == FF_DIMENSION_NONE || clock != (kind->dimension == FF_DIMENSION_CLOCK))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” can't be compared with “%s”"),
                   whose, ff_limit_kind_text (kind),
                   ff_name_text (&ff_names_compare, limit->compare));
      return FALSE;
    }
  if (ff_unit_find (kind->dimension, limit->unit) != NULL)
    return TRUE;
  accepted = ff_unit_accepted (kind->dimension);
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” is no unit for it; accepted: %s"),
               whose, limit->unit, *accepted != '\0' ? accepted : _ ("none"));
  return FALSE;
}

gboolean
ff_limit_check (const FfLimit *limit, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("limit “%s”"), limit->text);
  const char *what;

  if (!ff_fields_check (&ff_limit_fields, limit, whose, error))
    return FALSE;
  what = wrong_values (limit);
  if (what != NULL)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
      return FALSE;
    }
  return check_kind (limit, whose, error);
}

gboolean
ff_limit_save (FfStore *store, const FfLimit *limit, GError **error)
{
  return ff_limit_check (limit, error) && ff_rows_save (store, &ff_limit_fields, limit, error);
}

gboolean
ff_limit_delete (FfStore *store, const char *id, GError **error)
{
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "DELETE FROM limit_row WHERE id = ?1", error);

  return statement != NULL && ff_statement_bind_text (statement, 1, id, error)
         && ff_statement_run (statement, error);
}

GPtrArray *
ff_limits_load (FfStore *store, GError **error)
{
  return ff_rows_load (store, &ff_limit_fields, "ORDER BY sheet, position, id", NULL, limit_blank,
                       (GDestroyNotify) ff_limit_free, error);
}
