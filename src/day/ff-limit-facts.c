/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-limit-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-air.h"
#include "ff-events.h"
#include "ff-limit-kind.h"
#include "ff-weather.h"

#define MAST 10.0 /* m: the height of a station's wind vane; below it nothing is carried upwards */

static void
fact_clear (gpointer data)
{
  FfDayFact *fact = data;

  g_free (fact->whence);
  g_free (fact->reason);
}

static GArray *
facts_new (void)
{
  GArray *facts = g_array_new (FALSE, TRUE, sizeof (FfDayFact));

  g_array_set_clear_func (facts, fact_clear);
  return facts;
}

const FfDayFact *
ff_day_fact_find (GArray *facts, const char *kind)
{
  guint i;

  for (i = 0; i < facts->len; i++)
    if (strcmp (g_array_index (facts, FfDayFact, i).fact.kind, kind) == 0)
      return &g_array_index (facts, FfDayFact, i);
  return NULL;
}

/* Does nothing where the kind is known already: what is put in first stands. Takes `whence`. */
static void
put (GArray *facts, FfLimitFact fact, char *whence)
{
  FfDayFact made = { .fact = fact, .whence = whence };

  if (ff_day_fact_find (facts, fact.kind) == NULL)
    g_array_append_val (facts, made);
  else
    g_free (whence);
}

static void
put_span (GArray *facts, const char *kind, double low, double high, char *whence)
{
  put (facts, (FfLimitFact){ .kind = kind, .is = FF_FACT_VALUE, .low = low, .high = high }, whence);
}

static void
put_flag (GArray *facts, const char *kind, gboolean yes, char *whence)
{
  put (facts,
       (FfLimitFact){ .kind = kind, .is = FF_FACT_FLAG, .low = yes ? 1 : 0, .high = yes ? 1 : 0 },
       whence);
}

static void
put_not_applicable (GArray *facts, const char *kind, const char *reason)
{
  FfDayFact made = { .fact = { .kind = kind, .is = FF_FACT_NOT_APPLICABLE },
                     .reason = g_strdup (reason) };

  if (ff_day_fact_find (facts, kind) == NULL)
    g_array_append_val (facts, made);
}

char *
ff_age_words (gint64 seconds)
{
  const gint64 minutes = seconds / 60, hours = minutes / 60;

  if (minutes < 120)
    return g_strdup_printf (_ ("%d min old"), (int) minutes);
  if (hours < 48)
    return g_strdup_printf (_ ("%d h old"), (int) hours);
  return g_strdup_printf (_ ("%d days old"), (int) (hours / 24));
}

double
ff_day_flying_height (const FfDay *day)
{
  double highest = 0.0;
  guint i;

  for (i = 0; i < day->shots->len; i++)
    {
      const FfShot *shot = g_ptr_array_index (day->shots, i);

      highest = MAX (highest, MAX (shot->height_from_m, shot->height_to_m));
    }
  return highest;
}

/* ---- wind from a sensor to flying height --------------------------------------------------- */

/* Where the sensor is at least as high as a station's mast, the wind is carried up with the spread
 * of what the ground may be. A hand-held one only says that it blows no less up there. */
static void
put_wind (GArray *facts, FfLimitFact at_sensor, double sensor_m, double flying_m, char *whence)
{
  double low, high;

  if (isnan (sensor_m) || flying_m <= sensor_m)
    {
      put (facts, at_sensor, whence);
      return;
    }
  if (sensor_m < MAST)
    at_sensor.high = INFINITY;
  else
    {
      ff_air_wind_at_m (at_sensor.low, sensor_m, flying_m, &low, NULL);
      ff_air_wind_at_m (at_sensor.high, sensor_m, flying_m, NULL, &high);
      at_sensor.low = low;
      at_sensor.high = high;
    }
  put (facts, at_sensor, whence);
}

/* ---- what was measured --------------------------------------------------------------------- */

/* Only where it is old enough to be asked for. */
static void
append_age (GString *whence, gint64 at, gint64 now)
{
  g_autofree char *age = now - at > 3600 ? ff_age_words (now - at) : NULL;

  if (age != NULL)
    g_string_append_printf (whence, ", %s", age);
}

static void
put_measured (GArray *facts, const FfDay *day, const FfMeasurement *measured, gint64 now)
{
  const FfLimitKind *kind = ff_limit_kind_find (measured->kind);
  const FfUnit *unit = kind != NULL ? ff_unit_find (kind->dimension, measured->unit) : NULL;
  g_autofree char *clock = ff_instant_clock ((double) measured->at, day->zone);
  GString *whence;
  FfLimitFact fact;

  if (unit == NULL || isnan (measured->value))
    return;
  whence = g_string_new (NULL);
  /* TRANSLATORS: a time of day, as in "measured 16:40". */
  g_string_printf (whence, _ ("measured %s"), clock);
  if (*measured->by != '\0')
    /* TRANSLATORS: initials of a person. */
    g_string_append_printf (whence, _ (" by %s"), measured->by);
  if (!isnan (measured->height_m))
    g_string_append_printf (whence, _ (" at %.0f m"), measured->height_m);
  append_age (whence, measured->at, now);
  fact.kind = kind->token;
  fact.is = kind->dimension == FF_DIMENSION_NONE ? FF_FACT_FLAG : FF_FACT_VALUE;
  fact.low = fact.high = ff_unit_to_si (unit, measured->value);
  fact.low_open = fact.high_open = FALSE;
  if (strcmp (measured->kind, "mean-wind") == 0 || strcmp (measured->kind, "gust") == 0)
    put_wind (facts, fact, measured->height_m, ff_day_flying_height (day),
              g_string_free (whence, FALSE));
  else
    put (facts, fact, g_string_free (whence, FALSE));
}

/* The newest first, so that it stands; those before `after` are left for later. */
static void
put_all_measured (GArray *facts, const FfDay *day, gint64 now, gint64 after)
{
  guint i;

  for (i = day->measurements->len; i-- > 0;)
    {
      const FfMeasurement *measured = g_ptr_array_index (day->measurements, i);

      if (measured->at >= after)
        put_measured (facts, day, measured, now);
    }
}

/* ---- what was reported --------------------------------------------------------------------- */

static FfLimitFact
reported_fact (const char *kind, FfReported reported)
{
  FfLimitFact fact
      = { .kind = kind, .is = FF_FACT_VALUE, .low = reported.value, .high = reported.value };

  if (reported.is == FF_REPORTED_LESS_THAN)
    {
      fact.low = fmin (0.0, reported.value);
      fact.high_open = TRUE;
    }
  else if (reported.is == FF_REPORTED_OR_MORE)
    fact.high = INFINITY;
  else if (reported.is == FF_REPORTED_MISSING)
    fact.is = FF_FACT_UNKNOWN;
  return fact;
}

static gboolean
any_weather (const FfReportPart *part, const char *const *codes)
{
  guint i, k;

  for (i = 0; i < part->n_weather; i++)
    for (k = 0; codes[k] != NULL; k++)
      if (strstr (part->weather[i], codes[k]) != NULL)
        return TRUE;
  return FALSE;
}

/* Showers near by (VC) count: they move. */
static void
put_weather (GArray *facts,
             const FfReport *report,
             const FfReportPart *part,
             const char *whence,
             gboolean in_cloud)
{
  static const char *const falling[]
      = { "DZ", "RA", "SN", "SG", "PL", "GR", "GS", "UP", "SH", "TS", NULL };
  static const char *const wet[]
      = { "FG", "BR", "DZ", "RA", "SN", "SG", "PL", "GR", "GS", "UP", NULL };
  static const char *const freezing[] = { "FZ", NULL };

  if (!(part->names & FF_NAMES_WEATHER) && part->n_weather == 0 && report->automatic)
    return;
  put_flag (facts, "rain", any_weather (part, falling), g_strdup (whence));
  /* Our own rule: +3 °C or less with moisture that can be seen, or up in cloud. */
  if (any_weather (part, freezing)
      || (report->temperature_c.is == FF_REPORTED_EXACT && report->temperature_c.value <= 3.0
          && (in_cloud || any_weather (part, wet))))
    put_flag (facts, "icing", TRUE, g_strdup (whence));
}

/* Cloud is reported above the aerodrome; here it is above the ground of the site. Where the
 * aerodrome's elevation is not known, what is said says so. Of any amount: whoever keeps below cloud
 * keeps below a thin one as well. */
static FfReported
cloud_above_site (const FfDay *day,
                  const FfReportPart *part,
                  double aerodrome_m,
                  gboolean *ret_corrected)
{
  const double site_m = day->place != NULL ? day->place->elevation_m : NAN;
  FfReported base = ff_report_cloud_base (part);

  *ret_corrected = !isnan (aerodrome_m) && !isnan (site_m);
  if (*ret_corrected)
    base.value += aerodrome_m - site_m;
  return base;
}

static void
put_cloud (GArray *facts, FfReported base, double flying_m, const char *whence, gboolean corrected)
{
  /* Translators: whose report it is. Its heights are above the aerodrome, and how much higher or
     lower the site is can't be told. */
  g_autofree char *told
      = corrected ? g_strdup (whence)
                  : g_strdup_printf (_ ("%s, above the aerodrome, not corrected for the site"),
                                     whence);
  FfReported below = base;

  if (base.is == FF_REPORTED_MISSING)
    return;
  below.value -= flying_m;
  put (facts, reported_fact ("cloud-base", base), g_strdup (told));
  put (facts, reported_fact ("below-cloud", below), g_steal_pointer (&told));
}

static void
put_report (GArray *facts,
            const FfDay *day,
            const FfReport *report,
            const FfReportPart *part,
            const char *whence,
            double aerodrome_m,
            double flying_m)
{
  FfLimitFact gust = reported_fact ("gust", ff_report_gust_limit (part));
  gboolean corrected;
  const FfReported cloud = cloud_above_site (day, part, aerodrome_m, &corrected);

  put_wind (facts, reported_fact ("mean-wind", part->wind_ms), MAST, flying_m, g_strdup (whence));
  /* A gust that is not reported is between the mean and the reporting threshold above it. */
  if (part->gust_ms.is == FF_REPORTED_MISSING)
    gust.low = part->wind_ms.value;
  put_wind (facts, gust, MAST, flying_m, g_strdup (whence));
  if (part->visibility_m.is != FF_REPORTED_MISSING)
    put (facts, reported_fact ("visibility", part->visibility_m), g_strdup (whence));
  if (report->temperature_c.is == FF_REPORTED_EXACT && report->kind != FF_REPORT_TAF)
    put_span (facts, "air-temperature", report->temperature_c.value - 0.5,
              report->temperature_c.value + 0.5, g_strdup (whence));
  put_weather (facts, report, part, whence,
               (cloud.is == FF_REPORTED_EXACT || cloud.is == FF_REPORTED_LESS_THAN)
                   && cloud.value <= flying_m);
  put_cloud (facts, cloud, flying_m, whence, corrected);
}

GArray *
ff_day_report_facts (const FfDay *day,
                     const FfReport *report,
                     const FfReportPart *part,
                     const char *whence,
                     double aerodrome_m,
                     double flying_m)
{
  GArray *facts = facts_new ();

  put_report (facts, day, report, part, whence, aerodrome_m, flying_m);
  return facts;
}

FfReport *
ff_day_latest_report (const FfDay *day, gboolean forecast, const FfWeatherReport **ret_record)
{
  FfReport *latest = NULL;
  guint i;

  *ret_record = NULL;
  for (i = 0; i < day->reports->len; i++)
    {
      const FfWeatherReport *record = g_ptr_array_index (day->reports, i);
      FfReport *report = ff_report_read (record->text, record->at, NULL);

      if (report == NULL || report->nil || report->cancelled
          || forecast != (report->kind == FF_REPORT_TAF)
          || (latest != NULL && report->at < latest->at))
        {
          ff_report_free (report);
          continue;
        }
      ff_report_free (latest);
      latest = report;
      *ret_record = record;
    }
  return latest;
}

/* ---- what is planned, and who and what is there -------------------------------------------- */

static void
put_forecast_of_job (GArray *facts, const FfDay *day, double flying_m)
{
  const FfJob *job = day->job;
  const char *whence = _ ("forecast typed with the job");
  const double sensor_m = isnan (job->wind_height_m) ? MAST : job->wind_height_m;
  FfLimitFact mean = { .kind = "mean-wind", .is = FF_FACT_VALUE };
  FfLimitFact gust = { .kind = "gust", .is = FF_FACT_VALUE };

  mean.low = mean.high = job->wind_ms;
  gust.low = gust.high = job->gust_ms;
  if (!isnan (job->wind_ms))
    put_wind (facts, mean, sensor_m, flying_m, g_strdup (whence));
  if (!isnan (job->gust_ms))
    put_wind (facts, gust, sensor_m, flying_m, g_strdup (whence));
  if (!isnan (job->temperature_c))
    put_span (facts, "air-temperature", job->temperature_c, job->temperature_c, g_strdup (whence));
  if (!isnan (job->visibility_m))
    put_span (facts, "visibility", job->visibility_m, job->visibility_m, g_strdup (whence));
}

static double
minutes_of_day (const FfDay *day, gint64 at)
{
  gint64 from, to;

  ff_day_bounds (day->date, day->zone, &from, &to);
  return (double) (at - from) / 60.0;
}

static void
put_plan (GArray *facts, const FfDay *day, const FfDayPlan *plan)
{
  const FfPlanLine *first, *last;
  double from, to;

  if (plan == NULL || plan->lines->len == 0 || !day->has_date)
    return;
  first = g_ptr_array_index (plan->lines, 0);
  last = g_ptr_array_index (plan->lines, plan->lines->len - 1);
  from = minutes_of_day (day, first->off_by);
  to = minutes_of_day (day, last->down);
  put_span (facts, "all-down", to, to, g_strdup (_ ("plan")));
  put_span (facts, "flying-time", from, to, g_strdup (_ ("plan")));
}

static void
put_shots (GArray *facts, const FfDay *day, double flying_m)
{
  double fastest = 0.0;
  guint i;

  for (i = 0; i < day->shots->len; i++)
    fastest = MAX (fastest, ((const FfShot *) g_ptr_array_index (day->shots, i))->speed_ms);
  if (day->shots->len == 0)
    return;
  put_span (facts, "height", flying_m, flying_m, g_strdup (_ ("highest shot")));
  put_span (facts, "ground-speed", fastest, fastest, g_strdup (_ ("fastest shot")));
}

static void
put_crew (GArray *facts, const FfDay *day)
{
  gboolean observer = FALSE;
  guint i;

  for (i = 0; i < day->crew->len; i++)
    {
      const FfMember *member = g_ptr_array_index (day->crew, i);

      observer = observer || member->role == FF_ROLE_OBSERVER;
      if (member->role == FF_ROLE_PILOT && *member->certificate_expiry != '\0')
        put_flag (facts, "certificate",
                  strcmp (member->certificate_expiry, day->job->date) >= 0,
                  g_strdup_printf (_ ("%s, valid until %s"), member->initials,
                                   member->certificate_expiry));
    }
  put_flag (facts, "observer", observer, g_strdup (_ ("crew of the job")));
}

/* A light that is fitted is not yet on: only the lack of one can be told from here. */
static void
put_aircraft (GArray *facts, const FfDay *day, const FfDayPlan *plan)
{
  const FfItem *aircraft = ff_day_aircraft (day);
  const FfPlanLine *last = NULL;

  if (aircraft == NULL)
    return;
  if (!isnan (aircraft->mass_kg))
    put_span (facts, "mass", aircraft->mass_kg, aircraft->mass_kg, g_strdup (aircraft->label));
  if (plan != NULL && plan->lines->len > 0)
    last = g_ptr_array_index (plan->lines, plan->lines->len - 1);
  if (last != NULL && day->place != NULL && day->has_date)
    {
      FfDirection sun;

      ff_sun_track_direction (&day->sun, (double) last->down, &sun);
      /* Upper limb above a flat horizon, as sunset is reckoned. */
      if (sun.altitude_deg > -0.8333)
        put_not_applicable (facts, "light", _ ("all down before sunset"));
    }
  if (!aircraft->light_fitted)
    put_flag (facts, "light", FALSE, g_strdup (_ ("none is fitted")));
}

/* "reported by EGXX 17:20, 14 km away, 85 min old" */
static char *
report_whence (const FfDay *day, const FfReport *report, const FfWeatherReport *record, gint64 now)
{
  g_autofree char *clock = ff_instant_clock ((double) report->at, day->zone);
  GString *whence = g_string_new (NULL);

  /* TRANSLATORS: an aerodrome's four letters and the time of its report. */
  g_string_printf (whence, _ ("reported by %s %s"), report->station, clock);
  if (!isnan (record->distance_m))
    /* Translators: how far the aerodrome is from the site. */
    g_string_append_printf (whence, _ (", %.0f km away"), record->distance_m / 1000);
  append_age (whence, report->at, now);
  return g_string_free (whence, FALSE);
}

GArray *
ff_day_limit_facts (const FfDay *day, const FfDayPlan *plan, gint64 now)
{
  GArray *facts = facts_new ();
  const double flying_m = ff_day_flying_height (day);
  const FfWeatherReport *record;
  g_autoptr (FfReport) report = ff_day_latest_report (day, FALSE, &record);

  if (report != NULL)
    {
      g_autofree char *whence = report_whence (day, report, record, now);

      put_all_measured (facts, day, now, report->at);
      put_report (facts, day, report, &report->part, whence, record->elevation_m, flying_m);
    }
  put_all_measured (facts, day, now, G_MININT64);
  put_forecast_of_job (facts, day, flying_m);
  put_plan (facts, day, plan);
  put_shots (facts, day, flying_m);
  put_crew (facts, day);
  put_aircraft (facts, day, plan);
  return facts;
}
