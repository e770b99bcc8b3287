/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records to rows and back, by their tables of fields. For the files of this room alone. */
#pragma once

#include "ff-field.h"
#include "ff-statement.h"

/* One change in the caller's transaction, or in one of its own: open it, do it, close it with what
 * came of it. */
gboolean ff_rows_open (FfStore *store, gboolean *ret_own, GError **error);
gboolean ff_rows_close (FfStore *store, gboolean own, gboolean done, GError **error);

/* One row; save replaces the one with the same key, append never does. */
gboolean ff_rows_save (FfStore *store, const FfFields *fields, gconstpointer record, GError **error);
gboolean ff_rows_append (FfStore *store,
                         const FfFields *fields,
                         gconstpointer record,
                         GError **error);

/* Puts a sentence in place of what SQLite said about a name that is taken ("item.label"). Always
 * FALSE. */
gboolean ff_rows_taken (GError **error, const char *columns, const char *sentence);

/* The rows that `tail` ("WHERE job_id = ?1 ORDER BY position") selects, each read into a new
 * record. The argument is NULL when the tail has no parameter. */
GPtrArray *ff_rows_load (FfStore *store,
                         const FfFields *fields,
                         const char *tail,
                         const char *argument,
                         gpointer (*make) (void),
                         GDestroyNotify destroy,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same into records that exist, found by their key; rows of others are passed over. */
gboolean ff_rows_read_into (FfStore *store,
                            const FfFields *fields,
                            const char *tail,
                            const char *argument,
                            GHashTable *by_id,
                            GError **error);

/* Parts of a record in their order, kept in a table of their own under the record's id. Those that
 * stood there before are removed unless the table is one that is only added to. */
typedef struct {
  const char *table;
  const char *owner; /* column: "place_id" */
  gboolean append_only;
} FfParts;

gboolean ff_parts_save (FfStore *store,
                        const FfParts *parts,
                        const FfFields *fields,
                        const char *owner_id,
                        GPtrArray *records,
                        GError **error);

/* Parts that are ids alone, as char *: `column` holds them. */
gboolean ff_parts_save_ids (FfStore *store,
                            const FfParts *parts,
                            const char *column,
                            const char *owner_id,
                            GPtrArray *ids,
                            GError **error);
gboolean ff_parts_load_ids (FfStore *store,
                            const FfParts *parts,
                            const char *column,
                            const char *owner_id,
                            GPtrArray *ids,
                            GError **error);
