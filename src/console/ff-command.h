/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every command of the console shares: its place in the table, its options, its output. A
 * command gathers everything it has to say before a byte is printed, so that a refused request
 * leaves standard output empty. */
#pragma once

#include <glib.h>

#include "ff-json.h"
#include "ff-names.h"
#include "ff-records.h"

typedef enum {
  FF_DONE = 0, /* done */
  FF_NO = 1,   /* the answer is no or not wholly; still printed */
  FF_FAILED = -1, /* the GError says why; main turns it into 2 or 3 */
} FfOutcome;

typedef struct {
  char *data_dir;
  gboolean as_json;
  GStrv words;   /* what is left of the command line: "A", "B" */
  guint n_words;
  FfJson *json;  /* written with --json; always there */
  GString *text; /* written without */
} FfConsole;

typedef struct {
  const char *name;
  const char *summary;   /* one line for the list, marked for translation */
  const char *usage;     /* "sun --lat D --lon D --at TIME" */
  const char *example;   /* one worked example, as it would be typed */
  GOptionEntry *entries; /* texts, flags and file names only: numbers are read by ff_option_… */
  FfOutcome (*run) (FfConsole *console, GError **error);
} FfCommand;

/* Options as typed are texts; these read them. `name` is the option, "--lat". A NULL text is an
 * option that was not given: an error for the plain ones. Errors: FF_ERROR_INPUT. */
gboolean ff_option_number (const char *name,
                           const char *text,
                           double low,
                           double high,
                           double *ret_value,
                           GError **error);
gboolean ff_option_instant (const char *name, const char *text, gint64 *ret_instant, GError **error);
gboolean ff_option_name (const char *name,
                         const FfNames *names,
                         const char *text,
                         int *ret_value,
                         GError **error);

/* The initials of a crew member as they stand in the crew; NULL when the option was not given. */
gboolean ff_option_initials (const char *name,
                             const char *text,
                             FfStore *store,
                             char **ret_initials,
                             GError **error);

/* Missing option: sets the error and returns FALSE. */
gboolean ff_option_missing (const char *name, GError **error);

/* A comma-separated list, blanks around its parts stripped; an empty part is refused. */
GStrv ff_option_list (const char *name,
                      const char *text,
                      GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Exactly `n` words after the command ("JOB", "FILE" …, named by `what` for the message). */
gboolean ff_console_want_words (FfConsole *console, guint n, const char *what, GError **error);

/* One line of the text output. */
void ff_console_line (FfConsole *console, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* A sentence broken at 80 columns; the lines after the first begin with `indent` blanks, and the
 * first has its own beginning already in `text`. */
void ff_console_wrap (FfConsole *console, guint indent, const char *text);

/* A line of two columns: the label padded to 24 letters (not bytes), then the value. */
void ff_console_row (FfConsole *console,
                     const char *label,
                     const char *format,
                     ...) G_GNUC_PRINTF (3, 4);

/* The store in --data-dir. */
FfStore *ff_console_open (FfConsole *console,
                          FfRecordsAccess access,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* "f/2.8  1/50  ISO 100" and the like are written by the commands themselves. One per file: */
extern const FfCommand ff_command_advise;
extern const FfCommand ff_command_amend;
extern const FfCommand ff_command_balance;
extern const FfCommand ff_command_battery;
extern const FfCommand ff_command_bracket;
extern const FfCommand ff_command_brief;
extern const FfCommand ff_command_briefed;
extern const FfCommand ff_command_checks;
extern const FfCommand ff_command_demo;
extern const FfCommand ff_command_depth;
extern const FfCommand ff_command_exposure;
extern const FfCommand ff_command_filter;
extern const FfCommand ff_command_flicker;
extern const FfCommand ff_command_frame;
extern const FfCommand ff_command_gear;
extern const FfCommand ff_command_freeze;
extern const FfCommand ff_command_job;
extern const FfCommand ff_command_jobs;
extern const FfCommand ff_command_light;
extern const FfCommand ff_command_limits;
extern const FfCommand ff_command_lists;
extern const FfCommand ff_command_lock;
extern const FfCommand ff_command_log;
extern const FfCommand ff_command_media;
extern const FfCommand ff_command_motion;
extern const FfCommand ff_command_pack;
extern const FfCommand ff_command_plan;
extern const FfCommand ff_command_planning;
extern const FfCommand ff_command_reading;
extern const FfCommand ff_command_store;
extern const FfCommand ff_command_sun;
extern const FfCommand ff_command_travel;
extern const FfCommand ff_command_weather;
