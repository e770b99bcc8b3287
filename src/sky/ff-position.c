/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-position.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "ff-error.h"
#include "ff-number.h"

#define LONGEST 200 /* bytes of a typed position */

static gboolean
refuse (const char *text, const char *why, GError **error)
{
  /* Translators: a position as it was typed, and why it can't be read. */
  g_set_error (error, FF_ERROR, FF_ERROR_INPUT, _ ("position “%s”: %s"), text, why);
  return FALSE;
}

/* ---- One spelling ---- */

/* The many marks of keyboards and web pages, as the one that the parser knows. */
static const struct {
  const char *written, *meant;
} spellings[] = {
  { "°", "d" },      { "º", "d" },      { "˚", "d" },      { "′", "'" },  { "’", "'" },
  { "‘", "'" },      { "ʹ", "'" },      { "´", "'" },      { "″", "\"" }, { "”", "\"" },
  { "“", "\"" },     { "ʺ", "\"" },     { "''", "\"" },    { "−", "-" },  { "–", "-" },
  { "\u00a0", " " }, { "\u2009", " " }, { "\u202f", " " }, { "\t", " " }, { ";", "," },
};

static char *
one_spelling (const char *text)
{
  GString *plain = g_string_new (text);

  for (guint i = 0; i < G_N_ELEMENTS (spellings); i++)
    g_string_replace (plain, spellings[i].written, spellings[i].meant, 0);
  g_string_ascii_up (plain);
  g_string_replace (plain, "D", "d", 0);
  return g_strstrip (g_string_free (plain, FALSE));
}

static gboolean
is_letter (char c)
{
  return c == 'N' || c == 'S' || c == 'E' || c == 'W';
}

/* Blanks stay only where they part numbers: none at a comma or before a mark, and a letter stands
 * at the number that it belongs to, behind it or, when the text begins with a letter, before it. */
static gboolean
is_idle_blank (char before, char after, gboolean letters_first)
{
  if (before == ',' || before == ':' || strchr (" ,d'\":", after) != NULL)
    return TRUE;
  return letters_first ? is_letter (before) : is_letter (after);
}

static char *
without_idle_blanks (const char *text)
{
  GString *tight = g_string_new (NULL);
  const gboolean letters_first = is_letter (text[0]);

  for (gsize i = 0; text[i] != '\0'; i++)
    if (i == 0 || text[i] != ' ' || !is_idle_blank (text[i - 1], text[i + 1], letters_first))
      g_string_append_c (tight, text[i]);
  return g_string_free (tight, FALSE);
}

/* ---- Two halves ---- */

static gsize
count_of (const char *text, const char *which)
{
  gsize n = 0;

  for (; *text != '\0'; text++)
    n += strchr (which, *text) != NULL;
  return n;
}

/* Cuts the text at `at`; a comma or blank that stands there goes. */
static void
cut (const char *text, gsize at, char **ret_first, char **ret_second)
{
  *ret_first = g_strndup (text, at);
  *ret_second = g_strdup (text + at + (text[at] == ',' || text[at] == ' '));
  g_strstrip (*ret_first);
  g_strstrip (*ret_second);
}

/* Where the second coordinate begins, or 0 when nothing in the text says so. */
static gsize
where_to_cut (const char *text)
{
  const gsize n_blanks = count_of (text, " "), n_letters = count_of (text, "NSEW");

  if (strchr (text, ',') != NULL)
    return strcspn (text, ",");
  if (n_letters == 2)
    return is_letter (text[0]) ? 1 + strcspn (text + 1, "NSEW") : 1 + strcspn (text, "NSEW");
  if (n_letters == 1 && !is_letter (text[0]) && text[strcspn (text, "NSEW") + 1] == ' ')
    return 1 + strcspn (text, "NSEW");
  return n_blanks == 1 ? strcspn (text, " ") : 0;
}

static gboolean
split (const char *typed, const char *text, char **ret_first, char **ret_second, GError **error)
{
  const gsize n_commas = count_of (text, ","), at = where_to_cut (text);

  if (n_commas > 1)
    return refuse (typed,
                   _ ("it has more than one comma; accepted: a point in decimals and one "
                      "comma between latitude and longitude"),
                   error);
  if (count_of (text, "NSEW") > 2)
    return refuse (typed, _ ("it has more than two of the letters N, S, E, W"), error);
  if (at == 0)
    return refuse (typed,
                   _ ("it is not clear where the second coordinate begins; accepted: as "
                      "57.2 N 4.0 W, 57°12'00\"N 4°00'00\"W, 57.2, -4.0 or geo:57.2,-4.0"),
                   error);
  cut (text, at, ret_first, ret_second);
  return TRUE;
}

/* ---- One coordinate ---- */

typedef enum { AXIS_ANY, AXIS_LATITUDE, AXIS_LONGITUDE } Axis;

typedef struct {
  Axis axis;
  double degrees;
} Coordinate;

/* Digits with at most one point among them; no sign, no exponent. */
static gboolean
take_number (const char **p, double *ret_value, gboolean *ret_whole)
{
  const gsize length = strspn (*p, "0123456789.");
  g_autofree char *digits = g_strndup (*p, length);

  if (length == 0 || length > 20 || count_of (digits, ".") > 1 || g_str_equal (digits, "."))
    return FALSE;
  *ret_value = g_ascii_strtod (digits, NULL);
  *ret_whole = strchr (digits, '.') == NULL;
  *p += length;
  return TRUE;
}

/* The mark after part n (0 degrees, 1 minutes, 2 seconds) with the blanks behind it, or a colon or
 * blank before another part. The last part may go without. */
static gboolean
take_mark (const char **p, guint n)
{
  static const char marks[] = { 'd', '\'', '"' };

  if (**p == marks[n])
    {
      (*p)++;
      *p += strspn (*p, " ");
      return TRUE;
    }
  if ((**p == ':' || **p == ' ') && n < 2 && g_ascii_isdigit ((*p)[1]))
    {
      (*p)++;
      return TRUE;
    }
  return **p == '\0';
}

/* "57", "57d12", "57:12:00.5": whole parts but for the last, minutes and seconds below 60. */
static gboolean
read_parts (const char *half, double *ret_degrees, const char **ret_why)
{
  const char *p = half;
  gboolean whole = TRUE;
  double sum = 0, unit = 1;

  *ret_why = _ ("a coordinate is not clear; accepted: as 57.2, 57°12.0' or 57°12'00.0\"");
  for (guint n = 0; n < 3 && (*p != '\0' || n == 0); n++)
    {
      double part;

      if (!whole || !take_number (&p, &part, &whole) || !take_mark (&p, n))
        return FALSE;
      if (n > 0 && part >= 60)
        {
          *ret_why = _ ("minutes and seconds go up to 59");
          return FALSE;
        }
      sum += part * unit;
      unit /= 60;
    }
  *ret_degrees = sum;
  return *p == '\0';
}

static char
take_letter (char *half)
{
  const gsize length = strlen (half);
  char letter = '\0';

  if (length > 0 && is_letter (half[0]))
    {
      letter = half[0];
      memmove (half, half + 1, length);
    }
  else if (length > 0 && is_letter (half[length - 1]))
    {
      letter = half[length - 1];
      half[length - 1] = '\0';
    }
  g_strstrip (half);
  return letter;
}

static gboolean
read_coordinate (const char *typed, char *half, Coordinate *ret, GError **error)
{
  const char letter = take_letter (half);
  const gboolean minus = half[0] == '-';
  const char *why;

  if (half[0] == '-' || half[0] == '+')
    memmove (half, half + 1, strlen (half));
  if (!read_parts (half, &ret->degrees, &why))
    return refuse (typed, why, error);
  ret->axis = letter == '\0'                   ? AXIS_ANY
              : letter == 'N' || letter == 'S' ? AXIS_LATITUDE
                                               : AXIS_LONGITUDE;
  /* A letter says the hemisphere; a sign beside it says nothing more. */
  if (letter == 'S' || letter == 'W' || (letter == '\0' && minus))
    ret->degrees = -ret->degrees;
  return TRUE;
}

/* ---- A position ---- */

/* `format` is one of ours, with one %s for the number. */
static gboolean
refuse_number (const char *typed, const char *format, double value, GError **error)
{
  g_autofree char *number = ff_number_format (value, 6);
  g_auto (GStrv) around = g_strsplit (format, "%s", 2);
  g_autofree char *why = g_strjoinv (number, around);

  return refuse (typed, why, error);
}

static gboolean
settle (const char *typed, FfPosition position, FfPosition *ret_position, GError **error)
{
  if (fabs (position.latitude_deg) > 90)
    return refuse_number (typed, _ ("latitude %s is out of range; accepted: 90 south to 90 north"),
                          position.latitude_deg, error);
  if (fabs (position.longitude_deg) > 180)
    return refuse_number (typed, _ ("longitude %s is out of range; accepted: 180 west to 180 east"),
                          position.longitude_deg, error);
  if (position.longitude_deg >= 180)
    position.longitude_deg = -180;
  if (fabs (position.latitude_deg) >= 90)
    position.longitude_deg = 0;
  /* No minus zero, which would be shown as south or west. */
  position.latitude_deg += 0.0;
  position.longitude_deg += 0.0;
  *ret_position = position;
  return TRUE;
}

static gboolean
put_in_order (const char *typed,
              const Coordinate *first,
              const Coordinate *second,
              FfPosition *ret_position,
              GError **error)
{
  const gboolean swapped = first->axis == AXIS_LONGITUDE || second->axis == AXIS_LATITUDE;
  FfPosition position = { first->degrees, second->degrees, NAN };

  if (first->axis != AXIS_ANY && first->axis == second->axis)
    return refuse (typed,
                   first->axis == AXIS_LATITUDE ? _ ("both coordinates are latitudes")
                                                : _ ("both coordinates are longitudes"),
                   error);
  /* Bare numbers are latitude first. Where that can't be, they may be the other way round, and that
   * is for the person to say. */
  if (first->axis == AXIS_ANY && second->axis == AXIS_ANY && fabs (first->degrees) > 90)
    return refuse_number (typed,
                          _ ("latitude stands first and can't be %s; accepted: -90 to 90, or the "
                             "letters N, S, E, W to say which is which"),
                          first->degrees, error);
  if (swapped)
    position = (FfPosition){ second->degrees, first->degrees, NAN };
  return settle (typed, position, ret_position, error);
}

/* ---- geo: (RFC 5870, section 3.3) ---- */

static gboolean
read_uri_number (const char *text, double *ret_value)
{
  const char *p = text + (*text == '-');
  gboolean whole;

  if (!g_ascii_isdigit (*p) || p[strlen (p) - 1] == '.' || !take_number (&p, ret_value, &whole)
      || *p != '\0')
    return FALSE;
  if (*text == '-')
    *ret_value = -*ret_value;
  return TRUE;
}

static gboolean
check_parameters (const char *typed, char **parameters, GError **error)
{
  double value;

  for (; *parameters != NULL; parameters++)
    {
      if (g_ascii_strncasecmp (*parameters, "crs=", 4) == 0
          && g_ascii_strcasecmp (*parameters + 4, "wgs84") != 0)
        return refuse (typed, _ ("its reference system is not WGS84"), error);
      if (g_ascii_strncasecmp (*parameters, "u=", 2) == 0
          && !(read_uri_number (*parameters + 2, &value) && value >= 0))
        return refuse (typed, _ ("its uncertainty (u=) is not a number of metres"), error);
    }
  return TRUE;
}

static gboolean
parse_uri (const char *typed, const char *path, FfPosition *ret_position, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (path, ";", -1);
  g_auto (GStrv) numbers = g_strsplit (parts[0] != NULL ? parts[0] : "", ",", -1);
  const guint n = g_strv_length (numbers);
  FfPosition position = { 0, 0, NAN };

  if (n < 2 || n > 3 || !read_uri_number (numbers[0], &position.latitude_deg)
      || !read_uri_number (numbers[1], &position.longitude_deg)
      || (n == 3 && !read_uri_number (numbers[2], &position.altitude_m)))
    return refuse (typed, _ ("accepted: geo: with latitude, comma and longitude, without blanks"),
                   error);
  return check_parameters (typed, parts + 1, error)
         && settle (typed, position, ret_position, error);
}

/* ---- Public ---- */

gboolean
ff_position_parse (const char *text, FfPosition *ret_position, GError **error)
{
  g_autofree char *typed
      = g_strstrip (g_utf8_make_valid (text, LONGEST < strlen (text) ? LONGEST : -1));
  g_autofree char *plain = one_spelling (typed);
  g_autofree char *tight = NULL;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  Coordinate a, b;

  if (strlen (text) > LONGEST)
    return refuse (typed, _ ("it is too long"), error);
  if (g_ascii_strncasecmp (typed, "geo:", 4) == 0)
    return parse_uri (typed, typed + 4, ret_position, error);
  tight = without_idle_blanks (plain);
  return split (typed, tight, &first, &second, error) && read_coordinate (typed, first, &a, error)
         && read_coordinate (typed, second, &b, error)
         && put_in_order (typed, &a, &b, ret_position, error);
}

/* The letter goes by what is shown: a hair south of the equator is 0.00000° N. */
static char *
format_degrees (double degrees, char positive, char negative)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  const double rounded = floor (fabs (degrees) * 1e5 + 0.5) / 1e5;

  g_ascii_formatd (number, sizeof number, "%.5f", rounded);
  return g_strdup_printf ("%s° %c", number, degrees < 0 && rounded > 0 ? negative : positive);
}

char *
ff_position_format (double latitude_deg, double longitude_deg)
{
  g_autofree char *latitude = format_degrees (latitude_deg, 'N', 'S');
  g_autofree char *longitude = format_degrees (longitude_deg, 'E', 'W');

  return g_strdup_printf ("%s, %s", latitude, longitude);
}

/* All in whole tenths of a second, so that the carry is that of whole numbers. */
static char *
format_dms (double degrees, char positive, char negative)
{
  const gint64 tenths = (gint64) floor (fabs (degrees) * 36000 + 0.5);

  return g_strdup_printf ("%d°%02d′%02d.%d″ %c", (int) (tenths / 36000), (int) (tenths / 600 % 60),
                          (int) (tenths / 10 % 60), (int) (tenths % 10),
                          degrees < 0 && tenths > 0 ? negative : positive);
}

char *
ff_position_format_dms (double latitude_deg, double longitude_deg)
{
  g_autofree char *latitude = format_dms (latitude_deg, 'N', 'S');
  g_autofree char *longitude = format_dms (longitude_deg, 'E', 'W');

  return g_strdup_printf ("%s, %s", latitude, longitude);
}
