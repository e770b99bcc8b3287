/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Civil time: dates, wall clocks and zones as the crew writes them, instants as UTC seconds.
 * A shoot date belongs to the zone of its place, never to that of the computer. */
#pragma once

#include <glib.h>

typedef struct {
  int year, month, day;
} FfDate;

#define FF_MINUTE 60
#define FF_NO_CLOCK (-1) /* a wall clock that was not given */

/* "2027-09-18". A date that does not exist is refused. Years 1900 to 2199. */
gboolean ff_date_parse (const char *text, FfDate *ret_date, GError **error);
char *ff_date_format (FfDate date) G_GNUC_WARN_UNUSED_RESULT;

/* "Sat 18 Sep" and "Saturday 18 September 2027", translated. */
char *ff_date_format_short (FfDate date) G_GNUC_WARN_UNUSED_RESULT;
char *ff_date_format_long (FfDate date) G_GNUC_WARN_UNUSED_RESULT;

int ff_date_compare (FfDate a, FfDate b);

/* Day of the year, 1 to 366. */
int ff_date_day_of_year (FfDate date);

/* A zone by its IANA name ("Europe/London"). Offsets and POSIX rules are refused: GLib would
 * read "UTC+02:00" as two hours the other way. Error: FF_ERROR_INPUT. */
GTimeZone *ff_zone_new (const char *name, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ISO 8601 with "Z" or an offset; without one it is refused. */
gboolean ff_instant_parse (const char *text, gint64 *ret_instant, GError **error);

/* "2027-09-18T16:30:00+01:00"; a NULL zone means UTC, "+00:00". Rounded to whole seconds. */
char *ff_instant_format (double instant, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* "16:30", minutes after midnight, 00:00 to 24:00. */
gboolean ff_clock_parse (const char *text, int *ret_minutes, GError **error);
char *ff_clock_format (int minutes) G_GNUC_WARN_UNUSED_RESULT;

/* The wall clock of an instant, "16:30", rounded to the minute. */
char *ff_instant_clock (double instant, GTimeZone *zone) G_GNUC_WARN_UNUSED_RESULT;

/* The instant of a wall clock on a date. Minutes may pass 24:00 into the next days. A clock that
 * summer time skips is refused; of one that comes twice the first is taken. */
gboolean ff_instant_from_clock (FfDate date,
                                int minutes,
                                GTimeZone *zone,
                                gint64 *ret_instant,
                                GError **error);

/* The local civil day [from, to): 23, 24 or 25 hours; midnight itself may not exist. */
void ff_day_bounds (FfDate date, GTimeZone *zone, gint64 *ret_from, gint64 *ret_to);

/* The local date of an instant. */
FfDate ff_instant_date (gint64 instant, GTimeZone *zone);
