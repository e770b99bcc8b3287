/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Comma-separated values as they come from spreadsheets: RFC 4180, and besides a byte order mark,
 * semicolons or tabs between the cells, and lines that end as they like. Split by libcsv. */
#pragma once

#include <glib.h>

typedef struct {
  guint line;       /* of the file, where the row begins, from 1 */
  GPtrArray *cells; /* char * */
} FfCsvRow;

typedef struct {
  char delimiter;  /* ',', ';' or tab: the one that stands most often in the first line */
  GPtrArray *rows; /* FfCsvRow; empty lines are left out */
} FfCsvTable;

void ff_csv_table_free (FfCsvTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfCsvTable, ff_csv_table_free)

/* `text` is UTF-8. The apostrophe that ff_csv_row() put before what looks like a formula is taken
 * away. FF_ERROR_INPUT names line and column: a quote where none may stand, a cell of more than
 * `longest` bytes, more than `most` rows. */
FfCsvTable *ff_csv_read (const char *text,
                         gsize longest,
                         guint most,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
