/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A keystroke in a shot: how long the main loop is held by storing and telling it, and how long it
 * takes until the new plan has been drawn. Granted: 50 ms and 100 ms. */
#include "ff-stage.h"

#include <stdio.h>
#include <stdlib.h>

#define ROUNDS 30
#define HOLD_MS 50.0
#define PLAN_MS 100.0

typedef struct {
  gboolean planned;
  gint64 painted; /* the first frame after the plan came; 0: not yet */
} Waiting;

static void
on_planned (FfKeeper *keeper, Waiting *waiting)
{
  waiting->planned = TRUE;
}

static void
on_painted (GdkFrameClock *clock, Waiting *waiting)
{
  if (waiting->planned && waiting->painted == 0)
    waiting->painted = g_get_monotonic_time ();
}

static gboolean
is_painted (gpointer data)
{
  return ((Waiting *) data)->painted != 0;
}

static int
compare (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

/* Milliseconds of the save alone, and until the plan was painted. */
static void
edit_once (FfStage *stage, Waiting *waiting, int round, double *ret_hold, double *ret_plan)
{
  const FfShot *first = g_ptr_array_index (ff_keeper_shots (stage->keeper), 0);
  g_autoptr (FfShot) shot = ff_keeper_dup_shot (stage->keeper, first->id);
  gint64 start;

  *waiting = (Waiting) { 0 };
  shot->height_from_m = shot->height_to_m = 30 + round;
  start = g_get_monotonic_time ();
  ff_keeper_save_shot (stage->keeper, shot, "Height changed", NULL);
  *ret_hold = (double) (g_get_monotonic_time () - start) / 1000;
  ff_stage_wait (is_painted, waiting);
  *ret_plan = (double) (waiting->painted - start) / 1000;
}

int
main (void)
{
  double hold[ROUNDS], plan[ROUNDS];
  Waiting waiting = { 0 };
  FfStage *stage;

  if (!ff_stage_start ())
    return 77;
  stage = ff_stage_new (TRUE, 1200, 800);
  ff_stage_open_demo_job (stage);
  ff_window_show_page (stage->window,
                       ff_pages_find ("sorties") != NULL ? "sorties" : "jobs");
  ff_stage_settle ();
  g_signal_connect (stage->keeper, "plan-changed", G_CALLBACK (on_planned), &waiting);
  g_signal_connect (gtk_widget_get_frame_clock (GTK_WIDGET (stage->window)), "after-paint",
                    G_CALLBACK (on_painted), &waiting);
  for (int i = 0; i < ROUNDS; i++)
    edit_once (stage, &waiting, i, &hold[i], &plan[i]);
  qsort (hold, ROUNDS, sizeof *hold, compare);
  qsort (plan, ROUNDS, sizeof *plan, compare);
  printf ("keystroke stored and told: median %.1f ms, longest %.1f ms (granted %.0f)\n",
          hold[ROUNDS / 2], hold[ROUNDS - 1], HOLD_MS);
  printf ("keystroke to new plan on the screen: median %.1f ms, longest %.1f ms (granted %.0f)\n",
          plan[ROUNDS / 2], plan[ROUNDS - 1], PLAN_MS);
  return 0;
}
