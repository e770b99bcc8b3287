/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The light of the demo day: the facts of its chart at one-minute steps and the chart drawn from
 * them, the day studied for the light page, and one move of the ruler with another piece paying. */
#include <glib.h>
#include <glib/gstdio.h>
#include <stdio.h>

#include "ff-chart-facts.h"
#include "ff-day-chart.h"
#include "ff-day-private.h"
#include "ff-demo.h"
#include "ff-job.h"
#include "ff-light-study.h"
#include "ff-records.h"

static FfDay *day;
static GPtrArray *shots;
static FfLightStudy *study;

/* Kept, so that the work can't be left out. */
static volatile double kept;

static void
facts (int n)
{
  for (int i = 0; i < n; i++)
    {
      g_autoptr (FfChartFacts) made = ff_chart_facts (day, 60, 0);

      kept = made->ev100[made->n_samples - 1];
    }
}

static void
whole_days (int n)
{
  gint64 from, to;

  ff_day_bounds (day->date, day->zone, &from, &to);
  for (int i = 0; i < n; i++)
    {
      g_autofree double *light
          = ff_day_light (day, g_ptr_array_index (shots, 3), FF_SKY_CLEAR, from, to);

      kept = light[720];
    }
}

static void
chart (int n)
{
  g_autoptr (FfDayPlan) plan = ff_day_plan (day, NULL, NULL);
  const FfChartFrame frame = { &ff_palette_light, NULL, 1.2, 1200, 420 };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1200, 420);
  cairo_t *cr = cairo_create (surface);

  for (int i = 0; i < n; i++)
    {
      g_autoptr (FfChartFacts) made = ff_chart_facts (day, 60, 0);
      g_autoptr (FfDayChart) drawn = ff_day_chart_new (made, plan, &frame);

      ff_day_chart_draw (drawn, cr, 0);
      cairo_surface_flush (surface);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
studies (int n)
{
  for (int i = 0; i < n; i++)
    {
      const FfLightStudyQuery query
          = { .day = day, .shot = g_ptr_array_index (shots, (guint) i % shots->len) };
      g_autoptr (FfLightStudy) made = ff_light_study_new (&query, NULL);

      kept = made->n_samples;
    }
}

static void
moves (int n)
{
  FfAdviseQuery query = ff_light_study_advise (study, 13.9);
  FfRulerChange pay;
  FfRuler ruler;

  ff_ruler_init (&ruler, &query);
  ff_ruler_fix (&ruler, &query, FF_PIECE_ISO, &pay);
  for (int i = 0; i < n; i++)
    {
      query.ev100 = 13.9 - 6.0 * i / n;
      ff_ruler_follow (&ruler, &query, &pay);
      kept = ff_ruler_gap (&ruler, &query);
    }
}

/* Milliseconds for one, the best of five. */
static void
measure (const char *what, void (*work) (int n), int n, double granted)
{
  double best = G_MAXDOUBLE;

  for (int i = 0; i < 5; i++)
    {
      const gint64 start = g_get_monotonic_time ();

      work (n);
      best = MIN (best, (double) (g_get_monotonic_time () - start) / n / 1000);
    }
  printf ("%-36s %8.3f ms  (granted %g ms)\n", what, best, granted);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("fieldfare-bench-XXXXXX", NULL);
  g_autofree char *file = g_build_filename (folder, "fieldfare.db", NULL);
  FfStore *store = ff_records_open (folder, FF_RECORDS_WRITE, NULL);
  g_autofree char *job_id = NULL;
  FfLightStudyQuery query = { 0 };

  if (store == NULL || !ff_demo_fill (store, NULL))
    return 1;
  job_id = ff_job_find (store, "Skarrowick", NULL);
  day = ff_day_load (store, job_id, NULL);
  shots = ff_shots_load (store, job_id, NULL);
  query = (FfLightStudyQuery) { .day = day, .shot = g_ptr_array_index (shots, 3) };
  study = ff_light_study_new (&query, NULL);
  measure ("day chart, facts by the minute", facts, 20, 20);
  measure ("light of 24 hours by the minute", whole_days, 20, 20);
  /* Layout and drawing are granted 30 and 8 ms of their own (chart.c). */
  measure ("day chart, facts, layout and drawing", chart, 20, 20 + 30 + 8);
  measure ("light page, a day studied", studies, 16, 50);
  measure ("light page, a piece pays", moves, 2000, 1);
  ff_light_study_free (study);
  g_ptr_array_unref (shots);
  ff_day_free (day);
  ff_records_close (store);
  g_unlink (file);
  g_rmdir (folder);
  return 0;
}
