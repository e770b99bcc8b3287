/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-rows.h"

#include <string.h>

#include "ff-error.h"

gboolean
ff_rows_open (FfStore *store, gboolean *ret_own, GError **error)
{
  *ret_own = !ff_store_in_transaction (store);
  return !*ret_own || ff_store_begin (store, error);
}

gboolean
ff_rows_close (FfStore *store, gboolean own, gboolean done, GError **error)
{
  if (own && done)
    return ff_store_commit (store, error);
  if (own)
    ff_store_rollback (store);
  return done;
}

static void
append_columns (GString *sql, const FfFields *fields)
{
  for (guint i = 0; i < fields->n_fields; i++)
    g_string_append_printf (sql, "%s\"%s\"", i > 0 ? ", " : "", fields->fields[i].name);
}

static void
append_parameters (GString *sql, guint first, guint n)
{
  for (guint i = 0; i < n; i++)
    g_string_append_printf (sql, "%s?%u", i > 0 ? ", " : "", first + i);
}

static GString *
insert_sql (const FfFields *fields)
{
  GString *sql = g_string_new (NULL);

  g_string_append_printf (sql, "INSERT INTO \"%s\" (", fields->table);
  append_columns (sql, fields);
  g_string_append (sql, ") VALUES (");
  append_parameters (sql, 1, fields->n_fields);
  g_string_append_c (sql, ')');
  return sql;
}

static gboolean
bind_field (FfStatement *statement,
            int n,
            const FfField *field,
            gconstpointer record,
            GError **error)
{
  switch (field->type)
    {
    case FF_FIELD_ID:
      return ff_statement_bind_reference (statement, n, *ff_field_text (field, record), error);
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      return ff_statement_bind_text (statement, n, *ff_field_text (field, record), error);
    case FF_FIELD_REAL:
      return ff_statement_bind_real (statement, n, *ff_field_real (field, record), error);
    case FF_FIELD_INSTANT:
      return ff_statement_bind_integer (statement, n, *ff_field_instant (field, record), error);
    case FF_FIELD_NAME:
      return ff_statement_bind_text (
          statement, n, ff_name_token (field->names, *ff_field_whole (field, record)), error);
    case FF_FIELD_WHOLE:
    case FF_FIELD_CLOCK:
    case FF_FIELD_FLAG:
    default:
      return ff_statement_bind_integer (statement, n, *ff_field_whole (field, record), error);
    }
}

static gboolean
bind_record (FfStatement *statement,
             int first,
             const FfFields *fields,
             gconstpointer record,
             GError **error)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (!bind_field (statement, first + (int) i, &fields->fields[i], record, error))
      return FALSE;
  return TRUE;
}

static gboolean
run_with_record (FfStore *store,
                 const char *sql,
                 const FfFields *fields,
                 gconstpointer record,
                 GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);

  return statement != NULL && bind_record (statement, 1, fields, record, error)
         && ff_statement_run (statement, error);
}

gboolean
ff_rows_append (FfStore *store, const FfFields *fields, gconstpointer record, GError **error)
{
  g_autoptr (GString) sql = insert_sql (fields);

  return run_with_record (store, sql->str, fields, record, error);
}

/* Not INSERT OR REPLACE, which removes the old row and with it what refers to it. */
gboolean
ff_rows_save (FfStore *store, const FfFields *fields, gconstpointer record, GError **error)
{
  g_autoptr (GString) sql = insert_sql (fields);

  g_string_append_printf (sql, " ON CONFLICT (\"%s\") DO UPDATE SET ", fields->fields[0].name);
  for (guint i = 1; i < fields->n_fields; i++)
    g_string_append_printf (sql, "%s\"%s\" = excluded.\"%s\"", i > 1 ? ", " : "",
                            fields->fields[i].name, fields->fields[i].name);
  return run_with_record (store, sql->str, fields, record, error);
}

gboolean
ff_rows_taken (GError **error, const char *columns, const char *sentence)
{
  if (error != NULL && g_error_matches (*error, FF_ERROR, FF_ERROR_INPUT)
      && strstr ((*error)->message, "UNIQUE") != NULL
      && g_str_has_suffix ((*error)->message, columns))
    {
      g_clear_error (error);
      g_set_error_literal (error, FF_ERROR, FF_ERROR_INPUT, sentence);
    }
  return FALSE;
}

static gboolean
read_name (FfStatement *statement,
           int column,
           const FfField *field,
           gpointer record,
           GError **error)
{
  g_autoptr (GError) problem = NULL;

  if (ff_name_parse (field->names, ff_statement_get_text (statement, column),
                     ff_field_whole (field, record), &problem))
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_STORE, "%s: %s", field->name, problem->message);
  return FALSE;
}

static gboolean
read_field (FfStatement *statement,
            int column,
            const FfField *field,
            gpointer record,
            GError **error)
{
  switch (field->type)
    {
    case FF_FIELD_ID:
    case FF_FIELD_TEXT:
    case FF_FIELD_DATE:
      g_free (*ff_field_text (field, record));
      *ff_field_text (field, record) = ff_statement_dup_text (statement, column);
      return TRUE;
    case FF_FIELD_REAL:
      *ff_field_real (field, record) = ff_statement_get_real (statement, column);
      return TRUE;
    case FF_FIELD_INSTANT:
      *ff_field_instant (field, record) = ff_statement_get_integer (statement, column);
      return TRUE;
    case FF_FIELD_NAME:
      return read_name (statement, column, field, record, error);
    case FF_FIELD_WHOLE:
    case FF_FIELD_CLOCK:
    case FF_FIELD_FLAG:
    default:
      *ff_field_whole (field, record) = (int) ff_statement_get_integer (statement, column);
      return TRUE;
    }
}

static gboolean
read_record (FfStatement *statement, const FfFields *fields, gpointer record, GError **error)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (!read_field (statement, (int) i, &fields->fields[i], record, error))
      return FALSE;
  return TRUE;
}

static FfStatement *
select_rows (FfStore *store,
             const FfFields *fields,
             const char *tail,
             const char *argument,
             GError **error)
{
  g_autoptr (GString) sql = g_string_new ("SELECT ");
  g_autoptr (FfStatement) statement = NULL;

  append_columns (sql, fields);
  g_string_append_printf (sql, " FROM \"%s\" %s", fields->table, tail);
  statement = ff_statement_new (store, sql->str, error);
  if (statement == NULL
      || (argument != NULL && !ff_statement_bind_text (statement, 1, argument, error)))
    return NULL;
  return g_steal_pointer (&statement);
}

GPtrArray *
ff_rows_load (FfStore *store,
              const FfFields *fields,
              const char *tail,
              const char *argument,
              gpointer (*make) (void),
              GDestroyNotify destroy,
              GError **error)
{
  g_autoptr (GPtrArray) records = g_ptr_array_new_with_free_func (destroy);
  g_autoptr (FfStatement) statement = select_rows (store, fields, tail, argument, error);
  FfStep step = FF_STEP_ERROR;

  while (statement != NULL && (step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      gpointer record = make ();

      g_ptr_array_add (records, record);
      if (!read_record (statement, fields, record, error))
        return NULL;
    }
  return step == FF_STEP_DONE ? g_steal_pointer (&records) : NULL;
}

gboolean
ff_rows_read_into (FfStore *store,
                   const FfFields *fields,
                   const char *tail,
                   const char *argument,
                   GHashTable *by_id,
                   GError **error)
{
  g_autoptr (FfStatement) statement = select_rows (store, fields, tail, argument, error);
  FfStep step = FF_STEP_ERROR;

  while (statement != NULL && (step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    {
      gpointer record = g_hash_table_lookup (by_id, ff_statement_get_text (statement, 0));

      /* The key is already there, and by_id is keyed by that very text. */
      for (guint i = 1; record != NULL && i < fields->n_fields; i++)
        if (!read_field (statement, (int) i, &fields->fields[i], record, error))
          return FALSE;
    }
  return step == FF_STEP_DONE;
}

static gboolean
remove_parts (FfStore *store, const FfParts *parts, const char *owner_id, GError **error)
{
  g_autofree char *sql
      = g_strdup_printf ("DELETE FROM \"%s\" WHERE \"%s\" = ?1", parts->table, parts->owner);
  g_autoptr (FfStatement) statement = NULL;

  if (parts->append_only)
    return TRUE;
  statement = ff_statement_new (store, sql, error);
  return statement != NULL && ff_statement_bind_text (statement, 1, owner_id, error)
         && ff_statement_run (statement, error);
}

static FfStatement *
insert_parts (FfStore *store, const FfParts *parts, const FfFields *fields, GError **error)
{
  g_autoptr (GString) sql = g_string_new (NULL);

  g_string_append_printf (sql, "INSERT INTO \"%s\" (\"%s\", position, ", parts->table,
                          parts->owner);
  append_columns (sql, fields);
  g_string_append (sql, ") VALUES (");
  append_parameters (sql, 1, fields->n_fields + 2);
  g_string_append_c (sql, ')');
  return ff_statement_new (store, sql->str, error);
}

static gboolean
bind_owner (FfStatement *statement, const char *owner_id, guint position, GError **error)
{
  return ff_statement_bind_text (statement, 1, owner_id, error)
         && ff_statement_bind_integer (statement, 2, position, error);
}

gboolean
ff_parts_save (FfStore *store,
               const FfParts *parts,
               const FfFields *fields,
               const char *owner_id,
               GPtrArray *records,
               GError **error)
{
  g_autoptr (FfStatement) statement = NULL;

  if (!remove_parts (store, parts, owner_id, error))
    return FALSE;
  statement = insert_parts (store, parts, fields, error);
  for (guint i = 0; statement != NULL && i < records->len; i++)
    if (!bind_owner (statement, owner_id, i, error)
        || !bind_record (statement, 3, fields, g_ptr_array_index (records, i), error)
        || !ff_statement_run (statement, error))
      return FALSE;
  return statement != NULL;
}

gboolean
ff_parts_save_ids (FfStore *store,
                   const FfParts *parts,
                   const char *column,
                   const char *owner_id,
                   GPtrArray *ids,
                   GError **error)
{
  const FfField field = { .name = column, .type = FF_FIELD_ID };
  const FfFields fields = { parts->table, &field, 1 };
  g_autoptr (FfStatement) statement = NULL;

  if (!remove_parts (store, parts, owner_id, error))
    return FALSE;
  statement = insert_parts (store, parts, &fields, error);
  for (guint i = 0; statement != NULL && i < ids->len; i++)
    if (!bind_owner (statement, owner_id, i, error)
        || !ff_statement_bind_text (statement, 3, g_ptr_array_index (ids, i), error)
        || !ff_statement_run (statement, error))
      return FALSE;
  return statement != NULL;
}

gboolean
ff_parts_load_ids (FfStore *store,
                   const FfParts *parts,
                   const char *column,
                   const char *owner_id,
                   GPtrArray *ids,
                   GError **error)
{
  g_autofree char *sql = g_strdup_printf (
      "SELECT \"%s\" FROM \"%s\" WHERE \"%s\" = ?1 ORDER BY position", column, parts->table,
      parts->owner);
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);
  FfStep step = FF_STEP_ERROR;

  if (statement == NULL || !ff_statement_bind_text (statement, 1, owner_id, error))
    return FALSE;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    g_ptr_array_add (ids, ff_statement_dup_text (statement, 0));
  return step == FF_STEP_DONE;
}
