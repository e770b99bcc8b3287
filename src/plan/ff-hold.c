/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-hold.h"

#include <math.h>

/* Adds sample i to the last run, or opens one. */
static void
add (GArray *runs, guint i)
{
  FfHold *last = runs->len > 0 ? &g_array_index (runs, FfHold, runs->len - 1) : NULL;
  const FfHold run = { i, i };

  if (last != NULL && last->to + 1 == i)
    last->to = i;
  else
    g_array_append_val (runs, run);
}

GArray *
ff_hold_within (const double *ev100, guint n, double low, double high)
{
  GArray *runs = g_array_new (FALSE, FALSE, sizeof (FfHold));

  for (guint i = 0; i < n; i++)
    if (ev100[i] >= low && ev100[i] <= high)
      add (runs, i);
  return runs;
}

GArray *
ff_hold_runs (const int *best, guint n, int filter)
{
  GArray *runs = g_array_new (FALSE, FALSE, sizeof (FfHold));

  for (guint i = 0; i < n; i++)
    if (best[i] == filter)
      add (runs, i);
  return runs;
}

double
ff_hold_until (const double *ev100, guint n, guint at, double low, double high)
{
  for (guint i = at + 1; i < n; i++)
    if (!(ev100[i] >= low && ev100[i] <= high))
      {
        double edge = ev100[i] > high ? high : low;
        double share = (edge - ev100[i - 1]) / (ev100[i] - ev100[i - 1]);

        return (double) (i - 1) + CLAMP (share, 0, 1);
      }
  return NAN;
}

int *
ff_hold_best (const FfAdviseQuery *query, const double *ev100, guint n)
{
  FfAdviseQuery moment = *query;
  int *best = g_new (int, n);

  moment.max_stack = 1;
  for (guint i = 0; i < n; i++)
    {
      FfReach reach;
      g_autoptr (GArray) choices = NULL;
      const FfChoice *choice;

      moment.ev100 = ev100[i];
      choices = ff_advise (&moment, 1, &reach);
      choice = &g_array_index (choices, FfChoice, 0);
      if (!reach.ok)
        best[i] = FF_HOLD_NOTHING;
      else
        best[i] = choice->n_filters > 0 ? (int) choice->filters[0] : -1;
    }
  return best;
}
