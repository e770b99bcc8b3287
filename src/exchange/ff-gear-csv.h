/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The whole inventory as comma-separated values, for a spreadsheet and back. One row an item; the
 * first row names the columns, which are the fields of the records, in any order. Records are named
 * as people name them: items by label, crew by initials. */
#pragma once

#include "ff-item.h"

#define FF_GEAR_CSV_MOST 32000000 /* bytes: a hire house with ten thousand items is a tenth of it */

/* `items` (FfItem) as text, with CR LF; `members` are FfMember. */
char *ff_gear_csv_write (GPtrArray *items, GPtrArray *members) G_GNUC_WARN_UNUSED_RESULT;

/* One row that brings something: a new item, or what it changes at one that is there. */
typedef struct {
  FfItem *item; /* as it will be, its state as well */
  guint line;   /* of the file */
  gboolean is_new, has_event;
  GPtrArray *fields; /* char *: names of the columns that change; empty for a new item */
} FfGearChange;

typedef struct {
  GPtrArray *changes; /* FfGearChange, in the order of the file */
  guint added, changed, same;
} FfGearImport;

void ff_gear_import_free (FfGearImport *import);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FfGearImport, ff_gear_import_free)

/* Reads and checks the whole text against what is there; nothing is stored. A row belongs to the item
 * with its id or, without one, its label. A column that is not there changes nothing; an empty cell
 * takes the value away where one is not needed. A byte order mark, semicolons, CR LF and (between
 * semicolons or tabs) the decimal comma are understood. FF_ERROR_INPUT: line, column, what was found
 * and what is accepted. */
FfGearImport *ff_gear_csv_read (const char *text,
                                GPtrArray *items,
                                GPtrArray *members,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Stores it, all or nothing. States become events of `by` at `now`. */
gboolean ff_gear_import_store (const FfGearImport *import,
                               FfStore *store,
                               const char *by,
                               gint64 now,
                               GError **error);
