/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The columns of the gear as CSV, for its two halves. */
#pragma once

#include "ff-gear-csv.h"

typedef enum {
  FF_COLUMN_FIELD,
  FF_COLUMN_CAMERA,   /* camera_id, by label */
  FF_COLUMN_ATTENDED, /* attended_by, by initials */
  FF_COLUMN_WITH,     /* what it can't go without: labels with semicolons between */
} FfColumnHow;

typedef struct {
  const char *name;
  FfColumnHow how;
} FfGearColumn;

/* All columns, in the order in which they are written: an array of FfGearColumn. */
GArray *ff_gear_columns (void) G_GNUC_WARN_UNUSED_RESULT;

/* The field of that name that an item of the kind has; NULL: none. */
const FfField *ff_gear_column_field (FfKind kind, const char *name);

/* No changes yet. */
void ff_gear_import_begin (FfGearImport *import);
