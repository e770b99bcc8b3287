/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Weather reports against values decoded by hand from WMO-No. 306, Volume I.1, Part A (FM 15, FM
 * 16, FM 51, code table 4678) and FMH-1 (FCM-H1, chapter 12). weather-reports.json names where each
 * report was printed; "seen": false marks those made up after the rule that it names. */
#include "ff-test.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ff-civil.h"
#include "ff-error.h"
#include "ff-report.h"

#define FOOT 0.3048
#define STATUTE_MILE 1609.344
#define KNOT (1852.0 / 3600.0)

/* A day of which each of the reports is within half a month: 2026-01-16 12:00 UTC. The 31st of both
 * December and January exist. */
#define NOW 1768564800

static JsonParser *samples;

static JsonObject *
sample_at (guint i)
{
  JsonObject *root = json_node_get_object (json_parser_get_root (samples));

  return json_array_get_object_element (json_object_get_array_member (root, "samples"), i);
}

static guint
n_samples (void)
{
  JsonObject *root = json_node_get_object (json_parser_get_root (samples));

  return json_array_get_length (json_object_get_array_member (root, "samples"));
}

/* A member that is there and not null. */
static gboolean
given (JsonObject *expect, const char *name)
{
  return json_object_has_member (expect, name) && !json_object_get_null_member (expect, name);
}

static gboolean
said_missing (JsonObject *expect, const char *name)
{
  return json_object_has_member (expect, name) && json_object_get_null_member (expect, name);
}

static double
unit_of (JsonObject *expect)
{
  const char *unit = json_object_get_string_member_with_default (expect, "wunit", "KT");

  return strcmp (unit, "MPS") == 0 ? 1.0 : KNOT;
}

static void
check_wind (JsonObject *expect, const FfReportPart *part)
{
  const double unit = unit_of (expect);

  if (said_missing (expect, "wspd"))
    assert_int_equal (part->wind_ms.is, FF_REPORTED_MISSING);
  if (!given (expect, "wspd"))
    return;
  if (JSON_NODE_HOLDS_VALUE (json_object_get_member (expect, "wspd"))
      && json_node_get_value_type (json_object_get_member (expect, "wspd")) == G_TYPE_STRING)
    {
      assert_string_equal (json_object_get_string_member (expect, "wspd"), ">99");
      assert_int_equal (part->wind_ms.is, FF_REPORTED_OR_MORE);
      assert_close (part->wind_ms.value, 99 * KNOT, 1e-9);
    }
  else
    assert_close (part->wind_ms.value, json_object_get_int_member (expect, "wspd") * unit, 1e-9);
  if (given (expect, "gust"))
    assert_close (part->gust_ms.value, json_object_get_int_member (expect, "gust") * unit, 1e-9);
  else
    assert_int_equal (part->gust_ms.is, FF_REPORTED_MISSING);
}

static void
check_direction (JsonObject *expect, const FfReportPart *part)
{
  if (given (expect, "wdir"))
    {
      JsonNode *node = json_object_get_member (expect, "wdir");

      if (json_node_get_value_type (node) == G_TYPE_STRING)
        assert_true (part->wind_variable && part->wind_deg.is == FF_REPORTED_MISSING);
      else
        assert_close (part->wind_deg.value, (double) json_node_get_int (node), 0);
    }
  else if (said_missing (expect, "wdir"))
    assert_int_equal (part->wind_deg.is, FF_REPORTED_MISSING);
  if (given (expect, "var"))
    {
      JsonArray *limits = json_object_get_array_member (expect, "var");

      assert_close (part->veer_from_deg, json_array_get_int_element (limits, 0), 0);
      assert_close (part->veer_to_deg, json_array_get_int_element (limits, 1), 0);
    }
  else
    assert_true (isnan (part->veer_from_deg));
}

/* "1 SM", "2.5 SM", "<0.25 SM", "600 m", "0 m (<50 m)", ">=10 km", "20 km (…)". */
static void
check_visibility (JsonObject *expect, const FfReportPart *part)
{
  const char *text;
  FfReportedIs is = FF_REPORTED_EXACT;
  char *unit;
  double value;

  if (said_missing (expect, "vis"))
    assert_int_equal (part->visibility_m.is, FF_REPORTED_MISSING);
  if (!given (expect, "vis"))
    return;
  text = json_object_get_string_member (expect, "vis");
  if (g_str_has_prefix (text, ">="))
    is = FF_REPORTED_OR_MORE;
  else if (*text == '<')
    is = FF_REPORTED_LESS_THAN;
  value = g_ascii_strtod (text + strspn (text, "<>="), &unit);
  if (g_str_has_prefix (unit, " SM"))
    value *= STATUTE_MILE;
  else if (g_str_has_prefix (unit, " km"))
    value *= 1000.0;
  if (value == 0.0)
    {
      is = FF_REPORTED_LESS_THAN;
      value = 50.0;
    }
  assert_int_equal (part->visibility_m.is, is);
  assert_close (part->visibility_m.value, value, 1e-6);
}

static void
check_weather (JsonObject *expect, const FfReportPart *part)
{
  JsonArray *want;
  guint i;

  if (!given (expect, "wx"))
    {
      assert_int_equal (part->n_weather, 0);
      return;
    }
  want = json_object_get_array_member (expect, "wx");
  assert_int_equal (part->n_weather, json_array_get_length (want));
  for (i = 0; i < part->n_weather; i++)
    assert_string_equal (part->weather[i], json_array_get_string_element (want, i));
}

static void
check_layer (JsonArray *want, const FfCloudLayer *layer)
{
  static const char *const covers[] = { "", "FEW", "SCT", "BKN", "OVC" };

  assert_string_equal (covers[layer->cover], json_array_get_string_element (want, 0));
  assert_close (layer->base_m.value, json_array_get_int_element (want, 1) * FOOT, 1e-9);
  if (json_array_get_length (want) > 2)
    assert_string_equal (layer->type, json_array_get_string_element (want, 2));
}

static void
check_cloud (JsonObject *expect, const FfReportPart *part)
{
  JsonNode *node = json_object_get_member (expect, "clouds");
  guint i;

  if (said_missing (expect, "clouds"))
    assert_true (part->cloud_unknown && part->n_layers == 0);
  if (given (expect, "vv"))
    assert_close (part->vertical_visibility_m.value,
                  json_object_get_int_member (expect, "vv") * FOOT, 1e-9);
  if (!given (expect, "clouds"))
    return;
  if (JSON_NODE_HOLDS_VALUE (node))
    {
      assert_true (part->clear && part->n_layers == 0);
      return;
    }
  assert_int_equal (part->n_layers, json_array_get_length (json_node_get_array (node)));
  for (i = 0; i < part->n_layers; i++)
    check_layer (json_array_get_array_element (json_node_get_array (node), i), &part->layers[i]);
}

static void
check_degrees (JsonObject *expect, const char *name, FfReported got)
{
  JsonNode *node;

  if (said_missing (expect, name))
    assert_int_equal (got.is, FF_REPORTED_MISSING);
  if (!given (expect, name))
    return;
  node = json_object_get_member (expect, name);
  assert_int_equal (got.is, FF_REPORTED_EXACT);
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    {
      /* "-0": between −0.5 and 0, and the sign survives. */
      assert_true (got.value == 0.0 && signbit (got.value));
      return;
    }
  assert_close (got.value, (double) json_node_get_int (node), 0);
}

static void
check_pressure (JsonObject *expect, FfReported got)
{
  if (said_missing (expect, "qnh"))
    assert_int_equal (got.is, FF_REPORTED_MISSING);
  if (given (expect, "qnh"))
    assert_close (got.value, json_object_get_double_member (expect, "qnh"), 0);
  /* 29.92 inHg is 1013.21 hPa: an inch of mercury at 0 °C is 33.8639 hPa. */
  if (given (expect, "alt_inHg"))
    assert_close (got.value, json_object_get_double_member (expect, "alt_inHg") * 33.8639, 0.005);
}

static void
test_every_sample_is_read (void **state)
{
  guint i;

  assert_true (n_samples () >= 30);
  for (i = 0; i < n_samples (); i++)
    {
      JsonObject *sample = sample_at (i), *expect = json_object_get_object_member (sample, "expect");
      GError *error = NULL;
      g_autoptr (FfReport) report
          = ff_report_read (json_object_get_string_member (sample, "raw"), NOW, &error);

      assert_no_error (error);
      assert_int_equal (
          strcmp (json_object_get_string_member (sample, "kind"), "TAF") == 0,
          report->kind == FF_REPORT_TAF);
      assert_true (!given (expect, "auto") || report->automatic);
      assert_int_equal (given (expect, "nil"), report->nil);
      assert_int_equal (given (expect, "cnl"), report->cancelled);
      assert_int_equal (given (expect, "amd"), report->amended);
      assert_true (!given (expect, "cor") || report->corrected);
      if (report->kind == FF_REPORT_TAF)
        continue;
      check_wind (expect, &report->part);
      check_direction (expect, &report->part);
      check_visibility (expect, &report->part);
      check_weather (expect, &report->part);
      check_cloud (expect, &report->part);
      assert_int_equal (given (expect, "cavok"), report->part.cavok);
      check_degrees (expect, "temp", report->temperature_c);
      check_degrees (expect, "dew", report->dew_point_c);
      check_pressure (expect, report->qnh_hpa);
      assert_int_equal (g_strv_length (report->unread), 0);
    }
}

static FfReport *
sample_report (const char *id)
{
  guint i;

  for (i = 0; i < n_samples (); i++)
    if (strcmp (json_object_get_string_member (sample_at (i), "id"), id) == 0)
      return ff_report_read (json_object_get_string_member (sample_at (i), "raw"), NOW, NULL);
  return NULL;
}

static gint64
at (const char *text)
{
  gint64 instant = 0;
  GError *error = NULL;

  ff_instant_parse (text, &instant, &error);
  assert_no_error (error);
  return instant;
}

/* FAA Aeronautical Information Manual, figure 7-1-19: the example forecast of KPIT. */
static void
test_forecast_periods (void **state)
{
  g_autoptr (FfReport) report = sample_report ("T01");
  static const struct
  {
    FfPeriodKind kind;
    int chance;
    const char *from, *to;
  } want[] = {
    { FF_PERIOD_BASE, 0, "2026-01-09T18:00Z", "2026-01-09T19:30Z" },
    { FF_PERIOD_FROM, 0, "2026-01-09T19:30Z", "2026-01-10T01:00Z" },
    { FF_PERIOD_AT_TIMES, 0, "2026-01-09T20:00Z", "2026-01-09T22:00Z" },
    { FF_PERIOD_FROM, 0, "2026-01-10T01:00Z", "2026-01-10T10:15Z" },
    { FF_PERIOD_PERHAPS, 30, "2026-01-10T04:00Z", "2026-01-10T07:00Z" },
    { FF_PERIOD_FROM, 0, "2026-01-10T10:15Z", "2026-01-11T00:00Z" },
    { FF_PERIOD_BECOMING, 0, "2026-01-10T13:00Z", "2026-01-10T15:00Z" },
  };
  gsize i;

  assert_int_equal (report->valid_from, at ("2026-01-09T18:00Z"));
  assert_int_equal (report->valid_to, at ("2026-01-11T00:00Z"));
  assert_int_equal (report->n_periods, G_N_ELEMENTS (want));
  for (i = 0; i < G_N_ELEMENTS (want); i++)
    {
      assert_int_equal (report->periods[i].kind, want[i].kind);
      assert_int_equal (report->periods[i].chance, want[i].chance);
      assert_int_equal (report->periods[i].from, at (want[i].from));
      assert_int_equal (report->periods[i].to, at (want[i].to));
    }
  assert_int_equal (report->periods[6].part.visibility_m.is, FF_REPORTED_OR_MORE);
  assert_close (report->periods[6].part.visibility_m.value, 6 * STATUTE_MILE, 1e-6);
  assert_int_equal (g_strv_length (report->unread), 0);
}

/* WMO-No. 306, 51.8: FM supersedes, BECMG holds from its end, what is not named stays. */
static void
test_forecast_at_a_time (void **state)
{
  g_autoptr (FfReport) report = sample_report ("T01");
  FfReportPart part;
  double ceiling;

  assert_true (ff_report_prevailing (report, at ("2026-01-10T12:00Z"), &part));
  assert_close (part.visibility_m.value, 6 * STATUTE_MILE, 1e-6);
  assert_int_equal (part.n_weather, 1);
  assert_true (ff_report_prevailing (report, at ("2026-01-10T15:00Z"), &part));
  assert_int_equal (part.n_weather, 0);
  assert_close (part.wind_ms.value, 5 * KNOT, 1e-9); /* of FM101015: not named by the change */
  assert_false (ff_report_prevailing (report, at ("2026-01-11T00:00Z"), &part));

  /* The worst of the evening is the thunderstorm that comes at times. */
  assert_true (
      ff_report_worst (report, at ("2026-01-09T20:00Z"), at ("2026-01-09T21:00Z"), &part));
  assert_close (part.visibility_m.value, 0.5 * STATUTE_MILE, 1e-6);
  assert_close (part.gust_ms.value, 25 * KNOT, 1e-9);
  assert_int_equal (ff_report_ceiling (&part, &ceiling), FF_CEILING_KNOWN);
  assert_close (ceiling, 800 * FOOT, 1e-9);
  /* After it, not. */
  assert_true (
      ff_report_worst (report, at ("2026-01-09T22:00Z"), at ("2026-01-09T23:00Z"), &part));
  assert_close (part.visibility_m.value, 3 * STATUTE_MILE, 1e-6);
}

/* Six figures of validity as before November 2008: day 31 from 13 to 22. */
static void
test_old_forecast_is_converted (void **state)
{
  g_autoptr (FfReport) report = sample_report ("T05");

  assert_int_equal (report->valid_to - report->valid_from, 9 * 3600);
  assert_int_equal (report->n_periods, 4);
  assert_int_equal (report->periods[1].from - report->valid_from, 0);
  assert_int_equal (report->periods[3].to - report->periods[3].from, 3 * 3600);
  assert_true (report->periods[2].part.sky_hidden);
}

/* The end hour 24 of the last of a month is the first of the next. */
static void
test_rolls_over_the_month (void **state)
{
  g_autoptr (FfReport) report
      = ff_report_read ("TAF EGXX 302300Z 3024/0106 24010KT 9999 NSC", at ("2026-04-30T22:00Z"),
                        NULL);

  assert_non_null (report);
  assert_int_equal (report->valid_from, at ("2026-05-01T00:00Z"));
  assert_int_equal (report->valid_to, at ("2026-05-01T06:00Z"));
}

static void
test_time_is_the_nearest (void **state)
{
  g_autoptr (FfReport) last = ff_report_read ("EGXX 312350Z 00000KT CAVOK 10/05 Q1013",
                                              at ("2026-01-01T00:10Z"), NULL);
  GError *error = NULL;

  assert_int_equal (last->at, at ("2025-12-31T23:50Z"));
  /* No 31st lies within half a month of the end of February. */
  assert_null (ff_report_read ("EGXX 311200Z 00000KT CAVOK", at ("2026-02-20T12:00Z"), &error));
  assert_error (error, FF_ERROR_INPUT, "clock");
}

/* WMO-No. 306, 15.5.5: a gust is reported when it exceeds the mean by 10 kt, 5 m/s, 20 km/h. */
static void
test_unreported_gust_is_not_zero (void **state)
{
  static const struct
  {
    const char *wind;
    double limit_ms;
  } cases[] = { { "24010KT", 20 * KNOT }, { "24005MPS", 10.0 }, { "24018KMH", 38 / 3.6 } };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = g_strdup_printf ("EGXX 161200Z %s CAVOK 10/05 Q1013", cases[i].wind);
      g_autoptr (FfReport) report = ff_report_read (text, NOW, NULL);
      FfReported limit = ff_report_gust_limit (&report->part);

      assert_int_equal (limit.is, FF_REPORTED_LESS_THAN);
      assert_close (limit.value, cases[i].limit_ms, 1e-9);
    }
}

static void
test_trend_does_not_overwrite (void **state)
{
  g_autoptr (FfReport) report
      = ff_report_read ("EGXX 161200Z 24010KT 9999 BKN020 10/05 Q1013 TEMPO 24025G40KT 2000 OVC003",
                        NOW, NULL);
  double ceiling;

  assert_close (report->part.wind_ms.value, 10 * KNOT, 1e-9);
  assert_close (report->part.visibility_m.value, 10000, 0);
  assert_int_equal (ff_report_ceiling (&report->part, &ceiling), FF_CEILING_KNOWN);
  assert_close (ceiling, 2000 * FOOT, 1e-9);
  assert_string_equal (report->trend, "TEMPO 24025G40KT 2000 OVC003");
}

static void
test_unknown_groups_are_kept (void **state)
{
  g_autoptr (FfReport) report
      = ff_report_read ("EGXX 161200Z 24010KT WHAT 9999 BKN0X0 10/05 Q1013", NOW, NULL);

  assert_int_equal (g_strv_length (report->unread), 2);
  assert_string_equal (report->unread[0], "WHAT");
  assert_close (report->part.visibility_m.value, 10000, 0);
  assert_close (report->qnh_hpa.value, 1013, 0);
}

/* Cloud that may hide a lower ceiling is no "none". */
static void
test_ceiling_unknown_is_not_none (void **state)
{
  static const struct
  {
    const char *cloud;
    FfCeiling is;
  } cases[] = {
    { "BKN///", FF_CEILING_UNKNOWN },       { "VV///", FF_CEILING_UNKNOWN },
    { "//////", FF_CEILING_UNKNOWN },       { "///015", FF_CEILING_UNKNOWN },
    { "///015 OVC010", FF_CEILING_KNOWN },  { "FEW010 SCT020", FF_CEILING_NONE },
    { "NCD", FF_CEILING_NONE },             { "", FF_CEILING_UNKNOWN },
    { "FEW/// BKN030", FF_CEILING_KNOWN },
  };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text
          = g_strdup_printf ("EGXX 161200Z 24010KT 9999 %s 10/05 Q1013", cases[i].cloud);
      g_autoptr (FfReport) report = ff_report_read (text, NOW, NULL);
      double ceiling;

      assert_int_equal (ff_report_ceiling (&report->part, &ceiling), cases[i].is);
    }
}

/* WMO-No. 306, 15.9 and 15.10: CAVOK and NSC are no clear sky, they speak of 5000 ft and below; FMH-1,
 * chapter 9: CLR of 12 000 ft. Of NCD an instrument saw nothing. */
static void
test_lowest_cloud (void **state)
{
  static const struct
  {
    const char *cloud;
    FfReportedIs is;
    double feet;
  } cases[] = {
    { "FEW010 BKN030", FF_REPORTED_EXACT, 1000 }, { "SCT045 FEW015CB", FF_REPORTED_EXACT, 1500 },
    { "VV002", FF_REPORTED_EXACT, 200 },          { "FEW/// BKN030", FF_REPORTED_MISSING, 0 },
    { "//////", FF_REPORTED_MISSING, 0 },         { "", FF_REPORTED_MISSING, 0 },
    { "NSC", FF_REPORTED_OR_MORE, 5000 },         { "CLR", FF_REPORTED_OR_MORE, 12000 },
    { "NCD", FF_REPORTED_MISSING, 0 },            { "///015", FF_REPORTED_EXACT, 1500 },
  };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text
          = g_strdup_printf ("EGXX 161200Z 24010KT 9999 %s 10/05 Q1013", cases[i].cloud);
      g_autoptr (FfReport) report = ff_report_read (text, NOW, NULL);
      const FfReported base = ff_report_cloud_base (&report->part);

      assert_int_equal (base.is, cases[i].is);
      if (base.is != FF_REPORTED_MISSING)
        assert_close (base.value, cases[i].feet * FOOT, 1e-9);
    }
}

/* 51.8: of all that may hold in an hour the lowest cloud and the lowest ceiling, though they come from
 * different groups; and a gust of one group is none where the mean of another is stronger. */
static void
test_worst_of_several_groups (void **state)
{
  g_autoptr (FfReport) report = ff_report_read (
      "TAF EGXX 161100Z 1612/1712 24030KT CAVOK TEMPO 1613/1614 24010G20KT 9999 BKN030"
      " PROB30 1613/1614 FEW003",
      NOW, NULL);
  gint64 one;
  FfReportPart part;
  double ceiling;

  g_assert (report != NULL);
  one = report->valid_from + 3600;
  assert_true (ff_report_worst (report, report->valid_from, one, &part));
  assert_close (ff_report_cloud_base (&part).value, 5000 * FOOT, 1e-9);
  assert_true (part.cavok);
  assert_true (ff_report_worst (report, one, one + 3600, &part));
  assert_int_equal (ff_report_ceiling (&part, &ceiling), FF_CEILING_KNOWN);
  assert_close (ceiling, 3000 * FOOT, 1e-9);
  assert_close (ff_report_cloud_base (&part).value, 300 * FOOT, 1e-9);
  assert_close (part.wind_ms.value, 30 * KNOT, 1e-9);
  assert_close (ff_report_gust_limit (&part).value, 40 * KNOT, 1e-9);
}

static void
test_refusals (void **state)
{
  static const struct
  {
    const char *text, *part;
  } cases[] = {
    { "", "four letters" },
    { "METAR", "four letters" },
    { "METAR EGXX", "day and time" },
    { "EGXX 320000Z CAVOK", "16 days" },
    { "TAF EGXX 160500Z 9999", "validity" },
    { "EGXX 161200Z 240\xc2\xb0", "character 17" },
  };
  g_autofree char *long_text = g_strnfill (FF_REPORT_LONGEST + 1, 'A');
  GError *error = NULL;
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      assert_null (ff_report_read (cases[i].text, NOW, &error));
      assert_error (error, FF_ERROR_INPUT, cases[i].part);
    }
  assert_null (ff_report_read (long_text, NOW, &error));
  assert_error (error, FF_ERROR_INPUT, "too long");
}

static int
load_samples (void **state)
{
  g_autofree char *path = g_build_filename (g_getenv ("FF_TEST_SOURCE_DIR"), "tests", "published",
                                            "weather-reports.json", NULL);

  samples = json_parser_new ();
  return json_parser_load_from_file (samples, path, NULL) ? 0 : -1;
}

static int
free_samples (void **state)
{
  g_object_unref (samples);
  return 0;
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_sample_is_read),
    cmocka_unit_test (test_forecast_periods),
    cmocka_unit_test (test_forecast_at_a_time),
    cmocka_unit_test (test_old_forecast_is_converted),
    cmocka_unit_test (test_rolls_over_the_month),
    cmocka_unit_test (test_time_is_the_nearest),
    cmocka_unit_test (test_unreported_gust_is_not_zero),
    cmocka_unit_test (test_trend_does_not_overwrite),
    cmocka_unit_test (test_unknown_groups_are_kept),
    cmocka_unit_test (test_ceiling_unknown_is_not_none),
    cmocka_unit_test (test_lowest_cloud),
    cmocka_unit_test (test_worst_of_several_groups),
    cmocka_unit_test (test_refusals),
  };

  return cmocka_run_group_tests (tests, load_samples, free_samples);
}
