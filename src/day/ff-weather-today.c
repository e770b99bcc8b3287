/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-weather-today.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-air.h"
#include "ff-day-air.h"
#include "ff-limit-facts.h"
#include "ff-limit-kind.h"
#include "ff-number.h"

#define FOG_SPREAD_C 2.0 /* fog seldom forms above it: FAA AC 00-6B, 16.1.1 */
#define ICING_C 3.0      /* own rule: with moisture that can be seen */

void
ff_weather_today_free (FfWeatherToday *today)
{
  if (today == NULL)
    return;
  ff_limits_today_free (today->limits);
  g_ptr_array_unref (today->order);
  g_ptr_array_unref (today->measured);
  g_ptr_array_unref (today->reports);
  g_ptr_array_unref (today->estimates);
  g_ptr_array_unref (today->calls);
  g_free (today->summary);
  g_free (today->standby);
  g_free (today);
}

/* ---- limits -------------------------------------------------------------------------------- */

const char *
ff_limit_answer_shape (FfLimitAnswer answer)
{
  static const char *const shapes[] = { [FF_LIMIT_NOT_APPLICABLE] = "–", [FF_LIMIT_WITHIN] = "■",
                                        [FF_LIMIT_NOT_ASSESSED] = "□", [FF_LIMIT_OUTSIDE] = "✕" };

  return shapes[answer];
}

static guint
count (const FfLimitsToday *today, FfLimitAnswer answer)
{
  guint n = 0, i;

  for (i = 0; i < today->rows->len; i++)
    n += ((const FfLimitToday *) g_ptr_array_index (today->rows, i))->answer == answer;
  return n;
}

char *
ff_limits_summary (const FfLimitsToday *today)
{
  const guint outside = count (today, FF_LIMIT_OUTSIDE);
  const guint open = count (today, FF_LIMIT_NOT_ASSESSED);
  g_autofree char *first
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u limit outside", "%u limits outside",
                                      outside),
                         outside);

  if (today->rows->len == 0)
    return g_strdup (_ ("No limit is entered: nothing is compared. The pilot decides."));
  if (outside + open == 0)
    return g_strdup (_ ("Nothing entered here is open. Airspace and notices are not known to this "
                        "program. The pilot decides."));
  if (open == 0)
    return g_strdup_printf (_ ("%s. The pilot decides."), first);
  /* Translators: limits that can't be answered, since nothing is known; "1 limit outside" is
   * before it. */
  return g_strdup_printf (_ ("%s, %u not assessed. The pilot decides."), first, open);
}

static GPtrArray *
order_of (const FfLimitsToday *today)
{
  static const FfLimitAnswer answers[] = { FF_LIMIT_OUTSIDE, FF_LIMIT_NOT_ASSESSED,
                                           FF_LIMIT_WITHIN, FF_LIMIT_NOT_APPLICABLE };
  GPtrArray *order = g_ptr_array_new ();
  guint a, i;

  for (a = 0; a < G_N_ELEMENTS (answers); a++)
    for (i = 0; i < today->rows->len; i++)
      if (((FfLimitToday *) g_ptr_array_index (today->rows, i))->answer == answers[a])
        g_ptr_array_add (order, g_ptr_array_index (today->rows, i));
  return order;
}

/* ---- what was entered ---------------------------------------------------------------------- */

static char *
value_words (const FfMeasurement *measured, const FfLimitKind *kind)
{
  g_autofree char *number = NULL;

  if (kind->dimension == FF_DIMENSION_NONE)
    return g_strdup (measured->value > 0 ? _ ("yes") : _ ("no"));
  if (kind->dimension == FF_DIMENSION_CLOCK)
    return ff_clock_format ((int) measured->value);
  number = ff_number_format (measured->value, 2);
  return g_strdup_printf ("%s%s%s", number, *measured->unit != '\0' ? " " : "", measured->unit);
}

static char *
measured_words (const FfMeasurement *measured, GTimeZone *zone)
{
  const FfLimitKind *kind = ff_limit_kind_find (measured->kind);
  g_autofree char *clock = ff_instant_clock ((double) measured->at, zone);
  g_autofree char *value = kind != NULL ? value_words (measured, kind) : g_strdup ("");
  GString *text = g_string_new (NULL);

  g_string_printf (text, "%s  %s %s", clock,
                   kind != NULL ? ff_limit_kind_text (kind) : measured->kind, value);
  if (!isnan (measured->height_m))
    /* Translators: height of the sensor above ground. */
    g_string_append_printf (text, _ (" at %.0f m"), measured->height_m);
  if (*measured->by != '\0')
    g_string_append_printf (text, " (%s)", measured->by);
  if (*measured->note != '\0')
    g_string_append_printf (text, ": %s", measured->note);
  return g_string_free (text, FALSE);
}

static char *
reported_words (const FfWeatherReport *record, GTimeZone *zone, gint64 now)
{
  g_autoptr (FfReport) report = ff_report_read (record->text, record->at, NULL);
  g_autofree char *title = report != NULL ? ff_report_title (report, zone) : NULL;
  GString *text;

  if (report == NULL)
    return g_strdup (record->text);
  text = g_string_new (title);
  if (isnan (record->distance_m))
    g_string_append (text, _ (", distance not given"));
  else
    /* Translators: how far the aerodrome is from the site. */
    g_string_append_printf (text, _ (", %.0f km away"), record->distance_m / 1000);
  if (isnan (record->elevation_m))
    g_string_append (text, _ (", its elevation not given: heights are not corrected"));
  if (report->kind != FF_REPORT_TAF && now > report->at)
    {
      g_autofree char *age = ff_age_words (now - report->at);

      g_string_append_printf (text, ", %s", age);
    }
  return g_string_free (text, FALSE);
}

static char *
call_words (const FfWeatherCall *call, GTimeZone *zone)
{
  g_autofree char *clock = ff_instant_clock ((double) call->at, zone);
  g_autofree char *until = call->until > 0 ? ff_instant_clock ((double) call->until, zone) : NULL;
  const char *decision = ff_name_text (&ff_names_call, (int) call->decision);

  if (until != NULL)
    /* Translators: a time, a decision ("stand by"), until when, by whom, and why. */
    return g_strdup_printf (_ ("%s  %s until %s (%s): %s"), clock, decision, until, call->by,
                            call->why);
  return g_strdup_printf ("%s  %s (%s): %s", clock, decision, call->by, call->why);
}

static int
minutes_between (gint64 from, gint64 to)
{
  return (int) ((to - from) / 60);
}

/* Calling stand by again, as with a later time, does not set the clock back. */
static gint64
standing_since (const GPtrArray *calls)
{
  gint64 since = 0;
  guint i;

  for (i = calls->len; i-- > 0;)
    {
      const FfWeatherCall *call = g_ptr_array_index (calls, i);

      if (call->decision != FF_CALL_STAND_BY)
        break;
      since = call->at;
    }
  return since;
}

char *
ff_weather_standby (const GPtrArray *calls, GTimeZone *zone, gint64 now)
{
  const FfWeatherCall *last = calls->len > 0 ? g_ptr_array_index (calls, calls->len - 1) : NULL;
  g_autofree char *clock = NULL;
  g_autofree char *until = NULL;
  gint64 since;
  int left;

  if (last == NULL || last->decision != FF_CALL_STAND_BY)
    return NULL;
  since = standing_since (calls);
  clock = ff_instant_clock ((double) since, zone);
  if (last->until == 0)
    return g_strdup_printf (_ ("Standing by since %s: %d min."), clock,
                            minutes_between (since, now));
  until = ff_instant_clock ((double) last->until, zone);
  left = minutes_between (now, last->until);
  if (now >= last->until)
    return g_strdup_printf (_ ("Standing by since %s: %d min. Until %s: over since %d min. Decide "
                               "anew."),
                            clock, minutes_between (since, now), until,
                            minutes_between (last->until, now));
  return g_strdup_printf (_ ("Standing by since %s: %d min. Until %s: %d min left."), clock,
                          minutes_between (since, now), until, left);
}

/* ---- estimates ----------------------------------------------------------------------------- */

static void
estimate_wind (GPtrArray *words, const FfDay *day, const FfDayAir *air)
{
  const double flying_m = ff_day_flying_height (day);
  const int force = ff_air_beaufort (air->wind_ms, FF_BEAUFORT_MS);
  double low, high, middle;

  if (isnan (air->wind_ms))
    return;
  /* Translators: the force of the Beaufort scale, and its name. */
  ff_report_words_add (words, _ ("Mean wind"),
                       g_strdup_printf (_ ("%.1f m/s: force %d, %s"), air->wind_ms, force,
                                        ff_air_beaufort_text (force)));
  if (isnan (air->wind_height_m) || air->wind_height_m < 2.0 || flying_m <= air->wind_height_m)
    return;
  middle = ff_air_wind_at_m (air->wind_ms, air->wind_height_m, flying_m, &low, &high);
  ff_report_words_add (words, _ ("Wind at flying height"),
                       g_strdup_printf (_ ("about %.1f m/s at %.0f m (%.1f over water to %.1f "
                                           "over hedges and houses)"),
                                        middle, flying_m, low, high));
}

static void
estimate_people (GPtrArray *words, const FfDayAir *air)
{
  const double chill_c = ff_air_wind_chill_c (air->temperature_c, air->wind_ms);

  if (!isnan (chill_c))
    ff_report_words_add (words, _ ("Wind chill, for people"),
                         g_strdup_printf (_ ("%.0f °C on bare skin"), chill_c));
}

static void
estimate_moisture (GPtrArray *words, const FfDayAir *air)
{
  const double spread_c = air->temperature_c - air->dew_point_c;

  if (!isnan (air->temperature_c) && air->temperature_c <= ICING_C)
    ff_report_words_add (words, _ ("Caution: icing"),
                         g_strdup (_ ("rotors can ice in fog, mist, rain, snow or cloud at this "
                                      "temperature (own rule: 3 °C and less)")));
  if (isnan (spread_c))
    return;
  ff_report_words_add (words, _ ("Dew point spread"),
                       g_strdup_printf (spread_c <= FOG_SPREAD_C
                                            ? _ ("%.0f °C: fog may form")
                                            : _ ("%.0f °C: fog seldom forms above 2 °C"),
                                        spread_c));
  if (spread_c > 0)
    ff_report_words_add (words, _ ("Cloud base"),
                         g_strdup_printf (_ ("about %.0f m above ground, of clouds that the day’s "
                                             "warmth builds; a reported ceiling comes first"),
                                          ff_air_cloud_base_m (air->temperature_c,
                                                               air->dew_point_c)));
}

static void
estimate_density (GPtrArray *words, const FfDay *day, const FfDayAir *air)
{
  const double density = ff_day_air_density (day, air);

  if (isnan (air->temperature_c))
    return;
  ff_report_words_add (
      words, _ ("Density altitude"),
      g_strdup_printf (isnan (air->qnh_hpa)
                           ? _ ("about %.0f m, at standard pressure: hover takes %+.0f %% power")
                           : _ ("about %.0f m: hover takes %+.0f %% power"),
                       ff_air_density_altitude_m (density),
                       (ff_air_hover_power_ratio (density) - 1) * 100));
}

/* What the plan makes of it; nothing where it changes no minute worth the name. */
static void
estimate_minutes (GPtrArray *words, const FfDay *day)
{
  const double counts = ff_day_air_counts (day);

  if (ff_day_air_cost (day) < 1.005)
    return;
  if (counts >= 1.005)
    ff_report_words_add (words, _ ("Minutes in the plan"),
                         g_strdup_printf (_ ("a battery’s typed minutes count %.0f %% less in this "
                                             "air; what was flown with it counts as flown"),
                                          (1 - 1 / counts) * 100));
  else
    ff_report_words_add (words, _ ("Caution: minutes in the plan"),
                         g_strdup (_ ("this air takes minutes, and the crew has set the plan not "
                                      "to count them")));
}

static void
estimate_runs (GPtrArray *words, const FfDayPlan *plan)
{
  guint i, t;

  for (i = 0; plan != NULL && i < plan->lines->len; i++)
    {
      const FfPlanLine *line = g_ptr_array_index (plan->lines, i);

      for (t = 0; t < line->takes->len; t++)
        {
          const FfPlanTake *take = g_ptr_array_index (line->takes, t);

          if (take->run != NULL)
            ff_report_words_add (words, _ ("Out and home"), g_strdup (take->run));
        }
    }
}

GPtrArray *
ff_weather_conditions (const FfDay *day)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GHashTable) said = g_hash_table_new (g_str_hash, g_str_equal);
  const FfJob *job = day->job;
  guint i;

  for (i = day->measurements->len; i-- > 0;)
    {
      FfMeasurement *measured = g_ptr_array_index (day->measurements, i);

      if (g_hash_table_add (said, measured->kind))
        g_ptr_array_add (lines, measured_words (measured, day->zone));
    }
  for (i = 0; i < 2; i++)
    {
      const FfWeatherReport *record;
      g_autoptr (FfReport) report = ff_day_latest_report (day, i == 1, &record);

      if (report != NULL)
        g_ptr_array_add (lines, g_strstrip (g_strdup (record->text)));
    }
  if (!isnan (job->wind_ms))
    g_ptr_array_add (lines, g_strdup_printf (_ ("forecast typed with the job: wind %.1f m/s"),
                                             job->wind_ms));
  if (!isnan (job->temperature_c))
    g_ptr_array_add (lines, g_strdup_printf (_ ("forecast typed with the job: %.0f °C"),
                                             job->temperature_c));
  return lines;
}

static GPtrArray *
estimates_of (const FfDay *day, const FfDayPlan *plan)
{
  GPtrArray *words = ff_report_words_new ();
  FfDayAir air;

  ff_day_air (day, &air);
  estimate_wind (words, day, &air);
  estimate_runs (words, plan);
  estimate_moisture (words, &air);
  estimate_density (words, day, &air);
  estimate_minutes (words, day);
  estimate_people (words, &air);
  return words;
}

/* ---- all of it ----------------------------------------------------------------------------- */

FfWeatherToday *
ff_weather_today (const FfDay *day, const FfDayPlan *plan, const GPtrArray *calls, gint64 now)
{
  FfWeatherToday *today = g_new0 (FfWeatherToday, 1);
  guint i;

  now = ff_limits_clock (day, now);
  today->limits = ff_limits_today (day, plan, now);
  today->order = order_of (today->limits);
  today->summary = ff_limits_summary (today->limits);
  today->measured = g_ptr_array_new_with_free_func (g_free);
  today->reports = g_ptr_array_new_with_free_func (g_free);
  today->calls = g_ptr_array_new_with_free_func (g_free);
  for (i = day->measurements->len; i-- > 0;)
    g_ptr_array_add (today->measured,
                     measured_words (g_ptr_array_index (day->measurements, i), day->zone));
  for (i = day->reports->len; i-- > 0;)
    g_ptr_array_add (today->reports,
                     reported_words (g_ptr_array_index (day->reports, i), day->zone, now));
  for (i = calls->len; i-- > 0;)
    g_ptr_array_add (today->calls, call_words (g_ptr_array_index (calls, i), day->zone));
  today->estimates = estimates_of (day, plan);
  today->standby = ff_weather_standby (calls, day->zone, now);
  return today;
}
