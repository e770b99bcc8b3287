/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The crew's records as a whole: opening the store in a data folder, what it holds, whether it is
 * sound, a copy of it. The nouns have their own headers. */
#pragma once

#include <glib.h>

typedef struct _FfStore FfStore;

typedef enum {
  FF_RECORDS_READ,  /* must exist */
  FF_RECORDS_WRITE, /* is made when it does not exist; an older one is backed up and migrated */
} FfRecordsAccess;

/* Opens fieldfare.db in data_dir (made with mode 0700, the file 0600). A damaged, newer, foreign or
 * read-only file is refused with FF_ERROR_STORE, saying what it is and what can be done, and is
 * never written to. */
FfStore *ff_records_open (const char *data_dir,
                          FfRecordsAccess access,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
void ff_records_close (FfStore *store);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfStore, ff_records_close)

/* One change of several records: all or nothing. After a failed step, roll back. */
gboolean ff_records_begin (FfStore *store, GError **error);
gboolean ff_records_commit (FfStore *store, GError **error);
void ff_records_rollback (FfStore *store);

gboolean ff_records_is_empty (FfStore *store, gboolean *ret_empty, GError **error);

typedef struct {
  char *noun; /* "jobs", "shots" … */
  gint64 count;
} FfCount;

int ff_records_schema_version (FfStore *store);

/* Rows of each noun: an array of FfCount that frees itself. */
GArray *ff_records_counts (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Faults found by the whole check (integrity, foreign keys), as sentences; empty when sound. NULL
 * with FF_ERROR_STORE when the store can't even be read. */
GPtrArray *ff_records_faults (FfStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A consistent copy to a file that must not exist yet; nothing half-written is left behind. */
gboolean ff_records_backup (FfStore *store, const char *path, GError **error);

/* A new random id (UUID, text). */
char *ff_records_new_id (void) G_GNUC_WARN_UNUSED_RESULT;
