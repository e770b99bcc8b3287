/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The store when the program is killed, and when the disk fails or fills up at any write: what was
 * committed is whole, what was not is gone, and the store is sound. */
#include "ff-test.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ff-error.h"
#include "ff-job.h"
#include "ff-place.h"
#include "ff-shot.h"
#include "ff-store.h"

#define SHOTS 12
#define KILLS 25

static char *folder;

/* ---- One change of several records ---- */

static gboolean
save_shots (FfStore *store, const FfJob *job, GError **error)
{
  for (int i = 0; i < SHOTS; i++)
    {
      g_autoptr (FfShot) shot = ff_shot_new (job->id);

      g_free (shot->label);
      shot->label = g_strdup_printf ("%d", i);
      shot->position = i;
      shot->window_from = 0;
      shot->window_to = 60;
      ff_set_text (&shot->title, job->title);
      if (!ff_shot_save (store, shot, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
save_parts (FfStore *store, const char *title, GError **error)
{
  g_autoptr (FfPlace) place = ff_place_new ();
  g_autoptr (FfJob) job = ff_job_new ();

  ff_set_text (&place->name, title);
  ff_set_text (&place->zone, "Europe/London");
  ff_set_text (&job->title, title);
  ff_set_text (&job->place_id, place->id);
  return ff_place_save (store, place, error) && ff_job_save (store, job, error)
         && save_shots (store, job, error);
}

static gboolean
save_day (FfStore *store, const char *title, GError **error)
{
  if (!ff_records_begin (store, error))
    return FALSE;
  if (save_parts (store, title, error))
    return ff_records_commit (store, error);
  ff_records_rollback (store);
  return FALSE;
}

/* Sound, and every day that is there is whole. Returns how many there are. */
static guint
check_whole (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, &error);
  g_autoptr (GPtrArray) faults = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  assert_no_error (error);
  faults = ff_records_faults (store, &error);
  assert_no_error (error);
  assert_int_equal (faults->len, 0);
  jobs = ff_jobs_load (store, &error);
  assert_no_error (error);
  for (guint i = 0; i < jobs->len; i++)
    {
      const FfJob *job = g_ptr_array_index (jobs, i);
      g_autoptr (FfPlace) place = ff_place_load (store, job->place_id, &error);
      g_autoptr (GPtrArray) shots = ff_shots_load (store, job->id, &error);

      assert_no_error (error);
      assert_string_equal (place->name, job->title);
      assert_int_equal (shots->len, SHOTS);
    }
  return jobs->len;
}

/* ---- Killed ---- */

/* Tells when a first day is saved, so that the kill meets a program at work. */
static void
save_for_ever (int tell)
{
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);

  for (int i = 0; store != NULL && (i != 1 || write (tell, "o", 1) == 1); i++)
    {
      g_autofree char *title = g_strdup_printf ("day %d", i);

      if (!save_day (store, title, NULL))
        break;
    }
  _exit (1);
}

/* Every fifth kill comes while the store is being opened, the first one while it is being made. */
static void
save_and_kill (int round, FfTestRandom *dice)
{
  int tell[2], status;
  pid_t child;
  char byte;

  assert_int_equal (pipe (tell), 0);
  child = fork ();
  assert_true (child >= 0);
  if (child == 0)
    save_for_ever (tell[1]);
  close (tell[1]);
  if (round % 5 != 0)
    assert_int_equal (read (tell[0], &byte, 1), 1);
  g_usleep ((gulong) ff_test_random_int (dice, 0, 30000));
  assert_int_equal (kill (child, SIGKILL), 0);
  assert_int_equal (waitpid (child, &status, 0), child);
  assert_true (WIFSIGNALED (status));
  close (tell[0]);
}

static void
test_killed_at_any_moment (void **state)
{
  FfTestRandom dice = { 9 };
  guint last = 0, grown = 0;

  for (int round = 0; round < KILLS; round++)
    {
      guint days;

      save_and_kill (round, &dice);
      days = check_whole ();
      assert_true (days >= last);
      grown += days > last;
      last = days;
    }
  /* The kills must have hit a program at work, or they prove nothing. */
  assert_true (grown > KILLS / 2);
}

/* ---- A disk that fails: a layer below SQLite that lets so many writes pass ---- */

typedef struct {
  sqlite3_file base;
  sqlite3_file *real;
} FaultFile;

static sqlite3_vfs fault_vfs;
static sqlite3_vfs *real_vfs;
static struct {
  int left; /* writes that still pass; negative: all */
  int code; /* what the next one reports */
  gboolean once;
  gboolean hit;
} fault;

static int
maybe_fail (void)
{
  if (fault.left < 0)
    return SQLITE_OK;
  if (fault.left > 0)
    {
      fault.left--;
      return SQLITE_OK;
    }
  fault.hit = TRUE;
  if (fault.once)
    fault.left = -1;
  return fault.code;
}

static sqlite3_file *
real_of (sqlite3_file *file)
{
  return ((FaultFile *) file)->real;
}

static int
fault_close (sqlite3_file *file)
{
  int code = real_of (file)->pMethods->xClose (real_of (file));

  sqlite3_free (real_of (file));
  return code;
}

static int
fault_read (sqlite3_file *file, void *buffer, int n, sqlite3_int64 at)
{
  return real_of (file)->pMethods->xRead (real_of (file), buffer, n, at);
}

static int
fault_write (sqlite3_file *file, const void *buffer, int n, sqlite3_int64 at)
{
  int code = maybe_fail ();

  /* Half of it may have gone out. */
  if (code != SQLITE_OK)
    {
      real_of (file)->pMethods->xWrite (real_of (file), buffer, n / 2, at);
      return code;
    }
  return real_of (file)->pMethods->xWrite (real_of (file), buffer, n, at);
}

static int
fault_truncate (sqlite3_file *file, sqlite3_int64 size)
{
  int code = maybe_fail ();

  return code != SQLITE_OK ? SQLITE_IOERR_TRUNCATE
                           : real_of (file)->pMethods->xTruncate (real_of (file), size);
}

static int
fault_sync (sqlite3_file *file, int flags)
{
  int code = maybe_fail ();

  return code != SQLITE_OK ? SQLITE_IOERR_FSYNC
                           : real_of (file)->pMethods->xSync (real_of (file), flags);
}

static int
fault_size (sqlite3_file *file, sqlite3_int64 *size)
{
  return real_of (file)->pMethods->xFileSize (real_of (file), size);
}

static int
fault_lock (sqlite3_file *file, int level)
{
  return real_of (file)->pMethods->xLock (real_of (file), level);
}

static int
fault_unlock (sqlite3_file *file, int level)
{
  return real_of (file)->pMethods->xUnlock (real_of (file), level);
}

static int
fault_reserved (sqlite3_file *file, int *result)
{
  return real_of (file)->pMethods->xCheckReservedLock (real_of (file), result);
}

static int
fault_control (sqlite3_file *file, int operation, void *argument)
{
  return real_of (file)->pMethods->xFileControl (real_of (file), operation, argument);
}

static int
fault_sector (sqlite3_file *file)
{
  return real_of (file)->pMethods->xSectorSize (real_of (file));
}

/* Nothing is promised about a write that is cut off. */
static int
fault_device (sqlite3_file *file)
{
  return 0;
}

static int
fault_shm_map (sqlite3_file *file, int page, int size, int extend, void volatile **memory)
{
  return real_of (file)->pMethods->xShmMap (real_of (file), page, size, extend, memory);
}

static int
fault_shm_lock (sqlite3_file *file, int offset, int n, int flags)
{
  return real_of (file)->pMethods->xShmLock (real_of (file), offset, n, flags);
}

static void
fault_shm_barrier (sqlite3_file *file)
{
  real_of (file)->pMethods->xShmBarrier (real_of (file));
}

static int
fault_shm_unmap (sqlite3_file *file, int remove)
{
  return real_of (file)->pMethods->xShmUnmap (real_of (file), remove);
}

static const sqlite3_io_methods fault_methods = {
  .iVersion = 2,
  .xClose = fault_close,
  .xRead = fault_read,
  .xWrite = fault_write,
  .xTruncate = fault_truncate,
  .xSync = fault_sync,
  .xFileSize = fault_size,
  .xLock = fault_lock,
  .xUnlock = fault_unlock,
  .xCheckReservedLock = fault_reserved,
  .xFileControl = fault_control,
  .xSectorSize = fault_sector,
  .xDeviceCharacteristics = fault_device,
  .xShmMap = fault_shm_map,
  .xShmLock = fault_shm_lock,
  .xShmBarrier = fault_shm_barrier,
  .xShmUnmap = fault_shm_unmap,
};

static int
fault_open (sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out_flags)
{
  sqlite3_file *real = sqlite3_malloc (real_vfs->szOsFile);
  int code;

  memset (real, 0, (size_t) real_vfs->szOsFile);
  code = real_vfs->xOpen (real_vfs, name, real, flags, out_flags);
  file->pMethods = NULL;
  if (code != SQLITE_OK)
    {
      sqlite3_free (real);
      return code;
    }
  ((FaultFile *) file)->real = real;
  file->pMethods = &fault_methods;
  return SQLITE_OK;
}

static int
lay_below (void **state)
{
  folder = ff_test_folder_new ();
  real_vfs = sqlite3_vfs_find (NULL);
  fault_vfs = *real_vfs;
  fault_vfs.zName = "fault";
  fault_vfs.szOsFile = sizeof (FaultFile);
  fault_vfs.xOpen = fault_open;
  fault.left = -1;
  return sqlite3_vfs_register (&fault_vfs, 1) == SQLITE_OK ? 0 : -1;
}

static int
take_away (void **state)
{
  sqlite3_vfs_unregister (&fault_vfs);
  ff_test_folder_remove (folder);
  return 0;
}

static void
fail_after (int writes, int code, gboolean once)
{
  fault.left = writes;
  fault.code = code;
  fault.once = once;
  fault.hit = FALSE;
}

static void
work_again (void)
{
  fault.left = -1;
}

/* ---- The sweeps: the first write fails, then the second, until nothing is hit any more ---- */

typedef gboolean (*Operation) (int round, GError **error);

static gboolean
open_and_save (int round, GError **error)
{
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, error);
  g_autofree char *title = g_strdup_printf ("day %d", round);

  return store != NULL && save_day (store, title, error);
}

static gboolean
open_and_copy (int round, GError **error)
{
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, error);
  g_autofree char *copy = g_strdup_printf ("%s/copy-%d.db", folder, round);

  return store != NULL && ff_records_backup (store, copy, error);
}

static gboolean
ends_well (const GError *error)
{
  return error->domain == FF_ERROR
         && (error->code == FF_ERROR_STORE || error->code == FF_ERROR_OUTPUT);
}

static gboolean
copy_exists (int round)
{
  g_autofree char *copy = g_strdup_printf ("%s/copy-%d.db", folder, round);

  return g_file_test (copy, G_FILE_TEST_EXISTS);
}

/* Returns how many writes the operation made, which is how many rounds it took. */
static int
sweep (Operation operation, int code, gboolean once, gboolean fresh)
{
  guint days = fresh ? 0 : check_whole ();

  for (int round = 0; round < 2000; round++)
    {
      g_autoptr (GError) error = NULL;
      gboolean done;
      guint now;

      if (fresh)
        {
          ff_test_folder_remove (folder);
          folder = ff_test_folder_new ();
          days = 0;
        }
      fail_after (round, code, once);
      done = operation (round, &error);
      work_again ();
      assert_true (done || ends_well (error));
      now = check_whole ();
      /* A day that was said to be stored is there, another one is not. */
      if (operation == open_and_save)
        assert_int_equal (now, days + (done ? 1 : 0));
      else
        assert_int_equal (copy_exists (round), done);
      days = now;
      if (!fault.hit)
        return round;
    }
  fail_msg ("the operation never gets through");
  return 0;
}

static guint
leftovers (void)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    n += strstr (name, ".part-") != NULL || strstr (name, ".new-") != NULL;
  g_dir_close (dir);
  return n;
}

static void
test_full_disk_while_a_store_is_made (void **state)
{
  assert_true (sweep (open_and_save, SQLITE_FULL, FALSE, TRUE) > 40);
  assert_int_equal (leftovers (), 0);
}

static void
test_full_disk_while_saving (void **state)
{
  assert_true (open_and_save (-1, NULL));
  assert_true (sweep (open_and_save, SQLITE_FULL, FALSE, FALSE) > 8);
}

static void
test_one_failed_write_while_saving (void **state)
{
  assert_true (open_and_save (-1, NULL));
  assert_true (sweep (open_and_save, SQLITE_IOERR_WRITE, TRUE, FALSE) > 8);
}

static void
test_full_disk_while_copying (void **state)
{
  assert_true (open_and_save (-1, NULL));
  assert_true (sweep (open_and_copy, SQLITE_FULL, FALSE, FALSE) > 8);
  assert_int_equal (leftovers (), 0);
}

static void
test_the_sentence_of_a_full_disk (void **state)
{
  g_autoptr (GError) error = NULL;

  assert_true (open_and_save (-1, NULL));
  fail_after (0, SQLITE_FULL, FALSE);
  assert_false (open_and_save (0, &error));
  work_again ();
  assert_error (error, FF_ERROR_STORE, "disk is full");
}

static int
set_up (void **state)
{
  folder = ff_test_folder_new ();
  return 0;
}

static int
tear_down (void **state)
{
  ff_test_folder_remove (folder);
  return 0;
}

#define FAULTY(test) cmocka_unit_test_setup_teardown (test, lay_below, take_away)

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (test_killed_at_any_moment, set_up, tear_down),
    FAULTY (test_full_disk_while_a_store_is_made),
    FAULTY (test_full_disk_while_saving),
    FAULTY (test_one_failed_write_while_saving),
    FAULTY (test_full_disk_while_copying),
    FAULTY (test_the_sentence_of_a_full_disk),
  };

  /* In memory where there is such a place: nothing here pulls the plug. */
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  return cmocka_run_group_tests_name ("crash", tests, NULL, NULL);
}
