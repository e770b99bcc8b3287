/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the crew has decided about a line: the planner keeps it from then on. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-lock.h"
#include "ff-shot.h"

static char *battery_text, *filter_text, *off_text;
static gboolean open_it;

static GOptionEntry entries[] = {
  { "battery", 0, 0, G_OPTION_ARG_STRING, &battery_text, N_ ("Flown on this battery"), "ITEM" },
  { "filter", 0, 0, G_OPTION_ARG_STRING, &filter_text,
    N_ ("Flown behind this filter; none: without"), "ITEM" },
  { "off", 0, 0, G_OPTION_ARG_STRING, &off_text, N_ ("Off the ground at this time"), "HH:MM" },
  { "open", 0, 0, G_OPTION_ARG_NONE, &open_it, N_ ("Take the lock off again"), NULL },
  G_OPTION_ENTRY_NULL,
};

static const FfShot *
find_shot (GPtrArray *shots, const char *label, GError **error)
{
  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);

      if (g_ascii_strcasecmp (shot->label, label) == 0)
        return shot;
    }
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("the job has no shot “%s”"), label);
  return NULL;
}

static gboolean
find_item (FfStore *store, const char *option, const char *label, FfKind kind, char **ret_id,
           GError **error)
{
  g_autofree char *id = ff_item_find (store, label, error);
  g_autoptr (FfItem) item = id != NULL ? ff_item_load (store, id, error) : NULL;

  if (item == NULL)
    {
      g_prefix_error (error, "%s: ", option);
      return FALSE;
    }
  if (item->kind != kind)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("%s: “%s” is: %s; wanted: %s"), option, label,
                   ff_name_text (&ff_names_kind, (int) item->kind),
                   ff_name_text (&ff_names_kind, (int) kind));
      return FALSE;
    }
  ff_set_text (ret_id, id);
  return TRUE;
}

/* What is not said on the command line stays as it was locked. */
static gboolean
read_lock (FfStore *store, FfLock *lock, GError **error)
{
  if (battery_text != NULL
      && !find_item (store, "--battery", battery_text, FF_KIND_BATTERY, &lock->battery_id, error))
    return FALSE;
  if (filter_text != NULL)
    lock->keep_filter = TRUE;
  if (filter_text != NULL && g_str_equal (filter_text, "none"))
    ff_set_text (&lock->filter_id, "");
  else if (filter_text != NULL
           && !find_item (store, "--filter", filter_text, FF_KIND_FILTER, &lock->filter_id, error))
    return FALSE;
  return off_text == NULL || ff_clock_parse (off_text, &lock->off_by, error);
}

static gboolean
change (FfStore *store, const char *job_id, const FfShot *shot, GError **error)
{
  g_autoptr (GPtrArray) locks = ff_locks_load (store, job_id, error);
  g_autoptr (FfLock) lock = NULL;
  const FfLock *stands;

  if (locks == NULL)
    return FALSE;
  stands = ff_locks_find (locks, shot->id);
  if (open_it)
    return stands == NULL || ff_lock_delete (store, stands->id, error);
  lock = stands != NULL ? ff_lock_load (store, stands->id, error) : ff_lock_new (job_id);
  if (lock == NULL)
    return FALSE;
  ff_set_text (&lock->shot_id, shot->id);
  return read_lock (store, lock, error) && ff_lock_save (store, lock, error);
}

/* ---- Out ---- */

static char *
label_of (FfStore *store, const char *id)
{
  g_autoptr (FfItem) item = *id != '\0' ? ff_item_load (store, id, NULL) : NULL;

  return item != NULL ? g_strdup (item->label) : NULL;
}

static void
write_lock (FfConsole *console, FfStore *store, const FfShot *shot, const FfLock *lock)
{
  g_autofree char *battery = label_of (store, lock->battery_id);
  g_autofree char *filter
      = lock->keep_filter && *lock->filter_id == '\0' ? g_strdup ("none")
                                                      : label_of (store, lock->filter_id);
  g_autofree char *off = lock->off_by != FF_NO_CLOCK ? ff_clock_format (lock->off_by) : NULL;

  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "shot", shot->label);
  ff_json_text (console->json, "battery", battery);
  ff_json_text (console->json, "filter", filter);
  ff_json_text (console->json, "off_by", off);
  ff_json_end (console->json);
  ff_console_line (console, _ ("%s  battery %s  filter %s  off by %s"), shot->label,
                   battery != NULL ? battery : _ ("any"), filter != NULL ? filter : _ ("any"),
                   off != NULL ? off : _ ("any time"));
}

static gboolean
write_all (FfConsole *console, FfStore *store, const char *job_id, GPtrArray *shots, GError **error)
{
  g_autoptr (GPtrArray) locks = ff_locks_load (store, job_id, error);

  if (locks == NULL)
    return FALSE;
  ff_json_begin_array (console->json, "locks");
  for (guint i = 0; i < shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (shots, i);
      const FfLock *lock = ff_locks_find (locks, shot->id);

      if (lock != NULL)
        write_lock (console, store, shot, lock);
    }
  ff_json_end (console->json);
  if (locks->len == 0)
    ff_console_line (console, _ ("Nothing is locked: the planner may choose everything."));
  return TRUE;
}

static gboolean
check_words (FfConsole *console, GError **error)
{
  gboolean sets = battery_text != NULL || filter_text != NULL || off_text != NULL;

  if (console->n_words == 1 && !sets && !open_it)
    return TRUE;
  if (!ff_console_want_words (console, 2, "JOB SHOT", error))
    return FALSE;
  if (sets != open_it)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("accepted: --battery, --filter or --off to lock the line, or --open alone"));
  return FALSE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfStore) store = NULL;
  g_autoptr (GPtrArray) shots = NULL;
  g_autofree char *job_id = NULL;
  const FfShot *shot = NULL;

  if (!check_words (console, error))
    return FF_FAILED;
  store = ff_console_open (console, console->n_words > 1 ? FF_RECORDS_WRITE : FF_RECORDS_READ,
                           error);
  job_id = store != NULL ? ff_job_find (store, console->words[0], error) : NULL;
  shots = job_id != NULL ? ff_shots_load (store, job_id, error) : NULL;
  if (shots == NULL)
    return FF_FAILED;
  if (console->n_words > 1)
    {
      shot = find_shot (shots, console->words[1], error);
      if (shot == NULL || !change (store, job_id, shot, error))
        return FF_FAILED;
    }
  return write_all (console, store, job_id, shots, error) ? FF_DONE : FF_FAILED;
}

const FfCommand ff_command_lock = {
  .name = "lock",
  .summary = N_ ("Lock the line of a shot to a battery, a filter or a time"),
  .usage = "lock JOB [SHOT [--battery ITEM] [--filter ITEM] [--off HH:MM] [--open]]",
  .example = "fieldfarectl lock Skarrowick F --battery b3",
  .entries = entries,
  .run = run,
};
