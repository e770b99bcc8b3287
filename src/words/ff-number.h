/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers as text: always with a decimal point, whatever the locale, and whole or not at all. */
#pragma once

#include <glib.h>

/* Reads the whole of `text` as a finite number between low and high, both included.
 * `what` names it in the message ("--lat", "minutes"). Error: FF_ERROR_INPUT; ret untouched. */
gboolean ff_number_parse (const char *what,
                          const char *text,
                          double low,
                          double high,
                          double *ret_value,
                          GError **error);

/* The same for a whole number. */
gboolean ff_integer_parse (const char *what,
                           const char *text,
                           int low,
                           int high,
                           int *ret_value,
                           GError **error);

/* A number for people with at most `decimals` places and no trailing zeros: "2.8", "12". */
char *ff_number_format (double value, int decimals) G_GNUC_WARN_UNUSED_RESULT;

/* A strength or difference in stops, to a tenth: "1 stop", "5 stops", "3.1 stops". */
char *ff_stops_format (double stops) G_GNUC_WARN_UNUSED_RESULT;
