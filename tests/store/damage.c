/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files that are no good store: each is refused with a sentence, and not a byte is changed. */
#include "ff-test.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-job.h"
#include "ff-place.h"
#include "ff-shot.h"
#include "ff-store.h"

static char *folder;
static char *path;
static char *good; /* the bytes of a sound store */
static gsize good_size;

/* Not flushed: the disk is not what is tested, and there are a thousand of them. Written that way,
 * a file that is there would keep what goes beyond the new end. */
static void
put (const char *bytes, gsize size)
{
  g_unlink (path);
  assert_true (g_file_set_contents_full (path, bytes, (gssize) size, G_FILE_SET_CONTENTS_NONE, 0600,
                                         NULL));
}

static void
remove_logs (void)
{
  g_autofree char *wal = g_strconcat (path, "-wal", NULL);
  g_autofree char *shm = g_strconcat (path, "-shm", NULL);

  g_unlink (wal);
  g_unlink (shm);
}

static void
holds_still (const char *bytes, gsize size)
{
  g_autofree char *now = NULL;
  gsize now_size;

  assert_true (g_file_get_contents (path, &now, &now_size, NULL));
  assert_int_equal (now_size, size);
  assert_memory_equal (now, bytes, size);
}

/* Both ways of opening; the sentence names the file. */
static void
refused (const char *bytes, gsize size, const char *part)
{
  static const FfRecordsAccess both[] = { FF_RECORDS_READ, FF_RECORDS_WRITE };

  for (guint i = 0; i < G_N_ELEMENTS (both); i++)
    {
      g_autoptr (GError) error = NULL;

      put (bytes, size);
      assert_null (ff_records_open (folder, both[i], &error));
      assert_non_null (error);
      assert_non_null (strstr (error->message, path));
      assert_error (error, FF_ERROR_STORE, part);
      holds_still (bytes, size);
      remove_logs ();
    }
}

/* ---- Not what it should be ---- */

static void
test_a_text_file (void **state)
{
  refused ("shopping list\n", 14, "not a store");
  refused ("SQLite format 2, and more of it after that, to fill the hundred bytes of a header, and"
           " so on until it is",
           104, "not a store");
}

static void
test_an_empty_file (void **state)
{
  refused ("", 0, "is empty");
}

static void
test_every_truncation (void **state)
{
  for (gsize size = 100; size < good_size; size += 4096)
    refused (good, size, "damaged");
  for (gsize size = 4096; size < good_size; size += 4096)
    refused (good, size, "Restore a backup");
  refused (good, good_size / 2, "damaged");
  refused (good, good_size - 1, "damaged");
  refused (good, 60, "damaged");
}

static void
test_bytes_after_the_end (void **state)
{
  g_autofree char *longer = g_malloc0 (good_size + 4096);

  memcpy (longer, good, good_size);
  refused (longer, good_size + 4096, "damaged");
}

/* Writes a big-endian number of the header. */
static char *
with_header (gsize at, guint32 value)
{
  char *bytes = g_memdup2 (good, good_size);

  for (int i = 0; i < 4; i++)
    bytes[at + (gsize) i] = (char) (value >> (24 - 8 * i));
  return bytes;
}

static void
test_another_program_and_the_future (void **state)
{
  g_autofree char *foreign = with_header (68, 0x12345678);
  g_autofree char *nobody = with_header (68, 0);
  g_autofree char *future = with_header (60, (guint32) ff_store_newest_version () + 1);
  g_autofree char *negative = with_header (60, 0xffffffff);

  refused (foreign, good_size, "another program");
  refused (nobody, good_size, "another program");
  refused (future, good_size, "newer version");
  refused (negative, good_size, "damaged");
}

/* A newer version may stand in the log alone, where the header does not show it yet. */
static void
test_the_future_in_the_log (void **state)
{
  g_autoptr (GError) error = NULL;
  sqlite3 *db;

  put (good, good_size);
  assert_int_equal (sqlite3_open (path, &db), SQLITE_OK);
  assert_int_equal (sqlite3_exec (db, "PRAGMA journal_mode = WAL; PRAGMA user_version = 99", NULL,
                                  NULL, NULL),
                    SQLITE_OK);
  assert_null (ff_records_open (folder, FF_RECORDS_WRITE, &error));
  assert_error (error, FF_ERROR_STORE, "newer version");
  assert_null (ff_records_open (folder, FF_RECORDS_READ, &error));
  assert_error (error, FF_ERROR_STORE, "newer version");
  sqlite3_close (db);
  remove_logs ();
}

/* ---- Random damage ---- */

/* Uses everything that can be read: it may fail, with the right error, but not crash. */
static void
read_all (FfStore *store)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) jobs = ff_jobs_load (store, &error);
  g_autoptr (GPtrArray) faults = NULL;

  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);
      g_autoptr (GPtrArray) shots = ff_shots_load (store, job->id, error == NULL ? &error : NULL);

      (void) shots;
    }
  assert_true (error == NULL || error->domain == FF_ERROR);
  faults = ff_records_faults (store, NULL);
  (void) faults;
}

static void
try_damaged (const char *bytes)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = NULL;

  put (bytes, good_size);
  store = ff_records_open (folder, FF_RECORDS_READ, &error);
  if (store != NULL)
    read_all (store);
  else
    assert_error (error, FF_ERROR_STORE, path);
  holds_still (bytes, good_size);
}

static void
test_each_byte_of_the_header (void **state)
{
  FfTestRandom dice = { 1 };

  for (gsize at = 0; at < 100; at++)
    for (int round = 0; round < 4; round++)
      {
        g_autofree char *bytes = g_memdup2 (good, good_size);

        bytes[at] ^= (char) (1 << ff_test_random_int (&dice, 0, 7));
        try_damaged (bytes);
        remove_logs ();
      }
}

/* What a write could not survive is refused at once: the layout of the pages. */
static void
test_a_header_that_makes_no_sense (void **state)
{
  static const gsize places[] = { 16, 18, 19, 20, 21, 22, 23, 24, 28, 47, 59, 75, 92 };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autofree char *bytes = g_memdup2 (good, good_size);

      bytes[places[i]] ^= 0x55;
      refused (bytes, good_size, "damaged");
    }
}

static void
test_random_bytes_anywhere (void **state)
{
  FfTestRandom dice = { 20270918 };

  for (int round = 0; round < 200; round++)
    {
      g_autofree char *bytes = g_memdup2 (good, good_size);
      int n = ff_test_random_int (&dice, 1, 20);

      for (int i = 0; i < n; i++)
        bytes[ff_test_random_int (&dice, 100, (int) good_size - 1)]
            = (char) ff_test_random_int (&dice, 0, 255);
      try_damaged (bytes);
      remove_logs ();
    }
}

/* The whole check finds a page that was lost in the middle. */
static void
test_the_check_finds_a_lost_page (void **state)
{
  g_autofree char *bytes = g_memdup2 (good, good_size);
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = NULL;
  g_autoptr (GPtrArray) faults = NULL;

  memset (bytes + 4096 * 3, 0, 4096);
  put (bytes, good_size);
  store = ff_records_open (folder, FF_RECORDS_READ, &error);
  if (store != NULL)
    faults = ff_records_faults (store, &error);
  assert_true (error != NULL || (faults != NULL && faults->len > 0));
}

/* ---- In the way ---- */

static void
test_a_folder_in_place_of_the_file (void **state)
{
  g_autoptr (GError) error = NULL;

  assert_int_equal (g_mkdir (path, 0700), 0);
  assert_null (ff_records_open (folder, FF_RECORDS_WRITE, &error));
  assert_error (error, FF_ERROR_STORE, "not a file");
  assert_null (ff_records_open (folder, FF_RECORDS_READ, &error));
  assert_error (error, FF_ERROR_STORE, "not a file");
}

/* It would wait for a writer for ever. */
static void
test_a_pipe_in_place_of_the_file (void **state)
{
  g_autoptr (GError) error = NULL;

  assert_int_equal (mkfifo (path, 0600), 0);
  assert_null (ff_records_open (folder, FF_RECORDS_READ, &error));
  assert_error (error, FF_ERROR_STORE, "not a file");
}

static void
test_folders (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = NULL;
  g_autofree char *deep = g_build_filename (folder, "a", "b", NULL);
  g_autofree char *below_file = g_build_filename (folder, "file", "data", NULL);
  g_autofree char *file = g_build_filename (folder, "file", NULL);
  struct stat info;

  assert_null (ff_records_open (deep, FF_RECORDS_READ, &error));
  assert_error (error, FF_ERROR_STORE, "does not exist");
  assert_false (g_file_test (deep, G_FILE_TEST_EXISTS));
  store = ff_records_open (deep, FF_RECORDS_WRITE, &error);
  assert_no_error (error);
  assert_int_equal (stat (deep, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0700);
  assert_true (g_file_set_contents (file, "x", 1, NULL));
  assert_null (ff_records_open (below_file, FF_RECORDS_WRITE, &error));
  assert_error (error, FF_ERROR_STORE, "can't be made");
}

/* What a URI or SQL would read in a name is only a name. */
static void
test_odd_names_of_folders (void **state)
{
  static const char *const names[]
      = { "a b", "50%20?mode=memory", "#1", "it's", "é", "\xff", "-x" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *odd = g_strconcat ("/", folder, "/", names[i], NULL);
      g_autofree char *file = g_build_filename (odd, "fieldfare.db", NULL);
      g_autoptr (FfStore) store = ff_records_open (odd, FF_RECORDS_WRITE, &error);

      assert_no_error (error);
      assert_non_null (store);
      assert_true (g_file_test (file, G_FILE_TEST_EXISTS));
    }
}

static void
reads_well (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_READ, &error);
  g_autoptr (GPtrArray) jobs = NULL;

  assert_no_error (error);
  jobs = ff_jobs_load (store, &error);
  assert_no_error (error);
  assert_int_equal (jobs->len, 3);
}

static guint
files_in_folder (void)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  g_dir_close (dir);
  return n;
}

static void
test_a_read_only_file (void **state)
{
  g_autoptr (GError) error = NULL;

  put (good, good_size);
  assert_int_equal (g_chmod (path, 0400), 0);
  assert_null (ff_records_open (folder, FF_RECORDS_WRITE, &error));
  assert_error (error, FF_ERROR_STORE, "read-only");
  reads_well ();
  holds_still (good, good_size);
}

static void
test_a_read_only_folder (void **state)
{
  g_autoptr (GError) error = NULL;

  put (good, good_size);
  assert_int_equal (g_chmod (folder, 0500), 0);
  assert_null (ff_records_open (folder, FF_RECORDS_WRITE, &error));
  assert_error (error, FF_ERROR_STORE, "read-only");
  reads_well ();
  assert_int_equal (files_in_folder (), 1);
  holds_still (good, good_size);
  assert_int_equal (g_chmod (folder, 0700), 0);
}

static void
test_writing_through_a_reader_is_refused (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = NULL;
  g_autoptr (FfJob) job = ff_job_new ();

  put (good, good_size);
  store = ff_records_open (folder, FF_RECORDS_READ, &error);
  ff_set_text (&job->title, "new");
  assert_false (ff_job_save (store, job, &error));
  assert_error (error, FF_ERROR_STORE, "read-only");
}

/* A log that the program left behind when it was cut off belongs to the store. */
static void
test_a_file_cut_short_beside_its_log (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *wal = g_strconcat (path, "-wal", NULL);
  g_autofree char *log = NULL;
  gsize log_size;
  sqlite3 *db;

  put (good, good_size);
  assert_int_equal (sqlite3_open (path, &db), SQLITE_OK);
  assert_int_equal (sqlite3_exec (db,
                                  "PRAGMA journal_mode = WAL;"
                                  "UPDATE job SET client = 'somebody'",
                                  NULL, NULL, NULL),
                    SQLITE_OK);
  assert_true (g_file_get_contents (wal, &log, &log_size, NULL));
  sqlite3_close (db);

  /* With the whole file the log counts. */
  put (good, good_size);
  assert_true (g_file_set_contents (wal, log, (gssize) log_size, NULL));
  reads_well ();
  remove_logs ();

  /* With half of it the log does not help. */
  put (good, good_size / 8192 * 4096);
  assert_true (g_file_set_contents (wal, log, (gssize) log_size, NULL));
  assert_null (ff_records_open (folder, FF_RECORDS_WRITE, &error));
  assert_error (error, FF_ERROR_STORE, "damaged");
}

/* ---- The good store that is spoilt each time ---- */

static gboolean
fill (FfStore *store, GError **error)
{
  for (int i = 0; i < 3; i++)
    {
      g_autoptr (FfJob) job = ff_job_new ();

      g_free (job->title);
      job->title = g_strdup_printf ("job %d", i);
      if (!ff_job_save (store, job, error))
        return FALSE;
      for (int j = 0; j < 40; j++)
        {
          g_autoptr (FfShot) shot = ff_shot_new (job->id);

          g_free (shot->label);
          shot->label = g_strdup_printf ("%d", j);
          ff_set_text (&shot->note, "abeam, never over the vessel");
          shot->window_from = 0;
          shot->window_to = 30;
          if (!ff_shot_save (store, shot, error))
            return FALSE;
        }
    }
  return TRUE;
}

static int
make_good (void **state)
{
  g_autoptr (GError) error = NULL;
  FfStore *store;
  gboolean done;

  folder = ff_test_folder_new ();
  path = g_build_filename (folder, "fieldfare.db", NULL);
  store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  done = store != NULL && ff_records_begin (store, &error) && fill (store, &error)
         && ff_records_commit (store, &error);
  ff_records_close (store);
  done = done && g_file_get_contents (path, &good, &good_size, NULL);
  g_free (path);
  ff_test_folder_remove (folder);
  return done ? 0 : -1;
}

static int
free_good (void **state)
{
  g_free (good);
  return 0;
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  path = g_build_filename (folder, "fieldfare.db", NULL);
  return 0;
}

static int
tear_down (void **state)
{
  g_chmod (folder, 0700);
  g_free (path);
  ff_test_folder_remove (folder);
  return 0;
}

#define CASE(test) cmocka_unit_test_setup_teardown (test, set_up, tear_down)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    CASE (test_a_text_file),
    CASE (test_an_empty_file),
    CASE (test_every_truncation),
    CASE (test_bytes_after_the_end),
    CASE (test_another_program_and_the_future),
    CASE (test_the_future_in_the_log),
    CASE (test_each_byte_of_the_header),
    CASE (test_a_header_that_makes_no_sense),
    CASE (test_random_bytes_anywhere),
    CASE (test_the_check_finds_a_lost_page),
    CASE (test_a_folder_in_place_of_the_file),
    CASE (test_a_pipe_in_place_of_the_file),
    CASE (test_folders),
    CASE (test_odd_names_of_folders),
    CASE (test_a_read_only_file),
    CASE (test_a_read_only_folder),
    CASE (test_writing_through_a_reader_is_refused),
    CASE (test_a_file_cut_short_beside_its_log),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("damage", tests, make_good, free_good);
}
