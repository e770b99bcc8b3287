/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rows of comma-separated values (RFC 4180) that a spreadsheet opens without running anything. */
#pragma once

#include <glib.h>

/* One row of cells, NULL at the end; lines end with CR LF. A cell that a spreadsheet would take for
 * a formula gets an apostrophe before it, which makes it a text there. */
void ff_csv_row (GString *out, const char *const *cells);

/* The cell without the apostrophe that ff_csv_row() put before it. */
char *ff_csv_plain (const char *cell) G_GNUC_WARN_UNUSED_RESULT;
