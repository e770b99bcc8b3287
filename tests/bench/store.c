/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Opening the store and loading the demo job: done at every start and by every console command. */
#include <glib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>

#include "ff-crew.h"
#include "ff-demo.h"
#include "ff-flight.h"
#include "ff-item.h"
#include "ff-job.h"
#include "ff-limit.h"
#include "ff-place.h"
#include "ff-shot.h"

#define ROUNDS 200
#define GRANTED_MS 5.0

static gboolean
load_parts (FfStore *store, const char *id)
{
  g_autoptr (FfJob) job = ff_job_load (store, id, NULL);
  g_autoptr (FfPlace) place = job != NULL ? ff_place_load (store, job->place_id, NULL) : NULL;
  g_autoptr (GPtrArray) shots = ff_shots_load (store, id, NULL);
  g_autoptr (GPtrArray) items = ff_items_load (store, NULL);
  g_autoptr (GPtrArray) crew = ff_job_crew_load (store, id, NULL);
  g_autoptr (GPtrArray) limits = ff_limits_load (store, NULL);
  g_autoptr (GPtrArray) flights = ff_flights_load (store, id, NULL);

  return place != NULL && shots != NULL && items != NULL && crew != NULL && limits != NULL
         && flights != NULL;
}

static gboolean
load_all (const char *folder, FfRecordsAccess access)
{
  g_autoptr (FfStore) store = ff_records_open (folder, access, NULL);
  g_autofree char *id = store != NULL ? ff_job_find (store, "skarrowick", NULL) : NULL;

  return id != NULL && load_parts (store, id);
}

/* The best of the rounds: the others share the machine. */
static double
best_ms (const char *folder, FfRecordsAccess access)
{
  double best = G_MAXDOUBLE;

  for (int i = 0; i < ROUNDS; i++)
    {
      gint64 start = g_get_monotonic_time ();

      if (!load_all (folder, access))
        exit (2);
      best = MIN (best, (double) (g_get_monotonic_time () - start) / 1000);
    }
  return best;
}

static gboolean
fill (const char *folder)
{
  g_autoptr (FfStore) store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);

  return store != NULL && ff_demo_fill (store, NULL);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("fieldfare-bench-XXXXXX", NULL);
  g_autofree char *file = g_build_filename (folder, "fieldfare.db", NULL);
  double reading, writing;

  if (!fill (folder))
    return 2;
  reading = best_ms (folder, FF_RECORDS_READ);
  writing = best_ms (folder, FF_RECORDS_WRITE);
  printf ("open and load the demo job, to read: %.2f ms (granted %.0f ms)\n", reading, GRANTED_MS);
  printf ("open and load the demo job, to write: %.2f ms (granted %.0f ms)\n", writing, GRANTED_MS);
  g_unlink (file);
  g_rmdir (folder);
  return 0;
}
