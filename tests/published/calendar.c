/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Calendar files against RFC 5545, positions against RFC 5870. The file is read back with the
 * general-purpose library that also wrote it, and checked by hand for what a library can hide. */
#include "ff-test.h"

#include <libical/ical.h>
#include <math.h>
#include <string.h>

#include "ff-calendar.h"
#include "ff-qr.h"

#define AT 1821195000 /* 2027-09-17T15:30:00Z */

static char *
write_one (const char *summary, gint64 to)
{
  const FfCalendarEntry entry = { "first-off", summary, AT, to };
  const FfCalendar calendar = { "7d8bd7a2-8a52-4d4d-9a40-0d3f1f6a9a11", "Skarrowick Head", "mill",
                                57.2, -4.0, AT - 3600, &entry, 1 };

  return ff_calendar_text (&calendar);
}

static void
test_form (void **state)
{
  g_autofree char *text = write_one ("Flying: first off to all down", AT + 3600);
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", -1);
  guint i;

  assert_string_equal (lines[0], "BEGIN:VCALENDAR");
  assert_non_null (strstr (text, "VERSION:2.0\r\n"));
  assert_non_null (strstr (text, "DTSTART:20270917T153000Z\r\n"));
  assert_non_null (strstr (text, "DTEND:20270917T163000Z\r\n"));
  assert_non_null (strstr (text, "UID:7d8bd7a2-8a52-4d4d-9a40-0d3f1f6a9a11-first-off@fieldfare\r\n"));
  assert_true (g_str_has_suffix (text, "END:VCALENDAR\r\n"));
  /* RFC 5545, 3.1: no line is longer than 75 octets, and none ends with a bare line feed. */
  for (i = 0; lines[i] != NULL; i++)
    {
      assert_true (strlen (lines[i]) <= 75);
      assert_null (strchr (lines[i], '\n'));
    }
}

/* RFC 5545, 3.3.11: commas, semicolons and line ends of a text are escaped, so that a text from
 * outside can't end its line and begin another property. */
static void
test_hostile_text_stays_text (void **state)
{
  static const char hostile[] = "ferry; passes, here\nEND:VEVENT\r\nBEGIN:VALARM\x01";
  g_autofree char *text = write_one (hostile, AT);
  icalcomponent *root = icalparser_parse_string (text);
  icalcomponent *event;

  assert_non_null (root);
  assert_int_equal (icalcomponent_count_components (root, ICAL_ANY_COMPONENT), 1);
  event = icalcomponent_get_first_component (root, ICAL_VEVENT_COMPONENT);
  assert_int_equal (icalcomponent_count_components (event, ICAL_ANY_COMPONENT), 0);
  assert_string_equal (icalcomponent_get_summary (event),
                       "ferry; passes, here\nEND:VEVENT\nBEGIN:VALARM");
  assert_null (strstr (text, "DTEND"));
  icalcomponent_free (root);
}

/* RFC 5870: latitude first, no blanks; 3.4.4: −180 is 180, at a pole the longitude is 0. */
static void
test_geo_uri (void **state)
{
  static const struct {
    double latitude_deg, longitude_deg;
    const char *uri;
  } cases[] = {
    { 48.2010, 16.3695, "geo:48.201,16.3695" },
    { 48.198634, 16.371648, "geo:48.198634,16.371648" },
    { 57.2, -4.0, "geo:57.2,-4" },
    { 22.300, -180, "geo:22.3,180" },
    { 90, -22.43, "geo:90,0" },
    { 0, 0, "geo:0,0" },
  };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *uri = ff_geo_uri (cases[i].latitude_deg, cases[i].longitude_deg);

      assert_string_equal (uri, cases[i].uri);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_form),
    cmocka_unit_test (test_hostile_text_stays_text),
    cmocka_unit_test (test_geo_uri),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
