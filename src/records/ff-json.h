/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One JSON object, written piece by piece. Names are NULL inside arrays. Numbers come out in the
 * shortest form that reads back the same; NAN and infinity as null. */
#pragma once

#include <glib.h>

typedef struct _FfJson FfJson;

FfJson *ff_json_new (void) G_GNUC_WARN_UNUSED_RESULT; /* the outer object is open */
void ff_json_free (FfJson *json);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfJson, ff_json_free)

void ff_json_begin_object (FfJson *json, const char *name);
void ff_json_begin_array (FfJson *json, const char *name);
void ff_json_end (FfJson *json); /* closes the innermost object or array */

void ff_json_text (FfJson *json, const char *name, const char *value); /* NULL: null */
void ff_json_number (FfJson *json, const char *name, double value);
void ff_json_integer (FfJson *json, const char *name, gint64 value);
void ff_json_flag (FfJson *json, const char *name, gboolean value);
void ff_json_null (FfJson *json, const char *name);

/* A number rounded to so many decimals: what is shown should not claim more than is known. */
void ff_json_rounded (FfJson *json, const char *name, double value, int decimals);

/* An array of texts. */
void ff_json_texts (FfJson *json, const char *name, GPtrArray *texts);

/* Closes the outer object; the text ends with a newline. */
char *ff_json_finish (FfJson *json) G_GNUC_WARN_UNUSED_RESULT;
