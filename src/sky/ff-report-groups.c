/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-report-groups.h"

#include <math.h>
#include <string.h>

#define KNOT (1852.0 / 3600.0)   /* m/s; the international nautical mile is 1852 m */
#define KMH (1.0 / 3.6)          /* m/s */
#define STATUTE_MILE 1609.344    /* m */
#define FOOT 0.3048              /* m */
#define INCH_OF_MERCURY 33.86389 /* hPa, at 0 °C */

void
ff_report_part_clear (FfReportPart *part)
{
  memset (part, 0, sizeof *part);
  part->veer_from_deg = NAN;
  part->veer_to_deg = NAN;
}

gboolean
ff_report_digits (const char **text, guint n, int *ret_value)
{
  int value = 0;
  guint i;

  for (i = 0; i < n; i++)
    {
      if (!g_ascii_isdigit ((*text)[i]))
        return FALSE;
      value = value * 10 + g_ascii_digit_value ((*text)[i]);
    }
  *text += n;
  *ret_value = value;
  return TRUE;
}

static gboolean
skip (const char **text, const char *word)
{
  if (!g_str_has_prefix (*text, word))
    return FALSE;
  *text += strlen (word);
  return TRUE;
}

static FfReported
reported (FfReportedIs is, double value)
{
  return (FfReported){ .is = is, .value = value };
}

/* Two or three figures of a speed, "P" before them for "or more", or solidi. */
static gboolean
read_speed (const char **text, FfReported *ret_speed)
{
  FfReportedIs is = FF_REPORTED_EXACT;
  int value;

  if (skip (text, "//"))
    {
      *ret_speed = reported (FF_REPORTED_MISSING, 0.0);
      return TRUE;
    }
  if (skip (text, "P"))
    is = FF_REPORTED_OR_MORE;
  if (!ff_report_digits (text, 3, &value) && !ff_report_digits (text, 2, &value))
    return FALSE;
  *ret_speed = reported (is, value);
  return TRUE;
}

static gboolean
read_direction (const char **text, FfReported *ret_deg, gboolean *ret_variable)
{
  int degrees;

  *ret_variable = skip (text, "VRB");
  *ret_deg = reported (FF_REPORTED_MISSING, 0.0);
  if (*ret_variable || skip (text, "///"))
    return TRUE;
  if (!ff_report_digits (text, 3, &degrees) || degrees > 360)
    return FALSE;
  *ret_deg = reported (FF_REPORTED_EXACT, degrees);
  return TRUE;
}

static double
speed_unit (const char *text)
{
  if (strcmp (text, "KT") == 0)
    return KNOT;
  if (strcmp (text, "MPS") == 0)
    return 1.0;
  return strcmp (text, "KMH") == 0 ? KMH : 0.0;
}

/* 15.5: 24012G25MPS, VRB03KT, 040P99KT, /////KT. */
static gboolean
read_wind (FfGroupReader *reader, const char *group)
{
  FfReportPart *part = reader->part;
  FfReported from, mean, gust = { 0 };
  gboolean variable;
  double unit;

  if (!read_direction (&group, &from, &variable) || !read_speed (&group, &mean))
    return FALSE;
  if (skip (&group, "G") && !read_speed (&group, &gust))
    return FALSE;
  unit = speed_unit (group);
  if (unit == 0.0)
    return FALSE;
  mean.value *= unit;
  gust.value *= unit;
  part->wind_deg = from;
  part->wind_variable = variable;
  part->wind_ms = mean;
  part->gust_ms = gust;
  part->wind_unit_ms = unit;
  part->names |= FF_NAMES_WIND;
  return TRUE;
}

/* 15.5.3: 180V240, clockwise. */
static gboolean
read_veer (FfGroupReader *reader, const char *group)
{
  int from, to;

  if (!ff_report_digits (&group, 3, &from) || !skip (&group, "V")
      || !ff_report_digits (&group, 3, &to) || *group != '\0' || from > 360 || to > 360)
    return FALSE;
  reader->part->veer_from_deg = from;
  reader->part->veer_to_deg = to;
  return TRUE;
}

static gboolean
read_cavok (FfGroupReader *reader, const char *group)
{
  FfReportPart *part = reader->part;

  if (strcmp (group, "CAVOK") != 0)
    return FALSE;
  part->cavok = TRUE;
  part->clear = TRUE;
  part->clear_to_m = 5000 * FOOT;
  part->n_weather = 0;
  part->n_layers = 0;
  part->visibility_m = reported (FF_REPORTED_OR_MORE, 10000.0);
  part->names |= FF_NAMES_VISIBILITY | FF_NAMES_WEATHER | FF_NAMES_CLOUD;
  return TRUE;
}

static gboolean
is_compass (const char *text)
{
  static const char *const points[] = { "N", "NE", "E", "SE", "S", "SW", "W", "NW", NULL };

  return g_strv_contains (points, text);
}

static void
set_visibility (FfReportPart *part, FfReportedIs is, double metres)
{
  part->visibility_m = reported (is, metres);
  part->names |= FF_NAMES_VISIBILITY;
}

/* 15.6: metres, rounded down; 9999 is 10 km or more, 0000 less than 50 m. A compass point behind
 * makes it the least in that direction, unless nothing else is said. */
static gboolean
read_metres (FfGroupReader *reader, const char *group)
{
  FfReportPart *part = reader->part;
  FfReported seen;
  int metres;

  if (strcmp (group, "////") == 0)
    {
      set_visibility (part, FF_REPORTED_MISSING, 0.0);
      return TRUE;
    }
  if (!ff_report_digits (&group, 4, &metres))
    return FALSE;
  if (metres == 9999)
    seen = reported (FF_REPORTED_OR_MORE, 10000.0);
  else if (metres == 0)
    seen = reported (FF_REPORTED_LESS_THAN, 50.0);
  else
    seen = reported (FF_REPORTED_EXACT, metres);
  if (is_compass (group) && part->visibility_m.is != FF_REPORTED_MISSING)
    part->lowest_visibility_m = seen;
  else if (*group == '\0' || strcmp (group, "NDV") == 0 || is_compass (group))
    set_visibility (part, seen.is, seen.value);
  else
    return FALSE;
  return TRUE;
}

/* Up to three digits, "n/d" or both: the figures of a visibility in miles. */
static gboolean
read_figures (const char **text, int *ret_value)
{
  guint n = 0;

  while (n < 3 && g_ascii_isdigit ((*text)[n]))
    n++;
  return n > 0 && ff_report_digits (text, n, ret_value);
}

/* FMH-1, table 12-1: 10SM, 1/4SM, M1/4SM, P6SM. */
static gboolean
read_miles_group (const char *group, double whole, FfReported *ret_visibility)
{
  FfReportedIs is = FF_REPORTED_EXACT;
  int above, below = 1;

  if (skip (&group, "M"))
    is = FF_REPORTED_LESS_THAN;
  else if (skip (&group, "P"))
    is = FF_REPORTED_OR_MORE;
  if (!read_figures (&group, &above)
      || (skip (&group, "/") && (!read_figures (&group, &below) || below == 0))
      || strcmp (group, "SM") != 0)
    return FALSE;
  *ret_visibility = reported (is, (whole + (double) above / below) * STATUTE_MILE);
  return TRUE;
}

static gboolean
read_miles (FfGroupReader *reader, const char *group)
{
  FfReported seen;
  const char *rest = group;
  int whole;

  if (read_miles_group (group, 0.0, &seen))
    {
      set_visibility (reader->part, seen.is, seen.value);
      return TRUE;
    }
  if (!read_figures (&rest, &whole) || *rest != '\0' || strchr (reader->next, '/') == NULL
      || !read_miles_group (reader->next, whole, &seen))
    return FALSE;
  set_visibility (reader->part, seen.is, seen.value);
  reader->took_next = TRUE;
  return TRUE;
}

/* Some stations write kilometres, "20KM", though no rule has that form. */
static gboolean
read_kilometres (FfGroupReader *reader, const char *group)
{
  int value;

  if (!read_figures (&group, &value) || strcmp (group, "KM") != 0)
    return FALSE;
  set_visibility (reader->part, FF_REPORTED_EXACT, value * 1000.0);
  return TRUE;
}

static gboolean
skip_any (const char **text, const char *const *words)
{
  for (; *words != NULL; words++)
    if (skip (text, *words))
      return TRUE;
  return FALSE;
}

/* Code table 4678: intensity, descriptor, phenomena. */
static gboolean
is_weather (const char *group)
{
  static const char *const descriptors[]
      = { "MI", "BC", "PR", "DR", "BL", "SH", "TS", "FZ", NULL };
  static const char *const phenomena[]
      = { "DZ", "RA", "SN", "SG", "IC", "PL", "GR", "GS", "UP", "BR", "FG", "FU",
          "VA", "DU", "SA", "HZ", "PY", "PO", "SQ", "FC", "SS", "DS", NULL };
  guint n = 0;

  if (*group == '-' || *group == '+')
    group++;
  skip (&group, "VC");
  while (n < 2 && skip_any (&group, descriptors))
    n++;
  while (n < 5 && skip_any (&group, phenomena))
    n++;
  return n > 0 && *group == '\0';
}

static gboolean
read_weather (FfGroupReader *reader, const char *group)
{
  FfReportPart *part = reader->part;

  if (strcmp (group, "NSW") == 0)
    part->n_weather = 0;
  else if (strcmp (group, "//") != 0)
    {
      if (!is_weather (group) || strlen (group) >= sizeof part->weather[0]
          || part->n_weather == FF_REPORT_WEATHERS)
        return FALSE;
      g_strlcpy (part->weather[part->n_weather++], group, sizeof part->weather[0]);
    }
  part->names |= FF_NAMES_WEATHER;
  return TRUE;
}

/* Hundreds of feet above the aerodrome, or solidi. */
static gboolean
read_height (const char **text, FfReported *ret_m)
{
  int hundreds;

  *ret_m = reported (FF_REPORTED_MISSING, 0.0);
  if (skip (text, "///"))
    return TRUE;
  if (!ff_report_digits (text, 3, &hundreds))
    return FALSE;
  *ret_m = reported (FF_REPORTED_EXACT, hundreds * 100.0 * FOOT);
  return TRUE;
}

static gboolean
read_cover (const char **text, FfCover *ret_cover)
{
  static const char *const words[] = { "///", "FEW", "SCT", "BKN", "OVC" };
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (words); i++)
    if (skip (text, words[i]))
      {
        *ret_cover = (FfCover) i;
        return TRUE;
      }
  return FALSE;
}

/* 15.9: SCT013CB, ///015, BKN///. */
static gboolean
read_layer (FfGroupReader *reader, const char *group)
{
  FfReportPart *part = reader->part;
  FfCloudLayer layer = { 0 };

  if (!read_cover (&group, &layer.cover) || !read_height (&group, &layer.base_m))
    return FALSE;
  if (strcmp (group, "///") != 0)
    {
      const char *letter;

      for (letter = group; *letter != '\0'; letter++)
        if (!g_ascii_isupper (*letter))
          return FALSE;
      if (g_strlcpy (layer.type, group, sizeof layer.type) >= sizeof layer.type)
        return FALSE;
    }
  if (part->n_layers == FF_REPORT_LAYERS)
    return FALSE;
  part->layers[part->n_layers++] = layer;
  part->names |= FF_NAMES_CLOUD;
  return TRUE;
}

static gboolean
read_sky (FfGroupReader *reader, const char *group)
{
  static const struct {
    const char *group;
    double to_ft;
  } clear[] = { { "SKC", 12000 }, { "CLR", 12000 }, { "NSC", 5000 }, { "NCD", 0 } };
  static const char *const unknown[] = { "//////", "/////////", NULL };
  FfReportPart *part = reader->part;
  gsize i;

  for (i = 0; i < G_N_ELEMENTS (clear); i++)
    if (strcmp (group, clear[i].group) == 0)
      {
        part->clear = TRUE;
        part->clear_to_m = clear[i].to_ft * FOOT;
        part->names |= FF_NAMES_CLOUD;
        return TRUE;
      }
  if (skip (&group, "VV"))
    {
      if (!read_height (&group, &part->vertical_visibility_m) || *group != '\0')
        return FALSE;
      part->sky_hidden = TRUE;
    }
  else if (g_strv_contains (unknown, group))
    part->cloud_unknown = TRUE;
  else
    return FALSE;
  part->names |= FF_NAMES_CLOUD;
  return TRUE;
}

static gboolean
read_degrees (const char **text, FfReported *ret_c)
{
  gboolean below = skip (text, "M");
  int value;

  *ret_c = reported (FF_REPORTED_MISSING, 0.0);
  if (!below && (skip (text, "//") || **text == '\0' || **text == '/'))
    return TRUE;
  if (!ff_report_digits (text, 2, &value))
    return FALSE;
  *ret_c = reported (FF_REPORTED_EXACT, below ? -(double) value : value);
  return TRUE;
}

/* 15.11: 06/04, M02/M02, 02/, /////. "M00" is between −0.5 and 0 and stays −0. */
static gboolean
read_temperature (FfGroupReader *reader, const char *group)
{
  FfReported temperature, dew_point;

  if (*group == '\0' || (*group == '/' && strcmp (group, "/////") != 0)
      || !read_degrees (&group, &temperature) || !skip (&group, "/")
      || !read_degrees (&group, &dew_point) || *group != '\0')
    return FALSE;
  reader->report->temperature_c = temperature;
  reader->report->dew_point_c = dew_point;
  return TRUE;
}

/* 15.12: Q1013, A2992 (inches of mercury in hundredths), QNH2985INS. */
static gboolean
read_pressure (FfGroupReader *reader, const char *group)
{
  FfReported *qnh = &reader->report->qnh_hpa;
  gboolean inches = skip (&group, "QNH") || skip (&group, "A");
  int value;

  if (!inches && !skip (&group, "Q"))
    return FALSE;
  if (strcmp (group, "////") == 0)
    return TRUE;
  if (!ff_report_digits (&group, 4, &value) || (*group != '\0' && strcmp (group, "INS") != 0)
      || value == 0)
    return FALSE;
  *qnh = reported (FF_REPORTED_EXACT, inches ? value / 100.0 * INCH_OF_MERCURY : value);
  return TRUE;
}

/* Runway range and state, shear, recent weather, state of the sea, temperatures of a forecast: they
 * look like other groups and would be taken for them. */
static gboolean
read_aside (FfGroupReader *reader, const char *group)
{
  const char *rest = group;
  int number;
  gboolean known
      = (skip (&rest, "R") && ff_report_digits (&rest, 2, &number))
        || strcmp (group, "ALL") == 0 || g_str_has_prefix (group, "RWY")
        || (g_str_has_prefix (group, "RE") && is_weather (group + 2))
        || (g_str_has_prefix (group, "WS") && (group[2] == '\0' || strchr (group, '/') != NULL))
        || strcmp (group, "SNOCLO") == 0 || strcmp (group, "R/SNOCLO") == 0
        || (group[0] == 'W' && strchr ("0123456789M/", group[1]) != NULL
            && strstr (group, "/S") != NULL)
        || ((g_str_has_prefix (group, "TX") || g_str_has_prefix (group, "TN"))
            && strchr (group, '/') != NULL);

  if (known)
    g_ptr_array_add (reader->aside, g_strdup (group));
  return known;
}

gboolean
ff_report_read_group (FfGroupReader *reader, const char *group)
{
  static gboolean (*const readers[]) (FfGroupReader *, const char *)
      = { read_aside,   read_cavok, read_wind,   read_veer,  read_metres,      read_miles,
          read_kilometres, read_sky, read_weather, read_layer, read_temperature, read_pressure };
  gsize i;

  reader->took_next = FALSE;
  for (i = 0; i < G_N_ELEMENTS (readers); i++)
    if (readers[i](reader, group))
      return TRUE;
  return FALSE;
}
