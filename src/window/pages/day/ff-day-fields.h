/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which field of the page is which fact of which record: one table, from which the page is filled,
 * stored and undone. */
#pragma once

#include "ff-field.h"

typedef enum { FF_DAY_OF_JOB, FF_DAY_OF_PLACE } FfDayOwner;

typedef struct {
  const char *widget; /* name in the template, and of the field in its record */
  FfDayOwner owner;
  double scale;       /* shown value times this is the stored one */
  const char *what;   /* the sentence of undo; marked for translation */
} FfDayField;

guint ff_day_fields_count (void);
const FfDayField *ff_day_fields_get (guint i);
const FfDayField *ff_day_fields_find (const char *widget);

/* The field of the record. */
const FfField *ff_day_field_of (const FfDayField *day_field);
