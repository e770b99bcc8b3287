/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The store itself: its pragmas, its statements, its transactions, what its tables refuse, its
 * migrations and backups. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-statement.h"
#include "ff-store-private.h"

#define ID_A "11111111-1111-4111-8111-111111111111"
#define ID_B "22222222-2222-4222-8222-222222222222"
#define ID_C "33333333-3333-4333-8333-333333333333"

/* Those of the first version: later ones have defaults. */
#define PLACE_COLUMNS                                                                              \
  "id, name, latitude_deg, longitude_deg, elevation_m, zone, takeoff_spot, second_spot,"           \
  " observer_post, second_post, emergency_location, emergency_phone"

static char *folder;
static char *path;
static FfStore *store;

static gint64
number (const char *sql)
{
  g_autoptr (GError) error = NULL;
  gint64 value = -1;

  ff_store_integer (store, sql, &value, &error);
  assert_no_error (error);
  return value;
}

static void
run (const char *sql)
{
  g_autoptr (GError) error = NULL;

  ff_store_exec (store, sql, &error);
  assert_no_error (error);
}

static void
refused (const char *sql, const char *part)
{
  g_autoptr (GError) error = NULL;

  assert_false (ff_store_exec (store, sql, &error));
  assert_error (error, FF_ERROR_INPUT, part);
}

/* ---- Opening ---- */

static void
test_pragmas_hold (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStatement) journal = ff_statement_new (store, "PRAGMA journal_mode", &error);

  assert_int_equal (ff_statement_step (journal, &error), FF_STEP_ROW);
  assert_string_equal (ff_statement_get_text (journal, 0), "wal");
  assert_int_equal (number ("PRAGMA synchronous"), 2);
  assert_int_equal (number ("PRAGMA foreign_keys"), 1);
  assert_int_equal (number ("PRAGMA recursive_triggers"), 1);
  assert_int_equal (number ("PRAGMA cell_size_check"), 1);
  assert_int_equal (number ("PRAGMA trusted_schema"), 0);
  assert_int_equal (number ("PRAGMA application_id"), FF_STORE_APPLICATION_ID);
  assert_int_equal (number ("PRAGMA user_version"), ff_store_newest_version ());
  assert_int_equal (number ("PRAGMA busy_timeout"), 5000);
}

static void
test_only_the_owner_may_read_it (void **state)
{
  struct stat info;

  assert_int_equal (stat (path, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0600);
}

static void
test_every_table_is_strict (void **state)
{
  assert_true (number ("SELECT count(*) FROM pragma_table_list WHERE type = 'table'"
                       " AND name NOT LIKE 'sqlite%'")
               > 15);
  assert_int_equal (number ("SELECT count(*) FROM pragma_table_list WHERE type = 'table'"
                            " AND name NOT LIKE 'sqlite%' AND NOT strict"),
                    0);
}

/* ---- Statements ---- */

static void
test_values_come_back (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "SELECT ?1, ?2, ?3, ?4, ?5, ?6, ?7", &error);
  g_autofree char *text = NULL;

  assert_true (ff_statement_bind_text (statement, 1, "Skarrowick \xc3\x98", &error));
  assert_true (ff_statement_bind_text (statement, 2, NULL, &error));
  assert_true (ff_statement_bind_reference (statement, 3, "", &error));
  assert_true (ff_statement_bind_integer (statement, 4, G_MININT64, &error));
  assert_true (ff_statement_bind_real (statement, 5, 0.1, &error));
  assert_true (ff_statement_bind_real (statement, 6, NAN, &error));
  assert_true (ff_statement_bind_real (statement, 7, INFINITY, &error));
  assert_int_equal (ff_statement_step (statement, &error), FF_STEP_ROW);
  text = ff_statement_dup_text (statement, 0);
  assert_string_equal (text, "Skarrowick \xc3\x98");
  assert_string_equal (ff_statement_get_text (statement, 1), "");
  assert_string_equal (ff_statement_get_text (statement, 2), "");
  assert_true (isnan (ff_statement_get_real (statement, 2)));
  assert_true (ff_statement_get_integer (statement, 3) == G_MININT64);
  assert_close (ff_statement_get_real (statement, 4), 0.1, 0);
  assert_true (isnan (ff_statement_get_real (statement, 5)));
  assert_true (isnan (ff_statement_get_real (statement, 6)));
  assert_int_equal (ff_statement_step (statement, &error), FF_STEP_DONE);
  assert_no_error (error);
}

static void
test_bad_bytes_do_not_get_out (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStatement) statement
      = ff_statement_new (store, "SELECT CAST (x'41ff42' AS TEXT)", &error);
  g_autofree char *text = NULL;

  assert_int_equal (ff_statement_step (statement, &error), FF_STEP_ROW);
  text = ff_statement_dup_text (statement, 0);
  assert_true (g_utf8_validate (text, -1, NULL));
}

static void
test_statements_say_what_is_wrong (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStatement) statement = NULL;

  assert_null (ff_statement_new (store, "SELECT x FROM nowhere", &error));
  assert_error (error, FF_ERROR_STORE, "nowhere");
  statement = ff_statement_new (store, "SELECT ?1", &error);
  assert_false (ff_statement_bind_integer (statement, 2, 1, &error));
  assert_error (error, FF_ERROR_STORE, "out of range");
  assert_false (ff_statement_bind_real (statement, 0, NAN, &error));
  assert_error (error, FF_ERROR_STORE, "out of range");
  assert_false (ff_statement_bind_reference (statement, 3, "", &error));
  assert_error (error, FF_ERROR_STORE, "out of range");
}

/* After an error a statement can be run again with better values. */
static void
test_a_statement_survives_a_refusal (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStatement) statement = ff_statement_new (
      store,
      "INSERT INTO item VALUES (NULL, ?1, ?2, 'other', '', '', '', NULL, NULL, NULL, 0, '', '')",
      &error);

  assert_true (ff_statement_bind_text (statement, 1, "short", &error));
  assert_true (ff_statement_bind_text (statement, 2, "pad", &error));
  assert_false (ff_statement_run (statement, &error));
  assert_error (error, FF_ERROR_INPUT, "CHECK");
  assert_true (ff_statement_bind_text (statement, 1, ID_A, &error));
  assert_true (ff_statement_run (statement, &error));
  assert_no_error (error);
  assert_int_equal (number ("SELECT count(*) FROM item"), 1);
}

/* ---- Transactions ---- */

static void
test_transactions (void **state)
{
  g_autoptr (GError) error = NULL;
  const char *insert
      = "INSERT INTO place (" PLACE_COLUMNS ") VALUES ('" ID_A "', 'P', 57.2, -4, 12,"
        " 'Europe/London', '', '',"
        " '', '', '', '')";

  assert_false (ff_store_in_transaction (store));
  assert_true (ff_store_begin (store, &error));
  assert_true (ff_store_in_transaction (store));
  run (insert);
  assert_false (ff_store_begin (store, &error));
  assert_error (error, FF_ERROR_STORE, "transaction");
  ff_store_rollback (store);
  ff_store_rollback (store);
  assert_int_equal (number ("SELECT count(*) FROM place"), 0);
  assert_true (ff_store_begin (store, &error));
  run (insert);
  assert_true (ff_store_commit (store, &error));
  assert_int_equal (number ("SELECT count(*) FROM place"), 1);
  assert_false (ff_store_commit (store, &error));
  assert_error (error, FF_ERROR_STORE, "transaction");
}

/* References that wait for the end are held to it at the commit, which then takes all back. */
static void
test_a_failed_commit_has_rolled_back (void **state)
{
  g_autoptr (GError) error = NULL;

  assert_true (ff_store_begin (store, &error));
  run ("INSERT INTO item VALUES (1, '" ID_A "', 'b1', 'other', '', '', '', NULL, NULL, NULL, 0, '',"
       " '')");
  run ("INSERT INTO goes_with VALUES ('" ID_A "', 0, '" ID_B "')");
  assert_false (ff_store_commit (store, &error));
  assert_error (error, FF_ERROR_INPUT, "FOREIGN KEY");
  assert_false (ff_store_in_transaction (store));
  assert_int_equal (number ("SELECT count(*) FROM item"), 0);
}

static void
test_a_second_writer_waits_its_turn (void **state)
{
  g_autoptr (GError) error = NULL;
  FfStore *other = ff_store_open (path, FF_STORE_WRITE, &error);

  assert_no_error (error);
  sqlite3_busy_timeout (other->db, 10);
  assert_true (ff_store_begin (store, &error));
  assert_false (ff_store_begin (other, &error));
  assert_error (error, FF_ERROR_STORE, "another program");
  ff_store_rollback (store);
  assert_true (ff_store_begin (other, &error));
  ff_store_rollback (other);
  ff_store_close (other);
}

/* ---- What the tables refuse ---- */

static void
test_strict_types_and_references (void **state)
{
  refused ("INSERT INTO hazard VALUES ('" ID_A "', 'first', 'x', '')", "INTEGER");
  refused ("INSERT INTO hazard VALUES ('" ID_A "', 0, 'x', '')", "FOREIGN KEY");
  refused ("INSERT INTO place (" PLACE_COLUMNS ") VALUES ('" ID_A "', 'P', 91, -4, 12,"
           " 'Europe/London', '', '', '', '',"
           " '', '')",
           "CHECK");
  refused ("INSERT INTO item VALUES (1, '" ID_A "', 'x', 'spoon', '', '', '', NULL, NULL, NULL, 0,"
           " '', '')",
           "CHECK");
}

/* Tables that are only added to, with a first row for each; they refer to what stands above. */
static const struct {
  const char *table, *column, *insert;
} kept[] = {
  { "item_event", "why",
    "INSERT INTO item_event VALUES (1, '" ID_A "', 0, 'defect', 'cracked', '', '', '')" },
  { "reading", "ev100",
    "INSERT INTO reading (id, job_id, at, method, ev100, nd_stops, source, entered_by)"
    " VALUES ('" ID_C "', '" ID_B "', 0, 'ev100', 12, 0, '', '')" },
  { "reading_dropped", "why",
    "INSERT INTO reading_dropped (reading_id, at, why) VALUES ('" ID_C "', 0, 'cloud')" },
  { "plan_version", "copy", "INSERT INTO plan_version VALUES ('" ID_B "', 'A', 0, '{}', '', '')" },
  { "amendment", "text",
    "INSERT INTO amendment VALUES ('" ID_B "', 1, 'A', 0, 'G later', '', '')" },
  { "amendment_sentence", "text",
    "INSERT INTO amendment_sentence VALUES ('" ID_B "', 1, 'pilot', 'G later')" },
  { "acknowledgement", "at",
    "INSERT INTO acknowledgement VALUES ('" ID_B "', 1, 'pilot', 'JV', 0, '')" },
  { "briefed", "at",
    "INSERT INTO briefed VALUES ('" ID_B "', 'A', 0, 'Pell Rasmussen', 'PR', 0, '')" },
  { "flight", "note",
    "INSERT INTO flight VALUES ('" ID_C "', '" ID_B "', 'A', 1, 0, 960, '" ID_A "', '', '',"
    " 100, 30, 15, NULL, '', '')" },
  { "flight_filter", "position",
    "INSERT INTO flight_filter VALUES ('" ID_C "', 0, '" ID_B "')" },
  { "fitting", "at", "INSERT INTO fitting VALUES (1, '" ID_A "', NULL, 0, '')" },
  { "resistance", "at", "INSERT INTO resistance VALUES (1, '" ID_A "', 0, 20, '')" },
  { "resistance_cell", "milliohms", "INSERT INTO resistance_cell VALUES (1, 1, 3.5)" },
  { "battery_day", "state",
    "INSERT INTO battery_day VALUES (1, '" ID_A "', 0, 'full', NULL, 100, 15, '')" },
  { "incident", "found",
    "INSERT INTO incident VALUES (1, '" ID_A "', 0, 'wet', 'quarantine', 'fell in', 'JV')" },
  { "pack_event", "condition",
    "INSERT INTO pack_event VALUES (1, '" ID_C "', '" ID_B "', '" ID_A "', 0, 'out', 'done', '2',"
    " '', 'MO')" },
};

static void
insert_what_they_refer_to (void)
{
  run ("INSERT INTO item VALUES (1, '" ID_A "', 'b1', 'battery', '', '', '', NULL, NULL, NULL, 0,"
       " '', '')");
  run ("INSERT INTO item VALUES (2, '" ID_B "', 'ND8', 'filter', '', '', '', NULL, NULL, NULL, 0,"
       " '', '')");
  run ("INSERT INTO battery (item_id, chemistry, cells, usable_minutes)"
       " VALUES ('" ID_A "', '', 4, 18)");
  run ("INSERT INTO filter (item_id, stops, stops_to, engraving, set_name, slot)"
       " VALUES ('" ID_B "', 3, 3, '', '', '')");
  run ("INSERT INTO job VALUES ('" ID_B "', 'J', '', '', NULL, '', 'planned', 'A', '', 0, NULL, -1,"
       " -1, -1, -1, 'clear', NULL, NULL, NULL, NULL, NULL, NULL, NULL, 2, 2, 4, 2, 0, 1, 1, NULL)");
}

static void
test_what_happened_is_only_added_to (void **state)
{
  insert_what_they_refer_to ();
  for (guint i = 0; i < G_N_ELEMENTS (kept); i++)
    {
      g_autofree char *update
          = g_strdup_printf ("UPDATE %s SET %s = 1", kept[i].table, kept[i].column);
      g_autofree char *delete = g_strdup_printf ("DELETE FROM %s", kept[i].table);
      g_autofree char *replace = g_strdup_printf ("INSERT OR REPLACE%s", kept[i].insert + 6);
      g_autofree char *count = g_strdup_printf ("SELECT count(*) FROM %s", kept[i].table);

      run (kept[i].insert);
      refused (update, "only added to");
      refused (delete, "only added to");
      refused (kept[i].insert, "UNIQUE");
      refused (replace, "only added to");
      assert_int_equal (number (count), 1);
    }
}

/* ---- Migrations ---- */

/* The steps that are built in, and `n_more` times one that makes a table. */
static GPtrArray *
steps_and (guint n_more)
{
  GPtrArray *steps = g_ptr_array_new ();

  for (guint i = 0; ff_migrations[i] != NULL; i++)
    g_ptr_array_add (steps, (gpointer) ff_migrations[i]);
  for (guint i = 0; i < n_more; i++)
    g_ptr_array_add (steps, (gpointer) "CREATE TABLE extra (x TEXT) STRICT;");
  g_ptr_array_add (steps, NULL);
  return steps;
}

static void
test_a_failed_migration_changes_nothing (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) steps = steps_and (2);

  assert_false (ff_migrate (store, (const char *const *) steps->pdata, &error));
  assert_error (error, FF_ERROR_STORE, "extra");
  assert_false (ff_store_in_transaction (store));
  assert_int_equal (ff_store_version (store), ff_store_newest_version ());
  assert_int_equal (number ("SELECT count(*) FROM sqlite_schema WHERE name = 'extra'"), 0);
}

static void
test_a_migration_keeps_what_is_there (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) steps = steps_and (1);

  insert_what_they_refer_to ();
  assert_true (ff_migrate (store, (const char *const *) steps->pdata, &error));
  assert_int_equal (ff_store_version (store), ff_store_newest_version () + 1);
  assert_int_equal (number ("SELECT count(*) FROM item"), 2);
  /* Done once: the same again changes nothing. */
  assert_true (ff_migrate (store, (const char *const *) steps->pdata, &error));
  assert_int_equal (ff_store_version (store), ff_store_newest_version () + 1);
}

/* A store as the first release left it, with a reading in it; open it now. */
static void
open_first_version (const char *at)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *mark = g_strdup_printf (
      "PRAGMA application_id = %d; PRAGMA user_version = 1", FF_STORE_APPLICATION_ID);
  sqlite3 *db;

  assert_int_equal (sqlite3_open (at, &db), SQLITE_OK);
  assert_int_equal (sqlite3_exec (db, ff_migrations[0], NULL, NULL, NULL), SQLITE_OK);
  assert_int_equal (sqlite3_exec (db, mark, NULL, NULL, NULL), SQLITE_OK);
  assert_int_equal (
      sqlite3_exec (db,
                    "INSERT INTO job VALUES ('" ID_B "', 'J', '', '', NULL, '', 'planned', 'A',"
                    " '', 0, NULL, -1, -1, -1, -1, 'clear', NULL, NULL, NULL, NULL, NULL, NULL,"
                    " NULL, 2, 2, 4, 2);"
                    "INSERT INTO reading VALUES ('" ID_C "', '" ID_B "', 7, 'ev100', 12, NULL,"
                    " NULL, NULL, 0, '', '');"
                    "INSERT INTO item VALUES ('" ID_A "', 'A1', 'aircraft', 'the old one', '1',"
                    " NULL, 0.9, 50, 12.5, '', 'Skärgård');"
                    "INSERT INTO item VALUES ('" ID_B "', 'ct1', 'controller', '', '1',"
                    " '" ID_A "', NULL, NULL, NULL, '', '');"
                    "INSERT INTO item VALUES ('" ID_C "', 'D1', 'document', '', '', '" ID_A "',"
                    " NULL, NULL, NULL, '2027-12-31', '');"
                    "INSERT INTO aircraft VALUES ('" ID_A "', NULL, NULL, NULL, NULL, NULL, 0,"
                    " NULL);"
                    "INSERT INTO item_event VALUES (1, '" ID_A "', 0, 'defect', 'cracked', '', '',"
                    " '')",
                    NULL, NULL, NULL),
      SQLITE_OK);
  sqlite3_close (db);
  store = ff_store_open (at, FF_STORE_WRITE, &error);
  assert_no_error (error);
}

static void
test_a_store_of_the_first_version_comes_along (void **state)
{
  g_autofree char *old = g_build_filename (folder, "old.db", NULL);

  ff_store_close (store);
  open_first_version (old);
  assert_int_equal (ff_store_version (store), ff_store_newest_version ());
  assert_int_equal (number ("SELECT count(*) FROM reading WHERE at = 7 AND ev100 = 12"
                            " AND \"view\" = 'oblique' AND spread_stops = 0.5"),
                    1);
  refused ("UPDATE reading SET ev100 = 1", "only added to");
  assert_int_equal (number ("SELECT count(*) FROM item WHERE serial = '' AND used_as_of = 0"), 3);
  assert_int_equal (number ("SELECT count(*) FROM item WHERE label = 'A1' AND used = 12.5"), 1);
  assert_int_equal (number ("SELECT count(*) FROM goes_with WHERE item_id = '" ID_A "'"), 2);
  assert_int_equal (number ("SELECT max(position) FROM goes_with"), 1);
  assert_int_equal (number ("SELECT count(*) FROM document WHERE item_id = '" ID_C "'"), 1);
  assert_int_equal (number ("SELECT count(*) FROM item_search WHERE item_search MATCH 'skarg*'"), 1);
  refused ("DELETE FROM item WHERE id = '" ID_A "'", "FOREIGN KEY");
  assert_int_equal (number ("PRAGMA foreign_keys"), 1);
}

static guint
files_in (const char *where, const char *suffix)
{
  GDir *dir = g_dir_open (where, 0, NULL);
  const char *name;
  guint n = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, suffix);
  g_dir_close (dir);
  return n;
}

static void
test_a_backup_comes_before_a_migration (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autofree char *day = g_date_time_format (now, "%Y-%m-%d");
  g_autofree char *name = g_strdup_printf ("fieldfare-%s-v1.db", day);
  g_autofree char *backup = g_build_filename (folder, name, NULL);

  insert_what_they_refer_to ();
  assert_true (ff_backup_before_migration (store, 1, &error));
  assert_true (g_file_test (backup, G_FILE_TEST_EXISTS));
  assert_true (ff_backup_before_migration (store, 1, &error));
  assert_int_equal (files_in (folder, "-v1.db"), 1);
  assert_int_equal (files_in (folder, "-v1-2.db"), 1);
}

/* ---- Backups ---- */

static void
test_a_backup_is_a_store (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *copy = g_build_filename (folder, "copy 'of' it?.db", NULL);
  g_autoptr (GPtrArray) faults = NULL;
  struct stat info;

  insert_what_they_refer_to ();
  ff_store_backup (store, copy, &error);
  assert_no_error (error);
  assert_int_equal (stat (copy, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0600);
  ff_store_close (store);
  store = ff_store_open (copy, FF_STORE_WRITE, &error);
  assert_no_error (error);
  assert_int_equal (number ("SELECT count(*) FROM item"), 2);
  faults = ff_store_faults (store, &error);
  assert_int_equal (faults->len, 0);
}

static void
test_a_backup_replaces_nothing (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *taken = g_build_filename (folder, "taken", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "where.db", NULL);
  g_autofree char *text = NULL;

  assert_true (g_file_set_contents (taken, "mine", -1, NULL));
  assert_false (ff_store_backup (store, taken, &error));
  assert_error (error, FF_ERROR_INPUT, "exists already");
  assert_true (g_file_get_contents (taken, &text, NULL, NULL));
  assert_string_equal (text, "mine");
  assert_false (ff_store_backup (store, nowhere, &error));
  assert_error (error, FF_ERROR_OUTPUT, "where.db");
  assert_int_equal (files_in (folder, "") - files_in (folder, "-wal") - files_in (folder, "-shm"),
                    2);
}

static void
test_faults_are_told (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) faults = NULL;

  run ("PRAGMA foreign_keys = OFF");
  run ("INSERT INTO hazard VALUES ('" ID_A "', 0, 'gulls', '')");
  faults = ff_store_faults (store, &error);
  assert_no_error (error);
  assert_int_equal (faults->len, 1);
  assert_string_equal (g_ptr_array_index (faults, 0),
                       "a row of hazard names a missing row of place");
}

static int
set_up (void **state)
{
  g_autoptr (GError) error = NULL;

  folder = ff_test_folder_new ();
  path = g_build_filename (folder, "fieldfare.db", NULL);
  store = ff_store_open (path, FF_STORE_WRITE, &error);
  assert_no_error (error);
  return 0;
}

static int
tear_down (void **state)
{
  ff_store_close (store);
  g_free (path);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_pragmas_hold),
    CASE (test_only_the_owner_may_read_it),
    CASE (test_every_table_is_strict),
    CASE (test_values_come_back),
    CASE (test_bad_bytes_do_not_get_out),
    CASE (test_statements_say_what_is_wrong),
    CASE (test_a_statement_survives_a_refusal),
    CASE (test_transactions),
    CASE (test_a_failed_commit_has_rolled_back),
    CASE (test_a_second_writer_waits_its_turn),
    CASE (test_strict_types_and_references),
    CASE (test_what_happened_is_only_added_to),
    CASE (test_a_failed_migration_changes_nothing),
    CASE (test_a_migration_keeps_what_is_there),
    CASE (test_a_store_of_the_first_version_comes_along),
    CASE (test_a_backup_comes_before_a_migration),
    CASE (test_a_backup_is_a_store),
    CASE (test_a_backup_replaces_nothing),
    CASE (test_faults_are_told),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("store", tests, NULL, NULL);
}
