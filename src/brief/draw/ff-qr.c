/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-qr.h"

#include <math.h>
#include <qrencode.h>
#include <string.h>

#define QUIET 4 /* modules kept free around it, ISO/IEC 18004 */

static char *
degrees (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  char *end;

  g_ascii_formatd (text, sizeof text, "%.6f", value);
  for (end = text + strlen (text) - 1; *end == '0'; end--)
    *end = '\0';
  if (*end == '.')
    *end = '\0';
  return g_strdup (text);
}

char *
ff_geo_uri (double latitude_deg, double longitude_deg)
{
  /* RFC 5870, 3.4.4: at a pole every longitude is 0, and −180 is 180. */
  const double longitude = fabs (latitude_deg) == 90.0    ? 0.0
                           : longitude_deg == -180.0 ? 180.0
                                                     : longitude_deg;
  g_autofree char *north = degrees (latitude_deg), *east = degrees (longitude);

  return g_strdup_printf ("geo:%s,%s", north, east);
}

gboolean
ff_qr_draw (cairo_t *cr, const char *text, double side)
{
  QRcode *code = QRcode_encodeString8bit (text, 0, QR_ECLEVEL_M);
  double module;
  int x, y;

  if (code == NULL)
    return FALSE;
  module = side / (code->width + 2 * QUIET);
  cairo_save (cr);
  cairo_set_source_rgb (cr, 0, 0, 0);
  for (y = 0; y < code->width; y++)
    for (x = 0; x < code->width; x++)
      if (code->data[y * code->width + x] & 1)
        cairo_rectangle (cr, (x + QUIET) * module, (y + QUIET) * module, module, module);
  cairo_fill (cr);
  cairo_restore (cr);
  QRcode_free (code);
  return TRUE;
}
