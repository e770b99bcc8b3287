/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Positions as they are typed. Equal forms are those of the GeoConvert manual page (C. F. F.
 * Karney, GeographicLib, "GeoConvert -- convert geographic coordinates") and of RFC 5870 (A.
 * Mayrhofer, C. Spanring, "A Uniform Resource Identifier for Geographic Locations", 2010). */
#include "ff-test.h"

#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-position.h"

#define HAIR 1e-9 /* degrees: a tenth of a millimetre */

static void
want (const char *text, double latitude_deg, double longitude_deg)
{
  g_autoptr (GError) error = NULL;
  FfPosition got = { 0 };

  if (!ff_position_parse (text, &got, &error))
    fail_msg ("%s: %s", text, error->message);
  if (fabs (got.latitude_deg - latitude_deg) > HAIR
      || fabs (got.longitude_deg - longitude_deg) > HAIR)
    fail_msg ("%s: read as %.9f %.9f", text, got.latitude_deg, got.longitude_deg);
}

static void
refused (const char *text, const char *part)
{
  GError *error = NULL;
  FfPosition got = { 1, 2, 3 };

  if (ff_position_parse (text, &got, &error))
    fail_msg ("“%s” was read as %.6f %.6f", text, got.latitude_deg, got.longitude_deg);
  if (strchr (error->message, '\n') != NULL || g_str_has_suffix (error->message, "."))
    fail_msg ("%s: not one sentence", error->message);
  assert_error (error, FF_ERROR_INPUT, part);
  assert_close (got.latitude_deg, 1, 0);
  assert_close (got.altitude_m, 3, 0);
}

/* GeoConvert(1), DESCRIPTION: "the following are all equivalent". */
static void
test_equal_forms_of_geoconvert (void **state)
{
  want ("33.3 44.4", 33.3, 44.4);
  want ("E44.4 N33.3", 33.3, 44.4);
  want ("33d18'N 44d24'E", 33.3, 44.4);
  want ("44d24 33d18N", 33.3, 44.4);
  want ("33:18 +44:24", 33.3, 44.4);
}

/* GeoConvert(1), GEOGRAPHIC COORDINATES: degree, minute and second signs of Unicode; two quotes for
 * a second sign. The place is that of the page's example 48d51'30.2"N 002d17'40.2"E (from memory).
 */
static void
test_marks_in_every_spelling (void **state)
{
  const double latitude = 48 + 51 / 60.0 + 30.2 / 3600, longitude = 2 + 17 / 60.0 + 40.2 / 3600;

  want ("48d51'30.2\"N 002d17'40.2\"E", latitude, longitude);
  want ("48°51′30.2″N 002°17′40.2″E", latitude, longitude);
  want ("48º51’30.2”N 2º17’40.2”E", latitude, longitude);
  want ("48d51'30.2''N 2d17'40.2''E", latitude, longitude);
  want ("48D51'30.2\"n, 2D17'40.2\"e", latitude, longitude);
  want ("  48° 51' 30.2\" N   2° 17' 40.2\" E  ", latitude, longitude);
  want ("N 48° 51' 30.2\" E 2° 17' 40.2\"", latitude, longitude);
  want ("48 51 30.2 N 2 17 40.2 E", latitude, longitude);
  want ("48:51:30.2 2:17:40.2", latitude, longitude);
  want ("48 51 30.2, 2 17 40.2", latitude, longitude);
}

static void
test_degrees_and_decimal_minutes (void **state)
{
  want ("57 12.0 N 4 0.6 W", 57.2, -4.01);
  want ("57°12.0'N 004°00.6'W", 57.2, -4.01);
  want ("57° 12.0 N, 4° 0.6 W", 57.2, -4.01);
  want ("57d12.0 -4d0.6", 57.2, -4.01);
}

static void
test_decimal_degrees (void **state)
{
  want ("57.2 -4", 57.2, -4);
  want ("57.2,-4.0", 57.2, -4);
  want ("57.2, -4.0", 57.2, -4);
  want ("57.2; -4.0", 57.2, -4);
  want ("57.2N4.0W", 57.2, -4);
  want ("57.2 N 4.0 W", 57.2, -4);
  want ("4.0 W 57.2 N", 57.2, -4);
  want ("57.20000° N, 4.00000° W", 57.2, -4);
  want ("57.2° −4.0°", 57.2, -4); /* a true minus */
  want ("57.2 4.0W", 57.2, -4);
  want (".5 -.25", 0.5, -0.25);
}

/* The sign says nothing where a letter does. */
static void
test_hemisphere_wins_over_sign (void **state)
{
  want ("-33.3N -44.4E", 33.3, 44.4);
  want ("33.3S -44.4W", -33.3, -44.4);
  want ("-33d18'S +44d24'W", -33.3, -44.4);
}

/* RFC 5870: sections 6.1, 6.2 and 6.4. */
static void
test_geo_uris (void **state)
{
  FfPosition got;

  want ("geo:48.2010,16.3695,183", 48.2010, 16.3695);
  want ("geo:48.198634,16.371648;crs=wgs84;u=40", 48.198634, 16.371648);
  want ("geo:13.4125,103.8667", 13.4125, 103.8667);
  want ("GEO:66,30;u=6.500;FOo=this%2dthat", 66, 30);
  want ("geo:66.0,30;u=6.5;foo=this-that", 66, 30);
  assert_true (ff_position_parse ("geo:48.2010,16.3695,183", &got, NULL));
  assert_close (got.altitude_m, 183, 0);
  assert_true (ff_position_parse ("geo:48.198634,16.371648", &got, NULL));
  assert_true (isnan (got.altitude_m));
}

/* RFC 5870, 3.4.2 and 6.4: at a pole every longitude is the same, and so are -180 and 180. */
static void
test_poles_and_date_line (void **state)
{
  want ("geo:90,-22.43;crs=WGS84", 90, 0);
  want ("geo:90,46", 90, 0);
  want ("geo:0,180", 0, -180);
  want ("geo:0,-180", 0, -180);
  want ("16°48'S 180°E", -16.8, -180);
}

static void
test_out_of_range_is_refused (void **state)
{
  refused ("95N 10E", "latitude 95 is out of range; accepted: 90 south to 90 north");
  refused ("95 10", "can't be 95");
  refused ("geo:95,10", "latitude 95 is out of range");
  refused ("90.000001S 0E", "latitude -90.000001");
  refused ("10N 181E", "longitude 181 is out of range");
  refused ("57°60'N 4°0'W", "up to 59");
  refused ("57:12:60 4", "up to 59");
}

static void
test_two_readings_are_refused (void **state)
{
  refused ("120 30", "say which is which");
  refused ("57.2N 4.0N", "both coordinates are latitudes");
  refused ("57.2W 4.0E", "both coordinates are longitudes");
  refused ("57 12 4 0", "not clear where the second coordinate begins");
  refused ("57 12 0 4 0 0", "not clear where");
  refused ("57,2 4,0", "more than one comma");
  refused ("57,2, 4,0", "more than one comma");
  refused ("57N 2W 4E", "more than two of the letters");
}

static void
test_what_is_no_position_is_refused (void **state)
{
  g_autofree char *endless = g_strnfill (5000, '7');

  refused ("", "not clear");
  refused ("57.2", "not clear");
  refused ("the slipway", "");
  refused ("57.2 N", "");
  refused ("57.2.1 4", "not clear");
  refused ("57..2 4", "not clear");
  refused ("1e1 4", "");
  refused ("0x10 4", "");
  refused ("inf nan", "");
  refused ("57.5d12 4d0", "not clear"); /* parts of a degree twice over */
  refused ("12'57d 4d", "not clear");
  refused ("--57 4", "not clear");
  refused ("N57.2N 4W", "");
  refused (endless, "too long");
  refused ("\xff\xfe 4", "");
  refused ("geo:57.2", "accepted: geo:");
  refused ("geo:57.2, 4", "accepted: geo:");
  refused ("geo:57.2,4,5,6", "accepted: geo:");
  refused ("geo:57.2,4.;u=1", "accepted: geo:");
  refused ("geo:+57.2,4", "accepted: geo:");
  refused ("geo:57.2,4;crs=nad27", "not WGS84");
  refused ("geo:57.2,4;u=-3", "uncertainty");
}

static void
shown (double latitude_deg, double longitude_deg, const char *degrees, const char *dms)
{
  g_autofree char *as_degrees = ff_position_format (latitude_deg, longitude_deg);
  g_autofree char *as_dms = ff_position_format_dms (latitude_deg, longitude_deg);

  assert_string_equal (as_degrees, degrees);
  assert_string_equal (as_dms, dms);
}

static void
test_shown_back (void **state)
{
  shown (57.2, -4, "57.20000° N, 4.00000° W", "57°12′00.0″ N, 4°00′00.0″ W");
  shown (-33.8568, 151.2153, "33.85680° S, 151.21530° E", "33°51′24.5″ S, 151°12′55.1″ E");
  shown (0, 0, "0.00000° N, 0.00000° E", "0°00′00.0″ N, 0°00′00.0″ E");
  /* Less than what is shown is neither south nor west. */
  shown (-1e-7, -1e-7, "0.00000° N, 0.00000° E", "0°00′00.0″ N, 0°00′00.0″ E");
}

/* 59.96 seconds are the next minute, and may be the next degree. */
static void
test_seconds_carry (void **state)
{
  shown (10 + 20 / 60.0 + 59.96 / 3600, 10 + 59 / 60.0 + 59.96 / 3600, "10.34999° N, 10.99999° E",
         "10°21′00.0″ N, 11°00′00.0″ E");
  shown (-(59.94 / 3600), -179 - 59 / 60.0 - 59.96 / 3600, "0.01665° S, 179.99999° W",
         "0°00′59.9″ S, 180°00′00.0″ W");
}

static void
test_what_is_shown_is_read (void **state)
{
  FfTestRandom random = { 20270918 };

  for (int i = 0; i < 2000; i++)
    {
      const double latitude = ff_test_random (&random, -89.99, 89.99);
      const double longitude = ff_test_random (&random, -179.99, 179.99);
      g_autofree char *degrees = ff_position_format (latitude, longitude);
      g_autofree char *dms = ff_position_format_dms (latitude, longitude);
      FfPosition got;

      assert_true (ff_position_parse (degrees, &got, NULL));
      assert_close (got.latitude_deg, latitude, 0.500001e-5);
      assert_close (got.longitude_deg, longitude, 0.500001e-5);
      assert_true (ff_position_parse (dms, &got, NULL));
      assert_close (got.latitude_deg, latitude, 0.05001 / 3600);
      assert_close (got.longitude_deg, longitude, 0.05001 / 3600);
    }
}

/* Whatever comes, the answer is a position on the Earth or one refusal. */
static void
test_no_text_breaks_it (void **state)
{
  static const char letters[] = "0123456789.,;:+- NSEWnsewd'\"°′″geo\xe2\x80\xff";
  FfTestRandom random = { 5870 };

  for (int i = 0; i < 50000; i++)
    {
      char text[24] = { 0 };
      const int length = ff_test_random_int (&random, 0, 23);
      g_autoptr (GError) error = NULL;
      FfPosition got;

      for (int j = 0; j < length; j++)
        text[j] = letters[ff_test_random_int (&random, 0, (int) sizeof letters - 2)];
      if (!ff_position_parse (text, &got, &error))
        assert_non_null (error);
      else if (!(fabs (got.latitude_deg) <= 90 && got.longitude_deg >= -180
                 && got.longitude_deg < 180))
        fail_msg ("“%s” was read as %f %f", text, got.latitude_deg, got.longitude_deg);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_equal_forms_of_geoconvert),
    cmocka_unit_test (test_marks_in_every_spelling),
    cmocka_unit_test (test_degrees_and_decimal_minutes),
    cmocka_unit_test (test_decimal_degrees),
    cmocka_unit_test (test_hemisphere_wins_over_sign),
    cmocka_unit_test (test_geo_uris),
    cmocka_unit_test (test_poles_and_date_line),
    cmocka_unit_test (test_out_of_range_is_refused),
    cmocka_unit_test (test_two_readings_are_refused),
    cmocka_unit_test (test_what_is_no_position_is_refused),
    cmocka_unit_test (test_shown_back),
    cmocka_unit_test (test_seconds_carry),
    cmocka_unit_test (test_what_is_shown_is_read),
    cmocka_unit_test (test_no_text_breaks_it),
  };

  return cmocka_run_group_tests_name ("position", tests, NULL, NULL);
}
