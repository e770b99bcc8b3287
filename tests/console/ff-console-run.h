/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One call of the built fieldfarectl and what came of it. */
#pragma once

#include <json-glib/json-glib.h>

#include "ff-test.h"

typedef struct {
  int status;
  char *out, *err;
  JsonParser *parser;
  JsonObject *json; /* NULL when standard output is no JSON object */
} FfRun;

/* Runs it with a command line as a shell would split it; nothing of the user's is touched. */
FfRun *ff_run (const char *command_line) G_GNUC_WARN_UNUSED_RESULT;
void ff_run_free (FfRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfRun, ff_run_free)

/* Runs it with --json and insists on a status. */
FfRun *ff_run_json (const char *command_line, int status) G_GNUC_WARN_UNUSED_RESULT;

/* A member, "a" or "a.b"; a number is NAN where it is null. A missing one fails the test. */
double ff_run_number (FfRun *run, const char *path);
const char *ff_run_text (FfRun *run, const char *path);
gboolean ff_run_is_null (FfRun *run, const char *path);
JsonArray *ff_run_array (FfRun *run, const char *path);

/* Insists that a call is refused: status 2, nothing on standard output, one line on standard error
 * that holds `part`. */
void ff_run_refused (const char *command_line, const char *part);

/* The text form: status 0, something on standard output, no line past 80 columns. */
void ff_run_reads_well (const char *command_line);
