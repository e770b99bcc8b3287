/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The times of a day as a calendar file (RFC 5545), for the telephones of the crew. */
#pragma once

#include <glib.h>

typedef struct {
  const char *key;     /* keeps the entry the same one when the file is sent again: "first-off" */
  const char *summary;
  gint64 at, to;       /* UTC seconds; to == at: a moment */
} FfCalendarEntry;

typedef struct {
  const char *job_id;  /* makes the entries' ids, with their keys */
  const char *place, *note;
  double latitude_deg, longitude_deg; /* NAN: no position */
  gint64 written_at;
  const FfCalendarEntry *entries;
  guint n_entries;
} FfCalendar;

/* The whole file as text, lines folded and ended as the standard has it. */
char *ff_calendar_text (const FfCalendar *calendar) G_GNUC_WARN_UNUSED_RESULT;
