/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of this room know of each other. */
#pragma once

#include <sqlite3.h>

#include "ff-store.h"

/* "FFLD": how other programs, and file(1), know the file. */
#define FF_STORE_APPLICATION_ID 0x46464c44

struct _FfStore {
  sqlite3 *db;
  char *path;
  FfStoreAccess access;
};

/* The migrations, oldest first, NULL at the end: step n leads to version n + 1. Made from the .sql
 * files by the build. */
extern const char *const ff_migrations[];

/* What the first hundred bytes of a file say, read without SQLite so that nothing is touched. */
gboolean ff_header_check (const char *path, gboolean *ret_has_wal, GError **error);

/* A version that this program knows. */
gboolean ff_version_check (const char *path, gint64 version, GError **error);

/* Sets an error for what SQLite just reported; always FALSE. */
gboolean ff_store_failed (FfStore *store, int code, GError **error);

/* Damage, in the words that every place uses; always FALSE. */
gboolean ff_store_damaged (const char *path, const char *how, GError **error);

/* Brings a store from its version up to the number of steps, all in one transaction. */
gboolean ff_migrate (FfStore *store, const char *const *steps, GError **error);

/* Makes a new store under another name and gives it its own once it is whole. A store that
 * somebody else made meanwhile is left as it is. */
gboolean ff_store_create (const char *path, GError **error);

/* A backup beside the store, named by date and version, before it is migrated. */
gboolean ff_backup_before_migration (FfStore *store, int version, GError **error);

/* Removes an unfinished file, and the journal that SQLite leaves beside it when the disk is full. */
void ff_discard (const char *temporary);

/* Gives a finished file its name, never replacing one; flushed to the disk. errno on failure. */
gboolean ff_publish (const char *temporary, const char *path);
