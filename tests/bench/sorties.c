/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a plan takes as the day grows: milliseconds, the best of a few runs, and memory. */
#include <glib.h>
#include <math.h>
#include <string.h>
#include <sys/resource.h>

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

/* The same shots, their windows an hour longer: every one overlaps the next three or four. */
static void
widen (Day *day, int minutes)
{
  for (guint i = 0; i < day->problem.n_shots; i++)
    day->shots[i].window_to = MIN (day->shots[i].window_to + minutes * MINUTE, day->problem.to);
}

static double
time_of (const FfSortieProblem *problem, int times, FfSortiePlan **ret_plan)
{
  double best = INFINITY;

  for (int i = 0; i < times; i++)
    {
      gint64 before = g_get_monotonic_time ();

      g_clear_pointer (ret_plan, ff_sortie_plan_free);
      *ret_plan = ff_sorties_plan (problem);
      best = MIN (best, (double) (g_get_monotonic_time () - before) / 1000);
    }
  return best;
}

static void
print_line (const char *what, const FfSortieProblem *problem, int times, const char *granted)
{
  g_autoptr (FfSortiePlan) plan = NULL;
  double ms = time_of (problem, times, &plan);

  g_print ("%-22s %3u shots %2u filters %2u batteries %4d min  %9.2f ms  %-10s", what,
           problem->n_shots, problem->n_filters, problem->n_batteries,
           (int) ((problem->to - problem->from) / MINUTE), ms,
           plan->optimal ? "proven" : "best found");
  if (!plan->optimal)
    g_print (" cost %.1f, bound %.1f,", plan->cost, plan->bound);
  g_print (" %u not flown%s\n", plan->missed->len, granted);
}

static void
measure (guint n_shots, guint n_filters, guint n_batteries, int wider, const char *granted)
{
  Day day;

  day_init (&day, n_shots, n_filters, n_batteries);
  widen (&day, wider);
  print_line (wider > 0 ? "overlapping windows" : "", &day.problem, n_shots > 20 ? 1 : 5, granted);
  g_free (day.light);
}

/* Shots that may be flown in any order, all windows the afternoon long or as they are. */
static void
measure_free (guint n_shots, guint n_free, gboolean all_day, const char *granted)
{
  Day day;

  day_init (&day, n_shots, 7, 6);
  for (guint i = 0; i < n_shots; i++)
    {
      day.shots[i].free_order = i < n_free;
      if (all_day)
        day.shots[i].window_from = day.shots[0].window_from;
      if (all_day)
        day.shots[i].window_to = day.problem.to;
    }
  print_line (all_day ? "free order, all day" : "free order", &day.problem, 1, granted);
  g_free (day.light);
}

/* Two legs on a battery allowed. */
static void
measure_relaunch (guint n_shots, guint n_filters, guint n_batteries)
{
  Day day;

  day_init (&day, n_shots, n_filters, n_batteries);
  for (guint i = 0; i < n_batteries; i++)
    day.batteries[i].legs_at_most = 2;
  day.problem.relaunch_minutes = 1;
  day.problem.filter_landing_minutes = 3;
  print_line ("two legs a battery", &day.problem, 1, "");
  g_free (day.light);
}

/* A longer day with the same shots, spread out. */
static void
measure_longer (int times)
{
  Day day;

  day_init (&day, 12, 7, 6);
  g_free (day.light);
  day.problem.to *= times;
  day.light = g_new0 (double, day.problem.to / MINUTE + 1);
  for (int i = 0; i <= day.problem.to / MINUTE; i++)
    day.light[i] = 14.6 - 6.0 * i * i / pow ((double) day.problem.to / MINUTE, 2);
  for (guint i = 0; i < day.problem.n_shots; i++)
    {
      day.shots[i].ev100 = day.light;
      day.shots[i].window_to += (day.shots[i].window_from) * (times - 1);
      day.shots[i].window_from *= times;
    }
  print_line ("longer day", &day.problem, 3, "");
  g_free (day.light);
}

static void
print_memory (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  g_print ("memory at most %ld MB (granted: 100)\n", usage.ru_maxrss / 1024);
}

int
main (void)
{
  measure (8, 7, 6, 0, " (granted: 10 ms)");
  measure (20, 12, 10, 0, " (granted: 250 ms)");
  measure_free (8, 8, FALSE, " (granted: 2000 ms)");
  measure_free (8, 8, TRUE, " (granted: 2000 ms)");
  g_print ("\nby shots\n");
  for (guint n_shots = 5; n_shots <= 40; n_shots *= 2)
    measure (n_shots, 7, 6, 0, "");
  g_print ("\nby filters\n");
  for (guint n_filters = 3; n_filters <= 12; n_filters += 3)
    measure (12, n_filters, 6, 0, "");
  g_print ("\nby batteries\n");
  for (guint n_batteries = 1; n_batteries <= 10; n_batteries += n_batteries < 4 ? 1 : 3)
    measure (20, 12, n_batteries, 0, "");
  g_print ("\nby minutes\n");
  for (int times = 1; times <= 4; times++)
    measure_longer (times);
  g_print ("\nby overlap\n");
  measure (12, 7, 6, 60, "");
  measure (20, 12, 10, 60, "");
  measure (40, 12, 10, 0, "");
  measure (40, 12, 10, 60, "");
  measure (40, 12, 10, 180, "");
  g_print ("\nby freedom\n");
  measure_free (12, 4, FALSE, "");
  measure_free (12, 8, FALSE, "");
  measure_free (12, 12, FALSE, "");
  measure_relaunch (8, 7, 6);
  measure_relaunch (20, 12, 5);
  print_memory ();
  return 0;
}
