/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A position on the Earth as people write it, and shown back so that a slip is seen. WGS84;
 * latitude north positive, longitude east positive, in degrees. */
#pragma once

#include <glib.h>

typedef struct {
  double latitude_deg;  /* -90 to 90 */
  double longitude_deg; /* -180 to below 180; 0 at the poles (RFC 5870, 3.4.2) */
  double altitude_m;    /* of a geo: URI, above the ellipsoid; NAN: not given */
} FfPosition;

/* Reads two coordinates in any of these forms:
 *   decimal degrees                 57.2 -4.0     N57.2 W4.0      57.2000° N, 4.0000° W
 *   degrees and decimal minutes     57 12.0 N 4 0.0 W             57°12.0'N 004°00.0'W
 *   degrees, minutes and seconds    57d12'00"N 4d0'0"W            57:12:00 -4:00:00
 *   geo: URI (RFC 5870)             geo:57.2,-4.0,12;u=10
 * The marks are those of GeoConvert (C. F. F. Karney, GeographicLib): d or °, ' or ′, " or ″, or
 * colons, or blanks. Latitude comes first unless letters say otherwise; a letter wins over a sign.
 * What could be read in two ways is refused. Error: FF_ERROR_INPUT, one sentence; ret untouched. */
gboolean ff_position_parse (const char *text, FfPosition *ret_position, GError **error);

/* "57.20000° N, 4.00000° W": five places, about a metre. What it writes the parser reads. */
char *ff_position_format (double latitude_deg, double longitude_deg) G_GNUC_WARN_UNUSED_RESULT;

/* "57°12′00.0″ N, 4°00′00.0″ W". 59.96″ is the next minute, never 60.0″. */
char *ff_position_format_dms (double latitude_deg,
                              double longitude_deg) G_GNUC_WARN_UNUSED_RESULT;
