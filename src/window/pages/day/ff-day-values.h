/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is typed on the day's page, to values of records and back. Pure. People type faster than a
 * form likes: "1630", "16.30" and "9:05" are clocks, "18.9.2027" is a date, "3,5" is a number. */
#pragma once

#include "ff-field.h"

/* A field as it is shown; empty for what was not given. A number is divided by `scale`. */
char *ff_day_value_text (const FfField *field,
                         gconstpointer record,
                         double scale) G_GNUC_WARN_UNUSED_RESULT;

/* Takes what was typed into the record; empty takes the value away. FF_ERROR_INPUT, in words that
 * go beside the field; the record stays as it was. */
gboolean ff_day_value_set (const FfField *field,
                           gpointer record,
                           double scale,
                           const char *text,
                           GError **error);

/* "16:30", "1630", "16.30", "9:05", and on to "25:30" for half past one on the next day. */
gboolean ff_day_clock_parse (const char *text, int *ret_minutes, GError **error);

/* "2027-09-18", "18.9.2027", "18. 9. 2027". With slashes the order is not clear: refused. */
gboolean ff_day_date_parse (const char *text, char **ret_date, GError **error);

/* "17:14 ferry passes" into its clock and its words. */
gboolean ff_day_event_parse (const char *text, int *ret_minutes, char **ret_words, GError **error);

/* A record's refusal without the name of the record and of the field, which the person sees: "job
 * “X”, title: it is missing" is "it is missing". `whose` is "job “X”". */
const char *ff_day_refusal (const char *whose, const FfField *field, const char *message);

/* Initials of a name that nobody has yet: "Marit Ostrander" is "MO", a second one "MA". `taken`
 * ends with NULL. */
char *ff_day_initials (const char *name, const char *const *taken) G_GNUC_WARN_UNUSED_RESULT;
