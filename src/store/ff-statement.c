/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-statement.h"

#include <math.h>
#include <string.h>

#include "ff-store-private.h"

struct _FfStatement {
  FfStore *store; /* borrowed */
  sqlite3_stmt *stmt;
};

FfStatement *
ff_statement_new (FfStore *store, const char *sql, GError **error)
{
  g_autoptr (FfStatement) statement = g_new0 (FfStatement, 1);
  int code;

  statement->store = store;
  code = sqlite3_prepare_v2 (store->db, sql, -1, &statement->stmt, NULL);
  if (code != SQLITE_OK)
    {
      ff_store_failed (store, code, error);
      return NULL;
    }
  return g_steal_pointer (&statement);
}

void
ff_statement_free (FfStatement *statement)
{
  if (statement == NULL)
    return;
  sqlite3_finalize (statement->stmt);
  g_free (statement);
}

static gboolean
bound (FfStatement *statement, int code, GError **error)
{
  return code == SQLITE_OK || ff_store_failed (statement->store, code, error);
}

gboolean
ff_statement_bind_text (FfStatement *statement, int n, const char *text, GError **error)
{
  return bound (statement,
                sqlite3_bind_text (statement->stmt, n, text != NULL ? text : "", -1,
                                   SQLITE_TRANSIENT),
                error);
}

gboolean
ff_statement_bind_reference (FfStatement *statement, int n, const char *id, GError **error)
{
  if (id == NULL || *id == '\0')
    return bound (statement, sqlite3_bind_null (statement->stmt, n), error);
  return ff_statement_bind_text (statement, n, id, error);
}

gboolean
ff_statement_bind_integer (FfStatement *statement, int n, gint64 value, GError **error)
{
  return bound (statement, sqlite3_bind_int64 (statement->stmt, n, value), error);
}

gboolean
ff_statement_bind_real (FfStatement *statement, int n, double value, GError **error)
{
  if (!isfinite (value))
    return bound (statement, sqlite3_bind_null (statement->stmt, n), error);
  return bound (statement, sqlite3_bind_double (statement->stmt, n, value), error);
}

FfStep
ff_statement_step (FfStatement *statement, GError **error)
{
  int code = sqlite3_step (statement->stmt);

  if (code == SQLITE_ROW)
    return FF_STEP_ROW;
  if (code == SQLITE_DONE)
    return FF_STEP_DONE;
  ff_store_failed (statement->store, code, error);
  return FF_STEP_ERROR;
}

gboolean
ff_statement_run (FfStatement *statement, GError **error)
{
  FfStep step;

  do
    step = ff_statement_step (statement, error);
  while (step == FF_STEP_ROW);
  /* A reset reports the failure of the step once more; that one is already told. */
  sqlite3_reset (statement->stmt);
  return step == FF_STEP_DONE;
}

gboolean
ff_statement_reset (FfStatement *statement, GError **error)
{
  return bound (statement, sqlite3_reset (statement->stmt), error);
}

const char *
ff_statement_get_text (FfStatement *statement, int column)
{
  const char *text = (const char *) sqlite3_column_text (statement->stmt, column);

  return text != NULL ? text : "";
}

/* A store from elsewhere may hold bytes that are no UTF-8; nothing above this room should meet
 * them. */
char *
ff_statement_dup_text (FfStatement *statement, int column)
{
  return g_utf8_make_valid (ff_statement_get_text (statement, column), -1);
}

gint64
ff_statement_get_integer (FfStatement *statement, int column)
{
  return sqlite3_column_int64 (statement->stmt, column);
}

double
ff_statement_get_real (FfStatement *statement, int column)
{
  if (sqlite3_column_type (statement->stmt, column) == SQLITE_NULL)
    return NAN;
  return sqlite3_column_double (statement->stmt, column);
}
