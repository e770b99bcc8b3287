/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-store-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-statement.h"

/* How long a second program waits for the first, in milliseconds. */
#define BUSY_TIMEOUT 5000

const char *
ff_store_path (FfStore *store)
{
  return store->path;
}

gboolean
ff_store_exec (FfStore *store, const char *sql, GError **error)
{
  int code = sqlite3_exec (store->db, sql, NULL, NULL, NULL);

  return code == SQLITE_OK || ff_store_failed (store, code, error);
}

gboolean
ff_store_integer (FfStore *store, const char *sql, gint64 *ret_value, GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);
  FfStep step = statement != NULL ? ff_statement_step (statement, error) : FF_STEP_ERROR;

  if (step == FF_STEP_ROW)
    *ret_value = ff_statement_get_integer (statement, 0);
  else if (step == FF_STEP_DONE)
    ff_store_damaged (store->path, sql, error);
  return step == FF_STEP_ROW;
}

int
ff_store_version (FfStore *store)
{
  gint64 version = 0;

  ff_store_integer (store, "PRAGMA user_version", &version, NULL);
  return (int) version;
}

int
ff_store_newest_version (void)
{
  int n = 0;

  while (ff_migrations[n] != NULL)
    n++;
  return n;
}

/* The mark counts even for a user whom the system would let write all the same. */
static gboolean
is_writable (const char *path)
{
  struct stat info;

  return stat (path, &info) == 0 && (info.st_mode & 0222) != 0 && access (path, W_OK) == 0;
}

static gboolean
folder_is_writable (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  return is_writable (folder);
}

/* From a folder that can't hold the shared index of the log, SQLite reads a file only when told
 * that nobody will change it. That is true enough when there is no log. */
static char *
uri_for (const char *path, FfStoreAccess access, gboolean has_wal)
{
  g_autofree char *escaped = g_uri_escape_string (path, "/", FALSE);
  gboolean still = access == FF_STORE_READ && !has_wal && !folder_is_writable (path);

  /* The empty authority, without which "//folder" would be taken for one. */
  return g_strdup_printf ("file:%s%s%s", g_path_is_absolute (path) ? "//" : "", escaped,
                          still ? "?immutable=1" : "");
}

/* A pragma that has to hold is read back: SQLite ignores what it can't do. */
static gboolean
set_pragma (FfStore *store, const char *set, const char *get, gint64 want, GError **error)
{
  g_autofree char *shown = g_filename_display_name (store->path);
  gint64 got;

  if (!ff_store_exec (store, set, error) || !ff_store_integer (store, get, &got, error))
    return FALSE;
  if (got == want)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_STORE, _ ("%s can't be opened safely: %s has no effect"),
               shown, set);
  return FALSE;
}

static gboolean
set_wal (FfStore *store, GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, "PRAGMA journal_mode = WAL", error);
  g_autofree char *shown = g_filename_display_name (store->path);

  if (statement == NULL || ff_statement_step (statement, error) != FF_STEP_ROW)
    return FALSE;
  if (strcmp (ff_statement_get_text (statement, 0), "wal") == 0)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_STORE,
               _ ("%s can't keep a write-ahead log: move the data folder to a local disk"), shown);
  return FALSE;
}

static gboolean
configure (FfStore *store, GError **error)
{
  sqlite3_busy_timeout (store->db, BUSY_TIMEOUT);
  sqlite3_extended_result_codes (store->db, 1);
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  return set_pragma (store, "PRAGMA foreign_keys = ON", "PRAGMA foreign_keys", 1, error)
         /* Without it INSERT OR REPLACE removes a row past the triggers that keep it. */
         && set_pragma (store, "PRAGMA recursive_triggers = ON", "PRAGMA recursive_triggers", 1,
                        error)
         && set_pragma (store, "PRAGMA synchronous = FULL", "PRAGMA synchronous", 2, error)
         && set_pragma (store, "PRAGMA cell_size_check = ON", "PRAGMA cell_size_check", 1, error)
         && (store->access == FF_STORE_READ || set_wal (store, error));
}

/* The little that is looked at each time: is it ours, of a version we know, can its tables be
 * read. The whole check is ff_store_faults(). */
static gboolean
probe (FfStore *store, gboolean had_wal, GError **error)
{
  gint64 id, version, tables, pages, page;
  struct stat info;

  if (!ff_store_integer (store, "PRAGMA application_id", &id, error)
      || !ff_store_integer (store, "PRAGMA user_version", &version, error)
      || !ff_store_integer (store, "SELECT count(*) FROM sqlite_schema", &tables, error)
      || !ff_store_integer (store, "PRAGMA page_count", &pages, error)
      || !ff_store_integer (store, "PRAGMA page_size", &page, error))
    return FALSE;
  if (id != FF_STORE_APPLICATION_ID || tables == 0)
    return ff_store_damaged (store->path, _ ("its tables are missing"), error);
  if (!ff_version_check (store->path, version, error))
    return FALSE;
  /* A file that is shorter than it should be may have the rest in its log, or have lost it. */
  if (had_wal && stat (store->path, &info) == 0 && info.st_size < pages * page)
    {
      g_autoptr (GPtrArray) faults = ff_store_faults (store, error);

      if (faults == NULL)
        return FALSE;
      if (faults->len > 0)
        return ff_store_damaged (store->path, _ ("its end is missing"), error);
    }
  return TRUE;
}

static FfStore *
open_file (const char *path, FfStoreAccess access, GError **error)
{
  int flags = SQLITE_OPEN_URI
              | (access == FF_STORE_WRITE ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READONLY);
  g_autofree char *uri = NULL;
  FfStore *store;
  gboolean has_wal;
  int code;

  if (!ff_header_check (path, &has_wal, error))
    return NULL;
  store = g_new0 (FfStore, 1);
  store->path = g_strdup (path);
  store->access = access;
  uri = uri_for (path, access, has_wal);
  code = sqlite3_open_v2 (uri, &store->db, flags, NULL);
  if ((code != SQLITE_OK && !ff_store_failed (store, code, error)) || !configure (store, error)
      || !probe (store, has_wal, error))
    {
      ff_store_close (store);
      return NULL;
    }
  return store;
}

/* Said before SQLite is asked: it would open the file for reading alone and fail much later. */
static gboolean
check_writable (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  const char *what = !is_writable (folder) ? folder : !is_writable (path) ? path : NULL;
  g_autofree char *shown = what != NULL ? g_filename_display_name (what) : NULL;

  if (what == NULL)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_STORE,
               _ ("%s is read-only: allow writing to it, or choose another data folder"), shown);
  return FALSE;
}

static gboolean
bring_up_to_date (FfStore *store, GError **error)
{
  int version = ff_store_version (store);
  g_autofree char *shown = g_filename_display_name (store->path);

  if (version == ff_store_newest_version ())
    return TRUE;
  if (store->access == FF_STORE_WRITE)
    return ff_backup_before_migration (store, version, error)
           && ff_migrate (store, ff_migrations, error);
  g_set_error (error, FF_ERROR, FF_ERROR_STORE,
               _ ("%s is from an older version of Fieldfare: open it once for writing, which makes "
                  "a backup and brings it up to date"),
               shown);
  return FALSE;
}

FfStore *
ff_store_open (const char *path, FfStoreAccess access, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  FfStore *store;

  if (access == FF_STORE_READ && !g_file_test (path, G_FILE_TEST_EXISTS))
    {
      g_set_error (error, FF_ERROR, FF_ERROR_STORE,
                   _ ("%s does not exist: enter something first, or choose another data folder"),
                   shown);
      return NULL;
    }
  if (access == FF_STORE_WRITE
      && ((!g_file_test (path, G_FILE_TEST_EXISTS) && !ff_store_create (path, error))
          || !check_writable (path, error)))
    return NULL;
  store = open_file (path, access, error);
  if (store != NULL && !bring_up_to_date (store, error))
    {
      ff_store_close (store);
      return NULL;
    }
  return store;
}

void
ff_store_close (FfStore *store)
{
  if (store == NULL)
    return;
  sqlite3_close_v2 (store->db);
  g_free (store->path);
  g_free (store);
}

gboolean
ff_store_in_transaction (FfStore *store)
{
  return !sqlite3_get_autocommit (store->db);
}

gboolean
ff_store_begin (FfStore *store, GError **error)
{
  return ff_store_exec (store, "BEGIN IMMEDIATE", error);
}

gboolean
ff_store_commit (FfStore *store, GError **error)
{
  if (ff_store_exec (store, "COMMIT", error))
    return TRUE;
  ff_store_rollback (store);
  return FALSE;
}

/* SQLite has rolled back by itself after some errors, such as a full disk. */
void
ff_store_rollback (FfStore *store)
{
  if (ff_store_in_transaction (store))
    sqlite3_exec (store->db, "ROLLBACK", NULL, NULL, NULL);
}

static gboolean
collect (FfStore *store, const char *sql, GPtrArray *faults, GError **error)
{
  g_autoptr (FfStatement) statement = ff_statement_new (store, sql, error);
  FfStep step;

  if (statement == NULL)
    return FALSE;
  while ((step = ff_statement_step (statement, error)) == FF_STEP_ROW)
    if (strcmp (ff_statement_get_text (statement, 0), "ok") != 0)
      g_ptr_array_add (faults, ff_statement_dup_text (statement, 0));
  return step == FF_STEP_DONE;
}

GPtrArray *
ff_store_faults (FfStore *store, GError **error)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func (g_free);

  if (!collect (store, "PRAGMA integrity_check", faults, error)
      || !collect (store,
                   "SELECT 'a row of ' || \"table\" || ' names a missing row of ' || parent"
                   " FROM pragma_foreign_key_check",
                   faults, error))
    return NULL;
  return g_steal_pointer (&faults);
}
