/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Advise: asked at every keystroke in the window, and by the planner for each take. */
#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "ff-advise.h"
#include "ff-scale.h"

#define N_APERTURES 9
#define MAX_FILTERS 8

static FfCameraRange camera;
static FfAdviseFilter filters[MAX_FILTERS];
static const FfWant want = { .intent = FF_INTENT_VIDEO, .fps = 25, .angle_deg = 180,
                             .angle_from_deg = 144, .angle_to_deg = 216 };
static const FfWant still = { .intent = FF_INTENT_STILL };

/* Kept, so that the work can't be left out. */
static volatile double kept;

static void
set_up (guint n_apertures, guint n_isos)
{
  camera = (FfCameraRange) { .n_apertures = n_apertures, .n_bases = 1, .pitch_um = 3 };
  for (guint i = 0; i < n_apertures; i++)
    camera.apertures[i] = (FfAperture) { ff_scale_written (FF_SCALE_APERTURE, 9 + 2 * i),
                                         ff_scale_exact (FF_SCALE_APERTURE, 9 + 2 * i) };
  camera.iso_low = camera.base_iso[0] = (guint) ff_scale_find (FF_SCALE_ISO, "100");
  camera.iso_high = camera.iso_low + n_isos - 1;
  camera.shutter_fast = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/8000");
  camera.shutter_slow = (guint) ff_scale_find (FF_SCALE_SHUTTER, "8");
  for (guint i = 0; i < MAX_FILTERS; i++)
    filters[i] = (FfAdviseFilter) { "filter", i + 1, i + 1 };
}

/* Lights from dusk to noon in turn, so that no one light flatters the figure. */
static void
ask (int n, const FfWant *wanted, guint n_filters, guint max_stack)
{
  for (int i = 0; i < n; i++)
    {
      FfAdviseQuery query = { .ev100 = 4 + 12.0 * i / n, .camera = &camera, .want = wanted,
                              .filters = filters, .n_filters = n_filters, .max_stack = max_stack };
      FfReach reach;
      g_autoptr (GArray) choices = ff_advise (&query, 5, &reach);

      kept = g_array_index (choices, FfChoice, 0).cost;
    }
}

static void
one_filter (int n)
{
  set_up (N_APERTURES, 20);
  ask (n, &want, MAX_FILTERS, 1);
}

static void
one_filter_still (int n)
{
  set_up (N_APERTURES, 20);
  ask (n, &still, MAX_FILTERS, 1);
}

/* Seven filters, up to three at once: 64 ways. */
static void
stacks (int n)
{
  set_up (N_APERTURES, 25);
  ask (n, &want, 7, 3);
}

static void
settings (int n)
{
  set_up (1, 19);
  for (int i = 0; i < n; i++)
    {
      FfAdviseQuery query = { .ev100 = 4 + 12.0 * i / n, .camera = &camera, .want = &want };
      FfChoice choice;

      ff_advise_settings (&query, 4, &choice);
      kept = choice.cost;
    }
}

/* Microseconds for one, the best of five. */
static void
measure (const char *what, void (*work) (int n), int n, double granted)
{
  double best = G_MAXDOUBLE;

  for (int i = 0; i < 5; i++)
    {
      const gint64 start = g_get_monotonic_time ();

      work (n);
      best = MIN (best, (double) (g_get_monotonic_time () - start) / n);
    }
  printf ("%-32s %9.2f us  (granted %g us)\n", what, best, granted);
}

int
main (void)
{
  measure ("9 x 20 x 8 filters, video", one_filter, 500, 1000);
  measure ("9 x 20 x 8 filters, still", one_filter_still, 500, 1000);
  measure ("9 x 25 x 64 stacks, video", stacks, 500, 2000);
  measure ("settings behind one filter", settings, 20000, 20);
  return 0;
}
