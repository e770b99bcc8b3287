/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a record is made of, once: the table from which it is checked, stored, written to a file
 * and read back. A record is a plain struct; a field says where in it a fact stands, which facts
 * are accepted, and what it is called in the store, in files and by people. */
#pragma once

#include <glib.h>

#include "ff-names.h"

typedef enum {
  FF_FIELD_ID,      /* char *: a UUID; empty only when it is not needed */
  FF_FIELD_TEXT,    /* char *: `high` is its longest length in bytes */
  FF_FIELD_DATE,    /* char *: YYYY-MM-DD, or empty */
  FF_FIELD_WHOLE,   /* int from low to high */
  FF_FIELD_REAL,    /* double from low to high, or NAN when it is not needed */
  FF_FIELD_CLOCK,   /* int: minutes after midnight, or -1 when it is not needed */
  FF_FIELD_INSTANT, /* gint64: UTC seconds */
  FF_FIELD_FLAG,    /* gboolean */
  FF_FIELD_NAME,    /* an enum, by the tokens of its table of names */
} FfFieldType;

typedef struct {
  const char *name;  /* of the column and of the member in a file */
  const char *words; /* what people call it, marked for translation */
  FfFieldType type;
  gboolean needed;
  gsize offset;
  double low, high;
  const FfNames *names;
} FfField;

typedef struct {
  const char *table;
  const FfField *fields; /* the first is the key */
  guint n_fields;
} FfFields;

/* The longest clock: a day that ends in the small hours of the next. */
#define FF_CLOCK_MAX (2 * 24 * 60)

#define FF_ID(type, member, name, words, needed)                                                   \
  { name, words, FF_FIELD_ID, needed, G_STRUCT_OFFSET (type, member), 0, 36, NULL }
#define FF_TEXT(type, member, words, needed, length)                                               \
  { #member, words, FF_FIELD_TEXT, needed, G_STRUCT_OFFSET (type, member), 0, length, NULL }
#define FF_DATE(type, member, words)                                                               \
  { #member, words, FF_FIELD_DATE, FALSE, G_STRUCT_OFFSET (type, member), 0, 10, NULL }
#define FF_WHOLE(type, member, words, low, high)                                                   \
  { #member, words, FF_FIELD_WHOLE, TRUE, G_STRUCT_OFFSET (type, member), low, high, NULL }
#define FF_REAL(type, member, words, needed, low, high)                                            \
  { #member, words, FF_FIELD_REAL, needed, G_STRUCT_OFFSET (type, member), low, high, NULL }
#define FF_CLOCK(type, member, words, needed)                                                      \
  { #member, words, FF_FIELD_CLOCK, needed, G_STRUCT_OFFSET (type, member), 0, FF_CLOCK_MAX, NULL }
#define FF_INSTANT(type, member, words)                                                            \
  { #member, words, FF_FIELD_INSTANT, TRUE, G_STRUCT_OFFSET (type, member), 0, 7258118400.0, NULL }
#define FF_FLAG(type, member, words)                                                               \
  { #member, words, FF_FIELD_FLAG, TRUE, G_STRUCT_OFFSET (type, member), 0, 1, NULL }
/* Facts that files written before they were asked for lack: no, or the lowest. */
#define FF_LATER_FLAG(type, member, words)                                                         \
  { #member, words, FF_FIELD_FLAG, FALSE, G_STRUCT_OFFSET (type, member), 0, 1, NULL }
#define FF_LATER_WHOLE(type, member, words, low, high)                                             \
  { #member, words, FF_FIELD_WHOLE, FALSE, G_STRUCT_OFFSET (type, member), low, high, NULL }
#define FF_NAME(type, member, words, names)                                                        \
  { #member, words, FF_FIELD_NAME, TRUE, G_STRUCT_OFFSET (type, member), 0, 0, names }
#define FF_FIELDS(table, fields) { table, fields, G_N_ELEMENTS (fields) }

/* Where a field stands in a record. */
char **ff_field_text (const FfField *field, gconstpointer record);
int *ff_field_whole (const FfField *field, gconstpointer record); /* clock, flag, name as well */
double *ff_field_real (const FfField *field, gconstpointer record);
gint64 *ff_field_instant (const FfField *field, gconstpointer record);
gboolean ff_field_is_text (const FfField *field);

/* Nothing given: empty texts, NAN or the lowest accepted number, no clock. */
void ff_fields_init (const FfFields *fields, gpointer record);
void ff_fields_clear (const FfFields *fields, gpointer record);

/* Every fact alone. `whose` begins the sentence: "shot A". FF_ERROR_INPUT. */
gboolean ff_fields_check (const FfFields *fields,
                          gconstpointer record,
                          const char *whose,
                          GError **error);
gboolean ff_fields_equal (const FfFields *fields, gconstpointer a, gconstpointer b);
const FfField *ff_fields_find (const FfFields *fields, const char *name);

/* A text is replaced by a copy. */
void ff_set_text (char **place, const char *text);
