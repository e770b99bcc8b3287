/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A square code (ISO/IEC 18004) that a telephone's camera reads. */
#pragma once

#include <cairo.h>
#include <glib.h>

/* "geo:57.2,-4" for a position (RFC 5870): latitude first, at most six decimals, which is 0.1 m. */
char *ff_geo_uri (double latitude_deg, double longitude_deg) G_GNUC_WARN_UNUSED_RESULT;

/* Draws the text's code into a square at (0, 0), with its quiet zone of four modules, in black. FALSE
 * if the text is too long for one; then nothing is drawn. */
gboolean ff_qr_draw (cairo_t *cr, const char *text, double side);
