/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-zone-table.h"

#include <math.h>
#include <string.h>

#define EARTH_KM  6371.0
#define MOST_ROWS 2000 /* the real table has some 350 */

static void
city_free (gpointer data)
{
  FfZoneCity *city = data;

  g_free (city->zone);
  g_free (city->city);
  g_free (city);
}

/* ---- Reading ---- */

/* ISO 6709 as the table writes it: sign, then ddmm or ddmmss for latitudes, a digit more for
 * longitudes. */
static gboolean
read_angle (const char *text, gsize length, gsize degree_digits, double *ret_deg)
{
  const gsize digits = length - 1;
  gint64 number;
  g_autofree char *bare = NULL;

  if (length < 2 || (digits != degree_digits + 2 && digits != degree_digits + 4)
      || strspn (text + 1, "0123456789") < digits)
    return FALSE;
  bare = g_strndup (text + 1, digits);
  number = g_ascii_strtoll (bare, NULL, 10);
  if (digits == degree_digits + 2)
    number *= 100;
  *ret_deg = (double) (number / 10000) + (double) (number / 100 % 100) / 60
             + (double) (number % 100) / 3600;
  if (text[0] == '-')
    *ret_deg = -*ret_deg;
  return TRUE;
}

static gboolean
read_place (const char *text, double *ret_latitude, double *ret_longitude)
{
  gsize first;

  if (text[0] != '+' && text[0] != '-')
    return FALSE;
  first = 1 + strcspn (text + 1, "+-");
  return text[first] != '\0' && read_angle (text, first, 2, ret_latitude)
         && read_angle (text + first, strlen (text + first), 3, ret_longitude)
         && fabs (*ret_latitude) <= 90 && fabs (*ret_longitude) <= 180;
}

/* "America/Port-au-Prince" → "Port-au-Prince", "Africa/Addis_Ababa" → "Addis Ababa" */
static char *
city_of_zone (const char *zone)
{
  const char *slash = strrchr (zone, '/');

  return g_strdelimit (g_strdup (slash != NULL ? slash + 1 : zone), "_", ' ');
}

static void
add_row (GPtrArray *table, const char *line)
{
  g_auto (GStrv) columns = g_strsplit (line, "\t", 4);
  double latitude, longitude;
  FfZoneCity *city;

  if (line[0] == '#' || g_strv_length (columns) < 3 || strlen (columns[2]) > 64
      || !g_str_is_ascii (columns[2]) || !read_place (columns[1], &latitude, &longitude))
    return;
  city = g_new0 (FfZoneCity, 1);
  city->zone = g_strdup (columns[2]);
  city->city = city_of_zone (columns[2]);
  city->latitude_deg = latitude;
  city->longitude_deg = longitude;
  g_ptr_array_add (table, city);
}

GPtrArray *
ff_zone_table_parse (const char *text)
{
  GPtrArray *table = g_ptr_array_new_with_free_func (city_free);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL && table->len < MOST_ROWS; i++)
    add_row (table, lines[i]);
  return table;
}

/* TZDIR says where the C library looks for its zones. */
GPtrArray *
ff_zone_table_load (void)
{
  static const char *const names[] = { "zone1970.tab", "zone.tab" };
  const char *folder = g_getenv ("TZDIR") != NULL ? g_getenv ("TZDIR") : "/usr/share/zoneinfo";

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);
      g_autofree char *text = NULL;

      if (g_file_get_contents (path, &text, NULL, NULL))
        return ff_zone_table_parse (text);
    }
  return ff_zone_table_parse ("");
}

/* ---- Looking ---- */

double
ff_zone_city_distance_km (const FfZoneCity *city, double latitude_deg, double longitude_deg)
{
  const double rad = G_PI / 180;
  const double north = sin ((city->latitude_deg - latitude_deg) * rad / 2);
  const double east = sin ((city->longitude_deg - longitude_deg) * rad / 2);
  const double chord
      = north * north + cos (city->latitude_deg * rad) * cos (latitude_deg * rad) * east * east;

  return 2 * EARTH_KM * asin (MIN (1.0, sqrt (chord)));
}

static const FfZoneCity *
nearest_but (GPtrArray *table, GPtrArray *taken, double latitude_deg, double longitude_deg)
{
  const FfZoneCity *nearest = NULL;
  double least = INFINITY;

  for (guint i = 0; i < table->len; i++)
    {
      const FfZoneCity *city = g_ptr_array_index (table, i);
      const double distance = ff_zone_city_distance_km (city, latitude_deg, longitude_deg);

      if (distance < least && !g_ptr_array_find (taken, city, NULL))
        {
          nearest = city;
          least = distance;
        }
    }
  return nearest;
}

GPtrArray *
ff_zone_table_nearest (GPtrArray *table, double latitude_deg, double longitude_deg, guint most)
{
  GPtrArray *found = g_ptr_array_new ();

  while (found->len < most)
    {
      const FfZoneCity *city = nearest_but (table, found, latitude_deg, longitude_deg);

      if (city == NULL)
        break;
      g_ptr_array_add (found, (gpointer) city);
    }
  return found;
}
