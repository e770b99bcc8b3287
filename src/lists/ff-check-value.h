/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an item asks a person to read and say: words, or a number with its unit and bounds; and
 * whether what was said agrees with the bounds and with what is known. */
#pragma once

#include <glib.h>

typedef enum { FF_VALUE_NONE, FF_VALUE_WORDS, FF_VALUE_NUMBER } FfValueSort;

typedef struct {
  FfValueSort sort;
  double low, high; /* NAN: no bound on that side */
  char *unit;       /* as written: "V", "m/s"; empty or NULL: none */
} FfCheckValue;

/* "words", "number", "V", "16.4 to 16.8 V", "at least 16.4 V", "at most 8 m/s". FF_ERROR_INPUT. */
gboolean ff_check_value_parse (const char *text, FfCheckValue *ret_value, GError **error);
char *ff_check_value_format (const FfCheckValue *value) G_GNUC_WARN_UNUSED_RESULT;
void ff_check_value_clear (FfCheckValue *value);
gboolean ff_check_value_equal (const FfCheckValue *a, const FfCheckValue *b);

/* What a person typed as a number: point or comma, the unit may stand behind it. */
gboolean ff_said_number (const FfCheckValue *value, const char *said, double *ret_number);

/* Inside the bounds, both included. Words, and a number without bounds, always are. */
gboolean ff_said_within (const FfCheckValue *value, const char *said);

/* Whether what was said is what was expected. `expected` may hold several ways to say it, parted by
 * " / ": "5 stops / ND32". Case and blanks do not count; a bare number agrees with a label that
 * ends in it ("3" with "b3") or a measure that begins with it ("5" with "5 stops"). */
gboolean ff_said_agrees (const char *expected, const char *said);
