/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records as JSON and back, by their tables of fields. An absent fact is null. Clocks are "16:30"
 * (of the next day "25:10"), instants ISO 8601, names their tokens. */
#pragma once

#include <json-glib/json-glib.h>

#include "ff-field.h"
#include "ff-json.h"

/* Writes the fields from the `first` on into the object that is open. */
void ff_json_fields (FfJson *json, const FfFields *fields, guint first, gconstpointer record);

/* Reads an object into a record. Every needed field must be there and of its type; types and the
 * range of numbers are checked here, the rules of the record by its own check. `path` ("shots[2]")
 * begins each message. */
gboolean ff_json_read_fields (JsonObject *object,
                              const FfFields *fields,
                              guint first,
                              gpointer record,
                              const char *path,
                              GError **error);

/* Whether each member is a field of one of the tables (NULL at the end) or one of the other names
 * (NULL at the end). */
gboolean ff_json_known_members (JsonObject *object,
                                const FfFields *const *tables,
                                const char *const *others,
                                const char *path,
                                GError **error);

/* The object or the array of objects under a name, which must be there. Borrowed. */
JsonObject *ff_json_get_object (JsonObject *object,
                                const char *name,
                                const char *path,
                                GError **error);
JsonArray *ff_json_get_array (JsonObject *object,
                              const char *name,
                              const char *path,
                              GError **error);
JsonObject *ff_json_element_object (JsonArray *array,
                                    guint i,
                                    const char *path,
                                    GError **error);

/* The array of texts under a name, appended to `texts`. */
gboolean ff_json_read_texts (JsonObject *object,
                             const char *name,
                             const char *path,
                             GPtrArray *texts,
                             GError **error);

/* "shots[2].minutes: found “many”; accepted: a whole number" */
gboolean ff_json_refuse (const char *path,
                         const char *name,
                         JsonNode *found,
                         const char *wanted,
                         GError **error);
