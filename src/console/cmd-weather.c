/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A weather report read group by group. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "ff-air.h"
#include "ff-civil.h"
#include "ff-command.h"
#include "ff-number.h"
#include "ff-report-words.h"
#include "ff-report.h"

static char *now_text, *elevation_text;

static GOptionEntry entries[] = {
  { "now", 0, 0, G_OPTION_ARG_STRING, &now_text,
    N_ ("The report is of the month nearest to this (default: this computer's clock)"), "TIME" },
  { "elevation", 0, 0, G_OPTION_ARG_STRING, &elevation_text,
    N_ ("Height of the site above the sea in metres: pressure and density altitude"), "M" },
  G_OPTION_ENTRY_NULL,
};

static const char *const kind_words[] = { "METAR", "SPECI", "TAF" };
static const char *const is_words[] = { NULL, "exact", "less_than", "or_more" };
static const char *const cover_words[] = { NULL, "FEW", "SCT", "BKN", "OVC" };
static const char *const ceiling_words[] = { "unknown", "none", "exact" };
static const char *const period_words[] = { "base", "from", "becoming", "at_times", "perhaps" };

/* ---- as JSON ------------------------------------------------------------------------------ */

static double
value_of (FfReported reported)
{
  return reported.is == FF_REPORTED_MISSING ? NAN : reported.value;
}

static void
write_strings (FfJson *json, const char *name, char **texts)
{
  ff_json_begin_array (json, name);
  for (; texts != NULL && *texts != NULL; texts++)
    ff_json_text (json, NULL, *texts);
  ff_json_end (json);
}

static void
write_layers (FfJson *json, const FfReportPart *part)
{
  guint i;

  ff_json_begin_array (json, "layers");
  for (i = 0; i < part->n_layers; i++)
    {
      const FfCloudLayer *layer = &part->layers[i];

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "cover", cover_words[layer->cover]);
      ff_json_rounded (json, "base_m", value_of (layer->base_m), 2);
      ff_json_text (json, "type", layer->type[0] != '\0' ? layer->type : NULL);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
write_part (FfJson *json, const FfReportPart *part)
{
  const FfReported limit = ff_report_gust_limit (part);
  double ceiling;
  FfCeiling known = ff_report_ceiling (part, &ceiling);
  guint i;

  ff_json_number (json, "wind_deg", value_of (part->wind_deg));
  ff_json_flag (json, "wind_variable", part->wind_variable);
  ff_json_number (json, "wind_from_deg", part->veer_from_deg);
  ff_json_number (json, "wind_to_deg", part->veer_to_deg);
  ff_json_rounded (json, "wind_ms", value_of (part->wind_ms), 4);
  ff_json_rounded (json, "gust_ms", value_of (part->gust_ms), 4);
  ff_json_rounded (json, "gust_below_ms",
                   part->gust_ms.is == FF_REPORTED_MISSING ? value_of (limit) : NAN, 4);
  ff_json_rounded (json, "visibility_m", value_of (part->visibility_m), 2);
  ff_json_text (json, "visibility_is", is_words[part->visibility_m.is]);
  ff_json_rounded (json, "lowest_visibility_m", value_of (part->lowest_visibility_m), 2);
  ff_json_flag (json, "cavok", part->cavok);
  write_layers (json, part);
  ff_json_flag (json, "sky_hidden", part->sky_hidden);
  ff_json_rounded (json, "vertical_visibility_m", value_of (part->vertical_visibility_m), 2);
  ff_json_rounded (json, "ceiling_m", ceiling, 2);
  ff_json_text (json, "ceiling_is", ceiling_words[known]);
  ff_json_begin_array (json, "weather");
  for (i = 0; i < part->n_weather; i++)
    ff_json_text (json, NULL, part->weather[i]);
  ff_json_end (json);
}

static void
write_instant (FfJson *json, const char *name, gint64 at)
{
  g_autofree char *text = ff_instant_format ((double) at, NULL);

  ff_json_text (json, name, text);
}

static void
write_periods (FfJson *json, const FfReport *report)
{
  guint i;

  write_instant (json, "valid_from", report->valid_from);
  write_instant (json, "valid_to", report->valid_to);
  ff_json_begin_array (json, "periods");
  for (i = 0; i < report->n_periods; i++)
    {
      const FfReportPeriod *period = &report->periods[i];

      ff_json_begin_object (json, NULL);
      ff_json_text (json, "kind", period_words[period->kind]);
      if (period->chance > 0)
        ff_json_integer (json, "chance_percent", period->chance);
      else
        ff_json_null (json, "chance_percent");
      write_instant (json, "from", period->from);
      write_instant (json, "to", period->to);
      write_part (json, &period->part);
      ff_json_end (json);
    }
  ff_json_end (json);
}

static void
write_report (FfJson *json, const FfReport *report)
{
  ff_json_text (json, "kind", kind_words[report->kind]);
  ff_json_text (json, "station", report->station);
  write_instant (json, "time", report->at);
  ff_json_flag (json, "auto", report->automatic);
  ff_json_flag (json, "nil", report->nil);
  ff_json_flag (json, "corrected", report->corrected);
  ff_json_flag (json, "amended", report->amended);
  ff_json_flag (json, "cancelled", report->cancelled);
  write_part (json, &report->part);
  ff_json_number (json, "temperature_c", value_of (report->temperature_c));
  ff_json_number (json, "dew_point_c", value_of (report->dew_point_c));
  ff_json_rounded (json, "qnh_hpa", value_of (report->qnh_hpa), 2);
  ff_json_text (json, "trend", report->trend);
  ff_json_text (json, "remarks", report->remarks);
  write_strings (json, "not_used", report->aside);
  write_strings (json, "unread", report->unread);
  if (report->kind == FF_REPORT_TAF && !report->nil)
    write_periods (json, report);
}

/* ---- in words ----------------------------------------------------------------------------- */

static void
say_report (FfConsole *console, const FfReport *report)
{
  g_autofree char *title = ff_report_title (report, NULL);
  g_autoptr (GPtrArray) words = ff_report_words (report, NULL);
  guint i;

  ff_console_line (console, "%s", title);
  for (i = 0; i < words->len; i++)
    {
      const FfReportWord *word = g_ptr_array_index (words, i);

      if (word->label != NULL)
        ff_console_row (console, word->label, "%s", word->text);
      else
        ff_console_line (console, "%s%s", report->kind == FF_REPORT_TAF ? "\n" : "", word->text);
    }
}

/* ---- the air at the site ------------------------------------------------------------------ */

static void
say_air (FfConsole *console, const FfReport *report, double elevation_m)
{
  double pressure_altitude = NAN, density_altitude = NAN, ratio = NAN;

  if (report->qnh_hpa.is == FF_REPORTED_EXACT)
    pressure_altitude = ff_air_pressure_altitude_m (report->qnh_hpa.value, elevation_m);
  if (report->qnh_hpa.is == FF_REPORTED_EXACT && report->temperature_c.is == FF_REPORTED_EXACT)
    {
      double density
          = ff_air_density_kgm3 (ff_air_station_hpa (report->qnh_hpa.value, elevation_m),
                                 report->temperature_c.value, value_of (report->dew_point_c));

      density_altitude = ff_air_density_altitude_m (density);
      ratio = ff_air_hover_power_ratio (density);
    }
  ff_json_rounded (console->json, "pressure_altitude_m", pressure_altitude, 1);
  ff_json_rounded (console->json, "density_altitude_m", density_altitude, 1);
  ff_json_rounded (console->json, "hover_power_ratio", ratio, 4);
  if (isnan (density_altitude))
    {
      ff_console_row (console, _ ("Density altitude"), "%s",
                      _ ("not known: the report gives no temperature or pressure"));
      return;
    }
  ff_console_row (console, _ ("Pressure altitude"), _ ("%.0f m"), pressure_altitude);
  ff_console_row (console, _ ("Density altitude"),
                  _ ("%.0f m (estimate: hover takes %+.0f %% power)"), density_altitude,
                  (ratio - 1.0) * 100.0);
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  g_autoptr (FfReport) report = NULL;
  g_autofree char *text = NULL;
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;
  double elevation_m = 0.0;

  if (console->n_words == 0)
    {
      ff_console_want_words (console, 1, _ ("a weather report in quotes"), error);
      return FF_FAILED;
    }
  if ((now_text != NULL && !ff_option_instant ("--now", now_text, &now, error))
      || (elevation_text != NULL
          && !ff_option_number ("--elevation", elevation_text, -500, 9000, &elevation_m, error)))
    return FF_FAILED;
  text = g_strjoinv (" ", console->words);
  report = ff_report_read (text, now, error);
  if (report == NULL)
    return FF_FAILED;
  write_report (console->json, report);
  say_report (console, report);
  if (elevation_text != NULL)
    say_air (console, report, elevation_m);
  return FF_DONE;
}

const FfCommand ff_command_weather = {
  .name = "weather",
  .summary = N_ ("Read an aerodrome's weather report or forecast"),
  .usage = "weather \"REPORT\" [--now TIME] [--elevation M]",
  .example = "fieldfarectl weather \"EGXX 181620Z 24008KT 9999 FEW030 15/08 Q1015\"",
  .entries = entries,
  .run = run,
};
