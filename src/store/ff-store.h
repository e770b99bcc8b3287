/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One SQLite file: opened with care, changed in transactions, copied whole. What is in it is the
 * business of the records. Every failure is FF_ERROR_STORE with a sentence that names the file and
 * says what can be done, except a row that breaks a rule of its table: FF_ERROR_INPUT. */
#pragma once

#include <glib.h>

typedef struct _FfStore FfStore;

typedef enum {
  FF_STORE_READ,  /* must exist; works from a read-only folder */
  FF_STORE_WRITE, /* made when missing; an older one is backed up beside itself and migrated */
} FfStoreAccess;

/* A file that is no store, damaged, from another program, from a newer version or (to write)
 * read-only is refused and not written to. The folder must exist. */
FfStore *ff_store_open (const char *path,
                        FfStoreAccess access,
                        GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_store_close (FfStore *store);

const char *ff_store_path (FfStore *store);
int ff_store_version (FfStore *store);
int ff_store_newest_version (void);

/* One or more statements without parameters. */
gboolean ff_store_exec (FfStore *store, const char *sql, GError **error);
gboolean ff_store_integer (FfStore *store, const char *sql, gint64 *ret_value, GError **error);

/* Transactions do not nest. A failed commit has rolled back. Rollback is safe at any time. */
gboolean ff_store_begin (FfStore *store, GError **error);
gboolean ff_store_commit (FfStore *store, GError **error);
void ff_store_rollback (FfStore *store);
gboolean ff_store_in_transaction (FfStore *store);

/* A consistent copy to a file that must not exist yet: written under another name, flushed to the
 * disk, then named. Nothing half-written is left behind. */
gboolean ff_store_backup (FfStore *store, const char *path, GError **error);

/* The whole check, integrity and foreign keys: sentences, none when sound. */
GPtrArray *ff_store_faults (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
