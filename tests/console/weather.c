/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `weather` as a script sees it. The decoding itself is held to the published reports in
 * tests/published/weather.c. */
#include "ff-console-run.h"

#include <string.h>

static void
test_observed (void **state)
{
  g_autoptr (FfRun) run = ff_run_json (
      "weather 'EGXX 181620Z AUTO 24008KT 210V270 9999 -RA SCT020 BKN030CB 15/08 Q1015 NOSIG WHAT'"
      " --now 2027-09-18T17:00+01:00 --elevation 12",
      0);
  JsonArray *layers = ff_run_array (run, "layers");
  JsonObject *layer = json_array_get_object_element (layers, 1);

  assert_string_equal (ff_run_text (run, "kind"), "METAR");
  assert_string_equal (ff_run_text (run, "station"), "EGXX");
  assert_string_equal (ff_run_text (run, "time"), "2027-09-18T16:20:00+00:00");
  assert_true (json_object_get_boolean_member (run->json, "auto"));
  assert_false (json_object_get_boolean_member (run->json, "nil"));
  assert_close (ff_run_number (run, "wind_deg"), 240, 0);
  assert_close (ff_run_number (run, "wind_ms"), 4.1156, 0.0001);
  assert_true (ff_run_is_null (run, "gust_ms"));
  assert_close (ff_run_number (run, "gust_below_ms"), 9.26, 0.0001);
  assert_close (ff_run_number (run, "visibility_m"), 10000, 0);
  assert_string_equal (ff_run_text (run, "visibility_is"), "or_more");
  assert_int_equal (json_array_get_length (layers), 2);
  assert_string_equal (json_object_get_string_member (layer, "cover"), "BKN");
  assert_string_equal (json_object_get_string_member (layer, "type"), "CB");
  assert_close (json_object_get_double_member (layer, "base_m"), 914.4, 0.001);
  assert_close (ff_run_number (run, "ceiling_m"), 914.4, 0.001);
  assert_true (ff_run_is_null (run, "vertical_visibility_m"));
  assert_close (ff_run_number (run, "temperature_c"), 15, 0);
  assert_close (ff_run_number (run, "qnh_hpa"), 1015, 0);
  assert_string_equal (json_array_get_string_element (ff_run_array (run, "weather"), 0), "-RA");
  assert_int_equal (json_array_get_length (ff_run_array (run, "unread")), 0);
  assert_string_equal (ff_run_text (run, "trend"), "NOSIG WHAT");
  assert_close (ff_run_number (run, "pressure_altitude_m"), -2.6, 0.5);
  /* Vapour of 10.7 hPa makes this air lighter than the standard by as much as 36 m of height. */
  assert_close (ff_run_number (run, "density_altitude_m"), 38, 3);
}

static void
test_forecast (void **state)
{
  g_autoptr (FfRun) run = ff_run_json (
      "weather 'TAF EGXX 181100Z 1812/1912 24010KT 9999 SCT030 PROB30 TEMPO 1815/1818 4000 RA'"
      " --now 2027-09-18T12:00Z",
      0);
  JsonArray *periods = ff_run_array (run, "periods");
  JsonObject *perhaps = json_array_get_object_element (periods, 1);

  assert_string_equal (ff_run_text (run, "kind"), "TAF");
  assert_string_equal (ff_run_text (run, "valid_from"), "2027-09-18T12:00:00+00:00");
  assert_string_equal (ff_run_text (run, "valid_to"), "2027-09-19T12:00:00+00:00");
  assert_int_equal (json_array_get_length (periods), 2);
  assert_string_equal (json_object_get_string_member (perhaps, "kind"), "perhaps");
  assert_int_equal (json_object_get_int_member (perhaps, "chance_percent"), 30);
  assert_true (json_object_get_null_member (perhaps, "wind_ms"));
}

static void
test_refused (void **state)
{
  ff_run_refused ("weather", "weather report");
  ff_run_refused ("weather 'HELLO THERE'", "HELLO");
  ff_run_refused ("weather 'EGXX 311620Z CAVOK' --now 2027-02-20T00:00Z", "16 days");
  ff_run_refused ("weather 'EGXX 181620Z CAVOK' --now yesterday", "--now");
  ff_run_reads_well ("weather 'EGXX 181620Z 24008KT 9999 FEW030 15/08 Q1015'"
                     " --now 2027-09-18T17:00Z --elevation 300");
  ff_run_reads_well ("weather 'TAF EGXX 181100Z 1812/1912 24010G25KT P6SM BECMG 1815/1817 VV///'"
                     " --now 2027-09-18T17:00Z");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_observed),
    cmocka_unit_test (test_forecast),
    cmocka_unit_test (test_refused),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
