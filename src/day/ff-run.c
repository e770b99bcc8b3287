/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The wind against each shot's track: which run goes out downwind, and when to turn back. */
#include "ff-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-air.h"
#include "ff-wind-run.h"

#define DEGREE_SIGN "\302\260"
#define BEARING_DIGITS 3      /* "060°": an angle of turn is written without the nought */
#define DOWNWIND_MS 0.5       /* less from behind is no downwind run */
#define SENSOR_HEIGHT_M 10.0  /* a wind without a height is the forecast's */

double
ff_run_track_deg (const char *track)
{
  const char *sign = track;

  while (track != NULL && (sign = strstr (sign, DEGREE_SIGN)) != NULL)
    {
      const char *digit = sign;
      int value = 0, digits = 0;

      while (digit > track && g_ascii_isdigit (digit[-1]))
        digit--;
      for (; digit < sign && digits <= BEARING_DIGITS; digit++, digits++)
        value = value * 10 + g_ascii_digit_value (*digit);
      if (digits == BEARING_DIGITS && value <= 360)
        return value;
      sign += strlen (DEGREE_SIGN);
    }
  return NAN;
}

/* The mean wind at the height of the shot: for time the mean counts, for limits the gust. */
static double
wind_at (const FfJob *job, const FfShot *shot)
{
  double measured_at = job->wind_height_m > 0 ? job->wind_height_m : SENSOR_HEIGHT_M;
  double low, high;

  if (!(shot->height_to_m > 0))
    return job->wind_ms;
  return ff_air_wind_at_m (job->wind_ms, measured_at, shot->height_to_m, &low, &high);
}

/* An aircraft that holds its place against its wind limit makes at least that through the air: the
 * slowest that it could come home. NAN: its limit is not entered. */
static double
home_ms (const FfDayProblem *problem, const FfPlanTake *take, double wind_ms)
{
  const FfItem *aircraft = ff_day_aircraft (problem->day);
  double correction, ground;

  if (aircraft == NULL || !(aircraft->wind_limit_ms > 0))
    return NAN;
  return ff_wind_triangle (aircraft->wind_limit_ms, take->track_deg + 180,
                           problem->day->job->wind_from_deg, wind_ms, &correction, &ground)
             ? ground
             : 0;
}

/* "D runs out downwind along 060°: 5.0 m/s out, 5.1 m/s home. Turn back by 17:46." */
static char *
words_of (const FfDayProblem *problem, const FfPlanTake *take, double out, double home)
{
  g_autofree char *clock = ff_instant_clock ((double) take->turn_back_by, problem->day->zone);

  if (isnan (home))
    /* Translators: shot label, bearing, speed of the wind. */
    return g_strdup_printf (_ ("%s runs out downwind along %03.0f°, wind %.0f m/s: the aircraft's "
                               "wind limit is not entered, so nobody knows when to turn back."),
                            take->shot, take->track_deg, take->wind_ms);
  if (home <= 0)
    /* Translators: shot label, bearing, speed of the wind at its height. */
    return g_strdup_printf (_ ("%s runs out downwind along %03.0f° with no way home against "
                               "%.0f m/s: fly it towards home."),
                            take->shot, take->track_deg, take->wind_ms);
  /* Translators: shot label, bearing, two speeds over ground, clock time. */
  return g_strdup_printf (_ ("%s runs out downwind along %03.0f°: %.0f m/s out, about %.0f m/s "
                             "home. Turn back by %s."),
                          take->shot, take->track_deg, out, home, clock);
}

void
ff_run_read (const FfDayProblem *problem,
             const FfShot *shot,
             gint64 land_by,
             FfPlanTake *take)
{
  const FfJob *job = problem->day->job;
  double back = problem->problem.back_minutes * FF_MINUTE;
  double endurance = (double) (land_by - take->from) - back;
  double home, time = 0, distance;

  take->track_deg = ff_run_track_deg (shot->track);
  if (isnan (take->track_deg) || !(shot->speed_ms > 0) || !isfinite (job->wind_ms)
      || !isfinite (job->wind_from_deg))
    return;
  take->wind_ms = wind_at (job, shot);
  take->tail_ms = ff_wind_along_ms (take->track_deg, job->wind_from_deg, take->wind_ms);
  if (take->tail_ms < DOWNWIND_MS)
    return;
  home = home_ms (problem, take, take->wind_ms);
  if (home > 0)
    {
      ff_wind_no_return (endurance, shot->speed_ms, home, &time, &distance);
      take->turn_back_by = take->from + (gint64) floor (time / FF_MINUTE) * FF_MINUTE;
      take->turn_back_by = MIN (take->turn_back_by, take->to);
    }
  g_free (take->run);
  take->run = words_of (problem, take, shot->speed_ms, home);
}
