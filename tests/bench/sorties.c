/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a plan takes as the day grows: milliseconds, best of five. */
#include <glib.h>
#include <math.h>
#include <string.h>

#include "ff-scale.h"
#include "ff-sorties.h"

#define MINUTE 60
#define MOST_SHOTS 40

typedef struct {
  FfSortieProblem problem;
  FfCameraRange camera;
  FfSortieShot shots[MOST_SHOTS];
  FfSortieFilter filters[12];
  FfSortieBattery batteries[10];
  double *light;
} Day;

/* Shots of 5 to 8 minutes, each with a window of 20, one after the other into the dusk. */
static void
day_init (Day *day, guint n_shots, guint n_filters, guint n_batteries)
{
  int minutes = (int) n_shots * 16 + 40;

  memset (day, 0, sizeof *day);
  day->camera = (FfCameraRange) {
    .apertures = { { 2.8, pow (2, 1.5) } }, .n_apertures = 1,
    .iso_low = (guint) ff_scale_find (FF_SCALE_ISO, "100"),
    .iso_high = (guint) ff_scale_find (FF_SCALE_ISO, "6400"),
    .base_iso = { (guint) ff_scale_find (FF_SCALE_ISO, "100") }, .n_bases = 1,
    .shutter_fast = (guint) ff_scale_find (FF_SCALE_SHUTTER, "1/8000"),
    .shutter_slow = (guint) ff_scale_find (FF_SCALE_SHUTTER, "8"),
  };
  day->light = g_new (double, minutes + 1);
  for (int i = 0; i <= minutes; i++)
    day->light[i] = 14.6 - 6.0 * i * i / (double) (minutes * minutes);
  for (guint i = 0; i < n_shots; i++)
    day->shots[i] = (FfSortieShot) {
      .label = "S", .window_from = (10 + (int) i * 16) * MINUTE,
      .window_to = (30 + (int) i * 16) * MINUTE, .minutes = 5 + (int) (i % 4),
      .own_from_angle_deg = 45, .ev100 = day->light,
      .want = { .intent = i % 3 == 2 ? FF_INTENT_SLOW : FF_INTENT_VIDEO,
                .fps = i % 3 == 2 ? 100 : 25, .angle_deg = 180, .angle_from_deg = 144,
                .angle_to_deg = 216, .max_iso = 800 },
    };
  for (guint i = 0; i < n_filters; i++)
    day->filters[i] = (FfSortieFilter) { "F", 0.5 + 0.5 * i };
  for (guint i = 0; i < n_batteries; i++)
    day->batteries[i] = (FfSortieBattery) { "b", 18, 0 };
  day->problem = (FfSortieProblem) {
    .to = (gint64) minutes * MINUTE, .out_minutes = 2, .back_minutes = 2,
    .battery_change_minutes = 4, .filter_change_minutes = 2, .charger_slots = 1,
    .cool_minutes = 20, .charge_minutes = 60, .charger_attended = TRUE, .shots = day->shots,
    .n_shots = n_shots, .filters = day->filters, .n_filters = n_filters,
    .batteries = day->batteries, .n_batteries = n_batteries, .camera = &day->camera,
  };
}

static void
measure (guint n_shots, guint n_filters, guint n_batteries)
{
  double best = INFINITY;
  gboolean optimal = FALSE;
  guint missed = 0;
  Day day;

  day_init (&day, n_shots, n_filters, n_batteries);
  for (int i = 0; i < 5; i++)
    {
      gint64 before = g_get_monotonic_time ();
      g_autoptr (FfSortiePlan) plan = ff_sorties_plan (&day.problem);

      best = MIN (best, (double) (g_get_monotonic_time () - before) / 1000);
      optimal = plan->optimal;
      missed = plan->missed->len;
    }
  g_print ("%2u shots %2u filters %2u batteries  %8.2f ms  %s, %u not flown\n", n_shots, n_filters,
           n_batteries, best, optimal ? "proven" : "best found", missed);
  g_free (day.light);
}

int
main (void)
{
  measure (8, 7, 6);
  measure (8, 7, 3);
  measure (8, 7, 1);
  measure (12, 7, 6);
  measure (20, 12, 10);
  measure (20, 12, 5);
  measure (20, 12, 3);
  measure (40, 12, 10);
  return 0;
}
