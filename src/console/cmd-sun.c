/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where sun and moon stand at a time, or what they do in a day. */
#include <glib/gi18n-lib.h>

#include "ff-civil.h"
#include "ff-command.h"
#include "ff-error.h"
#include "ff-events.h"

static char *lat_text, *lon_text, *elevation_text, *at_text, *date_text, *tz_text;

static GOptionEntry entries[] = {
  { "lat", 0, 0, G_OPTION_ARG_STRING, &lat_text, N_ ("Latitude, north positive"), "DEG" },
  { "lon", 0, 0, G_OPTION_ARG_STRING, &lon_text, N_ ("Longitude, east positive"), "DEG" },
  { "at", 0, 0, G_OPTION_ARG_STRING, &at_text, N_ ("Time, ISO 8601 with an offset or Z"), "TIME" },
  { "elevation", 0, 0, G_OPTION_ARG_STRING, &elevation_text,
    N_ ("Height above the sea in metres (with --at; default 0)"), "M" },
  { "date", 0, 0, G_OPTION_ARG_STRING, &date_text, N_ ("Day, for what happens in it"), "DAY" },
  { "tz", 0, 0, G_OPTION_ARG_STRING, &tz_text, N_ ("Time zone of that day, as Europe/London"),
    "ZONE" },
  G_OPTION_ENTRY_NULL,
};

/* An option that goes with the other form of the command. */
static gboolean
refuse_with (const char *stray, const char *stray_text, const char *form, GError **error)
{
  if (stray_text == NULL)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("%s does not go with %s; accepted: --at with --elevation, or --date with --tz"),
               stray, form);
  return FALSE;
}

/* Either a time or a day, each with its own options. */
static gboolean
check_form (GError **error)
{
  if (at_text == NULL && date_text == NULL)
    return ff_option_missing (_ ("--at (for a time) or --date (for a day)"), error);
  if (at_text != NULL)
    return refuse_with ("--date", date_text, "--at", error)
           && refuse_with ("--tz", tz_text, "--at", error);
  /* Rise and set are those of a flat sea-level horizon: an elevation would promise a dip. */
  return refuse_with ("--elevation", elevation_text, "--date", error);
}

static gboolean
read_site (FfSite *ret_site, GError **error)
{
  FfSite site = { 0 };

  if (!ff_option_number ("--lat", lat_text, -90, 90, &site.latitude_deg, error)
      || !ff_option_number ("--lon", lon_text, -180, 180, &site.longitude_deg, error))
    return FALSE;
  if (elevation_text != NULL
      && !ff_option_number ("--elevation", elevation_text, -500, 9000, &site.elevation_m, error))
    return FALSE;
  *ret_site = site;
  return TRUE;
}

/* The models are no good for any year one can write. */
static gboolean
read_at (gint64 *ret_instant, GError **error)
{
  gint64 instant;
  FfDate date;

  if (!ff_option_instant ("--at", at_text, &instant, error))
    return FALSE;
  date = ff_instant_date (instant, NULL);
  if (date.year < 1900 || date.year > 2199)
    {
      g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
                   _ ("--at: the year of “%s” is out of reach; accepted: 1900 to 2199"), at_text);
      return FALSE;
    }
  *ret_instant = instant;
  return TRUE;
}

static void
write_direction (FfJson *json, const FfDirection *direction)
{
  ff_json_rounded (json, "altitude_deg", direction->altitude_deg, 4);
  ff_json_rounded (json, "apparent_altitude_deg", direction->apparent_altitude_deg, 4);
  ff_json_rounded (json, "azimuth_deg", direction->azimuth_deg, 4);
}

/* One line of the table. Padded by letters, which in a translation are not bytes. */
static void
say_row (FfConsole *console, const char *label, const char *sun, const char *moon)
{
  const int pad = (int) (20 - g_utf8_strlen (label, -1));

  ff_console_line (console, "%s%*s%s%s", label, MAX (pad, 1), "", sun, moon);
}

static void
say_degrees (FfConsole *console, const char *label, double sun_deg, double moon_deg)
{
  char sun[G_ASCII_DTOSTR_BUF_SIZE], moon[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (sun, sizeof sun, "%8.2f°", sun_deg);
  g_ascii_formatd (moon, sizeof moon, "%8.2f°", moon_deg);
  say_row (console, label, sun, moon);
}

static void
say_position (FfConsole *console,
              const char *at,
              const FfDirection *sun,
              const FfDirection *moon,
              double illuminated)
{
  g_autofree char *share = g_strdup_printf ("%8.0f %%", illuminated * 100);

  ff_console_line (console, "%s", at);
  /* Translators: two right-aligned columns, nine letters each. */
  say_row (console, "", _ ("      Sun"), _ ("     Moon"));
  say_degrees (console, _ ("Altitude"), sun->altitude_deg, moon->altitude_deg);
  /* Translators: the altitude as seen, lifted by refraction in the air. */
  say_degrees (console, _ ("Altitude as seen"), sun->apparent_altitude_deg,
               moon->apparent_altitude_deg);
  say_degrees (console, _ ("Azimuth"), sun->azimuth_deg, moon->azimuth_deg);
  say_row (console, _ ("Illuminated"), "         ", share);
}

static FfOutcome
run_position (FfConsole *console, GError **error)
{
  FfSite site;
  FfDirection sun, moon;
  double illuminated;
  gint64 instant;
  g_autofree char *at = NULL;

  if (!read_site (&site, error) || !read_at (&instant, error))
    return FF_FAILED;
  at = ff_instant_format ((double) instant, NULL);
  ff_sun_direction ((double) instant, &site, &sun);
  ff_moon_direction ((double) instant, &site, &moon, &illuminated);

  ff_json_text (console->json, "at", at);
  ff_json_begin_object (console->json, "sun");
  write_direction (console->json, &sun);
  ff_json_end (console->json);
  ff_json_begin_object (console->json, "moon");
  write_direction (console->json, &moon);
  ff_json_rounded (console->json, "illuminated", illuminated, 4);
  ff_json_end (console->json);
  say_position (console, at, &sun, &moon, illuminated);
  return FF_DONE;
}

static void
write_event (FfConsole *console, const FfSkyEvent *event, GTimeZone *zone)
{
  g_autofree char *at = ff_instant_format (event->instant, zone);
  g_autofree char *clock = ff_instant_clock (event->instant, zone);

  ff_json_begin_object (console->json, NULL);
  ff_json_text (console->json, "name", ff_name_token (&ff_names_event, (int) event->event));
  ff_json_text (console->json, "at", at);
  ff_json_end (console->json);
  ff_console_line (console, "%s  %s", clock, ff_name_text (&ff_names_event, (int) event->event));
}

static gboolean
read_day (FfDate *ret_date, GTimeZone **ret_zone, GError **error)
{
  if (tz_text == NULL)
    return ff_option_missing ("--tz", error);
  if (!ff_date_parse (date_text, ret_date, error))
    {
      g_prefix_error (error, "--date: ");
      return FALSE;
    }
  *ret_zone = ff_zone_new (tz_text, error);
  if (*ret_zone == NULL)
    g_prefix_error (error, "--tz: ");
  return *ret_zone != NULL;
}

/* A zone that moves across the date line leaves out a day. */
static gboolean
check_day_exists (gint64 from, gint64 to, GError **error)
{
  if (from < to)
    return TRUE;
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT,
               _ ("--date: the calendar of %s leaves out %s; accepted: a day that it has"), tz_text,
               date_text);
  return FALSE;
}

static FfOutcome
run_day (FfConsole *console, GError **error)
{
  g_autoptr (GTimeZone) zone = NULL;
  g_autoptr (GArray) events = NULL;
  g_autofree char *day = NULL;
  FfSite site;
  FfDate date;
  FfPolar polar;
  gint64 from, to;

  if (!read_site (&site, error) || !read_day (&date, &zone, error))
    return FF_FAILED;
  ff_day_bounds (date, zone, &from, &to);
  if (!check_day_exists (from, to, error))
    return FF_FAILED;
  events = ff_sky_events (from, to, &site, &polar);

  day = ff_date_format_long (date);
  ff_console_line (console, "%s, %s", day, tz_text);
  ff_json_begin_array (console->json, "events");
  for (guint i = 0; i < events->len; i++)
    write_event (console, &g_array_index (events, FfSkyEvent, i), zone);
  ff_json_end (console->json);
  ff_json_text (console->json, "polar", ff_name_token (&ff_names_polar, (int) polar));
  if (polar != FF_POLAR_NONE)
    ff_console_line (console, "%s",
                     polar == FF_POLAR_DAY ? _ ("The sun stays up all day.")
                                           : _ ("The sun stays down all day."));
  return FF_DONE;
}

static FfOutcome
run (FfConsole *console, GError **error)
{
  if (!ff_console_want_words (console, 0, _ ("options only"), error) || !check_form (error))
    return FF_FAILED;
  return at_text != NULL ? run_position (console, error) : run_day (console, error);
}

const FfCommand ff_command_sun = {
  .name = "sun",
  .summary = N_ ("Sun and moon over a place, at a time or through a day"),
  .usage = "sun --lat D --lon D (--at TIME [--elevation M] | --date DAY --tz ZONE)",
  .example = "fieldfarectl sun --lat 57.2 --lon -4 --date 2027-09-18 --tz Europe/London",
  .entries = entries,
  .run = run,
};
