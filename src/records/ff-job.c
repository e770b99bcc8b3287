/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-job.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-match.h"
#include "ff-rows.h"

static const FfField job_fields[] = {
  FF_ID (FfJob, id, "id", N_ ("id"), TRUE),
  FF_TEXT (FfJob, title, N_ ("title"), TRUE, 200),
  FF_TEXT (FfJob, client, N_ ("client"), FALSE, 200),
  FF_TEXT (FfJob, purpose, N_ ("purpose"), FALSE, 1000),
  FF_ID (FfJob, place_id, "place_id", N_ ("place"), FALSE),
  FF_DATE (FfJob, date, N_ ("date")),
  FF_NAME (FfJob, state, N_ ("state"), &ff_names_job_state),
  FF_TEXT (FfJob, version, N_ ("version of the plan"), TRUE, 3),
  FF_TEXT (FfJob, abort_word, N_ ("abort word"), FALSE, 40),
  FF_FLAG (FfJob, example, N_ ("example")),
  FF_REAL (FfJob, delivery_fps, N_ ("frames a second delivered"), FALSE, 1, 1000),
  FF_CLOCK (FfJob, on_site, N_ ("on site"), FALSE),
  FF_CLOCK (FfJob, first_off, N_ ("first off"), FALSE),
  FF_CLOCK (FfJob, all_down, N_ ("all down"), FALSE),
  FF_CLOCK (FfJob, off_site, N_ ("off site"), FALSE),
  FF_NAME (FfJob, sky, N_ ("sky"), &ff_names_sky),
  FF_REAL (FfJob, wind_from_deg, N_ ("wind direction"), FALSE, 0, 360),
  FF_REAL (FfJob, wind_ms, N_ ("wind"), FALSE, 0, 120),
  FF_REAL (FfJob, gust_ms, N_ ("gust"), FALSE, 0, 150),
  FF_REAL (FfJob, wind_height_m, N_ ("height of the wind"), FALSE, 0.1, 5000),
  FF_REAL (FfJob, temperature_c, N_ ("temperature"), FALSE, -90, 60),
  FF_REAL (FfJob, visibility_m, N_ ("visibility"), FALSE, 0, 300000),
  FF_ID (FfJob, aircraft_id, "aircraft_id", N_ ("aircraft"), FALSE),
  FF_WHOLE (FfJob, out_minutes, N_ ("minutes out"), 0, 60),
  FF_WHOLE (FfJob, back_minutes, N_ ("minutes back"), 0, 60),
  FF_WHOLE (FfJob, battery_change_minutes, N_ ("minutes of a battery change"), 0, 120),
  FF_WHOLE (FfJob, filter_change_minutes, N_ ("minutes of a filter change"), 0, 120),
  FF_LATER_FLAG (FfJob, any_order, N_ ("shots in any order")),
  FF_LATER_WHOLE (FfJob, legs_per_battery, N_ ("legs on one charge"), 1, FF_JOB_MOST_LEGS),
  FF_LATER_WHOLE (FfJob, filters_at_once, N_ ("filters at once"), 1, FF_JOB_MOST_FILTERS),
  FF_REAL (FfJob, stay_margin, N_ ("margin for another plan"), FALSE, 0, 1000),
};
const FfFields ff_job_fields = FF_FIELDS ("job", job_fields);

static const FfField day_event_fields[] = {
  FF_CLOCK (FfDayEvent, clock, N_ ("time of the event"), TRUE),
  FF_TEXT (FfDayEvent, text, N_ ("event"), TRUE, 200),
};
const FfFields ff_day_event_fields = FF_FIELDS ("day_event", day_event_fields);

static const FfParts day_events = { "day_event", "job_id", FALSE };
static const FfParts job_items = { "job_item", "job_id", FALSE };

FfDayEvent *
ff_day_event_new (void)
{
  FfDayEvent *event = g_new0 (FfDayEvent, 1);

  ff_fields_init (&ff_day_event_fields, event);
  return event;
}

void
ff_day_event_free (FfDayEvent *event)
{
  if (event == NULL)
    return;
  ff_fields_clear (&ff_day_event_fields, event);
  g_free (event);
}

static gpointer
job_blank (void)
{
  FfJob *job = g_new0 (FfJob, 1);

  ff_fields_init (&ff_job_fields, job);
  job->events = g_ptr_array_new_with_free_func ((GDestroyNotify) ff_day_event_free);
  job->item_ids = g_ptr_array_new_with_free_func (g_free);
  return job;
}

FfJob *
ff_job_new (void)
{
  FfJob *job = job_blank ();

  g_free (job->id);
  job->id = ff_records_new_id ();
  ff_set_text (&job->version, "A");
  job->out_minutes = 2;
  job->back_minutes = 2;
  job->battery_change_minutes = 4;
  job->filter_change_minutes = 2;
  return job;
}

void
ff_job_free (FfJob *job)
{
  if (job == NULL)
    return;
  ff_fields_clear (&ff_job_fields, job);
  g_ptr_array_unref (job->events);
  g_ptr_array_unref (job->item_ids);
  g_free (job);
}

static gboolean
refuse (const char *whose, const char *what, GError **error)
{
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, "%s: %s", whose, what);
  return FALSE;
}

/* The hours that are given must follow each other; any may be left open. */
static gboolean
check_hours (const FfJob *job, const char *whose, GError **error)
{
  const int hours[] = { job->on_site, job->first_off, job->all_down, job->off_site };
  const char *words[] = { _ ("on site"), _ ("first off"), _ ("all down"), _ ("off site") };
  int last = -1;

  for (int i = 0; i < (int) G_N_ELEMENTS (hours); i++)
    {
      if (hours[i] == FF_NO_CLOCK)
        continue;
      if (last >= 0 && hours[i] < hours[last])
        {
          g_autofree char *what
              = g_strdup_printf (_ ("“%s” is earlier than “%s”"), words[i], words[last]);

          return refuse (whose, what, error);
        }
      last = i;
    }
  return TRUE;
}

static gboolean
check_version (const FfJob *job, const char *whose, GError **error)
{
  for (const char *p = job->version; *p != '\0'; p++)
    if (!g_ascii_isupper (*p))
      return refuse (whose, _ ("the version of the plan is a letter, A to Z"), error);
  return TRUE;
}

static gboolean
check_parts (const FfJob *job, const char *whose, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < job->events->len; i++)
    if (!ff_fields_check (&ff_day_event_fields, g_ptr_array_index (job->events, i), whose, error))
      return FALSE;
  for (guint i = 0; i < job->item_ids->len; i++)
    {
      char *id = g_ptr_array_index (job->item_ids, i);

      if (!g_uuid_string_is_valid (id))
        return refuse (whose, _ ("an item is named by something that is no id"), error);
      if (!g_hash_table_add (seen, id))
        return refuse (whose, _ ("an item is named twice"), error);
    }
  return TRUE;
}

gboolean
ff_job_check (const FfJob *job, GError **error)
{
  g_autofree char *whose = g_strdup_printf (_ ("job “%s”"), job->title);

  if (!ff_fields_check (&ff_job_fields, job, whose, error)
      || !check_version (job, whose, error) || !check_hours (job, whose, error))
    return FALSE;
  if (job->gust_ms < job->wind_ms)
    return refuse (whose, _ ("the gust is less than the wind"), error);
  return check_parts (job, whose, error);
}

gboolean
ff_job_save (FfStore *store, const FfJob *job, GError **error)
{
  gboolean own, done;

  if (!ff_job_check (job, error) || !ff_rows_open (store, &own, error))
    return FALSE;
  done = ff_rows_save (store, &ff_job_fields, job, error)
         && ff_parts_save (store, &day_events, &ff_day_event_fields, job->id, job->events, error)
         && ff_parts_save_ids (store, &job_items, "item_id", job->id, job->item_ids, error);
  return ff_rows_close (store, own, done, error);
}

static gpointer
event_blank (void)
{
  return ff_day_event_new ();
}

static gboolean
load_parts (FfStore *store, FfJob *job, GError **error)
{
  GPtrArray *events = ff_rows_load (store, &ff_day_event_fields,
                                    "WHERE job_id = ?1 ORDER BY clock, position", job->id,
                                    event_blank, (GDestroyNotify) ff_day_event_free, error);

  if (events == NULL)
    return FALSE;
  g_ptr_array_unref (job->events);
  job->events = events;
  return ff_parts_load_ids (store, &job_items, "item_id", job->id, job->item_ids, error);
}

static GPtrArray *
load_jobs (FfStore *store, const char *tail, const char *argument, GError **error)
{
  g_autoptr (GPtrArray) jobs = ff_rows_load (store, &ff_job_fields, tail, argument, job_blank,
                                             (GDestroyNotify) ff_job_free, error);

  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    if (!load_parts (store, g_ptr_array_index (jobs, i), error))
      return NULL;
  return g_steal_pointer (&jobs);
}

FfJob *
ff_job_load (FfStore *store, const char *id, GError **error)
{
  g_autoptr (GPtrArray) found = load_jobs (store, "WHERE id = ?1", id, error);

  if (found == NULL)
    return NULL;
  if (found->len == 0)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("no job has the id %s"), id);
      return NULL;
    }
  return g_ptr_array_steal_index (found, 0);
}

/* Jobs without a date stand last: they are still to be dated. */
GPtrArray *
ff_jobs_load (FfStore *store, GError **error)
{
  return load_jobs (store, "ORDER BY date = '', date, title, id", NULL, error);
}

char *
ff_job_find (FfStore *store, const char *wanted, GError **error)
{
  return ff_match (store, "SELECT id, title, title FROM job ORDER BY date, title", _ ("job"),
                   wanted, error);
}
