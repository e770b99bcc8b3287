/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A keystroke in a shot of the demo day: until it is stored, until the new plan is worked out, until
 * the page of sorties with its chart is painted; and how long the main loop was held meanwhile. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "ff-stage.h"

#define ROUNDS 20
#define STORED_MS 20.0
#define WHOLE_MS 100.0
#define HELD_MS 50.0
#define SLACK 5 /* a busy machine is no fault of ours */

typedef struct {
  gint64 planned, painted; /* 0: not yet */
} Watch;

static void
on_planned (FfKeeper *keeper, Watch *watch)
{
  watch->planned = g_get_monotonic_time ();
}

static void
on_painted (GdkFrameClock *clock, Watch *watch)
{
  if (watch->planned != 0 && watch->painted == 0)
    watch->painted = g_get_monotonic_time ();
}

static int
compare (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

static int
report (const char *what, double *ms, double granted)
{
  double median;

  qsort (ms, ROUNDS, sizeof *ms, compare);
  median = ms[ROUNDS / 2];
  printf ("%-34s median %6.1f, worst %6.1f ms", what, median, ms[ROUNDS - 1]);
  if (granted > 0)
    printf (" (granted %.0f)", granted);
  printf ("\n");
  return granted > 0 && median > SLACK * granted;
}

/* One keystroke: the minutes of a shot, one more or less. */
static void
type (FfStage *stage, int round)
{
  const FfShot *first = g_ptr_array_index (ff_keeper_shots (stage->keeper), 3);
  g_autoptr (FfShot) shot = ff_keeper_dup_shot (stage->keeper, first->id);
  g_autoptr (GError) error = NULL;

  shot->minutes = round % 2 == 0 ? 5 : 6;
  if (!ff_keeper_save_shot (stage->keeper, shot, "Minutes of shot D changed", &error))
    g_error ("%s", error->message);
}

static double
ms_since (gint64 begun)
{
  return (double) (g_get_monotonic_time () - begun) / 1000;
}

/* What this thread itself has worked, whatever else the machine does. */
static double
worked_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1000 + (double) now.tv_nsec / 1e6;
}

static double
run_until_painted (const Watch *watch)
{
  double held = 0;

  while (watch->painted == 0)
    {
      gint64 begun = g_get_monotonic_time ();

      if (g_main_context_iteration (NULL, FALSE))
        held = MAX (held, ms_since (begun));
      else
        g_usleep (200);
    }
  return held;
}

static int
measure (FfStage *stage)
{
  double stored[ROUNDS], planned[ROUNDS], painted[ROUNDS], whole[ROUNDS], held[ROUNDS];
  double worked[ROUNDS];
  Watch watch = { 0 };
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (stage->window));
  int slow = 0;

  g_signal_connect (stage->keeper, "plan-changed", G_CALLBACK (on_planned), &watch);
  g_signal_connect (clock, "after-paint", G_CALLBACK (on_painted), &watch);
  for (int i = 0; i < ROUNDS; i++)
    {
      gint64 begun = g_get_monotonic_time ();
      double before = worked_ms ();

      watch = (Watch) { 0 };
      type (stage, i);
      stored[i] = ms_since (begun);
      held[i] = run_until_painted (&watch);
      worked[i] = worked_ms () - before;
      planned[i] = (double) (watch.planned - begun) / 1000 - stored[i];
      painted[i] = (double) (watch.painted - watch.planned) / 1000;
      whole[i] = (double) (watch.painted - begun) / 1000;
      ff_stage_settle ();
    }
  g_signal_handlers_disconnect_by_data (stage->keeper, &watch);
  g_signal_handlers_disconnect_by_data (clock, &watch);
  slow += report ("keystroke stored", stored, STORED_MS);
  slow += report ("then planned in the worker", planned, 0);
  slow += report ("then the page and chart painted", painted, 0);
  slow += report ("keystroke to plan on screen", whole, WHOLE_MS);
  slow += report ("work of the main thread in it", worked, 0);
  slow += report ("longest hold of the main loop", held, HELD_MS);
  return slow;
}

int
main (void)
{
  FfStage *stage;
  int slow;

  if (!ff_stage_start ())
    return 77;
  stage = ff_stage_new (TRUE, 1200, 800);
  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window, "sorties");
  ff_stage_settle ();
  slow = measure (stage);
  ff_stage_free (stage);
  return slow > 0 ? EXIT_FAILURE : EXIT_SUCCESS;
}
